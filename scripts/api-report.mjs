/**
 * Writes docs/api/: the public surface of each room as declarations without comments, so that every change of it shows in
 * review. The files are committed; a test compares them with what this script gives.
 *   node scripts/api-report.mjs        writes them
 */
import { mkdirSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { publicProgram } from "./publicSymbols.mjs";
import { rooms } from "./rooms.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
export const FOLDER = "docs/api";

const printer = ts.createPrinter({ removeComments: true });

/** @param {ts.FunctionDeclaration} node @returns {ts.FunctionDeclaration} the same without its body, and without names for what it takes apart */
function headOf(node) {
  const { factory } = ts;
  const parameters = node.parameters.map((one, i) =>
    factory.updateParameterDeclaration(
      one,
      one.modifiers,
      one.dotDotDotToken,
      ts.isIdentifier(one.name) ? one.name : `input${i === 0 ? "" : i + 1}`,
      one.initializer === undefined ? one.questionToken : factory.createToken(ts.SyntaxKind.QuestionToken),
      one.type,
      undefined,
    ),
  );
  return factory.updateFunctionDeclaration(
    node,
    node.modifiers,
    node.asteriskToken,
    node.name,
    node.typeParameters,
    parameters,
    node.type,
    undefined,
  );
}

/** @returns {ReadonlyMap<string, string>} text of each room's report by file name */
export function apiReport() {
  const names = rooms(join(root, "src"));
  const { checker, exportsOf, behind } = publicProgram(root, names);

  /** @param {ts.Declaration} node @returns {string} */
  const text = (node) => {
    const file = node.getSourceFile();
    if (ts.isFunctionDeclaration(node)) return printer.printNode(ts.EmitHint.Unspecified, headOf(node), file);
    if (ts.isVariableDeclaration(node)) {
      const type = checker.typeToString(
        checker.getTypeAtLocation(node),
        undefined,
        ts.TypeFormatFlags.NoTruncation | ts.TypeFormatFlags.UseAliasDefinedOutsideCurrentScope,
      );
      return `export const ${node.name.getText()}: ${type};`;
    }
    if (ts.isClassDeclaration(node)) {
      const members = node.members.flatMap((member) => {
        const hidden =
          ts.getCombinedModifierFlags(member) & (ts.ModifierFlags.Private | ts.ModifierFlags.Protected);
        if (hidden) return [];
        const head = member.getText().replace(/\s*(=[^=>][\s\S]*;|\{[\s\S]*\})$/, "");
        return [`  ${head.replace(/;?$/, ";")}`];
      });
      const parent = (node.heritageClauses ?? []).map((clause) => ` ${clause.getText()}`).join("");
      return [`export class ${node.name?.getText()}${parent} {`, ...members, "}"].join("\n");
    }
    // Names that are taken from a constant: the constant is not public, the names are.
    if (ts.isTypeAliasDeclaration(node) && node.type.getText().includes("typeof ")) {
      const flags = ts.TypeFormatFlags.NoTruncation | ts.TypeFormatFlags.InTypeAlias;
      return `export type ${node.name.text} = ${checker.typeToString(checker.getTypeAtLocation(node), node, flags)};`;
    }
    return printer.printNode(ts.EmitHint.Unspecified, node, file);
  };

  return new Map(
    names.map((room) => {
      const lines = exportsOf(room)
        .map((exported) => ({ name: exported.name, symbol: behind(exported) }))
        .sort((a, b) => (a.name < b.name ? -1 : 1))
        .flatMap(({ symbol }) => (symbol.declarations ?? []).map(text));
      return [`${room}.txt`, `${lines.join("\n\n")}\n`];
    }),
  );
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const folder = join(root, FOLDER);
  mkdirSync(folder, { recursive: true });
  for (const old of readdirSync(folder)) rmSync(join(folder, old));
  for (const [name, text] of apiReport()) writeFileSync(join(folder, name), text);
}
