/** Leakage limits of appliances, polarization index, dry-out: figures with their owners. */

import leakage from "../../shared/tables/appliance-leakage.json" with { type: "json" };
import dryOut from "../../shared/tables/heater-dry-out.json" with { type: "json" };
import machines from "../../shared/tables/polarization-index-machines.json" with { type: "json" };
import {
  type Amperes,
  type Celsius,
  checkOneOf,
  given,
  type Ohms,
  type Seconds,
  type Watts,
} from "../quantity/index.ts";
import { labelledIec } from "./iecClauses.ts";
import { checkMeasured } from "./limit.ts";
import { type CodeResult, codeResult } from "./result.ts";
import { cellAt, describeCell, type Row } from "./sharedTable.ts";

const APPLIANCES = [
  "class II",
  "class 0, 0I or III",
  "class I portable",
  "class I stationary, motor-operated",
  "class I stationary, heating",
] as const;

/**
 * Leakage limit of a household or similar appliance at operating temperature; for a stationary heating appliance of class I
 * min(5 mA, max(0.75 mA, 0.75 mA/kW · power)).
 *
 * Not for industrial furnaces and ovens; parts 2 of the standard set other limits for many appliances.
 * @param input.appliance - "class II", "class 0, 0I or III", "class I portable", "class I stationary, motor-operated", "class I stationary, heating"
 * @param input.power - rated input (W), more than 0
 * @returns the limit (A)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`
 * @source IEC 60335-1, clause 13.2
 * @example
 * ```ts
 * leakageLimit({ appliance: "class I stationary, heating", power: kilowatts(6) }).value // => 0.0045
 * ```
 * @since 0.1.0
 */
export function leakageLimit(input: {
  readonly appliance: (typeof APPLIANCES)[number];
  readonly power: Watts;
}): CodeResult<Amperes> {
  given(input);
  const { power } = input;
  checkMeasured("power", power, "W");
  const appliance = checkOneOf("appliance", input.appliance, APPLIANCES);
  const row = leakage.rows.find((one) => one[0] === appliance) as Row;
  const number = (column: string): number | null => cellAt(leakage, row, column) as number | null;
  const floor = number("floor") as number;
  const perKilowatt = ((number("per kilowatt") ?? 0) * power) / 1000;
  const ceiling = number("ceiling") ?? Number.POSITIVE_INFINITY;
  const limit = Math.min(ceiling, Math.max(floor, perKilowatt));
  const column = limit === floor ? "floor" : limit === ceiling ? "ceiling" : "per kilowatt";
  return codeResult({
    value: (limit / 1000) as Amperes,
    unit: "A",
    cells: [
      describeCell({
        system: "IEC",
        edition: "IEC 60335-1",
        from: labelledIec(leakage),
        row,
        rowName: appliance,
        column,
      }),
    ],
    baseConditions: ["household and similar appliances, at operating temperature"],
    governing: column,
    cautions: ["Not for industrial furnaces; the part 2 of the appliance goes before it."],
  });
}

/**
 * Polarization index with the smallest values set for machines.
 * @since 0.1.0
 */
export interface PolarizationIndex extends CodeResult<number> {
  /** What the machine standard asks of windings, by insulation class: not a limit for heaters. */
  readonly machineMinima: readonly {
    /** Thermal class of the machine. */
    readonly insulationClass: string;
    /** Lowest index recommended. */
    readonly minimum: number;
  }[];
}

/**
 * Polarization index: PI = R(10 min)/R(1 min). No verdict: it is a criterion for the windings of rotating machines, and no limit
 * is published for heating elements.
 * @param input.oneMinute - insulation resistance after one minute at constant direct voltage (Ω), more than 0
 * @param input.tenMinutes - after ten minutes (Ω), more than 0
 * @returns the index as a ratio, with the machine minima for reference
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`
 * @source IEEE 43: definition and minima by insulation class, read in an instrument manual
 * @example
 * ```ts
 * polarizationIndex({ oneMinute: megaohms(40), tenMinutes: megaohms(60) }).value // => 1.5
 * ```
 * @since 0.1.0
 */
export function polarizationIndex(input: {
  readonly oneMinute: Ohms;
  readonly tenMinutes: Ohms;
}): PolarizationIndex {
  given(input);
  checkMeasured("oneMinute", input.oneMinute, "Ω");
  checkMeasured("tenMinutes", input.tenMinutes, "Ω");
  const from = { label: "minimum polarization index", table: machines };
  const cells = machines.rows.map((row) =>
    describeCell({
      system: "North America",
      edition: "IEEE 43",
      from,
      row,
      rowName: `class ${row[0]}`,
      column: "minimum",
    }),
  );
  return {
    ...codeResult({
      value: input.tenMinutes / input.oneMinute,
      unit: "1",
      cells,
      baseConditions: ["windings of rotating machines"],
      governing: "none",
      cautions: [
        "A machine criterion: no limit is published for heating elements, so it neither passes nor fails one.",
      ],
    }),
    machineMinima: machines.rows.map((row) => ({
      insulationClass: String(row[0]),
      minimum: cellAt(machines, row, "minimum") as number,
    })),
  };
}

/**
 * One published way to dry out an element.
 * @since 0.1.0
 */
export interface DryOutWay {
  /** "oven" or "in place at half voltage". */
  readonly way: string;
  /** Lowest temperature (°C), `null` where not said. */
  readonly from: Celsius | null;
  /** Highest temperature (°C), `null` where not said. */
  readonly to: Celsius | null;
  /** Least time (s), `null` for until the reading is acceptable. */
  readonly time: Seconds | null;
  /** What goes with it. */
  readonly remark: string;
}

/**
 * Published ways to dry out metal-sheathed elements that read low, side by side: no one of them is the rule.
 * @returns the ways in `value`, with makers' cautions
 * @throws ElectroheatError never
 * @source makers' instructions
 * @example
 * ```ts
 * dryOutGuidance().value[0]?.to // => 177
 * ```
 * @since 0.1.0
 */
export function dryOutGuidance(): CodeResult<readonly DryOutWay[]> {
  const from = { label: "makers' instructions", table: dryOut };
  const cells = dryOut.rows.map((row) =>
    describeCell({
      system: "maker data",
      edition: "heater makers",
      from,
      row,
      rowName: String(row[0]),
      column: "to",
    }),
  );
  return codeResult({
    value: dryOut.rows.map((row) => ({
      way: String(row[0]),
      from: cellAt(dryOut, row, "from") as Celsius | null,
      to: cellAt(dryOut, row, "to") as Celsius | null,
      time: (typeof row[3] === "number" ? row[3] * 3600 : null) as Seconds | null,
      remark: String(cellAt(dryOut, row, "remark")),
    })),
    unit: "",
    cells,
    baseConditions: ["metal-sheathed, mineral-filled elements"],
    governing: "the maker of the element",
    cautions: [
      "Take off parts, seals and leads that the temperature would spoil; the maker's figure goes before these.",
      "A reading that does not rise on drying points to damage: cracked porcelain, a pierced sheath, soot.",
      "In place only with the enclosure closed, airflow and interlocks working and nobody near live parts.",
    ],
  });
}
