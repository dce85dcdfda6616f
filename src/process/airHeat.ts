/** Heat that dry air takes up between two temperatures, from the published table of specific heat. */
import table from "../../shared/tables/air-incropera-a4.json" with { type: "json" };
import { bracketedRoot } from "../numeric/index.ts";
import {
  type Celsius,
  checkFinite,
  fail,
  given,
  type JoulesPerKilogram,
  type JoulesPerKilogramKelvin,
} from "../quantity/index.ts";

/** A column of the table by its name. */
function column(name: string): readonly number[] {
  const index = table.columns.findIndex((one) => one.name === name);
  return table.rows.map((row) => row[index] as number);
}

/** Temperatures of the rows in °C: −23.15, not −23.149999999999977. */
function celsiusColumn(): readonly number[] {
  return column("temperature").map((kelvin) => Math.round((kelvin - 273.15) * 100) / 100);
}

// Once, not at each call: an integration asks hundreds of times.
const TEMPERATURES: readonly number[] = /*#__PURE__*/ celsiusColumn();
const HEATS: readonly number[] = /*#__PURE__*/ column("specific heat");
const heatOf = (row: number): number => HEATS[row] as number;
const temperatureOf = (row: number): number => TEMPERATURES[row] as number;

/** Refuses what lies outside the table of air. */
export function checkInside(path: string, t: number): void {
  const [low, high] = [temperatureOf(0), temperatureOf(TEMPERATURES.length - 1)];
  if (!(t >= low && t <= high)) {
    fail({
      code: "outside-table",
      path,
      expected: `${low} to ${high} °C (table ${table.id})`,
      received: t,
      unit: "°C",
    });
  }
}

/** Heat from the first row of the table up to a temperature, J/kg: straight lines integrated exactly. */
function heatTo(t: number): number {
  let heat = 0;
  for (let row = 0; row + 1 < TEMPERATURES.length && temperatureOf(row) < t; row += 1) {
    const [t0, t1] = [temperatureOf(row), temperatureOf(row + 1)];
    const upper = Math.min(t, t1);
    const slope = (heatOf(row + 1) - heatOf(row)) / (t1 - t0);
    heat += (upper - t0) * (heatOf(row) + (slope * (upper - t0)) / 2);
  }
  return heat;
}

/** Specific heat at a temperature inside the table, on the straight line between two rows. */
export function airSpecificHeat(t: number): JoulesPerKilogramKelvin {
  let row = 0;
  while (row + 2 < TEMPERATURES.length && temperatureOf(row + 1) < t) row += 1;
  const [t0, t1] = [temperatureOf(row), temperatureOf(row + 1)];
  const part = (t - t0) / (t1 - t0);
  return (heatOf(row) + part * (heatOf(row + 1) - heatOf(row))) as JoulesPerKilogramKelvin;
}

/** Temperatures at which the straight lines of the table meet, °C. */
export function airKinks(): readonly number[] {
  return TEMPERATURES;
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
  given(input);
  checkFinite("from", input.from, "°C");
  checkFinite("to", input.to, "°C");
  checkInside("from", input.from);
  checkInside("to", input.to);
  return (heatTo(input.to) - heatTo(input.from)) as JoulesPerKilogram;
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
  given(input);
  const heat = airHeatContent(input);
  // Closer than this the difference of two integrals has lost its digits.
  if (Math.abs(input.to - input.from) >= 1e-3) {
    return (heat / (input.to - input.from)) as JoulesPerKilogramKelvin;
  }
  return airSpecificHeat((input.from + input.to) / 2);
}

/** Temperature of air that has taken up `heat` J/kg from `inlet`. */
export function airTemperatureAfter(inlet: Celsius, heat: number): Celsius {
  checkInside("inlet", inlet);
  const high = temperatureOf(TEMPERATURES.length - 1);
  const wanted = heatTo(inlet) + heat;
  if (!(wanted <= heatTo(high))) {
    return fail({
      code: "outside-table",
      path: "power",
      expected: `an outlet up to ${high} °C (table ${table.id}): less power or more flow`,
      received: `${heat} J/kg`,
    });
  }
  if (wanted === heatTo(high)) return high as Celsius;
  const evaluate = (t: number): number => heatTo(t) - wanted;
  return bracketedRoot({ evaluate, low: inlet, high, tolerance: 1e-12 }).root as Celsius;
}
