/** A joint from what was measured across it: resistance, watts, and the length of bar it equals. */
import {
  type Amperes,
  checkMeasurable,
  checkMeasurableOrZero,
  checkMeasurableSigned,
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
  /** What both readings of a reversed direct current have in common (V): thermal EMF and offset of the meter; `null` without the second. */
  readonly thermalEmf: Volts | null;
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

/** A reading without its sign would be taken for an EMF and leave next to no joint. */
function checkReversed(reversedDrop: Volts): void {
  checkMeasurableSigned("reversedDrop", reversedDrop, "V");
  if (!(reversedDrop <= 0)) {
    fail({
      code: "out-of-range",
      path: "reversedDrop",
      expected:
        "0 or less, as the meter shows it with the current reversed and the probes left where they are, in V",
      received: reversedDrop,
      unit: "V",
    });
  }
}

/**
 * Joint resistance and heat from a millivolt reading: R = drop/current − barResistance, P = current² × R.
 *
 * The bar between the probes counts: give its resistance (as `barResistance` gives it for the distance between the
 * probe points, at the bar's temperature), or 0 if the probes stand at the very edges of the overlap. Left out, the
 * result is the joint with its bar and a warning says so. On direct current a warm joint adds its thermal EMF
 * to the drop: reverse the current, read again and give both, and V = (drop − reversedDrop)/2. Swapping the probes instead turns drop and EMF
 * over together and takes out only the offset of the meter. On alternating current keep the probe leads together (loop pickup). A negative remainder larger than
 * the readings explain is an error, not a zero. This measures a joint; nothing here predicts the resistance of a
 * burnt one.
 * @param input.drop - r.m.s. voltage across the joint, by millivoltmeter at fixed probe points (V), 0 or more
 * @param input.current - r.m.s. current at the same moment, by clamp meter (A), more than 0
 * @param input.reversedDrop - direct current only: the drop with the same current reversed, probes left where they are, with the sign that
 *   the meter shows (V), 0 or less; one that stays above 0 is mostly EMF: more current, or a cold joint
 * @param input.barResistance - resistance of the bar and lug between the probes (Ω), 0 or more
 * @param input.dropHalfWidth - half-width of the drop reading (V), 0 or more
 * @param input.currentHalfWidth - half-width of the current reading (A), 0 or more, less than the current
 * @returns resistance, its half-width (worst case of the readings), heat, thermal EMF, warnings
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`; `inconsistent` when the bar alone would drop
 *   more than was read
 * @source Ohm's law, definition; the mean of both directions of the current, common practice of low-resistance measurement
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
  readonly reversedDrop?: Volts;
  readonly barResistance?: Ohms;
  readonly dropHalfWidth: Volts;
  readonly currentHalfWidth: Amperes;
}): MeasuredJoint {
  given(input);
  const { current, reversedDrop, barResistance = 0, dropHalfWidth, currentHalfWidth } = input;
  checkMeasurableOrZero("drop", input.drop, "V");
  checkMeasurable("current", current, "A");
  if (reversedDrop !== undefined) checkReversed(reversedDrop);
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
  const drop = reversedDrop === undefined ? input.drop : (input.drop - reversedDrop) / 2;
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
    thermalEmf: reversedDrop === undefined ? null : (((input.drop + reversedDrop) / 2) as Volts),
    warnings,
  };
}

/**
 * Length of bar that has the resistance of the joint: length = resistance × section/resistivity.
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
