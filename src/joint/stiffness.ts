/** Stiffness of bolts and of what they clamp. */
import {
  checkMeasurable,
  checkMeasurableOrZero,
  fail,
  given,
  type Meters,
  type NewtonsPerMeter,
  type Pascals,
  type SquareMeters,
} from "../quantity/index.ts";

/** tan 30° and twice of it to the digits of the handbook, which its examples were computed with. */
const TAN_30 = 0.5774;
const TWICE_TAN_30 = 1.155;

/**
 * Length bookkeeping of a metric bolt in its grip.
 * @since 0.1.0
 */
export interface BoltLengths {
  /** Threaded length of the bolt (m). */
  readonly threadLength: Meters;
  /** Unthreaded length, all of it in the grip (m). */
  readonly shankInGrip: Meters;
  /** Threaded length inside the grip (m). */
  readonly threadInGrip: Meters;
}

/**
 * How much of a metric bolt's grip is shank and how much thread: threadLength = 2·diameter + 6 mm, for bolts up to
 * 125 mm long and 48 mm thick; shank = boltLength − threadLength; thread in the grip = grip − shank.
 * @param input.diameter - nominal diameter (m), more than 0 to 48 mm
 * @param input.boltLength - length under the head (m), more than the thread to 125 mm
 * @param input.grip - clamped length (m), at most the bolt length; for a cap screw the effective grip, bar +
 *   diameter/2
 * @returns the three lengths
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`; `inconsistent` when the bolt is all thread
 *   (grip is all thread then) or ends inside the grip
 * @source Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th ed., Table 8-7
 * @example
 * ```ts
 * const { threadInGrip } = boltLengths({ diameter: millimeters(14), boltLength: millimeters(50), grip: millimeters(31.5) });
 * toMillimeters(threadInGrip) // => 15.5
 * ```
 * @since 0.1.0
 */
export function boltLengths(input: {
  readonly diameter: Meters;
  readonly boltLength: Meters;
  readonly grip: Meters;
}): BoltLengths {
  given(input);
  const { diameter, boltLength, grip } = input;
  checkMeasurable("diameter", diameter, "m");
  checkMeasurable("boltLength", boltLength, "m");
  checkMeasurable("grip", grip, "m");
  const over = (path: string, value: number, limit: number): void => {
    if (value > limit * (1 + 1e-12))
      fail({ code: "out-of-range", path, expected: `at most ${limit}`, received: value, unit: "m" });
  };
  over("diameter", diameter, 0.048);
  over("boltLength", boltLength, 0.125);
  const threadLength = 2 * diameter + 0.006;
  const shank = boltLength - threadLength;
  const thread = grip - shank;
  // Whole millimetres leave noise in the last digit; none of the three edges may turn on it.
  const noise = 1e-12 * boltLength;
  if (!(shank >= -noise && thread >= -noise && grip <= boltLength + noise)) {
    fail({
      code: "inconsistent",
      path: "grip",
      expected: `between the shank ${shank} and the bolt length ${boltLength}`,
      received: grip,
      unit: "m",
    });
  }
  return {
    threadLength: threadLength as Meters,
    shankInGrip: Math.max(shank, 0) as Meters,
    threadInGrip: Math.max(thread, 0) as Meters,
  };
}

/**
 * Axial stiffness of a bolt or stud, shank and thread in series: 1/k = shankLength/(shankArea·modulus) +
 * threadLength/(stressArea·modulus).
 * @param input.stressArea - tensile stress area (m²), more than 0
 * @param input.threadLength - threaded length in the grip (m), more than 0
 * @param input.shankArea - area of the unthreaded shank (m²), more than 0; needed with `shankLength`
 * @param input.shankLength - unthreaded length in the grip (m), 0 or more; 0 if left out
 * @param input.modulus - modulus of elasticity of the bolt (Pa), more than 0
 * @returns stiffness (N/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th ed., equation 8-17
 * @example
 * ```ts
 * toMegapoundsForcePerInch(boltStiffness({
 *   stressArea: squareInches(0.0775), threadLength: inches(0.5025), modulus: megapoundsForcePerSquareInch(30),
 * })) // => 4.63
 * ```
 * @since 0.1.0
 */
export function boltStiffness(input: {
  readonly stressArea: SquareMeters;
  readonly threadLength: Meters;
  readonly shankArea?: SquareMeters;
  readonly shankLength?: Meters;
  readonly modulus: Pascals;
}): NewtonsPerMeter {
  given(input);
  const { stressArea, threadLength, shankLength = 0, modulus } = input;
  checkMeasurable("stressArea", stressArea, "m²");
  checkMeasurable("threadLength", threadLength, "m");
  checkMeasurableOrZero("shankLength", shankLength, "m");
  checkMeasurable("modulus", modulus, "Pa");
  let compliance = threadLength / (stressArea * modulus);
  if (shankLength > 0 || input.shankArea !== undefined) {
    const shankArea = input.shankArea as SquareMeters;
    checkMeasurable("shankArea", shankArea, "m²");
    compliance += shankLength / (shankArea * modulus);
  }
  return (1 / compliance) as NewtonsPerMeter;
}

/**
 * Stiffness of one frustum of the 30° pressure cone: k = 0.5774·π·modulus·diameter/ln[(1.155·t + D − d)(D +
 * d)/((1.155·t + D + d)(D − d))].
 * @param input.diameter - nominal bolt diameter d (m), more than 0
 * @param input.thickness - height t of the frustum (m), more than 0
 * @param input.faceDiameter - smaller diameter D of the frustum (m), more than d; 1.5·d under a washer face
 * @param input.modulus - modulus of the clamped part (Pa), more than 0
 * @returns stiffness (N/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent`
 * @source Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th ed., equation 8-20
 * @example
 * ```ts
 * toMegapoundsForcePerInch(frustumStiffness({
 *   diameter: inches(0.5), thickness: inches(0.595), faceDiameter: inches(0.75), modulus: megapoundsForcePerSquareInch(30),
 * })) // => 30.80
 * ```
 * @since 0.1.0
 */
export function frustumStiffness(input: {
  readonly diameter: Meters;
  readonly thickness: Meters;
  readonly faceDiameter: Meters;
  readonly modulus: Pascals;
}): NewtonsPerMeter {
  given(input);
  const { diameter: d, thickness: t, faceDiameter: face, modulus } = input;
  checkMeasurable("diameter", d, "m");
  checkMeasurable("thickness", t, "m");
  checkMeasurable("faceDiameter", face, "m");
  checkMeasurable("modulus", modulus, "Pa");
  if (!(face > d)) {
    fail({
      code: "inconsistent",
      path: "faceDiameter",
      expected: `more than the bolt ${d}`,
      received: face,
      unit: "m",
    });
  }
  const wide = TWICE_TAN_30 * t;
  // The ratio less 1, so that a thin washer does not lose its digits.
  const over = (2 * wide * d) / ((wide + face + d) * (face - d));
  return ((Math.PI * TAN_30 * modulus * d) / Math.log1p(over)) as NewtonsPerMeter;
}

/**
 * Stiffness of clamped parts of one material between two washer faces of 1.5·diameter:
 * k = 0.5774·π·modulus·diameter/(2·ln[5·(0.5774·grip + 0.5·diameter)/(0.5774·grip + 2.5·diameter)]).
 * @param input.diameter - nominal bolt diameter (m), more than 0
 * @param input.grip - clamped length (m), more than 0
 * @param input.modulus - modulus of the clamped parts (Pa), more than 0
 * @returns stiffness (N/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th ed., equation 8-22
 * @example
 * ```ts
 * memberStiffness({ diameter: millimeters(6), grip: millimeters(10), modulus: gigapascals(117) }) // => 851.74e6
 * ```
 * @since 0.1.0
 */
export function memberStiffness(input: {
  readonly diameter: Meters;
  readonly grip: Meters;
  readonly modulus: Pascals;
}): NewtonsPerMeter {
  given(input);
  const { diameter: d, grip, modulus } = input;
  checkMeasurable("diameter", d, "m");
  checkMeasurable("grip", grip, "m");
  checkMeasurable("modulus", modulus, "Pa");
  const slope = TAN_30 * grip;
  return ((Math.PI * TAN_30 * modulus * d) /
    (2 * Math.log1p((4 * slope) / (slope + 2.5 * d)))) as NewtonsPerMeter;
}

/**
 * Stiffness of clamped parts by the fitted exponential: k = modulus·diameter·A·exp(B·diameter/grip).
 *
 * Published pairs: steel 0.78715 and 0.62873, gray cast iron 0.77871 and 0.61616, any material 0.78952 and 0.62914.
 * Those of copper and aluminum were not seen in print.
 * @param input.diameter - nominal bolt diameter (m), more than 0
 * @param input.grip - clamped length (m), more than 0
 * @param input.modulus - modulus of the clamped parts (Pa), more than 0
 * @param input.a - constant A, more than 0; 0.78952 (any material) if left out
 * @param input.b - constant B, more than 0; 0.62914 if left out
 * @returns stiffness (N/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source J. Wileman, M. Choudhury, I. Green, Computation of member stiffness in bolted connections, Journal of
 *   Mechanical Design 113 (1991) 432
 * @example
 * ```ts
 * toMegapoundsForcePerInch(memberStiffnessFitted({
 *   diameter: inches(0.625), grip: inches(1.5), modulus: megapoundsForcePerSquareInch(14), a: 0.77871, b: 0.61616,
 * })) // => 8.81
 * ```
 * @since 0.1.0
 */
export function memberStiffnessFitted(input: {
  readonly diameter: Meters;
  readonly grip: Meters;
  readonly modulus: Pascals;
  readonly a?: number;
  readonly b?: number;
}): NewtonsPerMeter {
  given(input);
  const { diameter, grip, modulus, a = 0.78952, b = 0.62914 } = input;
  checkMeasurable("diameter", diameter, "m");
  checkMeasurable("grip", grip, "m");
  checkMeasurable("modulus", modulus, "Pa");
  checkMeasurable("a", a);
  checkMeasurable("b", b);
  // The fit was made for grips of half a diameter and more; far below it the exponential is meaningless.
  if (!((b * diameter) / grip <= 20)) {
    fail({
      code: "out-of-range",
      path: "grip",
      expected: `at least ${(b * diameter) / 20}`,
      received: grip,
      unit: "m",
    });
  }
  return (modulus * diameter * a * Math.exp((b * diameter) / grip)) as NewtonsPerMeter;
}

/**
 * Stiffness of parts in series: 1/k = Σ 1/kᵢ.
 * @param parts - stiffnesses (N/m), at least one, each more than 0
 * @returns stiffness (N/m)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition
 * @example
 * ```ts
 * seriesStiffness([meganewtonsPerMeter(5316), meganewtonsPerMeter(15620.3), meganewtonsPerMeter(3887)]) // => 1963.1e6
 * ```
 * @since 0.1.0
 */
export function seriesStiffness(parts: readonly NewtonsPerMeter[]): NewtonsPerMeter {
  if (!Array.isArray(parts) || parts.length === 0) {
    fail({ code: "missing", path: "parts", expected: "at least one stiffness", received: undefined });
  }
  let compliance = 0;
  parts.forEach((one, i) => {
    checkMeasurable(`parts.${i}`, one, "N/m");
    compliance += 1 / one;
  });
  return (1 / compliance) as NewtonsPerMeter;
}
