/**
 * The domain a docstring states is the domain the function keeps: "more than 0", "0 or more", "ratio 0 to 1" and the like are
 * read from the @param lines and tried on every function that has an example under shared/vectors.
 */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import * as element from "electroheat/element";
import { describe, expect, it } from "vitest";
import { readText, root } from "../support/house.ts";
import { type Vector, vectorFiles } from "../support/shared.ts";

const rooms = element as unknown as Record<string, (...args: unknown[]) => unknown>;
const vectors: Vector[] = vectorFiles()
  .flatMap((file) => file.vectors)
  .filter(({ call, expected }) => call.startsWith("element.") && expected !== undefined);

interface Stated {
  readonly name: string;
  readonly field: string;
  readonly text: string;
}

/** The @param lines above each exported function, one entry per field. */
const stated: Stated[] = readdirSync(join(root, "src/element")).flatMap((file) => {
  const source = readText(`src/element/${file}`);
  return [...source.matchAll(/\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\s*export function (\w+)/g)].flatMap(
    ([, doc, name]) => {
      const plain = (doc ?? "").replace(/\n \*/g, " ");
      return [...plain.matchAll(/@param (?:input\.)?(\w+) - ((?:(?!@\w)[\s\S])*)/g)].map(
        ([, field, text]) => ({
          name: name as string,
          field: field as string,
          text: text as string,
        }),
      );
    },
  );
});

function spoil(
  vector: Vector,
  field: string,
  bad: unknown,
): { readonly input: unknown[]; readonly path: string } | undefined {
  if (vector.inputs !== undefined) {
    return typeof vector.inputs[0] === "number" ? { input: [bad], path: field } : undefined;
  }
  const input = structuredClone(vector.input) as Record<string, unknown>;
  const old = input[field];
  if (old === undefined) return undefined;
  if (Array.isArray(old)) {
    if (typeof old[0] !== "number") return undefined;
    input[field] = [bad, ...old.slice(1)];
    return { input: [input], path: `${field}.0` };
  }
  if (typeof old !== "number") return undefined;
  input[field] = bad;
  return { input: [input], path: field };
}

function outcome(name: string, input: unknown[]): { readonly code: string; readonly argument: string } {
  try {
    (rooms[name] as (...args: unknown[]) => unknown)(...input);
  } catch (error) {
    const { code, argument } = error as { code: string; argument: string };
    return { code, argument };
  }
  return { code: "none", argument: "" };
}

/** What the words of a @param line rule out. */
function ruledOut(text: string): number[] {
  if (/(^|, )more than 0/.test(text) && / to 1\b/.test(text)) return [0, -0.1, 1.0001];
  if (/more than 0|more than `\w+`|whole number from 1|1 or more/.test(text)) return [0, -1];
  if (/0 to less than 1|0 to 1/.test(text)) return [-0.01, 1.0001];
  if (/0 or more|0 in still air/.test(text)) return [-1];
  return [];
}

const cases = stated.flatMap(({ name, field, text }) => {
  const vector = vectors.find((one) => one.call === `element.${name}` && spoil(one, field, 0) !== undefined);
  return vector === undefined ? [] : [{ name, field, text, vector }];
});

describe("stated domains", () => {
  it("are read from the docstrings", () => {
    expect(stated.length).toBeGreaterThan(150);
    expect(cases.length).toBeGreaterThan(130);
    expect(cases.filter(({ text }) => ruledOut(text).length > 0).length).toBeGreaterThan(110);
  });

  it.each(cases)("$name: $field", ({ name, field, text, vector }) => {
    for (const bad of ruledOut(text)) {
      const { input, path } = spoil(vector, field, bad) as NonNullable<ReturnType<typeof spoil>>;
      const found = outcome(name, input);
      expect(`${bad}: ${found.code} ${found.argument}`).toMatch(
        new RegExp(`^${bad}: (out-of-range|inconsistent|short-circuit|outside-table) ${path}$`),
      );
    }
    for (const [bad, code] of [
      [Number.NaN, "not-a-number"],
      [Number.POSITIVE_INFINITY, "not-a-number"],
      ["10", "not-a-number"],
      [null, "missing"],
    ] as const) {
      const { input, path } = spoil(vector, field, bad) as NonNullable<ReturnType<typeof spoil>>;
      const found = outcome(name, input);
      expect(`${found.code} ${found.argument}`, `${String(bad)} for ${field}`).toBe(`${code} ${path}`);
    }
  });
});
