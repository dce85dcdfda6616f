import { fileURLToPath } from "node:url";
import { defineConfig } from "tsup";
import { buildGlobal, writeCatalogue } from "./scripts/catalogueFile.mjs";
import { jsonAsText } from "./scripts/jsonText.mjs";
import { rooms } from "./scripts/rooms.mjs";
import { thirdPartyNotice } from "./scripts/third-party.mjs";

/**
 * Every folder under src with an index.ts is a room, and every room is a package entry.
 *
 * The examples are plain JavaScript (.mjs, type-checked through their JSDoc) that import the package by its
 * own name: Node resolves that through `exports` to dist, so `npm run demo` builds and then runs exactly
 * what a user gets. Node 20 cannot run TypeScript, and a loader would be one more thing to trust.
 */
export default defineConfig({
  entry: {
    index: "src/index.ts",
    ...Object.fromEntries(rooms("src").map((room) => [room, `src/${room}/index.ts`])),
  },
  format: ["esm", "cjs"],
  target: "es2022",
  // tsup sets baseUrl itself, which TypeScript 6 calls deprecated.
  dts: { compilerOptions: { ignoreDeprecations: "6.0" } },
  // One copy of what several entries share, so that errors and tables are the same objects in all of them.
  splitting: true,
  treeshake: true,
  clean: true,
  // No source maps: dist is not minified, and maps were half of the tarball.
  sourcemap: false,
  // zod is bundled: as a dependency it costs about 45 ms of cold import, bundled about 3 ms.
  noExternal: [/^zod/],
  esbuildOptions(options) {
    // esbuild names each bundled file in a comment: with a linked node_modules, by a path of this machine.
    options.preserveSymlinks = true;
  },
  esbuildPlugins: [jsonAsText(), thirdPartyNotice("dist")],
  async onSuccess() {
    const root = fileURLToPath(new URL("./", import.meta.url));
    await Promise.all([buildGlobal(root), writeCatalogue(root)]);
  },
});
