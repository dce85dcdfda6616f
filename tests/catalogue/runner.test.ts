/** The runner printed in docs/vectors.md, run as printed. */
import { catalogueEntries, evaluate } from "electroheat/catalogue";
import { describe, expect, it } from "vitest";
import { readText } from "../support/house.ts";
import { type Vector, vectorFiles } from "../support/shared.ts";

const block = (path: string): string => /```js\n([\s\S]*?)```/.exec(readText(path))?.[1] ?? "";
const own = block("docs/vectors.md");
const runThrough = new Function(`${block("shared/README.md")}\n${own}; return runThrough;`)() as (
  call: typeof evaluate,
  entries: unknown,
  vector: Vector,
) => boolean | undefined;

const entries = catalogueEntries();
const vectors = vectorFiles().flatMap((file) => file.vectors);

describe("the runner printed in docs/vectors.md", () => {
  it("is short", () => {
    expect(own.trim().split("\n").length).toBeLessThanOrEqual(30);
  });

  it("passes every vector of a described function through evaluate", () => {
    const results = vectors.map((vector) => [vector.id, runThrough(evaluate, entries, vector)] as const);
    expect(results.filter(([, passed]) => passed === false).map(([id]) => id)).toEqual([]);
    const described = vectors.filter(({ call }) => entries.some(({ id }) => id === call));
    expect(results.filter(([, passed]) => passed === true)).toHaveLength(described.length - 4);
  });

  it("fails a wrapper that is a little off, and one that accepts what must be refused", () => {
    const numeric = vectors.find(
      ({ call, expected }) => call === "circuit.lineCurrent" && expected !== undefined,
    );
    const off: typeof evaluate = (id, inputs) => {
      const answer = evaluate(id, inputs);
      return answer.ok ? { ...answer, value: (answer.value as number) * 1.001 } : answer;
    };
    expect(runThrough(off, entries, numeric as Vector)).toBe(false);
    const refusing = vectors.find(
      ({ call, expectedError }) => call === "circuit.lineCurrent" && expectedError !== undefined,
    );
    const always: typeof evaluate = () => evaluate("circuit.lineCurrent", { power: 1, lineVoltage: 1 });
    expect(runThrough(always, entries, refusing as Vector)).toBe(false);
  });
});
