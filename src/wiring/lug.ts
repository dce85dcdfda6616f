/** Whether a lug or terminal takes a conductor and carries its current. */
import { type Amperes, type Celsius, fail, given, givenList, onlyFields } from "../quantity/index.ts";
import { atMost, checkMeasured, checkTemperature } from "./limit.ts";
import type { NorthAmerican } from "./necTables.ts";
import { type CodeResult, codeResult } from "./result.ts";
import { areaOfSize, sizeName } from "./size.ts";
import { NICKEL_COATED, terminationLimit } from "./termination.ts";

/**
 * Marks of a lug or terminal.
 * @since 0.1.0
 */
export interface LugMarks {
  /** Smallest conductor it is marked for: "14 AWG". */
  readonly smallest: string;
  /** Largest conductor it is marked for: "1/0 AWG". */
  readonly largest: string;
  /** Conductor materials it is marked for: CU is ["copper"], AL9CU is ["copper", "aluminum"]. */
  readonly materials: readonly string[];
  /** Temperature it is marked for (°C): 60, 75, 90. */
  readonly temperature: Celsius;
  /** Current it is marked for (A), as on a terminal block; left out where only the wire limits it. */
  readonly current?: Amperes;
}

const MARKS: readonly (keyof LugMarks)[] = ["smallest", "largest", "materials", "temperature", "current"];

/**
 * Outcome of holding a conductor against a lug.
 * @since 0.1.0
 */
export interface LugFit extends CodeResult<"fits" | "does not fit" | "undecided"> {
  /** What is wrong, in the lug's order: material, size, temperature column, block current; empty if none is found. */
  readonly faults: readonly ("material" | "too small" | "too large" | "termination" | "block current")[];
  /** Ampacity of the size in the lug's temperature column (A); `null` where the code has no figure. */
  readonly terminationAmpacity: Amperes | null;
}

/**
 * Whether a lug takes a conductor: material, size within the marked range, and the design current within the value of the lug's
 * temperature column and the current marked on the block. Wire of 90 °C on a 75 °C lug is held to the 75 °C column.
 * A mark hotter than any column of the code leaves the current undecided: the terminal maker's figure is needed.
 *
 * Says nothing about strands, number of wires per hole, plating or torque: see the marks of the lug.
 * @param input.edition - edition by name, or one of your own with a raceway table
 * @param input.lug - marks of the lug; fields at {@link LugMarks}
 * @param input.size - size printed on the conductor, AWG or kcmil
 * @param input.material - "copper", "aluminum" or "nickel-coated copper"
 * @param input.insulationTemperature - temperature rating of the conductor (°C)
 * @param input.designCurrent - from {@link designCurrent} (A), more than 0; of conductors in parallel, each in a lug of its own, the share of one
 * @returns "fits", "does not fit" with every fault, or "undecided" where the code has no column as hot as the mark
 * @throws ElectroheatError `missing`, `not-a-number`, `unknown-name` (a material that no ampacity table of the edition has among them), `unknown-field`,
 *   `ambiguous`, `inconsistent` for a range upside down
 * @source NFPA 70, National Electrical Code, 110.14 and the raceway ampacity table of the edition
 * @example
 * ```ts
 * lugFit({
 *   edition: "NEC 2023", size: "4 AWG", material: "copper", insulationTemperature: celsius(90), designCurrent: amperes(90.211),
 *   lug: { smallest: "14 AWG", largest: "1/0 AWG", materials: ["copper"], temperature: celsius(75) },
 * }).faults // => ["termination"]
 * ```
 * @since 0.1.0
 */
export function lugFit(input: {
  readonly edition: NorthAmerican;
  readonly lug: LugMarks;
  readonly size: string;
  readonly material: string;
  readonly insulationTemperature: Celsius;
  readonly designCurrent: Amperes;
}): LugFit {
  given(input);
  const { edition, lug, material, insulationTemperature, designCurrent } = input;
  if (typeof lug !== "object" || lug === null) {
    fail({ code: "missing", path: "lug", expected: "the marks of the lug", received: lug });
  }
  onlyFields(lug, MARKS, "lug");
  checkMeasured("designCurrent", designCurrent, "A");
  checkTemperature("insulationTemperature", insulationTemperature);
  givenList(lug.materials, "lug.materials", 1);
  checkTemperature("lug.temperature", lug.temperature);
  if (lug.current !== undefined) checkMeasured("lug.current", lug.current, "A");
  const [low, high, own] = [
    areaOfSize("lug.smallest", lug.smallest),
    areaOfSize("lug.largest", lug.largest),
    areaOfSize("size", input.size),
  ];
  if (!atMost(low, high)) {
    fail({
      code: "inconsistent",
      path: "lug.largest",
      expected: `at least ${lug.smallest}`,
      received: lug.largest,
    });
  }
  const size = sizeName("size", input.size);
  const limit = terminationLimit({
    edition,
    size,
    material,
    insulationTemperature,
    terminalTemperature: lug.temperature,
    path: "lug.temperature",
  });
  const value = limit.found?.value ?? null;
  // A marking for copper covers nickel-coated copper only where the maker says so; it is passed with a warning.
  const bare = material === NICKEL_COATED && lug.materials.includes("copper");
  const faults = [
    ...(lug.materials.includes(material) || bare ? [] : ["material" as const]),
    ...(atMost(low, own) ? [] : ["too small" as const]),
    ...(atMost(own, high) ? [] : ["too large" as const]),
    ...(limit.column === null || (value !== null && atMost(designCurrent, value))
      ? []
      : ["termination" as const]),
    ...(lug.current === undefined || atMost(designCurrent, lug.current) ? [] : ["block current" as const]),
  ];
  const found = limit.found?.cell ?? {
    system: "maker data" as const,
    edition: "marks of the lug",
    table: "marks of the lug",
    row: size,
    column: "temperature",
    value: lug.temperature,
    unit: "°C",
    source: "marks of the lug, as given",
    kind: "user table" as const,
    provenance: "memory" as const,
    labelProvenance: "seen" as const,
  };
  const undecided = faults.length === 0 && limit.column === null;
  return {
    ...codeResult({
      value: undecided ? "undecided" : faults.length === 0 ? "fits" : "does not fit",
      unit: "",
      cells: [found],
      baseConditions: ["one conductor in the lug, marks as given"],
      governing: faults[0] ?? (undecided ? "termination" : "none"),
      cautions: [
        "Marks, strands and torque of the lug go before any table: a joint is made by its maker's instruction.",
      ],
      warnings: limit.warnings,
    }),
    faults,
    terminationAmpacity: value as Amperes | null,
  };
}
