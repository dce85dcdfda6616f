/**
 * One part of many of a room's changes, drawn by a hash of the change itself: an honest sample where the whole is out of reach, and the
 * parts together are the whole. The other changes stand in the report as not compiled.
 */
import { createHash } from "node:crypto";
import { PluginKind } from "@stryker-mutator/api/plugin";

const [number = 1, of = 1] = (process.env["ELECTROHEAT_MUTATION_PART"] ?? "1/1").split("/").map(Number);

/** @param {import("@stryker-mutator/api/core").Mutant} change */
function isDrawn({ fileName, location: { start, end }, mutatorName, replacement }) {
  const file = fileName.slice(fileName.lastIndexOf("src"));
  const key = [file, start.line, start.column, end.line, end.column, mutatorName, replacement].join("|");
  return createHash("sha256").update(key).digest().readUInt32BE(0) % of === number - 1;
}

const checker = {
  async init() {},
  /** @param {import("@stryker-mutator/api/core").Mutant[]} changes */
  async check(changes) {
    return Object.fromEntries(
      changes.map((change) => [
        change.id,
        isDrawn(change) ? { status: "passed" } : { status: "compileError", reason: "in another part" },
      ]),
    );
  },
  /** @param {import("@stryker-mutator/api/core").Mutant[]} changes */
  async group(changes) {
    return [changes.map(({ id }) => id)];
  },
};

export const strykerPlugins = [{ kind: PluginKind.Checker, name: "part", factory: () => checker }];
