/** What a conductor may carry where it lies and where it lands. */
import { type Amperes, type Celsius, fail, given, type Warning } from "../quantity/index.ts";
import { ampacityTable } from "./ampacityTables.ts";
import type { AmpacityTable } from "./edition.ts";
import { atMost, checkMeasured, checkTemperature, parallelCount, same } from "./limit.ts";
import {
  ambientFactor,
  checkBelowRating,
  checkRoute,
  conductorCountFactor,
  type FactorRoute,
} from "./necFactors.ts";
import type { NorthAmerican } from "./necTables.ts";
import { checkMayBeParallel, necParallel } from "./parallel.ts";
import { type CodeResult, codeResult, type TableCell } from "./result.ts";
import type { Row } from "./sharedTable.ts";
import { rowOfSize, sizeOfRow } from "./size.ts";
import { ampacityCell, ampacityColumn } from "./tableAmpacity.ts";
import { terminationLimit, terminationTemperature } from "./termination.ts";

/**
 * How conductors run and where they land, size left open.
 * @since 0.1.0
 */
export interface ConductorRun {
  /** Edition by name ("NEC 2023"), or one of your own. */
  readonly edition: NorthAmerican;
  /** "raceway", "free air", "high-temperature raceway", or an installation of your own edition. */
  readonly installation: string;
  /** "copper", "aluminum" (copper-clad too), "nickel-coated copper" (nickel too). */
  readonly material: string;
  /** Temperature rating of the insulation (°C): 60, 75, 90, 150, 200, 250. */
  readonly insulationTemperature: Celsius;
  /** Air around the conductor at its hottest place; near elements that is the oven wall, not the room (°C). */
  readonly ambient: Celsius;
  /** How the ambient factor is found; "table" if left out. */
  readonly ambientBy?: FactorRoute;
  /** Base of the factor table you mean to use (°C); refused where the ampacity table has another base. */
  readonly ambientBase?: Celsius;
  /** Current-carrying conductors that share the raceway, cable or bundle; 3 for one three-phase heater circuit, those of all sets in parallel that share it. */
  readonly currentCarryingConductors: number;
  /** Conductors in parallel that make one line, 1/0 AWG or larger where more than one, all alike; 1 if left out. */
  readonly conductorsPerLine?: number;
  /** Mark of the lowest-rated terminal of the circuit (°C), or "unmarked". */
  readonly terminalTemperature: Celsius | "unmarked";
}

/**
 * What limits a conductor.
 * @since 0.1.0
 */
export type AmpacityConstraint =
  | "table value"
  | "ambient"
  | "conductor count"
  | "ambient and conductor count"
  | "termination";

/**
 * Ampacity of a line with its steps; those are of one conductor, the answer is of all that the line has in parallel.
 * @since 0.1.0
 */
export interface ConductorAmpacity extends CodeResult<Amperes> {
  /** What limits it. */
  readonly governing: AmpacityConstraint;
  /** Size under its table name. */
  readonly size: string;
  /** Cell of the conductor's own column (A). */
  readonly tableAmpacity: Amperes;
  /** Ambient factor. */
  readonly ambientFactor: number;
  /** Conductor-count factor. */
  readonly countFactor: number;
  /** Table value times both factors, of one conductor (A). */
  readonly correctedAmpacity: Amperes;
  /** Cell of the terminal's column (A); `null` where the code has no column that hot. */
  readonly terminationAmpacity: Amperes | null;
  /** Conductors in parallel that make the line; the answer is for all of them. */
  readonly conductorsPerLine: number;
}

/** The parts of a run that do not depend on the size. */
interface ResolvedRun {
  readonly name: string;
  readonly from: AmpacityTable;
  readonly column: string;
  readonly ambientFactor: number;
  readonly countFactor: number;
  readonly conductorsPerLine: number;
  readonly factorCells: readonly TableCell[];
  readonly cautions: readonly string[];
  readonly warnings: readonly Warning[];
}

const HOT_CAUTION =
  "Wire above 90 °C: the terminal, splice or block it lands on limits it, and the ambient is that of the oven wall.";

/** 110.14 and 110.14(A), from memory; the metal flows and oxidises under a screw or nut made for copper, which is how such joints burn. */
const ALUMINUM_CAUTION =
  "Aluminum wire only on terminals marked for it (AL, AL-CU), never under a nut or screw meant for copper.";

/** Factors and column of a run; the factor tables are those of the ampacity table's own base, and no others. */
export function resolveRun(run: ConductorRun): ResolvedRun {
  const { edition, ambient, insulationTemperature } = run;
  const { name, from } = ampacityTable(edition, run.installation);
  const column = ampacityColumn(from, run.material, insulationTemperature);
  checkBelowRating(ambient, insulationTemperature);
  if (run.ambientBase !== undefined && !same(run.ambientBase, from.baseAmbient)) {
    fail({
      code: "inconsistent",
      path: "ambientBase",
      expected: `${from.baseAmbient} °C, the base of ${from.label}: factors of another base do not fit it`,
      received: run.ambientBase,
      unit: "°C",
    });
  }
  const { baseAmbient } = from;
  const by = checkRoute("ambientBy", run.ambientBy);
  // At the base itself the factor is 1 by definition, also in an edition whose factors are not held here.
  const hot = same(ambient, baseAmbient)
    ? null
    : ambientFactor({ edition, baseAmbient, insulationTemperature, ambient, by });
  const { currentCarryingConductors } = run;
  const count = conductorCountFactor({ edition, currentCarryingConductors });
  const conductorsPerLine = parallelCount(run.conductorsPerLine);
  const sets = necParallel(edition, conductorsPerLine, currentCarryingConductors);
  return {
    name,
    from,
    column,
    ambientFactor: hot?.value ?? 1,
    countFactor: count.value,
    conductorsPerLine,
    factorCells: [...(hot?.cells ?? []), ...count.cells, ...sets.cells],
    cautions: [
      ...(!atMost(insulationTemperature, 90) ? [HOT_CAUTION] : []),
      ...(run.material === "aluminum" ? [ALUMINUM_CAUTION] : []),
      ...(from.cautions ?? []),
      ...sets.cautions,
    ],
    // The run calls the route by another name than the factor alone.
    warnings: [
      ...(hot?.warnings ?? []).map((one) => (one.path === "by" ? { ...one, path: "ambientBy" } : one)),
      ...sets.warnings,
    ],
  };
}

/** One size of a run, with the two cells that can decide it. */
interface SizedRun {
  readonly ampacity: ConductorAmpacity;
  readonly ownCell: TableCell;
  readonly terminalCell: TableCell | null;
}

/** Ampacity of one row of a resolved run, or `null` where the table leaves the size blank. */
export function ampacityOfRow(
  run: ConductorRun,
  resolved: ResolvedRun,
  row: Row,
  terminalTemperature: number,
): SizedRun | null {
  const { from, ambientFactor: hot, countFactor: count, conductorsPerLine } = resolved;
  const table = ampacityCell(resolved.name, from, row, resolved.column);
  if (table === null) return null;
  const size = sizeOfRow(from.table, row);
  const corrected = table.value * hot * count;
  const { edition, material, insulationTemperature } = run;
  const limit = terminationLimit({ edition, size, material, insulationTemperature, terminalTemperature });
  const terminal = limit.found?.value ?? null;
  // A size with no figure in the terminal's column cannot land there by this table.
  if (terminal === null && limit.column !== null) return null;
  const byTerminal = terminal !== null && !atMost(corrected, terminal);
  const lowered =
    hot < 1
      ? count < 1
        ? "ambient and conductor count"
        : "ambient"
      : count < 1
        ? "conductor count"
        : "table value";
  const own = [table.cell, ...resolved.factorCells];
  const governing: AmpacityConstraint = byTerminal ? "termination" : lowered;
  const landing = limit.found === null ? [] : [limit.found.cell];
  const result = codeResult({
    value: (conductorsPerLine * Math.min(corrected, terminal ?? corrected)) as Amperes,
    unit: "A",
    cells: byTerminal ? [...landing, ...own] : [...own, ...landing],
    baseConditions: from.baseConditions,
    governing,
    cautions: resolved.cautions,
    warnings: [...resolved.warnings, ...limit.warnings],
  });
  return {
    ampacity: {
      ...result,
      governing,
      size,
      tableAmpacity: table.value as Amperes,
      ambientFactor: hot,
      countFactor: count,
      correctedAmpacity: corrected as Amperes,
      terminationAmpacity: terminal as Amperes | null,
      conductorsPerLine,
    },
    ownCell: table.cell,
    terminalCell: limit.found?.cell ?? null,
  };
}

/** The terminal's column, by its mark or by the rating of the circuit. */
export function terminalColumn(run: ConductorRun, circuitRating: number | undefined): number {
  if (run.terminalTemperature !== "unmarked") {
    checkTemperature("terminalTemperature", run.terminalTemperature);
    return run.terminalTemperature;
  }
  return terminationTemperature({ edition: run.edition, circuitRating: circuitRating as Amperes }).value;
}

/**
 * What the conductors of a line may carry: I = conductorsPerLine · min(table value · ambient factor · count factor, value in the terminal's column).
 *
 * Factors apply to the conductor's own column, never to the terminal's; the terminal's column is a test of its own. The factor
 * of 1.25 for continuous load is not in it: see {@link designCurrent}.
 * @param input - the run and the size; fields at {@link ConductorRun}
 * @param input.size - size printed on the conductor: "2 AWG", "1/0", "250 kcmil"
 * @param input.circuitRating - rating of the circuit (A), more than 0; needed where the terminals are unmarked
 * @returns usable ampacity (A), its steps and what governs
 * @throws ElectroheatError `missing`, `not-a-number`, `unknown-name`, `ambiguous`, `inconsistent` for a factor of another
 *   base and for conductors too small to be in parallel, `out-of-range` for an ambient at or above the conductor's rating, `outside-table`
 * @source NFPA 70, National Electrical Code, ampacity tables, 310.15, 110.14(C) and 310.10(G) (310.10(H) from 2011 to 2017, 310.4 before) of the edition named
 * @example
 * ```ts
 * const found = conductorAmpacity({
 *   edition: "NEC 2023", installation: "raceway", size: "2 AWG", material: "copper", insulationTemperature: celsius(90),
 *   ambient: celsius(48), currentCarryingConductors: 3, terminalTemperature: celsius(75),
 * });
 * [found.value, found.terminationAmpacity, found.governing] // => [106.6, 115, "ambient"]
 * ```
 * @since 0.1.0
 */
export function conductorAmpacity(
  input: ConductorRun & { readonly size: string; readonly circuitRating?: Amperes },
): ConductorAmpacity {
  given(input);
  if (input.circuitRating !== undefined) checkMeasured("circuitRating", input.circuitRating, "A");
  const resolved = resolveRun(input);
  const row = rowOfSize(resolved.from.table, "size", input.size);
  checkMayBeParallel(resolved.conductorsPerLine, input.size);
  const found = ampacityOfRow(input, resolved, row, terminalColumn(input, input.circuitRating));
  if (found !== null) return found.ampacity;
  return fail({
    code: "outside-table",
    path: "size",
    expected: `a size with a figure in column ${resolved.column} of ${resolved.from.label} and in the terminal's column`,
    received: input.size,
  });
}
