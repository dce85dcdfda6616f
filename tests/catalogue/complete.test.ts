/** Every public calculation has an entry, or a reason for having none; and the generated facts are those of the sources. */
import { catalogueEntries } from "electroheat/catalogue";
import { describe, expect, it } from "vitest";
import { catalogueFacts, fileText } from "../../scripts/catalogue-facts.mjs";
import { DESCRIBED } from "../../scripts/rooms.mjs";
import type { RoomFacts } from "../../src/catalogue/shape.ts";
import { floors, readText, root } from "../support/house.ts";
import { EXCEPTIONS, PENDING } from "./exceptions.ts";

const entries = catalogueEntries();
const ids = new Set(entries.map(({ id }) => id));
const functionsOf = (room: string): string[] => {
  const facts = JSON.parse(readText(`src/catalogue/facts/${room}.json`)) as RoomFacts;
  return Object.keys(facts.functions).map((name) => `${room}.${name}`);
};
const lacking = (room: string): string[] =>
  functionsOf(room).filter((id) => !ids.has(id) && EXCEPTIONS[id] === undefined);

describe("completeness", () => {
  it("looks at every room below the catalogue", () => {
    const below = Object.keys(floors).filter((room) => (floors[room] ?? 99) < (floors["catalogue"] ?? 0));
    expect([...DESCRIBED].sort()).toEqual(below.sort());
  });

  it.each(DESCRIBED.filter((room) => !PENDING.includes(room)))(
    "%s: every function has an entry or a reason",
    (room) => {
      expect(functionsOf(room).length).toBeGreaterThan(0);
      expect(lacking(room)).toEqual([]);
    },
  );

  it.each([...PENDING])("%s is rightly called pending", (room) => {
    expect(lacking(room)).not.toEqual([]);
  });

  it("gives reasons only for functions that exist and have no entry", () => {
    const all = new Set(DESCRIBED.flatMap(functionsOf));
    expect(Object.keys(EXCEPTIONS).filter((id) => !all.has(id) || ids.has(id))).toEqual([]);
  });

  it("has each entry once, and each sheet name once whatever its capitals", () => {
    expect(ids.size).toBe(entries.length);
    const names = entries.map(({ sheetName }) => sheetName.toLowerCase());
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
    // A sheet name changes the function's own only where another room has taken it.
    const renamed = entries.filter(({ name, sheetName }) => name !== sheetName);
    const shared = renamed.filter(({ name }) => entries.filter((one) => one.name === name).length > 1);
    expect(shared).toEqual(renamed);
  });
});

describe("the generated facts", () => {
  const fresh = catalogueFacts(root);

  it.each([...DESCRIBED])("%s are up to date: else run `npm run facts`", (room) => {
    expect(readText(`src/catalogue/facts/${room}.json`)).toBe(fileText(fresh[room]?.facts));
  });

  it("come with words for every input of every entry", () => {
    const silent = entries.flatMap(({ id, room, name, inputs }) => {
      const prose = fresh[room]?.prose;
      const told = prose?.functions[name];
      if (told === undefined || told.purpose === "" || told.returns === "") return [id];
      const typed = Object.values(prose?.shapes ?? {});
      return (
        inputs
          .filter((input) => !Object.keys(told.inputs).some((path) => path.split(".")[0] === input.name))
          // The fields of a named type are described there.
          .filter((input) => !typed.some((fields) => (fields[input.name] ?? "") !== ""))
          .map((input) => `${id} ${input.name}`)
      );
    });
    expect(silent).toEqual([]);
  });

  it("come with a formula in words for every entry that has one in TeX", () => {
    const silent = entries.filter(
      ({ room, name, tex, text }) =>
        tex !== undefined && text === undefined && fresh[room]?.prose.functions[name]?.formula === undefined,
    );
    expect(silent.map(({ id }) => id)).toEqual([]);
  });
});
