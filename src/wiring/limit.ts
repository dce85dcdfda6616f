/** Limits compared in decimal: every decision of this room goes through here. */
import { compareQuoted } from "../decision/index.ts";

/** Whether a value is at most a limit, on 12 significant digits: 57.75 A is not at most 57.7 A, 48.00000000000001 A is 48 A. */
export function atMost(value: number, limit: number): boolean {
  return compareQuoted({ left: value, right: limit }) <= 0;
}

/** Smallest whole number of equal parts of which none exceeds the limit. */
export function partsNeeded(total: number, limit: number): number {
  let parts = Math.max(1, Math.floor(total / limit));
  while (!atMost(total, parts * limit)) parts++;
  return parts;
}
