/**
 * What a meter would show, worked out without this library: closed forms for one star or one delta, and a node equation solved by
 * the LU of a general-purpose library (mathjs) for anything else. Noise from a seeded generator.
 */
import { lusolve } from "mathjs";
import type { Chance } from "../support/networks.ts";

export const LINES = ["L1", "L2", "L3"] as const;
export const PAIRS = [
  ["L1", "L2"],
  ["L2", "L3"],
  ["L3", "L1"],
] as const;

export type Three = readonly [number, number, number];

/** Line to star point and line to line of one star: R_i, and R_i + R_j. */
export function starReadings([a, b, c]: Three): readonly {
  readonly from: string;
  readonly to: string;
  readonly value: number;
}[] {
  return [
    { from: "L1", to: "S", value: a },
    { from: "L2", to: "S", value: b },
    { from: "L3", to: "S", value: c },
    { from: "L1", to: "L2", value: a + b },
    { from: "L2", to: "L3", value: b + c },
    { from: "L3", to: "L1", value: c + a },
  ];
}

/** Line to line of one delta: each side beside the other two in series. An open side is Infinity here. */
export function deltaReadings([r12, r23, r31]: Three): Three {
  const beside = (x: number, y: number): number =>
    x === Number.POSITIVE_INFINITY ? y : y === Number.POSITIVE_INFINITY ? x : (x * y) / (x + y);
  return [beside(r12, r23 + r31), beside(r23, r31 + r12), beside(r31, r12 + r23)];
}

export interface Resistor {
  readonly from: string;
  readonly to: string;
  readonly ohms: number;
}

/** Resistance between two nodes of any connected set of resistors: 1 A in at `from`, out at `to`, which is earthed. */
export function nodeReading(resistors: readonly Resistor[], from: string, to: string): number {
  const nodes = [...new Set(resistors.flatMap((one) => [one.from, one.to]))].filter((node) => node !== to);
  const at = new Map(nodes.map((node, i) => [node, i]));
  const matrix = nodes.map(() => nodes.map(() => 0));
  for (const { from: p, to: q, ohms } of resistors) {
    const [i, j] = [at.get(p), at.get(q)];
    if (i !== undefined) (matrix[i] as number[])[i] = (matrix[i]?.[i] as number) + 1 / ohms;
    if (j !== undefined) (matrix[j] as number[])[j] = (matrix[j]?.[j] as number) + 1 / ohms;
    if (i !== undefined && j !== undefined) {
      (matrix[i] as number[])[j] = (matrix[i]?.[j] as number) - 1 / ohms;
      (matrix[j] as number[])[i] = (matrix[j]?.[i] as number) - 1 / ohms;
    }
  }
  const right = nodes.map((node) => [node === from ? 1 : 0]);
  const solved = lusolve(matrix, right) as number[][];
  return solved[at.get(from) as number]?.[0] as number;
}

/** Standard normal deviate (Box and Muller 1958). */
export function normal(chance: Chance): number {
  return Math.sqrt(-2 * Math.log(1 - chance.next())) * Math.cos(2 * Math.PI * chance.next());
}

/** Largest distance of a sample's distribution from the uniform one on 0..1 (Kolmogorov-Smirnov). */
export function distanceFromUniform(sample: readonly number[]): number {
  const sorted = [...sample].sort((a, b) => a - b);
  const n = sorted.length;
  return sorted.reduce((far, p, i) => Math.max(far, Math.abs(p - i / n), Math.abs(p - (i + 1) / n)), 0);
}
