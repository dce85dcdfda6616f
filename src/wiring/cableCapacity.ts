/** What a cable may carry by the IEC family, and both directions between load and cable. */
import type { Amperes, Celsius, Warning } from "../quantity/index.ts";
import { fail, given } from "../quantity/index.ts";
import type { CapacityTable } from "./edition.ts";
import { cableAmbientFactor, groupingFactor } from "./iecFactors.ts";
import { capacityColumn, type Iec } from "./iecTables.ts";
import { parallelCount, same } from "./limit.ts";
import { checkBelowRating, checkRoute, type FactorRoute } from "./necFactors.ts";
import { iecParallel } from "./parallel.ts";
import { type CodeResult, codeResult, type TableCell } from "./result.ts";
import { cellAt, describeCell, type Row } from "./sharedTable.ts";
import { rowOfSize, sizeOfRow } from "./size.ts";

/**
 * How a cable runs, size left open.
 * @since 0.1.0
 */
export interface CableRun {
  /** Edition by name ("IEC 60364-5-52:2009", "BS 7671:2008"), or one of your own. */
  readonly edition: Iec;
  /** Reference method as the edition has it: "A1", "B2", "C", "E", "F", "F trefoil", "G horizontal". */
  readonly method: string;
  /** Conductors that carry load: 2 single-phase, 3 three-phase. */
  readonly loadedConductors: number;
  /** "PVC" (70 °C) or "XLPE" (90 °C, EPR too). */
  readonly insulation: string;
  /** "copper"; no aluminum table is held. */
  readonly material: string;
  /** Air around the cable at its hottest place; the ground for method D (°C). */
  readonly ambient: Celsius;
  /** How the ambient factor is found; "table" if left out. */
  readonly ambientBy?: FactorRoute;
  /** Base of the factor table you mean to use (°C); refused where the capacity table has another base. */
  readonly ambientBase?: Celsius;
  /** Circuits in the group, this one included; 1 alone. Every set in parallel counts as a circuit. */
  readonly circuits: number;
  /** Conductors in parallel that make one line, one in each of as many equal cables; 1 if left out. */
  readonly conductorsPerLine?: number;
  /** How the group lies; needed for more than one circuit. */
  readonly arrangement?: string;
  /** Which grouping table; the edition's own if left out. */
  readonly grouping?: string;
}

/**
 * Capacity of a line with its steps; those are of one cable, the answer is of all that are in parallel.
 * @since 0.1.0
 */
export interface CableCapacity extends CodeResult<Amperes> {
  /** Size under its table name. */
  readonly size: string;
  /** Cell of the table, of one cable (A). */
  readonly tableCapacity: Amperes;
  /** Ambient factor. */
  readonly ambientFactor: number;
  /** Grouping factor. */
  readonly groupingFactor: number;
  /** Conductors in parallel that make the line; the answer is for all of them. */
  readonly conductorsPerLine: number;
}

/** The parts of a run that do not depend on the size. */
interface ResolvedCable {
  readonly name: string;
  readonly from: CapacityTable;
  readonly column: string;
  readonly ambientFactor: number;
  readonly groupingFactor: number;
  readonly conductorsPerLine: number;
  readonly factorCells: readonly TableCell[];
  readonly cautions: readonly string[];
  readonly warnings: readonly Warning[];
}

const TERMINAL_CAUTION =
  "The capacity is the cable's: terminals made for 70 °C are overheated by a 90 °C cable at full capacity.";

/** Factors and column of a cable run. */
export function resolveCable(run: CableRun): ResolvedCable {
  const { edition, insulation, ambient } = run;
  const { name, from, column } = capacityColumn(run);
  checkBelowRating(ambient, from.conductorTemperature);
  if (run.ambientBase !== undefined && !same(run.ambientBase, from.baseAmbient)) {
    fail({
      code: "inconsistent",
      path: "ambientBase",
      expected: `${from.baseAmbient} °C, the base of ${from.label}: factors of another base do not fit it`,
      received: run.ambientBase,
      unit: "°C",
    });
  }
  const by = checkRoute("ambientBy", run.ambientBy);
  const { baseAmbient } = from;
  const hot = same(ambient, baseAmbient)
    ? null
    : cableAmbientFactor({ edition, insulation, ambient, baseAmbient, by });
  const named = run.grouping === undefined ? {} : { grouping: run.grouping };
  const group =
    run.circuits === 1
      ? null
      : groupingFactor({ edition, arrangement: run.arrangement as string, circuits: run.circuits, ...named });
  const conductorsPerLine = parallelCount(run.conductorsPerLine);
  const sets = iecParallel(conductorsPerLine, run.circuits);
  return {
    name,
    from,
    column,
    ambientFactor: hot?.value ?? 1,
    groupingFactor: group?.value ?? 1,
    conductorsPerLine,
    factorCells: [...(hot?.cells ?? []), ...(group?.cells ?? [])],
    cautions: [...(from.conductorTemperature > 70 ? [TERMINAL_CAUTION] : []), ...sets.cautions],
    // The run calls the route by another name than the factor alone.
    warnings: [
      ...(hot?.warnings ?? []).map((one) => (one.path === "by" ? { ...one, path: "ambientBy" } : one)),
      ...sets.warnings,
    ],
  };
}

/** Capacity of one row of a resolved run, or `null` where the table leaves the size blank. */
export function capacityOfRow(resolved: ResolvedCable, row: Row): CableCapacity | null {
  const { from, column, ambientFactor, groupingFactor: grouped, conductorsPerLine } = resolved;
  const value = cellAt(from.table, row, column);
  if (typeof value !== "number") return null;
  const size = sizeOfRow(from.table, row);
  const cell = describeCell({ system: "IEC", edition: resolved.name, from, row, rowName: size, column });
  const lowered = [...(ambientFactor < 1 ? ["ambient"] : []), ...(grouped < 1 ? ["grouping"] : [])];
  return {
    ...codeResult({
      value: (conductorsPerLine * (value * ambientFactor * grouped)) as Amperes,
      unit: "A",
      cells: [cell, ...resolved.factorCells],
      baseConditions: from.baseConditions,
      governing: lowered.join(" and ") || "table value",
      cautions: resolved.cautions,
      warnings: resolved.warnings,
    }),
    size,
    tableCapacity: value as Amperes,
    ambientFactor,
    groupingFactor: grouped,
    conductorsPerLine,
  };
}

/**
 * Continuous capacity of the cables of a line: Iz = conductorsPerLine · table value · ambient factor · grouping factor.
 * @param input - the run and the size; fields at {@link CableRun}
 * @param input.size - nominal size: "16 mm²"
 * @returns capacity Iz (A) with its steps
 * @throws ElectroheatError `missing`, `not-a-number`, `unknown-name` (lists what exists), `ambiguous`, `inconsistent` for a factor of
 *   another base, `out-of-range` for an ambient at or above the conductor's temperature, `outside-table`
 * @source IEC 60364-5-52:2009, 523.7, Tables B.52.2 to B.52.5, B.52.10, B.52.12, B.52.14, B.52.17; BS 7671:2008 Tables 4E1A, 4B1, 4C1; IEC 60204-1:2005
 * @example
 * ```ts
 * cableCapacity({
 *   edition: "IEC 60364-5-52:2009", method: "B2", loadedConductors: 3, insulation: "PVC", material: "copper", size: "16 mm²",
 *   ambient: celsius(50), circuits: 1,
 * }).value // => 44.02
 * ```
 * @since 0.1.0
 */
export function cableCapacity(input: CableRun & { readonly size: string }): CableCapacity {
  given(input);
  const resolved = resolveCable(input);
  const found = capacityOfRow(resolved, rowOfSize(resolved.from.table, "size", input.size));
  if (found !== null) return found;
  return fail({
    code: "outside-table",
    path: "size",
    expected: `a size with a figure in column ${resolved.column} of ${resolved.from.label}`,
    received: input.size,
  });
}
