/** The faults a wiring can have, each as one series resistance in the network; like places computed once. */

import type { DiagnosedFault } from "./diagnosedFault.ts";
import type { Edge, ElementChange, Wiring } from "./edges.ts";
import { lumped } from "./edges.ts";
import { type JointsSeen, jointAtoms, jointCount } from "./joints.ts";
import { bankLineAtoms, lineAtoms } from "./lostLines.ts";
import type { Cut } from "./rows.ts";
import { type FaultPriors, RANGE } from "./settings.ts";
import type { FaultEstimate } from "./types.ts";

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

/** Odds of a probability. */
export const odds = (p: number): number => p / (1 - p);

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
