/**
 * What the room refuses: every field of every function spoiled in turn, and the error named by code and argument. Valid
 * input, however extreme, gives finite numbers or a typed error. The contract of the room; nothing here has a source.
 */
import * as processRoom from "electroheat/process";
import { isElectroheatError } from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectFinite } from "../support/close.ts";
import { expectRefusal, negative, notNames, notQuantities, spoiled, zero } from "../support/spoil.ts";

const room: Readonly<Record<string, unknown>> = processRoom;

type Bad = readonly (readonly [unknown, string])[];
const tooFar: Bad = [
  [5e-324, "out-of-range"],
  [9e-16, "out-of-range"],
  [1.1e15, "out-of-range"],
  [Number.MAX_VALUE, "out-of-range"],
];
const positive: Bad = [...notQuantities, ...negative, ...zero, ...tooFar];
const nonNegative: Bad = [...notQuantities, ...negative, ...tooFar];
const temperature: Bad = [...notQuantities, [-273.16, "out-of-range"], [1.1e6, "out-of-range"]];
const emissivity: Bad = [
  ...positive.filter(([value]) => value !== 1.1e15),
  [1.0001, "out-of-range"],
  [2, "out-of-range"],
];
const names: Bad = [...notNames, ["any", "unknown-name"], [7, "unknown-name"]];
const optional = (bad: Bad): Bad => bad.filter(([value]) => value !== undefined);

const actual = { basis: "actual", volumeFlow: 1, temperature: 20, pressure: 101325 };
const lumped = { heatCapacity: 2e5, lossConductance: 40, ambient: 20 };
const oven = {
  ambient: 25,
  lossConductance: 40,
  structure: 5e4,
  walls: { heatCapacity: 1e5, share: 0.5 },
  air: { volume: 5, pressure: 101325 },
  loads: [{ mass: 100, specificHeat: 500 }],
};
const two = {
  airHeatCapacity: 8e4,
  loadHeatCapacity: 1.2e5,
  lossConductance: 40,
  coupling: 60,
  ambient: 20,
  power: 12_000,
};
const surface = { temperature: 400, area: 1, emissivity: 0.8 };
const piece = {
  characteristicLength: 0.01,
  density: 7850,
  specificHeat: 480,
  filmCoefficient: 20,
  air: 200,
  emissivity: 0.8,
  walls: 220,
  start: 20,
  target: 150,
};

/** Function, valid input, and what must be refused where: path, bad values, the argument named when it is another. */
type Field = readonly [path: string, bad: Bad, argument?: string];
const ovenFields = (within: string): readonly Field[] => [
  [`${within}ambient`, temperature],
  [`${within}lossConductance`, nonNegative],
  [`${within}structure`, optional(positive)],
  [`${within}walls.heatCapacity`, positive],
  [`${within}walls.share`, [...notQuantities, [-0.01, "out-of-range"], [1.01, "out-of-range"]]],
  [`${within}air.volume`, positive],
  [`${within}loads.0.mass`, positive],
  [`${within}loads.0.specificHeat`, positive],
  [`${within}loads.0.specificHeat`, [["stainless steel", "not-a-number"]]],
];
const flowFields: readonly Field[] = [
  [
    "flow",
    [
      [undefined, "missing"],
      [null, "missing"],
      [2000, "wrong-type"],
      ["2000 cfm", "wrong-type"],
    ],
    "flow",
  ],
  ["flow.basis", names, "flow.basis"],
  ["flow.volumeFlow", positive, "flow.volumeFlow"],
];
const cases: readonly (readonly [
  name: keyof typeof processRoom,
  input: unknown,
  fields: readonly Field[],
])[] = [
  ["standardAirDensity", "0 °C", [["", names, "standard"]]],
  [
    "airMassFlow",
    actual,
    [
      [
        "",
        [
          [undefined, "missing"],
          [null, "missing"],
          [0.94, "wrong-type"],
          ["1 m³/s", "wrong-type"],
        ],
        "flow",
      ],
      ["basis", names, "flow.basis"],
      ["volumeFlow", positive, "flow.volumeFlow"],
      ["temperature", [[-273.15, "out-of-range"]], "flow.temperature"],
      ["pressure", [...notQuantities, ...negative, ...zero], "flow.pressure"],
    ],
  ],
  [
    "airMassFlow",
    { basis: "standard", standard: "20 °C", volumeFlow: 1 },
    [["standard", names, "flow.standard"]],
  ],
  ["airMassFlow", { basis: "mass", massFlow: 1 }, [["massFlow", positive, "flow.massFlow"]]],
  ["actualAirFlow", { flow: actual, temperature: 200, pressure: 9e4 }, flowFields],
  ["standardAirFlow", { flow: actual, standard: "0 °C" }, [...flowFields, ["standard", names]]],
  [
    "airHeatConstant",
    { density: 1.2, specificHeat: 1005 },
    [
      ["density", positive],
      ["specificHeat", positive],
    ],
  ],
  ["airHeatShortcut", "kw-3160", [["", names, "name"]]],
  [
    "airHeatContent",
    { from: 20, to: 200 },
    [
      ["from", notQuantities],
      ["to", notQuantities],
      ["from", [[-24, "outside-table"]]],
      ["to", [[1227, "outside-table"]]],
    ],
  ],
  [
    "airMeanSpecificHeat",
    { from: 20, to: 200 },
    [
      ["from", notQuantities],
      ["to", notQuantities],
    ],
  ],
  [
    "airOutlet",
    { power: 3e4, flow: actual, inlet: 20, specificHeat: 1005 },
    [...flowFields, ["power", positive], ["inlet", temperature], ["specificHeat", optional(positive)]],
  ],
  [
    "airHeatingPower",
    { flow: actual, inlet: 20, outlet: 60 },
    [
      ...flowFields,
      ["inlet", temperature],
      ["outlet", temperature.filter(([value]) => value !== -273.16)],
      [
        "outlet",
        [
          [20, "out-of-range"],
          [19, "out-of-range"],
          [-300, "out-of-range"],
        ],
      ],
      ["specificHeat", optional(positive)],
    ],
  ],
  [
    "airFlowForRise",
    { power: 3e4, inlet: 20, outlet: 60 },
    [
      ["power", positive],
      ["inlet", temperature],
      ["outlet", [[20, "out-of-range"]]],
      ["specificHeat", optional(positive)],
    ],
  ],
  [
    "airWhatIf",
    { power: 3e4, flow: actual, inlet: 20, flowRatio: 0.8, voltageRatio: 1.1, powerRatio: 0.9 },
    [
      ...flowFields,
      ["power", positive],
      ["flowRatio", optional(positive)],
      ["voltageRatio", optional(positive)],
      ["powerRatio", optional(positive)],
    ],
  ],
  [
    "ductHeaterFace",
    { height: 0.3, width: 0.6 },
    [
      ["height", positive],
      ["height", [[0.0635, "out-of-range"]]],
      ["width", positive],
      ["width", [[0.0127, "out-of-range"]]],
    ],
  ],
  [
    "ductHeaterCheck",
    { power: 25e3, faceArea: 0.15, flow: actual, inlet: 20, pressure: 101325, element: "tubular" },
    [...flowFields, ["power", positive], ["faceArea", positive], ["inlet", temperature], ["element", names]],
  ],
  [
    "exhaustHeat",
    { flow: actual, makeUp: 20, oven: 200 },
    [
      ...flowFields,
      ["makeUp", temperature],
      ["oven", temperature],
      ["oven", [[20, "out-of-range"]]],
      ["specificHeat", optional(positive)],
    ],
  ],
  [
    "airChangeHeat",
    { changesPerHour: 10, volume: 10, countedAs: "oven air", makeUp: 20, oven: 200, pressure: 101325 },
    [
      ["changesPerHour", positive],
      ["volume", positive],
      ["countedAs", names],
      ["oven", [[20, "out-of-range"]]],
      ["specificHeat", optional(positive)],
    ],
  ],
  [
    "solventVaporRatio",
    { liquidDensity: 867, molarMass: 0.092 },
    [
      ["liquidDensity", positive],
      ["molarMass", [...notQuantities, [92, "out-of-range"], [0, "out-of-range"]]],
    ],
  ],
  [
    "safetyVentilation",
    {
      solventRate: 1e-6,
      by: {
        rule: "share of the flammable limit",
        vaporRatio: 227,
        lowerFlammableLimit: 0.011,
        shareOfLimit: 0.25,
      },
    },
    [
      ["solventRate", positive],
      [
        "by",
        [
          [undefined, "missing"],
          [null, "missing"],
        ],
      ],
      ["by.rule", names],
      ["by.vaporRatio", positive],
      ["by.lowerFlammableLimit", emissivity],
      ["by.shareOfLimit", [...emissivity, [0.2501, "out-of-range"]]],
    ],
  ],
  [
    "heatUpTime",
    { ...lumped, power: 12e3, target: 200 },
    [
      ["heatCapacity", positive],
      ["lossConductance", nonNegative],
      ["ambient", temperature],
      ["power", nonNegative],
      ["target", temperature],
      [
        "target",
        [
          [20, "out-of-range"],
          [10, "out-of-range"],
        ],
      ],
      ["start", optional(temperature)],
      ["start", [[200, "out-of-range"]], "target"],
    ],
  ],
  [
    "ovenTemperature",
    { ...lumped, power: 12e3, time: 3600 },
    [
      ["heatCapacity", positive],
      ["lossConductance", nonNegative],
      ["ambient", temperature],
      ["power", nonNegative],
      ["time", nonNegative],
      ["start", optional(temperature)],
    ],
  ],
  [
    "coolDownTime",
    { ...lumped, start: 200, target: 50 },
    [
      ["heatCapacity", positive],
      ["lossConductance", positive],
      ["ambient", temperature],
      ["ambient", [[50, "out-of-range"]], "target"],
      ["target", temperature],
      ["target", [[20, "out-of-range"]]],
      ["target", [[200, "out-of-range"]], "start"],
      ["start", temperature],
      ["start", [[50, "out-of-range"]]],
    ],
  ],
  [
    "holdingPower",
    { lossConductance: 40, ambient: 20, target: 200 },
    [
      ["lossConductance", nonNegative],
      ["ambient", temperature],
      ["target", [[20, "out-of-range"]]],
    ],
  ],
  [
    "heatUpTimeFromMeanLoss",
    { storedHeat: 1e8, meanLoss: 9e3, power: 4e4 },
    [
      ["storedHeat", positive],
      ["meanLoss", nonNegative],
      ["power", nonNegative],
    ],
  ],
  [
    "ovenHeatUp",
    { oven, power: 12e3, target: 200 },
    [
      ...ovenFields("oven."),
      ["power", nonNegative],
      ["target", temperature],
      [
        "target",
        [
          [25, "out-of-range"],
          [24, "out-of-range"],
        ],
      ],
      ["start", optional(temperature)],
    ],
  ],
  [
    "ovenAfter",
    { oven, power: 12e3, time: 60 },
    [...ovenFields("oven."), ["power", nonNegative], ["time", positive]],
  ],
  [
    "heatUpOptions",
    {
      oven,
      powers: [
        { name: "healthy", power: 12e3 },
        { name: "degraded", power: 9e3 },
      ],
      target: 200,
    },
    [
      ["powers", [[[], "missing"]]],
      ["powers.0.power", positive],
      ["powers.1.power", nonNegative],
      ["target", [[25, "out-of-range"]]],
    ],
  ],
  [
    "steelSpecificHeat",
    { temperature: 100 },
    [
      ["temperature", [...notQuantities, [19.99, "outside-table"], [1200.01, "outside-table"]]],
      ["beyondTable", optional(names).filter(([value]) => value !== "" && value !== null)],
    ],
  ],
  [
    "steelHeatContent",
    { from: 20, to: 100 },
    [
      ["from", notQuantities],
      ["to", notQuantities],
      ["to", [[1201, "outside-table"]]],
    ],
  ],
  [
    "twoNodeTemperatures",
    { ...two, time: 600 },
    [
      ["airHeatCapacity", positive],
      ["loadHeatCapacity", positive],
      ["lossConductance", positive],
      ["coupling", positive],
      ["ambient", temperature],
      ["power", nonNegative],
      ["time", nonNegative],
      ["start", optional(temperature)],
    ],
  ],
  [
    "twoNodeHeatUp",
    { ...two, target: 200 },
    [
      ["airHeatCapacity", positive],
      ["lossConductance", positive],
      ["target", temperature],
      ["target", [[20, "out-of-range"]]],
    ],
  ],
  [
    "ovenFromTwoReadings",
    { ambient: 20, time: 600, first: 60, second: 90, power: 6e3 },
    [
      ["ambient", temperature],
      ["time", positive],
      ["first", temperature],
      ["second", temperature],
      ["first", [[20, "out-of-range"]]],
      [
        "second",
        [
          [60, "out-of-range"],
          [100, "not-identifiable"],
          [120, "not-identifiable"],
        ],
      ],
      ["power", optional(positive)],
    ],
  ],
  [
    "cyclicTemperature",
    { coldTemperature: 20, hotTemperature: 300, timeConstant: 600, onTime: 30, offTime: 60 },
    [
      ["coldTemperature", temperature],
      ["hotTemperature", temperature],
      ["hotTemperature", [[20, "out-of-range"]]],
      ["timeConstant", positive],
      ["onTime", positive],
      ["offTime", nonNegative],
    ],
  ],
  [
    "biotNumber",
    { filmCoefficient: 20, characteristicLength: 0.01, thermalConductivity: 45 },
    [
      ["filmCoefficient", positive],
      ["characteristicLength", positive],
      ["thermalConductivity", positive],
    ],
  ],
  [
    "pieceHeatingTime",
    piece,
    [
      ["characteristicLength", positive],
      ["density", positive],
      ["specificHeat", positive],
      ["filmCoefficient", nonNegative],
      ["air", temperature],
      ["emissivity", [...notQuantities, [-0.1, "out-of-range"], [1.1, "out-of-range"]]],
      ["walls", temperature],
      ["start", temperature],
      ["target", temperature],
    ],
  ],
  ["pieceHeatingTime", { ...piece, filmCoefficient: 0 }, [["emissivity", [[0, "out-of-range"]]]]],
  [
    "meanLossShare",
    0.5,
    [
      [
        "",
        [...notQuantities, [-0.1, "out-of-range"], [1, "out-of-range"], [1.1, "out-of-range"]],
        "lossShare",
      ],
    ],
  ],
  [
    "ovenSizing",
    { heat: 1e8, time: 3600, loss: 9e3, throughput: 5e3, lossRule: "one half", margin: 0.2 },
    [
      ["heat", positive],
      ["time", positive],
      ["loss", nonNegative],
      ["throughput", optional(nonNegative)],
      ["lossRule", names],
      [
        "margin",
        [
          ...nonNegative.filter(([value]) => value !== "5" && value !== "OL"),
          ["5", "unknown-name"],
          ["usual", "unknown-name"],
        ],
      ],
    ],
  ],
  [
    "chargeHeat",
    { mass: 10, specificHeat: 500, from: 20, to: 200 },
    [
      ["mass", positive],
      ["specificHeat", positive],
      ["from", temperature],
      ["to", temperature],
    ],
  ],
  [
    "chargePower",
    { heat: 1e6, time: 600, efficiency: 0.5 },
    [
      ["heat", positive],
      ["time", positive],
      ["efficiency", optional(emissivity)],
    ],
  ],
  [
    "throughputPower",
    { massFlow: 0.1, specificHeat: 500, from: 20, to: 200 },
    [
      ["massFlow", positive],
      ["specificHeat", positive],
      ["from", temperature],
      ["to", temperature],
    ],
  ],
  [
    "dryingPower",
    { waterFlow: 0.01, water: 20, vapor: 120 },
    [
      ["waterFlow", positive],
      ["water", [...notQuantities, [-0.1, "out-of-range"], [100.1, "out-of-range"]]],
      ["vapor", [...notQuantities, [-0.1, "out-of-range"], [600.1, "out-of-range"]]],
    ],
  ],
  [
    "energyCost",
    { energy: 1e6, tariff: 0.2 },
    [
      ["energy", nonNegative],
      ["tariff", nonNegative],
    ],
  ],
  [
    "runningCost",
    { power: 4e4, time: 3600, tariff: 0.2, duty: 0.5, efficiency: 0.9 },
    [
      ["power", nonNegative],
      ["time", nonNegative],
      ["tariff", nonNegative],
      [
        "duty",
        [
          [null, "missing"],
          [Number.NaN, "not-a-number"],
          [-0.1, "out-of-range"],
          [1.1, "out-of-range"],
        ],
      ],
      ["efficiency", optional(emissivity)],
    ],
  ],
  [
    "wallHeat",
    {
      layers: [{ thickness: 0.1, thermalConductivity: 0.06 }],
      insideFilm: 15,
      outsideFilm: 9,
      inside: 200,
      outside: 20,
    },
    [
      [
        "layers",
        [
          [undefined, "missing"],
          [[], "missing"],
        ],
      ],
      ["layers.0.thickness", positive],
      ["layers.0.thermalConductivity", positive],
      ["insideFilm", optional(positive)],
      ["outsideFilm", optional(positive)],
      ["inside", temperature],
      ["outside", temperature],
    ],
  ],
  [
    "wallLoss",
    { uValue: 2, area: 30, inside: 200, outside: 20 },
    [
      ["uValue", positive],
      ["area", positive],
      ["inside", temperature],
      ["outside", temperature],
    ],
  ],
  [
    "ovenSkinCheck",
    { skin: 50, rule: "municipal oven ordinance" },
    [
      ["skin", temperature],
      ["rule", names],
    ],
  ],
  [
    "radiantHeat",
    { inner: surface, outer: { ...surface, temperature: 20 } },
    [
      [
        "inner",
        [
          [undefined, "missing"],
          [null, "missing"],
        ],
      ],
      ["inner.temperature", temperature],
      ["inner.area", positive.filter(([value]) => value !== 1.1e15)],
      ["inner.emissivity", emissivity],
      ["outer.emissivity", emissivity],
      ["outer.area", [[0.99, "out-of-range"]]],
    ],
  ],
  [
    "radiantOven",
    { heater: surface, work: { ...surface, temperature: 20 }, viewFactor: 0.5 },
    [
      ["heater", [[undefined, "missing"]]],
      ["work.temperature", temperature],
      ["viewFactor", [...notQuantities, ...zero, [1, "out-of-range"], [-1, "out-of-range"]]],
      ["work.area", [[0.5, "out-of-range"]], "viewFactor"],
    ],
  ],
  [
    "reflectorHeating",
    { panel: surface, reflectorArea: 1.5, reflectorEmissivity: 0.8, filmCoefficient: 70, air: 100 },
    [
      ["panel.temperature", [[100, "out-of-range"]]],
      ["reflectorArea", [...notQuantities, [0.9, "out-of-range"]]],
      ["reflectorEmissivity", emissivity],
      ["filmCoefficient", positive],
      ["air", temperature],
    ],
  ],
  [
    "irradiatedTemperature",
    { irradiation: 2000, absorptivity: 0.8, emissivity: 0.5, filmCoefficient: 15, air: 20, surroundings: 30 },
    [
      ["irradiation", nonNegative],
      ["absorptivity", [...notQuantities, [1.1, "out-of-range"]]],
      ["emissivity", [...notQuantities, [1.1, "out-of-range"]]],
      ["filmCoefficient", positive],
      ["air", temperature],
      ["surroundings", temperature],
    ],
  ],
  [
    "airBehindProbe",
    { reading: 200, walls: 250, emissivity: 0.9, filmCoefficient: 30 },
    [
      ["reading", temperature],
      ["walls", temperature],
      ["emissivity", emissivity],
      ["filmCoefficient", positive],
      ["walls", [[1e5, "inconsistent"]]],
    ],
  ],
  [
    "surfaceBehindReading",
    { reading: 60, emissivitySet: 0.95, emissivity: 0.6, reflected: 25 },
    [
      ["reading", temperature],
      ["emissivitySet", emissivity],
      ["emissivity", emissivity],
      ["emissivity", [[0.0999, "out-of-range"]]],
      ["reflected", temperature],
      ["reading", [[-250, "inconsistent"]]],
    ],
  ],
  [
    "readingOfSurface",
    { temperature: 60, emissivitySet: 0.95, emissivity: 0.6, reflected: 25 },
    [
      ["temperature", temperature],
      ["emissivitySet", emissivity],
      ["emissivity", emissivity],
      ["reflected", temperature],
    ],
  ],
];

describe.each(cases.map(([name, input, fields]) => [name, input, fields] as const))(
  "%s",
  (name, input, fields) => {
    const run = (argument: unknown): unknown => (room[name] as (one: unknown) => unknown)(argument);

    it("takes the valid input and gives plain finite data", () => {
      expectFinite(run(input), name);
    });

    it.each(fields.map(([path, bad, argument = path]) => [path, bad, argument] as const))(
      "refuses bad values of %s",
      (path, bad, argument) => {
        for (const [value, code] of bad) {
          const shown = typeof value === "bigint" ? `${value}n` : JSON.stringify(value);
          expectRefusal(
            () => run(spoiled(input, path, value)),
            code,
            argument,
            `${name} ${path} = ${shown} (${String(value)})`,
          );
        }
      },
    );
  },
);

it("spoils every function of the room that takes an argument", () => {
  const called = new Set<string>(cases.map(([name]) => name));
  const without = Object.entries(processRoom)
    .filter(([, one]) => typeof one === "function" && one.length > 0)
    .map(([name]) => name)
    .filter((name) => !called.has(name));
  expect(without).toEqual([]);
});

describe("extremes within the bounds", () => {
  const extremes: Readonly<Record<string, readonly number[]>> = {
    scale: [1e-15, 1e-6, 1, 1e6, 1e15],
    temperature: [-273.15, -40, 0, 20, 700, 1e6],
    share: [1e-15, 0.01, 0.5, 1],
  };
  const temperatures =
    /ambient|target|start|air$|walls|inside|outside|temperature|Temperature|reading|reflected|first|second|inlet|outlet|makeUp|oven$|from|to$|skin|surroundings/;
  const shares =
    /emissivity|Emissivity|share|efficiency|duty|absorptivity|viewFactor|margin|shareOfLimit|lowerFlammableLimit/;

  /** The input with every number in it replaced by an extreme of its kind. */
  function extreme(value: unknown, name: string, pick: (from: readonly number[]) => number): unknown {
    if (typeof value === "number") {
      const kind = shares.test(name) ? "share" : temperatures.test(name) ? "temperature" : "scale";
      return pick(extremes[kind] as readonly number[]);
    }
    if (Array.isArray(value)) return value.map((item) => extreme(item, name, pick));
    if (value === null || typeof value !== "object") return value;
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, extreme(inner, key, pick)]));
  }

  it.each(cases.map(([name, input]) => [name, input] as const))("%s stays sound", (name, input) => {
    const run = (argument: unknown): unknown => (room[name] as (one: unknown) => unknown)(argument);
    fc.assert(
      fc.property(fc.infiniteStream(fc.nat(1000)), (stream) => {
        const pick = (from: readonly number[]): number =>
          from[(stream.next().value as number) % from.length] as number;
        const given = extreme(input, "", pick);
        try {
          expectFinite(run(given), `${name} ${JSON.stringify(given)}`);
        } catch (error) {
          if (!isElectroheatError(error)) throw error;
        }
      }),
      { numRuns: 200 },
    );
  });
});
