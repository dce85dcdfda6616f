/** A full bench record, and slips put into it by path. */
import { assessModule, type BenchRecord } from "electroheat/bench";
import { type ElectroheatError, isElectroheatError } from "electroheat/quantity";

/** A full record: every field there is. */
export const full = (): BenchRecord => ({
  title: "invented module",
  nameplate: { power: "60 kW", voltage: "480 V" },
  wiring: {
    banks: [
      { id: "A", connection: "star", elementsInParallel: 1, elementsInSeries: 1 },
      { id: "B", connection: "star" },
    ],
    starPoints: "separate",
    neutral: "floating",
  },
  supply: { v12: "478 V", v23: "481 V", v31: "479 V" },
  temperatureFactor: 1.04,
  tolerance: { low: -0.05, high: 0.1 },
  meter: { ofReading: 0.005, digits: 2, resolution: "0.01 Ω", leads: { shorted: "0.20 Ω" } },
  readings: [
    { from: "L1", to: "S-A", reads: "7.62 Ω", alone: "A" },
    { from: "L2", to: "S-A", reads: 7.66, alone: "A-L2" },
    { from: "L3", to: "S-B", reads: "OL", alone: "B" },
  ],
  joints: [
    { id: "J1", drop: "3.9 mV", current: "64.2 A" },
    { id: "J2", drop: 0.0184, current: 64.2 },
  ],
});

export function errorOf(record: unknown): ElectroheatError {
  try {
    assessModule(record as BenchRecord);
  } catch (error) {
    if (isElectroheatError(error)) return error;
    throw error;
  }
  throw new Error("no error");
}
export const pathsOf = (record: unknown): string[] => errorOf(record).issues.map(({ path }) => path);

export type Loose = Record<string, unknown>;
function parentOf(record: unknown, path: string): { readonly holder: Loose; readonly key: string } {
  const parts = path.split(".");
  const key = parts.pop() as string;
  return { holder: parts.reduce((at, part) => (at as Loose)[part], record) as Loose, key };
}
export function put(record: unknown, path: string, value: unknown): void {
  const { holder, key } = parentOf(record, path);
  Object.defineProperty(holder, key, { value, enumerable: true, configurable: true, writable: true });
}
export function remove(record: unknown, path: string): void {
  const { holder, key } = parentOf(record, path);
  delete holder[key];
}
