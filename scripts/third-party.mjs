/**
 * esbuild plugin: writes the licences of the packages that end up inside dist. Which ones those are is read
 * from what was really bundled, so the notice cannot fall behind the code.
 */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";

const NOTICE = "THIRD-PARTY-LICENSES.txt";

/**
 * @param {readonly string[]} inputs paths of bundled files
 * @returns {Map<string, string>} package folder by package name
 */
export function bundledPackages(inputs) {
  const found = new Map();
  for (const input of inputs) {
    const path = input.replaceAll("\\", "/");
    const at = path.lastIndexOf("node_modules/");
    if (at < 0) continue;
    const rest = path.slice(at + "node_modules/".length).split("/");
    const name = rest.slice(0, rest[0]?.startsWith("@") ? 2 : 1).join("/");
    found.set(name, `${path.slice(0, at)}node_modules/${name}`);
  }
  return found;
}

/** @param {Map<string, string>} packages @returns {string} the notice */
function noticeText(packages) {
  const parts = [...packages].sort().map(([name, folder]) => {
    const { version, license } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
    const file = readdirSync(folder).find((entry) => /^licen[cs]e/i.test(entry));
    if (file === undefined) throw new Error(`${name} is bundled but ships no licence file`);
    return `${name} ${version} (${license})\n\n${readFileSync(join(folder, file), "utf8").trim()}\n`;
  });
  return `The following packages are bundled into electroheat.\n\n${parts.join(`\n${"-".repeat(72)}\n\n`)}`;
}

/** Packages found so far by folder: several builds fill one folder, and their notice is one. @type {Map<string, Map<string, string>>} */
const found = new Map();

/**
 * @param {string} outDir folder the notice is written to
 * @returns {import("esbuild").Plugin} the plugin
 */
export function thirdPartyNotice(outDir) {
  const key = resolve(outDir);
  return {
    name: "third-party-notice",
    setup(build) {
      build.onEnd((result) => {
        const inputs = Object.keys(result.metafile?.inputs ?? {});
        const packages = new Map([...(found.get(key) ?? []), ...bundledPackages(inputs)]);
        found.set(key, packages);
        if (packages.size === 0) return;
        mkdirSync(outDir, { recursive: true });
        writeFileSync(join(outDir, NOTICE), noticeText(packages));
      });
    },
  };
}
