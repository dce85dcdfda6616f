/** What branches that nobody measured can do to the amps of each line, within the tolerance of the record. */
import { buildModule, energise, type Supply, withResistance } from "../../circuit/index.ts";
import type { Ohms } from "../../quantity/index.ts";
import { elementPlan } from "../day/branchModule.ts";
import type { ParsedRecord } from "../record/parsed.ts";

/** How far a line's current may lie below and above the expected one, A. */
export interface LineSpread {
  readonly below: number;
  readonly above: number;
}

/** Beyond this many branches the network is not solved for each of them. */
const MOST_BRANCHES = 60;

/**
 * Worst case by line: each branch at target alone at either end of the tolerance, its effects added up. Empty where there is no
 * tolerance, nothing at target, too much of it, or a branch that may be 0 Ω; Ohm's law then has to do.
 */
export function lineSpreads(input: {
  readonly record: ParsedRecord;
  readonly repaired: ReadonlyMap<string, Ohms>;
  readonly atTarget: readonly string[];
  readonly supply: Supply;
}): ReadonlyMap<string, LineSpread> {
  const { record, repaired, atTarget, supply } = input;
  const { tolerance, wiring } = record;
  if (tolerance === undefined || tolerance.low <= -1) return new Map();
  if (atTarget.length === 0 || atTarget.length > MOST_BRANCHES) return new Map();
  // One element for each branch: how it is made up does not matter to the lines.
  const banks = wiring.banks.map(({ id, connection }) => ({ id, connection }));
  const { network } = buildModule(elementPlan({ ...record, wiring: { ...wiring, banks } }, repaired));
  const nominal = energise({ network, supply }).lines;
  const spreads = new Map(nominal.map(({ node }) => [node as string, { below: 0, above: 0 }]));
  for (const id of atTarget) {
    const changes = [tolerance.low, tolerance.high].map((part) => {
      const resistance = ((repaired.get(id) as number) * (1 + part)) as Ohms;
      const { lines } = energise({ network: withResistance({ network, id, resistance }), supply });
      return lines.map(({ current }, i) => current - (nominal[i] as (typeof nominal)[number]).current);
    });
    nominal.forEach(({ node }, i) => {
      const each = changes.map((lines) => lines[i] as number);
      const { below, above } = spreads.get(node) as LineSpread;
      spreads.set(node, {
        below: below - Math.min(0, ...each),
        above: above + Math.max(0, ...each),
      });
    });
  }
  return spreads;
}
