/**
 * What a refusal of columns, solving for an input and shown working says: the place, what is allowed and what was seen. Each is held to the figures of the very call that is
 * refused; the codes are those of the docstrings.
 */
import { powerFromVoltageAndResistance } from "electroheat/element";
import { evaluateColumns, evaluateRows, showWorking, solveFor } from "electroheat/operators";
import { ohms, volts } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { type Case, calculation, refusals } from "./refused.ts";

describe("evaluateColumns and evaluateRows", () => {
  refusals(evaluateColumns, { calculation: ({ x }: { x: number }) => x, columns: { x: [1] } }, [
    [{ columns: {} }, "columns: missing; expected at least one column"],
    [{ columns: { x: undefined } }, "columns: missing; expected at least one column"],
    [{ columns: { x: 5 } }, "columns.x: 5 is not allowed; expected an array or a typed array"],
    [
      { columns: { x: { length: 1 } } },
      "columns.x: an object is not allowed; expected an array or a typed array",
    ],
    [
      { columns: { x: new DataView(new ArrayBuffer(8)) } },
      "columns.x: an object is not allowed; expected an array or a typed array",
    ],
    [{ columns: { x: [1], y: [1], z: [1, 2] } }, "columns.z: 2 is not allowed; expected 1 rows, like x"],
    [{ fixed: { x: 1 } }, 'fixed.x: "x" is not allowed; expected only in columns'],
  ]);
  refusals(evaluateRows, { rows: 2, evaluate: (row: number) => row }, [
    [{ rows: 2 ** 31 }, "rows: 2147483648 is not allowed; expected a whole number from 0 to 2147483647"],
    [{ evaluate: null }, `evaluate: missing; expected ${calculation}`],
    [{ evaluate: 5 }, `evaluate: 5 is not allowed; expected ${calculation}`],
  ]);

  it("gives one to five outputs of a record, by rows and by one to six columns", () => {
    const names = ["a", "b", "c", "d", "e", "f"];
    for (let count = 1; count <= 5; count += 1) {
      const outputs = Array.from({ length: count }, (_, k) => `y${k}`);
      const answer = (row: number) => Object.fromEntries(outputs.map((name, k) => [name, 10 * row + k]));
      const wanted = outputs.map((_, k) => [k, 10 + k, 20 + k]);
      const columnsOf = (found: ReturnType<typeof evaluateRows>) =>
        outputs.map((name) => [...(found.columns[name] as Float64Array)]);
      expect(columnsOf(evaluateRows({ rows: 3, evaluate: answer, outputs }))).toEqual(wanted);
      for (let width = 1; width <= 6; width += 1) {
        const columns = Object.fromEntries(names.slice(0, width).map((name) => [name, [0, 1, 2]]));
        const calculation = (row: object) => answer((row as { a: number }).a);
        expect(columnsOf(evaluateColumns({ calculation, columns, outputs }))).toEqual(wanted);
      }
      // A field that is none shows in its own column alone.
      const odd = (row: number) => ({ ...answer(row), [`y${count - 1}`]: row === 1 ? "open" : 5 });
      const found = evaluateRows({ rows: 3, evaluate: odd, outputs });
      expect(columnsOf(found).at(-1)).toEqual([5, Number.NaN, 5]);
      expect([...found.status]).toEqual([0, 1, 0]);
      expect(columnsOf(found).slice(0, -1)).toEqual(wanted.slice(0, -1));
    }
  });

  it("takes any typed array and no rows at all", () => {
    for (const x of [Int8Array.of(1), Float32Array.of(1), BigInt64Array.of(1n), [1]]) {
      const found = evaluateColumns({
        calculation: ({ x: one }: { x: number }) => Number(one),
        columns: { x },
      });
      expect([found.rows, found.columns["result"]?.[0]]).toEqual([1, 1]);
    }
    const none = evaluateRows({ rows: 0, evaluate: () => 1 });
    expect(none).toEqual({ rows: 0, columns: {}, status: new Uint8Array(0), statuses: [], failed: 0 });
  });

  it("says in a status what stood where a number was asked for", () => {
    const answers: unknown[] = ["open", "hot", null, { y: 1 }, undefined, true, Number.NaN];
    const { statuses } = evaluateRows({
      rows: answers.length,
      evaluate: (row) => ({ [`y${row}`]: answers[row] }),
      outputs: answers.map((_, i) => `y${i}`).slice(0, 1),
    });
    expect(statuses.map(({ message }) => message)).toEqual([
      "y0 is open: no number holds it",
      "y0: undefined is not a finite number",
    ]);
    const said = (answer: unknown) =>
      evaluateRows({ rows: 1, evaluate: () => ({ y: answer }), outputs: ["y"] }).statuses[0]?.message;
    expect(answers.map(said)).toEqual([
      "y is open: no number holds it",
      "y: hot is not a finite number",
      "y: an object is not a finite number",
      "y: an object is not a finite number",
      "y: undefined is not a finite number",
      "y: true is not a finite number",
      "y: NaN is not a finite number",
    ]);
  });
});

describe("solveFor", () => {
  refusals(solveFor, { calculation: ({ x }: { x: number }) => x, input: "x", target: 0.5, low: 0, high: 1 }, [
    [{ calculation: 5 }, `calculation: 5 is not allowed; expected ${calculation}`],
    [{ input: "" }, "input: missing; expected the name of a field"],
    [{ input: 5 }, "input: missing; expected the name of a field"],
    [
      { input: "constructor" },
      'input: "constructor" is not allowed; expected the name of a field of the argument',
    ],
    [{ target: "5" }, 'target: "5" is not allowed; expected a finite number'],
    [{ low: undefined }, "low: missing; expected a finite number"],
    [{ high: Number.NaN }, "high: NaN is not allowed; expected a finite number"],
    [{ low: 2.5 }, "high: 1 is not allowed; expected more than low, 2.5"],
    [{ low: -1.5e308, high: 1.5e308 }, "high: 1.5e+308 is not allowed; expected more than low, -1.5e+308"],
    [{ all: 1 }, "all: 1 is not allowed; expected true or false"],
    [{ cells: 100_001 }, "cells: 100001 is not allowed; expected a whole number from 1 to 100000"],
    [{ spacing: "equal" }, 'spacing: "equal" is not allowed; expected one of linear, logarithmic'],
    [{ spacing: "logarithmic" }, "low: 0 is not allowed; expected more than 0 for logarithmic spacing"],
    [{ fixed: { x: 1 } }, 'fixed.x: "x" is not allowed; expected only in input'],
  ]);
});

describe("showWorking", () => {
  const description = {
    id: "heat",
    formula: { text: "P = V²/R", tex: "P = \\frac{V^2}{R}" },
    inputs: [
      { name: "voltage", symbol: "V", unit: "V" },
      { name: "resistance", symbol: "R", unit: "Ω" },
    ],
    outputs: [{ symbol: "P", unit: "W" }],
    sources: ["joules-law"],
  };
  const other = (change: object) => ({ description: { ...description, ...change } });
  const formula = (text: unknown, tex: unknown) => other({ formula: { text, tex } });
  refusals(
    showWorking,
    {
      description,
      calculation: powerFromVoltageAndResistance,
      input: { voltage: volts(480), resistance: ohms(12.8) },
    },
    [
      [{ description: undefined }, "description: missing; expected an object with named fields"],
      [{ calculation: undefined }, `calculation: missing; expected ${calculation}`],
      [{ input: undefined }, "input: missing; expected an object with named fields"],
      [{ units: 5 }, "units: 5 is not allowed; expected an object with named fields"],
      [
        { significantDigits: 18 },
        "significantDigits: 18 is not allowed; expected a whole number from 1 to 17",
      ],
      [{ significantDigits: 0 }, "significantDigits: 0 is not allowed; expected a whole number from 1 to 17"],
      ...["inputs", "outputs", "sources"].map(
        (list): Case => [other({ [list]: undefined }), `description.${list}: missing; expected a list`],
      ),
      [other({ outputs: [] }), "description.outputs: missing; expected a list"],
      [
        other({ inputs: [description.inputs[0], { name: "resistance", symbol: "R" }] }),
        "description: unit of resistance: missing; expected a unit, or 1",
      ],
      [
        other({
          outputs: [
            { symbol: "P", unit: "W" },
            { name: "y", symbol: "y", unit: "W" },
          ],
        }),
        'description.outputs.1.name: "y" is not allowed; expected a field of the result',
      ],
      [
        formula("V²/R", "x = 1"),
        'description.formula.text: "V²/R" is not allowed; expected a left side, = and a right side',
      ],
      [
        formula("= V²/R", "x = 1"),
        'description.formula.text: "= V²/R" is not allowed; expected a left side, = and a right side',
      ],
      [
        formula("P = V²/R", "P"),
        'description.formula.tex: "P" is not allowed; expected a left side, = and a right side',
      ],
      [formula("P = V²/R", undefined), "description.formula.tex: missing; expected a formula"],
      [
        formula("P = V²/Q", "P = V^2/Q"),
        'description.formula.text: "Q" is not allowed; expected only symbols of V, R',
      ],
      [
        formula("P = V²/R", "P = V^2"),
        'description.formula.tex: "P = V^2" is not allowed; expected resistance, as in the text',
      ],
      [
        formula("P = V²", "P = V^2/R"),
        'description.formula.text: "P = V²" is not allowed; expected resistance, as in the tex',
      ],
      [
        other({
          constants: [{ name: "reference", symbol: "T0", unit: "°C", value: 20 }],
          steps: [
            {
              name: "square",
              symbol: "S",
              unit: "1",
              formula: { text: "S = Q", tex: "S = Q" },
              value: () => 1,
            },
          ],
        }),
        'description.steps.0.formula.text: "Q" is not allowed; expected only symbols of V, R, T0',
      ],
      [
        other({
          outputs: [{ symbol: "P", unit: "W", formula: { text: "P = Q", tex: "P = Q" } }],
          constants: [{ name: "reference", symbol: "T0", unit: "°C", value: 20 }],
        }),
        'description.outputs.0.formula.text: "Q" is not allowed; expected only symbols of V, R, T0',
      ],
    ],
  );
});
