/**
 * Refusals and words that no worked example leads to, whole: what is listed, where, and in which unit. Sizes of sockets are those of
 * UL 486A-B, Table I.3 (an inch is 25.4 mm), classes and years those of the file of heating rules, blank cells those of the tables.
 */
import { amperes, celsius, millimeters } from "electroheat/quantity";
import * as wiring from "electroheat/wiring";
import {
  ambientFactor,
  ambientForCable,
  ambientForConductor,
  cableAmbientFactor,
  cableCapacity,
  conductorAmpacity,
  designCurrent,
  editionIssues,
  editionJsonSchema,
  groupingFactor,
  loadForConductor,
  namedWireAmpacity,
  subdivision,
  tableAmpacity,
  terminalTorque,
} from "electroheat/wiring";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { factsOf } from "../../src/catalogue/facts.ts";
import { CHANGES, examples } from "../support/examples.ts";
import { readJson, type Table } from "../support/shared.ts";
import { spoiled } from "../support/spoil.ts";
import { refusal } from "../support/told.ts";
import { answers } from "./answers.ts";
import { ours, oursIec } from "./wholeEditions.ts";

const NEC = ["NEC 2008", "NEC 2011", "NEC 2014", "NEC 2017", "NEC 2020", "NEC 2023"] as const;
const IEC = ["IEC 60364-5-52:2009", "IEC 60364-5-52:2001", "BS 7671:2008", "IEC 60204-1:2005"] as const;
const rows = (id: string) => (readJson(`shared/tables/${id}.json`) as Table).rows;

describe("editions", () => {
  it("list the classes they have rules for, each once", () => {
    for (const edition of NEC) {
      const year = Number(edition.slice(4));
      const held = rows("nec-heating-rules").filter(
        ([, from, to]) => Number(from) <= year && year <= Number(to),
      );
      expect(refusal(() => designCurrent({ edition, equipment: "kiln", heaterCurrent: amperes(1) }))).toEqual(
        [
          "unknown-name",
          "equipment",
          `one of ${held.map(([name]) => name).join(", ")} (${edition})`,
          '"kiln"',
          undefined,
        ],
      );
      for (const [equipment, , , clause] of held)
        expect(
          designCurrent({ edition, equipment: String(equipment), heaterCurrent: amperes(1) }).table,
          `${equipment} ${edition}`,
        ).toBe(clause);
    }
  });

  const functions = Object.keys(factsOf("wiring").functions).filter((name) =>
    examples("wiring", name).some((one) => "edition" in one),
  );
  const call = (name: string, input: object, edition: unknown) => () =>
    (wiring as unknown as Record<string, (one: object) => unknown>)[name]?.({ ...input, edition });
  /** What a function refuses of an edition; undefined where it answers, or refuses something else. */
  const ofEdition = (name: string, input: object, edition: unknown): string | undefined => {
    try {
      call(name, input, edition)();
    } catch {
      const [, path, expected] = refusal(call(name, input, edition));
      return path === "edition" ? expected : undefined;
    }
    return undefined;
  };

  it.each(functions)("%s lists the editions that hold what it needs, and no others", (name) => {
    for (const input of examples("wiring", name)) {
      const { edition } = input as { readonly edition: string };
      const family = (NEC as readonly unknown[]).includes(edition) ? NEC : IEC;
      for (const one of family) {
        const said = ofEdition(name, input, one);
        if (said === undefined) continue;
        // Where none of ours holds it, one's own is asked for.
        const [, what, listed] =
          /^an edition that holds (.+?): (.+)$/.exec(said) ??
          /^an edition of your own that holds (.+)$/.exec(said) ??
          [];
        expect(what ?? said, name).toMatch(/\S/);
        const names = listed?.split(", ") ?? [];
        expect(names, said).not.toContain(one);
        for (const other of family)
          expect(ofEdition(name, input, other) === undefined, `${said}: ${other}`).toBe(
            names.includes(other),
          );
      }
      // One's own that holds nothing lacks whatever is asked for first.
      const own = { name: "works rules 1", system: family === NEC ? "North America" : "IEC" };
      const said = ofEdition(name, input, own);
      if (said !== undefined)
        expect(said, name).toMatch(
          /^(?:an edition of your own that holds \S.*, which works rules 1 does not|one of NEC)/,
        );
    }
  });

  it("are refused for a table that only some hold", () => {
    const hot = { insulationTemperature: celsius(90), ambient: celsius(45), baseAmbient: celsius(30) };
    expect(refusal(() => ambientFactor({ ...hot, edition: "NEC 2008" }))[2]).toBe(
      `an edition that holds ambient factors: ${NEC.slice(1).join(", ")}`,
    );
    const cable = { insulation: "PVC", ambient: celsius(45), baseAmbient: celsius(20) };
    expect(refusal(() => cableAmbientFactor({ ...cable, edition: "IEC 60364-5-52:2001" }))[2]).toBe(
      "an edition that holds ambient air factors: IEC 60364-5-52:2009, BS 7671:2008, IEC 60204-1:2005",
    );
    for (const edition of ["IEC 60364-5-52:2001", "IEC 60204-1:2005"] as const)
      expect(refusal(() => groupingFactor({ edition, arrangement: "bunched", circuits: 3 }))[2]).toBe(
        "an edition that holds grouping factors: IEC 60364-5-52:2009, BS 7671:2008",
      );
    const buried = {
      edition: "IEC 60364-5-52:2001",
      method: "D",
      loadedConductors: 3,
      insulation: "PVC",
      material: "copper",
      circuits: 1,
      size: "16 mm²",
      designCurrent: amperes(20),
      deviceKind: "circuit-breaker",
    } as const;
    // Factors of the ground are held in none.
    expect(refusal(() => ambientForCable(buried))).toEqual([
      "unknown-name",
      "edition",
      "an edition of your own that holds ambient factors of base 20 °C",
      '"IEC 60364-5-52:2001"',
      undefined,
    ]);
  });
});

const run = {
  edition: "NEC 2023",
  installation: "raceway",
  material: "copper",
  insulationTemperature: celsius(75),
  ambient: celsius(30),
  currentCarryingConductors: 3,
  terminalTemperature: celsius(75),
} as const;

describe("blank cells", () => {
  it("are told by table and column, of the size that was asked for", () => {
    // 14 AWG aluminum and 18 AWG copper at 75 °C are blank in Table 310.16.
    expect(refusal(() => tableAmpacity({ ...run, size: "18 AWG" }))).toEqual([
      "outside-table",
      "size",
      "a size with a figure in column copper 75 of Table 310.16",
      '"18 AWG"',
      undefined,
    ]);
    expect(refusal(() => conductorAmpacity({ ...run, material: "aluminum", size: "14 AWG" }))).toEqual([
      "outside-table",
      "size",
      "a size with a figure in column aluminum 75 of Table 310.16 and in the terminal's column",
      '"14 AWG"',
      undefined,
    ]);
    // A maker's figures for the thickest wire end in one column before the other.
    const maker = rows("wire-maker-30");
    const { columns } = readJson("shared/tables/wire-maker-30.json") as Table;
    const blank = maker.flatMap((row) =>
      columns.flatMap(({ name }, i) => (row[i] === null && name !== "read" ? [[String(row[0]), name]] : [])),
    );
    for (const [size, column = ""] of blank)
      expect(
        refusal(() =>
          namedWireAmpacity({
            table: "wire maker, 30 °C",
            column,
            size: `${size} AWG`,
            ambient: celsius(30),
          }),
        ),
      ).toEqual([
        "outside-table",
        "size",
        `a size with a figure in column ${column} of 30 °C table`,
        `"${size} AWG"`,
        undefined,
      ]);
  });

  it("of capacities too", () => {
    const { columns, rows: sizes } = readJson("shared/tables/iec-b52-10.json") as Table;
    const at = columns.findIndex(({ name }) => name === "F 2");
    const row = sizes.find((one) => one[at] === null);
    const found = refusal(() =>
      cableCapacity({
        edition: "IEC 60364-5-52:2009",
        method: "F",
        loadedConductors: 2,
        insulation: "PVC",
        material: "copper",
        ambient: celsius(30),
        circuits: 1,
        size: `${row?.[0]} mm²`,
      }),
    );
    expect(found).toEqual([
      "outside-table",
      "size",
      expect.stringMatching(/^a size with a figure in column F 2 of .*B\.52\.10/),
      `"${row?.[0]} mm²"`,
      undefined,
    ]);
  });
});

describe("contradictions", () => {
  it("of a device found are told in amperes", () => {
    const heater = { ...run, equipment: "process heating", size: "2 AWG" };
    // 115 A at 75 °C permits 125 A; 425.22(B) wants at most 60 A for a part of a split load.
    expect(refusal(() => loadForConductor({ ...heater, device: amperes(150) }))).toEqual([
      "inconsistent",
      "device",
      "at most 125 A, the largest device 2 AWG permits here (next size up)",
      "150",
      "A",
    ]);
    expect(refusal(() => loadForConductor({ ...heater, subdivided: true, device: amperes(100) }))).toEqual([
      "inconsistent",
      "device",
      "at most 60 A, the largest device of a subdivided load (425.22(B))",
      "100",
      "A",
    ]);
    expect(
      refusal(() => ambientForConductor({ ...heater, heaterCurrent: amperes(60), device: amperes(70) })),
    ).toEqual(["inconsistent", "device", "at least the design current of 75", "70", "A"]);
  });

  it("sizes with anything behind or before them are no sizes", () => {
    const sizes = [
      "6 AWG x",
      "x6 AWG",
      "250 kcmil2",
      "x250 kcmil",
      "16 mm²x",
      "16 mm2 2",
      "x16 mm²",
      "1/0/0",
      "5/0",
    ];
    for (const size of sizes)
      expect(
        refusal(() => tableAmpacity({ ...run, size })),
        size,
      ).toEqual(["malformed-text", "size", "a size with AWG, kcmil or mm²", JSON.stringify(size), undefined]);
    for (const size of ["10", "2.5", "250"])
      expect(refusal(() => tableAmpacity({ ...run, size }))[0], size).toBe("ambiguous");
  });

  it("of a system that is not asked for are told by it", () => {
    const american = {
      edition: ours as never,
      insulation: "PVC",
      ambient: celsius(45),
      baseAmbient: celsius(30),
    };
    expect(refusal(() => cableAmbientFactor(american)).slice(0, 4)).toEqual([
      "inconsistent",
      "edition.system",
      "IEC: systems are never mixed",
      '"North America"',
    ]);
    expect(
      refusal(() => tableAmpacity({ ...run, edition: oursIec as never, size: "6 AWG" })).slice(0, 4),
    ).toEqual(["inconsistent", "edition.system", "North America: systems are never mixed", '"IEC"']);
  });

  it("of a terminal between two columns list the columns, and no more", () => {
    const [code, path, expected] = refusal(() =>
      conductorAmpacity({ ...run, size: "6 AWG", terminalTemperature: celsius(70) }),
    );
    expect([code, path]).toEqual(["unknown-name", "terminalTemperature"]);
    expect(expected).toBe(
      "one of the columns copper 60, copper 75, copper 90, aluminum 60, aluminum 75, aluminum 90 (Table 310.16)",
    );
  });

  it("sockets are listed in both units", () => {
    const [, , expected] = refusal(() =>
      terminalTorque({ drive: { kind: "recessed socket", acrossFlats: millimeters(20) } }),
    );
    for (const [inch, mm] of rows("terminal-torque-sockets"))
      expect(expected).toContain(`${mm} mm (${inch} in)`);
  });
});

describe("sums and names", () => {
  it("do not depend on the order of a list, to the last bit", () => {
    const sum = (...currents: number[]) =>
      designCurrent({ edition: "BS 7671:2008", heaterCurrent: currents.map((one) => amperes(one)) }).value;
    // In doubles 0.1 + 0.2 + 0.3 is 0.6000000000000001 and 0.3 + 0.2 + 0.1 is 0.6.
    for (const shuffled of [sum(0.3, 0.2, 0.1), sum(0.2, 0.3, 0.1), sum(0.3, 0.1, 0.2)])
      expect(shuffled).toBe(sum(0.1, 0.2, 0.3));
  });

  it("of a table that two editions share are those of the edition asked", () => {
    const named = rows("iec-clauses").filter(([id]) => id === "iec-b52-17-grouping");
    expect(named.length).toBeGreaterThan(1);
    for (const [, edition, label] of named)
      expect(
        groupingFactor({ edition: edition as "BS 7671:2008", arrangement: "bunched", circuits: 3 }).table,
        String(edition),
      ).toBe(label);
  });
});

describe("words", () => {
  it.each(CHANGES)("a split says why, whatever is done to %s", (change) => {
    for (const [input, found] of answers(subdivision, change)) {
      const rule = rows("nec-heating-rules").find(
        ([name, from, to]) =>
          name === input.equipment &&
          Number(from) <= Number(String(input.edition).slice(4)) &&
          Number(String(input.edition).slice(4)) <= Number(to),
      );
      const limit = rule?.[6] ?? null;
      expect(found.largestLoad).toBe(limit);
      const why = limit === null ? "no subdivision rule" : "within one circuit";
      expect(found.governing).toBe(
        limit !== null && input.current > Number(limit) * (1 + 1e-9) ? "subdivision" : why,
      );
      expect(found.baseConditions).toEqual(["equal circuits", "resistance-type heating elements"]);
    }
  });

  it.each(CHANGES)(
    "the hottest ambient ends where the next row fails or where there is none, whatever is done to %s",
    (change) => {
      const rank = rows("iec-b52-14-ambient").map(([ambient]) => Number(ambient));
      for (const [input, found] of answers(ambientForCable, change)) {
        const next = rank[rank.indexOf(found.value) + 1];
        let hotter: number | undefined;
        try {
          hotter = cableCapacity({ ...input, ambient: celsius(next as number) }).value;
        } catch {
          hotter = undefined;
        }
        expect(found.governing === "end of the factors", JSON.stringify(input)).toBe(hotter === undefined);
        if (hotter !== undefined) expect(hotter).toBeLessThan(found.requiredCapacity);
      }
    },
  );
});

it("a rule of one's own may hold in all years, and have no split", () => {
  const columns = (readJson("shared/tables/nec-heating-rules.json") as Table).columns.map(({ name }) => name);
  const at = (name: string) => columns.indexOf(name);
  for (const name of ["from", "to", "subdivision", "subdivided load", "subdivided device"]) {
    const path = `heatingRules.table.rows.0.${at(name)}`;
    expect(editionIssues(spoiled(ours, path, null)), name).toEqual([]);
  }
  for (const name of ["clause", "factor"]) {
    const path = `heatingRules.table.rows.0.${at(name)}`;
    expect(editionIssues(spoiled(ours, path, null)).map((one) => [one.code, one.path])).toEqual([
      ["missing", `edition.${path}`],
    ]);
  }
});

describe("the schema of an edition", () => {
  it.each([
    ["North America", ours],
    ["IEC", oursIec],
  ] as const)("takes the names that the gate takes: %s", (system, edition) => {
    const schema = z.fromJSONSchema(editionJsonSchema({ system }) as never);
    const family = system === "IEC" ? "capacity" : "ampacity";
    const passes = (one: unknown) => schema.safeParse(JSON.parse(JSON.stringify(one))).success;
    expect(passes(edition)).toBe(true);
    for (const field of ["kind", "provenance"]) {
      const wrong = spoiled(edition, `${family}.0.table.${field}`, "hearsay");
      expect([passes(wrong), editionIssues(wrong).length], field).toEqual([false, 1]);
    }
    for (const conditions of ["in words", [5], {}, 7])
      expect(passes(spoiled(edition, `${family}.0.baseConditions`, conditions)), `${conditions}`).toBe(false);
    const bare = spoiled(edition, `${family}.0.baseConditions`, undefined);
    expect([passes(bare), editionIssues(bare).length]).toEqual([false, 1]);
  });
});
