/** How severe a rise is, by a named published scale; undecided where the reading cannot tell. */
import neta from "../../shared/tables/joint-thermal-severity-neta.json" with { type: "json" };
import practitioner from "../../shared/tables/joint-thermal-severity-practitioner.json" with { type: "json" };
import { compareQuoted } from "../decision/index.ts";
import type { Basis } from "../material/index.ts";
import {
  checkBetween,
  checkMeasurable,
  checkMeasurableOrZero,
  checkOneOf,
  fail,
  given,
  type Kelvins,
  type Warning,
} from "../quantity/index.ts";
import { basisOf, type Cell, columnOf, JOINT_DEFERRAL, type SharedTable } from "./basis.ts";
import { riseAtFullLoad } from "./scan.ts";

/**
 * A named severity scale.
 * @since 0.1.0
 */
export type SeverityScale = "neta-100.18" | "practitioner-limits";

/**
 * One end of a graded rise.
 * @since 0.1.0
 */
export interface SeverityLevel {
  /** The rise that was graded (K). */
  readonly rise: Kelvins;
  /** Rank of the row, 1 the mildest; 0 below the first row. */
  readonly level: number;
  /** What the row asks for. */
  readonly action: string;
}

/**
 * A rise graded by a scale.
 * @since 0.1.0
 */
export interface Severity {
  /** The level if both ends of the rise fall on one row and the load allows a verdict. */
  readonly level: number | "undecided";
  /** The level the joint has at the least, decided or not: low load only hides. */
  readonly atLeast: number;
  /** What that row asks for, or why nothing can be said. */
  readonly action: string;
  /** The lower end of the rise. */
  readonly low: SeverityLevel;
  /** The upper end. */
  readonly high: SeverityLevel;
  /** Scale, edition and kind. */
  readonly basis: Basis;
  /** To whom the verdict defers. */
  readonly deferral: string;
  /** What the reader must know. */
  readonly warnings: readonly Warning[];
}

/** Below this a camera sees mostly the reflection of the room. */
const LOWEST_EMISSIVITY = 0.1;
const DOUBTFUL_EMISSIVITY = 0.6;

const MATT_TARGET = "scan a target of tape or matt paint put on while isolated, or measure millivolts";

/** Refuses surfaces a camera cannot read; bright copper has 0.03 to 0.05. */
function checkReadableEmissivity(path: string, emissivity: number | "unknown"): void {
  if (emissivity === "unknown") return;
  checkBetween(path, emissivity, 0, 1);
  if (emissivity < LOWEST_EMISSIVITY) {
    fail({
      code: "not-identifiable",
      path,
      expected: `0.1 or more: bare bright metal (copper 0.03 to 0.05) shows the reflected room, not its own temperature; ${MATT_TARGET}`,
      received: emissivity,
    });
  }
}

/** Row of a scale for a rise; the first scale's edges belong to the row below, the second's to the row above. */
function grade(scale: SeverityScale, comparison: "similar" | "ambient", rise: number): SeverityLevel {
  const table: SharedTable = scale === "neta-100.18" ? neta : practitioner;
  const to = columnOf(table, scale === "neta-100.18" ? `${comparison}To` : `${comparison}Below`);
  const [levelAt, actionAt] = [columnOf(table, "level"), columnOf(table, "action")];
  const against = (limit: Cell | undefined): number =>
    typeof limit === "number" ? compareQuoted({ left: rise, right: limit }) : -1;
  if (scale === "neta-100.18" && against(table.rows[0]?.[to - 1]) < 0) {
    return { rise: rise as Kelvins, level: 0, action: "below the first row of the scale" };
  }
  const open = table.rows.length - 1;
  const found = table.rows.findIndex((row, i) => {
    // A blank upper edge closes the scale on its last row and skips a row elsewhere.
    if (row[to] === null) return i === open;
    return scale === "neta-100.18" ? against(row[to]) <= 0 : against(row[to]) < 0;
  });
  const row = table.rows[found] as readonly Cell[];
  return { rise: rise as Kelvins, level: Number(row[levelAt]), action: String(row[actionAt]) };
}

/**
 * Grades a scanned rise by a named published scale, as measured or referred to full load.
 *
 * Neither scale corrects for load: `load` says which rise is graded, and a scale's own words about load go into the
 * warnings. Both ends of the rise (its half-width, and for full load the exponents 1.6 and 2) must fall on one row,
 * else the level is undecided; below 40 % load it is undecided in any case, but `atLeast` then stands on the rise as
 * seen, since more load only adds to it. Scales disagree: always show `basis`. A
 * bare bright surface is refused; of a surface of unknown emissivity nothing is known, whatever the camera shows: the
 * level is undecided and `atLeast` 0.
 * @param input.rise - rise as seen, emissivity allowed for (K), 0 or more
 * @param input.riseHalfWidth - half-width of it, such as the camera's ±2 K (K), 0 or more
 * @param input.comparison - `similar`: over a similar component under similar load; `ambient`: over the air
 * @param input.loadFraction - current over full-load current, more than 0 to 2
 * @param input.load - which rise is graded: `as measured` or `full load`
 * @param input.scale - named scale
 * @param input.emissivity - emissivity of the spot looked at, 0 to 1, or `unknown`; 0.93 to 0.97 for matt tape
 * @returns level and action, least level, both ends, basis, deferral, warnings
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`; `not-identifiable` for a
 *   surface a camera cannot read
 * @source ANSI/NETA ATS-2003, Table 100.18; practitioner's published limit values; NFPA 70B-2023, 7.4.5 (40 % load)
 * @example
 * ```ts
 * const { level, action } = scanSeverity({
 *   rise: kelvins(22), riseHalfWidth: kelvins(2), comparison: "similar",
 *   loadFraction: 0.6, load: "full load", scale: "neta-100.18", emissivity: 0.95,
 * });
 * [level, action] // => [4, "major discrepancy; repair immediately"]
 * ```
 * @since 0.1.0
 */
export function scanSeverity(input: {
  readonly rise: Kelvins;
  readonly riseHalfWidth: Kelvins;
  readonly comparison: "similar" | "ambient";
  readonly loadFraction: number;
  readonly load: "as measured" | "full load";
  readonly scale: SeverityScale;
  readonly emissivity: number | "unknown";
}): Severity {
  given(input);
  const { rise, riseHalfWidth, loadFraction, emissivity } = input;
  checkMeasurableOrZero("rise", rise, "K");
  checkMeasurableOrZero("riseHalfWidth", riseHalfWidth, "K");
  const comparison = checkOneOf("comparison", input.comparison, ["similar", "ambient"]);
  const load = checkOneOf("load", input.load, ["as measured", "full load"]);
  const scale = checkOneOf("scale", input.scale, ["neta-100.18", "practitioner-limits"]);
  checkMeasurable("loadFraction", loadFraction);
  checkReadableEmissivity("emissivity", emissivity);
  const [bottom, top] = [Math.max(0, rise - riseHalfWidth) as Kelvins, (rise + riseHalfWidth) as Kelvins];
  const least = riseAtFullLoad({ rise: bottom, loadFraction });
  const most = riseAtFullLoad({ rise: top, loadFraction });
  const full = load === "full load";
  const low = grade(scale, comparison, full ? least.low : bottom);
  const high = grade(scale, comparison, full ? most.high : top);
  const readable = emissivity !== "unknown";
  const decided = readable && least.decidable && low.level === high.level;
  const warnings: Warning[] = [...least.warnings];
  if (typeof emissivity === "number" && emissivity < DOUBTFUL_EMISSIVITY) {
    warnings.push({
      code: "approximate",
      path: "emissivity",
      message:
        "Below an emissivity of about 0.6 the correction is large and the reading rough: use a matt target.",
      limit: DOUBTFUL_EMISSIVITY,
      source: "common practice",
    });
  }
  if (scale === "practitioner-limits" && !full && loadFraction < 0.75) {
    warnings.push({
      code: "outside-validity",
      path: "loadFraction",
      message: "This scale is stated to hold from about 75 % load.",
      limit: 0.75,
      source: practitioner.source,
    });
  }
  if (scale === "neta-100.18" && !full && loadFraction < 1) {
    warnings.push({
      code: "caution",
      path: "loadFraction",
      message:
        "Graded as measured at part load: this scale does not correct for load, and at full load the joint is hotter. Grade it at full load too.",
      limit: 1,
      source: neta.source,
    });
  }
  // At low load the factor to full load is not trusted: the rise as seen is what there is at least.
  const seen = least.decidable ? low : grade(scale, comparison, bottom);
  const floor = readable ? seen : { ...seen, level: 0 };
  const why = !readable
    ? `undecided: the emissivity of the spot is not known, and bright metal shows the reflected room; ${MATT_TARGET}`
    : least.decidable
      ? `undecided between "${low.action}" and "${high.action}": measure at higher load, or millivolts`
      : floor.level > 0
        ? `at least level ${floor.level} as seen (${floor.action}): less than 40 % load only hides how much worse`
        : "undecided: less than 40 % load";
  return {
    level: decided ? low.level : "undecided",
    atLeast: floor.level,
    action: decided ? low.action : why,
    low,
    high,
    basis: basisOf(scale === "neta-100.18" ? neta : practitioner),
    deferral: JOINT_DEFERRAL,
    warnings,
  };
}
