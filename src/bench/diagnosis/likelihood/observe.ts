/**
 * The observation model: what a state predicts for every reading, and how the prediction hangs on each thing that is not
 * known and not a fault. Readings are Gaussian about it: y ~ N(f, D + N·Nᵀ), one column of N for each nuisance.
 */
import { supplyFromLineVoltages } from "../../../circuit/index.ts";
import type { LineVolts } from "../../../quantity/index.ts";
import { type Frame, type State, VOLTAGE } from "../network/state.ts";
import { filled, floats } from "../numbers/room.ts";

/** Standard deviations of the nuisances, and the supply. */
export interface Nuisances {
  /** Of ln R of all elements together. */
  readonly common: number;
  readonly individual: number;
  readonly joint: number;
  readonly ratio: number;
  readonly leads: { readonly mean: number; readonly deviation: number };
  readonly lineVoltage: number;
  readonly unbalance: number;
  readonly gains: {
    readonly ohmmeter: number;
    readonly clamp: number;
    readonly voltmeter: number;
    readonly millivoltmeter: number;
  };
  readonly supply: SupplyModel | null;
}

/** Line phasors, and their change with the logarithm of each line voltage: [line] and [line voltage][line]. */
export interface SupplyModel {
  readonly nominal: number;
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly byRe: readonly Float64Array[];
  readonly byIm: readonly Float64Array[];
}

/** Line phasors of a supply of these line voltages, L1-L2 first, and their derivatives, by the circuit room's triangle. */
export function supplyAbout(lineVoltages: readonly number[]): SupplyModel {
  const phasors = (values: readonly number[]): readonly { re: number; im: number }[] => {
    const [v12, v23, v31] = values as readonly [LineVolts, LineVolts, LineVolts];
    return supplyFromLineVoltages({ v12, v23, v31 }).lines.map(({ voltage }) => voltage);
  };
  const base = phasors(lineVoltages);
  const step = 1e-4;
  const slopes = [0, 1, 2].map((k) => {
    const at = (sign: number): readonly { re: number; im: number }[] =>
      phasors(lineVoltages.map((volts, i) => (i === k ? volts * Math.exp(sign * step) : volts)));
    const [up, down] = [at(1), at(-1)];
    const part = (pick: "re" | "im"): Float64Array =>
      filled(3, (l) => ((up[l]?.[pick] as number) - (down[l]?.[pick] as number)) / (2 * step));
    return { re: part("re"), im: part("im") };
  });
  return {
    nominal: lineVoltages.reduce((sum, volts) => sum + volts, 0) / 3,
    re: filled(3, (l) => base[l]?.re as number),
    im: filled(3, (l) => base[l]?.im as number),
    byRe: slopes.map(({ re }) => re),
    byIm: slopes.map(({ im }) => im),
  };
}

let unit: SupplyModel | undefined;

/** Phasors of a balanced supply and their derivatives, which go with its voltage; the triangle is solved once, when first asked. */
export function supplyModel(lineVoltage: number): SupplyModel {
  unit ??= supplyAbout([1, 1, 1]);
  const scaled = (values: Float64Array): Float64Array =>
    filled(3, (l) => (values[l] as number) * lineVoltage);
  return {
    nominal: lineVoltage,
    re: scaled(unit.re),
    im: scaled(unit.im),
    byRe: unit.byRe.map(scaled),
    byIm: unit.byIm.map(scaled),
  };
}

/** Mark of a row whose place this wiring does not have: reading there at all speaks against it. */
export const NO_SUCH_PLACE = 2;

/** Prediction of all rows: filled anew for each state. */
export interface Prediction {
  /** Mean; Infinity for an open path. */
  readonly mean: Float64Array;
  /** 1 where nothing determines the reading, {@link NO_SUCH_PLACE} where this wiring has no such place. */
  readonly adrift: Uint8Array;
  /** Columns of nuisances: column × rows. */
  readonly columns: Float64Array;
  /** Variance to add to a reading's own: a phasor near zero, whose magnitude is not linear in anything. */
  readonly extra: Float64Array;
  readonly rows: number;
  readonly count: number;
  /** First of the three line voltage columns. */
  readonly voltageColumn: number;
  /** Phasors of the energised rows, for earth faults. */
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** Marks of the rows before any state has its say. */
  readonly places: Uint8Array;
  /** Work space: phasors of the edges' currents, and each edge's own relative deviation. */
  readonly edgeRe: Float64Array;
  readonly edgeIm: Float64Array;
  readonly deviation: Float64Array;
}

/** Room for predictions of a frame. */
export function predictionFor(frame: Frame): Prediction {
  const rows = frame.rows.length;
  const count = frame.edges + 3 + 3 + 4 + 1;
  const live = frame.liveRows.length + frame.nodes.length;
  const places = new Uint8Array(rows);
  frame.rows.forEach((row, r) => {
    places[r] = row === null ? NO_SUCH_PLACE : row.kind === "insulation" ? 1 : 0;
  });
  return {
    mean: floats(rows),
    adrift: new Uint8Array(rows),
    columns: floats(rows * count),
    extra: floats(rows),
    rows,
    count,
    voltageColumn: frame.edges + 3,
    re: floats(live),
    im: floats(live),
    places,
    edgeRe: floats(frame.edges),
    edgeIm: floats(frame.edges),
    deviation: floats(frame.edges),
  };
}

/** Predicts every row of a frame from a state. */
export function observe(frame: Frame, state: State, by: Nuisances, into: Prediction): void {
  into.columns.fill(0);
  for (let r = 0; r < into.rows; r += 1) {
    into.extra[r] = 0;
    into.adrift[r] = into.places[r] as number;
  }
  // A joint in fault is what it is; a sound one, and every element, scatters.
  for (let e = 0; e < frame.edges; e += 1) {
    const variance = state.variance[e] as number;
    into.deviation[e] = frame.joint[e] === 1 ? by.joint * variance : by.individual * Math.sqrt(variance);
  }
  for (let d = 0; d < state.dead.length; d += 1) observeDead(frame, state, by, d, into);
  if (state.live !== null) observeLive(frame, state, by, into);
}

function observeDead(frame: Frame, state: State, by: Nuisances, d: number, into: Prediction): void {
  const { edges, joint } = frame;
  const { share, resistance } = state.dead[d] as State["dead"][number];
  const list = frame.deadRows[d] as readonly number[];
  const { rows: n, columns, mean, deviation } = into;
  for (let k = 0; k < list.length; k += 1) {
    const r = list[k] as number;
    const ohms = resistance[k] as number;
    mean[r] = ohms + by.leads.mean;
    if (ohms === Number.POSITIVE_INFINITY) continue;
    let common = 0;
    for (let e = 0; e < edges; e += 1) {
      const s = share[k * edges + e] as number;
      const slope = s * s * (state.resistance[e] as number);
      if (joint[e] === 0) common += slope;
      columns[e * n + r] = slope * (deviation[e] as number);
    }
    columns[edges * n + r] = common * by.common;
    columns[(edges + 1) * n + r] = by.leads.deviation;
    columns[(edges + 6) * n + r] = (mean[r] as number) * by.gains.ohmmeter;
  }
}

/** Real and imaginary parts of the current of every edge; returns the largest magnitude. */
function edgeCurrents(current: Float64Array, edges: number, supply: SupplyModel, into: Prediction): number {
  const { edgeRe, edgeIm } = into;
  const { re, im } = supply;
  const [re0, re1, re2] = [re[0] as number, re[1] as number, re[2] as number];
  const [im0, im1, im2] = [im[0] as number, im[1] as number, im[2] as number];
  let most = 0;
  for (let e = 0; e < edges; e += 1) {
    const a = current[e] as number;
    const b = current[edges + e] as number;
    const c = current[2 * edges + e] as number;
    const x = a * re0 + b * re1 + c * re2;
    const y = a * im0 + b * im1 + c * im2;
    edgeRe[e] = x;
    edgeIm[e] = y;
    const size = x * x + y * y;
    if (size > most) most = size;
  }
  return Math.sqrt(most);
}

/** Below this part of what is usual there, a magnitude is not linear in anything. */
const NEAR_ZERO = 0.05;

function observeLive(frame: Frame, state: State, by: Nuisances, into: Prediction): void {
  const { edges, liveRows, liveKind, joint, hot } = frame;
  const live = state.live as NonNullable<State["live"]>;
  const supply = by.supply as SupplyModel;
  const { rows: n, columns, deviation, edgeRe, edgeIm } = into;
  const { value, answer } = live;
  const { clamp, voltmeter, millivoltmeter } = by.gains;
  const largest = edgeCurrents(live.current, edges, supply, into);
  for (let k = 0; k < liveRows.length; k += 1) {
    const r = liveRows[k] as number;
    if (live.adrift[k] === 1) {
      into.adrift[r] = 1;
      continue;
    }
    const drop = liveKind[k] as number;
    const scale = drop >= 0 ? (state.resistance[drop] as number) : 1;
    let re = 0;
    let im = 0;
    for (let l = 0; l < 3; l += 1) {
      const v = (value[3 * k + l] as number) * scale;
      re += v * (supply.re[l] as number);
      im += v * (supply.im[l] as number);
    }
    into.re[k] = re;
    into.im[k] = im;
    const size = Math.sqrt(re * re + im * im);
    const cos = size > 0 ? re / size : 0;
    const sin = size > 0 ? im / size : 0;
    // A magnitude near zero is not linear in anything: its scatter is counted both ways and added as variance of its own.
    const usual = drop >= 0 ? 0.1 : drop === VOLTAGE ? supply.nominal : largest;
    const small = size < NEAR_ZERO * usual;
    let around = 0;
    let common = 0;
    for (let e = 0; e < edges; e += 1) {
      const a = answer[k * edges + e] as number;
      if (a === 0 && e !== drop) continue;
      const g = -a * (state.resistance[e] as number) * (hot[e] as number) * scale;
      const dRe = g * (edgeRe[e] as number);
      const dIm = g * (edgeIm[e] as number);
      const slope = dRe * cos + dIm * sin + (e === drop ? size : 0);
      const own = deviation[e] as number;
      if (joint[e] === 0) common += slope;
      if (small) around += (dRe * dRe + dIm * dIm) * own * own;
      columns[e * n + r] = slope * own;
    }
    columns[edges * n + r] = common * by.common;
    columns[(edges + 2) * n + r] = common * by.ratio;
    for (let j = 0; j < 3; j += 1) {
      const vRe = supply.byRe[j] as Float64Array;
      const vIm = supply.byIm[j] as Float64Array;
      let dRe = 0;
      let dIm = 0;
      for (let l = 0; l < 3; l += 1) {
        const v = (value[3 * k + l] as number) * scale;
        dRe += v * (vRe[l] as number);
        dIm += v * (vIm[l] as number);
      }
      if (small) around += (dRe * dRe + dIm * dIm) * by.unbalance * by.unbalance;
      columns[(edges + 3 + j) * n + r] = (dRe * cos + dIm * sin) * by.unbalance;
    }
    const gain = drop >= 0 ? 9 : drop === VOLTAGE ? 8 : 7;
    columns[(edges + gain) * n + r] = size * (gain === 7 ? clamp : gain === 8 ? voltmeter : millivoltmeter);
    columns[(edges + 10) * n + r] = size * by.lineVoltage;
    into.mean[r] = size;
    if (small && size * size < 4 * around) {
      // Moments of the magnitude of a phasor that scatters about zero (Rice): E|z|² = |z|² + s².
      into.mean[r] = Math.sqrt(size * size + 0.785 * around);
      into.extra[r] = 0.215 * around;
    }
  }
}
