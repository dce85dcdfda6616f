/** Invented records of the whole job, from which the reports that are looked at are made. */
import type { BenchRecord } from "electroheat/bench";

/** A curing oven with tied stars: one element open, one joint bad; everything recorded. */
export const OVEN: BenchRecord = {
  title: "Curing oven, lower module (invented)",
  identity: {
    equipment: "Curing oven 3",
    serialNumber: "CO-0417",
    workOrder: "W-118",
    technician: "R. Invented",
    date: "12 March",
  },
  nameplate: { power: "40 kW", voltage: "480 V" },
  wiring: {
    banks: [
      { id: "A", connection: "star" },
      { id: "B", connection: "star" },
    ],
    starPoints: "tied",
    joints: [{ id: "J-L2", at: "L2" }],
  },
  supply: { v12: "478 V", v23: "481 V", v31: "479 V" },
  temperatureFactor: 1.04,
  tolerance: { low: -0.05, high: 0.1 },
  instruments: {
    ohmmeter: { ofReading: 0.005, digits: 2, leads: { shorted: "0.20 Ω" } },
    clamp: { ofReading: 0.02, digits: 5 },
    millivoltmeter: { ofReading: 0.005, digits: 3 },
    insulationTester: { ofReading: 0.03, digits: 3 },
  },
  asFound: {
    ohms: [
      { from: "L1", to: "S", reads: "11.34 Ω" },
      { from: "L2", to: "S", reads: "5.72 Ω" },
      { from: "L3", to: "S", reads: "5.75 Ω" },
      { from: "L1", to: "S", reads: "OL", alone: "A-L1" },
      { from: "L2", to: "S", reads: "11.24 Ω", alone: "A-L2" },
      { from: "L3", to: "S", reads: "11.28 Ω", alone: "A-L3" },
    ],
    currents: [
      { at: "L1", reads: "29.8 A" },
      { at: "L2", reads: "45.4 A" },
      { at: "L3", reads: "45.6 A" },
    ],
    insulation: [{ from: "L1", reads: "42.0 MΩ", testVoltage: "500 V" }],
    joints: [
      { id: "J-L1", drop: "2.1 mV", current: "29.8 A", rise: "4 K", loadRatio: 0.62 },
      { id: "J-L2", drop: "91.4 mV", current: "45.4 A", rise: "38 K", loadRatio: 0.94 },
      { id: "J-L3", drop: "3.3 mV", current: "45.6 A", rise: "6 K", loadRatio: 0.95 },
    ],
  },
  asLeft: {
    ohms: [
      { from: "L1", to: "S", reads: "5.71 Ω" },
      { from: "L2", to: "S", reads: "5.72 Ω" },
      { from: "L3", to: "S", reads: "5.75 Ω" },
      { from: "L1", to: "S", reads: "11.24 Ω", alone: "A-L1" },
      { from: "L2", to: "S", reads: "11.24 Ω", alone: "A-L2" },
      { from: "L3", to: "S", reads: "11.28 Ω", alone: "A-L3" },
    ],
    insulation: [{ from: "L1", reads: "180 MΩ", testVoltage: "500 V" }],
  },
  hardware: [
    {
      id: "line studs",
      thread: "1/4-20",
      count: 6,
      strength: { standard: "SAE J429", grade: "2" },
      applied: "7 N·m",
      renew: true,
    },
    { id: "star bar screws", thread: "M6", count: 4 },
  ],
  bars: [
    {
      id: "star bar",
      count: 2,
      studs: 3,
      pitch: "60 mm",
      overhang: "12 mm",
      width: "20 mm",
      thickness: "3 mm",
      hole: "6.6 mm",
    },
  ],
  feed: {
    edition: "NEC 2023",
    conductor: "4 AWG",
    installation: "raceway",
    insulation: "90 °C",
    terminals: "75 °C",
    device: "70 A",
  },
  ambient: "35 °C",
  process: {
    target: "180 °C",
    lossConductance: "115 W/K",
    heatCapacity: "316 kJ/K",
    shift: "8 h",
    shifts: 3,
    tariff: 0.18,
  },
};

/** A single delta of doubled elements, line to line only: what most people write down. */
export const DELTA: BenchRecord = {
  title: "Booth heater (invented)",
  nameplate: { power: "54 kW", voltage: "400 V" },
  wiring: { banks: [{ id: "A", connection: "delta", elementsInParallel: 2 }] },
  temperatureFactor: 1.04,
  instruments: { ohmmeter: { ofReading: 0.005, digits: 2, leads: "taken off" } },
  asFound: {
    ohms: [
      { from: "L1", to: "L2", reads: "7.10 Ω" },
      { from: "L2", to: "L3", reads: "5.70 Ω" },
      { from: "L3", to: "L1", reads: "5.71 Ω" },
    ],
  },
};

/** No more than a title and the wiring. */
export const BARE: BenchRecord = {
  title: "Module of unknown make (invented)",
  wiring: { banks: [{ id: "Upper rear bank behind the fan housing", connection: "star" }] },
};
