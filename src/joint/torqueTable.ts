/** Tightening torques by named table; the maker's value always first. */
import bus from "../../shared/tables/torque-bus-bolts.json" with { type: "json" };
import conical from "../../shared/tables/torque-conical-washers.json" with { type: "json" };
import nonferrous from "../../shared/tables/torque-nonferrous-maximum.json" with { type: "json" };
import switchgear from "../../shared/tables/torque-switchgear-metric.json" with { type: "json" };
import telecom from "../../shared/tables/torque-telecom-minimum.json" with { type: "json" };
import type { Basis } from "../material/index.ts";
import {
  checkMeasurable,
  checkOneOf,
  given,
  type NewtonMeters,
  newtonMeters,
  poundForceInches,
  type Warning,
} from "../quantity/index.ts";
import { basisOf, type Cell, cellNumber, JOINT_DEFERRAL, rowNamed, type SharedTable } from "./basis.ts";
import { checkText } from "./check.ts";

/**
 * Named torque tables.
 * @since 0.1.0
 */
export type TorqueTable =
  | "telecom-minimum"
  | "switchgear-metric"
  | "nonferrous-maximum"
  | "bus-bolts"
  | "conical-washers";

/**
 * Whether a torque is a least, a greatest or a usual value, or the maker's own.
 * @since 0.1.0
 */
export type TorqueKind = "minimum" | "maximum" | "typical" | "maker";

/**
 * A tightening torque with what it is.
 * @since 0.1.0
 */
export interface TighteningTorque {
  /** The torque (N·m). */
  readonly torque: NewtonMeters;
  /** Least, greatest, usual, or the maker's. */
  readonly kind: TorqueKind;
  /** Where it comes from. */
  readonly basis: Basis;
  /** To whom it defers. */
  readonly deferral: string;
  /** What the reader must know. */
  readonly warnings: readonly Warning[];
}

interface Entry {
  readonly table: SharedTable;
  readonly kind: Exclude<TorqueKind, "maker">;
}

function entryOf(name: TorqueTable): Entry {
  switch (name) {
    case "telecom-minimum":
      return { table: telecom, kind: "minimum" };
    case "switchgear-metric":
      return { table: switchgear, kind: "typical" };
    case "nonferrous-maximum":
      return { table: nonferrous, kind: "maximum" };
    case "bus-bolts":
      return { table: bus, kind: "typical" };
    case "conical-washers":
      return { table: conical, kind: "typical" };
  }
}

/**
 * The row of a thread, under the table's own name for it or by the nominal diameter that the thread's name begins with. Not the other way
 * round: a diameter says nothing of the pitch.
 */
function rowOfThread(table: SharedTable, size: string): readonly Cell[] {
  const diameter = /^#?(\d+(?:\/\d+)?)-\d+$/.exec(size)?.[1] ?? size;
  const nominal = /^\d+$/.test(diameter) ? `#${diameter}` : diameter;
  const found = table.rows.find(([cell]) =>
    [String(cell), ...String(cell).split(" / ")].some((name) => name === size || name === nominal),
  );
  return found ?? rowNamed(table, "size", size);
}

const NAMES = [
  "telecom-minimum",
  "switchgear-metric",
  "nonferrous-maximum",
  "bus-bolts",
  "conical-washers",
] as const;

/**
 * Tightening torque: the maker's value if there is one, else a cell of a named table with its kind.
 *
 * Tables: `telecom-minimum` (grade 2 hardware; columns slottedHead, hexHead, nut, nutOnSocketCap; minimum values),
 * `switchgear-metric` (mainCircuit, generalConnection, insertNut), `nonferrous-maximum` (stainless18-8, brass,
 * siliconBronze, stainless316; maximum values, dry), `bus-bolts` (bronzeStainlessGalvanized, aluminumLubricated),
 * `conical-washers` (oneWasher, twoWashers). They disagree, since they stand for different hardware: show the kind. A
 * minimum is no target for a weaker stud, a maximum no target at all. Torque the turned nut cold and clean, hold the
 * inner nut of a porcelain-fed stud.
 * @param input.maker - the maker's torque (N·m) and where it is printed; given, it is the answer
 * @param input.table - named table; may be left out when `maker` is given
 * @param input.size - thread or bolt as the table writes it, or the thread's own name: `1/4-20` where the table has `1/4`
 * @param input.column - column of the table
 * @returns torque, kind, basis, deferral
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name` with what is known;
 *   `outside-table` for a blank cell
 * @source telecom battery-plant manuals (1997–1999); switchgear maker's installation guide; production torque guide;
 *   NEMA CC 1-2009; UPS installation manual
 * @example
 * ```ts
 * const { torque, kind } = tighteningTorque({ table: "telecom-minimum", size: "1/4-20", column: "nut" });
 * [toPoundForceInches(torque), kind] // => [65, "minimum"]
 * ```
 * @since 0.1.0
 */
export function tighteningTorque(input: {
  readonly maker?: { readonly torque: NewtonMeters; readonly source: string };
  readonly table?: TorqueTable;
  readonly size?: string;
  readonly column?: string;
}): TighteningTorque {
  given(input, "input");
  const { maker } = input;
  if (maker !== undefined) {
    given(maker, "maker");
    checkText("maker.source", maker.source);
    checkMeasurable("maker.torque", maker.torque, "N·m");
    const basis: Basis = {
      source: maker.source,
      edition: "as given",
      table: "maker's instruction",
      kind: "user table",
    };
    return { torque: maker.torque, kind: "maker", basis, deferral: JOINT_DEFERRAL, warnings: [] };
  }
  const name = checkOneOf("table", input.table, NAMES);
  const { table, kind } = entryOf(name);
  const row = rowOfThread(table, input.size as string);
  const torques = table.columns.filter(({ name: one }) => one !== "size" && !one.endsWith("Metric"));
  const column = checkOneOf(
    "column",
    input.column,
    torques.map(({ name: one }) => one),
  );
  const at = table.columns.findIndex((one) => one.name === column);
  const value = cellNumber(row, at, "column");
  const unit = table.columns[at]?.unit;
  const warnings: Warning[] = [
    {
      code: "assumed",
      path: "maker",
      message: "No torque of the maker was given; the maker's value comes before any table.",
    },
  ];
  if (kind !== "typical") {
    warnings.push({
      code: "caution",
      path: "torque",
      message:
        kind === "minimum"
          ? "This is a minimum value for grade 2 hardware, not a target for a weaker stud."
          : "This is a maximum value, not a recommended one.",
    });
  }
  return {
    torque: unit === "N·m" ? newtonMeters(value) : poundForceInches(value),
    kind,
    basis: basisOf(table),
    deferral: JOINT_DEFERRAL,
    warnings,
  };
}
