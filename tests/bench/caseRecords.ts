/**
 * The three invented modules with faults as bench records: every reading that the cases give.
 *
 * Source of the figures: see `cases.test.ts`.
 */
import type { BenchRecord } from "electroheat/bench";

const CLAMP = { ofReading: 0.02, digits: 5, resolution: "0.1 A" } as const;
const amps = (reads: readonly number[]) =>
  reads.map((one, i) => ({ at: `L${i + 1}`, reads: `${one.toFixed(1)} A` }));

const LIFTED = {
  "A1-L1": "6.37 Ω",
  "A1-L2": "6.42 Ω",
  "A1-L3": "6.34 Ω",
  "A2-L1": "6.44 Ω",
  "A2-L2": "6.38 Ω",
  "A2-L3": "OL",
};

/** Ohms of the tunnel dryer: each branch alone, and the lines with all links in. */
export const DRYER_OHMS = {
  lifted: Object.entries(LIFTED).map(([alone, reads]) => ({
    from: alone.slice(3),
    to: `S-${alone.slice(0, 2)}`,
    reads,
    alone,
  })),
  linksIn: [
    { from: "L1", to: "L2", reads: "6.43 Ω" },
    { from: "L2", to: "L3", reads: "11.03 Ω" },
    { from: "L3", to: "L1", reads: "11.09 Ω" },
  ],
};

/** Tunnel dryer, 72 kW on 480 V, two stars with separate star points, slow to reach temperature. */
export const dryer = (ohms = [...DRYER_OHMS.lifted, ...DRYER_OHMS.linksIn]): BenchRecord => ({
  title: "invented tunnel dryer",
  nameplate: { power: "72 kW", voltage: "480 V" },
  wiring: {
    banks: [
      { id: "A1", connection: "star" },
      { id: "A2", connection: "star" },
    ],
    starPoints: "separate",
  },
  supply: { v12: "478.0 V", v23: "481.0 V", v31: "479.0 V" },
  temperatureFactor: 1.045,
  tolerance: { low: -0.05, high: 0.1 },
  instruments: {
    ohmmeter: { ofReading: 0.005, digits: 3, resolution: "0.01 Ω", leads: { shorted: "0.17 Ω" } },
    clamp: CLAMP,
    voltmeter: { ofReading: 0.005, digits: 0 },
  },
  asFound: {
    ohms,
    currents: [
      ...amps([76.5, 75.6, 43.5]),
      ...[43, 42.3, 43].map((one, i) => ({ at: `L${i + 1}`, into: "A1", reads: `${one.toFixed(1)} A` })),
      ...[36.3, 36.3, 0].map((one, i) => ({ at: `L${i + 1}`, into: "A2", reads: `${one.toFixed(1)} A` })),
    ],
  },
});

/** Curing oven, 54 kW on 400 V, one delta of two elements side by side, burning smell, no trip. */
export const oven = (): BenchRecord => ({
  title: "invented curing oven",
  nameplate: { power: "54 kW", voltage: "400 V" },
  wiring: {
    banks: [{ id: "A", connection: "delta", elementsInParallel: 2 }],
    joints: ["L1", "L2", "L3"].map((at) => ({ id: `J-${at}`, at })),
  },
  supply: { v12: "398.0 V", v23: "398.0 V", v31: "398.0 V" },
  tolerance: { low: -0.05, high: 0.1 },
  instruments: {
    clamp: CLAMP,
    voltmeter: { ofReading: 0.005, digits: 0 },
    millivoltmeter: { ofReading: 0.005, digits: 3, resolution: "0.1 mV" },
    insulationTester: { ofReading: 0.03, digits: 2 },
  },
  asFound: {
    currents: amps([78.1, 77.8, 77.3]),
    joints: [
      { id: "J-L1", drop: "5.5 mV", current: "78.1 A", rise: "3.1 K", loadRatio: 0.995 },
      { id: "J-L2", drop: "248.2 mV", current: "77.8 A", rise: "71.0 K", loadRatio: 0.995 },
      { id: "J-L3", drop: "6.5 mV", current: "77.3 A", rise: "3.6 K", loadRatio: 0.995 },
    ],
    insulation: [{ from: "L1", reads: "42 MΩ", testVoltage: "500 V" }],
  },
  bars: [
    {
      id: "jumper bar",
      studs: 2,
      pitch: "60 mm",
      overhang: "15 mm",
      width: "20 mm",
      thickness: "3 mm",
    },
  ],
});

/** Duct heater, 30 kW on 208 V, three banks that should all be delta, even heat but low air rise. */
export const heater = (): BenchRecord => ({
  title: "invented duct heater",
  nameplate: { power: "30 kW", voltage: "208 V" },
  wiring: { banks: ["A1", "A2", "A3"].map((id) => ({ id, connection: "delta" as const })) },
  supply: { v12: "209.0 V", v23: "209.0 V", v31: "209.0 V" },
  temperatureFactor: 1.04,
  tolerance: { low: -0.05, high: 0.1 },
  instruments: {
    ohmmeter: { ofReading: 0.005, digits: 3, resolution: "0.01 Ω", leads: { shorted: "0.12 Ω" } },
    clamp: CLAMP,
    voltmeter: { ofReading: 0.005, digits: 0 },
  },
  asFound: {
    ohms: [
      { from: "L1", to: "L2", reads: "3.71 Ω" },
      { from: "L2", to: "L3", reads: "3.71 Ω" },
      { from: "L3", to: "L1", reads: "3.67 Ω" },
    ],
    currents: [
      ...amps([64.1, 66.1, 64.4]),
      ...[27.9, 27.8, 9.2].map((one, i) => ({ at: "L1", into: `A${i + 1}`, reads: `${one.toFixed(1)} A` })),
    ],
  },
  feed: {
    edition: "NEC 2023",
    installation: "raceway",
    insulation: "75 °C",
    terminals: "75 °C",
  },
});
