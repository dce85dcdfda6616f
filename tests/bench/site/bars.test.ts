/** Bars to cut, by hand and against a printed table of bar resistance. */
import type { RecordBars } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { assessBars } from "../../../src/bench/site/bars.ts";
import { numberOf, read, refused, the } from "./made.ts";

const bar: RecordBars = {
  id: "star bars",
  count: 3,
  studs: 3,
  pitch: "45 mm",
  overhang: "12 mm",
  width: "20 mm",
  thickness: "3 mm",
  hole: "8.5 mm",
  kerf: "2 mm",
};
const assess = (more: Partial<RecordBars> = {}, plateCurrent: number | null = 72.1688) => {
  const [only] = assessBars(read({ bars: [{ ...bar, ...more }] }), plateCurrent as never);
  if (only === undefined) throw new Error("no bar");
  return only;
};

describe("bars to cut", () => {
  it("have their length, stock and mass", () => {
    const { length, stock, mass, count } = assess();
    expect(count).toBe(3);
    // By hand: 2·45 + 2·12 mm; three of them and three cuts; 20 × 3 mm at 8890 kg/m³ (IEC 60028).
    expect(length).toBeCloseTo(0.114, 12);
    expect(stock).toBeCloseTo(3 * 0.116, 12);
    expect(mass).toBeCloseTo(3 * 0.114 * 60e-6 * 8890, 12);
    const { kerf: _, ...noKerf } = bar;
    const [customary] = assessBars(read({ bars: [noKerf] }), null);
    expect(customary?.stock).toBeCloseTo(3 * 0.117, 12);
  });

  it("carry the plate current on the section left by the hole", () => {
    const { figures } = assess();
    expect(numberOf(figures, "section net of the hole")).toBeCloseTo(34.5e-6, 15);
    // 72.1688 A is 60 kW at 480 V; over 34.5 mm².
    expect(numberOf(figures, "current density at plate current")).toBeCloseTo(72.1688 / 34.5e-6, 6);
    expect(the(assess({}, null).figures, "current density at plate current").value).toBeNull();
  });

  it("have the resistance that the table of copper bars prints", () => {
    // Source: Copper Development Association table of C11000 bars, 20 °C: 1/4 × 1 in 32.9 µΩ a foot. Bars there have 99 % IACS, here 100 %.
    const { figures } = assess({ studs: 2, pitch: "12 in", width: "1 in", thickness: "0.25 in" });
    expect(numberOf(figures, "resistance of a bar, first stud to last, 20 °C") / 32.9e-6).toBeCloseTo(
      0.99,
      2,
    );
  });
});

describe("bars that cannot be", () => {
  it("are refused by path", () => {
    const issues = refused(() =>
      assessBars(read({ bars: [bar, { ...bar, hole: "20 mm" }, { ...bar, count: 2000 }] }), null),
    );
    expect(issues.map(({ path }) => path)).toEqual(["bars.1.hole", "bars.2.count"]);
  });

  it("none in the record, none to cut", () => {
    expect(assessBars(read({}), null)).toEqual([]);
  });
});
