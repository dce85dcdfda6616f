/**
 * Ten thousand cells of a spreadsheet engine recalculated: our functions against the same formulas in the engine's own syntax,
 * side by side in one run. `npm run build` first, then `node benchmarks/spreadsheet.mjs`.
 */
import { sheetOf } from "../examples/spreadsheet/engine.mjs";

const ROWS = 10_000;
const TURNS = 9;

/** @type {readonly (readonly [string, string, string])[]} name, our formula, the same in the engine's syntax */
const FORMULAS = [
  ["lineCurrent", "=EH.LINECURRENT(#*$A$1, $B$1)", "=#*$A$1/(SQRT(3)*$B$1)"],
  [
    "powerFromVoltageAndResistance",
    "=EH.POWERFROMVOLTAGEANDRESISTANCE($B$1, #*$A$1)",
    '=IF(#*$A$1>0, $B$1*$B$1/(#*$A$1), "open")',
  ],
  ["preloadFromTorque", "=EH.PRELOADFROMTORQUE(#*$A$1, 0.00635, 0.2)", "=#*$A$1/(0.2*0.00635)"],
];

/** A sheet whose every cell depends on A1. @param {string} formula */
const sheet = (formula) =>
  sheetOf([[1, 480], ...Array.from({ length: ROWS }, (_, i) => [formula.replaceAll("#", String(i + 1))])]);

/** @param {ReturnType<typeof sheet>} engine @param {number} value @returns {number} ms */
function recalculated(engine, value) {
  const start = performance.now();
  engine.setCellContents({ sheet: 0, row: 0, col: 0 }, value);
  return performance.now() - start;
}
const median = (/** @type {number[]} */ list) => list.sort((a, b) => a - b)[list.length >> 1] ?? Number.NaN;

console.log(`${ROWS} cells recalculated, median of ${TURNS} turns\n`);
for (const [name, ours, native] of FORMULAS) {
  const [mine, theirs] = [sheet(ours), sheet(native)];
  const last = { sheet: 0, row: ROWS, col: 0 };
  const off = Math.abs(Number(mine.getCellValue(last)) / Number(theirs.getCellValue(last)) - 1);
  if (!(off < 1e-12))
    throw new Error(`${name}: ${mine.getCellValue(last)} against ${theirs.getCellValue(last)}`);
  /** @type {number[]} */
  const [a, b] = [[], []];
  for (let turn = 0; turn < TURNS; turn += 1) {
    a.push(recalculated(mine, turn + 2));
    b.push(recalculated(theirs, turn + 2));
  }
  const [x, y] = [median(a), median(b)];
  console.log(
    `${name.padEnd(31)} ${x.toFixed(1).padStart(7)} ms  ${y.toFixed(1).padStart(7)} ms native  ${(x / y).toFixed(2)}×`,
  );
}
