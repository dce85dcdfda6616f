/**
 * What the build adds to dist: `catalogue.json`, the whole catalogue as one file, and `electroheat.global.js`, the catalogue as one
 * script for hosts without modules.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import { catalogueFacts } from "./catalogue-facts.mjs";
import { exampleArguments } from "./catalogueExamples.mjs";
import { jsonSchemas } from "./catalogueSchema.mjs";

/** @typedef {import("../src/catalogue/listing.ts").CatalogueEntry} CatalogueEntry */
/** @typedef {import("../src/catalogue/listing.ts").NamedShape} NamedShape */

/** @param {CatalogueEntry} entry @param {unknown[]} args @returns {Record<string, unknown>} inputs by name */
function named({ takes, declared }, args) {
  if (takes === "fields") return /** @type {Record<string, unknown>} */ (args[0]);
  return Object.fromEntries(declared.map((name, i) => [name, args[i]]));
}

/**
 * The catalogue as one piece of data: what the entries say, the words of the docstrings, a good set of inputs, and JSON Schemas.
 * @param {string} root the project's folder, with a slash at its end
 * @param {readonly CatalogueEntry[]} entries
 * @param {readonly NamedShape[]} shapes
 */
export function catalogueData(root, entries, shapes) {
  const facts = catalogueFacts(root);
  const examples = exampleArguments(root);
  const schemas = jsonSchemas(entries, shapes);
  const { version } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
  return {
    name: "electroheat",
    version,
    entries: entries.map((entry) => {
      const { id, room, name } = entry;
      const prose = facts[room]?.prose.functions[name];
      const args = examples[room]?.[name];
      return {
        ...entry,
        purpose: prose?.purpose,
        formula: entry.text ?? prose?.formula,
        details: prose?.details,
        inputs: entry.inputs.map((input) => ({ ...input, description: prose?.inputs[input.name] ?? "" })),
        returns: prose?.returns,
        source: prose?.source,
        since: prose?.since,
        example: { code: prose?.example, ...(args === undefined ? {} : { inputs: named(entry, args) }) },
        schema: schemas.inputs[id],
      };
    }),
    shapes: shapes.map((one) => ({
      ...one,
      fields: facts[one.name.split(".")[0] ?? ""]?.prose.shapes[one.name] ?? {},
    })),
    $defs: schemas.shapes,
  };
}

/** @param {string} root the project's folder, with a slash at its end; dist must have been built */
export async function writeCatalogue(root) {
  const { catalogueEntries, catalogueShapes } = await import(
    pathToFileURL(join(root, "dist/catalogue.js")).href
  );
  const data = catalogueData(root, catalogueEntries(), catalogueShapes());
  writeFileSync(join(root, "dist/catalogue.json"), `${JSON.stringify(data)}\n`);
}

/**
 * One script, which sets the global `electroheat` and needs nothing of its host.
 * @param {string} root the project's folder
 * @param {string} [outfile]
 */
export async function buildGlobal(root, outfile = join(root, "dist/electroheat.global.js")) {
  return build({
    entryPoints: [join(root, "src/catalogue/index.ts")],
    outfile,
    bundle: true,
    minify: true,
    // Symbols in messages stay readable whatever encoding a host reads the script in.
    charset: "ascii",
    format: "iife",
    globalName: "electroheat",
    target: "es2020",
    legalComments: "eof",
    metafile: true,
    logLevel: "error",
  });
}
