/**
 * esbuild plugin: keeps zod's shared settings inside the bundle. zod hangs them on the global object, for copies of itself to find; the
 * single-file script adds one global to its host and no other.
 */
import { readFileSync } from "node:fs";

const SHARED = "globalThis";

/** @returns {import("esbuild").Plugin} the plugin */
export function privateZod() {
  return {
    name: "private-zod",
    setup(build) {
      build.onLoad({ filter: /[\\/]zod[\\/]v4[\\/]core[\\/]core\.js$/ }, ({ path }) => {
        const text = readFileSync(path, "utf8");
        if (!text.includes(`${SHARED}.__zod_globalConfig`))
          throw new Error(`${path} keeps its settings elsewhere now`);
        return { contents: `const ownScope = {};\n${text.replaceAll(SHARED, "ownScope")}`, loader: "js" };
      });
    },
  };
}
