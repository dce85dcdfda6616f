/** Known good inputs of every entry: those of its docstring's example. */
import { type CatalogueEntry, catalogueEntries } from "electroheat/catalogue";
import { exampleArguments } from "../../scripts/catalogueExamples.mjs";
import { root } from "../support/house.ts";

const args = exampleArguments(root);
const entries = new Map(catalogueEntries().map((entry) => [entry.id, entry]));

/** Inputs by name from a function's own arguments: the one record, or each under its name. */
export function named(
  { takes, declared }: CatalogueEntry,
  given: readonly unknown[],
): Record<string, unknown> {
  if (takes === "fields") return given[0] as Record<string, unknown>;
  return Object.fromEntries(declared.map((name, i) => [name, given[i]]));
}

/** Good inputs of an entry; undefined where its example gives none that are plain data. */
export function goodInputs(id: string): Record<string, unknown> | undefined {
  const entry = entries.get(id);
  const given = args[entry?.room ?? ""]?.[entry?.name ?? ""];
  return entry === undefined || given === undefined ? undefined : named(entry, structuredClone(given));
}
