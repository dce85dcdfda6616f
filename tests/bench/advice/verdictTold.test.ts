/**
 * What a diagnosis amounts to, what it asks for, and what it is asked, word for word. Explanations are invented; from which odds on one is told
 * alone, and what each fault asks for, is common practice without a published source.
 */
import type { BenchRecord, DiagnosedFault, Diagnosis, Explanation } from "electroheat/bench";
import { buildModule, type ModulePlan } from "electroheat/circuit";
import { describe, expect, it } from "vitest";
import { diagnosisQuestion } from "../../../src/bench/advice/askDiagnosis.ts";
import { diagnosisSteps } from "../../../src/bench/advice/diagnosisSteps.ts";
import {
  branchesOf,
  type DiagnosisVerdict,
  diagnosisVerdict,
  drawingVoid,
  jointsAmong,
  jointsNamed,
  misreadBranches,
  openNamed,
} from "../../../src/bench/advice/diagnosisVerdict.ts";
import { studsOf, withStudJoints } from "../../../src/bench/advice/studJoints.ts";
import { bankTargets } from "../../../src/bench/day/targets.ts";
import { read } from "../site/made.ts";

const OPEN: DiagnosedFault = { kind: "element open", element: "A-L1" };
const EARTH: DiagnosedFault = { kind: "earth fault", element: "A-L2" };
const LOST: DiagnosedFault = { kind: "lost line", line: "L2" };
const JOINT: DiagnosedFault = { kind: "joint", place: "L1>A" };
const one = (
  probability: number,
  faults: readonly DiagnosedFault[],
  more: Partial<Explanation> = {},
): Explanation => ({
  faults,
  unseen: [],
  wiring: 0,
  probability,
  ...({
    prior: 0.1,
    estimates: [],
    logLikelihood: 0,
    chiSquare: 0,
    degreesOfFreedom: 1,
    pValue: 0.5,
    predicted: [],
  } as const),
  ...more,
});
const group = (...explanations: readonly Explanation[]) => ({
  probability: explanations.reduce((sum, { probability }) => sum + probability, 0),
  explanations,
});
const diagnosis = (groups: Diagnosis["groups"], outcome: Diagnosis["outcome"] = "explained"): Diagnosis => ({
  ...{ outcome, groups, notDetermined: [], warnings: [], cautions: [] },
});
const sum = (...groups: Diagnosis["groups"]) => {
  const { kind, words, explanations } = diagnosisVerdict(diagnosis(groups));
  return [kind, words, explanations.length];
};

describe("a diagnosis, summed up", () => {
  it("is settled on what leads by far, with what is not excluded beside it", () => {
    expect(sum(group(one(0.95, [OPEN])))).toEqual(["settled", "Element A-L1 open (95 %)", 1]);
    expect(sum(group(one(0.7, [OPEN]), one(0.2, [EARTH]), one(0.05, [LOST])))).toEqual([
      "settled",
      "Element A-L1 open (70 %); these readings do not exclude element A-L2 earthed (20 %) or no supply on L2 (5.0 %)",
      3,
    ]);
    // Below a twentieth of the first it is not told of.
    expect(sum(group(one(0.9, [OPEN]), one(0.045, [EARTH])))[1]).toBe("Element A-L1 open (90 %)");
    expect(sum(group(one(0.9, [OPEN]), one(0.046, [EARTH])))[2]).toBe(2);
    expect(sum(group(one(0.95, [OPEN, EARTH], { wiring: 1 })))[1]).toBe(
      "Element A-L1 open and element A-L2 earthed, if wired as alternative 1 (95 %)",
    );
  });
  it("is not told apart where none of a group is twice as probable as the next, five by name", () => {
    expect(sum(group(one(0.62, [OPEN]), one(0.31, [EARTH])))[0]).toBe("settled");
    expect(sum(group(one(0.62, [OPEN]), one(0.32, [EARTH])))).toEqual([
      "not told apart",
      "Cannot be told apart: element A-L1 open (62 %) or element A-L2 earthed (32 %)",
      2,
    ]);
    const seven = Array.from({ length: 7 }, (_, i) =>
      one(0.14, [{ kind: "element open", element: `E${i}` }]),
    );
    expect(sum(group(...seven))[1]).toBe(
      `Cannot be told apart: ${[0, 1, 2, 3, 4].map((i) => `element E${i} open (14 %)`).join(", ")} and 2 more`,
    );
    expect(sum(group(...seven.slice(0, 5).map((e) => ({ ...e, probability: 0.19 }))))[1]).toMatch(
      / or element E4 open \(19 %\)$/,
    );
  });
  it("is not settled where the first group is below nine in ten, the most probable first", () => {
    expect(sum(group(one(0.5, [OPEN])), group(one(0.39, [EARTH])))).toEqual([
      "not settled",
      "Not settled: element A-L1 open (50 %) or element A-L2 earthed (39 %)",
      2,
    ]);
    expect(sum(group(one(0.3, [OPEN])), group(one(0.4, [EARTH])))[1]).toBe(
      "Not settled: element A-L2 earthed (40 %) or element A-L1 open (30 %)",
    );
  });
  it("is sound where nothing wrong leads", () => {
    const sound = ["sound", "No fault shows in these readings", 1];
    expect(sum(group(one(0.95, [])))).toEqual(sound);
    expect(sum(group(one(0.62, []), one(0.3, [OPEN])))).toEqual(sound);
    expect(sum(group(one(0.62, []), one(0.31, [OPEN])))[0]).toBe("settled");
    expect(sum(group(one(0.61, [])), group(one(0.3, [OPEN])))).toEqual(sound);
    expect(sum(group(one(0.6, [])), group(one(0.3, [OPEN])))[0]).toBe("not settled");
    // Faults that no reading can show are left out.
    expect(sum(group(one(0.5, [EARTH], { unseen: [EARTH] }), one(0.45, [])))).toEqual(sound);
  });
  it("says why there is none", () => {
    const none = (outcome: Diagnosis["outcome"], groups: Diagnosis["groups"] = []) => {
      const { kind, words, explanations } = diagnosisVerdict(diagnosis(groups, outcome));
      return [kind, words.slice(0, 24), explanations.length];
    };
    expect(none("nothing fits", [group(one(0.99, [OPEN]))])).toEqual([
      "nothing fits",
      "No single fault, nor two",
      0,
    ]);
    expect(none("too few readings", [group(one(0.99, [OPEN]))])).toEqual([
      "too few readings",
      "Too few readings to test",
      0,
    ]);
    expect(none("explained")).toEqual(["too few readings", "Too few readings to test", 0]);
    expect(none("explained", [group(one(0.95, [EARTH], { unseen: [EARTH] }))])).toEqual([
      "too few readings",
      "Too few readings to test",
      0,
    ]);
  });
});

const bank = (id: string, connection: "star" | "delta" = "star") => ({
  id,
  connection,
  elementResistance: 8 as never,
});
const plan: ModulePlan = {
  banks: [{ ...bank("A"), elementsInParallel: 2 }, bank("B"), bank("D", "delta")],
  starPoints: "separate",
  joints: [
    { id: "J1", at: "L1", behind: ["A"], resistance: 1e-4 as never },
    { id: "JS", at: "S-B", behind: ["B-L1"], resistance: 1e-4 as never },
  ],
};
const module = buildModule(plan);
const settled = (...faults: readonly DiagnosedFault[]): DiagnosisVerdict => ({
  kind: "settled",
  explanations: [one(0.95, faults)],
  words: "Words",
});
const stars = ["A-L1", "A-L2", "A-L3", "B-L1", "B-L2", "B-L3"];

describe("what a fault lies on", () => {
  it.each<[DiagnosedFault, readonly string[]]>([
    [{ kind: "element open", element: "A-L1-2" }, ["A-L1"]],
    [{ kind: "shorted turns", element: "B-L2" }, ["B-L2"]],
    [{ kind: "element off value", element: "D-L1L2" }, ["D-L1L2"]],
    [{ kind: "earth fault", element: "B-L3" }, ["B-L3"]],
    [{ kind: "joint", place: "L1" }, ["A-L1", "B-L1", "D-L1L2", "D-L3L1"]],
    [{ kind: "open joint", place: "L2>B" }, ["B-L2"]],
    [{ kind: "joint", place: "L2>D" }, ["D-L1L2", "D-L2L3"]],
    [{ kind: "joint", place: "S-A<A-L1" }, ["A-L1"]],
    [{ kind: "joint", place: "J1" }, ["A-L1"]],
    [{ kind: "mis-linked", bank: "A", as: "delta" }, []],
    [{ kind: "mis-landed", branch: "A-L1", drawn: "L1", on: "L2" }, []],
    [LOST, []],
    [{ kind: "supply unbalance" }, []],
  ])("%o lies on %o", (fault, branches) => {
    expect(branchesOf(fault, module)).toEqual(branches);
  });
  it("is taken from the one explanation that is settled on", () => {
    expect([...openNamed(settled({ kind: "element open", element: "A-L1-2" }, EARTH), module)]).toEqual([
      "A-L1",
    ]);
    expect([...openNamed({ ...settled(OPEN), kind: "not told apart" }, module)]).toEqual([]);
    expect([...openNamed(null, module)]).toEqual([]);
    const named = jointsNamed(
      settled({ kind: "open joint", place: "L2>B" }, { kind: "joint", place: "J1" }, EARTH),
      module,
    );
    expect([named.places, [...named.behind]]).toEqual([
      ["L2>B", "J1"],
      ["B-L2", "A-L1"],
    ]);
    expect(jointsNamed(null, module).places).toEqual([]);
    const bare = buildModule({ banks: [bank("B")] });
    expect(branchesOf({ kind: "joint", place: "L2>B" }, bare)).toEqual(["B-L2"]);
    const links = (fault: DiagnosedFault, clash = true) => [
      ...misreadBranches(settled(fault), module, clash),
    ];
    expect(links({ kind: "mis-linked", bank: "B", as: "delta" }, false)).toEqual(stars.slice(3));
    expect(links({ kind: "mis-linked", bank: null, as: "tied" })).toEqual(stars);
    expect(links({ kind: "mis-linked", bank: null, as: "tied" }, false)).toEqual([]);
    expect(links({ kind: "mis-landed", branch: "A-L2", drawn: "L2", on: "L3" }, false)).toEqual(
      stars.slice(0, 3),
    );
    expect(links(OPEN)).toEqual([]);
    expect(
      [
        settled({ kind: "mis-linked", bank: null, as: "tied" }),
        settled({ kind: "mis-landed", branch: "x", drawn: "y", on: "z" }),
        settled(OPEN),
        null,
      ].map(drawingVoid),
    ).toEqual([true, true, false, false]);
  });
});

it("joints are among what is bad for certain only where every explanation is joints and nothing else", () => {
  const among = (...all: readonly (readonly DiagnosedFault[])[]) =>
    jointsAmong({
      kind: "not told apart",
      explanations: all.map((faults) => one(0.4, faults)),
      words: "Words",
    });
  const other: DiagnosedFault = { kind: "open joint", place: "L2>B" };
  expect(among([JOINT], [other])).toEqual(["L1>A", "L2>B"]);
  expect(among([JOINT], [other, OPEN])).toEqual([]);
  expect(among([JOINT], [])).toEqual([]);
  expect(jointsAmong(settled(JOINT))).toEqual([]);
});

describe("what a diagnosis asks for", () => {
  const steps = (
    verdict: DiagnosisVerdict,
    covered: readonly string[] = [],
    proposals: readonly object[] = [],
  ) => diagnosisSteps({ verdict, module, covered: new Set(covered), proposals: () => proposals as never });
  it.each<[DiagnosedFault, string, readonly string[]]>([
    [
      OPEN,
      "Isolate, then open up element A-L1: find whether the coil, its stud joint or its jumper bar is broken, and renew it.",
      ["A-L1"],
    ],
    [
      { kind: "shorted turns", element: "B-L2" },
      "Isolate, lift the links of element B-L2, read it alone, and renew it if that confirms it.",
      ["B-L2"],
    ],
    [
      JOINT,
      "Isolate, then open the joint of bank A on L1: renew what is burnt, pitted or broken, and remake it.",
      ["L1>A"],
    ],
    [
      { kind: "mis-linked", bank: null, as: "tied" },
      "Isolate, then put the links of the star points as drawn: they are tied.",
      [],
    ],
    [
      { kind: "mis-linked", bank: "A", as: "delta" },
      "Isolate, then link bank A in star, as drawn; links, no parts by these readings. Its elements have had √3 times their voltage: look at and read each, its joints and conductors, before use.",
      ["A"],
    ],
    [
      { kind: "mis-linked", bank: "D", as: "star" },
      "Isolate, then link bank D in delta, as drawn; links, no parts by these readings. Its elements have had less than their voltage: confirm from the maker's data that they are rated for the voltage they then get.",
      ["D"],
    ],
    [
      { kind: "mis-landed", branch: "A-L2", drawn: "L2", on: "L3" },
      "Isolate, then land branch A-L2 on L2, as drawn: by these readings it is on L3. Where it has been energised like this, look at and read the other branches and their joints before use.",
      ["A-L2"],
    ],
    [
      LOST,
      "Isolate and prove dead all three lines (L2 floats live through the elements), then find why L2 has no voltage: fuse, contact, lug. Judge the module once it is back.",
      ["L2"],
    ],
    [
      { kind: "unfed bank", bank: "A", line: "L2" },
      "Isolate and prove dead all three lines (L2 of bank A floats live through its elements), then have the electrician in charge find why the bank has no voltage there: a pole of its contactor, a fuse, a lug.",
      [],
    ],
    [
      { kind: "unfed bank", bank: "A" },
      "Find out whether bank A was called for when the amps were read, and read them again at full conduction; if it was, have the electrician in charge look at its contactor, fuses and feed.",
      [],
    ],
    [
      EARTH,
      "Do not energise. Isolate, lift element A-L2 at both ends and measure its insulation to the frame alone; clean and dry it, or renew it.",
      ["A-L2"],
    ],
  ])("%o asks: %s", (fault, action, about) => {
    expect(steps(settled(fault))).toEqual([{ action, reason: "Words.", about }]);
  });
  it("is asked without names where a fault lies on nothing that has one", () => {
    expect(steps(settled({ kind: "supply unbalance" }))[0]).toMatchObject({ about: [], reason: "Words." });
    expect(steps(settled({ kind: "mis-linked", bank: null, as: "neutral" }))[0]?.action).toMatch(
      /^Isolate, then look for what ties the star points to the neutral or the frame/,
    );
  });
  it("is one step for several banks without supply, and for all lines", () => {
    const off = (bank: string): DiagnosedFault => ({ kind: "unfed bank", bank });
    const banks = module.plan.banks.map(({ id }) => id);
    expect(banks.length).toBeGreaterThan(2);
    const called = (...faults: readonly DiagnosedFault[]) =>
      steps(settled(...faults)).map(({ action }) => action);
    expect(called(off("A"), off("B"))).toEqual([
      "Find out whether banks A and B were called for when the amps were read, and read them again at full conduction; if they were, have the electrician in charge look at their contactor, fuses and feed.",
    ]);
    expect(called(...banks.map(off))).toEqual([
      "Find out whether heat was called for and the contactor in when the amps were read, and read them again at full conduction. If so, have the electrician in charge look for volts between the lines at the banks' terminals, then at the controller, the contactor and all fuses: 0 A does not prove it dead.",
    ]);
    expect(called(off("A"), off("B"), OPEN)).toHaveLength(2);
    const lines = ["L1", "L2", "L3"].map((line): DiagnosedFault => ({ kind: "lost line", line }));
    expect(called(...lines)).toEqual([
      "Have the electrician in charge find why no line has volts: the main switch, its fuses, the feed. Treat every line as live meanwhile: a reading of 0 V does not prove it dead.",
    ]);
    expect(called(...lines.slice(1))).toHaveLength(2);
    const either: DiagnosisVerdict = {
      kind: "not told apart",
      explanations: [one(0.5, [off("A")]), one(0.5, [off("B")])],
      words: "Words",
    };
    const best = { instruction: "Clamp.", measurement: { kind: "current", at: "L1", into: "A" } };
    expect(steps(either, [], [best])[0]?.action).toBe(
      "Find out which banks were called for when the amps were read. Clamp.",
    );
  });
  it("is nothing where branches, joints or the line say it already, or nothing is wrong", () => {
    const open: DiagnosedFault = { kind: "element open", element: "B-L1" };
    expect(steps(settled(open), ["B-L1"])).toEqual([]);
    expect(steps(settled(LOST), ["L2"])).toEqual([]);
    expect(steps(settled({ kind: "joint", place: "J1" }), ["J1"])).toEqual([]);
    expect(steps(settled(open, LOST), ["B-L1"]).map(({ about }) => about)).toEqual([["L2"]]);
    expect(steps({ ...settled(open), kind: "sound" })).toEqual([]);
    expect(steps({ ...settled(open), kind: "nothing fits" })).toEqual([]);
    expect(
      steps({ kind: "not told apart", explanations: [one(0.5, [open]), one(0.4, [LOST])], words: "x" }, [
        "B-L1",
        "L2",
      ]),
    ).toEqual([]);
  });
  it("is the reading that tells most where several are left, or a look at each", () => {
    const several: DiagnosisVerdict = {
      kind: "not told apart",
      explanations: [one(0.5, [OPEN]), one(0.4, [OPEN, LOST]), one(0.1, [])],
      words: "Words",
    };
    expect(steps(several)).toEqual([
      {
        action:
          "Isolate, then look at each of these places before renewing anything: no single further reading tells them apart.",
        reason: "Words.",
        about: ["A-L1", "L2"],
      },
    ]);
    const best = {
      instruction: "Read L1 to S.",
      measurement: { kind: "resistance", from: "L1", to: "S", only: ["A", "B"] },
    };
    expect(steps(several, [], [best])[0]).toMatchObject({
      action: "Read L1 to S.",
      reason: "Words. Of all single readings, L1 to S, only A and B linked tells most.",
    });
  });
});

describe("what a diagnosis is asked", () => {
  const INSTRUMENTS = {
    ohmmeter: { ofReading: 0.005, digits: 2, leads: { shorted: "0.2 Ω" } },
    clamp: { ofReading: 0.02, digits: 5, resolution: "0.1 A" },
    voltmeter: { ofReading: 0.01, digits: 2 },
    millivoltmeter: { ofReading: 0.005, digits: 3 },
    insulationTester: { ofReading: 0.05, digits: 2 },
  } as const;
  const v = { v12: "480 V", v23: "481.5 V", v31: "479 V" };
  const record = (more: Partial<BenchRecord>) =>
    read({
      nameplate: { power: "30 kW", voltage: "480 V" },
      instruments: INSTRUMENTS,
      wiring: {
        banks: [{ id: "A", connection: "star" }],
        joints: [
          { id: "J1", at: "L1" },
          { id: "J2", at: "L2" },
        ],
      },
      supply: v,
      ...more,
    });
  const ask = (more: Partial<BenchRecord>, extra: object = {}) => {
    const parsed = record(more);
    return diagnosisQuestion({
      ...{
        record: parsed,
        readings: parsed.asFound ?? {},
        supply: parsed.supply,
        targets: bankTargets(parsed),
        plateCurrent: 36.08 as never,
      },
      ...extra,
    });
  };
  const asFound: BenchRecord["asFound"] = {
    ohms: [
      { from: "L1", to: "S", reads: "7.88 Ω", alone: "A-L1" },
      { from: "L2", to: "S", reads: "OL" },
    ],
    currents: [
      { at: "L1", reads: "36.1 A" },
      { at: "L1", into: "A", reads: "36 A" },
    ],
    insulation: [{ from: "L1", reads: "42 MΩ" }],
    joints: [
      { id: "J1", drop: "3.0 mV", current: "40.0 A" },
      { id: "J2", drop: "8.0 mV", current: "40.0 A" },
      { id: "other", drop: "8.0 mV", current: "40.0 A" },
      { id: "J3", rise: "4 K" },
    ],
  };
  it("holds every reading, each instrument by its coarsest digit, and the module at its cold targets", () => {
    const { asked, leftOut } = ask({ asFound, temperatureFactor: 1.05 });
    expect(leftOut).toEqual([]);
    // 480²/30 kW = 7.68 Ω over 1.05; the sound joint is the lower of the drawn ones, 3 mV/40 A.
    expect(asked).toEqual({
      module: {
        banks: [
          {
            id: "A",
            connection: "star",
            elementsInParallel: 1,
            elementsInSeries: 1,
            elementResistance: expect.closeTo(7.68 / 1.05, 9),
          },
        ],
        joints: [
          { id: "J1", at: "L1", resistance: expect.closeTo(75e-6, 12) },
          { id: "J2", at: "L2", resistance: expect.closeTo(75e-6, 12) },
        ],
      },
      readings: [
        { kind: "resistance", from: "L1", to: "S", reads: 7.88, only: ["A-L1"] },
        { kind: "resistance", from: "L2", to: "S", reads: "open" },
        { kind: "current", at: "L1", reads: 36.1 },
        { kind: "current", at: "L1", reads: 36, into: "A" },
        { kind: "voltage", from: "L1", to: "L2", reads: 480 },
        { kind: "voltage", from: "L2", to: "L3", reads: 481.5 },
        { kind: "voltage", from: "L3", to: "L1", reads: 479 },
        { kind: "drop", across: "J1", reads: expect.closeTo(0.003, 12) },
        { kind: "drop", across: "J2", reads: expect.closeTo(0.008, 12) },
        { kind: "insulation", from: "L1", reads: 42e6 },
      ],
      instruments: {
        ohmmeter: {
          ofReading: 0.005,
          digits: 2,
          resolution: expect.closeTo(0.1, 12),
          leads: { shorted: expect.closeTo(0.2, 12) },
        },
        clamp: { ofReading: 0.02, digits: 5, resolution: 1 },
        voltmeter: { ofReading: 0.01, digits: 2, resolution: 1 },
        millivoltmeter: { ofReading: 0.005, digits: 3, resolution: expect.closeTo(1e-4, 12) },
        insulationTester: { ofReading: 0.05, digits: 2, resolution: expect.closeTo(1e6, 3) },
      },
      supply: { lineVoltage: 480 },
      depth: "single",
      spread: { temperatureFactor: { value: 1.05, standardUncertainty: 0.02 } },
    });
  });
  it("takes what the record leaves out: nickel-chromium, sound joints, the meter's own digit", () => {
    const joint = (joints: NonNullable<BenchRecord["asFound"]>["joints"]) =>
      // Drops are asked about only beside readings that say what flows.
      ask({ asFound: { joints: joints ?? [], currents: [{ at: "L1", reads: 40 }] } }).asked?.module
        .joints?.[0]?.resistance;
    expect(joint([{ id: "J1", drop: "4.0 mV", current: "40.0 A" }])).toBe(100e-6);
    expect(
      joint([
        { id: "J1", drop: "0.0 mV", current: "40.0 A" },
        { id: "J2", drop: "4.0 mV", current: "40.0 A" },
      ]),
    ).toBe(100e-6);
    const bare = ask({
      asFound: { currents: [{ at: "L1", reads: 36 }] },
      wiring: { banks: [{ id: "A", connection: "star" }], neutral: "connected" },
    }).asked;
    expect(bare?.instruments.clamp?.resolution).toBeCloseTo(0.1, 12);
    expect(bare?.module).toEqual({
      banks: [
        {
          id: "A",
          connection: "star",
          elementsInParallel: 1,
          elementsInSeries: 1,
          elementResistance: expect.closeTo(7.68 / 1.04, 9),
        },
      ],
      neutral: "connected",
    });
    expect(bare).not.toHaveProperty("spread");
    const open = ask({
      asFound: { ohms: [{ from: "L1", to: "S", reads: "OL" }] },
      instruments: { ohmmeter: { ofReading: 0.005, digits: 2, leads: "taken off" } },
    }).asked;
    // Nothing shows a digit: one is as good as another for what is open.
    expect(open?.instruments.ohmmeter).toEqual({
      ofReading: 0.005,
      digits: 2,
      resolution: 1,
      leads: "taken off",
    });
  });
  it("leaves out what nobody can weigh, and says so", () => {
    const without = (...names: readonly (keyof typeof INSTRUMENTS)[]) => {
      const instruments = Object.fromEntries(
        Object.entries(INSTRUMENTS).filter(([name]) => !names.includes(name as never)),
      );
      return ask({ asFound, instruments: instruments as never });
    };
    const say = (what: string) =>
      `Left out of the diagnosis: ${what}, for the record does not name the instrument.`;
    const { asked, leftOut } = without("clamp", "voltmeter", "millivoltmeter", "insulationTester");
    expect(leftOut).toEqual(
      ["clamp readings", "supply voltages", "drops across joints", "insulation readings"].map(say),
    );
    expect(asked?.readings.map(({ kind }) => kind)).toEqual(["resistance", "resistance"]);
    expect(without("ohmmeter").leftOut).toEqual([say("ohms")]);
    const none = without("ohmmeter", "clamp", "millivoltmeter", "insulationTester");
    expect([none.asked, none.leftOut.length]).toEqual([null, 4]);
    expect(ask({ asFound: {} })).toEqual({ asked: null, leftOut: [] });
    const plate = ask({ asFound, nameplate: undefined as never });
    expect(plate).toEqual({
      asked: null,
      leftOut: ["No diagnosis: without a nameplate nobody knows what a sound module reads."],
    });
    const many = (elementsInParallel: number) =>
      ask({
        asFound: { ohms: [], currents: [{ at: "L1", reads: "36 A" }] },
        wiring: { banks: [{ id: "A", connection: "star", elementsInParallel }] },
      });
    expect(many(20).asked).not.toBeNull();
    expect(many(21)).toEqual({
      asked: null,
      leftOut: ["No diagnosis: 63 elements are more than the 60 that are weighed here."],
    });
    expect(ask({ asFound }, { without: ["drop"] }).asked?.readings.some(({ kind }) => kind === "drop")).toBe(
      false,
    );
    // Volts to neutral, the amps those of a sound module.
    const low = { v12: "277 V", v23: "277 V", v31: "277 V" };
    const amps = ["L1", "L2", "L3"].map((at) => ({ at, reads: "36.1 A" }));
    const neutral = ask({ asFound: { currents: amps }, supply: low });
    expect(neutral.leftOut).toEqual([
      "Left out of the diagnosis: supply voltages, which look read to neutral where the record has them between lines.",
    ]);
    expect(neutral.asked?.readings.every(({ kind }) => kind === "current")).toBe(true);
    expect(
      ask({ asFound: { currents: amps }, supply: { v12: "414 V", v23: "415 V", v31: "416 V" } }).asked?.supply
        ?.lineVoltage,
    ).toBeCloseTo(415, 9);
  });
});

describe("studs of their own", () => {
  it("have a joint drawn at every place but where the record draws its own", () => {
    const drawn = withStudJoints(plan, 1e-4 as never).joints ?? [];
    expect(drawn.map(({ id, at, behind }) => [id, at, behind])).toEqual([
      ["L2>A", "L2", ["A"]],
      ["L2>B", "L2", ["B"]],
      ["L2>D", "L2", ["D"]],
      ["L3>A", "L3", ["A"]],
      ["L3>B", "L3", ["B"]],
      ["L3>D", "L3", ["D"]],
      ["S-A<A-L1", "S-A", ["A-L1"]],
      ["S-A<A-L2", "S-A", ["A-L2"]],
      ["S-A<A-L3", "S-A", ["A-L3"]],
      ["J1", "L1", ["A"]],
      ["JS", "S-B", ["B-L1"]],
      ["L2", "L2", undefined],
      ["L3", "L3", undefined],
    ]);
    for (const { resistance } of drawn) expect(resistance).toBe(1e-4);
  });
  it("are the ends of each branch behind all joints", () => {
    const studs = studsOf(withStudJoints({ banks: [{ ...bank("A"), elementsInSeries: 2 }] }, 1e-4 as never));
    expect([...studs.keys()]).toEqual(["A-L1", "A-L2", "A-L3"]);
    const { network, elements } = buildModule(
      withStudJoints({ banks: [{ ...bank("A"), elementsInSeries: 2 }] }, 1e-4 as never),
    );
    for (const [name, [from, to]] of studs) {
      const own = network.branches.filter(
        (_, i) => `A-${elements[i]?.branch}` === name && i < elements.length,
      );
      expect([own[0]?.from, own.at(-1)?.to]).toEqual([from, to]);
      expect(from).not.toBe(name.slice(2));
      expect(to).not.toBe("S");
    }
  });
});
