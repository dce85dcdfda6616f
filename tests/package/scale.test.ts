/** Many records: worker threads over shared columns, and an analytical database that calls our function for every row. */
import { cpSync, existsSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { describe, expect, it } from "vitest";
import { root } from "../support/house.ts";
import { packed, runConsumer } from "./consume.ts";

const ROWS = 20_000;
const folder = join(packed.consumer, "scale");
cpSync(join(root, "examples/scale"), folder, { recursive: true });
const database = join(root, "node_modules/@duckdb");
const linked = join(packed.consumer, "node_modules/@duckdb");
if (existsSync(database) && !existsSync(linked)) symlinkSync(database, linked);

/** The arithmetic of the records by itself, without the library: V²·Σ1/R − I²·r. */
function expected(row: number): number {
  const part = (step: number): number => ((row * step) % 9973) / 9973;
  if (row % 1000 === 999) return Number.NaN;
  const v = 460 + 40 * part(7919);
  const rs = [104729, 1299709, 15485863].map((step) => 10 + 5 * part(step));
  const i = 40 + 40 * part(32452843);
  return rs.reduce((sum, r) => sum + (v * v) / r, 0) - i * i * (1e-4 + 9e-4 * part(49979687));
}
const rows = Array.from({ length: ROWS }, (_, row) => expected(row));
const total = rows.reduce((sum, heat) => (Number.isNaN(heat) ? sum : sum + heat), 0);
const refused = rows.filter(Number.isNaN).length;

describe("two worker threads over shared columns", () => {
  it("fill the column that one thread fills, bit for bit, and it is right", () => {
    const printed = runConsumer(
      "scale/pooled.mjs",
      `import { pool } from "./pool.mjs";
import { columnsOf, plainLoop } from "./records.mjs";
const shared = (bytes) => new SharedArrayBuffer(bytes);
const columns = columnsOf(${ROWS}, shared);
const [one, two] = [new Float64Array(${ROWS}), new Float64Array(shared(${ROWS * 8}))];
plainLoop(columns, one);
const workers = pool(2);
await workers.fill(columns, two);
await workers.end();
const bits = (column) => new BigUint64Array(new Float64Array(column).buffer);
const [a, b] = [bits(one), bits(two)];
console.log(JSON.stringify({
  same: a.every((value, i) => value === b[i]),
  total: two.reduce((sum, heat) => (Number.isNaN(heat) ? sum : sum + heat), 0),
  refused: two.filter(Number.isNaN).length,
}));`,
    );
    const found = JSON.parse(printed);
    expect(found.same).toBe(true);
    expect(found.refused).toBe(refused);
    expect(found.total / total).toBeCloseTo(1, 12);
  });
});

describe("an analytical database", () => {
  it.skipIf(!existsSync(database))(
    "calls the function for every row; a refused record is NULL, not the end",
    () => {
      const printed = runConsumer(
        "scale/asked.mjs",
        `import { throughDatabase } from ${JSON.stringify(pathToFileURL(join(folder, "database.mjs")).href)};
console.log(JSON.stringify(await throughDatabase(${ROWS})));`,
      );
      const found = JSON.parse(printed);
      expect(found.refused).toBe(refused);
      // The database adds in an order of its own.
      expect(found.total / total).toBeCloseTo(1, 12);
      const order = rows.map((heat, row) => [row, heat] as const).filter(([, heat]) => !Number.isNaN(heat));
      order.sort(([i, x], [j, y]) => y - x || i - j);
      const [hottest] = found.hottest as [number, number][];
      expect(hottest?.[1]).toBeCloseTo(order[0]?.[1] as number, 9);
    },
  );
});
