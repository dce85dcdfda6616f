/**
 * esbuild plugin: bundles tables and the catalogue's generated facts as one line of text each, parsed on loading. As object literals they
 * would be written out with indentation, twice as long, and an engine takes several times as long to read a literal as to parse JSON.
 */
import { readFileSync } from "node:fs";

/** @returns {import("esbuild").Plugin} the plugin */
export function jsonAsText() {
  return {
    name: "json-as-text",
    setup(build) {
      build.onLoad(
        { filter: /[\\/](catalogue[\\/]facts|shared[\\/]tables)[\\/][\w-]+\.json$/ },
        ({ path }) => {
          const text = JSON.stringify(JSON.parse(readFileSync(path, "utf8")));
          return {
            contents: `export default /*#__PURE__*/ JSON.parse(${JSON.stringify(text)});`,
            loader: "js",
          };
        },
      );
    },
  };
}
