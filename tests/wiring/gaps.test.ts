/**
 * Editions with gaps: a figure the table leaves blank, a list of ratings that ends, a table that is not there. The made-up editions
 * are invented, with round figures that stand in no book; what is wanted follows from them by hand. Blank cells of ours are those of
 * the ampacity tables for the smallest aluminum conductors (NFPA 70, table 310.16: aluminum begins at 12 AWG).
 */
import { amperes, celsius } from "electroheat/quantity";
import {
  ambientForCable,
  ambientForConductor,
  ampacityEditions,
  cableAmbientFactor,
  cableCapacity,
  conductorForLoad,
  editionIssues,
  groupingFactor,
  type IecEdition,
  largestDevice,
  loadForCable,
  loadForConductor,
  lugFit,
  type NorthAmericanEdition,
  namedWireAmpacity,
  type SharedTable,
  subdivision,
  terminationTemperature,
} from "electroheat/wiring";
import { describe, expect, it } from "vitest";
import { expectRefusal, spoiled } from "../support/spoil.ts";

const table = (columns: readonly string[], rows: SharedTable["rows"], unit = "AWG/kcmil"): SharedTable => ({
  id: `gaps-${columns[0]}`,
  title: "a table with gaps",
  source: "rules of the works, an invented scenario",
  edition: "works rules 8",
  kind: "user table",
  provenance: "seen",
  columns: columns.map((name) => ({ name, unit: name === "size" ? unit : "A", meaning: name })),
  rows,
});
const base = { baseAmbient: celsius(30), baseConditions: ["as printed"] };

const works: NorthAmericanEdition = {
  name: "works rules 8",
  system: "North America",
  ampacity: [
    {
      installation: "raceway",
      label: "W-1",
      ...base,
      table: table(
        ["size", "copper 60", "copper 75"],
        [
          ["14", null, null],
          ["6", 50, 60],
          ["500", 850, 900],
        ],
      ),
    },
  ],
  ambient: [
    { label: "W-2", baseAmbient: celsius(30), table: table(["from", "to", "60", "75"], [[null, 40, 1, 1]]) },
  ],
  conductorCount: { label: "W-3", table: table(["from", "to", "percent"], [[1, null, 100]]) },
  smallConductors: { label: "W-4", table: table(["size", "material", "limit"], [["14", "copper", 15]]) },
  terminations: { label: "W-5", table: table(["to", "temperature"], [[100, 60]]) },
  standardRatings: { label: "W-6", table: table(["rating"], [[1000], [2000]]) },
  heatingRules: {
    label: "W-7",
    table: table(
      ["equipment", "clause", "factor", "subdivision", "subdivided load", "subdivided device"],
      [
        ["kiln", "W-7.1", 1, "W-7.2", 40, 66],
        ["oven", "W-7.3", 1, null, null, null],
      ],
    ),
  },
};
const rated = (...ratings: number[]): NorthAmericanEdition => ({
  ...works,
  standardRatings: {
    label: "W-6",
    table: table(
      ["rating"],
      ratings.map((one) => [one]),
    ),
  },
});
/** The first table of a kind. */
const theirs = <T>(tables: readonly T[] | undefined): T => (tables as readonly [T])[0];
const run = {
  edition: works,
  installation: "raceway",
  material: "copper",
  insulationTemperature: celsius(75),
  ambient: celsius(30),
  currentCarryingConductors: 3,
  terminalTemperature: celsius(75),
} as const;

describe("a made-up North American edition with gaps", () => {
  it("passes the gate", () => {
    for (const edition of [works, rated(99)]) expect(editionIssues(edition)).toEqual([]);
  });

  it("has no device below its smallest rating, where none may be rounded up to it", () => {
    const call = (ampacity: number) => () =>
      largestDevice({ edition: works, size: "500 kcmil", material: "copper", ampacity: amperes(ampacity) });
    expectRefusal(call(900), "outside-table", "ampacity", "below 1000");
    expect(call(1500)().value).toBe(1000);
    const load = () => loadForConductor({ ...run, equipment: "oven", size: "500 kcmil" });
    expectRefusal(load, "outside-table", "size", "no device");
  });

  it("has no limit for small conductors where it holds none", () => {
    const { smallConductors, ...others } = rated(15, 40);
    const call = (edition: NorthAmericanEdition) =>
      largestDevice({ edition, size: "14 AWG", material: "copper", ampacity: amperes(22) });
    expect([
      call({ ...others, smallConductors: smallConductors as never }).value,
      call(others).value,
    ]).toEqual([15, 40]);
  });

  it("does not subdivide into circuits without a device", () => {
    const split = (equipment: string, current: number) => () =>
      subdivision({ edition: rated(99), equipment, current: amperes(current) });
    expectRefusal(split("kiln", 80), "outside-table", "circuits", "99 A, more than 66 A");
    expect(split("kiln", 80)).toThrow(/standard rating of at most 66 A/);
    expectRefusal(split("oven", 200), "outside-table", "circuits", "more than 99 A");
    expect(split("oven", 90)()).toMatchObject({ value: 1, device: 99 });
    const call = () =>
      loadForConductor({ ...run, edition: rated(99), equipment: "kiln", size: "6 AWG", subdivided: true });
    expectRefusal(call, "outside-table", "size", "no rating of at most 66 A");
  });

  it("answers for the rated circuits that its rule for terminals covers", () => {
    const call = (rating: number) => () =>
      terminationTemperature({ edition: works, circuitRating: amperes(rating) });
    expect(call(100)().value).toBe(60);
    expectRefusal(call(101), "outside-table", "circuitRating", "above the last row");
  });

  it("has no conductor where the size is blank", () => {
    const oven = { ...run, edition: rated(15, 60, 99), equipment: "oven" } as const;
    expectRefusal(() => loadForConductor({ ...oven, size: "14 AWG" }), "outside-table", "size", "blank");
    const { ambient: _, ...still } = oven;
    const hottest = (size: string) => () =>
      ambientForConductor({ ...still, size, heaterCurrent: amperes(40) });
    expectRefusal(hottest("14 AWG"), "outside-table", "size", "blank");
    expect(hottest("14 AWG")).toThrow(/no figure in the tables/);
    expect(hottest("6 AWG")().value).toBe(40);
    expectRefusal(
      () => ambientForConductor({ ...still, size: "500 kcmil", heaterCurrent: amperes(120) }),
      "outside-table",
      "heaterCurrent",
      "beyond the ratings",
    );
    const other = { ...still.edition, ambient: [{ ...theirs(works.ambient), baseAmbient: celsius(40) }] };
    const misfit = () =>
      ambientForConductor({ ...still, edition: other, size: "6 AWG", heaterCurrent: amperes(40) });
    expectRefusal(misfit, "missing", "edition", "factors of base 40 °C");
  });

  it("has no ampacity at terminals for a size, or an installation, that the raceway table lacks", () => {
    const lug = { smallest: "14 AWG", largest: "500 kcmil", materials: ["copper"], temperature: celsius(75) };
    const fitting = (edition: NorthAmericanEdition, size: string) => () =>
      lugFit({ ...run, edition, size, lug, designCurrent: amperes(1) });
    expect(fitting(works, "6 AWG")()).toMatchObject({ value: "fits", terminationAmpacity: 60 });
    expect(fitting(works, "4 AWG")()).toMatchObject({ value: "does not fit", terminationAmpacity: null });
    const open = { ...works, ampacity: [{ ...theirs(works.ampacity), installation: "free air" }] };
    expectRefusal(fitting(open, "6 AWG"), "missing", "edition", "no raceway");
  });
});

describe("our North American editions", () => {
  const aluminum = {
    ...run,
    edition: "NEC 2023",
    material: "aluminum",
    equipment: "process heating",
  } as const;

  it("have no figure for aluminum below 12 AWG", () => {
    expectRefusal(() => loadForConductor({ ...aluminum, size: "14 AWG" }), "outside-table", "size", "blank");
    const { ambient: _, ...still } = aluminum;
    const hottest = () => ambientForConductor({ ...still, size: "14 AWG", heaterCurrent: amperes(5) });
    expectRefusal(hottest, "outside-table", "size", "blank");
  });

  it("end at a device of 6000 A", () => {
    // 240.6(A); a continuous load counts 1.25 times: 4900 A is 6125 A.
    const { ambient: _, ...still } = { ...aluminum, material: "copper" } as const;
    const beyond = { heaterCurrent: amperes(4900) };
    const hottest = () => ambientForConductor({ ...still, ...beyond, size: "500 kcmil" });
    expectRefusal(hottest, "outside-table", "heaterCurrent", "6125 A");
    const chosen = () => conductorForLoad({ ...aluminum, ...beyond });
    expectRefusal(chosen, "outside-table", "heaterCurrent", "6125 A");
  });

  it("print a free-air ampacity from 2011 on only", () => {
    // 6 AWG copper at 75 °C in free air: 95 A in every edition held (table 310.17), which 2008 does not.
    const found = ampacityEditions({
      installation: "free air",
      size: "6 AWG",
      material: "copper",
      insulationTemperature: celsius(75),
      ampacity: amperes(95),
    });
    expect(found.value).not.toContain("NEC 2008");
    expect(found.value).toContain("NEC 2011");
  });

  it("have named factors for their own wires only", () => {
    const wire = { table: "wire maker, 30 °C", column: "150", size: "14 AWG", ambient: celsius(50) } as const;
    const call = (insulation: string) => () => namedWireAmpacity({ ...wire, insulation });
    expectRefusal(call("200"), "inconsistent", "insulation", "another column");
    expectRefusal(call("ambient"), "unknown-name", "insulation", "no insulation at all");
  });
});

const plant: IecEdition = {
  name: "plant rules 4",
  system: "IEC",
  capacity: [
    {
      insulation: "glass",
      material: "copper",
      conductorTemperature: celsius(300),
      label: "P-1",
      baseAmbient: celsius(50),
      baseConditions: ["in air"],
      table: table(
        ["size", "open 3"],
        [
          [2.5, null],
          [6, 10],
          [16, 100],
        ],
        "mm²",
      ),
    },
  ],
  ambient: [
    {
      label: "P-2",
      baseAmbient: celsius(50),
      table: table(
        ["ambient", "glass"],
        [
          [50, 1],
          [90, 0.5],
        ],
      ),
    },
  ],
  deviceRatings: { label: "P-3", table: table(["rating"], [[15], [40]]) },
};
const cable = {
  edition: plant,
  method: "open",
  loadedConductors: 3,
  insulation: "glass",
  material: "copper",
  ambient: celsius(50),
  circuits: 1,
} as const;

describe("a made-up IEC edition with gaps", () => {
  const { ambient: _, ...still } = cable;
  const load =
    (size: string, edition = plant) =>
    () =>
      loadForCable({ ...cable, edition, size, deviceKind: "circuit-breaker" });
  const hottest =
    (size: string, edition = plant) =>
    () =>
      ambientForCable({ ...still, edition, size, deviceKind: "circuit-breaker", designCurrent: amperes(12) });

  it("has no cable where the size is blank, nor one that carries less than the smallest device", () => {
    expect(editionIssues(plant)).toEqual([]);
    expectRefusal(load("2.5 mm²"), "outside-table", "size", "blank");
    expectRefusal(load("6 mm²"), "outside-table", "size", "10 A, less than 15 A");
    expect(load("16 mm²")().value).toBe(40);
    expectRefusal(hottest("2.5 mm²"), "outside-table", "size", "blank");
    expectRefusal(hottest("6 mm²"), "inconsistent", "size", "10 A, less than 15 A");
    expect(hottest("16 mm²")().value).toBe(90);
  });

  it("says which table it lacks", () => {
    const { capacity, ambient, ...rest } = plant;
    const calls: [() => unknown, RegExp][] = [
      [load("16 mm²", rest as typeof plant), /holds .*which plant rules 4 does not/],
      [hottest("16 mm²", { ...rest, capacity } as typeof plant), /ambient factors of base 50 °C/],
      [
        () =>
          cableAmbientFactor({
            edition: { ...rest, capacity } as typeof plant,
            insulation: "glass",
            ambient: celsius(60),
            baseAmbient: celsius(50),
          }),
        /ambient air factors/,
      ],
      [() => groupingFactor({ edition: plant, arrangement: "touching", circuits: 2 }), /grouping/],
      [() => cableCapacity({ ...cable, edition: rest as typeof plant, size: "16 mm²" }), /capacity/],
    ];
    expect(ambient).toBeDefined();
    for (const [call, words] of calls) {
      expectRefusal(call, "missing", "edition", "a table short");
      expect(call).toThrow(words);
    }
  });
});

describe("the gate", () => {
  it.each([
    ["ampacity.0.table.columns.1", 7, "ampacity.0.table.columns.1.name", "missing"],
    ["smallConductors.table.rows.0.1", "", "smallConductors.table.rows.0.1", "missing"],
  ])("names %s = %j", (path, value, reported, code) => {
    const found = editionIssues(spoiled(works, path, value)).map((one) => [one.path, one.code]);
    expect(found).toContainEqual([`edition.${reported}`, code]);
  });
});
