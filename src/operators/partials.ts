/**
 * Sensitivity coefficients by differences: central where the calculation takes both sides, one-sided at the edge of its
 * domain, each extrapolated to a step of zero (Richardson), with the scatter of the extrapolation as its error.
 */
import { fail } from "../quantity/index.ts";

/** Slope of each output, and how far it may be off. */
export interface Slopes {
  readonly slopes: readonly number[];
  readonly errors: readonly number[];
}

/** Outputs at a value of the input, or undefined where the calculation refuses it. */
export type Probe = (x: number) => readonly number[] | undefined;

/** Halvings of the step in one extrapolation. */
const LEVELS = 12;

/** How often the first step is divided by four in search of one that the calculation takes. */
const SHRINKS = 14;

/** Difference quotients at one step, and what the rounding of the outputs can do to them. */
interface Row {
  readonly quotients: readonly number[];
  readonly noise: readonly number[];
}

/** One row at step h: central without `middle`, else from it towards the side of h. */
function quotient(
  probe: Probe,
  x: number,
  h: number,
  middle: readonly number[] | undefined,
): Row | undefined {
  const ahead = probe(x + h);
  const behind = middle ?? probe(x - h);
  if (ahead === undefined || behind === undefined) return undefined;
  // The steps that float64 really took; none is lost in x, the shortest is 2^-45 of it.
  const width = x + h - (middle === undefined ? x - h : x);
  return {
    quotients: ahead.map((value, k) => (value - (behind[k] as number)) / width),
    noise: ahead.map((value, k) =>
      Math.abs((Number.EPSILON * Math.max(Math.abs(value), Math.abs(behind[k] as number))) / width),
    ),
  };
}

/**
 * Extrapolates difference quotients at h, h/2, h/4 … for each output, and keeps the entry of the tableau that agrees best
 * with its two neighbours, rounding counted in: without it two noisy entries that happen to be equal would look exact.
 * @param order - what a halving divides the leading error by: 4 for central differences, 2 for one-sided ones
 */
function extrapolated(rows: readonly Row[], order: number): Slopes {
  const [coarsest] = rows as readonly [Row];
  const outputs = coarsest.quotients.length;
  const slopes: number[] = [];
  const errors: number[] = [];
  for (let k = 0; k < outputs; k += 1) {
    let before: number[] = [];
    let best = coarsest.quotients[k] as number;
    let least = Number.POSITIVE_INFINITY;
    for (const row of rows) {
      const now = [row.quotients[k] as number];
      let factor = order;
      for (let j = 1; j <= before.length; j += 1) {
        const [coarse, fine] = [before[j - 1] as number, now[j - 1] as number];
        const better = fine + (fine - coarse) / (factor - 1);
        const scatter = Math.max(Math.abs(better - fine), Math.abs(better - coarse));
        const error = scatter + (row.noise[k] as number);
        if (error < least) {
          least = error;
          best = better;
        }
        now.push(better);
        factor *= order;
      }
      before = now;
    }
    slopes.push(best + 0);
    errors.push(Number.isFinite(least) ? least : Math.abs(best));
  }
  return { slopes, errors };
}

function rowsFrom(
  probe: Probe,
  x: number,
  first: number,
  middle: readonly number[] | undefined,
): readonly Row[] {
  let h = first;
  let row = quotient(probe, x, h, middle);
  for (let shrink = 0; row === undefined && shrink < SHRINKS; shrink += 1) {
    h /= 4;
    row = quotient(probe, x, h, middle);
  }
  const rows: Row[] = [];
  while (row !== undefined && rows.length < LEVELS) {
    rows.push(row);
    h /= 2;
    row = quotient(probe, x, h, middle);
  }
  return rows;
}

/** A slope with an error above this part of it is tried again with longer steps: rounding drowned it. */
const DROWNED = 1e-10;

const isSharp = ({ slopes, errors }: Slopes): boolean =>
  errors.every((error, k) => error <= DROWNED * Math.abs(slopes[k] as number));

function better(a: Slopes | undefined, b: Slopes): Slopes {
  if (a === undefined) return b;
  const pick = b.errors.map((error, k) => error < (a.errors[k] as number));
  return {
    slopes: b.slopes.map((slope, k) => (pick[k] ? slope : (a.slopes[k] as number))),
    errors: b.errors.map((error, k) => (pick[k] ? error : (a.errors[k] as number))),
  };
}

/**
 * Slopes of all outputs at x. The first step is the larger of |x|/32 and the standard uncertainty; it is divided by four until
 * the calculation takes x ± h, and then halved twelve times. Where rounding drowns the slope, longer steps are tried too: 4096
 * times the first, and 1/1024.
 */
export function slopesAt(probe: Probe, x: number, uncertainty: number, path: string): Slopes {
  const scale = Math.max(Math.abs(x) / 32, uncertainty);
  // A step that leaves no room for halving is no step.
  const first = scale > 1e-290 ? scale : 2 ** -10;
  let best: Slopes | undefined;
  for (const step of [first, 4096 * first, 2 ** -10]) {
    if (step < first) continue;
    const central = rowsFrom(probe, x, step, undefined);
    if (central.length > 2) best = better(best, extrapolated(central, 4));
    if (best !== undefined && isSharp(best)) break;
  }
  if (best !== undefined) return best;
  // The estimate itself has given numbers before.
  const middle = probe(x) as readonly number[];
  for (const side of [first, -first]) {
    const rows = rowsFrom(probe, x, side, middle);
    if (rows.length > 2) return extrapolated(rows, 2);
  }
  return fail({
    code: "out-of-range",
    path,
    expected: "an estimate that the calculation takes together with values beside it",
    received: x,
  });
}
