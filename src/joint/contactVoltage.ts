/** What the millivolts across a contact say about the temperature of its spots. */
import metals from "../../shared/tables/contact-metals.json" with { type: "json" };
import { type Judgement, judge } from "../decision/index.ts";
import type { Basis } from "../material/index.ts";
import {
  type Celsius,
  checkBetween,
  checkMeasurableOrZero,
  checkOneOf,
  given,
  type Kelvins,
  type Volts,
  type Warning,
  ZERO_CELSIUS,
} from "../quantity/index.ts";
import { basisOf, cellNumber, columnOf, JOINT_DEFERRAL, rowNamed } from "./basis.ts";

/** Lorenz number of the Wiedemann–Franz law, V²/K². */
const LORENZ = 2.44e-8;
/** How far published softening and melting voltages scatter about the law, V. */
const SCATTER = 0.03;

/**
 * Temperature of the spots of a clean contact from its voltage: T² = bulk² + voltage²/(4·2.44e-8), kelvins. Geometry
 * drops out.
 *
 * Film-free, one metal, heat leaves only with the current. A healthy joint (5 mV and less) has no hot spot of its
 * own: what looks hot is the bar heated by the joint's watts. r.m.s. volts give the mean, peak volts the fastest
 * spots.
 * @param input.voltage - voltage across the contact itself, bar subtracted (V), 0 or more
 * @param input.bulk - temperature of the metal beside it (°C), −273.15 to 1500
 * @returns spot temperature (°C)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source F. Kohlrausch 1900; R. Holm, Electric Contacts, 4th ed.
 * @example
 * ```ts
 * contactSpotTemperature({ voltage: millivolts(100), bulk: celsius(20) }) // => 160.896
 * ```
 * @since 0.1.0
 */
export function contactSpotTemperature(input: { readonly voltage: Volts; readonly bulk: Celsius }): Celsius {
  given(input);
  const { voltage, bulk } = input;
  checkMeasurableOrZero("voltage", voltage, "V");
  checkBetween("bulk", bulk, -ZERO_CELSIUS, 1500, "°C");
  return (Math.hypot(bulk + ZERO_CELSIUS, voltage / (2 * Math.sqrt(LORENZ))) - ZERO_CELSIUS) as Celsius;
}

/**
 * Voltage across a clean contact at which its spots reach a temperature: V = √(4·2.44e-8·(spot² − bulk²)), kelvins.
 * @param input.spot - temperature of the spots (°C), at least the bulk, to 4000
 * @param input.bulk - temperature of the metal beside it (°C)
 * @returns contact voltage (V)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source as {@link contactSpotTemperature}
 * @example
 * ```ts
 * contactVoltageAt({ spot: celsius(232), bulk: celsius(20) }) // => 0.129
 * ```
 * @since 0.1.0
 */
export function contactVoltageAt(input: { readonly spot: Celsius; readonly bulk: Celsius }): Volts {
  given(input);
  const { spot, bulk } = input;
  checkBetween("bulk", bulk, -ZERO_CELSIUS, 1500, "°C");
  checkBetween("spot", spot, bulk, 4000, "°C");
  return Math.sqrt(4 * LORENZ * ((spot + ZERO_CELSIUS) ** 2 - (bulk + ZERO_CELSIUS) ** 2)) as Volts;
}

/**
 * Metals of the screen.
 * @since 0.1.0
 */
export type ContactMetal =
  | "aluminum"
  | "copper"
  | "silver"
  | "gold"
  | "tin"
  | "zinc"
  | "lead"
  | "iron"
  | "tungsten"
  | "platinum";

/**
 * What the millivoltmeter gave: `rms` of an alternating current, `dc` of a direct one.
 * @since 0.1.0
 */
export type VoltageReading = "rms" | "dc";

/**
 * The spots of a contact held against softening and melting.
 * @since 0.1.0
 */
export interface ContactScreen {
  /** Temperature of the spots at the peak of the voltage (°C). */
  readonly spot: Celsius;
  /** Excess of the spots over the metal beside them (K). */
  readonly excess: Kelvins;
  /** Voltage that drives the spots: the peak, √2 times an r.m.s. reading (V). */
  readonly peak: Volts;
  /** Spot temperature, as the band the scatter of the voltages gives (°C), held against the softening temperature. */
  readonly softening: Judgement;
  /** The same against the melting temperature. */
  readonly melting: Judgement;
  /** Softening voltage as printed, for a contact beside metal at room temperature (V); not what is judged. */
  readonly softeningVoltage: Volts;
  /** Melting voltage as printed, for the same (V). */
  readonly meltingVoltage: Volts;
  /** The table. */
  readonly basis: Basis;
  /** To whom the verdict defers. */
  readonly deferral: string;
  /** What the reader must know. */
  readonly warnings: readonly Warning[];
}

/**
 * Screens a contact voltage: temperature of the spots by {@link contactSpotTemperature} from the metal beside them,
 * held against softening and melting of the metal or its plating.
 *
 * The spots follow the alternating voltage within the half-wave, so an r.m.s. reading is raised to its peak, √2. The
 * band judged is the spot temperature at the peak ± 0.03 V, the scatter of published voltages. Where the metal beside
 * the spots is above a limit the spots are too, at any voltage. A screen, not a test: the temperatures are from memory,
 * supported by printed softening and melting voltages through the law. Enter the plating where there is one. Nickel is
 * not listed: two conflicting pairs of values are in circulation.
 * @param input.voltage - voltage across the contact, bar subtracted, at the load the question is about (V), 0 or more
 * @param input.reading - whether that is `rms` or `dc`
 * @param input.bulk - temperature of the metal beside it at that load (°C), −273.15 to 1500
 * @param input.metal - metal or plating
 * @returns spot temperature, superheat, judgements, basis, deferral, warnings
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`
 * @source F. Kohlrausch 1900; R. Holm, Electric Contacts, 4th ed., table of contact properties (from memory; tin and
 *   tungsten melting voltages seen)
 * @example
 * ```ts
 * const { spot, softening } = contactVoltageScreen({
 *   voltage: millivolts(50), reading: "dc", bulk: celsius(20), metal: "copper",
 * });
 * [spot, softening.verdict] // => [60.844, "within"]
 * ```
 * @since 0.1.0
 */
export function contactVoltageScreen(input: {
  readonly voltage: Volts;
  readonly reading: VoltageReading;
  readonly bulk: Celsius;
  readonly metal: ContactMetal;
}): ContactScreen {
  given(input);
  const { voltage, bulk } = input;
  const row = rowNamed(metals, "metal", input.metal);
  const at = (name: string): number => cellNumber(row, columnOf(metals, name), "metal");
  checkMeasurableOrZero("voltage", voltage, "V");
  const reading = checkOneOf("reading", input.reading, ["rms", "dc"]);
  const peak = reading === "rms" ? Math.SQRT2 * voltage : voltage;
  const spotAt = (u: number): Celsius => contactSpotTemperature({ voltage: u as Volts, bulk });
  const [spot, coolest, hottest] = [
    spotAt(peak),
    spotAt(Math.max(0, peak - SCATTER)),
    spotAt(peak + SCATTER),
  ];
  const against = (name: "softening" | "melting"): Judgement =>
    judge({
      value: (coolest + hottest) / 2,
      halfWidth: (hottest - coolest) / 2,
      high: at(name),
      rule: `${name} temperature of ${input.metal}`,
    });
  const [softening, melting] = [against("softening"), against("melting")];
  const warnings: Warning[] = [
    {
      code: "approximate",
      path: "metal",
      message:
        "Softening and melting are from memory, and voltages scatter by 0.03 V in print: a screen, not a test.",
      source: metals.source,
    },
  ];
  if (softening.verdict !== "within") {
    const what =
      bulk > at("melting")
        ? "melt: the metal beside them is above its melting temperature already"
        : melting.verdict === "within"
          ? "soften"
          : "soften or melt";
    warnings.push({
      code: "caution",
      path: "voltage",
      message: `The contact spots of ${input.metal} may ${what}: expect lost preload; remake with new hardware.`,
    });
  }
  return {
    spot,
    excess: (spot - bulk) as Kelvins,
    peak: peak as Volts,
    softening,
    melting,
    softeningVoltage: at("softeningVoltage") as Volts,
    meltingVoltage: at("meltingVoltage") as Volts,
    basis: basisOf(metals),
    deferral: JOINT_DEFERRAL,
    warnings,
  };
}

/**
 * A drop now against the same joint's drop when it was made.
 * @since 0.1.0
 */
export interface DropTrend {
  /** Growth of the drop (V); negative when it fell. */
  readonly growth: Volts;
  /** Held against 10 mV, the lower edge of where tin-plated contacts began to run away. */
  readonly start: Judgement;
  /** Held against 30 mV, its upper edge. */
  readonly end: Judgement;
  /** Where the two limits come from. */
  readonly basis: Basis;
  /** To whom the verdict defers. */
  readonly deferral: string;
  /** What the reader must know. */
  readonly warnings: readonly Warning[];
}

/**
 * Trend of a contact's drop at the same current: growth by 10 to 30 mV (mean 28 mV) began the instability of
 * tin-plated power contacts.
 *
 * For small tin-plated contacts; statistical, seen second-hand; not for bars that carry kiloamperes.
 * @param input.drop - drop now, at the same current and probe points (V), 0 or more
 * @param input.asLeftDrop - drop when the joint was made (V), 0 or more
 * @param input.halfWidth - half-width of the difference of the two readings (V), 0 or more
 * @returns growth, judgements, basis, deferral, warnings
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source R. D. Malucci and A. P. Ruffino, current rating of power connectors by voltage drop criteria (connector
 *   maker's paper, seen second-hand)
 * @example
 * ```ts
 * const { start, end } = dropTrend({ drop: millivolts(18.4), asLeftDrop: millivolts(3.9), halfWidth: millivolts(0.5) });
 * [start.verdict, end.verdict] // => ["outside", "within"]
 * ```
 * @since 0.1.0
 */
export function dropTrend(input: {
  readonly drop: Volts;
  readonly asLeftDrop: Volts;
  readonly halfWidth: Volts;
}): DropTrend {
  given(input);
  checkMeasurableOrZero("drop", input.drop, "V");
  checkMeasurableOrZero("asLeftDrop", input.asLeftDrop, "V");
  checkMeasurableOrZero("halfWidth", input.halfWidth, "V");
  const growth = input.drop - input.asLeftDrop;
  const against = (high: number, rule: string): Judgement =>
    judge({ value: growth, halfWidth: input.halfWidth, high, rule });
  return {
    growth: growth as Volts,
    start: against(0.01, "growth of drop, lower edge of instability, tin-plated"),
    end: against(0.03, "growth of drop, upper edge of instability, tin-plated"),
    basis: {
      source: "malucci-ruffino",
      edition: "not dated; seen second-hand",
      table: "growth of drop at which tin-plated contacts became unstable",
      kind: "published",
    },
    deferral: JOINT_DEFERRAL,
    warnings: [
      {
        code: "approximate",
        path: "growth",
        message:
          "The 10 to 30 mV are statistics of small tin-plated contacts, read second-hand: no acceptance limit for a bar joint.",
        source: "malucci-ruffino",
      },
    ],
  };
}
