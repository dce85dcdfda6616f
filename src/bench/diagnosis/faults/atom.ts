/** A fault that is one series resistance in the network: what it inserts where, over which values of its parameter, under which names. */

import type { Cut } from "../network/rows.ts";
import type { DiagnosedFault } from "../question/diagnosedFault.ts";
import type { FaultEstimate } from "../question/types.ts";

/** What a fault puts into the network. */
export interface Insertion {
  /** In series, Ω; Infinity for a break. */
  readonly cold: number;
  readonly hot: number;
  /** New cold resistance and variance of the edge changed, where one is. */
  readonly resistance: number;
  readonly variance: number;
}

/** A stretch of a fault's parameter, t = 0..1 from `low` to `high`, and its part of the prior. */
export interface Stretch {
  readonly low: number;
  readonly high: number;
  readonly logarithmic: boolean;
  /** ln(high/low). */
  readonly span: number;
  readonly part: number;
}

/** A stretch of a parameter. */
export function stretchOf(
  [low, high]: readonly [number, number],
  logarithmic: boolean,
  part: number,
): Stretch {
  return { low, high, logarithmic, span: Math.log(high / low), part };
}

/** One place where the fault may be, with its prior odds. */
export interface Member {
  readonly fault: DiagnosedFault;
  readonly odds: number;
  /** Where in its edge, for elements. */
  readonly string: number;
  readonly position: number;
}

/** Faults that do the same to the network, told apart only by name. */
export interface Atom {
  readonly kind: DiagnosedFault["kind"];
  readonly members: readonly Member[];
  readonly cut: Cut;
  /** The edge whose resistance changes; −1 for a joint place without one. */
  readonly edge: number;
  /** Number of the line for a lost one, `OF_ONE_BANK` where only a bank has lost it, else undefined. */
  readonly line: number | undefined;
  /** None for a fault without a parameter. */
  readonly stretches: readonly Stretch[];
  readonly of: FaultEstimate["of"] | null;
  /** What is inserted for a value of the parameter. */
  readonly insertion: (value: number) => Insertion;
}

/** A break of a whole cut. */
export const BREAK: Insertion = {
  cold: Number.POSITIVE_INFINITY,
  hot: Number.POSITIVE_INFINITY,
  resistance: 1,
  variance: 0,
};

/** Value of the parameter at t. */
export function parameterAt({ low, high, logarithmic, span }: Stretch, t: number): number {
  return logarithmic ? low * Math.exp(span * t) : low + (high - low) * t;
}

/** Odds of a probability. */
export const odds = (p: number): number => p / (1 - p);
