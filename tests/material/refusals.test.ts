/** Results beyond a double, and extrapolation asked for beyond physics, are refused. */
import {
  airDensity,
  airProperties,
  airViscosityFormula,
  COPPER_IACS,
  conductorResistivity,
  lengthOfResistance,
  NICKEL_MAKER_I,
  resistanceAtTemperature,
  resistancePerLength,
  roundWireArea,
  zeroResistanceTemperature,
} from "electroheat/material";
import {
  type Celsius,
  celsius,
  isElectroheatError,
  meters,
  ohmMeters,
  ohms,
  ohmsPerMeter,
  pascals,
  perKelvin,
  squareMeters,
} from "electroheat/quantity";
import { expect, it } from "vitest";
import { codeOf } from "./errors.ts";

const extrapolate = { beyondTable: "extrapolate" } as const;

it.each([
  ["area", () => roundWireArea(meters(1e200))],
  ["per length", () => resistancePerLength({ resistivity: ohmMeters(1e300), area: squareMeters(1e-300) })],
  [
    "length",
    () => lengthOfResistance({ resistance: ohms(1e300), resistancePerLength: ohmsPerMeter(1e-300) }),
  ],
  [
    "resistance",
    () =>
      resistanceAtTemperature({
        resistance: ohms(1e308),
        from: celsius(0),
        to: celsius(1000),
        coefficient: perKelvin(0.004),
        reference: celsius(20),
      }),
  ],
  ["zero", () => zeroResistanceTemperature({ coefficient: perKelvin(5e-324), reference: celsius(20) })],
  // Nickel's table continued down to absolute zero would be negative, and so would Pr of air at 100,000 °C.
  [
    "nickel",
    () => conductorResistivity({ conductor: NICKEL_MAKER_I, temperature: celsius(-273), ...extrapolate }),
  ],
  ["air", () => airProperties({ temperature: celsius(100_000), pressure: pascals(101_325), ...extrapolate })],
])("refuses what no double or no physics holds: %s", (_, run) => {
  expect(codeOf(run)).toBe("out-of-range");
});

it.each<[string, (temperature: Celsius) => unknown]>([
  ["density", (temperature) => airDensity({ temperature, pressure: pascals(101_325) })],
  ["viscosity", (temperature) => airViscosityFormula(temperature)],
  ["copper", (temperature) => conductorResistivity({ conductor: COPPER_IACS, temperature })],
])("names the temperature, not a converter, when it is missing or below absolute zero: %s", (_, run) => {
  for (const [value, code] of [
    [undefined, "missing"],
    [Number.NaN, "not-a-number"],
    [-300, "out-of-range"],
  ] as const) {
    try {
      run(value as Celsius);
      expect.unreachable();
    } catch (error) {
      expect(isElectroheatError(error) && [error.code, error.argument]).toEqual([code, "temperature"]);
    }
  }
});
