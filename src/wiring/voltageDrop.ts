/** Voltage lost in the supply conductors. */
import {
  type Amperes,
  checkBetween,
  checkOneOf,
  given,
  type Meters,
  type OhmsPerMeter,
  type Volts,
  type Warning,
} from "../quantity/index.ts";
import { atMost, checkMeasured, checkMeasuredOrZero, parallelCount } from "./limit.ts";
import { DEFERRAL } from "./result.ts";

/**
 * Voltage drop of a circuit.
 * @since 0.1.0
 */
export interface VoltageDrop {
  /** Drop between the conductors at the far end (V): of the pair, or from line to line. */
  readonly drop: Volts;
  /** Drop over the supply voltage, as a ratio. */
  readonly ratio: number;
  /** Voltage left at the load (V). */
  readonly loadVoltage: Volts;
  /** Power of a resistance heater at that voltage over its power without drop, constant resistance, as a ratio. */
  readonly powerRatio: number;
  /** Who decides. */
  readonly deferral: string;
  /** What the reader must know before acting on it. */
  readonly cautions: readonly string[];
  /** Empty within the advised 3 % of a branch circuit. */
  readonly warnings: readonly Warning[];
}

const ADVISED_RATIO = 0.03;
const CAUTION =
  "A drop within the advice says nothing of ampacity or protection: the conductor is chosen for these first.";

/**
 * Voltage drop of a circuit: two-wire drop = 2·I·L·(r·cos φ + x·sin φ)/conductorsPerLine, three-phase √3 for 2, line to line.
 *
 * For resistance heating cos φ is 1 and the reactance does not count. The current is taken as given, not as lowered by the drop
 * itself. The 3 % it warns at is advice to the designer of a branch circuit, not a rule.
 * @param input.circuit - "two-wire" or "three-phase"
 * @param input.current - current of a line (A), 0 or more
 * @param input.length - one way (m), 0 or more
 * @param input.resistancePerLength - of one conductor at its temperature (Ω/m), 0 or more, from {@link conductorResistancePerLength}
 * @param input.reactancePerLength - of one conductor (Ω/m), 0 or more; 0 if left out
 * @param input.powerFactor - cos φ of the load, lagging, as a ratio, 0 to 1; 1 if left out
 * @param input.conductorsPerLine - conductors in parallel that make one line, all alike: each carries its share; 1 if left out
 * @param input.supplyVoltage - between the two wires, or line to line (V), more than 0
 * @returns drop (V), its ratio, the voltage left, and what it does to the heater's power
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, also where the drop would exceed the supply
 * @source Ohm's law; approximate form with reactance: UFC 3-520-01, B-2; advice of 3 %: NFPA 70, informational note to 210.19
 * @example
 * ```ts
 * voltageDrop({
 *   circuit: "three-phase", current: amperes(72.169), length: feet(150), resistancePerLength: ohmsPerThousandFeet(0.308), supplyVoltage: volts(480),
 * }).drop.toFixed(3) // => "5.775"
 * ```
 * @since 0.1.0
 */
export function voltageDrop(input: {
  readonly circuit: "two-wire" | "three-phase";
  readonly current: Amperes;
  readonly length: Meters;
  readonly resistancePerLength: OhmsPerMeter;
  readonly reactancePerLength?: OhmsPerMeter;
  readonly powerFactor?: number;
  readonly conductorsPerLine?: number;
  readonly supplyVoltage: Volts;
}): VoltageDrop {
  given(input);
  const { current, length, resistancePerLength, supplyVoltage } = input;
  const circuit = checkOneOf("circuit", input.circuit, ["two-wire", "three-phase"]);
  const reactance = input.reactancePerLength ?? 0;
  const cosine = input.powerFactor ?? 1;
  const count = parallelCount(input.conductorsPerLine);
  checkMeasuredOrZero("current", current, "A");
  checkMeasuredOrZero("length", length, "m");
  checkMeasuredOrZero("resistancePerLength", resistancePerLength, "Ω/m");
  checkMeasuredOrZero("reactancePerLength", reactance, "Ω/m");
  checkBetween("powerFactor", cosine, 0, 1);
  checkMeasured("supplyVoltage", supplyVoltage, "V");
  const impedance = resistancePerLength * cosine + reactance * Math.sqrt(1 - cosine * cosine);
  const drop = (circuit === "two-wire" ? 2 : Math.sqrt(3)) * (current / count) * length * impedance;
  const ratio = drop / supplyVoltage;
  checkBetween("drop", drop, 0, supplyVoltage, "V");
  return {
    drop: drop as Volts,
    ratio,
    loadVoltage: (supplyVoltage - drop) as Volts,
    powerRatio: (1 - ratio) ** 2,
    deferral: DEFERRAL,
    cautions: [CAUTION],
    warnings: atMost(ratio, ADVISED_RATIO)
      ? []
      : [
          {
            code: "caution",
            path: "ratio",
            message: "More than the 3 % advised for a branch circuit; advice, not a rule.",
            limit: ADVISED_RATIO,
            unit: "1",
            source: "nfpa-70",
          },
        ],
  };
}
