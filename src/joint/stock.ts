/** A new bar from what is on the shelf: is it the same section, how much to cut, what it weighs. */
import {
  checkMeasurable,
  checkMeasurableOrZero,
  checkWhole,
  given,
  type Kilograms,
  type KilogramsPerCubicMeter,
  type Meters,
  type SquareMeters,
} from "../quantity/index.ts";
import { netSection } from "./bar.ts";

/**
 * Width and thickness of a flat bar.
 * @since 0.1.0
 */
export interface BarSection {
  /** Width (m). */
  readonly width: Meters;
  /** Thickness (m). */
  readonly thickness: Meters;
}

/**
 * Old bar against stock at hand.
 * @since 0.1.0
 */
export interface StockComparison {
  /** Section of the old bar (m²). */
  readonly oldSection: SquareMeters;
  /** Section of the stock (m²). */
  readonly newSection: SquareMeters;
  /** New over old section. */
  readonly ratio: number;
  /** Old section net of the hole (m²). */
  readonly oldNet: SquareMeters;
  /** New section net of the hole (m²). */
  readonly newNet: SquareMeters;
  /** New over old net section: what counts at the stud. */
  readonly netRatio: number;
  /** New over old perimeter: what cools the bar. */
  readonly perimeterRatio: number;
}

/**
 * Compares stock with the bar it is to replace, full and net of the stud hole.
 *
 * It compares copper with copper. Stud pitch, edge distance, overhang and clearance to other live parts are not in
 * it: check them on the bench.
 * @param input.old - width and thickness of the old bar, by caliper on sound metal (m)
 * @param input.stock - width and thickness of the stock (m)
 * @param input.holeDiameter - stud hole (m), 0 or more; 0 if left out
 * @returns sections, net sections and ratios
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent`
 * @source definition
 * @example
 * ```ts
 * const old = { width: inches(0.75), thickness: inches(0.125) };
 * const stock = { width: millimeters(20), thickness: millimeters(3) };
 * const { ratio, netRatio } = compareStock({ old, stock, holeDiameter: millimeters(8.5) });
 * [ratio, netRatio] // => [0.992002, 1.02997]
 * ```
 * @since 0.1.0
 */
export function compareStock(input: {
  readonly old: BarSection;
  readonly stock: BarSection;
  readonly holeDiameter?: Meters;
}): StockComparison {
  given(input);
  for (const name of ["old", "stock"] as const) {
    const bar = input[name];
    given(bar, name);
    checkMeasurable(`${name}.width`, bar.width, "m");
    checkMeasurable(`${name}.thickness`, bar.thickness, "m");
  }
  const hole = input.holeDiameter === undefined ? {} : { holeDiameter: input.holeDiameter };
  const [oldSection, newSection] = [netSection(input.old), netSection(input.stock)];
  const [oldNet, newNet] = [netSection({ ...input.old, ...hole }), netSection({ ...input.stock, ...hole })];
  const around = (bar: BarSection): number => 2 * (bar.width + bar.thickness);
  return {
    oldSection,
    newSection,
    ratio: newSection / oldSection,
    oldNet,
    newNet,
    netRatio: newNet / oldNet,
    perimeterRatio: around(input.stock) / around(input.old),
  };
}

/**
 * What to cut.
 * @since 0.1.0
 */
export interface CutList {
  /** Length of one bar (m). */
  readonly length: Meters;
  /** Stock used with one kerf per bar (m). */
  readonly stock: Meters;
  /** Mass of all bars, holes ignored (kg). */
  readonly mass: Kilograms;
}

/**
 * Cut list for bars over studs: length = (studs − 1)·pitch + 2·overhang; stock = bars·(length + kerf); mass =
 * bars·length·section·density.
 * @param input.studs - studs under one bar, whole, 2 to 100
 * @param input.pitch - distance between studs (m), more than 0
 * @param input.overhang - from the last stud's center to the end of the bar (m), 0 or more
 * @param input.bars - number of bars, whole, 1 to 1000
 * @param input.kerf - width of the saw cut (m), 0 or more
 * @param input.width - bar width (m), more than 0
 * @param input.thickness - bar thickness (m), more than 0
 * @param input.density - density (kg/m³), more than 0; copper 8.89 to 8.96 g/cm³
 * @returns length, stock, mass
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition
 * @example
 * ```ts
 * cutList({
 *   studs: 3, pitch: millimeters(45), overhang: millimeters(12), bars: 3, kerf: millimeters(2),
 *   width: millimeters(20), thickness: millimeters(3), density: gramsPerCubicCentimeter(8.96),
 * }) // => { length: 0.114, stock: 0.348, mass: 0.183859 }
 * ```
 * @since 0.1.0
 */
export function cutList(input: {
  readonly studs: number;
  readonly pitch: Meters;
  readonly overhang: Meters;
  readonly bars: number;
  readonly kerf: Meters;
  readonly width: Meters;
  readonly thickness: Meters;
  readonly density: KilogramsPerCubicMeter;
}): CutList {
  given(input);
  const { studs, pitch, overhang, bars, kerf, width, thickness, density } = input;
  checkWhole("studs", studs, 2, 100);
  checkMeasurable("pitch", pitch, "m");
  checkMeasurableOrZero("overhang", overhang, "m");
  checkWhole("bars", bars, 1, 1000);
  checkMeasurableOrZero("kerf", kerf, "m");
  checkMeasurable("density", density, "kg/m³");
  const length = (studs - 1) * pitch + 2 * overhang;
  return {
    length: length as Meters,
    stock: (bars * (length + kerf)) as Meters,
    mass: (bars * length * netSection({ width, thickness }) * density) as Kilograms,
  };
}
