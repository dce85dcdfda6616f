/**
 * The diagnosis on a small simulated bench: seeded modules, faults, instruments and readings by a generator that shares
 * no physics with the library (`benchmarks/diagnosis`, held to published cases in simulatedWorld.test.ts). The reaches
 * are those the library promises; each margin is three standard errors of the binomial law for the number of modules
 * drawn here. `npm run bench:diagnosis` is the same with more than 10,000 modules.
 */
import { diagnose } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { benchStretch } from "../../benchmarks/diagnosis/bench.ts";
import { monteCarlo } from "../../benchmarks/diagnosis/monteCarlo.ts";
import {
  allGroups,
  calibrationError,
  calibrationNoise,
  keyOf,
  type Mark,
  share,
  standardError,
  topAnswers,
} from "../../benchmarks/diagnosis/score.ts";
import { type Population, simulate } from "../../benchmarks/diagnosis/simulate.ts";

const SEED = 7_001;
const MODULES = 504;

const run = (population: Population, count: number): readonly Mark[] =>
  benchStretch({ seed: SEED, population, from: 0, to: count, step: 1, mostElements: 24 }, diagnose, () => 0);
const main = run("main", MODULES);
const healthy = main.filter(({ kind }) => kind === "sound");

/** Not above a reach by more than chance allows. */
function atMost(observed: number, reach: number, count: number): void {
  expect(observed).toBeLessThanOrEqual(reach + 3 * standardError(reach, count));
}
function atLeast(observed: number, reach: number, count: number): void {
  expect(observed).toBeGreaterThanOrEqual(reach - 3 * standardError(reach, count));
}

describe("the diagnosis on simulated modules", () => {
  it("answers every question, and was asked about every kind of fault", () => {
    expect(main.filter(({ refused }) => refused !== undefined)).toEqual([]);
    expect(main.filter(({ addsUp }) => !addsUp).map(({ index }) => index)).toEqual([]);
    const kinds = new Set(main.flatMap(({ kind }) => kind.split(" + ")));
    expect(kinds.size).toBe(11);
  });

  it("means what it says: expected calibration error at most 0.03", () => {
    for (const pairs of [topAnswers(main), allGroups(main)])
      expect(calibrationError(pairs)).toBeLessThanOrEqual(0.03 + calibrationNoise(pairs));
  });

  it("is right in at least 93 % of the answers it gives at 0.95 or more", () => {
    const sure = topAnswers(main).filter(([stated]) => stated >= 0.95);
    expect(sure.length).toBeGreaterThan(MODULES / 4);
    atLeast(sure.filter(([, right]) => right).length / sure.length, 0.93, sure.length);
  });

  it("raises a false alarm on at most 1 % of healthy modules", () => {
    expect(healthy.length).toBeGreaterThan(MODULES / 4);
    const alarms = share(healthy, ({ topHasSound }) => !topHasSound);
    atMost(alarms, 0.01, healthy.length);
  });

  it("has the truth in its first group as often as it claims", () => {
    const stated = main.reduce((sum, { groups }) => sum + (groups[0] ?? 0), 0) / main.length;
    atLeast(
      share(main, ({ group }) => group === 0),
      stated - 0.03,
      main.length,
    );
    // Every fault drawn here is one that the diagnosis lists.
    atMost(
      share(main, ({ group }) => group < 0),
      0.01,
      main.length,
    );
  });

  it("finds opens where the readings show them: first explanation, branch lifted or clamped", () => {
    const shown = /each branch|branches and lines|branch currents|everything/;
    const opens = main.filter(({ kind, plan }) => kind === "element open" && shown.test(plan));
    expect(opens.length).toBeGreaterThan(10);
    atLeast(
      share(opens, ({ firstBranch }) => firstBranch),
      0.9,
      opens.length,
    );
  });

  it("gives 95 % intervals that hold the truth 95 % of the time", () => {
    const intervals = main.flatMap(({ covered }) => covered);
    expect(intervals.length).toBeGreaterThan(60);
    expect(intervals.filter(({ finite }) => !finite)).toEqual([]);
    atLeast(intervals.filter(({ inside }) => inside).length / intervals.length, 0.95, intervals.length);
  });

  it("stays humble about a joint of 50 mΩ that only a clamp meter looks at", () => {
    const marks = run("invisible", 60);
    for (const { sound, likeliestJoint, joints } of marks) {
      expect(sound).toBeLessThan(0.99);
      expect(joints).toBeLessThan(0.99);
      expect(likeliestJoint).toBeLessThan(0.5);
    }
    // Prior share of all joints: odds 0.8 × 0.16 against a total of about 1.84.
    const mean = marks.reduce((sum, { joints }) => sum + joints, 0) / marks.length;
    expect(mean).toBeGreaterThan(0.07 / 2);
    expect(mean).toBeLessThan(0.07 * 2);
  });

  it("names banks without supply, one, several or all, or on one line", () => {
    const marks = run("unfed", 140);
    const alone = marks.filter(({ kind }) => kind.split(" + ").every((one) => one === "unfed bank"));
    expect(alone.length).toBeGreaterThan(80);
    // Small banks among large ones hide behind the clamp's own error: humble there, and seldom wrong where sure.
    atLeast(
      share(alone, ({ group }) => group === 0),
      0.9,
      alone.length,
    );
    const sure = topAnswers(alone).filter(([stated]) => stated >= 0.95);
    atLeast(sure.filter(([, right]) => right).length / sure.length, 0.98, sure.length);
    atMost(
      share(marks, ({ outcome }) => outcome === "nothing fits"),
      0.03,
      marks.length,
    );
  });

  it("says that nothing fits after a blunder, and seldom otherwise", () => {
    const blunders = run("blunder", 60);
    atLeast(
      share(blunders, ({ outcome }) => outcome === "nothing fits"),
      0.85,
      blunders.length,
    );
    atMost(
      share(main, ({ outcome }) => outcome === "nothing fits"),
      0.01,
      main.length,
    );
  });
});

describe("the diagnosis against brute force", () => {
  // Worlds drawn at random and weighted by the probability of the very digits shown: nothing linear, nothing Gaussian.
  it.each([0, 1, 2, 3, 6, 7])("referee case %d", (index) => {
    const { input } = simulate(SEED, index, "referee");
    const stated = new Map(
      diagnose(input)
        .groups.flatMap(({ explanations }) => explanations)
        .map((one) => [keyOf(one.faults), one.probability]),
    );
    for (const { faults, probability, standardError: error } of monteCarlo(input, 1500, 5)) {
      const said = stated.get(keyOf(faults)) ?? 0;
      expect(Math.abs(said - probability), keyOf(faults)).toBeLessThan(0.03 + 4 * error);
    }
  });
});
