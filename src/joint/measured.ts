/** A joint from what was measured across it: resistance, watts, and its ratio to the joints like it. */
import ratioRules from "../../shared/tables/joint-ratio-rules.json" with { type: "json" };
import { compareQuoted, type Judgement, judge } from "../decision/index.ts";
import type { Basis } from "../material/index.ts";
import {
  type Amperes,
  checkMeasurable,
  checkMeasurableOrZero,
  fail,
  given,
  type Meters,
  type OhmMeters,
  type Ohms,
  type SquareMeters,
  type Volts,
  type Warning,
  type Watts,
} from "../quantity/index.ts";
import { basisOf, cellNumber, JOINT_DEFERRAL, rowNamed } from "./basis.ts";
import { checkText } from "./check.ts";

/**
 * A joint as measured.
 * @since 0.1.0
 */
export interface MeasuredJoint {
  /** Resistance of the joint alone (Ω). */
  readonly resistance: Ohms;
  /** Half-width of its interval (Ω), from the half-widths of the readings. */
  readonly halfWidth: Ohms;
  /** Drop over current, bar between the probes included (Ω). */
  readonly grossResistance: Ohms;
  /** Heat made in the joint at that current (W). */
  readonly power: Watts;
  /** What the reader must know. */
  readonly warnings: readonly Warning[];
}

/**
 * Heat made in a joint: P = current² × resistance.
 *
 * Balanced amps do not clear the terminals: a joint is a small part of its branch's resistance, so tens of watts of it
 * change the line current by less than a clamp meter shows.
 * @param input.current - r.m.s. current through the joint, by clamp meter (A), 0 or more
 * @param input.resistance - joint resistance (Ω), 0 or more
 * @returns power (W)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Joule's law, definition
 * @example
 * ```ts
 * jointPower({ current: amperes(60), resistance: microohms(500) }) // => 1.8
 * ```
 * @since 0.1.0
 */
export function jointPower(input: { readonly current: Amperes; readonly resistance: Ohms }): Watts {
  given(input);
  const { current, resistance } = input;
  checkMeasurableOrZero("current", current, "A");
  checkMeasurableOrZero("resistance", resistance, "Ω");
  return (current * current * resistance) as Watts;
}

/**
 * Joint resistance and heat from a millivolt reading: R = drop/current − barResistance, P = current² × R.
 *
 * The bar between the probes counts: give its resistance (as `barResistance` gives it for the distance between the
 * probe points, at the bar's temperature), or 0 if the probes stand at the very edges of the overlap. Left out, the
 * result is the joint with its bar and a warning says so. On direct current reverse the probes and take the mean
 * (thermal EMF); on alternating current keep the probe leads together (loop pickup). A negative remainder larger than
 * the readings explain is an error, not a zero. This measures a joint; nothing here predicts the resistance of a
 * burnt one.
 * @param input.drop - r.m.s. voltage across the joint, by millivoltmeter at fixed probe points (V), 0 or more
 * @param input.current - r.m.s. current at the same moment, by clamp meter (A), more than 0
 * @param input.barResistance - resistance of the bar and lug between the probes (Ω), 0 or more
 * @param input.dropHalfWidth - half-width of the drop reading (V), 0 or more
 * @param input.currentHalfWidth - half-width of the current reading (A), 0 or more, less than the current
 * @returns resistance, its half-width (worst case of both readings), heat, warnings
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`; `inconsistent` when the bar alone would drop
 *   more than was read
 * @source Ohm's law, definition
 * @example
 * ```ts
 * const { resistance, halfWidth, power } = measuredJoint({
 *   drop: millivolts(18.4), dropHalfWidth: millivolts(0.2), current: amperes(64.2), currentHalfWidth: amperes(1.3),
 * });
 * [resistance, halfWidth, power] // => [0.000286604, 0.0000091, 1.18128]
 * ```
 * @since 0.1.0
 */
export function measuredJoint(input: {
  readonly drop: Volts;
  readonly current: Amperes;
  readonly barResistance?: Ohms;
  readonly dropHalfWidth: Volts;
  readonly currentHalfWidth: Amperes;
}): MeasuredJoint {
  given(input);
  const { drop, current, barResistance = 0, dropHalfWidth, currentHalfWidth } = input;
  checkMeasurableOrZero("drop", drop, "V");
  checkMeasurable("current", current, "A");
  checkMeasurableOrZero("barResistance", barResistance, "Ω");
  checkMeasurableOrZero("dropHalfWidth", dropHalfWidth, "V");
  checkMeasurableOrZero("currentHalfWidth", currentHalfWidth, "A");
  if (!(currentHalfWidth < current)) {
    fail({
      code: "out-of-range",
      path: "currentHalfWidth",
      expected: `less than the current ${current}`,
      received: currentHalfWidth,
      unit: "A",
    });
  }
  const gross = drop / current;
  const halfWidth = (drop + dropHalfWidth) / (current - currentHalfWidth) - gross;
  const net = gross - barResistance;
  // Half a reading's width, or rounding: below that the joint is 0; beyond it the readings contradict the bar.
  if (net < -(halfWidth + 1e-12 * gross)) {
    fail({
      code: "inconsistent",
      path: "barResistance",
      expected: `at most drop/current, which is ${gross}`,
      received: barResistance,
      unit: "Ω",
    });
  }
  const resistance = Math.max(0, net);
  const warnings: Warning[] = [];
  if (input.barResistance === undefined) {
    warnings.push({
      code: "assumed",
      path: "barResistance",
      message:
        "No bar between the probes was subtracted: the result is the joint with whatever bar lies between.",
    });
  }
  if (net < 0) {
    warnings.push({
      code: "suspicious",
      path: "resistance",
      message:
        "The bar between the probes accounts for the whole drop: the joint cannot be told from 0 Ω here.",
    });
  }
  return {
    resistance: resistance as Ohms,
    halfWidth: halfWidth as Ohms,
    grossResistance: gross as Ohms,
    power: (current * current * resistance) as Watts,
    warnings,
  };
}

/**
 * Length of bar that has the resistance of the joint: resistance × section/resistivity.
 * @param input.resistance - joint resistance (Ω), 0 or more
 * @param input.resistivity - resistivity of the bar at its temperature (Ω·m), more than 0
 * @param input.section - section of the bar (m²), more than 0
 * @returns equivalent bar length (m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition
 * @example
 * ```ts
 * const bar = { resistivity: microohmCentimeters(1.7241), section: squareMillimeters(60) };
 * equivalentBarLength({ resistance: microohms(286.604), ...bar }) // => 0.997404 (m)
 * ```
 * @since 0.1.0
 */
export function equivalentBarLength(input: {
  readonly resistance: Ohms;
  readonly resistivity: OhmMeters;
  readonly section: SquareMeters;
}): Meters {
  given(input);
  const { resistance, resistivity, section } = input;
  checkMeasurableOrZero("resistance", resistance, "Ω");
  checkMeasurable("resistivity", resistivity, "Ω·m");
  checkMeasurable("section", section, "m²");
  return ((resistance * section) / resistivity) as Meters;
}

/**
 * A rule for the ratio of a joint to the lowest joint like it: by name, or your own.
 * @since 0.1.0
 */
export type JointRatioRule =
  | "50-percent-above-lowest"
  | { readonly name: string; readonly limit: number; readonly source: string };

/**
 * A joint held against the joints like it.
 * @since 0.1.0
 */
export interface JointVerdict {
  /** Resistance over the lowest similar one. */
  readonly ratio: number;
  /** The lowest similar resistance (Ω). */
  readonly lowest: Ohms;
  /** The three-way judgement on the ratio. */
  readonly judgement: Judgement;
  /** What the verdict asks for. */
  readonly action: string;
  /** Source of the rule. */
  readonly basis: Basis;
  /** To whom the verdict defers. */
  readonly deferral: string;
}

const ACTIONS = {
  within: "no action by this rule",
  outside: "open, clean or renew, remake",
  undecided: "measure again with a finer meter or more current",
} as const;

/**
 * Judges a joint by its ratio to the lowest similar joint, by a named rule.
 *
 * Similar means same bar, same hardware, same probe points, same current or resistance. The ratio's half-width is the
 * worst case of both half-widths. The named rule `50-percent-above-lowest` asks to investigate values more than 50 %
 * above the lowest similar joint. Limits against an equal length of bar exist in other standards; give yours through
 * a rule of your own with its source.
 * @param input.resistance - resistance of the joint (Ω), 0 or more
 * @param input.halfWidth - half-width of that (Ω), 0 or more; `measuredJoint` gives it
 * @param input.similar - resistances of the similar joints (Ω), at least one, each more than 0
 * @param input.similarHalfWidth - half-width of the lowest of them (Ω), 0 or more
 * @param input.rule - named rule, or your own with name, limit (1 or more) and source
 * @returns ratio, judgement, action, basis, deferral
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`; `not-identifiable` when a
 *   similar joint reads 0 Ω: nothing is a multiple of it
 * @source ANSI/NETA ATS, bolted connections: investigate values more than 50 percent above the lowest similar one (as
 *   quoted)
 * @example
 * ```ts
 * const { ratio, judgement, action } = judgeJoint({
 *   resistance: microohms(286.604), halfWidth: microohms(9),
 *   similar: [microohms(60.7477), microohms(64)], similarHalfWidth: microohms(3),
 *   rule: "50-percent-above-lowest",
 * });
 * [ratio, judgement.verdict, action] // => [4.71794, "outside", "open, clean or renew, remake"]
 * ```
 * @since 0.1.0
 */
export function judgeJoint(input: {
  readonly resistance: Ohms;
  readonly halfWidth: Ohms;
  readonly similar: readonly Ohms[];
  readonly similarHalfWidth: Ohms;
  readonly rule: JointRatioRule;
}): JointVerdict {
  given(input);
  const { resistance, halfWidth, similar, similarHalfWidth, rule } = input;
  checkMeasurableOrZero("resistance", resistance, "Ω");
  checkMeasurableOrZero("halfWidth", halfWidth, "Ω");
  checkMeasurableOrZero("similarHalfWidth", similarHalfWidth, "Ω");
  if (!Array.isArray(similar) || similar.length === 0) {
    fail({ code: "missing", path: "similar", expected: "at least one similar joint", received: undefined });
  }
  similar.forEach((one, i) => {
    checkMeasurableOrZero(`similar.${i}`, one, "Ω");
    if (one === 0) {
      fail({
        code: "not-identifiable",
        path: `similar.${i}`,
        expected:
          "a joint that can be told from 0 Ω: measure it with more current or a finer meter, or leave it out",
        received: one,
        unit: "Ω",
      });
    }
  });
  const own = typeof rule === "object" && rule !== null ? rule : undefined;
  const row = own === undefined ? rowNamed(ratioRules, "rule", rule as string) : undefined;
  const limit = row === undefined ? (own?.limit ?? Number.NaN) : cellNumber(row, 1, "rule");
  checkMeasurable("rule.limit", limit);
  if (compareQuoted({ left: limit, right: 1 }) < 0) {
    fail({ code: "out-of-range", path: "rule.limit", expected: "1 or more", received: limit });
  }
  if (own !== undefined) {
    checkText("rule.name", own.name);
    checkText("rule.source", own.source);
  }
  const name = own === undefined ? String(row?.[0]) : own.name;
  const lowest = Math.min(...similar);
  const ratio = resistance / lowest;
  const top =
    similarHalfWidth < lowest ? (resistance + halfWidth) / (lowest - similarHalfWidth) : Number.MAX_VALUE;
  const judgement = judge({ value: ratio, halfWidth: top - ratio, high: limit, rule: name });
  return {
    ratio,
    lowest: lowest as Ohms,
    judgement,
    action: ACTIONS[judgement.verdict],
    basis:
      own === undefined
        ? basisOf(ratioRules)
        : { source: own.source, edition: "as given", table: own.name, kind: "user table" },
    deferral: JOINT_DEFERRAL,
  };
}
