/** Will it burn again: thermal feedback of a joint and of the bar itself. */
import {
  type Amperes,
  checkBetween,
  checkMeasurable,
  checkMeasurableOrZero,
  given,
  type Kelvins,
  type KelvinsPerWatt,
  type OhmMeters,
  type Ohms,
  type PerKelvin,
  type Warning,
  type Watts,
} from "../quantity/index.ts";
import { hotWarnings, JOINT_DEFERRAL } from "./basis.ts";
import { checkFin, type FinBar } from "./fin.ts";

/** Temperature that a resistance belongs to where nothing else is said (°C): that of the tables. */
const REFERENCE = 20;

/**
 * Static heat balance of a joint with feedback.
 * @since 0.1.0
 */
export interface JointBalance {
  /** Loop gain: kelvins of extra rise per kelvin of rise. 1 or more means no steady state. */
  readonly loopGain: number;
  /** Steady excess over the temperature `resistance` belongs to (K); `null` when there is none. */
  readonly rise: Kelvins | null;
  /** The rise if the thermal resistance is as low as its uncertainty allows (K); `null` when there is none even then. */
  readonly riseLow: Kelvins | null;
  /** The rise if it is as high as that allows (K); `null` when there is none: the joint may run away. */
  readonly riseHigh: Kelvins | null;
  /** Heat made at that rise (W); `null` when there is none. */
  readonly power: Watts | null;
  /** Current at which the loop gain is 1 (A); `null` when the resistance does not grow with temperature. */
  readonly runawayCurrent: Amperes | null;
  /** Runaway current over current, less 1; `null` without a runaway current. */
  readonly margin: number | null;
  /** To whom the verdict defers. */
  readonly deferral: string;
  /** What the reader must know. */
  readonly warnings: readonly Warning[];
}

/**
 * Steady rise of a joint whose resistance grows with its temperature, and how far it is from having none.
 *
 * g = current²·resistance·coefficient·thermalResistance; rise = current²·resistance·thermalResistance/(1 − g). Static
 * and elastic: a contact that oxidizes or loses force has an ageing rate, not a temperature coefficient, and runs
 * away at lower gain. `thermalResistance` is known to ±30 % at best: where the band of it reaches a gain of 1 a
 * warning says that the steady state is not certain, and another where the rise on top of 20 °C passes 105 or 150 °C.
 * The resistance is measured or back-calculated,
 * never predicted from torque.
 * @param input.current - r.m.s. current (A), more than 0
 * @param input.resistance - joint resistance at the reference temperature (Ω), more than 0
 * @param input.coefficient - relative growth of it per kelvin (1/K), 0 or more; copper 0.00393
 * @param input.thermalResistance - thermal resistance of the joint (K/W), more than 0
 * @param input.uncertainty - relative uncertainty of the thermal resistance, 0 to 0.9; 0.3 if left out, less only
 *   where it was measured
 * @returns loop gain, rise with its band, heat, runaway current, margin, deferral, warnings
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source linear thermal feedback, derived
 * @example
 * ```ts
 * const { loopGain, rise } = jointBalance({
 *   current: amperes(60), resistance: milliohms(1), coefficient: perKelvin(0.00393), thermalResistance: kelvinsPerWatt(15),
 * });
 * [loopGain, rise] // => [0.21222, 68.54706]
 * ```
 * @since 0.1.0
 */
export function jointBalance(input: {
  readonly current: Amperes;
  readonly resistance: Ohms;
  readonly coefficient: PerKelvin;
  readonly thermalResistance: KelvinsPerWatt;
  readonly uncertainty?: number;
}): JointBalance {
  given(input);
  const { current, resistance, coefficient, thermalResistance, uncertainty = 0.3 } = input;
  checkMeasurable("current", current, "A");
  checkMeasurable("resistance", resistance, "Ω");
  checkMeasurableOrZero("coefficient", coefficient, "1/K");
  checkMeasurable("thermalResistance", thermalResistance, "K/W");
  checkBetween("uncertainty", uncertainty, 0, 0.9);
  const bare = current * current * resistance * thermalResistance;
  const loopGain = bare * coefficient;
  const riseAt = (share: number): Kelvins | null =>
    loopGain * share < 1 ? (((share * bare) / (1 - loopGain * share)) as Kelvins) : null;
  const [riseLow, rise, riseHigh] = [riseAt(1 - uncertainty), riseAt(1), riseAt(1 + uncertainty)];
  const runawayCurrent = coefficient > 0 ? 1 / Math.sqrt(resistance * coefficient * thermalResistance) : null;
  const warnings: Warning[] = [];
  if (riseHigh === null) {
    warnings.push({
      code: "caution",
      path: "loopGain",
      message:
        rise === null
          ? "No steady state: the joint heats until something gives way. Take it out of service."
          : "The steady state is not certain: within the uncertainty of the thermal resistance the loop gain reaches 1 and the joint may run away. Do not rely on the rise; take it out of service or measure.",
      limit: 1,
      unit: "1",
    });
  }
  for (const one of hotWarnings("rise", REFERENCE + (rise ?? 0))) {
    const limit = (one.limit as number) - REFERENCE;
    warnings.push({ ...one, message: `On top of ${REFERENCE} °C. ${one.message}`, limit, unit: "K" });
  }
  return {
    loopGain,
    rise,
    riseLow,
    riseHigh,
    power: (rise === null ? null : rise / thermalResistance) as Watts | null,
    runawayCurrent: runawayCurrent as Amperes | null,
    margin: runawayCurrent === null ? null : runawayCurrent / current - 1,
    deferral: JOINT_DEFERRAL,
    warnings,
  };
}

/**
 * Current at which a long even bar has no steady state, by its own temperature coefficient:
 * I = √(h·P·section/(resistivity20·coefficient20)).
 *
 * Film coefficient taken constant: natural convection and radiation grow with temperature and help, so this is the
 * cautious side. Resistivity at the temperature where the coefficient belongs, 20 °C.
 * @param input.bar - section, perimeter, conductivity, film coefficient
 * @param input.resistivity20 - resistivity at 20 °C (Ω·m), more than 0
 * @param input.coefficient20 - temperature coefficient at 20 °C (1/K), more than 0
 * @returns critical current (A)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source linear electrothermal fin, derived
 * @example
 * ```ts
 * const bar = {
 *   section: squareMillimeters(75), perimeter: millimeters(56),
 *   conductivity: wattsPerMeterKelvin(390), filmCoefficient: wattsPerSquareMeterKelvin(10),
 * };
 * barCriticalCurrent({ bar, resistivity20: ohmMeters(1.7241e-8), coefficient20: perKelvin(0.00393) }) // => 787.312
 * ```
 * @since 0.1.0
 */
export function barCriticalCurrent(input: {
  readonly bar: FinBar;
  readonly resistivity20: OhmMeters;
  readonly coefficient20: PerKelvin;
}): Amperes {
  given(input);
  const { bar, resistivity20, coefficient20 } = input;
  checkFin(bar, "bar.");
  checkMeasurable("resistivity20", resistivity20, "Ω·m");
  checkMeasurable("coefficient20", coefficient20, "1/K");
  return Math.sqrt(
    (bar.filmCoefficient * bar.perimeter * bar.section) / (resistivity20 * coefficient20),
  ) as Amperes;
}
