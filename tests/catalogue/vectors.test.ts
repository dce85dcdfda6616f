/** Every vector of a described function, through `evaluate` and through cells. The direct way is tests/vectors.test.ts. */
import { catalogueEntries, evaluate, sheetFunctions } from "electroheat/catalogue";
import { describe, expect, it } from "vitest";
import { type Vector, vectorFiles } from "../support/shared.ts";
import { runVector } from "../support/vectors.ts";
import { asCells } from "./asCells.ts";

const entries = new Map(catalogueEntries().map((entry) => [entry.id, entry]));
const functions = new Map(sheetFunctions().map((one) => [one.id, one]));
const vectors = vectorFiles()
  .flatMap((file) => file.vectors)
  .filter(({ call }) => entries.has(call));

/** Vectors about the function itself, whose input the boundary reads as what it stands for. */
const READ_AT_THE_BOUNDARY: Readonly<Record<string, { readonly text: string; readonly means: unknown }>> = {
  "text-resistance": { text: "OL", means: "open" },
  "inversion-refused-3": { text: "OL", means: "open" },
  "target-refused-3": { text: "45 kW", means: 45_000 },
  "overload-text-resistance": { text: "OL", means: "open" },
};

/** Inputs by name: the one record, or the arguments under their names. */
function inputsOf(vector: Vector): unknown {
  const entry = entries.get(vector.call);
  const given = structuredClone(vector.inputs ?? [vector.input]);
  if (entry?.takes === "fields") return given[0];
  return Object.fromEntries((entry?.declared ?? []).map((name, i) => [name, given[i]]));
}

/** The boundary names an argument from the outside in: `network.branches.0.id` for `branches.0.id`. */
function within(argument: string, wanted: string | undefined): boolean {
  if (wanted === undefined || argument === wanted || argument.endsWith(`.${wanted}`)) return true;
  return wanted.endsWith(`.${argument}`);
}

/** A room of one function that answers as given, for the runner of vectors. */
function roomOf(vector: Vector, call: () => unknown): Record<string, unknown> {
  const [room = "", name = ""] = vector.call.split(".");
  return { [room]: { [name]: call } };
}

function throughEvaluate(vector: Vector): string[] {
  const answer = evaluate(vector.call, inputsOf(vector));
  if (answer.ok)
    return [
      ...runVector(
        vector,
        roomOf(vector, () => answer.value),
      ).failures,
    ];
  const { code, argument, message } = answer.error;
  if (vector.expectedError === undefined) return [message];
  return code === vector.expectedError && within(argument, vector.expectedArgument)
    ? []
    : [`${code}: ${message}`];
}

/** Asks for one field after the other, as a sheet would, and builds up a result that has just those. */
function throughCells(vector: Vector): string[] {
  const entry = entries.get(vector.call);
  const sheet = functions.get(vector.call);
  const inputs = inputsOf(vector) as Record<string, unknown>;
  if (typeof inputs !== "object" || inputs === null || sheet === undefined) return ["no record"];
  const known = new Set(entry?.inputs.map(({ name }) => name));
  if (Object.keys(inputs).some((name) => !known.has(name))) return [];
  const cells = (entry?.inputs ?? []).map(({ name, shape }) => asCells(shape, inputs[name]));
  const before = JSON.stringify(cells);
  const failures: string[] = [];
  if (vector.expectedError !== undefined) {
    const { code, status } = sheet.answer(...cells);
    if (code !== vector.expectedError) failures.push(`${code}: ${status}`);
  }
  const asked = [
    ...Object.entries(vector.expected ?? {}).map(([path, value]) => ({ path, expected: { "": value } })),
    ...Object.entries(vector.wrong ?? {}).map(([path, value]) => ({ path, wrong: { "": value } })),
  ];
  const { id, call, input, tolerance, source, origin, provenance } = vector;
  for (const { path, ...claim } of asked) {
    const answer = sheet.fields ? sheet.answer(...cells, path) : sheet.answer(...cells);
    const one: Vector = { id, call, input: input ?? null, tolerance, source, origin, provenance, ...claim };
    const { failures: found } = runVector(
      one,
      roomOf(vector, () => answer.value),
    );
    failures.push(...found.map((line) => `${path}: ${line} (${answer.status})`));
  }
  if (JSON.stringify(cells) !== before) failures.push("the cells were changed");
  return failures;
}

describe("vectors through evaluate", () => {
  it("are many", () => {
    console.info(`vectors of described functions: ${vectors.length}, of ${entries.size} entries`);
    expect(vectors.length).toBeGreaterThan(800);
  });

  it("give what they give directly", () => {
    const failed = vectors.flatMap((vector) =>
      vector.id in READ_AT_THE_BOUNDARY ? [] : throughEvaluate(vector).map((line) => `${vector.id}: ${line}`),
    );
    expect(failed).toEqual([]);
  });

  it("but for texts that the boundary reads", () => {
    for (const [id, { text, means }] of Object.entries(READ_AT_THE_BOUNDARY)) {
      const vector = vectors.find((one) => one.id === id) as Vector;
      const read = evaluate(vector.call, inputsOf(vector));
      const meant = evaluate(
        vector.call,
        JSON.parse(JSON.stringify(inputsOf(vector)).replace(JSON.stringify(text), JSON.stringify(means))),
      );
      expect(read).toEqual(meant);
      expect(read.ok).toBe(true);
    }
  });
});

describe("vectors through cells", () => {
  it("give what they give directly", () => {
    const failed = vectors.flatMap((vector) =>
      vector.id in READ_AT_THE_BOUNDARY ? [] : throughCells(vector).map((line) => `${vector.id}: ${line}`),
    );
    expect(failed).toEqual([]);
  });

  it("would notice a wrong figure", () => {
    const [vector] = vectors.filter(({ call }) => call === "circuit.lineCurrent");
    const moved = { ...(vector as Vector), expected: { "": 1 } };
    expect(throughCells(moved)).not.toEqual([]);
    expect(throughEvaluate(moved)).not.toEqual([]);
  });
});
