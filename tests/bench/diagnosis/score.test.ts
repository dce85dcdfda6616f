/** The scorer of the simulated bench on answers made up here: what it counts together and what it does not. */
import type { DiagnosedFault, Diagnosis } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import {
  allExplanations,
  branchKey,
  keyOf,
  likeliest,
  mark,
  summedBy,
} from "../../../benchmarks/diagnosis/score.ts";
import { simulate } from "../../../benchmarks/diagnosis/simulate.ts";

type Member = readonly [readonly DiagnosedFault[], number];

const open = (element: string): DiagnosedFault => ({ kind: "element open", element });
const JOINT: DiagnosedFault = { kind: "joint", place: "L1" };
const TWINS: readonly Member[] = [
  [[JOINT], 0.3],
  [[open("A-L1-1")], 0.25],
  [[open("A-L1-2")], 0.25],
];

/** An answer with these groups, and a module whose truth is an open element A-L1-2. */
function marked(groups: readonly (readonly Member[])[]): ReturnType<typeof mark> {
  const answer = {
    outcome: "explained",
    groups: groups.map((members) => ({
      probability: members.reduce((sum, [, probability]) => sum + probability, 0),
      explanations: members.map(([faults, probability]) => ({
        faults,
        probability,
        logLikelihood: 0,
        estimates: [],
      })),
    })),
  } as unknown as Diagnosis;
  const drawn = simulate(1, 0);
  return mark({ ...drawn, truth: [{ fault: open("A-L1-2"), parameters: [] }] }, answer, 0);
}

describe("the scorer", () => {
  it("takes a group by the sum of its members", () => {
    const one = marked([TWINS, [[[], 0.2]]]);
    expect(one.groups[0]).toBeCloseTo(0.8, 12);
    expect(one.group).toBe(0);
    expect(one.addsUp).toBe(true);
    const short = marked([TWINS]);
    expect(short.addsUp).toBe(false);
  });

  it("adds up members that amount to the same: two twins say their branch and kind louder than one joint", () => {
    const one = marked([TWINS, [[[], 0.2]]]);
    expect([one.first, one.firstBranch, one.firstKind]).toEqual([false, true, true]);
    const outvoted = marked([
      [[[JOINT], 0.6], ...TWINS.slice(1).map(([faults]): Member => [faults, 0.1])],
      [[[], 0.2]],
    ]);
    expect([outvoted.first, outvoted.firstBranch, outvoted.firstKind]).toEqual([false, false, false]);
  });

  it("takes the first of equals, and the truth wherever it is listed, once", () => {
    const equal = marked([TWINS.slice(1), [[[], 0.5]]]);
    expect(equal.first).toBe(false);
    const twice = marked([
      [
        [[open("A-L1-2")], 0.4],
        [[open("A-L1-2")], 0.3],
      ],
      [[[], 0.3]],
    ]);
    expect(twice.truthProbability).toBeCloseTo(0.7, 12);
    expect(allExplanations([twice])).toEqual([
      [expect.closeTo(0.7, 12), true],
      [0.3, false],
    ]);
  });

  it("names a set of faults alike in any order", () => {
    expect(keyOf([open("A-L1"), JOINT])).toBe(keyOf([JOINT, open("A-L1")]));
    const sums = summedBy(
      [
        { faults: [JOINT, open("A-L1-1")], probability: 0.1 },
        { faults: [open("A-L1-2"), JOINT], probability: 0.2 },
      ],
      branchKey,
    );
    expect([...sums.values()]).toEqual([expect.closeTo(0.3, 12)]);
    expect(likeliest(new Map())).toBeUndefined();
  });
});
