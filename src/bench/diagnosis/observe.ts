/**
 * The observation model: what a state predicts for every reading, and how the prediction hangs on each thing that is not
 * known and not a fault. Readings are Gaussian about it: y ~ N(f, D + N·Nᵀ), one column of N for each nuisance.
 */
import { supplyFromLineVoltages } from "../../circuit/index.ts";
import type { LineVolts } from "../../quantity/index.ts";
import type { Frame, State } from "./state.ts";

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

/** Phasors of a balanced supply and their derivatives, by the circuit room's triangle. */
export function supplyModel(lineVoltage: number): SupplyModel {
  const phasors = (factors: readonly [number, number, number]): readonly { re: number; im: number }[] => {
    const [v12, v23, v31] = factors.map((f) => (f * lineVoltage) as LineVolts) as [
      LineVolts,
      LineVolts,
      LineVolts,
    ];
    return supplyFromLineVoltages({ v12, v23, v31 }).lines.map(({ voltage }) => voltage);
  };
  const base = phasors([1, 1, 1]);
  const step = 1e-4;
  const slopes = [0, 1, 2].map((k) => {
    const at = (sign: number): readonly { re: number; im: number }[] =>
      phasors([0, 1, 2].map((i) => (i === k ? Math.exp(sign * step) : 1)) as [number, number, number]);
    const [up, down] = [at(1), at(-1)];
    const part = (pick: "re" | "im"): Float64Array =>
      Float64Array.from(
        [0, 1, 2],
        (l) => ((up[l]?.[pick] as number) - (down[l]?.[pick] as number)) / (2 * step),
      );
    return { re: part("re"), im: part("im") };
  });
  return {
    nominal: lineVoltage,
    re: Float64Array.from([0, 1, 2], (l) => base[l]?.re as number),
    im: Float64Array.from([0, 1, 2], (l) => base[l]?.im as number),
    byRe: slopes.map(({ re }) => re),
    byIm: slopes.map(({ im }) => im),
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
}

/** Room for predictions of a frame. */
export function predictionFor(frame: Frame): Prediction {
  const rows = frame.rows.length;
  const count = frame.edges + 3 + 3 + 4 + 1;
  const live = frame.liveRows.length + frame.nodes.length;
  return {
    mean: new Float64Array(rows),
    adrift: new Uint8Array(rows),
    columns: new Float64Array(rows * count),
    extra: new Float64Array(rows),
    rows,
    count,
    voltageColumn: frame.edges + 3,
    re: new Float64Array(live),
    im: new Float64Array(live),
  };
}

/** Predicts every row of a frame from a state. */
export function observe(frame: Frame, state: State, by: Nuisances, into: Prediction): void {
  into.columns.fill(0);
  into.extra.fill(0);
  for (let r = 0; r < into.rows; r += 1) {
    const row = frame.rows[r];
    into.adrift[r] = row === null || row === undefined ? NO_SUCH_PLACE : row.kind === "insulation" ? 1 : 0;
  }
  for (let d = 0; d < state.dead.length; d += 1) observeDead(frame, state, by, d, into);
  if (state.live !== null) observeLive(frame, state, by, into);
}

/** A joint in fault is what it is; a sound one, and every element, scatters. */
function deviationOf(frame: Frame, by: Nuisances, state: State, e: number): number {
  const variance = state.variance[e] as number;
  return frame.wiring.edges[e]?.joint === true ? by.joint * variance : by.individual * Math.sqrt(variance);
}

function observeDead(frame: Frame, state: State, by: Nuisances, d: number, into: Prediction): void {
  const { edges } = frame;
  const { share, resistance } = state.dead[d] as State["dead"][number];
  const list = frame.deadRows[d] as readonly number[];
  const n = into.rows;
  for (let k = 0; k < list.length; k += 1) {
    const r = list[k] as number;
    const ohms = resistance[k] as number;
    into.mean[r] = ohms + by.leads.mean;
    if (ohms === Number.POSITIVE_INFINITY) continue;
    let common = 0;
    for (let e = 0; e < edges; e += 1) {
      const s = share[k * edges + e] as number;
      const slope = s * s * (state.resistance[e] as number);
      if (frame.wiring.edges[e]?.joint !== true) common += slope;
      into.columns[e * n + r] = slope * deviationOf(frame, by, state, e);
    }
    into.columns[edges * n + r] = common * by.common;
    into.columns[(edges + 1) * n + r] = by.leads.deviation;
    into.columns[(edges + 6) * n + r] = (into.mean[r] as number) * by.gains.ohmmeter;
  }
}

/** Real and imaginary parts of the current of every edge, reused between calls of one frame size. */
function edgeCurrents(
  current: Float64Array,
  edges: number,
  supply: SupplyModel,
): readonly [Float64Array, Float64Array] {
  const re = new Float64Array(edges);
  const im = new Float64Array(edges);
  for (let e = 0; e < edges; e += 1) {
    const [a, b, c] = [current[e] as number, current[edges + e] as number, current[2 * edges + e] as number];
    re[e] = a * (supply.re[0] as number) + b * (supply.re[1] as number) + c * (supply.re[2] as number);
    im[e] = a * (supply.im[0] as number) + b * (supply.im[1] as number) + c * (supply.im[2] as number);
  }
  return [re, im];
}

function observeLive(frame: Frame, state: State, by: Nuisances, into: Prediction): void {
  const { edges, liveRows } = frame;
  const live = state.live as NonNullable<State["live"]>;
  const supply = by.supply as SupplyModel;
  const n = into.rows;
  const [iRe, iIm] = edgeCurrents(live.current, edges, supply);
  const { value, answer } = live;
  for (let k = 0; k < liveRows.length; k += 1) {
    const r = liveRows[k] as number;
    if (live.adrift[k] === 1) {
      into.adrift[r] = 1;
      continue;
    }
    const row = frame.rows[r];
    const drop = row?.kind === "drop" ? row.edge : -1;
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
    const small =
      size < 0.05 * (drop >= 0 ? 0.1 : row?.kind === "voltage" ? supply.nominal : largest(iRe, iIm));
    let around = 0;
    let common = 0;
    for (let e = 0; e < edges; e += 1) {
      const g =
        -(answer[k * edges + e] as number) *
        (state.resistance[e] as number) *
        (frame.hot[e] as number) *
        scale;
      if (g === 0 && e !== drop) continue;
      const [dRe, dIm] = [g * (iRe[e] as number), g * (iIm[e] as number)];
      const slope = dRe * cos + dIm * sin + (e === drop ? size : 0);
      const deviation = deviationOf(frame, by, state, e);
      if (frame.wiring.edges[e]?.joint !== true) common += slope;
      if (small) around += (dRe * dRe + dIm * dIm) * deviation * deviation;
      into.columns[e * n + r] = slope * deviation;
    }
    into.columns[edges * n + r] = common * by.common;
    into.columns[(edges + 2) * n + r] = common * by.ratio;
    for (let j = 0; j < 3; j += 1) {
      const [vRe, vIm] = [supply.byRe[j] as Float64Array, supply.byIm[j] as Float64Array];
      let dRe = 0;
      let dIm = 0;
      for (let l = 0; l < 3; l += 1) {
        const v = (value[3 * k + l] as number) * scale;
        dRe += v * (vRe[l] as number);
        dIm += v * (vIm[l] as number);
      }
      if (small) around += (dRe * dRe + dIm * dIm) * by.unbalance * by.unbalance;
      into.columns[(edges + 3 + j) * n + r] = (dRe * cos + dIm * sin) * by.unbalance;
    }
    const gain = row?.kind === "current" ? 7 : row?.kind === "voltage" ? 8 : 9;
    const { clamp, voltmeter, millivoltmeter } = by.gains;
    const gainDeviation = gain === 7 ? clamp : gain === 8 ? voltmeter : millivoltmeter;
    into.columns[(edges + gain) * n + r] = size * gainDeviation;
    into.columns[(edges + 10) * n + r] = size * by.lineVoltage;
    into.mean[r] = size;
    if (small && size * size < 4 * around) {
      // Moments of the magnitude of a phasor that scatters about zero (Rice): E|z|² = |z|² + s².
      into.mean[r] = Math.sqrt(size * size + 0.785 * around);
      into.extra[r] = 0.215 * around;
    }
  }
}

function largest(re: Float64Array, im: Float64Array): number {
  let most = 0;
  for (let e = 0; e < re.length; e += 1)
    most = Math.max(most, (re[e] as number) ** 2 + (im[e] as number) ** 2);
  return Math.sqrt(most);
}
