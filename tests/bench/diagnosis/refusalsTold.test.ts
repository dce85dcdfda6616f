/**
 * What a diagnosis refuses, in the words a reader gets: the place, what stood there with its unit, what may stand there. The limits are
 * those of the docstrings; each is kept at the limit itself and refused a little beyond it.
 */
import { type DiagnosisInput, diagnose, nextMeasurements } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { caught } from "../../support/caught.ts";
import { ALL_INSTRUMENTS, amps, asked, bank, pairs, reading } from "./sheets.ts";

const STAR = { banks: [bank("A", "star", 12)] };
const TWINS = { banks: [bank("A", "star", 24, { elementsInParallel: 2 })] };
const OHM = { kind: "resistance", from: "L1", to: "L2", reads: 24 } as const;

const toldOf = (run: () => unknown): readonly string[] =>
  caught(run).issues.map(({ code, message }) => `${code}: ${message}`);
const ofReading = (one: object, module: object = STAR): readonly string[] =>
  toldOf(() => diagnose(asked(module, [reading(one)])));
const put = (field: object): DiagnosisInput => ({ ...asked(STAR, pairs([24])), ...field }) as DiagnosisInput;

describe("a reading", () => {
  it.each([
    [
      { ...OHM, to: "L1" },
      'inconsistent: readings.0.to: "L1 to L1" is not allowed; expected two different nodes',
    ],
    [
      { kind: "voltage", from: "S", to: "S", reads: 0 },
      'inconsistent: readings.0.to: "S to S" is not allowed; expected two different nodes',
    ],
    [
      { ...OHM, only: [] },
      "missing: readings.0.only: missing; expected at least one bank, branch or element",
    ],
    [
      { ...OHM, only: "A" },
      'wrong-type: readings.0.only: "A" is not allowed; expected at least one bank, branch or element',
    ],
    [
      { ...OHM, only: null },
      "missing: readings.0.only: missing; expected at least one bank, branch or element",
    ],
    [
      { ...OHM, only: ["A", "B"] },
      'unknown-name: readings.0.only.1: "B" is not allowed; expected one of A, A-L1, A-L2, A-L3',
    ],
    [
      { kind: "insulation", from: "L1", reads: 5e8, only: ["B"] },
      'unknown-name: readings.0.only.0: "B" is not allowed; expected one of A, A-L1, A-L2, A-L3',
    ],
    [
      { ...OHM, from: "N" },
      'unknown-name: readings.0.from: "N" is not allowed; expected one of L1, S, L2, L3',
    ],
    [
      { kind: "voltage", from: "L1", to: "PE", reads: 277 },
      'unknown-name: readings.0.to: "PE" is not allowed; expected one of L1, S, L2, L3, N',
    ],
    [
      { kind: "voltage", from: "PE", to: "L1", reads: 277 },
      'unknown-name: readings.0.from: "PE" is not allowed; expected one of L1, S, L2, L3, N',
    ],
    [
      { kind: "current", at: "S", reads: 3 },
      "inconsistent: readings.0.into: undefined is not allowed; expected a line, or what the wire feeds in `into`: all currents at a star point add up to 0",
    ],
    [
      { kind: "current", at: "L1", into: "A-L2", reads: 3 },
      'inconsistent: readings.0.into: "A-L2" is not allowed; expected a part that ends on L1',
    ],
    [
      { kind: "current", at: "L1", into: "B", reads: 3 },
      'unknown-name: readings.0.into: "B" is not allowed; expected one of A, A-L1, A-L2, A-L3',
    ],
    [
      { ...OHM, reads: -24 },
      'out-of-range: readings.0.reads: -24 Ω is not allowed; expected 0 or more Ω or "open"',
    ],
    [
      { ...OHM, reads: 2e15 },
      'out-of-range: readings.0.reads: 2000000000000000 Ω is not allowed; expected 0 to 1000000000000000 Ω or "open"',
    ],
    [
      { kind: "current", at: "L1", reads: -3 },
      "out-of-range: readings.0.reads: -3 A is not allowed; expected 0 or more A",
    ],
    [
      { kind: "voltage", from: "L1", to: "L2", reads: -480 },
      "out-of-range: readings.0.reads: -480 V is not allowed; expected 0 or more V",
    ],
    [
      { kind: "insulation", from: "L1", reads: -1 },
      'out-of-range: readings.0.reads: -1 Ω is not allowed; expected 0 or more Ω or "open"',
    ],
    [
      { kind: "weight", reads: 5 },
      'unknown-name: readings.0.kind: "weight" is not allowed; expected one of resistance, current, voltage, drop, insulation',
    ],
  ])("%j is refused with: %s", (one, message) => {
    expect(ofReading(one)).toEqual([message]);
  });

  it("across a joint is in volts", () => {
    const jointed = { ...STAR, joints: [{ id: "J", at: "L1", resistance: 1e-4 }] };
    expect(ofReading({ kind: "drop", across: "J", reads: -0.01 }, jointed)).toEqual([
      "out-of-range: readings.0.reads: -0.01 V is not allowed; expected 0 or more V",
    ]);
    expect(ofReading({ kind: "drop", across: "K", reads: 0.01 }, jointed)).toEqual([
      'unknown-name: readings.0.across: "K" is not allowed; expected one of J',
    ]);
  });

  it("of each kind has the fields of its kind, and no other", () => {
    const jointed = { ...STAR, joints: [{ id: "J", at: "L1", resistance: 1e-4 }] };
    const fields = {
      resistance: { from: "L1", to: "L2", reads: 24, only: ["A"] },
      current: { at: "L1", into: "A", reads: 20 },
      voltage: { from: "L1", to: "L2", reads: 480 },
      drop: { across: "J", reads: 0.002 },
      insulation: { from: "L1", reads: 5e8, only: ["A"] },
    };
    const all = { from: "L1", to: "L2", only: ["A"], at: "L1", into: "A", across: "J" };
    for (const [kind, own] of Object.entries(fields)) {
      const whole = { kind, ...own };
      expect(() => diagnose(asked(jointed, [reading(whole)]))).not.toThrow();
      for (const [name, value] of Object.entries(all)) {
        if (name in own) continue;
        const { issues } = caught(() => diagnose(asked(jointed, [reading({ ...whole, [name]: value })])));
        expect(issues.map(({ code, path }) => [code, path])).toEqual([
          ["unknown-field", `readings.0.${name}`],
        ]);
        expect(issues[0]?.expected).toBe(`one of ${["kind", ...Object.keys(own)].join(", ")}`);
      }
    }
  });

  it("still to be taken has not been read", () => {
    const candidates = [{ ...OHM } as never, { kind: "resistance", from: "L1", to: "L1" } as const];
    expect(toldOf(() => nextMeasurements({ ...asked(STAR, pairs([24])), candidates }))).toEqual([
      'unknown-field: candidates.0.reads: "reads" is not allowed; expected one of kind, from, to, only',
      'inconsistent: candidates.1.to: "L1 to L1" is not allowed; expected two different nodes',
    ]);
  });

  it("still to be taken is one of a list, and there", () => {
    const next = (candidates: unknown) =>
      toldOf(() => nextMeasurements({ ...asked(STAR, pairs([24])), candidates } as never));
    expect(next({ from: "L1" })).toEqual([
      "wrong-type: candidates: an object is not allowed; expected a list of measurements",
    ]);
    expect(next([null])).toEqual(["missing: candidates.0: missing; expected an object with named fields"]);
  });

  it("is refused though another is right, each by its number", () => {
    const readings = [...pairs([24]), reading({ ...OHM, reads: -1 }), reading({ ...OHM, to: "L1" }), null];
    const { issues } = caught(() => diagnose(asked(STAR, readings as never)));
    expect(issues.map(({ code, path }) => [code, path])).toEqual([
      ["out-of-range", "readings.1.reads"],
      ["inconsistent", "readings.2.to"],
      ["missing", "readings.3"],
    ]);
  });
});

describe("a clamp goes around what a wire feeds", () => {
  const accepted = (module: object, one: object): boolean => {
    try {
      diagnose(asked(module, [reading({ kind: "current", reads: 20, ...one })]));
      return true;
    } catch {
      return false;
    }
  };
  const delta = { banks: [bank("A", "delta", 30)] };
  it.each([
    ["a line", STAR, { at: "L2" }, true],
    ["a bank on a line", STAR, { at: "L2", into: "A" }, true],
    ["a branch at its line", STAR, { at: "L2", into: "A-L2" }, true],
    ["a branch at the star point", STAR, { at: "S", into: "A-L2" }, true],
    ["a branch at another line", STAR, { at: "L1", into: "A-L2" }, false],
    ["one of twins", TWINS, { at: "L2", into: "A-L2-1" }, true],
    ["one of twins at another line", TWINS, { at: "L3", into: "A-L2-1" }, false],
    ["a delta's branch at its first line", delta, { at: "L1", into: "A-L1L2" }, true],
    ["a delta's branch at its second line", delta, { at: "L2", into: "A-L1L2" }, true],
    ["a delta's branch at the third line", delta, { at: "L3", into: "A-L1L2" }, false],
    ["the neutral where there is one", { ...STAR, neutral: "connected" }, { at: "N" }, true],
    ["the star point as a whole", STAR, { at: "S" }, false],
  ])("%s", (_, module, one, wanted) => {
    expect(accepted(module, one)).toBe(wanted);
  });
});

describe("a question", () => {
  it.each([
    [{ readings: undefined }, "missing: readings: missing; expected a list of readings"],
    [{ readings: null }, "missing: readings: missing; expected a list of readings"],
    [{ readings: {} }, "wrong-type: readings: an object is not allowed; expected a list of readings"],
    [{ alternatives: {} }, "wrong-type: alternatives: an object is not allowed; expected a list of plans"],
    [
      { instruments: {} },
      "missing: instruments.ohmmeter: missing; expected the instrument that readings were taken with",
    ],
    [
      { readings: amps([20]), instruments: { ohmmeter: ALL_INSTRUMENTS.ohmmeter } },
      "missing: instruments.clamp: missing; expected the instrument that readings were taken with",
    ],
    [
      { supply: undefined, readings: amps([30]) },
      "missing: supply: missing; expected the nominal line voltage, since there are energised readings",
    ],
    [
      { supply: { lineVoltage: 0 } },
      "out-of-range: supply.lineVoltage: 0 V is not allowed; expected more than 0 V",
    ],
    [
      { supply: { lineVoltage: 2e6 } },
      "out-of-range: supply.lineVoltage: 2000000 V is not allowed; expected 0.001 to 1000000 V",
    ],
    [{ depth: "triples" }, 'unknown-name: depth: "triples" is not allowed; expected one of single, pairs'],
    [
      { colour: "red" },
      'unknown-field: colour: "colour" is not allowed; expected one of module, alternatives, readings, instruments, supply, spread, priors, depth, candidates',
    ],
    [
      { spread: { age: 3 } },
      'unknown-field: spread.age: "age" is not allowed; expected one of common, individual, temperatureFactor, leadsUpTo, lineVoltage, unbalance, joint',
    ],
    [
      { priors: { rust: 0.1 } },
      'unknown-field: priors.rust: "rust" is not allowed; expected one of elementOpen, shortedTurns, offValue, joint, openJoint, misLinked, lostLine, unfedBank, unfedBankLine, earthFault, earthedTerminal, otherRating, feedConnected, supplyUnbalance, misread',
    ],
  ])("with %j is refused with: %s", (field, message) => {
    expect(toldOf(() => diagnose(put(field)))).toEqual([message]);
  });

  it("needs the voltage for a planned reading that is live, and the ohmmeter for none that is not taken", () => {
    const { supply: _, ...dead } = asked(STAR, pairs([24]));
    expect(
      toldOf(() => nextMeasurements({ ...dead, candidates: [{ kind: "current", at: "L1" }] } as never)),
    ).toEqual([
      "missing: supply: missing; expected the nominal line voltage, since there are energised readings",
    ]);
    expect(() => diagnose(asked(STAR, [], { instruments: {}, supply: undefined }))).not.toThrow();
  });

  it("takes a line voltage from a millivolt to a million volts", () => {
    for (const lineVoltage of [1e-3, 1e6])
      expect(() => diagnose(put({ supply: { lineVoltage } }))).not.toThrow();
  });
});

describe("what is assumed", () => {
  // Field, least and largest value, unit: as the docstrings and the notes on the fields say.
  const LIMITS: readonly (readonly [string, number, number, string])[] = [
    ["individual", 0, 1, ""],
    ["leadsUpTo", 0, 1000, " Ω"],
    ["lineVoltage", 0, 0.5, ""],
    ["unbalance", 0, 0.2, ""],
    ["joint", 0, 10, ""],
  ];
  it.each(LIMITS)("spread.%s lies from %d to %d%s", (name, low, high, unit) => {
    const asking = (value: number) => diagnose(put({ spread: { [name]: value } }));
    for (const value of [low, high]) expect(() => asking(value)).not.toThrow();
    for (const value of [low - 0.01, high * 1.01])
      expect(toldOf(() => asking(value))).toEqual([
        `out-of-range: spread.${name}: ${value}${unit} is not allowed; expected ${low} to ${high}${unit}`,
      ]);
  });

  it("limits of make and hot over cold lie within their own", () => {
    const common = (low: number, high: number) => () => diagnose(put({ spread: { common: { low, high } } }));
    const hot = (value: number, standardUncertainty: number) => () =>
      diagnose(put({ spread: { temperatureFactor: { value, standardUncertainty } } }));
    for (const fine of [common(-0.9, -0.9), common(0, 10), hot(0.1, 0), hot(10, 1)])
      expect(fine).not.toThrow();
    const said = (...[path, value, allowed]: readonly [string, number, string]) => [
      `out-of-range: spread.${path}: ${value} is not allowed; expected ${allowed}`,
    ];
    expect(toldOf(common(-0.91, 0))).toEqual(said("common.low", -0.91, "-0.9 to 10"));
    expect(toldOf(common(0.2, 0.1))).toEqual(said("common.high", 0.1, "0.2 to 10"));
    expect(toldOf(common(0.2, 10.1))).toEqual(said("common.high", 10.1, "0.2 to 10"));
    expect(toldOf(hot(0, 0.02))).toEqual(said("temperatureFactor.value", 0, "more than 0"));
    expect(toldOf(hot(0.09, 0.02))).toEqual(said("temperatureFactor.value", 0.09, "0.1 to 10"));
    expect(toldOf(hot(1, 1.01))).toEqual(said("temperatureFactor.standardUncertainty", 1.01, "0 to 1"));
  });

  it("a prior is 0 or more and less than 1", () => {
    const asking = (joint: number) => () => diagnose(put({ priors: { joint } }));
    expect(asking(0)).not.toThrow();
    expect(asking(0.999)).not.toThrow();
    expect(toldOf(asking(1))).toEqual(["out-of-range: priors.joint: 1 is not allowed; expected less than 1"]);
    expect(toldOf(asking(-0.01))).toEqual([
      "out-of-range: priors.joint: -0.01 is not allowed; expected 0 or more",
    ]);
    expect(toldOf(asking(Number.NaN))).toEqual([
      "not-a-number: priors.joint: NaN is not allowed; expected a finite number",
    ]);
  });
});

describe("an instrument", () => {
  const meter = (more: object) => () =>
    diagnose(put({ instruments: { ohmmeter: { ...ALL_INSTRUMENTS.ohmmeter, ...more } } }));
  it.each([
    [
      { resolution: 0 },
      "out-of-range: instruments.ohmmeter.resolution: 0 is not allowed; expected more than 0",
    ],
    [
      { ofReading: 0.9 },
      "out-of-range: instruments.ohmmeter.ofReading: 0.9 is not allowed; expected a ratio from 0 to 0.5 (0.005 for ±0.5 %)",
    ],
    [
      { leads: "off" },
      'unknown-name: instruments.ohmmeter.leads: "off" is not allowed; expected one of unknown, taken off',
    ],
    [{ leads: null }, "missing: instruments.ohmmeter.leads: missing; expected one of unknown, taken off"],
    [
      { leads: { shorted: -0.1 } },
      "out-of-range: instruments.ohmmeter.leads.shorted: -0.1 Ω is not allowed; expected 0 or more Ω",
    ],
    [
      { leads: { shorted: 2e6 } },
      "out-of-range: instruments.ohmmeter.leads.shorted: 2000000 Ω is not allowed; expected 0 to 1000000 Ω",
    ],
  ])("with %j is refused with: %s", (more, message) => {
    expect(toldOf(meter(more))).toEqual([message]);
  });

  it("names everything wrong with it at once", () => {
    const paths = caught(meter({ resolution: -1, digits: -3 })).issues.map(({ path }) => path);
    expect(paths).toEqual(["instruments.ohmmeter.resolution", "instruments.ohmmeter.digits"]);
  });
});
