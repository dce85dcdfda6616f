/**
 * What the example on feeding a module prints, held to the tables it names: Table 310.16, 75 °C (6 AWG 65 A, 1/0 150 A, 8 AWG 50 A), the
 * 48 A rule, 240.6(A), and method B2 of Table B.52.4 (25 mm² 80 A, 120 mm² 206 A) with 0.87 at 40 °C. By hand: 75 A · 0.71 at 60 °C is
 * 53.25 A and 170 A · 0.76 at 55 °C is 129.2 A, each the last with its device as the next size up; nine conductors take 0.7, and 55 A · 0.91 · 0.7
 * is less than 36.08 A.
 */
import { execFileSync } from "node:child_process";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { packed } from "./consume.ts";

describe("examples/feed-the-module.mjs", () => {
  let printed = "";
  beforeAll(() => {
    printed = execFileSync(process.execPath, [join("examples", "feed-the-module.mjs")], {
      cwd: packed.project,
      encoding: "utf8",
    });
  });
  const part = (from: string, to: string): string => {
    const start = printed.indexOf(from);
    const end = printed.indexOf(to, start + 1);
    expect(start, from).toBeGreaterThanOrEqual(0);
    return printed.slice(start, end < 0 ? undefined : end);
  };

  it("feeds 36 kW at 480 V with 6 AWG and 60 A, unsplit", () => {
    const text = part("36 kW", "IEC 60364");
    expect(text).toContain("6 AWG copper, 60 A device for a design current of 54.13 A");
    expect(text).toMatch(/decided by +termination/);
    expect(text).toMatch(/still good at +60 °C/);
    expect(text).toContain('NEC 2023, Table 310.16, 6 AWG, column "copper 75"');
    expect(text).toContain("not asked for up to 48 A");
  });

  it("feeds 90 kW at 480 V with 1/0 and 150 A, split into three circuits of 8 AWG and 50 A", () => {
    const text = part("90 kW", "IEC 60364");
    expect(text).toContain("1/0 AWG copper, 150 A device for a design current of 135.3 A");
    expect(text).toContain("3 circuits of 36.08 A, 50 A device each");
    expect(text).toMatch(/own raceways +8 AWG each/);
    expect(text).toMatch(/one raceway +6 AWG each, 9 conductors × 0.7/);
    expect(text).toMatch(/still good at +55 °C/);
    expect(text).toContain("NEC 2023, 425.22(B)");
  });

  it("feeds both at 400 V by IEC without a factor for continuous load", () => {
    const small = part("IB = 51.96 A", "90 kW");
    expect(small).toContain("25 mm² copper, In = 63 A circuit-breaker");
    expect(small).toContain("69.60 A = 80 A × 0.87");
    expect(small).toContain('IEC 60364-5-52:2009, Table B.52.4, 25 mm², column "B2 3" (published');
    const large = part("IB = 129.9 A", "Before acting");
    expect(large).toContain("120 mm² copper, In = 160 A gG fuse");
    expect(large).toMatch(/decided by +In ≤ Iz\/k3/);
    expect(small).toMatch(/still good at +45 °C/);
    expect(large).toMatch(/still good at +40 °C/);
  });

  it("ends with the cautions and with who decides", () => {
    const end = part("Before acting", "no such text");
    expect(end).toContain("not read in print");
    expect(end).toContain("425.22(B)");
    expect(end).toContain("a licensed electrician decide");
  });
});
