/** Two parameters weighed with their effects on the readings added: exact where they are small, a screen where they are not. */

import { type Atom, parameterAt, type Stretch } from "../faults/atom.ts";
import { logLikelihood, type Model } from "../likelihood/model.ts";
import { observe } from "../likelihood/observe.ts";
import { insertInto } from "../network/change.ts";
import { forwardInPlace, logSumExp, NOTHING } from "../numbers/linear.ts";
import { copied, floats } from "../numbers/room.ts";
import { type Ground, responseOn, setEdge } from "./findings.ts";

/** Nodes along each parameter. */
const NODES = 12;

/** A family of one stretch with its whitened effects on the sound module's readings. */
export interface Family {
  readonly atom: Atom;
  readonly stretch: Stretch;
  /** NODES × readings. */
  readonly effects: Float64Array;
  readonly square: Float64Array;
  readonly alone: Float64Array;
}

/** Whitened effects of each family on the sound module's readings. */
export function familiesOf(
  model: Model,
  sound: Ground,
  atoms: readonly Atom[],
): { families: Family[]; base: number; m: number } {
  const base = logLikelihood(model, sound.state);
  const { evaluation, prediction, frame, scratch, question } = model;
  const m = evaluation.count;
  const factor = copied(evaluation.factor, m * m);
  const active = evaluation.active.slice(0, m);
  const residual = copied(evaluation.residual, m);
  const mean = copied(prediction.mean);
  const families = atoms.flatMap((atom) => {
    const response = responseOn(model, sound, atom);
    return atom.stretches.map((stretch): Family => {
      const effects = floats(NODES * m);
      const square = floats(NODES);
      const alone = floats(NODES);
      const change = floats(m);
      for (let k = 0; k < NODES; k += 1) {
        const insertion = atom.insertion(parameterAt(stretch, (k + 0.5) / NODES));
        insertInto(scratch, frame, sound.state, response, insertion.cold, insertion.hot);
        setEdge(frame, scratch, atom.edge, insertion);
        observe(frame, scratch, question.by, prediction);
        for (let i = 0; i < m; i += 1) {
          const at = active[i] as number;
          const now = prediction.mean[at] as number;
          change[i] = Number.isFinite(now) ? now - (mean[at] as number) : 1e6;
        }
        forwardInPlace(factor, m, change);
        effects.set(change, k * m);
        for (let i = 0; i < m; i += 1) {
          square[k] = (square[k] as number) + (change[i] as number) ** 2;
          alone[k] = (alone[k] as number) + (change[i] as number) * (residual[i] as number);
        }
      }
      return { atom, stretch, effects, square, alone };
    });
  });
  return { families, base, m };
}

/** Evidence of two families with their effects added, and where it is highest. */
export interface Added {
  readonly log: number;
  readonly most: number;
  readonly point: readonly [number, number];
}

/** Weighs two families with their effects added. */
function added(a: Family, b: Family, base: number, m: number): Added {
  const [ofA, ofB] = [a.effects, b.effects];
  let most = Number.NEGATIVE_INFINITY;
  let [x, y] = [0, 0];
  let sum = 0;
  for (let i = 0; i < NODES; i += 1) {
    const atA = i * m;
    const [alone, square] = [a.alone[i] as number, a.square[i] as number];
    for (let j = 0; j < NODES; j += 1) {
      const atB = j * m;
      let cross = 0;
      for (let r = 0; r < m; r += 1) cross += (ofA[atA + r] as number) * (ofB[atB + r] as number);
      const log = alone + (b.alone[j] as number) - 0.5 * (square + (b.square[j] as number)) - cross;
      if (log > most) {
        sum = sum * Math.exp(most - log) + 1;
        most = log;
        [x, y] = [i, j];
      } else if (log > most + NOTHING) sum += Math.exp(log - most);
    }
  }
  return {
    log: base + most + Math.log((sum / (NODES * NODES)) * a.stretch.part * b.stretch.part),
    most,
    point: [parameterAt(a.stretch, (x + 0.5) / NODES), parameterAt(b.stretch, (y + 0.5) / NODES)],
  };
}

/** Weighs two faults with their effects added, over all stretches of both. */
export function addedOver(
  first: readonly Family[],
  second: readonly Family[],
  base: number,
  m: number,
): Added {
  const parts = first.flatMap((a) => second.map((b) => added(a, b, base, m)));
  const { most, point } = parts.reduce((one, part) => (part.most > one.most ? part : one));
  return { log: logSumExp(parts.map(({ log }) => log)), most, point };
}
