/** Runs a TypeScript example and checks the `// =>` and `// throws` remarks in it. */
import ts from "typescript";
import { printedMismatch } from "./printed.ts";

type Claim =
  | { readonly kind: "value"; readonly text: string }
  | { readonly kind: "throws"; readonly text: string };

/** The remark that belongs to a statement: at the end of its line, or on the lines below it. */
function claimAfter(source: ts.SourceFile, statement: ts.Statement): Claim | undefined {
  const text = source.text;
  const comments = [
    ...(ts.getTrailingCommentRanges(text, statement.end) ?? []),
    ...(ts.getLeadingCommentRanges(text, statement.end) ?? []),
  ].map(({ pos, end }) => text.slice(pos, end).replace(/^\/\/ ?/, ""));
  const start = comments.findIndex((comment) => /^\s*(=>|throws\b)/.test(comment));
  if (start < 0) return undefined;
  const body = comments.slice(start).join("\n").trim();
  return body.startsWith("=>")
    ? { kind: "value", text: body.slice(2).trim() }
    : { kind: "throws", text: body.replace(/^throws\s*/, "").trim() };
}

/** Drops import lines: everything a room exports is in scope already. */
export function withoutImports(code: string): string {
  const source = ts.createSourceFile("example.ts", code, ts.ScriptTarget.ES2022, true);
  const kept = source.statements.filter((one) => !ts.isImportDeclaration(one));
  return kept.map((one) => one.getFullText()).join("") + source.endOfFileToken.getFullText();
}

/** Turns every claimed statement into a call of the checker. */
function instrument(code: string): { readonly script: string; readonly claims: readonly Claim[] } {
  const source = ts.createSourceFile("example.ts", code, ts.ScriptTarget.ES2022, true);
  const claims: Claim[] = [];
  const parts = source.statements.map((statement) => {
    const own = statement.getText();
    const claim = claimAfter(source, statement);
    if (claim === undefined) return own;
    const index = claims.push(claim) - 1;
    if (claim.kind === "throws") return `$throws(${index}, () => { ${own} });`;
    if (ts.isExpressionStatement(statement)) return `$value(${index}, (${statement.expression.getText()}));`;
    if (ts.isVariableStatement(statement)) {
      const name = statement.declarationList.declarations.at(-1)?.name.getText();
      return `${own};$value(${index}, (${name}));`;
    }
    throw new SyntaxError(`a remark may follow an expression or a declaration, not: ${own}`);
  });
  return { script: parts.join("\n"), claims };
}

function codeOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  return "code" in error
    ? `${error.name} ${error.code}: ${error.message}`
    : `${error.name}: ${error.message}`;
}

/**
 * Runs an example with the given names in scope.
 * @returns what is wrong with it, one line per problem; empty when every remark holds
 */
export function runExample(code: string, scope: Readonly<Record<string, unknown>>): string[] {
  const problems: string[] = [];
  const { script, claims } = instrument(withoutImports(code));
  if (claims.length === 0)
    return ["the example shows no result: add `// => …` or `// throws ElectroheatError`"];
  const reached = new Set<number>();
  const $value = (index: number, actual: unknown): void => {
    reached.add(index);
    const problem = printedMismatch(claims[index]?.text ?? "", actual);
    if (problem !== undefined) problems.push(problem);
  };
  const $throws = (index: number, body: () => void): void => {
    reached.add(index);
    const [name = "", wanted] = (claims[index]?.text ?? "").match(/[A-Za-z-]+/g) ?? [];
    try {
      body();
      problems.push(`expected ${name} to be thrown, nothing was`);
    } catch (error) {
      const seen = error as { name?: unknown; code?: unknown };
      if (seen.name !== name) problems.push(`expected ${name} to be thrown, got ${codeOf(error)}`);
      else if (wanted !== undefined && seen.code !== wanted) {
        problems.push(`expected code ${wanted}, got ${codeOf(error)}`);
      }
    }
  };
  const names = Object.keys(scope).filter((name) => name !== "default");
  const { outputText } = ts.transpileModule(`(() => { ${script}\n})();`, {
    compilerOptions: { target: ts.ScriptTarget.ES2022 },
  });
  try {
    new Function(...names, "$value", "$throws", outputText)(
      ...names.map((name) => scope[name]),
      $value,
      $throws,
    );
  } catch (error) {
    problems.push(`the example stopped: ${codeOf(error)}`);
  }
  claims.forEach((claim, index) => {
    if (!reached.has(index) && problems.length === 0) problems.push(`never reached: ${claim.text}`);
  });
  return problems;
}
