/**
 * Readings at places that another wiring does not have, and what the diagnosis says of rare questions.
 *
 * Sources: Kirchhoff's and Ohm's laws for the readings; a reading taken at a place proves that the place is there; for words, what was asked.
 */
import {
  type Diagnosis,
  diagnose,
  diagnosisText,
  type FieldReading,
  nextMeasurements,
} from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { amps, asked, bank, firstFaults, pairs, reading, topOf, volts3 } from "./sheets.ts";

const ohm = (from: string, to: string, reads: number | "open", only?: readonly string[]): FieldReading =>
  reading({ kind: "resistance", from, to, reads, ...(only === undefined ? {} : { only }) });
/** Probability of all explanations of one wiring. */
const ofWiring = ({ groups }: Diagnosis, wanted: number): number =>
  groups
    .flatMap(({ explanations }) => explanations)
    .reduce((sum, { wiring, probability }) => sum + (wiring === wanted ? probability : 0), 0);

/** Two stars of 24 Ω with separate star points, and two deltas that the lines cannot tell from them: 72 Ω a side. */
const stars = { banks: [bank("A", "star", 24), bank("B", "star", 24)], starPoints: "separate" };
const deltas = { banks: [bank("A", "delta", 72), bank("B", "delta", 72)] };

describe("a reading at a place that the alternative does not have", () => {
  // Lines: 24 Ω + 24 Ω, two banks side by side: 24 Ω for either wiring. 480 V: 480/√3/24 = 11.55 A into each bank.
  const lines = [...pairs([24.1, 24.1, 24.1]), ...volts3([480, 480, 480])];
  it("is no reading where every place is there: the two wirings stand side by side", () => {
    const found = diagnose(asked(stars, lines, { alternatives: [deltas] }));
    expect(ofWiring(found, 0)).toBeGreaterThan(0.2);
    expect(ofWiring(found, 1)).toBeGreaterThan(0.2);
  });
  it.each([
    ["ohms between star points", ohm("S-A", "S-B", 8.1 * 2)],
    ["volts between star points", reading({ kind: "voltage", from: "S-A", to: "S-B", reads: 0 })],
    ["insulation from a star point", reading({ kind: "insulation", from: "S-A", reads: 5e8 })],
    ["amps at a star point", reading({ kind: "current", at: "S-A", into: "A-L1", reads: 11.5 })],
  ])("%s speaks for the drawing", (_what, one) => {
    // S-A to S-B: three paths of 24 + 24 Ω side by side, 16 Ω.
    const before = diagnose(asked(stars, lines, { alternatives: [deltas] }));
    const found = diagnose(asked(stars, [...lines, one], { alternatives: [deltas] }));
    expect(ofWiring(found, 0)).toBeGreaterThan(0.99);
    expect(ofWiring(found, 0)).toBeGreaterThan(ofWiring(before, 0));
  });
  it("across an element alone is a reading of that element in either wiring", () => {
    // 24 Ω alone is the star's element; the delta's would read 72 Ω.
    const found = diagnose(
      asked(
        stars,
        [
          ...lines,
          ohm("L1", "S-A", 24.2, ["A-L1"]),
          reading({ kind: "voltage", from: "L1", to: "S-A", reads: 277 }),
        ],
        {
          alternatives: [deltas],
        },
      ),
    );
    expect(ofWiring(found, 0)).toBeGreaterThan(0.99);
  });
  it("across a joint speaks for the drawing that has it", () => {
    const jointed = { ...stars, joints: [{ id: "J", at: "L1", resistance: 0.0002 }] };
    const drop = reading({ kind: "drop", across: "J", reads: 0.0046 });
    const found = diagnose(
      asked(jointed, [...lines, ...amps([23.1, 23.1, 23.1]), drop], { alternatives: [deltas] }),
    );
    expect(ofWiring(found, 0)).toBeGreaterThan(0.99);
  });
  it("inside a string speaks for the string", () => {
    // Two elements of 12 Ω in series; one element of 24 Ω has no joint between.
    const strings = { banks: [bank("A", "star", 12, { elementsInSeries: 2 })] };
    const whole = { banks: [bank("A", "star", 24)] };
    const found = diagnose(
      asked(strings, [...pairs([48.2, 48.2, 48.2]), ohm("L1", "A-L1|1", 12.2)], { alternatives: [whole] }),
    );
    expect(ofWiring(found, 0)).toBeGreaterThan(0.99);
  });
});

describe("parts that another wiring does not have", () => {
  const lines = [...pairs([24.1, 24.1, 24.1]), ...volts3([480, 480, 480])];
  const clamped = (alternative: object): Diagnosis => {
    const into = reading({ kind: "current", at: "L1", into: "B-L1", reads: 11.5 });
    return diagnose(
      asked(stars, [...lines, ...amps([23.1, 23.1, 23.1]), into], { alternatives: [alternative] }),
    );
  };
  it("a bank, by its amps", () => {
    expect(ofWiring(clamped({ banks: [bank("A", "delta", 36)] }), 0)).toBeGreaterThan(0.5);
  });
  it("a star's branch, whose wire is the bank's in delta: √3·480/72 = 11.55 A there too, and nothing tells them apart", () => {
    const found = clamped(deltas);
    for (const wiring of [0, 1]) expect(Math.abs(ofWiring(found, wiring) - 0.5)).toBeLessThan(0.1);
  });
  it("one of two parallel elements, read alone", () => {
    // Two of 48 Ω side by side are the 24 Ω of a branch; a single element of 72 Ω in delta has no twin.
    const twins = { banks: [bank("A", "star", 48, { elementsInParallel: 2 })] };
    const single = { banks: [bank("A", "delta", 72)] };
    const alone = ohm("L1", "S", 48.2, ["A-L1-2"]);
    const found = diagnose(asked(twins, [...pairs([48.2, 48.2, 48.2]), alone], { alternatives: [single] }));
    expect(ofWiring(found, 0)).toBeGreaterThan(0.99);
  });
  it("the wire to the neutral", () => {
    const onNeutral = { banks: [bank("A", "star", 24)], neutral: "connected" };
    const readings = [...amps([11.5, 11.5, 11.5]), reading({ kind: "current", at: "N", reads: 0 })];
    expect(topOf(diagnose(asked(onNeutral, readings)))[0]!.faults).toEqual([]);
  });
});

describe("a star linked as a delta whose branches were read one by one to the star point of the drawing", () => {
  it("is no contradiction: alone a branch is read across itself", () => {
    // 24 Ω each; linked as a delta 24·48/72 = 16 Ω between lines, where a star has 48.
    const alone = ["L1", "L2", "L3"].map((from) => ohm(from, "S", 24.2, [`A-${from}`]));
    const found = diagnose(
      asked({ banks: [bank("A", "star", 24)] }, [...alone, ...pairs([16.2, 16.2, 16.2])]),
    );
    expect(found.outcome).toBe("explained");
    expect(firstFaults(found)).toEqual([{ kind: "mis-linked", bank: "A", as: "delta" }]);
  });

  it("nor is an open path from each line to the bare stud of the star point", () => {
    const bare = ["L1", "L2", "L3"].map((from) => ohm(from, "S", "open", [`A-${from}`]));
    const found = diagnose(
      asked({ banks: [bank("A", "star", 24)] }, [...bare, ...pairs([16.2, 16.2, 16.2])]),
    );
    expect(found.outcome).toBe("explained");
    expect(firstFaults(found)).toEqual([{ kind: "mis-linked", bank: "A", as: "delta" }]);
  });
});

describe("a bank linked against a drawing with joints at its star point", () => {
  it("is found all the same, a joint of one branch behind a joint of two between", () => {
    // Star of 24 Ω linked as delta: 24 Ω a side, 24·48/72 = 16 Ω between lines.
    const module = {
      banks: [bank("A", "star", 24)],
      joints: [
        { id: "lug", at: "S", behind: ["A-L1"], resistance: 0.0001 },
        { id: "bar", at: "S", behind: ["lug", "A-L2"], resistance: 0.0001 },
      ],
    };
    const found = diagnose(asked(module, pairs([16.1, 16.1, 16.1])));
    expect(firstFaults(found)).toEqual([{ kind: "mis-linked", bank: "A", as: "delta" }]);
  });
});

describe("rare questions", () => {
  const star = { banks: [bank("A", "star", 12)] };
  it("with one alternative that is no list are refused by name", () => {
    expect(() => diagnose(asked(star, pairs([24.1, 24.1, 24.1]), { alternatives: { banks: [] } }))).toThrow(
      /^alternatives/,
    );
  });
  it("of insulation damper than damp still rank", () => {
    const found = diagnose(
      asked(star, [...pairs([24.1, 24.1, 24.1]), reading({ kind: "insulation", from: "L1", reads: 5 })]),
    );
    expect(found.groups[0]!.probability).toBeGreaterThan(0);
    expect(found.groups.reduce((sum, { probability }) => sum + probability, 0)).toBeLessThanOrEqual(1 + 1e-9);
    expect(topOf(found).some(({ faults }) => faults.some(({ kind }) => kind === "earth fault"))).toBe(true);
  });
  it("without candidates propose nothing", () => {
    expect(nextMeasurements({ ...asked(star, pairs([24.1, 24.1, 24.1])), candidates: [] })).toEqual([]);
  });
  it("of an earthed element propose its own insulation", () => {
    const module = { banks: [bank("A", "star", 12)], neutral: "connected" };
    const readings = [...pairs([24.1, 24.1, 24.1]), reading({ kind: "insulation", from: "L1", reads: 2e3 })];
    const found = nextMeasurements(asked(module, readings));
    const elements = found.flatMap(({ measurement: one }) =>
      one.kind === "insulation" ? (one.only ?? []) : [],
    );
    expect(new Set(elements)).toEqual(new Set(["A-L1", "A-L2", "A-L3"]));
  });
  it("without a prior for a kind of fault do not say that it was left out", () => {
    const readings = [...pairs([24.1, 24.1, 24.1]), reading({ kind: "insulation", from: "L1", reads: 5e8 })];
    const none = { shortedTurns: 0, offValue: 0, joint: 0, openJoint: 0, elementOpen: 0, misLinked: 0 };
    const words = (priors: object): string =>
      diagnose(asked(star, readings, { depth: "pairs", priors })).notDetermined.join(" ");
    for (const what of [
      "shorted turns",
      "an element off its value",
      "resistance in a joint",
      "two slips in the links",
      "two bad joints",
    ]) {
      expect(words({})).toContain(what);
      expect(words(none)).not.toContain(what);
    }
    expect(words(none)).toContain("an earth fault beside a second earth fault");
  });
});

describe("the text of a diagnosis", () => {
  const drawn = { banks: [bank("A", "star", 12)], joints: [{ id: "J", at: "L1", resistance: 0.0002 }] };
  const readings = [
    ...pairs([24.1, 24.1, 24.1]),
    ...amps([23.1, 23.1, 23.1]),
    reading({ kind: "current", at: "L1", into: "A-L1", reads: 23.1 }),
    reading({ kind: "drop", across: "J", reads: 0.0046 }),
    reading({ kind: "insulation", from: "L1", reads: 5e8 }),
  ];
  const question = asked(drawn, readings);
  const diagnosed = () => diagnose(question);
  it("names every kind of reading by its place", () => {
    const text = diagnosisText({ asked: question, diagnosis: diagnosed() });
    for (const place of ["amps at L1 into A-L1", "drop across J", "insulation from L1"])
      expect(text).toContain(place);
  });
  it("tells a single explanation in one line, warnings, and readings that nothing predicts", () => {
    const diagnosis = diagnosed();
    const [group] = diagnosis.groups;
    const [first] = topOf(diagnosis);
    const alone = {
      ...first!,
      unseen: [],
      pValue: null,
      predicted: [{ ...first!.predicted[0]!, reads: null as never }],
    };
    const text = diagnosisText({
      asked: question,
      diagnosis: {
        ...diagnosis,
        groups: [{ ...group!, explanations: [alone] }],
        warnings: [{ code: "suspicious", path: "readings", message: "made up to be shown" }],
      },
    });
    expect(text).toMatch(/% ?: sound\n|%: sound/);
    expect(text).not.toContain("not told apart");
    expect(text).toContain("no readings to spare for a test");
    expect(text).toContain("made up to be shown");
    expect(text).toMatch(/drop across J +- +-\n/);
  });
  it("gives no figure to what is all but excluded", () => {
    const diagnosis = diagnosed();
    const [group] = diagnosis.groups;
    const [first] = topOf(diagnosis);
    const explanations = [first!, { ...first!, probability: 0.0005 }];
    const text = diagnosisText({
      asked: question,
      diagnosis: { ...diagnosis, groups: [{ ...group!, explanations }] },
    });
    expect(text).toContain("under 0.1 %: sound");
  });
});

it("an open path at a star point where the other branches alone show their ohms is a break, and no bare stud", () => {
  // Bank A linked as delta has no star point; whoever reads two branches alone there has found their ends, and the third's beside them.
  const twin = { banks: [bank("A", "star", 14.4), bank("B", "star", 14.4)], starPoints: "separate" };
  const alone = (id: string, reads: readonly (number | "open")[]) =>
    reads.map((one, i) =>
      reading({
        kind: "resistance",
        from: `L${i + 1}`,
        to: `S-${id}`,
        only: [`${id}-L${i + 1}`],
        reads: one,
      }),
    );
  const found = diagnose(
    asked(twin, [...alone("A", ["open", 14.8, 14.8]), ...alone("B", [14.8, 14.8, 14.8])]),
  );
  expect(firstFaults(found)).toEqual([{ kind: "element open", element: "A-L1" }]);
  const linked = found.groups
    .flatMap(({ explanations }) => explanations)
    .filter(({ faults }) => faults.some(({ kind }) => kind === "mis-linked"));
  expect(linked.reduce((sum, { probability }) => sum + probability, 0)).toBeLessThan(0.02);
});

it("a star stud left bare by a bank in delta reads open for that bank, whatever the bank tied to it reads there", () => {
  const twin = { banks: [bank("A", "star", 14.4), bank("B", "star", 14.4)], starPoints: "tied" };
  const alone = (id: string, reads: number | "open") =>
    ["L1", "L2", "L3"].map((from) =>
      reading({ kind: "resistance", from, to: "S", only: [`${id}-${from}`], reads }),
    );
  // A delta of 14.8 Ω sides: one beside the two others in series, 2/3 of one.
  const between = [
    ["L1", "L2"],
    ["L2", "L3"],
    ["L3", "L1"],
  ].map(([from, to]) => reading({ kind: "resistance", from, to, only: ["A"], reads: 9.87 }));
  const found = diagnose(asked(twin, [...alone("A", "open"), ...alone("B", 14.8), ...between]));
  expect(found.outcome).toBe("explained");
  expect(firstFaults(found)).toEqual([{ kind: "mis-linked", bank: "A", as: "delta" }]);
});
