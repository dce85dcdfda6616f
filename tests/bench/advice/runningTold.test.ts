/**
 * Whether it may run, word for word and in the order in which one thing comes before another. Days are invented; what forbids voltage, and what
 * merely comes before it, is common practice without a published source.
 */
import type { BranchAssessment, Figure, JointAssessment, ReadingsAssessment } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { runningWords } from "../../../src/bench/advice/runningOn.ts";
import { branch, day, joint, judged, rise } from "../site/made.ts";

type Input = Parameters<typeof runningWords>[0];
const running = (present: ReadingsAssessment | null, more: Partial<Input> = {}): string =>
  runningWords({
    present,
    lostLine: null,
    forbidding: [],
    voltage: null,
    diagnosed: null,
    anythingRead: true,
    unjudgedJoints: [],
    jointFirst: null,
    drawingVoid: false,
    misread: new Set(),
    onStuds: new Set(),
    jointAmong: null,
    odd: null,
    sound: null,
    ...more,
  });
const SOUND = branch("A-L3", "sound");
const with_ = (...branches: readonly BranchAssessment[]): ReadingsAssessment => day([...branches, SOUND]);
const off = (id: string, deviation: number, openElements: number | null = null): BranchAssessment => ({
  ...branch(id, "outside", openElements),
  deviation,
});
const resistances = (more: object, ...branches: readonly BranchAssessment[]): ReadingsAssessment => {
  const made = with_(...branches);
  return { ...made, resistances: { ...made.resistances, ...more } };
};
const joints = (...list: readonly JointAssessment[]): ReadingsAssessment => day([SOUND], { joints: list });
const insulation = (label: string, value: number, verdict: Figure["verdict"], low: number): Figure => ({
  ...judged(`insulation at L1, ${label}`, verdict, "Ω"),
  value,
  limit: { low, high: null },
});
const FINE = "Nothing read here speaks against running it; what is not tested has not passed.";

describe("a module", () => {
  it("of which nothing was read is not known; a sound one has nothing against it", () => {
    expect(running(null)).toBe("Not known: nothing was read.");
    expect(running(with_(), { anythingRead: false })).toBe("Not known: nothing was read.");
    expect(running(with_())).toBe(FINE);
    expect(running(with_(branch("A-L1", "undecided")))).toBe(FINE);
  });

  it("with a bolted branch is not energised, whatever else there is", () => {
    const bolted = "Do not energise it: A-L1 is as good as bolted.";
    const bad = joint("a", { comparison: "investigate" });
    expect(running(with_(branch("A-L1", "shorted")))).toBe(bolted);
    expect(running(with_(branch("A-L1", "shorted"), branch("A-L2", "shorted")))).toBe(
      "Do not energise it: A-L1 and A-L2 are as good as bolted.",
    );
    expect(
      running({ ...with_(branch("A-L1", "shorted")), joints: [bad] }, { forbidding: ["x"], lostLine: "L1" }),
    ).toBe(bolted);
    // A bolted path that was read shows whatever the links; one that is only worked out on another drawing is none.
    const misread = new Set(["A-L1"]);
    const read = [{ from: "L1", to: "S", reads: 0.02, predicted: 0.02, residual: 0 }];
    expect(running(resistances({ readings: read }, branch("A-L1", "shorted")), { misread })).toBe(bolted);
    expect(running(with_(branch("A-L1", "shorted")), { misread })).toBe(FINE);
    expect(running(joints(bad), { forbidding: ["element A-L1 is earthed", "y"] })).toBe(
      "Do not energise it: element A-L1 is earthed; y.",
    );
  });

  it("does not run on a bad joint", () => {
    const bad = ["a", "b"].map((id) => joint(id, { comparison: "investigate" }));
    const why = "a hot joint feeds on its own heat until it burns open. Remake";
    expect(running(joints(...bad.slice(1)))).toBe(`Not on joint b: ${why} it first.`);
    expect(running(joints(...bad), { jointFirst: "x", lostLine: "L1" })).toBe(
      `Not on joints a and b: ${why} them first.`,
    );
    expect(running(joints(joint("a", { rise: rise(4, 4) })))).toBe(`Not on joint a: ${why} it first.`);
    expect(
      running(joints(joint("a", { comparison: "like the best" })), {
        jointFirst: "The joint first.",
        lostLine: "L1",
      }),
    ).toBe("The joint first.");
  });

  it("with readings that its elements do not account for waits for links, bars and joints", () => {
    const one = { from: "L1", to: "L2", reads: 17.9 as never, predicted: 15.4 as never };
    const less = { from: "L2", to: "L3", reads: 9 as never, predicted: 15.4 as never };
    const more = (...beyondElements: readonly object[]) => resistances({ beyondElements });
    expect(running(more(one), { lostLine: "L1" })).toBe(
      "Not before the links, bars and joints on the way of L1 to L2 are opened, looked at and remade: a bad joint feeds on its own heat until it burns open.",
    );
    expect(running(more(one, less))).toBe("Not before the path beside the elements, L2 to L3, is found.");
    expect(running(more({ ...one, reads: "open" }, one))).toContain("on the way of L1 to L2 are opened");
    // Links against the drawing account for it.
    expect(running(more(one), { drawingVoid: true })).toBe(FINE);
  });

  it("waits for a lost line, then for its insulation", () => {
    const low = insulation("IEC 60364-6", 0.9e6, "undecided", 1e6);
    const poor = { ...with_(), insulation: [low] };
    expect(running(poor, { lostLine: "L2" })).toBe(
      "Not before L2 is back and the module has been read on all three lines.",
    );
    expect(running(poor)).toBe(
      "Not before the insulation is settled: insulation at L1 900 kΩ, which this tester cannot tell from the least that IEC 60364-6 asks for.",
    );
    const maker = { ...with_(), insulation: [insulation("maker element", 3e6, "outside", 20e6)] };
    expect(running(maker)).toBe(
      "Not before the maker of the elements, or who answers for them, has accepted their insulation: insulation at L1 3.00 MΩ, not clear of what is asked in service (maker element 20.0 MΩ).",
    );
    const unjudged = { ...with_(), insulation: [{ ...judged("insulation at L1", null, "Ω"), value: 3e6 }] };
    expect(running(unjudged)).toBe(
      "Not known: insulation at L1 is not judged by every limit without the voltage of the supply.",
    );
  });

  it("whose readings clash is not known, but where the links say why", () => {
    const clash = "Not known: the readings contradict each other.";
    expect(running(resistances({ consistency: "inconsistent" }))).toBe(clash);
    expect(running(resistances({ outcome: "contradictory" }))).toBe(clash);
    expect(running(resistances({ consistency: "inconsistent" }), { drawingVoid: true })).toBe(FINE);
  });

  it("without any path waits for the meter", () => {
    const open = ["A-L1", "A-L2"].map((id) => branch(id, "open"));
    expect(running(day(open))).toBe(
      "Not before the meter and what these readings share are checked: no branch shows a path.",
    );
    // One branch alone is itself; without plate and volts nobody knows what is left.
    expect(running(day(open.slice(1)))).toBe(
      "Not known: neither nameplate nor voltages say what is left with A-L2 open. The open ends are live under voltage.",
    );
    expect(running(with_(branch("A-L1", "open"), off("A-L2", 0.5, 1)))).toContain(
      "left with A-L1 and A-L2 open.",
    );
    expect(running(with_(branch("A-L1", "open")), { misread: new Set(["A-L1"]) })).toBe(FINE);
  });

  it("with a branch too low waits for why, then with one too high for its joints", () => {
    const low = "touching turns or a path beside";
    expect(running(with_(off("A-L1", -0.2), off("A-L2", 0.3)))).toBe(
      `Not before A-L1 is explained: ${low} it overload what is left.`,
    );
    expect(running(with_(off("A-L1", -0.2), off("A-L2", -0.3)))).toBe(
      `Not before A-L1 and A-L2 are explained: ${low} them overload what is left.`,
    );
    const joint_ = "are cleared: what reads high may be one of them, and a bad joint burns on.";
    expect(running(with_(off("A-L1", 0.3), branch("A-L2", "high")))).toBe(
      `Not before the joints of A-L1 and A-L2 ${joint_}`,
    );
    const studs = (...ids: readonly string[]) => ({ onStuds: new Set(ids) });
    expect(running(with_(off("A-L1", 0.3)), studs("A-L1"))).toBe(
      "Not before A-L1 is renewed, or explained by the maker of the elements: high on its own studs, where no joint is in the reading, and a coil that thins burns through.",
    );
    expect(running(with_(off("A-L1", 0.3), off("A-L2", 0.3)), studs("A-L1", "A-L2"))).toMatch(
      /^Not before A-L1 and A-L2 are renewed, .*: high on their own studs/,
    );
    expect(running(with_(off("A-L1", 0.3), off("A-L2", 0.3)), studs("A-L2"))).toBe(
      `Not before the joints of A-L1 ${joint_}`,
    );
    // Some of its elements open is another thing.
    expect(running(with_(off("A-L1", 0.5, 1)))).toContain(
      "Not known: neither nameplate nor voltages say what is left with A-L1 open",
    );
  });

  it("then waits for scans, voltages, what is too low to be told, the diagnosis and joints that nobody judged", () => {
    const suspect = joint("a", { rise: { ...(rise("undecided", 2) as object), atMost: 4 } as never });
    const scan = running(joints(suspect), { voltage: "x" });
    expect(scan).toMatch(/^Not at full load before joint a is opened, or cleared by/);
    expect(scan).toMatch(/full load only adds to it\.$/);
    const two = [suspect, { ...suspect, id: "b" }];
    expect(running(joints(...two))).toMatch(
      /^Not at full load before joints a and b are opened.*adds to them\.$/,
    );
    const waiting = joint("a", { rise: rise(2, 2) });
    expect(running(joints(waiting))).toBe(
      "Nothing read here forbids it, but joint a asks for repair: scan again under load until it is remade, and stop if the rise grows; what is not tested has not passed.",
    );
    expect(running(joints(waiting, { ...waiting, id: "b" }))).toMatch(
      /but joints a and b ask for repair.* until they are remade/,
    );
    expect(running(with_(branch("A-L1", "open")), { voltage: "The voltages first." })).toBe(
      "The voltages first.",
    );
    const blind = {
      ...branch("A-L1", "unjudged"),
      resistance: 0.1 as never,
      expandedUncertainty: 0.1 as never,
    };
    expect(running(with_(blind), { diagnosed: "x" })).toBe(
      "Not before A-L1 is explained: this meter cannot tell it from a bolted short, and no nameplate says what it should read.",
    );
    expect(running(with_({ ...blind, resistance: 0.11 as never }))).toBe(FINE);
    expect(running(with_({ ...blind, finding: "undecided" }))).toBe(FINE);
    expect(running(with_(), { diagnosed: "The diagnosis.", unjudgedJoints: ["a"] })).toBe("The diagnosis.");
    expect(running(with_(), { unjudgedJoints: ["a"] })).toBe(
      "Not known: joint a could not be judged, for nothing was read beside it to compare with.",
    );
    expect(running(with_(), { unjudgedJoints: ["a", "b"] })).toBe(
      "Not known: joints a and b could not be judged, for nothing was read beside them to compare with.",
    );
  });
});
