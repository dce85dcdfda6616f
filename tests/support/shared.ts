/** Shape of what lies in shared/: bibliography, tables, vectors. Unknown fields are refused, so a slip in a key shows. */
import { existsSync, readdirSync } from "node:fs";
import { join, sep } from "node:path";
import { z } from "zod";
import { readText, root } from "./house.ts";

/** The one room that is being tested, where it is only one (`npm run mutation`). */
export const onlyRoom: readonly string[] = process.env["ELECTROHEAT_ROOM"]?.split(",") ?? [];

const id = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, "kebab-case");
const text = z.string().trim().min(1);
const json = z.json();

export const provenances = ["seen", "memory", "derived"] as const;

export const sourceSchema = z.strictObject({
  id,
  kind: z.enum([
    "standard",
    "handbook",
    "textbook",
    "paper",
    "maker data",
    "definition",
    "common practice",
    "derivation",
    "database",
  ]),
  title: text,
  author: text.optional(),
  publisher: text.optional(),
  edition: text.optional(),
  year: z.int().min(1800).max(2100).optional(),
  locator: text.optional(),
  provenance: z.enum([...provenances, "common practice"]),
  note: text.optional(),
});

export const tableSchema = z
  .strictObject({
    id,
    title: text,
    source: id,
    edition: text,
    transcribed: z.iso.date(),
    kind: z.enum(["published", "common practice", "user table", "derived"]),
    provenance: z.enum(provenances),
    columns: z.array(z.strictObject({ name: text, unit: z.string(), meaning: text })).min(1),
    rows: z.array(z.array(z.union([z.number(), z.string(), z.boolean(), z.null()]))).min(1),
    note: text.optional(),
  })
  .superRefine((table, context) => {
    table.rows.forEach((row, i) => {
      if (row.length !== table.columns.length) {
        context.addIssue({ code: "custom", path: ["rows", i], message: "one cell for each column" });
      }
    });
    const names = table.columns.map((column) => column.name);
    if (new Set(names).size !== names.length) {
      context.addIssue({ code: "custom", path: ["columns"], message: "column names used once" });
    }
  });

const expected = z.record(z.string(), z.union([z.number(), z.string(), z.boolean(), z.null()]));

export const vectorSchema = z
  .strictObject({
    id,
    call: z.string().regex(/^[a-z]+\.[A-Za-z0-9]+$/, "room.functionName"),
    input: json.optional(),
    inputs: z.array(json).optional(),
    expected: expected.optional(),
    /** Answers printed somewhere that are wrong: the result must stay clear of them. */
    wrong: z.record(z.string(), z.number()).optional(),
    expectedError: text.optional(),
    expectedArgument: text.optional(),
    tolerance: z.strictObject({
      relative: z.number().nonnegative().max(0.1).optional(),
      absolute: z.number().nonnegative().optional(),
      why: text,
    }),
    source: id,
    locator: text.optional(),
    origin: z.enum(["published", "derived", "common practice"]),
    provenance: z.enum(provenances),
    crossCheck: text.optional(),
    note: text.optional(),
  })
  .superRefine((vector, context) => {
    const issue = (message: string): void => context.addIssue({ code: "custom", message });
    if ((vector.input === undefined) === (vector.inputs === undefined)) issue("either input or inputs");
    if ((vector.expected === undefined) === (vector.expectedError === undefined))
      issue("either expected or expectedError");
    if (vector.expected !== undefined && Object.keys(vector.expected).length === 0)
      issue("something expected");
    if (vector.expectedArgument !== undefined && vector.expectedError === undefined)
      issue("no argument without error");
    if (vector.provenance === "memory" && vector.crossCheck === undefined)
      issue("memory needs an independent cross-check");
  });

export const vectorFileSchema = z.strictObject({
  topic: text,
  note: text.optional(),
  vectors: z.array(vectorSchema).min(1),
});

export type Source = z.infer<typeof sourceSchema>;
export type Table = z.infer<typeof tableSchema>;
export type Vector = z.infer<typeof vectorSchema>;

/** JSON files below a folder of shared/, as paths relative to the project. */
export function jsonFiles(folder: string): readonly string[] {
  const path = join(root, folder);
  if (!existsSync(path)) return [];
  return readdirSync(path, { recursive: true })
    .map((entry) => join(folder, String(entry)).split(sep).join("/"))
    .filter((file) => file.endsWith(".json"))
    .sort();
}

export function readJson(path: string): unknown {
  return JSON.parse(readText(path));
}

/** Every vector file with its vectors, parsed. A file of the wrong shape throws with its name. */
/** Every file of vectors; those of one room where `ELECTROHEAT_ROOM` names it. */
export function vectorFiles(): readonly { readonly path: string; readonly vectors: readonly Vector[] }[] {
  const folder = ["shared/vectors", ...onlyRoom].join("/");
  return jsonFiles(folder).map((path) => {
    const parsed = vectorFileSchema.safeParse(readJson(path));
    if (!parsed.success) throw new Error(`${path}: ${z.prettifyError(parsed.error)}`);
    return { path, vectors: parsed.data.vectors };
  });
}
