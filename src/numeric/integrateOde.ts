/**
 * Ordinary differential equations: explicit Runge-Kutta of order 5 with an error estimate of order 4, the step
 * chosen from it, and an exact stop where an event function changes sign. For smooth, non-stiff systems; kinks cost
 * steps, stiffness ends in an error and never in a wrong answer.
 */
import { checkFinite, checkPositive, checkWhole, fail } from "../quantity/index.ts";
import { bracketedRoot } from "./bracketedRoot.ts";

/**
 * Result of {@link integrateOde}.
 * @since 0.1.0
 */
export interface OdeSolution {
  /** Where the integration stopped. */
  readonly at: number;
  /** The state there. */
  readonly state: readonly number[];
  /** Stopped by the event, or at the end asked for. */
  readonly stopped: "event" | "end";
  /** Steps taken. */
  readonly steps: number;
}

type Derivative = (at: number, state: readonly number[]) => readonly number[];

/** Dormand-Prince pair: nodes, stages with the weights of order 5 last, and those weights less the ones of order 4. */
interface Pair {
  readonly nodes: readonly number[];
  readonly stages: readonly (readonly number[])[];
  readonly errorWeights: readonly number[];
}

// In a function: a division on loading would stay in every bundle.
function dormandPrince(): Pair {
  return {
    nodes: [0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1],
    stages: [
      [],
      [1 / 5],
      [3 / 40, 9 / 40],
      [44 / 45, -56 / 15, 32 / 9],
      [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
      [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
      [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
    ],
    errorWeights: [71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40],
  };
}

const PAIR: Pair = /*#__PURE__*/ dormandPrince();

interface Trial {
  readonly state: readonly number[];
  /** Derivative at the new state: the first stage of the next step. */
  readonly slope: readonly number[];
  readonly error: readonly number[];
}

function checkedSlope(derivative: Derivative, at: number, state: readonly number[]): readonly number[] {
  const slope = derivative(at, state);
  if (slope.length !== state.length || !slope.every(Number.isFinite)) {
    fail({
      code: "not-a-number",
      path: "derivative",
      expected: `${state.length} finite numbers at ${at}`,
      received: slope.length === state.length ? String(slope) : slope.length,
    });
  }
  return slope;
}

/** One step of length `step` from a known slope. */
function tryStep(
  derivative: Derivative,
  at: number,
  state: readonly number[],
  slope: readonly number[],
  step: number,
): Trial {
  const slopes: (readonly number[])[] = [slope];
  let next: readonly number[] = state;
  for (let stage = 1; stage < PAIR.stages.length; stage += 1) {
    const weights = PAIR.stages[stage] as readonly number[];
    next = state.map((value, i) => {
      let sum = 0;
      weights.forEach((weight, j) => {
        sum += weight * (slopes[j]?.[i] as number);
      });
      return value + step * sum;
    });
    slopes.push(checkedSlope(derivative, at + (PAIR.nodes[stage] as number) * step, next));
  }
  const error = state.map((_, i) => {
    let sum = 0;
    PAIR.errorWeights.forEach((weight, j) => {
      sum += weight * (slopes[j]?.[i] as number);
    });
    return step * sum;
  });
  return { state: next, slope: slopes[6] as readonly number[], error };
}

/** Largest error in units of its allowance; 1 or less is accepted. */
function worstError(
  trial: Trial,
  from: readonly number[],
  relative: number,
  absolute: readonly number[],
): number {
  let worst = 0;
  trial.error.forEach((error, i) => {
    const size = Math.max(Math.abs(from[i] as number), Math.abs(trial.state[i] as number));
    worst = Math.max(worst, Math.abs(error) / ((absolute[i] as number) + relative * size));
  });
  return worst;
}

/** First step: one hundredth of the time in which the state would change by its own size, and of the whole way. */
function firstStep(state: readonly number[], slope: readonly number[], way: number): number {
  let step = way / 100;
  state.forEach((value, i) => {
    const [size, rate] = [Math.abs(value), Math.abs(slope[i] as number)];
    // A component that starts from nothing says nothing about its size; one that stands still has all the time there is.
    if (size > 0) step = Math.min(step, Math.max((0.01 * size) / rate, way * 1e-9));
  });
  return step;
}

/**
 * Integrates y' = derivative(at, y) from `start` towards `end`, and stops where `event` changes sign.
 *
 * Each step is accepted when the estimated error of every component is within absolute + relative × size. The event
 * is located by shortening the last step, so it is as exact as the step itself; two sign changes inside one step are
 * not seen, so the event should be monotone or the step limited. Not for stiff systems: those end in
 * `no-convergence`.
 * @param input.derivative - slope of every component at a place and state; must be finite everywhere it is asked
 * @param input.start - where to start
 * @param input.end - where to stop at the latest, above `start`
 * @param input.initial - state at the start, one number for each component
 * @param input.relativeTolerance - error allowed in each step over the size of the component, 1e-14 to 0.1; 1e-10 if left out
 * @param input.absoluteTolerance - error allowed in each step besides, one number for all components or one for each,
 *   more than 0; 1e-12 if left out
 * @param input.event - function of place and state; the integration stops where its sign changes, or at once where it is 0
 * @param input.largestStep - longest step, more than 0; the whole way if left out
 * @param input.maximumSteps - most steps, accepted or not, 1 to 1e6; 100000 if left out
 * @returns where it stopped, why, and the state there
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent` when the ends are not in order,
 *   `no-convergence` with the place reached
 * @source J. R. Dormand, P. J. Prince, A family of embedded Runge-Kutta formulae, Journal of Computational and Applied
 *   Mathematics 6 (1980) 19
 * @example
 * ```ts
 * const { at, stopped } = integrateOde({
 *   derivative: (_, [y]) => [-(y as number)], start: 0, end: 10, initial: [1], event: (_, [y]) => (y as number) - 0.5,
 * });
 * [at, stopped] // => [0.693147181, "event"]
 * ```
 * @since 0.1.0
 */
export function integrateOde(input: {
  readonly derivative: (at: number, state: readonly number[]) => readonly number[];
  readonly start: number;
  readonly end: number;
  readonly initial: readonly number[];
  readonly relativeTolerance?: number;
  readonly absoluteTolerance?: number | readonly number[];
  readonly event?: (at: number, state: readonly number[]) => number;
  readonly largestStep?: number;
  readonly maximumSteps?: number;
}): OdeSolution {
  const { derivative, start, end, initial, event } = input;
  const { relativeTolerance: relative = 1e-10, maximumSteps = 100_000 } = input;
  checkFinite("start", start);
  checkFinite("end", end);
  if (!(start < end)) {
    fail({ code: "inconsistent", path: "end", expected: `more than start, ${start}`, received: end });
  }
  if (initial.length === 0) fail({ code: "missing", path: "initial", expected: "a state", received: "" });
  initial.forEach((value, i) => {
    checkFinite(`initial.${i}`, value);
  });
  if (!(relative >= 1e-14 && relative <= 0.1)) {
    fail({ code: "out-of-range", path: "relativeTolerance", expected: "1e-14 to 0.1", received: relative });
  }
  const given = input.absoluteTolerance ?? 1e-12;
  const absolute = initial.map((_, i) => (typeof given === "number" ? given : (given[i] as number)));
  absolute.forEach((value) => {
    checkPositive("absoluteTolerance", value);
  });
  checkWhole("maximumSteps", maximumSteps, 1, 1_000_000);
  const largestStep = input.largestStep ?? end - start;
  checkPositive("largestStep", largestStep);

  let at = start;
  let state: readonly number[] = [...initial];
  let slope = checkedSlope(derivative, at, state);
  let sign = event === undefined ? 1 : event(at, state);
  if (sign === 0) return { at, state, stopped: "event", steps: 0 };
  let step = Math.min(largestStep, firstStep(state, slope, end - start));
  let steps = 0;
  for (let tries = 0; at < end; tries += 1) {
    // Below this a step no longer moves the place: the error estimate cannot be met.
    const stuck = step <= 8 * Number.EPSILON * Math.max(Math.abs(at), Math.abs(end - start));
    if (tries >= maximumSteps || stuck) {
      fail({
        code: "no-convergence",
        path: "derivative",
        expected: `to reach ${end} within the tolerance; after ${tries} steps it stands at ${at}, step ${step}`,
        received: at,
      });
    }
    const last = at + step >= end;
    const length = last ? end - at : step;
    const trial = tryStep(derivative, at, state, slope, length);
    const error = worstError(trial, state, relative, absolute);
    const factor = Math.min(5, Math.max(0.2, 0.9 * error ** -0.2));
    if (error > 1) {
      step = length * factor;
      continue;
    }
    const next = last ? end : at + length;
    steps += 1;
    if (event !== undefined) {
      const value = event(next, trial.state);
      if (value === 0 || value > 0 !== sign > 0) {
        const [place, from, first, known] = [at, state, slope, sign];
        // Both ends are known: asking the function again there must give the same, or the bracket would be lost.
        const found = bracketedRoot({
          evaluate: (part) =>
            part === 0
              ? known
              : part === length
                ? value
                : event(place + part, tryStep(derivative, place, from, first, part).state),
          low: 0,
          high: length,
          tolerance: length * 1e-14,
        }).root;
        const { state: there } = tryStep(derivative, place, from, first, found);
        return { at: place + found, state: there, stopped: "event", steps };
      }
      sign = value;
    }
    [at, state, slope] = [next, trial.state, trial.slope];
    step = Math.min(largestStep, length * factor);
  }
  return { at, state, stopped: "end", steps };
}
