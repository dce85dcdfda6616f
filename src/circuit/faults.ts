/** What happens to the survivors: opens, shorts and lost lines, held against the healthy network. */
import { checkOneOf, checkWhole, fail, given } from "../quantity/index.ts";
import { effectOf, knownOutlook, type Outlooks } from "./faultEffects.ts";
import { outlookOf } from "./faultOutlook.ts";
import { checkFaults, faultStudy } from "./faultStudy.ts";
import type { BranchFault, Fault, FaultEffect } from "./faultTypes.ts";
import type { Branch, Network } from "./network.ts";
import type { Supply } from "./supply.ts";

/**
 * What one set of faults does to a network: remaining power, line currents, stress on the survivors.
 *
 * The network is taken as healthy as given; ratios are to it. Resistances are constant, so the voltage ratio of a
 * survivor is also its current ratio and its power ratio is the square: 1.2 times the voltage is 1.44 times the power,
 * not double.
 * @param input.network - the healthy network
 * @param input.supply - the supply
 * @param input.faults - at least one; all at once
 * @returns the effect. `"supply shorted"` if the faults bolt lines together
 * @throws ElectroheatError `missing`, `unknown-name`, `duplicate`, and as for {@link energise}
 * @source Kirchhoff's laws (nodal analysis)
 * @example
 * ```ts
 * const { network } = buildModule({
 *   banks: [{ id: "A", connection: "star", elementResistance: ohms(11.52), elementsInParallel: 2 }],
 * });
 * const supply = balancedSupply({ lineVoltage: volts(480) });
 * const effect = faultEffect({ network, supply, faults: [{ kind: "open", id: "A-L1-1" }] });
 * effect.outcome === "runs" && [effect.powerRatio, effect.worst?.id, effect.worst?.powerRatio]
 * // => [0.8, "A-L1-2", 1.44]
 * ```
 * @since 0.1.0
 */
export function faultEffect(input: {
  readonly network: Network;
  readonly supply: Supply;
  readonly faults: readonly Fault[];
}): FaultEffect {
  const { network, supply, faults } = given(input);
  const from = faultStudy(network, supply);
  checkFaults(from, faults);
  return effectOf(from, faults, "all", outlookOf(from, faults));
}

/**
 * Every single fault of the named kinds on every element, or every pair of them, held against the healthy network.
 *
 * Elements side by side of the same resistance have the same effect, which is worked out once and told of each.
 * @param input.network - the healthy network
 * @param input.supply - the supply
 * @param input.kinds - `"open"`, `"short"` or both; opens if left out
 * @param input.depth - 1 for single faults, 2 for all pairs as well; 1 if left out
 * @param input.survivors - `"all"`: each effect lists every survivor; `"worst"`: only the worst one, for modules of hundreds
 *   of elements, where the full lists grow with the square (pairs: the cube) of their number; all if left out
 * @returns the effects: singles in the network's order, then pairs
 * @throws ElectroheatError `out-of-range`, `unknown-name`, and as for {@link energise}
 * @source Kirchhoff's laws; rank-one updates: J. Sherman and W. J. Morrison, Annals of Mathematical Statistics 21 (1950) 124
 * @example
 * ```ts
 * const { network } = buildModule({ banks: [{ id: "A", connection: "delta", elementResistance: ohms(12.8) }] });
 * const supply = balancedSupply({ lineVoltage: volts(480) });
 * faultScan({ network, supply }).map((effect) => effect.outcome === "runs" && effect.powerRatio)
 * // => [0.666667, 0.666667, 0.666667]
 * ```
 * @since 0.1.0
 */
export function faultScan(input: {
  readonly network: Network;
  readonly supply: Supply;
  readonly kinds?: readonly ("open" | "short")[];
  readonly depth?: 1 | 2;
  readonly survivors?: "all" | "worst";
}): readonly FaultEffect[] {
  const { network, supply, kinds = ["open"], depth = 1, survivors = "all" } = given(input);
  if (!Array.isArray(kinds)) {
    fail({ code: "missing", path: "kinds", expected: "a list of kinds", received: kinds });
  }
  kinds.forEach((kind, i) => {
    checkOneOf(`kinds.${i}`, kind, ["open", "short"]);
  });
  checkWhole("depth", depth, 1, 2);
  checkOneOf("survivors", survivors, ["all", "worst"]);
  const from = faultStudy(network, supply);
  const singles: BranchFault[] = [];
  for (const element of from.elements) {
    const id = (network.branches[element] as Branch).id;
    for (const kind of kinds) singles.push({ kind, id });
  }
  const sets: BranchFault[][] = singles.map((fault) => [fault]);
  if (depth === 2) {
    singles.forEach((first, i) => {
      for (const second of singles.slice(i + 1)) {
        if (first.id !== second.id) sets.push([first, second]);
      }
    });
  }
  const known: Outlooks = new Map();
  return sets.map((faults) => effectOf(from, faults, survivors, knownOutlook(from, faults, known)));
}
