/** Brings the tests of one room into this process, on the code as it stands in the working folder. */
import { readFileSync } from "node:fs";
import { readdir } from "node:fs/promises";
import { join, sep } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";

/** Started another program, or ask only what a type or a bundle is: nothing a change of one room's code would show in. */
const LEFT_OUT = /(?:bundle|types)\.test\.ts$/;

/** Test files that the caller leaves out. */
const WITHOUT = process.env["ELECTROHEAT_MUTATION_WITHOUT"];

/** Tests of all rooms, which `ELECTROHEAT_ROOM` cuts down to the room. */
const COMMON = ["vectors", "refusals", "refusedByName", "refusedAtLimits", "answeredByType"].map(
  (name) => `tests/${name}.test.ts`,
);

/** @param {string} folder @param {string} end @returns {Promise<string[]>} */
async function filesIn(folder, end) {
  const names = await readdir(folder, { recursive: true });
  return names
    .filter((name) => name.endsWith(end))
    .map((name) => join(folder, name).split(sep).join("/"))
    .sort();
}

/** @param {string} from @returns {import("esbuild").Plugin} */
const inPlace = (from) => ({
  name: "in-place",
  setup({ onLoad, onResolve }) {
    // Files that look for their neighbours on the disk must not look beside the bundle.
    onLoad({ filter: /(?:tests|scripts|examples)[\\/].*\.(?:ts|mjs)$/ }, ({ path }) => ({
      contents: readFileSync(path, "utf8").replaceAll(
        "import.meta.url",
        JSON.stringify(pathToFileURL(path).href),
      ),
      loader: path.endsWith(".ts") ? "ts" : "js",
    }));
    onResolve({ filter: /^vitest$/ }, ({ importer }) =>
      importer.includes(`mutation${sep}testApi`)
        ? { path: "vitest", external: true }
        : { path: join(from, "scripts/mutation/testApi.mjs") },
    );
    onResolve({ filter: /^fast-check$/ }, () => ({ path: join(from, "tests/support/fastCheck.ts") }));
    onResolve({ filter: /fast-check\/lib\/fast-check\.js$/ }, () => ({ path: "fast-check", external: true }));
    onResolve({ filter: /^electroheat(?:\/|$)/ }, ({ path }) => ({
      path: join(from, "src", path.replace(/^electroheat\/?/, ""), "index.ts"),
    }));
    onResolve({ filter: /^[^./]/ }, ({ path, kind }) =>
      // What nothing of it is used of need not be loaded.
      kind === "entry-point" ? undefined : { path, external: true, sideEffects: false },
    );
  },
});

/**
 * Bundles the tests of a room, with those of all rooms.
 * @param {string} room @param {string} name - of the bundle, beside the sources @returns {Promise<string>} its path
 */
export async function bundleTests(room, name) {
  const from = process.cwd();
  const own = (await filesIn(`tests/${room}`, ".test.ts"))
    .filter((path) => !LEFT_OUT.test(path))
    .filter((path) => WITHOUT === undefined || !new RegExp(WITHOUT).test(path));
  const code = await filesIn(`src/${room}`, ".ts");
  const files = [...own, ...COMMON];
  const steps = [
    'import "./tests/support/seed.ts";',
    'export { last, noted } from "./scripts/mutation/testApi.mjs";',
    'import { noteFile } from "./scripts/mutation/testApi.mjs";',
    'import fc from "fast-check";',
    // A change is noticed or not; the smallest case that shows it is not asked for.
    "fc.configureGlobal({ ...fc.readConfigureGlobal(), endOnFailure: true });",
    "export async function loadCode() {",
    ...code.map((path) => `  await import("./${path}");`),
    "}",
    "export async function noteTests(started) {",
    ...files.map((path) => `  started("${path}"); await noteFile("${path}", () => import("./${path}"));`),
    "}",
  ];
  const outfile = join(from, name);
  await build({
    stdin: { contents: steps.join("\n"), resolveDir: from, loader: "ts" },
    outfile,
    bundle: true,
    format: "esm",
    platform: "node",
    target: "node20",
    logLevel: "error",
    plugins: [inPlace(from)],
    // Instrumented code is not read by anyone.
    sourcemap: false,
    absWorkingDir: from,
  });
  return outfile;
}
