/** Where two metals touch: constriction, many spots, plastic flow, and the film that is entered, never predicted. */
import {
  checkMeasurable,
  checkMeasurableOrZero,
  checkOneOf,
  checkWhole,
  fail,
  given,
  type Meters,
  type Newtons,
  type OhmMeters,
  type OhmSquareMeters,
  type Ohms,
  type Pascals,
  type SiemensPerMeter,
  type SquareMeters,
} from "../quantity/index.ts";

/**
 * Constriction resistance of round spots far apart: (resistivity + otherResistivity)/(4·spots·spotRadius).
 * @param input.resistivity - resistivity of one metal (Ω·m), more than 0
 * @param input.otherResistivity - resistivity of the other (Ω·m), more than 0; the same metal if left out
 * @param input.spotRadius - radius of one spot (m), more than 0, much smaller than the parts
 * @param input.spots - number of equal spots, whole, 1 to 1e6; 1 if left out
 * @returns resistance (Ω)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source R. Holm, Electric Contacts, 4th ed., Springer 1967
 * @example
 * ```ts
 * constrictionResistance({
 *   resistivity: ohmMeters(1.7241e-8), otherResistivity: ohmMeters(6.63e-8), spotRadius: millimeters(0.1),
 * }) // => 0.0002088525
 * ```
 * @since 0.1.0
 */
export function constrictionResistance(input: {
  readonly resistivity: OhmMeters;
  readonly otherResistivity?: OhmMeters;
  readonly spotRadius: Meters;
  readonly spots?: number;
}): Ohms {
  given(input);
  const { resistivity, otherResistivity = resistivity, spotRadius, spots = 1 } = input;
  checkMeasurable("resistivity", resistivity, "Ω·m");
  checkMeasurable("otherResistivity", otherResistivity, "Ω·m");
  checkMeasurable("spotRadius", spotRadius, "m");
  checkWhole("spots", spots, 1, 1e6);
  return ((resistivity + otherResistivity) / (4 * spots * spotRadius)) as Ohms;
}

/**
 * Resistance of a square lattice of equal spots that crowd each other's current, by a named approximation.
 *
 * `greenwood`: ρ/(2Na) + ρ/(πN²)·ΣΣ 1/s; `holm-interaction`: the same with 3π/32 for 1/π; `holm-radius`: ρ/(2Na) +
 * ρ/(2α), α the radius of the circle as large as the lattice. On a 10 × 10 lattice they lie 0.6 % above, 2.8 % below
 * and 3.7 % above the exact equipotential solution.
 * @param input.resistivity - resistivity of both metals (Ω·m), more than 0
 * @param input.spotsPerSide - spots along one side, whole, 1 to 100
 * @param input.pitch - distance between neighbors (m), more than the spot diameter
 * @param input.spotRadius - radius of one spot (m), more than 0
 * @param input.method - which approximation
 * @returns resistance (Ω)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`
 * @source J. A. Greenwood, British Journal of Applied Physics 17 (1966) 1621; R. Holm, Electric Contacts, 4th ed.
 * @example
 * ```ts
 * latticeResistance({
 *   resistivity: ohmMeters(1.7241e-8), spotsPerSide: 10, pitch: millimeters(1), spotRadius: micrometers(50), method: "greenwood",
 * }) // => 3.1545933e-6
 * ```
 * @since 0.1.0
 */
export function latticeResistance(input: {
  readonly resistivity: OhmMeters;
  readonly spotsPerSide: number;
  readonly pitch: Meters;
  readonly spotRadius: Meters;
  readonly method: "greenwood" | "holm-interaction" | "holm-radius";
}): Ohms {
  given(input);
  const { resistivity, spotsPerSide, pitch, spotRadius } = input;
  const method = checkOneOf("method", input.method, ["greenwood", "holm-interaction", "holm-radius"]);
  checkMeasurable("resistivity", resistivity, "Ω·m");
  checkWhole("spotsPerSide", spotsPerSide, 1, 100);
  checkMeasurable("spotRadius", spotRadius, "m");
  checkMeasurable("pitch", pitch, "m");
  if (!(pitch > 2 * spotRadius)) {
    fail({
      code: "out-of-range",
      path: "pitch",
      expected: `more than the spot diameter ${2 * spotRadius}`,
      received: pitch,
      unit: "m",
    });
  }
  const spots = spotsPerSide * spotsPerSide;
  const alone = resistivity / (2 * spots * spotRadius);
  if (method === "holm-radius") {
    const side = spotsPerSide * pitch;
    return (alone + resistivity / (2 * Math.sqrt((side * side) / Math.PI))) as Ohms;
  }
  // Sum of 1/s over ordered pairs, by how often each displacement occurs.
  let sum = 0;
  for (let dx = 0; dx < spotsPerSide; dx++) {
    for (let dy = 0; dy < spotsPerSide; dy++) {
      if (dx === 0 && dy === 0) continue;
      const signs = (dx === 0 ? 1 : 2) * (dy === 0 ? 1 : 2);
      sum += (signs * (spotsPerSide - dx) * (spotsPerSide - dy)) / (pitch * Math.hypot(dx, dy));
    }
  }
  const weight = method === "greenwood" ? 1 / Math.PI : (3 * Math.PI) / 32;
  return (alone + ((weight * resistivity) / (spots * spots)) * sum) as Ohms;
}

/**
 * Resistance of a clean contact pressed until its spots flow: (resistivity/2)·√(π·hardness/force).
 *
 * Film-free, fully plastic, one cluster much smaller than the bars: real bolted joints lie 1.5 to 3 times higher, and
 * oxidized or burnt ones hundreds of times. Never a forecast of a burnt joint: enter what was measured. The data-book
 * form 9000·ρ·√(H/F) has a rounded constant (8862) and counts hardness in 1e8 N/m².
 * @param input.resistivity - mean resistivity of both metals (Ω·m), more than 0
 * @param input.hardness - hardness of the softer metal (Pa), more than 0; copper 0.5 to 0.9 GPa
 * @param input.force - preload (N), more than 0
 * @returns contact resistance (Ω)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source R. Holm, Electric Contacts; R. S. Timsit in P. G. Slade (ed.), Electrical Contacts, ch. 1
 * @example
 * ```ts
 * cleanContactResistance({ resistivity: ohmMeters(1.7241e-8), hardness: gigapascals(0.9), force: newtons(1000) }) // => 14.4953e-6
 * ```
 * @since 0.1.0
 */
export function cleanContactResistance(input: {
  readonly resistivity: OhmMeters;
  readonly hardness: Pascals;
  readonly force: Newtons;
}): Ohms {
  given(input);
  const { resistivity, hardness, force } = input;
  checkMeasurable("resistivity", resistivity, "Ω·m");
  checkMeasurable("hardness", hardness, "Pa");
  checkMeasurable("force", force, "N");
  return ((resistivity / 2) * Math.sqrt((Math.PI * hardness) / force)) as Ohms;
}

/**
 * Specific contact resistance of clean rough planes under even pressure:
 * 1/[1.25·conductivity·(slope/roughness)·(pressure/hardness)^0.95].
 * @param input.conductivity - electric conductivity, harmonic mean of both metals (S/m), more than 0
 * @param input.slope - r.m.s. slope of the surfaces, more than 0
 * @param input.roughness - r.m.s. roughness of both surfaces together (m), more than 0
 * @param input.pressure - mean pressure (Pa), more than 0, below the hardness
 * @param input.hardness - microhardness of the softer metal (Pa), more than 0
 * @returns specific contact resistance (Ω·m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source M. G. Cooper, B. B. Mikic, M. M. Yovanovich, International Journal of Heat and Mass Transfer 12 (1969) 279,
 *   electrical analogue
 * @example
 * ```ts
 * roughPlaneContactResistance({
 *   conductivity: siemensPerMeter(58e6), slope: 0.15, roughness: micrometers(2), pressure: megapascals(10), hardness: megapascals(900),
 * }) // => 1.3216946e-11
 * ```
 * @since 0.1.0
 */
export function roughPlaneContactResistance(input: {
  readonly conductivity: SiemensPerMeter;
  readonly slope: number;
  readonly roughness: Meters;
  readonly pressure: Pascals;
  readonly hardness: Pascals;
}): OhmSquareMeters {
  given(input);
  const { conductivity, slope, roughness, pressure, hardness } = input;
  checkMeasurable("conductivity", conductivity, "S/m");
  checkMeasurable("slope", slope);
  checkMeasurable("roughness", roughness, "m");
  checkMeasurable("hardness", hardness, "Pa");
  checkMeasurable("pressure", pressure, "Pa");
  if (!(pressure < hardness)) {
    fail({
      code: "out-of-range",
      path: "pressure",
      expected: `less than the hardness ${hardness}`,
      received: pressure,
      unit: "Pa",
    });
  }
  const conductance = 1.25 * conductivity * (slope / roughness) * (pressure / hardness) ** 0.95;
  return (1 / conductance) as OhmSquareMeters;
}

/**
 * Contact with a film: constriction + film/area. The film is entered, from a measurement; it cannot be predicted.
 * @param input.constriction - constriction resistance (Ω), 0 or more
 * @param input.film - specific resistance of the film (Ω·m²), 0 or more
 * @param input.area - area that really touches: force/hardness (m²), more than 0
 * @returns resistance (Ω)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source R. Holm, Electric Contacts, 4th ed., Springer 1967
 * @example
 * ```ts
 * const constriction = microohms(10);
 * filmedContactResistance({ constriction, film: ohmSquareMeters(1e-9), area: squareMillimeters(5) }) // => 0.00021
 * ```
 * @since 0.1.0
 */
export function filmedContactResistance(input: {
  readonly constriction: Ohms;
  readonly film: OhmSquareMeters;
  readonly area: SquareMeters;
}): Ohms {
  given(input);
  checkMeasurableOrZero("constriction", input.constriction, "Ω");
  checkMeasurableOrZero("film", input.film, "Ω·m²");
  checkMeasurable("area", input.area, "m²");
  return (input.constriction + input.film / input.area) as Ohms;
}
