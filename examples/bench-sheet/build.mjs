// Builds the bench sheet: one HTML file with the library in it, which opens from the disk without a network.
//   node examples/bench-sheet/build.mjs [folder]     (after npm run build; into examples/bench-sheet/out if no folder is named)
import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { assessModule } from "electroheat/bench";
import { benchReport } from "electroheat/drawing";
import { build } from "esbuild";

const here = fileURLToPath(new URL("./", import.meta.url));
const folder = resolve(process.argv[2] ?? join(here, "out"));
/** @param {string} name */
const read = (name) => readFileSync(join(here, name), "utf8");
/** @param {string} text */
const hash = (text) => `'sha256-${createHash("sha256").update(text).digest("base64")}'`;

const { outputFiles } = await build({
  entryPoints: [join(here, "main.mjs")],
  bundle: true,
  // The package as it is built and shipped, not the sources that the type checker is led to.
  tsconfigRaw: "{}",
  minify: true,
  format: "iife",
  target: "es2022",
  charset: "utf8",
  legalComments: "eof",
  write: false,
  // Chunks that an entry of the package names without taking anything from them are left out, which is no news.
  logLevel: "error",
});
const script = `${outputFiles[0]?.text}`;
// Either would end the script element, or make the parser look for another one inside it.
if (/<!--|<\/script/i.test(script)) throw new Error("the script cannot stand inside a page as it is");

// The page stands on the report's own style sheet, in a layer below its own: one look on screen and on paper.
const assessment = assessModule(JSON.parse(read("sample.json")));
const [, ofReport = ""] = /<style>([^<]*)<\/style>/.exec(benchReport({ assessment, format: "html" })) ?? [];
if (ofReport === "") throw new Error("the report brings no style sheet");
const style = `@layer report{${ofReport}}\n${read("sheet.css")}`;

const policy = [
  "default-src 'none'",
  `script-src ${hash(script)}`,
  `style-src ${hash(style)}`,
  "img-src data:",
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");

// What is bundled comes with its licences; a comment holds no two hyphens.
const licences = readFileSync(join(here, "../../dist/THIRD-PARTY-LICENSES.txt"), "utf8").replace(/--+/g, "-");
/** @type {Readonly<Record<string, string>>} */
const parts = {
  policy: `<meta http-equiv="Content-Security-Policy" content="${policy}" />`,
  style: `<style>${style}</style>`,
  script: `<script>${script}</script>\n<!--\n${licences}\n-->`,
};
const page = read("page.html").replace(/<!-- (\w+) -->/g, (_, name) => parts[name] ?? "");
mkdirSync(folder, { recursive: true });
const file = join(folder, "bench-sheet.html");
writeFileSync(file, page);
console.log(`${file}, ${(page.length / 1000).toFixed(0)} kB: open it in a browser.`);
