/**
 * One of several like elements of a branch: which it is, no reading of the whole branch tells, and nothing that follows depends on it. Expected
 * values by Ohm and by phasor addition by hand; the words are common practice without a published source.
 */
import { assessModule, type BenchRecord, type DiagnosedFault, type Explanation } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import {
  faultWithin,
  likeExplanations,
  likeWords,
} from "../../../src/bench/diagnosis/telling/likeElements.ts";

const LINES = ["L1", "L2", "L3"] as const;
const SIDES = ["A-L1L2", "A-L2L3", "A-L3L1"];
/** 30 kW at 480 V in delta: 480²/10000 a side. */
const SIDE = 23.04;
const assess = (elementsInParallel: number, asFound: NonNullable<BenchRecord["asFound"]>) =>
  assessModule({
    title: "invented duct heater",
    nameplate: { power: "30 kW", voltage: "480 V" },
    wiring: { banks: [{ id: "A", connection: "delta", elementsInParallel }] },
    supply: { v12: "480.0 V", v23: "480.0 V", v31: "480.0 V" },
    instruments: {
      ohmmeter: { ofReading: 0.005, digits: 3, leads: "taken off" },
      clamp: { ofReading: 0.02, digits: 5 },
      voltmeter: { ofReading: 0.005, digits: 2 },
    },
    tolerance: { low: -0.05, high: 0.1 },
    asFound,
  });
const alone = (first: number) => ({
  ohms: [first, SIDE, SIDE].map((reads, i) => ({
    from: LINES[i] as string,
    to: LINES[(i + 1) % 3] as string,
    alone: SIDES[i] as string,
    reads: `${reads.toFixed(2)} Ω`,
  })),
});

describe("one of three elements side by side open, seen by amps alone", () => {
  // Of a side that carries 2/3: √(4/9 + 2/3 + 1)/√3 = 0.839 of 36.1 A on its two lines; 8/9 of the power is left.
  const { answer, nextSteps } = assess(3, {
    currents: [30.3, 30.3, 36.1].map((reads, i) => ({ at: LINES[i] as string, reads: `${reads} A` })),
  });
  it("is told as one of them, not as three in doubt", () => {
    expect(answer[0]).toBe("One of elements A-L1L2-1, A-L1L2-2 and A-L1L2-3 open (over 99.9 %).");
  });
  it("is looked for element by element", () => {
    expect(nextSteps[0]).toEqual({
      action: "Isolate, lift the links of branch A-L1L2 and read its elements one by one.",
      reason: "One of elements A-L1L2-1, A-L1L2-2 and A-L1L2-3 open (over 99.9 %).",
      about: ["A-L1L2-1", "A-L1L2-2", "A-L1L2-3"],
    });
  });
  it("runs on as any of them lets it", () => {
    expect(answer[2]).toMatch(
      /^Not before the insulation is read; then it may run until parts come at 89 % of its power with unequal lines, if .*: no survivor carries more than when sound;/,
    );
  });
});

it("one of twelve, which its own reading does not put outside the tolerance, is not counted twice", () => {
  // 12/11 of a side; 35/36 of the power is left, and lines at 0.958 of 36.1 A differ by less than a twentieth.
  const { answer } = assess(12, alone((SIDE * 12) / 11));
  expect(answer[0]).toBe("One of 12 elements of A-L1L2 open (over 99.9 %).");
  expect(answer[2]).toContain("may run until parts come at 97 % of its power, if");
});

it("another fault of one of them is told so too, beside what is not excluded", () => {
  const { answer } = assess(3, alone(20.5));
  expect(answer[0]).toMatch(
    /; one of elements A-L1L2-1, A-L1L2-2 and A-L1L2-3 off its value \(\d\d %\); these readings do not exclude turns of one of elements A-L1L2-1, A-L1L2-2 and A-L1L2-3 shorted \(\d\d %\)\.$/,
  );
});

describe("explanations put together", () => {
  const one = (probability: number, ...faults: readonly DiagnosedFault[]): Explanation => ({
    ...{ faults, probability, unseen: [], wiring: 0, prior: 0.1, estimates: [], logLikelihood: 0 },
    ...{ chiSquare: 0, degreesOfFreedom: 1, pValue: 0.5, predicted: [] },
  });
  const open = (element: string): DiagnosedFault => ({ kind: "element open", element });
  const told = (...all: readonly Explanation[]) =>
    likeExplanations(all).map((like) => [likeWords(like), Number(like.probability.toFixed(9))]);

  it("are those of one kind in one branch and one wiring, the most probable first", () => {
    expect(
      told(
        one(0.3, open("B-L2")),
        one(0.2, open("A-L1-1")),
        one(0.2, open("A-L1-2")),
        one(0.1, open("A-L2-1")),
        one(0.1, { kind: "shorted turns", element: "A-L1-1" }),
        { ...one(0.05, open("A-L1-3")), wiring: 1 },
      ),
    ).toEqual([
      ["one of elements A-L1-1 and A-L1-2 open", 0.4],
      ["element B-L2 open", 0.3],
      ["element A-L2-1 open", 0.1],
      ["turns of element A-L1-1 shorted", 0.1],
      ["element A-L1-3 open, if wired as alternative 1", 0.05],
    ]);
  });
  it("are not those of two faults, nor of none", () => {
    const two = one(0.2, open("A-L1-1"), open("A-L2-1"));
    expect(told(two, one(0.2, open("A-L1-2"), open("A-L2-1")), one(0.1), one(0.1))).toHaveLength(4);
    expect(faultWithin([two])).toBeNull();
    expect(faultWithin([])).toBeNull();
    expect(faultWithin([one(0.5)])).toBeNull();
  });
  it("lie within one branch where nothing else is among them", () => {
    const within = [one(0.5, open("A-L1-1")), one(0.5, open("A-L1-2"))];
    expect(faultWithin(within)).toEqual({
      branch: "A-L1",
      kind: "element open",
      elements: ["A-L1-1", "A-L1-2"],
    });
    expect(faultWithin([...within, one(0.1, open("A-L2-1"))])).toBeNull();
    expect(faultWithin([one(1, open("A-L1"))])?.branch).toBe("A-L1");
    const strings = ["A-1-L1L2-1.2", "A-1-L1L2-3.1"].map((id) => one(0.5, open(id)));
    expect(faultWithin(strings)?.branch).toBe("A-1-L1L2");
    expect(faultWithin([one(1, open("B-L1.2"))])?.branch).toBe("B-L1");
  });
});
