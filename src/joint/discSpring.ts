/** Conical (disc) spring washers by the Almen–László formula, and stacks of them. */
import {
  checkBetween,
  checkMeasurable,
  checkWhole,
  fail,
  given,
  type Meters,
  type Newtons,
  type NewtonsPerMeter,
  type Pascals,
  type Warning,
} from "../quantity/index.ts";

/**
 * A disc spring without contact flats.
 * @since 0.1.0
 */
export interface DiscSpring {
  /** Outer diameter (m). */
  readonly outerDiameter: Meters;
  /** Inner diameter (m), less than the outer. */
  readonly innerDiameter: Meters;
  /** Thickness (m). */
  readonly thickness: Meters;
  /** Free cone height: free height − thickness (m). */
  readonly coneHeight: Meters;
  /** Modulus of elasticity (Pa); 206 GPa (spring steel) if left out. */
  readonly modulus?: Pascals;
  /** Poisson's ratio; 0.3 if left out. */
  readonly poisson?: number;
}

/**
 * Force and stiffness of a disc spring or stack at a deflection.
 * @since 0.1.0
 */
export interface DiscSpringState {
  /** Force (N). */
  readonly force: Newtons;
  /** Slope of force over deflection there (N/m); negative on the falling branch of a steep spring. */
  readonly stiffness: NewtonsPerMeter;
  /** Deflection over cone height: 1 is flat. */
  readonly flattened: number;
  /** What the reader must know. */
  readonly warnings: readonly Warning[];
}

/** 4·E/(1 − µ²)·t⁴/(K1·De²), the force scale of the formula. */
function scaleOf(spring: DiscSpring): number {
  const { outerDiameter, innerDiameter, thickness, modulus = 206e9, poisson = 0.3 } = spring;
  const delta = outerDiameter / innerDiameter;
  const k1 = ((delta - 1) / delta) ** 2 / ((delta + 1) / (delta - 1) - 2 / Math.log(delta)) / Math.PI;
  return ((4 * modulus) / (1 - poisson * poisson)) * (thickness ** 4 / (k1 * outerDiameter ** 2));
}

function checkSpring(spring: DiscSpring): void {
  given(spring, "spring");
  checkMeasurable("spring.outerDiameter", spring.outerDiameter, "m");
  checkMeasurable("spring.innerDiameter", spring.innerDiameter, "m");
  checkMeasurable("spring.thickness", spring.thickness, "m");
  checkMeasurable("spring.coneHeight", spring.coneHeight, "m");
  if (spring.modulus !== undefined) checkMeasurable("spring.modulus", spring.modulus, "Pa");
  if (spring.poisson !== undefined) checkBetween("spring.poisson", spring.poisson, 0, 0.5);
  // Nearer than 1 % the formula divides two vanishing numbers, and such a ring is no disc spring.
  const most = 0.99 * spring.outerDiameter;
  if (!(spring.innerDiameter < most)) {
    fail({
      code: "inconsistent",
      path: "spring.innerDiameter",
      expected: `less than ${most}, 0.99 of the outer diameter`,
      received: spring.innerDiameter,
      unit: "m",
    });
  }
}

/**
 * Force and stiffness of a stack of equal disc springs: `inParallel` nested the same way up carry the sum of forces,
 * `inSeries` of those groups add up deflections.
 *
 * One spring: F = 4E/(1 − µ²)·t⁴/(K1·De²)·(s/t)·[(h/t − s/t)·(h/t − s/(2t)) + 1], K1 = (1/π)·((δ − 1)/δ)²/((δ + 1)/(δ
 * − 1) − 2/ln δ), δ = De/Di. No contact flats, no friction between nested springs (2 to 3 % each in practice). Past
 * flat the stack is solid: an error. Tables state loads at different heights: say which height a load belongs to. The
 * concave side faces the joint; the torque of a flattened washer is its maker's choice.
 * @param input.spring - outer and inner diameter, thickness, cone height (m), modulus (Pa), Poisson's ratio
 * @param input.deflection - deflection of the whole stack (m), 0 to flat
 * @param input.inParallel - springs nested the same way up, whole, 1 to 20; 1 if left out
 * @param input.inSeries - such groups facing each other, whole, 1 to 20; 1 if left out
 * @returns force, stiffness, share of flattening, warnings
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent`
 * @source J. O. Almen and A. László, The uniform-section disk spring, Transactions of the ASME 58 (1936) 305; DIN
 *   2092
 * @example
 * ```ts
 * const spring = {
 *   outerDiameter: millimeters(20), innerDiameter: millimeters(10.2), thickness: millimeters(1.1), coneHeight: millimeters(0.45),
 * };
 * discSpringState({ spring, deflection: millimeters(0.3375) }).force // => 1520.8
 * ```
 * @since 0.1.0
 */
export function discSpringState(input: {
  readonly spring: DiscSpring;
  readonly deflection: Meters;
  readonly inParallel?: number;
  readonly inSeries?: number;
}): DiscSpringState {
  given(input);
  const { spring, deflection, inParallel = 1, inSeries = 1 } = input;
  checkSpring(spring);
  checkWhole("inParallel", inParallel, 1, 20);
  checkWhole("inSeries", inSeries, 1, 20);
  const { thickness: t, coneHeight: h } = spring;
  checkBetween("deflection", deflection, 0, h * inSeries * (1 + 1e-12), "m");
  const s = deflection / inSeries / t;
  const c = h / t;
  const scale = scaleOf(spring) * inParallel;
  const force = scale * s * ((c - s) * (c - s / 2) + 1);
  const slope = (scale * (c * c + 1 - 3 * c * s + 1.5 * s * s)) / t / inSeries;
  const flattened = (s * t) / h;
  const warnings: Warning[] = [];
  if (flattened > 0.75) {
    warnings.push({
      code: "outside-validity",
      path: "flattened",
      message: "Beyond three quarters of flat the edges roll and the real force exceeds the formula.",
      limit: 0.75,
      source: "din-2092",
    });
  }
  return { force: force as Newtons, stiffness: slope as NewtonsPerMeter, flattened, warnings };
}
