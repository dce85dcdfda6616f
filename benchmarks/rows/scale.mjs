// A million module records: a plain loop, the same on two worker threads, and through an analytical database that calls the
// function for every row (@duckdb/node-api). Rows a second of wall time, best of three:
// on a machine with other work the threads and the database come out worse than they are.
//   node benchmarks/rows/scale.mjs     (after npm run build)
import { throughDatabase } from "../../examples/scale/database.mjs";
import { pool } from "../../examples/scale/pool.mjs";
import { columnsOf, plainLoop } from "../../examples/scale/records.mjs";
import { tell } from "../measure.mjs";

const ROWS = 1_000_000;
const shared = (/** @type {number} */ bytes) => new SharedArrayBuffer(bytes);
const columns = columnsOf(ROWS, shared);
const out = new Float64Array(shared(ROWS * 8));
/** @param {() => unknown} run @returns {Promise<number>} seconds */
async function best(run) {
  await run();
  let least = Number.POSITIVE_INFINITY;
  for (let turn = 0; turn < 3; turn += 1) {
    const start = performance.now();
    await run();
    least = Math.min(least, (performance.now() - start) / 1000);
  }
  return least;
}
const workers = pool(2);
const one = await best(() => plainLoop(columns, out));
const two = await best(() => workers.fill(columns, out));
await workers.end();
let database = Number.POSITIVE_INFINITY;
for (let turn = 0; turn < 3; turn += 1) database = Math.min(database, (await throughDatabase(ROWS)).seconds);

const rate = (/** @type {number} */ seconds) => `${(ROWS / seconds / 1e6).toPrecision(3)} M rows/s`;
const row = (/** @type {string} */ what, /** @type {string} */ against, /** @type {number} */ seconds) => ({
  what,
  against,
  reach: "",
  found: rate(seconds),
  met: null,
  detail: `${(seconds / one).toPrecision(3)}× the time of the plain loop`,
});
tell([
  row("1e6 module records, plain loop on one thread", "–", one),
  row("1e6 module records, two worker threads over shared columns", "the plain loop", two),
  row("1e6 module records through the database, one call for each row", "the plain loop", database),
]);
