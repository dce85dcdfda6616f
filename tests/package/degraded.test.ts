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

// Panel factor 0.35 Btu/(h·ft²·°F) on 40 m²; 0.03 m³/s at 0.075 lb/ft³, mean specific heat 1013.51 J/(kg·K).
const density = (0.075 * 0.45359237) / 0.3048 ** 3;
const loss = 0.35 * 5.678263341113488 * 40 + 0.03 * density * 1013.51;
const powers = [40e3, 32e3, 30e3, 20e3];
const SHIFT = 8 * 3600;
const steel = (t: number): number => 425 + 0.773 * t - 1.69e-3 * t ** 2 + 2.22e-6 * t ** 3;
/** Seconds from 20 °C to 200 °C by an ODE package, the clock along the temperature; `null` if never. */
function timeTo200(power: number): number | null {
  if (power <= loss * 180) return null;
  const [time] = odexState((t) => [(120e3 + 400 * steel(t)) / (power - loss * (t - 20))], 20, [0], 200);
  return time as number;
}

describe("run it degraded", () => {
  it("compares the four ways of running", () => {
    expect(column("way")).toEqual(["healthy", "leave as is", "untie star points", "isolate bank A"]);
  });

  // Nodal solve and Millman's theorem outside the library: 40 kW, 480 V, two tied stars, one L1 element open.
  it("has power, stress and unbalance of the nodal solve", () => {
    expect(column("kW")).toEqual(["40.0", "32.0", "30.0", "20.0"]);
    expect(column("worst element")).toEqual(["A-L1 1.00 ×", "B-L1 1.44 ×", "B-L1 1.00 ×", "B-L1 1.00 ×"]);
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
    expect(column("to 200 °C")).toEqual(
      powers.map((power) => {
        const time = timeTo200(power);
        return time === null ? "never" : `${(time / 3600).toFixed(2)} h`;
      }),
    );
    expect(column("to 200 °C")[3]).toBe("never");
    expect(column("would end at")).toEqual(powers.map((p) => `${(20 + p / loss).toFixed(0)} °C`));
  });

  it("puts the hottest element where the stress is", () => {
    const surfaces = column("its surface").map((text) => Number.parseFloat(text));
    expect(Math.max(...surfaces)).toBe(surfaces[1]);
    expect(surfaces[2]).toBe(surfaces[0]);
  });

  it("counts energy, time at the set point and cost of a shift by the same integrator", () => {
    const shifts = powers.map((power) => {
      const heating = timeTo200(power) ?? SHIFT;
      const kwh = (power * heating + loss * 180 * (SHIFT - heating)) / 3.6e6;
      return { kwh, hours: (SHIFT - heating) / 3600 };
    });
    expect(column("kWh per shift")).toEqual(shifts.map(({ kwh }) => kwh.toFixed(0)));
    expect(column("at 200 °C")).toEqual(shifts.map(({ hours }) => `${hours.toFixed(1)} h`));
    // Ten shifts at 0.2 for each kilowatt-hour.
    expect(column("cost, 10 days")).toEqual(shifts.map(({ kwh }) => (2 * kwh).toFixed(0)));
  });

  it("carries its cautions and defers", () => {
    for (const words of [
      "An open element is not a dead one",
      "locked out and proved dead",
      "licensed electrician govern",
      "Take the star tie off the isolated bank as well",
      "B-L1 carries 1.44 times its healthy power",
    ]) {
      // The words may be folded over two lines.
      expect(printed.replace(/\s+/g, " ")).toContain(words);
    }
  });
});
