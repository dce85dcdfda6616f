// Columns of a million rows against hand-written loops over typed arrays; each calculation alone in its process. The whole
// table, other calculations and mixed programs included, is benchmarks/columns.mjs.
//   node benchmarks/rows/columns.mjs     (after npm run build)
import { powerFromVoltageAndResistance } from "electroheat/element";
import { evaluateColumns, evaluateRows } from "electroheat/operators";
import { atMost, paired, tell } from "../measure.mjs";

const ROWS = 1_000_000;
const column = (/** @type {number} */ low, /** @type {number} */ high) =>
  Float64Array.from({ length: ROWS }, (_, i) => low + ((high - low) * ((i * 7919) % ROWS)) / ROWS);
const voltage = column(200, 480);
const resistance = column(5, 50);

const bare = () => {
  const out = new Float64Array(ROWS);
  for (let i = 0; i < ROWS; i += 1) out[i] = (voltage[i] * voltage[i]) / resistance[i];
  return out;
};
const called = () => {
  const out = new Float64Array(ROWS);
  for (let i = 0; i < ROWS; i += 1)
    out[i] = powerFromVoltageAndResistance({ voltage: voltage[i], resistance: resistance[i] });
  return out;
};
const columns = () =>
  evaluateColumns({ calculation: powerFromVoltageAndResistance, columns: { voltage, resistance } }).columns
    .result;
const rows = () =>
  evaluateRows({
    rows: ROWS,
    evaluate: (i) => powerFromVoltageAndResistance({ voltage: voltage[i], resistance: resistance[i] }),
  }).columns.result;
if (columns()?.[7] !== called()[7] || rows()?.[7] !== bare()[7]) throw new Error("the columns differ");

const options = { rounds: 15, warm: 4 };
tell([
  atMost(
    "evaluateColumns, power, 1e6 rows",
    "a loop that calls the same function",
    paired(columns, called, options),
    1.2,
  ),
  atMost(
    "evaluateColumns, power, 1e6 rows",
    "a loop of bare arithmetic, no checks",
    paired(columns, bare, options),
    1.2,
  ),
  atMost(
    "evaluateRows, power, 1e6 rows",
    "a loop that calls the same function",
    paired(rows, called, options),
    1.2,
  ),
]);
