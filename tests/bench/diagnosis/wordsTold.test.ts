/**
 * What a diagnosis says in sentences, held whole: faults, places, probabilities, estimates, orders to measure, and what the readings do not
 * show. The figures in them are worked by hand beside each.
 */
import {
  type DiagnosedFault,
  type Diagnosis,
  diagnose,
  diagnosisText,
  type Explanation,
  type ExplanationGroup,
  explanationGroupWords,
  type FieldMeasurement,
  nextMeasurements,
} from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { amps, asked, bank, OHMMETER, pairs, reading, volts3 } from "./sheets.ts";

const STAR = { banks: [bank("A", "star", 12)] };
const SURE = { ohmmeter: { ...OHMMETER, leads: "taken off" } };

/** An explanation made up to be told. */
const made = (faults: readonly DiagnosedFault[], more: Partial<Explanation> = {}): Explanation => ({
  faults,
  unseen: [],
  wiring: 0,
  probability: 0.5,
  prior: 0.01,
  estimates: [],
  logLikelihood: 0,
  chiSquare: 0,
  degreesOfFreedom: 1,
  pValue: 0.5,
  predicted: [],
  ...more,
});
const group = (...explanations: Explanation[]): ExplanationGroup => ({
  probability: explanations.reduce((sum, { probability }) => sum + probability, 0),
  explanations,
});
const textOf = (...faults: DiagnosedFault[]): string | undefined =>
  explanationGroupWords(group(made(faults))).explanations[0]?.text;

describe("a fault in words", () => {
  it.each([
    [{ kind: "element open", element: "A-L1" }, "element A-L1 open"],
    [{ kind: "shorted turns", element: "A-L1" }, "turns of element A-L1 shorted"],
    [{ kind: "element off value", element: "A-L1" }, "element A-L1 off its value"],
    [{ kind: "joint", place: "L2" }, "resistance in the joint where line L2 enters the module"],
    [{ kind: "joint", place: "L2>up-per" }, "resistance in the joint of bank up-per on L2"],
    [{ kind: "open joint", place: "S-A<A-L1" }, "open circuit in the joint of branch A-L1 on star point S-A"],
    [{ kind: "open joint", place: "bar 4" }, "open circuit in joint bar 4"],
    [{ kind: "joint", place: "L22" }, "resistance in joint L22"],
    [{ kind: "joint", place: "oL2" }, "resistance in joint oL2"],
    [{ kind: "joint", place: "bar L1>A" }, "resistance in joint bar L1>A"],
    [{ kind: "mis-linked", bank: "B", as: "delta" }, "bank B linked as delta, against the drawing"],
    [{ kind: "mis-linked", bank: null, as: "separate" }, "star points separate, against the drawing"],
    [
      { kind: "mis-linked", bank: null, as: "neutral" },
      "star points on the neutral or the frame, against the drawing",
    ],
    [{ kind: "mis-landed", branch: "A-L1", drawn: "L1", on: "L3" }, "branch A-L1 landed on L3 instead of L1"],
    [{ kind: "lost line", line: "L3" }, "no supply on L3"],
    [{ kind: "unfed bank", bank: "B" }, "bank B without supply"],
    [{ kind: "unfed bank", bank: "B", line: "L2" }, "bank B without supply on L2"],
    [{ kind: "earth fault", element: "A-L2" }, "element A-L2 earthed"],
    [{ kind: "earthed terminal", terminal: "L2" }, "terminal L2 earthed"],
    [{ kind: "earthed terminal", terminal: "S-L2" }, "star point S-L2 earthed"],
    [{ kind: "earthed terminal", terminal: "L2x" }, "star point L2x earthed"],
    [{ kind: "other rating" }, "all elements alike of another value than drawn"],
    [{ kind: "feed connected" }, "the feed, or another load, still connected while ohms were read"],
    [{ kind: "supply unbalance" }, "the supply's line voltages differ"],
  ] as readonly [DiagnosedFault, string][])("%j is: %s", (fault, words) => {
    expect(textOf(fault)).toBe(words);
  });

  it("is sound without one, has an and between two, and says for which wiring", () => {
    expect(textOf()).toBe("sound");
    expect(textOf({ kind: "lost line", line: "L1" }, { kind: "element open", element: "A-L2" })).toBe(
      "no supply on L1 and element A-L2 open",
    );
    const off = (bank: string): DiagnosedFault => ({ kind: "unfed bank", bank });
    expect(textOf(off("A"), off("C"), { kind: "element open", element: "B-L2" }, off("D"))).toBe(
      "banks A, C and D without supply and element B-L2 open",
    );
    expect(textOf(off("A"), { kind: "unfed bank", bank: "B", line: "L1" })).toBe(
      "bank A without supply and bank B without supply on L1",
    );
    const lost = (line: string): DiagnosedFault => ({ kind: "lost line", line });
    expect(textOf(lost("L1"), lost("L3"))).toBe("no supply on L1 and L3");
    const other = explanationGroupWords(group(made([], { wiring: 2 })));
    expect(other.explanations[0]?.text).toBe("sound, if wired as alternative 2");
  });
});

describe("a probability in words", () => {
  it.each([
    [1, "over 99.9 %"],
    [0.99901, "over 99.9 %"],
    [0.999, "99.9 %"],
    [0.991, "99.1 %"],
    [0.99, "99 %"],
    [0.545, "55 %"],
    [0.1, "10 %"],
    [0.099, "9.9 %"],
    [0.001, "0.1 %"],
    [0.00099, "under 0.1 %"],
    [0, "under 0.1 %"],
  ])("%d is %s", (probability, words) => {
    const told = explanationGroupWords(group(made([], { probability })));
    expect(told.probability).toBe(words);
    expect(told.explanations[0]?.probability).toBe(words);
  });
});

describe("estimates in words", () => {
  const open = { kind: "element open", element: "A-L1" } as const;
  const lost = { kind: "lost line", line: "L1" } as const;
  const earth = { kind: "earth fault", element: "A-L2" } as const;
  it("have their unit, and say what they rest on", () => {
    const one = made([open, earth], {
      unseen: [earth],
      estimates: [
        { of: "joint resistance", fault: 0, value: 0.0123, low: 0.0011, high: 120, unit: "Ω" },
        { of: "turns shorted", fault: 0, value: 0.456, low: 0.4, high: 0.5049, unit: "1" },
        { of: "position", fault: 1, value: 0.5, low: 0.025, high: 0.975, unit: "1" },
      ],
    });
    expect(explanationGroupWords(group(one)).estimates).toEqual([
      "joint resistance 12 mΩ (1.1 mΩ to 120 Ω), 95 % of it",
      "turns shorted 0.46 (0.40 to 0.50), 95 % of it",
      "position 0.50 (0.03 to 0.97), assumed beforehand, not shown by these readings".replace(
        "0.03 to 0.97",
        `${(0.025).toFixed(2)} to ${(0.975).toFixed(2)}`,
      ),
    ]);
  });

  it("keep explanations that nothing shows apart, unless there is no other", () => {
    const shown = made([open], { probability: 0.6 });
    const hidden = [lost, earth].map((each) => made([open, each], { unseen: [each], probability: 0.1 }));
    const told = explanationGroupWords(group(shown, ...hidden));
    expect(told).toEqual({
      probability: "80 %",
      explanations: [{ probability: "60 %", text: "element A-L1 open" }],
      unseen: {
        probability: "20 %",
        text: "a fault these readings cannot show (no supply on a line or an earthed element)",
      },
      estimates: [],
    });
    const alone = explanationGroupWords(group(hidden[0] as Explanation));
    expect(alone.unseen).toBeNull();
    expect(alone.explanations).toEqual([
      { probability: "10 %", text: "element A-L1 open and no supply on L1" },
    ]);
    expect(explanationGroupWords(group(shown)).unseen).toBeNull();
  });

  it("name each kind that nothing shows once, three with commas", () => {
    const each = [
      { kind: "lost line", line: "L1" },
      { kind: "lost line", line: "L2" },
      { kind: "supply unbalance" },
      { kind: "earthed terminal", terminal: "S" },
    ] as const;
    const told = explanationGroupWords(
      group(made([]), ...each.map((one) => made([one], { unseen: [one], probability: 0.01 }))),
    );
    expect(told.unseen?.text).toBe(
      "a fault these readings cannot show (no supply on a line, line voltages that differ or an earthed terminal)",
    );
  });
});

describe("a reading by its place", () => {
  it("is told for each kind, with the links that were left in", () => {
    const drawn = { banks: [bank("A", "star", 24), bank("B", "star", 24)], starPoints: "tied" };
    const jointed = { ...drawn, joints: [{ id: "J", at: "L1", resistance: 2e-4 }] };
    const question = asked(jointed, [
      reading({ kind: "resistance", from: "L1", to: "S", reads: 8.2, only: ["A-L1", "B-L1", "B-L2"] }),
      reading({ kind: "resistance", from: "L1", to: "L2", reads: "open", only: ["A"] }),
      reading({ kind: "voltage", from: "L1", to: "N", reads: 277 }),
      reading({ kind: "current", at: "L1", reads: 22 }),
      reading({ kind: "current", at: "L1", into: "A-L1", reads: 11 }),
      reading({ kind: "drop", across: "J", reads: 0.0046 }),
      reading({ kind: "insulation", from: "L1", reads: 5e8, only: ["A", "B"] }),
      reading({ kind: "insulation", from: "S", reads: 5e8 }),
    ]);
    const text = diagnosisText({ asked: question, diagnosis: diagnose(question) });
    const rows = text.split("\n").map((line) => line.trim().split(/ {2,}/)[0]);
    for (const place of [
      "L1 to S, only A-L1, B-L1 and B-L2 linked",
      "L1 to L2, only A linked",
      "volts L1 to N",
      "amps at L1",
      "amps at L1 into A-L1",
      "drop across J",
      "insulation from L1, only A and B linked",
      "insulation from S",
    ])
      expect(rows).toContain(place);
  });
});

describe("an order to measure", () => {
  const joints = [{ id: "J", at: "L1", resistance: 2e-4 }];
  const planned = (measurement: FieldMeasurement) => {
    const question = asked({ ...STAR, joints }, [], { instruments: {} });
    const [one, ...others] = nextMeasurements({ ...question, candidates: [measurement] });
    expect(others).toEqual([]);
    expect(one?.measurement).toEqual(measurement);
    return [one?.live, one?.instruction];
  };
  const DEAD = "Isolated, locked out and proved dead:";
  const LIVE =
    "Live: only by a person qualified and equipped for it, where the local rules allow it; the dead check comes first wherever it can tell the same.";
  it.each([
    [{ kind: "resistance", from: "L1", to: "L2" }, false, `${DEAD} links in, measure ohms from L1 to L2.`],
    [
      { kind: "resistance", from: "L1", to: "S", only: ["A-L1"] },
      false,
      `${DEAD} lift the links of everything but A-L1, measure ohms from L1 to S.`,
    ],
    [
      { kind: "insulation", from: "L1" },
      false,
      `${DEAD} links in, measure insulation from L1 to the frame at the test voltage that the module allows.`,
    ],
    [
      { kind: "insulation", from: "L2", only: ["A-L1", "A-L2"] },
      false,
      `${DEAD} lift the links of everything but A-L1 and A-L2, measure insulation from L2 to the frame at the test voltage that the module allows.`,
    ],
    [
      { kind: "current", at: "L1" },
      true,
      `At full conduction, clamp the wire at L1 and read amperes. ${LIVE}`,
    ],
    [
      { kind: "current", at: "L1", into: "A" },
      true,
      `At full conduction, clamp the wire at L1 into A and read amperes. ${LIVE}`,
    ],
    [
      { kind: "voltage", from: "L1", to: "S" },
      true,
      `At full conduction, measure volts from L1 to S. ${LIVE}`,
    ],
    [
      { kind: "drop", across: "J" },
      true,
      `At full conduction, measure millivolts across joint J, lug to bar; begin on the volts range, an open joint has the supply across it. ${LIVE} A dead joint can be measured with a four-wire meter instead.`,
    ],
  ] as readonly [FieldMeasurement, boolean, string][])("%j", (measurement, live, words) => {
    expect(planned(measurement)).toEqual([live, words]);
  });
});

describe("what readings do not show", () => {
  const told = (found: Diagnosis, about: RegExp): readonly string[] =>
    found.notDetermined.filter((one) => about.test(one));
  const JOINTS = /^(?:No j|J)oint resistance|^Some joints/;
  const only = (...names: string[]): object => {
    const none = ["elementOpen", "shortedTurns", "offValue", "joint", "openJoint", "misLinked"];
    const more = ["lostLine", "earthFault", "earthedTerminal", "otherRating", "feedConnected"];
    const zero = Object.fromEntries([...none, ...more, "supplyUnbalance"].map((name) => [name, 0]));
    return { ...zero, ...Object.fromEntries(names.map((name) => [name, 0.01])) };
  };

  it("of a joint, from one reading: nothing on the third line, two deviations of the reading elsewhere", () => {
    // 24.6 Ω: make ±0.15/√12·24 = 1.0392, two elements 0.02·12.3·√2 = 0.3479, meter √((0.0025·24.6 + 0.03)²/3 + 0.01²/12) = 0.0529
    // and 0.0025·24.6/√3 = 0.0355: together 1.0977 Ω, twice 2.2 Ω.
    const found = diagnose(asked(STAR, pairs([24.6]), { instruments: SURE, priors: only("joint") }));
    expect(told(found, JOINTS)).toEqual([
      "Some joints do not show in these readings at any resistance; at the best-seen place 2.2 Ω: normal readings do not clear the terminals.",
    ]);
  });

  it("of a joint, from three readings", () => {
    // C = α·1 + β·J, α = 0.0529² + (0.02·12.3)² = 0.06331, β = 0.0355² + 1.0392² + (0.02·12.3)² = 1.1418; a joint shifts (1, 0, 1):
    // (2 − 4·β/(α + 3·β))/α = 10.91, and 2/√10.91 = 0.605 Ω.
    const found = diagnose(
      asked(STAR, pairs([24.6, 24.6, 24.6]), { instruments: SURE, priors: only("joint") }),
    );
    expect(told(found, JOINTS)).toEqual([
      "Joint resistance below about 610 mΩ does not show in these readings: normal readings do not clear the terminals.",
    ]);
  });

  it("of a joint across which a drop was read, down to what a sound one scatters", () => {
    // 100 µΩ ± 30 %; the current through it 480/√3/(12.3·1.04) = 21.66 A ± 5.7 % (make, elements, hot over cold, supply): twice 30.5 µΩ.
    // On L2 or L3 it shows by that current alone: 2·0.3054 times 6 times the branch of 12.79 Ω hot, of which a sixth goes into I1.
    const drawn = { ...STAR, joints: [{ id: "J", at: "L1", resistance: 1e-4 }] };
    const millivoltmeter = { ofReading: 0.005, digits: 3, resolution: 1e-6 };
    const drop = reading({ kind: "drop", across: "J", reads: 0.00217 });
    const found = diagnose(asked(drawn, [drop], { instruments: { millivoltmeter }, priors: only("joint") }));
    expect(told(found, JOINTS)).toEqual([
      "Joint resistance below about 47 Ω does not show in these readings; at the best-seen place 61 µΩ: normal readings do not clear the terminals.",
    ]);
  });

  it("of a joint, from none; and nothing is said where joints are not weighed", () => {
    const bare = diagnose(asked(STAR, [], { priors: only("joint") }));
    expect(told(bare, JOINTS)).toEqual(["No joint resistance at all shows in these readings."]);
    expect(told(diagnose(asked(STAR, [], { priors: only("elementOpen") })), JOINTS)).toEqual([]);
  });

  it("of the supply, of insulation and of the wiring", () => {
    const DEAD = "Nothing about the supply: lost lines and unbalance show only under voltage.";
    const AMPS =
      "The line voltage was not measured: amperes alone do not tell a low supply from high resistance in all elements.";
    const NO_EARTH_DEAD =
      "Insulation was not measured: an earth fault does not show in ohms between terminals.";
    const NO_EARTH_LIVE =
      "Insulation was not measured: an earth fault of high resistance, or on a supply without earthed neutral, does not show.";
    const LINES =
      "Readings at the lines alone do not tell a star from a delta of three times the resistance: the wiring is taken as drawn, but for single slips.";
    const all = [DEAD, AMPS, NO_EARTH_DEAD, NO_EARTH_LIVE, LINES];
    const ohms = pairs([24.6]);
    const frame = reading({ kind: "insulation", from: "L1", reads: 5e8 });
    const starPoint = reading({ kind: "resistance", from: "L1", to: "S", reads: 12.3 });
    const fromStar = reading({ kind: "resistance", from: "S", to: "L1", reads: 12.3 });
    const lifted = reading({ kind: "resistance", from: "L1", to: "L2", reads: 24.6, only: ["A"] });
    const into = reading({ kind: "current", at: "L1", into: "A-L1", reads: 21.7 });
    const live = [...amps([21.7]), ...volts3([480])];
    const priors = only("elementOpen");
    const says = (readings: typeof ohms, more: object = {}): readonly string[] =>
      all.filter((one) => diagnose(asked(STAR, readings, { priors, ...more })).notDetermined.includes(one));
    expect(says(ohms)).toEqual([DEAD, NO_EARTH_DEAD, LINES]);
    expect(says([...ohms, frame])).toEqual([DEAD, LINES]);
    expect(says(amps([21.7]))).toEqual([AMPS, NO_EARTH_LIVE, LINES]);
    expect(says(live)).toEqual([NO_EARTH_LIVE, LINES]);
    expect(says([...live, frame])).toEqual([LINES]);
    for (const one of [starPoint, fromStar, lifted]) expect(says([one])).toEqual([DEAD, NO_EARTH_DEAD]);
    expect(says([into])).toEqual([AMPS, NO_EARTH_LIVE]);
    expect(says([reading({ kind: "voltage", from: "L1", to: "N", reads: 277 })])).toEqual([NO_EARTH_LIVE]);
    const alternatives = [{ banks: [bank("A", "delta", 36)] }];
    expect(says(ohms, { alternatives })).toEqual([DEAD, NO_EARTH_DEAD]);
  });

  it("names what cannot be told apart, six at most", () => {
    const twins = (count: number): string | undefined => {
      const module = { banks: [bank("A", "star", 12 * count, { elementsInParallel: count })] };
      // The branch on L1 has lost one of its elements: 12.3·n/(n − 1).
      const one = 12.3 + (12.3 * count) / (count - 1);
      return diagnose(
        asked(module, pairs([one, 24.6, one]), { instruments: SURE, priors: only("elementOpen") }),
      ).notDetermined[0];
    };
    expect(twins(2)).toBe("These readings cannot tell apart: element A-L1-1 open or element A-L1-2 open.");
    const names = (upTo: number): string[] =>
      Array.from({ length: upTo }, (_, k) => `element A-L1-${k + 1} open`);
    expect(twins(6)).toBe(`These readings cannot tell apart: ${names(5).join(", ")} or ${names(6)[5]}.`);
    expect(twins(8)).toBe(
      `These readings cannot tell apart: ${names(5).join(", ")} or ${names(6)[5]}, and 2 more.`,
    );
  });
});
