/** The supply: RMS phasors of the lines against the supply neutral. */
import {
  type Complex,
  complexDifference,
  complexScaled,
  complexSum,
  modulus,
  phasor,
} from "../numeric/index.ts";
import {
  checkFinite,
  checkMeasurable,
  checkMeasurableOrZero,
  checkOneOf,
  fail,
  given,
  givenList,
  type LineVolts,
  type Ohms,
  type Volts,
} from "../quantity/index.ts";

/**
 * One supply conductor.
 * @since 0.1.0
 */
export interface SupplyLine {
  /** Node it feeds, such as `"L1"` or `"N"`. */
  readonly node: string;
  /** RMS phasor against the supply neutral, in volts. */
  readonly voltage: Complex;
  /** Resistance of source and feeder in ohms; ideal if left out. */
  readonly sourceResistance?: Ohms;
}

/**
 * A supply: its conductors, in the order results keep, and those that have lost their voltage.
 * @since 0.1.0
 */
export interface Supply {
  /** Lines, and the neutral where there is one (at 0 V). */
  readonly lines: readonly SupplyLine[];
  /** Nodes of lines that are lost: a blown fuse or open contact; the module side floats. */
  readonly lost?: readonly string[];
}

/**
 * Order in which the lines reach their peaks.
 * @since 0.1.0
 */
export type Rotation = "L1-L2-L3" | "L1-L3-L2";

const LINES = ["L1", "L2", "L3"] as const;
const ROTATIONS = ["L1-L2-L3", "L1-L3-L2"] as const;

/**
 * A balanced three-phase supply on L1, L2, L3, with its neutral on N: V/√3 at 0°, −120° and +120°.
 * @param input.lineVoltage - voltage between lines, V, more than 0
 * @param input.rotation - order of the peaks; L1-L2-L3 if left out
 * @param input.sourceResistance - resistance of source and feeder of each line, Ω; ideal if left out
 * @returns the supply
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`
 * @source IEC 60445 (marks L1, L2, L3, N); phasor definition of a balanced three-phase system
 * @example
 * ```ts
 * balancedSupply({ lineVoltage: volts(480) }).lines[0]?.voltage // => { re: 277.128, im: 0 }
 * ```
 * @since 0.1.0
 */
export function balancedSupply(input: {
  readonly lineVoltage: LineVolts;
  readonly rotation?: Rotation;
  readonly sourceResistance?: Ohms;
}): Supply {
  const { lineVoltage, rotation = "L1-L2-L3", sourceResistance } = given(input);
  checkMeasurable("lineVoltage", lineVoltage, "V");
  checkOneOf("rotation", rotation, ROTATIONS);
  if (sourceResistance !== undefined) checkMeasurableOrZero("sourceResistance", sourceResistance, "Ω");
  const magnitude = lineVoltage / Math.sqrt(3);
  const lag = rotation === "L1-L2-L3" ? -120 : 120;
  const source = sourceResistance === undefined ? {} : { sourceResistance };
  const lines: SupplyLine[] = LINES.map((node, i) => ({
    node,
    voltage: phasor({ magnitude, degrees: i === 0 ? 0 : i === 1 ? lag : -lag }),
    ...source,
  }));
  return { lines: [...lines, { node: "N", voltage: { re: 0, im: 0 } }] };
}

/**
 * A three-phase supply from the three line voltages as measured: the triangle they form fixes all angles.
 *
 * The neutral is placed at the triangle's centroid (no zero-sequence voltage): three line-to-line readings cannot
 * tell where it really is. That changes nothing for a module without neutral; with one, measure line to neutral and
 * use {@link supplyFromNeutralVoltages}.
 * @param input.v12 - voltage L1 to L2, V, more than 0
 * @param input.v23 - voltage L2 to L3, V, more than 0
 * @param input.v31 - voltage L3 to L1, V, more than 0
 * @param input.rotation - order of the peaks; L1-L2-L3 if left out
 * @returns the supply, L1 towards 0° as in a balanced one
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`; `inconsistent` when they form no triangle
 * @source law of cosines
 * @example
 * ```ts
 * supplyFromLineVoltages({ v12: volts(480), v23: volts(480), v31: volts(480) }).lines[1]?.voltage
 * // => { re: -138.564, im: -240 }
 * ```
 * @since 0.1.0
 */
export function supplyFromLineVoltages(input: {
  readonly v12: LineVolts;
  readonly v23: LineVolts;
  readonly v31: LineVolts;
  readonly rotation?: Rotation;
}): Supply {
  const { v12, v23, v31, rotation = "L1-L2-L3" } = given(input);
  checkMeasurable("v12", v12, "V");
  checkMeasurable("v23", v23, "V");
  checkMeasurable("v31", v31, "V");
  checkOneOf("rotation", rotation, ROTATIONS);
  const longest = Math.max(v12, v23, v31);
  // Equality is a collapsed triangle: what a meter shows on a module that has lost one line.
  if (!(2 * longest <= v12 + v23 + v31)) {
    fail({
      code: "inconsistent",
      path: "v12",
      expected: "three voltages that close a triangle (each at most the other two together)",
      received: `${v12}, ${v23}, ${v31} V`,
    });
  }
  // L1 at the origin, L2 along the real axis, L3 from the two remaining sides; above the axis means L2 lags L1.
  const x = (v12 * v12 + v31 * v31 - v23 * v23) / (2 * v12);
  const height = Math.sqrt(Math.max(0, (v31 - x) * (v31 + x)));
  const corners: readonly Complex[] = [
    { re: 0, im: 0 },
    { re: v12, im: 0 },
    { re: x, im: rotation === "L1-L2-L3" ? -height : height },
  ];
  const centroid = complexScaled(
    complexSum(complexSum(corners[0] as Complex, corners[1] as Complex), corners[2] as Complex),
    1 / 3,
  );
  // Turned so that L1 lies at 0°, as in a balanced supply.
  const first = complexDifference(corners[0] as Complex, centroid);
  const length = modulus(first);
  // Of a line lost in the middle of the other two nothing is left to turn by: L1 then lies where it goes to, with L2 at ∓90°.
  const hasAngle = length > 1e-12 * longest;
  const towards = hasAngle
    ? complexScaled(first, 1 / length)
    : { re: 0, im: rotation === "L1-L2-L3" ? 1 : -1 };
  const lines = LINES.map((node, i) => {
    const from = complexDifference(corners[i] as Complex, centroid);
    return {
      node,
      voltage: {
        // + 0: a collapsed triangle would leave −0, which JSON cannot say.
        re: from.re * towards.re + from.im * towards.im + 0,
        im: i === 0 ? 0 : from.im * towards.re - from.re * towards.im + 0,
      },
    };
  });
  return { lines: [...lines, { node: "N", voltage: { re: 0, im: 0 } }] };
}

/**
 * A three-phase supply from line-to-neutral voltages and the angles between them.
 * @param input.voltages - L1, L2, L3 to neutral, V, 0 or more
 * @param input.degrees - their angles; 0, −120, 120 if left out
 * @returns the supply, with the neutral on N at 0 V
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source phasor definition
 * @example
 * ```ts
 * supplyFromNeutralVoltages({ voltages: [volts(230), volts(228), volts(231)] }).lines[0]?.voltage // => { re: 230, im: 0 }
 * ```
 * @since 0.1.0
 */
export function supplyFromNeutralVoltages(input: {
  readonly voltages: readonly [Volts, Volts, Volts];
  readonly degrees?: readonly [number, number, number];
}): Supply {
  const { degrees = [0, -120, 120] } = given(input);
  const voltages = givenList(input.voltages, "voltages");
  givenList(degrees, "degrees");
  const lines = LINES.map((node, i) => {
    const [magnitude, angle] = [voltages[i] as number, degrees[i] as number];
    checkMeasurableOrZero(`voltages.${i}`, magnitude, "V");
    checkFinite(`degrees.${i}`, angle, "°");
    return { node, voltage: phasor({ magnitude, degrees: angle }) };
  });
  return { lines: [...lines, { node: "N", voltage: { re: 0, im: 0 } }] };
}

/**
 * The same supply with lines lost: a blown fuse or an open contact ahead of the module.
 * @param input.supply - the supply
 * @param input.lines - nodes of the lines that are lost
 * @returns a new supply; the lost lines carry no current and their module side floats
 * @throws ElectroheatError `missing`, `unknown-name`
 * @example
 * ```ts
 * withoutLines({ supply: balancedSupply({ lineVoltage: volts(480) }), lines: ["L3"] }).lost // => ["L3"]
 * ```
 * @since 0.1.0
 */
export function withoutLines(input: { readonly supply: Supply; readonly lines: readonly string[] }): Supply {
  const { supply, lines } = given(input);
  if (!Array.isArray(supply?.lines)) {
    fail({ code: "missing", path: "supply", expected: "a supply with lines", received: supply });
  }
  if (!Array.isArray(lines)) {
    fail({ code: "missing", path: "lines", expected: "a list of lines", received: lines });
  }
  const known = supply.lines.map((line) => line.node);
  for (const line of lines) checkOneOf("lines", line, known);
  return { ...supply, lost: [...new Set([...(supply.lost ?? []), ...lines])] };
}
