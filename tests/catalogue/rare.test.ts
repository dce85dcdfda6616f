/**
 * Cells and plain data as they seldom come: blank headings, ragged ranges, paths that lead nowhere, more than there is room for.
 * Figures by hand; one line lost of a star without neutral leaves two branches in series, each on half the line voltage, (√3/2)² of its
 * heat; a fit with as many readings as unknowns has the variances of the readings (GUM, JCGM 100:2008, 5.2).
 */
import { evaluate, sheetStatus, sheetValue } from "electroheat/catalogue";
import { describe, expect, it } from "vitest";

const close = (value: number): unknown => expect.closeTo(value, 9);
const STAR = [
  ["id", "from", "to", "resistance"],
  ["A", "L1", "S", 7.68],
  ["B", "L2", "S", 7.68],
  ["C", "L3", "S", 7.68],
];
const supply = (): unknown => sheetValue("balancedSupply", 480, "", "", "json");

/** Code and argument of a refusal. */
function refused(id: string, inputs: unknown): readonly [string, string] {
  const answer = evaluate(id, inputs);
  if (answer.ok) throw new Error("nothing was refused");
  return [answer.error.code, answer.error.argument];
}

describe("plain data", () => {
  it("has as many items as are wanted, and fields with names", () => {
    const voltages = [277, 277, 277, 277];
    expect(refused("circuit.supplyFromNeutralVoltages", { voltages })).toEqual(["inconsistent", "voltages"]);
    expect(refused("circuit.lineCurrent", { power: 36_000, lineVoltage: 480, "": 1 })).toEqual([
      "unknown-field",
      '""',
    ]);
  });

  it("says true or false where that is wanted", () => {
    const load = { edition: "NEC 2023", equipment: "process heating", heaterCurrent: 40 };
    // A continuous load counts 1.25 times, one of an assembly listed for operation at 100 % once.
    for (const [listedForFullLoad, value] of [
      [false, 50],
      [true, 40],
    ]) {
      expect(evaluate("wiring.designCurrent", { ...load, listedForFullLoad })).toMatchObject({
        value: { value },
      });
    }
    expect(refused("wiring.designCurrent", { ...load, listedForFullLoad: "yes" })).toEqual([
      "wrong-type",
      "listedForFullLoad",
    ]);
  });

  it("of a table of one's own may hold a flag, which the gate refuses among figures", () => {
    const table = (figure: unknown) => ({
      name: "works rules 9",
      system: "North America",
      standardRatings: {
        label: "W-1",
        table: {
          ...{
            id: "works-ratings",
            title: "ratings",
            source: "an invented scenario",
            edition: "works rules 9",
          },
          ...{ kind: "user table", provenance: "seen" },
          columns: [{ name: "rating", unit: "A", meaning: "rating" }],
          rows: [[figure], [66]],
        },
      },
    });
    const ask = (figure: unknown) => ({ edition: table(figure), current: 34, direction: "up" });
    expect(evaluate("wiring.standardDevice", ask(33))).toMatchObject({ value: { value: 66 } });
    expect(refused("wiring.standardDevice", ask(true))).toEqual([
      "not-a-number",
      "edition.standardRatings.table.rows.0.0",
    ]);
  });

  it("has at most a million values", () => {
    const design = Array.from({ length: 11 }, () => new Array(100_000).fill(1));
    const [code, argument] = refused("numeric.leastSquares", { design, observed: [1], uncertainty: [1] });
    expect([code, argument]).toEqual(["out-of-range", expect.stringMatching(/^design\./)]);
  });
});

describe("cells", () => {
  it("leave out a column with a blank heading", () => {
    const noted = STAR.map(([id, ...others], i) => [id, i === 0 ? "" : "my note", ...others]);
    const power = sheetValue("energise", noted, supply(), "lines.0.current");
    expect(power).toEqual(sheetValue("energise", STAR, supply(), "lines.0.current"));
    expect(power).toEqual(close(480 / Math.sqrt(3) / 7.68));
  });

  it("read a map past a blank row, and no third column", () => {
    const banks = [
      ["id", "connection", "elementResistance"],
      ["A", "star", 7.68],
    ];
    const module = (elements: unknown): unknown =>
      sheetValue("buildModule", banks, "", "", elements, "", "network.branches[id=A-L3].resistance");
    const elements = [
      ["A-L2", "open"],
      ["", ""],
      ["A-L3", 7.5],
    ];
    expect(module(elements)).toBe(7.5);
    expect(module(elements.map((row) => [...row, "my note"]))).toMatch(/^elements: .*two columns/);
    expect(module(elements.map(([, value]) => [true, value]))).toMatch(/^elements: .*two columns/);
    // A sheet makes a number of "3": a name all the same, and one used twice.
    expect(module(elements.map(([, value]) => [3, value]))).toMatch(/^elements: .*each name once/);
  });

  it("read a range of rows and single cells", () => {
    expect(sheetValue("lineCurrent", [[36_000], 54_000], 480)).toEqual([
      [expect.closeTo(43.3013, 4)],
      [expect.closeTo(64.9519, 4)],
    ]);
  });

  it("are at most a million, given or answered", () => {
    const side = Array.from({ length: 1001 }, () => 480);
    expect(
      sheetValue(
        "lineCurrent",
        side.map((one) => [one]),
        [side],
      ),
    ).toMatch(/^arguments: .*at most 1000000/);
    const long = new Array(100_000).fill(1);
    expect(sheetValue("lineCurrent", new Array(11).fill(long), 480)).toMatch(/^power: .*at most 1000000/);
    expect(sheetValue("energise", `[${"1,".repeat(600_000)}1]`, supply(), "json")).toMatch(
      /^network: .*at most 1000000/,
    );
  });

  it("name what a path may pick next where it leads nowhere", () => {
    const status = (field: string): unknown => sheetStatus("energise", STAR, supply(), field);
    expect(sheetValue("energise", STAR, supply(), "lines[node=L1].lost")).toBe(false);
    for (const [field, words] of [
      ["lines.9", /an item: 0 to 3, or \[field=value\]/],
      ["lines[node=L9]", /an item: 0 to 3/],
      ["lines[", /an item: 0 to 3/],
      ["lines.0.current.deeper", /nothing further/],
      ["lines.0[node=L1]", /one of node, current/],
    ] as const) {
      expect(status(field), field).toMatch(/^field: /);
      expect(status(field), field).toMatch(words);
    }
  });

  it("spill a list downwards and a matrix as it stands", () => {
    const ratios = sheetValue("singlePhasing", "star", "floating", 2, "branchPowerRatios") as number[][];
    expect(ratios.map((row) => row.length)).toEqual([1, 1, 1]);
    expect(ratios.flat().sort()).toEqual([0, close(0.75), close(0.75)]);
    const identity = [
      [1, 0],
      [0, 1],
    ];
    expect(sheetValue("leastSquares", identity, [1, 2], [0.1, 0.2], "covariance")).toEqual([
      [close(0.01), close(0)],
      [close(0), close(0.04)],
    ]);
  });
});
