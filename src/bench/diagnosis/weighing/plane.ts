/**
 * Two faults with a parameter each, integrated over the plane. Along each row the first fault stands in the network and the
 * second is weighed quickly, the covariance being that at the plane's peak; a few full evaluations set each row right.
 */

import { type Atom, type Insertion, type Member, parameterAt } from "../faults/atom.ts";
import { elementInsertion } from "../faults/faults.ts";
import { logLikelihood, type Model } from "../likelihood/model.ts";
import { baselineOf, logOfMeans, type Means, meansInto, meansOf, rebased } from "../likelihood/quick.ts";
import { cutResponse, inserted, insertInto } from "../network/change.ts";
import type { Edge } from "../network/edges.ts";
import { logSumExp } from "../numbers/linear.ts";
import { heaviest, planeIntegral, raised } from "../numbers/nested.ts";
import { type Integral, logIntegral } from "../numbers/quadrature.ts";
import { floats } from "../numbers/room.ts";
import { corrected } from "./family.ts";
import { type Finding, findingOf, type Ground, type Parameter, responseOn, setEdge } from "./findings.ts";
import type { Names } from "./names.ts";
import { elementChange } from "./weigh.ts";

export const samePlace = (a: Member, b: Member): boolean =>
  a.string === b.string && a.position === b.position;

/** Whether two faults are elements of one edge, where the lumped resistance decides and not the network. */
export const share = (a: Atom, b: Atom): boolean => a.edge >= 0 && a.edge === b.edge;

/** Two elements of one edge: their lumped resistance with both changed. */
function sharedInsertion(model: Model, first: Atom, second: Atom): (x: number, y: number) => Insertion {
  const edge = model.wiring.edges[first.edge] as Edge;
  const hot = model.frame.hot[first.edge] as number;
  const a = first.members[0] as Member;
  const b = second.members.find((one) => !samePlace(a, one)) as Member;
  return (x, y) =>
    elementInsertion(edge, hot, [elementChange(a, first.kind, x), elementChange(b, second.kind, y)]);
}

/** The network with the first fault in it at x: what the second one can do to it. */
interface Row {
  /** ln likelihood with the second fault at y, in full. */
  readonly full: (y: number) => number;
  /** Means of the ground's Gaussian readings with the second fault at y; set up when asked for, a visit does without. */
  readonly means: () => (y: number, into: Float64Array) => void;
}

/** Rows of the plane of two faults. */
function rowsOfPlane(model: Model, sound: Ground, first: Atom, second: Atom): (x: number) => Row {
  const { frame, scratch } = model;
  const response = responseOn(model, sound, first);
  if (share(first, second)) {
    const both = sharedInsertion(model, first, second);
    let means: Means | null = null;
    return (x) => ({
      full: (y) => {
        const insertion = both(x, y);
        insertInto(scratch, frame, sound.state, response, insertion.cold, insertion.hot);
        setEdge(frame, scratch, first.edge, insertion);
        return logLikelihood(model, scratch);
      },
      means: () => {
        const own = means ?? meansOf(model, sound.state, sound.base(), response, first.edge);
        means = own;
        return (y, into) => meansInto(own, both(x, y), into);
      },
    });
  }
  return (x) => {
    const insertion = first.insertion(x);
    const state = inserted(frame, sound.state, response, insertion.cold, insertion.hot);
    setEdge(frame, state, first.edge, insertion);
    const inner = cutResponse(frame, state, second.cut, second.line);
    return {
      full: (y) => {
        const further = second.insertion(y);
        insertInto(scratch, frame, state, inner, further.cold, further.hot);
        setEdge(frame, scratch, second.edge, further);
        return logLikelihood(model, scratch);
      },
      means: () => {
        const means = meansOf(model, state, baselineOf(model, state), inner, second.edge);
        return (y, into) => meansInto(means, second.insertion(y), into);
      },
    };
  };
}

/** The last row asked for, kept. */
function remembered(rowAt: (x: number) => Row): (x: number) => Row {
  let at = Number.NaN;
  let row: Row | null = null;
  return (x) => {
    if (row === null || x !== at) [at, row] = [x, rowAt(x)];
    return row;
  };
}

/** Parameters of two faults that have one each. */
export function parametersOfBoth(first: Atom, second: Atom): readonly Parameter[] {
  return [first, second].map(({ of, stretches }, fault) => ({ of: of as Parameter["of"], stretches, fault }));
}

/** Leaves prediction and evaluation as they are at a point of the plane. */
export function planeVisit(
  model: Model,
  sound: Ground,
  first: Atom,
  second: Atom,
): (point: readonly number[]) => number {
  const rowAt = remembered(rowsOfPlane(model, sound, first, second));
  return ([x = 0, y = 0]) => rowAt(x).full(y);
}

/** Full evaluations that set a row right where it comes to anything, nats by which they may differ, and nats above the floor from which it does. */
const ALONG = 3;
const DISAGREEMENT = 1;
const COUNTS = 9;

/** A row weighed quickly, corrected by full evaluations: at its peak, and where it counts also along it. */
function setRight(
  integral: Integral,
  quick: (t: number) => number,
  full: (t: number) => number,
  floor: number,
): Integral {
  const { nodes, logTerms, best, bestLog, log } = integral;
  if (bestLog < floor) return integral;
  if (log < floor + COUNTS) return raised(integral, full(best) - bestLog);
  const rough = { log, points: nodes.map((t) => [t]), logTerms, best: [best] };
  const found = corrected(rough, quick, full, ALONG, DISAGREEMENT);
  if (found === null) return logIntegral(full, floor);
  const [at] = found.best as readonly [number];
  return { log: found.log, nodes, logTerms: found.logTerms, best: at, bestLog: bestLog + (found.log - log) };
}

/** Two parameters integrated over the plane, stretch by stretch. `near`: where the plane is highest, roughly. */
export function planeFinding(input: {
  readonly model: Model;
  readonly sound: Ground;
  readonly faults: readonly [Atom, Atom];
  readonly names: Names;
  readonly near: readonly number[];
  readonly floor: number;
}): Finding {
  const { model, sound, names, near, floor } = input;
  const [first, second] = input.faults;
  const visit = planeVisit(model, sound, first, second);
  const base = rebased(model, sound.base(), visit(near));
  const [now, work] = [floats(base.count), floats(base.count)];
  const rowAt = rowsOfPlane(model, sound, first, second);
  const points: (readonly number[])[] = [];
  const logTerms: number[] = [];
  for (const a of first.stretches) {
    for (const b of second.stretches) {
      const plane = planeIntegral((x) => {
        const row = rowAt(parameterAt(a, x));
        const means = row.means();
        const quick = (t: number): number => {
          means(parameterAt(b, t), now);
          return logOfMeans(base, now, work) + base.healthyInsulation;
        };
        const full = (t: number): number => row.full(parameterAt(b, t));
        return setRight(logIntegral(quick, floor), quick, full, floor);
      }, floor);
      const shift = Math.log(a.part * b.part);
      plane.points.forEach(([x, y], i) => {
        points.push([parameterAt(a, x), parameterAt(b, y)]);
        logTerms.push((plane.logTerms[i] as number) + shift);
      });
    }
  }
  const best = heaviest(points, logTerms);
  const weighted = { log: logSumExp(logTerms), points, logTerms, best };
  return findingOf(model, names, parametersOfBoth(first, second), weighted, visit);
}
