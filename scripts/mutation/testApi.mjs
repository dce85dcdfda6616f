/**
 * What the tests of a room import as `vitest` while the code is being mutated: the same expectations, and a `describe` and `it` that only
 * note what there is. The tests then lie in the memory of one process and are run again for each change, without starting anything.
 */
import { expect, vi } from "vitest";

/**
 * @typedef {{ id: string, name: string, file: string, run: () => unknown, before: (() => unknown)[] }} Noted
 * @typedef {{ names: readonly string[], before: (() => unknown)[] }} Suite
 */

/** @type {Noted[]} */
export const noted = [];
/** Clean-up of the suites, run once at the very end. @type {(() => unknown)[]} */
export const last = [];
let file = "";
/** @type {Suite} */
let suite = { names: [], before: [] };

/**
 * Notes the tests of one file.
 * @param {string} path @param {() => Promise<unknown>} load
 */
export async function noteFile(path, load) {
  file = path;
  suite = { names: [], before: [] };
  await load();
}

/** `%s` and `$field` do not matter here: the number of the case tells two cases apart. @param {unknown} row */
const cells = (row) => (Array.isArray(row) ? row : [row]);

/** @param {string} name @param {() => void} body */
function describe(name, body) {
  const outer = suite;
  suite = { names: [...outer.names, name], before: [...outer.before] };
  body();
  suite = outer;
}
/** @param {readonly unknown[]} rows */
describe.each = (rows) => (/** @type {string} */ name, /** @type {(...row: unknown[]) => void} */ body) => {
  for (const [i, row] of rows.entries()) {
    const [first] = cells(row);
    const label = typeof first === "string" ? first : (first?.path ?? "");
    describe(`${name} ${i} ${label}`, () => body(...cells(row)));
  }
};

/** @param {string} name @param {() => unknown} run */
function it(name, run) {
  const full = [...suite.names, name].join(" > ");
  const id = `${file} # ${full} # ${noted.length}`;
  noted.push({ id, name: full, file, run, before: suite.before });
}
/** @param {readonly unknown[]} rows */
it.each = (rows) => (/** @type {string} */ name, /** @type {(...row: unknown[]) => unknown} */ run) => {
  for (const [i, row] of rows.entries()) it(`${name} ${i}`, () => run(...cells(row)));
};
const skipped = Object.assign(() => {}, { each: () => () => {} });
/** @param {unknown} condition */
it.skipIf = (condition) => (condition ? skipped : it);

/** @param {() => unknown} run */
const beforeAll = (run) => void suite.before.push(run);
/** @param {() => unknown} run */
const afterAll = (run) => void last.push(run);

export { afterAll, beforeAll, describe, expect, it, it as test, vi };
