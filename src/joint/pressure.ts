/** Pressure under a washer, flange or nut, and at the interface the pressure cone reaches. */
import {
  checkBetween,
  checkMeasurable,
  checkMeasurableOrZero,
  fail,
  given,
  type Meters,
  type Newtons,
  type Pascals,
  type SquareMeters,
} from "../quantity/index.ts";

/**
 * Mean pressure on an annulus: force/[(π/4)·(outerDiameter² − holeDiameter²)].
 *
 * The outer diameter is that of the face that bears: washer, flange of a flange nut, or the across-flats circle of a
 * bare nut. For a serrated or star washer no published bearing area was found: the teeth bear on far less than the
 * annulus.
 * @param input.force - preload (N), 0 or more
 * @param input.outerDiameter - outer diameter of the bearing face (m), more than the hole
 * @param input.holeDiameter - hole or inner diameter (m), 0 or more
 * @returns pressure (Pa)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`; `inconsistent` when the hole is not smaller
 *   than the face
 * @source definition
 * @example
 * ```ts
 * const m6 = { outerDiameter: millimeters(12.5), holeDiameter: millimeters(6.6) };
 * toMegapascals(annulusPressure({ force: newtons(5416.67), ...m6 })) // => 61.20
 * ```
 * @since 0.1.0
 */
export function annulusPressure(input: {
  readonly force: Newtons;
  readonly outerDiameter: Meters;
  readonly holeDiameter: Meters;
}): Pascals {
  given(input);
  checkMeasurableOrZero("force", input.force, "N");
  return (input.force / annulusArea(input)) as Pascals;
}

function annulusArea(input: { readonly outerDiameter: Meters; readonly holeDiameter: Meters }): SquareMeters {
  const { outerDiameter, holeDiameter } = input;
  checkMeasurable("outerDiameter", outerDiameter, "m");
  checkMeasurableOrZero("holeDiameter", holeDiameter, "m");
  if (!(holeDiameter < outerDiameter)) {
    fail({
      code: "inconsistent",
      path: "holeDiameter",
      expected: `less than the outer diameter ${outerDiameter}`,
      received: holeDiameter,
      unit: "m",
    });
  }
  return ((Math.PI / 4) * (outerDiameter ** 2 - holeDiameter ** 2)) as SquareMeters;
}

/**
 * How one face of a fastener presses on a bar.
 * @since 0.1.0
 */
export interface BearingPressure {
  /** Area of the bearing face (m²). */
  readonly faceArea: SquareMeters;
  /** Mean pressure under the face (Pa): what the bar surface must bear without setting. */
  readonly facePressure: Pascals;
  /** Diameter the pressure cone has at the electrical interface (m). */
  readonly interfaceDiameter: Meters;
  /** Mean pressure at that interface (Pa): what makes the electrical contact. */
  readonly interfacePressure: Pascals;
}

/**
 * Pressure under a face and at the electrical interface below it: a cone of half-angle 30° spreads the force through
 * the bar.
 *
 * interfaceDiameter = outerDiameter + 2·barThickness·tan(halfAngle). A wider face lowers the pressure that sets the
 * bar and widens the contact ring; it does not change the force. Compare hardware by calling it once for each.
 * @param input.force - preload (N), 0 or more
 * @param input.outerDiameter - outer diameter of the bearing face (m), more than the hole
 * @param input.holeDiameter - hole in the bar (m), 0 or more
 * @param input.barThickness - bar between the face and the electrical interface (m), 0 or more
 * @param input.halfAngle - half-angle of the cone in radians, 0 to 1; π/6 (30°) if left out
 * @returns areas, diameters, pressures
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent`
 * @source Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th ed., section 8-5 (30° frustum)
 * @example
 * ```ts
 * toMegapascals(bearingPressure({
 *   force: newtons(5416.67), outerDiameter: millimeters(12.5), holeDiameter: millimeters(6.6), barThickness: millimeters(3),
 * }).interfacePressure) // => 32.64
 * ```
 * @since 0.1.0
 */
export function bearingPressure(input: {
  readonly force: Newtons;
  readonly outerDiameter: Meters;
  readonly holeDiameter: Meters;
  readonly barThickness: Meters;
  readonly halfAngle?: number;
}): BearingPressure {
  given(input);
  const { force, outerDiameter, holeDiameter, barThickness, halfAngle = Math.PI / 6 } = input;
  checkMeasurable("outerDiameter", outerDiameter, "m");
  checkMeasurableOrZero("barThickness", barThickness, "m");
  checkBetween("halfAngle", halfAngle, 0, 1, "rad");
  const interfaceDiameter = (outerDiameter + 2 * barThickness * Math.tan(halfAngle)) as Meters;
  return {
    facePressure: annulusPressure({ force, outerDiameter, holeDiameter }),
    faceArea: annulusArea({ outerDiameter, holeDiameter }),
    interfaceDiameter,
    interfacePressure: annulusPressure({ force, outerDiameter: interfaceDiameter, holeDiameter }),
  };
}
