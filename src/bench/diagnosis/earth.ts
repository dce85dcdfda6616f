/**
 * An earth fault along a coil, on a supply with its neutral earthed: at the tap a current leaves the module. Means follow
 * from the node potentials exactly; the covariance is that of the module without the fault, each reading's scaled with it.
 */

import { insulationOf } from "./earthInsulation.ts";
import type { EarthPlace } from "./earthPlaces.ts";
import type { Edge } from "./edges.ts";
import { integrated, type Weighted } from "./family.ts";
import { parameterAt, type Stretch, stretchOf } from "./faults.ts";
import { type Finding, findingOf, type Ground } from "./findings.ts";
import { evaluate } from "./likelihood.ts";
import { logSumExp } from "./linear.ts";
import { logLikelihood, type Model } from "./model.ts";
import { namesBeside } from "./names.ts";
import { heaviest, planeIntegral } from "./nested.ts";
import { logIntegral } from "./quadrature.ts";
import { logOfMeans } from "./quick.ts";
import { copied, floats } from "./room.ts";
import { RANGE } from "./settings.ts";
import type { State } from "./state.ts";

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
        if (e === place.edge) sum += way > 0 ? y : x;
      }
      effect[k] = sum;
    }
  }
  return { effect, re, im, resistance };
}

/** Nats above the floor (which is 16 below the best) from which the position is worth telling: a share of about 2 %. */
const RELEVANT = 12;

/** Three-point Gauss-Legendre on 0..1. */
const POSITIONS = [
  [0.5 - Math.sqrt(0.15), 5 / 18],
  [0.5, 4 / 9],
  [0.5 + Math.sqrt(0.15), 5 / 18],
] as const;

/** Fault resistances are as likely in each decade, places along the coil in each of its parts. */
const STRETCH: Stretch = stretchOf(RANGE.earth, true, 1);
const RESISTANCE = { of: "fault resistance", stretches: [STRETCH] } as const;
const POSITION = { of: "position", stretches: [stretchOf([0, 1], false, 1)] } as const;

/** Nats between the three positions below which the likelihood is smooth along the coil, and positions that then tell where. */
const SMOOTH = 1.5;
const EVEN = 12;

/** The parabola through the logarithms at the three positions. */
function parabola([low, middle, high]: readonly [number, number, number], x: number): number {
  const step = POSITIONS[2][0] - 0.5;
  const t = (x - 0.5) / step;
  return middle + (t * (high - low)) / 2 + (t * t * (high + low - 2 * middle)) / 2;
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
  const quickAt = (x: number, tap: Tap | null): ((ohms: number) => number) => {
    if (tap === null) return (ohms) => base.log + insulation.density(x, ohms);
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
      return insulation.density(x, ohms) + logOfMeans(base, means, work);
    };
  };
  const at = (x: number): Tap | null => tapAt(model, state, place, place.before + place.part * x);
  const across = (x: number): Weighted => {
    const tap = at(x);
    const f = quickAt(x, tap);
    // Readings that the leaving current does not touch stay as they are.
    means.set(base.mean);
    // What insulation readings say of the resistance is no matter of residuals.
    const screened = tap === null || insulation.any ? undefined : { f, residual: work, before };
    return integrated([STRETCH], f, floor, screened);
  };
  let points: (readonly number[])[] = [];
  let logTerms: number[] = [];
  let completed: Finding["completed"];
  const add = (x: number, weight: number, { points: ohms, logTerms: terms }: Weighted): void => {
    const shift = Math.log(weight);
    ohms.forEach((point, i) => {
      points.push([x, point[0] as number]);
      logTerms.push((terms[i] as number) + shift);
    });
  };
  const few = POSITIONS.map(([x]) => across(x));
  POSITIONS.forEach(([x, weight], i) => {
    add(x, weight, few[i] as Weighted);
  });
  // Three positions weigh an earth fault; telling where it is takes as many as its likelihood is narrow.
  const worth = insulation.any ? base.log + insulation.most() : logSumExp(logTerms);
  if (worth > floor + RELEVANT && (m > 0 || insulation.any)) {
    [points, logTerms] = [[], []];
    const logs = few.map(({ log }) => log) as [number, number, number];
    if (Math.max(...logs) - Math.min(...logs) < SMOOTH) {
      const places: number[] = [];
      const byPlace: number[] = [];
      const shares = [0, 0, 0];
      for (let k = 0; k < EVEN; k += 1) {
        const x = (k + 0.5) / EVEN;
        const third = Math.floor((3 * k) / EVEN);
        const near = few[third] as Weighted;
        const log = parabola(logs, x) - Math.log(EVEN);
        add(x, Math.exp(log - near.log), near);
        places.push(x);
        byPlace.push(log);
        shares[third] = (shares[third] as number) + Math.exp(log - near.log);
      }
      completed = () => [
        { ...POSITION, fault, values: places, logTerms: byPlace },
        {
          ...RESISTANCE,
          fault,
          values: few.flatMap(({ points: ohms }) => ohms.map(([value]) => value as number)),
          logTerms: few.flatMap(({ logTerms: terms }, i) =>
            terms.map((term) => term + Math.log(shares[i] as number)),
          ),
        },
      ];
    } else {
      const plane = planeIntegral((x) => {
        means.set(base.mean);
        const f = quickAt(x, at(x));
        return logIntegral((t) => f(parameterAt(STRETCH, t)), floor);
      }, floor);
      points = plane.points.map(([x, t]) => [x, parameterAt(STRETCH, t)]);
      logTerms = [...plane.logTerms];
    }
  }
  const visit = (point: readonly number[]): number => {
    logLikelihood(model, state);
    const tap = at(point[0] as number);
    if (tap !== null) {
      const part = 1 / ((point[1] as number) + tap.resistance);
      const meanAt = (r: number, was: number): number => {
        const k = frame.liveRows.indexOf(r);
        const e = k < 0 ? 0 : (tap.effect[k] as number) * part;
        if (e === 0) return was;
        const [x, y] = [(re[k] as number) + e * tap.re, (im[k] as number) + e * tap.im];
        return Math.sqrt(x * x + y * y);
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
    return evaluation.logLikelihood + insulation.density(point[0] as number, point[1] as number);
  };
  /** Means alone: readings that the leaving current does not touch stay as on the ground. */
  const meansAt = (point: readonly number[], into: Float64Array): void => {
    const tap = at(point[0] as number);
    const part = tap === null ? 0 : 1 / ((point[1] as number) + tap.resistance);
    for (let i = 0; i < m; i += 1) {
      const k = base.position[i] as number;
      const e = tap === null || base.setting[i] !== -1 ? 0 : (tap.effect[k] as number) * part;
      let mean = base.mean[i] as number;
      if (e !== 0) {
        const x = (re[k] as number) + e * (tap as Tap).re;
        const y = (im[k] as number) + e * (tap as Tap).im;
        mean = Math.sqrt(x * x + y * y);
      }
      into[base.active[i] as number] = mean;
    }
  };
  const parameters = [
    { ...POSITION, fault },
    { ...RESISTANCE, fault },
  ];
  const weighted = { log: logSumExp(logTerms), points, logTerms, best: heaviest(points, logTerms) };
  const own = { completed, earthed: insulation.mark(weighted.best), insulation: insulation.shown };
  return findingOf(model, names, parameters, weighted, visit, meansAt, own);
}
