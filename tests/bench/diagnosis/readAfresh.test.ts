/**
 * Faults and slips as people meet them, read by someone who did not write the diagnosis. What is expected is worked by hand: series and
 * parallel resistances, Ohm, the triangle of the line voltages.
 */
import { diagnose, diagnosisText, nextMeasurements } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { amps, asked, bank, firstFaults, pairs, probabilityOf, reading, topOf, volts3 } from "./sheets.ts";

const R = 7.2 * 1.025;
const STAR = { banks: [bank("A", "star", 7.2)] };
const DELTA = { banks: [bank("A", "delta", 21.6)] };
const OHMS = pairs([2 * R, 2 * R, 2 * R]);
/** A sound star on 480 V: 277 V over 7.38 Ω, hot. */
const SOUND_AMPS = 480 / Math.sqrt(3) / (R * 1.04);
const toFrame = (reads: readonly number[], lines = ["L1", "L2", "L3"]) =>
  reads.map((one, i) => reading({ kind: "insulation", from: lines[i], reads: one }));
const codes = (found: ReturnType<typeof diagnose>) => found.warnings.map(({ code, path }) => [code, path]);

describe("a wet module, read from each line with the links in", () => {
  const earthed = (found: ReturnType<typeof diagnose>): number =>
    found.groups
      .flatMap(({ explanations }) => explanations)
      .filter(({ faults }) =>
        faults.some(({ kind }) => kind === "earth fault" || kind === "earthed terminal"),
      )
      .reduce((sum, { probability }) => sum + probability, 0);
  const instrumentsOf = (resolution: number) => ({
    ohmmeter: { ofReading: 0.005, digits: 3, resolution: 0.01, leads: "taken off" },
    insulationTester: { ofReading: 0.05, digits: 2, resolution },
  });
  const of = (reads: readonly number[], resolution = 1e3) =>
    earthed(diagnose(asked(STAR, [...OHMS, ...toFrame(reads)], { instruments: instrumentsOf(resolution) })));

  // The coils between the lines are a few ohms: three readings of one and the same leakage say no more than one of them.
  it("is not more surely earthed for having been read three times", () => {
    const once = of([80e3]);
    expect(once).toBeGreaterThan(0.1);
    expect(once).toBeLessThan(0.5);
    // Half of the time damp is taken to change from reading to reading: 2 to 1 at the most, whatever the number of readings.
    for (const reads of [
      [80e3, 80e3],
      [80e3, 80e3, 80e3],
      [80e3, 82e3, 81e3],
    ]) {
      const often = of(reads);
      expect(often / (1 - often)).toBeLessThan((2.1 * once) / (1 - once));
      expect(often / (1 - often)).toBeGreaterThan((0.4 * once) / (1 - once));
    }
  });

  it("that dries while it is read is no earth fault at all", () => {
    expect(of([50e3, 80e3, 120e3])).toBeLessThan(0.01);
  });

  it("at a few ohms is earthed all the same", () => {
    expect(of([8, 8, 8], 0.1)).toBeGreaterThan(0.99);
  });
});

describe("the next measurement", () => {
  const live = (question: ReturnType<typeof asked>) => nextMeasurements(question).filter((one) => one.live);

  it("is under voltage where nothing is wrong but what is not known", () => {
    expect(live(asked(STAR, OHMS)).length).toBeGreaterThan(0);
  });

  it.each([0.2e4, 8e4, 9e5])("is never under voltage with %d Ω to the frame", (ohms) => {
    expect(live(asked(STAR, [...OHMS, ...toFrame([ohms])]))).toEqual([]);
  });

  it("is under voltage again from 1 MΩ", () => {
    expect(live(asked(STAR, [...OHMS, ...toFrame([1e6])])).length).toBeGreaterThan(0);
  });

  it("is not under voltage with elements of half the ohms, a feed still connected, a branch on the wrong line or a delta for a star", () => {
    for (const ohms of [
      [R, R, R],
      [0.1, 0.1, 0.1],
      [1.5 * R, "open", "open"],
      [(2 * R) / 3, (2 * R) / 3, (2 * R) / 3],
    ] as const)
      expect(live(asked(STAR, pairs(ohms)))).toEqual([]);
  });
});

describe("line voltages far apart", () => {
  // Amps of a star of 7.38 Ω, hot: distance of each corner of the triangle to its centroid, √(2·(a² + b²) − c²)/3, over the ohms; a delta of three times the ohms draws the same.
  const currents = ([v12, v23, v31]: readonly [number, number, number]): readonly number[] =>
    [
      [v12, v31, v23],
      [v12, v23, v31],
      [v23, v31, v12],
    ].map(([a = 0, b = 0, c = 0]) => Math.sqrt(2 * (a * a + b * b) - c * c) / 3 / (R * 1.04));

  it.each([
    [480, 480, 400],
    [500, 470, 440],
    [480, 430, 480],
  ] as const)("%d, %d and %d V with the amps that go with them are the supply's", (...volts) => {
    for (const module of [STAR, DELTA]) {
      const found = diagnose(asked(module, [...amps(currents(volts)), ...volts3(volts)]));
      expect(found.outcome).toBe("explained");
      expect(firstFaults(found)).toEqual([{ kind: "supply unbalance" }]);
      const spread = (Math.max(...volts) - Math.min(...volts)) / ((volts[0] + volts[1] + volts[2]) / 3);
      const [{ low = 0, high = 0 } = {}] = topOf(found)[0]?.estimates ?? [];
      expect(low).toBeLessThan(spread);
      expect(high).toBeGreaterThan(spread);
      expect(high - low).toBeLessThan(0.05);
    }
  });

  it("leave a lost line a lost line", () => {
    // L1 lost floats in the middle between L2 and L3: half of 480 V on either side; 480 V over two branches.
    const two = 480 / (2 * R * 1.04);
    const found = diagnose(asked(STAR, [...amps([0, two, two]), ...volts3([240, 480, 240])]));
    expect(firstFaults(found)).toEqual([{ kind: "lost line", line: "L1" }]);
  });
});

describe("what the readings imply and cannot be", () => {
  it("a joint with hundreds of volts across it is doubted: half of a line's amps, clamped on one of two wires", () => {
    const i = SOUND_AMPS;
    const found = diagnose(asked(STAR, [...amps([i / 2, i, i]), ...volts3([480, 480, 480])]));
    expect(firstFaults(found)[0]?.kind).toBe("joint");
    expect(codes(found)).toEqual([["suspicious", "readings.0.reads"]]);
    expect(found.warnings[0]?.message).toContain("was the clamp around every wire of L1");
  });

  it("a joint of tenths of an ohm is not", () => {
    // 0.8 Ω in L1 of the floating star; line currents by Millman's theorem are within 4 % of these.
    const found = diagnose(
      asked(STAR, [...pairs([2 * R + 0.8, 2 * R, 2 * R + 0.8]), ...amps([33.6, 35, 35])]),
    );
    expect(firstFaults(found)[0]?.kind).toBe("joint");
    expect(found.warnings).toEqual([]);
  });

  it("another supply's volts are asked after: a sound module of 480 V on 400 V", () => {
    const i = (SOUND_AMPS * 400) / 480;
    const found = diagnose(asked(STAR, [...amps([i, i, i]), ...volts3([400, 400, 400])]));
    expect(codes(found)).toEqual([["suspicious", "readings.3.reads"]]);
    expect(found.warnings[0]?.message).toContain("400 V between lines, where supply.lineVoltage says 480 V");
    const told = diagnose(
      asked(STAR, [...amps([i, i, i]), ...volts3([400, 400, 400])], { supply: { lineVoltage: 400 } }),
    );
    expect(firstFaults(told)).toEqual([]);
    expect(told.warnings).toEqual([]);
  });

  it("volts to neutral are asked after", () => {
    const i = SOUND_AMPS;
    const found = diagnose(asked(STAR, [...amps([i, i, i]), ...volts3([277, 277, 277])]));
    expect(found.warnings.map(({ message }) => message).join()).toContain("volts read to neutral?");
  });
});

describe("elements of another value", () => {
  it("by amps alone may be a controller's or a clamp's doing, and that is said", () => {
    const i = SOUND_AMPS / 2;
    const found = diagnose(asked(STAR, [...amps([i, i, i]), ...volts3([480, 480, 480])]));
    expect(firstFaults(found)).toEqual([{ kind: "other rating" }]);
    expect(found.notDetermined.join()).toContain("a controller that fires part of the time");
    const dead = diagnose(asked(STAR, pairs([4 * R, 4 * R, 4 * R])));
    expect(firstFaults(dead)).toEqual([{ kind: "other rating" }]);
    expect(dead.notDetermined.join()).not.toContain("controller");
  });

  it("have an interval that leaves out what is no other value: 0.85 to 1.2 times", () => {
    // 2.05 Ω over two branches of 0.8 Ω, -5 to +10 %: 1.16 to 1.35 times, where 1.2 is the least.
    const module = { banks: [bank("A", "star", 0.8)] };
    const off = { ohmmeter: { ofReading: 0.005, digits: 3, resolution: 0.01, leads: "taken off" } };
    const found = diagnose(asked(module, pairs([2.05, 2.05, 2.05]), { instruments: off }));
    expect(firstFaults(found)).toEqual([{ kind: "other rating" }]);
    const [{ low = 0, high = 0 } = {}] = topOf(found)[0]?.estimates ?? [];
    expect(low).toBeGreaterThanOrEqual(1.2);
    expect(high).toBeLessThan(1.45);
  });
});

it("what contradicts the best explanation outright is told so, and not by a χ² of nothing", () => {
  // Sound from L1 to either side makes the two others alike, 18.05 Ω each by the third reading: less than nothing is left for L1.
  const question = asked(STAR, pairs([2 * R, 36.1, 2 * R]));
  const found = diagnose(question);
  expect(found.outcome).toBe("nothing fits");
  expect(topOf(found)[0]?.pValue).toBe(0);
  expect(diagnosisText({ asked: question, diagnosis: found })).toContain("readings contradict it outright");
  expect(probabilityOf(found, [])).toBeLessThan(0.01);
});

it("a feed still connected, its neutral earthed, reads next to nothing to the frame too: no fault of the module", () => {
  // Windings of 0.46 Ω between lines beside 44.3 Ω of the star as a delta: 0.3 Ω; through them and their earth a tester shows 0.
  const question = asked(STAR, [...pairs([0.3, 0.3, 0.3]), ...toFrame([0, 0, 0])], {
    instruments: {
      ohmmeter: { ofReading: 0.005, digits: 3, resolution: 0.01, leads: "taken off" },
      insulationTester: { ofReading: 0.05, digits: 2, resolution: 1e3 },
    },
  });
  const found = diagnose(question);
  expect(found.outcome).toBe("explained");
  expect(firstFaults(found)).toEqual([{ kind: "feed connected" }]);
  expect(found.warnings.filter(({ code }) => code === "caution").length).toBe(3);
  // Megohms to the frame are no earthed feed's, and the feed may be connected all the same.
  const high = diagnose({ ...question, readings: [...pairs([0.3, 0.3, 0.3]), ...toFrame([5e6])] });
  expect(firstFaults(high)).toEqual([{ kind: "feed connected" }]);
  // Without low ohms between the lines it is the module's own.
  const own = diagnose({ ...question, readings: [...OHMS, ...toFrame([0, 0, 0])] });
  expect(["earth fault", "earthed terminal"]).toContain(firstFaults(own)[0]?.kind);
});
