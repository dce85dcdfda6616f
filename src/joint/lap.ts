/** Two bars lapped on each other: current spreading, and a specific contact resistance between them. */
import streamline from "../../shared/tables/lap-streamline-factor.json" with { type: "json" };
import {
  checkMeasurable,
  checkMeasurableOrZero,
  fail,
  given,
  type Meters,
  type OhmMeters,
  type OhmSquareMeters,
  type Ohms,
} from "../quantity/index.ts";

/** Two abrupt steps from one bar to two: 2 × 0.249833, Hall 1967. */
const BOTH_STEPS = 0.499665;
/** From here on the two steps no longer feel each other, within the digits of the solution. */
const STEPS_ALONE = 5;

/**
 * Streamline factor of a lap joint with a perfect, full-area interface: resistance of the overlap over that of the
 * same length of one bar.
 *
 * From the solution of Laplace's equation; from overlap/thickness 5 on it is 0.5 + 0.4997·thickness/overlap, below that
 * its excess over this is read on a logarithmic scale. Real joints conduct only under the bolts: a floor, never a
 * forecast.
 * @param input.overlap - overlap along the bars (m), at least the thickness
 * @param input.thickness - thickness of one bar (m), more than 0; both bars equal
 * @returns factor, 1.21 falling to 0.5
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`; `outside-table` below one thickness of overlap
 * @source own finite-volume solution of Laplace's equation; step constant P. M. Hall, Thin Solid Films 1 (1967) 277
 * @example
 * ```ts
 * streamlineFactor({ overlap: millimeters(30), thickness: millimeters(3) }) // => 0.55
 * ```
 * @since 0.1.0
 */
export function streamlineFactor(input: { readonly overlap: Meters; readonly thickness: Meters }): number {
  given(input);
  const { overlap, thickness } = input;
  checkMeasurable("overlap", overlap, "m");
  checkMeasurable("thickness", thickness, "m");
  const x = overlap / thickness;
  const asymptote = (at: number): number => 0.5 + BOTH_STEPS / at;
  if (x >= STEPS_ALONE * (1 - 1e-12)) return asymptote(x);
  const rows = streamline.rows as unknown as readonly (readonly [number, number])[];
  for (const [i, [right, factor]] of rows.entries()) {
    const [left, before] = rows[i - 1] ?? [right, factor];
    if (!(x <= right && x >= left * (1 - 1e-12))) continue;
    if (right === left) return factor;
    const [from, to] = [Math.log(before - asymptote(left)), Math.log(factor - asymptote(right))];
    return asymptote(x) + Math.exp(from + ((x - left) / (right - left)) * (to - from));
  }
  return fail({
    code: "outside-table",
    path: "overlap",
    expected: "at least one bar thickness",
    received: overlap,
    unit: "m",
  });
}

/**
 * Extra resistance, in squares of the narrow side, where a strip widens abruptly on one side: (1/π)·[((a² +
 * 1)/a)·ln((1 + a)/(1 − a)) − 2·ln(4a/(1 − a²))], a = narrow/wide.
 * @param widthRatio - narrow over wide, more than 0 and less than 1
 * @returns squares of the narrow strip
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source P. M. Hall, Resistance calculations for thin film patterns, Thin Solid Films 1 (1967) 277 (from memory,
 *   checked by finite volumes)
 * @example
 * ```ts
 * stepExcessSquares(0.5) // => 0.249833
 * ```
 * @since 0.1.0
 */
export function stepExcessSquares(widthRatio: number): number {
  checkMeasurable("widthRatio", widthRatio);
  const a = widthRatio;
  if (!(a < 1)) fail({ code: "out-of-range", path: "widthRatio", expected: "less than 1", received: a });
  return (((a * a + 1) / a) * Math.log((1 + a) / (1 - a)) - 2 * Math.log((4 * a) / (1 - a * a))) / Math.PI;
}

/**
 * Resistance of a lap joint with an even specific contact resistance Y: R = (ρ·l/(2·w·b))·[1 + (2λ/l)·coth(l/(2λ))],
 * λ = √(Y·b/(2ρ)).
 *
 * One-dimensional in each bar: current enters along the whole overlap. With Y → 0 it goes to ρ·l/(2·w·b); add the
 * spreading of {@link streamlineFactor} where the bars are thick. Y is entered, from a measurement; it is not
 * predicted from torque.
 * @param input.resistivity - resistivity of the bars (Ω·m), more than 0
 * @param input.overlap - overlap l along the bars (m), more than 0
 * @param input.width - width w (m), more than 0
 * @param input.thickness - thickness b of one bar (m), more than 0
 * @param input.specificContactResistance - Y (Ω·m²), 0 or more
 * @returns resistance of the overlap (Ω)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source two coupled bars, derived; limits checked and integrated numerically
 * @example
 * ```ts
 * lapJointResistance({
 *   resistivity: ohmMeters(1.7241e-8), overlap: millimeters(50), width: millimeters(50), thickness: millimeters(6.35),
 *   specificContactResistance: ohmSquareMeters(5e-9),
 * }) // => 3.79084e-6
 * ```
 * @since 0.1.0
 */
export function lapJointResistance(input: {
  readonly resistivity: OhmMeters;
  readonly overlap: Meters;
  readonly width: Meters;
  readonly thickness: Meters;
  readonly specificContactResistance: OhmSquareMeters;
}): Ohms {
  given(input);
  const { resistivity, overlap, width, thickness, specificContactResistance } = input;
  checkMeasurable("resistivity", resistivity, "Ω·m");
  checkMeasurable("overlap", overlap, "m");
  checkMeasurable("width", width, "m");
  checkMeasurable("thickness", thickness, "m");
  checkMeasurableOrZero("specificContactResistance", specificContactResistance, "Ω·m²");
  const bars = (resistivity * overlap) / (2 * width * thickness);
  if (specificContactResistance === 0) return bars as Ohms;
  const reach = Math.sqrt((specificContactResistance * thickness) / (2 * resistivity));
  const half = overlap / (2 * reach);
  return (bars * (1 + 1 / (half * Math.tanh(half)))) as Ohms;
}
