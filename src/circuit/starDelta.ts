/** The same three terminals as a star or as a delta, real and complex. */
import { type Complex, complexProduct, complexQuotient, complexSum, modulus } from "../numeric/index.ts";
import { checkMeasurable, checkOhmsOrOpen, fail, given, type Ohms, type Open } from "../quantity/index.ts";
import { isBounded } from "./scale.ts";

/**
 * Three branches from terminals 1, 2, 3 to a common star point.
 * @since 0.1.0
 */
export interface StarOf<R> {
  /** Terminal 1 to the star point. */
  readonly r1: R;
  /** Terminal 2 to the star point. */
  readonly r2: R;
  /** Terminal 3 to the star point. */
  readonly r3: R;
}

/**
 * Three branches between terminals 1, 2, 3. Sides are named by their two ends, never by the opposite terminal.
 * @since 0.1.0
 */
export interface DeltaOf<R> {
  /** Between terminals 1 and 2. */
  readonly r12: R;
  /** Between terminals 2 and 3. */
  readonly r23: R;
  /** Between terminals 3 and 1. */
  readonly r31: R;
}

function conductance(path: string, resistance: Ohms | Open): number {
  checkOhmsOrOpen(path, resistance);
  if (resistance === "open") return 0;
  return resistance === 0 ? Number.POSITIVE_INFINITY : 1 / resistance;
}

/** Resistance of a side from g_a·g_b/Σg, with opens and at most one short taken as limits. */
function side(ga: number, gb: number, gc: number): Ohms | Open {
  if (ga === 0 || gb === 0) return "open";
  if (gc === Number.POSITIVE_INFINITY) return "open";
  // 1/ga + 1/gb + gc/(ga·gb), each term with its limit for a shorted arm.
  return (1 / ga + 1 / gb + gc / ga / gb) as Ohms;
}

/**
 * Delta that behaves at its three terminals like a given star: R12 = R1 + R2 + R1·R2/R3, and cyclic.
 *
 * An open arm leaves one side (the other two arms in series). One shorted arm (0 Ω) leaves the other two arms as sides and
 * no side between them; two or three shorted arms have no unique delta and are refused.
 * @param star - arms in ohms, 0 or more, or `"open"`
 * @returns sides in ohms, or `"open"`
 * @throws ElectroheatError `not-a-number`, `out-of-range`; `inconsistent` for more than one arm of 0 Ω
 * @source A. E. Kennelly, The equivalence of triangles and three-pointed stars in conducting networks, Electrical World and
 *   Engineer 34 (1899) 413; in admittance form, which stands open arms
 * @example
 * ```ts
 * deltaFromStar({ r1: ohms(7.68), r2: ohms(7.68), r3: ohms(7.68) }) // => { r12: 23.04, r23: 23.04, r31: 23.04 }
 * ```
 * @since 0.1.0
 */
export function deltaFromStar(star: StarOf<Ohms | Open>): DeltaOf<Ohms | Open> {
  const { r1, r2, r3 } = given(star, "star");
  const [g1, g2, g3] = [conductance("r1", r1), conductance("r2", r2), conductance("r3", r3)];
  if ([g1, g2, g3].filter((g) => g === Number.POSITIVE_INFINITY).length > 1) {
    fail({ code: "inconsistent", path: "star", expected: "at most one arm of 0 Ω", received: star });
  }
  return { r12: side(g1, g2, g3), r23: side(g2, g3, g1), r31: side(g3, g1, g2) };
}

/**
 * Star that behaves at its three terminals like a given delta: R1 = R12·R31/(R12 + R23 + R31), and cyclic.
 *
 * With one side open the star point falls on the terminal between the other two (that arm is 0 Ω). With two sides open one
 * terminal is tied to nothing: its arm is open, and the remaining side is shared out in halves (any split would do).
 * @param delta - sides in ohms, 0 or more, or `"open"`
 * @returns arms in ohms; `"open"` for a terminal tied to nothing
 * @throws ElectroheatError `not-a-number`, `out-of-range`
 * @source Kennelly 1899, as {@link deltaFromStar}
 * @example
 * ```ts
 * starFromDelta({ r12: ohms(12), r23: ohms(18), r31: ohms(6) }) // => { r1: 2, r2: 6, r3: 3 }
 * ```
 * @since 0.1.0
 */
export function starFromDelta(delta: DeltaOf<Ohms | Open>): StarOf<Ohms | Open> {
  const { r12, r23, r31 } = given(delta, "delta");
  checkOhmsOrOpen("r12", r12);
  checkOhmsOrOpen("r23", r23);
  checkOhmsOrOpen("r31", r31);
  const open = [r12, r23, r31].filter((r) => r === "open").length;
  const arm = (a: Ohms | Open, b: Ohms | Open, opposite: Ohms | Open): Ohms | Open => {
    if (a === "open" && b === "open") return "open";
    if (open === 2) return ((a === "open" ? (b as Ohms) : (a as Ohms)) / 2) as Ohms;
    // One side open: as that side grows without bound, an arm beside it tends to its other side, the opposite one to 0.
    if (a === "open") return b;
    if (b === "open") return a;
    if (opposite === "open") return 0 as Ohms;
    const sum = a + b + opposite;
    return (sum === 0 ? 0 : (a / sum) * b) as Ohms;
  };
  return { r1: arm(r12, r31, r23), r2: arm(r23, r12, r31), r3: arm(r31, r23, r12) };
}

function checkImpedance(path: string, z: Complex): void {
  if (isBounded(z)) return;
  const received = Number.isFinite(z?.re) ? z.im : z?.re;
  const code =
    received === undefined ? "missing" : Number.isFinite(received) ? "out-of-range" : "not-a-number";
  fail({ code, path, expected: "a finite impedance, each part at most 1e30", received, unit: "Ω" });
}

/** Where the sum cancels to rounding noise (a loop in resonance), no equivalent exists. */
function refuseResonance(path: string, sum: Complex, terms: readonly Complex[]): void {
  const size = terms.reduce((total, z) => total + modulus(z), 0);
  if (!(modulus(sum) > 1e-12 * size)) {
    fail({
      code: "inconsistent",
      path,
      expected: "impedances whose sum is not 0 (no resonance)",
      received: modulus(sum),
    });
  }
}

/**
 * Star of impedances that behaves at its terminals like a given delta: Z1 = Z12·Z31/(Z12 + Z23 + Z31), and cyclic.
 * @param delta - complex impedances in ohms
 * @returns complex impedances in ohms
 * @throws ElectroheatError `not-a-number`; `inconsistent` when the three sum to 0
 * @source Kennelly 1899, as {@link deltaFromStar}
 * @example
 * ```ts
 * starFromDeltaImpedance({ r12: { re: 20, im: 0 }, r23: { re: 10, im: 10 }, r31: { re: 0, im: -20 } }).r1
 * // => { re: 4, im: -12 }
 * ```
 * @since 0.1.0
 */
export function starFromDeltaImpedance(delta: DeltaOf<Complex>): StarOf<Complex> {
  const { r12, r23, r31 } = given(delta, "delta");
  checkImpedance("r12", r12);
  checkImpedance("r23", r23);
  checkImpedance("r31", r31);
  const sum = complexSum(complexSum(r12, r23), r31);
  refuseResonance("delta", sum, [r12, r23, r31]);
  const arm = (a: Complex, b: Complex): Complex => complexQuotient(complexProduct(a, b), sum);
  return { r1: arm(r12, r31), r2: arm(r23, r12), r3: arm(r31, r23) };
}

/**
 * Delta of impedances that behaves at its terminals like a given star: Z12 = (Z1·Z2 + Z2·Z3 + Z3·Z1)/Z3, and cyclic.
 * @param star - complex impedances in ohms, none of them 0
 * @returns complex impedances in ohms
 * @throws ElectroheatError `not-a-number`; `inconsistent` when an arm is 0 or the products sum to 0
 * @source Kennelly 1899, as {@link deltaFromStar}
 * @example
 * ```ts
 * deltaFromStarImpedance({ r1: { re: 4, im: -12 }, r2: { re: 4, im: 8 }, r3: { re: 8, im: -4 } }).r12
 * // => { re: 20, im: 0 }
 * ```
 * @since 0.1.0
 */
export function deltaFromStarImpedance(star: StarOf<Complex>): DeltaOf<Complex> {
  const { r1, r2, r3 } = given(star, "star");
  for (const [path, z] of [
    ["r1", r1],
    ["r2", r2],
    ["r3", r3],
  ] as const) {
    checkImpedance(path, z);
    if (modulus(z) === 0)
      fail({ code: "inconsistent", path, expected: "an impedance other than 0", received: 0, unit: "Ω" });
    checkMeasurable(path, modulus(z), "Ω");
  }
  const terms = [complexProduct(r1, r2), complexProduct(r2, r3), complexProduct(r3, r1)] as const;
  const sum = complexSum(complexSum(terms[0], terms[1]), terms[2]);
  refuseResonance("star", sum, terms);
  return { r12: complexQuotient(sum, r3), r23: complexQuotient(sum, r1), r31: complexQuotient(sum, r2) };
}
