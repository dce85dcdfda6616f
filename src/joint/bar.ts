/** Flat bars as conductors: resistance with holes and heat, net section, skin depth. */
import holes from "../../shared/tables/bar-hole-excess-squares.json" with { type: "json" };
import {
  type Celsius,
  checkBetween,
  checkMeasurable,
  checkMeasurableOrZero,
  checkMeasurableSigned,
  fail,
  given,
  type Hertz,
  type Meters,
  type OhmMeters,
  type Ohms,
  type PerKelvin,
  type SquareMeters,
} from "../quantity/index.ts";

/**
 * Resistivity at a temperature by its coefficient; a result of zero or less means the straight line was carried too
 * far.
 */
export function resistivityAt(
  resistivity20: OhmMeters,
  coefficient20: PerKelvin,
  temperature: Celsius,
): OhmMeters {
  checkMeasurable("resistivity20", resistivity20, "Ω·m");
  checkMeasurableSigned("coefficient20", coefficient20, "1/K");
  checkBetween("temperature", temperature, -273.15, 2000, "°C");
  const factor = 1 + coefficient20 * (temperature - 20);
  if (!(factor > 0)) {
    fail({
      code: "out-of-range",
      path: "temperature",
      expected: "a temperature where 1 + coefficient20·(temperature − 20) is more than 0",
      received: temperature,
      unit: "°C",
    });
  }
  return (resistivity20 * factor) as OhmMeters;
}

/**
 * Extra resistance of a central round hole in a long flat bar, in squares: multiply by resistivity/thickness.
 *
 * Read from a solution of Laplace's equation for hole over width up to 0.6; below 0.1 it goes over into π·d²/(2·W²).
 * Between the rows within 0.2 %, 1.2 % near 0.55. A slot, two holes side by side or a hole near the edge are other
 * shapes.
 * @param input.holeDiameter - hole diameter (m), 0 or more
 * @param input.width - bar width (m), more than 0
 * @returns squares of bar added
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`; `outside-table` above 0.6 of the width
 * @source own finite-volume solution of Laplace's equation, three grids; dilute limit π·d²/(2·W²)
 * @example
 * ```ts
 * holeExcessSquares({ holeDiameter: millimeters(8), width: millimeters(20) }) // => 0.28942
 * ```
 * @since 0.1.0
 */
export function holeExcessSquares(input: { readonly holeDiameter: Meters; readonly width: Meters }): number {
  given(input);
  checkMeasurableOrZero("holeDiameter", input.holeDiameter, "m");
  checkMeasurable("width", input.width, "m");
  const x = input.holeDiameter / input.width;
  // squares/x² is nearly a straight line in x², from π/2 at no hole.
  let [x0, y0] = [0, Math.PI / 2];
  for (const [at, squares] of holes.rows as unknown as readonly (readonly [number, number])[]) {
    const [x1, y1] = [at * at, squares / (at * at)];
    if (x <= at * (1 + 1e-12)) return x * x * (y0 + ((x * x - x0) / (x1 - x0)) * (y1 - y0));
    [x0, y0] = [x1, y1];
  }
  return fail({
    code: "outside-table",
    path: "holeDiameter",
    expected: `at most ${Math.sqrt(x0) * input.width}, ${Math.sqrt(x0)} of the bar width`,
    received: input.holeDiameter,
    unit: "m",
  });
}

/**
 * Resistance of a flat bar at a temperature: R = resistivity20·[1 + coefficient20·(temperature −
 * 20)]/thickness·(length/width + squares of the holes).
 *
 * Take the length between the joint edges or probe points. Holes clamped under a washer are part of the joint, not of
 * the bar. Direct current; skin effect stays below 1 % up to about 40 × 3 mm at 60 Hz.
 * @param input.resistivity20 - resistivity at 20 °C (Ω·m), more than 0; copper of 100 % IACS 1.7241e-8
 * @param input.coefficient20 - temperature coefficient at 20 °C (1/K); copper of 100 % IACS 0.00393
 * @param input.temperature - temperature of the bar (°C), −273.15 to 2000, where 1 + coefficient20·(temperature − 20) is
 *   more than 0
 * @param input.length - length (m), more than 0
 * @param input.width - width (m), more than 0
 * @param input.thickness - thickness (m), more than 0
 * @param input.holeDiameters - diameters of free holes along the length (m), each 0 or more; none if left out
 * @returns resistance (Ω)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`; `outside-table` for a hole above 0.6 of the
 *   width
 * @source definition; copper constants IEC 60028; holes as {@link holeExcessSquares}
 * @example
 * ```ts
 * const copper = { resistivity20: ohmMeters(1.7241e-8), coefficient20: perKelvin(0.00393) };
 * const bar = { length: inches(6), width: inches(1), thickness: inches(0.125) };
 * toMicroohms(barResistance({ ...copper, ...bar, temperature: celsius(90) })) // => 41.5446
 * ```
 * @since 0.1.0
 */
export function barResistance(input: {
  readonly resistivity20: OhmMeters;
  readonly coefficient20: PerKelvin;
  readonly temperature: Celsius;
  readonly length: Meters;
  readonly width: Meters;
  readonly thickness: Meters;
  readonly holeDiameters?: readonly Meters[];
}): Ohms {
  given(input);
  const { length, width, thickness, holeDiameters = [] } = input;
  const resistivity = resistivityAt(input.resistivity20, input.coefficient20, input.temperature);
  checkMeasurable("length", length, "m");
  checkMeasurable("width", width, "m");
  checkMeasurable("thickness", thickness, "m");
  let squares = length / width;
  for (const holeDiameter of holeDiameters) squares += holeExcessSquares({ holeDiameter, width });
  return ((resistivity / thickness) * squares) as Ohms;
}

/**
 * Section of a bar net of a hole and of pitting: A = (width − holeDiameter)·(thickness − pitDepth).
 *
 * Pitting over the whole face taken at its greatest depth: the cautious side.
 * @param input.width - width (m), more than 0
 * @param input.thickness - thickness (m), more than 0
 * @param input.holeDiameter - hole across that section (m), 0 or more, less than the width; 0 if left out
 * @param input.pitDepth - depth lost to pitting or filing, by depth gauge (m), 0 or more, less than the thickness; 0
 *   if left out
 * @returns net section (m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`; `inconsistent` when nothing is left
 * @source definition
 * @example
 * ```ts
 * const bar = { width: millimeters(20), thickness: millimeters(3) };
 * toSquareMillimeters(netSection({ ...bar, holeDiameter: millimeters(8.5) })) // => 34.5
 * ```
 * @since 0.1.0
 */
export function netSection(input: {
  readonly width: Meters;
  readonly thickness: Meters;
  readonly holeDiameter?: Meters;
  readonly pitDepth?: Meters;
}): SquareMeters {
  given(input);
  const { width, thickness, holeDiameter = 0, pitDepth = 0 } = input;
  checkMeasurable("width", width, "m");
  checkMeasurable("thickness", thickness, "m");
  checkMeasurableOrZero("holeDiameter", holeDiameter, "m");
  checkMeasurableOrZero("pitDepth", pitDepth, "m");
  const left = (path: string, value: number, of: number): void => {
    if (!(value < of))
      fail({ code: "inconsistent", path, expected: `less than ${of}`, received: value, unit: "m" });
  };
  left("holeDiameter", holeDiameter, width);
  left("pitDepth", pitDepth, thickness);
  return ((width - holeDiameter) * (thickness - pitDepth)) as SquareMeters;
}

/**
 * Skin depth: √(resistivity/(π·frequency·µ0)), µ0 = 4π·1e-7 H/m. A bar thinner than about half of it carries its
 * current evenly.
 * @param input.resistivity - resistivity at the bar's temperature (Ω·m), more than 0
 * @param input.frequency - frequency (Hz), more than 0
 * @returns skin depth (m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition, for a non-magnetic conductor
 * @example
 * ```ts
 * toMillimeters(skinDepth({ resistivity: ohmMeters(1.7241e-8), frequency: hertz(60) })) // => 8.53
 * ```
 * @since 0.1.0
 */
export function skinDepth(input: { readonly resistivity: OhmMeters; readonly frequency: Hertz }): Meters {
  given(input);
  checkMeasurable("resistivity", input.resistivity, "Ω·m");
  checkMeasurable("frequency", input.frequency, "Hz");
  return Math.sqrt(input.resistivity / (Math.PI * input.frequency * 4e-7 * Math.PI)) as Meters;
}
