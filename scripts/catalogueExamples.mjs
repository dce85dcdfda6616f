/** Inputs that the docstrings' examples give their functions: known good ones, for the catalogue and for its tests. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { buildSync } from "esbuild";
import ts from "typescript";
import { codeBlocks } from "./docComment.mjs";
import { docOf } from "./publicSymbols.mjs";
import { DESCRIBED, isDescribed } from "./rooms.mjs";

/** @param {string} root @returns {Record<string, Record<string, unknown>>} the rooms, built and loaded */
function loadRooms(root) {
  const { outputFiles } = buildSync({
    stdin: {
      contents: DESCRIBED.map((room) => `export * as ${room} from "./src/${room}/index.ts";`).join("\n"),
      resolveDir: root,
      loader: "ts",
    },
    bundle: true,
    write: false,
    format: "iife",
    globalName: "loaded",
  });
  return new Function(`${outputFiles[0]?.text}; return loaded;`)();
}

/** @param {string} root @param {string} room @returns {Map<string, string>} code of the example by function */
function exampleCodes(root, room) {
  const folder = join(root, "src", room);
  /** @type {Map<string, string>} */
  const codes = new Map();
  for (const entry of readdirSync(folder, { recursive: true })) {
    if (!String(entry).endsWith(".ts")) continue;
    const path = join(folder, String(entry));
    const source = ts.createSourceFile(path, readFileSync(path, "utf8"), ts.ScriptTarget.ES2022, true);
    for (const statement of source.statements) {
      if (!ts.isFunctionDeclaration(statement) || statement.name === undefined) continue;
      const text = docOf(statement)?.tags.find(({ name }) => name === "example")?.text;
      const [code] = text === undefined ? [] : codeBlocks(text, "ts");
      if (code !== undefined) codes.set(statement.name.text, code);
    }
  }
  return codes;
}

/** @param {unknown} value @returns {boolean} survives JSON unchanged */
function isPlain(value) {
  if (value === null || typeof value === "string" || typeof value === "boolean") return true;
  if (typeof value === "number") return Number.isFinite(value) && !Object.is(value, -0);
  if (typeof value !== "object") return false;
  const prototype = Object.getPrototypeOf(value);
  if (prototype !== Object.prototype && prototype !== Array.prototype) return false;
  return Object.values(value).every(isPlain);
}

/**
 * Arguments of the last call that each function's example makes of it, where they are plain data and the call succeeds.
 * @param {string} root the project's folder
 * @returns {Record<string, Record<string, unknown[]>>} room → function → arguments
 */
export function exampleArguments(root) {
  const rooms = loadRooms(root);
  /** @type {Record<string, Record<string, unknown[]>>} */
  const all = {};
  for (const room of DESCRIBED) {
    /** @type {Record<string, unknown[]>} */
    const kept = {};
    all[room] = kept;
    for (const [name, code] of exampleCodes(root, room)) {
      /** @type {Record<string, any>} */
      const scope = {};
      for (const other of DESCRIBED.slice(0, DESCRIBED.indexOf(room))) Object.assign(scope, rooms[other]);
      Object.assign(scope, rooms[room]);
      const call = scope[name];
      if (typeof call !== "function" || !isDescribed(room, name)) continue;
      scope[name] = (/** @type {unknown[]} */ ...args) => {
        const result = call(...args);
        if (args.every(isPlain)) kept[name] = structuredClone(args);
        return result;
      };
      const { outputText } = ts.transpileModule(`(() => { ${code}\n})();`, {
        compilerOptions: { target: ts.ScriptTarget.ES2022 },
      });
      const names = Object.keys(scope);
      try {
        new Function(...names, outputText)(...names.map((one) => scope[one]));
      } catch {
        // An example may show an error: what it called before that still counts.
      }
    }
  }
  return all;
}
