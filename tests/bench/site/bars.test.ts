/** Bars to cut, by hand and against a printed table of bar resistance. */
import { assessModule, type RecordBars } from "electroheat/bench";
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

describe("bars for a current", () => {
  const RISE = "rise of the bar by its own heat, plate current";
  // DIN 43671:1975, bare copper, 35 °C air, 30 K: 12 × 2 mm carries 108 A, which is 90 kW at 480 V.
  const amps = 90_000 / (Math.sqrt(3) * 480);
  const small = { width: "12 mm", hole: "6.5 mm", overhang: "10 mm" };
  it("are judged by the rise that the table of bars is made for", () => {
    expect(the(assess({ ...small, thickness: "2 mm" }, amps).figures, RISE).verdict).toBe("within");
    // Half the section has twice the resistance on nearly the same surface.
    const half = the(assess({ ...small, thickness: "1 mm" }, amps).figures, RISE);
    expect(half.verdict).toBe("outside");
    const whole = numberOf(assess({ ...small, thickness: "2 mm" }, amps).figures, RISE);
    expect((half.value as number) / whole).toBeGreaterThan(1.8);
    expect((half.value as number) / whole).toBeLessThan(2.5);
    expect(the(assess({ ...small, thickness: "0.2 mm" }, 350).figures, RISE)).toMatchObject({
      value: null,
      verdict: "outside",
    });
    expect(assess({}, null).figures.some(({ label }) => label === RISE)).toBe(false);
  });

  it("that are too small are told of before they are cut", () => {
    const job = (thickness: string) =>
      assessModule({
        title: "invented dryer",
        nameplate: { power: "90 kW", voltage: "480 V" },
        wiring: { banks: [{ id: "A", connection: "star" }] },
        bars: [{ ...bar, ...small, id: "line bar", thickness }],
      });
    const { answer, nextSteps } = job("1 mm");
    expect(answer[0]).toMatch(/bar line bar: rise of the bar by its own heat.*30 K at most/);
    expect(nextSteps[0]?.action).toMatch(/^Do not cut bar line bar/);
    expect(job("3 mm").answer[0]).not.toContain("line bar");
  });
});

describe("bars that cannot be", () => {
  it("have a hole that runs out of the end or into the next one", () => {
    const paths = (more: Partial<RecordBars>) =>
      refused(() => assessBars(read({ bars: [{ ...bar, ...more }] }), null)).map(({ path }) => path);
    // A hole of 8.5 mm reaches 4.25 mm from its middle.
    expect(paths({ overhang: "4 mm" })).toEqual(["bars.0.overhang"]);
    expect(paths({ overhang: "4.25 mm" })).toEqual(["bars.0.overhang"]);
    expect(paths({ pitch: "8 mm" })).toEqual(["bars.0.pitch"]);
    expect(assess({ overhang: "4.3 mm" }).length).toBeGreaterThan(0);
  });

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
