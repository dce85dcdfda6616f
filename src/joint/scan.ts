/** Temperature rises seen at part load, referred to another load: as bands, because the exponent is not known. */
import {
  type Amperes,
  checkBetween,
  checkMeasurable,
  checkMeasurableOrZero,
  fail,
  given,
  type Kelvins,
  type Warning,
} from "../quantity/index.ts";
import { JOINT_DEFERRAL } from "./basis.ts";

/**
 * Lowest and highest exponent of rise against current, and that of a bare copper bar with its own resistivity growth.
 */
const EXPONENT_LOW = 1.6;
const EXPONENT_COPPER_BAR = 1.83;
const EXPONENT_HIGH = 2;
/** NFPA 70B-2023, 7.4.5. */
const LOWEST_LOAD = 0.4;

/**
 * A rise referred to another load, as a band.
 * @since 0.1.0
 */
export interface RiseBand {
  /** Lower end of the band (K). */
  readonly low: Kelvins;
  /** The value with the exponent of a bare copper bar, 1.83 (K); `null` when the exponents given leave it out. */
  readonly copperBar: Kelvins | null;
  /** Upper end of the band (K). */
  readonly high: Kelvins;
  /** Whether the load was high enough to say anything: at least 40 % of full load. */
  readonly decidable: boolean;
  /** What the reader must know. */
  readonly warnings: readonly Warning[];
}

/**
 * Rise referred to another current by one exponent: other rise = rise × (otherCurrent/current)^exponent. Swapping the
 * two currents undoes it.
 * @param input.rise - rise over air or over a similar joint at `current` (K), 0 or more
 * @param input.current - current while it was seen (A), more than 0
 * @param input.otherCurrent - current to refer it to (A), more than 0
 * @param input.exponent - exponent, 1 to 2: 1.6 natural convection only, 1.83 bare copper bar, 2 constant film
 *   coefficient
 * @returns rise at the other current (K)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source power law of thermography practice with n from 1.6 to 2.0 (training-institute tip, 2023, after an IEEE
 *   formula)
 * @example
 * ```ts
 * riseAtCurrent({ rise: kelvins(14), current: amperes(30), otherCurrent: amperes(65), exponent: 2 }) // => 65.7222
 * ```
 * @since 0.1.0
 */
export function riseAtCurrent(input: {
  readonly rise: Kelvins;
  readonly current: Amperes;
  readonly otherCurrent: Amperes;
  readonly exponent: number;
}): Kelvins {
  given(input);
  const { rise, current, otherCurrent, exponent } = input;
  checkMeasurableOrZero("rise", rise, "K");
  checkMeasurable("current", current, "A");
  checkMeasurable("otherCurrent", otherCurrent, "A");
  checkBetween("exponent", exponent, 1, 2);
  return (rise * (otherCurrent / current) ** exponent) as Kelvins;
}

function band(input: {
  readonly rise: Kelvins;
  readonly ratio: number;
  readonly exponentLow: number;
  readonly exponentHigh: number;
  readonly load: number;
  readonly path: string;
}): RiseBand {
  const { rise, ratio, exponentLow, exponentHigh, load, path } = input;
  const at = (exponent: number): number => rise * ratio ** exponent;
  const ends = [at(exponentLow), at(exponentHigh)];
  // A current divided by a current may stand 1 part in 1e16 off the edge.
  const decidable = load >= LOWEST_LOAD * (1 - 1e-12);
  const warnings: Warning[] = decidable
    ? []
    : [
        {
          code: "outside-validity",
          path,
          message:
            "Below 40 % load the factor to full load runs from over 4.3 to over 6.2 and faults may not show: undecided.",
          limit: LOWEST_LOAD,
          source: "nfpa-70b-2023",
        },
      ];
  const holdsBar = exponentLow <= EXPONENT_COPPER_BAR && EXPONENT_COPPER_BAR <= exponentHigh;
  return {
    low: Math.min(...ends) as Kelvins,
    copperBar: holdsBar ? (at(EXPONENT_COPPER_BAR) as Kelvins) : null,
    high: Math.max(...ends) as Kelvins,
    decidable,
    warnings,
  };
}

/**
 * Rise at full load from a rise at part load: full rise = rise/loadFraction^n for n from 1.6 to 2, and 1.83 between.
 *
 * Give the pair, never one figure: 1.6 is natural convection with constant resistance, 2 a constant film coefficient
 * (fan, enclosure), 1.83 the full balance of a bare copper bar. A joint whose resistance grows with its temperature
 * can exceed 2. Below 40 % load `decidable` is false. The current must have stood for several time constants of the
 * joint.
 * @param input.rise - rise over air or over a similar joint as seen (K), 0 or more
 * @param input.loadFraction - current over full-load current, more than 0 to 2
 * @param input.exponentLow - lower exponent, 1 to 2; 1.6 if left out
 * @param input.exponentHigh - upper exponent, `exponentLow` to 2; 2 if left out
 * @returns the band
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent`
 * @source as {@link riseAtCurrent}; 40 %: NFPA 70B-2023, 7.4.5; 1.83: heat balance of a 30 × 5 mm copper bar, derived
 * @example
 * ```ts
 * const { low, high } = riseAtFullLoad({ rise: kelvins(22), loadFraction: 0.6 });
 * [low, high] // => [49.8174, 61.1111]
 * ```
 * @since 0.1.0
 */
export function riseAtFullLoad(input: {
  readonly rise: Kelvins;
  readonly loadFraction: number;
  readonly exponentLow?: number;
  readonly exponentHigh?: number;
}): RiseBand {
  given(input);
  const { rise, loadFraction, exponentLow = EXPONENT_LOW, exponentHigh = EXPONENT_HIGH } = input;
  checkMeasurableOrZero("rise", rise, "K");
  checkMeasurable("loadFraction", loadFraction);
  checkBetween("loadFraction", loadFraction, 0, 2);
  checkBetween("exponentLow", exponentLow, 1, 2);
  checkBetween("exponentHigh", exponentHigh, 1, 2);
  if (exponentLow > exponentHigh) {
    fail({
      code: "inconsistent",
      path: "exponentLow",
      expected: `at most exponentHigh ${exponentHigh}`,
      received: exponentLow,
    });
  }
  const load = loadFraction;
  return band({ rise, ratio: 1 / load, exponentLow, exponentHigh, load, path: "loadFraction" });
}

/**
 * A joint as a camera saw it at its own current.
 * @since 0.1.0
 */
export interface ScannedJoint {
  /** Rise over air or over a similar joint (K), the same reference for both joints. */
  readonly rise: Kelvins;
  /** Current at that moment (A). */
  readonly current: Amperes;
}

/**
 * Two joints at one current.
 * @since 0.1.0
 */
export interface RiseComparison {
  /** The first joint's rise at the reference current. */
  readonly first: RiseBand;
  /** The second joint's. */
  readonly second: RiseBand;
  /**
   * Which is hotter at the reference current; undecided when the bands overlap, or when the cooler one was seen under 40 % of full load,
   * where faults may not show.
   */
  readonly worse: "first" | "second" | "undecided";
  /** To whom the verdict defers. */
  readonly deferral: string;
}

/**
 * Compares two joints seen at different currents, both referred to one current with n from 1.6 to 2.
 *
 * Low load only hides: a joint seen below 40 % of the module's full-load current is never called the better one, whatever
 * current both are referred to; it is called the worse one where it is hotter by every exponent from 1 to 2. If one
 * exponent held for both joints the overlap rule is cautious; it does not: cooling differs from joint to
 * joint.
 * @param input.first - rise (K) and current (A) of the first joint
 * @param input.second - rise (K) and current (A) of the second joint
 * @param input.referenceCurrent - current to refer both to (A), more than 0
 * @param input.fullLoadCurrent - full-load current of the module in these joints (A), more than 0
 * @returns both bands, which joint is worse, deferral
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source as {@link riseAtFullLoad}
 * @example
 * ```ts
 * const { first, worse } = compareRises({
 *   first: { rise: kelvins(14), current: amperes(30) },
 *   second: { rise: kelvins(20), current: amperes(65) },
 *   referenceCurrent: amperes(65),
 *   fullLoadCurrent: amperes(65),
 * });
 * [first.low, first.high, worse] // => [48.2387, 65.7222, "first"]
 * ```
 * @since 0.1.0
 */
export function compareRises(input: {
  readonly first: ScannedJoint;
  readonly second: ScannedJoint;
  readonly referenceCurrent: Amperes;
  readonly fullLoadCurrent: Amperes;
}): RiseComparison {
  given(input);
  const { referenceCurrent, fullLoadCurrent } = input;
  checkMeasurable("referenceCurrent", referenceCurrent, "A");
  checkMeasurable("fullLoadCurrent", fullLoadCurrent, "A");
  const refer = (name: "first" | "second"): RiseBand => {
    given(input[name], name);
    const { rise, current } = input[name];
    checkMeasurableOrZero(`${name}.rise`, rise, "K");
    checkMeasurable(`${name}.current`, current, "A");
    return band({
      rise,
      ratio: referenceCurrent / current,
      exponentLow: EXPONENT_LOW,
      exponentHigh: EXPONENT_HIGH,
      load: current / fullLoadCurrent,
      path: `${name}.current`,
    });
  };
  const [first, second] = [refer("first"), refer("second")];
  const atLeast = (name: "first" | "second", seen: RiseBand): number => {
    const { rise, current } = input[name];
    return seen.decidable ? seen.low : Math.min(rise * (referenceCurrent / current), seen.low);
  };
  const worse =
    second.decidable && atLeast("first", first) > second.high
      ? "first"
      : first.decidable && atLeast("second", second) > first.high
        ? "second"
        : "undecided";
  return { first, second, worse, deferral: JOINT_DEFERRAL };
}
