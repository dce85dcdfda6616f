/**
 * The three diameters of a coil. Makers state the inside, the outside or the mean one, and mixing them up is the
 * usual slip: each has its own kind, so that one cannot be passed where another is meant.
 */
import { checkPositive, fail, finiteResult, given, type KindTag, type Meters } from "../quantity/index.ts";

/** Inside diameter of a coil: the mandrel it was wound on. Plain `Meters` flows in, another coil diameter does not. @since 0.1.0 */
export type InsideDiameter = Meters & KindTag<"coil inside diameter">;
/** Outside diameter of a coil, by caliper over the turns. Plain `Meters` flows in, another coil diameter does not. @since 0.1.0 */
export type OutsideDiameter = Meters & KindTag<"coil outside diameter">;
/** Mean diameter of a coil: of the helix that the wire axis follows. Plain `Meters` flows in, another coil diameter does not. @since 0.1.0 */
export type MeanDiameter = Meters & KindTag<"coil mean diameter">;

/**
 * Mean diameter of a coil from the mandrel it was wound on: insideDiameter + wireDiameter.
 * @param input.insideDiameter - inside diameter of the coil, by plug gauge or mandrel, m, more than 0
 * @param input.wireDiameter - diameter of the wire, by micrometer, m, more than 0
 * @returns mean diameter, m
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source definition
 * @example
 * ```ts
 * meanDiameterFromInside({ insideDiameter: millimeters(10), wireDiameter: millimeters(2.05) }) // => 0.01205
 * ```
 * @since 0.1.0
 */
export function meanDiameterFromInside(input: {
  readonly insideDiameter: InsideDiameter;
  readonly wireDiameter: Meters;
}): MeanDiameter {
  given(input);
  checkPositive("insideDiameter", input.insideDiameter, "m");
  checkPositive("wireDiameter", input.wireDiameter, "m");
  return finiteResult(input.insideDiameter + input.wireDiameter, "m");
}

/**
 * Mean diameter of a coil from the caliper over its turns: outsideDiameter − wireDiameter.
 * @param input.outsideDiameter - outside diameter of the coil, by caliper, m, more than twice `wireDiameter`
 * @param input.wireDiameter - diameter of the wire, by micrometer, m, more than 0
 * @returns mean diameter, m
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent` when no hole would be left
 * @source definition
 * @example
 * ```ts
 * meanDiameterFromOutside({ outsideDiameter: millimeters(6), wireDiameter: millimeters(0.5) }) // => 0.0055
 * ```
 * @since 0.1.0
 */
export function meanDiameterFromOutside(input: {
  readonly outsideDiameter: OutsideDiameter;
  readonly wireDiameter: Meters;
}): MeanDiameter {
  given(input);
  const { outsideDiameter, wireDiameter } = input;
  checkPositive("outsideDiameter", outsideDiameter, "m");
  checkPositive("wireDiameter", wireDiameter, "m");
  checkHole("outsideDiameter", outsideDiameter, 2 * wireDiameter);
  return finiteResult(outsideDiameter - wireDiameter, "m");
}

/**
 * Mandrel for a coil of a mean diameter: meanDiameter − wireDiameter.
 * @param input.meanDiameter - mean diameter of the coil, m, more than `wireDiameter`
 * @param input.wireDiameter - diameter of the wire, m, more than 0
 * @returns inside diameter, m; spring-back is not allowed for
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent` when no hole would be left
 * @source definition
 * @example
 * ```ts
 * insideDiameterFromMean({ meanDiameter: millimeters(12.05), wireDiameter: millimeters(2.05) }) // => 0.01
 * ```
 * @since 0.1.0
 */
export function insideDiameterFromMean(input: {
  readonly meanDiameter: MeanDiameter;
  readonly wireDiameter: Meters;
}): InsideDiameter {
  given(input);
  checkPositive("wireDiameter", input.wireDiameter, "m");
  checkMean(input.meanDiameter, input.wireDiameter);
  return finiteResult(input.meanDiameter - input.wireDiameter, "m");
}

/**
 * Room that a coil of a mean diameter takes: meanDiameter + wireDiameter.
 * @param input.meanDiameter - mean diameter of the coil, m, more than `wireDiameter`
 * @param input.wireDiameter - diameter of the wire, m, more than 0
 * @returns outside diameter, m
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `inconsistent` when no hole would be left
 * @source definition
 * @example
 * ```ts
 * outsideDiameterFromMean({ meanDiameter: millimeters(12.05), wireDiameter: millimeters(2.05) }) // => 0.0141
 * ```
 * @since 0.1.0
 */
export function outsideDiameterFromMean(input: {
  readonly meanDiameter: MeanDiameter;
  readonly wireDiameter: Meters;
}): OutsideDiameter {
  given(input);
  checkPositive("wireDiameter", input.wireDiameter, "m");
  checkMean(input.meanDiameter, input.wireDiameter);
  return finiteResult(input.meanDiameter + input.wireDiameter, "m");
}

/** A turn whose mean diameter does not exceed the wire has no hole. */
export function checkMean(meanDiameter: MeanDiameter, wireDiameter: Meters): void {
  checkPositive("meanDiameter", meanDiameter, "m");
  checkHole("meanDiameter", meanDiameter, wireDiameter);
}

function checkHole(path: string, value: number, least: number): void {
  if (value > least) return;
  fail({
    code: "inconsistent",
    path,
    expected: `more than ${least} m, so that the coil has a hole`,
    received: value,
    unit: "m",
  });
}
