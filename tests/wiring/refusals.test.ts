/**
 * What the room refuses: every field of every function spoiled in turn, and the error named by code and argument. Nothing here
 * has a published value; it is the contract of the room.
 */
import * as wiring from "electroheat/wiring";
import { describe, expect, it } from "vitest";
import { expectFinite } from "../support/close.ts";
import { absurd, expectRefusal, negative, notNames, notQuantities, spoiled, zero } from "../support/spoil.ts";

type Bad = readonly (readonly [unknown, string])[];
const positive: Bad = [...notQuantities, ...negative, ...zero, ...absurd];
const optional = (bad: Bad): Bad => bad.filter(([value]) => value !== undefined);
const orZero: Bad = [...notQuantities, ...negative, ...absurd];
const temperature: Bad = [...notQuantities, [-274, "out-of-range"], [3001, "out-of-range"]];
const names: Bad = [...notNames, ["nothing of the kind", "unknown-name"]];
const sizes: Bad = [
  ...notNames.filter(([value]) => value !== null),
  ["10", "ambiguous"],
  ["5 AWG", "unknown-name"],
  ["ten AWG", "malformed-text"],
  ["   ", "missing"],
  [10, "wrong-type"],
];
const counts: Bad = [
  [0, "out-of-range"],
  [1.5, "out-of-range"],
  [-3, "out-of-range"],
  ["3", "not-a-number"],
  [null, "missing"],
  [Number.NaN, "not-a-number"],
];
/** Of conductors in parallel; one may be left out. */
const perLine: Bad = [...counts, [101, "out-of-range"]];
const necEdition: Bad = [...notNames.filter(([value]) => value !== null), ["NEC 1999", "unknown-name"]];

const run = {
  edition: "NEC 2023",
  installation: "raceway",
  material: "copper",
  insulationTemperature: 90,
  ambient: 35,
  currentCarryingConductors: 3,
  terminalTemperature: 75,
};
const runFields: readonly (readonly [string, Bad, string?])[] = [
  ["edition", necEdition],
  ["installation", names],
  ["material", names],
  [
    "insulationTemperature",
    [
      [91, "unknown-name"],
      [undefined, "missing"],
    ],
  ],
  ["ambient", [...temperature.filter(([value]) => value !== 3001), [90, "out-of-range"]]],
  ["ambientBase", [[40, "inconsistent"]]],
  ["ambientBy", [["guess", "unknown-name"]]],
  ["currentCarryingConductors", counts],
  ["conductorsPerLine", perLine],
  ["terminalTemperature", [...temperature, [70, "unknown-name"]]],
];
const cable = {
  edition: "IEC 60364-5-52:2009",
  method: "B2",
  loadedConductors: 3,
  insulation: "PVC",
  material: "copper",
  ambient: 35,
  circuits: 2,
  arrangement: "bunched",
};
const cableFields: readonly (readonly [string, Bad, string?])[] = [
  ["edition", [...necEdition, ["NEC 2023", "unknown-name"]]],
  ["method", names],
  [
    "loadedConductors",
    [
      [4, "unknown-name"],
      [undefined, "missing"],
    ],
  ],
  ["insulation", names],
  ["material", names],
  [
    "ambient",
    [...temperature.filter(([value]) => value !== 3001), [70, "out-of-range"], [5, "outside-table"]],
  ],
  ["ambientBase", [[40, "inconsistent"]]],
  ["circuits", [...counts, [21, "outside-table"]]],
  ["conductorsPerLine", perLine],
  ["arrangement", names],
  ["grouping", [["other", "unknown-name"]]],
];

interface Case {
  readonly call: (input: never) => unknown;
  readonly input: unknown;
  readonly fields: readonly (readonly [path: string, bad: Bad, argument?: string])[];
}

const cases: Readonly<Record<string, Case>> = {
  tableAmpacity: {
    call: wiring.tableAmpacity,
    input: { ...run, size: "6 AWG" },
    fields: [...runFields.slice(0, 4), ["size", sizes]],
  },
  ampacityEditions: {
    call: wiring.ampacityEditions,
    input: { ...run, size: "6 AWG", ampacity: 75 },
    fields: [
      ["installation", names],
      ["material", names],
      ["size", sizes],
      ["ampacity", positive],
    ],
  },
  ambientFactor: {
    call: wiring.ambientFactor,
    input: { edition: "NEC 2023", baseAmbient: 30, insulationTemperature: 75, ambient: 41 },
    fields: [
      ["edition", necEdition],
      [
        "baseAmbient",
        [
          [25, "unknown-name"],
          [undefined, "missing"],
        ],
      ],
      ["insulationTemperature", [...notQuantities, [150, "unknown-name"]]],
      ["ambient", [...notQuantities, [75, "out-of-range"], [-280, "out-of-range"]]],
      ["by", [["law", "unknown-name"]]],
    ],
  },
  conductorCountFactor: {
    call: wiring.conductorCountFactor,
    input: { edition: "NEC 2023", currentCarryingConductors: 7 },
    fields: [
      ["edition", necEdition],
      ["currentCarryingConductors", counts],
    ],
  },
  terminationTemperature: {
    call: wiring.terminationTemperature,
    input: { edition: "NEC 2023", circuitRating: 60 },
    fields: [
      ["edition", necEdition],
      ["circuitRating", positive],
    ],
  },
  conductorAmpacity: {
    call: wiring.conductorAmpacity,
    input: { ...run, size: "6 AWG" },
    fields: [...runFields, ["size", sizes]],
  },
  standardDevice: {
    call: wiring.standardDevice,
    input: { edition: "NEC 2023", current: 41, direction: "up" },
    fields: [
      ["edition", necEdition],
      ["current", [...positive, [6001, "outside-table"]]],
      ["direction", names],
    ],
  },
  largestDevice: {
    call: wiring.largestDevice,
    input: { edition: "NEC 2023", size: "6 AWG", material: "copper", ampacity: 65 },
    fields: [
      ["edition", necEdition],
      ["size", sizes.filter(([, code]) => code !== "unknown-name")],
      ["material", names],
      ["ampacity", positive],
    ],
  },
  largestApplianceDevice: {
    call: wiring.largestApplianceDevice,
    input: { edition: "NEC 2023", current: 18.75 },
    fields: [
      ["edition", necEdition],
      ["current", [...positive, [13.3, "out-of-range"], [5000, "outside-table"]]],
    ],
  },
  designCurrent: {
    call: wiring.designCurrent,
    input: {
      edition: "NEC 2023",
      equipment: "machine",
      heaterCurrent: [7, 7],
      motorCurrent: 3,
      noncontinuousCurrent: 2,
    },
    fields: [
      ["edition", necEdition],
      ["equipment", names],
      ["heaterCurrent.0", orZero],
      [
        "heaterCurrent",
        [
          [undefined, "missing"],
          [-1, "out-of-range"],
          ["7", "not-a-number"],
        ],
      ],
      ["motorCurrent", optional(orZero).filter(([value]) => !Array.isArray(value))],
      ["noncontinuousCurrent", optional(orZero).filter(([value]) => !Array.isArray(value))],
    ],
  },
  subdivision: {
    call: wiring.subdivision,
    input: { edition: "NEC 2023", equipment: "space heating", current: 108 },
    fields: [
      ["edition", necEdition],
      ["equipment", names],
      ["current", positive],
      ["circuits", [[2, "inconsistent"], ...counts.filter(([value]) => value !== null)]],
    ],
  },
  conductorForLoad: {
    call: wiring.conductorForLoad,
    input: { ...run, equipment: "space heating", heaterCurrent: 40 },
    fields: [
      ...runFields,
      ["equipment", names],
      ["heaterCurrent", [...positive.filter(([value]) => typeof value !== "object"), [600, "outside-table"]]],
    ],
  },
  loadForConductor: {
    call: wiring.loadForConductor,
    input: { ...run, equipment: "space heating", size: "4 AWG", device: 70 },
    fields: [
      ...runFields.filter(([path]) => path !== "ambient"),
      ["equipment", names],
      ["size", sizes],
      ["device", [...optional(positive), [100, "inconsistent"]]],
    ],
  },
  ambientForConductor: {
    call: wiring.ambientForConductor,
    input: { ...run, equipment: "space heating", heaterCurrent: 40, size: "4 AWG", device: 60 },
    fields: [
      ...runFields.filter(([path]) => !path.startsWith("ambient")),
      ["equipment", names],
      ["heaterCurrent", positive.filter(([value]) => typeof value !== "object")],
      ["size", [...sizes, ["14 AWG", "inconsistent"]]],
      ["device", [...optional(positive), [40, "inconsistent"]]],
    ],
  },
  ambientForCable: {
    call: wiring.ambientForCable,
    input: { ...cable, size: "16 mm²", designCurrent: 30, deviceKind: "circuit-breaker", device: 32 },
    fields: [
      ...cableFields.filter(([path]) => !path.startsWith("ambient")),
      ["designCurrent", positive],
      ["deviceKind", names],
      ["size", [...sizes, ["1.5 mm²", "inconsistent"]]],
      [
        "device",
        [
          [33, "outside-table"],
          [25, "inconsistent"],
        ],
      ],
    ],
  },
  lugFit: {
    call: wiring.lugFit,
    input: {
      ...run,
      size: "4 AWG",
      designCurrent: 60,
      lug: { smallest: "14 AWG", largest: "1/0 AWG", materials: ["copper"], temperature: 75, current: 85 },
    },
    fields: [
      [
        "lug",
        [
          [undefined, "missing"],
          [null, "missing"],
        ],
      ],
      ["lug.smallest", sizes.filter(([, code]) => code !== "unknown-name")],
      ["lug.largest", [["16 AWG", "inconsistent"]]],
      ["lug.current", optional(positive)],
      ["lug.temperature", temperature],
      ["designCurrent", positive],
      ["size", sizes.filter(([, code]) => code !== "unknown-name")],
    ],
  },
  conductorResistancePerLength: {
    call: wiring.conductorResistancePerLength,
    input: { edition: "NEC 2023", size: "10 AWG", build: "solid", metal: "aluminum", temperature: 40 },
    fields: [
      ["edition", names],
      [
        "size",
        sizes.map(([value, code]) => [value, code === "unknown-name" ? "outside-table" : code] as const),
      ],
      ["build", names],
      ["metal", names],
      ["temperature", [...notQuantities, [151, "out-of-range"], [-51, "out-of-range"]]],
    ],
  },
  shortCircuitSection: {
    call: wiring.shortCircuitSection,
    input: { current: 6000, time: 0.1, material: "copper", initialTemperature: 70, finalTemperature: 160 },
    fields: [
      ["current", positive],
      ["time", positive],
      ["material", names],
      ["initialTemperature", [...notQuantities, [-61, "out-of-range"], [501, "out-of-range"]]],
      ["initialTemperature", [[160, "out-of-range"]], "finalTemperature"],
      [
        "finalTemperature",
        [...notQuantities, [70, "out-of-range"], [69, "out-of-range"], [501, "out-of-range"]],
      ],
    ],
  },
  faultCurrent: {
    call: wiring.faultCurrent,
    input: {
      lineVoltage: 480,
      transformerRating: 5e5,
      transformerImpedance: 0.05,
      transformerResistance: 0.01,
      transformerVoltage: 490,
      impedanceFactor: 0.9,
      networkFaultPower: 2e8,
      voltageFactor: 1.05,
      length: 30,
      resistancePerLength: 2e-4,
      reactancePerLength: 1e-4,
      conductorsPerLine: 2,
    },
    fields: [
      ["lineVoltage", positive],
      ["transformerRating", positive],
      ["transformerImpedance", [...positive, [0.0009, "out-of-range"], [0.51, "out-of-range"]]],
      [
        "transformerResistance",
        [...optional(notQuantities), ...negative, [0.051, "inconsistent"], [0.51, "out-of-range"]],
      ],
      ["transformerVoltage", optional(positive)],
      ["impedanceFactor", [...optional(positive), [0.49, "out-of-range"], [1.51, "out-of-range"]]],
      ["networkFaultPower", optional(positive)],
      ["voltageFactor", [...optional(positive), [0.79, "out-of-range"], [1.21, "out-of-range"]]],
      ["length", optional(orZero)],
      ["resistancePerLength", orZero],
      ["reactancePerLength", optional(orZero)],
      ["conductorsPerLine", perLine],
    ],
  },
  interruptingVerdict: {
    call: wiring.interruptingVerdict,
    input: {
      edition: "NEC 2023",
      availableCurrent: 9900,
      halfWidth: 50,
      interruptingRating: 10_000,
      markedVoltage: 480,
      circuitVoltage: 480,
    },
    fields: [
      ["edition", names],
      ["availableCurrent", positive],
      ["halfWidth", optional(orZero)],
      ["interruptingRating", positive],
      ["markedVoltage", positive],
      ["circuitVoltage", positive],
    ],
  },
  earthFaultLoop: {
    call: wiring.earthFaultLoop,
    input: {
      voltageToEarth: 230,
      sourceResistance: 0.3,
      sourceReactance: 0.1,
      length: 40,
      lineResistancePerLength: 0.002,
      protectiveResistancePerLength: 0.004,
      lineReactancePerLength: 1e-4,
      protectiveReactancePerLength: 1e-4,
      conductorsPerLine: 2,
      protectiveConductors: 2,
      voltageFactor: 0.95,
    },
    fields: [
      ["voltageToEarth", positive],
      ["sourceResistance", orZero],
      ["sourceReactance", optional(orZero)],
      ["length", orZero],
      ["lineResistancePerLength", orZero],
      ["protectiveResistancePerLength", orZero],
      ["lineReactancePerLength", optional(orZero)],
      ["protectiveReactancePerLength", optional(orZero)],
      ["conductorsPerLine", perLine],
      ["protectiveConductors", perLine],
      ["voltageFactor", [...optional(positive), [0.79, "out-of-range"], [1.21, "out-of-range"]]],
    ],
  },
  disconnectionTime: {
    call: wiring.disconnectionTime,
    input: { system: "TN", voltageToEarth: 230, circuit: "final to 32 A" },
    fields: [
      ["system", names],
      ["voltageToEarth", [...positive, [50, "outside-table"], [12, "outside-table"]]],
      ["circuit", names],
    ],
  },
  earthFaultVerdict: {
    call: wiring.earthFaultVerdict,
    input: {
      impedance: 0.5,
      halfWidth: 0.02,
      trippingCurrent: 320,
      voltageToEarth: 230,
      voltageFactor: 0.95,
    },
    fields: [
      ["impedance", positive],
      ["halfWidth", optional(orZero)],
      ["trippingCurrent", positive],
      ["voltageToEarth", positive],
      ["voltageFactor", [...optional(positive), [0.79, "out-of-range"], [1.21, "out-of-range"]]],
    ],
  },
  groundingConductor: {
    call: wiring.groundingConductor,
    input: { edition: "NEC 2023", device: 60, material: "copper", installed: "4 AWG", needed: "6 AWG" },
    fields: [
      ["edition", names],
      ["device", [...positive, [1601, "outside-table"]]],
      ["material", names],
      ["installed", sizes],
      ["needed", optional(sizes)],
      ["needed", [["3 AWG", "inconsistent"]]],
    ],
  },
  protectiveConductor: {
    call: wiring.protectiveConductor,
    input: { lineSection: 25e-6, laid: "with the lines" },
    fields: [
      ["lineSection", positive],
      ["laid", names],
    ],
  },
  voltageDrop: {
    call: wiring.voltageDrop,
    input: {
      circuit: "two-wire",
      current: 10,
      length: 20,
      resistancePerLength: 0.001,
      reactancePerLength: 0.0001,
      powerFactor: 0.9,
      supplyVoltage: 230,
    },
    fields: [
      ["circuit", names],
      ["current", orZero],
      ["length", orZero],
      [
        "resistancePerLength",
        [...orZero, [10, "out-of-range", "drop"] as never].filter(([value]) => value !== 10),
      ],
      ["reactancePerLength", optional(orZero).filter(([value]) => value !== null)],
      [
        "powerFactor",
        [
          [1.1, "out-of-range"],
          [-0.1, "out-of-range"],
          ["1", "not-a-number"],
        ],
      ],
      ["supplyVoltage", positive],
    ] as Case["fields"],
  },
  insulationType: {
    call: wiring.insulationType,
    input: { edition: "NEC 2023", type: "SA" },
    fields: [
      ["edition", names],
      ["type", names.filter(([value]) => value === undefined || value === "nothing of the kind")],
    ],
  },
  namedWireAmpacity: {
    call: wiring.namedWireAmpacity,
    input: { table: "wire maker, 30 °C", column: "200", size: "14 AWG", ambient: 90, insulation: "200" },
    fields: [
      ["table", names],
      ["column", names],
      ["size", sizes],
      ["ambient", [...temperature, [201, "outside-table"], [20, "outside-table"]]],
      [
        "insulation",
        [
          ["nothing of the kind", "unknown-name"],
          ["150", "inconsistent"],
        ],
      ],
    ],
  },
  cableCapacity: {
    call: wiring.cableCapacity,
    input: { ...cable, size: "16 mm²" },
    fields: [...cableFields, ["size", sizes]],
  },
  cableForLoad: {
    call: wiring.cableForLoad,
    input: { ...cable, designCurrent: 30, deviceKind: "gG fuse" },
    fields: [
      ...cableFields,
      ["designCurrent", [...positive, [1300, "outside-table"]]],
      ["deviceKind", names],
      [
        "device",
        [
          [33, "outside-table"],
          [25, "inconsistent"],
        ],
      ],
    ],
  },
  loadForCable: {
    call: wiring.loadForCable,
    input: { ...cable, size: "16 mm²", deviceKind: "circuit-breaker" },
    fields: [
      ...cableFields,
      ["size", sizes],
      ["deviceKind", names],
      [
        "device",
        [
          [63, "inconsistent"],
          [33, "outside-table"],
        ],
      ],
    ],
  },
  cableAmbientFactor: {
    call: wiring.cableAmbientFactor,
    input: { edition: "BS 7671:2008", insulation: "XLPE", ambient: 40, baseAmbient: 30 },
    fields: [
      ["edition", [...necEdition, ["IEC 60364-5-52:2001", "unknown-name"]]],
      ["insulation", names],
      ["ambient", [...notQuantities, [90, "out-of-range"], [20, "outside-table"], [82, "outside-table"]]],
      [
        "baseAmbient",
        [
          [40, "inconsistent"],
          [undefined, "missing"],
        ],
      ],
      ["by", [["law", "unknown-name"]]],
    ],
  },
  groupingFactor: {
    call: wiring.groupingFactor,
    input: { edition: "BS 7671:2008", arrangement: "bunched", circuits: 3 },
    fields: [
      ["edition", [...necEdition, ["IEC 60204-1:2005", "unknown-name"]]],
      ["arrangement", names],
      ["circuits", [...counts, [21, "outside-table"]]],
      ["grouping", [["other", "unknown-name"]]],
    ],
  },
  insulationOfGroup: {
    call: wiring.insulationOfGroup,
    input: { each: 2e7, count: 12 },
    fields: [
      ["each", positive],
      ["count", counts],
    ],
  },
  insulationLeakage: {
    call: wiring.insulationLeakage,
    input: { voltage: 277, resistance: 3e6 },
    fields: [
      ["voltage", orZero],
      ["resistance", positive],
    ],
  },
  insulationVerdicts: {
    call: wiring.insulationVerdicts,
    input: {
      resistance: 3e6,
      nominalVoltage: 480,
      testVoltage: 500,
      temperature: 20,
      criteria: [
        "maker element",
        { name: "own", minimum: 1e6, of: "element", source: "manual", testVoltage: 500 },
      ],
    },
    fields: [
      ["resistance", positive],
      ["nominalVoltage", positive],
      ["testVoltage", positive],
      ["temperature", temperature],
      ["elementsInParallel", counts.filter(([value]) => value !== null)],
      [
        "criteria",
        [
          [undefined, "missing"],
          [[], "missing"],
        ],
      ],
      ["criteria.0", names],
      ["criteria.1.minimum", positive],
      ["criteria.1.name", notNames],
      ["criteria.1.source", notNames],
      ["criteria.1.of", names],
      ["criteria.1.testVoltage", optional(positive)],
    ],
  },
  insulationAt20: {
    call: wiring.insulationAt20,
    input: { resistance: 1e9, temperature: 35, insulation: "solid" },
    fields: [
      ["resistance", positive],
      ["temperature", [...notQuantities, [-1, "out-of-range"], [81, "out-of-range"], [36, "outside-table"]]],
      ["insulation", names],
      ["by", [["guess", "unknown-name"]]],
    ],
  },
  leakageLimit: {
    call: wiring.leakageLimit,
    input: { appliance: "class II", power: 2000 },
    fields: [
      ["appliance", names],
      ["power", positive],
    ],
  },
  editionJsonSchema: {
    call: wiring.editionJsonSchema,
    input: { system: "IEC" },
    fields: [["system", names]],
  },
  acceptanceTable: {
    call: wiring.acceptanceTable,
    input: { table: "neta-100.18" },
    fields: [["table", names]],
  },
  terminalTorque: {
    call: wiring.terminalTorque,
    input: {
      drive: { kind: "slotted", screw: "smaller than No. 10", slotWidth: 0.001, slotLength: 0.005 },
      size: "10 AWG",
    },
    fields: [
      [
        "drive",
        [
          [undefined, "missing"],
          [null, "missing"],
          ["split bolt", "wrong-type"],
        ],
      ],
      ["drive.kind", names],
      ["drive.screw", names],
      ["drive.slotWidth", [...positive, [0.2, "out-of-range"], [9e-5, "out-of-range"]]],
      ["drive.slotLength", [...positive, [5, "out-of-range"], [9e-4, "out-of-range"]]],
      ["drive", [[{ kind: "recessed socket", acrossFlats: 5 }, "out-of-range"]], "drive.acrossFlats"],
      ["drive", [[{ kind: "recessed socket" }, "missing"]], "drive.acrossFlats"],
      [
        "size",
        [
          ...notNames.filter(([value]) => value !== null),
          ["10", "ambiguous"],
          ["7 AWG", "unknown-name"],
          ["ten AWG", "malformed-text"],
          [10, "wrong-type"],
          ["6 AWG", "outside-table"],
        ],
      ],
      ["maker", [[null, "wrong-type"]]],
      ["maker", [[{ source: "label" }, "missing"]], "maker.torque"],
      ["maker", positive.map(([torque, code]) => [{ torque, source: "label" }, code]), "maker.torque"],
      ["maker", [[{ torque: 2, source: " " }, "missing"]], "maker.source"],
    ],
  },
  polarizationIndex: {
    call: wiring.polarizationIndex,
    input: { oneMinute: 1e7, tenMinutes: 2e7 },
    fields: [
      ["oneMinute", positive],
      ["tenMinutes", positive],
    ],
  },
};

describe.each(Object.entries(cases))("%s", (_, { call, input, fields }) => {
  it("takes the valid input, and its result is plain and finite", () => {
    expectFinite(call(input as never), "valid");
  });

  it.each(fields.map(([path, bad, argument]) => [path, bad, argument ?? path] as const))(
    "refuses a spoiled %s",
    (path, bad, argument) => {
      for (const [value, code] of bad) {
        const message = `${path} = ${String(value)}`;
        expectRefusal(() => call(spoiled(input, path, value) as never), code, argument, message);
      }
    },
  );
});

it("every function of the room is spoiled here, but for two that take a list or nothing", () => {
  const functions = Object.entries(wiring).flatMap(([name, value]) =>
    typeof value === "function" ? [name] : [],
  );
  expect(functions.filter((name) => !(name in cases)).sort()).toEqual([
    "dryOutGuidance",
    "editionIssues",
    "insulationInParallel",
  ]);
  for (const [value, code] of [...notQuantities, ...negative, ...zero, ...absurd]) {
    expectRefusal(
      () => wiring.insulationInParallel([2e7, value] as never),
      code,
      "resistances.1",
      String(value),
    );
  }
  expectRefusal(() => wiring.insulationInParallel([]), "missing", "resistances", "none");
});

it("unknown names are answered with the known ones", () => {
  const text = (call: () => unknown): string => {
    try {
      call();
    } catch (error) {
      return (error as Error).message;
    }
    return "";
  };
  const size = { ...run, size: "5 AWG" } as never;
  expect(text(() => wiring.tableAmpacity(size))).toContain("6 AWG, 4 AWG, 3 AWG");
  expect(text(() => wiring.tableAmpacity({ ...run, edition: "NEC 1999" } as never))).toContain(
    "NEC 2008, NEC 2011",
  );
  expect(text(() => wiring.cableCapacity({ ...cable, method: "D1" } as never))).toContain(
    "A1, A2, B1, B2, C",
  );
  expect(text(() => wiring.cableCapacity({ ...cable, insulation: "SiF" } as never))).toContain("PVC, XLPE");
  expect(text(() => wiring.insulationType({ edition: "NEC 2023", type: "THHN" }))).toContain("Z, FEP, FEPB");
});
