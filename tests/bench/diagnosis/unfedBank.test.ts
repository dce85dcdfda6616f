/**
 * A stage that is off while the others run. Line currents by hand: a delta bank of 40 Ω on 400 V draws √3·400/40 = 17.3 A a line, three of
 * them 52.0 A, two 34.6 A, one 17.3 A; hot, a twenty-fifth less. Dead readings pass the contactor by: three deltas of 40 Ω side by side read
 * 40·(2/3)/3 = 8.89 Ω between lines whether a stage is on or not.
 */
import { assessModule, diagnose, explanationGroupWords, nextMeasurements } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { amps, asked, bank, firstFaults, pairs, reading, topOf, volts3 } from "./sheets.ts";

const THREE = { banks: ["A", "B", "C"].map((id) => bank(id, "delta", 40)) };
const HOT = 1.04;
const volts = { supply: { lineVoltage: 400 } };
const lines = (each: number) => amps([1, 0.997, 1.003].map((k) => Math.round((k * each * 10) / HOT) / 10));
const off = (id: string) => ({ kind: "unfed bank", bank: id });

describe("one of three stages off", () => {
  it("is told, which of them is not, and no link is accused", () => {
    const found = diagnose(asked(THREE, [...lines(34.64), ...volts3([400, 401, 399])], volts));
    expect(found.outcome).toBe("explained");
    expect(topOf(found).map(({ faults }) => faults)).toEqual(
      expect.arrayContaining([[off("A")], [off("B")], [off("C")]]),
    );
    expect(topOf(found)).toHaveLength(3);
    expect(found.groups[0]?.probability).toBeGreaterThan(0.9);
  });

  it("is found by the amps into one bank", () => {
    const into = reading({ kind: "current", at: "L1", into: "B", reads: 0 });
    const found = diagnose(asked(THREE, [...lines(34.64), ...volts3([400, 401, 399]), into], volts));
    expect(firstFaults(found)).toEqual([off("B")]);
    expect(found.groups[0]?.probability).toBeGreaterThan(0.9);
  });

  it("does not show dead: the ohms of all three are what they are", () => {
    const readings = [...lines(34.64), ...volts3([400, 401, 399]), ...pairs([8.9, 8.9, 8.9])];
    const found = diagnose(asked(THREE, readings, volts));
    expect(firstFaults(found)[0]?.kind).toBe("unfed bank");
  });

  it("or two of them", () => {
    const found = diagnose(asked(THREE, [...lines(17.32), ...volts3([400, 401, 399])], volts));
    expect(topOf(found).map(({ faults }) => faults)).toEqual(
      expect.arrayContaining([
        [off("A"), off("B")],
        [off("A"), off("C")],
        [off("B"), off("C")],
      ]),
    );
  });

  it("is not weighed with a prior of 0, nor against the amps, nor of ohms or line voltages alone", () => {
    const kinds = (module: object, readings: Parameters<typeof asked>[1], more: object = {}) =>
      diagnose(asked(module, readings, { ...volts, ...more })).groups.flatMap(({ explanations }) =>
        explanations.flatMap(({ faults }) => faults.map(({ kind }) => kind)),
      );
    const readings = [...lines(34.64), ...volts3([400, 401, 399])];
    expect(kinds(THREE, readings)).toContain("unfed bank");
    expect(kinds(THREE, readings, { priors: { unfedBank: 0 } })).not.toContain("unfed bank");
    // What flows there flows through its elements.
    expect(kinds({ banks: [bank("A", "delta", 40)] }, readings)).not.toContain("unfed bank");
    expect(kinds(THREE, pairs([13.3, 13.3, 13.3]))).not.toContain("unfed bank");
    expect(kinds(THREE, volts3([400, 401, 399]))).not.toContain("unfed bank");
  });

  it("is asked after at the stage, not at the links, where the bank is known", () => {
    const { answer, nextSteps, parts } = assessModule({
      title: "invented",
      nameplate: { power: "36 kW", voltage: "400 V" },
      wiring: { banks: ["A", "B", "C"].map((id) => ({ id, connection: "delta" })) },
      supply: { v12: "400 V", v23: "401 V", v31: "399 V" },
      temperatureFactor: HOT,
      instruments: { clamp: { ofReading: 0.02, digits: 5 }, voltmeter: { ofReading: 0.01, digits: 3 } },
      asFound: {
        currents: [
          { at: "L1", reads: "34.6 A" },
          { at: "L2", reads: "34.5 A" },
          { at: "L3", reads: "34.7 A" },
          { at: "L1", into: "B", reads: "0.0 A" },
        ],
      },
    } as never);
    expect(answer[0]).toMatch(/^Bank B without supply \(over 99\.9 %\)/);
    const stage = nextSteps.find(({ action }) => /^Find out whether bank B was called for/.test(action));
    expect(stage?.reason).toMatch(/^Bank B without supply/);
    expect(nextSteps.map(({ action }) => action).join(" ")).not.toMatch(/link/);
    expect(parts).toEqual([]);
  });
});

/** Amps hot, to a tenth. */
const hot = (each: readonly number[]) => amps(each.map((one) => Math.round((10 * one) / HOT) / 10));
const fed = volts3([480, 481, 479]);
const into = (bank: string, at: string, reads: number) => reading({ kind: "current", at, into: bank, reads });
const allOf = (found: ReturnType<typeof diagnose>) => topOf(found).map(({ faults }) => faults);

describe("no amps anywhere", () => {
  it("is all banks without supply, one cause: nothing was called for", () => {
    const five = { banks: ["A", "B", "C", "D", "E"].map((id) => bank(id, "delta", 40)) };
    for (const module of [THREE, five]) {
      const banks = module.banks.map((one) => off((one as { id: string }).id));
      const found = diagnose(asked(module, [...amps([0, 0.1, 0]), ...volts3([400, 401, 399])], volts));
      expect(found.outcome).toBe("explained");
      expect(allOf(found)).toEqual([banks]);
      expect(found.groups[0]?.probability).toBeGreaterThan(0.99);
    }
  });

  it("of one bank too, where two open elements do the same until ohms are read", () => {
    const one = { banks: [bank("A", "star", 12)] };
    const live = [...amps([0, 0, 0]), ...fed];
    const found = diagnose(asked(one, live));
    expect(allOf(found)).toHaveLength(4);
    expect(firstFaults(found)).toEqual([off("A")]);
    const [next] = nextMeasurements(asked(one, live));
    expect([next?.measurement.kind, next?.live]).toEqual(["resistance", false]);
    expect(allOf(diagnose(asked(one, [...live, ...pairs([24.3, 24.2, 24.3])])))).toEqual([[off("A")]]);
  });

  it("nor volts is no supply at all, with a prior for lost lines", () => {
    const dead = [...amps([0, 0, 0]), ...volts3([0, 0, 0])];
    const found = diagnose(asked(THREE, dead, volts));
    expect(found.outcome).toBe("explained");
    const lost = ["L1", "L2", "L3"].map((line) => ({ kind: "lost line", line }));
    expect(allOf(found)).toEqual([lost]);
    expect(explanationGroupWords(found.groups[0] as never).explanations[0]?.text).toBe(
      "no supply on L1, L2 and L3",
    );
    const none = diagnose(asked(THREE, dead, { ...volts, priors: { lostLine: 0 } }));
    expect(none.outcome).toBe("nothing fits");
  });
});

describe("any number of stages", () => {
  const five = { banks: ["A", "B", "C", "D", "E"].map((id) => bank(id, "delta", 40)) };
  it.each([
    // On, and the ways to choose those that are off: one, C(5, 2), C(5, 3), C(5, 4).
    [3, 2, 10],
    [2, 3, 10],
    [1, 4, 5],
  ])("%i of five on: %i off, in %i ways alike", (on, count, ways) => {
    const found = diagnose(asked(five, [...lines(17.32 * on), ...volts3([400, 401, 399])], volts));
    expect(allOf(found)).toHaveLength(ways);
    expect(allOf(found).every((faults) => faults.length === count)).toBe(true);
    expect(new Set(allOf(found).map((faults) => JSON.stringify(faults))).size).toBe(ways);
    expect(found.groups[0]?.probability).toBeGreaterThan(0.9);
  });

  it("unlike banks are told by their amps, and those clamped by their own", () => {
    // 17.3, 34.6 and 69.3 A a line: without B 86.6 A, hot.
    const unlike = { banks: [bank("A", "delta", 40), bank("B", "delta", 20), bank("C", "delta", 10)] };
    const found = diagnose(asked(unlike, [...lines(86.6), ...volts3([400, 401, 399])], volts));
    expect(allOf(found)).toEqual([[off("B")]]);
    const clamped = [...lines(34.64), ...volts3([400, 401, 399]), into("E", "L1", 16.7)];
    const others = diagnose(asked(five, clamped, volts));
    expect(allOf(others)).toHaveLength(4);
    expect(allOf(others).every((faults) => faults.length === 3)).toBe(true);
    expect(JSON.stringify(allOf(others))).not.toContain('"E"');
  });

  it("of forty banks are found without asking about every set", () => {
    const forty = { banks: Array.from({ length: 40 }, (_, i) => bank(`B${i}`, "delta", 40)) };
    const found = diagnose(asked(forty, [...lines(17.32), ...volts3([400, 401, 399])], volts));
    expect(allOf(found)).toHaveLength(40);
    expect(allOf(found).every((faults) => faults.length === 39)).toBe(true);
  });
});

/** Two stars of 12 Ω on 480 V, 23.09 A a branch. A without L1: 480/24 = 20 A from L2 to L3, 30° from B's: √(20² + 23.09² + 2·20·23.09·cos 30°) = 41.63 A. */
describe("a bank without supply on one line", () => {
  const TWO = { banks: [bank("A", "star", 12), bank("B", "star", 12)], starPoints: "separate" };
  const live = [...hot([23.09, 41.63, 41.63]), ...fed, into("A", "L1", 0)];
  const pole = { kind: "unfed bank", bank: "A", line: "L1" };

  it("is in one group with what live readings cannot tell from it, and dead ohms are asked for", () => {
    const found = diagnose(asked(TWO, live));
    expect(allOf(found)).toEqual([
      [{ kind: "element open", element: "A-L1" }],
      [{ kind: "open joint", place: "L1>A" }],
      [{ kind: "open joint", place: "S-A<A-L1" }],
      [pole],
    ]);
    const [next] = nextMeasurements(asked(TWO, live));
    expect([next?.measurement.kind, next?.live]).toEqual(["resistance", false]);
    expect(next?.separates.flat().join()).toMatch(/bank A without supply on L1/);
  });

  it("is the one cause where the ohms behind the contactor are sound", () => {
    const found = diagnose(asked(TWO, [...live, ...pairs([12.2, 12.3, 12.2])]));
    expect(found.outcome).toBe("explained");
    expect(allOf(found)).toEqual([[pole]]);
    expect(found.groups[0]?.probability).toBeGreaterThan(0.99);
    expect(explanationGroupWords(found.groups[0] as never).explanations[0]?.text).toBe(
      "bank A without supply on L1",
    );
  });

  it("of a single bank is the line's itself, unless the volts were on all three", () => {
    const one = { banks: [bank("A", "star", 12)] };
    const ohms = pairs([24.3, 24.2, 24.3]);
    expect(firstFaults(diagnose(asked(one, [...hot([0, 20, 20]), ...ohms])))).toEqual([
      { kind: "lost line", line: "L1" },
    ]);
    expect(firstFaults(diagnose(asked(one, [...hot([0, 20, 20]), ...ohms, ...fed])))).toEqual([pole]);
  });

  it("is not weighed with a prior of 0", () => {
    const none = diagnose(asked(TWO, live, { priors: { unfedBankLine: 0 } }));
    expect(JSON.stringify(none.groups)).not.toContain('"unfed bank","bank":"A","line"');
  });
});

describe("a bank without supply beside another", () => {
  const TWO = { banks: [bank("A", "delta", 12), bank("B", "delta", 12)] };
  // One delta alone with L1-L2 open: 480/12 = 40 A in L1 and L2, √3·40 = 69.3 A in L3.
  const live = [...hot([40, 40, 69.28]), ...fed];
  const open = { kind: "element open", element: "A-L1L2" };

  it.each(["single", "pairs"])("open element, at depth %s: which is off is told by its amps", (depth) => {
    const either = diagnose(asked(TWO, live, { depth }));
    expect(either.outcome).toBe("explained");
    expect(allOf(either)).toEqual([
      [off("A"), { kind: "element open", element: "B-L1L2" }],
      [off("B"), open],
    ]);
    const told = diagnose(asked(TWO, [...live, into("B", "L3", 0)], { depth }));
    expect(allOf(told)).toEqual([[off("B"), open]]);
  });

  it("open element that the ohms show, where no amps flow anywhere", () => {
    // Sides of 12, 6 and 6 Ω: 12 beside 6 + 6, 6.0 Ω between L1 and L2; elsewhere 6 beside 6 + 12, 4.5 Ω.
    const found = diagnose(asked(TWO, [...amps([0, 0, 0]), ...fed, ...pairs([6.2, 4.7, 4.7])]));
    expect(found.outcome).toBe("explained");
    for (const faults of allOf(found)) {
      expect(faults.slice(0, 2)).toEqual([off("A"), off("B")]);
      expect(faults).toHaveLength(3);
    }
    expect(allOf(found).map((faults) => faults[2])).toEqual(
      expect.arrayContaining([open, { kind: "element open", element: "B-L1L2" }]),
    );
  });

  it("fault of which the ohms show how large it is: told of that fault", () => {
    // A side of 12 Ω with a quarter of its turns gone, 9 beside 12: 36/7 Ω. Between its ends 36/7 beside 12, 3.6 Ω; elsewhere 6 beside 6 + 36/7, 3.9 Ω.
    const found = diagnose(asked(TWO, [...amps([0, 0, 0]), ...fed, ...pairs([3.8, 4.1, 4.1])]));
    const one = topOf(found).find(({ faults }) => faults[2]?.kind === "shorted turns");
    const turns = one?.estimates.find(({ of }) => of === "turns shorted");
    expect([turns?.fault, one?.faults.length]).toEqual([2, 3]);
    expect(Math.abs((turns?.value as number) - 0.25)).toBeLessThan(0.1);
  });

  it("reading that is wrong: both are named", () => {
    const readings = [
      ...hot([69.28, 27, 69.28]),
      ...fed,
      ...["L1", "L2", "L3"].map((at) => into("A", at, 66.5)),
      ...["L1", "L2", "L3"].map((at) => into("B", at, 0)),
    ];
    const found = diagnose(asked(TWO, readings));
    expect(firstFaults(found)).toEqual([
      off("B"),
      { kind: "misread", reading: 1, of: { kind: "current", at: "L2" } },
    ]);
    expect(found.warnings.map(({ path }) => path)).toEqual(["readings.1.reads"]);
  });

  it("fault of its own, among six clamped one by one", () => {
    // Without L2 the sides L1-L2 and L2-L3 lie in series between L1 and L3: 480/24 = 20 A, and no more with L3-L1 open; the
    // other five draw 69.3 A a line; hot, a twenty-fifth less.
    const six = ["A", "B", "C", "D", "E", "F"];
    const found = diagnose(
      asked({ banks: six.map((id) => bank(id, "delta", 12)) }, [
        ...fed,
        ...six.flatMap((id) =>
          ["L1", "L2", "L3"].map((at) => into(id, at, id !== "A" ? 66.6 : at === "L2" ? 0 : 19.2)),
        ),
      ]),
    );
    expect(found.outcome).toBe("explained");
    expect(allOf(found)).toContainEqual([
      { ...off("A"), line: "L2" },
      { kind: "element open", element: "A-L3L1" },
    ]);
  });

  it("comes to nothing where something simpler fits", () => {
    // Both elements of L1-L2 open: 80 A in L1 and L2, 138.6 A in L3, as one delta alone would have of half the ohms.
    const found = diagnose(asked(TWO, [...hot([80, 80, 138.6]), ...fed]));
    expect(firstFaults(found)).toEqual([open, { kind: "element open", element: "B-L1L2" }]);
    expect(JSON.stringify(found.groups)).not.toContain("unfed bank");
  });
});
