/** Names of tables in their editions, and what tells an old figure from a new one. */
import { amperes, celsius } from "electroheat/quantity";
import { ampacityEditions, type CodeResult, cableCapacity } from "electroheat/wiring";
import { describe, expect, it } from "vitest";
import { changedIn2011 } from "./coefficients.ts";
import { tableNamed } from "./tables.ts";

const necSince2011 = ["NEC 2011", "NEC 2014", "NEC 2017", "NEC 2020", "NEC 2023"];

describe("where a table stands in the IEC family, and whether that name was read", () => {
  // Typed from the contents of the standards; "memory" where the page with the figures names the standard only.
  const names: readonly (readonly [string, string | null, string, string])[] = [
    ...[2, 3, 4, 5, 10, 12].map((n) => [`iec-b52-${n}`, null, `Table B.52.${n}`, "memory"] as const),
    ["iec-method-d-2001-pvc", null, "Tables 52-C1, 52-C3", "memory"],
    ["iec-method-d-2001-xlpe", null, "Tables 52-C2, 52-C4", "memory"],
    ["bs-7671-4e1a-conduit", null, "Table 4E1A", "seen"],
    ["bs-7671-4e1a-free-air", null, "Table 4E1A", "seen"],
    ["iec-60204-1-capacity", null, "Table 6", "memory"],
    ["iec-60204-1-ambient", null, "ambient factors", "memory"],
    ["iec-b52-14-ambient", null, "Table B.52.14", "memory"],
    ["bs-7671-4b1-ambient", null, "Table 4B1", "seen"],
    ["iec-b52-17-grouping", "IEC 60364-5-52:2009", "Table B.52.17", "memory"],
    ["iec-b52-17-grouping", "BS 7671:2008", "Table 4C1", "seen"],
    ["iec-grouping-simplified", null, "Fig. G21b", "seen"],
    ["bs-7671-4f2a", null, "Table 4F2A", "seen"],
    ["bs-7671-4f3a", null, "Table 4F3A", "seen"],
    ["bs-7671-4f2a-ambient", null, "Table 4F2A, ambient factors", "seen"],
    ["bs-7671-4f3a-ambient", null, "Table 4F3A, ambient factors", "seen"],
    ["iec-60898-ratings", null, "IEC 60898-1", "seen"],
    ["iec-60269-ratings", null, "IEC 60269-1", "memory"],
    ["iec-overload-factors", null, "IEC 60364-4-43, 433.1", "memory"],
    ["iec-protective-conductors", null, "Table 54.2", "memory"],
    ["iec-disconnection-times", null, "Table 41.1", "seen"],
    ["iec-disconnection-other", null, "411.3.2.3, 411.3.2.4", "memory"],
    ["iec-60364-6-insulation", null, "Table 6.1", "memory"],
    ["iec-60204-1-insulation", null, "18.3", "memory"],
    ["appliance-leakage", null, "13.2", "seen"],
  ];

  it("is what the table of clauses says, and every one of them is a table", () => {
    expect(tableNamed("iec-clauses").rows).toEqual(names.map(([id, of, ...rest]) => [id, of ?? "", ...rest]));
    for (const [id] of names) expect(tableNamed(id).rows.length, id).toBeGreaterThan(0);
  });

  it("reaches the cell, beside the provenance of the figure, and the caution says which of the two is weak", () => {
    const cable = {
      method: "B2",
      loadedConductors: 3,
      material: "copper",
      circuits: 1,
      ambient: celsius(30),
    };
    const of = (method: string): CodeResult<unknown> =>
      cableCapacity({
        ...cable,
        edition: "IEC 60364-5-52:2009",
        insulation: "PVC",
        size: "16 mm²",
        method,
      });
    // 16 mm² B2 was read in a reprint that does not number the table; B1 is from memory altogether.
    expect(of("B2").cells[0]).toMatchObject({ provenance: "seen", labelProvenance: "memory" });
    expect(of("B2").cautions.join(" ")).toContain("the figures were");
    expect(of("B1").cells[0]).toMatchObject({ provenance: "memory", labelProvenance: "memory" });
    expect(of("B1").cautions.join(" ")).toContain("a figure that was not read");
    const british = cableCapacity({
      ...cable,
      edition: "BS 7671:2008",
      method: "B1",
      insulation: "XLPE",
      size: "16 mm²",
    });
    expect([british.provenance, british.table]).toEqual(["seen", "Table 4E1A"]);
    expect(british.cautions.join(" ")).not.toContain("not read");
  });

  it("methods in words among the base conditions (a guide to IEC 60364-5-52)", () => {
    const words = (
      method: string,
      insulation: string,
      edition: "IEC 60364-5-52:2009" | "IEC 60364-5-52:2001",
    ) =>
      cableCapacity({
        edition,
        method,
        insulation,
        loadedConductors: 3,
        material: "copper",
        size: "50 mm²",
        ambient: celsius(edition.endsWith("2001") ? 20 : 30),
        circuits: 1,
      }).baseConditions.at(-1);
    const now = "IEC 60364-5-52:2009";
    expect(words("A1", "PVC", now)).toMatch(/single-core cables in conduit in a thermally insulated wall/);
    expect(words("A2", "XLPE", now)).toMatch(/multicore cable in conduit in a thermally insulated wall/);
    expect(words("B1", "PVC", now)).toMatch(/single-core cables in conduit on a wall/);
    expect(words("B2", "PVC", now)).toMatch(/multicore cable in conduit on a wall/);
    expect(words("C", "PVC", now)).toMatch(/fixed on a wall/);
    expect(words("E", "PVC", now)).toMatch(/multicore cable in free air/);
    expect(words("F trefoil", "PVC", now)).toMatch(/method F: single-core cables touching/);
    expect(words("G horizontal", "PVC", now)).toMatch(/method G: conductors spaced/);
    expect(words("D", "PVC", "IEC 60364-5-52:2001")).toMatch(/duct in the ground/);
  });
});

describe("a figure of 2008 and earlier", () => {
  it.each(changedIn2011)("%s %s: %d A then, %d A since 2011", (size, column, old, now) => {
    const [material = "", temperature] = column.split(" ");
    const ask = (ampacity: number): readonly string[] =>
      ampacityEditions({
        installation: "raceway",
        size: /\/|^\d\d?$/.test(size) ? `${size} AWG` : `${size} kcmil`,
        material,
        insulationTemperature: celsius(Number(temperature)),
        ampacity: amperes(ampacity),
      }).value;
    expect(ask(old)).toEqual(["NEC 2008"]);
    expect(ask(now)).toEqual(necSince2011);
    expect(ask(old + 1000)).toEqual([]);
  });
});
