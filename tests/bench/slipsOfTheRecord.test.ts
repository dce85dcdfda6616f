/** A tolerance in per cent for a ratio, the same place read again and again, several branches in one sentence. Rules of the trade: common practice, no published source. */
import { assessModule, type BenchRecord } from "electroheat/bench";
import { isElectroheatError } from "electroheat/quantity";
import { describe, expect, it } from "vitest";

const star = (
  reads: readonly (readonly [line: string, ohms: string])[],
  more: Partial<BenchRecord> = {},
): BenchRecord => ({
  title: "invented paint dryer",
  nameplate: { power: "30 kW", voltage: "480 V" },
  temperatureFactor: 1.04,
  tolerance: { low: -0.05, high: 0.1 },
  wiring: { banks: [{ id: "A", connection: "star" }] },
  instruments: { ohmmeter: { ofReading: 0.005, digits: 2, leads: { shorted: "0.20 Ω" } } },
  asFound: { ohms: reads.map(([from, one]) => ({ from, to: "S", reads: one })) },
  ...more,
});

describe("a tolerance in per cent where a ratio is asked for", () => {
  const high = (one: number): BenchRecord =>
    star(
      [
        ["L1", "7.60 Ω"],
        ["L2", "7.58 Ω"],
        ["L3", "29.7 Ω"],
      ],
      { tolerance: { low: -0.05, high: one } },
    );

  it("is refused beyond 100 %: nothing is off by ten times and sound", () => {
    for (const one of [10, 5, 1.5]) {
      try {
        assessModule(high(one));
        expect.unreachable();
      } catch (error) {
        if (!isElectroheatError(error)) throw error;
        expect(error.issues.map(({ path, code }) => [path, code])).toEqual([
          ["tolerance.high", "out-of-range"],
        ]);
      }
    }
  });

  it("is warned of beyond half, either side, and not below", () => {
    const warned = (tolerance: { low: number; high: number }): readonly string[] =>
      assessModule({ ...high(0.1), tolerance }).warnings.map(({ path }) => path);
    expect(warned({ low: -0.05, high: 1 })).toEqual(["tolerance.high"]);
    expect(warned({ low: -1, high: 0.1 })).toEqual(["tolerance.low"]);
    expect(warned({ low: -0.05, high: 0.3 })).toEqual([]);
    expect(assessModule(high(1)).warnings[0]?.message).toContain("0.1 for 10 %");
  });
});

describe("words about several", () => {
  it("several bolted branches are as good as bolted", () => {
    const { answer } = assessModule(
      star([
        ["L1", "0.20 Ω"],
        ["L2", "0.21 Ω"],
        ["L3", "0.20 Ω"],
      ]),
    );
    expect(answer[2]).toBe("Do not energise it: A-L1, A-L2 and A-L3 are as good as bolted.");
  });

  it("a place that was read four times is to be repeated once", () => {
    const jumping = star([
      ["L1", "7.60 Ω"],
      ["L2", "7.58 Ω"],
      ...["7.61 Ω", "7.92 Ω", "7.59 Ω", "8.14 Ω"].map((one) => ["L3", one] as const),
    ]);
    const step = assessModule(jumping).nextSteps.find(({ action }) => action.startsWith("Repeat"));
    expect(step?.action).toMatch(/^Repeat L3 to S with clean, firm probes/);
    expect(step?.about).toEqual(["L3 to S"]);
  });
});
