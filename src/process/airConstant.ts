/** The short-cut constants of air heating: derived from density and specific heat, and what the printed ones hide. */
import table from "../../shared/tables/air-heating-shortcuts.json" with { type: "json" };
import type { Basis, BasisKind } from "../material/index.ts";
import {
  btuItPerPoundFahrenheit,
  checkOneOf,
  cubicFeetPerMinute,
  cubicMetersPerHour,
  fahrenheitDegrees,
  given,
  type JoulesPerKilogramKelvin,
  type KilogramsPerCubicMeter,
  litersPerSecond,
  poundsPerCubicFoot,
  toBtuItPerHour,
  type Watts,
} from "../quantity/index.ts";
import { checkScale } from "./scale.ts";

/**
 * The constant of air heating in the forms people use: power = constant × flow × rise.
 * @since 0.1.0
 */
export interface AirHeatConstant {
  /** Volumetric heat: density × specific heat, J/(m³·K), which is W for each m³/s and K. */
  readonly volumetricHeat: number;
  /** Btu/h for each cfm and Fahrenheit degree: the "1.08". */
  readonly btuPerHourCfmFahrenheit: number;
  /** cfm × Fahrenheit degrees for each kilowatt: the "3160". */
  readonly cfmFahrenheitPerKilowatt: number;
  /** L/s × kelvins for each kilowatt. */
  readonly litersPerSecondKelvinPerKilowatt: number;
  /** m³/h × kelvins for each kilowatt. */
  readonly cubicMetersPerHourKelvinPerKilowatt: number;
}

/**
 * The constant of air heating for a density and specific heat, in the forms people use: density × specificHeat.
 *
 * For a flow counted at other than standard conditions give the density there (`airDensity` of `material`); at 5000 ft the
 * "1.08" is 0.90.
 * @param input.density - density at the place and condition where the flow is counted, kg/m³, more than 0
 * @param input.specificHeat - specific heat, J/(kg·K), more than 0
 * @returns the constant in each form
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition (density × specific heat)
 * @example
 * ```ts
 * const constant = airHeatConstant({
 *   density: standardAirDensity("0.075 lb/ft3"),
 *   specificHeat: btuItPerPoundFahrenheit(0.24),
 * });
 * [constant.btuPerHourCfmFahrenheit, constant.cfmFahrenheitPerKilowatt] // => [1.08, 3159.39]
 * ```
 * @since 0.1.0
 */
export function airHeatConstant(input: {
  readonly density: KilogramsPerCubicMeter;
  readonly specificHeat: JoulesPerKilogramKelvin;
}): AirHeatConstant {
  given(input);
  checkScale("density", input.density, "kg/m³");
  checkScale("specificHeat", input.specificHeat, "J/(kg·K)");
  const volumetricHeat = input.density * input.specificHeat;
  const perCfmFahrenheit = volumetricHeat * cubicFeetPerMinute(1) * fahrenheitDegrees(1);
  return {
    volumetricHeat,
    btuPerHourCfmFahrenheit: toBtuItPerHour(perCfmFahrenheit as Watts),
    cfmFahrenheitPerKilowatt: 1000 / perCfmFahrenheit,
    litersPerSecondKelvinPerKilowatt: 1000 / (volumetricHeat * litersPerSecond(1)),
    cubicMetersPerHourKelvinPerKilowatt: 1000 / (volumetricHeat * cubicMetersPerHour(1)),
  };
}

/**
 * A short-cut formula in print, and what it hides.
 * @since 0.1.0
 */
export interface AirHeatShortcut {
  /** Name of the short-cut. */
  readonly name: string;
  /** The formula as printed. */
  readonly formula: string;
  /** Its constant. */
  readonly constant: number;
  /** Margin that the source says is in it, 0 to 1. */
  readonly statedMargin: number;
  /** Volumetric heat after taking the stated margin off, J/(m³·K); `null` where the formula takes the density as input. */
  readonly volumetricHeat: number | null;
  /** Density it hides, at 0.24 Btu/(lb·°F), kg/m³; `null` as above. */
  readonly hiddenDensity: KilogramsPerCubicMeter | null;
  /** Margin really in it, at 0.24 Btu/(lb·°F), where the density is an input; `null` elsewhere. */
  readonly hiddenMargin: number | null;
  /** Where it is printed. */
  readonly basis: Basis;
}

/** Specific heat that all the printed short-cuts go by. */
const customary = (): number => btuItPerPoundFahrenheit(0.24);

/** W for each m³/s and K that one row implies, per kg/m³ where the formula takes a density. */
function impliedHeat(form: string, constant: number): number {
  switch (form) {
    case "cfm·Δ°F/kW":
      return 1000 / (constant * cubicFeetPerMinute(1) * fahrenheitDegrees(1));
    case "L/s·K/kW":
      return 1000 / (constant * litersPerSecond(1));
    case "m³/min·K/kW":
    case "m³/min·kg/m³·K/kW":
      return (1000 * 60) / constant;
    case "cfm·lb/ft³·Δ°F/kW":
      return 1000 / (constant * cubicFeetPerMinute(1) * poundsPerCubicFoot(1) * fahrenheitDegrees(1));
    default:
      // Btu/(h·cfm·Δ°F), against the same constant for 1 J/(m³·K).
      return constant / toBtuItPerHour((1 * cubicFeetPerMinute(1) * fahrenheitDegrees(1)) as number as Watts);
  }
}

/**
 * Names of the short-cut formulas that {@link airHeatShortcut} knows.
 * @returns the names
 * @source makers' and ventilating documents, as named in the table
 * @example
 * ```ts
 * airHeatShortcutNames().includes("kw-3160") // => true
 * ```
 * @since 0.1.0
 */
export function airHeatShortcutNames(): readonly string[] {
  return table.rows.map((row) => row[0] as string);
}

/**
 * A printed short-cut formula for air heating with the density or margin that it hides. For comparing an old
 * calculation with {@link airHeatingPower}, not for computing.
 * @param name - name of the short-cut, of {@link airHeatShortcutNames}
 * @returns the formula, what it hides, and where it is printed
 * @throws ElectroheatError `missing`, `unknown-name`
 * @source makers' and ventilating documents, as named in the table; what they hide is derived
 * @example
 * ```ts
 * const { hiddenDensity, basis } = airHeatShortcut("kw-3193");
 * [hiddenDensity, basis.kind] // => [1.18874, "published"]
 * ```
 * @since 0.1.0
 */
export function airHeatShortcut(name: string): AirHeatShortcut {
  const known = checkOneOf("name", name, airHeatShortcutNames());
  const row = table.rows.find((one) => one[0] === known) as (string | number | null)[];
  const [, formula, form, constant, margin, source] = row as [string, string, string, number, number, string];
  const heat = impliedHeat(form, constant);
  const takesDensity = form.includes("/ft³") || form.includes("kg/m³");
  const volumetricHeat = takesDensity ? null : heat / (1 + margin);
  return {
    name: known,
    formula,
    constant,
    statedMargin: margin,
    volumetricHeat,
    hiddenDensity:
      volumetricHeat === null ? null : ((volumetricHeat / customary()) as KilogramsPerCubicMeter),
    hiddenMargin: takesDensity ? heat / customary() - 1 : null,
    basis: { source, edition: table.edition, table: table.id, kind: table.kind as BasisKind },
  };
}
