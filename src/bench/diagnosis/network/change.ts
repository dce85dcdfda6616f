/** Rank-one changes of a state: a resistance inserted in series with the edges of a cut, from a fraction of an ohm to a break. */

import { copied, copyInto, floats } from "../numbers/room.ts";
import type { Cut } from "./rows.ts";
import { type DeadState, type Frame, hasWayRound, type LiveState, type State } from "./state.ts";

/** What a cut meets in one dead arrangement: answers of the edges, own conductance, shares through it. */
interface DeadCut {
  readonly answer: Float64Array;
  readonly own: number;
  readonly way: boolean;
  readonly through: Float64Array;
}

interface LiveCut {
  readonly answer: Float64Array;
  readonly own: number;
  readonly way: boolean;
  readonly scale: number;
  /** Current through the cut per volt on each line. */
  readonly through: Float64Array;
  /** What each row shows of a volt inserted in the cut. */
  readonly shown: Float64Array;
}

/** A cut on a state: everything about it that does not depend on the resistance inserted. */
export interface CutResponse {
  readonly dead: readonly DeadCut[];
  readonly live: LiveCut | null;
}

function answersTo(admittance: Float64Array, edges: number, cut: Cut, into: Float64Array): number {
  const { index, sign } = cut;
  for (let k = 0; k < index.length; k += 1) {
    const row = (index[k] as number) * edges;
    const s = sign[k] as number;
    for (let e = 0; e < edges; e += 1) into[e] = (into[e] as number) + s * (admittance[row + e] as number);
  }
  return dot(into, 0, cut);
}

/** Σ of the values at the edges of a cut, counted in its direction. */
export function dot(values: Float64Array, offset: number, { index, sign }: Cut): number {
  let sum = 0;
  for (let k = 0; k < index.length; k += 1) {
    sum += (sign[k] as number) * (values[offset + (index[k] as number)] as number);
  }
  return sum;
}

/** Conductance of the cut's edges side by side: what its own conductance is small against. */
function scaleOf(frame: Frame, state: State, cut: Cut, hot: boolean): number {
  let sum = 0;
  for (let k = 0; k < cut.index.length; k += 1) {
    const edge = cut.index[k] as number;
    sum += 1 / ((state.resistance[edge] as number) * (hot ? (frame.hot[edge] as number) : 1));
  }
  return sum;
}

/** In place of a line's number: a break between the line's node and one bank, where dead readings pass it by as well. */
export const OF_ONE_BANK = -1;

/**
 * A cut's response on a state.
 * @param line - number of the line if the cut is a lost line: it then affects the energised arrangement only, and probes
 *   on the line's node are on the module side; {@link OF_ONE_BANK} leaves these on the supply's
 */
export function cutResponse(frame: Frame, state: State, cut: Cut, line?: number): CutResponse {
  const { edges } = frame;
  const dead =
    line !== undefined
      ? []
      : state.dead.map((one): DeadCut => {
          const answer = floats(edges);
          const own = answersTo(one.admittance, edges, cut, answer);
          const through = floats(one.resistance.length);
          for (let r = 0; r < through.length; r += 1) through[r] = dot(one.share, r * edges, cut);
          return { answer, own, way: hasWayRound(own, scaleOf(frame, state, cut, false)), through };
        });
  if (state.live === null) return { dead, live: null };
  const { admittance, current, answer: rowAnswer, adrift } = state.live;
  const answer = floats(edges);
  const own = answersTo(admittance, edges, cut, answer);
  const through = floats(3);
  for (let l = 0; l < 3; l += 1) through[l] = dot(current, l * edges, cut);
  const shown = floats(adrift.length);
  for (let r = 0; r < shown.length; r += 1) {
    shown[r] =
      dot(rowAnswer, r * edges, cut) +
      (line === undefined || line === OF_ONE_BANK ? 0 : (frame.lineSign[3 * r + line] as number));
  }
  const scale = scaleOf(frame, state, cut, true);
  return { dead, live: { answer, own, way: hasWayRound(own, scale), scale, through, shown } };
}

/** Part of a unit current that the inserted resistance turns into a voltage: ρ/(1 + ρY), 1/Y for a break. */
function stiffness(rho: number, own: number): number {
  return rho === Number.POSITIVE_INFINITY ? 1 / own : rho / (1 + rho * own);
}

/** A state of the same shape to write into, sharing nothing that changes. */
export function scratchOf(state: State): State {
  return {
    dead: state.dead.map((one) => ({
      admittance: one.admittance,
      share: copied(one.share),
      resistance: copied(one.resistance),
    })),
    live:
      state.live === null
        ? null
        : {
            admittance: state.live.admittance,
            current: copied(state.live.current),
            value: copied(state.live.value),
            answer: copied(state.live.answer),
            adrift: state.live.adrift.slice(),
            impedance: state.live.impedance,
          },
    resistance: copied(state.resistance),
    variance: copied(state.variance),
  };
}

function keepDead(one: DeadState, into: DeadState): void {
  copyInto(into.resistance, one.resistance);
  copyInto(into.share, one.share);
}

function insertDead(one: DeadState, cut: DeadCut, rho: number, edges: number, into: DeadState): void {
  const { answer, own, way, through } = cut;
  const broken = rho === Number.POSITIVE_INFINITY;
  const k = way ? stiffness(rho, own) : rho;
  for (let r = 0; r < through.length; r += 1) {
    const t = through[r] as number;
    const base = r * edges;
    // Shares are parts of one ampere: below 1e-9 nothing of it passes here.
    if (Math.abs(t) < 1e-9) {
      into.resistance[r] = one.resistance[r] as number;
      for (let e = 0; e < edges; e += 1) into.share[base + e] = one.share[base + e] as number;
      continue;
    }
    if (broken && !way) {
      into.resistance[r] = Number.POSITIVE_INFINITY;
      for (let e = 0; e < edges; e += 1) into.share[base + e] = 0;
      continue;
    }
    into.resistance[r] = (one.resistance[r] as number) + k * t * t;
    const step = way ? k * t : 0;
    for (let e = 0; e < edges; e += 1) {
      into.share[base + e] = (one.share[base + e] as number) - step * (answer[e] as number);
    }
  }
}

function insertLive(
  one: LiveState,
  cut: LiveCut,
  rho: number,
  edges: number,
  rows: number,
  into: LiveState,
): void {
  const { answer, own, way, through, shown } = cut;
  const broken = rho === Number.POSITIVE_INFINITY;
  // Without a way round nothing flows: a break changes no current, but whoever probes across it probes a floating node.
  const k = way ? stiffness(rho, own) : broken ? 0 : rho;
  for (let l = 0; l < 3; l += 1) {
    const step = way ? k * (through[l] as number) : 0;
    const base = l * edges;
    for (let e = 0; e < edges; e += 1) {
      into.current[base + e] = (one.current[base + e] as number) - step * (answer[e] as number);
    }
  }
  for (let r = 0; r < rows; r += 1) {
    const s = shown[r] as number;
    into.adrift[r] = one.adrift[r] as number;
    if (broken && !way && Math.abs(s) > 1e-9) into.adrift[r] = 1;
    for (let l = 0; l < 3; l += 1) {
      into.value[3 * r + l] = (one.value[3 * r + l] as number) - (way ? s * k * (through[l] as number) : 0);
    }
    const base = r * edges;
    const step = way ? s * k : 0;
    for (let e = 0; e < edges; e += 1) {
      into.answer[base + e] = (one.answer[base + e] as number) - step * (answer[e] as number);
    }
  }
}

/** Inserts ρ cold (`rho`) and hot (`rhoHot`) in a cut; only what readings need is written, for speed. */
export function insertInto(
  into: State,
  frame: Frame,
  state: State,
  cut: CutResponse,
  rho: number,
  rhoHot: number,
  rows: number = frame.liveRows.length,
): void {
  for (let d = 0; d < state.dead.length; d += 1) {
    const [one, own] = [state.dead[d] as DeadState, into.dead[d] as DeadState];
    // A lost line leaves the dead module as it is.
    if (d >= cut.dead.length) keepDead(one, own);
    else insertDead(one, cut.dead[d] as DeadCut, rho, frame.edges, own);
  }
  copyInto(into.resistance, state.resistance);
  copyInto(into.variance, state.variance);
  if (state.live !== null && cut.live !== null) {
    insertLive(state.live, cut.live, rhoHot, frame.edges, rows, into.live as LiveState);
  }
}

function lessOuter(matrix: Float64Array, answer: Float64Array, k: number): Float64Array {
  const result = copied(matrix);
  const n = answer.length;
  for (let e = 0; e < n; e += 1) {
    const step = k * (answer[e] as number);
    if (step === 0) continue;
    for (let f = 0; f < n; f += 1)
      result[e * n + f] = (result[e * n + f] as number) - step * (answer[f] as number);
  }
  return result;
}

/** The whole state with ρ inserted, ready for further changes. */
export function inserted(frame: Frame, state: State, cut: CutResponse, rho: number, rhoHot: number): State {
  const next = scratchOf(state);
  insertInto(next, frame, state, cut, rho, rhoHot, frame.liveRows.length + frame.nodes.length);
  const { resistance, variance } = next;
  const dead = next.dead.map((one, d): DeadState => {
    const own = cut.dead[d];
    if (own === undefined || !own.way) return one;
    const admittance = lessOuter(one.admittance, own.answer, stiffness(rho, own.own));
    return { admittance, share: one.share, resistance: one.resistance };
  });
  if (next.live === null || cut.live === null) return { dead, live: next.live, resistance, variance };
  const { own, way, answer, shown } = cut.live;
  const k = way ? stiffness(rhoHot, own) : 0;
  const nodes = frame.nodes.length;
  const first = frame.liveRows.length;
  const impedance = copied(next.live.impedance);
  for (let r = 0; r < shown.length; r += 1) {
    const step = k * (shown[r] as number);
    if (step === 0) continue;
    for (let q = 0; q < nodes; q += 1) {
      impedance[r * nodes + q] = (impedance[r * nodes + q] as number) + step * (shown[first + q] as number);
    }
  }
  const { current, value, answer: rowAnswer, adrift } = next.live;
  const admittance = way ? lessOuter(next.live.admittance, answer, k) : next.live.admittance;
  const live = { admittance, current, value, answer: rowAnswer, adrift, impedance };
  return { dead, live, resistance, variance };
}
