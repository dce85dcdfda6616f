/** What makers ask of a coil, and which outside diameters keep all of them. */
import table from "../../shared/tables/coil-geometry-guidance.json" with { type: "json" };
import type { Basis } from "../material/index.ts";
import { checkPositive, finiteResult, type Meters, type Warning } from "../quantity/index.ts";
import type { OutsideDiameter } from "./coilDiameter.ts";
import { basisOf, thickWire } from "./domain.ts";

/** Ratio of a coil that a limit is about. */
type Ratio = "insideToWire" | "outsideToWire" | "stretchRatio";

/**
 * A maker's limit for the shape of a coil.
 * @since 0.1.0
 */
export interface CoilLimit {
  /** Whose limit of what. */
  readonly rule: string;
  /** The ratio it is about: a diameter over wire diameter, or pitch over wire diameter. */
  readonly ratio: "insideToWire" | "outsideToWire" | "stretchRatio";
  /** Lowest ratio, null when the maker gives none. */
  readonly low: number | null;
  /** Highest ratio, null when the maker gives none. */
  readonly high: number | null;
}

/**
 * Limits for coils, which disagree between makers, and the outside diameters that keep every one.
 * @since 0.1.0
 */
export interface CoilGuidance {
  /** Every limit by name; "about 3" is a recommendation and bounds nothing. */
  readonly limits: readonly CoilLimit[];
  /** Outside diameter from which every limit is kept, m. */
  readonly smallestOutsideDiameter: OutsideDiameter;
  /** Outside diameter up to which every limit is kept, m. */
  readonly largestOutsideDiameter: OutsideDiameter;
  /** Stretch ratio from which every limit is kept. */
  readonly smallestStretchRatio: number;
  /** Stretch ratio up to which every limit is kept. */
  readonly largestStretchRatio: number;
  /** Where they come from. */
  readonly basis: Basis;
  /** What looks like a slip: wire as thick as a bar. */
  readonly warnings: readonly Warning[];
}

function limits(): readonly CoilLimit[] {
  return table.rows.map((row): CoilLimit => {
    const [rule, low, high] = row as [string, number | null, number | null];
    const ratio: Ratio = rule.startsWith("inside")
      ? "insideToWire"
      : rule.startsWith("outside")
        ? "outsideToWire"
        : "stretchRatio";
    // "About 3:1" is a recommendation: a range of one point would refuse every coil.
    return low === high ? { rule, ratio, low: null, high: null } : { rule, ratio, low, high };
  });
}

/**
 * Limits that makers state for coils of a wire, by name, with the outside diameters and stretch that keep them all.
 *
 * They guard against turns that crack on a small mandrel and coils that sag or short on a large one. None speaks of
 * temperature or support spacing: a hot, long unsupported coil sags within them all the same.
 * @param wireDiameter - diameter of the wire, by micrometer, m, more than 0
 * @returns the limits, the range that satisfies every one of them, and a warning for a diameter that is more likely a slip of units
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source resistance-wire maker U, alloy maker A (2003, p. 79), open-coil maker, trade journal; common practice
 * @example
 * ```ts
 * coilGuidance(millimeters(2)) // => { smallestOutsideDiameter: 0.01, largestOutsideDiameter: 0.016, … }
 * ```
 * @since 0.1.0
 */
export function coilGuidance(wireDiameter: Meters): CoilGuidance {
  checkPositive("wireDiameter", wireDiameter, "m");
  const all = limits();
  const bound = (about: (ratio: Ratio) => boolean, end: "low" | "high", plus: number): number => {
    const values = all
      .filter(({ ratio }) => about(ratio))
      .flatMap((limit) => {
        const value = limit[end];
        return value === null ? [] : [value + (limit.ratio === "insideToWire" ? plus : 0)];
      });
    return end === "low" ? Math.max(...values) : Math.min(...values);
  };
  const isDiameter = (ratio: Ratio): boolean => ratio !== "stretchRatio";
  const isStretch = (ratio: Ratio): boolean => ratio === "stretchRatio";
  return {
    limits: all,
    // An outside diameter is the inside one and two wires.
    smallestOutsideDiameter: finiteResult(bound(isDiameter, "low", 2) * wireDiameter, "m"),
    largestOutsideDiameter: finiteResult(bound(isDiameter, "high", 2) * wireDiameter, "m"),
    smallestStretchRatio: bound(isStretch, "low", 0),
    largestStretchRatio: bound(isStretch, "high", 0),
    basis: basisOf(table),
    warnings: thickWire("wireDiameter", wireDiameter),
  };
}

/** One warning for every limit that a coil does not keep. A ratio equal to the limit keeps it, rounding aside. */
export function coilWarnings(shape: Readonly<Record<Ratio, number>>): readonly Warning[] {
  return limits().flatMap(({ rule, ratio, low, high }): Warning[] => {
    const value = shape[ratio];
    const slack = 1e-9 * value;
    const broken =
      low !== null && value < low - slack ? low : high !== null && value > high + slack ? high : null;
    if (broken === null) return [];
    const message = `${ratio} is ${Number(value.toPrecision(4))}; ${rule}: ${low ?? "any"} to ${high ?? "any"}`;
    return [{ code: "suspicious", path: ratio, message, limit: broken, unit: "1", source: table.source }];
  });
}
