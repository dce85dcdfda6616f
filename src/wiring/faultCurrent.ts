/** Bolted short-circuit current at the end of a feeder, from the transformer's plate and the conductors' impedance. */
import {
  type Amperes,
  checkBetween,
  fail,
  given,
  type Meters,
  type Ohms,
  type OhmsPerMeter,
  type Volts,
  type Warning,
} from "../quantity/index.ts";
import { atMost, checkMeasured, checkMeasuredOrZero, parallelCount } from "./limit.ts";
import { DEFERRAL } from "./result.ts";

/**
 * Short-circuit current at a place of the feed.
 * @since 0.1.0
 */
export interface FaultCurrent {
  /** All three lines bolted together, symmetrical r.m.s. (A). */
  readonly threePhase: Amperes;
  /** Two lines bolted together (A): √3/2 of it, far from generators. */
  readonly lineToLine: Amperes;
  /** All three lines at the transformer's terminals (A). */
  readonly atTransformer: Amperes;
  /** Resistance of one line from the source to the fault (Ω). */
  readonly resistance: Ohms;
  /** Reactance of the same (Ω). */
  readonly reactance: Ohms;
  /** Who decides. */
  readonly deferral: string;
  /** What the reader must know before acting on it. */
  readonly cautions: readonly string[];
  /** Empty for a plate that looks like one of a supply transformer. */
  readonly warnings: readonly Warning[];
}

/** Shares of the network's impedance where only its fault level is known: R = 0.1·X, so that X = 0.995·Z. IEC 60909-0, from memory. */
const NETWORK_REACTANCE = 0.995;
const NETWORK_RESISTANCE = 0.0995;

/** A supply transformer below this is more likely a slip of kVA and VA. */
const SUSPICIOUS_RATING = 1000;

const CAUTIONS: readonly string[] = [
  "Symmetrical current of a bolted fault: the first peak is higher, the more so the less resistance there is. Motors that run feed the fault too, and are not in it.",
  "An arc draws less: neither for arc-flash energy nor for the smallest current that a device must still clear in time.",
  "Good for this transformer and this network: a larger one put in later raises it. The fault level is the network operator's to say.",
];

/** Resistance and reactance of one line, Ω. */
interface Impedance {
  readonly r: number;
  readonly x: number;
}

const plus = (one: Impedance, other: Impedance): Impedance => ({ r: one.r + other.r, x: one.x + other.x });

/** The transformer's: from the share of its rated voltage that drives its rated current through a short. */
function transformer(input: FaultSource): Impedance {
  const { transformerRating, transformerImpedance: share } = input;
  const { transformerResistance: lost = 0, impedanceFactor: factor = 1 } = input;
  const rated = input.transformerVoltage ?? input.lineVoltage;
  const base = (rated * rated) / transformerRating;
  return { r: factor * base * lost, x: factor * base * Math.sqrt((share - lost) * (share + lost)) };
}

/** The network's, referred to the secondary; none where it is taken as stiff. */
function network(input: FaultSource): Impedance {
  if (input.networkFaultPower === undefined) return { r: 0, x: 0 };
  const rated = input.transformerVoltage ?? input.lineVoltage;
  const z = (rated * rated) / input.networkFaultPower;
  return { r: NETWORK_RESISTANCE * z, x: NETWORK_REACTANCE * z };
}

/**
 * One three-phase transformer and the network before it.
 * @since 0.1.0
 */
export interface FaultSource {
  /** Nominal voltage of the secondary side, line to line (V), more than 0. */
  readonly lineVoltage: Volts;
  /** Apparent power of the transformer's plate (VA): 500 kVA is 500 000, more than 0. */
  readonly transformerRating: number;
  /** Impedance voltage of the plate as a ratio: 5 % is 0.05; 0.001 to 0.5. */
  readonly transformerImpedance: number;
  /** Resistive part of it as a ratio: loss at rated current over rating; 0 if left out, which gives the highest current at the end of a cable. */
  readonly transformerResistance?: number;
  /** Rated voltage of the secondary, line to line (V), where the plate has another than the nominal: 410 V on 400 V. */
  readonly transformerVoltage?: Volts;
  /** Factor on the transformer's impedance, 0.5 to 1.5: 0.9 for a tolerance of 10 %, or KT of IEC 60909-0; 1 if left out. */
  readonly impedanceFactor?: number;
  /** Three-phase fault level before the transformer (VA): √3 · primary voltage · fault current there, which IEC 60909-0 divides by 1.1; without limit if left out, the highest current. */
  readonly networkFaultPower?: number;
  /** Voltage factor c of IEC 60909-0, 0.8 to 1.2: 1.05 or 1.10 for the highest current, 0.95 or 0.90 for the least; 1 if left out. */
  readonly voltageFactor?: number;
}

/** Checks a source, and what its ratios allow of each other. */
function checkSource(input: FaultSource): void {
  const { transformerImpedance: share, transformerResistance: lost = 0 } = input;
  const { impedanceFactor = 1, voltageFactor = 1 } = input;
  checkMeasured("lineVoltage", input.lineVoltage, "V");
  checkMeasured("transformerRating", input.transformerRating, "VA");
  checkBetween("transformerImpedance", share, 0.001, 0.5);
  checkBetween("transformerResistance", lost, 0, 0.5);
  if (lost > share) {
    fail({
      code: "inconsistent",
      path: "transformerResistance",
      expected: `at most transformerImpedance, ${share}`,
      received: lost,
    });
  }
  if (input.transformerVoltage !== undefined)
    checkMeasured("transformerVoltage", input.transformerVoltage, "V");
  if (input.networkFaultPower !== undefined)
    checkMeasured("networkFaultPower", input.networkFaultPower, "VA");
  checkBetween("impedanceFactor", impedanceFactor, 0.5, 1.5);
  checkBetween("voltageFactor", voltageFactor, 0.8, 1.2);
}

/** A rating in kVA where VA are meant makes the fault a thousand times too small. */
function ratingWarnings(rating: number): readonly Warning[] {
  if (atMost(SUSPICIOUS_RATING, rating)) return [];
  const message = `${rating} VA is little for a supply transformer: check kVA against VA.`;
  return [{ code: "suspicious", path: "transformerRating", message }];
}

/**
 * Prospective short-circuit current at the end of a feeder: threePhase = voltageFactor·lineVoltage/(√3·√(R² + X²)), lineToLine = √3/2 of it. R and X are
 * those of network, transformer and conductors of one line, added up part by part.
 *
 * Transformer: impedance · rated voltage²/rating. Network: rated voltage²/fault power, a tenth as resistive as reactive. For the highest current
 * take conductors at 20 °C and leave out what is not known; for the least, hot ones and the lowest c. Without the conductors: at the transformer.
 * @param input - the source; fields at {@link FaultSource}
 * @param input.length - of the conductors, one way (m), 0 or more; 0 if left out
 * @param input.resistancePerLength - of one conductor (Ω/m), 0 or more, from {@link conductorResistancePerLength}; needed with a length
 * @param input.reactancePerLength - of one conductor (Ω/m), 0 or more; 0 if left out
 * @param input.conductorsPerLine - conductors in parallel that make one line; 1 if left out
 * @returns three-phase and line-to-line current (A), with the impedance of one line
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`; `inconsistent` for a resistance above the impedance
 * @source Ohm's law and symmetrical components; impedances as in IEC 60909-0 (from memory), without its correction factor KT unless it is given
 * @example
 * ```ts
 * const { threePhase, atTransformer } = faultCurrent({
 *   lineVoltage: volts(480), transformerRating: 500_000, transformerImpedance: 0.05, length: meters(30),
 *   resistancePerLength: ohmsPerThousandFeet(0.0515), reactancePerLength: ohmsPerThousandFeet(0.041), conductorsPerLine: 2,
 * });
 * [atTransformer, threePhase] // => [12028.131, 11003.452]
 * ```
 * @since 0.1.0
 */
export function faultCurrent(
  input: FaultSource & {
    readonly length?: Meters;
    readonly resistancePerLength?: OhmsPerMeter;
    readonly reactancePerLength?: OhmsPerMeter;
    readonly conductorsPerLine?: number;
  },
): FaultCurrent {
  given(input);
  checkSource(input);
  const { length = 0, resistancePerLength = 0, reactancePerLength = 0, voltageFactor = 1 } = input;
  checkMeasuredOrZero("length", length, "m");
  if (length > 0 && input.resistancePerLength === undefined) {
    fail({
      code: "missing",
      path: "resistancePerLength",
      expected: "that of one conductor, with a length",
      received: undefined,
      unit: "Ω/m",
    });
  }
  checkMeasuredOrZero("resistancePerLength", resistancePerLength, "Ω/m");
  checkMeasuredOrZero("reactancePerLength", reactancePerLength, "Ω/m");
  const share = length / parallelCount(input.conductorsPerLine);
  const source = plus(network(input), transformer(input));
  const whole = plus(source, { r: share * resistancePerLength, x: share * reactancePerLength });
  const voltage = (voltageFactor * input.lineVoltage) / Math.sqrt(3);
  // hypot keeps the digits where squares would leave float64.
  const current = ({ r, x }: Impedance): number => voltage / Math.hypot(r, x);
  const threePhase = current(whole);
  return {
    threePhase: threePhase as Amperes,
    lineToLine: ((Math.sqrt(3) / 2) * threePhase) as Amperes,
    atTransformer: current(source) as Amperes,
    resistance: whole.r as Ohms,
    reactance: whole.x as Ohms,
    deferral: DEFERRAL,
    cautions: CAUTIONS,
    warnings: ratingWarnings(input.transformerRating),
  };
}
