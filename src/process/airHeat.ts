/** Heat that dry air takes up between two temperatures, from the published table of specific heat. */
import table from "../../shared/tables/air-incropera-a4.json" with { type: "json" };
import { bracketedRoot } from "../numeric/index.ts";
import {
  type Celsius,
  fail,
  type JoulesPerKilogram,
  type JoulesPerKilogramKelvin,
  toAbsoluteKelvins,
  toCelsius,
} from "../quantity/index.ts";

const ZERO_CELSIUS = 273.15;

/** Specific heat in a row; the table gives it for every row. */
const heatOf = (row: number): number => table.rows[row]?.[2] as number;
const kelvinOf = (row: number): number => table.rows[row]?.[0] as number;

/** Temperatures between which the table can be read, K. */
function tableEnds(): readonly [number, number] {
  return [kelvinOf(0), kelvinOf(table.rows.length - 1)];
}

function checkInside(path: string, kelvin: number): void {
  const [low, high] = tableEnds();
  if (!(kelvin >= low && kelvin <= high)) {
    fail({
      code: "outside-table",
      path,
      expected: `${low} to ${high} (table ${table.id})`,
      received: kelvin,
      unit: "K",
    });
  }
}

/** Heat from the first row of the table up to a temperature, J/kg: straight lines integrated exactly. */
function heatTo(kelvin: number): number {
  let heat = 0;
  for (let row = 0; row + 1 < table.rows.length && kelvinOf(row) < kelvin; row += 1) {
    const [t0, t1] = [kelvinOf(row), kelvinOf(row + 1)];
    const upper = Math.min(kelvin, t1);
    const slope = (heatOf(row + 1) - heatOf(row)) / (t1 - t0);
    heat += (upper - t0) * (heatOf(row) + (slope * (upper - t0)) / 2);
  }
  return heat;
}

/** Specific heat at a temperature inside the table, on the straight line between two rows. */
export function airSpecificHeat(kelvin: number): JoulesPerKilogramKelvin {
  let row = 0;
  while (row + 2 < table.rows.length && kelvinOf(row + 1) < kelvin) row += 1;
  const [t0, t1] = [kelvinOf(row), kelvinOf(row + 1)];
  const part = (kelvin - t0) / (t1 - t0);
  return (heatOf(row) + part * (heatOf(row + 1) - heatOf(row))) as JoulesPerKilogramKelvin;
}

/** Temperatures at which the straight lines of the table meet, °C. */
export function airKinks(): readonly number[] {
  return table.rows.map((row) => (row[0] as number) - ZERO_CELSIUS);
}

/**
 * Heat that one kilogram of dry air takes up at constant pressure from one temperature to another: the integral of
 * the tabulated specific heat, straight lines between rows. Negative when it cools.
 * @param input.from - temperature before, °C, −23.15 to 1226.85
 * @param input.to - temperature after, °C, −23.15 to 1226.85
 * @returns heat per mass, J/kg
 * @throws ElectroheatError `missing`, `not-a-number`, `outside-table`
 * @source Incropera, DeWitt, Bergman, Lavine, Fundamentals of Heat and Mass Transfer, Table A.4
 * @example
 * ```ts
 * airHeatContent({ from: fahrenheit(70), to: fahrenheit(400) }) / 183.3333 // => 1013.843
 * ```
 * @since 0.1.0
 */
export function airHeatContent(input: { readonly from: Celsius; readonly to: Celsius }): JoulesPerKilogram {
  const [from, to] = [toAbsoluteKelvins(input.from), toAbsoluteKelvins(input.to)];
  checkInside("from", from);
  checkInside("to", to);
  return (heatTo(to) - heatTo(from)) as JoulesPerKilogram;
}

/**
 * Mean specific heat of dry air between two temperatures: {@link airHeatContent} / (to − from); at equal
 * temperatures the specific heat itself.
 * @param input.from - one temperature, °C, −23.15 to 1226.85
 * @param input.to - the other, °C, −23.15 to 1226.85
 * @returns mean specific heat at constant pressure, J/(kg·K)
 * @throws ElectroheatError `missing`, `not-a-number`, `outside-table`
 * @source Incropera, DeWitt, Bergman, Lavine, Fundamentals of Heat and Mass Transfer, Table A.4
 * @example
 * ```ts
 * airMeanSpecificHeat({ from: celsius(20), to: celsius(200) }) // => 1013.5104
 * ```
 * @since 0.1.0
 */
export function airMeanSpecificHeat(input: {
  readonly from: Celsius;
  readonly to: Celsius;
}): JoulesPerKilogramKelvin {
  const heat = airHeatContent(input);
  // Closer than this the difference of two integrals has lost its digits.
  if (Math.abs(input.to - input.from) >= 1e-3) {
    return (heat / (input.to - input.from)) as JoulesPerKilogramKelvin;
  }
  return airSpecificHeat((toAbsoluteKelvins(input.from) + toAbsoluteKelvins(input.to)) / 2);
}

/** Temperature of air that has taken up `heat` J/kg from `inlet`. */
export function airTemperatureAfter(inlet: Celsius, heat: number): Celsius {
  const from = toAbsoluteKelvins(inlet);
  checkInside("inlet", from);
  const [, high] = tableEnds();
  const wanted = heatTo(from) + heat;
  if (!(wanted <= heatTo(high))) {
    fail({
      code: "outside-table",
      path: "power",
      expected: `an outlet up to ${toCelsius((high - ZERO_CELSIUS) as Celsius)} °C (table ${table.id}); less power or more flow`,
      received: `${heat} J/kg`,
    });
  }
  if (wanted === heatTo(high)) return (high - ZERO_CELSIUS) as Celsius;
  const found = bracketedRoot({
    evaluate: (kelvin) => heatTo(kelvin) - wanted,
    low: from,
    high,
    tolerance: 1e-12,
  });
  return (found.root - ZERO_CELSIUS) as Celsius;
}
