/** Oven walls: U-value by layers, panel factors from experience, loss and skin temperature. */
import skinTable from "../../shared/tables/oven-skin-limits.json" with { type: "json" };
import panelTable from "../../shared/tables/oven-wall-guidance.json" with { type: "json" };
import type { Basis, BasisKind } from "../material/index.ts";
import {
  btuItPerHourSquareFootFahrenheit,
  type Celsius,
  checkOneOf,
  fahrenheit,
  given,
  givenList,
  inches,
  type Meters,
  type SquareMeters,
  type Warning,
  type Watts,
  type WattsPerKelvin,
  type WattsPerMeterKelvin,
  type WattsPerSquareMeter,
  type WattsPerSquareMeterKelvin,
} from "../quantity/index.ts";
import { checkScale, checkTemperature } from "./scale.ts";

/**
 * One layer of a wall.
 * @since 0.1.0
 */
export interface WallLayer {
  /** Thickness, m, more than 0. */
  readonly thickness: Meters;
  /** Thermal conductivity at the mean temperature of the layer, W/(m·K), more than 0. */
  readonly thermalConductivity: WattsPerMeterKelvin;
}

/**
 * Heat through a wall.
 * @since 0.1.0
 */
export interface WallHeat {
  /** U-value: heat flux for each kelvin between inside and outside, W/(m²·K). */
  readonly uValue: WattsPerSquareMeterKelvin;
  /** Heat flux, W/m². */
  readonly heatFlux: WattsPerSquareMeter;
  /** Temperatures of the surfaces from the inside out, one more than layers, °C. */
  readonly surfaces: readonly Celsius[];
  /** Outermost surface: what a hand meets, °C. */
  readonly skin: Celsius;
}

/**
 * Steady heat through a plane wall of layers: flux = (inside − outside)/(1/insideFilm + Σ thickness/conductivity +
 * 1/outsideFilm).
 *
 * One-dimensional: joints, frames and through-metal make a real panel oven lose several times as much
 * ({@link ovenWallGuidance}).
 * @param input.layers - from the inside out, at least one
 * @param input.insideFilm - film coefficient inside, W/(m²·K), more than 0; left out, `inside` is the surface's own temperature
 * @param input.outsideFilm - film coefficient outside, W/(m²·K), more than 0; left out, `outside` is the surface's own temperature
 * @param input.inside - temperature inside, °C
 * @param input.outside - temperature outside, °C
 * @returns U-value, flux and the surface temperatures
 * @throws ElectroheatError `missing`, `wrong-type`, `not-a-number`, `out-of-range`
 * @source Series thermal resistances, Incropera, DeWitt, Bergman, Lavine, Fundamentals of Heat and Mass Transfer, chapter 3
 * @example
 * ```ts
 * const { uValue, heatFlux, skin } = wallHeat({
 *   layers: [{ thickness: millimeters(100), thermalConductivity: wattsPerMeterKelvin(0.06) }],
 *   insideFilm: wattsPerSquareMeterKelvin(15), outsideFilm: wattsPerSquareMeterKelvin(9),
 *   inside: celsius(200), outside: celsius(20),
 * });
 * [uValue, heatFlux, skin] // => [0.542169, 97.5904, 30.8434]
 * ```
 * @since 0.1.0
 */
export function wallHeat(input: {
  readonly layers: readonly WallLayer[];
  readonly insideFilm?: WattsPerSquareMeterKelvin;
  readonly outsideFilm?: WattsPerSquareMeterKelvin;
  readonly inside: Celsius;
  readonly outside: Celsius;
}): WallHeat {
  given(input, "input", "layers and temperatures");
  const { layers, insideFilm, outsideFilm, inside, outside } = input;
  givenList(layers, "layers", 1);
  checkTemperature("inside", inside);
  checkTemperature("outside", outside);
  const resistances = layers.map((layer, i) => {
    given(layer, `layers.${i}`, "a layer");
    checkScale(`layers.${i}.thickness`, layer.thickness, "m");
    checkScale(`layers.${i}.thermalConductivity`, layer.thermalConductivity, "W/(m·K)");
    return layer.thickness / layer.thermalConductivity;
  });
  if (insideFilm !== undefined) checkScale("insideFilm", insideFilm, "W/(m²·K)");
  if (outsideFilm !== undefined) checkScale("outsideFilm", outsideFilm, "W/(m²·K)");
  const first = insideFilm === undefined ? 0 : 1 / insideFilm;
  const last = outsideFilm === undefined ? 0 : 1 / outsideFilm;
  const total = resistances.reduce((sum, one) => sum + one, first + last);
  const heatFlux = (inside - outside) / total;
  let passed = first;
  const surfaces = [inside - heatFlux * passed];
  for (const one of resistances) {
    passed += one;
    surfaces.push(inside - heatFlux * passed);
  }
  return {
    uValue: (1 / total) as WattsPerSquareMeterKelvin,
    heatFlux: heatFlux as WattsPerSquareMeter,
    surfaces: surfaces as Celsius[],
    skin: (outside + heatFlux * last) as Celsius,
  };
}

/**
 * Loss of a wall or a whole casing: uValue × area × (inside − outside).
 * @param input.uValue - U-value by layers, or a panel factor, W/(m²·K), more than 0
 * @param input.area - surface, m², more than 0
 * @param input.inside - temperature inside, °C
 * @param input.outside - temperature outside, °C
 * @returns the loss, and the loss per kelvin for {@link heatUpTime}
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition of the U-value
 * @example
 * ```ts
 * const { loss } = wallLoss({
 *   uValue: btuItPerHourSquareFootFahrenheit(0.35), area: squareFeet(3400), inside: fahrenheit(300), outside: fahrenheit(70),
 * });
 * toBtuItPerHour(loss) // => 273700
 * ```
 * @since 0.1.0
 */
export function wallLoss(input: {
  readonly uValue: WattsPerSquareMeterKelvin;
  readonly area: SquareMeters;
  readonly inside: Celsius;
  readonly outside: Celsius;
}): {
  /** Heat through the wall, W. */
  readonly loss: Watts;
  /** The same per kelvin, W/K. */
  readonly lossConductance: WattsPerKelvin;
} {
  given(input);
  checkScale("uValue", input.uValue, "W/(m²·K)");
  checkScale("area", input.area, "m²");
  checkTemperature("inside", input.inside);
  checkTemperature("outside", input.outside);
  const lossConductance = input.uValue * input.area;
  return {
    loss: (lossConductance * (input.inside - input.outside)) as Watts,
    lossConductance: lossConductance as WattsPerKelvin,
  };
}

/**
 * A panel factor or a usual thickness of insulation.
 * @since 0.1.0
 */
export interface OvenWallGuidance {
  /** Insulation. */
  readonly insulation: string;
  /** Thickness, m. */
  readonly thickness: Meters;
  /** Loss factor of a whole panel wall with joints, W/(m²·K); `null` where the source gives none. */
  readonly panelFactor: WattsPerSquareMeterKelvin | null;
  /** Oven temperature up to which the source calls it suitable, °C; `null` where it does not say. */
  readonly upTo: Celsius | null;
  /** Where it comes from. */
  readonly basis: Basis;
}

const basisOfRow = (
  table: { readonly id: string; readonly edition: string },
  source: string,
  kind: string,
): Basis => ({ source, edition: table.edition, table: table.id, kind: kind as BasisKind });

/**
 * Panel factors and usual thicknesses of oven walls, as data. Joints and through-metal are in the panel factor, which makes it
 * about five times the value by layers.
 * @returns one entry for each row of the table
 * @source trade press and supplier guidance, as named in the table
 * @example
 * ```ts
 * ovenWallGuidance().find((row) => row.panelFactor !== null)?.panelFactor // => 1.98739
 * ```
 * @since 0.1.0
 */
export function ovenWallGuidance(): readonly OvenWallGuidance[] {
  return panelTable.rows.map((row) => {
    const [insulation, thickness, factor, upTo, source, kind] = row as [
      string,
      number,
      number | null,
      number | null,
      string,
      string,
    ];
    return {
      insulation,
      thickness: inches(thickness),
      panelFactor: factor === null ? null : btuItPerHourSquareFootFahrenheit(factor),
      upTo: upTo === null ? null : fahrenheit(upTo),
      basis: basisOfRow(panelTable, source, kind),
    };
  });
}

/**
 * Highest skin temperature by a named rule, and whether a wall keeps it.
 * @since 0.1.0
 */
export interface SkinCheck {
  /** Name of the rule. */
  readonly rule: string;
  /** Highest skin temperature, °C. */
  readonly limit: Celsius;
  /** Whether the skin is at or below it. */
  readonly within: boolean;
  /** Where the limit comes from. */
  readonly basis: Basis;
  /** Who decides. */
  readonly deferral: string;
  /** A caution where the limit is passed. */
  readonly warnings: readonly Warning[];
}

/**
 * Holds a skin temperature against a named limit. Rules disagree, so the rule is an argument.
 * @param input.skin - outermost surface, °C, by contact thermometer or {@link wallHeat}
 * @param input.rule - `municipal oven ordinance` (160 °F or guarded) or `personnel protection guidance` (140 °F)
 * @returns the limit, whether it is kept, its source, and who decides
 * @throws ElectroheatError `missing`, `unknown-name`, `not-a-number`
 * @source as named in the table; the code adopted where the oven stands governs
 * @example
 * ```ts
 * ovenSkinCheck({ skin: celsius(65), rule: "personnel protection guidance" }).within // => false
 * ```
 * @since 0.1.0
 */
export function ovenSkinCheck(input: {
  readonly skin: Celsius;
  readonly rule: "municipal oven ordinance" | "personnel protection guidance";
}): SkinCheck {
  given(input);
  checkTemperature("skin", input.skin);
  const rule = checkOneOf("rule", input.rule, ["municipal oven ordinance", "personnel protection guidance"]);
  const row = skinTable.rows.find((one) => one[0] === rule) as [string, number, string, string];
  const limit = fahrenheit(row[1]);
  const within = input.skin <= limit;
  return {
    rule,
    limit,
    within,
    basis: basisOfRow(skinTable, row[2], row[3]),
    deferral: `Limit of ${rule}; the edition in force where the oven stands, its maker's instructions and the safety officer govern.`,
    warnings: within
      ? []
      : [
          {
            code: "caution",
            path: "skin",
            message: `The skin is hotter than ${limit.toFixed(1)} °C: guard it, and look for wet or sagged insulation.`,
            limit,
            unit: "°C",
            source: row[2],
          },
        ],
  };
}
