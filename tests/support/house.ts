/** Where things lie in the project, for the tests that hold the tree to its plan. */
import { execFileSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { rooms as roomsOf } from "../../scripts/rooms.mjs";

export const root: string = fileURLToPath(new URL("../../", import.meta.url));

/** Floors of the house; imports run downward only. A folder that is not listed here fails a test. */
export const floors: Readonly<Record<string, number>> = {
  quantity: 0,
  numeric: 0,
  decision: 0,
  material: 1,
  element: 2,
  circuit: 2,
  joint: 2,
  wiring: 2,
  process: 2,
  bench: 3,
  operators: 4,
  catalogue: 4,
  drawing: 4,
};

/** Floors inside a folder of a room, lowest first; the files beside them stand on top. */
export const floorsInside: Readonly<Record<string, readonly string[]>> = {
  "src/bench/diagnosis": [
    "numbers",
    "question",
    "network",
    "faults",
    "likelihood",
    "weighing",
    "hypotheses",
    "inference",
    "telling",
  ],
};

/** The rooms that stand, lowest floor first. */
export const rooms: readonly string[] = roomsOf(join(root, "src")).sort(
  (a, b) => (floors[a] ?? 99) - (floors[b] ?? 99),
);

/** Path of every TypeScript file under src, relative to the project, with forward slashes. */
export const sourceFiles: readonly string[] = readdirSync(join(root, "src"), { recursive: true })
  .map((entry) => join("src", String(entry)).split(sep).join("/"))
  .filter((path) => path.endsWith(".ts"))
  .sort();

export function readText(path: string): string {
  return readFileSync(join(root, path), "utf8");
}

export function parseSource(path: string): ts.SourceFile {
  return ts.createSourceFile(path, readText(path), ts.ScriptTarget.ES2022, true);
}

/** Room a file under src belongs to; undefined for src/index.ts itself. */
export function roomOf(path: string): string | undefined {
  const parts = path.split("/");
  return parts.length > 2 ? parts[1] : undefined;
}

/** Module names a file imports or re-exports, including `import("…")` in expressions and types. */
export function importsOf(file: ts.SourceFile): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if ((ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) && node.moduleSpecifier) {
      found.push((node.moduleSpecifier as ts.StringLiteral).text);
    } else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      const [first] = node.arguments;
      if (first && ts.isStringLiteralLike(first)) found.push(first.text);
    } else if (
      ts.isImportTypeNode(node) &&
      ts.isLiteralTypeNode(node.argument) &&
      ts.isStringLiteral(node.argument.literal)
    ) {
      found.push(node.argument.literal.text);
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

/** Resolves a relative import to a project path; packages come back unchanged. */
export function resolveImport(from: string, specifier: string): string {
  if (!specifier.startsWith(".")) return specifier;
  return relative(root, join(root, from, "..", specifier))
    .split(sep)
    .join("/");
}

/** Paths of the files git tracks and the working tree holds; without git (a source archive), every file. */
export function trackedFiles(): string[] {
  const listed = existsSync(join(root, ".git"))
    ? execFileSync("git", ["ls-files", "-z"], { cwd: root, encoding: "utf8" }).split("\0")
    : readdirSync(root, { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile())
        .map((entry) => relative(root, join(entry.parentPath, entry.name)).split(sep).join("/"))
        .filter((path) => !/^(node_modules|dist|coverage)\//.test(path));
  return listed.filter((path) => path !== "" && existsSync(join(root, path)));
}
