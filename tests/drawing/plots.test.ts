/** Charts and phasors in their rarer forms, against closed forms and what the input says. */
import { balancedSupply, type ModulePlan, withoutLines } from "electroheat/circuit";
import {
  curveChart,
  heatUpChart,
  phasorDiagram,
  preloadChart,
  temperatureFactorChart,
} from "electroheat/drawing";
import { NICR_80_20_GB, NICR_80_20_MAKER_A } from "electroheat/material";
import {
  celsius,
  kilojoulesPerKelvin,
  kilowatts,
  millimeters,
  newtonMeters,
  ohms,
  volts,
  wattsPerKelvin,
} from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { fixed } from "../../src/drawing/svg.ts";
import { shortened, textWidth } from "../../src/drawing/text.ts";
import { linearScale } from "../../src/drawing/ticks.ts";
import { caught } from "../support/caught.ts";
import { everything, parsed, pictureProblems, shownTexts } from "./parsed.ts";

const plain = (svg: string): string[] => shownTexts(svg).map((text) => text.replaceAll("\u00a0", " "));
const star = (some: Partial<ModulePlan> = {}, elementsInParallel = 1): ModulePlan => ({
  banks: [{ id: "A", connection: "star", elementResistance: ohms(8), elementsInParallel }],
  ...some,
});
const supply = balancedSupply({ lineVoltage: volts(480) });

describe("phasor diagram", () => {
  it("a source with resistance: the module's corners are named where they are, at r/(r + R) from the supply's", () => {
    // Source: voltage divider. 2 Ω before 8 Ω: 480·8/10 = 384 V between lines, 384/√3 = 221.7 V on a branch.
    const weak = balancedSupply({ lineVoltage: volts(480), sourceResistance: ohms(2) });
    const texts = plain(phasorDiagram({ module: star(), supply: weak }));
    for (const line of ["L1", "L2", "L3"])
      expect(texts).toEqual(expect.arrayContaining([line, `${line} module`]));
    expect(texts.filter((text) => text === "384.0 V")).toHaveLength(3);
    expect(texts.filter((text) => text === "221.7 V")).toHaveLength(3);
  });

  it("two lines lost: nothing flows, the whole module stands at the line that is left", () => {
    // Source: Ohm's law without a current. 0 V on every branch; the star point at 480/√3 = 277.1 V.
    const svg = phasorDiagram({ module: star(), supply: withoutLines({ supply, lines: ["L2", "L3"] }) });
    const texts = plain(svg);
    expect(pictureProblems(svg)).toEqual([]);
    expect(texts.filter((text) => text === "0.0 V")).toHaveLength(6);
    expect(texts.filter((text) => text === "277.1 V")).toHaveLength(1);
    expect(texts).toContain("L1 = S = L2 = L3");
  });

  it("a delta has no star point; of low voltage it is told in thousandths", () => {
    const module: ModulePlan = { banks: [{ id: "A", connection: "delta", elementResistance: ohms(8) }] };
    const texts = plain(phasorDiagram({ module, supply: balancedSupply({ lineVoltage: volts(12) }) }));
    expect(texts.filter((text) => text === "12.000 V")).toHaveLength(6);
    expect(texts.filter((text) => text.startsWith("Star-point"))).toEqual([]);
  });

  it("a star on the neutral has its star point there, named once", () => {
    const texts = plain(phasorDiagram({ module: star({ neutral: "connected" }), supply }));
    expect(texts.filter((text) => text === "N")).toHaveLength(1);
    expect(texts.filter((text) => text.includes("N = "))).toEqual([]);
  });

  it("strings in parallel are one arrow; with every string open the star point floats", () => {
    expect(
      plain(phasorDiagram({ module: star({}, 2), supply })).filter((text) => text.startsWith("A-L")),
    ).toEqual(["A-L1", "A-L2", "A-L3"]);
    const names = ["L1", "L2", "L3"].flatMap((line) => [`A-${line}-1`, `A-${line}-2`]);
    const elements = Object.fromEntries(names.map((name) => [name, "open" as const]));
    const texts = plain(phasorDiagram({ module: star({ elements }, 2), supply }));
    for (const line of ["L1", "L2", "L3"])
      expect(texts.filter((text) => text === `A-${line}, open`)).toHaveLength(1);
    // Three branches and the star point hang on nothing.
    expect(texts.filter((text) => text === "floats")).toHaveLength(4);
  });

  it("more than forty different branches are counted, not listed", () => {
    // Each string has a joint of its own resistance, so that no two voltages are alike: 15 banks, 45 branches, 5 not told.
    const ids = Array.from({ length: 15 }, (_, i) => `B${i + 1}`);
    const module: ModulePlan = {
      banks: ids.map((id, i) => ({ id, connection: "star", elementResistance: ohms(8 + i) })),
      starPoints: "separate",
      elements: Object.fromEntries(ids.map((id, i) => [`${id}-L1`, ohms(9 + 2 * i)])),
    };
    const texts = plain(phasorDiagram({ module, supply }));
    expect(texts).toContain("and 5 more");
  });

  it("refuses a supply whose lines are no list", () => {
    const error = caught(() => phasorDiagram({ module: star(), supply: { lines: "L1" } as never }));
    expect([error.code, error.argument]).toEqual(["missing", "supply.lines"]);
  });
});

describe("own charts", () => {
  it("heat-up over hours, from a start of its own: τ·ln((end − start)/(end − target))", () => {
    // Source: closed form of a first-order lag. C/U = 4·10⁶/40 = 10⁵ s, end 20 + 12 000/40 = 320 °C; from 20 °C to 200 °C
    // 10⁵·ln 2.5 s = 25.45 h, from 110 °C 10⁵·ln 1.75 s = 15.54 h.
    const oven = {
      ambient: celsius(20),
      lossConductance: wattsPerKelvin(40),
      structure: kilojoulesPerKelvin(4000),
    };
    const powers = [{ name: "healthy", power: kilowatts(12) }];
    const chart = { oven, powers, target: celsius(200) };
    expect(heatUpChart(chart)).toContain("healthy: 25.5 h");
    const warm = heatUpChart({ ...chart, start: celsius(110) });
    expect(warm).toContain("healthy: 15.5 h");
    expect(shownTexts(warm)).toContain("Time at full power, h");
  });

  it("heat-up within three hours is told in minutes", () => {
    // Source: the same closed form with C/U = 5000 s: 5000·ln 2.5 s = 76.4 min.
    const oven = {
      ambient: celsius(20),
      lossConductance: wattsPerKelvin(40),
      structure: kilojoulesPerKelvin(200),
    };
    const svg = heatUpChart({
      oven,
      powers: [{ name: "healthy", power: kilowatts(12) }],
      target: celsius(200),
    });
    expect(svg).toContain("healthy: 76 min");
    expect(shownTexts(svg)).toContain("Time at full power, min");
  });

  it("one dataset has no spread; two have one", () => {
    const said = (datasets: Parameters<typeof temperatureFactorChart>[0]["datasets"]) =>
      temperatureFactorChart({ datasets }).includes("spread of the sources");
    expect([said([NICR_80_20_GB]), said([NICR_80_20_GB, NICR_80_20_MAKER_A])]).toEqual([false, true]);
  });

  it("preload without a limit draws none", () => {
    const svg = preloadChart({ diameter: millimeters(8), conditions: ["dry steel"], upTo: newtonMeters(25) });
    expect(svg).not.toContain("most preload");
    expect(pictureProblems(svg)).toEqual([]);
  });
});

describe("curve chart", () => {
  const chart = (some: Partial<Parameters<typeof curveChart>[0]>) =>
    curveChart({ title: "T", x: { label: "x" }, y: { label: "y" }, series: [], ...some });
  const texts = (svg: string) => everything(parsed(svg)).filter(({ name }) => name === "text");

  it.each<readonly ["log" | "linear", number]>([
    // Source: midway on a logarithmic axis is the geometric mean, √(1·100); on a linear one (1 + 100)/2.
    ["log", 10],
    ["linear", 50.5],
  ])("the key of a band stands at its middle on a %s axis", (scale, middle) => {
    const band = [1, 2].map((x) => ({ x, low: 1, high: 100 }));
    const points = [
      { x: 1, y: 1 },
      { x: 2, y: middle },
    ];
    const height = (series: Parameters<typeof curveChart>[0]["series"]) => {
      const svg = chart({ y: { label: "y", scale, to: 100, from: 1 }, series });
      return texts(svg).find(({ text }) => text === "s")?.attributes["y"];
    };
    const one = height([{ label: "s", band }]);
    expect(one).toBeDefined();
    expect(one).toBe(height([{ label: "s", points }]));
  });

  it("leaves out numbers that would touch each other, and keeps their lines", () => {
    const points = [123_456_789_000, 123_456_789_001].map((x) => ({ x, y: 1 }));
    const svg = chart({ series: [{ label: "s", points }], width: 360 });
    const numbers = texts(svg).filter(({ text }) => text.startsWith("12345678"));
    const boxes = numbers.map(({ text, attributes }) => {
      const [x, half] = [Number(attributes["x"]), textWidth(text, 12) / 2];
      return [x - half, x + half] as const;
    });
    boxes.slice(1).forEach(([from], i) => {
      expect(from).toBeGreaterThan((boxes[i] as readonly [number, number])[1]);
    });
    const grid = everything(parsed(svg)).find(({ attributes }) => attributes["stroke-width"] === "1");
    const upright = [...(grid?.attributes["d"] ?? "").matchAll(/M([\d.]+) [\d.]+L\1 /g)];
    expect(upright.length).toBeGreaterThan(numbers.length);
  });

  it("refuses points that are no list", () => {
    const error = caught(() => chart({ series: [{ label: "s", points: "1, 2" as never }] }));
    expect([error.code, error.argument]).toEqual(["wrong-type", "series.0.points"]);
    const id = caught(() => chart({ series: [{ label: "s", points: [{ x: 1, y: 1 }] }], id: 5 as never }));
    expect([id.code, id.argument]).toEqual(["wrong-type", "id"]);
  });

  it("holds a single value, and zero, with room on either side", () => {
    for (const value of [0, 5, -5]) {
      const { ticks } = linearScale(value, value, 5);
      expect(ticks[0]?.value).toBeLessThan(value);
      expect(ticks.at(-1)?.value).toBeGreaterThan(value);
    }
  });
});

describe("text and numbers of a picture", () => {
  it("no sign on a zero", () => {
    expect([fixed(-0.004), fixed(-0.006), fixed(0)]).toEqual(["0", "-0.01", "0"]);
  });

  it("the end of a name is kept where it fits, and given up where it does not", () => {
    const [name, tail] = ["Upper rear bank-L1L2-12.3", "-L1L2-12.3"];
    expect(shortened(name, 120, 12, false, tail)).toMatch(/^U.*…-L1L2-12\.3$/);
    expect(shortened(name, 60, 12, false, tail)).toMatch(/^U[^…]*…$/);
  });

  it("Greek and Cyrillic are measured, so that nothing squeezes them; other scripts are held to their room", () => {
    const squeezed = (title: string) => {
      const svg = curveChart({
        title,
        x: { label: "x" },
        y: { label: "y" },
        series: [{ label: "s", points: [{ x: 1, y: 1 }] }],
      });
      return everything(parsed(svg)).some(
        ({ text, attributes }) => text === title && attributes["textLength"] !== undefined,
      );
    };
    expect([squeezed("Нагрев"), squeezed("Θέρμανση"), squeezed("加熱")]).toEqual([false, false, true]);
  });
});
