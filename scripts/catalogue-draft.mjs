/**
 * Prints a first draft of a room's entries from its facts and prose, for a person to finish: ranges are guessed from the words of
 * the docstrings, symbols from the units. `node scripts/catalogue-draft.mjs <room> [function...]`; without function names, those
 * that have no entry yet cannot be told from here: name them.
 */
import { fileURLToPath } from "node:url";
import { catalogueFacts } from "./catalogue-facts.mjs";

const [room = "circuit", ...only] = process.argv.slice(2);
const found = catalogueFacts(fileURLToPath(new URL("..", import.meta.url)))[room];
if (found === undefined) throw new Error(`no room ${room}`);
const { facts, prose } = found;

/** @type {Readonly<Record<string, string>>} */
const SYMBOLS = {
  V: "V",
  A: "I",
  Ω: "R",
  S: "G",
  W: "P",
  J: "Q",
  s: "t",
  Hz: "f",
  m: "l",
  "m²": "A",
  "m³": "V",
  "m/s": "v",
  kg: "m",
  N: "F",
  "N/m": "k",
  Pa: "p",
  N·m: "T",
  Ω·m: "\\\\rho",
  "Ω·m²": "\\\\rho_c",
  "Ω/m": "R'",
  "1/K": "\\\\alpha",
  "°C": "\\\\vartheta",
  K: "\\\\Delta T",
  "W/m²": "q",
  "W/(m²·K)": "h",
  "W/(m·K)": "\\\\lambda",
  "W/K": "G",
  "K/W": "R_\\\\vartheta",
  "J/K": "C",
  "J/(kg·K)": "c_p",
  "kg/m³": "\\\\rho",
  "m³/s": "\\\\dot V",
  "kg/s": "\\\\dot m",
};

/** @param {string} words @returns {string[]} */
function range(words) {
  const number = "(-?−?\\d[\\d  ]*(?:\\.\\d+)?(?:e-?\\d+)?)";
  const clean = (/** @type {string} */ text) => text.replace("−", "-").replace(/[  ]/g, "");
  const found = [];
  const between = new RegExp(`${number}(?: to |\\.\\.|–)${number}`).exec(words);
  const above = /more than (-?\d+(?:\.\d+)?)/.exec(words);
  const least = new RegExp(`${number} or more`).exec(words);
  const below = /less than (-?\d+(?:\.\d+)?)/.exec(words);
  if (between) found.push(`min: ${clean(between[1] ?? "")}`, `max: ${clean(between[2] ?? "")}`);
  else if (least) found.push(`min: ${clean(least[1] ?? "")}`);
  if (above && !between) found.push(`above: ${above[1]}`);
  if (below) found.push(`below: ${below[1]}`);
  return found;
}

/** @param {import("../src/catalogue/shape.ts").Shape} shape @param {string} words @returns {string} */
function note(shape, words) {
  if (typeof shape === "string") return "{}";
  if ("either" in shape) {
    const number = shape.either.find((one) => typeof one === "object" && "number" in one);
    return number ? note(number, words) : "{}";
  }
  if ("list" in shape) {
    const least = /at least one/.test(words) ? "least: 1, " : "";
    return `{ ${least}each: ${note(shape.list, words)} }`;
  }
  if ("tuple" in shape) return `{ each: ${note(shape.tuple[0] ?? "text", words)} }`;
  if ("values" in shape) return `{ symbol: "n", is: "count" }`;
  if (!("number" in shape)) return "{}";
  const limits = range(words);
  const is = /degrees|°(?!C)/.test(words)
    ? "degrees"
    : /whole/.test(words)
      ? "count"
      : limits.includes("max: 1") || /ratio|share|factor/.test(words)
        ? "ratio"
        : "number";
  const parts = [
    `symbol: "${SYMBOLS[shape.number] ?? "x"}"`,
    ...(shape.number === "" ? [`is: "${is}"`] : []),
    ...limits,
  ];
  return `{ ${parts.join(", ")} }`;
}

for (const [name, { inputs, output }] of Object.entries(facts.functions)) {
  if (only.length > 0 && !only.includes(name)) continue;
  const words = prose.functions[name];
  console.log(`  // ${words?.purpose}: ${words?.formula ?? "(no formula in the docstring)"}`);
  console.log(`  ${name}: {\n    kind: "physics",\n    tex: "TODO",\n    inputs: {`);
  for (const [key, shape] of Object.entries(inputs)) {
    const at = key.replace("?", "");
    console.log(`      ${at}: ${note(shape, words?.inputs[at] ?? "")},`);
  }
  console.log("    },");
  const out = note(output, words?.returns ?? "").replace(/, (min|max|above|below): [^,} ]+/g, "");
  if (out !== "{}") console.log(`    output: ${out},`);
  console.log("  },");
}
