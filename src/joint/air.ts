/**
 * Dry air at 1 atm, one small home until the `material` room is there; to be replaced by it after the merge.
 * Viscosity and conductivity by the formulas of the US Standard Atmosphere 1976 (within 1.4 % and 0.8 % of the
 * handbook table, 250–600 K).
 */

/** Conductivity (W/(m·K)), kinematic viscosity (m²/s) and Prandtl number at an absolute temperature. */
interface AirProperties {
  readonly conductivity: number;
  readonly viscosity: number;
  readonly prandtl: number;
}

const ATMOSPHERE = 101325;
const GAS_CONSTANT = 287.055;
const SPECIFIC_HEAT = 1007;

export function airAt(kelvin: number): AirProperties {
  const root = kelvin ** 1.5;
  const dynamic = (1.458e-6 * root) / (kelvin + 110.4);
  const conductivity = (2.64638e-3 * root) / (kelvin + 245.4 * 10 ** (-12 / kelvin));
  const density = ATMOSPHERE / (GAS_CONSTANT * kelvin);
  return {
    conductivity,
    viscosity: dynamic / density,
    prandtl: (dynamic * SPECIFIC_HEAT) / conductivity,
  };
}
