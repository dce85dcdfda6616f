/**
 * zod schemas of the catalogue's inputs, and from them the JSON Schemas. Only the build and the tests use zod here: the catalogue's
 * own checker reads the same description, and the tests hold the two against each other.
 */
import * as z from "zod";

/** @typedef {import("../src/catalogue/shape.ts").Shape} Shape */
/** @typedef {import("../src/catalogue/note.ts").ValueNote} ValueNote */
/** @typedef {import("../src/catalogue/listing.ts").CatalogueEntry} CatalogueEntry */
/** @typedef {import("../src/catalogue/listing.ts").NamedShape} NamedShape */

/** @param {ValueNote} note @returns {z.ZodNumber} */
function numberOf(note) {
  let number = note.is === "count" ? z.int() : z.number();
  if (note.min !== undefined) number = number.min(note.min);
  if (note.max !== undefined) number = number.max(note.max);
  if (note.above !== undefined) number = number.gt(note.above);
  if (note.below !== undefined) number = number.lt(note.below);
  return number;
}

/**
 * @param {readonly NamedShape[]} named
 * @param {{ readonly text: boolean }} options whether quantities may be text with a unit
 */
export function schemaMaker(named, { text }) {
  /** Schemas of named shapes, made once. @type {Map<string, z.ZodType>} */
  const made = new Map();
  /** What JSON Schema is to say beside zod's own. @type {WeakMap<object, Record<string, unknown>>} */
  const said = new WeakMap();

  /** @template {z.ZodType} T @param {T} schema @param {Record<string, unknown>} words @returns {T} */
  const say = (schema, words) => {
    said.set(
      schema,
      Object.fromEntries(Object.entries(words).filter(([, one]) => one !== undefined && one !== "")),
    );
    return schema;
  };

  /** @param {Shape} shape @param {ValueNote} [note] @returns {z.ZodType} */
  const of = (shape, note = {}) => {
    if (shape === "text") return z.string().min(1).max(1000);
    if (shape === "flag") return z.boolean();
    if (shape === "null") return z.null();
    if (shape === "opaque") return z.never();
    if ("number" in shape) {
      const unit = shape.number || note.unit || (note.is === "degrees" ? "°" : "");
      const number = numberOf(note);
      const words = { unit, symbol: note.symbol, default: note.default };
      if (!text || shape.number === "") return say(number, words);
      const written = say(z.string().min(1).max(64), { description: `a number with a unit of ${unit}` });
      return say(z.union([number, written]), words);
    }
    if ("names" in shape) {
      return say(z.enum(/** @type {[string, ...string[]]} */ ([...shape.names])), { default: note.default });
    }
    if ("values" in shape) return say(z.literal([...shape.values]), { default: note.default });
    if ("list" in shape) {
      const list = z.array(of(shape.list, note.each));
      const least = note.least === undefined ? list : list.min(note.least);
      return note.most === undefined ? least : least.max(note.most);
    }
    if ("tuple" in shape) {
      const parts = shape.tuple.map((part) => of(part, note.each));
      return z.tuple(/** @type {[z.ZodType, ...z.ZodType[]]} */ (/** @type {unknown} */ (parts)));
    }
    if ("map" in shape) return z.record(z.string(), of(shape.map, note.each));
    if ("either" in shape) return z.union(shape.either.map((one) => of(one, note)));
    if ("record" in shape) return record(shape.record, note.fields);
    return reference(shape.ref, note);
  };

  /** @param {Readonly<Record<string, Shape>>} fields @param {Readonly<Record<string, ValueNote>>} [notes] */
  const record = (fields, notes = {}) =>
    z.strictObject(
      Object.fromEntries(
        Object.entries(fields).map(([key, field]) => {
          const name = key.replace("?", "");
          const schema = of(field, notes[name]);
          return [name, key.endsWith("?") ? z.optional(schema) : schema];
        }),
      ),
    );

  /** @param {string} name @param {ValueNote} note @returns {z.ZodType} */
  const reference = (name, note) => {
    const found = named.find((one) => one.name === name);
    if (found === undefined) throw new Error(`no shape ${name}`);
    if (note.fields !== undefined) {
      return of(found.shape, { ...found.note, ...note, fields: { ...found.note.fields, ...note.fields } });
    }
    const known = made.get(name);
    if (known !== undefined) return known;
    const schema = of(found.shape, found.note);
    made.set(name, schema);
    return schema;
  };

  /** @param {CatalogueEntry} entry @returns {z.ZodType} schema of the record of its inputs */
  const inputsOf = ({ inputs }) =>
    record(
      Object.fromEntries(inputs.map(({ name, optional, shape }) => [optional ? `${name}?` : name, shape])),
      Object.fromEntries(inputs.map((input) => [input.name, input])),
    );

  return { inputsOf, made, said };
}

/**
 * JSON Schemas of the inputs of every entry and of the named shapes that they refer to.
 * @param {readonly CatalogueEntry[]} entries
 * @param {readonly NamedShape[]} named
 * @returns {{ inputs: Record<string, object>, shapes: Record<string, object> }}
 */
export function jsonSchemas(entries, named) {
  const { inputsOf, made, said } = schemaMaker(named, { text: true });
  /** @type {z.core.$ZodRegistry<{ id?: string | undefined }>} */
  const registry = z.registry();
  const schemas = entries.map((entry) => ({ id: entry.id, schema: inputsOf(entry) }));
  for (const { id, schema } of schemas) registry.add(schema, { id });
  for (const [id, schema] of made) registry.add(schema, { id });
  const { schemas: all } = z.toJSONSchema(registry, {
    target: "draft-2020-12",
    io: "input",
    uri: (id) => `#/$defs/${id}`,
    override: ({ zodSchema, jsonSchema }) => {
      Object.assign(jsonSchema, said.get(zodSchema));
    },
  });
  /** @param {Iterable<string>} ids */
  const pick = (ids) =>
    Object.fromEntries(
      [...ids].map((id) => {
        const { $schema: _schema, $id: _id, ...rest } = /** @type {any} */ (all)[id];
        // zod's registry has no note of strictness with io "input"; an unknown field is an error all the same.
        return [id, closed(rest)];
      }),
    );
  return { inputs: pick(schemas.map(({ id }) => id)), shapes: pick(made.keys()) };
}

/** @param {any} schema @returns {any} the same, with records closed to unknown fields */
function closed(schema) {
  if (Array.isArray(schema)) return schema.map(closed);
  if (typeof schema !== "object" || schema === null) return schema;
  const copy = Object.fromEntries(Object.entries(schema).map(([key, value]) => [key, closed(value)]));
  if (copy["type"] === "object" && copy["properties"] !== undefined) copy["additionalProperties"] = false;
  return copy;
}
