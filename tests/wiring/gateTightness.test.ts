/**
 * The gate of a user's edition, field by field and cell by cell. What an edition must have comes from its type (docstrings and facts),
 * the order of its figures from physics: an ampacity does not fall with the size, a factor does not rise with the ambient or the
 * number of conductors, and bands, ratings and points rise.
 */
import { editionIssues, editionJsonSchema } from "electroheat/wiring";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { resolved } from "../../src/catalogue/facts.ts";
import { at } from "../support/examples.ts";
import { partsIn } from "../support/places.ts";
import { spoiled } from "../support/spoil.ts";
import { ours, oursIec } from "./wholeEditions.ts";

const EDITIONS = [
  ["North America", ours, "wiring.NorthAmericanEdition"],
  ["IEC", oursIec, "wiring.IecEdition"],
] as const;
/** What may be null, and where, by the docstrings: no lower end, no upper end, no rule. */
const MAY_BE_NULL = ["from", "to", "subdivision", "subdivided load", "subdivided device"];
const REMARKS = ["read", "provenance", "remark", "condition"];
const TEXTS = ["size", "material", "equipment", "clause", "subdivision"];

const found = (edition: object) => editionIssues(edition).map(({ code, path }) => `${code} ${path}`);

describe.each(EDITIONS)("%s", (system, edition, type) => {
  const shape = resolved({ ref: type });
  const schema = z.fromJSONSchema(editionJsonSchema({ system }) as never);
  /** Fields down to the columns: what a type lets one leave out is left out of the edition as well. */
  const required = partsIn(edition, shape, "").filter(
    ({ path, there }) => there && !/\.rows\.|\.columns\.|baseConditions\.|cautions/.test(path),
  );
  const optional = (path: string) =>
    /^(?:[a-z]+|.*\.labelProvenance|.*\.note|.*\.transcribed)$/i.test(path) &&
    !["name", "system"].includes(path);

  const families = [...new Set(required.map(({ path }) => path.replace(/\..*/, "")))];

  it.each(families)(
    "misses every field of %s that its type asks for, by its path, and so does the schema",
    (family) => {
      for (const { path } of required) {
        // An item of a list cannot be left out of it.
        if (/\.\d+$/.test(path) || path.replace(/\..*/, "") !== family) continue;
        const without = spoiled(edition, path, undefined);
        if (optional(path)) {
          expect(found(without), path).toEqual([]);
          continue;
        }
        expect(found(without), path).toContain(`missing edition.${path}`);
        expect(schema.safeParse(JSON.parse(JSON.stringify(without))).success, path).toBe(false);
      }
    },
  );

  it("has fields enough for that to be worth asking", () => {
    expect(required.filter(({ path }) => !optional(path)).length).toBeGreaterThan(60);
  });

  it.each(families)("calls another kind of value in %s so", (family) => {
    for (const { path } of required) {
      if (/\.\d+$/.test(path) || optional(path) || path.replace(/\..*/, "") !== family) continue;
      const codes = found(spoiled(edition, path, 5)).filter((one) => one.endsWith(` edition.${path}`));
      if (typeof at(edition, path) === "number") expect(codes, path).toEqual([]);
      else expect(["wrong-type", "unknown-name"], path).toContain(codes[0]?.split(" ")[0]);
    }
  });

  const tables = required.filter(({ path }) => path.endsWith(".table")).map(({ path }) => path);

  it.each(tables)("takes no column of %s that it does not know, none twice and none away", (path) => {
    const columns = at(edition, `${path}.columns`) as readonly { readonly name: string }[];
    const [first] = columns;
    const last = columns.length - 1;
    const twice = spoiled(edition, `${path}.columns.${last}.name`, first?.name);
    if (last > 0) expect(found(twice), path).toContain(`duplicate edition.${path}.columns.${last}.name`);
    const away = spoiled(edition, `${path}.columns.0.name`, "read");
    expect(found(away), path).toContain(`missing edition.${path}.columns`);
    for (const name of ["", undefined, 7, "x".repeat(501)])
      expect(found(spoiled(edition, `${path}.columns.0.name`, name)).join(), path).toMatch(
        new RegExp(`(?:missing|wrong-type) edition[.]${path}[.]columns[.]0[.]name`),
      );
    // Insulations and arrangements go by any name; what is a figure or a list of names does not.
    if (/^(?:ambient|grouping)/.test(path) && system === "IEC") return;
    const unknown = spoiled(edition, `${path}.columns.0.name`, "sizes");
    expect(found(unknown), path).toContain(`unknown-name edition.${path}.columns.0.name`);
    expect(schema.safeParse(JSON.parse(JSON.stringify(unknown))).success, path).toBe(false);
  });

  it.each(tables)(
    "takes no cell of %s that is no figure, and none that stands in the wrong order",
    (path) => {
      const columns = at(edition, `${path}.columns`) as readonly { readonly name: string }[];
      const rows = at(edition, `${path}.rows`) as readonly (readonly unknown[])[];
      const family = path.replace(/\..*/, "");
      columns.forEach(({ name }, j) => {
        if (REMARKS.includes(name)) return;
        const cell = `${path}.rows.${rows.length - 1}.${j}`;
        const codes = (value: unknown) =>
          found(spoiled(edition, cell, value))
            .filter((one) => one.endsWith(` edition.${cell}`))
            .map((one) => one.split(" ")[0]);
        const isText = TEXTS.includes(name) && !(system === "IEC" && name === "size");
        const isKey =
          isText ||
          name === "size" ||
          MAY_BE_NULL.includes(name) ||
          ["rating", "limit", "percent", "factor", "temperature", "circuits", "ambient"].includes(name);
        if (isText) expect(codes(" "), cell).toEqual(["wrong-type"]);
        else
          for (const wrong of ["12", Number.NaN, true]) expect(codes(wrong), cell).toContain("not-a-number");
        if (isKey && !MAY_BE_NULL.includes(name)) expect(codes(null), cell).toEqual(["missing"]);
        if (!isKey) {
          expect(codes(null), cell).toEqual([]);
          for (const wrong of [0, -1]) expect(codes(wrong), cell).toContain("out-of-range");
        }
        const before = rows
          .slice(0, -1)
          .map((row) => row[j])
          .filter((one) => typeof one === "number")
          .at(-1);
        if (before === undefined || isText) return;
        const strict =
          ["rating", "circuits", "ambient", "to", "from", "size"].includes(name) && family !== "heatingRules";
        const rises = ["ampacity", "capacity"].includes(family) && !isKey;
        const falls = ["ambient", "grouping"].includes(family) && !isKey;
        if (strict) {
          expect(codes(before), cell).toContain("inconsistent");
        }
        if (rises || falls) expect(codes(before), cell).toEqual([]);
        if (rises) {
          expect(codes(before * 0.999), cell).toEqual(["inconsistent"]);
          expect(codes(before * 1.001), cell).toEqual([]);
        }
        if (falls) {
          expect(codes(before * 1.001), cell).toEqual(["inconsistent"]);
          expect(codes(before * 0.999), cell).toEqual([]);
        }
      });
      const short = spoiled(edition, `${path}.rows.0`, (rows[0] as unknown[]).slice(1));
      expect(found(short), path).toContain(`wrong-type edition.${path}.rows.0`);
    },
  );
});
