/** Small printed tables by name: metals of a joint, conical washers, bolts for bars, proof loads. */
import bolting from "../../shared/tables/bolting-din-43673.json" with { type: "json" };
import washers from "../../shared/tables/disc-spring-din-6796.json" with { type: "json" };
import metals from "../../shared/tables/joint-expansion.json" with { type: "json" };
import proofLoads from "../../shared/tables/proof-load-iso-898-1.json" with { type: "json" };
import type { Basis } from "../material/index.ts";
import {
  checkMeasurable,
  checkOneOf,
  fail,
  gigapascals,
  given,
  type Meters,
  millimeters,
  millionthsPerKelvin,
  type Newtons,
  newtons,
  type Pascals,
  type PerKelvin,
  toMillimeters,
  type Warning,
} from "../quantity/index.ts";
import { basisOf, cellNumber, columnOf, JOINT_DEFERRAL, rowNamed } from "./basis.ts";
import type { DiscSpring } from "./discSpring.ts";

/**
 * Metals of studs, nuts and bars.
 * @since 0.1.0
 */
export type JointMetal =
  | "copper"
  | "brass C36000"
  | "carbon steel"
  | "stainless A2"
  | "silicon bronze C65500"
  | "brass C46400";

/**
 * Expansion and stiffness of a joint metal.
 * @since 0.1.0
 */
export interface JointMetalData {
  /** Coefficient of linear expansion near room temperature (1/K). */
  readonly expansion: PerKelvin;
  /** Modulus of elasticity (Pa). */
  readonly modulus: Pascals;
  /** Where they come from. */
  readonly basis: Basis;
  /** What the reader must know. */
  readonly warnings: readonly Warning[];
}

/**
 * Expansion and modulus of a joint metal, for `preloadChange` and `boltStiffness`.
 *
 * Near room temperature; handbooks spread by about 3 % in expansion.
 * @param metal - metal by name
 * @returns expansion, modulus, basis, warnings; rows from memory say so
 * @throws ElectroheatError `missing`, `unknown-name` with the metals known
 * @source alloy data sheets of C36000 and C11000; other rows from memory
 * @example
 * ```ts
 * const { expansion, modulus } = jointMetal("brass C36000");
 * [expansion, modulus] // => [20.5e-6, 96.5e9]
 * ```
 * @since 0.1.0
 */
export function jointMetal(metal: JointMetal): JointMetalData {
  const row = rowNamed(metals, "metal", metal);
  const at = (name: string) => row[columnOf(metals, name)];
  const warnings: Warning[] =
    at("provenance") === "memory"
      ? [
          {
            code: "approximate",
            path: "metal",
            message: "From memory, no source seen: about 3 % in expansion.",
            source: "common practice",
          },
        ]
      : [];
  return {
    expansion: millionthsPerKelvin(cellNumber(row, columnOf(metals, "expansion"), "metal")),
    modulus: gigapascals(cellNumber(row, columnOf(metals, "modulus"), "metal")),
    basis: basisOf(metals, { kind: String(at("kind")), source: String(at("source")) }),
    warnings,
  };
}

/**
 * A conical spring washer as standardized.
 * @since 0.1.0
 */
export interface ConicalWasher {
  /** At its least free height: the cautious side. */
  readonly lowest: DiscSpring;
  /** At its greatest free height. */
  readonly highest: DiscSpring;
  /** Load as printed (N), twice the load to flat at least height; `null` where none was seen. */
  readonly load: Newtons | null;
  /** Where it comes from. */
  readonly basis: Basis;
}

/**
 * Dimensions of a conical spring washer by bolt size, for `discSpringState`.
 * @param size - bolt size, such as `M6`; M8 is left out, its printed height does not fit the series
 * @returns the washer at both ends of its free height, printed load, basis
 * @throws ElectroheatError `missing`, `unknown-name` with the sizes known; `outside-table` for M8
 * @source DIN 6796:1987
 * @example
 * ```ts
 * toMillimeters(conicalWasher("M6").lowest.coneHeight) // => 0.2
 * ```
 * @since 0.1.0
 */
export function conicalWasher(size: string): ConicalWasher {
  if (size === "M8") {
    fail({
      code: "outside-table",
      path: "size",
      expected:
        "another size: the height printed for M8 does not fit the series, so measure the washer you hold",
      received: size,
    });
  }
  const row = rowNamed(washers, "size", size);
  const at = (name: string): number => cellNumber(row, columnOf(washers, name), "size");
  const spring = (height: string): DiscSpring => ({
    outerDiameter: millimeters(at("outerDiameter")),
    innerDiameter: millimeters(at("innerDiameter")),
    thickness: millimeters(at("thickness")),
    coneHeight: millimeters(at(height) - at("thickness")),
  });
  const load = row[columnOf(washers, "load")];
  return {
    lowest: spring("heightMin"),
    highest: spring("heightMax"),
    load: typeof load === "number" ? newtons(load) : null,
    basis: basisOf(washers),
  };
}

/**
 * Bolt and hole for the overlap of flat bars.
 * @since 0.1.0
 */
export interface BarBolting {
  /** Bolt by designation. */
  readonly bolt: string;
  /** Hole (m). */
  readonly holeDiameter: Meters;
  /** Where it comes from. */
  readonly basis: Basis;
  /** To whom it defers. */
  readonly deferral: string;
}

/**
 * Bolt and hole a standard gives for lapped bars of one width; nothing between widths.
 *
 * One bolt up to 25 mm, two or four above. The stud of a module is given: a smaller one than this is no fault.
 * @param width - bar width (m), one of the table's
 * @returns bolt, hole, basis, deferral
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`; `outside-table` with the widths known
 * @source DIN 43673, as repeated in a bar maker's sheet
 * @example
 * ```ts
 * const { bolt, holeDiameter } = barBolting(millimeters(20));
 * [bolt, toMillimeters(holeDiameter)] // => ["M8", 9]
 * ```
 * @since 0.1.0
 */
export function barBolting(width: Meters): BarBolting {
  checkMeasurable("width", width, "m");
  const size = toMillimeters(width);
  const row = bolting.rows.find(([one]) => Math.abs(Number(one) / size - 1) < 1e-9);
  if (row === undefined) {
    return fail({
      code: "outside-table",
      path: "width",
      expected: `one of ${bolting.rows.map(([one]) => one).join(", ")} mm`,
      received: size,
      unit: "mm",
    });
  }
  return {
    bolt: String(row[1]),
    holeDiameter: millimeters(cellNumber(row, 2, "width")),
    basis: basisOf(bolting),
    deferral: JOINT_DEFERRAL,
  };
}

/**
 * A proof load as printed.
 * @since 0.1.0
 */
export interface ProofLoad {
  /** Proof load (N). */
  readonly load: Newtons;
  /** Where it comes from. */
  readonly basis: Basis;
}

/**
 * Proof load of a metric bolt as printed, rounded to three digits.
 * @param input.size - coarse thread, `M3` to `M16`
 * @param input.grade - property class, `4.6` to `12.9`
 * @returns proof load with its basis
 * @throws ElectroheatError `missing`, `unknown-name` with what is known
 * @source ISO 898-1, coarse thread
 * @example
 * ```ts
 * proofLoad({ size: "M6", grade: "8.8" }).load // => 11600
 * ```
 * @since 0.1.0
 */
export function proofLoad(input: { readonly size: string; readonly grade: string }): ProofLoad {
  given(input);
  const row = rowNamed(proofLoads, "size", input.size);
  const grades = proofLoads.columns.slice(2).map(({ name }) => name.replace("class", ""));
  const grade = checkOneOf("grade", input.grade, grades);
  const load = cellNumber(row, columnOf(proofLoads, `class${grade}`), "grade");
  return { load: newtons(load), basis: basisOf(proofLoads) };
}
