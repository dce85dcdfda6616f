/** Loads the tests with one change switched on from the beginning and runs some of them: `node fresh.mjs bundle list change`. */
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { firstFailure, switches } from "./switches.mjs";

const [bundle = "", list = "", change] = process.argv.slice(2);
/** @type {string[]} */
const ids = JSON.parse(readFileSync(list, "utf8"));
switches.activeMutant = change;
/** @type {{ id: string, message: string } | undefined} */
let failed;
try {
  const { loadCode, noteTests, noted } = await import(pathToFileURL(bundle).href);
  await loadCode();
  await noteTests(() => {});
  const byId = new Map(noted.map((/** @type {any} */ test) => [test.id, test]));
  // A test that a change leaves out has noticed it.
  const missing = ids.find((id) => !byId.has(id));
  failed =
    missing === undefined
      ? await firstFailure(
          ids.map((id) => byId.get(id)),
          new Set(),
        )
      : { id: missing, message: "is not there" };
} catch (error) {
  failed = { id: "loading", message: String(/** @type {any} */ (error)?.message ?? error) };
}
if (failed) process.stdout.write(`${failed.id}\n${failed.message.replaceAll("\n", " ")}\n`);
process.exit(failed ? 1 : 0);
