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
import { jsonAsText } from "./jsonText.mjs";
import { privateZod } from "./privateZod.mjs";
import { thirdPartyNotice } from "./third-party.mjs";

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
 * @param {string} [outDir] where it is written, with the licences of what is bundled into it
 */
export async function buildGlobal(root, outDir = join(root, "dist")) {
  const { outputFiles, metafile } = await build({
    entryPoints: [join(root, "src/catalogue/index.ts")],
    bundle: true,
    minify: true,
    charset: "ascii",
    format: "iife",
    globalName: "electroheat",
    target: "es2020",
    legalComments: "none",
    banner: { js: "/*! electroheat. Licences of what is bundled: THIRD-PARTY-LICENSES.txt */" },
    metafile: true,
    write: false,
    logLevel: "error",
    absWorkingDir: root,
    plugins: [jsonAsText(), privateZod(), thirdPartyNotice(outDir)],
  });
  // Not in strings only: esbuild leaves regular expressions as they are. A host may read the script in any encoding.
  const text = String(outputFiles[0]?.text).replace(
    /[^\0-\x7F]/g,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
  writeFileSync(join(outDir, "electroheat.global.js"), text);
  return { text, inputs: Object.keys(metafile.inputs) };
}
