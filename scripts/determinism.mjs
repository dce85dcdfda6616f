/**
 * Runs every vector in every host there is and tells where any result differs from Node's by as much as one bit.
 *
 *   npm run build && node scripts/determinism.mjs [--all]   a table; each vector that differs
 *   npm ci --prefix tests/nodes                             beforehand, for newer versions of Node.js
 */
import { createHash } from "node:crypto";
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { runtimes } from "./runtimes.mjs";
import { differences } from "./vectorResults.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));

/** @returns {{ id: string, call: string }[]} every vector of the project */
function allVectors() {
  const folder = join(root, "shared", "vectors");
  return readdirSync(folder, { recursive: true })
    .map(String)
    .filter((name) => name.endsWith(".json"))
    .sort()
    .flatMap((name) => JSON.parse(readFileSync(join(folder, name), "utf8")).vectors ?? []);
}

/** Writes into a folder that has the package installed what prints the results of all vectors. @param {string} folder @returns {number} how many */
export function writeVectorRun(folder) {
  const vectors = allVectors();
  const rooms = [...new Set(vectors.map(({ call }) => call.split(".")[0]))];
  cpSync(join(root, "scripts", "vectorResults.mjs"), join(folder, "vectorResults.mjs"));
  // As a script, not as JSON: import attributes came late to some hosts.
  writeFileSync(join(folder, "vectors.mjs"), `export default ${JSON.stringify(vectors)};\n`);
  writeFileSync(
    join(folder, "vectorRun.mjs"),
    `import vectors from "./vectors.mjs";
import { vectorResults } from "./vectorResults.mjs";
${rooms.map((room) => `import * as ${room} from "electroheat/${room}";`).join("\n")}
const text = JSON.stringify(vectorResults(vectors, { ${rooms.join(", ")} }));
(globalThis.print ?? console.log)(text);
`,
  );
  return vectors.length;
}

/** @param {Record<string, string>} results */
const hashOf = (results) => createHash("sha256").update(JSON.stringify(results)).digest("hex").slice(0, 16);

async function main() {
  const all = process.argv.includes("--all");
  const folder = mkdtempSync(join(tmpdir(), "electroheat-determinism-"));
  try {
    const installed = join(folder, "node_modules", "electroheat");
    mkdirSync(installed, { recursive: true });
    cpSync(join(root, "package.json"), join(installed, "package.json"));
    cpSync(join(root, "dist"), join(installed, "dist"), { recursive: true });
    cpSync(join(root, "node_modules", "decimal.js"), join(folder, "node_modules", "decimal.js"), {
      recursive: true,
    });
    writeFileSync(join(folder, "package.json"), '{"private":true}');
    const count = writeVectorRun(folder);
    console.log(`${count} vectors; results as the shortest text that reads back the same\n`);
    /** @type {Record<string, string> | undefined} */
    let first;
    for (const { name, version, run } of runtimes()) {
      if (version === null) {
        console.log(`| ${name} | not installed | | |`);
        continue;
      }
      const results = JSON.parse(await run(folder, "vectorRun.mjs"));
      first ??= results;
      const apart = differences(/** @type {Record<string, string>} */ (first), results);
      const largest = Math.max(0, ...apart.map((one) => one.largest));
      const chosen = apart.filter(({ choices }) => choices.length > 0).length;
      const told =
        apart.length === 0
          ? "none"
          : `${apart.length} vectors, numbers by ${largest.toExponential(1)} at most; ${chosen} name another of two equals`;
      console.log(`| ${name} | ${version} | ${hashOf(results)} | ${told} |`);
      if (!all) continue;
      for (const { id, largest: off, numbers, choices } of apart) {
        console.log(
          `    ${id}: ${numbers} numbers, ${off.toExponential(1)}${choices.map((one) => `; ${one}`).join("")}`,
        );
      }
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) await main();
