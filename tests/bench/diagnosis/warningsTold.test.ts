/**
 * Warnings of a diagnosis, held whole: code, place, limit, unit, source and sentence, and the limits from which they are due. Figures by
 * hand from a star of 12 Ω, 12.3 Ω in the middle of its tolerance. What a slip or a winding reads like: common practice, no published source.
 */
import { type DiagnosisInput, diagnose } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { amps, asked, bank, OHMMETER, pairs, reading, volts3 } from "./sheets.ts";

const STAR = { banks: [bank("A", "star", 12)] };
const SURE = {
  ohmmeter: { ...OHMMETER, leads: "taken off" },
  clamp: { ofReading: 0.02, digits: 5, resolution: 0.001 },
  voltmeter: { ofReading: 0.005, digits: 2, resolution: 0.1 },
  millivoltmeter: { ofReading: 0.005, digits: 3, resolution: 1e-4 },
  insulationTester: { ofReading: 0.05, digits: 2, resolution: 100 },
};
const NONE = {
  ...{ elementOpen: 0.02, shortedTurns: 0, offValue: 0, joint: 0, openJoint: 0, misLinked: 0, lostLine: 0 },
  ...{ earthFault: 0, earthedTerminal: 0, otherRating: 0, feedConnected: 0, supplyUnbalance: 0 },
};
const warned = (readings: DiagnosisInput["readings"], more: object = {}, module: object = STAR) =>
  diagnose(asked(module, readings, { instruments: SURE, priors: NONE, ...more })).warnings;

describe("a unit that slipped", () => {
  const near = (value: number) => expect.closeTo(value, 1);
  it("of one ohm reading, up and down", () => {
    expect(warned(pairs([24.6, 24_600, 24.6]))).toEqual([
      {
        code: "suspicious",
        path: "readings.1.reads",
        message:
          "readings.1.reads: 24600 Ω is about 1000 times the 24.6 Ω that the other readings lead to expect: milliohms typed as ohms, or ohms as kiloohms? It was taken as given.",
        limit: near(24.6),
        unit: "Ω",
      },
    ]);
    expect(warned(pairs([0.0246, 24.6, 24.6])).map(({ path, message }) => [path, message])).toEqual([
      [
        "readings.0.reads",
        "readings.0.reads: 0.0246 Ω is about a thousandth of the 24.6 Ω that the other readings lead to expect: kiloohms typed as ohms, or ohms as milliohms? It was taken as given.",
      ],
    ]);
  });

  it("of amps and volts", () => {
    // 480/√3/(12.3·1.04) = 21.66 A hot.
    const told = warned([...amps([21_660, 21.7, 0.0217]), ...volts3([480_000, 480, 0.48])]);
    expect(told.map(({ message, unit }) => [unit, message])).toEqual([
      [
        "A",
        "readings.0.reads: 21660 A is about 1000 times the 21.7 A that the other readings lead to expect: milliamperes typed as amperes? It was taken as given.",
      ],
      [
        "A",
        "readings.2.reads: 0.0217 A is about a thousandth of the 21.7 A that the other readings lead to expect: kiloamperes typed as amperes, or amperes as milliamperes? It was taken as given.",
      ],
      [
        "V",
        "readings.3.reads: 480000 V is about 1000 times the 480 V that the other readings lead to expect: millivolts typed as volts? It was taken as given.",
      ],
      [
        "V",
        "readings.5.reads: 0.48 V is about a thousandth of the 480 V that the other readings lead to expect: kilovolts typed as volts, or volts as millivolts? It was taken as given.",
      ],
    ]);
  });

  it.each([
    // Within 1.6 times of a thousand, either way: 1000·1.6 = 1600 and 1000/1.6 = 625 times 24.6 Ω.
    [24.6 * 1590, true],
    [24.6 * 1610, false],
    [24.6 * 630, true],
    [24.6 * 620, false],
    [24.6 / 1590, true],
    [24.6 / 1610, false],
    [24.6 / 630, true],
    [24.6 / 620, false],
  ])("shows at %d Ω: %s", (odd, wanted) => {
    expect(warned(pairs([24.6, odd, 24.6])).length > 0).toBe(wanted);
  });

  it("is looked for against the other readings, not against the drawing", () => {
    // The element on L1 is 1.9 times its value, 23.37 Ω: 35.67 Ω to L2. 1300 times that is 1885 times the drawing's 24.6 Ω.
    const toStar = [23.37, 12.3, 12.3].map((reads, i) =>
      reading({ kind: "resistance", from: `L${i + 1}`, to: "S", reads }),
    );
    const told = warned([...toStar, ...pairs([1300 * 35.67])], { priors: { ...NONE, offValue: 0.01 } });
    expect(told.map(({ path }) => path)).toEqual(["readings.3.reads"]);
    expect(Math.abs((told[0]?.limit as number) - 35.67)).toBeLessThan(0.5);
  });

  it("is no word where an open path, nothing at all or an explanation stands there", () => {
    expect(warned(pairs(["open", 24.6, "open"]))).toEqual([]);
    expect(warned(pairs([0, 24.6, 24.6]))).toEqual([]);
    expect(warned(pairs([24.6, 24.6, 24.6]))).toEqual([]);
  });
});

describe("volts across a joint", () => {
  const jointed = { ...STAR, joints: [{ id: "J", at: "L1", resistance: 1e-4 }] };
  const drop = (reads: number) => warned([reading({ kind: "drop", across: "J", reads })], {}, jointed);
  it("from one volt on are asked about", () => {
    expect(drop(0.999)).toEqual([]);
    expect(drop(1)).toEqual([
      {
        code: "suspicious",
        path: "readings.0.reads",
        message:
          "readings.0.reads: 1 V across one joint is more than a joint lives through at heater currents: millivolts typed as volts, or the joint open and the supply across it? It was taken as given.",
        limit: 1,
        unit: "V",
        source: "common practice",
      },
    ]);
    expect(drop(480)).toHaveLength(1);
  });
  it("are only those of a drop: volts between lines are what they are", () => {
    expect(warned(volts3([480, 480, 480]))).toEqual([]);
  });
});

describe("ohms to the frame", () => {
  const frame = (reads: number | "open") => warned([reading({ kind: "insulation", from: "L1", reads })]);
  it("below a megohm are told of, whatever the ranking", () => {
    expect(frame(999_999)).toEqual([
      {
        code: "caution",
        path: "readings.0.reads",
        message:
          "readings.0.reads: 999999 Ω to the frame is below 1 MΩ: an earth fault or damp. One reading does not say which element; lift the links and read them one by one, dry, before anything is renewed or energised.",
        limit: 1e6,
        unit: "Ω",
        source: "common practice",
      },
    ]);
    expect(frame(0)).toHaveLength(1);
    expect(frame(1e6)).toEqual([]);
    expect(frame("open")).toEqual([]);
  });
  it("are those to the frame alone", () => {
    expect(warned(pairs([24.6]))).toEqual([]);
  });
});

describe("all lines far below the module", () => {
  it("ask whether the feed is connected", () => {
    // 24.6 Ω between lines, a quarter 6.15 Ω.
    expect(warned(pairs([6.1, 6, 5.9]))).toEqual([
      {
        code: "suspicious",
        path: "readings.0.reads",
        message:
          "readings.0.reads: all readings between lines are 6.1 Ω or less, where the module alone has 25 Ω: is the feed still connected? A transformer's windings or another load across the lines read like this, and also lower what is read to the star point. Lock out the feed, lift its wires and read again before any element is judged.",
        limit: expect.closeTo(6.15, 6),
        unit: "Ω",
        source: "common practice",
      },
    ]);
  });

  it.each([
    ["a quarter itself", [6.1, 6.15, 6.1], false],
    ["one of three is not", [6.1, 24.6, 6.1], false],
    ["two readings", [6.1, 6.1], true],
    ["one reading", [6.1], false],
    ["an open line", [6.1, "open", 6.1], false],
  ] as const)("%s", (_, reads, wanted) => {
    expect(warned(pairs(reads)).some(({ message }) => /feed still/.test(message))).toBe(wanted);
  });

  it("with links lifted say nothing of the feed, nor do readings to the star point", () => {
    const lifted = pairs([1, 1, 1]).map((one) => ({ ...one, only: ["A"] }));
    expect(warned(lifted)).toEqual([]);
    const toStar = ["L1", "L2", "L3"].map((from) =>
      reading({ kind: "resistance", from, to: "S", reads: 2.5 }),
    );
    expect(warned(toStar)).toEqual([]);
    const fromStar = toStar.map((one) => ({ ...one, from: "S", to: "L1" }) as typeof one);
    expect(warned(fromStar)).toEqual([]);
    expect(warned([...toStar, ...pairs([1, 1])]).map(({ path }) => path)).toEqual(["readings.3.reads"]);
  });

  it("from two ohms on: below that leads and contact read as much", () => {
    // 2·R·1.025 Ω between lines of a star.
    const low = (r: number) => warned(pairs([0.1, 0.1, 0.1]), {}, { banks: [bank("A", "star", r)] });
    expect(low(0.97)).toEqual([]);
    expect(low(0.98)).toHaveLength(1);
  });

  it("is not asked where the readings are a thousandth: a unit has slipped", () => {
    expect(warned(pairs([0.0246, 0.0246, 0.0246])).map(({ message }) => /feed/.test(message))).toEqual([
      false,
      false,
      false,
    ]);
  });
});
