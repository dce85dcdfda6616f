/** Conductor sizes as names: "6 AWG", "250 kcmil", "10 mm²". A name, not an area: 50 mm² cable holds 47.5 mm². */
import { conductorArea, fail, squareMillimeters } from "../quantity/index.ts";
import type { Row, SharedTable } from "./sharedTable.ts";

const FORMS = "a size with AWG, kcmil or mm²";
const LARGEST_BARE_AWG = 40;

/** Name of the size in a row: the table's own unit decides between mm² and the American sizes. */
export function sizeOfRow(table: SharedTable, row: Row): string {
  const cell = String(row[0]);
  if (table.columns[0]?.unit === "mm²") return `${cell} mm²`;
  return cell.includes("/") || Number(cell) <= LARGEST_BARE_AWG ? `${cell} AWG` : `${cell} kcmil`;
}

/**
 * A size as people write it ("#6", "AWG 6", "2/0", "00 AWG", "250 MCM", "2.5mm2", "2.5 sq mm") under the name the tables use.
 */
export function sizeName(path: string, text: string): string {
  if (typeof text !== "string" || text.trim() === "" || text.length > 24) {
    const code =
      text === undefined || text === null
        ? "missing"
        : typeof text !== "string"
          ? "wrong-type"
          : text.trim() === ""
            ? "missing"
            : "malformed-text";
    return fail({ code, path, expected: FORMS, received: text });
  }
  const bare = text.trim().toUpperCase().replace(/\s+/g, "");
  const gauge = /^(#|NO\.|AWG)?(\d{1,2}|[1-4]\/0|0{2,4})(AWG)?$/.exec(bare);
  if (gauge !== null) {
    const [, mark, number, unit] = gauge as unknown as readonly [
      string,
      string | undefined,
      string,
      string | undefined,
    ];
    if (/^0{2,4}$/.test(number)) return `${number.length}/0 AWG`;
    if (number.includes("/")) return `${number} AWG`;
    if (mark === undefined && unit === undefined) {
      return fail({ code: "ambiguous", path, expected: FORMS, received: text });
    }
    return number === "0" ? "1/0 AWG" : `${Number(number)} AWG`;
  }
  const kcmil = /^(\d{2,4})(KCMIL|MCM)$/.exec(bare)?.[1];
  if (kcmil !== undefined) return `${kcmil} kcmil`;
  const metric = /^(\d{1,4}(?:\.\d{1,2})?)(?:MM²|MM\^?2|SQ\.?MM)$/.exec(bare)?.[1];
  if (metric !== undefined) return `${Number(metric)} mm²`;
  // "12 ga" too: AWG in one country, SWG in another.
  const code = /^\d+(\.\d+|(?:\/0)?GA(?:UGE)?\.?)?$/.test(bare) ? "ambiguous" : "malformed-text";
  return fail({ code, path, expected: FORMS, received: text });
}

/** Metal area of a size name (m²), to order sizes by: 1/0 AWG stands between 1 AWG and 250 kcmil. */
export function areaOfSize(path: string, size: string): number {
  const name = sizeName(path, size);
  const [number = "", unit] = name.split(" ");
  // A gauge that does not exist is the caller's slip: named here after his argument.
  if (Number(number) === 0 || (unit === "AWG" && Number(number) > LARGEST_BARE_AWG)) {
    fail({ code: "out-of-range", path, expected: "40 AWG to 4/0 AWG, or more than 0", received: size });
  }
  return unit === "mm²" ? squareMillimeters(Number(number)) : conductorArea(name);
}

/** The row of a size; a size the table does not have is answered with those it has. */
export function rowOfSize(table: SharedTable, path: string, text: string): Row {
  const name = sizeName(path, text);
  const row = table.rows.find((one) => sizeOfRow(table, one) === name);
  if (row !== undefined) return row;
  const known = [...new Set(table.rows.map((one) => sizeOfRow(table, one)))];
  return fail({
    code: "unknown-name",
    path,
    expected: `one of ${known.join(", ")} (${table.edition})`,
    received: text,
  });
}
