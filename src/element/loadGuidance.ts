/** Surface loads that makers suggest by use: guidance, not limits. */
import appliances from "../../shared/tables/surface-load-appliances.json" with { type: "json" };
import ducts from "../../shared/tables/surface-load-process-air.json" with { type: "json" };
import type { Basis } from "../material/index.ts";
import {
  type Celsius,
  checkOneOf,
  fahrenheit,
  feetPerMinute,
  type MetersPerSecond,
  type WattsPerSquareMeter,
  wattsPerSquareCentimeter,
  wattsPerSquareInch,
} from "../quantity/index.ts";
import { basisOf } from "./domain.ts";

/**
 * Surface load that a maker suggests for one use.
 * @since 0.1.0
 */
export interface SurfaceLoadGuidance {
  /** Name to ask for it by. */
  readonly application: string;
  /** Lowest suggested, W/m²; null when only a highest is given. */
  readonly low: WattsPerSquareMeter | null;
  /** Highest suggested, W/m². */
  readonly high: WattsPerSquareMeter;
  /** Highest sheath temperature that goes with it, °C, where the source gives one. */
  readonly sheathTemperature: Celsius | null;
  /** Lowest air speed that goes with it, m/s, where the source gives one. */
  readonly airSpeed: MetersPerSecond | null;
  /** Where it comes from; the kind is common practice. */
  readonly basis: Basis;
  /** What the source says with it, in our words. */
  readonly note: string;
}

const NOTE =
  "Guidance, not a limit: go lower for frequent switching, near the alloy's temperature limit, in a harsh atmosphere.";

function all(): readonly SurfaceLoadGuidance[] {
  const suggested = (appliances.rows as [string, string, number, number][]).map(
    ([appliance, element, low, high]): SurfaceLoadGuidance => ({
      application: `${appliance}, ${element}`,
      low: wattsPerSquareCentimeter(low),
      high: wattsPerSquareCentimeter(high),
      sheathTemperature: null,
      airSpeed: null,
      basis: basisOf(appliances),
      note: NOTE,
    }),
  );
  const inDucts = (ducts.rows as [string, string, number, number, number][]).map(
    ([appliance, element, high, sheath, speed]): SurfaceLoadGuidance => ({
      application: `${appliance}, ${element}`,
      low: null,
      high: wattsPerSquareInch(high),
      sheathTemperature: fahrenheit(sheath),
      airSpeed: feetPerMinute(speed),
      basis: basisOf(ducts),
      note: NOTE,
    }),
  );
  return [...suggested, ...inDucts];
}

/**
 * Lists the uses that surface-load guidance is known for.
 * @returns names that {@link surfaceLoadGuidance} takes
 * @source definition
 * @example
 * ```ts
 * surfaceLoadApplications() // => ["fire, spiral in free air", "fire, pencil bar", …]
 * ```
 * @since 0.1.0
 */
export function surfaceLoadApplications(): readonly string[] {
  return all().map(({ application }) => application);
}

/**
 * Surface load that makers suggest for a use.
 *
 * No table of open-coil load against air speed or of furnace load against wall temperature is included: sources show
 * them as graphs only. Work out the temperature with `surfaceTemperature` instead.
 * @param application - one of {@link surfaceLoadApplications}
 * @returns the range with its source
 * @throws ElectroheatError `missing`, `unknown-name` with the known names
 * @source resistance-wire maker U, surface area loading; tubular process duct heater selection guide; common practice
 * @example
 * ```ts
 * surfaceLoadGuidance("fan heater, spiral (moving air)") // => { low: 90000, high: 150000, … }
 * ```
 * @since 0.1.0
 */
export function surfaceLoadGuidance(application: string): SurfaceLoadGuidance {
  const known = all();
  const names = known.map((one) => one.application);
  return known[names.indexOf(checkOneOf("application", application, names))] as SurfaceLoadGuidance;
}
