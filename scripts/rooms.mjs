/**
 * The rooms of the house, read from the folders under src: the build, the exports map and the tests all ask
 * here, so that no list of rooms is kept twice.
 */
import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";

/** Rooms that the catalogue describes, lowest floor first: an example in one may use what stands before it. */
export const DESCRIBED = [
  "quantity",
  "numeric",
  "decision",
  "material",
  "element",
  "circuit",
  "joint",
  "wiring",
  "process",
  "bench",
];

/** The room of units is hundreds of converters, which the catalogue describes as one. */
const OF_QUANTITY = ["awgArea", "awgDiameter", "conductorArea", "convertUnits"];

/** @param {string} room @param {string} name @returns {boolean} whether a function may have an entry */
export function isDescribed(room, name) {
  return room !== "quantity" || OF_QUANTITY.includes(name);
}

/**
 * @param {string} src the src folder
 * @returns {string[]} folders under src that hold at least one file
 */
export function folders(src) {
  return readdirSync(src, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && readdirSync(join(src, entry.name)).length > 0)
    .map((entry) => entry.name)
    .sort();
}

/**
 * @param {string} src the src folder
 * @returns {string[]} folders under src with a door (index.ts); a folder without one is not a room yet
 */
export function rooms(src) {
  return folders(src).filter((name) => existsSync(join(src, name, "index.ts")));
}

/**
 * The nested shape (types beside each of import and require) is the one that resolves right in every module
 * mode; a `types` condition shared by both would hand ESM declarations to CommonJS callers.
 * @param {readonly string[]} names rooms
 * @returns {Record<string, unknown>} the `exports` field of package.json
 */
export function exportsMap(names) {
  /** @param {string} file */
  const entry = (file) => ({
    import: { types: `./dist/${file}.d.ts`, default: `./dist/${file}.js` },
    require: { types: `./dist/${file}.d.cts`, default: `./dist/${file}.cjs` },
  });
  return {
    ".": entry("index"),
    ...Object.fromEntries(names.map((room) => [`./${room}`, entry(room)])),
    "./catalogue.json": "./dist/catalogue.json",
    "./electroheat.global.js": "./dist/electroheat.global.js",
    "./shared/*.json": "./shared/*.json",
    "./package.json": "./package.json",
  };
}
