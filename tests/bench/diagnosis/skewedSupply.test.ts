/**
 * Supplies out of balance by more than 6 %. The readings come from plane geometry and Ohm's law alone: three line voltages are the sides
 * of a triangle whose corners are the lines; a delta's branch carries its side over its ohms, a star's point is the mean of the corners,
 * weighted by conductance.
 */
import { diagnose } from "electroheat/bench";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { amps, asked, bank, firstFaults, pairs, probabilityOf, topOf, volts3 } from "./sheets.ts";

type Three = readonly [number, number, number];
type Point = readonly [number, number];

const tenth = (value: number): number => Math.round(value * 10) / 10;

function corners([a, b, c]: Three): readonly [Point, Point, Point] {
  const x = (a * a + c * c - b * b) / (2 * a);
  return [
    [0, 0],
    [a, 0],
    [x, -Math.sqrt(c * c - x * x)],
  ];
}

/** Line currents of three branches of these conductances, L1-L2, L2-L3, L3-L1 in delta, L1, L2, L3 in star. */
function lineAmps(connection: "star" | "delta", sides: Three, g: Three): number[] {
  const p = corners(sides);
  const at = (i: number): Point => p[i % 3] as Point;
  if (connection === "delta") {
    const branch = (i: number): Point => [
      (at(i)[0] - at(i + 1)[0]) * (g[i % 3] as number),
      (at(i)[1] - at(i + 1)[1]) * (g[i % 3] as number),
    ];
    return [0, 1, 2].map((i) => Math.hypot(branch(i)[0] - branch(i + 2)[0], branch(i)[1] - branch(i + 2)[1]));
  }
  const sum = g[0] + g[1] + g[2];
  const star = [0, 1].map((k) => (at(0)[k as 0] * g[0] + at(1)[k as 0] * g[1] + at(2)[k as 0] * g[2]) / sum);
  return [0, 1, 2].map((i) =>
    tenth(Math.hypot(at(i)[0] - (star[0] as number), at(i)[1] - (star[1] as number)) * (g[i] as number)),
  );
}

const OHMS = 12;
const SOUND: Three = [1 / OHMS, 1 / OHMS, 1 / OHMS];
const module = (connection: "star" | "delta"): object => ({ banks: [bank("A", connection, OHMS)] });
const sheet = (connection: "star" | "delta", sides: Three, g: Three) =>
  asked(module(connection), [...amps(lineAmps(connection, sides, g).map(tenth)), ...volts3(sides)]);

describe("a supply read further out of balance than 6 %", () => {
  it("480, 480, 400 V with the currents that belong to them: the supply, and nothing of the module", () => {
    const found = diagnose(sheet("delta", [480, 480, 400], SOUND));
    expect(found.outcome).toBe("explained");
    expect(firstFaults(found)).toEqual([{ kind: "supply unbalance" }]);
    expect(found.groups[0]?.probability).toBeGreaterThan(0.99);
    // (480 − 400) / mean of the three = 80 / 453.33 = 0.1765
    const [estimate] = topOf(found)[0]?.estimates ?? [];
    expect(estimate?.of).toBe("unbalance");
    expect(estimate?.value).toBeCloseTo(80 / (1360 / 3), 3);
    expect(estimate?.low).toBeLessThan(estimate?.value as number);
    expect(estimate?.high).toBeGreaterThan(estimate?.value as number);
    // A voltmeter of 0.5 % and two digits of 0.1 V tells two voltages some 2 V apart at most.
    expect((estimate?.high as number) - (estimate?.low as number)).toBeLessThan(0.02);
  });

  it("an open branch beside it is named with it, with single faults asked for", () => {
    const found = diagnose(sheet("delta", [480, 480, 400], [0, 1 / OHMS, 1 / OHMS]));
    expect(found.outcome).toBe("explained");
    expect(firstFaults(found)).toEqual([
      { kind: "supply unbalance" },
      { kind: "element open", element: "A-L1L2" },
    ]);
  });

  it("in a star with an open branch one voltage drives nothing: unequal it is, or misread", () => {
    // With A-L1 open only L2-L3 drives a current, 480/24 = 20 A; no amps belong to the 400 V of L3-L1.
    const found = diagnose(sheet("star", [480, 480, 400], [0, 1 / OHMS, 1 / OHMS]));
    const open = { kind: "element open", element: "A-L1" } as const;
    const misread = { kind: "misread", reading: 5, of: { kind: "voltage", from: "L3", to: "L1" } } as const;
    const unequal = probabilityOf(found, [{ kind: "supply unbalance" }, open]);
    const slip = probabilityOf(found, [open, misread]);
    expect(unequal).toBeGreaterThan(0.05);
    expect(slip).toBeGreaterThan(0.05);
    expect(found.groups[0]?.explanations.every(({ faults }) => faults.length > 1)).toBe(true);
  });

  it("turns short beside it are estimated: a quarter of them", () => {
    const found = diagnose(sheet("delta", [480, 480, 400], [1 / (0.75 * OHMS), 1 / OHMS, 1 / OHMS]));
    const one = topOf(found).find(({ faults }) => faults[1]?.kind === "shorted turns");
    expect(one?.faults[1]).toEqual({ kind: "shorted turns", element: "A-L1L2" });
    const turns = one?.estimates.find(({ of }) => of === "turns shorted");
    expect(turns?.fault).toBe(1);
    expect(turns?.low).toBeLessThan(0.25);
    expect(turns?.high).toBeGreaterThan(0.25);
    expect(one?.estimates.find(({ of }) => of === "unbalance")?.fault).toBe(0);
  });

  it("volts far apart beside equal amps are misread, and no element that evens them out", () => {
    const equal = lineAmps("delta", [480, 480, 480], SOUND).map(tenth);
    const found = diagnose(asked(module("delta"), [...amps(equal), ...volts3([480, 480, 400])]));
    expect(firstFaults(found)).toEqual([
      { kind: "misread", reading: 5, of: { kind: "voltage", from: "L3", to: "L1" } },
    ]);
    expect(found.warnings.map(({ path }) => path)).toEqual(["readings.5.reads"]);
  });

  it("a voltage longer than the other two together is no supply's: misread", () => {
    // 4,800 V written for 480 V: no triangle has the sides 480, 481 and 4,800.
    const equal = lineAmps("delta", [480, 480, 480], SOUND).map(tenth);
    const found = diagnose(asked(module("delta"), [...amps(equal), ...volts3([480, 481, 4800])]));
    expect(firstFaults(found)).toEqual([
      { kind: "misread", reading: 5, of: { kind: "voltage", from: "L3", to: "L1" } },
    ]);
    expect(found.warnings.map(({ path }) => path)).toContain("readings.5.reads");
  });

  it("a line wire on the neutral is a supply and no slip: two voltages are the plate's over √3", () => {
    const found = diagnose(asked(module("delta"), [...pairs([8, 8, 8]), ...volts3([480, 277, 277])]));
    expect(firstFaults(found)).toEqual([{ kind: "supply unbalance" }]);
    expect(found.warnings).toEqual([]);
  });

  it("a line lost with the load feeding back to it is a lost line: the triangle is flat", () => {
    // Delta of three 12 Ω with L3 off: L3 stands in the middle of L1-L2, 240 V from both; 480/12 + 480/24 = 60 A.
    const found = diagnose(asked(module("delta"), [...amps([60, 60, 0]), ...volts3([480, 240, 240])]));
    expect(firstFaults(found)).toEqual([{ kind: "lost line", line: "L3" }]);
  });

  it("no prior, no such supply", () => {
    const question = sheet("delta", [480, 480, 400], SOUND);
    const found = diagnose({ ...question, priors: { supplyUnbalance: 0 } });
    const kinds = found.groups.flatMap(({ explanations }) =>
      explanations.flatMap(({ faults }) => faults.map(({ kind }) => kind)),
    );
    expect(kinds).not.toContain("supply unbalance");
  });

  it("whatever the three voltages, and read twice over or the other way round", () => {
    fc.assert(
      fc.property(
        fc.constantFrom("star" as const, "delta" as const),
        fc.integer({ min: 455, max: 505 }),
        fc.integer({ min: 455, max: 505 }),
        fc.integer({ min: 330, max: 420 }),
        fc.nat(2),
        (connection, a, b, c, turn) => {
          const order = [a, b, c];
          const sides = [0, 1, 2].map((i) => order[(i + turn) % 3]) as unknown as Three;
          const back = volts3(sides).map((one) =>
            one.kind === "voltage" ? { ...one, from: one.to, to: one.from } : one,
          );
          const question = sheet(connection, sides, SOUND);
          const found = diagnose({ ...question, readings: [...question.readings, ...back] });
          expect(found.outcome).toBe("explained");
          expect(firstFaults(found)).toEqual([{ kind: "supply unbalance" }]);
          const spread = (3 * (Math.max(a, b, c) - Math.min(a, b, c))) / (a + b + c);
          expect(topOf(found)[0]?.estimates[0]?.value).toBeCloseTo(spread, 2);
        },
      ),
      { numRuns: 60 },
    );
  });
});
