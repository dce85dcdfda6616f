/**
 * Verdicts just below, at and just above a limit. Rule: JCGM 106:2012 clause 8 (guarded acceptance and rejection), the limits
 * themselves within. Expected verdicts from the rule in words, not from the code.
 */
import { assessModule, type BenchRecord } from "electroheat/bench";
import { judge, type Verdict } from "electroheat/decision";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const verdictOf = (value: number, halfWidth: number, low?: number, high?: number): Verdict =>
  judge({
    value,
    halfWidth,
    ...(low === undefined ? {} : { low }),
    ...(high === undefined ? {} : { high }),
    rule: "test",
  }).verdict;

describe("a value without uncertainty", () => {
  it.each([
    [0.949999999999, "outside"],
    [0.95, "within"],
    [0.950000000001, "within"],
    [1.049999999999, "within"],
    [1.05, "within"],
    [1.05000000001, "outside"],
  ] as const)("%d between 0.95 and 1.05 is %s", (value, expected) => {
    expect(verdictOf(value, 0, 0.95, 1.05)).toBe(expected);
  });

  it("a limit that floats cannot hold decides as on paper: 3 × 0.1 against 0.3", () => {
    expect(verdictOf(0.1 + 0.2, 0, undefined, 0.3)).toBe("within");
    expect(verdictOf(0.1 + 0.2, 0, 0.3)).toBe("within");
  });
});

describe("a value with uncertainty, lower limit 10", () => {
  it.each([
    // [value, half-width, verdict]: the whole interval must clear the limit.
    [10.2, 0.2, "within"],
    [10.2, 0.20000001, "undecided"],
    [10.19999999, 0.2, "undecided"],
    [10, 0.2, "undecided"],
    [9.8, 0.2, "undecided"],
    [9.79999999, 0.2, "outside"],
    [9.8, 0.19999999, "outside"],
  ] as const)("%d ± %d is %s", (value, halfWidth, expected) => {
    expect(verdictOf(value, halfWidth, 10)).toBe(expected);
    // Mirrored about 0 it is an upper limit.
    expect(verdictOf(-value, halfWidth, undefined, -10)).toBe(expected);
  });

  it("an interval wider than both limits is undecided, never within", () => {
    expect(verdictOf(1, 0.2, 0.95, 1.05)).toBe("undecided");
  });

  it("more uncertainty never turns a verdict round: only to undecided", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -20, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        (value, half, more) => {
          const [before, after] = [verdictOf(value, half, -3, 7), verdictOf(value, half + more, -3, 7)];
          expect(after === before || after === "undecided").toBe(true);
        },
      ),
      { numRuns: 1000 },
    );
  });
});

describe("a branch against the tolerance of its record", () => {
  // Star of 10 Ω branches: 100² V / 1000 W. A meter of half a digit of 0.1 Ω: limit 0.05, two standard uncertainties 0.1/√3.
  const half = 0.1 / Math.sqrt(3);
  function verdict(low: number, high: number): Verdict | undefined {
    const record: BenchRecord = {
      title: "t",
      nameplate: { power: 1000, voltage: 100 },
      wiring: { banks: [{ id: "A", connection: "star" }] },
      instruments: { ohmmeter: { ofReading: 0, digits: 0, leads: "taken off" } },
      tolerance: { low, high },
      asFound: { ohms: [{ from: "L1", to: "S", reads: "9.7 Ω" }] },
    };
    return assessModule(record).asFound?.resistances.branches[0]?.judgement?.verdict;
  }
  const atLimit = (ohms: number): number => ohms / 10 - 1;

  it.each([
    ["just inside", atLimit(9.7 - half) - 1e-9, "within"],
    ["at the limit", atLimit(9.7 - half), "within"],
    ["just across", atLimit(9.7 - half) + 1e-9, "undecided"],
    ["in the middle", atLimit(9.7), "undecided"],
    ["top still touching", atLimit(9.7 + half), "undecided"],
    ["clear of it", atLimit(9.7 + half) + 1e-9, "outside"],
  ] as const)("lower limit %s: %d is %s", (_, low, expected) => {
    expect(verdict(low, 0.1)).toBe(expected);
  });

  it("no tolerance, no verdict: never a silent one", () => {
    const record: BenchRecord = {
      title: "t",
      nameplate: { power: 1000, voltage: 100 },
      wiring: { banks: [{ id: "A", connection: "star" }] },
      instruments: { ohmmeter: { ofReading: 0, digits: 0, leads: "taken off" } },
      asFound: { ohms: [{ from: "L1", to: "S", reads: "5.0 Ω" }] },
    };
    const assessment = assessModule(record);
    expect(assessment.asFound?.resistances.branches[0]?.judgement).toBeNull();
    expect(assessment.notTested.join()).toContain("no tolerance");
  });
});
