/** Least section of a conductor that survives a short circuit until its device has cleared it. */
import {
  type Amperes,
  type Celsius,
  checkBetween,
  checkOneOf,
  fail,
  given,
  type Seconds,
  type SquareMeters,
  squareMillimeters,
  type Warning,
} from "../quantity/index.ts";
import { atMost, checkMeasured } from "./limit.ts";
import { DEFERRAL } from "./result.ts";

/**
 * Section for a short circuit.
 * @since 0.1.0
 */
export interface ShortCircuitSection {
  /** Least section (m²); the next standard size up is `metricSizeFromArea` or `awgFromArea`. */
  readonly section: SquareMeters;
  /** The factor k that it was found with (A·√s/mm²), as the tables print it. */
  readonly factor: number;
  /** Who decides. */
  readonly deferral: string;
  /** What the reader must know before acting on it. */
  readonly cautions: readonly string[];
  /** Empty for a time that the method is made for. */
  readonly warnings: readonly Warning[];
}

/**
 * What each metal stores: K = √(Qc·(β + 20)/ρ20) in A·√s/mm², and β, the temperature below zero at which its resistance would vanish (°C).
 * From memory, as rounded in the standard; a test holds them against the heating itself.
 */
const METALS = {
  copper: { capacity: 226, zero: 234.5 },
  aluminum: { capacity: 148, zero: 228 },
} as const;

/** Between these the law of resistance holds well enough, and no insulation is heated further in a fault, °C. */
const COLDEST = -60;
const HOTTEST = 500;
/** Times that the method is made for, s. */
const SHORTEST = 0.1;
const LONGEST = 5;

const CAUTIONS: readonly string[] = [
  "Says only that the conductor outlasts the fault: that the device breaks the largest fault current, and clears the smallest in this time, is a test of its own.",
  "Take the fault current where the conductor begins, and the time from the device's curve at that current: from the network operator and the maker, never guessed.",
];

/** Below a tenth of a second and beyond five the method is another. */
function timeWarnings(time: number): readonly Warning[] {
  const short = !atMost(SHORTEST, time);
  if (!short && atMost(time, LONGEST)) return [];
  return [
    {
      code: "outside-validity",
      path: "time",
      message: short
        ? "Below 0.1 s the first half cycle is unlike the rest and a limiting device lets less through: compare its printed I²t with (factor × section)²."
        : "Beyond 5 s heat leaves the conductor: the section is larger than needed, and an overload rule may apply instead.",
      limit: short ? SHORTEST : LONGEST,
      unit: "s",
      source: "iec-60364-4-43",
    },
  ];
}

/**
 * Least section that takes a short-circuit current for a time, all heat kept in the metal: S = current·√time/k, where
 * k = K·√ln[(β + finalTemperature)/(β + initialTemperature)].
 *
 * Temperatures by insulation: PVC 70 to 160 °C (140 °C above 300 mm²), XLPE and EPR 90 to 250 °C; a cable of 90 °C PVC 90 to 160 °C. The
 * maker's limit comes first, also for high-temperature wire. Of conductors in parallel it is the section of each: a fault in one of them is
 * fed through it alone, so that the current is not shared out. The same formula serves a protective conductor, with its own initial
 * temperature. Not for the bars of a switchboard, whose forces count as well.
 * @param input.current - r.m.s. short-circuit current (A), more than 0
 * @param input.time - until the device has cleared it (s), more than 0; made for 0.1 to 5 s
 * @param input.material - "copper" or "aluminum"
 * @param input.initialTemperature - of the conductor when the fault begins: the highest in service (°C), −60 to 500
 * @param input.finalTemperature - that the insulation stands once (°C), above the initial, to 500
 * @returns least section (m²) and factor k
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`
 * @source IEC 60364-4-43, 434.5.2, and IEC 60364-5-54, annex A; from memory, checked against the heating computed step by step
 * @example
 * ```ts
 * const { section, factor } = shortCircuitSection({
 *   current: kiloamperes(6), time: seconds(0.1), material: "copper", initialTemperature: celsius(70), finalTemperature: celsius(160),
 * });
 * [toSquareMillimeters(section), factor] // => [16.498197, 115.00448]
 * ```
 * @since 0.1.0
 */
export function shortCircuitSection(input: {
  readonly current: Amperes;
  readonly time: Seconds;
  readonly material: "copper" | "aluminum";
  readonly initialTemperature: Celsius;
  readonly finalTemperature: Celsius;
}): ShortCircuitSection {
  given(input);
  const { current, time, initialTemperature, finalTemperature } = input;
  checkMeasured("current", current, "A");
  checkMeasured("time", time, "s");
  const { capacity, zero } = METALS[checkOneOf("material", input.material, ["copper", "aluminum"])];
  checkBetween("initialTemperature", initialTemperature, COLDEST, HOTTEST, "°C");
  checkBetween("finalTemperature", finalTemperature, COLDEST, HOTTEST, "°C");
  if (!(finalTemperature > initialTemperature)) {
    fail({
      code: "out-of-range",
      path: "finalTemperature",
      expected: `more than the initial, ${initialTemperature}`,
      received: finalTemperature,
      unit: "°C",
    });
  }
  const rise = (finalTemperature - initialTemperature) / (zero + initialTemperature);
  const factor = capacity * Math.sqrt(Math.log1p(rise));
  return {
    section: squareMillimeters((current * Math.sqrt(time)) / factor),
    factor,
    deferral: DEFERRAL,
    cautions: CAUTIONS,
    warnings: timeWarnings(time),
  };
}
