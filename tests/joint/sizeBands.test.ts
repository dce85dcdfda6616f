/**
 * Bands of sizes and marks of a table, met exactly. The expected figures are read from the tables themselves, by what their columns say
 * (`above`: without its own edge; `from` and `up to`: with it), and an inch is 0.0254 m by definition.
 */
import * as joint from "electroheat/joint";
import { type Meters, megapascals, millimeters, newtonMeters, ohms } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";
import { readJson, type Table } from "../support/shared.ts";

const table = (id: string) => readJson(`shared/tables/${id}.json`) as Table;
const STANDARDS = [
  ["ISO 898-1", "bolt-strength-iso-898-1"],
  ["SAE J429", "bolt-strength-sae-j429"],
  ["ISO 3506-1", "bolt-strength-iso-3506-1"],
  ["ASTM F593", "bolt-strength-astm-f593"],
  ["brass C36000", "stud-strength-brass-c36000"],
] as const;

describe.each(STANDARDS)("%s", (standard, id) => {
  const { columns, rows } = table(id);
  const names = columns.map(({ name }) => name);
  const to = names.indexOf("toDiameter");
  const unit = columns[to]?.unit === "in" ? 0.0254 : 0.001;
  const at = (grade: unknown, diameter: number) =>
    joint.fastenerStrength({ standard, grade: String(grade), diameter: diameter as Meters });
  const held = rows.filter(([grade]) => grade !== "all tempers, highest");
  const yieldOf = (row: Table["rows"][number]) => {
    const cell = row[names.indexOf("yield")];
    return typeof cell === "number" ? cell : null;
  };
  // A pound-force is 4.4482216152605 N and an inch 0.0254 m by definition.
  const pascals =
    columns[names.indexOf("yield")]?.unit === "MPa" ? 1e6 : 1000 * (4.4482216152605 / 0.0254 ** 2);

  it("gives each row at its largest size, and refuses what is larger than all", () => {
    for (const row of held) {
      const high = row[to];
      if (to < 0 || typeof high !== "number") {
        expect(at(row[0], 0.01).sizes).toBeNull();
        continue;
      }
      const found = at(row[0], high * unit);
      const printed = yieldOf(row);
      if (printed === null) expect(found.yield).toBeNull();
      else expect((found.yield as number) / (printed * pascals), String(row[0])).toBeCloseTo(1, 12);
      expect(found.sizes?.from).toBeCloseTo(Number(row[to - 1]) * unit, 12);
      expect(found.sizes?.to).toBeCloseTo(high * unit, 12);
      const last = Math.max(...rows.filter(([grade]) => grade === row[0]).map((one) => Number(one[to])));
      const refused = caught(() => at(row[0], last * unit * 1.0001));
      expect([refused.code, refused.argument]).toEqual(["outside-table", "diameter"]);
      expect(refused.message).toContain(String(row[0]));
      expect(refused.issues[0]?.unit).toBe(columns[to]?.unit);
    }
  });

  it("gives a size on the edge of two rows to the one that holds it", () => {
    for (const row of held) {
      const low = Number(row[to - 1]);
      if (to < 0 || typeof row[to] !== "number" || low === 0) continue;
      const open = names[to - 1] === "aboveDiameter";
      const below = rows.find((one) => one[0] === row[0] && one[to] === low);
      const inside = at(row[0], low * unit * 1.0001);
      expect(inside.sizes?.from).toBeCloseTo(low * unit, 12);
      if (!open && below === undefined) expect(at(row[0], low * unit).sizes).toEqual(inside.sizes);
      if (below !== undefined) expect(at(row[0], low * unit).sizes?.to).toBeCloseTo(low * unit, 12);
    }
  });
});

describe("metals of a joint", () => {
  const { columns, rows } = table("joint-expansion");
  const cell = (row: Table["rows"][number], name: string) =>
    row[columns.findIndex((one) => one.name === name)];

  it("say so where their figures are from memory, and only there", () => {
    const marks = new Set(rows.map((row) => cell(row, "provenance")));
    expect(marks.size).toBe(2);
    for (const row of rows) {
      const { warnings, basis } = joint.jointMetal(row[0] as joint.JointMetal);
      const memory = cell(row, "provenance") === "memory";
      expect(warnings.map(({ code, path }) => [code, path])).toEqual(
        memory ? [["approximate", "metal"]] : [],
      );
      expect([basis.kind, basis.source]).toEqual([cell(row, "kind"), cell(row, "source")]);
    }
  });
});

describe("a rule of one's own", () => {
  const judged = (rule: joint.JointRatioRule) =>
    joint.judgeJoint({
      resistance: ohms(60e-6),
      halfWidth: ohms(0),
      similar: [ohms(40e-6)],
      similarHalfWidth: ohms(0),
      rule,
    });

  it("judges under its own name and limit, 1.5 met exactly being within", () => {
    const own = judged({ name: "house rule", limit: 1.5, source: "maintenance handbook of the works" });
    expect(own.judgement).toMatchObject({ rule: "house rule", verdict: "within", margin: 0 });
    expect(own.basis).toMatchObject({ table: "house rule", kind: "user table" });
    expect(judged({ name: "stricter", limit: 1.49, source: "x" }).judgement.verdict).toBe("outside");
    expect(judged("50-percent-above-lowest").judgement.rule).toBe("50-percent-above-lowest");
  });
});

describe("a stress area", () => {
  const at = (share: number) => () =>
    joint.tightening({
      torque: newtonMeters(5),
      diameter: millimeters(6),
      stressArea: (share * (Math.PI / 4) * 0.006 ** 2) as never,
      nutFactorLow: 0.18,
      nutFactorHigh: 0.25,
      strength: megapascals(580),
    });

  it("is at most that of a bare rod of the same diameter (geometry)", () => {
    expect(at(1 - 1e-12)).not.toThrow();
    expect(caught(at(1.001))).toMatchObject({ code: "out-of-range", argument: "stressArea" });
  });
});
