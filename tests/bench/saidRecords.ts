/** Invented records of what is rarer than the pool has: faults beside one another, work half done, readings that speak of the whole. */
import type { BenchRecord } from "electroheat/bench";
import { atStar, INSTRUMENTS, star } from "./pool.ts";

const LINES = ["L1", "L2", "L3"] as const;
const V = { v12: "480.0 V", v23: "480.0 V", v31: "480.0 V" } as const;
const amps = (...reads: readonly number[]) =>
  reads.map((one, i) => ({ at: LINES[i] as string, reads: `${one.toFixed(1)} A` }));
const pairs = (...reads: readonly string[]) =>
  reads.map((one, i) => ({ from: LINES[i] as string, to: LINES[(i + 1) % 3] as string, reads: one }));
const alone = (bank: string, point: string, ...reads: readonly string[]) =>
  reads.map((one, i) => ({
    from: LINES[i] as string,
    to: point,
    alone: `${bank}-${LINES[i]}`,
    reads: one,
  }));
const two = (connection: "star" | "delta" = "star"): BenchRecord["wiring"] => ({
  banks: ["A", "B"].map((id) => ({ id, connection })),
  ...(connection === "star" ? { starPoints: "separate" as const } : {}),
});
const delta = (elementsInParallel = 1): BenchRecord["wiring"] => ({
  banks: [{ id: "A", connection: "delta", elementsInParallel }],
});
// One star of two at 30 kW, 480 V: 15.36 Ω a branch.
const BOTH = [
  ...alone("A", "S-A", "15.36 Ω", "OL", "15.40 Ω"),
  ...alone("B", "S-B", "OL", "15.30 Ω", "15.36 Ω"),
];

/** By what is in them. */
export const SAID: Readonly<Record<string, BenchRecord>> = {
  "two open as found, sound amps as left": star({
    wiring: two(),
    supply: V,
    asFound: { ohms: BOTH },
    asLeft: { currents: amps(36.1, 36.0, 36.2) },
  }),
  "one of two renewed": star({
    wiring: two(),
    supply: V,
    asFound: { ohms: BOTH },
    asLeft: { ohms: alone("A", "S-A", "15.36 Ω", "15.33 Ω", "15.40 Ω"), currents: amps(30.1, 30.0, 30.2) },
  }),
  "a lost line, back as left": star({
    supply: { v12: "480 V", v23: "240 V", v31: "240 V" },
    asFound: { ohms: atStar("7.68 Ω", "7.70 Ω", "7.66 Ω"), currents: amps(31.2, 31.2, 0) },
    asLeft: { supply: V, currents: amps(36.1, 36.0, 36.2) },
  }),
  "an open element by amps": star({ supply: V, asFound: { currents: amps(0, 31.3, 31.3) } }),
  "an open element of three by amps": star({
    wiring: delta(3),
    supply: V,
    asFound: { currents: amps(30.3, 30.3, 36.1) },
  }),
  "touching turns by amps": star({
    wiring: delta(),
    supply: V,
    asFound: { currents: amps(41.3, 41.4, 36.1) },
  }),
  "an element off its value by ohms between lines": star({
    wiring: delta(),
    // A side of 30 Ω beside two of 23.04 Ω: 18.16 Ω, and 16.05 Ω on the other two pairs.
    asFound: { ohms: pairs("18.16 Ω", "16.05 Ω", "16.05 Ω") },
  }),
  "one string of twelve open, within the tolerance": star({
    wiring: delta(12),
    supply: V,
    asFound: {
      ohms: ["L1L2", "L2L3", "L3L1"].map((side, i) => ({
        from: side.slice(0, 2),
        to: side.slice(2),
        alone: `A-${side}`,
        reads: i === 0 ? "25.13 Ω" : "23.04 Ω",
      })),
    },
  }),
  "a terminal on the frame": star({
    asFound: {
      ohms: pairs("15.36 Ω", "15.38 Ω", "15.34 Ω"),
      insulation: LINES.map((from, i) => ({
        from,
        reads: i === 0 ? "0.05 Ω" : "15.4 Ω",
        testVoltage: "500 V",
      })),
    },
  }),
  "a coil on the frame": star({
    asFound: {
      ohms: pairs("15.36 Ω", "15.38 Ω", "15.34 Ω"),
      insulation: LINES.map((from, i) => ({ from, reads: ["3.0 Ω", "12.4 Ω", "12.4 Ω"][i] as string })),
    },
  }),
  "linked as delta with an element open": star({
    wiring: two(),
    asFound: {
      ohms: [
        ...pairs("30.72 Ω", "15.36 Ω", "15.36 Ω").map((one) => ({ ...one, alone: "A" })),
        ...pairs("30.72 Ω", "30.70 Ω", "30.74 Ω").map((one) => ({ ...one, alone: "B" })),
      ],
    },
  }),
  "linked as star, drawn as delta": star({
    wiring: two("delta"),
    supply: V,
    asFound: { currents: amps(24.1, 24.0, 24.2) },
  }),
  "paths as good as bolted": star({
    wiring: {
      banks: [
        { id: "A", connection: "star" },
        { id: "B", connection: "delta" },
      ],
    },
    asFound: { ohms: pairs("0.12 Ω", "0.11 Ω", "0.10 Ω") },
  }),
  "drops that nothing explains beside sound ohms": star({
    asFound: {
      ohms: atStar("7.68 Ω", "7.70 Ω", "7.66 Ω"),
      joints: ["a", "b", "c"].map((id, i) => ({
        id,
        drop: ["3.1 mV", "3.0 mV", "41 mV"][i] as string,
        current: "36 A",
      })),
    },
  }),
  "a joint of the drawing bad beside an open branch": star({
    wiring: {
      banks: [{ id: "A", connection: "star" }],
      joints: LINES.map((at) => ({ id: `lug ${at}`, at })),
    },
    supply: V,
    asFound: {
      ohms: atStar("7.68 Ω", "OL", "7.66 Ω"),
      currents: amps(31.2, 0, 31.2),
      joints: LINES.map((line, i) => ({
        id: `lug ${line}`,
        drop: ["3.0 mV", "0.0 mV", "90 mV"][i] as string,
        current: i === 1 ? "0.1 A" : "31.2 A",
      })),
    },
  }),
  "a plate in watts for kilowatts and a reading off by a thousand": star({
    nameplate: { power: "30 W", voltage: "480 V" },
    asFound: { ohms: atStar("7.68 Ω", "7.70 Ω", "7660 Ω") },
  }),
  "own studs good, through the links open": star({
    asFound: {
      ohms: [
        ...alone("A", "S", "7.68 Ω", "7.70 Ω", "7.66 Ω").map((one) => ({ ...one, ownStuds: true })),
        ...pairs("15.38 Ω", "OL", "OL"),
      ],
    },
  }),
  "a star on the neutral with a branch open": star({
    wiring: { banks: [{ id: "A", connection: "star" }], neutral: "connected" },
    supply: V,
    asFound: {
      ohms: LINES.map((from, i) => ({ from, to: "N", reads: i === 2 ? "OL" : "7.68 Ω" })),
      insulation: [{ from: "L1", reads: "100 MΩ", testVoltage: "500 V" }],
    },
  }),
  "amps of half": star({ supply: V, asFound: { currents: amps(18, 18, 18) } }),
  "a branch on another line": star({
    asFound: {
      ohms: [
        ...pairs("11.52 Ω", "OL", "OL"),
        { from: "L1", to: "S", reads: "3.84 Ω" },
        { from: "L2", to: "S", reads: "7.68 Ω" },
      ],
    },
  }),
  "no instruments": star({
    instruments: { ...INSTRUMENTS, clamp: undefined as never, voltmeter: undefined as never },
    supply: V,
    asFound: { ohms: atStar("7.68 Ω", "7.70 Ω", "OL"), currents: amps(31.2, 31.2, 0) },
  }),
};
