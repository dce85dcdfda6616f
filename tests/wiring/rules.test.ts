/**
 * Rules kept as small tables: clauses, equipment classes, limits of insulation and leakage. Figures typed from the documents named beside
 * them; what was not read in print says so in the answer.
 */
import { amperes, celsius, kilowatts, megaohms, toMegaohms, volts } from "electroheat/quantity";
import {
  acceptanceTable,
  ambientFactor,
  ampacityEditions,
  type CodeResult,
  cableCapacity,
  conductorCountFactor,
  conductorResistancePerLength,
  DEFERRAL,
  designCurrent,
  dryOutGuidance,
  insulationType,
  insulationVerdicts,
  largestApplianceDevice,
  largestDevice,
  leakageLimit,
  loadForCable,
  lugFit,
  type NecEdition,
  namedWireAmpacity,
  polarizationIndex,
  standardDevice,
  subdivision,
  tableAmpacity,
  terminalTorque,
  terminationTemperature,
  voltageDrop,
} from "electroheat/wiring";
import { describe, expect, it } from "vitest";
import { tableNamed } from "./tables.ts";

const YEARS = ["NEC 2008", "NEC 2011", "NEC 2014", "NEC 2017", "NEC 2020", "NEC 2023"] as const;

describe("where a table stands in each edition (NFPA 70, contents of the editions)", () => {
  const ampacity = (edition: NecEdition, installation: string): string =>
    tableAmpacity({
      edition,
      installation,
      size: "6 AWG",
      material: "copper",
      insulationTemperature: celsius(installation.startsWith("high") ? 150 : 75),
    }).table;
  const factor = (edition: NecEdition, base: number): string =>
    ambientFactor({
      edition,
      baseAmbient: celsius(base),
      insulationTemperature: celsius(75),
      ambient: celsius(45),
    }).table;
  const middle = <T>(old: T | null, mid: T, y2020: T, y2023: T): (T | null)[] => [
    old,
    mid,
    mid,
    mid,
    y2020,
    y2023,
  ];

  it("ampacity tables", () => {
    expect(YEARS.map((year) => ampacity(year, "raceway"))).toEqual(
      middle("Table 310.16", "Table 310.15(B)(16)", "Table 310.16", "Table 310.16"),
    );
    expect(YEARS.map((year) => ampacity(year, "high-temperature raceway"))).toEqual(
      middle("Table 310.18", "Table 310.15(B)(18)", "Table 310.18", "Table 310.18"),
    );
    expect(YEARS.slice(1).map((year) => ampacity(year, "free air"))).toEqual(
      middle(null, "Table 310.15(B)(17)", "Table 310.17", "Table 310.17").slice(1),
    );
  });

  it("factors: 310.15(B)(2)(a) is the count table before 2011 and the ambient table until 2017", () => {
    const count = YEARS.map(
      (edition) => conductorCountFactor({ edition, currentCarryingConductors: 5 }).table,
    );
    expect(count).toEqual(
      middle("Table 310.15(B)(2)(a)", "Table 310.15(B)(3)(a)", "Table 310.15(C)(1)", "Table 310.15(C)(1)"),
    );
    expect(YEARS.slice(1).map((year) => factor(year, 30))).toEqual(
      middle(null, "Table 310.15(B)(2)(a)", "Table 310.15(B)(1)", "Table 310.15(B)(1)(1)").slice(1),
    );
    expect(YEARS.slice(1).map((year) => factor(year, 40))).toEqual(
      middle(null, "Table 310.15(B)(2)(b)", "Table 310.15(B)(2)", "Table 310.15(B)(1)(2)").slice(1),
    );
  });

  it("insulation types, standard ratings, resistance, small conductors", () => {
    expect(YEARS.map((edition) => insulationType({ edition, type: "Z" }).table)).toEqual(
      middle("Table 310.13(A)", "Table 310.104(A)", "Table 310.4(A)", "Table 310.4(1)"),
    );
    expect(
      YEARS.map((edition) => standardDevice({ edition, current: amperes(3), direction: "up" }).table),
    ).toEqual(middle("240.6(A)", "240.6(A)", "Table 240.6(A)", "Table 240.6(A)"));
    const of = { size: "14 AWG", build: "solid", metal: "aluminum", temperature: celsius(75) } as const;
    for (const edition of YEARS) {
      expect(conductorResistancePerLength({ edition, ...of }).table).toBe("Chapter 9, Table 8");
      expect(terminationTemperature({ edition, circuitRating: amperes(9) }).table).toBe("110.14(C)(1)");
      expect(largestApplianceDevice({ edition, current: amperes(20) }).table).toBe("422.11(E)");
      expect(
        largestDevice({ edition, size: "14 AWG", material: "copper", ampacity: amperes(20) }).table,
      ).toBe("240.4(D)");
    }
  });
});

describe("equipment classes (NFPA 70, clauses in the table)", () => {
  const cases: readonly (readonly [string, NecEdition, string, string | null, number | null, string])[] = [
    ["space heating", "NEC 2017", "424.3(B)", "424.22(B)", 48, "seen"],
    ["space heating", "NEC 2020", "424.4(B)", "424.22(B)", 48, "seen"],
    ["space heating", "NEC 2008", "424.3(B)", "424.22(B)", 48, "seen"],
    ["process heating", "NEC 2014", "210.19(A)(1), 210.20(A)", null, null, "memory"],
    ["process heating", "NEC 2017", "425.4(B)", "425.22(B)", 48, "memory"],
    ["process heating", "NEC 2023", "425.4(B)", "425.22(B)", 48, "memory"],
    ["appliance", "NEC 2017", "210.19(A)(1), 210.20(A)", "422.11(F)(1)", 48, "seen"],
    ["appliance", "NEC 2023", "210.19(A), 210.20(A)", "422.11(F)(1)", 48, "seen"],
    ["commercial cooking appliance", "NEC 2011", "210.19(A)(1), 210.20(A)", "422.11(F)(2)", 120, "seen"],
    ["commercial cooking appliance", "NEC 2020", "210.19(A), 210.20(A)", "422.11(F)(2)", 120, "seen"],
    ["deicing and snow melting", "NEC 2023", "426.4", null, null, "seen"],
    ["pipe and vessel heating", "NEC 2023", "427.4", null, null, "seen"],
    [
      "furnace standard",
      "NEC 2017",
      "210.19(A), 210.20(A)",
      "NFPA 86 electrical heating section: not required",
      null,
      "memory",
    ],
    ["machine", "NEC 2023", "210.19(A), 210.20(A)", null, null, "memory"],
    ["continuous load", "NEC 2017", "210.19(A)(1), 210.20(A)", null, null, "seen"],
    ["continuous load", "NEC 2023", "210.19(A), 210.20(A)", null, null, "seen"],
    ["feeder", "NEC 2023", "215.2(A)(1), 215.3", null, null, "seen"],
  ];
  it.each(cases)("%s in %s", (equipment, edition, clause, splitClause, load, provenance) => {
    const design = designCurrent({ edition, equipment, heaterCurrent: amperes(100) });
    expect([design.value, design.factor, design.table, design.provenance]).toEqual([
      125,
      1.25,
      clause,
      provenance,
    ]);
    const split = subdivision({ edition, equipment, current: amperes(121) });
    expect([split.largestLoad, split.value]).toEqual([load, load === 48 ? 3 : load === 120 ? 2 : 1]);
    if (splitClause !== null) expect(split.table).toBe(splitClause);
    if (load === 120) {
      // One circuit of 120 A, device 150 A, and the next current is split.
      const whole = subdivision({ edition, equipment, current: amperes(120) });
      expect([whole.value, whole.device]).toEqual([1, 150]);
    }
    expect(design.cautions.some((text) => text.includes("not read in print"))).toBe(provenance === "memory");
  });

  it("are exactly these in each edition", () => {
    const listed = tableNamed("nec-heating-rules").rows;
    const years = YEARS.map((edition) => Number(edition.slice(4)));
    for (const [name, from, to, , factor, , load, device] of listed) {
      expect(years, `${name}`).toContain(from);
      expect(years, `${name}`).toContain(to);
      // 48 · 1.25 is 60 and 120 · 1.25 is 150: that is why the two figures of a clause go together.
      expect(device, `${name}`).toBe(load === null ? null : Number(factor) * Number(load));
    }
    for (const edition of YEARS) {
      const year = Number(edition.slice(4));
      const names = listed
        .filter((row) => year >= Number(row[1]) && year <= Number(row[2]))
        .map((row) => row[0]);
      expect(new Set(names).size).toBe(names.length);
      expect(names).toHaveLength(10);
    }
  });
});

describe("insulation limits by their owners", () => {
  const minimum = (
    criteria: Parameters<typeof insulationVerdicts>[0]["criteria"],
    nominal: number,
  ): number[] =>
    insulationVerdicts({
      resistance: megaohms(1000),
      nominalVoltage: volts(nominal),
      testVoltage: volts(500),
      temperature: celsius(20),
      criteria,
    }).map((verdict) => toMegaohms(verdict.minimum));

  it("IEC 60364-6 Table 6.1: 1 MΩ, 0.5 MΩ for SELV and PELV; IEC 60204-1 (memory): 1 MΩ", () => {
    expect(minimum(["IEC 60364-6", "IEC 60364-6 SELV or PELV", "IEC 60204-1"], 48)).toEqual([1, 0.5, 1]);
    expect(minimum(["IEC 60364-6", "IEC 60204-1"], 400)).toEqual([1, 1]);
    // Extra-low voltage ends at 50 V alternating, 120 V direct: IEC 60364-4-41, 414, from memory.
    expect(minimum(["IEC 60364-6 SELV or PELV"], 120)).toEqual([0.5]);
    expect(() => minimum(["IEC 60364-6 SELV or PELV"], 121)).toThrow(/at most 120/);
    expect(() => minimum(["IEC 60364-6 SELV or PELV"], 480)).toThrow(/at most 120/);
    const test = (nominal: number): (string | undefined)[] =>
      insulationVerdicts({
        resistance: megaohms(2),
        nominalVoltage: volts(nominal),
        testVoltage: volts(500),
        temperature: celsius(20),
        criteria: ["IEC 60364-6"],
      }).map((verdict) => verdict.warnings[0]?.message);
    expect(minimum(["IEC 60364-6"], 690)).toEqual([1]);
    expect(test(500)).toEqual([undefined]);
    expect(test(501)[0]).toContain("1000 V");
  });

  it("test voltages: 500 V, 250 V for SELV and PELV, 1000 V above 500 V; NETA 500 and 1000 V; makers 500 V or none", () => {
    const wanted = (nominal: number): (number | undefined)[] =>
      insulationVerdicts({
        resistance: megaohms(2),
        nominalVoltage: volts(nominal),
        testVoltage: volts(50),
        temperature: celsius(20),
        criteria: [
          "IEC 60364-6",
          ...(nominal > 120 ? [] : ["IEC 60364-6 SELV or PELV" as const]),
          "IEC 60204-1",
          "NETA 100.1",
          "maker assembly",
          "maker element",
          "maker production",
          "maker storage",
          "1 MΩ per kV",
        ],
      }).map((verdict) => verdict.warnings[0]?.limit);
    expect(wanted(48)).toEqual([500, 250, 500, 500, 500, 500, undefined, undefined, undefined]);
    expect(wanted(240)).toEqual([500, 500, 500, 500, 500, undefined, undefined, undefined]);
    expect(wanted(690)).toEqual([1000, 500, 1000, 500, 500, undefined, undefined, undefined]);
  });

  it("no reading at less than the test voltage passes a limit, and a bad one stays bad: common practice, no published source", () => {
    const at = (resistance: number, test: number) =>
      insulationVerdicts({
        resistance: megaohms(resistance),
        nominalVoltage: volts(480),
        testVoltage: volts(test),
        temperature: celsius(20),
        criteria: ["IEC 60364-6", "1 MΩ per kV"],
      }).map(({ value }) => value);
    expect(at(5, 250)).toEqual(["undecided", "within"]);
    expect(at(5, 499.9)).toEqual(["undecided", "within"]);
    expect(at(5, 500)).toEqual(["within", "within"]);
    expect(at(5, 1000)).toEqual(["within", "within"]);
    expect(at(0.4, 250)).toEqual(["outside", "outside"]);
  });

  it("NETA MTS-2019 Table 100.1 up to 1000 V: 25, 100, 100 MΩ at the edges of its rows", () => {
    expect([250, 250.1, 600, 601, 1000].map((nominal) => minimum(["NETA 100.1"], nominal)[0])).toEqual([
      25, 100, 100, 100, 100,
    ]);
  });

  it("heater makers: 5, 20, 500 and 1 MΩ; the rule of thumb: 1 MΩ per kV, at least 1 MΩ", () => {
    expect(minimum(["maker assembly", "maker element", "maker production", "maker storage"], 480)).toEqual([
      5, 20, 500, 1,
    ]);
    expect([230, 1000, 3300].map((nominal) => minimum(["1 MΩ per kV"], nominal)[0])).toEqual([1, 1, 3.3]);
  });

  it("one's own limit is judged by the same rule, a band that straddles it stays undecided", () => {
    const own = {
      name: "maker of the module",
      minimum: megaohms(10),
      of: "element",
      source: "manual",
    } as const;
    const at = (resistance: number, halfWidth: number, elementsInParallel = 1): string | undefined =>
      insulationVerdicts({
        resistance: megaohms(resistance),
        halfWidth: megaohms(halfWidth),
        nominalVoltage: volts(480),
        testVoltage: volts(500),
        temperature: celsius(20),
        elementsInParallel,
        criteria: [own],
      })[0]?.value;
    expect([at(10, 0), at(9.99, 0), at(10.2, 0.5), at(2, 0.1, 6)]).toEqual([
      "within",
      "outside",
      "undecided",
      "within",
    ]);
  });

  it("IEC 60335-1, 13.2: 0.25, 0.5, 0.75, 3.5 mA, and 0.75 mA/kW between 0.75 and 5 mA", () => {
    const limit = (appliance: Parameters<typeof leakageLimit>[0]["appliance"], kw: number): number =>
      Math.round(1e9 * leakageLimit({ appliance, power: kilowatts(kw) }).value) / 1e6;
    expect(limit("class II", 3)).toBe(0.25);
    expect(limit("class 0, 0I or III", 3)).toBe(0.5);
    expect(limit("class I portable", 3)).toBe(0.75);
    expect(limit("class I stationary, motor-operated", 3)).toBe(3.5);
    expect([0.5, 1, 2, 6.6666, 6.6667, 36].map((kw) => limit("class I stationary, heating", kw))).toEqual([
      0.75, 0.75, 1.5, 4.99995, 5, 5,
    ]);
  });

  it("IEEE 43 by class: 1.5 and 2.0, never as a verdict", () => {
    const found = polarizationIndex({ oneMinute: megaohms(10), tenMinutes: megaohms(9) });
    expect(found.machineMinima.map(({ minimum: least }) => least)).toEqual([1.5, 2]);
    expect(found.cautions.join(" ")).toContain("machine");
  });

  it("dry-out: 110 to 177 °C for 4 h, 149 °C, about 200 °C, or half voltage for 15 min", () => {
    expect(dryOutGuidance().value.map(({ from, to, time }) => [from, to, time])).toEqual([
      [110, 177, 4 * 3600],
      [149, 149, null],
      [200, 200, null],
      [null, null, 900],
    ]);
  });
});

describe("high-temperature insulation (NFPA 70, 310.104(A) and successors, from memory; grouping as in Table 310-18)", () => {
  it.each([
    ["Z", 150, "copper, aluminum"],
    ["FEP", 200, "copper"],
    ["FEPB", 200, "copper"],
    ["PFA", 200, "copper"],
    ["SA", 200, "copper"],
    ["PFAH", 250, "nickel-coated copper"],
    ["TFE", 250, "nickel-coated copper"],
  ])("%s is %s °C", (type, temperature, conductor) => {
    const found = insulationType({ edition: "NEC 2023", type });
    expect([found.value, found.conductor, found.provenance]).toEqual([temperature, conductor, "memory"]);
    for (const material of conductor.split(", ")) {
      const ampacity = tableAmpacity({
        edition: "NEC 2023",
        installation: "high-temperature raceway",
        size: "10 AWG",
        material,
        insulationTemperature: found.value,
      });
      expect(ampacity.value).toBeGreaterThan(40);
    }
  });
});

describe("cautions that go with a table or a row", () => {
  const hot = {
    installation: "high-temperature raceway",
    size: "10 AWG",
    material: "nickel-coated copper",
  } as const;
  it("leads only in the 250 °C column; old figures in the edition of 2008; conditions of 16 AWG", () => {
    const lead = tableAmpacity({ edition: "NEC 2023", ...hot, insulationTemperature: celsius(250) });
    expect(lead.cautions.join(" ")).toContain("leads within apparatus");
    const old = {
      installation: "raceway",
      size: "14 AWG",
      material: "copper",
      insulationTemperature: celsius(60),
    };
    expect(tableAmpacity({ edition: "NEC 2008", ...old }).cautions.join(" ")).toContain(
      "not for work under a later",
    );
    expect(tableAmpacity({ edition: "NEC 2011", ...old }).cautions.join(" ")).not.toContain("not for work");
    const device = (size: string): string =>
      largestDevice({ edition: "NEC 2023", size, material: "copper", ampacity: amperes(18) }).cautions.join(
        " ",
      );
    expect(device("16 AWG")).toContain("load and device conditions");
    expect(device("14 AWG")).not.toContain("conditions");
  });
});

describe("acceptance tables, as printed", () => {
  it("ANSI/NETA ATS-2003 Table 100.18: rise over a similar component, rise over air", () => {
    const found = acceptanceTable({ table: "neta-100.18" });
    expect(
      found.value.map((row) =>
        ["similarFrom", "similarTo", "ambientFrom", "ambientTo"].map((name) => row[name]),
      ),
    ).toEqual([
      [1, 3, 1, 10],
      [4, 15, 11, 20],
      [null, null, 21, 40],
      [15, null, 40, null],
    ]);
    expect([found.edition, found.table, found.kind, found.provenance]).toEqual([
      "ANSI/NETA ATS-2003",
      "Table 100.18",
      "published",
      "seen",
    ]);
    expect(found.cautions.join(" ")).toContain("40 % load");
  });

  it("a practitioner's scale: below 20, 40, 60 K over air, below 5, 20, 40 K between lines", () => {
    const { value, columns } = acceptanceTable({ table: "practitioner-limits" });
    expect(value.map((row) => [row["ambientBelow"], row["similarBelow"]])).toEqual([
      [20, 5],
      [40, 20],
      [60, 40],
      [null, null],
    ]);
    for (const { name, meaning } of columns) expect(`${name} ${meaning}`).toMatch(/\S/);
  });

  it("bolted joints: 1.5 times the lowest, a trigger and no verdict", () => {
    const found = acceptanceTable({ table: "50-percent-above-lowest" });
    expect(found.value.map((row) => row["limit"])).toEqual([1.5]);
    expect(found.cautions[0]).toContain("no verdict");
  });
});

describe("lugs", () => {
  const lug = { smallest: "6 AWG", largest: "2/0 AWG", materials: ["copper"], temperature: celsius(75) };
  const faultsOf = (
    size: string,
    material: string,
    current: number,
    change: object = {},
  ): readonly string[] =>
    lugFit({
      edition: "NEC 2023",
      lug: { ...lug, ...change },
      size,
      material,
      insulationTemperature: celsius(90),
      designCurrent: amperes(current),
    }).faults;

  it("name every fault: Table 310.16, 75 °C, has 65 A for 6 AWG, 175 A for 2/0", () => {
    expect(faultsOf("6 AWG", "copper", 65)).toEqual([]);
    expect(faultsOf("2/0 AWG", "copper", 175)).toEqual([]);
    expect(faultsOf("8 AWG", "copper", 40)).toEqual(["too small"]);
    expect(faultsOf("3/0 AWG", "copper", 40)).toEqual(["too large"]);
    expect(faultsOf("6 AWG", "copper", 66)).toEqual(["termination"]);
    expect(faultsOf("4 AWG", "aluminum", 66)).toEqual(["material", "termination"]);
    expect(faultsOf("4 AWG", "copper", 57.75, { current: amperes(57.7) })).toEqual(["block current"]);
  });

  it("60 °C marks hold 6 AWG to 55 A", () => {
    expect(faultsOf("6 AWG", "copper", 56, { temperature: celsius(60) })).toEqual(["termination"]);
    expect(faultsOf("6 AWG", "copper", 55, { temperature: celsius(60) })).toEqual([]);
  });
});

describe("lugs and the names of metals", () => {
  const held = (material: string, lug: object = {}): ReturnType<typeof lugFit> =>
    lugFit({
      edition: "NEC 2023",
      lug: {
        smallest: "14 AWG",
        largest: "4 AWG",
        materials: ["copper", material],
        temperature: celsius(75),
        ...lug,
      },
      size: "6 AWG",
      material,
      insulationTemperature: celsius(90),
      designCurrent: amperes(60),
    });

  it("aluminum is held to its own column, and no other spelling to that of copper: Table 310.16, 75 °C, has 50 and 65 A", () => {
    expect([held("aluminum").value, held("aluminum").terminationAmpacity]).toEqual(["does not fit", 50]);
    expect([held("copper").value, held("copper").terminationAmpacity]).toEqual(["fits", 65]);
    for (const other of ["aluminium", "Al", "Copper"]) {
      expect(() => held(other)).toThrow(
        /^material: .* is not allowed; expected one of copper, aluminum, nickel-coated copper$/,
      );
    }
  });

  it("a mark that is misspelled is no mark left out: the block's current would not count", () => {
    expect(held("copper", { current: amperes(50) }).faults).toEqual(["block current"]);
    expect(() => held("copper", { curent: amperes(50) })).toThrow(
      /^lug\.curent: .*expected one of smallest, largest/,
    );
  });
});

describe("lugs hotter than the code's columns", () => {
  const held = (current: number, change: object = {}): ReturnType<typeof lugFit> =>
    lugFit({
      edition: "NEC 2023",
      lug: {
        smallest: "6 AWG",
        largest: "2/0 AWG",
        materials: ["copper"],
        temperature: celsius(150),
        ...change,
      },
      size: "4 AWG",
      material: "copper",
      insulationTemperature: celsius(200),
      designCurrent: amperes(current),
    });

  it("are undecided: Table 310.16 ends at 90 °C, so no column bounds 500 A", () => {
    const found = held(500);
    expect([found.value, found.faults, found.governing, found.terminationAmpacity]).toEqual([
      "undecided",
      [],
      "termination",
      null,
    ]);
    expect(found.warnings[0]?.path).toBe("lug.temperature");
    expect(found.cells.map((cell) => [cell.kind, cell.provenance])).toEqual([["user table", "memory"]]);
  });

  it("still name the faults that are plain", () => {
    expect(held(500, { current: amperes(200) }).value).toBe("does not fit");
    expect(held(500, { largest: "6 AWG" }).faults).toEqual(["too large"]);
  });
});

describe("voltage drop", () => {
  it("with reactance: I·(r·cos φ + x·sin φ), by hand", () => {
    const found = voltageDrop({
      circuit: "two-wire",
      current: amperes(10),
      length: 100 as never,
      resistancePerLength: 0.001 as never,
      reactancePerLength: 0.0005 as never,
      powerFactor: 0.8,
      supplyVoltage: volts(230),
    });
    // 2 · 10 A · 100 m · (0.001 · 0.8 + 0.0005 · 0.6) Ω/m
    expect(found.drop).toBeCloseTo(2.2, 12);
    expect(found.warnings).toEqual([]);
  });

  it("warns above 3 %, not at it", () => {
    const at = (supply: number): number =>
      voltageDrop({
        circuit: "two-wire",
        current: amperes(10),
        length: 100 as never,
        resistancePerLength: 0.0015 as never,
        supplyVoltage: volts(supply),
      }).warnings.length;
    expect([at(100), at(99.9)]).toEqual([0, 1]);
  });
});

describe("every answer", () => {
  const raceway = { edition: "NEC 2023", installation: "raceway", material: "copper" } as const;
  const cable = {
    edition: "IEC 60364-5-52:2009",
    method: "C",
    loadedConductors: 3,
    insulation: "XLPE",
    material: "copper",
    ambient: celsius(45),
    circuits: 4,
    arrangement: "single layer on wall",
    size: "25 mm²",
  } as const;
  const answers: readonly CodeResult<unknown>[] = [
    tableAmpacity({ ...raceway, size: "4 AWG", insulationTemperature: celsius(75) }),
    cableCapacity(cable),
    loadForCable({ ...cable, deviceKind: "gG fuse" }),
    designCurrent({ edition: "BS 7671:2008", heaterCurrent: amperes(9) }),
    namedWireAmpacity({ table: "BS 7671 4F2A", column: "two-core", size: "16 mm²", ambient: celsius(30) }),
    dryOutGuidance(),
    polarizationIndex({ oneMinute: megaohms(1), tenMinutes: megaohms(1) }),
    leakageLimit({ appliance: "class II", power: kilowatts(1) }),
    terminalTorque({ drive: { kind: "external hexagon" }, size: "4 AWG" }),
    acceptanceTable({ table: "neta-100.18" }),
    acceptanceTable({ table: "practitioner-limits" }),
    acceptanceTable({ table: "50-percent-above-lowest" }),
    ampacityEditions({
      installation: "raceway",
      size: "4 AWG",
      material: "copper",
      insulationTemperature: celsius(75),
      ampacity: amperes(1),
    }),
  ];
  it("carries system, edition, table, row, column, base conditions, what governs, kind, provenance, note", () => {
    for (const answer of answers) {
      for (const field of [
        "system",
        "edition",
        "table",
        "row",
        "column",
        "governing",
        "kind",
        "provenance",
      ] as const) {
        expect(answer[field], `${answer.table} ${field}`).toMatch(/\S/);
      }
      expect(answer.baseConditions.length, answer.table).toBeGreaterThan(0);
      expect(answer.deferral).toBe(DEFERRAL);
      expect(answer.cells.length).toBeGreaterThan(0);
      expect(new Set(answer.cells.map(({ system }) => system)).size, "one system only").toBe(1);
      expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
    }
  });

  it("rests on sources that are in the bibliography", () => {
    const known = (tableNamed("../sources") as unknown as { id: string }[]).map(({ id }) => id);
    for (const answer of answers) for (const { source } of answer.cells) expect(known).toContain(source);
  });
});
