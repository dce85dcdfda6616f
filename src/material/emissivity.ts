/** Emissivity by surface. It is a property of the surface, not of the metal, and always a range. */
import alloys from "../../shared/tables/emissivity-heating-alloys.json" with { type: "json" };
import metals from "../../shared/tables/emissivity-metals.json" with { type: "json" };
import surfaces from "../../shared/tables/emissivity-surfaces.json" with { type: "json" };
import { type Celsius, fail } from "../quantity/index.ts";
import { type Basis, basisOf } from "./basis.ts";

/**
 * One printed emissivity.
 * @since 0.1.0
 */
export interface EmissivityRow {
  /** Surface as the source names it. */
  readonly surface: string;
  /** Temperature it was given for, °C; null where the source gives none. */
  readonly temperature: Celsius | null;
  /** Lowest emissivity, 0 to 1. */
  readonly lowest: number;
  /** Highest emissivity, 0 to 1. */
  readonly highest: number;
  /** Where it is printed. */
  readonly basis: Basis;
}

/**
 * What the sources give for a surface.
 * @since 0.1.0
 */
export interface EmissivityRange {
  /** Lowest emissivity of all rows, 0 to 1. */
  readonly lowest: number;
  /** Highest emissivity of all rows, 0 to 1. */
  readonly highest: number;
  /** The rows. */
  readonly rows: readonly EmissivityRow[];
}

function all(): readonly EmissivityRow[] {
  const single = alloys.rows.map(([surface, at, value, source]) => [
    surface,
    at,
    value,
    value,
    { ...basisOf(alloys), source: source as string },
  ]);
  const ranged = metals.rows.map(([surface, low, high]) => [surface, null, low, high, basisOf(metals)]);
  const document = surfaces.rows.map((row) => [...row.slice(0, 4), basisOf(surfaces)]);
  return [...single, ...ranged, ...document].map(([surface, temperature, lowest, highest, basis]) => ({
    surface: surface as string,
    temperature: temperature as Celsius | null,
    lowest: lowest as number,
    highest: highest as number,
    basis: basis as Basis,
  }));
}

/**
 * Printed emissivities of the surfaces that match all words, and their range. Bright and oxidized copper differ
 * by a factor of ten and more, which is the largest error of a thermal scan: describe the surface, not the metal.
 * @param words - words of the surface's name in any order: "copper polished", "nicr oxidized"
 * @returns every matching row with its source, and the range over all
 * @throws ElectroheatError `missing`, `wrong-type`, `unknown-name` that lists the known surfaces
 * @source radiation-thermometer and thermal-camera makers' compilations, named in the rows
 * @example
 * ```ts
 * const copper = emissivity("copper polished");
 * [copper.lowest, copper.highest] // => [0.02, 0.05]
 * ```
 * @since 0.1.0
 */
export function emissivity(words: string): EmissivityRange {
  const known = all();
  const names = (): string => [...new Set(known.map(({ surface }) => surface))].join("; ");
  if (words !== undefined && words !== null && typeof words !== "string") {
    return fail({
      code: "wrong-type",
      path: "words",
      expected: "words of a surface's name",
      received: words,
    });
  }
  const asked = (words ?? "")
    .toLowerCase()
    .split(/[\s,]+/)
    .filter((word) => word !== "");
  const rows = known.filter(({ surface }) => asked.every((word) => surface.toLowerCase().includes(word)));
  if (asked.length === 0 || rows.length === 0) {
    const code = asked.length === 0 ? "missing" : "unknown-name";
    return fail({ code, path: "words", expected: `words of one of ${names()}`, received: words });
  }
  return {
    lowest: Math.min(...rows.map((row) => row.lowest)),
    highest: Math.max(...rows.map((row) => row.highest)),
    rows,
  };
}
