/** Capacity tables of the IEC family by edition. */

import conduit from "../../shared/tables/bs-7671-4e1a-conduit.json" with { type: "json" };
import free2 from "../../shared/tables/bs-7671-4e1a-free-air.json" with { type: "json" };
import machine from "../../shared/tables/iec-60204-1-capacity.json" with { type: "json" };
import b2 from "../../shared/tables/iec-b52-2.json" with { type: "json" };
import b3 from "../../shared/tables/iec-b52-3.json" with { type: "json" };
import b4 from "../../shared/tables/iec-b52-4.json" with { type: "json" };
import b5 from "../../shared/tables/iec-b52-5.json" with { type: "json" };
import b10 from "../../shared/tables/iec-b52-10.json" with { type: "json" };
import b12 from "../../shared/tables/iec-b52-12.json" with { type: "json" };
import dPvc from "../../shared/tables/iec-method-d-2001-pvc.json" with { type: "json" };
import dXlpe from "../../shared/tables/iec-method-d-2001-xlpe.json" with { type: "json" };
import { type Celsius, checkOneOf, fail } from "../quantity/index.ts";
import type { CapacityTable, IecEdition } from "./edition.ts";
import { checkedEdition } from "./editionGate.ts";
import { labelledIec, methodInWords } from "./iecClauses.ts";
import { type IecEditionName, iecEditionNames } from "./iecNames.ts";
import { noTable } from "./necTables.ts";
import { nameError, type SharedTable } from "./sharedTable.ts";

/**
 * An edition of the IEC family: one of ours by name, or one of your own.
 * @since 0.1.0
 */
export type Iec = IecEditionName | IecEdition;

/** Either the name of a known edition or the user's own, past the gate. */
export function iecEdition(edition: Iec): { readonly name: string; readonly own: IecEdition | null } {
  if (typeof edition === "object" && edition !== null) {
    const own = checkedEdition(edition);
    if (own.system !== "IEC") {
      fail({
        code: "inconsistent",
        path: "edition.system",
        expected: "IEC: systems are never mixed",
        received: own.system,
      });
    }
    return { name: own.name, own };
  }
  return { name: checkOneOf("edition", edition, iecEditionNames()), own: null };
}

const AIR = ["loaded conductors only counted", "steady load"];

function held(
  insulation: "PVC" | "XLPE",
  table: SharedTable,
  baseAmbient: number,
  baseConditions: readonly string[] = [`air at ${baseAmbient} °C`, "one circuit, alone", ...AIR],
): CapacityTable {
  const conductorTemperature = (insulation === "PVC" ? 70 : 90) as Celsius;
  return {
    ...labelledIec(table),
    insulation,
    material: "copper",
    conductorTemperature,
    baseAmbient: baseAmbient as Celsius,
    baseConditions,
  };
}

/** Capacity tables of an edition. */
function capacityTables(edition: Iec): {
  readonly name: string;
  readonly tables: readonly CapacityTable[];
} {
  const { name, own } = iecEdition(edition);
  if (own !== null) return { name, tables: own.capacity ?? [] };
  const buried = ["ground at 20 °C, 2.5 K·m/W", "one circuit, alone"];
  if (name === "IEC 60364-5-52:2001") {
    return {
      name,
      tables: [held("PVC", dPvc, 20, buried), held("XLPE", dXlpe, 20, buried)],
    };
  }
  if (name === "BS 7671:2008") {
    return { name, tables: [held("XLPE", conduit, 30), held("XLPE", free2, 30)] };
  }
  if (name === "IEC 60204-1:2005") return { name, tables: [held("PVC", machine, 40)] };
  return {
    name,
    tables: [
      held("PVC", b2, 30),
      held("XLPE", b3, 30),
      held("PVC", b4, 30),
      held("XLPE", b5, 30),
      held("PVC", b10, 30),
      held("XLPE", b12, 30),
    ],
  };
}

/** The table and column of a cable run; what the edition does not have is answered with what it has. */
export function capacityColumn(input: {
  readonly edition: Iec;
  readonly method: string;
  readonly loadedConductors: number;
  readonly insulation: string;
  readonly material: string;
}): { readonly name: string; readonly from: CapacityTable; readonly column: string } {
  const { method, insulation, material } = input;
  const { name, tables } = capacityTables(input.edition);
  if (tables.length === 0) return noTable("a capacity table", input.edition);
  const unknown = (path: string, received: unknown, known: readonly string[]): never =>
    fail({
      code: nameError(received),
      path,
      expected: `one of ${[...new Set(known)].join(", ")} (${name})`,
      received,
    });
  const ofMaterial = tables.filter((one) => one.material === material);
  if (ofMaterial.length === 0)
    unknown(
      "material",
      material,
      tables.map((one) => one.material),
    );
  const ofInsulation = ofMaterial.filter((one) => one.insulation === insulation);
  if (ofInsulation.length === 0)
    unknown(
      "insulation",
      insulation,
      ofMaterial.map((one) => one.insulation),
    );
  const column = `${method} ${input.loadedConductors}`;
  const from = ofInsulation.find((one) => one.table.columns.some((each) => each.name === column));
  if (from !== undefined) {
    const words = typeof input.edition === "string" ? methodInWords(column) : [];
    return { name, column, from: { ...from, baseConditions: [...from.baseConditions, ...words] } };
  }
  const columns = ofInsulation.flatMap((one) => one.table.columns.slice(1).map((each) => each.name));
  const methods = columns.filter((each) => each !== "read").map((each) => each.replace(/ [23]$/, ""));
  const count = columns.filter((each) => each.startsWith(`${method} `));
  return count.length > 0
    ? unknown(
        "loadedConductors",
        input.loadedConductors,
        count.map((each) => each.slice(-1)),
      )
    : unknown("method", method, methods);
}
