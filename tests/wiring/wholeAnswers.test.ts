/**
 * What every answer says about itself, worked out a second time from its cells and from the files under shared/: the deciding cell first,
 * the weakest kind and provenance, where each figure stands, in whose words. Over all functions, their worked examples and these with
 * one thing changed.
 */
import * as wiring from "electroheat/wiring";
import { type CodeResult, DEFERRAL, type TableCell } from "electroheat/wiring";
import { describe, expect, it } from "vitest";
import { factsOf, resolved } from "../../src/catalogue/facts.ts";
import type { Shape } from "../../src/catalogue/shape.ts";
import { CHANGES, examples } from "../support/examples.ts";
import { jsonFiles, readJson, type Table } from "../support/shared.ts";
import { answers, codeResultsIn } from "./answers.ts";

const FIGURE = "Rests on a figure that was not read in print: confirm it in the edition named before use.";
const LABEL =
  "The number of a table or clause was not read in print, the figures were: look it up in the edition named.";
const OWN = "Rests on a table brought by the user; this library has not seen its source.";

const tables = jsonFiles("shared/tables").map((path) => readJson(path) as Table);
/** Clauses by the years of the column they are printed in. */
const clauses = tables.find(({ id }) => id === "nec-clauses") as Table;

/** How a figure of a row was found: its own word, or the list of columns read, before that of the table. */
function provenanceOf(table: Table, row: Table["rows"][number], column: string): unknown {
  const at = (name: string) => row[table.columns.findIndex((one) => one.name === name)];
  if (
    String(at("read") ?? "")
      .split(", ")
      .includes(column)
  )
    return "seen";
  return at("provenance") ?? table.provenance;
}

/** Whether a cell is one of a file: its figure, unit, source, kind and provenance, in a row that its name tells. */
function isHeld(cell: TableCell): boolean {
  return tables.some((table) => {
    const at = table.columns.findIndex(({ name, unit }) => name === cell.column && unit === cell.unit);
    if (table.source !== cell.source || at < 0 || table.kind !== cell.kind) return false;
    return table.rows.some(
      (row, i) =>
        row[at] === cell.value &&
        provenanceOf(table, row, cell.column) === cell.provenance &&
        // Both ends of a band, where the row goes by them.
        ["from", "to"].every((end) => {
          const edge = row[table.columns.findIndex(({ name }) => name === end)];
          return typeof edge !== "number" || !/^\d/.test(cell.row) || cell.row.includes(String(edge));
        }) &&
        // The only row, its number, or a key of it.
        [...(table.rows.length === 1 ? [""] : []), `row ${i + 1}`, ...row.slice(0, 3)].some(
          (key) => key !== null && cell.row.includes(String(key)),
        ),
    );
  });
}

/** Not from a file: worked out by an equation or a law, a rule of the trade's own words, what the user says, a factor of a clause. */
const isOwnWord = ({ provenance, kind, row, column }: TableCell): boolean =>
  provenance === "derived" ||
  kind === "user table" ||
  row === "IB" ||
  row === "above the row before" ||
  column === "at least" ||
  column === "at most" ||
  (column === "factor" && row === "unmarked, above 13.3 A") ||
  column === "per kilovolt";

function expectWhole(answer: CodeResult<unknown>, what: string): void {
  const { cells, cautions } = answer;
  const [first] = cells as readonly [TableCell];
  for (const field of ["system", "edition", "table", "row", "column"] as const)
    expect(answer[field], what).toBe(first[field]);
  const has = (field: keyof TableCell, value: string) => cells.some((cell) => cell[field] === value);
  const kinds = ["user table", "common practice", "published"] as const;
  expect(answer.kind, what).toBe(kinds.find((kind) => has("kind", kind)));
  const figure = has("provenance", "memory");
  const label = has("labelProvenance", "memory");
  const found = figure || label ? "memory" : has("provenance", "derived") ? "derived" : "seen";
  expect(answer.provenance, what).toBe(found);
  const notes = [
    ...(answer.kind === "user table" ? [OWN] : []),
    ...(figure ? [FIGURE] : []),
    ...(label && !figure ? [LABEL] : []),
  ];
  expect(cautions.slice(0, notes.length), what).toEqual(notes);
  for (const note of [FIGURE, LABEL, OWN])
    expect(cautions.includes(note), `${what}: ${note}`).toBe(notes.includes(note));
  expect(new Set(cautions).size, what).toBe(cautions.length);
  expect(answer.baseConditions.length, `${what}: base conditions`).toBeGreaterThan(0);
  for (const words of [...answer.baseConditions, ...cautions, answer.governing, answer.table, answer.row])
    expect(words, what).toMatch(/\S/);
  expect(answer.deferral).toBe(DEFERRAL);
  for (const cell of cells)
    if (!isOwnWord(cell)) expect(isHeld(cell), `${what}: ${JSON.stringify(cell)}`).toBe(true);
}

const exported = wiring as unknown as Record<string, (input: never) => unknown>;
const functions = Object.keys(factsOf("wiring").functions).filter(
  (name) => examples("wiring", name).length > 0 && factsOf("wiring").functions[name]?.takes === "fields",
);

/** Unit of an answer by the type of its value: 1 of a ratio, none of a name. */
function unitOf(name: string): string | undefined {
  const output = resolved(factsOf("wiring").functions[name]?.output as Shape);
  if (typeof output !== "object" || !("record" in output) || !("cells" in output.record)) return undefined;
  const value = resolved(output.record["value"] as Shape);
  return typeof value === "object" && "number" in value ? value.number || "1" : "";
}

describe.each(functions)("%s", (name) => {
  it.each(CHANGES)("says whence each figure is and how far to trust it, whatever is done to %s", (change) => {
    for (const [input, answer] of answers(exported[name] as (input: object) => unknown, change))
      for (const [i, one] of codeResultsIn(answer).entries()) {
        expectWhole(one, `${i} ${JSON.stringify(input)}`);
        if (i === 0 && unitOf(name) !== undefined) expect(one.unit, JSON.stringify(input)).toBe(unitOf(name));
      }
  });
});

it("names a table as the clauses of its edition do, with the provenance of that name", () => {
  const year = (edition: string) => Number(edition.slice(4));
  const column = (edition: string) =>
    year(edition) < 2011 ? "2008" : year(edition) < 2020 ? "2011" : edition.slice(4);
  const at = (name: string) => clauses.columns.findIndex((one) => one.name === name);
  let asked = 0;
  for (const edition of ["NEC 2008", "NEC 2011", "NEC 2014", "NEC 2017", "NEC 2020", "NEC 2023"] as const) {
    const count = wiring.conductorCountFactor({ edition, currentCarryingConductors: 5 });
    const device = wiring.standardDevice({ edition, current: 20 as never, direction: "up" });
    const raceway = wiring.tableAmpacity({
      edition,
      installation: "raceway",
      size: "6 AWG",
      material: "copper",
      insulationTemperature: 75 as never,
    });
    const unmarked = wiring.terminationTemperature({ edition, circuitRating: 20 as never });
    for (const [provision, { cells }] of [
      ["conductor count", count],
      ["standard ratings", device],
      ["raceway", raceway],
      ["terminations", unmarked],
    ] as const) {
      const row = clauses.rows.find(([first]) => first === provision) as Table["rows"][number];
      expect([cells[0]?.table, cells[0]?.labelProvenance], `${provision} ${edition}`).toEqual([
        row[at(column(edition))],
        row[at("provenance")],
      ]);
      asked++;
    }
  }
  expect(asked).toBe(24);
});
