import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";

export const root: string = fileURLToPath(new URL("../../", import.meta.url));

export interface Finding {
  readonly line: number;
  readonly code: number;
  readonly message: string;
}

/** Makes an empty folder, hands it over and removes it. */
export async function inFolder<T>(run: (folder: string) => T | Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), "electroheat-types-"));
  try {
    return await run(ts.sys.realpath?.(folder) ?? folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Copies a fixture that must not compile (kept as text, out of the project's own type check) into a folder. */
export function layOut(name: string, folder: string): string {
  const file = join(folder, name);
  writeFileSync(file, readFileSync(new URL(`./fixtures/${name}.txt`, import.meta.url)));
  return file;
}

/** Type-checks one file with the project's options, changed as asked, and gives every error found anywhere. */
export function compile(
  file: string,
  paths: { readonly [name: string]: readonly string[] },
  changed: ts.CompilerOptions = {},
): Finding[] {
  const config = ts.readConfigFile(join(root, "tsconfig.json"), ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent(config.config, ts.sys, root);
  const program = ts.createProgram({
    rootNames: [file],
    options: { ...options, rootDir: "/", types: [], paths: paths as ts.MapLike<string[]>, ...changed },
  });
  return ts.getPreEmitDiagnostics(program).map(({ file: found, start, code, messageText }) => ({
    // An error outside the fixture has no line in it: -1 makes the comparison fail and shows the message.
    line:
      found?.fileName === file && start !== undefined
        ? ts.getLineAndCharacterOfPosition(found, start).line + 1
        : -1,
    code,
    message: ts.flattenDiagnosticMessageText(messageText, "\n"),
  }));
}

/** Line number and remark of each line of a fixture that begins `export const e<number>`. */
export function markedLines(name: string): { readonly line: number; readonly remark: string }[] {
  const lines = readFileSync(new URL(`./fixtures/${name}.txt`, import.meta.url), "utf8").split("\n");
  return lines.flatMap((text, index) =>
    /^export const e\d/.test(text) ? [{ line: index + 1, remark: text.slice(text.indexOf("// ") + 3) }] : [],
  );
}

/** Not assignable: plainly, as an argument, and under exactOptionalPropertyTypes. */
export const NOT_ASSIGNABLE: readonly number[] = [2322, 2345, 2375];
