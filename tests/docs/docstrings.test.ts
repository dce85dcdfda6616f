/** Every public symbol is documented, and every example in a docstring compiles and gives what it prints. */
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { floors, rooms, root } from "../support/house.ts";
import { runExample } from "./example.ts";
import { type PublicSymbol, publicSymbols, typeProblems } from "./symbols.ts";

/** Rooms whose names an example of a room may use: its own last, so that its own names win. */
function scopeOf(room: string): string[] {
  return [
    ...rooms.filter((other) => (floors[other] ?? 99) < (floors[room] ?? -1) || other === "quantity"),
    room,
  ].filter((name, index, all) => all.lastIndexOf(name) === index);
}

function gaps({ kind, doc, examples, signatureProblems }: PublicSymbol): string[] {
  if (doc === undefined) return ["no docstring"];
  const found: string[] = [...signatureProblems];
  if (!/[\p{L}]{2}/u.test(doc.summary)) found.push("no summary");
  if (!doc.tags.some(({ name, text }) => name === "since" && /^\d+\.\d+\.\d+$/.test(text)))
    found.push("no @since x.y.z");
  const tags = doc.tags.filter(({ name }) => name === "example").length;
  if (kind === "function" && tags !== 1) found.push(`${tags} @example tags, one expected`);
  if (tags > 0 && examples.length !== tags) found.push("an @example without exactly one ```ts block");
  return found;
}

for (const room of rooms) {
  const symbols = publicSymbols(room);
  const runnable = symbols.flatMap((symbol) => symbol.examples.map((code) => ({ symbol, code })));
  const names = scopeOf(room);

  describe(`electroheat/${room}`, async () => {
    const scope: Record<string, unknown> = {};
    for (const name of names) Object.assign(scope, await import(join(root, "src", name, "index.ts")));
    const typeErrors = typeProblems(
      names,
      runnable.map(({ code }) => code),
    );

    it("exports something", () => {
      expect(symbols.length).toBeGreaterThan(0);
    });

    it.each(symbols.map((symbol) => [symbol.name, symbol] as const))("%s is documented", (name, symbol) => {
      const found = gaps(symbol).map((gap) => `${symbol.file}:${symbol.line} ${name}: ${gap}`);
      expect(found).toEqual([]);
    });

    it.each(runnable.map(({ symbol, code }, index) => [symbol.name, symbol, code, index] as const))(
      "%s: the example holds",
      (name, symbol, code, index) => {
        const problems = [...(typeErrors.get(index) ?? []), ...runExample(code, scope)];
        expect(
          problems.map((problem) => `${symbol.file}:${symbol.line} ${name}: ${problem}\n${code}`),
        ).toEqual([]);
      },
    );
  });
}
