/** Every published and derived example under shared/vectors, one test each. */
import { describe, expect, it } from "vitest";
import { readText, rooms } from "./support/house.ts";
import { type Vector, vectorFiles } from "./support/shared.ts";
import { runVector, valueAt } from "./support/vectors.ts";

const files = vectorFiles();
const needed = new Set(
  files.flatMap(({ vectors }) => vectors.map(({ call }) => call.split(".")[0] as string)),
);
const modules: Record<string, unknown> = {};
for (const room of rooms) if (needed.has(room)) modules[room] = await import(`../src/${room}/index.ts`);

describe("paths into results", () => {
  const result = {
    a: [
      { id: "x.y", v: 1 },
      { id: "B", v: { re: -2 } },
    ],
    open: "open",
    none: null,
  };

  it("reads names, item numbers and items picked by a key", () => {
    expect(valueAt(7, "")).toBe(7);
    expect(valueAt(result, "a.1.v.re")).toBe(-2);
    expect(valueAt(result, "a[id=x.y].v")).toBe(1);
    expect(valueAt(result, "a[id=B].v.re")).toBe(-2);
    expect(valueAt([[3, 4]], "0.1")).toBe(4);
    expect(valueAt(result, "none")).toBe(null);
  });

  it("refuses what is not there instead of reading undefined", () => {
    for (const path of ["b", "a.2", "a[id=C].v", "none.x", "a[id=B", "open.length.x"]) {
      expect(() => valueAt(result, path), path).toThrow();
    }
  });
});

describe("the runner", () => {
  const base = {
    id: "x",
    tolerance: { relative: 0.1, why: "test" },
    source: "x",
    origin: "derived",
    provenance: "derived",
  } as const;
  const own = { room: { twice: (input: { x: number }) => ({ y: 2 * input.x }) } };

  it("passes what agrees and fails what does not", () => {
    const call = "room.twice";
    expect(runVector({ ...base, call, input: { x: 3 }, expected: { y: 6.5 } }, own).failures).toEqual([]);
    expect(runVector({ ...base, call, input: { x: 3 }, expected: { y: 7 } }, own).failures).toHaveLength(1);
    expect(runVector({ ...base, call, input: { x: 3 }, expected: { y: "6" } }, own).failures).toHaveLength(1);
    const wrong = { y: 6.1 };
    expect(
      runVector({ ...base, call, input: { x: 3 }, expected: { y: 6 }, wrong }, own).failures,
    ).toHaveLength(1);
    expect(
      runVector({ ...base, call, input: { x: 3 }, expectedError: "missing" }, own).failures,
    ).toHaveLength(1);
  });

  it("fails unknown rooms and functions", () => {
    const vector = { ...base, input: {}, expected: { "": 1 } };
    expect(runVector({ ...vector, call: "attic.twice" }, own).failures).toEqual(["no room attic"]);
    expect(runVector({ ...vector, call: "room.thrice" }, own).failures).toEqual(["no function room.thrice"]);
  });
});

describe.each(files)("$path", ({ vectors }) => {
  it.each(vectors.map((vector) => [vector.id, vector] as const))("%s", (_, vector) => {
    const { failures, compared } = runVector(vector, modules);
    expect(failures, `${vector.call}, source ${vector.source}`).toEqual([]);
    expect(compared).toBeGreaterThan(0);
  });
});

describe("the runner printed in shared/README.md", () => {
  const block = /```js\n([\s\S]*?)```/.exec(readText("shared/README.md"))?.[1] as string;
  // The block is the project's own text; run as printed, so that what others copy is what was tried.
  const run = new Function(`${block}; return run;`)() as (vector: unknown, rooms: unknown) => boolean;

  it("is short", () => {
    expect(block.split("\n").length).toBeLessThan(40);
  });

  it("passes every vector", () => {
    const failed = files.flatMap(({ vectors }) => vectors.filter((vector) => run(vector, modules) !== true));
    expect(failed.map(({ id }) => id)).toEqual([]);
  });

  const numbers = files.flatMap(({ vectors }) =>
    vectors.flatMap((vector) =>
      Object.entries(vector.expected ?? {}).flatMap(([path, value]) =>
        typeof value === "number" ? [{ vector, path, value }] : [],
      ),
    ),
  );
  const toleranceOf = ({ tolerance }: Vector, value: number): number =>
    Math.max(tolerance.absolute ?? 0, (tolerance.relative ?? 0) * Math.abs(value));

  it("fails every vector with any of its numbers moved by three tolerances, up or down", () => {
    const shifted = numbers.flatMap(({ vector, path, value }) =>
      [-3, 3].map((times) => {
        const moved = value + times * Math.max(toleranceOf(vector, value), 1e-12 * Math.abs(value), 1e-18);
        return { ...vector, expected: { [path]: moved } };
      }),
    );
    expect(shifted.length).toBeGreaterThan(5000);
    expect(shifted.filter((vector) => run(vector, modules)).map(({ id }) => id)).toEqual([]);
  });

  it("allows no more than the digits of a figure: wider than 1e-4 only for printed figures, or with a reason", () => {
    // A derived figure has as many digits as it was given; a tolerance that would let a slip pass must say why.
    const loose = numbers.filter(
      ({ vector, value }) =>
        vector.origin === "derived" && value !== 0 && toleranceOf(vector, value) > 1e-4 * Math.abs(value),
    );
    const unsaid = loose.filter(
      ({ vector }) => !/printed|rounded|digits|own tolerance|sound sides/.test(vector.tolerance.why),
    );
    expect(unsaid.map(({ vector, path }) => `${vector.id} ${path}`)).toEqual([]);
  });
});
