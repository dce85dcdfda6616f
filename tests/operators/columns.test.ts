/** Calculations over columns: each row as a plain call gives it, and no row that stops the others. */
import { hotResistance, powerFromVoltageAndResistance } from "electroheat/element";
import { evaluateColumns, evaluateRows } from "electroheat/operators";
import { isElectroheatError, ohms, volts } from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";

type Cell = number | string | undefined;

/** What a plain call gives for one row. */
function plain(voltage: Cell, resistance: Cell): number | string {
  try {
    return powerFromVoltageAndResistance({ voltage: voltage as never, resistance: resistance as never });
  } catch (error) {
    if (!isElectroheatError(error)) throw error;
    return `${error.code} ${error.argument}`;
  }
}

describe("evaluateColumns", () => {
  it("gives in each row what the plain call gives, and NaN exactly where the status is not 0", () => {
    const cell = fc.oneof(
      { weight: 6, arbitrary: fc.double({ min: 0.1, max: 1000, noNaN: true }) },
      fc.constantFrom<Cell>(-1, 0, Number.NaN, Number.POSITIVE_INFINITY, "open", "5", undefined, 1e300),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell), { minLength: 1, maxLength: 40 }), (rows) => {
        const columns = { voltage: rows.map(([v]) => v), resistance: rows.map(([, r]) => r) };
        const before = structuredClone(columns);
        const result = evaluateColumns({
          calculation: powerFromVoltageAndResistance,
          columns,
          outputs: ["result"],
        });
        expect(columns).toEqual(before);
        let failed = 0;
        rows.forEach(([v, r], row) => {
          const wanted = plain(v, r);
          const got = result.columns["result"]?.[row] as number;
          if (typeof wanted === "number") {
            expect([got, result.status[row]]).toEqual([wanted, 0]);
            return;
          }
          failed += 1;
          expect(got).toBeNaN();
          const status = result.statuses.find((one) => one.status === result.status[row]);
          expect(`${status?.code} ${status?.path}`).toBe(wanted);
        });
        expect(result.failed).toBe(failed);
        expect(result.statuses.reduce((sum, { rows: count }) => sum + count, 0)).toBe(failed);
        for (const { status, firstRow } of result.statuses)
          expect(result.status.indexOf(status)).toBe(firstRow);
      }),
    );
  });

  it("takes typed arrays, lists and values for all rows, for one to six columns", () => {
    const wide = (input: Record<"a" | "b" | "c" | "d" | "e" | "f", number>) =>
      Object.values(input).reduce((sum, value, i) => sum + value * 10 ** i, 0);
    const names = ["a", "b", "c", "d", "e", "f"] as const;
    for (let width = 1; width <= 6; width += 1) {
      const columns = Object.fromEntries(
        names.slice(0, width).map((name, i) => [name, i % 2 === 0 ? Float32Array.of(i, i + 1) : [i, i + 1]]),
      );
      const fixed = Object.fromEntries(names.slice(width).map((name) => [name, 7]));
      const { columns: out } = evaluateColumns({ calculation: wide, columns, fixed });
      const wanted = [0, 1].map((row) =>
        // Fields in `fixed` come first in the argument.
        [...names.slice(width).map(() => 7), ...names.slice(0, width).map((_, i) => i + row)].reduce(
          (sum, value, i) => sum + value * 10 ** i,
          0,
        ),
      );
      expect([...(out["result"] ?? [])]).toEqual(wanted);
    }
  });

  it("names the outputs of records, reaches into them, and marks an open one", () => {
    const calculation = ({ x }: { x: number }) => ({
      a: x,
      b: x > 1 ? ("open" as const) : 2 * x,
      deep: [{ c: 3 * x }],
      d: 4 * x,
      e: 5 * x,
    });
    const all = evaluateColumns({ calculation, columns: { x: [1, 2] } });
    expect(Object.keys(all.columns)).toEqual(["a", "b", "d", "e"]);
    expect([...(all.columns["b"] ?? [])]).toEqual([2, Number.NaN]);
    expect([...(all.columns["a"] ?? [])]).toEqual([1, 2]);
    expect([...(all.columns["e"] ?? [])]).toEqual([5, 10]);
    expect([...all.status]).toEqual([0, 1]);
    expect(all.statuses).toEqual([
      { status: 1, code: "open", path: "b", message: "b is open: no number holds it", firstRow: 1, rows: 1 },
    ]);
    const some = evaluateColumns({ calculation, columns: { x: [1, 2] }, outputs: ["deep.0.c", "nowhere"] });
    expect([...(some.columns["deep.0.c"] ?? [])]).toEqual([3, 6]);
    expect(some.statuses.map(({ code, path }) => [code, path])).toEqual([["not-a-number", "nowhere"]]);
  });

  it("gives records of one to six outputs as plain calls do, by columns and by rows, past many a thousand rows", () => {
    type Input = { readonly a: number; readonly b: number };
    const calculation = ({ a, b }: Input) => {
      if (a % 700 === 3) throw new RangeError("own");
      if (a % 900 === 4) return null as never;
      const open = a % 500 === 2;
      return { p: a + b, q: open ? ("open" as const) : a * b, r: a - b, s: a / b, t: a, u: b };
    };
    const a = Float64Array.from({ length: 3000 }, (_, i) => i);
    const b = a.map((value) => value + 0.5);
    const names = ["p", "q", "r", "s", "t", "u"] as const;
    for (let count = 1; count <= names.length; count += 1) {
      const outputs = names.slice(0, count);
      const found = evaluateColumns({ calculation, columns: { a, b }, outputs });
      const evaluate = (row: number) => calculation({ a: a[row] ?? 0, b: b[row] ?? 0 });
      expect(evaluateRows({ rows: 3000, evaluate, outputs })).toEqual(found);
      a.forEach((value, row) => {
        const refused = value % 700 === 3 || value % 900 === 4;
        const plainly = refused ? null : evaluate(row);
        const wanted = outputs.map((name) => {
          const one = plainly?.[name];
          return typeof one === "number" ? one : Number.NaN;
        });
        expect(outputs.map((name) => found.columns[name]?.[row])).toEqual(wanted);
        expect(found.status[row] !== 0).toBe(wanted.some(Number.isNaN));
      });
    }
  });

  it("lets the text open into columns of resistances, as a plain call does", () => {
    const { columns, status } = evaluateColumns({
      calculation: powerFromVoltageAndResistance,
      columns: { resistance: [12.8, "open"] },
      fixed: { voltage: volts(480) },
    });
    expect([...(columns["result"] ?? [])]).toEqual([18_000, 0]);
    expect([...status]).toEqual([0, 0]);
  });

  it("goes through a hundred thousand rows, a tenth of them refused", () => {
    const rows = 100_000;
    const coldResistance = Float64Array.from({ length: rows }, (_, i) => (i % 10 === 0 ? -1 : i));
    const { columns, failed, statuses } = evaluateColumns({
      calculation: hotResistance,
      columns: { coldResistance },
      fixed: { temperatureFactor: 1.05 },
    });
    expect(failed).toBe(rows / 10);
    expect(statuses).toHaveLength(1);
    expect(columns["result"]?.[99_999]).toBe(99_999 * 1.05);
    expect(columns["result"]?.filter((value) => Number.isNaN(value))).toHaveLength(failed);
  });

  it("keeps other errors and too many kinds of them as data", () => {
    const { statuses, status } = evaluateRows({
      rows: 300,
      evaluate: (row) => {
        if (row === 0) throw new RangeError("own");
        return hotResistance({ coldResistance: ohms(1), temperatureFactor: { [`k${row}`]: row } as never });
      },
      outputs: ["result"],
    });
    expect(statuses.map(({ code, path }) => [code, path])).toEqual([
      ["other", ""],
      ["not-a-number", "temperatureFactor"],
    ]);
    expect([status[0], status[299]]).toEqual([1, 2]);
    const many = evaluateRows({
      rows: 400,
      evaluate: (row) => ({ [`f${row}`]: row }),
      outputs: Array.from({ length: 400 }, (_, i) => `f${399 - i}`),
    });
    expect(many.statuses.length).toBeLessThanOrEqual(255);
    expect(many.failed).toBe(400);
  });

  it("gives empty columns for no rows, and no outputs where no row gives any", () => {
    const calculation = ({ x }: { x: number }): number => x;
    expect(
      evaluateColumns({ calculation, columns: { x: [] }, outputs: ["result"] }).columns["result"],
    ).toHaveLength(0);
    const none = evaluateColumns({
      calculation: hotResistance,
      columns: { coldResistance: [-1] },
      fixed: {},
    });
    expect([none.columns, none.failed]).toEqual([{}, 1]);
  });

  it.each([
    [{ columns: {} }, "missing", "columns"],
    [{ columns: undefined }, "missing", "columns"],
    [{ columns: { x: 5 } }, "wrong-type", "columns.x"],
    [{ columns: { x: "12" } }, "wrong-type", "columns.x"],
    [{ columns: { x: [1], y: [1, 2] } }, "inconsistent", "columns.y"],
    [{ fixed: { x: 1 } }, "duplicate", "fixed.x"],
    [{ outputs: [] }, "wrong-type", "outputs"],
    [{ calculation: 5 }, "wrong-type", "calculation"],
  ])("refuses %j", (change, code, argument) => {
    const error = caught(() =>
      evaluateColumns({ calculation: (i: { x: number }) => i.x, columns: { x: [1] }, ...change } as never),
    );
    expect([error.code, error.argument]).toEqual([code, argument]);
  });
});

describe("evaluateRows", () => {
  it("gives what evaluateColumns gives", () => {
    const resistance = [12.8, -1, 25.6];
    const byRow = evaluateRows({
      rows: 3,
      evaluate: (row) =>
        powerFromVoltageAndResistance({ voltage: volts(480), resistance: resistance[row] as never }),
    });
    const byColumn = evaluateColumns({
      calculation: powerFromVoltageAndResistance,
      columns: { resistance },
      fixed: { voltage: volts(480) },
    });
    expect(byRow).toEqual(byColumn);
  });

  it("refuses a number of rows that is none", () => {
    expect(caught(() => evaluateRows({ rows: -1, evaluate: () => 1 })).argument).toBe("rows");
  });
});
