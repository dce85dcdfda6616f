/** The data others read: shape, names, and no figure without a source. */
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { readText, sourceFiles } from "./support/house.ts";
import { jsonFiles, readJson, sourceSchema, tableSchema, vectorFiles } from "./support/shared.ts";

const sources = z.array(sourceSchema).parse(readJson("shared/sources.json"));
const sourceIds = new Set(sources.map((source) => source.id));
const tables = jsonFiles("shared/tables").map((path) => ({ path, data: readJson(path) }));
const files = vectorFiles();
const vectors = files.flatMap((file) => file.vectors);

const repeated = (names: readonly string[]): string[] => names.filter((name, i) => names.indexOf(name) !== i);

describe("sources", () => {
  it("are sorted by id, each id once", () => {
    const ids = sources.map((source) => source.id);
    expect(repeated(ids)).toEqual([]);
    expect(ids).toEqual([...ids].sort());
  });

  it("say of our own work that it is derived, and of common practice that nothing is published", () => {
    for (const { id, kind, provenance, note } of sources) {
      if (kind === "derivation") expect(provenance, id).toBe("derived");
      expect(provenance === "common practice", id).toBe(kind === "common practice");
      if (kind === "common practice") expect(note, id).toMatch(/no published source/i);
      // What was read was written by someone else.
      if (provenance === "seen")
        expect(["derivation", "definition", "common practice"], id).not.toContain(kind);
    }
  });

  it("of books and papers name the edition or the year, or say that it was not seen", () => {
    const bare = sources.filter(
      ({ kind, edition, year, note }) =>
        ["textbook", "handbook", "paper", "standard", "maker data", "database"].includes(kind) &&
        edition === undefined &&
        year === undefined &&
        !/edition not seen|not dated|not name the book|carries no edition/i.test(note ?? ""),
    );
    expect(bare.map(({ id }) => id)).toEqual([]);
  });

  it("are all used: by a vector, a table or the code", () => {
    const used = new Set(vectors.map((vector) => vector.source));
    const code = [...sourceFiles, ...jsonFiles("shared/tables")].map(readText).join("\n");
    const unused = sources.filter(({ id }) => !used.has(id) && !code.includes(`"${id}"`));
    expect(unused.map(({ id }) => id)).toEqual([]);
  });
});

describe("tables", () => {
  it.each(tables)("$path has the shape, and a source that exists", ({ path, data }) => {
    const table = tableSchema.parse(data);
    expect(path).toBe(`shared/tables/${table.id}.json`);
    expect([...sourceIds]).toContain(table.source);
  });

  it("have ids used once", () => {
    expect(repeated(tables.map(({ data }) => (data as { id: string }).id))).toEqual([]);
  });
});

describe("vectors", () => {
  it("have ids used once over all files", () => {
    expect(repeated(vectors.map((vector) => vector.id))).toEqual([]);
  });

  it("name a source that exists", () => {
    const orphans = vectors.filter((vector) => !sourceIds.has(vector.source));
    expect(orphans.map(({ id, source }) => `${id}: ${source}`)).toEqual([]);
  });

  it("lie in the folder of the room they call first", () => {
    const strays = files.filter(({ path, vectors: inside }) => {
      const folder = path.split("/")[2];
      return !inside.some(({ call }) => call.startsWith(`${folder}.`));
    });
    expect(strays.map(({ path }) => path)).toEqual([]);
  });

  it("rest on a published source or say how they were derived or cross-checked", () => {
    const bare = vectors.filter(
      ({ origin, crossCheck, note }) =>
        origin !== "published" && crossCheck === undefined && note === undefined,
    );
    expect(bare.map(({ id }) => id)).toEqual([]);
  });
});
