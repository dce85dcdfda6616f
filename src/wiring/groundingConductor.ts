/** The conductor that carries a fault to earth back to the source, so that the device opens: by the device's rating, or by the line's section. */

import sections from "../../shared/tables/iec-protective-conductors.json" with { type: "json" };
import areas from "../../shared/tables/nec-chapter-9-table-8.json" with { type: "json" };
import sizes from "../../shared/tables/nec-grounding-conductors.json" with { type: "json" };
import {
  type Amperes,
  checkOneOf,
  circularMils,
  fail,
  given,
  type SquareMeters,
  squareMillimeters,
} from "../quantity/index.ts";
import { labelledIec } from "./iecClauses.ts";
import { atMost, checkMeasured } from "./limit.ts";
import { labelOf, type NecEdition, namedEdition } from "./necTables.ts";
import { type CodeResult, codeResult } from "./result.ts";
import { cellAt, describeCell, type Row } from "./sharedTable.ts";
import { rowOfSize, sizeName, sizeOfRow } from "./size.ts";

/**
 * An equipment grounding conductor, and what enlarged or capped it.
 * @since 0.1.0
 */
export interface GroundingConductor extends CodeResult<string> {
  /** Size of the table for the device's rating, before anything enlarged or capped it. */
  readonly tableSize: string;
  /** Least area (m²): that of `value`, or more where the circuit conductors are larger than needed. */
  readonly area: SquareMeters;
}

const NEC_CAUTIONS: readonly string[] = [
  "Smallest size by the device's rating; a long run or a high fault current may ask for more, so that the device opens at once.",
  "Conductors side by side: each raceway holds one of full size by the rating of the device ahead of all of them.",
  "A raceway or cable armor may serve instead where the code lets it; the bond to the frame counts as much as the wire.",
];

/** Area of a size as the code prints it (m²); rounded there, and compared as rounded. */
const areaOf = (path: string, size: string): number => areaAt(rowOfSize(areas, path, size));
const areaAt = (row: Row): number => circularMils(cellAt(areas, row, "area") as number);

/**
 * Smallest equipment grounding conductor of wire type by the rating of the device ahead of it. Where the circuit's conductors are larger
 * than they need to be, as for voltage drop, it grows in the same proportion of areas; it need never be larger than they are.
 *
 * Not for a system's grounding electrode conductor, bonding jumpers on the supply side, flexible cords or motor circuits' instantaneous trips.
 * @param input.edition - "NEC 2008" to "NEC 2023"
 * @param input.device - rating or setting of the device (A), more than 0, to 1,600
 * @param input.material - of the grounding conductor: "copper" or "aluminum"
 * @param input.installed - size of the circuit's conductors as installed; left out: no cap, nothing enlarged
 * @param input.needed - size that they need for their load, ambient and grouping counted, with `installed`; left out: as installed
 * @returns size; `governing` is "device rating", "enlarged with the circuit", "no larger than the circuit" or "smallest of aluminum"
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`, `malformed-text`, `inconsistent`, `outside-table`
 * @source NFPA 70, National Electrical Code, 250.122(A), (B), Table 250.122, and the smallest conductors of 310.106(A) (310.3(A) from 2020), from memory; areas by Chapter 9, Table 8
 * @example
 * ```ts
 * groundingConductor({ edition: "NEC 2023", device: amperes(60), material: "copper" }).value // => "10 AWG"
 * ```
 * @since 0.1.0
 */
export function groundingConductor(input: {
  readonly edition: NecEdition;
  readonly device: Amperes;
  readonly material: "copper" | "aluminum";
  readonly installed?: string;
  readonly needed?: string;
}): GroundingConductor {
  given(input);
  const { device, installed, needed } = input;
  const { name: edition, year } = namedEdition(input.edition);
  checkMeasured("device", device, "A");
  const material = checkOneOf("material", input.material, ["copper", "aluminum"]);
  const row = sizes.rows.find((one) => atMost(device, one[0] as number)) as Row | undefined;
  if (row === undefined) {
    return fail({
      code: "outside-table",
      path: "device",
      expected: "at most 1600",
      received: device,
      unit: "A",
    });
  }
  const tableSize = cellAt(sizes, row, material) as string;
  const asked = { area: areaOf("device", tableSize), name: tableSize, governing: "device rating" };
  const { area, name, governing } = atLeastSmallest(material, enlarged(asked, installed, needed));
  const from = { ...labelOf("grounding conductors", year), table: sizes };
  const rowName = `${row[0]} A`;
  return {
    ...codeResult({
      value: name,
      unit: "",
      cells: [describeCell({ system: "North America", edition, from, row, rowName, column: material })],
      baseConditions: ["wire type, sized by the device ahead of the equipment"],
      governing,
      cautions: NEC_CAUTIONS,
    }),
    tableSize,
    area: area as SquareMeters,
  };
}

interface Asked {
  readonly area: number;
  readonly name: string;
  readonly governing: string;
}

/** A table's size in the proportion in which the circuit's conductors are larger than needed, and no larger than they are. */
function enlarged(asked: Asked, installed: string | undefined, needed: string | undefined): Asked {
  if (installed === undefined) {
    return needed === undefined
      ? asked
      : fail({ code: "missing", path: "installed", expected: "a size, with needed", received: undefined });
  }
  const own = areaOf("installed", installed);
  const least = needed === undefined ? own : areaOf("needed", needed);
  if (!atMost(least, own)) {
    fail({
      code: "inconsistent",
      path: "needed",
      expected: `at most installed, ${installed}`,
      received: needed,
    });
  }
  const area = asked.area * (own / least);
  // The table's own size, or the standard one next above.
  const next = areas.rows.find((row) => atMost(area, areaAt(row)));
  if (next === undefined || !atMost(areaAt(next), own)) {
    return { area: own, name: sizeName("installed", installed), governing: "no larger than the circuit" };
  }
  return atMost(own, least)
    ? asked
    : { area, name: sizeOfRow(areas, next), governing: "enlarged with the circuit" };
}

/** Smallest building wire of aluminum, where copper of the circuit is smaller: 310.106(A). */
const SMALLEST_ALUMINUM = "12 AWG";

/** The conductor asked for, but none of aluminum that is not made so small. */
function atLeastSmallest(material: "copper" | "aluminum", asked: Asked): Asked {
  const area = areaOf("material", SMALLEST_ALUMINUM);
  return material === "copper" || atMost(area, asked.area)
    ? asked
    : { area, name: SMALLEST_ALUMINUM, governing: "smallest of aluminum" };
}

/** Least sections of a protective conductor laid apart from its lines, mm² of copper: 543.1.3. */
const APART = { protected: 2.5, unprotected: 4 } as const;

/** The same of aluminum, protected or not, and of aluminum for a high protective conductor current, mm². */
const OF_ALUMINUM = 16;

/** Section from which a high protective conductor current is carried safely, mm² of copper: 543.7. */
const HIGH_LEAKAGE = 10;

/**
 * Least section of a protective conductor by that of its line conductors, both of one metal, without a computation of the fault: as large up to
 * 16 mm², 16 mm² up to 35, half above.
 *
 * {@link shortCircuitSection} often finds less, and is the other way that the standard allows; sections between standard sizes round up.
 * @param input.lineSection - nominal section of the line conductors (m²), more than 0
 * @param input.laid - "with the lines", "apart, protected" or "apart, unprotected" against mechanical damage
 * @returns least section (m²)
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `unknown-name`
 * @source IEC 60364-5-54:2011, Table 54.2, 543.1.3 and 543.7; from memory
 * @example
 * ```ts
 * toSquareMillimeters(protectiveConductor({ lineSection: squareMillimeters(25), laid: "with the lines" }).value) // => 16
 * ```
 * @since 0.1.0
 */
export function protectiveConductor(input: {
  readonly lineSection: SquareMeters;
  readonly laid: "with the lines" | "apart, protected" | "apart, unprotected";
}): CodeResult<SquareMeters> {
  given(input);
  const { lineSection } = input;
  checkMeasured("lineSection", lineSection, "m²");
  const laid = checkOneOf("laid", input.laid, ["with the lines", "apart, protected", "apart, unprotected"]);
  const row = sections.rows.find(
    ([line]) => line === null || atMost(lineSection, squareMillimeters(line as number)),
  ) as Row;
  const fixed = cellAt(sections, row, "fixed") as number | null;
  const byTable =
    fixed === null ? lineSection * (cellAt(sections, row, "part") as number) : squareMillimeters(fixed);
  const least =
    laid === "with the lines"
      ? 0
      : squareMillimeters(laid === "apart, protected" ? APART.protected : APART.unprotected);
  const column = fixed === null ? "part" : "fixed";
  const line = row[0] === null ? "above 35 mm²" : `up to ${row[0]} mm²`;
  return codeResult({
    value: Math.max(byTable, least) as SquareMeters,
    unit: "m²",
    cells: [
      describeCell({
        system: "IEC",
        edition: "IEC 60364-5-54:2011",
        from: labelledIec(sections),
        row,
        rowName: line,
        column,
      }),
    ],
    baseConditions: ["of the metal of the line conductors"],
    governing: least > byTable ? "mechanical strength" : "line section",
    cautions: [
      `Where more than 10 mA leaks along it in service, as of heaters that are damp, at least ${HIGH_LEAKAGE} mm² of copper, ${OF_ALUMINUM} mm² of aluminum, or a second conductor, or a device that watches it.`,
      ...(least === 0
        ? []
        : [`Laid apart, the least sections are those of copper; of aluminum at least ${OF_ALUMINUM} mm².`]),
      "Says nothing of the time in which the device opens: loop impedance against its curve is a test of its own.",
    ],
  });
}
