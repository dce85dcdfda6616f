/** What the millivolts across a contact say about the temperature of its spots. */
import metals from "../../shared/tables/contact-metals.json" with { type: "json" };
import { type Judgement, judge } from "../decision/index.ts";
import { type Celsius, checkBetween, type Kelvins, type Volts, type Warning } from "../quantity/index.ts";
import { type Basis, basisOf, cellNumber, columnOf, JOINT_DEFERRAL, rowNamed } from "./basis.ts";
import { checkNonNegative } from "./check.ts";

/** Lorenz number of the Wiedemann–Franz law, V²/K². */
const LORENZ = 2.44e-8;
const ZERO_CELSIUS = 273.15;
/** How far published softening and melting voltages scatter. */
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
  const { voltage, bulk } = input;
  checkNonNegative("voltage", voltage, "V");
  checkBetween("bulk", bulk, -ZERO_CELSIUS, 1500, "°C");
  return (Math.hypot(bulk + ZERO_CELSIUS, voltage / (2 * Math.sqrt(LORENZ))) - ZERO_CELSIUS) as Celsius;
}

/**
 * Voltage across a clean contact at which its spots reach a temperature: √(4·2.44e-8·(spot² − bulk²)), kelvins.
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
 * A contact voltage held against softening and melting.
 * @since 0.1.0
 */
export interface ContactScreen {
  /** Excess of the spots over the metal beside them (K). */
  readonly excess: Kelvins;
  /** Held against the softening voltage. */
  readonly softening: Judgement;
  /** Held against the melting voltage. */
  readonly melting: Judgement;
  /** The table. */
  readonly basis: Basis;
  /** To whom the verdict defers. */
  readonly deferral: string;
  /** What the reader must know. */
  readonly warnings: readonly Warning[];
}

/**
 * Screens a contact voltage: superheat of the spots, softening and melting of the metal or its plating, ±0.03 V
 * undecided.
 *
 * A screen, not a test: published voltages scatter by ±0.03 V and the shipped ones are from memory, supported by the
 * law of {@link contactSpotTemperature}. Enter the plating where there is one. Nickel is not listed: two conflicting
 * pairs of values are in circulation.
 * @param input.voltage - voltage across the contact, bar subtracted (V), 0 or more
 * @param input.bulk - temperature of the metal beside it (°C)
 * @param input.metal - metal or plating
 * @returns superheat, judgements, basis, deferral, warnings
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`
 * @source R. Holm, Electric Contacts, 4th ed., table of contact properties (from memory; tin and tungsten melting
 *   seen)
 * @example
 * ```ts
 * const { excess, softening } = contactVoltageScreen({ voltage: millivolts(50), bulk: celsius(20), metal: "copper" });
 * [excess, softening.verdict] // => [40.844, "within"]
 * ```
 * @since 0.1.0
 */
export function contactVoltageScreen(input: {
  readonly voltage: Volts;
  readonly bulk: Celsius;
  readonly metal: ContactMetal;
}): ContactScreen {
  const { voltage, bulk } = input;
  const row = rowNamed(metals, "metal", input.metal);
  const at = (name: string): number => cellNumber(row, columnOf(metals, name), "metal");
  const excess = (contactSpotTemperature({ voltage, bulk }) - bulk) as Kelvins;
  const against = (name: "softening" | "melting"): Judgement =>
    judge({
      value: voltage,
      halfWidth: SCATTER,
      high: at(`${name}Voltage`),
      rule: `${name} voltage of ${input.metal}`,
    });
  const [softening, melting] = [against("softening"), against("melting")];
  const warnings: Warning[] = [
    {
      code: "approximate",
      path: "metal",
      message:
        "Softening and melting voltages are from memory and scatter by 0.03 V in print: a screen, not a test.",
      source: metals.source,
    },
  ];
  if (softening.verdict !== "within") {
    warnings.push({
      code: "caution",
      path: "voltage",
      message: `The contact spots of ${input.metal} may ${melting.verdict === "within" ? "soften" : "soften or melt"}: expect lost clamp force; remake with new hardware.`,
    });
  }
  return { excess, softening, melting, basis: basisOf(metals), deferral: JOINT_DEFERRAL, warnings };
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
  /** To whom the verdict defers. */
  readonly deferral: string;
}

/**
 * Trend of a contact's drop at the same current: growth by 10 to 30 mV (mean 28 mV) began the instability of
 * tin-plated power contacts.
 *
 * For small tin-plated contacts; statistical, seen second-hand; not for bars that carry kiloamperes.
 * @param input.drop - drop now, at the same current and probe points (V), 0 or more
 * @param input.asLeftDrop - drop when the joint was made (V), 0 or more
 * @param input.halfWidth - half-width of the difference of the two readings (V), 0 or more
 * @returns growth and judgements
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
  checkNonNegative("drop", input.drop, "V");
  checkNonNegative("asLeftDrop", input.asLeftDrop, "V");
  const growth = input.drop - input.asLeftDrop;
  const against = (high: number, rule: string): Judgement =>
    judge({ value: growth, halfWidth: input.halfWidth, high, rule });
  return {
    growth: growth as Volts,
    start: against(0.01, "growth of drop, lower edge of instability, tin-plated"),
    end: against(0.03, "growth of drop, upper edge of instability, tin-plated"),
    deferral: JOINT_DEFERRAL,
  };
}
