/**
 * What an import costs, in bytes minified and gzipped, against the budgets that fail CI.
 *
 * `npm run size` prints the table; `tests/size.test.ts` holds the same figures to the same budgets. Bundled twice, as
 * users meet it: the entry into one file, then an app that imports from that file. Nothing needs to be built first.
 */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";
import { BUNDLING, gzipped } from "./bundled.mjs";
import { jsonAsText } from "./jsonText.mjs";
import { rooms } from "./rooms.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));

/**
 * One function of each kind, with its checks. A room's own bundle test says which tables its functions may bring.
 * @type {readonly { entry: string, name: string }[]}
 */
export const SINGLE = [
  { entry: "quantity", name: "inches" },
  { entry: "quantity", name: "fahrenheit" },
  { entry: "element", name: "powerFromVoltageAndCurrent" },
  { entry: "element", name: "powerFromVoltageAndResistance" },
  { entry: "element", name: "surfaceLoad" },
  { entry: "joint", name: "jointPower" },
  { entry: "joint", name: "preloadFromTorque" },
];

/** Most bytes, gzipped, of one closed form with its checks. */
export const SINGLE_BUDGET = 1_000;

/** What everything that needs neither zod nor decimal.js should weigh at most, gzipped, without the tables. Not reached. */
export const WHOLE_REACH = 40_000;

/** What it weighs today, rounded up: the reach is missed, and until it is met this keeps the miss from growing. */
export const WHOLE_CEILING = 71_750;

/** Leaves the handbook tables out of a bundle: they are data, and each function brings only its own. */
const withoutTables = /** @type {import("esbuild").Plugin} */ ({
  name: "without-tables",
  setup(made) {
    made.onResolve({ filter: /\/tables\/.*\.json$/ }, ({ path }) => ({ path, external: true }));
  },
});

/**
 * @typedef {object} Size
 * @property {string} what what was bundled
 * @property {number} minified bytes
 * @property {number} gzip bytes
 * @property {number | undefined} budget most bytes gzipped, where a budget stands
 * @property {string} code the bundle
 */

/**
 * The library in files as the package ships it: entries that share chunks, and free of side effects.
 * @param {string} folder where to @param {import("esbuild").Plugin[]} plugins
 */
async function buildLibrary(folder, plugins) {
  const entryPoints = Object.fromEntries(
    rooms(join(root, "src")).map((room) => [room, `src/${room}/index.ts`]),
  );
  await build({
    ...BUNDLING,
    absWorkingDir: root,
    entryPoints: { index: "src/index.ts", ...entryPoints },
    outdir: folder,
    splitting: true,
    plugins: [jsonAsText(), ...plugins],
  });
  writeFileSync(join(folder, "package.json"), JSON.stringify({ type: "module", sideEffects: false }));
}

/**
 * @param {string} what @param {string} library file @param {string} names what the app exports of it
 * @param {{ plugins: import("esbuild").Plugin[], budget?: number }} options
 * @returns {Promise<Size>}
 */
async function weigh(what, library, names, { plugins, budget }) {
  const app = await build({
    ...BUNDLING,
    stdin: { contents: `export ${names} from ${JSON.stringify(library)};`, resolveDir: root },
    nodePaths: [join(root, "node_modules")],
    minify: true,
    write: false,
    plugins,
  });
  const code = app.outputFiles[0]?.text ?? "";
  return {
    what,
    minified: Buffer.byteLength(code),
    gzip: gzipped(code),
    budget,
    code,
  };
}

/** @returns {Promise<Size[]>} every bundle with its size; the last is told for comparison and has no budget */
export async function sizes() {
  const folder = mkdtempSync(join(tmpdir(), "electroheat-size-"));
  const [full, bare] = [join(folder, "full"), join(folder, "bare")];
  try {
    await buildLibrary(full, []);
    await buildLibrary(bare, [withoutTables]);
    const found = [];
    for (const { entry, name } of SINGLE) {
      const options = { plugins: [], budget: SINGLE_BUDGET };
      found.push(await weigh(name, join(full, `${entry}.js`), `{ ${name} }`, options));
    }
    const whole = { plugins: [withoutTables], budget: WHOLE_CEILING };
    found.push(await weigh("electroheat, without tables", join(bare, "index.js"), "*", whole));
    found.push(await weigh("electroheat, with tables", join(full, "index.js"), "*", { plugins: [] }));
    return found;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const rows = await sizes();
  console.log(
    `${"bundle".padEnd(32)}${"minified".padStart(10)}${"gzip".padStart(10)}${"budget".padStart(10)}`,
  );
  for (const { what, minified, gzip, budget } of rows) {
    const verdict = budget === undefined ? "" : gzip <= budget ? "  within" : "  OVER";
    const most = budget === undefined ? "none" : String(budget);
    const figures = [minified, gzip, most].map((figure) => String(figure).padStart(10)).join("");
    console.log(`${what.padEnd(32)}${figures}${verdict}`);
  }
  const whole = rows.find(({ budget }) => budget === WHOLE_CEILING);
  if (whole !== undefined && whole.gzip > WHOLE_REACH) {
    const times = (whole.gzip / WHOLE_REACH).toFixed(2);
    console.log(`\nNot reached: ${whole.what} weighs ${times} times the ${WHOLE_REACH} bytes it should.`);
  }
  if (rows.some(({ gzip, budget }) => budget !== undefined && gzip > budget)) process.exitCode = 1;
}
