/** A record with every field there is in it: the compiler refuses it as soon as one is missing. */
import type { BenchRecord, RecordReadings } from "electroheat/bench";

/** All fields of all records in it required; lists with their entries. */
type Every<T> = T extends readonly (infer E)[]
  ? readonly Every<E>[]
  : T extends string | number | boolean
    ? T
    : { readonly [K in keyof T]-?: Every<NonNullable<T[K]>> };

const supply = { v12: "478 V", v23: "481 V", v31: 479 };
const meter = { ofReading: 0.015, digits: 3 };
const day = (reads: string): Every<RecordReadings> => ({
  supply,
  ohms: [
    { from: "L1", to: "S-A", reads, alone: "A-L1", ownStuds: true },
    { from: "L1", to: "L2", reads: 15.3, alone: "A-L1", ownStuds: true },
  ],
  currents: [{ at: "L1", into: "A", reads: "36.0 A" }],
  insulation: [{ from: "L1", reads: "OL", testVoltage: "500 V" }],
  joints: [{ id: "J1", drop: "3.9 mV", current: "36.0 A", rise: "11 K", loadRatio: 0.8 }],
});

export const everyField: Every<BenchRecord> = {
  title: "Test bench module (invented)",
  identity: {
    equipment: "bench module",
    serialNumber: "0-17",
    location: "bench 2",
    workOrder: "88",
    technician: "day shift",
    date: "2 May",
  },
  nameplate: { power: 60_000, voltage: "480 V" },
  wiring: {
    banks: [
      { id: "A", connection: "star", elementsInParallel: 2, elementsInSeries: 1, power: "30 kW" },
      { id: "B", connection: "wye", elementsInParallel: 1, elementsInSeries: 3, power: "30 kW" },
    ],
    starPoints: "separate",
    neutral: "floating",
    joints: [{ id: "J7", at: "L1", behind: ["A", "B-L1"] }],
  },
  supply,
  temperatureFactor: 1.04,
  tolerance: { low: -0.05, high: 0.1 },
  instruments: {
    ohmmeter: { ...meter, resolution: "0.01 Ω", leads: { shorted: "0.21 Ω" } },
    clamp: { ...meter, resolution: "0.1 A" },
    voltmeter: { ...meter, resolution: "1 V" },
    millivoltmeter: { ...meter, resolution: "0.1 mV" },
    insulationTester: { ...meter, resolution: "1 MΩ" },
  },
  asFound: day("7.90 Ω"),
  asLeft: day("7.86 Ω"),
  hardware: [
    {
      id: "line studs",
      thread: "M8",
      count: 6,
      strength: { standard: "ISO 898-1", grade: "8.8" },
      condition: "zinc-plated",
      makerTorque: "12 N·m",
      applied: "110 lbf·in",
      renew: true,
    },
  ],
  bars: [
    {
      id: "line bar",
      count: 3,
      studs: 2,
      pitch: "60 mm",
      overhang: "1/2 in",
      width: "20 mm",
      thickness: 0.005,
      hole: "9 mm",
      kerf: "2 mm",
    },
  ],
  feed: {
    edition: "NEC 2023",
    equipment: "process heating",
    conductor: "2 AWG",
    material: "copper",
    installation: "raceway",
    insulation: "90 °C",
    terminals: "75 °C",
    conductorsPerLine: 1,
    grouped: 3,
    deviceKind: "gG fuse",
    device: "100 A",
  },
  ambient: "104 °F",
  process: {
    target: "180 °C",
    lossConductance: "115 W/K",
    heatCapacity: "316 kJ/K",
    shift: "8 h",
    shifts: 3,
    tariff: 0.14,
  },
};
