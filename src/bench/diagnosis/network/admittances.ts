/** What flows in every edge for a volt inserted in any of them, from the impedances between nodes. */

import { filled, filledWhole, floats } from "../numbers/room.ts";
import { networkOf, type Wiring } from "./edges.ts";

/** The edges of a wiring as numbers: conductances, and the places of their ends among the nodes. */
export interface Numbered {
  readonly conductance: Float64Array;
  readonly from: Int32Array;
  readonly to: Int32Array;
}

/** The edges of a wiring by the places of its nodes; those not kept carry nothing. */
export function numbered(
  wiring: Wiring,
  at: ReadonlyMap<string, number>,
  ratio: number,
  keep?: ReadonlySet<number>,
): Numbered {
  const { branches } = networkOf(wiring, ratio, keep);
  return {
    conductance: filled(branches.length, (e) => {
      const resistance = branches[e]?.resistance as number | "open";
      return resistance === "open" ? 0 : 1 / resistance;
    }),
    from: filledWhole(branches.length, (e) => at.get(branches[e]?.from as string) as number),
    to: filledWhole(branches.length, (e) => at.get(branches[e]?.to as string) as number),
  };
}

/** di_e/dε_f = g_e·δ_ef − g_e·g_f·(potential difference across e per ampere circulated through f). */
export function admittances(
  z: readonly (readonly number[])[],
  { conductance: g, from, to }: Numbered,
): Float64Array {
  const count = g.length;
  const result = floats(count * count);
  for (let e = 0; e < count; e += 1) {
    const zFrom = z[from[e] as number] as readonly number[];
    const zTo = z[to[e] as number] as readonly number[];
    const ge = g[e] as number;
    for (let f = e; f < count; f += 1) {
      const a = from[f] as number;
      const b = to[f] as number;
      const across = (zFrom[a] as number) - (zFrom[b] as number) - (zTo[a] as number) + (zTo[b] as number);
      const value = (e === f ? ge : 0) - ge * (g[f] as number) * across;
      result[e * count + f] = value;
      result[f * count + e] = value;
    }
  }
  return result;
}
