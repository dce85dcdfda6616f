/**
 * What failed on site and what the list passes or does not, word for word. Figures are invented; which state follows from which figures is
 * common practice without a published source, the limits of insulation those of the sources named in `insulation.test.ts`.
 */
import type { Figure, HardwareAssessment, JointAssessment } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import type { ChecklistSource } from "../../../src/bench/site/checklist.ts";
import { siteConcerns } from "../../../src/bench/site/concerns.ts";
import { evidenceOf } from "../../../src/bench/site/evidence.ts";
import { assessInsulation } from "../../../src/bench/site/insulation.ts";
import { partsList } from "../../../src/bench/site/parts.ts";
import { branch, day, joint, judged, list, QUIET, read, rise } from "./made.ts";

const figure = (
  label: string,
  value: number | null,
  unit: string,
  low: number | null,
  high: number | null,
): Figure => ({
  ...judged(label, "outside", unit),
  value,
  limit: { low, high },
});
const hardware = (id: string, ...figures: readonly Figure[]): HardwareAssessment => ({
  ...{ id, thread: "M6", count: 1, notes: [], deferral: "invented" },
  figures,
});
const feed = (...figures: readonly Figure[]) => ({
  edition: "NEC 2023",
  figures,
  cautions: [],
  deferral: "invented",
});
const cut = (id: string, ...figures: readonly Figure[]) => ({
  ...{ id, count: 1, length: 1 as never, stock: 1 as never, mass: 1 as never },
  figures,
});

describe("concerns of the site", () => {
  it("are none where nothing fails", () => {
    const sound = hardware("studs", judged("torque applied", "within", "N·m"));
    const fits = feed(judged("conductor as installed, ampacity", "within"));
    for (const one of [
      { hardware: [], feed: null, cuts: [], supply: QUIET },
      { hardware: [sound], feed: fits, cuts: [cut("bar", judged("rise", "within", "K"))], supply: QUIET },
    ])
      expect(siteConcerns(one)).toEqual({ words: [], steps: [], running: null });
  });

  it("say which figure missed which side of its limit", () => {
    const site = siteConcerns({
      supply: { ...QUIET, outside: "supply 575 V", before: "the supply is settled" },
      hardware: [
        hardware("loose", figure("torque applied", 2.5, "N·m", 5.85, 7.15)),
        hardware("tight", figure("torque applied", 12.345, "N·m", 5.85, 7.15)),
        hardware(
          "made so",
          figure("torque applied", 15, "N·m", 13.5, 14.5),
          figure("share of proof load at the torque to use", 1.234, "1", null, 0.75),
        ),
        hardware("fine", judged("torque applied", "within", "N·m")),
        // A torque that is asked for and overstresses the stud is told of before anyone applies it.
        hardware("unread", figure("share of proof load at the torque to use", 2, "1", null, 0.75)),
      ],
      feed: feed(
        figure("conductor as installed, ampacity", 30, "A", 45.125, null),
        figure("overcurrent device as installed, for the conductor", 70, "A", null, 30),
        // Looked up, not installed.
        figure("load of one protected circuit, if not split", 90, "A", null, 48),
      ),
      cuts: [
        cut("thin", figure("rise", 39.04, "K", null, 30)),
        cut("melts", figure("rise", null, "K", null, 30)),
        cut("good"),
      ],
    });
    const ampacity = "conductor as installed, ampacity 30 A, where 45.1 A at least is asked";
    const device = "overcurrent device as installed, for the conductor 70 A, where 30 A at most is asked";
    expect(site.words).toEqual([
      "supply 575 V",
      `feed: ${ampacity}`,
      `feed: ${device}`,
      "loose: torque applied 2.5 N·m, where 5.85 N·m at least is asked",
      "tight: torque applied 12.3 N·m, where 7.15 N·m at most is asked",
      "made so: torque applied 15 N·m, where 14.5 N·m at most is asked",
      "unread: share of proof load at the torque to use 2, where 0.75 at most is asked",
      "bar thin: rise 39 K, where 30 K at most is asked",
      "bar melts: rise beyond all measure, where 30 K at most is asked",
    ]);
    expect(site.running).toBe(
      `Not before the supply is settled; nor before the electrician has settled the feed: ${ampacity}; ${device}; nor before the hardware with a wrong torque is put right: loose, tight and made so.`,
    );
    expect(site.steps.map(({ about, reason }) => [about, reason])).toEqual([
      [["feed"], `Against NEC 2023: ${ampacity}; ${device}.`],
      [["loose"], "loose: torque applied 2.5 N·m, where 5.85 N·m at least is asked."],
      [["tight"], "tight: torque applied 12.3 N·m, where 7.15 N·m at most is asked."],
      [
        ["made so"],
        "made so: torque applied 15 N·m, where 14.5 N·m at most is asked; share of proof load at the torque to use 1.23, where 0.75 at most is asked.",
      ],
      [["unread"], "unread: share of proof load at the torque to use 2, where 0.75 at most is asked."],
      [["thin"], "thin: rise 39 K, where 30 K at most is asked."],
      [["melts"], "melts: rise beyond all measure, where 30 K at most is asked."],
    ]);
    expect(site.steps.map(({ action }) => action.replace(/[:,].*/, ""))).toEqual([
      "Have the electrician in charge settle conductor",
      "Isolate",
      "Isolate",
      "Isolate",
      "Isolate",
      "Do not cut bar thin from this stock",
      "Do not cut bar melts from this stock",
    ]);
    const [, loose, tight, made] = site.steps.map(({ action }) => action);
    expect(loose).toBe(
      "Isolate, then tighten loose to the torque to use, the inner nut held: a joint with too little force runs hot.",
    );
    expect(tight).toBe(
      "Isolate, then renew stud, nut and washer of tight and tighten them to the torque to use: overstressed hardware does not hold its clamping force.",
    );
    expect(made).toMatch(
      /^Isolate, then check strength and thread condition of made so against the record and ask the maker/,
    );
  });

  it("of one kind alone come before running by themselves", () => {
    const none = { hardware: [], feed: null, cuts: [], supply: QUIET };
    expect(siteConcerns({ ...none, supply: { ...QUIET, before: "x" } }).running).toBe("Not before x.");
    const loose = hardware("studs", figure("torque applied", 2, "N·m", 5, null));
    expect(siteConcerns({ ...none, hardware: [loose] }).running).toBe(
      "Not before the hardware with a wrong torque is put right: studs.",
    );
    expect(
      siteConcerns({ ...none, cuts: [cut("thin", figure("rise", 39, "K", null, 30))] }).running,
    ).toBeNull();
  });
});

describe("figures as evidence", () => {
  it.each([
    [["within", "within"], "done", "Within: a, b."],
    [["within", "undecided"], "to do", "Undecided: b."],
    [["undecided", "outside"], "not passed", "Outside: b."],
    [["within", null], "done", "Within: a."],
    [[null], "to do", null],
    [[], "to do", null],
  ] as const)("%o is %s: %s", (verdicts, state, evidence) => {
    const figures = verdicts.map((one, i) => judged("ab".charAt(i), one));
    expect(evidenceOf(figures)).toEqual({ state, evidence });
  });
});

describe("the checklist", () => {
  const item = (start: string, more: Partial<ChecklistSource>) => {
    const { state, evidence } = list(more).find(({ text }) => text.startsWith(start)) ?? {};
    return [state, evidence];
  };
  const bad = joint("a", { resistance: 1e-3 as never, comparison: "investigate" });
  const cool = joint("b", { rise: rise(2, 2) });
  const alone = { comparison: "nothing to compare with", resistance: 1e-5 as never } as const;
  const best = { comparison: "like the best", resistance: 1e-5 as never } as const;
  const remake = (...asLeft: readonly JointAssessment[]) =>
    item("Remake", { asFound: day([], { joints: [bad, cool] }), asLeft: day([], { joints: asLeft }) });

  it("takes a joint for remade by drop or by rise, and by neither bad", () => {
    const good = joint("b", { rise: rise(0, 0) });
    expect(remake()).toEqual(["to do", "Not yet shown good as left: a, b."]);
    expect(remake(joint("a", best), good)).toEqual(["done", "As left nothing found at a, b."]);
    expect(remake(joint("a", alone), good)).toEqual(["to do", "Not yet shown good as left: a."]);
    expect(remake(joint("a", best))).toEqual(["to do", "Not yet shown good as left: b."]);
    expect(remake(joint("a", { ...best, rise: rise(4, 4) }), good)[0]).toBe("not passed");
    expect(remake(bad, good)[0]).toBe("not passed");
    // What else is measured as left does not matter to it.
    expect(remake(joint("a", best), good, joint("c", {}))).toEqual([
      "done",
      "As left nothing found at a, b.",
    ]);
    expect(list({ asFound: day([], { joints: [bad, cool] }) })[1]?.text).toBe(
      "Remake on clean metal, with new nuts and washers: a, b.",
    );
  });

  it("names the joints of each state", () => {
    const of = (...joints: readonly JointAssessment[]) =>
      item("Compare like joints", { asLeft: day([], { joints }) });
    expect(of(joint("a", best), joint("b", best))).toEqual(["done", "As left nothing found at a, b."]);
    expect(of(joint("a", best), joint("b", alone))).toEqual(["to do", "As left not settled: b."]);
    expect(of(joint("a", alone), bad)).toEqual(["not passed", "As left to be opened: a."]);
    expect(of(joint("a", {}))).toEqual(["to do", null]);
  });

  it("says of insulation what is poor, what is not within, and what was read below its test voltage", () => {
    const of = (reads: string, testVoltage: string) =>
      item("Insulation", {
        asLeft: day([], {
          insulation: assessInsulation(
            read({ asLeft: { insulation: [{ from: "L1", reads, testVoltage }] } }).asLeft?.insulation,
            480 as never,
          ),
        }),
      });
    expect(of("0.21 MΩ", "500 V")).toEqual([
      "not passed",
      "As left: insulation at L1 210 kΩ, below the least that IEC 60364-6 and IEC 60204-1 ask for.",
    ]);
    expect(of("3.00 MΩ", "1000 V")).toEqual([
      "to do",
      `Not within: ${["NETA 100.1", "maker assembly", "maker element", "maker production"].map((one) => `insulation at L1, ${one}`).join("; ")}. Published limits disagree: the maker's own figure decides.`,
    ]);
    expect(of("900 MΩ", "500 V")).toEqual([
      "done",
      "Within every limit that is named; read below the test voltage of insulation at L1, NETA 100.1.",
    ]);
  });

  it("counts the torques that nobody wrote down", () => {
    const torque = judged("torque applied", "within", "N·m");
    const of = (...all: readonly HardwareAssessment[]) => item("Tighten every nut", { hardware: all });
    expect(of(hardware("a", torque), hardware("b", torque))).toEqual([
      "done",
      "Within: a: torque applied, b: torque applied.",
    ]);
    expect(of(hardware("a", torque), hardware("b"), hardware("c"))).toEqual([
      "to do",
      "Within: a: torque applied. No torque to judge at b, c.",
    ]);
    expect(of(hardware("a", figure("torque applied", 1, "N·m", 5, 7)), hardware("b"))).toEqual([
      "not passed",
      "Outside: a: torque applied.",
    ]);
    // A share of proof load counts only at a torque that was applied.
    const share = figure("share of proof load at the torque applied", 2, "1", null, 0.75);
    expect(of(hardware("a", torque, share))).toEqual([
      "not passed",
      "Outside: a: share of proof load at the torque applied.",
    ]);
    expect(of(hardware("a", share))).toEqual(["to do", null]);
    const within = { ...share, verdict: "within" } as const;
    expect(of(hardware("a", torque, within))).toEqual(["done", "Within: a: torque applied."]);
  });

  it("asks for the split of a load that is too large for one circuit", () => {
    const whole = {
      ...figure("load of one protected circuit, if not split", 90, "A", null, 48),
      caution: "Split it.",
    };
    const fits = judged("conductor as installed, ampacity", "within");
    const of = (...figures: readonly Figure[]) => item("Conductors", { feed: feed(...figures) });
    expect(of(whole)).toEqual(["to do", "Split it."]);
    expect(of(fits, whole)).toEqual([
      "to do",
      "Within: conductor as installed, ampacity. Not in the record: overcurrent device. Split it.",
    ]);
    expect(of({ ...fits, verdict: "outside" }, whole)).toEqual([
      "not passed",
      "Outside: conductor as installed, ampacity.",
    ]);
    const device = judged("overcurrent device as installed, for the load", "within");
    expect(of(fits, device, { ...whole, verdict: "within" })).toEqual([
      "done",
      "Within: conductor as installed, ampacity, overcurrent device as installed, for the load.",
    ]);
  });

  it("reads branches as left before those as found", () => {
    const faulty = ["outside", "open", "shorted", "high"] as const;
    const found = day(faulty.map((finding, i) => branch(`A${i}`, finding)));
    expect(item("Read every branch", { asFound: found })).toEqual([
      "to do",
      "As found faulty: A0, A1, A2, A3.",
    ]);
    expect(item("Read every branch", { asFound: found, asLeft: found })).toEqual([
      "not passed",
      "As left: A0 outside, A1 open, A2 shorted, A3 high.",
    ]);
    const { resistances } = day([branch("A", "sound")]);
    const left = (more: object) =>
      item("Read every branch", { asLeft: { ...day([]), resistances: { ...resistances, ...more } } });
    expect(left({})).toEqual(["done", "As left every branch is judged sound."]);
    expect(left({ consistency: "inconsistent" })).toEqual([
      "not passed",
      "The readings as left contradict each other.",
    ]);
    expect(left({ outcome: "no readings" })).toEqual(["to do", null]);
    expect(
      left({ branches: [branch("A", "undecided"), branch("B", "unjudged"), branch("C", "sound")] }),
    ).toEqual(["to do", "As left: A undecided, B unjudged."]);
  });

  it("shows the amps to expect in its text, line by line", () => {
    const line = (label: string, value: number, low: number | null, high: number | null): Figure => ({
      ...figure(label, value, "A", low, high),
      verdict: null,
    });
    const lines = [
      line("line current L1", 36.08, 34.12, 38),
      line("line current L2", 36, null, 37.55),
      line("line current L3", 35, 33, null),
      { ...judged("neutral current", null), value: 1 },
      line("power", 30_000, 1, 2),
    ].map((one) => (one.label === "power" ? { ...one, unit: "W" } : one));
    const of = (all: readonly Figure[]) =>
      list({ commissioning: { lines: all, scan: [], deferral: "invented" } }).find(({ text }) =>
        text.startsWith("Amps"),
      )?.text;
    const start = "Amps of every line at full conduction, with the volts at the same time";
    expect(of(lines)).toBe(
      `${start}: L1 36.1 A (34.1 to 38.0), L2 36.0 A (… to 37.5), L3 35.0 A (33.0 to …).`,
    );
    expect(of([])).toBe(`${start}.`);
  });
});

describe("parts", () => {
  const wiring = (elementsInParallel: number, elementsInSeries: number) =>
    read({ wiring: { banks: [{ id: "A", connection: "star", elementsInParallel, elementsInSeries }] } });
  const of = (parallel: number, series: number, ...asked: Parameters<typeof branch>) =>
    partsList({
      record: wiring(parallel, series),
      asFound: day([branch(...asked), branch("A-L2", "sound")]),
      cuts: [],
    }).map(({ quantity, reason }) => [quantity, reason]);
  it("say for each finding how many at the least, and why", () => {
    expect(of(1, 1, "A-L1", "open")).toEqual([
      [1, "A-L1 reads open; open it up first, for a joint or a jumper bar may be what is broken"],
    ]);
    expect(of(3, 1, "A-L1", "open")).toEqual([
      [3, "A-L1 reads open: at least one element in each of 3 string(s), unless what they share is broken"],
    ]);
    expect(of(1, 2, "A-L1", "open")[0]?.[0]).toBe(1);
    expect(of(1, 2, "A-L1", "open")[0]?.[1]).toContain("in each of 1 string(s)");
    expect(of(1, 1, "A-L1", "shorted")).toEqual([[1, "A-L1 reads as good as 0 Ω: its element"]]);
    expect(of(2, 3, "A-L1", "shorted")).toEqual([
      [3, "A-L1 reads as good as 0 Ω: at least the elements of one string"],
    ]);
    expect(of(2, 1, "A-L1", "high")).toEqual([
      [1, "A-L1 is high, how far is not known: at least one element or a joint"],
    ]);
    expect(of(2, 1, "A-L1", "outside")).toEqual([
      [1, "A-L1 is outside the tolerance: read its elements one by one, at least one of them or a joint"],
    ]);
    expect(of(4, 1, "A-L1", "outside", 3)).toEqual([[3, "A-L1 fits 3 of its parallel elements open"]]);
    for (const finding of ["sound", "undecided", "unjudged", "not known"] as const)
      expect(of(1, 1, "A-L1", finding)).toEqual([]);
  });

  it("of joints say what stands out, and are none for what was shown good as left", () => {
    const record = wiring(1, 1);
    const joints = [
      joint("a", { comparison: "investigate", rise: rise(3, 3) }),
      joint("b", { comparison: "investigate" }),
      joint("c", { rise: rise("undecided", 2) }),
      joint("d", { comparison: "like the best", rise: rise(1, 1) }),
      joint("e", { comparison: "investigate", rise: rise(0, 0) }),
    ];
    const parts = (asLeft: readonly JointAssessment[]) =>
      partsList({ record, asFound: day([], { joints }), asLeft: day([], { joints: asLeft }), cuts: [] }).map(
        ({ reason }) => reason,
      );
    const [a, b, c] = [
      "a stands out among like joints and shows a rise of at least level 3 of the scale",
      "b stands out among like joints",
      "c shows a rise of at least level 2 of the scale",
    ];
    // A rise on the lowest row of the scale speaks for no part.
    const e = "e stands out among like joints";
    expect(parts([])).toEqual([a, b, c, e]);
    expect(parts([joint("a", { comparison: "like the best" }), joint("b", { rise: rise(0, 0) })])).toEqual([
      c,
      e,
    ]);
    // What is bad still is told by the later reading.
    const again = "a shows a rise of at least level 4 of the scale";
    expect(parts([joint("a", { comparison: "like the best", rise: rise(4, 4) })])).toEqual([again, b, c, e]);
    expect(parts([joint("c", { rise: rise(1, 1) })])).toEqual([a, b, c, e]);
  });

  it("are the joint's own where the diagnosis settles on it, and none of branches that are only linked otherwise", () => {
    const record = wiring(1, 1);
    const open = ["A-L1", "A-L2"].map((id) => branch(id, "open"));
    const asFound = day([...open, branch("A-L3", "sound")]);
    const ask = (more: object) => partsList({ record, asFound, cuts: [], ...more }).map(({ part }) => part);
    expect(ask({})).toEqual(["element for A-L1", "element for A-L2"]);
    expect(ask({ joints: { places: ["L1"], behind: new Set(["A-L1"]) } })).toEqual([
      "element for A-L2",
      "nuts and washers for the joint where line L1 enters the module, and a lug or a bar end where it is burnt or pitted",
    ]);
    const behind = new Set(["A-L1", "A-L2", "A-L3"]);
    const findings = (...all: readonly Parameters<typeof branch>[1][]) =>
      partsList({
        record,
        asFound: day(all.map((finding, i) => branch(`A-L${i + 1}`, finding))),
        cuts: [],
        joints: { places: [], behind },
      }).map(({ part }) => part);
    // A joint makes what is behind it open or high, and nothing shorted or of another resistance.
    expect(findings("open", "high", "sound")).toEqual([]);
    expect(findings("shorted", "outside", "sound")).toEqual(["element for A-L1", "element for A-L2"]);
    // A joint with readings of its own is told of once.
    for (const own of [
      { comparison: "investigate" as const },
      { comparison: "nothing to compare with" as const, rise: rise(2, 2) },
    ]) {
      const joints = [joint("L1", own), joint("L2", {})];
      const told = partsList({
        record,
        asFound: day([], { joints }),
        cuts: [],
        joints: { places: ["L1", "L2"], behind: new Set() },
      });
      expect(told.map(({ part }) => part.split(",")[0])).toEqual([
        "nuts and washers for joint L1",
        "nuts and washers for the joint where line L2 enters the module",
      ]);
    }
    expect(ask({ misread: new Set(["A-L1", "A-L2"]) })).toEqual([]);
    // No path anywhere is the meter before it is every element.
    expect(partsList({ record, asFound: day(open), cuts: [] })).toEqual([]);
    const shorted = day([branch("A-L1", "shorted"), branch("A-L2", "sound")]);
    const misread = new Set(["A-L1"]);
    expect(partsList({ record, asFound: shorted, cuts: [], misread })).toEqual([]);
    const readings = [{ from: "L1", to: "L2", reads: 0.02 as never, predicted: null, residual: null }];
    const bolted = { ...shorted, resistances: { ...shorted.resistances, readings } };
    expect(partsList({ record, asFound: bolted, cuts: [], misread }).map(({ part }) => part)).toEqual([
      "element for A-L1",
    ]);
  });
});
