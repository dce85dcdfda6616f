/**
 * One reading that does not belong to the others. A star of three 12 Ω reads 24 Ω between lines and 12 Ω to its star point, a delta of three
 * 12 Ω reads 8 Ω between lines and draws √3·480/12 = 69.3 A a line: Ohm's law by hand, leads taken off, elements at their cold value.
 */
import { assessModule, diagnose, diagnosisText, type FieldReading } from "electroheat/bench";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { amps, asked, bank, firstFaults, OHMMETER, pairs, reading, topOf, volts3 } from "./sheets.ts";

const STAR = { banks: [bank("A", "star", 12)] };
const DELTA = { banks: [bank("A", "delta", 12)] };
const INSTRUMENTS = {
  ohmmeter: { ...OHMMETER, leads: "taken off" },
  clamp: { ofReading: 0.02, digits: 5, resolution: 0.1 },
  voltmeter: { ofReading: 0.005, digits: 2, resolution: 0.1 },
  millivoltmeter: { ofReading: 0.005, digits: 3, resolution: 1e-4 },
  insulationTester: { ofReading: 0.05, digits: 2, resolution: 1e4 },
};
const found = (module: object, readings: readonly FieldReading[], more: object = {}) =>
  diagnose(asked(module, readings, { instruments: INSTRUMENTS, ...more }));
const toStar = (reads: readonly (number | "open")[]): FieldReading[] =>
  reads.map((one, i) => reading({ kind: "resistance", from: `L${i + 1}`, to: "S", reads: one }));

const SOUND_STAR = [...pairs([24.3, 24.2, 24.4]), ...toStar([12.2, 12.1, 12.2])];

const misreadAt = (all: ReturnType<typeof found>): readonly number[] =>
  topOf(all)[0]?.faults.flatMap((one) => (one.kind === "misread" ? [one.reading] : [])) ?? [];

describe("one reading misread", () => {
  it("two figures changed places: 42.4 Ω for 24.4 Ω", () => {
    const all = found(STAR, [...pairs([24.3, 24.2, 42.4]), ...toStar([12.2, 12.1, 12.2])]);
    expect(all.outcome).toBe("nothing fits");
    expect(firstFaults(all)).toEqual([
      { kind: "misread", reading: 2, of: { kind: "resistance", from: "L3", to: "L1" } },
    ]);
    expect(all.groups[0]?.probability).toBeGreaterThan(0.95);
    const [warning] = all.warnings;
    expect(warning?.path).toBe("readings.2.reads");
    expect(warning?.message).toMatch(/^readings\.2\.reads: L3 to L1: misread\? .* is: sound\.$/);
  });

  it("a probe that did not touch: OL where the others go through", () => {
    const all = found(STAR, [...pairs([24.3, "open", 24.4]), ...toStar([12.2, 12.1, 12.2])]);
    expect(misreadAt(all)).toEqual([1]);
    expect(topOf(all)[0]?.faults).toHaveLength(1);
  });

  it("a clamp round the wrong wire: the line's own amps say otherwise than volts and ohms", () => {
    const all = found(DELTA, [
      ...pairs([8.1, 8.1, 8.1]),
      ...amps([66.1, 18.3, 66.4]),
      ...volts3([480, 481, 479]),
    ]);
    expect(misreadAt(all)).toEqual([4]);
    expect(all.warnings[0]?.message).toMatch(/looks the same: a joint that opens when hot\.$/);
  });

  it("amps that a fuse of one bank accounts for are not called misread", () => {
    // Two deltas of 12 Ω, B without L1. L1 carries A alone, 69.3 A hot 66.6;
    // B between L2 and L3 is 12 Ω beside 24: 60 A in phase with U23, A's 69.3 A at 30° to it: √(69.3² + 60² + 2·69.3·60·cos 30°) = 124.9 A, hot 120.1.
    const two = { banks: [bank("A", "delta", 12), bank("B", "delta", 12)] };
    const all = found(two, [
      ...amps([66.6, 120.1, 120.1]),
      ...volts3([480, 481, 479]),
      ...pairs([4.05, 4.05, 4.05]),
    ]);
    expect(all.outcome).toBe("explained");
    expect(topOf(all).map(({ faults }) => faults)).toEqual([
      [{ kind: "unfed bank", bank: "A", line: "L1" }],
      [{ kind: "unfed bank", bank: "B", line: "L1" }],
    ]);
    expect(all.warnings).toEqual([]);
  });

  it("beside a fault that the others agree on: the open branch is found all the same", () => {
    // A-L1 open: OL wherever it lies; 24 Ω and two times 12 Ω elsewhere, of which one is written as 21.
    const readings = [...pairs(["open", 24.2, "open"]), ...toStar(["open", 12.1, 21.2])];
    const all = found(STAR, readings);
    expect(firstFaults(all)).toEqual([
      { kind: "element open", element: "A-L1" },
      { kind: "misread", reading: 5, of: { kind: "resistance", from: "L3", to: "S" } },
    ]);
    expect(all.warnings[0]?.message).toMatch(/element A-L1 open\.$/);
    const text = diagnosisText({
      asked: asked(STAR, readings, { instruments: INSTRUMENTS }),
      diagnosis: all,
    });
    expect(text).toMatch(/element A-L1 open and L3 to S\s+misread/);
  });

  it("two that exclude each other: both are told, neither is believed", () => {
    const twice = [...pairs([24.3, 24.2]), ...toStar([12.2, 12.1])];
    const again = reading({ kind: "resistance", from: "L1", to: "L2", reads: 35.1 });
    const all = found(STAR, [...twice, again, reading({ ...again, reads: 24.2 })]);
    // Of 24.3, 35.1 and 24.2 across the same studs two agree.
    expect(misreadAt(all)).toEqual([4]);
    const pair = found(DELTA, [
      ...pairs([8.1]),
      reading({ kind: "resistance", from: "L1", to: "L2", reads: 5.3 }),
    ]);
    const told = pair.warnings.map(({ path }) => path);
    expect(pair.outcome).toBe("nothing fits");
    expect(told).toContain("readings.1.reads");
  });

  it("nobody is called misread where a fault explains all readings", () => {
    // 9 Ω in the joint where L1 enters: both readings over L1 alike, and L2-L3 as sound.
    const joint = found(STAR, [...pairs([33.3, 24.2, 33.4]), ...toStar([21.2, 12.1, 12.2])]);
    expect(joint.outcome).toBe("explained");
    expect(joint.groups[0]?.explanations.some(({ faults }) => faults.length === 1)).toBe(true);
    expect(misreadAt(joint)).toEqual([]);
    expect(
      found(STAR, SOUND_STAR).groups.flatMap((one) => one.explanations.flatMap((e) => e.faults)),
    ).not.toEqual(expect.arrayContaining([expect.objectContaining({ kind: "misread" })]));
  });

  it("not weighed with a prior of 0: nothing fits, and nothing is singled out", () => {
    const readings = [...pairs([24.3, 24.2, 42.4]), ...toStar([12.2, 12.1, 12.2])];
    const all = found(STAR, readings, { priors: { misread: 0 } });
    expect(all.outcome).toBe("nothing fits");
    expect(
      all.groups.flatMap(({ explanations }) => explanations.flatMap(({ faults }) => faults)),
    ).not.toEqual(expect.arrayContaining([expect.objectContaining({ kind: "misread" })]));
    expect(all.warnings).toEqual([]);
  });

  it("a reading that no other one checks is never called misread, whatever it shows", () => {
    // Each branch read once, to the star point: 0.2 Ω may be a coil bridged from end to end, and the others know nothing of it.
    const all = found(STAR, toStar([0.2, 12.1, 12.2]));
    expect(
      all.groups.flatMap(({ explanations }) => explanations.flatMap(({ faults }) => faults)),
    ).not.toEqual(expect.arrayContaining([expect.objectContaining({ kind: "misread" })]));
    // Between two lines as well, L1-L2 says what L1 and L2 come to together: now it can be checked.
    const checked = found(STAR, [...toStar([0.2, 12.1, 12.2]), ...pairs([24.3, 24.2, 24.4])]);
    expect(misreadAt(checked)).toEqual([0]);
  });

  it("insulation is on no network: it is never the misread one", () => {
    const low = reading({ kind: "insulation", from: "L1", reads: 2e4 });
    const all = found(STAR, [...pairs([24.3, 24.2, 42.4]), ...toStar([12.2, 12.1, 12.2]), low]);
    expect(misreadAt(all)).not.toContain(6);
  });

  it("whichever it is, and however far off", () => {
    fc.assert(
      fc.property(fc.nat(5), fc.double({ min: 1.3, max: 6, noNaN: true }), fc.boolean(), (at, times, up) => {
        const readings = SOUND_STAR.map((one, i) => {
          if (i !== at || one.kind !== "resistance" || one.reads === "open") return one;
          const reads = Math.round(one.reads * (up ? times : 1 / times) * 100) / 100;
          return reading({ ...one, reads });
        });
        const all = found(STAR, readings);
        expect(misreadAt(all)).toEqual([at]);
        const total = all.groups.reduce((sum, { probability }) => sum + probability, 0);
        expect(total).toBeCloseTo(1, 9);
      }),
      { numRuns: 100 },
    );
  });
});

describe("an assessment with one reading misread", () => {
  const ohms = [
    ["L1", "L2", "24.3 Ω"],
    ["L2", "L3", "24.2 Ω"],
    ["L3", "L1", "42.4 Ω"],
    ["L1", "S", "12.2 Ω"],
    ["L2", "S", "12.1 Ω"],
    ["L3", "S", "12.2 Ω"],
  ].map(([from, to, reads]) => ({ from, to, reads }));
  const assessed = assessModule({
    title: "invented",
    nameplate: { power: "19.2 kW", voltage: "480 V" },
    wiring: { banks: [{ id: "A", connection: "star" }] },
    supply: { v12: "480 V", v23: "480 V", v31: "480 V" },
    tolerance: { low: -0.05, high: 0.1 },
    instruments: { ohmmeter: { ofReading: 0.005, digits: 3, resolution: "0.01 Ω", leads: "taken off" } },
    asFound: { ohms },
  } as never);

  it("names the reading before anything else, and asks for no finer meter", () => {
    const { nextSteps: steps } = assessed;
    expect(steps[0]?.action).toMatch(/^Isolate, .*L3 to L1: misread\?$/);
    expect(steps.some(({ action }) => /four-wire/.test(action))).toBe(false);
  });

  it("says what the others fit", () => {
    expect(assessed.answer[0]).toMatch(/likeliest: L3 to L1 misread/);
  });
});
