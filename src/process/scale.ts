/**
 * How large and small the quantities of this room may be. Between these bounds no product or quotient taken here leaves
 * float64, so that no result is NaN or infinite; no oven, flow or bill lies beyond them.
 */
import {
  type Celsius,
  checkBetween,
  checkFinite,
  checkNonNegative,
  checkPositive,
  fail,
} from "../quantity/index.ts";

const SMALLEST = 1e-15;
const LARGEST = 1e15;
const HOTTEST = 1e6;

/** Requires an object (or a list) before its fields are read. */
export function checkGiven(path: string, value: unknown, expected: string): void {
  if (typeof value === "object" && value !== null) return;
  const code = value === undefined || value === null ? "missing" : "wrong-type";
  fail({ code, path, expected, received: value });
}

/** Requires a list, empty or not. */
export function checkList(path: string, value: unknown, expected: string): void {
  checkGiven(path, value, expected);
  if (!Array.isArray(value)) fail({ code: "wrong-type", path, expected, received: value });
}

/** Requires more than 0, within the bounds. */
export function checkScale(path: string, value: number, unit?: string): void {
  if (typeof value === "number" && value >= SMALLEST && value <= LARGEST) return;
  checkPositive(path, value, unit);
  checkBetween(path, value, SMALLEST, LARGEST, unit);
}

/** Requires 0, or more within the bounds. */
export function checkScaleOrZero(path: string, value: number, unit?: string): void {
  if (value === 0) return;
  if (typeof value === "number" && value >= SMALLEST && value <= LARGEST) return;
  checkNonNegative(path, value, unit);
  checkBetween(path, value, SMALLEST, LARGEST, unit);
}

/** Requires a temperature above absolute zero and below that of any star. */
export function checkTemperature(path: string, value: Celsius): void {
  checkFinite(path, value, "°C");
  if (!(value >= -273.15 && value <= HOTTEST)) {
    fail({ code: "out-of-range", path, expected: `−273.15 to ${HOTTEST}`, received: value, unit: "°C" });
  }
}
