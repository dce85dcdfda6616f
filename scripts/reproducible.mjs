/**
 * Builds and packs the library once more and compares the tarball with the one given, byte for byte.
 *   node scripts/reproducible.mjs <tarball>
 */
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
const [first] = process.argv.slice(2);
if (first === undefined) throw new Error("name the tarball to compare with");
const folder = mkdtempSync(join(tmpdir(), "electroheat-again-"));

/** @param {string[]} args */
function npm(...args) {
  const { status } = spawnSync("npm", args, { cwd: root, stdio: "inherit" });
  if (status !== 0) throw new Error(`npm ${args.join(" ")} failed`);
}
/** @param {string} path */
const hash = (path) => createHash("sha256").update(readFileSync(path)).digest("hex");

try {
  npm("run", "--silent", "build", "--", "--silent");
  npm("pack", "--silent", "--ignore-scripts", "--pack-destination", folder);
  const again = join(folder, readdirSync(folder)[0] ?? "");
  const hashes = [hash(first), hash(again)];
  console.log(hashes.join("\n"));
  if (hashes[0] !== hashes[1]) throw new Error("two builds of one source gave two tarballs");
} finally {
  rmSync(folder, { recursive: true, force: true });
}
