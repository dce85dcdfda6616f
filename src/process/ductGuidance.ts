/** Duct heaters: face velocity and face load held against makers' guidance. */
import table from "../../shared/tables/duct-heater-guidance.json" with { type: "json" };
import type { Basis, BasisKind } from "../material/index.ts";
import {
  type Celsius,
  checkOneOf,
  fail,
  feetPerMinute,
  finiteResult,
  given,
  inches,
  kilowattsPerSquareFoot,
  type Meters,
  type MetersPerSecond,
  type Pascals,
  type SquareMeters,
  type Warning,
  type Watts,
  type WattsPerSquareMeter,
} from "../quantity/index.ts";
import { type AirFlow, actualAirFlow, standardAirFlow } from "./airFlow.ts";
import { checkScale, checkTemperature } from "./scale.ts";

/**
 * One piece of guidance, and how the heater stands to it.
 * @since 0.1.0
 */
export interface DuctGuidance {
  /** What is guided. */
  readonly rule: string;
  /** Lowest velocity (m/s) or highest face load (W/m²). */
  readonly limit: number;
  /** Unit of `limit` and `value`. */
  readonly unit: "m/s" | "W/m²";
  /** What the heater has. */
  readonly value: number;
  /** Whether it keeps to the guidance. */
  readonly within: boolean;
  /** Whose guidance. */
  readonly basis: Basis;
}

/**
 * A duct heater held against guidance.
 * @since 0.1.0
 */
export interface DuctHeaterCheck {
  /** Mean velocity on the face of the heater, inlet air at its own temperature and pressure, m/s. */
  readonly velocity: MetersPerSecond;
  /** Power over face area, W/m². */
  readonly faceLoad: WattsPerSquareMeter;
  /** Each piece of guidance for this type of element. */
  readonly guidance: readonly DuctGuidance[];
  /** One for each that is not kept, and one where the air is much thinner than standard air. */
  readonly warnings: readonly Warning[];
}

const shown = (value: number): number => Number(value.toPrecision(3));

/** Below this share of the density of standard air the basis of a velocity decides more than its reading error. */
const THIN = 0.95;

/**
 * Free face of an open-coil duct heater: (height − 2.5 in) × (width − 0.5 in), what the frame leaves.
 * @param input.height - of the duct inside, m, more than 2.5 in
 * @param input.width - of the duct inside, m, more than 0.5 in
 * @returns face area, m²
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Duct-heater sizing bulletin of a heater maker, its example of a 12 in by 24 in duct
 * @example
 * ```ts
 * toSquareFeet(ductHeaterFace({ height: inches(12), width: inches(24) })) // => 1.55035
 * ```
 * @since 0.1.0
 */
export function ductHeaterFace(input: { readonly height: Meters; readonly width: Meters }): SquareMeters {
  given(input);
  checkScale("height", input.height, "m");
  checkScale("width", input.width, "m");
  const height = input.height - inches(2.5);
  const width = input.width - inches(0.5);
  if (!(height > 0))
    fail({
      code: "out-of-range",
      path: "height",
      expected: "more than 2.5 in",
      received: input.height,
      unit: "m",
    });
  if (!(width > 0))
    fail({
      code: "out-of-range",
      path: "width",
      expected: "more than 0.5 in",
      received: input.width,
      unit: "m",
    });
  return (height * width) as SquareMeters;
}

/**
 * Face velocity and face load of a duct heater, held against makers' guidance for its type of element. Guidance, not a
 * standard: the maker of the heater decides. A high face load needs more than the usual 400 ft/min: makers chart it, one point of a
 * chart for open coils is known (700 ft/min at 16 kW/ft², air of 81 °F), and other face loads are held against it in proportion,
 * which is our reading of it and not the chart.
 * @param input.power - of the heater at full output, W, more than 0
 * @param input.faceArea - area that the air passes, m², more than 0; {@link ductHeaterFace} for an open-coil frame
 * @param input.flow - air flow with its basis
 * @param input.inlet - air temperature at the face, °C
 * @param input.pressure - absolute pressure at the face, Pa, more than 0
 * @param input.element - `open coil` or `tubular`
 * @returns velocity, face load, each guidance with its source, and a warning for each that is not kept or rests on thin air
 * @throws ElectroheatError `missing`, `wrong-type` for a flow without basis, `unknown-name`, `not-a-number`, `out-of-range`
 * @source common practice: makers' bulletins, as named in the table
 * @example
 * ```ts
 * const check = ductHeaterCheck({
 *   power: kilowatts(25), faceArea: ductHeaterFace({ height: inches(12), width: inches(24) }),
 *   flow: { basis: "standard", standard: "0.075 lb/ft3", volumeFlow: cubicFeetPerMinute(500) },
 *   inlet: fahrenheit(70), pressure: pascals(101325), element: "open coil",
 * });
 * [toKilowattsPerSquareFoot(check.faceLoad), check.warnings.length] // => [16.1254, 2]
 * ```
 * @since 0.1.0
 */
export function ductHeaterCheck(input: {
  readonly power: Watts;
  readonly faceArea: SquareMeters;
  readonly flow: AirFlow;
  readonly inlet: Celsius;
  readonly pressure: Pascals;
  readonly element: "open coil" | "tubular";
}): DuctHeaterCheck {
  given(input);
  const { power, faceArea, flow, inlet, pressure } = input;
  checkScale("power", power, "W");
  checkScale("faceArea", faceArea, "m²");
  checkTemperature("inlet", inlet);
  const element = checkOneOf("element", input.element, ["open coil", "tubular"]);
  const velocity = finiteResult(actualAirFlow({ flow, temperature: inlet, pressure }) / faceArea, "m/s");
  const standardVelocity = standardAirFlow({ flow, standard: "0.075 lb/ft3" }) / faceArea;
  const faceLoad = power / faceArea;
  const guidance: DuctGuidance[] = [];
  const warnings: Warning[] = [];
  for (const row of table.rows) {
    const [about, printedRule, , printed, unit, source, kind, atLoad] = row as [
      string,
      string,
      string,
      number,
      string,
      string,
      string,
      number | null,
    ];
    if (about !== "any" && about !== element) continue;
    const lowest = unit === "ft/min";
    // One point of a chart: other face loads get the velocity that heats the air by the same amount.
    const share = atLoad === null ? 1 : faceLoad / kilowattsPerSquareFoot(atLoad);
    const limit = lowest ? feetPerMinute(printed * share) : kilowattsPerSquareFoot(printed);
    const rule =
      atLoad === null
        ? printedRule
        : `velocity in proportion to face load, by ${printed} ft/min at ${atLoad} kW/ft²`;
    const value = lowest ? velocity : faceLoad;
    const within = lowest ? value >= limit : value <= limit;
    const basis = { source, edition: table.edition, table: table.id, kind: kind as BasisKind };
    guidance.push({ rule, limit, unit: lowest ? "m/s" : "W/m²", value, within, basis });
    if (within) continue;
    warnings.push({
      code: "caution",
      path: lowest ? "velocity" : "faceLoad",
      message: `${rule} of ${element === "open coil" ? "an" : "a"} ${element} heater is ${shown(printed * share)} ${unit} by this guidance: ${lowest ? `elements overheat where the air is slower (held against the velocity as the air passes, ${velocity.toFixed(2)} m/s)` : "the face carries more"}. The heater's maker decides.`,
      limit,
      unit: lowest ? "m/s" : "W/m²",
      source,
    });
  }
  if (standardVelocity < THIN * velocity) {
    warnings.push({
      code: "caution",
      path: "velocity",
      message: `The air here is thinner than standard air: ${velocity.toFixed(2)} m/s as it passes carries only the mass of ${standardVelocity.toFixed(2)} m/s of standard air. The makers' figures do not say their basis; ask the maker before leaning on a velocity that only just keeps them.`,
      source: "common practice",
    });
  }
  return {
    velocity: velocity as MetersPerSecond,
    faceLoad: faceLoad as WattsPerSquareMeter,
    guidance,
    warnings,
  };
}
