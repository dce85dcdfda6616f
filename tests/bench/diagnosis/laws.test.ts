/** Laws that hold for any sheet: probabilities add up, nothing depends on order or names, nothing is NaN, nothing is random. */
import { type DiagnosedFault, type Diagnosis, diagnose, type FieldReading } from "electroheat/bench";
import {
  balancedSupply,
  buildModule,
  energise,
  type ModulePlan,
  terminalResistance,
} from "electroheat/circuit";
import { volts } from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  amps,
  asked,
  bank,
  firstFaults,
  OHMMETER,
  pairs,
  probabilityOf,
  reading,
  topOf,
  volts3,
} from "./sheets.ts";

const LINES = ["L1", "L2", "L3"] as const;

/** Whether every number in a result is finite. */
function finite(value: unknown): boolean {
  if (typeof value === "number") return Number.isFinite(value);
  if (Array.isArray(value)) return value.every(finite);
  if (typeof value === "object" && value !== null) return Object.values(value).every(finite);
  return true;
}

const sum = ({ groups }: Diagnosis): number => groups.reduce((all, { probability }) => all + probability, 0);

const plan = fc
  .record({
    connections: fc.array(fc.constantFrom("star", "delta"), { minLength: 1, maxLength: 3 }),
    parallel: fc.integer({ min: 1, max: 3 }),
    series: fc.integer({ min: 1, max: 2 }),
    tied: fc.boolean(),
    ohm: fc.double({ min: 1, max: 80, noNaN: true }),
    joints: fc.boolean(),
  })
  .map(({ connections, parallel, series, tied, ohm, joints }) => ({
    banks: connections.map((connection, i) =>
      bank("ABC"[i] as string, connection as "star" | "delta", ohm, {
        elementsInParallel: parallel,
        elementsInSeries: series,
      }),
    ),
    ...(connections.filter((one) => one === "star").length > 1
      ? { starPoints: tied ? "tied" : "separate" }
      : {}),
    ...(joints ? { joints: LINES.map((at) => ({ id: `J${at}`, at, resistance: 1e-4 })) } : {}),
  }));

/** Readings of anything, likely or not. */
const sheet = fc.record({
  ohms: fc.array(fc.oneof(fc.constant("open" as const), fc.double({ min: 0, max: 1e5, noNaN: true })), {
    maxLength: 3,
  }),
  amps: fc.array(fc.double({ min: 0, max: 1e4, noNaN: true }), { maxLength: 3 }),
  volts: fc.array(fc.double({ min: 0, max: 2000, noNaN: true }), { maxLength: 3 }),
  drop: fc.option(fc.double({ min: 0, max: 10, noNaN: true }), { nil: undefined }),
  insulation: fc.option(
    fc.oneof(fc.constant("open" as const), fc.double({ min: 0, max: 1e11, noNaN: true })),
    {
      nil: undefined,
    },
  ),
});

describe("any sheet", () => {
  it("gives finite probabilities that add up to 1, survives JSON, and the same again", () => {
    fc.assert(
      fc.property(plan, sheet, (module, given) => {
        const readings: FieldReading[] = [
          ...pairs(given.ohms),
          ...amps(given.amps),
          ...volts3(given.volts),
          ...("joints" in module && given.drop !== undefined
            ? [reading({ kind: "drop", across: "JL2", reads: given.drop })]
            : []),
          ...(given.insulation === undefined
            ? []
            : [reading({ kind: "insulation", from: "L1", reads: given.insulation })]),
        ];
        const question = asked(module, readings);
        const found = diagnose(question);
        expect(finite(found)).toBe(true);
        expect(Math.abs(sum(found) - 1)).toBeLessThan(1e-3);
        for (const { probability, explanations } of found.groups) {
          const own = explanations.reduce((all, one) => all + one.probability, 0);
          expect(Math.abs(own - probability)).toBeLessThan(1e-9);
        }
        expect(JSON.parse(JSON.stringify(found))).toEqual(found);
        expect(diagnose(question)).toEqual(found);
      }),
      { numRuns: 40, seed: 11 },
    );
  }, 120_000);
});

const threeBanks = (names: readonly [string, string]): object => ({
  banks: [bank(names[0], "star", 12), bank(names[1], "delta", 30)],
});

describe("symmetries", () => {
  const readings = [...pairs([9.2, 7.1, 9.3]), ...amps([48, 62, 49]), ...volts3([480, 479, 481])];

  it("does not depend on the order of the readings", () => {
    const found = diagnose(asked(threeBanks(["A", "B"]), readings));
    const turned = diagnose(asked(threeBanks(["A", "B"]), [...readings].reverse()));
    // A misread one goes by its place among the readings.
    const placed = (faults: readonly DiagnosedFault[]): readonly DiagnosedFault[] =>
      faults.map((one) =>
        one.kind === "misread" ? { ...one, reading: readings.length - 1 - one.reading } : one,
      );
    for (const { faults, probability } of found.groups.flatMap((group) => group.explanations)) {
      expect(Math.abs(probabilityOf(turned, placed(faults)) - probability)).toBeLessThan(1e-6);
    }
    expect(turned.outcome).toBe(found.outcome);
  });

  // Where nothing fits, the order in which hypotheses come decides which of the hopeless ones are only estimated.
  it.each([
    [
      "explained",
      [...pairs([10.5, 10.5, 10.5]), ...amps([47.5, 48, 48.4]), ...volts3([480, 479, 481])],
      1e-6,
    ],
    ["nothing fits", readings, 1e-3],
  ] as const)(
    "does not depend on the names of the banks or their order in the plan, %s",
    (outcome, sheet, apart) => {
      const found = diagnose(asked(threeBanks(["A", "B"]), sheet));
      const other = { banks: [bank("upper", "delta", 30), bank("low-er", "star", 12)] };
      const renamed = diagnose(asked(other, sheet));
      expect([found.outcome, renamed.outcome]).toEqual([outcome, outcome]);
      const words = (faults: readonly object[]): object[] =>
        JSON.parse(
          JSON.stringify(faults).replace(/"(A|B)(-|")|(>|<)(A|B)("|-)/g, (hit) =>
            hit.replace("A", "low-er").replace("B", "upper"),
          ),
        );
      for (const { faults, probability } of found.groups.flatMap((group) => group.explanations)) {
        expect(Math.abs(probabilityOf(renamed, words(faults)) - probability)).toBeLessThan(apart);
      }
    },
  );

  it("turns with the lines", () => {
    const star = { banks: [bank("A", "star", 12)] };
    const found = diagnose(asked(star, pairs([30, 24.2, 30.1])));
    const turned = diagnose(asked(star, pairs([30.1, 30, 24.2])));
    const one = probabilityOf(found, [{ kind: "element off value", element: "A-L1" }]);
    expect(one).toBeGreaterThan(0.1);
    expect(probabilityOf(turned, [{ kind: "element off value", element: "A-L2" }])).toBeCloseTo(one, 6);
  });

  it("gives twins the same probability, and says that they are not told apart", () => {
    const module = { banks: [bank("A", "star", 24, { elementsInParallel: 3 })] };
    const found = diagnose(asked(module, pairs([20.3, 16.2, 20.4])));
    const twins = topOf(found).slice(0, 3);
    expect(twins.map(({ faults }) => faults)).toEqual(
      [1, 2, 3].map((n) => [{ kind: "element open", element: `A-L1-${n}` }]),
    );
    expect(new Set(twins.map(({ probability }) => probability.toPrecision(9))).size).toBe(1);
    expect(found.notDetermined[0]).toContain("cannot tell apart");
  });
});

describe("readings that the circuit room makes", () => {
  const plans: readonly ModulePlan[] = [
    { banks: [bank("A", "star", 20, { elementsInParallel: 2 }), bank("B", "star", 20)], starPoints: "tied" },
    { banks: [bank("A", "delta", 20, { elementsInSeries: 2 })] },
    { banks: [bank("A", "star", 9, { elementsInSeries: 2 })], neutral: "connected" },
  ] as unknown as ModulePlan[];

  it("finds every single open element from ohms and amps, in the first group", () => {
    for (const drawn of plans) {
      for (const { id } of buildModule(drawn).elements) {
        const { network } = buildModule({ ...drawn, elements: { [id]: "open" } });
        const hot = {
          branches: network.branches.map((branch) => ({
            ...branch,
            resistance: branch.resistance === "open" ? "open" : branch.resistance * 1.04,
          })),
        } as typeof network;
        const live = energise({ network: hot, supply: balancedSupply({ lineVoltage: volts(480) as never }) });
        const readings = [
          ...pairs(
            LINES.map((from, i) => terminalResistance({ network, from, to: LINES[(i + 1) % 3] as string })),
          ),
          ...amps(LINES.map((line) => live.lines.find(({ node }) => node === line)?.current as number)),
        ];
        const instruments = {
          ohmmeter: { ...OHMMETER, leads: "taken off" },
          clamp: { ofReading: 0.02, digits: 5, resolution: 0.1 },
        };
        const found = diagnose(asked(drawn, readings, { instruments }));
        expect(found.outcome).toBe("explained");
        const named = topOf(found).map(({ faults }) => JSON.stringify(faults));
        expect(named, id).toContain(JSON.stringify([{ kind: "element open", element: id }]));
        expect(found.groups[0]?.probability, id).toBeGreaterThan(0.95);
      }
    }
  });
});

describe("contradictions", () => {
  it("finds that nothing fits when a reading is repeated and comes out otherwise", () => {
    const found = diagnose(
      asked({ banks: [bank("A", "star", 12)] }, [
        ...pairs([24.3, 24.4, 24.3]),
        reading({ kind: "resistance", from: "L1", to: "L2", reads: 27 }),
      ]),
    );
    expect(found.outcome).toBe("nothing fits");
    expect(found.groups.length).toBeGreaterThan(0);
  });

  it("finds that nothing fits when one pair is open and the other two are not", () => {
    const found = diagnose(asked({ banks: [bank("A", "star", 12)] }, pairs(["open", 24.3, 24.4])));
    expect(found.outcome).toBe("nothing fits");
  });

  it("says that there are too few readings where none is left to test with", () => {
    expect(diagnose(asked({ banks: [bank("A", "star", 12)] }, [])).outcome).toBe("too few readings");
    const insulation = reading({ kind: "insulation", from: "L1", reads: 5e7 });
    const found = diagnose(asked({ banks: [bank("A", "star", 12)] }, [insulation]));
    expect(found.outcome).toBe("too few readings");
    expect(firstFaults(found)).toEqual([]);
  });
});
