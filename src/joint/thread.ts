/** Screw threads: areas from diameter and pitch, and the published sizes. */
import metric from "../../shared/tables/thread-metric.json" with { type: "json" };
import unified from "../../shared/tables/thread-unified.json" with { type: "json" };
import type { Basis } from "../material/index.ts";
import {
  checkMeasurable,
  checkOneOf,
  fail,
  given,
  inches,
  type Meters,
  millimeters,
  type SquareMeters,
  squareInches,
  squareMillimeters,
} from "../quantity/index.ts";
import { basisOf, cellNumber, rowNamed } from "./basis.ts";

/**
 * Areas and diameters of a 60° screw thread.
 * @since 0.1.0
 */
export interface ThreadGeometry {
  /** Tensile stress area (m²). */
  readonly stressArea: SquareMeters;
  /** Area at the minor diameter (m²). */
  readonly minorArea: SquareMeters;
  /** Pitch diameter (m). */
  readonly pitchDiameter: Meters;
  /** Minor (root) diameter (m). */
  readonly minorDiameter: Meters;
}

/** Pitches to take off the diameter: for the stress area and for the minor diameter of each standard. */
const OFF = {
  metric: { stress: 0.938194, minor: 1.226869 },
  unified: { stress: 0.9743, minor: 1.299038 },
} as const;
const OFF_PITCH_DIAMETER = 0.649519;

/**
 * Stress area, minor area, pitch and minor diameters of a 60° thread.
 *
 * stressArea = (π/4)·(diameter − 0.938194·pitch)² metric, (π/4)·(diameter − 0.9743·pitch)² unified; minorArea with
 * 1.226869 and 1.299038; pitchDiameter = diameter − 0.649519·pitch.
 * @param input.form - `metric` (ISO 68-1) or `unified` (ASME B1.1)
 * @param input.diameter - nominal (major) diameter, by caliper over the thread (m), more than the thread takes off it
 * @param input.pitch - distance between threads, by thread gauge (m), more than 0; 1/n inch for n threads per inch
 * @returns areas and diameters
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`; a diameter below the thread
 *   root is `out-of-range`
 * @source ISO 898-1 and ASME B1.13M; ASME B1.1
 * @example
 * ```ts
 * toSquareMillimeters(threadGeometry({ form: "metric", diameter: millimeters(6), pitch: millimeters(1) }).stressArea) // => 20.12
 * ```
 * @since 0.1.0
 */
export function threadGeometry(input: {
  readonly form: "metric" | "unified";
  readonly diameter: Meters;
  readonly pitch: Meters;
}): ThreadGeometry {
  given(input);
  const form = checkOneOf("form", input.form, ["metric", "unified"]);
  const { diameter, pitch } = input;
  checkMeasurable("pitch", pitch, "m");
  checkMeasurable("diameter", diameter, "m");
  const off = OFF[form];
  const minor = diameter - off.minor * pitch;
  if (!(minor > 0)) {
    fail({
      code: "out-of-range",
      path: "diameter",
      expected: `more than the thread takes off it, ${off.minor * pitch}`,
      received: diameter,
      unit: "m",
    });
  }
  const area = (d: number): SquareMeters => ((Math.PI / 4) * d * d) as SquareMeters;
  return {
    stressArea: area(diameter - off.stress * pitch),
    minorArea: area(minor),
    pitchDiameter: (diameter - OFF_PITCH_DIAMETER * pitch) as Meters,
    minorDiameter: minor as Meters,
  };
}

/**
 * A published thread size.
 * @since 0.1.0
 */
export interface ThreadSize {
  /** Designation as printed. */
  readonly thread: string;
  /** Which standard's form it has. */
  readonly form: "metric" | "unified";
  /** Nominal diameter (m). */
  readonly diameter: Meters;
  /** Pitch (m). */
  readonly pitch: Meters;
  /** Tensile stress area as printed (m²). */
  readonly stressArea: SquareMeters;
  /** Minor-diameter area as printed (m²). */
  readonly minorArea: SquareMeters;
  /** The table. */
  readonly basis: Basis;
}

/**
 * Diameter, pitch and areas of a published coarse metric size, M3 to M16.
 * @param thread - designation as the table writes it, such as `M8`; `threadSize` reads other spellings and fine threads
 * @returns the size, areas as printed
 * @throws ElectroheatError `missing`, `unknown-name` with the sizes known
 * @source ISO 898-1 (nominal stress areas), ASME B1.13M (minor areas)
 * @example
 * ```ts
 * toSquareMillimeters(metricThread("M8").stressArea) // => 36.6
 * ```
 * @since 0.1.0
 */
export function metricThread(thread: string): ThreadSize {
  const row = rowNamed(metric, "thread", thread);
  const at = (i: number): number => cellNumber(row, i, "thread");
  return {
    thread,
    form: "metric",
    diameter: millimeters(at(1)),
    pitch: millimeters(at(2)),
    stressArea: squareMillimeters(at(3)),
    minorArea: squareMillimeters(at(4)),
    basis: basisOf(metric),
  };
}

/**
 * Diameter, pitch and areas of a published unified size, 6-32 to 1/2-20.
 * @param thread - designation as the table writes it, such as `10-32` or `1/4-20`; `threadSize` reads other spellings
 * @returns the size, areas as printed
 * @throws ElectroheatError `missing`, `unknown-name` with the sizes known
 * @source ASME B1.1
 * @example
 * ```ts
 * toSquareInches(unifiedThread("1/4-20").stressArea) // => 0.0318
 * ```
 * @since 0.1.0
 */
export function unifiedThread(thread: string): ThreadSize {
  const row = rowNamed(unified, "thread", thread);
  const at = (i: number): number => cellNumber(row, i, "thread");
  return {
    thread,
    form: "unified",
    diameter: inches(at(1)),
    pitch: inches(1 / at(2)),
    stressArea: squareInches(at(3)),
    minorArea: squareInches(at(4)),
    basis: basisOf(unified),
  };
}
