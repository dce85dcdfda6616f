// A million module records through an analytical database that calls our function for every row.
//   node examples/scale/database.mjs [rows]
import { pathToFileURL } from "node:url";
import { DOUBLE, DuckDBInstance, DuckDBScalarFunction } from "@duckdb/node-api";
import { FIELDS, moduleHeat } from "./records.mjs";

/** @template T @typedef {[T, T, T, T, T, T]} Six */

/** The records are made by the database itself, by the same walk as in records.mjs. */
const part = (/** @type {number} */ step) => `((i * ${step}) % 9973)::double / 9973`;
const RECORDS = (/** @type {number} */ rows) => `create table modules as select i,
  460 + 40 * (${part(7919)}) as lineVoltage, 10 + 5 * (${part(104729)}) as r12, 10 + 5 * (${part(1299709)}) as r23,
  case when i % 1000 = 999 then -1 else 10 + 5 * (${part(15485863)}) end as r31,
  40 + 40 * (${part(32452843)}) as jointCurrent, 1e-4 + 9e-4 * (${part(49979687)}) as jointResistance
  from range(${rows}) t(i)`;

/** Six columns in, one out. A throw would end the whole query, so a refused record becomes NULL. */
const moduleHeatFunction = () =>
  DuckDBScalarFunction.create({
    name: "module_heat",
    parameterTypes: FIELDS.map(() => DOUBLE),
    returnType: DOUBLE,
    mainFunction(_, input, output) {
      const columns = FIELDS.map((_field, k) => input.getColumnVector(k));
      const [v, a, b, c, i, r] = /** @type {Six<typeof columns[number]>} */ (columns);
      const at = (/** @type {typeof v} */ column, /** @type {number} */ row) =>
        /** @type {number} */ (column.getItem(row));
      for (let row = 0; row < input.rowCount; row += 1) {
        const heat = moduleHeat(at(v, row), at(a, row), at(b, row), at(c, row), at(i, row), at(r, row));
        output.setItem(row, Number.isNaN(heat) ? null : heat);
      }
      output.flush();
    },
  });

/**
 * @param {number} rows
 * @returns {Promise<{ total: number, refused: number, hottest: readonly (readonly number[])[], seconds: number }>}
 */
export async function throughDatabase(rows) {
  const instance = await DuckDBInstance.create(":memory:");
  const connection = await instance.connect();
  try {
    connection.registerScalarFunction(moduleHeatFunction());
    await connection.run(RECORDS(rows));
    const start = performance.now();
    await connection.run(
      `create table heats as select i, module_heat(${FIELDS.join(", ")}) as heat from modules`,
    );
    const seconds = (performance.now() - start) / 1000;
    const ask = async (/** @type {string} */ query) => (await connection.runAndReadAll(query)).getRows();
    const [[total, refused] = []] = await ask("select sum(heat), count(*) filter (heat is null) from heats");
    const hottest = await ask("select i, heat from heats order by heat desc nulls last, i limit 3");
    return {
      total: Number(total),
      refused: Number(refused),
      hottest: hottest.map((row) => row.map(Number)),
      seconds,
    };
  } finally {
    connection.closeSync();
    instance.closeSync();
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const rows = Number(process.argv[2] ?? 1_000_000);
  const { total, refused, hottest, seconds } = await throughDatabase(rows);
  console.log(`${rows} modules, ${refused} refused, ${(total / 1e6).toFixed(3)} MW in all`);
  for (const [row, heat] of hottest) console.log(`  module ${row}: ${((heat ?? 0) / 1000).toFixed(2)} kW`);
  console.log(`${(rows / seconds / 1e6).toFixed(2)} million rows a second`);
}
