/** Heat that a dryer spends on the water it drives off. */
import {
  type Celsius,
  checkBetween,
  given,
  type JoulesPerKilogram,
  type KilogramsPerSecond,
  type Warning,
  type Watts,
} from "../quantity/index.ts";
import { checkScale } from "./scale.ts";

/** Enthalpy of water vapor at low pressure above water of 0 °C, J/kg, and what it and water gain per kelvin. */
const VAPOR = { at0: 2_501_000, perKelvin: 1860 } as const;
const WATER = 4186;
/** Up to here the straight line keeps within 0.6 % of steam tables at 10 kPa; above it falls short. */
const TABLES = 300;
const HOTTEST = 600;

/**
 * Heat of drying.
 * @since 0.1.0
 */
export interface Drying {
  /** Heat into the water, W. */
  readonly power: Watts;
  /** The same for one kilogram of water, J/kg. */
  readonly heatPerMass: JoulesPerKilogram;
  /** What the reader must know. */
  readonly warnings: readonly Warning[];
}

/**
 * Heat to drive water off the work: waterFlow × (2501 kJ/kg + 1.86 kJ/(kg·K) × vapor − 4.186 kJ/(kg·K) × water), temperatures in °C.
 *
 * From liquid as it comes in to vapor as it leaves with the exhaust, at the pressure of the vapor in air; water bound in the work, salt and
 * sugar ask for more. The dry part of the work and the exhaust air come on top: `throughputPower`, `exhaustHeat`.
 * @param input.waterFlow - water driven off, by weighing the work before and after, kg/s, more than 0
 * @param input.water - temperature of the water as the work comes in, 0 to 100 °C
 * @param input.vapor - temperature at which the vapor leaves, that of the exhaust, 0 to 600 °C
 * @returns heat flow, heat of one kilogram, and a warning above 300 °C
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source ASHRAE Handbook, Fundamentals, Psychrometrics: enthalpy of vapor 2501 + 1.86 t kJ/kg (from memory; held against steam tables)
 * @example
 * ```ts
 * dryingPower({ waterFlow: kilogramsPerHour(50), water: celsius(20), vapor: celsius(100) }).power // => 36156.7
 * ```
 * @since 0.1.0
 */
export function dryingPower(input: {
  readonly waterFlow: KilogramsPerSecond;
  readonly water: Celsius;
  readonly vapor: Celsius;
}): Drying {
  given(input);
  const { waterFlow, water, vapor } = input;
  checkScale("waterFlow", waterFlow, "kg/s");
  checkBetween("water", water, 0, 100, "°C");
  checkBetween("vapor", vapor, 0, HOTTEST, "°C");
  const heatPerMass = VAPOR.at0 + VAPOR.perKelvin * vapor - WATER * water;
  const warnings: readonly Warning[] =
    vapor > TABLES
      ? [
          {
            code: "outside-validity",
            path: "vapor",
            message: `Above ${TABLES} °C the straight line for vapor falls short of steam tables, by 2 % at ${HOTTEST} °C.`,
            limit: TABLES,
            unit: "°C",
            source: "ashrae-fundamentals",
          },
        ]
      : [];
  return {
    power: (waterFlow * heatPerMass) as Watts,
    heatPerMass: heatPerMass as JoulesPerKilogram,
    warnings,
  };
}
