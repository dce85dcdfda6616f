/** The faults a wiring can have, each as one series resistance in the network; like places computed once. */

import type { Edge, ElementChange, Wiring } from "../network/edges.ts";
import { lumped } from "../network/edges.ts";
import type { Cut } from "../network/rows.ts";
import { type FaultPriors, RANGE } from "../question/settings.ts";
import type { FaultEstimate } from "../question/types.ts";
import { type Atom, BREAK, type Insertion, type Member, odds, type Stretch, stretchOf } from "./atom.ts";
import { type JointsSeen, jointAtoms, jointCount } from "./joints.ts";
import { bankLineAtoms, lineAtoms } from "./lostLines.ts";

/** What changed elements of an edge insert in it. */
export function elementInsertion(edge: Edge, hot: number, changes: readonly ElementChange[]): Insertion {
  const { resistance, variance } = lumped(edge.strings, changes);
  if (resistance === Number.POSITIVE_INFINITY) return BREAK;
  const more = resistance - edge.resistance;
  return { cold: more, hot: more * hot, resistance, variance };
}

/** Where an element sits in its edge. */
type Seat = Pick<Member, "string" | "position">;

/** One element in its edge: all that does not depend on what it is changed to. */
interface Lump {
  readonly hot: number;
  /** Resistance of the edge as it is. */
  readonly before: number;
  /** Of the strings beside its own: conductance, and what they leave of the variance. */
  readonly conductance: number;
  readonly squares: number;
  /** The element, and the rest of its string. */
  readonly own: number;
  readonly rest: number;
  readonly restSquare: number;
}

function lumpOf(edge: Edge, hot: number, { string, position }: Seat): Lump {
  const others = lumped(edge.strings.filter((_, s) => s !== string));
  const alone = others.resistance === Number.POSITIVE_INFINITY;
  const conductance = alone ? 0 : 1 / others.resistance;
  const squares = alone ? 0 : others.variance * conductance * conductance;
  const values = edge.strings[string]?.values ?? [];
  const own = values[position] as number;
  let [rest, restSquare] = [-own, -own * own];
  for (const value of values) {
    rest += value;
    restSquare += value * value;
  }
  return { hot, before: edge.resistance, conductance, squares, own, rest, restSquare };
}

/** What the element inserts in its edge when its resistance is multiplied. */
function changedBy(
  { hot, before, conductance, squares, own, rest, restSquare }: Lump,
  factor: number,
): Insertion {
  const changed = own * factor;
  const open = changed === Number.POSITIVE_INFINITY;
  const g = open ? 0 : 1 / (rest + changed);
  const whole = conductance + g;
  if (whole === 0) return BREAK;
  const resistance = 1 / whole;
  const square = open ? 0 : g * g * g * g * (restSquare + changed * changed);
  const more = resistance - before;
  return { cold: more, hot: more * hot, resistance, variance: (squares + square) / (whole * whole) };
}

/** The two sides of an off value share its prior by their widths in ln R. */
const OFF: readonly Stretch[] = (() => {
  const widths = [RANGE.low, RANGE.high].map(([low, high]) => Math.log(high / low));
  const whole = (widths[0] as number) + (widths[1] as number);
  return [
    stretchOf(RANGE.low, true, (widths[0] as number) / whole),
    stretchOf(RANGE.high, true, (widths[1] as number) / whole),
  ];
})();

/** A fault of an element: its prior, its parameter, and the factor on the element's resistance for a value of it. */
export interface ElementFault {
  readonly kind: "element open" | "shorted turns" | "element off value";
  readonly prior: keyof FaultPriors;
  readonly stretches: readonly Stretch[];
  readonly of: FaultEstimate["of"] | null;
  readonly factor: (value: number) => number;
}

/** How each fault of an element changes it. */
export const ELEMENT_FAULTS: readonly ElementFault[] = [
  {
    kind: "element open",
    prior: "elementOpen",
    stretches: [],
    of: null,
    factor: () => Number.POSITIVE_INFINITY,
  },
  {
    kind: "shorted turns",
    prior: "shortedTurns",
    stretches: [stretchOf(RANGE.turns, false, 1)],
    of: "turns shorted",
    factor: (value) => 1 - value,
  },
  {
    kind: "element off value",
    prior: "offValue",
    stretches: OFF,
    of: "resistance ratio",
    factor: (value) => value,
  },
];

/** Whether two strings hold the same resistances, in whatever order. */
function sameValues(a: readonly number[], b: readonly number[]): boolean {
  if (a.length !== b.length) return false;
  if (a.every((value, i) => value === b[i])) return true;
  const [one, other] = [[...a].sort((x, y) => x - y), [...b].sort((x, y) => x - y)];
  return one.every((value, i) => value === other[i]);
}

/** Elements of an edge in classes of twins: same resistance in a string of the same resistances. */
function elementClasses(edge: Edge): readonly (readonly Seat[])[] {
  const classes: { readonly value: number; readonly values: readonly number[]; readonly seats: Seat[] }[] =
    [];
  edge.strings.forEach(({ values }, string) => {
    if (values.includes(Number.POSITIVE_INFINITY)) return;
    values.forEach((value, position) => {
      const seat = { string, position };
      const known = classes.find((one) => one.value === value && sameValues(one.values, values));
      if (known === undefined) classes.push({ value, values, seats: [seat] });
      else known.seats.push(seat);
    });
  });
  return classes.map(({ seats }) => seats);
}

/** Faults of elements that can occur at all. */
const likely = (priors: Required<FaultPriors>): readonly ElementFault[] =>
  ELEMENT_FAULTS.filter(({ prior }) => priors[prior] > 0);

function elementAtoms(wiring: Wiring, hot: number, priors: Required<FaultPriors>): Atom[] {
  const atoms: Atom[] = [];
  const faults = likely(priors);
  wiring.edges.forEach((edge, e) => {
    if (edge.joint || edge.resistance === Number.POSITIVE_INFINITY) return;
    const cut: Cut = { index: Int32Array.of(e), sign: Float64Array.of(1) };
    for (const seats of elementClasses(edge)) {
      const lump = lumpOf(edge, hot, seats[0] as Seat);
      for (const { kind, prior, stretches, of, factor } of faults) {
        const own = odds(priors[prior]);
        atoms.push({
          kind,
          members: seats.map(({ string, position }) => ({
            fault: { kind, element: edge.strings[string]?.elements[position] as string },
            odds: own,
            string,
            position,
          })),
          cut,
          edge: e,
          line: undefined,
          stretches,
          of,
          insertion: (value) => changedBy(lump, factor(value)),
        });
      }
    }
  });
  return atoms;
}

/** What the readings let be seen of series faults beyond what they always show. */
export interface Visible extends JointsSeen {
  /** The module was read under voltage. */
  readonly live: boolean;
  /** A bank may have lost a line that the module has: others keep it, or the volts on it were read. */
  readonly bankLines: boolean;
}

/** ln Π(1 − p) over all series faults of a wiring: none of them is there. */
export function logNoFault(
  wiring: Wiring,
  priors: Required<FaultPriors>,
  { live, bankLines }: Pick<Visible, "live" | "bankLines">,
): number {
  let elements = 0;
  for (const { joint, strings } of wiring.edges) {
    if (joint) continue;
    for (const { values } of strings)
      if (!values.includes(Number.POSITIVE_INFINITY)) elements += values.length;
  }
  const joints = priors.joint + priors.openJoint === 0 ? 0 : jointCount(wiring);
  const each = likely(priors).reduce((sum, { prior }) => sum + Math.log1p(-priors[prior]), 0);
  return (
    elements * each +
    joints * (Math.log1p(-priors.joint) + Math.log1p(-priors.openJoint)) +
    (live ? 3 * Math.log1p(-priors.lostLine) : 0) +
    (bankLines ? 3 * wiring.module.plan.banks.length * Math.log1p(-priors.unfedBankLine) : 0)
  );
}

/** All faults that are one series resistance: elements, joints, lost lines (these only under voltage). */
export function seriesAtoms(
  wiring: Wiring,
  hot: number,
  priors: Required<FaultPriors>,
  seen: Visible,
): readonly Atom[] {
  const atoms = elementAtoms(wiring, hot, priors);
  for (const atom of jointAtoms(wiring, priors, seen)) atoms.push(atom);
  if (seen.live) for (const atom of lineAtoms(wiring, priors.lostLine)) atoms.push(atom);
  if (seen.bankLines) for (const atom of bankLineAtoms(wiring, priors.unfedBankLine)) atoms.push(atom);
  return atoms;
}
