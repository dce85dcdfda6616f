/**
 * Next steps and the answer, word for word where they depend on figures and names. Days are invented; what is done about which finding is
 * common practice without a published source.
 */
import type { BranchAssessment, NextStep, ReadingsAssessment } from "electroheat/bench";
import { buildModule } from "electroheat/circuit";
import { describe, expect, it } from "vitest";
import { type AnswerInput, answerLines } from "../../../src/bench/advice/answer.ts";
import { beyondSteps, beyondWords, STUDS_STEP } from "../../../src/bench/advice/beyondElements.ts";
import { branchSteps } from "../../../src/bench/advice/branchSteps.ts";
import { nextSteps } from "../../../src/bench/advice/nextSteps.ts";
import { branch, day, joint, judged, rise } from "../site/made.ts";

const NONE = {
  misread: new Set<string>(),
  openElements: new Set<string>(),
  onStuds: new Set<string>(),
};
const sound = (...ids: readonly string[]) => ids.map((id) => branch(id, "sound"));
const reads = (from: string, to: string, value: number | "open", residual: number | null = null) => ({
  from,
  to,
  reads: value as never,
  predicted: null,
  residual,
});
const resistances = (branches: readonly BranchAssessment[], more: object = {}) => ({
  ...day(branches).resistances,
  ...more,
});
const OL = { readings: [reads("L1", "S", "open")] };
const faulty = (branches: readonly BranchAssessment[], more: object = OL, known = NONE) =>
  branchSteps(resistances(branches, more), known).faulty.map(({ action, reason, about }) => [
    action,
    reason,
    about,
  ]);
const unclear = (branches: readonly BranchAssessment[]) =>
  branchSteps(resistances(branches), NONE).unclear.map(({ action, reason, about }) => [
    action,
    reason,
    about,
  ]);
const value = (id: string, finding: BranchAssessment["finding"], more: object): BranchAssessment => ({
  ...branch(id, finding),
  ...more,
});

describe("steps about branches", () => {
  const isolate = (which: string) =>
    `Isolate, then open up ${which}: find whether a coil, its stud joint or its jumper bar is broken, and renew it.`;
  it("say of one open branch what it reads, of several which they are", () => {
    const one = (more: object, seen: object = OL) =>
      faulty([value("A-L1", "open", more), ...sound("A-L2")], seen)[0];
    expect(one({})).toEqual([isolate("branch A-L1"), "A-L1 reads open.", ["A-L1"]]);
    expect(one({}, {})?.[1]).toBe("The readings show no path through A-L1.");
    expect(one({ resistance: 912.4, target: 7.68 })?.[1]).toBe("A-L1 reads 912 Ω where 7.68 Ω belong.");
    expect(one({ resistance: 912.4 })?.[1]).toBe("A-L1 reads 912 Ω.");
    expect(one({ atLeast: 96, target: 7.68 })?.[1]).toBe("A-L1 reads at least 96.0 Ω where 7.68 Ω belong.");
    const two = [branch("A-L1", "open"), branch("B-L2", "open"), ...sound("A-L2", "B-L1")];
    expect(faulty(two)).toEqual([
      [isolate("branches A-L1, B-L2"), "A-L1, B-L2 read open.", ["A-L1", "B-L2"]],
    ]);
    expect(faulty(two, {})[0]?.[1]).toBe("A-L1, B-L2 show no path in these readings.");
  });

  it("look first for what several open branches share", () => {
    const all = [branch("A-L1", "open"), branch("A-L2", "open")];
    expect(faulty(all)).toEqual([
      [
        "Check the meter on a known resistor, its leads, and the links the readings pass through, before any element; then read L1 to L2, L2 to L3 and L3 to L1.",
        "Every branch reads open: one break in what they share is likelier than all of them.",
        ["A-L1", "A-L2"],
      ],
    ]);
    const line = [branch("A-L2", "open"), branch("B-L2", "open"), ...sound("A-L1", "B-L3")];
    expect(faulty(line)[0]).toEqual([
      "Isolate, then check the lug, the joint and the jumper bar of L2 before the elements on it.",
      "Every branch on L2 reads open: one break there is likelier than 2 broken branches.",
      ["A-L2", "B-L2"],
    ]);
    expect(faulty(line)).toHaveLength(2);
    // A side of a delta lands on two lines.
    const sides = [branch("A-L1L2", "open"), branch("A-L3L1", "open"), ...sound("A-L2L3")];
    expect(faulty(sides)[0]?.[2]).toEqual(["A-L1L2", "A-L3L1"]);
    // The line is looked for among the branch's own, not in the bank's name.
    const named = [branch("L1-L2", "open"), branch("L1-L3", "open"), ...sound("A-L1")];
    expect(faulty(named)).toHaveLength(1);
    // Not where one on the line is sound, where one alone is on it, or where the diagnosis names its elements.
    expect(faulty([...line, ...sound("C-L2")])).toHaveLength(1);
    expect(faulty([branch("A-L2", "open"), branch("B-L1", "open"), ...sound("A-L3")])).toHaveLength(1);
    expect(faulty(line, OL, { ...NONE, openElements: new Set(["A-L2", "B-L2"]) })).toHaveLength(1);
    expect(faulty(line, OL, { ...NONE, openElements: new Set(["A-L2"]) })).toHaveLength(2);
    expect(faulty(line, OL, { ...NONE, misread: new Set(["A-L2", "B-L2"]) })).toEqual([]);
  });

  it("put a bolted branch before open ones, and those before the rest", () => {
    const found = faulty([
      value("A-L1", "outside", { deviation: 0.123 }),
      branch("A-L2", "open"),
      value("A-L3", "shorted", { target: 7.68 }),
      value("B-L1", "high", { atLeast: 8.5, target: 7.68 }),
    ]);
    expect(found.map(([, reason]) => reason)).toEqual([
      "A-L3 reads as good as nothing where 7.68 Ω belong.",
      "A-L2 reads open.",
      "A-L1 is +12.3 % from target, outside the tolerance given.",
      "B-L1 reads at least 8.50 Ω where 7.68 Ω belong; these readings do not say more.",
    ]);
    expect(found.map(([action]) => (action as string).split(/[:,.]/)[0])).toEqual([
      "Do not energise",
      "Isolate",
      "Isolate",
      "Isolate",
    ]);
    expect(found[0]?.[0]).toBe(
      "Do not energise. Find what bridges branch A-L3: a fallen coil, a bar across two studs, a wrong link.",
    );
    expect(found[3]?.[0]).toBe(
      "Isolate, lift the links of branch B-L1 and read it alone: it is high or open.",
    );
  });

  it("part what is outside by its side, and by elements open", () => {
    const of = (deviation: number, openElements: number | null = null) =>
      faulty([{ ...value("A-L1", "outside", { deviation }), openElements }, ...sound("A-L2")])[0];
    expect(of(0.123)?.[0]).toMatch(
      /^Isolate, lift the links of branch A-L1, then read its elements one by one and its joints/,
    );
    expect(of(-0.2)).toEqual([
      "Isolate, then look for touching turns or a wrong element in branch A-L1, and for a path beside it that is not on the drawing.",
      "A-L1 is −20.0 % from target, outside the tolerance given.",
      ["A-L1"],
    ]);
    expect(of(0.0001)?.[1]).toBe("A-L1 is 0.0 % from target, outside the tolerance given.");
    expect(of(0.5, 1)).toEqual([
      "Isolate, lift the links of branch A-L1 and read its elements one by one.",
      "A-L1 is +50.0 % from target, which fits 1 of its parallel elements open.",
      ["A-L1"],
    ]);
  });

  it("look into the elements alone where the probes sat on the branch's own studs", () => {
    const found = faulty([value("A-L1", "outside", { deviation: 0.123 }), ...sound("A-L2")], OL, {
      ...NONE,
      onStuds: new Set(["A-L1"]),
    });
    expect(found).toEqual([
      [
        "Isolate, then read the elements of branch A-L1 one by one and renew what reads high: on its own studs no link or joint is in the reading.",
        "A-L1 is +12.3 % from target, outside the tolerance given.",
        ["A-L1"],
      ],
    ]);
  });

  it("ask for a better meter or a tolerance where nothing is decided", () => {
    const meter = (id: string) => `Read ${id} again with a four-wire meter, or one of finer resolution.`;
    expect(
      unclear([
        value("A-L1", "unjudged", {}),
        value("A-L2", "undecided", { deviation: -0.05 }),
        value("A-L3", "not known", { atLeast: 7, target: 7.68 }),
        branch("B-L1", "not known"),
        branch("B-L2", "unjudged"),
      ]),
    ).toEqual([
      [
        meter("A-L2"),
        "A-L2 is −5.0 % from target and this meter cannot say on which side of the tolerance it lies.",
        ["A-L2"],
      ],
      [
        meter("A-L3"),
        "A-L3 reads at least 7.00 Ω where 7.68 Ω belong; this meter does not say more.",
        ["A-L3"],
      ],
      [
        "Write down the tolerance that the maker or the shop allows, and assess again.",
        "Without one nobody has said that A-L1, B-L2 are sound, whatever they read.",
        ["A-L1", "B-L2"],
      ],
    ]);
    expect(unclear(sound("A-L1"))).toEqual([]);
  });
});

describe("readings that the elements do not account for", () => {
  const beyond = (...beyondElements: readonly object[]) => resistances([], { beyondElements });
  const [more, less] = [
    { from: "L1", to: "L2", reads: 17.9, predicted: 15.4 },
    { from: "L2", to: "L3", reads: 9, predicted: 15.4 },
  ];
  it("are told by side, each place once", () => {
    const less2 = { ...less, from: "L3", to: "L1" };
    expect(beyondWords(beyond(more, more))).toEqual([
      "the elements, read on their own studs, do not account for L1 to L2: a link, bar or joint there is open or bad",
    ]);
    expect(beyondWords(beyond(less))).toEqual([
      "L2 to L3 reads less than the elements on their own studs: a path beside them",
    ]);
    expect(beyondWords(beyond(less, less2))[0]).toMatch(/^L2 to L3 and L3 to L1 read less than/);
    expect(beyondWords(beyond({ ...more, reads: "open" }, { ...less, predicted: null }))).toHaveLength(1);
    // As much as predicted is not less.
    expect(beyondWords(beyond({ ...more, reads: 15.4 }))[0]).toContain("do not account for L1 to L2");
    expect(beyondSteps(beyond())).toEqual([]);
    expect(beyondSteps(beyond(more, less)).map(({ reason, about }) => [reason, about])).toEqual([
      [
        "On their own studs the elements read what they should; through the links L1 to L2 does not. No element needs renewing for it.",
        ["L1 to L2"],
      ],
      ["Through the links they read less than the elements on their own studs.", ["L2 to L3"]],
    ]);
    expect(beyondSteps(beyond(more, { ...more, to: "L3" }))[0]?.reason).toContain(
      "L1 to L2 and L1 to L3 do not.",
    );
    expect(beyondSteps(beyond(more))[0]?.action).toContain("on the way of L1 to L2: renew what is burnt");
    expect(beyondSteps(beyond(less))[0]?.action).toContain("from L2 to L3: a bar across two studs");
  });
});

const concern = (action: string): NextStep => ({ action, reason: "invented", about: [] });
type Steps = Parameters<typeof nextSteps>[0];
const steps = (present: ReadingsAssessment | null, more: Partial<Steps> = {}) =>
  nextSteps({
    present,
    diagnosed: [],
    known: NONE,
    concerns: { odd: [], insulation: [], doubtful: [], supply: [], joints: [], amps: [], site: [] },
    draw: null,
    lostLine: null,
    plateCurrent: null,
    readAgain: false,
    studsUnsaid: false,
    drawingVoid: false,
    ...more,
  });
const withResistances = (
  more: object,
  branches: readonly BranchAssessment[] = sound("A-L1"),
): ReadingsAssessment => ({
  ...day(branches),
  resistances: resistances(branches, more),
});

describe("the order of steps", () => {
  const concerns = {
    odd: [concern("odd")],
    insulation: [concern("insulation")],
    doubtful: [concern("doubtful")],
    supply: [concern("supply")],
    joints: [concern("joints")],
    amps: [concern("amps")],
    site: [concern("site")],
  };
  it("begins with what forbids voltage and ends with what is merely unclear", () => {
    const present = withResistances(
      {
        consistency: "inconsistent",
        outcome: "partly",
        readings: [reads("L1", "S", 7, 3), reads("L2", "S", 7, -5), reads("L3", "S", 7, 1)],
        beyondElements: [{ from: "L1", to: "L2", reads: 17.9, predicted: 15.4 }],
      },
      [
        branch("A-L1", "open"),
        ...sound("A-L2"),
        branch("A-L3", "not known"),
        value("B-L1", "undecided", { deviation: 0.1 }),
      ],
    );
    const all = {
      ...present,
      joints: [
        joint("a", {
          comparison: "investigate",
          ratioToBest: 12.34,
          power: 3.21 as never,
          resistance: 1e-3 as never,
        }),
      ],
    };
    const found = steps(all, { diagnosed: [concern("diagnosed")], concerns, lostLine: "L2" });
    const words = (more: readonly NextStep[]) =>
      more.map(({ action }) => action.split(/[ ,]/).slice(0, 3).join(" "));
    expect(words(found)).toEqual([
      "insulation",
      "odd",
      "Isolate and prove",
      "supply",
      "Repeat L2 to",
      "Isolate  then",
      "Isolate  then",
      "diagnosed",
      "Isolate  then",
      "doubtful",
      "site",
      "amps",
      "Lift the links",
      "joints",
      "After the work:",
    ]);
    // The worst two of three, the larger first; with links against the drawing none of it.
    expect(found[4]?.action).toBe(
      "Repeat L2 to S, L1 to S with clean, firm probes before believing any value below.",
    );
    expect(found[4]?.about).toEqual(["L2 to S", "L1 to S"]);
    expect(found[2]).toMatchObject({
      reason: "The voltages between lines add up as they do when L2 is lost and fed back through the module.",
      about: ["L2"],
    });
    expect(found[8]).toMatchObject({
      action:
        "Isolate, then open joint a: renew bar end, nut and washer where burnt or pitted, and remake it.",
      reason:
        "1000 µΩ, 3.21 W, 12.3 times the best like joint: more than half above the lowest. Line currents cannot show this.",
      about: ["a"],
    });
    expect(steps(all, { drawingVoid: true }).map(({ action }) => action.slice(0, 6))).not.toContain("Repeat");
  });

  it("without readings has what the site and the supply ask for", () => {
    expect(steps(null, { concerns, lostLine: "L1" }).map(({ action }) => action.split(" ")[0])).toEqual([
      "Isolate",
      "supply",
      "site",
      "After",
    ]);
    expect(steps(null)).toEqual([
      {
        action: "Read what is still untested, and check the nuts cold afterwards.",
        reason: "Nothing closer can be expected: no nameplate, and not every branch is proved sound.",
        about: [],
      },
    ]);
  });

  it("ends with the amps to expect, as far as anyone knows", () => {
    const last = (more: Partial<Steps>) => steps(day(sound("A-L1")), more).at(-1);
    const lines = ["L1", "L2"].map((node, i) => ({ node, current: (36.04 + i) as never }));
    const draw = { confirmed: true, repaired: { lines } } as never;
    expect(last({ draw })?.reason).toBe(
      "In good order it should draw L1 36.0 A, L2 37.0 A at the voltage stated.",
    );
    expect(
      last({ draw: { confirmed: false, repaired: { lines } } as never, plateCurrent: 36.08 })?.reason,
    ).toBe(
      "The plate promises 36.1 A a line; not every branch is proved sound, so nothing closer can be expected of it.",
    );
    expect(last({ readAgain: true })?.action).toMatch(/^After cooling down: check the nuts cold/);
  });

  it("asks about own studs where readings clash and nobody said where the probes sat", () => {
    const clash = withResistances({
      consistency: "inconsistent",
      readings: [reads("L1", "S", 7, 3), reads("L1", "S", 7, 2)],
    });
    expect(steps(clash)[0]?.about).toEqual(["L1 to S"]);
    expect(steps(clash, { studsUnsaid: true })[1]).toEqual(STUDS_STEP);
    expect(steps(clash)).not.toContainEqual(STUDS_STEP);
    expect(steps(day(sound("A-L1")), { studsUnsaid: true })).not.toContainEqual(STUDS_STEP);
    // What excludes itself is settled before anything is asked for that would settle more.
    const both = withResistances({ outcome: "contradictory", readings: [reads("L1", "S", "open")] }, [
      branch("A-L1", "not known"),
    ]);
    expect(steps(both).map(({ action }) => action.split(" ")[0])).toEqual(["Repeat", "After"]);
    const contradictory = withResistances({
      outcome: "contradictory",
      readings: [reads("L1", "S", "open"), reads("L2", "S", 7)],
    });
    const [first, second] = steps(contradictory, { studsUnsaid: true });
    expect(first).toMatchObject({
      action: "Repeat the readings that show OL, on cleaned studs, with the links as the record says.",
      about: ["L1 to S"],
    });
    expect(second).toEqual(STUDS_STEP);
  });

  it("asks for what would settle branches that the readings do not", () => {
    const unknown = branch("A-L1", "not known");
    const choices = (count: number) =>
      steps(
        withResistances(
          { outcome: "partly", openChoices: Array.from({ length: count }, (_, i) => [`A${i}`, `B${i}`]) },
          [unknown],
        ),
      )[0];
    expect(choices(2)).toMatchObject({
      action: "Lift the links and read each of these branches alone.",
      reason: "The OL readings fit 2 choices of open branches alike: A0 + B0 or A1 + B1.",
      about: ["A0", "B0", "A1", "B1"],
    });
    expect(choices(4)?.reason).toMatch(/A3 \+ B3\.$/);
    expect(choices(5)?.reason).toMatch(/A3 \+ B3 or others\.$/);
    const partly = (more: object, branches = [unknown]) =>
      steps(withResistances({ outcome: "partly", ...more }, branches))[0];
    expect(partly({ notIdentifiable: ["A-L1", "leads"] })).toEqual({
      action: "Short the leads together and note the reading, or read each line to the star point as well.",
      reason:
        "Without the leads' resistance these readings do not settle the branches: a common offset hides in all of them.",
      about: ["A-L1"],
    });
    const links = "No reading shows these branches by themselves, and together they do not settle them.";
    expect(partly({})?.reason).toBe(links);
    const odd = {
      readings: [
        reads("L1", "L2", 7.2),
        reads("L2", "L3", 5.0),
        reads("L3", "L1", 6.7),
        reads("L1", "S", "open"),
        reads("L2", "S", 6.24),
      ],
      expectedReadings: [6, 6, 6, 6, 6],
      leads: 0.2,
    };
    // (7.2 − 0.2)/6 is 1.167, (5.0 − 0.2)/6 is 0.8; the others are within a tenth or open.
    expect(partly(odd)?.reason).toBe(`${links} Against a sound module: L1 to L2 +17 %, L2 to L3 −20 %.`);
    expect(partly({ ...odd, leads: null })?.reason).toBe(links);
    expect(partly({ ...odd, expectedReadings: [null, "open", 6, 6, 6] })?.reason).toBe(links);
    // What is bounded, or was not read at all, is not asked for so.
    expect(partly({}, [value("A-L1", "not known", { atLeast: 7 })])?.action).toMatch(/^Read A-L1 again/);
    expect(steps(withResistances({ outcome: "no readings" }, [unknown]))).toHaveLength(1);
  });

  it("says of a joint what its drop and what its rise show", () => {
    const of = (more: object) => steps(day([], { joints: [joint("a", more)] }))[0]?.reason;
    const drop = { comparison: "investigate", ratioToBest: 120.4, power: 1.8, resistance: 2e-3 };
    const hot = { ...(rise(3, 3) as object), measured: 44.6, action: "repair as soon as possible" };
    expect(of({ ...drop, rise: hot })).toBe(
      "2000 µΩ, 1.80 W, 120 times the best like joint: more than half above the lowest. 45 K over the air: repair as soon as possible. Line currents cannot show this.",
    );
    expect(of({ rise: hot })).toBe(
      "45 K over the air: repair as soon as possible. Line currents cannot show this.",
    );
    expect(of({ ...drop, rise: rise(0, 0) })).not.toContain("K over the air");
  });
});

describe("the answer", () => {
  const { elements: _, ...module } = buildModule({
    banks: [{ id: "A", connection: "star", elementResistance: 7.68 as never }],
  });
  const lines = (more: Partial<AnswerInput>) =>
    answerLines({
      asFound: null,
      asLeft: null,
      leftAlone: null,
      verdict: null,
      odd: [],
      lostLine: { asFound: null, asLeft: null },
      module: { ...module, elements: [] } as never,
      draw: null,
      platePower: null,
      site: [],
      anythingRead: true,
      weighedJoints: new Set(),
      steps: [concern("last")],
      running: "It may.",
      unknownDraw: false,
      notTested: [],
      studsUnsaid: false,
      ampsExplained: false,
      ...more,
    });

  it("says first what is wrong, branch by branch, four of them by name", () => {
    const of = (...branches: readonly BranchAssessment[]) => lines({ asFound: day(branches) })[0];
    expect(of(...sound("A-L1"))).toBe("No fault shows in the readings.");
    expect(of(branch("A-L1", "open"), branch("A-L2", "shorted"), branch("A-L3", "high"))).toBe(
      "A-L1 open; A-L2 as good as bolted; A-L3 high or open.",
    );
    expect(
      of(value("A-L1", "outside", { deviation: 0.123 }), value("A-L2", "outside", { deviation: -0.0001 })),
    ).toBe("A-L1 outside its tolerance (+12.3 %); A-L2 outside its tolerance (0.0 %).");
    expect(of(value("A-L1", "outside", { deviation: 1, openElements: 2 }))).toBe(
      "A-L1 outside its tolerance (+100.0 %, which fits 2 of its parallel elements open).",
    );
    const many = Array.from({ length: 6 }, (_one, i) => branch(`A${i}`, "open"));
    expect(of(...many)).toBe("A0 open; A1 open; A2 open; A3 open; 2 more branches faulty.");
    expect(of(...many.slice(0, 4))).toBe("A0 open; A1 open; A2 open; A3 open.");
  });

  it("says what could not be decided where nothing is wrong", () => {
    const of = (present: ReadingsAssessment) => lines({ asFound: present })[0];
    const five = Array.from({ length: 5 }, (_one, i) => branch(`A${i}`, "undecided"));
    expect(of(day(five))).toBe("No fault shows, but this meter cannot decide A0, A1, A2 and A3.");
    const alone = ["a", "b"].map((id) => joint(id, { resistance: 1e-5 as never }));
    const nothing = "could not be judged: a drop alone shows nothing to compare with.";
    expect(of(day([], { joints: alone }))).toBe(`No fault shows, but joints a and b ${nothing}`);
    expect(of(day([], { joints: alone.slice(1) }))).toBe(`No fault shows, but joint b ${nothing}`);
    expect(lines({ asFound: day([], { joints: alone }), weighedJoints: new Set(["a", "b"]) })[0]).toBe(
      "No fault shows in the readings.",
    );
    const unknown = [branch("A-L1", "not known")];
    expect(of(day(unknown))).toBe("No fault shows, but these readings do not settle every branch.");
    expect(of(withResistances({ outcome: "no readings" }, unknown))).toBe("No fault shows in the readings.");
  });

  it("names joints, lost lines, clashes, odd amps and the site", () => {
    const of = (present: ReadingsAssessment, more: Partial<AnswerInput> = {}) =>
      lines({ asFound: present, ...more })[0];
    const bad = joint("a", { comparison: "investigate", ratioToBest: 12.34, power: 3.214 as never });
    expect(of(day([], { joints: [bad] }))).toBe(
      "Joint a at 12.3 times the best like joint, 3.21 W in one contact.",
    );
    const hot = joint("a", { rise: { ...(rise(4, 4) as object), measured: 61.4 } as never });
    expect(of(day([], { joints: [hot] }))).toBe("Joint a 61 K over the air.");
    const amps = ["L1", "L2", "L3"].map((line) => ({
      ...judged(`line current ${line}`, "within"),
      value: 36.04,
    }));
    expect(of(day([], { joints: [bad], currents: amps }))).toContain(
      " Amps are those of a sound module: no element needs renewing for them, and they do not clear the joint.",
    );
    expect(of(day([], { joints: [bad], currents: amps.slice(1) }))).not.toContain("Amps are");
    const two = amps.map((one, i) => (i === 1 ? { ...one, verdict: "outside" as const } : one));
    expect(of(day([], { joints: [bad], currents: two }))).not.toContain("Amps are");
    const refuted = { kind: "nothing fits", explanations: [], words: "No fault explains them" } as const;
    expect(of(day([branch("A-L1", "open")]), { verdict: refuted })).toBe(
      "A-L1 open; no fault explains them.",
    );
    expect(of(day([branch("A-L1", "open")]), { verdict: { ...refuted, kind: "too few readings" } })).toBe(
      "A-L1 open.",
    );
    expect(of(day([], { currents: amps }))).toBe("No fault shows in the readings.");
    expect(of(day([]), { lostLine: { asFound: "L2", asLeft: null } })).toBe("No supply on L2.");
    const clash = withResistances({ consistency: "inconsistent" });
    expect(of(clash)).toBe("The ohm readings contradict each other.");
    expect(of(clash, { studsUnsaid: true })).toBe(
      "The ohm readings contradict each other, unless those taken alone were read on the elements' own studs: then a link, bar or joint is bad.",
    );
    const odd = amps.map((one) => ({ ...one, verdict: "outside" as const }));
    const outside = "Amps outside those of a sound module, and nothing says why:";
    expect(of(day([], { currents: odd }))).toBe(
      `${outside} line current L1 36.0 A, line current L2 36.0 A and line current L3 36.0 A.`,
    );
    expect(of(day([], { currents: [...odd, ...odd.slice(1)] }))).toBe(
      `${outside} line current L1 36.0 A, line current L2 36.0 A and line current L3 36.0 A and 2 more.`,
    );
    expect(of(day([], { currents: odd }), { ampsExplained: true })).toBe("No fault shows in the readings.");
    expect(of(day([branch("A-L1", "open")], { currents: odd }))).toBe("A-L1 open.");
    expect(of(day([]), { site: ["x", "y"] })).toBe(
      "No fault shows in the readings. Outside its limit: x; y.",
    );
  });

  it("keeps both days apart, and what was not read again", () => {
    const asFound = day([branch("A-L1", "open"), branch("A-L2", "open")]);
    const present = day([branch("A-L1", "sound"), branch("A-L2", "open")]);
    const known = { resistance: 7.68 as never };
    const leftAlone = day([{ ...branch("A-L1", "sound"), ...known }, branch("A-L2", "not known")]);
    expect(lines({ asFound, asLeft: present, leftAlone })[0]).toBe(
      "As found: A-L1 open; A-L2 open. As left: No fault shows in the readings. Not read again: A-L2 open.",
    );
    const both = day([
      { ...branch("A-L1", "sound"), ...known },
      { ...branch("A-L2", "sound"), ...known },
    ]);
    expect(lines({ asFound, asLeft: both, leftAlone: both })[0]).toBe(
      "As found: A-L1 open; A-L2 open. As left: No fault shows in the readings.",
    );
    expect(lines({ asLeft: both, leftAlone: both })[0]).toBe("As left: No fault shows in the readings.");
    expect(lines({})[0]).toBe("Nothing was read: this sheet holds what the record promises.");
    const hot = joint("a", { rise: { ...(rise(4, 4) as object), measured: 61 } as never });
    const jointed = { ...present, joints: [hot] };
    expect(lines({ asFound, asLeft: jointed, leftAlone })[0]).toContain(
      "Not read again: A-L2 open; joint a 61 K over the air.",
    );
  });

  it("says what to do first, and how much more there is", () => {
    const todo = (more: Partial<AnswerInput>) => lines(more)[1];
    const three = ["First.", "Second.", "Third.", "Last."].map(concern);
    expect(todo({ steps: three })).toBe("First. Then 2 more steps, listed below.");
    expect(todo({ steps: three.slice(1) })).toBe("Second. Then 1 more step, listed below.");
    expect(todo({ steps: three.slice(2) })).toBe("Third.");
    expect(todo({})).toBe("Nothing to renew on these readings.");
    expect(todo({ anythingRead: false })).toBe("Read it first.");
    expect(todo({ asLeft: day([]), leftAlone: day([]) })).toBe(
      "Nothing left to renew on the readings as left.",
    );
    expect(lines({})[2]).toBe("It may.");
  });

  it("says what it draws, beside the plate, and whether that is something to accept it by", () => {
    const current = (more: object) => ({
      basis: "measured resistances",
      confirmed: true,
      atTarget: [],
      asFound: null,
      repaired: {
        power: 28_000,
        standardUncertainty: null,
        lines: ["L1", "L2", "L3", "N"].map((node, i) => ({ node, current: 36 + i })),
      },
      repairedAtPlateVoltage: null,
      deviationFromPlate: -0.0128,
      ...more,
    });
    const draws = (more: object, platePower: number | null, unknownDraw = false) =>
      lines({ draw: current(more) as never, platePower: platePower as never, unknownDraw })[3];
    const amps = "L1 36.0 A, L2 37.0 A and L3 38.0 A at the voltage stated";
    expect(draws({}, 28_500)).toBe(
      `In good order it draws 28.0 kW and ${amps}, −1.3 % from plate at the plate's voltage.`,
    );
    expect(draws({}, 40_000)).toBe(
      `In good order it draws 28.0 kW (70 % of the plate) and ${amps}, −1.3 % from plate at the plate's voltage.`,
    );
    expect(draws({}, null)).toBe(`In good order it draws 28.0 kW and ${amps}.`);
    expect(draws({ deviationFromPlate: null }, 28_500)).toBe(`In good order it draws 28.0 kW and ${amps}.`);
    expect(draws({ confirmed: false }, 28_500)).toBe(
      `With every branch at its measured value where one can be used, else at its target, it draws 28.0 kW and ${amps}: not yet something to accept it by.`,
    );
    expect(draws({}, 28_500, true)).toBe("What it will draw is not known before the voltages are.");
    expect(lines({})[3]).toMatch(/^What it will draw is not known: /);
  });

  it("ends with what is untested, insulation first, three by name", () => {
    const of = (...notTested: readonly string[]) => lines({ notTested })[4];
    expect(of()).toMatch(/^No kind of test that this sheet knows is missing/);
    expect(of("joints: none", "torque")).toBe("Still untested: joints and torque.");
    expect(of("a", "b", "insulation resistance to the frame")).toBe(
      "Still untested: insulation resistance to the frame, a and b.",
    );
    expect(of("a", "insulation: b", "c", "d")).toBe("Still untested: insulation, a, c and 1 more.");
    expect(of("a", "insulation: b", "c")).toBe("Still untested: insulation, a and c.");
    expect(of("a", "b", "c", "d", "e")).toBe("Still untested: a, b, c and 2 more.");
  });
});
