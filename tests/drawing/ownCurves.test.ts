/**
 * The library's own charts, by what they say of themselves in words, held whole: captions, how far each curve reaches, levels, notes. Worked
 * by hand: first-order lag T = E − (E − S)·exp(−t/τ), power law rise ∝ Iⁿ, preload F = T/(K·d).
 */

import { balancedSupply, type ModulePlan, withoutLines } from "electroheat/circuit";
import {
  heatUpChart,
  jointRiseChart,
  phasorDiagram,
  preloadChart,
  temperatureFactorChart,
} from "electroheat/drawing";
import { NICR_80_20_GB, NICR_80_20_MAKER_I } from "electroheat/material";
import {
  amperes,
  celsius,
  kelvins,
  kilojoulesPerKelvin,
  kilonewtons,
  kilowatts,
  millimeters,
  newtonMeters,
  ohms,
  seconds,
  volts,
  wattsPerKelvin,
} from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";
import { everything, parsed } from "./parsed.ts";

const said = (svg: string): string =>
  (parsed(svg).children.find(({ name }) => name === "desc")?.text ?? "").replaceAll("\u00a0", " ");
const titled = (svg: string): string =>
  everything(parsed(svg)).find(({ name }) => name === "title")?.text ?? "";

describe("heat-up", () => {
  // τ = 200 kJ/K over 40 W/K = 5000 s; 12 kW lift by 300 K at last, 18 kW by 450 K, 6 kW by 150 K.
  const oven = {
    ambient: celsius(20),
    lossConductance: wattsPerKelvin(40),
    structure: kilojoulesPerKelvin(200),
  };
  const healthy = { name: "healthy", power: kilowatts(12) };
  const chart = { oven, powers: [healthy], target: celsius(200) };
  const NOTE =
    "One temperature for oven and load; a cure time counts from the load, which lags. Prove air flow and overtemperature protection before running degraded.";

  it("shows a quarter more than the slowest that arrives: 5000·ln(300/120) = 4581 s, 5000·ln(450/270) = 2554 s", () => {
    const svg = heatUpChart({ ...chart, powers: [{ name: "both", power: kilowatts(18) }, healthy] });
    expect(titled(svg)).toBe("Heat-up to the set point");
    expect(said(svg)).toBe(
      `Oven temperature, °C against Time at full power, min. both: 43 min: 20 to 200 over 0 to 42.57. healthy: 76 min: 20 to 200 over 0 to 76.36. set point 200 °C: 200. ${NOTE}`,
    );
    // 1.25·76.36 = 95.4 min: the axis ends at the tick behind.
    const numbers = everything(parsed(svg)).flatMap(({ name, text }) => (name === "text" ? [text] : []));
    expect(numbers).toContain("100");
    expect(numbers).not.toContain("120");
  });

  it("shows four times the fastest where one never arrives: 18 326 s, where 6 kW have come to 20 + 150·(1 − exp(−3.665)) °C", () => {
    const svg = heatUpChart({ ...chart, powers: [healthy, { name: "one open", power: kilowatts(6) }] });
    expect(said(svg)).toBe(
      `Oven temperature, °C against Time at full power, h. healthy: 1.3 h: 20 to 200 over 0 to 1.273. one open: never: 20 to 166.2 over 0 to 5.091. set point 200 °C: 200. ${NOTE}`,
    );
  });

  it("ends where it is told to: after 1800 s, at 20 + 300·(1 − exp(−0.36)) = 110.7 °C", () => {
    const svg = heatUpChart({ ...chart, duration: seconds(1800) });
    expect(said(svg)).toContain("healthy: 76 min: 20 to 110.7 over 0 to 30. ");
    expect(said(heatUpChart({ ...chart, duration: seconds(10_799) }))).toContain("Time at full power, min.");
    expect(said(heatUpChart({ ...chart, duration: seconds(10_800) }))).toContain("Time at full power, h.");
  });

  it("begins where it is told to: from 110 °C 5000·ln(210/120) = 2798 s", () => {
    const svg = heatUpChart({ ...chart, start: celsius(110), title: "Again", width: 400, id: "warm" });
    expect(titled(svg)).toBe("Again");
    expect(parsed(svg).attributes).toMatchObject({
      width: "400",
      "aria-labelledby": "warm-title warm-desc",
    });
    expect(said(svg)).toContain("healthy: 47 min: 110 to 200 over 0 to 46.63. ");
  });

  it("wants a duration where no power arrives, and one above 0", () => {
    const weak = { ...chart, powers: [{ name: "one open", power: kilowatts(6) }] };
    expect(caught(() => heatUpChart(weak)).message).toBe(
      "duration: missing; expected a duration: no power reaches the set point",
    );
    expect(said(heatUpChart({ ...weak, duration: seconds(5000) }))).toContain(
      // 20 + 150·(1 − 1/e) = 114.8 °C.
      "one open: never: 20 to 114.8 over 0 to 83.33. ",
    );
    expect(caught(() => heatUpChart({ ...chart, duration: seconds(1e-300 - 1e-300) })).message).toBe(
      "duration: 0 s is not allowed; expected more than 0 s",
    );
  });
});

describe("joint rise", () => {
  const NOTE =
    "Line: exponent 1.83, a bare copper bar; band: 1.6 to 2. A joint whose resistance grows with its temperature can rise faster. Scan under load only by the site's rules; a licensed electrician decides.";
  it("reaches 22·(66/40)² = 59.9 K at the most, and the current it was seen at where that is the higher", () => {
    const joints = [
      { name: "stud", rise: kelvins(22), current: amperes(40) },
      { name: "bar", rise: kelvins(10), current: amperes(80) },
    ];
    const svg = jointRiseChart({ joints, upTo: amperes(66) });
    expect(titled(svg)).toBe("Rise of joints against current");
    expect(said(svg)).toBe(
      `Rise, K against Current, A. stud: 0 to 59.89 over 0 to 66. bar: 0 to 10 over 0 to 80. ${NOTE}`,
    );
  });

  it("draws the line of the bare bar through what was seen, within the band of the two exponents", () => {
    const joints = [{ name: "stud", rise: kelvins(22), current: amperes(40) }];
    const root = parsed(jointRiseChart({ joints, upTo: amperes(80) }));
    const nodes = everything(root);
    const at = (label: string, key: string) =>
      nodes
        .filter(({ name, text }) => name === "text" && text === label)
        .map(({ attributes }) => Number(attributes[key]));
    // Zero and the ends of both axes by their numbers: 22·2² = 88 K, so up to 100 K.
    const [x0, x80] = [at("0", "x").sort((a, b) => b - a)[0] as number, at("80", "x").at(-1) as number];
    const [y0, y100] = [at("0", "y").sort((a, b) => a - b)[0] as number, at("100", "y")[0] as number];
    const paths = nodes
      .filter(({ name, attributes }) => name === "path" && attributes["stroke-width"] === "2.2")
      .map(({ attributes }) =>
        [...(attributes["d"] ?? "").matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [
          ((Number(x) - x0) / (x80 - x0)) * 80,
          ((Number(y) + 4 - y0) / (y100 - y0)) * 100,
        ]),
      );
    const curve = paths.find((points) => points.length > 10) ?? [];
    expect(curve.length).toBe(49);
    for (const [x = 0, y = 0] of curve) expect(Math.abs(y - 22 * (x / 40) ** 1.83)).toBeLessThan(0.2);
    const band = nodes.find(({ attributes }) => attributes["fill-opacity"] !== undefined);
    const edge = [...(band?.attributes["d"] ?? "").matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [
      ((Number(x) - x0) / (x80 - x0)) * 80,
      ((Number(y) + 4 - y0) / (y100 - y0)) * 100,
    ]);
    expect(edge.length).toBe(98);
    edge.forEach(([x = 0, y = 0], i) => {
      const ends = [22 * (x / 40) ** 1.6, 22 * (x / 40) ** 2];
      const wanted = i < 49 ? Math.max(...ends) : Math.min(...ends);
      expect(Math.abs(y - wanted)).toBeLessThan(0.2);
    });
  });

  it("wants a current above 0 and at least one joint", () => {
    const joints = [{ name: "stud", rise: kelvins(22), current: amperes(40) }];
    expect(caught(() => jointRiseChart({ joints, upTo: amperes(0) })).message).toBe(
      "upTo: 0 A is not allowed; expected more than 0 A",
    );
    for (const none of [[], undefined])
      expect(caught(() => jointRiseChart({ joints: none as never, upTo: amperes(66) })).message).toBe(
        "joints: missing; expected at least one joint",
      );
  });
});

describe("preload", () => {
  const bolt = { diameter: millimeters(8), upTo: newtonMeters(25) };
  const NOTE =
    "Holds for a clean turn of the nut. The maker's torque governs; a torque read later on an aged joint says nothing about its preload.";
  it("reaches torque over nut factor and diameter: 25/(0.13·0.008) = 24.04 kN, 25/(0.2·0.008) = 15.63 kN", () => {
    const conditions = [
      { name: "greased, measured", low: 0.13, high: 0.17 },
      { name: "as received", low: 0.2, high: 0.2 },
    ];
    const svg = preloadChart({ ...bolt, conditions, mostPreload: kilonewtons(15) });
    expect(titled(svg)).toBe("Preload against tightening torque");
    expect(said(svg)).toBe(
      `Preload, kN against Torque, N·m. greased, measured, K 0.13 to 0.17: 0 to 24.04 over 0 to 25. as received, K 0.2 to 0.2: 0 to 15.63 over 0 to 25. most preload: 15. ${NOTE}`,
    );
    expect(said(preloadChart({ ...bolt, conditions }))).not.toContain("most preload");
  });

  it("refuses by name", () => {
    const conditions = [{ name: "own", low: 0.13, high: 0.17 }];
    const told = (more: object) => caught(() => preloadChart({ ...bolt, conditions, ...more })).message;
    expect(told({ upTo: 0 })).toBe("upTo: 0 N·m is not allowed; expected more than 0 N·m");
    expect(told({ mostPreload: -1 })).toBe("mostPreload: -1 N is not allowed; expected 0 or more N");
    expect(told({ conditions: [] })).toBe("conditions: missing; expected at least one thread condition");
    expect(told({ conditions: [null] })).toMatch(/^conditions\.0: missing/);
  });
});

describe("temperature factor", () => {
  it("shows each table at its rows, and the spread where two reach", () => {
    const table = (id: string, temperatures: readonly number[], values: readonly number[]) => ({
      ...NICR_80_20_GB,
      id,
      temperatureFactor: { ...NICR_80_20_GB.temperatureFactor, temperatures, values },
    });
    const datasets = [table("first", [20, 200, 400], [1, 1.02, 1.04]), table("second", [20, 200], [1, 1.05])];
    const svg = temperatureFactorChart({ datasets: datasets as never });
    expect(titled(svg)).toBe("Temperature factor Ct by source");
    expect(said(svg)).toBe(
      "Ct, resistance over that at 20 °C against Wire temperature, °C. first: 1 to 1.04 over 20 to 400. second: 1 to 1.05 over 20 to 200. spread of the sources: 1 to 1.05 over 20 to 200.",
    );
    // A point at each row.
    expect(everything(parsed(svg)).filter(({ name }) => name === "circle").length).toBeGreaterThanOrEqual(3);
  });

  it("refuses what has no table by its place in the list", () => {
    const { temperatureFactor: _, ...bare } = NICR_80_20_MAKER_I;
    expect(caught(() => temperatureFactorChart({ datasets: [NICR_80_20_GB, bare as never] })).message).toBe(
      "datasets.1.temperatureFactor: missing; expected a dataset with a Ct table",
    );
    expect(caught(() => temperatureFactorChart({ datasets: [] })).message).toBe(
      "datasets: missing; expected at least one dataset",
    );
  });
});

describe("phasors in words", () => {
  const supply = balancedSupply({ lineVoltage: volts(480) });
  const star = { id: "A", connection: "star", elementResistance: ohms(15.36) } as const;
  const told = (module: ModulePlan, lines: readonly string[] = []) =>
    said(phasorDiagram({ module, supply: withoutLines({ supply, lines: lines as never }) }));
  const LINES =
    "Line voltages at the module: L1 to L2 480.0 V at 30.0°; L2 to L3 480.0 V at −90.0°; L3 to L1 480.0 V at 150.0°.";

  it("of a sound star: V/√3 on each branch, a third of a turn apart", () => {
    expect(said(phasorDiagram({ module: { banks: [star] }, supply }))).toBe(
      `${LINES} Star-point displacement: N to S 0.0 V. Branch voltages: A-L1 277.1 V at 0.0°; A-L2 277.1 V at −120.0°; A-L3 277.1 V at 120.0°.`,
    );
  });

  it("of two tied stars with one branch open: the star point goes to −E1/5", () => {
    // Conductances 1, 2, 2: (E1 + 2·E2 + 2·E3)/5 = −E1/5 = 55.4 V at 180°; E1·6/5 = 332.6 V; |E2 + E1/5| = 277.1·√(0.84) = 254.0 V.
    const module: ModulePlan = {
      banks: [star, { ...star, id: "B" }],
      starPoints: "tied",
      elements: { "A-L1": "open" },
    };
    expect(said(phasorDiagram({ module, supply }))).toBe(
      `${LINES} Star-point displacement: N to S 55.4 V at 180.0°. Branch voltages: A-L1, open 332.6 V at 0.0°; A-L2, B-L2 254.0 V at −109.1°; A-L3, B-L3 254.0 V at 109.1°; B-L1 332.6 V at 0.0°.`,
    );
  });

  it("of a lost line: half the line voltage on each survivor, its side at the star point", () => {
    expect(told({ banks: [star] }, ["L3"])).toBe(
      "Line L3 lost. Line voltages at the module: L1 to L2 480.0 V at 30.0°; L2 to L3 240.0 V at −150.0°; L3 to L1 240.0 V at −150.0°. Star-point displacement: N to S 138.6 V at −60.0°. Branch voltages: A-L1 240.0 V at 30.0°; A-L2 240.0 V at −150.0°; A-L3 0.0 V.",
    );
  });
});
