/** Comparisons of two solutions of the same network. */
import type { EnergisedNetwork } from "electroheat/circuit";
import { expect } from "vitest";

export interface Phasor {
  readonly re: number;
  readonly im: number;
}

export const size = (z: Phasor): number => Math.hypot(z.re, z.im);

/** Distance of two phasors as a part of the larger of their size and `top`. */
export function apart(a: Phasor, b: Phasor, top: number): number {
  const gap = size({ re: a.re - b.re, im: a.im - b.im });
  return gap === 0 ? 0 : gap / Math.max(size(a), size(b), top);
}

/** Every number inside a result, with its path; walks plain data only. */
export function numbersIn(value: unknown, path = ""): { readonly path: string; readonly value: number }[] {
  if (typeof value === "number") return [{ path, value }];
  if (value === null || typeof value !== "object") return [];
  return Object.entries(value).flatMap(([key, inner]) => numbersIn(inner, `${path}.${key}`));
}

export function expectFinite(result: unknown, message: string): void {
  const bad = numbersIn(result).filter(({ value }) => !Number.isFinite(value));
  expect(bad, message).toEqual([]);
  // Plain data survives a round trip; a -0 or an undefined would not.
  expect(JSON.parse(JSON.stringify(result)), message).toEqual(result);
}

/** Largest node voltage of a solution. */
export function topVoltage(found: EnergisedNetwork): number {
  return Math.max(1e-300, ...found.nodes.map(({ voltage }) => voltage ?? 0));
}

/**
 * Largest current of a solution: what a cancelled one is measured against. In a network that draws nothing the largest
 * current is rounding, so it counts as at least the largest voltage over the largest element of the random networks.
 */
export function topCurrent(found: EnergisedNetwork): number {
  return Math.max(topVoltage(found) / 500, ...found.branches.map(({ current }) => current));
}
