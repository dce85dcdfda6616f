/** From three readings between the lines of a closed delta back to its three sides. */
import { checkNonNegative, checkOpenOr, given, type Ohms, type Open } from "../../quantity/index.ts";

/**
 * One side of a delta, as far as the readings determine it.
 * @since 0.1.0
 */
export interface DeltaSide {
  /** `"known"`; `"open"`: no path found; `"not identifiable"`: the readings only bound it. */
  readonly state: "known" | "open" | "not identifiable";
  /** Resistance, Ω; `"open"`; or `null` where not identifiable. */
  readonly resistance: Ohms | Open | null;
  /** Standard uncertainty, Ω; `null` unless known. */
  readonly standardUncertainty: Ohms | null;
  /** Where not identifiable: it is at least this, Ω; 0 if nothing is known. */
  readonly atLeast: Ohms | null;
}

/**
 * Three sides recovered from line-to-line readings.
 * @since 0.1.0
 */
export interface DeltaFromReadings {
  /** `"solved"` if every side is known or open; `"partly"` if not; `"contradictory"` if no delta reads like that. */
  readonly outcome: "solved" | "partly" | "contradictory";
  /** Side between L1 and L2. */
  readonly r12: DeltaSide;
  /** Side between L2 and L3. */
  readonly r23: DeltaSide;
  /** Side between L3 and L1. */
  readonly r31: DeltaSide;
}

const OPEN_SIDE: DeltaSide = { state: "open", resistance: "open", standardUncertainty: null, atLeast: null };
const UNKNOWN: DeltaSide = {
  state: "not identifiable",
  resistance: null,
  standardUncertainty: null,
  atLeast: 0 as Ohms,
};

const known = (resistance: number, u: number): DeltaSide => ({
  state: "known",
  resistance: resistance as Ohms,
  standardUncertainty: u as Ohms,
  atLeast: null,
});

/** An arm of the equivalent star closer to 0 than this many standard uncertainties may be 0: an open side. */
const COVERAGE = 2;

/**
 * The three sides of a closed delta from the readings between its lines.
 *
 * Star equivalents s1 = (y12 + y31 − y23)/2 and cyclic; R12 = (s1·s2 + s2·s3 + s3·s1)/s3 and cyclic. At balance a side is 1.5
 * times the reading, 1 % of reading becomes 1.73 % of side, and a lead offset r becomes 1.5·r: take the leads off first.
 * s3 = 0 means side 12 open: a side whose star arm is not clear of 0 by two standard uncertainties is reported as not
 * identifiable with a lower bound, never as a huge number. A side of 0 Ω hides how the other two share what is left: they are not
 * identifiable either.
 * @param input.y12 - reading L1 to L2, leads taken off, Ω, or `"open"` for OL
 * @param input.y23 - reading L2 to L3
 * @param input.y31 - reading L3 to L1
 * @param input.standardUncertainty - standard uncertainty of each reading, Ω, 0 or more (0: exact arithmetic)
 * @returns the sides, or that no delta reads like this
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Kennelly 1899 (star-delta equivalence) inverted; the same formula stands in a transformer test-set manual
 * @example
 * ```ts
 * const sides = deltaFromLineReadings({
 *   y12: ohms(8.7645), y23: ohms(8.7645), y31: ohms(9.4581), standardUncertainty: ohms(0.001),
 * });
 * [sides.r12.resistance, sides.r23.resistance, sides.r31.resistance] // => [12.800, 12.800, 15.00]
 * ```
 * @since 0.1.0
 */
export function deltaFromLineReadings(input: {
  readonly y12: Ohms | Open;
  readonly y23: Ohms | Open;
  readonly y31: Ohms | Open;
  readonly standardUncertainty: Ohms;
}): DeltaFromReadings {
  given(input);
  const { y12, y23, y31, standardUncertainty: u } = input;
  for (const [path, y] of [
    ["y12", y12],
    ["y23", y23],
    ["y31", y31],
  ] as const) {
    checkOpenOr(path, y, checkNonNegative);
  }
  checkNonNegative("standardUncertainty", u, "Ω");
  if (y12 === "open" || y23 === "open" || y31 === "open") return withOpenReadings([y12, y23, y31], u);
  // Arms of the equivalent star, by terminal.
  const s1 = (y12 + y31 - y23) / 2;
  const s2 = (y12 + y23 - y31) / 2;
  const s3 = (y23 + y31 - y12) / 2;
  const uArm = (Math.sqrt(3) / 2) * u;
  // Without a stated uncertainty, rounding of the readings' own sums is all that can hide a zero.
  const blur = Math.max(COVERAGE * uArm, 1e-12 * (y12 + y23 + y31));
  if (Math.min(s1, s2, s3) < -blur)
    return { outcome: "contradictory", r12: UNKNOWN, r23: UNKNOWN, r31: UNKNOWN };
  const r12 = side(s1, s2, s3, u, blur);
  const r23 = side(s2, s3, s1, u, blur);
  const r31 = side(s3, s1, s2, u, blur);
  const vague = [r12, r23, r31].some((one) => one.state === "not identifiable");
  return { outcome: vague ? "partly" : "solved", r12, r23, r31 };
}

/** The side between the terminals of arms a and b; c is the arm of the third terminal. */
function side(a: number, b: number, c: number, u: number, blur: number): DeltaSide {
  const products = a * b + b * c + c * a;
  if (c > blur) {
    // dR/da = 1 + b/c, dR/db = 1 + a/c, dR/dc = −ab/c²; arms from readings with coefficients ±1/2.
    const [da, db, dc] = [1 + b / c, 1 + a / c, (-a * b) / (c * c)];
    const dyAB = (da + db - dc) / 2;
    const dyBC = (db + dc - da) / 2;
    const dyCA = (da + dc - db) / 2;
    // An arm just below 0 by meter error makes a shorted side come out below 0 Ω, which is the least it can have.
    return known(Math.max(0, products / c), u * Math.hypot(dyAB, dyBC, dyCA));
  }
  // An exact zero with exact readings is an open side; with uncertain ones it may also be a very high resistance.
  const shortBeside = Math.min(a, b) <= blur;
  if (u === 0 && !shortBeside) return OPEN_SIDE;
  const highest = Math.max(0, c) + blur;
  const [low, high] = [Math.max(0, Math.min(a, b) - blur), Math.max(0, Math.max(a, b) - blur)];
  const bound = low + high + (highest > 0 ? (low * high) / highest : 0);
  return { state: "not identifiable", resistance: null, standardUncertainty: null, atLeast: bound as Ohms };
}

function withOpenReadings(readings: readonly (Ohms | Open)[], u: number): DeltaFromReadings {
  const open = readings.filter((y) => y === "open").length;
  // One OL beside two finite readings cannot be: the two finite paths in series join the terminals of the third.
  if (open === 1) return { outcome: "contradictory", r12: UNKNOWN, r23: UNKNOWN, r31: UNKNOWN };
  const sides = readings.map((y) => (y === "open" ? OPEN_SIDE : known(y, u)));
  return {
    outcome: "solved",
    r12: sides[0] as DeltaSide,
    r23: sides[1] as DeltaSide,
    r31: sides[2] as DeltaSide,
  };
}
