/** The public symbols of each room, with their documentation comments, read by the TypeScript compiler. */
import { join } from "node:path";
import ts from "typescript";
import { codeBlocks, type DocComment } from "../../scripts/docComment.mjs";
import { docOf, publicProgram } from "../../scripts/publicSymbols.mjs";
import { rooms, root } from "../support/house.ts";
import { withoutImports } from "./example.ts";

export interface PublicSymbol {
  readonly room: string;
  readonly name: string;
  readonly kind: "function" | "class" | "type" | "value";
  readonly file: string;
  readonly line: number;
  readonly doc: DocComment | undefined;
  /** The ```ts blocks of its @example tags. */
  readonly examples: readonly string[];
  /** Problems in how its parameters and result are described. */
  readonly signatureProblems: readonly string[];
}

const { options, program, checker, exportsOf, behind } = publicProgram(root, rooms);

function kindOf(symbol: ts.Symbol, declaration: ts.Declaration): PublicSymbol["kind"] {
  if (symbol.flags & ts.SymbolFlags.Class) return "class";
  if (symbol.flags & ts.SymbolFlags.Function) return "function";
  if (symbol.flags & ts.SymbolFlags.Variable) {
    const callable = checker.getTypeOfSymbolAtLocation(symbol, declaration).getCallSignatures().length > 0;
    return callable ? "function" : "value";
  }
  return "type";
}

/** Every `@param` names something that exists, everything that exists is named, and a result is described. */
function signatureProblems(symbol: ts.Symbol, declaration: ts.Declaration, doc: DocComment): string[] {
  const problems: string[] = [];
  const [signature] = checker.getTypeOfSymbolAtLocation(symbol, declaration).getCallSignatures();
  if (signature === undefined) return problems;
  const named = doc.tags
    .filter(({ name }) => name === "param")
    .map(({ text }) => text.split(/[\s]/, 1)[0] ?? "");
  const known = new Set<string>();
  for (const parameter of signature.getParameters()) {
    const type = checker.getNonNullableType(checker.getTypeOfSymbolAtLocation(parameter, declaration));
    const fields = (type.isUnion() ? type.types : [type]).flatMap((one) =>
      one.getProperties().map((field) => field.name),
    );
    known.add(parameter.name);
    for (const field of fields) known.add(`${parameter.name}.${field}`);
    const mentioned = named.some((name) => name === parameter.name || name.startsWith(`${parameter.name}.`));
    if (!mentioned) problems.push(`@param ${parameter.name} is missing`);
    if (!named.includes(parameter.name) && mentioned) {
      for (const field of new Set(fields)) {
        const path = `${parameter.name}.${field}`;
        if (
          !named.some((name) => name === path || name.startsWith(`${path}.`) || name.startsWith(`${path}[`))
        ) {
          problems.push(`@param ${path} is missing`);
        }
      }
    }
  }
  for (const name of named) {
    const head = name.replace(/\[.*$/, "").split(".").slice(0, 2).join(".");
    if (!known.has(head)) problems.push(`@param ${name} names no parameter or field`);
  }
  const result = signature.getReturnType();
  const silent = (result.flags & (ts.TypeFlags.Void | ts.TypeFlags.Never)) !== 0;
  if (!silent && !doc.tags.some(({ name }) => name === "returns")) problems.push("@returns is missing");
  return problems;
}

function read(room: string, exported: ts.Symbol): PublicSymbol {
  const symbol = behind(exported);
  const declarations = symbol.declarations ?? [];
  const declaration = declarations.find((one) => docOf(one) !== undefined) ?? declarations[0];
  if (declaration === undefined) throw new Error(`${room}: ${exported.name} has no declaration`);
  const file = declaration.getSourceFile();
  const doc = docOf(declaration);
  const examples = (doc?.tags ?? [])
    .filter(({ name }) => name === "example")
    .flatMap(({ text }) => codeBlocks(text, "ts"));
  return {
    room,
    name: exported.name,
    kind: kindOf(symbol, declaration),
    file: file.fileName.slice(root.length),
    line: file.getLineAndCharacterOfPosition(declaration.getStart()).line + 1,
    doc,
    examples,
    signatureProblems: doc === undefined ? [] : signatureProblems(symbol, declaration, doc),
  };
}

/** Public symbols of a room, in the order of its door. */
export function publicSymbols(room: string): PublicSymbol[] {
  return exportsOf(room).map((symbol) => read(room, symbol));
}

/**
 * Type-checks examples as a user would meet them, with the names of the given rooms imported.
 * @returns one line per problem, by index of the example
 */
export function typeProblems(inScope: readonly string[], examples: readonly string[]): Map<number, string[]> {
  const owner = new Map<string, string>();
  for (const room of inScope) for (const { name } of publicSymbols(room)) owner.set(name, room);
  const header = inScope.map((room) => {
    const names = [...owner].filter(([, from]) => from === room).map(([name]) => name);
    return `import { ${names.join(", ")} } from "../../src/${room}/index.ts";`;
  });
  let text = `${header.join("\n")}\n`;
  const starts: number[] = [];
  examples.forEach((code, index) => {
    starts.push(text.length);
    text += `export function example${index}(): void {\n${withoutImports(code)}\n}\n`;
  });
  const virtual = join(root, "tests/docs/examples.generated.ts");
  const host = ts.createCompilerHost(options);
  const read = host.getSourceFile.bind(host);
  host.getSourceFile = (name, ...rest) =>
    name === virtual ? ts.createSourceFile(name, text, ts.ScriptTarget.ES2022, true) : read(name, ...rest);
  const checked = ts.createProgram([virtual], options, host, program);
  const file = checked.getSourceFile(virtual);
  const found = new Map<number, string[]>();
  for (const one of [...checked.getSyntacticDiagnostics(file), ...checked.getSemanticDiagnostics(file)]) {
    const index = starts.filter((start) => start <= (one.start ?? 0)).length - 1;
    const message = ts.flattenDiagnosticMessageText(one.messageText, "\n");
    found.set(index, [...(found.get(index) ?? []), `does not compile: ${message}`]);
  }
  const outside = found.get(-1);
  if (outside !== undefined) throw new Error(`the examples cannot be set up: ${outside.join("; ")}`);
  return found;
}
