/** From hot to cold and back: the temperature factor Ct, the ohm reading to expect, and the first second. */
import {
  type Amperes,
  type BranchVolts,
  type ColdOhms,
  checkPositive,
  fail,
  finiteResult,
  given,
  type HotOhms,
  type Watts,
} from "../quantity/index.ts";
import { checkTolerances } from "./domain.ts";

/**
 * Resistance at working temperature: R_hot = coldResistance·temperatureFactor.
 * @param input.coldResistance - resistance at 20 °C, by ohmmeter with the lead resistance taken off, Ω, more than 0
 * @param input.temperatureFactor - Ct, resistance at working temperature over resistance at 20 °C, from the dataset
 *   of the alloy, more than 0; not unique to an alloy name: sources for NiCr 80/20 differ by 5 %
 * @returns resistance at working temperature, Ω
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition of the temperature factor
 * @example
 * ```ts
 * hotResistance({ coldResistance: ohms(12.3273), temperatureFactor: 1.047 }) // => 12.9067
 * ```
 * @since 0.1.0
 */
export function hotResistance(input: {
  readonly coldResistance: ColdOhms;
  readonly temperatureFactor: number;
}): HotOhms {
  given(input);
  checkPositive("coldResistance", input.coldResistance, "Ω");
  checkPositive("temperatureFactor", input.temperatureFactor);
  return finiteResult(input.coldResistance * input.temperatureFactor, "Ω");
}

/**
 * What a disconnected element should read at 20 °C: R20 = hotResistance/temperatureFactor.
 * @param input.hotResistance - resistance at working temperature, as voltage²/power, Ω, more than 0
 * @param input.temperatureFactor - Ct at the working temperature, from the dataset of the alloy, more than 0
 * @returns resistance at 20 °C, Ω
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition of the temperature factor
 * @example
 * ```ts
 * coldResistance({ hotResistance: ohms(12.9067), temperatureFactor: 1.047 }) // => 12.3273
 * ```
 * @since 0.1.0
 */
export function coldResistance(input: {
  readonly hotResistance: HotOhms;
  readonly temperatureFactor: number;
}): ColdOhms {
  given(input);
  checkPositive("hotResistance", input.hotResistance, "Ω");
  checkPositive("temperatureFactor", input.temperatureFactor);
  return finiteResult(input.hotResistance / input.temperatureFactor, "Ω");
}

/**
 * What an ohmmeter may show on a sound, cold element.
 * @since 0.1.0
 */
export interface ColdTarget {
  /** Resistance at the rating, Ω. */
  readonly hotResistance: HotOhms;
  /** Reading to expect at 20 °C with the first temperature factor, Ω. */
  readonly coldResistance: ColdOhms;
  /** Lowest sound reading over all factors and the tolerance, Ω. */
  readonly low: ColdOhms;
  /** Highest sound reading, Ω. */
  readonly high: ColdOhms;
}

/**
 * Band of ohms that a sound element of a known rating shows at 20 °C: R20 = voltage²/(power·Ct).
 *
 * The band takes the worst of all `temperatureFactors` together with the tolerance; it is wider than the change from
 * cold to hot, so one reading inside it proves little. Compare the branches with each other: that is far sharper.
 * @param input.power - rated power of the element, from the nameplate, W, more than 0
 * @param input.voltage - voltage across the element at that power (in star the line voltage over √3), V, more than 0
 * @param input.temperatureFactors - Ct at working temperature by each dataset considered, the preferred first, more than 0
 * @param input.upperTolerance - how far the resistance may lie above nominal, ratio 0 to 1
 * @param input.lowerTolerance - how far it may lie below nominal, ratio 0 to less than 1
 * @returns hot and cold resistance, and the lowest and highest sound reading
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source R20 = V²/(P·Ct), from the definitions; the tolerance is the caller's, see `tubularElementTolerance`
 * @example
 * ```ts
 * coldTarget({
 *   power: watts(4000),
 *   voltage: volts(230),
 *   temperatureFactors: [1.04, 1.008],
 *   upperTolerance: 0.1,
 *   lowerTolerance: 0.05,
 * }) // => { hotResistance: 13.225, coldResistance: 12.716, low: 12.081, high: 14.432 }
 * ```
 * @since 0.1.0
 */
export function coldTarget(input: {
  readonly power: Watts;
  readonly voltage: BranchVolts;
  readonly temperatureFactors: readonly number[];
  readonly upperTolerance: number;
  readonly lowerTolerance: number;
}): ColdTarget {
  given(input);
  const { power, voltage, temperatureFactors } = input;
  checkPositive("power", power, "W");
  checkPositive("voltage", voltage, "V");
  checkTolerances(input);
  if (!Array.isArray(temperatureFactors) || temperatureFactors.length === 0) {
    fail({
      code: "missing",
      path: "temperatureFactors",
      expected: "at least one temperature factor",
      received: undefined,
    });
  }
  for (const [at, factor] of temperatureFactors.entries()) {
    checkPositive(`temperatureFactors.${at}`, factor);
  }
  const hot = finiteResult<HotOhms>((voltage / power) * voltage, "Ω");
  const smallest = Math.min(...temperatureFactors);
  const largest = Math.max(...temperatureFactors);
  return {
    hotResistance: hot,
    coldResistance: finiteResult(hot / (temperatureFactors[0] as number), "Ω"),
    low: finiteResult((hot / largest) * (1 - input.lowerTolerance), "Ω"),
    high: finiteResult((hot / smallest) * (1 + input.upperTolerance), "Ω"),
  };
}

/**
 * What an element draws in the first seconds, before it is hot.
 * @since 0.1.0
 */
export interface ColdStart {
  /** Power from cold, W. */
  readonly power: Watts;
  /** Power from cold over running power. */
  readonly powerRatio: number;
  /** Whether cold and running power differ by more than the threshold of the source. */
  readonly appreciablePositiveCoefficient: boolean;
  /** The threshold and whose it is. */
  readonly threshold: {
    /** The ratio. */
    readonly ratio: number;
    /** Source id. */
    readonly source: string;
    /** Place in the source. */
    readonly locator: string;
  };
}

/** Cold power over running power, less one, above which an element counts as having an appreciable coefficient. */
const APPRECIABLE = 0.25;

/**
 * Power in the first second from cold: P_cold = power·temperatureFactor, at the same voltage.
 * @param input.power - running power, W, more than 0
 * @param input.temperatureFactor - Ct at working temperature, from the dataset of the alloy, more than 0
 * @returns cold power, its ratio, and whether the element counts as one of appreciable positive coefficient
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source R20 = R/Ct at equal voltage; threshold: IEC 60335-1, 5.12 note, seen as a quotation
 * @example
 * ```ts
 * coldStart({ power: watts(45_000), temperatureFactor: 1.047 })
 * // => { power: 47115, powerRatio: 1.047, appreciablePositiveCoefficient: false, … }
 * ```
 * @since 0.1.0
 */
export function coldStart(input: { readonly power: Watts; readonly temperatureFactor: number }): ColdStart {
  given(input);
  checkPositive("power", input.power, "W");
  checkPositive("temperatureFactor", input.temperatureFactor);
  return {
    power: finiteResult(input.power * input.temperatureFactor, "W"),
    powerRatio: input.temperatureFactor,
    appreciablePositiveCoefficient: input.temperatureFactor - 1 > APPRECIABLE,
    threshold: { ratio: APPRECIABLE, source: "iec-60335-1", locator: "5.12 note" },
  };
}

/**
 * Current in the first second from cold: I_cold = current·temperatureFactor, for an element or a whole module of one alloy.
 *
 * A clamp reading taken in the first minute is high by this ratio: log it as cold.
 * @param input.current - running RMS current, A, more than 0
 * @param input.temperatureFactor - Ct at working temperature, from the dataset of the alloy, more than 0
 * @returns RMS current from cold, A
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source R20 = R/Ct at equal voltage; definition
 * @example
 * ```ts
 * coldInrushCurrent({ current: amperes(59.0472), temperatureFactor: 1.047 }) // => 61.8224
 * ```
 * @since 0.1.0
 */
export function coldInrushCurrent(input: {
  readonly current: Amperes;
  readonly temperatureFactor: number;
}): Amperes {
  given(input);
  checkPositive("current", input.current, "A");
  checkPositive("temperatureFactor", input.temperatureFactor);
  return finiteResult(input.current * input.temperatureFactor, "A");
}
