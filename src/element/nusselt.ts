/** Nusselt numbers of a cylinder in moving and in still air: each correlation by its own name. */
import hilpert from "../../shared/tables/hilpert-cross-flow.json" with { type: "json" };
import morgan from "../../shared/tables/morgan-free-convection.json" with { type: "json" };
import zukauskas from "../../shared/tables/zukauskas-cross-flow.json" with { type: "json" };
import {
  checkNonNegative,
  checkPositive,
  fail,
  finiteResult,
  given,
  type Warning,
} from "../quantity/index.ts";

/**
 * Correlations for a cylinder across moving air.
 * @since 0.1.0
 */
export type ForcedCorrelation = "churchill-bernstein" | "hilpert" | "zukauskas";

/**
 * Correlations for a horizontal cylinder in still air.
 * @since 0.1.0
 */
export type FreeCorrelation = "churchill-chu" | "morgan";

/**
 * A Nusselt number and what must be known about it.
 * @since 0.1.0
 */
export interface NusseltNumber {
  /** Film coefficient times diameter over conductivity of the air. */
  readonly nusselt: number;
  /** Empty when the correlation was made for such numbers. */
  readonly warnings: readonly Warning[];
}

/** One table of constants of a power law, in ranges of its argument. */
interface PowerTable {
  readonly id: string;
  readonly source: string;
  readonly rows: readonly (readonly number[])[];
}

/** Constant and exponent at an argument; outside the table those of the nearest range, and `inside` false. */
function rangeAt(table: PowerTable, x: number): { c: number; exponent: number; inside: boolean } {
  const last = table.rows.length - 1;
  let row = 0;
  while (row < last && x >= (table.rows[row]?.[1] as number)) row += 1;
  const [from, to, c, exponent] = table.rows[row] as readonly [number, number, number, number];
  return { c, exponent, inside: x >= from && x < to };
}

/** A value with whether its source covers it. The solver tries places outside; only its result is judged. */
export interface Judged {
  readonly value: number;
  readonly inside: boolean;
  /** The range in words, for messages. */
  readonly range: string;
  readonly source: string;
  /** A table of constants says nothing outside its ranges; a closed form still gives a number. */
  readonly isTable: boolean;
}

function powerLaw(table: PowerTable, symbol: string, x: number, rest: number): Judged {
  const { c, exponent, inside } = rangeAt(table, x);
  const [first, last] = [table.rows[0]?.[0], table.rows.at(-1)?.[1]];
  const range = `${symbol} from ${first} to less than ${last}`;
  return { value: c * x ** exponent * rest, inside, range, source: table.source, isTable: true };
}

/** Nusselt number in cross flow. `surfacePrandtl` is used by Žukauskas only. */
export function forcedNusselt(
  correlation: ForcedCorrelation,
  reynolds: number,
  prandtl: number,
  surfacePrandtl: number,
): Judged {
  if (correlation === "hilpert") return powerLaw(hilpert, "Re", reynolds, Math.cbrt(prandtl));
  if (correlation === "zukauskas") {
    return powerLaw(zukauskas, "Re", reynolds, prandtl ** 0.37 * (prandtl / surfacePrandtl) ** 0.25);
  }
  const laminar =
    (0.62 * Math.sqrt(reynolds) * Math.cbrt(prandtl)) / (1 + (0.4 / prandtl) ** (2 / 3)) ** 0.25;
  const value = 0.3 + laminar * (1 + (reynolds / 282_000) ** 0.625) ** 0.8;
  const source = "churchill-bernstein-1977";
  return { value, inside: reynolds * prandtl > 0.2, range: "Re·Pr above 0.2", source, isTable: false };
}

/** Nusselt number in still air. */
export function freeNusselt(correlation: FreeCorrelation, rayleigh: number, prandtl: number): Judged {
  if (correlation === "morgan") return powerLaw(morgan, "Ra", rayleigh, 1);
  const root = 0.6 + (0.387 * rayleigh ** (1 / 6)) / (1 + (0.559 / prandtl) ** (9 / 16)) ** (8 / 27);
  const source = "churchill-chu-1975";
  return { value: root * root, inside: rayleigh <= 1e12, range: "Ra up to 1e12", source, isTable: false };
}

/** The warning for a closed form outside its range; outside a table there is no number to warn about. */
export function validity(judged: Judged, path: string, received: number): readonly Warning[] {
  if (judged.inside) return [];
  const expected = `${judged.range} (${judged.source})`;
  if (judged.isTable) return fail({ code: "outside-table", path, expected, received });
  const message = `the correlation asks for ${expected}; here it is ${Number(received.toPrecision(4))}`;
  return [{ code: "outside-validity", path, message, source: judged.source }];
}

function result(judged: Judged, path: string, received: number): NusseltNumber {
  return { warnings: validity(judged, path, received), nusselt: finiteResult(judged.value, "1") };
}

/**
 * Churchill–Bernstein: Nu = 0.3 + 0.62·Re^½·Pr^⅓/[1 + (0.4/Pr)^⅔]^¼·[1 + (Re/282000)^⅝]^⅘, film properties.
 *
 * No convection answer deserves better than ±15 %: on one measured point three correlations differ by 17 %.
 * @param input.reynolds - air speed times diameter over kinematic viscosity at film temperature, more than 0
 * @param input.prandtl - Prandtl number of the air at film temperature, more than 0
 * @returns the Nusselt number, with a warning when Re·Pr is 0.2 or less
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source S. W. Churchill and M. Bernstein, Journal of Heat Transfer 99 (1977) 300; Incropera eq. 7.54
 * @example
 * ```ts
 * nusseltChurchillBernstein({ reynolds: 6071, prandtl: 0.7 }) // => { nusselt: 40.63709, warnings: [] }
 * ```
 * @since 0.1.0
 */
export function nusseltChurchillBernstein(input: {
  readonly reynolds: number;
  readonly prandtl: number;
}): NusseltNumber {
  given(input);
  checkPositive("reynolds", input.reynolds);
  checkPositive("prandtl", input.prandtl);
  const judged = forcedNusselt("churchill-bernstein", input.reynolds, input.prandtl, input.prandtl);
  return result(judged, "reynolds", input.reynolds * input.prandtl);
}

/**
 * Hilpert: Nu = C·Re^m·Pr^⅓, film properties, constants by range of Re. Sources print 0.027 or 0.0266 in the last range.
 * @param input.reynolds - air speed times diameter over kinematic viscosity at film temperature, within the table
 * @param input.prandtl - Prandtl number of the air at film temperature, more than 0
 * @returns the Nusselt number
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `outside-table` outside 0.4 to 400,000
 * @source R. Hilpert (1933); Incropera Table 7.2
 * @example
 * ```ts
 * nusseltHilpert({ reynolds: 1000, prandtl: 0.7 }) // => { nusselt: 15.163, warnings: [] }
 * ```
 * @since 0.1.0
 */
export function nusseltHilpert(input: {
  readonly reynolds: number;
  readonly prandtl: number;
}): NusseltNumber {
  given(input);
  checkPositive("reynolds", input.reynolds);
  checkPositive("prandtl", input.prandtl);
  return result(forcedNusselt("hilpert", input.reynolds, input.prandtl, 1), "reynolds", input.reynolds);
}

/**
 * Žukauskas: Nu = C·Re^m·Pr^0.37·(Pr/Pr_surface)^¼, free-stream properties, constants by range of Re, Pr up to 10.
 * @param input.reynolds - air speed times diameter over kinematic viscosity at air temperature, within the table
 * @param input.prandtl - Prandtl number of the air at its own temperature, more than 0
 * @param input.surfacePrandtl - Prandtl number of air at surface temperature, more than 0
 * @returns the Nusselt number
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `outside-table` outside 1 to 1,000,000
 * @source A. Žukauskas, Advances in Heat Transfer 8 (1972) 93; Incropera Table 7.4
 * @example
 * ```ts
 * nusseltZukauskas({ reynolds: 7992, prandtl: 0.707, surfacePrandtl: 0.69 }) // => { nusselt: 50.52361, warnings: [] }
 * ```
 * @since 0.1.0
 */
export function nusseltZukauskas(input: {
  readonly reynolds: number;
  readonly prandtl: number;
  readonly surfacePrandtl: number;
}): NusseltNumber {
  given(input);
  const { reynolds, prandtl, surfacePrandtl } = input;
  checkPositive("reynolds", reynolds);
  checkPositive("prandtl", prandtl);
  checkPositive("surfacePrandtl", surfacePrandtl);
  return result(forcedNusselt("zukauskas", reynolds, prandtl, surfacePrandtl), "reynolds", reynolds);
}

/**
 * Churchill–Chu for a horizontal cylinder in still air: Nu = {0.60 + 0.387·Ra^⅙/[1 + (0.559/Pr)^(9/16)]^(8/27)}².
 *
 * Low by up to a quarter for thin wires (Ra 1 to 1000); {@link nusseltMorgan} sides with measurements there.
 * @param input.rayleigh - g·(surface − air)·diameter³/(film absolute temperature·ν·α), 0 or more
 * @param input.prandtl - Prandtl number of the air at film temperature, more than 0
 * @returns the Nusselt number, with a warning above Ra 1e12
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source S. W. Churchill and H. H. S. Chu, International Journal of Heat and Mass Transfer 18 (1975) 1049
 * @example
 * ```ts
 * nusseltChurchillChu({ rayleigh: 100_000, prandtl: 0.7 }) // => { nusselt: 7.764132, warnings: [] }
 * ```
 * @since 0.1.0
 */
export function nusseltChurchillChu(input: {
  readonly rayleigh: number;
  readonly prandtl: number;
}): NusseltNumber {
  given(input);
  checkNonNegative("rayleigh", input.rayleigh);
  checkPositive("prandtl", input.prandtl);
  return result(freeNusselt("churchill-chu", input.rayleigh, input.prandtl), "rayleigh", input.rayleigh);
}

/**
 * Morgan for a horizontal cylinder in still air: Nu = C·Ra^n, constants by range of Ra, with steps of up to 0.8 % between them.
 * @param input.rayleigh - g·(surface − air)·diameter³/(film absolute temperature·ν·α), within the table
 * @returns the Nusselt number
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `outside-table` outside 1e-10 to 1e12
 * @source V. T. Morgan, Advances in Heat Transfer 11 (1975) 199; Incropera Table 9.1
 * @example
 * ```ts
 * nusseltMorgan({ rayleigh: 1000 }) // => { nusselt: 3.114719, warnings: [] }
 * ```
 * @since 0.1.0
 */
export function nusseltMorgan(input: { readonly rayleigh: number }): NusseltNumber {
  given(input);
  checkPositive("rayleigh", input.rayleigh);
  return result(freeNusselt("morgan", input.rayleigh, 1), "rayleigh", input.rayleigh);
}
