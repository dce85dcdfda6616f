/** Amps to accept and rises to act on, by hand and against the printed severity scales. */
import type { BenchRecord, DrawAssessment } from "electroheat/bench";
import { supplyFromNeutralVoltages } from "electroheat/circuit";
import { type SeverityScale, scanSeverity } from "electroheat/joint";
import { kelvins, ohms, volts } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { assessCommissioning } from "../../../src/bench/site/commissioning.ts";
import { scanLimits } from "../../../src/bench/site/scanLimits.ts";
import { read, the } from "./made.ts";

const lines = (current: number) => ["L1", "L2", "L3"].map((node) => ({ node, current: current as never }));
const made = (more: Partial<DrawAssessment> = {}, current = 36, u: number | null = 150): DrawAssessment => ({
  basis: "measured resistances",
  confirmed: true,
  atTarget: [],
  asFound: null,
  repaired: { power: 30_000 as never, standardUncertainty: u as never, lines: lines(current) },
  repairedAtPlateVoltage: { power: 30_000 as never, standardUncertainty: null, lines: lines(36) },
  deviationFromPlate: 0,
  ...more,
});
const clamp = { ofReading: 0.02, digits: 5, resolution: "0.1 A" };
const assess = (record: Partial<BenchRecord>, draw = made(), atTarget: readonly string[] = []) => {
  const found = assessCommissioning({ record: read(record), draw, atTarget });
  if (found === null) throw new Error("no draw");
  return found;
};
const L1 = (...asked: Parameters<typeof assess>) => the(assess(...asked).lines, "line current L1");

describe("amps to accept", () => {
  it("lie in a band of the draw's uncertainty and the clamp's accuracy", () => {
    // By hand: 36 A × 150 W/30 kW = 0.18 A; clamp 2 % of 36 A + 5 × 0.1 A = 1.22 A, rectangular; k = 2.
    const width = 2 * Math.hypot(0.18, 1.22 / Math.sqrt(3));
    const line = L1({ instruments: { clamp } });
    expect(line.halfWidth).toBeCloseTo(width, 12);
    expect(line.limit?.low).toBeCloseTo(36 - width, 12);
    expect(line.limit?.high).toBeCloseTo(36 + width, 12);
    expect(line.basis).toContain("uncertainty of the resistances, accuracy of the clamp");
    expect([line.verdict, line.caution]).toEqual([null, null]);
  });

  it("take the clamp's last digit from its readings where it is not given", () => {
    const { resolution: _, ...plain } = clamp;
    const asFound = { currents: [{ at: "L1", reads: "35.8 A" }] };
    expect(L1({ instruments: { clamp: plain }, asFound }).halfWidth).toBeCloseTo(
      L1({ instruments: { clamp } }).halfWidth as number,
      12,
    );
  });

  it("count the voltmeter where volts were measured", () => {
    const supply = { v12: "480 V", v23: "480 V", v31: "480 V" };
    const line = L1({ supply, instruments: { clamp, voltmeter: { ofReading: 0.01, digits: 0 } } });
    // 1 % of 36 A, rectangular.
    expect(line.halfWidth).toBeCloseTo(2 * Math.hypot(0.18, 1.22 / Math.sqrt(3), 0.36 / Math.sqrt(3)), 12);
    expect(line.basis).toContain("at the voltages measured");
    expect(L1({}).basis).toContain("at plate voltage");
  });

  it("reach as far as the tolerance of what nobody measured", () => {
    const tolerance = { low: -0.05, high: 0.1 };
    const nameplate = made({ basis: "nameplate", confirmed: false }, 36, null);
    const line = L1({ tolerance }, nameplate);
    // Ohm's law: a resistance 10 % high takes 1/1.1 of the current, 5 % low 1/0.95.
    expect(line.limit?.low).toBeCloseTo(36 / 1.1, 12);
    expect(line.limit?.high).toBeCloseTo(36 / 0.95, 12);
    expect(line.caution).toContain("do not prove the module");
    const renewed = L1({ tolerance }, made(), ["A-L3"]);
    expect(renewed.basis).toContain("(A-L3)");
    expect(renewed.limit?.low as number).toBeLessThan(36 / 1.1);
    // A branch that may be 0 Ω sets no upper limit.
    expect(L1({ tolerance: { low: -1, high: 0.1 } }, nameplate).limit?.high).toBeNull();
  });

  it("widen only where a branch at target reaches, when the network is known", () => {
    const wiring: BenchRecord["wiring"] = { banks: [{ id: "A", connection: "star" }], neutral: "connected" };
    const tolerance = { low: -0.05, high: 0.1 };
    const third = volts(480 / Math.sqrt(3));
    const of = (neutral: "connected" | "floating", line: string) => {
      const found = assessCommissioning({
        record: read({ wiring: { ...wiring, neutral }, tolerance }),
        draw: made({}, 36, null),
        atTarget: ["A-L3"],
        network: {
          repaired: new Map(["A-L1", "A-L2", "A-L3"].map((id) => [id, ohms(480 / Math.sqrt(3) / 36)])),
          supply: supplyFromNeutralVoltages({ voltages: [third, third, third] }),
        },
      });
      return the(found?.lines ?? [], `line current ${line}`).limit;
    };
    // On the neutral each line is its own circuit: L1 does not see A-L3, and L3 goes as 1/R (Ohm's law).
    expect(of("connected", "L1")?.low).toBeCloseTo(36, 9);
    expect(of("connected", "L1")?.high).toBeCloseTo(36, 9);
    expect(of("connected", "L3")?.low).toBeCloseTo(36 / 1.1, 9);
    expect(of("connected", "L3")?.high).toBeCloseTo(36 / 0.95, 9);
    // Floating, by Millman: with k = R/R3, I3 = I·3k/(2 + k) and I1 = I·√(1 + k + k²)·√3/(2 + k).
    const own = (k: number): number => (36 * 3 * k) / (2 + k);
    const other = (k: number): number => (36 * Math.sqrt(3 * (1 + k + k * k))) / (2 + k);
    expect(of("floating", "L3")?.low).toBeCloseTo(own(1 / 1.1), 9);
    expect(of("floating", "L3")?.high).toBeCloseTo(own(1 / 0.95), 9);
    expect(of("floating", "L1")?.low).toBeCloseTo(other(1 / 1.1), 9);
    expect(of("floating", "L1")?.high).toBeCloseTo(other(1 / 0.95), 9);
  });

  it("have no band without tolerance or accuracy", () => {
    expect(L1({}, made({ basis: "nameplate" }, 36, null)).limit).toBeNull();
    expect(L1({}, made({}, 36, null)).limit).toBeNull();
    expect(L1({ instruments: { clamp } }, made(), ["A-L3"]).caution).toContain("no tolerance");
  });

  it("say what the band is made of, and nothing that is not in it", () => {
    const supply = { v12: "480 V", v23: "480 V", v31: "480 V" };
    const measured = (at: string, band: string) =>
      `resistances (measured resistances) ${at}, full conduction${band}`;
    const [plate, volts3] = ["at plate voltage, none was measured", "at the voltages measured"];
    const u = "uncertainty of the resistances";
    expect(L1({ instruments: { clamp } }).basis).toBe(
      measured(plate, `; band of ${u}, accuracy of the clamp, k = 2`),
    );
    // Volts without their voltmeter have no accuracy to count.
    expect(L1({ supply, instruments: { clamp } }).basis).toBe(
      measured(volts3, `; band of ${u}, accuracy of the clamp, k = 2`),
    );
    expect(L1({ supply, instruments: { voltmeter: { ofReading: 0.01, digits: 0 } } }).basis).toBe(
      measured(volts3, `; band of ${u}, accuracy of the voltmeter, k = 2`),
    );
    const bare = L1({ supply }, made({}, 36, null));
    expect([bare.basis, bare.limit, bare.halfWidth]).toEqual([measured(volts3, ""), null, null]);
  });

  it("name the tolerance as people write it, and the branches that it is taken for", () => {
    const nameplate = made({ basis: "nameplate" }, 36, null);
    const of = (low: number, high: number, draw = nameplate, atTarget: readonly string[] = []) =>
      L1({ tolerance: { low, high } }, draw, atTarget).basis;
    const start = "resistances (nameplate) at plate voltage, none was measured, full conduction; band of";
    expect(of(-0.05, 0.125)).toBe(`${start} tolerance −5 % to +12.5 % of branches taken at target, k = 2`);
    expect(of(0, 1 / 30)).toBe(`${start} tolerance +0 % to +3.333 % of branches taken at target, k = 2`);
    expect(of(-0.05, 0.1, made(), ["A-L1", "A-L3"])).toBe(
      "resistances (measured resistances) at plate voltage, none was measured, full conduction; band of uncertainty of the resistances, tolerance −5 % to +10 % of branches taken at target (A-L1, A-L3), k = 2",
    );
  });

  it("come with the power, and with a neutral that nobody judges", () => {
    const { lines: found } = assess(
      {},
      made({ repaired: { ...made().repaired, lines: [...lines(36), { node: "N", current: 0.4 as never }] } }),
    );
    expect(the(found, "power")).toMatchObject({ value: 30_000, halfWidth: 300, unit: "W" });
    expect(the(found, "neutral current").limit).toBeNull();
  });

  it("are not known without a draw", () => {
    expect(assessCommissioning({ record: read({}), draw: null })).toBeNull();
  });

  it("always say who decides", () => {
    expect(assess({}).deferral).toContain("licensed electrician");
  });
});

describe("rises to act on", () => {
  const above = (
    scale: SeverityScale,
    comparison: string,
    load = 1,
  ): readonly (readonly [string | null, number])[] =>
    scanLimits(scale, load)
      .filter(({ label }) => label.includes(comparison))
      .map(({ name, value }) => [name, value as number] as const);

  it("are those of the scale at full load", () => {
    // Source: ANSI/NETA ATS-2003, Table 100.18: over ambient 1–10, 11–20, 21–40, above 40; over similar 1–3, 4–15, above 15 K.
    expect(above("neta-100.18", "the air").map(([, value]) => value)).toEqual([1, 10, 20, 40]);
    expect(above("neta-100.18", "like joint").map(([, value]) => value)).toEqual([1, 3, 15]);
    expect(above("neta-100.18", "the air").at(-1)?.[0]).toContain("repair immediately");
    // Source: practitioner's limit values: 20, 40, 60 K over ambient, 5, 20, 40 K between phases.
    expect(above("practitioner-limits", "the air")).toEqual([
      ["check", 20],
      ["urgent check", 40],
      ["critical", 60],
    ]);
    expect(above("practitioner-limits", "like joint").map(([, value]) => value)).toEqual([5, 20, 40]);
  });

  it("shrink with the load as a band of the exponent", () => {
    // 40 K at full load is 40·0.8^2 to 40·0.8^1.6 K at 80 %.
    const last = scanLimits("neta-100.18", 0.8)
      .filter(({ label }) => label.includes("the air"))
      .at(-1);
    expect((last?.value as number) - (last?.halfWidth as number)).toBeCloseTo(40 * 0.8 ** 2, 9);
    expect((last?.value as number) + (last?.halfWidth as number)).toBeCloseTo(40 * 0.8 ** 1.6, 9);
  });

  it.each([0.55, 0.8, 1])("agree with the grading of a rise at load %f", (load) => {
    for (const { label, value, halfWidth } of scanLimits("neta-100.18", load)) {
      const [, level] = /level (\d)/.exec(label) ?? [];
      const graded = (rise: number): number =>
        scanSeverity({
          rise: kelvins(rise),
          riseHalfWidth: kelvins(0),
          comparison: label.includes("the air") ? "ambient" : "similar",
          loadFraction: load,
          load: "full load",
          scale: "neta-100.18",
          emissivity: 0.95,
        }).atLeast;
      const [low, high] = [
        (value as number) - (halfWidth as number),
        (value as number) + (halfWidth as number),
      ];
      // Above the band every exponent grades it so; below the band none does.
      expect(graded(high * 1.001)).toBeGreaterThanOrEqual(Number(level));
      expect(graded(low * 0.999)).toBeLessThan(Number(level));
    }
  });

  it.each([0.1, 0.3, 0.49])("are not given at load %f", (load) => {
    for (const { value, caution } of scanLimits("neta-100.18", load)) {
      expect(value).toBeNull();
      expect(caution).toContain("of full load");
    }
  });

  it("are the scale's own above full load", () => {
    expect(scanLimits("neta-100.18", 1.2)).toEqual(scanLimits("neta-100.18", 1));
    expect(scanLimits("neta-100.18", 3)).toEqual(scanLimits("neta-100.18", 1));
  });

  it("are asked at the load of the day over the plate's", () => {
    const at90 = assess({}, made({}, 0.9 * 36)).scan;
    expect(at90).toEqual(scanLimits("neta-100.18", 0.9));
    // A neutral may carry more than a line where the lines differ; joints of the lines are scanned.
    const repaired = made({}, 0.9 * 36).repaired;
    const lost = { ...repaired, lines: [...repaired.lines, { node: "N", current: 36 as never }] };
    expect(assess({}, made({ repaired: lost })).scan).toEqual(scanLimits("neta-100.18", 0.9));
    const found = assessCommissioning({ record: read({}), draw: made(), scanRule: "practitioner-limits" });
    expect(found?.scan).toEqual(scanLimits("practitioner-limits", 1));
  });
});
