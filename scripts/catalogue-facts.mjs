/**
 * What the catalogue takes from the sources: shapes of inputs and results from the types, prose from the docstrings. Run as a program
 * (`npm run facts`) it writes the shapes to src/catalogue/facts, where the checks need them; a test fails when those fall behind. The
 * prose is not kept in the tree: the build takes it from the docstrings straight into catalogue.json.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { shapeReader } from "./catalogueShapes.mjs";
import { codeBlocks } from "./docComment.mjs";
import { docOf, publicProgram } from "./publicSymbols.mjs";
import { DESCRIBED, isDescribed } from "./rooms.mjs";

/** @typedef {import("../src/catalogue/shape.ts").RoomFacts} RoomFacts */
/** @typedef {import("../src/catalogue/shape.ts").RoomProse} RoomProse */
/** @typedef {import("../src/catalogue/shape.ts").Shape} Shape */

/** @param {string} text @returns {string} on one line, with links as the names they lead to */
const flat = (text) =>
  text
    .replace(/\{@link ([^}]+)\}/g, "`$1`")
    .replace(/\s+/g, " ")
    .trim();

/** @param {string} text @returns {string[]} sentences */
const sentences = (text) => text.split(/(?<=[.;!?])\s+(?=\p{Lu}|`|\d+\. )/u);

/**
 * The first sentence says what it is for; what follows a colon in it is its formula. Otherwise the first sentence with an equals
 * sign is.
 * @param {string} summary
 */
function told(summary) {
  const [first = "", ...rest] = summary.split(/\n\s*\n/).flatMap((paragraph) => sentences(flat(paragraph)));
  const colon = first.search(/: [^:]*=/);
  const purpose = colon < 0 ? first.replace(/\.$/, "") : first.slice(0, colon);
  const holder = colon < 0 ? [first, ...rest].find((one) => / = /.test(one)) : first.slice(colon + 2);
  const formula = holder?.replace(/^[^=]*?: (?=[^:]*=)/, "").replace(/\.$/, "");
  const details = rest.join(" ");
  return { purpose, ...(formula ? { formula } : {}), ...(details ? { details } : {}) };
}

/**
 * @param {string} root the project's folder, with a slash at its end
 * @returns {Record<string, { facts: RoomFacts, prose: RoomProse }>} by room
 */
export function catalogueFacts(root) {
  const { checker, exportsOf, behind } = publicProgram(root, DESCRIBED);
  /** @type {Map<ts.Symbol, string>} */
  const typeNames = new Map();
  for (const room of DESCRIBED) {
    for (const exported of exportsOf(room)) {
      const symbol = behind(exported);
      if (!typeNames.has(symbol) && symbol.flags & ts.SymbolFlags.Type)
        typeNames.set(symbol, `${room}.${exported.name}`);
    }
  }
  const reader = shapeReader(checker, (symbol) => typeNames.get(symbol));

  /** @param {ts.Type} type @returns {ts.Type} without undefined */
  const present = (type) => checker.getNonNullableType(type);
  /** @param {ts.Type} type */
  const isFieldsOnly = (type) =>
    !type.isUnion() &&
    (type.flags & ts.TypeFlags.Object || type.isIntersection()) &&
    !checker.isArrayType(type) &&
    !checker.isTupleType(type) &&
    type.getCallSignatures().length === 0 &&
    checker.getIndexInfosOfType(type).length === 0 &&
    checker.getPropertiesOfType(type).length > 0 &&
    type.getProperty("~electroheat.unit") === undefined;

  /** @param {ts.Signature} signature */
  const functionFacts = (signature) => {
    const parameters = signature.getParameters();
    const [first] = parameters;
    const only = parameters.length === 1 && first !== undefined ? checker.getTypeOfSymbol(first) : undefined;
    const byFields = only !== undefined && isFieldsOnly(present(only));
    const named = byFields ? checker.getPropertiesOfType(present(only)) : parameters;
    /** @type {Record<string, Shape>} */
    const inputs = {};
    for (const one of named) {
      const declaration = one.valueDeclaration;
      const optional = (one.flags & ts.SymbolFlags.Optional) !== 0;
      const left = declaration && ts.isParameter(declaration) && checker.isOptionalParameter(declaration);
      inputs[`${one.name}${optional || left ? "?" : ""}`] = reader.shape(checker.getTypeOfSymbol(one));
    }
    /** @type {"fields" | "arguments"} */
    const takes = byFields ? "fields" : "arguments";
    return { facts: { takes, inputs, output: reader.shape(signature.getReturnType()) }, named };
  };

  /** @param {ts.Symbol} symbol @returns {string} what the comment on a field says */
  const fieldDoc = (symbol) => {
    const [declaration] = symbol.declarations ?? [];
    const doc = declaration && docOf(declaration);
    return doc === undefined ? "" : flat(doc.summary);
  };

  /** @param {import("./docComment.mjs").DocComment} doc @param {readonly ts.Symbol[]} named @param {string} code */
  const functionProse = (doc, named, code) => {
    /** @param {string} name */
    const tag = (name) => doc.tags.find((one) => one.name === name)?.text;
    /** @type {Record<string, string>} */
    const described = {};
    // An argument described as a whole: the comments on its fields say what each is.
    for (const symbol of named) if (fieldDoc(symbol) !== "") described[symbol.name] = fieldDoc(symbol);
    const names = named.map(({ name }) => name);
    for (const { name, text } of doc.tags) {
      if (name !== "param") continue;
      const [, path = "", , words = ""] = /^(\S+)\s+(- )?([\s\S]*)$/.exec(text) ?? [];
      const parts = path.split(".");
      const at = parts.length > 1 ? parts.slice(1).join(".") : path;
      described[at] = flat(words);
    }
    const inputsTold = Object.fromEntries(
      Object.entries(described).filter(([path]) => names.includes(path.split(".")[0] ?? "")),
    );
    const source = tag("source");
    return {
      ...told(doc.summary),
      inputs: inputsTold,
      returns: flat(tag("returns") ?? ""),
      errors: flat(tag("throws") ?? ""),
      ...(source ? { source: flat(source) } : {}),
      example: code.trim(),
      since: tag("since") ?? "",
    };
  };

  /** @type {Record<string, { facts: RoomFacts, prose: RoomProse }>} */
  const all = {};
  for (const room of DESCRIBED) {
    /** @type {Record<string, any>} */
    const functions = {};
    /** @type {Record<string, any>} */
    const prose = {};
    for (const exported of exportsOf(room)) {
      const symbol = behind(exported);
      if (!(symbol.flags & (ts.SymbolFlags.Function | ts.SymbolFlags.Variable))) continue;
      const [declaration] = symbol.declarations ?? [];
      const [signature] = checker.getTypeOfSymbol(symbol).getCallSignatures();
      const doc = declaration && docOf(declaration);
      if (signature === undefined || doc === undefined || !isDescribed(room, exported.name)) continue;
      const code = codeBlocks(doc.tags.find(({ name }) => name === "example")?.text ?? "", "ts")[0] ?? "";
      const { facts, named } = functionFacts(signature);
      functions[exported.name] = facts;
      prose[exported.name] = functionProse(doc, named, code);
    }
    all[room] = { facts: { functions, shapes: {} }, prose: { functions: prose, shapes: {} } };
  }
  nameShapes(all);
  return all;

  /** @param {Record<string, { facts: RoomFacts, prose: RoomProse }>} rooms */
  function nameShapes(rooms) {
    const done = new Set();
    for (;;) {
      const next = [...reader.met.keys()].find((name) => !done.has(name));
      if (next === undefined) break;
      done.add(next);
      const type = /** @type {ts.Type} */ (reader.met.get(next));
      const room = /** @type {{ facts: any, prose: any }} */ (rooms[next.split(".")[0] ?? ""]);
      room.facts.shapes[next] = reader.shape(type, true);
      /** @type {Record<string, string>} */
      const fields = {};
      for (const part of type.isUnion() ? type.types : [type]) {
        for (const property of checker.getPropertiesOfType(part)) {
          if (fieldDoc(property) !== "") fields[property.name] ??= fieldDoc(property);
        }
      }
      room.prose.shapes[next] = fields;
    }
    for (const { facts, prose } of Object.values(rooms)) {
      for (const part of [facts, prose]) {
        const sorted = Object.entries(part.shapes).sort(([a], [b]) => (a < b ? -1 : 1));
        /** @type {any} */ (part).shapes = Object.fromEntries(sorted);
      }
    }
  }
}

/** @param {unknown} data @returns {string} the text of a generated file */
export const fileText = (data) => `${JSON.stringify(data, null, 1)}\n`;

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const root = fileURLToPath(new URL("..", import.meta.url));
  mkdirSync(`${root}src/catalogue/facts`, { recursive: true });
  for (const [room, { facts }] of Object.entries(catalogueFacts(root))) {
    writeFileSync(`${root}src/catalogue/facts/${room}.json`, fileText(facts));
  }
}
