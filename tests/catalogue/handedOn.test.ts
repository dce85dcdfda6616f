/**
 * What an evaluation and the list of entries hand on from their parts, of every worked example: warnings, cautions and where a figure stands
 * in print are those of the function's own answer and of the entry's note, all of them and no others.
 */
import { catalogueEntries, evaluate, sheetFunctions } from "electroheat/catalogue";
import { describe, expect, it } from "vitest";
import { entryOf } from "../../src/catalogue/entries/index.ts";
import { factsOf } from "../../src/catalogue/facts.ts";
import { caught } from "../support/caught.ts";
import { examples } from "../support/examples.ts";

const entries = catalogueEntries();
const listed = new Set(["source", "system", "edition", "table", "row", "column", "kind", "provenance"]);
/** Who decides: in a sentence, or with the standard that he goes by. */
type Deferral = string | { readonly note: string };
type Plain = Readonly<Record<string, unknown>>;

const answers = entries.flatMap(({ id, room, name }) =>
  (room === "bench" ? [] : examples(room, name)).flatMap((whole) => {
    const answer = evaluate(id, whole);
    return answer.ok ? [{ id, answer, value: answer.value as Plain }] : [];
  }),
);
const records = answers.filter(({ value }) => typeof value === "object" && value !== null);

describe("an answer", () => {
  it("is had of most", () => {
    expect(new Set(answers.map(({ id }) => id)).size).toBeGreaterThan(0.7 * entries.length);
  });

  it("has the cautions of the entry, then those of the result, then who decides", () => {
    const odd = answers.filter(({ id, answer, value }) => {
      const own = entryOf(id)?.note.cautions ?? [];
      const { cautions = [], deferral } = (value ?? {}) as { cautions?: string[]; deferral?: Deferral };
      const all = [
        ...own,
        ...cautions,
        ...[typeof deferral === "object" ? deferral.note : (deferral ?? [])].flat(),
      ];
      return JSON.stringify(answer.cautions) !== JSON.stringify(all);
    });
    expect(odd.map(({ id }) => id)).toEqual([]);
    expect(records.filter(({ value }) => "deferral" in value).length).toBeGreaterThan(5);
    const ventilation = answers.find(({ id }) => id === "process.safetyVentilation");
    expect(ventilation?.answer.cautions.at(-1)).toMatch(/authority having jurisdiction.*govern/);
  });

  it("has the warnings of the result", () => {
    for (const { id, answer, value } of answers)
      expect(answer.warnings, id).toEqual((value as { warnings?: unknown } | null)?.warnings ?? []);
    expect(answers.filter(({ answer }) => answer.warnings.length > 0).length).toBeGreaterThan(5);
  });

  it("has for a basis that of the result, or what the result says of its place in print", () => {
    const own = records.filter(({ value }) => value["basis"]);
    for (const { id, answer, value } of own) expect(answer.basis, id).toEqual(value["basis"]);
    const others = records.filter(({ value }) => !value["basis"] && !Array.isArray(value));
    for (const { id, answer, value } of others) {
      const said = Object.entries(value).filter(([key]) => listed.has(key));
      const names = said.map(([key]) => key);
      const isPlaced = names.includes("source") || (names.includes("edition") && names.includes("table"));
      expect(answer.basis, id).toEqual(isPlaced ? Object.fromEntries(said) : null);
    }
    expect(own.length).toBeGreaterThan(5);
    expect(others.filter(({ answer }) => answer.basis !== null).length).toBeGreaterThan(5);
  });
});

describe("the list of entries", () => {
  it("says all that is noted of each", () => {
    for (const entry of entries) {
      const {
        tex,
        method,
        text,
        cautions = [],
        sheetName = entry.name,
        kind,
      } = entryOf(entry.id)?.note ?? {};
      const said = { tex: entry.tex, method: entry.method, text: entry.text };
      expect(said, entry.id).toEqual({ tex, method, text });
      expect([entry.cautions, entry.sheetName, entry.kind], entry.id).toEqual([cautions, sheetName, kind]);
    }
    for (const field of ["tex", "method", "text"] as const)
      expect(entries.filter((entry) => entry[field] !== undefined).length, field).toBeGreaterThan(0);
  });

  it("has the facts of the rooms there are, and of no other", () => {
    const { code, argument, message } = caught(() => factsOf("attic"));
    expect([code, argument]).toEqual(["unknown-name", "room"]);
    expect(message).toBe('room: "attic" is not allowed; expected a described room');
  });
});

describe("a path into a result", () => {
  const answerOf = (name: string, ...cells: unknown[]) =>
    sheetFunctions()
      .find((one) => one.name === name)
      ?.answer(...cells);

  it("that leads nowhere is an unknown name, also where it leads through nothing", () => {
    expect(answerOf("starWithOpenElements", 2, 1, "heat")).toMatchObject({
      value: null,
      code: "unknown-name",
    });
    // All of them open: there is no survivor.
    expect(answerOf("starWithOpenElements", 1, 1, "survivorPower")?.value).toBeNull();
    expect(answerOf("starWithOpenElements", 1, 1, "survivorPower.half")).toEqual({
      value: null,
      code: "unknown-name",
      status: 'field: "survivorPower.half" is not allowed; expected nothing further',
    });
  });

  it("stands in one cell", () => {
    expect(answerOf("starWithOpenElements", 2, 1, new Array(100_001))).toMatchObject({
      status: 'field: "more" is not allowed; expected at most 100000 values',
    });
  });
});
