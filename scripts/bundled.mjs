/**
 * What a program pays for what it imports of one room, bundled twice as users meet it: the room into one file, then an app on that
 * file. The tests of the rooms and `npm run size` share these options, so that they speak of the same bytes.
 */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";

const root = fileURLToPath(new URL("..", import.meta.url));

/** decimal.js is a dependency and weighs elsewhere. */
export const BUNDLING =
  /** @type {{ bundle: true, format: "esm", target: string, external: string[], logLevel: "error" }} */ ({
    bundle: true,
    format: "esm",
    target: "es2022",
    external: ["decimal.js"],
    logLevel: "error",
  });

/** @param {string} code @returns {number} bytes, gzipped */
export const gzipped = (code) => gzipSync(code, { level: 9 }).length;

/**
 * @typedef {object} BundledRoom
 * @property {(names?: string) => Promise<string>} using code of an app that takes these exports; `"*"` takes all; nothing takes none
 * @property {readonly string[]} packages files of other packages that reached the room's bundle
 * @property {() => void} remove
 */

/** @param {string} room @returns {Promise<BundledRoom>} */
export async function bundledRoom(room) {
  const folder = mkdtempSync(join(tmpdir(), "electroheat-bundle-"));
  const library = join(folder, `${room}.mjs`);
  const entryPoints = [join(root, "src", room, "index.ts")];
  const { metafile } = await build({ ...BUNDLING, entryPoints, outfile: library, metafile: true });
  // What reached the file, not what was merely read on the way.
  const packages = Object.entries(Object.values(metafile.outputs)[0]?.inputs ?? {})
    .filter(([path, { bytesInOutput }]) => path.includes("node_modules/") && bytesInOutput > 0)
    .map(([path]) => path);
  return {
    packages,
    async using(names) {
      const from = JSON.stringify(library);
      const taken = names === "*" ? "*" : `{ ${names} }`;
      const contents = names === undefined ? `import ${from};` : `export ${taken} from ${from};`;
      const result = await build({
        ...BUNDLING,
        stdin: { contents, resolveDir: folder },
        minify: true,
        write: false,
      });
      return (result.outputFiles[0]?.text ?? "").trim();
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
