/** examples/spreadsheet on the built package: the engine's figures against closed forms worked out here, and the file it saves. */
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { packed } from "./consume.ts";

let printed = "";
/** The row with that label in each of the three prints. */
const rows = (label: string): readonly string[][] =>
  printed
    .split("\n")
    .filter((line) => line.startsWith(`  ${label} `))
    .map((line) =>
      line
        .slice(label.length + 2)
        .trim()
        .split(/ {2,}/),
    );

beforeAll(() => {
  printed = execFileSync(process.execPath, [join("examples", "spreadsheet.mjs")], {
    cwd: packed.project,
    encoding: "utf8",
  });
});

describe("examples/spreadsheet.mjs", () => {
  it("gives the plate's current and target: P/(√3·V), and V²/P over 1.04", () => {
    expect(rows("line current A")[0]?.[0]).toBe((36_000 / (Math.sqrt(3) * 480)).toPrecision(5));
    expect(rows("cold target Ω")[0]?.[0]).toBe((480 ** 2 / 36_000 / 1.04).toPrecision(5));
  });

  it("gives the first second's power: the star as found, and two branches in series once one is open", () => {
    const [a, b, c] = [6.4, 6.38, 6.43];
    // A floating star of unequal branches: V²·(Ra + Rb + Rc)/(Ra·Rb + Rb·Rc + Rc·Ra), by star-delta.
    const star = (480 ** 2 * (a + b + c)) / (a * b + b * c + c * a);
    const series = 480 ** 2 / (a + b);
    expect(rows("first second W").map(([watts]) => watts)).toEqual([
      star.toFixed(0),
      series.toFixed(0),
      series.toFixed(0),
    ]);
    expect(rows("L3-L1 reads Ω").map(([ohms]) => ohms)).toEqual(["12.83", "open", "open"]);
  });

  it("shows a slip as an error of the sheet with its reason, and recovers", () => {
    const [sound, slip, mended] = rows("cold target Ω");
    expect([sound, slip, mended]).toEqual([["6.1538"], ["#VALUE!"], ["6.1538"]]);
    expect(printed).toContain('power: "-36 kW" is not allowed; expected more than 0 W');
    expect(printed).toContain("power: missing; expected more than 0 W");
    expect(printed).toContain("power: true is not allowed; expected more than 0 W");
  });

  it("saves what it shows", () => {
    const file = /^Saved as (.+)$/m.exec(printed)?.[1] ?? "";
    const saved = readFileSync(file, "utf8");
    expect(saved).toContain("preload kN,11.743");
    // T = K·F·d: 132 lbf·in is 14.914 N·m; over 0.2 · 6.35 mm. 2/0 AWG is 67.43 mm² (ASTM B258).
    expect(((132 * 0.112984829) / (0.2 * 0.00635) / 1000).toPrecision(5)).toBe("11.743");
    expect(saved).toContain('"lug for 2/0 AWG, mm²",67.431');
  });
});
