/**
 * What the room refuses: every field of every function spoiled in turn, and the error named by code and argument.
 * Valid input, however extreme, gives finite numbers. Nothing here has a published value; it is the contract of the room.
 */
import * as circuit from "electroheat/circuit";
import { isElectroheatError } from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectFinite } from "../support/close.ts";
import { absurd, expectRefusal, negative, notNames, notQuantities, spoiled, zero } from "../support/spoil.ts";

type Bad = readonly (readonly [unknown, string])[];
const positive: Bad = [...notQuantities, ...negative, ...zero, ...absurd];
const nonNegative: Bad = [...notQuantities, ...negative, ...absurd];
const optional = (bad: Bad): Bad => bad.filter(([value]) => value !== undefined);
const connections: Bad = [
  ...notNames,
  ["wye", "unknown-name"],
  ["Star", "unknown-name"],
  [1, "unknown-name"],
];
/** A rotation by another name must never be read as the reverse one. */
const rotations: Bad = [
  ["ABC", "unknown-name"],
  ["L1-L2", "unknown-name"],
  ["l1-l2-l3", "unknown-name"],
  ["", "missing"],
  [null, "missing"],
];
const counts = (low: number): Bad => [
  ...notQuantities,
  [low - 1, "out-of-range"],
  [1.5, "out-of-range"],
  [10_001, "out-of-range"],
];

const supply = {
  lines: [
    { node: "L1", voltage: { re: 277, im: 0 }, sourceResistance: 0.1 },
    { node: "L2", voltage: { re: -138, im: -240 } },
    { node: "L3", voltage: { re: -138, im: 240 } },
  ],
  lost: ["L3"],
};
const network = {
  branches: [
    { id: "A", from: "L1", to: "S", resistance: 8, role: "element" },
    { id: "B", from: "L2", to: "S", resistance: 8 },
    { id: "C", from: "L3", to: "S", resistance: "open" },
  ],
};
const plan = {
  banks: [
    { id: "A", connection: "star", elementResistance: 8, elementsInParallel: 2, elementsInSeries: 1 },
    { id: "B", connection: "star", elementResistance: 9 },
  ],
  starPoints: "tied",
  neutral: "floating",
  elements: { "A-L1-1": 7 },
  joints: [{ id: "J", at: "L1", behind: ["A-L1"], resistance: 0.01, role: "joint" }],
};

/** One function, a valid input, and what must be refused where. `argument` differs from `path` where inputs nest. */
interface Case {
  readonly call: (input: never) => unknown;
  readonly input: unknown;
  readonly fields: readonly (readonly [path: string, bad: Bad, argument?: string])[];
}

const networkFields = (within: string): Case["fields"] => [
  [`${within}branches.0.id`, notNames, "network.branches.0.id"],
  [
    `${within}branches.1.id`,
    [
      ["A", "duplicate"],
      [7, "wrong-type"],
    ],
    "network.branches.1.id",
  ],
  [`${within}branches.0.from`, notNames.filter(([value]) => value !== null), "network.branches.0.from"],
  [`${within}branches.0.from`, [[3, "wrong-type"]], "network.branches.0.from"],
  [`${within}branches.0.to`, [["L1", "inconsistent"]], "network.branches.0.to"],
  [`${within}branches.0.resistance`, nonNegative, "network.branches.0.resistance"],
  [`${within}branches.0.role`, [["heater", "unknown-name"]], "network.branches.0.role"],
  [
    `${within}branches.1`,
    [
      [null, "wrong-type"],
      ["A", "wrong-type"],
    ],
    "network.branches.1",
  ],
  [
    `${within}branches`,
    [
      [undefined, "missing"],
      [null, "missing"],
      ["A", "missing"],
    ],
    "network.branches",
  ],
];
const supplyFields: Case["fields"] = [
  [
    "supply.lines",
    [
      [undefined, "missing"],
      [[], "missing"],
      ["L1", "missing"],
    ],
  ],
  ["supply.lines.0.node", notNames],
  ["supply.lines.1.node", [["L1", "duplicate"]]],
  [
    "supply.lines.0.voltage.re",
    [
      [Number.NaN, "not-a-number"],
      [undefined, "missing"],
    ],
    "supply.lines.0.voltage",
  ],
  [
    "supply.lines.1.voltage",
    [
      [undefined, "missing"],
      [230, "missing"],
    ],
  ],
  ["supply.lines.0.sourceResistance", optional(nonNegative)],
  ["supply.lost.0", [["L9", "unknown-name"]], "supply.lost"],
];

const cases: Readonly<Record<string, Case>> = {
  lineCurrent: {
    call: circuit.lineCurrent,
    input: { power: 36_000, lineVoltage: 480 },
    fields: [
      ["power", positive],
      ["lineVoltage", positive],
    ],
  },
  threePhasePower: {
    call: circuit.threePhasePower,
    input: { lineCurrent: 40, lineVoltage: 480 },
    fields: [
      ["lineCurrent", positive],
      ["lineVoltage", positive],
    ],
  },
  powerAtVoltage: {
    call: circuit.powerAtVoltage,
    input: { power: 36_000, ratedVoltage: 480, voltage: 460 },
    fields: [
      ["power", positive],
      ["ratedVoltage", positive],
      ["voltage", positive],
    ],
  },
  branchResistance: {
    call: circuit.branchResistance,
    input: { connection: "star", power: 36_000, lineVoltage: 480 },
    fields: [
      ["connection", connections],
      ["power", positive],
      ["lineVoltage", positive],
    ],
  },
  branchVoltage: {
    call: circuit.branchVoltage,
    input: { connection: "delta", lineVoltage: 480 },
    fields: [
      ["connection", connections],
      ["lineVoltage", positive],
    ],
  },
  branchCurrent: {
    call: circuit.branchCurrent,
    input: { connection: "delta", lineCurrent: 40 },
    fields: [
      ["connection", connections],
      ["lineCurrent", positive],
    ],
  },
  healthyLineToLineResistance: {
    call: circuit.healthyLineToLineResistance,
    input: { power: 36_000, lineVoltage: 480 },
    fields: [
      ["power", positive],
      ["lineVoltage", positive],
    ],
  },
  starWithOpenElements: {
    call: circuit.starWithOpenElements,
    input: { elementsInParallel: 3, open: 1 },
    fields: [
      ["elementsInParallel", counts(1)],
      ["open", [...counts(0), [4, "out-of-range"]]],
    ],
  },
  deltaWithOpenElements: {
    call: circuit.deltaWithOpenElements,
    input: { elementsInParallel: 3, open: 1 },
    fields: [
      ["elementsInParallel", counts(1)],
      ["open", [...counts(0), [4, "out-of-range"]]],
    ],
  },
  balancedSupply: {
    call: circuit.balancedSupply,
    input: { lineVoltage: 480, rotation: "L1-L2-L3", sourceResistance: 0.1 },
    fields: [
      ["lineVoltage", positive],
      ["rotation", rotations],
      ["sourceResistance", optional(nonNegative)],
    ],
  },
  supplyFromLineVoltages: {
    call: circuit.supplyFromLineVoltages,
    input: { v12: 480, v23: 470, v31: 465, rotation: "L1-L3-L2" },
    fields: [
      ["rotation", rotations],
      ["v12", [...positive, [936, "inconsistent"]]],
      ["v23", positive],
      ["v31", positive],
    ],
  },
  supplyFromNeutralVoltages: {
    call: circuit.supplyFromNeutralVoltages,
    input: { voltages: [230, 231, 229], degrees: [0, -120, 120] },
    fields: [
      ["voltages", notNames.filter(([value]) => value !== "")],
      ["voltages.1", nonNegative],
      ["degrees.2", notQuantities],
    ],
  },
  withoutLines: {
    call: circuit.withoutLines,
    input: { supply, lines: ["L1"] },
    fields: [
      ["lines.0", [["L9", "unknown-name"]], "lines"],
      ["lines", notNames],
      ["supply", notNames],
    ],
  },
  deltaFromStar: {
    call: circuit.deltaFromStar,
    input: { r1: 0, r2: 2, r3: "open" },
    fields: [
      ["r1", nonNegative],
      ["r2", nonNegative],
      ["r3", nonNegative],
      ["r2", [[0, "inconsistent"]], "star"],
    ],
  },
  starFromDelta: {
    call: circuit.starFromDelta,
    input: { r12: 1, r23: "open", r31: 0 },
    fields: [
      ["r12", nonNegative],
      ["r23", nonNegative],
      ["r31", nonNegative],
    ],
  },
  starFromDeltaImpedance: {
    call: circuit.starFromDeltaImpedance,
    input: { r12: { re: 1, im: 2 }, r23: { re: 1, im: -2 }, r31: { re: 0, im: 1 } },
    fields: [
      [
        "r12",
        [
          [undefined, "missing"],
          [{ re: Number.NaN, im: 0 }, "not-a-number"],
        ],
      ],
      ["r31", [[{ re: 1e31, im: 0 }, "out-of-range"]]],
      ["r31", [[{ re: -2, im: 0 }, "inconsistent"]], "delta"],
    ],
  },
  deltaFromStarImpedance: {
    call: circuit.deltaFromStarImpedance,
    input: { r1: { re: 1, im: 2 }, r2: { re: 1, im: -2 }, r3: { re: 0, im: 1 } },
    fields: [
      [
        "r1",
        [
          [undefined, "missing"],
          [{ re: 0, im: 0 }, "inconsistent"],
          [{ re: 5e-324, im: 0 }, "out-of-range"],
        ],
      ],
      ["r3", [[{ re: 0, im: Number.POSITIVE_INFINITY }, "not-a-number"]]],
    ],
  },
  symmetricalComponents: {
    call: circuit.symmetricalComponents,
    input: [
      { re: 1, im: 0 },
      { re: 0, im: 1 },
      { re: 0, im: 0 },
    ],
    fields: [
      [
        "0.re",
        [
          [Number.NaN, "not-a-number"],
          ["1", "not-a-number"],
        ],
        "phasors.0",
      ],
      ["2", [[undefined, "missing"]], "phasors.2"],
    ],
  },
  unbalance: {
    call: circuit.unbalance,
    input: { l1: 480, l2: 470, l3: 465 },
    fields: [
      ["l1", nonNegative],
      ["l2", nonNegative],
      ["l3", nonNegative],
    ],
  },
  branchesFromLineCurrents: {
    call: circuit.branchesFromLineCurrents,
    input: {
      connection: "delta",
      v12: 480,
      v23: 470,
      v31: 465,
      l1: 63.9,
      l2: 64.4,
      l3: 61.2,
      accuracy: 0.02,
    },
    fields: [
      ["connection", connections],
      ["v12", [...positive, [936, "inconsistent"], [5, "inconsistent"]]],
      ["v23", positive],
      ["v31", positive],
      ["l1", nonNegative],
      ["l2", nonNegative],
      ["l3", nonNegative],
      ["accuracy", optional([...notQuantities, ...negative, [0.201, "out-of-range"], [2, "out-of-range"]])],
    ],
  },
  unbalanceByDefinition: {
    call: circuit.unbalanceByDefinition,
    input: { l1: 480, l2: 470, l3: 465, measured: "line voltages" },
    fields: [
      ["l1", nonNegative],
      ["l2", nonNegative],
      ["l3", nonNegative],
      [
        "measured",
        [
          [undefined, "missing"],
          ["", "missing"],
          ["phase voltages", "unknown-name"],
        ],
      ],
    ],
  },
  energise: {
    call: circuit.energise,
    input: { network, supply },
    fields: [...networkFields("network."), ...supplyFields],
  },
  terminalResistance: {
    call: circuit.terminalResistance,
    input: { network, from: "L1", to: "L2" },
    fields: [
      ...networkFields("network."),
      [
        "from",
        [
          ["L9", "unknown-name"],
          [undefined, "unknown-name"],
        ],
      ],
      [
        "to",
        [
          ["L9", "unknown-name"],
          ["L1", "inconsistent"],
        ],
      ],
    ],
  },
  checkNetwork: { call: circuit.checkNetwork, input: network, fields: networkFields("") },
  withResistance: {
    call: circuit.withResistance,
    input: { network, id: "A", resistance: 7 },
    fields: [
      [
        "id",
        [
          ["Z", "unknown-name"],
          [undefined, "unknown-name"],
        ],
      ],
      ["resistance", nonNegative],
    ],
  },
  withJoint: {
    call: circuit.withJoint,
    input: { network, at: "L1", id: "J", resistance: 0.1, behind: ["A"] },
    fields: [
      ["at", [["L2", "inconsistent"]], "behind"],
      ["", [[{ network, at: "S", id: "J", resistance: 0.1 }, "inconsistent"]], "behind"],
      ["behind", [[["Z"], "inconsistent"]]],
      ["id", [...notNames, ["A", "duplicate"]]],
      ["resistance", nonNegative],
      ["role", [["lug", "unknown-name"]]],
    ],
  },
  faultEffect: {
    call: circuit.faultEffect,
    input: { network, supply: { lines: supply.lines }, faults: [{ kind: "open", id: "A" }] },
    fields: [
      [
        "faults",
        [
          [[], "missing"],
          [undefined, "missing"],
        ],
      ],
      [
        "faults.0.kind",
        [
          ["burnt", "unknown-name"],
          [undefined, "missing"],
        ],
      ],
      ["faults.0.id", [["Z", "unknown-name"]]],
      ["faults.0", [[{ kind: "lost line", line: "L9" }, "unknown-name"]], "faults.0.line"],
      [
        "faults",
        [
          [
            [
              { kind: "open", id: "A" },
              { kind: "short", id: "A" },
            ],
            "duplicate",
          ],
        ],
        "faults.1",
      ],
      ["supply.lost", [[["L1", "L2"], "inconsistent"]], "network"],
    ],
  },
  faultScan: {
    call: circuit.faultScan,
    input: { network, supply: { lines: supply.lines }, kinds: ["open"], depth: 1 },
    fields: [
      ["kinds.0", [["lost line", "unknown-name"]]],
      ["kinds", [["open", "missing"]]],
      [
        "survivors",
        [
          ["none", "unknown-name"],
          [null, "missing"],
        ],
      ],
      [
        "depth",
        [
          [3, "out-of-range"],
          [0, "out-of-range"],
          [1.5, "out-of-range"],
        ],
      ],
    ],
  },
  buildModule: {
    call: circuit.buildModule,
    input: plan,
    fields: [
      [
        "banks",
        [
          [[], "missing"],
          [undefined, "missing"],
        ],
      ],
      ["banks.0.id", notNames],
      ["banks.1.id", [["A", "duplicate"]]],
      ["banks.0.connection", connections],
      ["banks.0.elementResistance", positive],
      ["banks.0.elementsInParallel", optional(counts(1)).filter(([value]) => value !== null)],
      ["banks.0.elementsInSeries", optional(counts(1)).filter(([value]) => value !== null)],
      [
        "starPoints",
        [
          [undefined, "missing"],
          ["joined", "unknown-name"],
        ],
      ],
      ["neutral", [["earthed", "unknown-name"]]],
      ["elements.A-L1-1", nonNegative],
      ["elements", [[{ "A-L9": 5 }, "unknown-name"]], "elements.A-L9"],
      ["joints.0.id", [...notNames, ["A-L1-1", "duplicate"]]],
      ["joints.0.at", [["L2", "unknown-name"]], "joints.0.behind.0"],
      ["joints.0", [[{ id: "J", at: "L9", resistance: 0.01 }, "unknown-name"]], "joints.0.at"],
      ["joints.0.resistance", nonNegative],
      ["joints.0.role", [["bolt", "unknown-name"]]],
      ["joints.0.behind.0", [["C", "unknown-name"]]],
      ["joints.0", [[{ id: "J", at: "S", resistance: 0.01 }, "inconsistent"]], "joints.0.behind"],
      [
        "joints.0",
        [[{ id: "J", at: "S", behind: ["A", "B"], resistance: 0.01 }, "inconsistent"]],
        "joints.0.behind",
      ],
    ],
  },
  reconnected: {
    call: circuit.reconnected,
    input: { plan, connection: "delta", bank: "A" },
    fields: [
      ["connection", connections],
      ["bank", [["Z", "unknown-name"]]],
    ],
  },
};

describe.each(Object.entries(cases))("%s", (name, { call, input, fields }) => {
  const run = (value: unknown): unknown => call(value as never);

  it("takes the input that the others are made from", () => {
    expect(() => run(input)).not.toThrow();
  });

  it("refuses a call without its argument, or with another kind of one, by name", () => {
    for (const nothing of [undefined, null]) {
      let thrown: unknown;
      try {
        run(nothing);
      } catch (error) {
        thrown = error;
      }
      expect(isElectroheatError(thrown) && thrown.code, `${name}(${nothing}): ${thrown}`).toBe("missing");
    }
    for (const other of [7, "L1", true, () => 1]) {
      expect(() => run(other), `${name}(${other})`).toThrow(
        expect.objectContaining({ name: "ElectroheatError" }),
      );
    }
  });

  it.each(fields.map(([path, bad, argument = path]) => [path, bad, argument] as const))(
    "refuses bad values of %s",
    (path, bad, argument) => {
      for (const [value, code] of bad) {
        expectRefusal(
          () => run(spoiled(input, path, value)),
          code,
          argument,
          `${name} ${path} = ${typeof value === "bigint" ? `${value}n` : JSON.stringify(value)} (${String(value)})`,
        );
      }
    },
  );
});

describe("extremes within the bounds", () => {
  const extreme = fc.constantFrom(1e-30, 1e-15, 1e-6, 1, 1e6, 1e15, 1e30);
  const resistance = fc.oneof(extreme, fc.constantFrom(0, "open"));

  /** Either finite numbers or a typed refusal. */
  function expectSound(call: () => unknown, message: string): void {
    let result: unknown;
    try {
      result = call();
    } catch (error) {
      expect(isElectroheatError(error), `${message}: ${String(error)}`).toBe(true);
      return;
    }
    expectFinite(result, message);
  }

  it("give finite numbers from every formula", () => {
    fc.assert(
      fc.property(extreme, extreme, extreme, (a, b, c) => {
        const shown = `${a} ${b} ${c}`;
        const formulas: (() => unknown)[] = [
          () => circuit.lineCurrent({ power: a, lineVoltage: b } as never),
          () => circuit.threePhasePower({ lineCurrent: a, lineVoltage: b } as never),
          () => circuit.powerAtVoltage({ power: a, ratedVoltage: b, voltage: c } as never),
          () => circuit.branchResistance({ connection: "delta", power: a, lineVoltage: b } as never),
          () => circuit.healthyLineToLineResistance({ power: a, lineVoltage: b } as never),
        ];
        for (const formula of formulas) expectFinite(formula(), shown);
        expectSound(() => circuit.unbalance({ l1: a, l2: b, l3: c }), shown);
        expectSound(() => circuit.supplyFromLineVoltages({ v12: a, v23: b, v31: c } as never), shown);
        for (const connection of ["star", "delta"]) {
          const currents = { connection, v12: a, v23: a, v31: a, l1: b, l2: c, l3: c, accuracy: 0.02 };
          expectSound(() => circuit.branchesFromLineCurrents(currents as never), shown);
        }
        const phasors = [
          { re: a, im: -b },
          { re: -b, im: c },
          { re: c, im: a },
        ] as const;
        expectSound(() => circuit.symmetricalComponents(phasors), shown);
        expectSound(() => circuit.negativeSequenceRatio(phasors), shown);
        const [r1, r2, r3] = phasors;
        expectSound(() => circuit.deltaFromStarImpedance({ r1, r2, r3 }), shown);
        expectSound(() => circuit.starFromDeltaImpedance({ r12: r1, r23: r2, r31: r3 }), shown);
      }),
      { numRuns: 1000 },
    );
  });

  it("give finite numbers from every network, transform, fault and reading", () => {
    fc.assert(
      fc.property(
        fc.array(resistance, { minLength: 7, maxLength: 7 }),
        extreme,
        fc.boolean(),
        (r, lineVoltage, sourced) => {
          const ends = [
            ["L1", "S"],
            ["L2", "S"],
            ["L3", "S"],
            ["L1", "L2"],
            ["S", "T"],
            ["T", "L3"],
            ["S", "T"],
          ] as const;
          const branches = ends.map(([from, to], i) => ({ id: `b${i}`, from, to, resistance: r[i] }));
          const case_ = {
            network: { branches },
            supply: circuit.balancedSupply({
              lineVoltage,
              ...(sourced && { sourceResistance: 1e-3 }),
            } as never),
          } as never as Parameters<typeof circuit.energise>[0];
          const shown = JSON.stringify([r, lineVoltage, sourced]);
          expectSound(() => circuit.energise(case_), shown);
          expectSound(() => circuit.terminalReading({ network: case_.network, from: "L1", to: "T" }), shown);
          expectSound(() => circuit.faultScan({ ...case_, kinds: ["open", "short"], depth: 2 }), shown);
          expectSound(() => circuit.deltaFromStar({ r1: r[0], r2: r[1], r3: r[2] } as never), shown);
          expectSound(() => circuit.starFromDelta({ r12: r[0], r23: r[1], r31: r[2] } as never), shown);
        },
      ),
      { numRuns: 1000 },
    );
  });
});
