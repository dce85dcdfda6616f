/** A full bench record, and slips put into it by path. */
import { assessModule, type BenchRecord } from "electroheat/bench";
import { type ElectroheatError, isElectroheatError } from "electroheat/quantity";

/** A full record: every field there is. */
export const full = (): BenchRecord => ({
  title: "invented module",
  identity: {
    equipment: "dryer",
    serialNumber: "7",
    location: "hall",
    workOrder: "12",
    technician: "someone",
    date: "a day",
  },
  nameplate: { power: "60 kW", voltage: "480 V" },
  wiring: {
    banks: [
      { id: "A", connection: "star", elementsInParallel: 1, elementsInSeries: 1 },
      { id: "B", connection: "star" },
    ],
    starPoints: "separate",
    neutral: "floating",
    joints: [{ id: "J1", at: "L1", behind: ["A"] }],
  },
  supply: { v12: "478 V", v23: "481 V", v31: "479 V" },
  temperatureFactor: 1.04,
  tolerance: { low: -0.05, high: 0.1 },
  instruments: {
    ohmmeter: { ofReading: 0.005, digits: 2, resolution: "0.01 Ω", leads: { shorted: "0.20 Ω" } },
    clamp: { ofReading: 0.02, digits: 5, resolution: "0.1 A" },
    voltmeter: { ofReading: 0.005, digits: 2, resolution: "0.1 V" },
    millivoltmeter: { ofReading: 0.005, digits: 3, resolution: "0.1 mV" },
    insulationTester: { ofReading: 0.05, digits: 2, resolution: "1 MΩ" },
  },
  asFound: {
    supply: { v12: "478 V", v23: "480 V", v31: "479 V" },
    ohms: [
      { from: "L1", to: "S-A", reads: "7.62 Ω", alone: "A" },
      { from: "L2", to: "S-A", reads: 7.66, alone: "A-L2" },
      { from: "L3", to: "S-B", reads: "OL", alone: "B" },
    ],
    currents: [
      { at: "L1", reads: "71.8 A" },
      { at: "L1", into: "A", reads: 36.1 },
    ],
    insulation: [
      { from: "L1", reads: "220 MΩ", testVoltage: "500 V" },
      { from: "S-B", reads: "OL" },
    ],
    joints: [
      { id: "J1", drop: "3.9 mV", current: "64.2 A", rise: "6 K", loadRatio: 0.9 },
      { id: "J2", drop: 0.0184, current: 64.2 },
    ],
  },
  asLeft: { ohms: [{ from: "L3", to: "S-B", reads: "7.60 Ω", alone: "B" }] },
  hardware: [
    {
      id: "line studs",
      thread: "M6",
      count: 6,
      strength: { standard: "ISO 898-1", grade: "8.8" },
      condition: "dry steel",
      makerTorque: "8.5 N·m",
      applied: "8.4 N·m",
      renew: true,
    },
  ],
  bars: [
    {
      id: "line bar",
      count: 3,
      studs: 2,
      pitch: "60 mm",
      overhang: "15 mm",
      width: "25 mm",
      thickness: "3 mm",
      hole: "6.6 mm",
      kerf: "2 mm",
    },
  ],
  feed: {
    edition: "NEC 2023",
    equipment: "process heating",
    conductor: "3 AWG",
    material: "copper",
    installation: "raceway",
    insulation: "90 °C",
    terminals: "75 °C",
    conductorsPerLine: 1,
    grouped: 3,
    device: "90 A",
  },
  ambient: "40 °C",
  process: {
    target: "160 °C",
    lossConductance: "115 W/K",
    heatCapacity: "316 kJ/K",
    shift: "8 h",
    shifts: 5,
    tariff: 0.2,
  },
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
