// A bench sheet as a spreadsheet: every calculation of the catalogue registered with a spreadsheet engine, a module's readings
// typed in as a technician would, recalculated when one of them changes, and saved as CSV. The scenario is invented.
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { registered, sheetOf } from "./spreadsheet/engine.mjs";

/** @typedef {string | number | boolean | null} Cell */
const COLD = "$B$9";
const READS = [6.6, 6.58, 6.63];
/** @type {Cell[][]} */
const rows = [
  ["Tunnel oven, zone 3", "36 kW", "480 V", "star", "leads Ω", 0.2],
  ["id", "from", "to", "resistance", "reads Ω", "of target"],
  ...READS.map((reads, i) => {
    const row = i + 3;
    return [
      `A-L${i + 1}`,
      `L${i + 1}`,
      "S",
      `=IF(E${row}="OL", "OL", E${row} - $F$1)`,
      reads,
      `=IF(E${row}="OL", "open", D${row} / ${COLD})`,
    ];
  }),
  [],
  ["supply", '=EH.BALANCEDSUPPLY(C1, , , "json")'],
  ["line current A", "=EH.LINECURRENT(B1, C1)", "status", '=EH.STATUS("lineCurrent", B1, C1)'],
  ["cold target Ω", '=EH.NAMEPLATETARGETS(B1, C1, D1, 1, 1, 1, 1.04, "branchResistanceCold")'],
  // The table of branches is a range of the sheet; the readings are cold, so this is the first second.
  ["first second W", '=EH.ENERGISE(A2:D5, B7, "totalPower")'],
  ["L3-L1 reads Ω", '=EH.TERMINALRESISTANCE(A2:D5, "L3", "L1")'],
  [],
  ["bank W", "12 kW", 24_000, null, true],
  // A range goes in, a range comes out; a blank is missing, and true is no number.
  ["line current A", '=EH.SPILL(1, 4, "lineCurrent", B13:E13, C1)'],
  ["preload kN", '=EH.PRELOADFROMTORQUE("132 lbf·in", "0.25 in", 0.2) / 1000'],
  ["lug for 2/0 AWG, mm²", '=EH.CONDUCTORAREA("2/0 AWG") * 1000000'],
];
const sheet = sheetOf(rows);

/** @param {number} row @param {number} col */
const shown = (row, col) => {
  const value = sheet.getCellValue({ sheet: 0, row, col });
  if (value === null || value === undefined) return "";
  if (typeof value === "number") return String(Number(value.toPrecision(5)));
  if (typeof value === "object") return `#${value.type}!`;
  // A record that another formula reads is a long text.
  return String(value).startsWith("{") ? "(a supply)" : String(value);
};
const { width, height } = sheet.getSheetDimensions(0);
const cells = () =>
  Array.from({ length: height }, (_, row) =>
    Array.from({ length: width }, (_unused, col) => shown(row, col)),
  );

/** Prints the sheet; a text too long for its cell stands below, under a number. @param {string} title */
function print(title) {
  /** @type {string[]} */
  const long = [];
  const short = (/** @type {string} */ text) => {
    if (text.length <= 12) return text;
    const known = long.indexOf(text);
    return `see (${known < 0 ? long.push(text) : known + 1})`;
  };
  console.log(`\n${title}\n`);
  for (const row of cells()) {
    const line = row.map((text, col) => (col === 0 ? text.padEnd(21) : short(text).padStart(11)));
    console.log(`  ${line.join(" ").trimEnd()}`);
  }
  for (const [i, text] of long.entries()) console.log(`  (${i + 1}) ${text}`);
}

console.log(`${registered.length} functions registered from the catalogue`);
print("As found");
sheet.setCellContents({ sheet: 0, row: 4, col: 4 }, "OL");
sheet.setCellContents({ sheet: 0, row: 0, col: 1 }, "-36 kW");
print("L3 read again as OL, and a slip in the plate's power");
sheet.setCellContents({ sheet: 0, row: 0, col: 1 }, "36 kW");
print("The slip mended: with one branch open the two others stand in series on one line voltage");

const quoted = (/** @type {string} */ text) =>
  /[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
const file = join(mkdtempSync(join(tmpdir(), "electroheat-sheet-")), "bench-sheet.csv");
writeFileSync(
  file,
  `${cells()
    .map((row) => row.map(quoted).join(","))
    .join("\n")}\n`,
);
console.log(`\nSaved as ${file}`);
console.log(
  "\nOhm readings are for a module that is isolated, locked out and proved dead. The code adopted where it stands, the maker's\ninstructions and a licensed electrician govern.",
);
