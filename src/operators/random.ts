/**
 * The library's own random numbers, from a seed that the caller gives: xoshiro128** (Blackman and Vigna, version 1.1, public
 * domain), its 128 bits of state filled by SplitMix64 from the seed. The same seed gives the same numbers on every machine.
 */
import { checkWhole } from "../quantity/index.ts";
import { splitMix64 } from "./splitMix64.ts";

/** xoshiro128**: 32 random bits at a time, period 2^128 − 1. */
export class Generator {
  private a: number;
  private b: number;
  private c: number;
  private d: number;

  /** @param state - four 32-bit words, not all 0 */
  constructor(state: readonly [number, number, number, number]) {
    [this.a, this.b, this.c, this.d] = state;
  }

  /** The next 32 bits, 0 to 2^32 − 1. */
  bits(): number {
    const five = Math.imul(this.b, 5);
    const result = Math.imul((five << 7) | (five >>> 25), 9) >>> 0;
    const shifted = this.b << 9;
    this.c ^= this.a;
    this.d ^= this.b;
    this.b ^= this.c;
    this.a ^= this.d;
    this.c ^= shifted;
    this.d = (this.d << 11) | (this.d >>> 21);
    return result;
  }

  /** A number above 0 and below 1, one of 2^52 equally spaced ones: never an end, where a quantile is infinite. */
  uniform(): number {
    const high = this.bits() >>> 6;
    const low = this.bits() >>> 6;
    return (high * 67_108_864 + low + 0.5) / 4_503_599_627_370_496;
  }
}

/** A generator from a whole number of 0 or more. */
export function seededGenerator(seed: number): Generator {
  checkWhole("seed", seed, 0, Number.MAX_SAFE_INTEGER);
  const [first, second] = splitMix64(BigInt(seed), 2) as [bigint, bigint];
  const low = (word: bigint): number => Number(word & 0xffff_ffffn);
  return new Generator([low(first), low(first >> 32n), low(second), low(second >> 32n)]);
}
