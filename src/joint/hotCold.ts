/** Preload hot and cold: expansion of unlike metals, embedding, and what one overload leaves behind. */
import {
  checkMeasurable,
  checkMeasurableOrZero,
  checkMeasurableSigned,
  fail,
  given,
  givenList,
  type Kelvins,
  type Meters,
  type Newtons,
  type NewtonsPerMeter,
  type PerKelvin,
} from "../quantity/index.ts";

/**
 * One part of a clamped stack.
 * @since 0.1.0
 */
export interface StackPart {
  /** Length of the part along the bolt (m). */
  readonly length: Meters;
  /** Coefficient of linear expansion (1/K). */
  readonly expansion: PerKelvin;
  /** Rise of the part above the temperature it was tightened at (K); negative for colder. */
  readonly rise: Kelvins;
}

/**
 * Change of preload when stud and clamped parts change temperature: ΔF = (Σ expansion·length·rise of the parts −
 * expansion·length·rise of the stud)·studStiffness·partsStiffness/(sum of both).
 *
 * Positive tightens. Steel on copper tightens on heating and may yield the copper; brass slightly loosens. Washers
 * belong to the clamped parts with their own expansion. Elastic only: see {@link preloadAfterOverload} for what
 * yielding leaves.
 * @param input.stud - length clamped (m), expansion (1/K) and rise (K) of the stud
 * @param input.parts - the same for each clamped part; their lengths must add up to the stud's
 * @param input.studStiffness - stiffness of the stud (N/m), more than 0
 * @param input.partsStiffness - stiffness of the clamped parts together (N/m), more than 0
 * @returns change of preload (N)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`; `inconsistent` when the lengths do not add up
 * @source compatibility of deflections of bolt and members (Shigley, section 8-5; Bickford)
 * @example
 * ```ts
 * const rise = kelvins(100), length = millimeters(10);
 * preloadChange({
 *   stud: { length, rise, expansion: millionthsPerKelvin(20.5) },
 *   parts: [{ length, rise, expansion: millionthsPerKelvin(17) }],
 *   studStiffness: meganewtonsPerMeter(193.97), partsStiffness: meganewtonsPerMeter(851.74),
 * }) // => -553.0
 * ```
 * @since 0.1.0
 */
export function preloadChange(input: {
  readonly stud: StackPart;
  readonly parts: readonly StackPart[];
  readonly studStiffness: NewtonsPerMeter;
  readonly partsStiffness: NewtonsPerMeter;
}): Newtons {
  given(input);
  const { stud, parts, studStiffness, partsStiffness } = input;
  const growth = (path: string, part: StackPart): number => {
    given(part, path);
    checkMeasurable(`${path}.length`, part.length, "m");
    checkMeasurableOrZero(`${path}.expansion`, part.expansion, "1/K");
    checkMeasurableSigned(`${path}.rise`, part.rise, "K");
    return part.expansion * part.length * part.rise;
  };
  checkMeasurable("studStiffness", studStiffness, "N/m");
  checkMeasurable("partsStiffness", partsStiffness, "N/m");
  givenList(parts, "parts", 1);
  const studGrowth = growth("stud", stud);
  let partsGrowth = 0;
  let length = 0;
  parts.forEach((part, i) => {
    partsGrowth += growth(`parts.${i}`, part);
    length += part.length;
  });
  if (!(Math.abs(length - stud.length) <= 1e-9 * stud.length)) {
    fail({
      code: "inconsistent",
      path: "parts",
      expected: `lengths that add up to the clamped length of the stud ${stud.length}`,
      received: length,
      unit: "m",
    });
  }
  const stiffness = (studStiffness * partsStiffness) / (studStiffness + partsStiffness);
  return ((partsGrowth - studGrowth) * stiffness) as Newtons;
}

/**
 * Preload lost when the surfaces of a joint settle: embedding/(1/studStiffness + 1/partsStiffness +
 * 1/washerStiffness).
 *
 * A conical washer in series keeps the loss small while it is not flat. Guide values for embedding in print are for
 * steel, not copper, so the amount is an input.
 * @param input.embedding - settling of all surfaces together (m), 0 or more
 * @param input.studStiffness - stiffness of the stud (N/m), more than 0
 * @param input.partsStiffness - stiffness of the clamped parts (N/m), more than 0
 * @param input.washerStiffness - stiffness of a conical washer or stack at its working height (N/m), more than 0;
 *   none if left out
 * @returns preload lost (N)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source VDI 2230 Part 1, loss of preload F_Z = f_Z/(δ_S + δ_P) (from memory; follows from the springs in series)
 * @example
 * ```ts
 * const m6 = { studStiffness: meganewtonsPerMeter(193.965), partsStiffness: meganewtonsPerMeter(851.738) };
 * embeddingLoss({ embedding: micrometers(10), ...m6 }) // => 1579.87
 * ```
 * @since 0.1.0
 */
export function embeddingLoss(input: {
  readonly embedding: Meters;
  readonly studStiffness: NewtonsPerMeter;
  readonly partsStiffness: NewtonsPerMeter;
  readonly washerStiffness?: NewtonsPerMeter;
}): Newtons {
  given(input);
  const { embedding, studStiffness, partsStiffness, washerStiffness } = input;
  checkMeasurableOrZero("embedding", embedding, "m");
  checkMeasurable("studStiffness", studStiffness, "N/m");
  checkMeasurable("partsStiffness", partsStiffness, "N/m");
  let compliance = 1 / studStiffness + 1 / partsStiffness;
  if (washerStiffness !== undefined) {
    checkMeasurable("washerStiffness", washerStiffness, "N/m");
    compliance += 1 / washerStiffness;
  }
  return (embedding / compliance) as Newtons;
}

/**
 * Preload before, during and after one heating.
 * @since 0.1.0
 */
export interface HeatCycle {
  /** Preload hot (N). */
  readonly hot: Newtons;
  /** Preload cold again (N). */
  readonly coldAfter: Newtons;
  /** Preload lost for good by this cycle (N). */
  readonly lost: Newtons;
  /** Whether stud or bar yielded, or the joint went slack. */
  readonly state: "elastic" | "yielded" | "slack when hot" | "slack when cold";
}

/**
 * Preload after one heating, with the force that stud or bar can bear as a ceiling: elastic up to it, perfectly
 * plastic at it.
 *
 * Why a steel stud on copper is loose after a burn-up: the copper grows more, the force rises to what the softened
 * bar bears under the washer, the excess stretch is gone, and on cooling the force falls by the full change. Each
 * hotter cycle takes more (ratchet). `ceiling` is the smaller of stud yield load and bar pressure limit × face area
 * at the hot temperature. Creep is not included: the true loss is larger.
 * @param input.preload - preload cold before (N), 0 or more
 * @param input.change - change on heating (N) from {@link preloadChange}; positive tightens
 * @param input.ceiling - greatest force stud and bar bear hot (N), more than 0
 * @returns force hot, cold again, lost, and state
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source elastic, perfectly plastic clamp; derived
 * @example
 * ```ts
 * const { hot, coldAfter } = preloadAfterOverload({ preload: newtons(5400), change: newtons(1472), ceiling: newtons(6000) });
 * [hot, coldAfter] // => [6000, 4528]
 * ```
 * @since 0.1.0
 */
export function preloadAfterOverload(input: {
  readonly preload: Newtons;
  readonly change: Newtons;
  readonly ceiling: Newtons;
}): HeatCycle {
  given(input);
  const { preload, change, ceiling } = input;
  checkMeasurableOrZero("preload", preload, "N");
  checkMeasurableSigned("change", change, "N");
  checkMeasurable("ceiling", ceiling, "N");
  const wanted = preload + change;
  // A clamp cannot pull: below zero the parts stand apart.
  const hot = Math.max(0, Math.min(wanted, ceiling));
  const yielded = wanted > ceiling;
  const coldAfter = yielded ? Math.max(0, ceiling - change) : preload;
  const slackCold = coldAfter === 0 && preload > 0;
  return {
    hot: hot as Newtons,
    coldAfter: coldAfter as Newtons,
    lost: (preload - coldAfter) as Newtons,
    state: slackCold ? "slack when cold" : yielded ? "yielded" : wanted <= 0 ? "slack when hot" : "elastic",
  };
}
