/**
 * What the readings of a day amount to, figure by figure and word for word: amps, unbalance, insulation, voltages, joints. Figures by hand from
 * Ohm's and Kirchhoff's laws beside each check; limits of the trade are common practice without a published source, those of a supply
 * IEC 60038 (from memory).
 */
import type { BenchRecord, Figure, JointAssessment } from "electroheat/bench";
import { unbalanceByDefinition } from "electroheat/circuit";
import { measuredJoint, scanSeverity } from "electroheat/joint";
import { describe, expect, it } from "vitest";
import { siteSupply, supplyOf } from "../../../src/bench/day/assessDay.ts";
import { ampsSteps, ampsWords, unjudgedJointSteps } from "../../../src/bench/day/concerns.ts";
import { assessCurrents, assessUnbalance } from "../../../src/bench/day/currents.ts";
import { hotBranches, presentJoints, presentResistances } from "../../../src/bench/day/hotBranches.ts";
import { checkInstruments, errorLimit } from "../../../src/bench/day/instrumentLimits.ts";
import {
  doubtfulInsulation,
  doubtfulInsulationSteps,
  insulationRunning,
  insulationSteps,
  poorInsulation,
} from "../../../src/bench/day/insulationConcerns.ts";
import { assessJoints, checkJoints } from "../../../src/bench/day/joints.ts";
import { scanSteps, scanWords } from "../../../src/bench/day/scanConcerns.ts";
import { readToNeutral, supplyConcerns, voltageOf } from "../../../src/bench/day/supplyConcerns.ts";
import { supplyState } from "../../../src/bench/day/supplyState.ts";
import { branch, day, figure, joint, judged, QUIET, read, refused, rise } from "../site/made.ts";

const LINES = ["L1", "L2", "L3"] as const;
const volts = (v12: number, v23 = v12, v31 = v12) => ({
  v12: `${v12}.0 V`,
  v23: `${v23}.0 V`,
  v31: `${v31}.0 V`,
});
const star = (more: Partial<BenchRecord>) =>
  read({ nameplate: { power: "30 kW", voltage: "480 V" }, tolerance: { low: -0.05, high: 0.1 }, ...more });
const CLAMP = { ofReading: 0.02, digits: 5, resolution: "0.1 A" } as const;
const VOLTMETER = { ofReading: 0.01, digits: 2, resolution: "0.1 V" } as const;
const close = (value: number): never => expect.closeTo(value, 9) as never;

describe("amps", () => {
  const sound = new Map(LINES.map((line) => [`A-${line}`, 7.68]));
  const amps = (...values: readonly number[]) =>
    values.map((one, i) => ({ at: `L${i + 1}`, reads: `${one.toFixed(1)} A` }));
  const assess = (more: Partial<BenchRecord>, soundBranches: ReadonlyMap<string, number> | null = sound) => {
    const record = star(more);
    const supply = supplyOf(record, "asFound");
    const state = supplyState(supply, 480 as never);
    const readings = record.asFound ?? {};
    return assessCurrents({ record, readings, soundBranches, supply, state, weighed: true });
  };
  // 480 V/√3 over 7.68 Ω.
  const I = 480 / Math.sqrt(3) / 7.68;
  const BESIDE = "every branch at its target, at working temperature, on the supply of that day";
  const LIMITS =
    "clamp, as read; limits: a sound module with branches at either end of the tolerance given in the record";
  const beside = (label: string, value = I) => figure(`${label}, sound module`, close(value), "A", BESIDE);

  it("are held against a sound module's, wider by clamp and voltmeter", () => {
    const found = assess({
      supply: volts(480),
      instruments: { clamp: CLAMP, voltmeter: VOLTMETER },
      asFound: { currents: [...amps(36.1, 30, 45), { at: "L1", into: "A", reads: "36.1 A" }] },
    });
    const limit = { low: close(I / 1.1), high: close(I / 0.95) };
    const line = (label: string, value: number, verdict: Figure["verdict"]) => [
      figure(label, value, "A", LIMITS, { halfWidth: close(0.02 * value + 0.5), limit, verdict }),
      beside(label),
    ];
    const mean = (36.1 + 30 + 45) / 3;
    expect(found).toEqual([
      ...line("line current L1", 36.1, "within"),
      ...line("line current L2", 30, "outside"),
      ...line("line current L3", 45, "outside"),
      ...line("current L1 into A", 36.1, "within"),
      figure("mean line current over that of a sound module", close(mean / I), "1", "mean of L1, L2, L3", {
        halfWidth: close((mean / I) * ((0.02 * 45 + 0.5) / mean)),
      }),
    ]);
  });

  it("near a limit are undecided by the clamp, and by the voltmeter beside it", () => {
    const verdict = (value: number, voltmeter: boolean) =>
      assess({
        supply: volts(480),
        instruments: {
          clamp: { ofReading: 0, digits: 1, resolution: "0.1 A" },
          ...(voltmeter ? { voltmeter: VOLTMETER } : {}),
        },
        asFound: { currents: amps(value) },
      })[0]?.verdict;
    // 32.80 A is the lower limit; the clamp is good for 0.1 A, 1 % and 0.2 V of 480 V for 0.38 A more.
    expect([verdict(33.0, false), verdict(32.8, false), verdict(32.6, false)]).toEqual([
      "within",
      "undecided",
      "outside",
    ]);
    expect([verdict(33.0, true), verdict(33.4, true), verdict(32.2, true)]).toEqual([
      "undecided",
      "within",
      "outside",
    ]);
  });

  it("without an instrument, a tolerance or a plate are shown and not judged", () => {
    const bare = { supply: volts(480), asFound: { currents: amps(36) } };
    expect(assess(bare)).toEqual([
      figure("line current L1", 36, "A", LIMITS, {
        limit: { low: close(I / 1.1), high: close(I / 0.95) },
        caution: "not judged: the record does not name the clamp's accuracy",
      }),
      beside("line current L1"),
    ]);
    const clamped = { ...bare, instruments: { clamp: CLAMP } };
    const shown = figure("line current L1", 36, "A", "clamp, as read", { halfWidth: close(1.22) });
    expect(assess({ ...clamped, tolerance: undefined as never })).toEqual([shown, beside("line current L1")]);
    expect(assess(clamped, null)).toEqual([shown]);
    expect(assess({ ...clamped, tolerance: { low: -1, high: 0.1 } })[0]?.limit?.high).toBeNull();
    expect(assess({ supply: volts(480), asFound: {} })).toEqual([]);
  });

  it("of three lines give the mean and the power, where nothing hides in their sum", () => {
    const instruments = { clamp: CLAMP, voltmeter: VOLTMETER };
    const labels = (more: Partial<BenchRecord>) =>
      assess({ supply: volts(480), instruments, ...more })
        .map(({ label }) => label)
        .filter((one) => !one.includes(" L"));
    const both = ["mean line current over that of a sound module", "power from line currents"];
    expect(labels({ asFound: { currents: amps(36, 36.5, 35.5) } })).toEqual(both);
    // 38 A is 5.6 % above the mean of 36 A.
    expect(labels({ asFound: { currents: amps(38, 35, 35) } })).toEqual(both.slice(0, 1));
    expect(labels({ asFound: { currents: amps(36, 36) } })).toEqual([]);
    expect(labels({ asFound: { currents: [...amps(36, 36, 36), ...amps(36)] } })).toEqual([]);
    expect(labels({ asFound: { currents: amps(0, 0, 0) } })).toEqual(both.slice(0, 1));
    const neutral = { banks: [{ id: "A", connection: "star" as const }], neutral: "connected" as const };
    expect(labels({ wiring: neutral, asFound: { currents: amps(36, 36, 36) } })).toEqual([]);
    expect(labels({ supply: undefined as never, asFound: { currents: amps(36, 36, 36) } })).toEqual(
      both.slice(0, 1),
    );
    const power = assess({
      supply: volts(480, 482, 478),
      instruments,
      asFound: { currents: amps(36, 36.5, 35.5) },
    }).at(-1);
    // √3 · 480 V · 36 A; 0.02·36.5 + 0.5 A of 36 A, and 0.01·482 + 0.2 V of 480 V.
    const watts = Math.sqrt(3) * 480 * 36;
    expect(power).toEqual(
      figure(
        "power from line currents",
        expect.closeTo(watts, 6) as never,
        "W",
        "√3·V·I of the means: resistive module at full conduction, lines nearly balanced",
        { halfWidth: expect.closeTo(watts * (1.23 / 36 + 5.02 / 480), 6) as never },
      ),
    );
    const blind = assess({ supply: volts(480), asFound: { currents: amps(36, 36, 36) } });
    expect(blind.at(-1)?.halfWidth).toBeNull();
    expect(blind.at(-2)?.halfWidth).toBeNull();
  });

  it("into a bank, a branch or an element of a delta are its part of the line", () => {
    const wiring = { banks: ["A", "B"].map((id) => ({ id, connection: "delta" as const })) };
    const names = ["A", "B"].flatMap((id) => ["L1L2", "L2L3", "L3L1"].map((pair) => `${id}-${pair}`));
    const into = [undefined, "A", "A-L1L2", "A-L3L1", "A-L2L3"];
    const found = assess(
      {
        wiring,
        supply: volts(480),
        asFound: { currents: into.map((one) => ({ at: "L1", reads: "1 A", ...(one ? { into: one } : {}) })) },
      },
      new Map(names.map((name) => [name, 48])),
    );
    // 480 V over 48 Ω is 10 A a branch, √3 of that a bank, two banks a line; L2 to L3 does not touch L1.
    expect(
      found.filter(({ label }) => label.endsWith("sound module")).map(({ label, value }) => [label, value]),
    ).toEqual([
      ["line current L1, sound module", close(20 * Math.sqrt(3))],
      ["current L1 into A, sound module", close(10 * Math.sqrt(3))],
      ["current L1 into A-L1L2, sound module", close(10)],
      ["current L1 into A-L3L1, sound module", close(10)],
      ["current L1 into A-L2L3, sound module", close(0)],
    ]);
  });

  it("and volts have an unbalance by each definition, the first with its worst case", () => {
    const NOTE =
      "a criterion of motors and supplies: a resistance heater feels the power of each branch, not this";
    const of = (
      currents: readonly number[],
      supply: readonly [number, number, number] | null,
      instruments = {},
    ) => {
      const record = star({ instruments, asFound: { currents: amps(...currents) } });
      return assessUnbalance(
        record,
        record.asFound ?? {},
        supply === null ? undefined : read({ supply: volts(...supply) }).supply,
      );
    };
    const expected = (
      what: string,
      measured: "line voltages" | "line currents",
      three: readonly number[],
      limit: number | null,
    ) => {
      const [l1, l2, l3] = three as [number, number, number];
      return unbalanceByDefinition({ l1, l2, l3, measured }).map(
        ({ definition, formula, source, value, reason }, i) =>
          figure(
            `${what}: ${definition}`,
            value,
            "1",
            value === null ? (reason as string) : `${formula}; ${source}`,
            {
              halfWidth: i === 0 && limit !== null ? close((4 / 3) * limit) : null,
              caution: NOTE,
            },
          ),
      );
    };
    const [three, supply] = [
      [36, 30, 41],
      [480, 470, 485],
    ] as const;
    expect(of(three, supply)).toEqual([
      ...expected("supply", "line voltages", supply, null),
      ...expected("line currents", "line currents", three, null),
    ]);
    expect(of(three, supply, { clamp: CLAMP, voltmeter: VOLTMETER })).toEqual([
      ...expected("supply", "line voltages", supply, (0.01 * 485 + 0.2) / (1435 / 3)),
      ...expected("line currents", "line currents", three, (0.02 * 41 + 0.5) / (107 / 3)),
    ]);
    expect(of([36, 30], null)).toEqual([]);
    // Two lines without current are no unbalance but a fault.
    expect(of([36, 0, 0], null)).toEqual([]);
    expect(of([36, 36, 0], null).length).toBeGreaterThan(0);
    expect(of([0.1, 0.1, 0.1], null).every(({ value }) => value === 0 || value === null)).toBe(true);
  });
});

describe("odd amps", () => {
  const odd = (label: string, value: number, unit = "A"): Figure => ({
    ...judged(label, "outside", unit),
    value,
  });
  const four = ["a", "b", "c", "d"].map((label, i) => odd(label, 30 + i));
  it("are named up to three", () => {
    expect(ampsWords(four.slice(0, 2))).toBe("a 30.0 A and b 31.0 A");
    expect(ampsWords(four.slice(0, 3))).toBe("a 30.0 A, b 31.0 A and c 32.0 A");
    expect(ampsWords(four)).toBe("a 30.0 A, b 31.0 A and c 32.0 A and 1 more");
  });
  it("ask why, unless something explains them", () => {
    const amps = (currents: readonly Figure[], explained = false) =>
      ampsSteps(day([], { currents }), explained);
    expect(amps(four.slice(0, 1))[0]).toMatchObject({
      reason: "Outside those of a sound module, and no other reading says why: a 30.0 A.",
      about: [],
    });
    expect(amps(four, true)).toEqual([]);
    expect(amps([odd("x", 1, "1"), judged("y", "within"), judged("z", "undecided")])).toEqual([]);
    expect(ampsSteps(null, false)).toEqual([]);
  });
  it("are no joints: a drop that stands alone asks for its like", () => {
    const alone = joint("a", { resistance: 1e-4 as never, power: 0.1234 as never });
    const [one, ...more] = unjudgedJointSteps(day([], { joints: [alone, joint("b", {})] }), new Set());
    expect(more).toEqual([]);
    expect(one).toMatchObject({
      reason:
        "a could not be judged: one drop alone shows nothing to compare with, though 0.123 W go into that contact.",
      about: ["a"],
    });
    expect(one?.action).toMatch(
      /^Read the drop of joints like a at their own currents, or the rise of a over the air/,
    );
    expect(unjudgedJointSteps(day([], { joints: [{ ...alone, power: null }] }), new Set())[0]?.reason).toBe(
      "a could not be judged: one drop alone shows nothing to compare with.",
    );
    expect(unjudgedJointSteps(day([], { joints: [alone] }), new Set(["a"]))).toEqual([]);
    expect(unjudgedJointSteps(day([], { joints: [{ ...alone, rise: rise(0, 0) }] }), new Set())).toEqual([]);
    expect(unjudgedJointSteps(null, new Set())).toEqual([]);
  });
});

describe("insulation", () => {
  const at = (
    node: string,
    rule: string,
    value: number | "open",
    verdict: Figure["verdict"],
    low: number,
    halfWidth = 0,
  ): Figure => ({
    ...judged(`insulation at ${node}, ${rule}`, verdict, "Ω"),
    ...{ value, halfWidth, limit: { low, high: null } },
  });
  const of = (...insulation: readonly Figure[]) => day([], { insulation });
  it("below the least is told once for each node, with the lowest reading and every limit missed", () => {
    const poor = of(
      at("L1", "IEC 60364-6", 0.5e6, "outside", 1e6),
      at("L1", "IEC 60204-1", 0.5e6, "outside", 1e6),
      at("L1", "IEC 60364-6", 0.21e6, "outside", 1e6),
      at("L2", "IEC 60204-1", 12_345, "outside", 1e6),
      at("L3", "maker element", 12_345, "outside", 20e6),
      at("S", "IEC 60364-6", "open", "outside", 1e6),
    );
    expect(poorInsulation(poor)).toEqual([
      "insulation at L1 210 kΩ, below the least that IEC 60364-6 and IEC 60204-1 ask for",
      "insulation at L2 12.3 kΩ, below the least that IEC 60204-1 asks for",
    ]);
    expect(insulationSteps(poor).map(({ reason, about }) => [reason, about])).toEqual([
      [
        "Insulation at L1 210 kΩ, below the least that IEC 60364-6 and IEC 60204-1 ask for; insulation at L2 12.3 kΩ, below the least that IEC 60204-1 asks for. Damp magnesia and dirt read low when cold, and so does a coil that touches.",
        ["L1", "L2"],
      ],
    ]);
    expect(insulationSteps(null)).toEqual([]);
  });

  it("in doubt is the tester's, the test voltage's or the maker's to settle", () => {
    const tester = at("L1", "IEC 60364-6", 1.02e6, "undecided", 1e6, 0.05e6);
    const voltage = at("L2", "IEC 60204-1", 600e6, "undecided", 1e6);
    const maker = [
      at("L3", "maker assembly", 3e6, "outside", 5e6),
      at("L3", "maker element", 3e6, "undecided", 3e6, 0.1e6),
      // Cleared but for the test voltage.
      at("L3", "maker storage", 3e6, "undecided", 1e6),
      at("L3", "NETA 100.1", 3e6, "outside", 100e6),
      at("L3", "maker production", 3e6, "outside", 500e6),
    ];
    const words = [
      "insulation at L1 1.02 MΩ, which this tester cannot tell from the least that IEC 60364-6 asks for",
      "insulation at L2 600 MΩ, read below the test voltage that IEC 60204-1 is for",
      "insulation at L3 3.00 MΩ, not clear of what is asked in service (maker assembly 5.00 MΩ and maker element 3.00 MΩ)",
    ];
    const all = of(tester, voltage, ...maker);
    expect(doubtfulInsulation(all).map((one) => one.words)).toEqual(words);
    expect(insulationRunning(all)).toBe(`Not before the insulation is settled: ${words[0]} and ${words[1]}.`);
    expect(insulationRunning(of(...maker))).toBe(
      `Not before the maker of the elements, or who answers for them, has accepted their insulation: ${words[2]}.`,
    );
    expect(insulationRunning(of(at("L1", "NETA 100.1", 3e6, "outside", 100e6)))).toBeNull();
    const steps = doubtfulInsulationSteps(all);
    expect(steps.map(({ about }) => about)).toEqual([["L1"], ["L2"], ["L3"]]);
    expect(steps.map(({ reason }) => reason)).toEqual(words.map((one) => `I${one.slice(1)}.`));
    expect(steps.map(({ action }) => action.split(/[:;,] /)[0])).toEqual([
      "Do not energise yet. Isolate and read it again with a tester of finer range",
      "Do not energise yet. Isolate and read it again at the test voltage that the limit is for",
      "Ask the maker of the elements for its own limit",
    ]);
    expect(doubtfulInsulationSteps(null)).toEqual([]);
    // What is poor is not also in doubt; what is in doubt by the codes is not told again by the maker's.
    expect(
      doubtfulInsulation(
        of(
          at("L1", "IEC 60364-6", 0.5e6, "outside", 1e6),
          tester,
          at("L1", "maker element", 5e5, "outside", 2e7),
        ),
      ),
    ).toEqual([]);
    expect(doubtfulInsulation(of(tester, at("L1", "maker element", 1.02e6, "outside", 2e7)))).toHaveLength(1);
    expect(doubtfulInsulation(of(at("L3", "maker storage", 3e6, "undecided", 1e6)))).toEqual([]);
  });
});

describe("voltages", () => {
  const concerns = (
    more: Partial<BenchRecord>,
    plateCurrent: number | null = 36.08,
    lost: string | null = null,
  ) => supplyConcerns(star(more), plateCurrent, lost);
  it("within a tenth of the plate's, of a lost line, or without either ask for nothing", () => {
    for (const v of [480, 433, 527, 528, 432]) expect(concerns({ supply: volts(v) })).toEqual(QUIET);
    expect(concerns({ supply: volts(575) }, 36, "L1")).toEqual(QUIET);
    expect(concerns({})).toEqual(QUIET);
    expect(concerns({ supply: volts(575), nameplate: undefined as never })).toEqual(QUIET);
  });
  it("above are settled before anything is energised", () => {
    // (575/480)² = 1.435.
    const words = "575 V between lines on a module whose plate says 480 V";
    const found = concerns({ supply: volts(560, 575, 570) });
    expect(found).toEqual({
      ...QUIET,
      outside: `supply ${words}, where 528 V at most is usual`,
      before: `the supply's voltage is settled: ${words}`,
      steps: [
        {
          action:
            "Have the electrician in charge settle the supply's voltage, its transformer's taps and the plate before the module is energised again.",
          reason: `${words}: its elements give 1.44 times their power.`,
          about: ["supply"],
        },
      ],
    });
    // 831 V is the plate's times √3.
    expect(concerns({ supply: volts(831) }).steps[0]?.reason).toMatch(
      /3\.00 times their power\. Is the plate's voltage that of one branch\?$/,
    );
  });
  it("below are a reason for missing heat, and no danger", () => {
    // (410² + 415² + 420²)/3/480² = 74.8 %.
    const words = "420 V between lines on a module whose plate says 480 V";
    expect(concerns({ supply: volts(410, 415, 420) })).toEqual({
      ...QUIET,
      outside: `supply ${words}, where 432 V at least is usual: 75 % of its plate power`,
      weak: "At this voltage a sound module gives 75 % of its plate power.",
      later: [
        {
          action:
            "Before renewing anything for missing heat have the electrician in charge settle the supply's voltage, its transformer's taps, and whether elements for another voltage are fitted.",
          reason: `${words}: a sound module gives 75 % of its plate power on that, and its amps are lower in proportion to the volts.`,
          about: ["supply"],
        },
      ],
    });
  });
  it("near the plate's over √3 were read to neutral, which amps of a sound module prove", () => {
    const amps = (value: number, more: object = {}) =>
      LINES.map((at) => ({ at, reads: `${value} A`, ...more }));
    const slip = (
      asFound: BenchRecord["asFound"],
      plateCurrent: number | null = 36.08,
      more: Partial<BenchRecord> = {},
    ) => concerns({ supply: volts(277, 276, 278), ...(asFound ? { asFound } : {}), ...more }, plateCurrent);
    const list = "277 V, 276 V, 278 V: that is the plate's 480 V over √3";
    const unproved = slip(undefined);
    expect(unproved).toMatchObject({
      outside: null,
      unknown: "Not known before the voltages are read again from line to line.",
      explainsAmps: false,
      steps: [
        {
          reason: `${list}. If it is so between lines, the module gives a third of its power.`,
          about: ["supply"],
        },
      ],
    });
    const proved = slip({ currents: amps(36) });
    expect(proved.explainsAmps).toBe(true);
    expect(proved.steps[0]?.reason).toBe(
      `${list}, and the amps are those of a sound module on the plate's voltage.`,
    );
    for (const [asFound, plate] of [
      [{ currents: amps(30) }, 36.08],
      [{ currents: amps(36).slice(1) }, 36.08],
      [{ currents: amps(36, { into: "A" }) }, 36.08],
      [{ currents: amps(36) }, null],
    ] as const)
      expect(slip(asFound, plate).explainsAmps).toBe(false);
    // The later day speaks.
    expect(slip({ currents: amps(36) }, 36.08, { asLeft: { currents: amps(20.8) } }).explainsAmps).toBe(
      false,
    );
    expect(slip({ currents: amps(20.8) }, 36.08, { asLeft: { currents: amps(36) } }).explainsAmps).toBe(true);
    // One of three that is not near is no slip of all.
    expect(concerns({ supply: volts(277, 276, 260) }).unknown).toBeNull();
  });
  it("of another supply, alike, are taken for the module's; others are not", () => {
    const record = star({});
    const of = (v12: number, v23 = v12, v31 = v12) =>
      voltageOf(record, read({ supply: volts(v12, v23, v31) }).supply, 480 as never, 36.08);
    expect(voltageOf(record, undefined, 480 as never, null)).toBe(480);
    expect([of(480), of(432), of(528)]).toEqual([480, 480, 480]);
    expect(of(414, 415, 416)).toBeCloseTo(415, 9);
    expect(of(570, 575, 580)).toBeCloseTo(575, 9);
    expect([of(400, 430, 400), of(240, 240, 480)]).toEqual([480, 480]);
    const sound = star({ asFound: { currents: LINES.map((at) => ({ at, reads: "36 A" })) } });
    const neutral = read({ supply: volts(277) }).supply as never;
    expect(voltageOf(sound, neutral, 480 as never, 36.08)).toBe(480);
    expect(voltageOf(record, neutral, 480 as never, 36.08)).toBeCloseTo(277, 9);
    expect([
      readToNeutral(sound, neutral, 480 as never, 36.08),
      readToNeutral(record, neutral, 480 as never, 36.08),
    ]).toEqual([true, false]);
  });
  it("that add up to the third are a lost line", () => {
    const state = (v12: number, v23: number, v31: number, plate: number | null = 480) =>
      supplyState(read({ supply: volts(v12, v23, v31) }).supply, plate as never);
    expect(
      [state(480, 241, 239), state(239, 480, 241), state(241, 239, 480)].map((one) => one?.lostLine),
    ).toEqual(["L3", "L1", "L2"]);
    expect(state(480, 480, 480)?.lostLine).toBeNull();
    // 480 against 0.97 of 494: a real if poor triangle is measured as it is.
    expect(state(480, 250, 260)?.lostLine).toBeNull();
    expect(state(480, 250, 244)?.lostLine).toBe("L3");
    expect(state(480, 241, 239, null)?.lostLine).toBe("L3");
    // Far from the plate it is a slip of the pen, which no triangle closes.
    expect(state(480, 240, 240, 1000)?.lostLine).toBeNull();
    expect(supplyState(undefined, null)).toBeNull();
    const plate = supplyState(undefined, 480 as never);
    expect(plate?.present).toEqual(plate?.whole);
    expect(plate?.lostLine).toBeNull();
  });
  it("of a day are its own, else the site's; those of the site its own, else the last", () => {
    const of = (...names: readonly ("supply" | "asFound" | "asLeft")[]) => {
      const v = { supply: 480, asFound: 470, asLeft: 475 };
      const parts = Object.fromEntries(
        names.map((name) => [name, name === "supply" ? volts(v.supply) : { supply: volts(v[name]) }]),
      );
      const record = read(parts as Partial<BenchRecord>);
      return [supplyOf(record, "asFound"), supplyOf(record, "asLeft"), siteSupply(record)].map(
        (one) => one?.v12.value,
      );
    };
    expect(of("supply", "asFound", "asLeft")).toEqual([470, 475, 480]);
    expect(of("asFound", "asLeft")).toEqual([470, 475, 475]);
    expect(of("asFound")).toEqual([470, undefined, 470]);
    expect(of("supply")).toEqual([480, 480, 480]);
  });
});

describe("joints", () => {
  const meters = {
    millivoltmeter: { ofReading: 0.005, digits: 3, resolution: "0.1 mV" },
    clamp: CLAMP,
  } as const;
  const parsed = (
    joints: NonNullable<BenchRecord["asFound"]>["joints"],
    instruments: BenchRecord["instruments"] = meters,
  ) => {
    const record = read({ instruments, asFound: { joints: joints ?? [] } } as Partial<BenchRecord>);
    return assessJoints(record.asFound?.joints ?? [], record.instruments ?? {});
  };
  it("are U/I and U·I, worst first, with what the instruments allow", () => {
    const found = parsed([
      { id: "a", drop: "4.0 mV", current: "40.0 A" },
      { id: "b", drop: "12.0 mV", current: "40.0 A" },
    ]);
    expect(found.map(({ id, comparison }) => [id, comparison])).toEqual([
      ["b", "investigate"],
      ["a", "like the best"],
    ]);
    const [b] = found;
    const { halfWidth } = measuredJoint({
      ...{ drop: 0.012 as never, current: 40 as never },
      // 0.5 % of 12 mV and three digits; 2 % of 40 A and five digits.
      ...{ dropHalfWidth: 0.00036 as never, currentHalfWidth: 1.3 as never },
    });
    expect(b).toMatchObject({
      resistance: close(3e-4),
      power: close(0.48),
      ratioToBest: close(3),
      halfWidth: close(halfWidth),
      rise: null,
    });
    const blind = parsed([{ id: "a", drop: "4.0 mV", current: "40.0 A" }], {});
    const digit = measuredJoint({
      ...{
        drop: 0.004 as never,
        current: 40 as never,
        dropHalfWidth: 0.0001 as never,
        currentHalfWidth: 0.1 as never,
      },
    });
    expect(blind[0]?.halfWidth).toBeCloseTo(digit.halfWidth, 12);
    expect(blind[0]).toMatchObject({ comparison: "nothing to compare with", ratioToBest: 1 });
  });
  it("by their rise are graded over the coolest at like load, else over the air", () => {
    const graded = (value: number, half: number, comparison: "similar" | "ambient", load: number) => {
      const one = scanSeverity({
        ...{
          rise: value as never,
          riseHalfWidth: half as never,
          comparison,
          loadFraction: load,
          load: "full load",
        },
        ...{ scale: "neta-100.18", emissivity: 0.95 },
      });
      return {
        ...{ fullLoadLow: one.low.rise, fullLoadHigh: one.high.rise, level: one.level, atLeast: one.atLeast },
        ...{ atMost: one.high.level, action: one.action },
      };
    };
    const rises = (...list: readonly (readonly [string, string | number, number?])[]) =>
      Object.fromEntries(
        parsed(
          list.map(([id, kelvins, loadRatio]) => ({
            id,
            rise: kelvins,
            ...(loadRatio === undefined ? {} : { loadRatio }),
          })),
        ).map(({ id, rise: one }) => [id, one]),
      );
    const alike = rises(["a", "12 K", 1], ["b", "8 K", 0.96]);
    expect(alike["a"]).toMatchObject({ measured: 12, ...graded(4, 2, "similar", 1) });
    expect(alike["b"]).toMatchObject({ measured: 8, ...graded(0, 0, "similar", 0.96) });
    expect(alike["a"]?.rule).toMatch(/^Rise over b, the coolest like joint at like load/);
    const apart = rises(["a", "12 K", 1], ["b", "8 K", 0.9]);
    expect(apart["a"]).toMatchObject({ measured: 12, ...graded(12, 2, "ambient", 1) });
    expect(apart["b"]).toMatchObject({ measured: 8, ...graded(8, 2, "ambient", 0.9) });
    expect(apart["a"]?.rule).toMatch(/^Rise over the air, the camera taken as good for 2 K; /);
    // A coarse camera counts by its digit, a plain number by the camera; without a load it is full.
    expect(rises(["a", "1e1 K"])["a"]).toMatchObject(graded(10, 10, "ambient", 1));
    expect(rises(["a", 30])["a"]).toMatchObject(graded(30, 2, "ambient", 1));
  });
  it("stand in the order of what is to be opened, resistance, rise and name", () => {
    const order = (...list: readonly JointAssessment[]) => presentJoints(list, []).map(({ id }) => id);
    const ohms = (id: string, value: number, more: object = {}) =>
      joint(id, { resistance: value as never, ...more });
    expect(
      order(ohms("a", 1), ohms("b", 2), ohms("c", 0.5, { comparison: "investigate" }), joint("d", {})),
    ).toEqual(["c", "b", "a", "d"]);
    const warm = (id: string, measured: number) =>
      joint(id, { rise: { ...(rise(0, 0) as object), measured } as never });
    expect(order(warm("a", 5), warm("b", 6), joint("c", {}))).toEqual(["b", "a", "c"]);
    expect(order(joint("b", {}), joint("a", {}))).toEqual(["a", "b"]);
    // As left stands in place of as found.
    expect(
      presentJoints([ohms("a", 9), ohms("b", 2)], [ohms("a", 1)]).map(({ id, resistance }) => [
        id,
        resistance,
      ]),
    ).toEqual([
      ["b", 2],
      ["a", 1],
    ]);
  });
  it("are refused where a name comes twice or half a reading is there", () => {
    const issues = refused(() =>
      checkJoints(
        read({
          asFound: {
            joints: [
              { id: "a", drop: "4 mV", current: "40 A" },
              { id: "a", drop: "4 mV" },
              { id: "b", current: "40 A" },
              { id: "c", rise: "4 K" },
            ],
          },
        }).asFound?.joints ?? [],
        "asFound.joints",
      ),
    );
    expect(issues.map(({ message }) => message)).toEqual([
      'asFound.joints.1.id: "a" is not allowed; expected a name used once',
      "asFound.joints.1.current: missing; expected the current at the same time",
      "asFound.joints.2.drop: missing; expected a drop with its current, or a rise",
    ]);
  });
  it("whose repair can wait, or whose scan cannot say, are told so", () => {
    const seen = (level: number, atMost: number, more: object = {}) =>
      joint("a", {
        rise: {
          ...(rise(level, level) as object),
          ...{
            measured: 12.4,
            fullLoadLow: 14.6,
            fullLoadHigh: 20.4,
            atMost,
            action: "repair as time permits",
          },
        } as never,
        ...more,
      });
    const shown = "joint a 12 K over the air, graded as 15 to 20 K at full load";
    expect(scanWords(seen(2, 2))).toEqual([`${shown}: repair as time permits`]);
    expect(scanWords(seen(1, 4))).toEqual([`${shown}, which does not say if it is bad`]);
    for (const quiet of [seen(1, 3), seen(3, 4), seen(2, 4, { comparison: "like the best" }), joint("a", {})])
      expect(scanWords(quiet)).toEqual([]);
    const steps = (one: JointAssessment) => scanSteps(day([], { joints: [one] }))[0];
    const open = "Isolate, then open joint a, look for heat marks and pitting, and remake it";
    expect(steps(seen(2, 4))?.action).toBe(`${open} before full load.`);
    expect(steps(seen(2, 3))).toEqual({
      action: `${open} at the next stop.`,
      reason: `J${shown.slice(1)}: repair as time permits. Line currents cannot show this.`,
      about: ["a"],
    });
    expect(steps(seen(1, 4))?.action).toBe(
      "Scan joint a again nearer to full load, or read its drop in millivolts beside a like joint.",
    );
    expect(scanSteps(null)).toEqual([]);
  });
});

describe("instruments", () => {
  const meters = ["clamp", "voltmeter", "millivoltmeter", "insulationTester"] as const;
  const plain = {
    supply: { v12: 480, v23: 480, v31: 480 },
    asFound: {
      currents: [{ at: "L1", reads: 36 }],
      joints: [{ id: "a", drop: 0.004, current: "40 A" }],
      insulation: [{ from: "L1", reads: 1e6 }],
    },
  };
  const check = (more: object, record: object = plain) =>
    refused(() =>
      checkInstruments(
        read({
          instruments: Object.fromEntries(
            meters.map((one) => [one, { ofReading: 0.01, digits: 2, ...more }]),
          ),
          ...record,
        } as never),
      ),
    );
  it("must say their last digit where a plain number was written, once each", () => {
    const because = (path: string) =>
      `one unit of the instrument's last digit, because ${path} is a plain number`;
    expect(check({}).map(({ message }) => message)).toEqual([
      `instruments.clamp.resolution: missing; expected ${because("asFound.currents.0.reads")}`,
      `instruments.voltmeter.resolution: missing; expected ${because("supply.v12")}`,
      `instruments.millivoltmeter.resolution: missing; expected ${because("asFound.joints.0.drop")}`,
      `instruments.insulationTester.resolution: missing; expected ${because("asFound.insulation.0.reads")}`,
    ]);
    const left = {
      asLeft: {
        supply: { v12: "480 V", v23: "480 V", v31: 480 },
        joints: [{ id: "a", drop: "4 mV", current: 40 }],
      },
    };
    expect(check({}, left).map(({ message }) => message)).toEqual([
      `instruments.clamp.resolution: missing; expected ${because("asLeft.joints.0.current")}`,
      `instruments.voltmeter.resolution: missing; expected ${because("asLeft.supply.v31")}`,
    ]);
    const fine = (instruments: object, record: object) => () =>
      checkInstruments(read({ instruments, ...record } as never));
    expect(fine({}, plain)).not.toThrow();
    expect(
      fine(
        { insulationTester: { ofReading: 0.05, digits: 2 } },
        { asFound: { insulation: [{ from: "L1", reads: "OL" }] } },
      ),
    ).not.toThrow();
    expect(fine({ clamp: { ofReading: 0.05, digits: 2, resolution: "0.1 A" } }, plain)).not.toThrow();
  });
  it("limit a reading by its own last digit before the instrument's", () => {
    const clamp = read({ instruments: { clamp: CLAMP } }).instruments?.clamp;
    // 2 % of 36 A and five digits of 1 A, or of 0.1 A where none was written.
    expect(errorLimit({ value: 36, resolution: 1 } as never, clamp)).toBeCloseTo(5.72, 12);
    expect(errorLimit({ value: 36, resolution: null } as never, clamp)).toBeCloseTo(1.22, 12);
    expect(errorLimit({ value: 36, resolution: 1 } as never, undefined)).toBeNull();
  });
});

describe("both days as one", () => {
  const value = (id: string, resistance: number | "open" | null, more: object = {}) => ({
    ...branch(id, "sound"),
    ...{ resistance: resistance as never, target: 8 as never, ...more },
  });
  const of = (branches: readonly ReturnType<typeof value>[], more: object = {}) => ({
    ...day(branches).resistances,
    ...more,
  });
  const reads = (from: string, to: string) => ({
    from,
    to,
    reads: 7 as never,
    predicted: null,
    residual: null,
  });
  it("take each branch as left where it was read again", () => {
    const found = of([value("a", 7), value("b", 9), value("c", null)], {
      beyondElements: [reads("L1", "L2"), reads("L2", "L3")],
    });
    const left = of([value("a", 7.5), value("b", null), value("c", null, { atLeast: 7 })], {
      readings: [reads("L1", "L2")],
      beyondElements: [reads("L3", "L1")],
    });
    const present = presentResistances(found, left);
    expect(present.branches.map(({ resistance, atLeast }) => [resistance, atLeast])).toEqual([
      [7.5, null],
      [9, null],
      [null, 7],
    ]);
    expect(present.beyondElements.map(({ from }) => from)).toEqual(["L3", "L2"]);
    expect(presentResistances(found, { ...left, outcome: "no readings" })).toBe(found);
  });
  it("are hot by the factor, and at target where they are faulty, unknown or not believed", () => {
    const branches = [
      value("sound", 7),
      value("undecided", 7, { finding: "undecided" }),
      value("unjudged", 7, { finding: "unjudged" }),
      value("outside", 9, { finding: "outside" }),
      value("open", "open", { finding: "open" }),
      value("high", null, { finding: "open" }),
      value("unknown", null, { finding: "not known", target: null }),
    ];
    const asFound = of(branches);
    const { asFound: found, repaired, atTarget } = hotBranches(asFound, asFound, 1.5);
    expect([...found]).toEqual([
      ["sound", 10.5],
      ["undecided", 10.5],
      ["unjudged", 10.5],
      ["outside", 13.5],
      ["open", "open"],
      ["high", "open"],
      ["unknown", null],
    ]);
    expect([...repaired]).toEqual([
      ["sound", 10.5],
      ["undecided", 10.5],
      ["unjudged", 10.5],
      ["outside", 12],
      ["open", 12],
      ["high", 12],
    ]);
    expect(atTarget).toEqual(["outside", "open", "high", "unknown"]);
    for (const more of [{ consistency: "inconsistent" }, { outcome: "contradictory" }])
      expect(hotBranches(asFound, of(branches, more), 1.5).repaired.get("sound")).toBe(12);
  });
});
