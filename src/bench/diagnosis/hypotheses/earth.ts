/**
 * An earth fault along a coil, on a supply with its neutral earthed: at the tap a current leaves the module. Means follow
 * from the node potentials exactly; the covariance is that of the module without the fault, each reading's scaled with it.
 */

import { evaluate } from "../likelihood/likelihood.ts";
import { logLikelihood, type Model } from "../likelihood/model.ts";
import { logOfMeans } from "../likelihood/quick.ts";
import type { Edge } from "../network/edges.ts";
import type { State } from "../network/state.ts";
import { logSumExp } from "../numbers/linear.ts";
import { heaviest } from "../numbers/nested.ts";
import { copied, floats } from "../numbers/room.ts";
import { integrated } from "../weighing/family.ts";
import { type Finding, findingOf, type Ground, type Weighted } from "../weighing/findings.ts";
import { namesBeside } from "../weighing/names.ts";
import { alongCoil, POSITION, RESISTANCE } from "./earthAlong.ts";
import { insulationOf } from "./earthInsulation.ts";
import { type EarthPlace, placeAndOhms } from "./earthPlaces.ts";

/** What the energised rows show per ampere leaving at the tap, and the tap's own open voltage and resistance. */
interface Tap {
  readonly effect: Float64Array;
  readonly re: number;
  readonly im: number;
  readonly resistance: number;
}

function tapAt(model: Model, state: State, place: EarthPlace, x: number): Tap | null {
  const { frame, question } = model;
  const { live } = state;
  const { supply } = question.by;
  if (live === null || supply === null) return null;
  const edge = model.wiring.edges[place.edge] as Edge;
  const count = frame.liveRows.length;
  const nodes = frame.nodes.length;
  const [qf, qt] = [frame.nodes.indexOf(edge.from), frame.nodes.indexOf(edge.to)];
  const [rf, rt] = [count + qf, count + qt];
  if (live.adrift[rf] === 1 || live.adrift[rt] === 1) return null;
  const y = 1 - x;
  let re = 0;
  let im = 0;
  for (let l = 0; l < 3; l += 1) {
    const v = y * (live.value[3 * rf + l] as number) + x * (live.value[3 * rt + l] as number);
    re += v * (supply.re[l] as number);
    im += v * (supply.im[l] as number);
  }
  const z = (r: number, q: number): number => live.impedance[r * nodes + q] as number;
  const own = x * y * place.string * (frame.hot[place.edge] as number);
  const resistance = y * y * z(rf, qf) + 2 * x * y * z(rf, qt) + x * x * z(rt, qt) + own;
  const effect = floats(count);
  const [from, to] = [rf * frame.edges, rt * frame.edges];
  for (let k = 0; k < count; k += 1) {
    const row = frame.rows[frame.liveRows[k] as number];
    if (row?.kind === "voltage") effect[k] = -(y * z(k, qf) + x * z(k, qt));
    else if (row?.kind === "drop") {
      const e = row.edge;
      const answer = y * (live.answer[from + e] as number) + x * (live.answer[to + e] as number);
      effect[k] = answer * (state.resistance[e] as number);
    } else if (row?.kind === "current") {
      const { index, sign } = row.cut;
      let sum = 0;
      for (let i = 0; i < index.length; i += 1) {
        const e = index[i] as number;
        const way = sign[i] as number;
        sum += way * (y * (live.answer[from + e] as number) + x * (live.answer[to + e] as number));
        // The edge itself carries more at its first end than at its second.
        if (place.terminal === null && e === place.edge) sum += way > 0 ? y : x;
      }
      // What leaves at a terminal has come through its line's wire, and through no branch's.
      if (row.whole !== null && row.whole === place.terminal) sum += 1;
      effect[k] = sum;
    }
  }
  return { effect, re, im, resistance };
}

/** Weighs an earth fault on a ground; `floor` as for {@link logIntegral}. */
export function earthFinding(input: {
  readonly model: Model;
  readonly ground: Ground;
  readonly place: EarthPlace;
  readonly floor: number;
}): Finding {
  const { model, ground, place, floor } = input;
  const { frame, prediction, evaluation, question } = model;
  const { state } = ground;
  const names = namesBeside(ground.names, place.members);
  const fault = names.faults - 1;
  const base = ground.base();
  const m = base.count;
  const { re, im } = base;
  const means = copied(base.mean);
  const work = floats(m);
  const before = floats(m);
  const insulation = insulationOf(model, place, ground.names.faults === 0);
  // What each Gaussian reading shows of an ampere leaving, by its place among them.
  const shown = floats(m);
  /** ln likelihood of the Gaussian readings at a place. */
  const quickAt = (tap: Tap | null): ((ohms: number) => number) => {
    if (tap === null) return () => base.log;
    for (let i = 0; i < m; i += 1) {
      shown[i] = base.setting[i] === -1 ? (tap.effect[base.position[i] as number] as number) : 0;
    }
    return (ohms) => {
      // The current that leaves is the tap's open voltage over all that it passes.
      const part = 1 / (ohms + tap.resistance);
      const [u, v] = [part * tap.re, part * tap.im];
      for (let i = 0; i < m; i += 1) {
        const e = shown[i] as number;
        if (e === 0) continue;
        const k = base.position[i] as number;
        const a = (re[k] as number) + e * u;
        const b = (im[k] as number) + e * v;
        means[i] = Math.sqrt(a * a + b * b);
      }
      return logOfMeans(base, means, work);
    };
  };
  const at = (x: number): Tap | null => tapAt(model, state, place, place.before + place.part * x);
  const across = (x: number): Weighted => {
    const f = quickAt(at(x));
    // Readings that the leaving current does not touch stay as they are.
    means.set(base.mean);
    const shownToFrame = (ohms: number): number => insulation.density(x, ohms);
    const more = { at: shownToFrame, most: insulation.mostAt(x) };
    const screened = { f, residual: work, before, more };
    return integrated(RESISTANCE.stretches, (ohms) => f(ohms) + shownToFrame(ohms), floor, screened);
  };
  const { points, logTerms, completed } =
    place.terminal === null
      ? alongCoil({
          across,
          exponentAt: (x) => {
            means.set(base.mean);
            const f = quickAt(at(x));
            return (ohms) => f(ohms) + insulation.density(x, ohms);
          },
          most: insulation.any ? () => base.log + insulation.most() : null,
          seen: m > 0 || insulation.any,
          floor,
          fault,
        })
      : { ...across(0), completed: undefined };
  const visit = (point: readonly number[]): number => {
    logLikelihood(model, state);
    const [x, ohms] = placeAndOhms(place, point);
    const tap = at(x);
    if (tap !== null) {
      const part = 1 / (ohms + tap.resistance);
      const meanAt = (r: number, was: number): number => {
        const k = frame.liveRows.indexOf(r);
        const e = k < 0 ? 0 : (tap.effect[k] as number) * part;
        if (e === 0) return was;
        const [a, b] = [(re[k] as number) + e * tap.re, (im[k] as number) + e * tap.im];
        return Math.sqrt(a * a + b * b);
      };
      for (let r = 0; r < prediction.rows; r += 1) {
        if (prediction.adrift[r] !== 0) continue;
        const was = prediction.mean[r] as number;
        const now = meanAt(r, was);
        prediction.mean[r] = now;
        const ratio = was > 0 && now > 0.05 * was && now < 20 * was ? now / was : 1;
        for (let c = 0; c < prediction.count; c += 1) {
          const cell = c * prediction.rows + r;
          prediction.columns[cell] = (prediction.columns[cell] as number) * ratio;
        }
      }
    }
    evaluate(question.seen, prediction, evaluation);
    return evaluation.logLikelihood + insulation.density(x, ohms);
  };
  /** Means alone: readings that the leaving current does not touch stay as on the ground. */
  const meansAt = (point: readonly number[], into: Float64Array): void => {
    const [x, ohms] = placeAndOhms(place, point);
    const tap = at(x);
    const part = tap === null ? 0 : 1 / (ohms + tap.resistance);
    for (let i = 0; i < m; i += 1) {
      const k = base.position[i] as number;
      const e = tap === null || base.setting[i] !== -1 ? 0 : (tap.effect[k] as number) * part;
      let mean = base.mean[i] as number;
      if (e !== 0) {
        const a = (re[k] as number) + e * (tap as Tap).re;
        const b = (im[k] as number) + e * (tap as Tap).im;
        mean = Math.sqrt(a * a + b * b);
      }
      into[base.active[i] as number] = mean;
    }
  };
  const parameters = [...(place.terminal === null ? [{ ...POSITION, fault }] : []), { ...RESISTANCE, fault }];
  const weighted = { log: logSumExp(logTerms), points, logTerms, best: heaviest(points, logTerms) };
  const own = {
    completed,
    earthed: insulation.mark(weighted.best),
    insulation: insulation.shown,
    under: undefined,
  };
  return findingOf(model, names, parameters, weighted, visit, meansAt, own);
}
