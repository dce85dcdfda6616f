/** Invented records of many kinds, one for each thing that an assessment can be about. */
import type { BenchRecord, RecordFeed, RecordOhms } from "electroheat/bench";
import { dryer, heater, oven } from "./caseRecords.ts";
import { full } from "./slips.ts";

const LINES = ["L1", "L2", "L3"] as const;
const PAIRS = [
  ["L1", "L2"],
  ["L2", "L3"],
  ["L3", "L1"],
] as const;

export const INSTRUMENTS = {
  ohmmeter: { ofReading: 0.005, digits: 2, resolution: "0.01 Ω", leads: "taken off" },
  clamp: { ofReading: 0.02, digits: 5, resolution: "0.1 A" },
  voltmeter: { ofReading: 0.005, digits: 2, resolution: "0.1 V" },
  millivoltmeter: { ofReading: 0.005, digits: 3, resolution: "0.1 mV" },
  insulationTester: { ofReading: 0.05, digits: 2, resolution: "0.1 MΩ" },
} as const;

/** 30 kW on 480 V in one star: 7.68 Ω a branch, 36.08 A a line. */
export const star = (more: Partial<BenchRecord>): BenchRecord => ({
  title: "one invented module",
  nameplate: { power: "30 kW", voltage: "480 V" },
  wiring: { banks: [{ id: "A", connection: "star" }] },
  instruments: INSTRUMENTS,
  tolerance: { low: -0.05, high: 0.1 },
  ...more,
});
/** Each line of a star to its star point. */
export const atStar = (...reads: readonly string[]): readonly RecordOhms[] =>
  reads.map((one, i) => ({ from: `L${i + 1}`, to: "S", reads: one }));
const between = (...reads: readonly string[]): readonly RecordOhms[] =>
  PAIRS.map(([from, to], i) => ({ from, to, reads: reads[i] as string }));
const amps = (...reads: readonly number[]) =>
  LINES.map((at, i) => ({ at, reads: `${(reads[i % reads.length] as number).toFixed(1)} A` }));
const volts = (v12: number, v23 = v12, v31 = v12) => ({ v12: `${v12} V`, v23: `${v23} V`, v31: `${v31} V` });
const SOUND = atStar("7.68 Ω", "7.70 Ω", "7.66 Ω");
const OPEN = atStar("7.68 Ω", "7.70 Ω", "OL");

const steel = { standard: "ISO 898-1", grade: "8.8" } as const;
const american: RecordFeed = { edition: "NEC 2023", installation: "raceway", insulation: "75 °C" };
const cable: RecordFeed = { edition: "IEC 60364-5-52:2009", installation: "B2", insulation: "PVC" };
const process = { target: "200 °C", lossConductance: "90 W/K", heatCapacity: "316 kJ/K", shift: "8 h" };
const twoStars = (starPoints: "tied" | "separate"): BenchRecord["wiring"] => ({
  banks: [
    { id: "A", connection: "star" },
    { id: "B", connection: "star" },
  ],
  starPoints,
});
const eachAlone = (reads: Readonly<Record<string, string>>, tied: boolean): readonly RecordOhms[] =>
  Object.entries(reads).map(([alone, one]) => ({
    from: alone.slice(2),
    to: tied ? "S" : `S-${alone.slice(0, 1)}`,
    reads: one,
    alone,
  }));

/** Records by what is in them. */
export const POOL: Readonly<Record<string, BenchRecord>> = {
  "a tunnel dryer with an open branch": dryer(),
  "a curing oven with a bad joint": oven(),
  "a duct heater linked against its drawing": heater(),
  "wiring alone": { title: "bare", wiring: { banks: [{ id: "A", connection: "delta" }] } },
  "every field": full(),
  "a plate alone": star({ instruments: {}, tolerance: undefined as never }),
  "a sound star": star({
    supply: volts(480, 481, 479),
    asFound: {
      ohms: SOUND,
      currents: amps(36.1),
      insulation: [{ from: "L1", reads: "900 MΩ", testVoltage: "1000 V" }],
    },
  }),
  "an open branch, then sound as left": star({
    supply: volts(480),
    asFound: { ohms: OPEN, currents: amps(31.2, 31.2, 0) },
    asLeft: {
      ohms: SOUND,
      currents: amps(36.1, 36.0, 36.2),
      insulation: [{ from: "L1", reads: "1.3 MΩ", testVoltage: "500 V" }],
    },
    process,
    ambient: "25 °C",
  }),
  "an open branch and a process without ambient": star({
    asFound: { ohms: OPEN },
    process: { ...process, tariff: 0.2, shifts: 3 },
  }),
  "a branch too high and one too low": star({ asFound: { ohms: atStar("9.90 Ω", "7.68 Ω", "6.90 Ω") } }),
  "a shorted branch": star({ asFound: { ohms: atStar("0.02 Ω", "7.68 Ω", "7.70 Ω") } }),
  "all branches open": star({ asFound: { ohms: atStar("OL", "OL", "OL") } }),
  "branches at the edge of the tolerance": star({ asFound: { ohms: atStar("8.44 Ω", "7.31 Ω", "7.68 Ω") } }),
  "readings that contradict each other": star({
    asFound: {
      ohms: [
        ...SOUND,
        { from: "L1", to: "L2", reads: "19.00 Ω" },
        { from: "L2", to: "L3", reads: "15.36 Ω" },
      ],
    },
  }),
  "ohms by a thousand too high": star({ asFound: { ohms: atStar("7680 Ω", "7.68 Ω", "7.70 Ω") } }),
  "leads that are much": star({
    instruments: { ohmmeter: { ...INSTRUMENTS.ohmmeter, leads: "unknown" } },
    asFound: { ohms: [...atStar("9.88 Ω", "9.90 Ω", "9.86 Ω"), ...between("17.58 Ω", "17.56 Ω", "17.54 Ω")] },
  }),
  "no plate": {
    ...star({ asFound: { ohms: OPEN } }),
    nameplate: undefined as never,
  },
  "no plate and one branch out": {
    ...star({
      supply: volts(480),
      asFound: { ohms: atStar("7.68 Ω", "9.90 Ω", "7.70 Ω"), currents: amps(36, 31, 36) },
    }),
    nameplate: undefined as never,
  },
  "two tied stars, one string open": star({
    nameplate: { power: "60 kW", voltage: "480 V" },
    wiring: {
      banks: ["A", "B"].map((id) => ({ id, connection: "star" as const, elementsInParallel: 2 })),
      starPoints: "tied",
    },
    asFound: {
      ohms: eachAlone(
        {
          "A-L1": "15.36 Ω",
          "A-L2": "7.68 Ω",
          "A-L3": "7.68 Ω",
          "B-L1": "7.70 Ω",
          "B-L2": "7.66 Ω",
          "B-L3": "7.68 Ω",
        },
        true,
      ),
    },
    process,
    ambient: "20 °C",
  }),
  "two stars of unlike shares": star({
    nameplate: { power: "45 kW", voltage: "480 V" },
    wiring: {
      banks: [
        { id: "A", connection: "star", elementsInParallel: 3 },
        { id: "B", connection: "star", power: "15 kW" },
      ],
      starPoints: "separate",
    },
    asFound: { ohms: eachAlone({ "A-L1": "7.68 Ω", "B-L2": "OL" }, false) },
  }),
  "a plate shared among unlike banks": star({
    wiring: {
      banks: [
        { id: "A", connection: "star", elementsInParallel: 3 },
        { id: "B", connection: "star" },
      ],
      starPoints: "separate",
    },
  }),
  "a star on the neutral": star({
    wiring: { banks: [{ id: "A", connection: "star" }], neutral: "connected" },
    supply: volts(480),
    asFound: {
      ohms: LINES.map((from, i) => ({ from, to: "N", reads: i === 1 ? "OL" : "7.68 Ω" })),
      currents: amps(36.1, 0, 36.1),
    },
    process,
    ambient: "20 °C",
  }),
  "a delta of strings": star({
    wiring: { banks: [{ id: "A", connection: "delta", elementsInParallel: 2, elementsInSeries: 2 }] },
    asFound: { ohms: between("15.36 Ω", "15.40 Ω", "19.20 Ω") },
    temperatureFactor: 1.04,
  }),
  "a lost line": star({
    supply: volts(480, 241, 239),
    asFound: { ohms: SOUND, currents: amps(31.2, 31.2, 0) },
  }),
  "volts read to neutral": star({ supply: volts(277), asFound: { ohms: SOUND, currents: amps(36.1) } }),
  "too high a supply": star({ supply: volts(575), asFound: { ohms: SOUND, currents: amps(43.2) } }),
  "too low a supply": star({ supply: volts(415), asFound: { ohms: SOUND, currents: amps(31.2) } }),
  "amps that nothing explains": star({
    supply: volts(480),
    asFound: { ohms: SOUND, currents: amps(36.1, 30.2, 41.8) },
  }),
  "amps into banks": star({
    nameplate: { power: "60 kW", voltage: "480 V" },
    wiring: twoStars("separate"),
    supply: volts(480),
    asFound: {
      currents: [...amps(72.2), ...["A", "B"].flatMap((into) => amps(36.1).map((one) => ({ ...one, into })))],
    },
  }),
  "insulation below the least": star({
    asFound: {
      ohms: SOUND,
      insulation: [
        { from: "L1", reads: "0.2 MΩ", testVoltage: "500 V" },
        { from: "S", reads: "OL" },
      ],
    },
  }),
  "insulation near the least": star({
    asFound: {
      ohms: SOUND,
      insulation: [
        { from: "L1", reads: "1.1 MΩ", testVoltage: "500 V" },
        { from: "L2", reads: "3.0 MΩ", testVoltage: "500 V" },
      ],
    },
  }),
  "insulation at too low a test voltage": star({
    asFound: { ohms: SOUND, insulation: [{ from: "L1", reads: "600 MΩ", testVoltage: "250 V" }] },
  }),
  "insulation of a module without a plate": {
    ...star({ asFound: { insulation: [{ from: "L1", reads: "3.0 MΩ" }] } }),
    nameplate: undefined as never,
  },
  "joints by their drops and rises": star({
    asFound: {
      ohms: SOUND,
      joints: [
        { id: "J1", drop: "3.9 mV", current: "36.0 A" },
        { id: "J2", drop: "18.4 mV", current: "36.1 A" },
        { id: "J3", drop: "5.9 mV", current: "36.1 A", rise: "30 K", loadRatio: 0.8 },
        { id: "J4", rise: "55 K", loadRatio: 0.5 },
      ],
    },
    asLeft: { joints: [{ id: "J2", drop: "4.0 mV", current: "36.0 A", rise: "2 K" }] },
  }),
  "one joint alone": star({
    asFound: { ohms: SOUND, joints: [{ id: "J1", drop: "3.9 mV", current: "36.0 A" }] },
  }),
  "rises that ask for repair": star({
    asFound: {
      ohms: SOUND,
      joints: [
        { id: "J1", rise: "14 K", loadRatio: 1 },
        { id: "J2", rise: "4 K", loadRatio: 0.6 },
      ],
    },
  }),
  "a drawn joint that is hot": star({
    wiring: { banks: [{ id: "A", connection: "star" }], joints: LINES.map((at) => ({ id: `J-${at}`, at })) },
    asFound: {
      ohms: SOUND,
      joints: LINES.map((at, i) => ({ id: `J-${at}`, drop: `${[4, 250, 5][i]} mV`, current: "36.1 A" })),
    },
  }),
  "studs of their own": star({
    asFound: {
      ohms: [
        ...LINES.map((line) => ({
          from: line,
          to: "S",
          reads: "7.68 Ω",
          alone: `A-${line}`,
          ownStuds: true,
        })),
        { from: "L1", to: "L2", reads: "17.90 Ω" },
        { from: "L2", to: "L3", reads: "15.36 Ω" },
      ],
    },
  }),
  "hardware of many kinds": star({
    hardware: [
      { id: "line studs", thread: "M6", count: 6, strength: steel, applied: "6.5 N·m", renew: true },
      { id: "loose", thread: "M8", strength: steel, applied: "9.0 N·m" },
      {
        id: "tight",
        thread: "M6",
        strength: { standard: "ISO 898-1", grade: "4.6" },
        makerTorque: "15 N·m",
        applied: "15 N·m",
      },
      {
        id: "greased",
        thread: "M5",
        strength: { standard: "ISO 3506-1", grade: "A2-70" },
        condition: "stainless with anti-seize",
      },
      { id: "inch", thread: "3/8-16" },
      {
        id: "brass",
        thread: "1/4-20",
        strength: { standard: "brass C36000", grade: "H04 rod 1/4 in" },
        applied: "62 lbf·in",
      },
      { id: "small", thread: "M4", strength: steel },
      { id: "unknown", thread: "M39x3", applied: 12 },
    ],
  }),
  bars: star({
    ambient: "40 °C",
    bars: [
      {
        id: "line bar",
        count: 3,
        studs: 3,
        pitch: "45 mm",
        overhang: "12 mm",
        width: "20 mm",
        thickness: "3 mm",
        hole: "8.5 mm",
        kerf: "2 mm",
      },
      { id: "thin", studs: 2, pitch: "45 mm", overhang: "12 mm", width: "6 mm", thickness: "0.5 mm" },
      { id: "melts", studs: 2, pitch: "45 mm", overhang: "12 mm", width: "6 mm", thickness: "0.005 mm" },
    ],
  }),
  "an American feed as installed": star({
    ambient: "40 °C",
    feed: { ...american, terminals: "75 °C", conductor: "6 AWG", device: "50 A" },
  }),
  "an American feed too small": star({
    feed: { ...american, conductor: "10 AWG", device: "70 A", grouped: 6 },
  }),
  "an American feed to be looked up": star({
    nameplate: { power: "75 kW", voltage: "480 V" },
    feed: { ...american, edition: "NEC 2017", terminals: "75 °C" },
    ambient: "30 °C",
  }),
  "an IEC feed as installed": star({
    ambient: "30 °C",
    feed: { ...cable, conductor: "16 mm²", device: "50 A" },
  }),
  "an IEC feed to be looked up": star({ feed: { ...cable, grouped: 2 } }),
  "an IEC feed in the ground": star({
    feed: {
      edition: "IEC 60364-5-52:2001",
      installation: "D",
      insulation: "PVC",
      conductor: "16 mm²",
      device: "40 A",
    },
  }),
  "a feed without a plate": {
    ...star({ feed: { ...american, conductor: "3 AWG", device: "100 A" } }),
    nameplate: undefined as never,
  },
  "a tolerance in per cent": star({ tolerance: { low: -1, high: 1 }, asFound: { ohms: SOUND } }),
  "a tolerance that passes an open element": star({
    wiring: { banks: [{ id: "A", connection: "star", elementsInParallel: 12 }] },
    asFound: { ohms: SOUND },
  }),
  "watts for kilowatts": star({ nameplate: { power: 30, voltage: "480 V" } }),
};
