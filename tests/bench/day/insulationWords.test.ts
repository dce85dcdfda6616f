/**
 * Insulation at its limits: IEC 60364-6, Table 6.1, and IEC 60204-1, 18.3, ask for 1 MΩ or more. From 1 kΩ on it may be damp, below it is metal
 * or carbon: common practice, no published source.
 */
import type { Figure } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import {
  clearsLimit,
  doubtfulInsulation,
  insulationSteps,
  poorInsulation,
} from "../../../src/bench/day/insulationConcerns.ts";
import { day, judged } from "../site/made.ts";

const at = (
  node: string,
  value: number | "open",
  verdict: Figure["verdict"],
  halfWidth: number | null = null,
): Figure => ({
  ...judged(`insulation at ${node}, IEC 60364-6`, verdict, "Ω"),
  ...{ value, halfWidth, limit: { low: 1e6, high: null } },
});
const of = (...insulation: readonly Figure[]) => day([], { insulation });

describe("insulation just at its limit", () => {
  it("clears it, and so does one whose error just reaches it", () => {
    expect([
      clearsLimit(at("L1", 1e6, "within")),
      clearsLimit(at("L1", 1.05e6, "within", 0.05e6)),
      clearsLimit(at("L1", 999_999, "outside")),
      clearsLimit(at("L1", 1.05e6, "undecided", 50_001)),
    ]).toEqual([true, true, false, false]);
    // What clears the figure and is still undecided was read at too low a test voltage.
    expect(doubtfulInsulation(of(at("L1", 1e6, "undecided"))).map(({ words }) => words)).toEqual([
      "insulation at L1 1.00 MΩ, read below the test voltage that IEC 60364-6 is for",
    ]);
  });
});

describe("insulation short of what makers ask", () => {
  const by = (rule: string, verdict: Figure["verdict"]): Figure => ({
    ...at("L1", 3e6, verdict),
    ...{ label: `insulation at L1, ${rule}`, limit: { low: 20e6, high: null } },
  });
  it("is in doubt by the limits for service, below the least by those of the codes, and by no other", () => {
    // Limits of new elements, of other apparatus and of extra-low voltage are shown, and speak against no module in service: common practice.
    const service = ["1 MΩ per kV", "maker assembly", "maker element", "maker storage"];
    for (const rule of service) {
      expect(doubtfulInsulation(of(by(rule, "outside"))).map(({ words }) => words)).toEqual([
        `insulation at L1 3.00 MΩ, not clear of what is asked in service (${rule} 20.0 MΩ)`,
      ]);
      expect(poorInsulation(of(by(rule, "outside")))).toEqual([]);
    }
    for (const rule of ["IEC 60364-6", "IEC 60204-1"]) {
      expect(poorInsulation(of(by(rule, "outside")))).toHaveLength(1);
      expect(doubtfulInsulation(of(by(rule, "outside")))).toEqual([]);
    }
    for (const rule of ["NETA 100.1", "maker production", "IEC 60364-6 SELV or PELV"]) {
      expect(poorInsulation(of(by(rule, "outside")))).toEqual([]);
      for (const verdict of ["outside", "undecided"] as const)
        expect(doubtfulInsulation(of(by(rule, verdict)))).toEqual([]);
    }
  });
});

describe("poor insulation", () => {
  it("is told with the lowest reading of the node, whatever the order", () => {
    const low = "insulation at L1 210 kΩ, below the least that IEC 60364-6 asks for";
    const [a, b, above] = [
      at("L1", 500e3, "outside"),
      at("L1", 210e3, "outside"),
      at("L1", "open", "outside"),
    ];
    expect(poorInsulation(of(a, above, b))).toEqual([low]);
    expect(poorInsulation(of(b, a))).toEqual([low]);
  });
  it("is dried from a kilohm on, and below that a part lies on the frame", () => {
    const step = (value: number) => insulationSteps(of(at("L1", value, "outside")))[0];
    for (const value of [1000, 210e3]) {
      expect(step(value)?.action).toMatch(/: dry what is damp as its maker allows, renew what stays low\.$/);
      expect(step(value)?.reason).toMatch(/Damp magnesia and dirt read low when cold/);
    }
    expect(step(999)?.action).toMatch(/: find the coil, bar or lead that lies on the frame, and renew/);
    expect(step(999)?.reason).toBe(
      "Insulation at L1 999 Ω, below the least that IEC 60364-6 asks for. So few ohms are metal or carbon on the frame; damp and dirt leave thousands.",
    );
    // The lowest of all nodes decides.
    const [both] = insulationSteps(of(at("L1", 210e3, "outside"), at("L2", 3, "outside")));
    expect(both?.action).toContain("lies on the frame");
    expect(both?.about).toEqual(["L1", "L2"]);
    expect([insulationSteps(of()), insulationSteps(null)]).toEqual([[], []]);
  });
});
