// What the unit tags cost the type checker: a consumer of 200 calls against the declarations as shipped, and against the same
// declarations with every tag taken off, so that all quantities are plain numbers.
//   node benchmarks/rows/types.mjs     (after npm run build)
import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { quantile, tell } from "../measure.mjs";

const root = fileURLToPath(new URL("../../", import.meta.url));
const CALLS = [
  "powerFromVoltageAndResistance({ voltage: volts(#), resistance: ohms(12.8) })",
  "powerFromVoltageAndCurrent({ voltage: volts(480), current: amperes(#) })",
  "jointPower({ current: amperes(#), resistance: microohms(500) })",
  "preloadFromTorque({ torque: newtonMeters(#), diameter: millimeters(8), nutFactor: 0.2 })",
  "hotResistance({ coldResistance: ohms(#), temperatureFactor: 1.05 })",
];

/** @param {string} file times itself in the process that reads the declarations */
const CHECK = `
import { createRequire } from "node:module";
const ts = createRequire(${JSON.stringify(join(root, "package.json"))})("typescript");
const before = process.cpuUsage();
const program = ts.createProgram([process.argv[1]], { strict: true, noEmit: true, skipLibCheck: false, types: [],
  target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.NodeNext, moduleResolution: ts.ModuleResolutionKind.NodeNext });
const errors = ts.getPreEmitDiagnostics(program).map((one) => ts.flattenDiagnosticMessageText(one.messageText, " "));
const { user } = process.cpuUsage(before);
console.log(JSON.stringify({ user, errors }));
`;

const folder = mkdtempSync(join(tmpdir(), "electroheat-bench-"));
/** @param {string} name @param {boolean} tagged @returns {string} the consumer's file */
function consumer(name, tagged) {
  const installed = join(folder, name, "node_modules", "electroheat");
  mkdirSync(join(installed, "dist"), { recursive: true });
  cpSync(join(root, "package.json"), join(installed, "package.json"));
  for (const file of readdirSync(join(root, "dist")).filter((one) => one.endsWith(".d.ts"))) {
    let text = readFileSync(join(root, "dist", file), "utf8");
    if (!tagged && file.startsWith("tags-")) {
      const tags = /^(type \w+ = )[^;]*\b(?:Unit|Kind)Tag<"[^"]*">;/gm;
      const count = text.match(tags)?.length ?? 0;
      if (count < 30) throw new Error(`only ${count} tags found in ${file}`);
      text = text.replace(tags, "$1number;");
    }
    writeFileSync(join(installed, "dist", file), text);
  }
  const lines = Array.from(
    { length: 200 },
    (_, i) => `export const r${i} = ${CALLS[i % CALLS.length]?.replace("#", String(i + 1))};`,
  );
  const file = join(folder, name, "consumer.mts");
  writeFileSync(
    file,
    `import { hotResistance, powerFromVoltageAndCurrent, powerFromVoltageAndResistance } from "electroheat/element";
import { jointPower, preloadFromTorque } from "electroheat/joint";
import { amperes, microohms, millimeters, newtonMeters, ohms, volts } from "electroheat/quantity";
${tagged ? "" : "export const proof: number = ohms(1);\nexport const free: import('electroheat/quantity').Ohms = volts(1);\n"}${lines.join("\n")}
`,
  );
  return file;
}

/** @param {string} file */
function checked(file) {
  const { stdout, stderr } = spawnSync(process.execPath, ["--input-type=module", "-e", CHECK, file], {
    encoding: "utf8",
  });
  const { user, errors } = JSON.parse(stdout || "{}");
  if (errors === undefined || errors.length > 0) throw new Error(`${errors?.join("; ")}${stderr}`);
  return user / 1000;
}

try {
  const [tagged, plain] = [consumer("tagged", true), consumer("plain", false)];
  const turns = Array.from({ length: 5 }, (_, turn) => {
    if (turn % 2 === 0) {
      const first = checked(tagged);
      return [first, checked(plain)];
    }
    const second = checked(plain);
    return [checked(tagged), second];
  });
  const ratio = quantile(
    turns.map(([a = Number.NaN, b = Number.NaN]) => a / b),
    0.5,
  );
  const ms = (/** @type {0 | 1} */ k) =>
    quantile(
      turns.map((turn) => turn[k] ?? Number.NaN),
      0.5,
    ).toFixed(0);
  tell([
    {
      what: "type check of a consumer of 200 calls",
      against: "the same declarations with plain numbers",
      reach: "≤ 1.3×",
      found: `${ratio.toFixed(2)}×`,
      met: ratio <= 1.3,
      detail: `${ms(0)} ms against ${ms(1)} ms of user time, compiler's own libraries included`,
    },
  ]);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
