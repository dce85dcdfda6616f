/** Lines without supply: before the module, or before one of its banks. */

import { OF_ONE_BANK } from "../network/change.ts";
import type { Wiring } from "../network/edges.ts";
import { cutAt } from "../network/rows.ts";
import { LINES } from "../question/lines.ts";
import { type Atom, BREAK, odds } from "./atom.ts";

/** Lines without supply: the whole module has lost them, and dead readings do not show it. */
export function lineAtoms(wiring: Wiring, prior: number): Atom[] {
  if (prior === 0) return [];
  return LINES.map((line, l) => ({
    kind: "lost line",
    members: [{ fault: { kind: "lost line", line }, odds: odds(prior), string: 0, position: 0 }],
    cut: cutAt(wiring, line, () => true),
    edge: -1,
    line: l,
    stretches: [],
    of: null,
    insertion: () => BREAK,
  }));
}

/** A bank without supply on one line: only the energised state shows it, and the others keep the line. */
export function bankLineAtoms(wiring: Wiring, prior: number): Atom[] {
  if (prior === 0) return [];
  return wiring.module.plan.banks.flatMap(({ id: bank }) =>
    LINES.map((line) => ({
      kind: "unfed bank",
      members: [{ fault: { kind: "unfed bank", bank, line }, odds: odds(prior), string: 0, position: 0 }],
      cut: cutAt(wiring, line, (edge) => edge.bank === bank),
      edge: -1,
      line: OF_ONE_BANK,
      stretches: [],
      of: null,
      insertion: () => BREAK,
    })),
  );
}
