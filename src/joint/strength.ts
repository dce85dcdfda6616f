/** Strength of bolts and studs by standard and grade. An unknown material is refused, never assumed. */
import f593 from "../../shared/tables/bolt-strength-astm-f593.json" with { type: "json" };
import iso898 from "../../shared/tables/bolt-strength-iso-898-1.json" with { type: "json" };
import iso3506 from "../../shared/tables/bolt-strength-iso-3506-1.json" with { type: "json" };
import j429 from "../../shared/tables/bolt-strength-sae-j429.json" with { type: "json" };
import c36000 from "../../shared/tables/stud-strength-brass-c36000.json" with { type: "json" };
import type { Basis } from "../material/index.ts";
import {
  checkMeasurable,
  checkOneOf,
  fail,
  given,
  inches,
  kipsPerSquareInch,
  type Meters,
  megapascals,
  millimeters,
  type Pascals,
  toInches,
  toMillimeters,
  type Warning,
} from "../quantity/index.ts";
import { basisOf, type Cell, JOINT_DEFERRAL, rowNamed, type SharedTable } from "./basis.ts";

/**
 * Standards and data sheets whose grades are known here.
 * @since 0.1.0
 */
export type StrengthStandard = "ISO 898-1" | "SAE J429" | "ISO 3506-1" | "ASTM F593" | "brass C36000";

/**
 * What a printed strength is: a guaranteed `minimum`, a `typical` value, the end of a `range` over all tempers, or a
 * `database` value of unknown standing. Only a minimum is a strength to design on.
 * @since 0.1.0
 */
export type StrengthKind = "minimum" | "typical" | "range" | "database";

/**
 * Strength of a fastener. What the source does not give is `null`.
 * @since 0.1.0
 */
export interface FastenerStrength {
  /** Proof stress (Pa); for stainless the stress at 0.2 % permanent strain. */
  readonly proof: Pascals | null;
  /** Yield strength (Pa). */
  readonly yield: Pascals | null;
  /** Tensile strength, minimum unless the sheet says otherwise (Pa). */
  readonly tensile: Pascals | null;
  /** The limit preload is held against: proof where there is one, else yield (Pa). */
  readonly limit: Pascals;
  /** What the printed values are. */
  readonly kind: StrengthKind;
  /** Sizes the row holds for (m), the upper one included; `null` where the source prints none. */
  readonly sizes: {
    /** Smallest, m. */
    readonly from: Meters;
    /** Largest, m. */
    readonly to: Meters;
  } | null;
  /** The table. */
  readonly basis: Basis;
  /** To whom it defers. */
  readonly deferral: string;
  /** What the reader must know. */
  readonly warnings: readonly Warning[];
}

const STANDARDS = ["ISO 898-1", "SAE J429", "ISO 3506-1", "ASTM F593", "brass C36000"] as const;

function tableOf(standard: StrengthStandard): SharedTable {
  switch (standard) {
    case "ISO 898-1":
      return iso898;
    case "SAE J429":
      return j429;
    case "ISO 3506-1":
      return iso3506;
    case "ASTM F593":
      return f593;
    case "brass C36000":
      return c36000;
  }
}

/** The row of a grade for a size: `above` excludes its own edge, `from` includes it. */
function rowFor(table: SharedTable, grade: string, diameter: Meters): readonly Cell[] {
  const first = rowNamed(table, "grade", grade);
  const names = table.columns.map(({ name }) => name);
  const to = names.indexOf("toDiameter");
  if (to < 0 || first[to] === null) return first;
  const size = table.columns[to]?.unit === "in" ? toInches(diameter) : toMillimeters(diameter);
  // A size that came through another unit may stand 1 part in 1e15 off its edge.
  const reach = 1e-12 * size;
  const open = names[to - 1] === "aboveDiameter";
  const found = table.rows.find((row) => {
    const [low, high] = [Number(row[to - 1]), Number(row[to])];
    return row[0] === grade && (open ? size > low + reach : size >= low - reach) && size <= high + reach;
  });
  return (
    found ??
    fail({
      code: "outside-table",
      path: "diameter",
      expected: `a size the standard gives ${grade} for`,
      received: size,
      unit: String(table.columns[to]?.unit),
    })
  );
}

/** Sizes of a row, in meters. */
function sizesOf(table: SharedTable, row: readonly Cell[]): FastenerStrength["sizes"] {
  const to = table.columns.findIndex(({ name }) => name === "toDiameter");
  const [low, high] = [row[to - 1], row[to]];
  if (typeof low !== "number" || typeof high !== "number") return null;
  const meters = table.columns[to]?.unit === "in" ? inches : millimeters;
  return { from: meters(low), to: meters(high) };
}

/**
 * Proof, yield and tensile strength of a bolt or stud by standard, grade and size.
 *
 * Read the grade from the head marking; a stud without marking has no grade, and none is assumed: brass alone runs
 * from 15 to 52 ksi yield by temper and size. A brass rod minimum holds up to the size it is printed for. Whatever is
 * no minimum (typical, range, database) comes with a caution, and the upper end of a range is refused: it is the
 * strength of no stud you hold. The stainless classes are stated for −20 to +150 °C; they and the brass bar rows print
 * no sizes (`sizes` is `null`).
 * @param input.standard - standard or data sheet
 * @param input.grade - grade, property class or marking as the standard writes it, such as `8.8`, `5`, `A2-70`,
 *   `F593C`
 * @param input.diameter - nominal diameter (m), more than 0
 * @returns strengths, what they are, sizes, basis, deferral, warnings
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name` with what is known;
 *   `outside-table` for a size the standard does not give the grade for; `not-identifiable` for the upper end of a range
 * @source ISO 898-1; SAE J429; ISO 3506-1:2020; ASTM F593; C36000 alloy data
 * @example
 * ```ts
 * const { proof } = fastenerStrength({ standard: "ISO 898-1", grade: "8.8", diameter: millimeters(8) });
 * proof === null ? null : toMegapascals(proof) // => 580
 * ```
 * @since 0.1.0
 */
export function fastenerStrength(input: {
  readonly standard: StrengthStandard;
  readonly grade: string;
  readonly diameter: Meters;
}): FastenerStrength {
  given(input);
  const standard = checkOneOf("standard", input.standard, STANDARDS);
  checkMeasurable("diameter", input.diameter, "m");
  const table = tableOf(standard);
  const row = rowFor(table, input.grade, input.diameter);
  const stress = (name: string): Pascals | null => {
    const at = table.columns.findIndex((column) => column.name === name);
    const value = row[at];
    if (typeof value !== "number") return null;
    return table.columns[at]?.unit === "ksi" ? kipsPerSquareInch(value) : megapascals(value);
  };
  const [proof, yielding] = [stress("proof"), stress("yield")];
  const limit = proof ?? yielding;
  if (limit === null) {
    return fail({
      code: "outside-table",
      path: "grade",
      expected: "a grade with a proof or yield value",
      received: input.grade,
    });
  }
  const names = table.columns.map(({ name }) => name);
  const kind = (names.includes("sheet") ? row[names.indexOf("sheet")] : "minimum") as StrengthKind;
  const first = row[0] as string;
  if (kind === "range" && first.endsWith("highest")) {
    return fail({
      code: "not-identifiable",
      path: "grade",
      expected:
        "a temper and size, or the lowest of all tempers: the highest of them is no strength to design on",
      received: input.grade,
    });
  }
  const warnings: Warning[] = [];
  if (kind !== "minimum") {
    warnings.push({
      code: "caution",
      path: "grade",
      message: `A ${kind} value, not a minimum: your stud can be weaker. Design on the minimum of the temper and size you hold.`,
      source: table.source,
    });
  }
  const sizes = sizesOf(table, row);
  if (sizes === null && names.includes("toDiameter")) {
    warnings.push({
      code: "assumed",
      path: "diameter",
      message: "The source prints no size for this row: whether it holds for this diameter is not known.",
      source: table.source,
    });
  }
  return {
    proof,
    yield: yielding,
    tensile: stress("tensile"),
    limit,
    kind,
    sizes,
    basis: basisOf(table),
    deferral: JOINT_DEFERRAL,
    warnings,
  };
}
