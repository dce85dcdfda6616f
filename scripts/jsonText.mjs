/**
 * esbuild plugin: bundles the catalogue's generated facts as one line of text each, parsed on loading. As object literals they would be
 * written out with indentation, twice as long, and take an engine longer to read.
 */
import { readFileSync } from "node:fs";

/** @returns {import("esbuild").Plugin} the plugin */
export function factsAsText() {
  return {
    name: "facts-as-text",
    setup(build) {
      build.onLoad({ filter: /[\\/]catalogue[\\/]facts[\\/][a-z]+\.json$/ }, ({ path }) => {
        const text = JSON.stringify(JSON.parse(readFileSync(path, "utf8")));
        return {
          contents: `export default /*#__PURE__*/ JSON.parse(${JSON.stringify(text)});`,
          loader: "js",
        };
      });
    },
  };
}
