/**
 * What the reader of plain data says, to the word and the figure, and what it lets through exactly at a limit. Shapes and notes are made
 * here, so that what is expected follows from them.
 */
import { evaluate, sheetFunctions, sheetStatus, sheetValue } from "electroheat/catalogue";
import { describe, expect, it } from "vitest";
import type { ValueNote } from "../../src/catalogue/note.ts";
import { rangeWords, readFields, shapeWords } from "../../src/catalogue/read.ts";
import type { Shape } from "../../src/catalogue/shape.ts";
import { structureFrom } from "../../src/catalogue/sheet/blocks.ts";
import { caught } from "../support/caught.ts";

const read = (shape: Shape, value: unknown, note: ValueNote = {}, key = "x"): unknown =>
  readFields({ [key]: shape }, { x: note }, { x: value }, "", { left: 1000 })["x"];
const said = (shape: Shape, value: unknown, note: ValueNote = {}): string => {
  const { code, message } = caught(() => read(shape, value, note));
  return `${code}: ${message}`;
};
const ohm: Shape = { number: "Ω" };
const number: Shape = { number: "" };

describe("a number", () => {
  const ranges: readonly (readonly [ValueNote, string, readonly number[], readonly number[]])[] = [
    [{}, "a finite number", [-1e300, 0, 1e300], []],
    [{ min: 2 }, "2 or more", [2, 3], [1.999]],
    [{ max: 5 }, "at most 5", [5, -9], [5.001]],
    [{ above: 0 }, "more than 0", [5e-324], [0, -1]],
    [{ below: 1 }, "less than 1", [0.999], [1, 2]],
    [{ min: 2, max: 5 }, "2 to 5", [2, 5], [1.9, 5.1]],
    [{ above: 0, max: 5 }, "more than 0 and at most 5", [5], [0, 5.1]],
    [{ min: 0, below: 1 }, "0 or more and less than 1", [0, 0.9], [1, -0.1]],
    [{ above: 0, below: 1 }, "more than 0 and less than 1", [0.5], [0, 1]],
    [{ is: "count" }, "a whole number", [3, -3, 0], [0.5, 1e300]],
    [{ is: "count", min: 1 }, "a whole number, 1 or more", [1], [0, 1.5]],
    [{ is: "count", min: 1, max: 9 }, "a whole number from 1 to 9", [1, 9], [0, 10, 1.5]],
    [{ is: "ratio", min: 0 }, "0 or more", [0.5], [-1]],
  ];
  it.each(ranges)("%j is %s", (note, words, allowed, refused) => {
    expect(rangeWords(note)).toBe(words);
    for (const value of allowed) expect(read(number, value, note)).toBe(value);
    for (const value of refused)
      expect(said(number, value, note)).toBe(`out-of-range: x: ${value} is not allowed; expected ${words}`);
    expect(said(number, Number.NaN, note)).toBe(`not-a-number: x: NaN is not allowed; expected ${words}`);
    expect(said(number, " ", note)).toBe(`missing: x: missing; expected ${words}`);
  });

  it("has the unit of its tag, or of its note; text is read only for a tag", () => {
    const note = { min: 2 };
    expect(said(ohm, 1, note)).toBe("out-of-range: x: 1 Ω is not allowed; expected 2 or more Ω");
    expect(said(ohm, "1 kΩ", { max: 5 })).toBe(
      'out-of-range: x: "1 kΩ" is not allowed; expected at most 5 Ω',
    );
    expect(said(ohm, true)).toBe("not-a-number: x: true is not allowed; expected a finite number Ω");
    expect(said(number, 1, { ...note, unit: "%" })).toBe(
      "out-of-range: x: 1 % is not allowed; expected 2 or more %",
    );
    expect(said(number, 1, { ...note, is: "degrees" })).toBe(
      "out-of-range: x: 1 ° is not allowed; expected 2 or more °",
    );
    expect(said(number, "3 Ω", note)).toBe('not-a-number: x: "3 Ω" is not allowed; expected 2 or more');
    expect(read(ohm, "3 kΩ")).toBe(3000);
    expect(Object.is(read(ohm, -0), 0)).toBe(true);
  });
});

describe("other shapes", () => {
  const record: Shape = { record: { a: ohm, "b?": "text" } };
  it.each<readonly [Shape, string, unknown, string]>([
    ["text", "text", 5, "wrong-type: x: 5 is not allowed; expected text of at most 1000 characters"],
    ["text", "text", "", "missing: x: missing; expected text of at most 1000 characters"],
    ["flag", "true or false", "yes", 'wrong-type: x: "yes" is not allowed; expected true or false'],
    ["flag", "true or false", null, "missing: x: missing; expected true or false"],
    ["null", "null", 5, "wrong-type: x: 5 is not allowed; expected null"],
    [
      "opaque",
      "a value that plain data cannot be",
      null,
      "wrong-type: x: null is not allowed; expected a value that plain data cannot be",
    ],
    [
      { names: ["star", "delta"] },
      '"star" or "delta"',
      "zigzag",
      'unknown-name: x: "zigzag" is not allowed; expected one of star, delta',
    ],
    [
      { names: ["star", "delta"] },
      '"star" or "delta"',
      " ",
      "missing: x: missing; expected one of star, delta",
    ],
    [{ values: [1, 3] }, "1 or 3", 2, "out-of-range: x: 2 is not allowed; expected 1 or 3"],
    [{ values: [1, 3] }, "1 or 3", "1", 'not-a-number: x: "1" is not allowed; expected a finite number'],
    [{ list: ohm }, "a list", 5, "wrong-type: x: 5 is not allowed; expected a list"],
    [{ list: ohm }, "a list", "", "missing: x: missing; expected a list"],
    [{ list: ohm }, "a list", [5, -1, "y"], 'x.2: "y"'],
    [
      { tuple: [ohm, ohm] },
      "a list of 2",
      {},
      "wrong-type: x: an object is not allowed; expected a list of 2",
    ],
    [
      { tuple: [ohm, ohm] },
      "a list of 2",
      [1, 2, 3],
      'inconsistent: x: "3" is not allowed; expected a list of 2',
    ],
    [{ tuple: [ohm, ohm] }, "a list of 2", [1], "missing: x.1: missing; expected a finite number Ω"],
    [
      { map: ohm },
      "a record of names and values",
      [1],
      "wrong-type: x: an array is not allowed; expected a record of names and values",
    ],
    [{ map: ohm }, "a record of names and values", { k: true }, "not-a-number: x.k: true"],
    [record, "a record with a, b", 5, "wrong-type: x: 5 is not allowed; expected a record with a, b"],
    [record, "a record with a, b", null, "missing: x: missing; expected a record with a, b"],
    [record, "a record with a, b", {}, "missing: x.a: missing; expected a finite number Ω"],
    [
      record,
      "a record with a, b",
      { a: 1, c: 2 },
      "unknown-field: x.c: 2 is not allowed; expected one of a, b",
    ],
    [
      record,
      "a record with a, b",
      { a: 1, "": 2 },
      'unknown-field: x."": 2 is not allowed; expected one of a, b',
    ],
    [{ either: [ohm, { names: ["open"] }] }, 'a finite number Ω, or "open"', "shut", "x: "],
    [
      { either: [ohm, { names: ["open"] }] },
      'a finite number Ω, or "open"',
      null,
      'missing: x: missing; expected a finite number Ω, or "open"',
    ],
    [
      { either: [ohm, { names: ["open"] }] },
      'a finite number Ω, or "open"',
      [5],
      'not-a-number: x: an array is not allowed; expected a finite number Ω, or "open"',
    ],
    [
      { either: [{ names: ["all"] }, { list: "text" }] },
      '"all", or a list',
      "some",
      'unknown-name: x: "some" is not allowed; expected "all", or a list',
    ],
    [
      { either: [{ names: ["all"] }, { list: "text" }] },
      '"all", or a list',
      5,
      'wrong-type: x: 5 is not allowed; expected "all", or a list',
    ],
  ])("%j: %s", (shape, words, value, message) => {
    expect(shapeWords(shape, {})).toBe(words);
    expect(said(shape, value)).toContain(message);
  });

  it("a list has as many items as its note says, both ends allowed", () => {
    const of = (items: number, note: ValueNote) => () =>
      read({ list: number }, new Array(items).fill(1), note);
    const note = { least: 2, most: 3 };
    for (const items of [2, 3]) expect(of(items, note)()).toHaveLength(items);
    expect(caught(of(1, note)).message).toBe("x: 1 is not allowed; expected 2 to 3 in the list");
    expect(caught(of(4, note)).message).toBe("x: 4 is not allowed; expected 2 to 3 in the list");
    expect(caught(of(4, note)).code).toBe("out-of-range");
    expect(caught(of(0, { least: 1 })).message).toBe("x: missing; expected at least 1 in the list");
    expect(of(0, {})()).toEqual([]);
    expect(read({ list: number }, [0, 2], { each: { min: 0 } })).toEqual([0, 2]);
    expect(said({ list: number }, [0, -2], { each: { min: 0 } })).toBe(
      "out-of-range: x.1: -2 is not allowed; expected 0 or more",
    );
    expect(said({ tuple: [number] }, [-2], { each: { min: 0 } })).toBe(
      "out-of-range: x.0: -2 is not allowed; expected 0 or more",
    );
    expect(said({ map: number }, { k: -2 }, { each: { min: 0 } })).toBe(
      "out-of-range: x.k: -2 is not allowed; expected 0 or more",
    );
    expect(said({ record: { k: number } }, { k: -2 }, { fields: { k: { min: 0 } } })).toBe(
      "out-of-range: x.k: -2 is not allowed; expected 0 or more",
    );
  });

  it("text may be of a thousand characters, and no more", () => {
    const long = "x".repeat(1000);
    expect(read("text", long)).toBe(long);
    expect(said("text", `${long}x`)).toContain("malformed-text: x: ");
    // So many blanks are no blank: they are not looked through.
    expect(said("text", " ".repeat(1001))).toContain("malformed-text: x: ");
    expect(said("text", " ".repeat(1000))).toContain("missing: x: ");
  });

  it("what may be left out may be blank, and null stands where null is meant", () => {
    const shapes = { "a?": ohm, "b?": { either: [ohm, "null"] } } as const;
    const of = (value: object) => readFields(shapes, undefined, value, "", { left: 9 });
    expect(of({})).toEqual({});
    expect(of({ a: null, b: null })).toEqual({ b: null });
    expect(of({ a: "", b: " " })).toEqual({});
    expect(of({ a: 1, b: 2 })).toEqual({ a: 1, b: 2 });
  });

  it("of several that a field tells apart the one that is named is read", () => {
    const either: Shape = {
      either: [
        { record: { by: { names: ["volume"] }, flow: ohm } },
        { record: { by: { names: ["mass", "weight"] }, rate: number } },
      ],
    };
    expect(read(either, { by: "weight", rate: 5 })).toEqual({ by: "weight", rate: 5 });
    expect(said(either, { by: "weight", flow: 5 })).toBe(
      "unknown-field: x.flow: 5 is not allowed; expected one of by, rate",
    );
    expect(said(either, { by: "length" })).toBe(
      'unknown-name: x.by: "length" is not allowed; expected one of volume, mass, weight',
    );
    expect(said(either, { by: " " })).toBe("missing: x.by: missing; expected one of volume, mass, weight");
    expect(said(either, 5)).toBe(
      "wrong-type: x: 5 is not allowed; expected a record with by, flow, or a record with by, rate",
    );
  });

  it("of several that nothing tells apart the error is that of the one read farthest", () => {
    const either: Shape = {
      either: [{ record: { a: ohm } }, { record: { c: { record: { d: ohm } } } }],
    };
    for (const shapes of [either.either, [...either.either].reverse()])
      expect(said({ either: shapes }, { c: { d: true } })).toBe(
        "not-a-number: x.c.d: true is not allowed; expected a finite number Ω",
      );
  });

  it("an open circuit is a name, also in another spelling; a resistance beside it keeps its range", () => {
    const either: Shape = { either: [ohm, { names: ["open"] }] };
    for (const open of ["open", "OL"]) expect(read(either, open)).toBe("open");
    expect(read(either, "5 Ω", { above: 0 })).toBe(5);
    expect(said(either, "0 Ω", { above: 0 })).toBe(
      "out-of-range: x: 0 Ω is not allowed; expected more than 0 Ω",
    );
    // Where it is not among the names it is no resistance.
    expect(() => read(ohm, "OL")).toThrow();
  });

  it("of several that are refused alike the error is that of the first", () => {
    const either: Shape = { either: [{ record: { a: ohm } }, { record: { b: ohm } }] };
    expect(said(either, { c: 1 })).toBe("unknown-field: x.c: 1 is not allowed; expected one of a");
    expect(said({ either: [...either.either].reverse() }, { c: 1 })).toBe(
      "unknown-field: x.c: 1 is not allowed; expected one of b",
    );
  });

  it("of several an unknown name or field counts for less than what is missing in the one that was meant", () => {
    const named = [
      { record: { k: { names: ["a"] }, v: ohm } },
      { record: { k: { names: ["a", "b"] }, w: ohm } },
    ] as const;
    const other = [{ record: { a: ohm } }, { record: { b: ohm, c: ohm } }] as const;
    for (const [shapes, value, path] of [
      [named, { k: "b" }, "x.w"],
      [other, { b: 1 }, "x.c"],
    ] as const)
      for (const either of [[...shapes], [...shapes].reverse()])
        expect(said({ either }, value)).toBe(`missing: ${path}: missing; expected a finite number Ω`);
  });

  it("a quantity in words is one also beside a record, or beside a name of another kind", () => {
    expect(read({ either: [{ record: { a: ohm } }, ohm] }, "5 kΩ")).toBe(5000);
    // Text is no number without a unit.
    expect(said({ either: [{ record: { a: ohm } }, number] }, "5")).toContain("not-a-number: x: ");
    expect(read({ either: [{ number: "V" }, { names: ["open"] }] }, "5 V")).toBe(5);
    expect(read({ either: [{ number: "V" }, { names: ["open"] }] }, "open")).toBe("open");
  });

  it("of several a list, a tuple, a flag or one of a few numbers is told by its kind", () => {
    const either: Shape = { either: [{ names: ["all"] }, { list: "text" }] };
    expect([read(either, "all"), read(either, ["a", "b"])]).toEqual(["all", ["a", "b"]]);
    expect(read({ either: [{ tuple: [number, number] }, "flag"] }, [1, 2])).toEqual([1, 2]);
    expect(read({ either: [{ tuple: [number] }, "flag"] }, true)).toBe(true);
    expect(read({ either: [{ values: [1, 3] }, "text"] }, 3)).toBe(3);
    expect(said({ either: [{ values: [1, 3] }, "text"] }, 2)).toContain("wrong-type: x: 2");
    // A text is no unknown name where there are no names.
    expect(said({ either: [{ list: "text" }, "flag"] }, "some")).toBe(
      'wrong-type: x: "some" is not allowed; expected a list, or true or false',
    );
    expect(shapeWords(number, { min: 2 })).toBe("2 or more");
    expect(shapeWords(ohm, { min: 2 })).toBe("2 or more Ω");
  });

  it("values are counted, each once, down to none left", () => {
    const of = (left: number) => readFields({ x: { list: number } }, {}, { x: [1, 2] }, "", { left });
    // The list and its two items.
    expect(of(3)).toEqual({ x: [1, 2] });
    expect(caught(() => of(2)).message).toBe('x.1: "more" is not allowed; expected at most 1000000 values');
  });

  it("only data of its own is read: no symbol, no computed field, no class, no holes", () => {
    const shape: Shape = { map: number };
    expect(said(shape, { [Symbol("s")]: 1 })).toBe(
      "unknown-field: x: Symbol(s) is not allowed; expected no such field",
    );
    expect(said(shape, Object.defineProperty({}, "k", { get: () => 1, enumerable: true }))).toBe(
      'wrong-type: x.k: "a computed field" is not allowed; expected plain data',
    );
    expect(said(shape, new Map())).toContain("expected a record of names and values");
    expect(read(shape, Object.create(null))).toEqual({});
    expect(said({ list: number }, new Array(2))).toBe("missing: x.0: missing; expected a finite number");
    expect(said({ list: number }, new Array(100_001))).toBe(
      'out-of-range: x: "more" is not allowed; expected at most 100000 values',
    );
    expect(caught(() => readFields({ x: number }, {}, 5, "", { left: 9 })).message).toBe(
      "inputs: 5 is not allowed; expected a record with x",
    );
  });
});

describe("an evaluation", () => {
  it("says what became of an id and of inputs that cannot be read", () => {
    expect(evaluate("circuit.lineCurrents", {})).toEqual({
      ok: false,
      error: {
        code: "unknown-name",
        argument: "id",
        message: 'id: "circuit.lineCurrents" is not allowed; expected the id of an entry, room.functionName',
        expected: "the id of an entry, room.functionName",
        received: '"circuit.lineCurrents"',
      },
    });
    expect(evaluate(5 as never, {})).toMatchObject({ ok: false, error: { received: "no text" } });
    const trapped = new Proxy(
      {},
      {
        getPrototypeOf: () => {
          throw new Error("trap");
        },
      },
    );
    expect(evaluate("circuit.lineCurrent", trapped)).toEqual({
      ok: false,
      error: {
        code: "wrong-type",
        argument: "inputs",
        message: "inputs: a value that refuses to be read",
        expected: "plain data",
        received: "a value that refuses to be read",
      },
    });
    expect(evaluate("circuit.lineCurrent", { power: -5, lineVoltage: 480 })).toEqual({
      ok: false,
      error: {
        code: "out-of-range",
        argument: "power",
        message: "power: -5 W is not allowed; expected more than 0 W",
        expected: "more than 0",
        received: "-5",
      },
    });
  });

  it("names the unit of what comes out, of a record's numbers by field, and none elsewhere", () => {
    const of = (id: string, inputs: object) => {
      const answer = evaluate(id, inputs);
      if (!answer.ok) throw new Error(answer.error.message);
      return answer;
    };
    expect(of("circuit.lineCurrent", { power: 36_000, lineVoltage: 480 })).toMatchObject({
      unit: "A",
      fields: null,
      basis: null,
      warnings: [],
    });
    const open = of("circuit.starWithOpenElements", { elementsInParallel: 2, open: 1 });
    expect(open.unit).toBe("");
    expect(Object.keys(open.fields ?? {}).sort()).toEqual(
      Object.entries(open.value as object)
        .filter(([, value]) => typeof value === "number")
        .map(([name]) => name)
        .sort(),
    );
    const device = of("wiring.standardDevice", { edition: "NEC 2023", current: 34, direction: "up" });
    expect(device).toMatchObject({ value: { value: 35 }, fields: { value: "A" } });
    // Where it stands in print, and who decides.
    expect(device.basis).toMatchObject({ edition: "NEC 2023" });
    expect(device.cautions.at(-1)).toMatch(/decide/);
  });
});

describe("cells of a table or record", () => {
  const leads: Shape = { either: [{ names: ["unknown"] }, { record: { shorted: ohm } }] };
  const record: Shape = { record: { id: "text", leads, "behind?": { list: "text" } } };
  const rows = (...cells: unknown[][]) => structureFrom("x", { list: record }, cells);

  it("hold lists as JSON, as texts with semicolons, or as one cell", () => {
    expect(rows(["id", "behind"], ["A", "b; c"], ["B", '["d"]'], ["C", 5], ["D", ""], ["", ""])).toEqual([
      { id: "A", behind: ["b", "c"] },
      { id: "B", behind: ["d"] },
      { id: "C", behind: [5] },
      { id: "D" },
    ]);
    expect(caught(() => rows(["id", "behind"], ["A", ""], ["B", "{"])).message).toBe(
      'x.1.behind: "{" is not allowed; expected JSON, or a range of cells',
    );
  });

  it("say one thing of a field: its name, or what is inside", () => {
    const lines = (...cells: unknown[][]) => structureFrom("x", record, cells);
    expect(lines(["id", "A"], ["leads", "unknown"])).toEqual({ id: "A", leads: "unknown" });
    expect(lines(["id", "A"], ["leads.shorted", 5])).toEqual({ id: "A", leads: { shorted: 5 } });
    const both = caught(() => lines(["id", "A"], ["leads", "unknown"], ["leads.shorted", 5]));
    expect([both.code, both.message]).toEqual([
      "inconsistent",
      "x.leads.shorted: 5 is not allowed; expected a blank beside leads",
    ]);
    expect(caught(() => lines(["A", "b"], ["C", "d"], ["E", "f"])).message).toBe(
      'x: "3 rows" is not allowed; expected two columns, names and values: id, leads, leads.shorted, behind',
    );
  });
});

describe("cells of a record", () => {
  const around: Shape = { record: { items: { list: ohm }, "note?": "text" } };
  const two: Shape = { record: { items: { list: ohm }, note: "text" } };
  const four: Shape = { record: { a: ohm, b: ohm, c: ohm, d: ohm } };

  it("are the one list in it where nothing else is needed", () => {
    expect(structureFrom("x", around, [[1], [2], [3]])).toEqual({ items: [1, 2, 3] });
    expect(structureFrom("x", two, [[1], ["seen"]])).toEqual({ items: [1], note: "seen" });
  });

  it("are in order in one row or one column, and else have names: none is dropped", () => {
    const want = { a: 1, b: 2, c: 3, d: 4 };
    expect(structureFrom("x", four, [[1, 2, 3, 4]])).toEqual(want);
    expect(structureFrom("x", four, [[1], [2], [3], [4]])).toEqual(want);
    const said = 'x: "2 rows" is not allowed; expected two columns, names and values: a, b, c, d';
    expect(
      caught(() =>
        structureFrom("x", four, [
          [1, 2],
          [3, 4],
        ]),
      ).message,
    ).toBe(said);
    expect(
      caught(() =>
        structureFrom("x", four, [
          ["a", 1],
          ["", 2],
        ]),
      ).message,
    ).toBe(said);
    expect(
      structureFrom("x", four, [
        ["a", 1],
        ["", ""],
        ["b", 2],
      ]),
    ).toEqual({ a: 1, b: 2 });
  });
});

describe("a range", () => {
  const answer = (...cells: unknown[]) =>
    sheetFunctions()
      .find(({ name }) => name === "lineCurrent")
      ?.answer(...cells);

  it("of rows under a row of names is one record only if it is one row", () => {
    const shape: Shape = { record: { a: ohm, b: ohm, c: ohm } };
    const rows = [
      ["a", "b"],
      [1, 2],
    ];
    expect(structureFrom("x", shape, rows)).toEqual({ a: 1, b: 2 });
    expect(caught(() => structureFrom("x", shape, [...rows, [3, 4]])).message).toBe(
      'x: "3 rows" is not allowed; expected two columns, names and values: a, b, c',
    );
  });

  it("goes with another of its size cell by cell, and with no other", () => {
    // P/(√3·V), by hand.
    expect(answer([[36_000], [54_000]], [[480], [400]])?.value).toEqual([
      [expect.closeTo(43.3013, 4)],
      [expect.closeTo(77.9423, 4)],
    ]);
    expect(answer([[1], [2], [3]], [[1], [2]])).toMatchObject({ value: null, code: "inconsistent" });
  });

  it("without a cell is blank, and one that cannot be read says so", () => {
    expect(answer([], 480)?.status).toBe("power: missing; expected more than 0 W");
    const refuse = () => {
      throw new Error("trap");
    };
    const trapped = new Proxy([], { getOwnPropertyDescriptor: refuse, get: refuse, ownKeys: refuse });
    expect(answer(trapped, 480)).toEqual({
      value: null,
      status: "a cell that refuses to be read",
      code: "wrong-type",
    });
  });
});

describe("sheet functions", () => {
  const functions = sheetFunctions();
  const parameters = (name: string) => functions.find((one) => one.name === name)?.parameters;

  it("describe their arguments: what a cell, list, table and record is", () => {
    expect(parameters("lineCurrent")).toEqual([
      { name: "power", takes: "cell", expected: "more than 0", unit: "W", optional: false, columns: [] },
      {
        name: "lineVoltage",
        takes: "cell",
        expected: "more than 0",
        unit: "V",
        optional: false,
        columns: [],
      },
    ]);
    const [network, from] = parameters("terminalResistance") ?? [];
    expect(network).toMatchObject({ name: "network", takes: "table", unit: "", optional: false });
    expect(network?.columns.slice(0, 4)).toEqual(["id", "from", "to", "resistance"]);
    expect(from).toMatchObject({ takes: "cell", expected: "text", unit: "", columns: [] });
    const [design, observed] = parameters("leastSquares") ?? [];
    expect([design?.takes, observed?.takes]).toEqual(["table", "list"]);
    expect(parameters("insulationInParallel")?.[0]).toMatchObject({ takes: "list", unit: "Ω" });
    expect(functions.find(({ name }) => name === "lineCurrent")).toMatchObject({ unit: "A", fields: false });
    // Ohms, or open.
    expect(functions.find(({ name }) => name === "terminalResistance")).toMatchObject({
      unit: "Ω",
      fields: false,
    });
    expect(functions.find(({ name }) => name === "energise")).toMatchObject({ unit: "", fields: true });
  });

  it("have in every cell a kind, words and, where only one number may stand, its unit", () => {
    const kinds = new Set(functions.flatMap((one) => one.parameters.map(({ takes }) => takes)));
    expect([...kinds].sort()).toEqual(["cell", "list", "record", "table"]);
    for (const { id, parameters: all } of functions)
      for (const { name, takes, expected, columns } of all) {
        expect(expected, `${id} ${name}`).not.toBe("");
        // A map has names of the caller's choice.
        const free = expected.endsWith("a record of names and values");
        if (takes === "record") expect(columns.length > 0, `${id} ${name}`).toBe(!free);
        if (takes === "cell") expect(columns, `${id} ${name}`).toEqual([]);
        expect(
          columns.every((column) => column !== "" && !column.includes("?")),
          `${id} ${name}`,
        ).toBe(true);
      }
  });

  it("say that there is no such function, and take a name in any capitals or an id", () => {
    expect(sheetValue("noSuch", 5)).toBe("name: no such function");
    expect(sheetStatus(5)).toBe("name: no such function");
    expect(sheetValue("CIRCUIT.LINECURRENT", 36_000, 480)).toEqual(expect.closeTo(43.3013, 4));
  });

  it("say how many arguments and which field they take", () => {
    expect(sheetStatus("lineCurrent", 36_000, 480, "x")).toBe(
      'arguments: "x" is not allowed; expected at most 2 arguments',
    );
    expect(sheetStatus("starWithOpenElements", 2, 1, 5)).toBe(
      "field: 5 is not allowed; expected the name of a field",
    );
    expect(sheetStatus("starWithOpenElements", 2, 1, [["a", "b"]])).toBe(
      'field: "a" is not allowed; expected the name of a field',
    );
    expect(sheetStatus("lineCurrent", [[1], [2], [3]], [[1], [2]])).toBe(
      'lineVoltage: "2 by 1" is not allowed; expected a range of 3 by 1, one row or column of it, or one cell',
    );
    expect(sheetStatus("starWithOpenElements", [[2], [4]], 1)).toEqual([
      ["field: missing; expected the name of one field of the result"],
      ["field: missing; expected the name of one field of the result"],
    ]);
    expect(sheetStatus("terminalResistance", "{", "L1", "L2")).toBe(
      'network: "{" is not allowed; expected JSON, or a range of cells',
    );
    expect(sheetStatus("terminalResistance", [["A", "L1", "S", 5, "element", 9]], "L1", "S")).toMatch(
      /^network\.branches: "6 columns" is not allowed; expected columns id, from, to, resistance, role, or a first row/,
    );
  });
});
