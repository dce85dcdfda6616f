/**
 * Editions are data: ours and a user's pass one gate and are read by one code. The made-up edition below is invented; its figures
 * are round on purpose and stand in no book.
 */
import { amperes, celsius, isElectroheatError } from "electroheat/quantity";
import {
  ambientFactor,
  type CodeResult,
  cableCapacity,
  cableForLoad,
  conductorAmpacity,
  conductorCountFactor,
  conductorForLoad,
  designCurrent,
  editionIssues,
  editionJsonSchema,
  groupingFactor,
  type IecEdition,
  largestDevice,
  loadForCable,
  loadForConductor,
  lugFit,
  type NorthAmericanEdition,
  type SharedTable,
  standardDevice,
  subdivision,
  tableAmpacity,
  terminationTemperature,
} from "electroheat/wiring";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { caught } from "../support/caught.ts";
import { spoiled } from "../support/spoil.ts";
import { labelled, ours, oursIec } from "./wholeEditions.ts";

const own = (id: string, columns: readonly string[], rows: SharedTable["rows"]): SharedTable => ({
  id,
  title: id,
  source: "rules of the works, an invented scenario",
  edition: "works rules 7",
  kind: "user table",
  provenance: "seen",
  columns: columns.map((name) => ({ name, unit: name === "size" ? "AWG/kcmil" : "A", meaning: name })),
  rows,
});

const works: NorthAmericanEdition = {
  name: "works rules 7",
  system: "North America",
  ampacity: [
    {
      installation: "raceway",
      label: "W-1",
      baseAmbient: celsius(25),
      baseConditions: ["ambient 25 °C", "two in a tube"],
      table: own(
        "works-ampacity",
        ["size", "copper 70", "copper 110"],
        [
          ["14", 11, 22],
          ["6", 44, 77],
          ["2", 88, 133],
          ["250", 222, 333],
        ],
      ),
    },
  ],
  ambient: [
    {
      label: "W-2",
      baseAmbient: celsius(25),
      table: own(
        "works-ambient",
        ["from", "to", "70", "110"],
        [
          [null, 25, 1, 1],
          [26, 45, 0.5, 0.75],
          [46, 100, null, 0.25],
        ],
      ),
    },
  ],
  conductorCount: {
    label: "W-3",
    table: own(
      "works-count",
      ["from", "to", "percent"],
      [
        [1, 2, 100],
        [3, null, 60],
      ],
    ),
  },
  smallConductors: {
    label: "W-4",
    table: own("works-small", ["size", "material", "limit"], [["14", "copper", 7]]),
  },
  terminations: { label: "W-5", table: own("works-terminals", ["to", "temperature"], [[null, 70]]) },
  standardRatings: { label: "W-6", table: own("works-ratings", ["rating"], [[7], [33], [66], [99], [222]]) },
  heatingRules: {
    label: "W-7",
    table: own(
      "works-rules",
      ["equipment", "clause", "factor", "subdivision", "subdivided load", "subdivided device"],
      [["kiln", "W-7.1", 1.5, "W-7.2", 40, 66]],
    ),
  },
};

describe("the JSON Schema of the gate, through zod", () => {
  const american = z.fromJSONSchema(editionJsonSchema({ system: "North America" }) as never);
  const european = z.fromJSONSchema(editionJsonSchema({ system: "IEC" }) as never);

  it("passes what the gate passes: all of ours, and the made-up edition, which then answers", () => {
    for (const edition of [ours, works]) expect(american.safeParse(edition).error).toBeUndefined();
    expect(european.safeParse(oursIec).error).toBeUndefined();
    expect(european.safeParse(works).success).toBe(false);
    const parsed = american.parse(JSON.parse(JSON.stringify(works))) as NorthAmericanEdition;
    expect(standardDevice({ edition: parsed, current: amperes(34), direction: "up" }).value).toBe(66);
  });

  it("refuses no more than the gate does: whatever fails the schema fails the gate", () => {
    const anything = fc.oneof(
      fc.constant(undefined),
      fc.constant(null),
      fc.constant(""),
      fc.constant([]),
      fc.constant({}),
      fc.integer({ min: -5, max: 5 }),
      fc.string({ maxLength: 4 }),
    );
    const paths = fc.constantFrom(
      ..."name system ampacity.0 ampacity.0.label ampacity.0.baseAmbient ampacity.0.baseConditions".split(
        " ",
      ),
      ..."ampacity.0.table ampacity.0.table.id ampacity.0.table.kind ampacity.0.table.provenance".split(" "),
      ..."ampacity.0.table.columns ampacity.0.table.columns.1.name ampacity.0.table.columns.1.unit".split(
        " ",
      ),
      ..."ampacity.0.table.rows ampacity.0.table.rows.1 ambient.0.table.columns.2.name".split(" "),
      ..."conductorCount terminations.table heatingRules.label standardRatings.table.rows".split(" "),
    );
    let refused = 0;
    fc.assert(
      fc.property(paths, anything, (path, value) => {
        const broken = path.includes(".") ? spoiled(works, path, value) : { ...works, [path]: value };
        if (american.safeParse(broken).success) return;
        refused++;
        expect(editionIssues(broken), `${path} = ${JSON.stringify(value)}`).not.toEqual([]);
      }),
      { numRuns: 500 },
    );
    expect(refused).toBeGreaterThan(200);
  });
});

describe("the gate", () => {
  it("passes every table of this library", () => {
    expect(editionIssues(ours)).toEqual([]);
    expect(editionIssues(oursIec)).toEqual([]);
    expect(editionIssues({ ...oursIec, deviceRatings: labelled("iec-60898-ratings") })).toEqual([]);
    expect(editionIssues(works)).toEqual([]);
  });

  const cases: [path: string, value: unknown, code: string, reported?: string][] = [
    ["name", "", "missing"],
    ["system", "Mars", "unknown-name"],
    ["system", undefined, "missing"],
    ["tables", [], "unknown-field"],
    ["ampacity", {}, "wrong-type"],
    ["ampacity.0.label", 7, "wrong-type"],
    ["ampacity.0.installation", undefined, "missing"],
    ["ampacity.0.baseAmbient", "25", "wrong-type"],
    ["ampacity.0.baseConditions", undefined, "missing"],
    ["ampacity.0.table", undefined, "missing"],
    ["ampacity.0.table.id", undefined, "missing"],
    ["ampacity.0.table.source", "", "missing"],
    ["ampacity.0.table.kind", "guess", "unknown-name"],
    ["ampacity.0.table.provenance", undefined, "missing"],
    ["ampacity.0.table.columns", [], "wrong-type"],
    ["ampacity.0.table.columns.1.name", "copper", "unknown-name"],
    ["ampacity.0.table.columns.2.name", "copper 70", "duplicate"],
    ["ampacity.0.table.columns.0.unit", undefined, "missing"],
    ["ampacity.0.table.rows", [], "wrong-type"],
    ["ampacity.0.table.rows.1", ["6", 44], "wrong-type"],
    ["ampacity.0.table.rows.1.0", "14", "duplicate"],
    ["ampacity.0.table.rows.1.1", "44", "not-a-number"],
    ["ampacity.0.table.rows.1.1", Number.NaN, "not-a-number"],
    ["ampacity.0.table.rows.1.1", -44, "out-of-range"],
    ["ampacity.0.table.rows.2.1", 43, "inconsistent"],
    ["ambient.0.table.rows.1.2", 1.01, "inconsistent"],
    ["ambient.0.table.rows.1.1", 20, "inconsistent"],
    ["ambient.0.baseAmbient", undefined, "missing"],
    ["conductorCount.table.rows.0.2", null, "missing"],
    ["standardRatings.table.rows.2.0", 33, "inconsistent"],
    ["heatingRules.table.columns.1.name", "rule", "missing", "heatingRules.table.columns"],
  ];
  it.each(cases)("%s = %j is %s", (path, value, code, reported) => {
    const [head = "", ...rest] = path.split(".");
    const broken = rest.length === 0 ? { ...works, [head]: value } : spoiled(works, path, value);
    const found = editionIssues(broken);
    expect(found.map((issue) => [issue.path, issue.code])).toContainEqual([
      `edition.${reported ?? path}`,
      code,
    ]);
  });

  it("lists every offending path at once", () => {
    const broken = spoiled(
      spoiled(spoiled(works, "ampacity.0.table.rows.1.1", "44"), "ambient.0.label", ""),
      "standardRatings.table.rows.0.0",
      null,
    );
    expect(editionIssues(broken).map((issue) => issue.path)).toEqual([
      "edition.ampacity.0.table.rows.1.1",
      "edition.ambient.0.label",
      "edition.standardRatings.table.rows.0.0",
    ]);
    let thrown: unknown;
    try {
      standardDevice({ edition: broken, current: amperes(5), direction: "up" });
    } catch (error) {
      thrown = error;
    }
    expect(isElectroheatError(thrown) && thrown.issues.length).toBe(3);
  });

  it.each([[7], [null], [[]], ["x"]])("takes no %j for an edition", (value) => {
    expect(editionIssues(value)[0]?.path).toBe("edition");
  });
});

const run = {
  edition: works,
  installation: "raceway",
  material: "copper",
  insulationTemperature: celsius(110),
  ambient: celsius(30),
  currentCarryingConductors: 3,
  terminalTemperature: "unmarked",
} as const;

describe("a made-up North American edition", () => {
  it("answers every function", () => {
    // 133 A · 0.75 · 0.6 = 59.85 A in the conductor's own column; 88 A at the terminals.
    const found = conductorAmpacity({ ...run, size: "2 AWG", circuitRating: amperes(66) });
    expect(found.value).toBeCloseTo(59.85, 9);
    expect([found.terminationAmpacity, found.governing]).toEqual([88, "ambient and conductor count"]);
    expect(tableAmpacity({ ...run, size: "250 kcmil" }).value).toBe(333);
    expect(ambientFactor({ ...run, baseAmbient: celsius(25) }).value).toBe(0.75);
    expect(conductorCountFactor(run).value).toBe(0.6);
    expect(terminationTemperature({ edition: works, circuitRating: amperes(500) }).value).toBe(70);
    expect(standardDevice({ edition: works, current: amperes(34), direction: "up" }).value).toBe(66);
    expect(
      largestDevice({ edition: works, size: "14 AWG", material: "copper", ampacity: amperes(22) }).value,
    ).toBe(7);
    const kiln = { edition: works, equipment: "kiln" };
    expect(designCurrent({ ...kiln, heaterCurrent: amperes(40) }).value).toBe(60);
    const split = subdivision({ ...kiln, current: amperes(100) });
    expect([split.value, split.device, split.table]).toEqual([3, 66, "W-7.2"]);
    // 60 A design: 6 AWG has 44 at the terminals, 2 AWG has 88; device 66 over 59.85 is the next size up.
    const chosen = conductorForLoad({ ...run, ...kiln, heaterCurrent: amperes(40) });
    expect([chosen.value, chosen.device, chosen.governing]).toEqual(["2 AWG", 66, "termination"]);
    // The smaller of 88/1.5 and 66/1.5.
    expect(loadForConductor({ ...run, ...kiln, size: "2 AWG", device: amperes(66) }).value).toBe(44);
    const lug = { smallest: "14 AWG", largest: "2 AWG", materials: ["copper"], temperature: celsius(70) };
    const fit = lugFit({ ...run, size: "2 AWG", lug, designCurrent: amperes(60) });
    expect([fit.value, fit.terminationAmpacity]).toEqual(["fits", 88]);
  });

  it("is named in every answer, as a user table, with a caution", () => {
    const answers: readonly CodeResult<unknown>[] = [
      tableAmpacity({ ...run, size: "6 AWG" }),
      conductorAmpacity({ ...run, size: "6 AWG", circuitRating: amperes(33) }),
      conductorForLoad({ ...run, equipment: "kiln", heaterCurrent: amperes(20) }),
      standardDevice({ edition: works, current: amperes(20), direction: "up" }),
    ];
    for (const answer of answers) {
      expect([answer.kind, answer.edition, answer.system]).toEqual([
        "user table",
        "works rules 7",
        "North America",
      ]);
      expect(answer.cautions.join(" ")).toContain("brought by the user");
      expect(answer.cells.every((cell) => cell.source.startsWith("rules of the works"))).toBe(true);
    }
  });

  it("says what it lacks", () => {
    const bare = { name: "bare", system: "North America" } as const;
    const calls = [
      () => tableAmpacity({ ...run, edition: bare, size: "6 AWG" }),
      () => standardDevice({ edition: bare, current: amperes(1), direction: "up" }),
      () => conductorCountFactor({ edition: bare, currentCarryingConductors: 3 }),
      () => designCurrent({ edition: bare, equipment: "kiln", heaterCurrent: amperes(9) }),
      () => terminationTemperature({ edition: bare, circuitRating: amperes(9) }),
      () => ambientFactor({ ...run, edition: bare, baseAmbient: celsius(25) }),
    ];
    for (const call of calls) {
      expect(caught(call)).toMatchObject({ code: "missing", argument: "edition" });
      expect(call).toThrow(/an edition of your own that holds .+, which bare does not/);
    }
    // An edition of ours that holds none is answered with those that do.
    expect(
      caught(() => ambientFactor({ ...run, edition: "NEC 2008", baseAmbient: celsius(30) })),
    ).toMatchObject({ code: "unknown-name", argument: "edition" });
  });

  it("is refused where IEC is asked, and the other way round", () => {
    const iec = {
      edition: works as never,
      method: "B2",
      loadedConductors: 3,
      insulation: "PVC",
      material: "copper",
    };
    expect(() => cableCapacity({ ...iec, ambient: celsius(30), circuits: 1, size: "16 mm²" })).toThrow(
      /never mixed/,
    );
    expect(() => standardDevice({ edition: oursIec as never, current: amperes(3), direction: "up" })).toThrow(
      /never mixed/,
    );
  });
});

describe("a made-up IEC edition", () => {
  const metric = (table: SharedTable): SharedTable => ({
    ...table,
    columns: table.columns.map((one) => ({ ...one, unit: one.name === "size" ? "mm²" : "A" })),
  });
  const plant: IecEdition = {
    name: "plant rules 3",
    system: "IEC",
    capacity: [
      {
        insulation: "glass",
        material: "nickel",
        conductorTemperature: celsius(300),
        label: "P-1",
        baseAmbient: celsius(50),
        baseConditions: ["in air"],
        table: metric(
          own(
            "plant-capacity",
            ["size", "open 3"],
            [
              [2.5, 30],
              [6, 60],
              [16, 100],
            ],
          ),
        ),
      },
    ],
    ambient: [
      {
        label: "P-2",
        baseAmbient: celsius(50),
        table: own(
          "plant-ambient",
          ["ambient", "glass"],
          [
            [50, 1],
            [150, 0.5],
          ],
        ),
      },
    ],
    grouping: [
      {
        name: "plant",
        label: "P-3",
        table: own(
          "plant-groups",
          ["circuits", "loose"],
          [
            [1, 1],
            [4, 0.8],
          ],
        ),
      },
    ],
    deviceRatings: { label: "P-4", table: own("plant-devices", ["rating"], [[15], [21], [40]]) },
  };
  const cable = {
    edition: plant,
    method: "open",
    loadedConductors: 3,
    insulation: "glass",
    material: "nickel",
    ambient: celsius(120),
    circuits: 3,
    arrangement: "loose",
  } as const;

  it("passes the gate and answers every function", () => {
    expect(editionIssues(plant)).toEqual([]);
    // 60 A · 0.5 · 0.8 = 24 A.
    expect(cableCapacity({ ...cable, size: "6 mm²" }).value).toBe(24);
    expect(groupingFactor({ edition: plant, arrangement: "loose", circuits: 2 }).value).toBe(0.8);
    const found = cableForLoad({ ...cable, designCurrent: amperes(18), deviceKind: "circuit-breaker" });
    expect([found.value, found.device, found.kind]).toEqual(["6 mm²", 21, "user table"]);
    expect(loadForCable({ ...cable, size: "16 mm²", deviceKind: "circuit-breaker" }).value).toBe(40);
    expect(designCurrent({ edition: plant, heaterCurrent: amperes(18) }).value).toBe(18);
  });
});
