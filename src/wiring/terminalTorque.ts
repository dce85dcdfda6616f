/** Tightening torque of wire terminals: the maker's value first, then the tables of UL 486A-B by drive and conductor. */
import screws from "../../shared/tables/terminal-torque-screws.json" with { type: "json" };
import smallSlots from "../../shared/tables/terminal-torque-small-slots.json" with { type: "json" };
import sockets from "../../shared/tables/terminal-torque-sockets.json" with { type: "json" };
import { decimalProduct, roundDecimal } from "../decision/index.ts";
import {
  checkBetween,
  checkOneOf,
  fail,
  given,
  type Meters,
  type NewtonMeters,
  poundForceInches,
  type Warning,
} from "../quantity/index.ts";
import { atMost, checkMeasured, same } from "./limit.ts";
import { type CodeResult, codeResult, type TableCell } from "./result.ts";
import { cellAt, describeCell, type Row, type SharedTable } from "./sharedTable.ts";
import { areaOfSize, sizeName, sizeOfRow } from "./size.ts";

/**
 * How a terminal screw is turned. A slot is measured by its nominal width and by its length at the bottom; "external hexagon" is every
 * hexagon head but that of a split-bolt connector; a recessed socket is a hexagon or a square, by its width across flats.
 * @since 0.1.0
 */
export type TerminalDrive =
  | {
      /** How the screw is driven. */
      readonly kind: "slotted";
      /** Size of the screw. */
      readonly screw: "No. 10 and larger" | "smaller than No. 10";
      /** Width of the slot (m), 0.1 to 10 mm. */
      readonly slotWidth: Meters;
      /** Length of the slot at its bottom (m), 1 to 50 mm. */
      readonly slotLength: Meters;
    }
  | {
      /** How the screw is driven. */
      readonly kind: "split bolt";
    }
  | {
      /** How the screw is driven. */
      readonly kind: "external hexagon";
    }
  | {
      /** How the screw is driven. */
      readonly kind: "recessed socket";
      /** Width across flats (m), 1 to 50 mm. */
      readonly acrossFlats: Meters;
    };

/** Width (mm) that parts narrow slots from wide ones: at it, Table I.1 calls a slot narrow and Table I.2 wide. */
const SLOT_WIDTH = 1.2;
/** Length (mm) beyond which Table I.1 calls any slot wide. */
const SLOT_LENGTH = 6.4;
/** The largest conductor of Table I.2. */
const SMALL_SLOT_LIMIT = "8 AWG";

const CAUTIONS = [
  "The value marked on the terminal or given by its maker governs; this table only stands in where there is none. A screw that takes two tools has a value for each: read the one of the tool used.",
  "For power circuits: terminals of control and signal circuits may need another torque, ask their maker.",
];
const CARE = [
  "A torque check of an aged terminal is no reliable test, for joints relax in service: in doubt slacken it, look at wire and seat, and make it anew.",
  "Isolate, lock out and prove dead before a terminal is touched, and use a calibrated torque tool.",
];

interface Found {
  readonly table: SharedTable;
  readonly label: string;
  readonly row: Row;
  readonly rowName: string;
  readonly column: string;
  readonly conditions: readonly string[];
}

/** A length as the tables print it, in mm to one place: an inch mark then falls into the row printed beside it (9/32 in is 7.1). */
function printedMillimeters(path: string, length: number, low: number, high: number): number {
  checkMeasured(path, length, "m");
  checkBetween(path, length, low / 1000, high / 1000, "m");
  return roundDecimal({ value: decimalProduct({ value: length, factor: 1000 }), places: 1 });
}

function screwRow(size: string): { readonly row: Row; readonly rowName: string } {
  const name = sizeName("size", size);
  const areaAt = (cell: Row[number] | undefined): number =>
    areaOfSize("size", sizeOfRow(screws, [cell as string]));
  const rowNameOf = ([from, to]: Row): string => {
    const last = sizeOfRow(screws, [to as string]);
    return from === to ? last : `${from} to ${last}`;
  };
  const area = areaOfSize("size", name);
  // Sizes by name are what the table knows: a metric conductor has no row, even where its area would fall into one.
  const row = name.endsWith("mm²")
    ? undefined
    : screws.rows.find(([from, to]) => atMost(areaAt(from), area) && atMost(area, areaAt(to)));
  if (row !== undefined) return { row, rowName: rowNameOf(row) };
  return fail({
    code: "unknown-name",
    path: "size",
    expected: `one of ${screws.rows.map(rowNameOf).join(", ")} (${screws.edition})`,
    received: size,
  });
}

function slotted(drive: Extract<TerminalDrive, { kind: "slotted" }>, size: string): Found {
  const screw = checkOneOf("drive.screw", drive.screw, ["No. 10 and larger", "smaller than No. 10"]);
  const width = printedMillimeters("drive.slotWidth", drive.slotWidth, 0.1, 10);
  const length = printedMillimeters("drive.slotLength", drive.slotLength, 1, 50);
  const conditions = [`slotted screw ${screw}, slot ${width} mm wide and ${length} mm long`];
  const { row, rowName } = screwRow(size);
  if (screw === "No. 10 and larger") {
    const column =
      atMost(width, SLOT_WIDTH) && atMost(length, SLOT_LENGTH) ? "slotted narrow" : "slotted wide";
    return { table: screws, label: "Informative Annex I, Table I.1", row, rowName, column, conditions };
  }
  if (!atMost(areaOfSize("size", size), areaOfSize("size", SMALL_SLOT_LIMIT))) {
    fail({
      code: "outside-table",
      path: "size",
      expected: `${SMALL_SLOT_LIMIT} or smaller for a screw smaller than No. 10 (${smallSlots.edition})`,
      received: size,
    });
  }
  // A length between two rows takes the next shorter one.
  const reached = smallSlots.rows.filter(([cell]) => {
    const text = String(cell);
    if (text.startsWith("<")) return true;
    return text.startsWith(">") ? !atMost(length, Number(text.slice(1))) : atMost(Number(text), length);
  });
  const small = reached.at(-1) as Row;
  const column = atMost(SLOT_WIDTH, width) ? "wide" : "narrow";
  return {
    table: smallSlots,
    label: "Informative Annex I, Table I.2",
    row: small,
    rowName: `${small[0]} mm`,
    column,
    conditions: [...conditions, "conductor 8 AWG or smaller"],
  };
}

function socket(acrossFlats: number): Found {
  const flats = printedMillimeters("drive.acrossFlats", acrossFlats, 1, 50);
  const row = sockets.rows.find((one) => same(cellAt(sockets, one, "across flats") as number, flats));
  if (row === undefined) {
    return fail({
      code: "outside-table",
      path: "drive.acrossFlats",
      expected: `one of ${sockets.rows.map(([inch, mm]) => `${mm} mm (${inch} in)`).join(", ")} (${sockets.edition})`,
      received: acrossFlats,
      unit: "m",
    });
  }
  return {
    table: sockets,
    label: "Informative Annex I, Table I.3",
    row,
    rowName: `${row[1]} mm (${row[0]} in)`,
    column: "torque",
    conditions: ["recessed hexagon or square; the conductor does not enter"],
  };
}

function found(drive: TerminalDrive | undefined, size: string | undefined): Found {
  if (typeof drive !== "object" || drive === null) {
    const code = drive === undefined || drive === null ? "missing" : "wrong-type";
    return fail({ code, path: "drive", expected: "how the screw is turned", received: drive });
  }
  const kinds = ["slotted", "split bolt", "external hexagon", "recessed socket"] as const;
  const kind = checkOneOf("drive.kind", drive.kind, kinds);
  if (drive.kind === "recessed socket") {
    if (size !== undefined) sizeName("size", size);
    return socket(drive.acrossFlats);
  }
  if (drive.kind === "slotted") return slotted(drive, size as string);
  return {
    table: screws,
    label: "Informative Annex I, Table I.1",
    ...screwRow(size as string),
    column: kind,
    conditions: [kind === "split bolt" ? "split-bolt connector" : "external hexagon, no split bolt"],
  };
}

/** The maker's own value as a cell. */
function makersCell(maker: { readonly torque: NewtonMeters; readonly source: string }): TableCell {
  if (typeof maker !== "object" || maker === null) {
    return fail({ code: "wrong-type", path: "maker", expected: "torque and source", received: maker });
  }
  const { torque, source } = maker;
  checkMeasured("maker.torque", torque, "N·m");
  if (typeof source !== "string" || source.trim() === "") {
    fail({ code: "missing", path: "maker.source", expected: "text", received: source });
  }
  return {
    system: "maker data",
    edition: "as given",
    table: "maker's instruction",
    row: "the terminal",
    column: "torque",
    value: torque,
    unit: "N·m",
    source,
    kind: "user table",
    provenance: "seen",
    labelProvenance: "seen",
  };
}

/**
 * Tightening torque of a wire terminal: the maker's value if there is one, else the cell of UL 486A-B for its drive and conductor, as
 * reprinted in Informative Annex I of the code. Bolted bars and studs are another matter: see `tighteningTorque` of the room `joint`.
 *
 * Slotted screws No. 10 and larger (Table I.1): narrow is at most 1.2 mm wide and at most 6.4 mm long, wide is either more. Smaller ones
 * (Table I.2, up to 8 AWG): by slot length, a length between two rows taking the next shorter, and wide from 1.2 mm on. Lengths are first
 * read to the 0.1 mm the tables print, half up, so that 9/32 in is the row of 7.1 mm; a socket that is then none of the rows is refused.
 * @param input.maker - the maker's torque (N·m, more than 0) and where it is printed; given, it is the answer and nothing is looked up
 * @param input.drive - how the screw is turned; fields at {@link TerminalDrive}; may be left out when `maker` is given
 * @param input.size - conductor, AWG or kcmil; needed but for a recessed socket, whose table goes by the socket alone
 * @returns torque (N·m) with edition, table, row, column (the cell is in lbf·in as printed), deferral and cautions
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, `wrong-type`, `unknown-name` and `outside-table` with what exists
 *   (`outside-table` for a blank cell too), `ambiguous` for a size without its unit
 * @source UL 486A-B, Tables I.1 to I.3 of NFPA 70, Informative Annex I, as reprinted; the edition was not named
 * @example
 * ```ts
 * const { value, table, row } = terminalTorque({ drive: { kind: "external hexagon" }, size: "4 AWG" });
 * [toPoundForceInches(value), table, row] // => [110, "Informative Annex I, Table I.1", "6 to 4 AWG"]
 * ```
 * @since 0.1.0
 */
export function terminalTorque(input: {
  readonly maker?: { readonly torque: NewtonMeters; readonly source: string };
  readonly drive?: TerminalDrive;
  readonly size?: string;
}): CodeResult<NewtonMeters> {
  given(input);
  if (input.maker !== undefined) {
    const cell = makersCell(input.maker);
    return codeResult({
      value: input.maker.torque,
      unit: "N·m",
      cells: [cell],
      baseConditions: ["the terminal, conductor and tool the maker names"],
      governing: "maker's value",
      cautions: CARE,
    });
  }
  const { table, label, row, rowName, column, conditions } = found(input.drive, input.size);
  const value = cellAt(table, row, column);
  if (typeof value !== "number") {
    return fail({
      code: "outside-table",
      path: "drive",
      expected: `a drive that ${label} fills for ${rowName} (column ${column} is blank there)`,
      received: input.drive?.kind,
    });
  }
  const cell = describeCell({
    system: "North America",
    edition: "UL 486A-B as reprinted in NEC Informative Annex I",
    from: { label, table },
    row,
    rowName,
    column,
  });
  const warnings: readonly Warning[] = [
    {
      code: "assumed",
      path: "maker",
      message: "No torque of the maker was given; the maker's value comes before any table.",
    },
  ];
  return codeResult({
    value: poundForceInches(value),
    unit: "N·m",
    cells: [cell],
    baseConditions: conditions,
    governing: "table value",
    cautions: [
      ...CAUTIONS,
      ...CARE,
      "The reprints do not name the edition: look the cell up in the one adopted.",
    ],
    warnings,
  });
}
