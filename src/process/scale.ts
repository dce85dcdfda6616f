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

// biome-ignore lint/suspicious/noConstEnum: compiled into literals, as in quantity/measurable.ts; it stays in this file
const enum Bound {
  smallest = 1e-15,
  largest = 1e15,
  hottest = 1e6,
}

/** Requires more than 0, within the bounds. */
export function checkScale(path: string, value: number, unit?: string): void {
  checkMeasurable(path, value, unit, Bound.smallest, Bound.largest);
}

/** Requires 0, or more within the bounds. */
export function checkScaleOrZero(path: string, value: number, unit?: string): void {
  checkMeasurableOrZero(path, value, unit, Bound.smallest, Bound.largest);
}

/** Requires a temperature above absolute zero and below that of any star. */
export function checkTemperature(path: string, value: Celsius): void {
  checkFinite(path, value, "°C");
  if (!(value >= -273.15 && value <= Bound.hottest)) {
    fail({
      code: "out-of-range",
      path,
      expected: `−273.15 to ${Bound.hottest}`,
      received: value,
      unit: "°C",
    });
  }
}
