/** The degraded-running example prints the figures that were worked out for its case outside the library. */
import { execFileSync } from "node:child_process";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { odexState } from "../support/odex.ts";
import { packed } from "./consume.ts";

const printed = execFileSync(process.execPath, [join("examples", "run-it-degraded.mjs")], {
  cwd: packed.project,
  encoding: "utf8",
});
const lines = printed.split("\n");
const rule = lines.findIndex((line) => /^-+( {2}-+)+$/.test(line));
/** Cells by the widths of the rule below the headings. */
const widths = (lines[rule] ?? "").split("  ").map((dashes) => dashes.length);
const cells = (line: string): string[] => {
  let from = 0;
  return widths.map((width) => {
    const cell = line.slice(from, from + width).trim();
    from += width + 2;
    return cell;
  });
};
const headings = cells(lines[rule - 1] ?? "");
const rows = lines.slice(rule + 1, rule + 5).map((line) => {
  const row = cells(line);
  return Object.fromEntries(headings.map((heading, i) => [heading, row[i] as string]));
});
const column = (heading: string): string[] => rows.map((row) => row[heading] as string);

describe("run it degraded", () => {
  it("compares the four ways of running", () => {
    expect(column("way")).toEqual(["as it was", "leave as is", "untie star points", "isolate bank A"]);
  });

  // Nodal solve and Millman's theorem outside the library: 40 kW, 480 V, two tied stars, one L1 element open.
  it("has power, stress and unbalance of the nodal solve", () => {
    expect(column("kW")).toEqual(["40.0", "32.0", "30.0", "20.0"]);
    expect(column("worst element")).toEqual(["1.00 ×", "1.44 ×", "1.00 ×", "1.00 ×"]);
    expect(column("unbalance")).toEqual(["0.0 %", "26.0 %", "34.9 %", "0.0 %"]);
    // 40 kW at 480 V draws 48.11 A; a bank of its own half of it.
    expect(column("lines, A")[0]).toBe("48.1 / 48.1 / 48.1");
    expect(column("lines, A")[3]).toBe("24.1 / 24.1 / 24.1");
  });

  it("names the live break: 1.2 and 1.5 times the branch voltage, and none where the bank is isolated", () => {
    const branch = 480 / Math.sqrt(3);
    expect(column("open ends")).toEqual([
      "none",
      `live, ${(1.2 * branch).toFixed(0)} V`,
      `live, ${(1.5 * branch).toFixed(0)} V`,
      "none",
    ]);
  });

  it("has the heat-up times of an independent integrator, and never where the power does not hold the set point", () => {
    // Panel factor 0.35 Btu/(h·ft²·°F) on 40 m²; 0.03 m³/s at 0.075 lb/ft³, mean specific heat 1013.51 J/(kg·K).
    const density = (0.075 * 0.45359237) / 0.3048 ** 3;
    const loss = 0.35 * 5.678263341113488 * 40 + 0.03 * density * 1013.51;
    const steel = (t: number): number => 425 + 0.773 * t - 1.69e-3 * t ** 2 + 2.22e-6 * t ** 3;
    const hoursTo = (power: number): string => {
      if (power <= loss * 180) return "never";
      const [time] = odexState((t) => [(120e3 + 400 * steel(t)) / (power - loss * (t - 20))], 20, [0], 200);
      return `${((time as number) / 3600).toFixed(2)} h`;
    };
    expect(column("to 200 °C")).toEqual([40e3, 32e3, 30e3, 20e3].map(hoursTo));
    expect(column("to 200 °C")[3]).toBe("never");
    expect(column("ends at")).toEqual(
      [40e3, 32e3, 30e3, 20e3].map((p) => `${(20 + p / loss).toFixed(0)} °C`),
    );
  });

  it("puts the hottest element where the stress is", () => {
    const surfaces = column("its surface").map((text) => Number.parseFloat(text));
    expect(Math.max(...surfaces)).toBe(surfaces[1]);
    expect(surfaces[2]).toBe(surfaces[0]);
  });

  it("counts the energy of a shift: heat-up and holding, or full power to the end", () => {
    const kwh = column("kWh per shift").map(Number);
    expect(kwh[3]).toBe(160);
    expect(kwh[0]).toBeGreaterThan(160);
    column("cost, 10 days").forEach((cost, i) => {
      expect(Math.abs(Number(cost) - 2 * (kwh[i] as number))).toBeLessThanOrEqual(1.5);
    });
  });

  it("carries its cautions and defers", () => {
    for (const words of [
      "An open element is not a dead one",
      "locked out and proved dead",
      "licensed electrician govern",
    ]) {
      expect(printed).toContain(words);
    }
  });
});
