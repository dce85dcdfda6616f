/**
 * examples/notebook in a real kernel, on the installed package: its figures against closed forms and a matrix library worked out
 * here, its pictures against an XML parser, its outputs against those it was committed with, its cells against the compiler.
 */
import { Matrix, pseudoInverse } from "ml-matrix";
import { SaxesParser } from "saxes";
import { beforeAll, describe, expect, it } from "vitest";
import { kept, missingForNotebooks, runNotebook } from "../../scripts/notebook.mjs";
import { readText } from "../support/house.ts";
import { packed, resolutions, typeErrors, writeConsumer } from "./consume.ts";

const text = readText("examples/notebook/glaze-dryer.ipynb");
type Notebook = ReturnType<typeof kept>;
const committed = JSON.parse(text) as Notebook;
const sourceOf = (cell: Notebook["cells"][number]) => [cell.source].flat().join("");

const missing = missingForNotebooks();
if (missing !== null) console.warn(`${missing} is not installed: 8 checks of the notebook are skipped`);

describe("examples/notebook", () => {
  it("type-checks as one program", () => {
    const code = committed.cells.filter(({ cell_type }) => cell_type === "code").map(sourceOf);
    writeConsumer("notebook.mts", code.join("\n"));
    expect(typeErrors(["notebook.mts"], resolutions["nodenext"] ?? {})).toEqual([]);
  });
});

describe.skipIf(missing !== null)("examples/notebook in a kernel", () => {
  let ran: Notebook;
  /** What a cell shows, in one form. */
  const shown = (id: string, form: string): string => {
    const outputs = ran.cells.find((cell) => cell.id === id)?.outputs ?? [];
    expect([id, outputs.length]).toEqual([id, 1]);
    return [outputs[0]?.data?.[form] ?? ""].flat().join("");
  };
  /** Rows of a table by their first cell, as numbers where they are some. */
  const rows = (id: string): ReadonlyMap<string, readonly (string | number)[]> => {
    const lines = shown(id, "text/markdown").split("\n").slice(2);
    const cells = lines.map((line) =>
      line
        .slice(2, -2)
        .split(" | ")
        .map((cell) => cell.trim()),
    );
    const read = (cell: string) => (/^-?[\d.]+$/.test(cell) ? Number(cell) : cell);
    return new Map(cells.map(([name = "", ...rest]) => [name, rest.map(read)]));
  };
  /** A figure as the notebook writes it. */
  const first = (id: string, row: string) => rows(id).get(row)?.[0];

  // Ohms of the notebook, fitted here by the normal equations of a matrix library: columns A-L1, A-L2, A-L3, leads.
  const reads = [8.16, 8.12, 8.31, 16.09, 16.23, 16.26];
  const design = new Matrix([
    [1, 0, 0, 1],
    [0, 1, 0, 1],
    [0, 0, 1, 1],
    [1, 1, 0, 1],
    [0, 1, 1, 1],
    [1, 0, 1, 1],
  ]);
  const inverse = pseudoInverse(design.transpose().mmul(design));
  const fitted = inverse.mmul(design.transpose()).mmul(Matrix.columnVector(reads)).to1DArray();
  const covariance = inverse.mul(0.02 ** 2);
  const [a = 0, b = 0, c = 0] = fitted;
  /** Siemens of three branches as a floating star on balanced lines: total power over V², by star-delta. */
  const siemens = (a + b + c) / (a * b + b * c + c * a);

  beforeAll(() => {
    const start = performance.now();
    ran = kept(runNotebook({ text, folder: packed.consumer }));
    console.info(`the notebook ran in ${((performance.now() - start) / 1000).toFixed(1)} s, kernel and all`);
  });

  it("gives targets: P/(√3·V), V²/P, and Ct of NiCr 80/20 at 800 °C (GB/T 1234: 1.008)", () => {
    expect(first("targets", "line current")).toBe(Number((28_800 / (Math.sqrt(3) * 480)).toFixed(2)));
    expect(first("targets", "branch, hot")).toBe(480 ** 2 / 28_800);
    expect(first("targets", "branch, cold")).toBe(Number((480 ** 2 / 28_800 / 1.008).toFixed(3)));
    expect(first("targets", "line to line, cold")).toBe(Number(((2 * 480 ** 2) / 28_800 / 1.008).toFixed(3)));
  });

  it("gives the branches and the leads as the normal equations do", () => {
    const found = rows("ohms");
    ["A-L1", "A-L2", "A-L3", "leads"].forEach((id, k) => {
      expect(found.get(id)?.slice(0, 2)).toEqual(
        [fitted[k] ?? 0, Math.sqrt(covariance.get(k, k))].map((x) => Number(x.toFixed(4))),
      );
    });
    const left = design.mmul(Matrix.columnVector(fitted)).sub(Matrix.columnVector(reads)).to1DArray();
    const chiSquare = left.reduce((sum, x) => sum + (x / 0.02) ** 2, 0);
    expect(found.get("χ²")).toEqual([Number(chiSquare.toFixed(3)), "2 degrees of freedom", "consistent"]);
  });

  it("puts the numbers into the formula, in text and TeX: 277.128² / 8 = 9600", () => {
    expect(((480 / Math.sqrt(3)) ** 2 / 8).toFixed(0)).toBe("9600");
    expect(shown("working", "text/plain")).toContain("P = V²/R\n  = (277.128 V)²/(8 Ω)\n  = 9600 W\n");
    expect(shown("working", "text/latex")).toMatch(/^\$\$\\begin\{aligned\}[\s\S]*= 9600\\,\\mathrm\{W\}/);
  });

  it("solves for the line voltage: √(P / siemens of the star)", () => {
    expect(shown("solve", "text/plain")).toBe(`${Math.sqrt(28_800 / siemens).toFixed(3)} V`);
  });

  it("propagates uncertainty: partial derivatives by hand, and the trials within their own scatter", () => {
    const power = 480 ** 2 * siemens;
    const q = a * b + b * c + c * a;
    // ∂P/∂a of V²·(a + b + c)/q.
    const slope = (others: number) => (480 ** 2 * (q - (a + b + c) * others)) / q ** 2;
    const slopes = [slope(b + c), slope(a + c), slope(a + b)];
    const fromOhms = slopes.reduce(
      (sum, x, i) => sum + slopes.reduce((inner, y, k) => inner + x * y * covariance.get(i, k), 0),
      0,
    );
    const u = Math.sqrt(((2 * power) / 480) ** 2 * (4.8 ** 2 / 3) + fromOhms);
    const [estimate, uncertainty, low, high] = rows("uncertainty").get("first order") ?? [];
    expect(estimate).toBe(Number(power.toFixed(1)));
    expect(Number(uncertainty)).toBeCloseTo(u, 0);
    // k of 95 % of the normal distribution: 1.960 (GUM table G.2).
    expect(Number(low)).toBeCloseTo(power - 1.96 * u, 0);
    expect(Number(high)).toBeCloseTo(power + 1.96 * u, 0);
    const [mean, spread, from, to] = (rows("uncertainty").get("trials") ?? []).map(Number);
    // A mean of 100,000 trials scatters by u/316, its spread by no more than u/447: five of them.
    expect(Math.abs((mean ?? 0) - power)).toBeLessThan((5 * u) / 316);
    expect(Math.abs((spread ?? 0) - u)).toBeLessThan((5 * u) / 447);
    // Mostly the voltage's rectangle, so narrower than first order says: between 0.95 of its half-width and 1.96 u.
    expect((to ?? 0) - (from ?? 0)).toBeGreaterThan(2 * 0.95 * ((2 * power) / 480) * 4.8);
    expect((to ?? 0) - (from ?? 0)).toBeLessThan(2 * 1.96 * u);
  });

  it("tabulates columns, with the slip as a status", () => {
    for (const volts of [456, 468, 480, 504])
      expect(rows("columns").get(String(volts))).toEqual([
        Number(((volts ** 2 * siemens) / 1000).toFixed(3)),
        "ok",
      ]);
    expect(rows("columns").get("-492")).toEqual([
      "",
      "lineVoltage: -492 V is not allowed; expected more than 0 V",
    ]);
  });

  it("shows pictures: well-formed, with their words", () => {
    const words = (id: string) => {
      const svg = shown(id, "image/svg+xml");
      const found: string[] = [];
      const parser = new SaxesParser({ xmlns: false });
      parser.on("error", (error) => {
        throw error;
      });
      parser.on("text", (piece) => found.push(piece));
      parser.write(svg).close();
      return found.join("\n").replaceAll("\u00a0", " ");
    };
    expect(words("diagram")).toContain("A-L2 open");
    // Two branches in series between two lines share its voltage by their ohms.
    expect(words("phasors")).toContain(`${((480 * a) / (a + c)).toFixed(1)} V`);
    expect(words("curve")).toContain("as found");
  });

  it("is committed with the outputs it gives", () => {
    expect(ran).toEqual(committed);
  });
});
