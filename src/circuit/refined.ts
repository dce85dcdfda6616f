/** Potentials and branch voltages with the digits that a difference of two large potentials would lose restored. */

import { type ConductanceFactor, solveConductances } from "../numeric/index.ts";
import { zeros } from "./lists.ts";

/** Largest current left over at a node, as a part of the largest branch current, that is not worth refining. */
const BALANCE_TOLERANCE = 1e-13;

/** Node potentials and the voltage across each branch, from → to. */
export interface Potentials {
  readonly potential: number[];
  readonly across: number[];
}

function hasAbove(values: readonly number[], limit: number): boolean {
  for (let i = 0; i < values.length; i += 1) if (Math.abs(values[i] as number) > limit) return true;
  return false;
}

/**
 * Solves for held potentials and injected currents. The voltage across a micro-ohm joint is the small difference of two
 * large potentials; one refinement step on the currents left over at the nodes restores what that difference lost.
 * @param input.factor - from factorConductances
 * @param input.ends - merged branch ends
 * @param input.conductance - of each branch
 * @param input.held - nodes whose potential is given (−1 for none)
 * @param input.potential - holds the given potentials on entry, all of them on return
 * @param input.injected - current entering each free node; left untouched. Left out: none
 * @returns potentials and branch voltages
 */
export function refinedPotentials(input: {
  readonly factor: ConductanceFactor;
  readonly ends: { readonly from: readonly number[]; readonly to: readonly number[] };
  readonly conductance: readonly number[];
  readonly held: readonly number[];
  readonly potential: number[];
  readonly injected?: readonly number[];
}): Potentials {
  const { factor, ends, conductance, held, potential, injected } = input;
  const count = factor.nodeCount;
  if (injected === undefined) solveConductances({ factor, potential });
  else solveConductances({ factor, potential, injected: injected.slice() });
  const across: number[] = [];
  const leftOver = injected === undefined ? zeros(count) : injected.slice();
  let largest = 0;
  for (let e = 0; e < conductance.length; e += 1) {
    const a = ends.from[e] as number;
    const b = ends.to[e] as number;
    const voltage = (potential[a] as number) - (potential[b] as number);
    const current = voltage * (conductance[e] as number);
    across.push(voltage);
    leftOver[a] = (leftOver[a] as number) - current;
    leftOver[b] = (leftOver[b] as number) + current;
    const size = Math.abs(current);
    if (size > largest) largest = size;
  }
  for (let i = 0; i < held.length; i += 1) {
    if ((held[i] as number) >= 0) leftOver[held[i] as number] = 0;
  }
  if (!hasAbove(leftOver, BALANCE_TOLERANCE * largest)) return { potential, across };
  const correction = solveConductances({
    factor,
    potential: zeros(count),
    injected: leftOver,
  });
  for (let e = 0; e < across.length; e += 1) {
    const step =
      (correction[ends.from[e] as number] as number) - (correction[ends.to[e] as number] as number);
    across[e] = (across[e] as number) + step;
  }
  for (let node = 0; node < count; node += 1)
    potential[node] = (potential[node] as number) + (correction[node] as number);
  return { potential, across };
}
