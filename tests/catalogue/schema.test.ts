/** zod and the catalogue's checker, made from one description, accept the same; and the JSON Schemas are sound. */
import { catalogueEntries, catalogueShapes } from "electroheat/catalogue";
import { isElectroheatError } from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { jsonSchemas, schemaMaker } from "../../scripts/catalogueSchema.mjs";
import { entryOf } from "../../src/catalogue/entries/index.ts";
import { readFields } from "../../src/catalogue/read.ts";
import { goodInputs } from "./examples.ts";

const entries = catalogueEntries();
const named = catalogueShapes();
const numbersOnly = schemaMaker(named, { text: false });

function checkerAccepts(id: string, inputs: unknown): boolean {
  const entry = entryOf(id);
  try {
    readFields(entry?.shapes ?? {}, entry?.notes, inputs, "", { left: 100_000 });
    return true;
  } catch (error) {
    if (!isElectroheatError(error)) throw error;
    return false;
  }
}

/** Words without a digit, which no quantity can be read from, and not blank. */
const words = fc.constantFrom(
  "star",
  "delta",
  "open",
  "connected",
  "L1",
  "zigzag",
  "tied",
  "element",
  "all",
  "x",
);
const leaf = fc.oneof(
  words.filter((word) => !/\d/.test(word)),
  fc.boolean(),
  fc.integer({ min: -2, max: 5 }),
  fc.double({ min: -10, max: 1e5, noNaN: true }),
  fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, 1e308),
);
const value = fc.oneof(
  { weight: 4, arbitrary: leaf },
  fc.array(leaf, { maxLength: 4 }),
  fc.dictionary(fc.constantFrom("id", "from", "to", "resistance", "re", "im", "kind", "extra"), leaf, {
    maxKeys: 4,
  }),
);

/** The same structure with what lies at a number's way through it replaced. */
function replaced(whole: unknown, at: number, by: unknown): unknown {
  if (typeof whole !== "object" || whole === null) return by;
  const keys = Object.keys(whole);
  const key = keys[at % Math.max(1, keys.length)];
  if (key === undefined) return by;
  const rest = Math.floor(at / keys.length);
  const inner = (whole as Record<string, unknown>)[key];
  const next = rest % 4 === 0 ? by : replaced(inner, Math.floor(rest / 4), by);
  return Array.isArray(whole)
    ? whole.map((one, i) => (String(i) === key ? next : one))
    : { ...whole, [key]: next };
}

describe.each(entries.map((entry) => [entry.id, entry] as const))("%s", (id, entry) => {
  const schema = numbersOnly.inputsOf(entry);
  const good = goodInputs(id) as Record<string, unknown>;
  const agree = (inputs: unknown): void => {
    const { success, error } = schema.safeParse(inputs);
    expect(checkerAccepts(id, inputs), `${JSON.stringify(inputs)} ${error?.message}`).toBe(success);
  };

  it("is accepted and refused by both alike", () => {
    agree(good);
    expect(schema.safeParse(good).success).toBe(true);
    fc.assert(
      fc.property(fc.nat(), value, (at, by) => agree(replaced(good, at, by))),
      { numRuns: 150 },
    );
    fc.assert(
      fc.property(fc.subarray(Object.keys(good)), (kept) => {
        agree(Object.fromEntries(kept.map((name) => [name, good[name]])));
      }),
      { numRuns: 20 },
    );
    agree({ ...good, unheardOf: 1 });
  });
});

describe("JSON Schemas", () => {
  const { inputs, shapes } = jsonSchemas(entries, named);

  it("there is one for every entry", () => {
    expect(Object.keys(inputs)).toEqual(entries.map(({ id }) => id));
  });

  it("say units, limits and closed records", () => {
    expect(inputs["circuit.lineCurrent"]).toMatchObject({
      type: "object",
      required: ["power", "lineVoltage"],
      additionalProperties: false,
      properties: {
        power: {
          unit: "W",
          symbol: "P",
          anyOf: [{ type: "number", exclusiveMinimum: 0 }, { type: "string" }],
        },
      },
    });
    expect(inputs["circuit.energise"]).toMatchObject({
      properties: {
        network: { $ref: "#/$defs/circuit.Network" },
        supply: { $ref: "#/$defs/circuit.Supply" },
      },
    });
    expect(shapes["circuit.Branch"]).toMatchObject({ type: "object", additionalProperties: false });
  });

  it("refer only to shapes that are there", () => {
    const refs = [...JSON.stringify({ inputs, shapes }).matchAll(/"\$ref":"#\/\$defs\/([^"]+)"/g)].map(
      (hit) => hit[1],
    );
    expect(refs.length).toBeGreaterThan(0);
    expect(refs.filter((ref) => !(String(ref) in shapes))).toEqual([]);
  });
});
