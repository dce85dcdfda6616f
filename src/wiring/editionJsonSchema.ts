/** The shape of an edition as JSON Schema, made from the gate's own description, so that the two cannot drift apart. */
import { checkOneOf, given } from "../quantity/index.ts";
import { PARTS } from "./editionGate.ts";
import { REMARK_COLUMNS } from "./sharedTable.ts";
import { KINDS, LONGEST_TEXT, PROVENANCES, type TableUse } from "./tableGate.ts";

/** A value as JSON holds it. */
type Json = string | number | boolean | null | readonly Json[] | { readonly [name: string]: Json };

const TEXT = { type: "string", minLength: 1, maxLength: LONGEST_TEXT, pattern: "\\S" };
const PROVENANCE = { enum: PROVENANCES };

/** A table of one use: its columns by name or pattern; order, bounds and repeats of figures are left to the gate. */
function tableSchema(use: TableUse): Json {
  const names = [...use.required, ...REMARK_COLUMNS];
  const name =
    use.others === undefined
      ? { enum: names }
      : { anyOf: [{ enum: names }, { type: "string", pattern: use.others.pattern.source }] };
  return {
    type: "object",
    required: ["id", "title", "source", "edition", "kind", "provenance", "columns", "rows"],
    properties: {
      ...{
        id: TEXT,
        title: TEXT,
        source: TEXT,
        edition: TEXT,
        note: { type: "string" },
        transcribed: { type: "string" },
      },
      ...{ kind: { enum: KINDS }, provenance: PROVENANCE },
      columns: {
        type: "array",
        minItems: 1,
        items: {
          type: "object",
          required: ["name", "unit"],
          properties: { name, unit: { type: "string" }, meaning: { type: "string" } },
        },
      },
      rows: {
        type: "array",
        minItems: 1,
        items: { type: "array", minItems: 1, items: { type: ["number", "string", "null"] } },
      },
    },
  };
}

/**
 * Shape of an edition of one's own as JSON Schema (draft 2020-12), for wrappers, forms and schema libraries.
 *
 * A document that fails it fails {@link editionIssues}; the gate asks more, that a schema cannot say: columns that rise, factors that
 * fall, rows as long as the columns, each key once.
 * @param input.system - "North America" or "IEC"
 * @returns the schema, plain JSON
 * @throws ElectroheatError `missing`, `unknown-name`
 * @source definition
 * @example
 * ```ts
 * editionJsonSchema({ system: "IEC" })["required"] // => ["name", "system"]
 * ```
 * @since 0.1.0
 */
export function editionJsonSchema(input: { readonly system: "North America" | "IEC" }): {
  readonly [name: string]: unknown;
} {
  given(input);
  const system = checkOneOf("system", input.system, ["North America", "IEC"]);
  const parts = Object.entries(PARTS[system]).map(([name, { use, many, texts, numbers }]) => {
    const conditions = numbers.length > 0 && name !== "ambient";
    const one = {
      type: "object",
      required: ["table", ...texts, ...numbers, ...(conditions ? ["baseConditions"] : [])],
      properties: {
        table: tableSchema(use),
        ...Object.fromEntries(texts.map((text) => [text, TEXT])),
        ...Object.fromEntries(numbers.map((number) => [number, { type: "number" }])),
        ...(conditions ? { baseConditions: { type: "array", items: { type: "string" } } } : {}),
        labelProvenance: PROVENANCE,
      },
    };
    return [name, many ? { type: "array", items: one } : one];
  });
  return {
    $schema: "https://json-schema.org/draft/2020-12/schema",
    title: `${system} edition`,
    type: "object",
    required: ["name", "system"],
    properties: { name: TEXT, system: { const: system }, ...Object.fromEntries(parts) },
    additionalProperties: false,
  };
}
