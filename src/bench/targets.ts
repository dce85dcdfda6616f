/** What a healthy module should read and draw, from its nameplate. */
import {
  branchCurrent,
  branchResistance,
  branchVoltage,
  type Connection,
  healthyLineToLineResistance,
  lineCurrent,
} from "../circuit/index.ts";
import {
  type Amperes,
  type BranchVolts,
  type ColdOhms,
  checkBetween,
  checkWhole,
  given,
  type HotOhms,
  type LineAmperes,
  type LineVolts,
  onlyFields,
  type Warning,
  type Watts,
} from "../quantity/index.ts";

/**
 * Targets for a module of equal banks. Cold values are `null` when no temperature factor was given.
 * @since 0.1.0
 */
export interface NameplateTargets {
  /** Line current of the module at rated voltage, A. */
  readonly lineCurrent: LineAmperes;
  /** Line current of one bank, A. */
  readonly bankLineCurrent: LineAmperes;
  /** Voltage across a branch, V. */
  readonly branchVoltage: BranchVolts;
  /** Current in a branch, A. */
  readonly branchCurrent: Amperes;
  /** Resistance of a branch at working temperature, Ω. */
  readonly branchResistanceHot: HotOhms;
  /** Resistance of a branch at 20 °C, Ω. */
  readonly branchResistanceCold: ColdOhms | null;
  /** Resistance of one element at working temperature, Ω. */
  readonly elementResistanceHot: HotOhms;
  /** Resistance of one element at 20 °C, Ω: what a disconnected element should read. */
  readonly elementResistanceCold: ColdOhms | null;
  /** Power of one element, W. */
  readonly elementPower: Watts;
  /** Reading between two lines with all links in, hot, Ω; the same for star and delta. */
  readonly lineToLineHot: HotOhms;
  /** The same at 20 °C, Ω. */
  readonly lineToLineCold: ColdOhms | null;
  /** Line current in the first second from cold at rated voltage, A. */
  readonly coldLineCurrent: LineAmperes | null;
  /** What is suspicious or assumed. */
  readonly warnings: readonly Warning[];
}

/** A three-phase heating module below this power, or above the other, is more likely a slip of the unit. */
const PLAUSIBLE = { low: 300, high: 5e6 } as const;

/** Voltages to neutral that no three-phase system has between lines, and the lines they belong to (ANSI C84.1: 208Y/120, 480Y/277, 600Y/347). */
const TO_NEUTRAL = [
  [120, 208],
  [277, 480],
  [347, 600],
] as const;
/** Plates round by less. */
const ROUNDED = 0.01;

const FIELDS = [
  "power",
  "lineVoltage",
  "connection",
  "banks",
  "elementsInParallel",
  "elementsInSeries",
  "temperatureFactor",
];

/**
 * Targets from the nameplate for a module of n equal banks, all star or all delta.
 *
 * Bank power P/n; branch R = V²/P_bank (star) or 3·V²/P_bank (delta); an element of p parallel strings of s in series is
 * R·p/s. Cold values are the hot ones over the temperature factor: comparing a cold reading with the hot target calls a sound
 * element a few per cent low.
 * @param input.power - plate power of the whole module, W, more than 0
 * @param input.lineVoltage - plate voltage between lines, V, more than 0
 * @param input.connection - star or delta
 * @param input.banks - number of equal banks in parallel, whole, 1 to 10000
 * @param input.elementsInParallel - parallel strings in each branch, whole, 1 to 10000; 1 if left out
 * @param input.elementsInSeries - elements in each string, whole, 1 to 10000; 1 if left out
 * @param input.temperatureFactor - hot over cold resistance of the alloy at working temperature, 0.5 to 10; cold values are
 *   `null` without it
 * @returns the targets
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`
 * @source P = 3·V_branch²/R; definitions of star and delta connection; plausible range of power: common practice, no
 *   published source; voltages to neutral: ANSI C84.1, 208Y/120, 480Y/277, 600Y/347
 * @example
 * ```ts
 * const targets = nameplateTargets({
 *   power: kilowatts(45), lineVoltage: volts(440), connection: "delta", banks: 1, temperatureFactor: 1.047,
 * });
 * [targets.elementResistanceHot, targets.elementResistanceCold] // => [12.9067, 12.3273]
 * ```
 * @since 0.1.0
 */
export function nameplateTargets(input: {
  readonly power: Watts;
  readonly lineVoltage: LineVolts;
  readonly connection: Connection;
  readonly banks: number;
  readonly elementsInParallel?: number;
  readonly elementsInSeries?: number;
  readonly temperatureFactor?: number;
}): NameplateTargets {
  onlyFields(given(input), FIELDS);
  const { power, lineVoltage, connection, banks, temperatureFactor } = input;
  const { elementsInParallel: parallel = 1, elementsInSeries: series = 1 } = input;
  const plate = lineCurrent({ power, lineVoltage });
  checkWhole("banks", banks, 1, 10_000);
  checkWhole("elementsInParallel", parallel, 1, 10_000);
  checkWhole("elementsInSeries", series, 1, 10_000);
  if (temperatureFactor !== undefined) checkBetween("temperatureFactor", temperatureFactor, 0.5, 10);
  const bankPower = (power / banks) as Watts;
  const bankLineCurrent = (plate / banks) as LineAmperes;
  const branchHot = branchResistance({ connection, power: bankPower, lineVoltage });
  const elementHot = (branchHot * parallel) / series;
  const lineToLineHot = healthyLineToLineResistance({ power, lineVoltage });
  const cold = (hot: number): ColdOhms | null =>
    temperatureFactor === undefined ? null : ((hot / temperatureFactor) as ColdOhms);
  return {
    lineCurrent: plate,
    bankLineCurrent,
    branchVoltage: branchVoltage({ connection, lineVoltage }),
    branchCurrent: branchCurrent({ connection, lineCurrent: bankLineCurrent }),
    branchResistanceHot: branchHot as number as HotOhms,
    branchResistanceCold: cold(branchHot),
    elementResistanceHot: elementHot as HotOhms,
    elementResistanceCold: cold(elementHot),
    elementPower: (bankPower / 3 / (parallel * series)) as Watts,
    lineToLineHot: lineToLineHot as number as HotOhms,
    lineToLineCold: cold(lineToLineHot),
    coldLineCurrent: temperatureFactor === undefined ? null : ((plate * temperatureFactor) as LineAmperes),
    warnings: [...plausibility(power), ...toNeutral(lineVoltage)],
  };
}

function toNeutral(lineVoltage: number): readonly Warning[] {
  const found = TO_NEUTRAL.find(([neutral]) => Math.abs(lineVoltage / neutral - 1) <= ROUNDED);
  if (found === undefined) return [];
  const [limit, lines] = found;
  return [
    {
      code: "suspicious",
      path: "lineVoltage",
      message: `${lineVoltage} V is what a supply of ${lines} V has to neutral; was the voltage of one branch typed where that between lines is taken?`,
      limit,
      unit: "V",
      source: "ansi-c84-1",
    },
  ];
}

function plausibility(power: number): readonly Warning[] {
  const { low, high } = PLAUSIBLE;
  if (power >= low && power <= high) return [];
  const [limit, hint] =
    power < low
      ? [low, "were kilowatts typed where watts are taken?"]
      : [high, "were watts typed as kilowatts?"];
  return [
    {
      code: "suspicious",
      path: "power",
      message: `${power} W is an unusual power for a three-phase heating module; ${hint}`,
      limit,
      unit: "W",
      source: "common practice",
    },
  ];
}
