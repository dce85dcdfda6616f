/**
 * How large and small the quantities of this room may be. Radiation takes fourth powers, so the bounds are narrower than
 * elsewhere: between them no product or quotient taken here leaves float64, and no oven, flow or bill lies beyond them.
 */
import {
  type Celsius,
  checkFinite,
  checkMeasurable,
  checkMeasurableOrZero,
  fail,
} from "../quantity/index.ts";

const SMALLEST = 1e-15;
const LARGEST = 1e15;
const HOTTEST = 1e6;

/** Requires more than 0, within the bounds. */
export function checkScale(path: string, value: number, unit?: string): void {
  checkMeasurable(path, value, unit, SMALLEST, LARGEST);
}

/** Requires 0, or more within the bounds. */
export function checkScaleOrZero(path: string, value: number, unit?: string): void {
  checkMeasurableOrZero(path, value, unit, SMALLEST, LARGEST);
}

/** Requires a temperature above absolute zero and below that of any star. */
export function checkTemperature(path: string, value: Celsius): void {
  checkFinite(path, value, "°C");
  if (!(value >= -273.15 && value <= HOTTEST)) {
    fail({ code: "out-of-range", path, expected: `−273.15 to ${HOTTEST}`, received: value, unit: "°C" });
  }
}
