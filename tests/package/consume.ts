/** Helpers for tests that use the packed package the way a stranger would. */
import { execFileSync } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import ts from "typescript";
import { inject } from "vitest";
import type { Packed } from "./setup.ts";

const given = inject("packed");
if ("problem" in given) throw new Error(`the package could not be packed and installed: ${given.problem}`);
export const packed: Packed = given;

/** Writes a file into the consumer folder and gives its path. */
export function writeConsumer(name: string, text: string): string {
  const path = join(packed.consumer, name);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
  return path;
}

/** Runs a script in the consumer folder under the same Node and gives what it printed. */
export function runConsumer(name: string, text: string): string {
  const path = writeConsumer(name, text);
  return execFileSync(process.execPath, [path], { cwd: packed.consumer, encoding: "utf8" }).trim();
}

/** How a TypeScript user may resolve modules. */
export const resolutions: Readonly<Record<string, ts.CompilerOptions>> = {
  node16: { module: ts.ModuleKind.Node16, moduleResolution: ts.ModuleResolutionKind.Node16 },
  nodenext: { module: ts.ModuleKind.NodeNext, moduleResolution: ts.ModuleResolutionKind.NodeNext },
  bundler: { module: ts.ModuleKind.ESNext, moduleResolution: ts.ModuleResolutionKind.Bundler },
};

/** Type-checks files of the consumer strictly, declaration files of the package included; one line per error. */
export function typeErrors(files: readonly string[], options: ts.CompilerOptions): string[] {
  const program = ts.createProgram(
    files.map((file) => join(packed.consumer, file)),
    {
      target: ts.ScriptTarget.ES2022,
      lib: ["lib.es2022.d.ts", "lib.dom.d.ts"],
      types: [],
      strict: true,
      noUncheckedIndexedAccess: true,
      exactOptionalPropertyTypes: true,
      skipLibCheck: false,
      noEmit: true,
      ...options,
    },
  );
  return ts.getPreEmitDiagnostics(program).map((one) => {
    const text = ts.flattenDiagnosticMessageText(one.messageText, "\n");
    if (one.file === undefined || one.start === undefined) return text;
    const { line } = one.file.getLineAndCharacterOfPosition(one.start);
    return `${one.file.fileName.slice(packed.consumer.length + 1)}:${line + 1} TS${one.code} ${text}`;
  });
}

/** Bundles a module as an app developer would; gives its size and the files that went into it. */
export async function bundle(
  code: string,
  resolveDir: string,
): Promise<{ min: number; gzip: number; inputs: string[]; text: string }> {
  const result = await build({
    stdin: { contents: code, resolveDir },
    bundle: true,
    minify: true,
    format: "esm",
    write: false,
    metafile: true,
    logLevel: "silent",
  });
  const bytes = result.outputFiles[0]?.contents ?? new Uint8Array();
  return {
    min: bytes.byteLength,
    gzip: gzipSync(bytes, { level: 9 }).byteLength,
    inputs: Object.keys(result.metafile.inputs),
    text: new TextDecoder().decode(bytes),
  };
}
