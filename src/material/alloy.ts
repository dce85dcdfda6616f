/** A heating alloy as one source describes it. Sources disagree, so there is no alloy without its source. */
import type {
  Celsius,
  JoulesPerKilogramKelvin,
  KilogramsPerCubicMeter,
  OhmMeters,
  PerKelvin,
  WattsPerMeterKelvin,
} from "../quantity/index.ts";
import type { Sourced, TemperatureTable } from "./basis.ts";

/**
 * Heating alloys by composition: nickel/chromium, or chromium/aluminum with iron.
 * @since 0.1.0
 */
export type AlloyName =
  | "NiCr 80/20"
  | "NiCr 70/30"
  | "NiCr 60/15"
  | "NiCr 35/20"
  | "NiCr 30/20"
  | "NiCr 20/25"
  | "FeCrAl 13/4"
  | "FeCrAl 21/4"
  | "FeCrAl 21/6"
  | "FeCrAl 21/6 Nb"
  | "FeCrAl 22/4.8"
  | "FeCrAl 22/5.3"
  | "FeCrAl 22/5.8"
  | "FeCrAl 22/5.8 powder"
  | "FeCrAl 23/5"
  | "FeCrAl 25/5"
  | "FeCrAl 27/7 Mo2";

/**
 * Resistivity at 20 °C with the tolerance of delivered wire, where the source gives one.
 * @since 0.1.0
 */
export interface AlloyResistivity extends Sourced<OhmMeters> {
  /** Plus and minus, Ω·m. */
  readonly tolerance?: OhmMeters;
}

/**
 * A figure that its source gives at one temperature, or at none in particular.
 * @since 0.1.0
 */
export interface SinglePoint<T extends number> extends Sourced<T> {
  /** Temperature it holds at, °C. */
  readonly temperature?: Celsius;
}

/**
 * Mean expansion between two temperatures.
 * @since 0.1.0
 */
export interface MeanExpansion extends Sourced<PerKelvin> {
  /** Lower end, °C; absent where the source gives no range. */
  readonly from?: Celsius;
  /** Upper end, °C; absent where the source gives no range. */
  readonly to?: Celsius;
}

/**
 * A heating alloy as one source describes it; what the source does not give is absent.
 * @since 0.1.0
 */
export interface AlloyDataset {
  /** Name of the dataset: alloy and source. */
  readonly id: string;
  /** The alloy. */
  readonly alloy: AlloyName;
  /** Resistivity at 20 °C. */
  readonly resistivity?: AlloyResistivity;
  /** Temperature factor Ct = R(T) / R(20 °C). */
  readonly temperatureFactor?: TemperatureTable<number>;
  /** Density at 20 °C. */
  readonly density?: Sourced<KilogramsPerCubicMeter>;
  /** Specific heat against temperature. */
  readonly specificHeat?: TemperatureTable<JoulesPerKilogramKelvin> | SinglePoint<JoulesPerKilogramKelvin>;
  /** Thermal conductivity against temperature. */
  readonly thermalConductivity?: TemperatureTable<WattsPerMeterKelvin> | SinglePoint<WattsPerMeterKelvin>;
  /** Mean expansion from 20 °C to the temperatures given. */
  readonly expansion?: readonly MeanExpansion[];
  /** Emissivity of the oxidized surface. */
  readonly emissivity?: Sourced<number>;
  /** Melting point. */
  readonly meltingPoint?: Sourced<Celsius>;
  /** Highest temperature of the element itself: this source's opinion, for thick wire in clean dry air. */
  readonly maximumElementTemperature?: Sourced<Celsius>;
}
