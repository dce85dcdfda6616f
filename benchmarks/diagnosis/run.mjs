/** Bundles the simulated bench with the library's sources and runs it: `npm run bench:diagnosis -- --modules 2000`. */
import { spawnSync } from "node:child_process";
import { mkdirSync, rmSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const root = new URL("../../", import.meta.url);
const folder = fileURLToPath(new URL(`node_modules/.cache/bench-diagnosis-${process.pid}/`, root));
const outfile = `${folder}main.mjs`;
mkdirSync(folder, { recursive: true });
try {
  await build({
    absWorkingDir: fileURLToPath(root),
    entryPoints: ["benchmarks/diagnosis/main.ts"],
    tsconfig: "tsconfig.tests.json",
    bundle: true,
    platform: "node",
    format: "esm",
    target: "node20",
    // Some libraries of the bundle still ask for `require`.
    banner: {
      js: 'import { createRequire } from "node:module"; const require = createRequire(import.meta.url);',
    },
    outfile,
    logLevel: "warning",
  });
  const { status } = spawnSync(process.execPath, [outfile, ...process.argv.slice(2)], { stdio: "inherit" });
  process.exitCode = status ?? 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}
