/** The torque to use where a table's maximum or the stud's own limit stands just at it. Tables and closed forms beside each check. */
import type { RecordFastening } from "electroheat/bench";
import { tighteningTorque } from "electroheat/joint";
import { toPoundForceInches } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { assessHardware } from "../../../src/bench/site/hardware.ts";
import { numberOf, read, the } from "./made.ts";

const figuresOf = (one: Omit<RecordFastening, "id">) =>
  assessHardware(read({ hardware: [{ id: "studs", ...one }] }))[0]?.figures ?? [];
const torque = (one: Omit<RecordFastening, "id">) => the(figuresOf(one), "torque to use");
const source = ({ basis: b }: ReturnType<typeof tighteningTorque>): string =>
  `${b.table} (${b.source}, ${b.edition}; ${b.kind})`;
const TOOL = "±10 % for tool and reading (common practice, no published source)";
const inLbfIn = (newtonMeters: unknown): number => toPoundForceInches(newtonMeters as never);
const STAINLESS = {
  strength: { standard: "ASTM F593", grade: "F593C" },
  condition: "dry stainless on stainless",
} as const;

describe("a printed maximum", () => {
  // NEMA CC 1-2009: 240 and 480 lbf·in for 3/8 and 1/2 in. Production torque guide, maximum of 18-8: 240 and 516 lbf·in, which is less than
  // the table's and a tenth. 1 lbf·in is 0.112985 N·m: 27.1 and 58.3 N·m.
  it.each([
    ["3/8-16", "3/8", 240, 240, "27.1 N·m"],
    ["1/2-13", "1/2", 480, 516, "58.3 N·m"],
  ] as const)(
    "within the tool's room of the torque to use stands beside it, with its source: %s",
    (thread, size, use, most, words) => {
      const found = torque({ thread, ...STAINLESS });
      expect(inLbfIn(found.value)).toBeCloseTo(use, 9);
      expect(inLbfIn(found.limit?.low)).toBeCloseTo(0.9 * use, 9);
      expect(inLbfIn(found.limit?.high)).toBeCloseTo(most, 9);
      const printed = tighteningTorque({ table: "bus-bolts", size, column: "bronzeStainlessGalvanized" });
      const maximum = tighteningTorque({ table: "nonferrous-maximum", size, column: "stainless18-8" });
      expect(found.basis).toBe(`${source(printed)}; ${TOOL}; at most ${words} by ${source(maximum)}`);
    },
  );

  it("is not named where there is none", () => {
    // 5/8 in: NEMA CC 1-2009 has 660 lbf·in, the production torque guide ends at 1/2 in.
    const found = torque({ thread: "5/8-11", strength: { standard: "SAE J429", grade: "8" } });
    expect(inLbfIn(found.limit?.high)).toBeCloseTo(1.1 * 660, 9);
    expect(found.basis).not.toContain("at most");
    expect(found.basis.endsWith(TOOL)).toBe(true);
  });

  it("of brass is held against hardware of unknown metal only, and only above it", () => {
    // Production torque guide, brass: 65 and 204 lbf·in for 1/4 and 3/8 in, none for 5/8 in and metric threads. NEMA CC 1-2009: 80 and 240.
    const BRASS = "Too much for brass: a stud of brass takes at most";
    const caution = (thread: string, more: object = {}) => torque({ thread, ...more }).caution ?? "";
    expect(caution("1/4-20")).toContain(`${BRASS} 7.34 N·m`);
    expect(caution("3/8-16")).toContain(`${BRASS} 23.0 N·m`);
    const known = { strength: { standard: "SAE J429", grade: "5" } };
    for (const said of [caution("5/8-11"), caution("M6"), caution("M8"), caution("3/8-16", known)])
      expect(said).not.toContain("brass");
    // Telecom manuals: 27 lbf·in at the least for 10-24; the guide has 20 for #10 of brass.
    expect(caution("10-24")).toContain(BRASS);
  });
});

describe("a torque of the maker just at what the stud takes", () => {
  // M4 in 8.8 (580 MPa, 8.78 mm², ISO 898-1), dry (K from 0.18): 0.75·580·8.78·0.18·0.004 = 2.75 N·m reach 0.75 of proof (Shigley 8-31).
  const stud = { thread: "M4", strength: { standard: "ISO 898-1", grade: "8.8" } } as const;
  const most = numberOf(figuresOf(stud), "torque to use");
  it("has no caution; the least bit more has", () => {
    expect(most / (0.75 * 580 * 8.78 * 0.18 * 0.004)).toBeCloseTo(1, 3);
    expect(torque({ ...stud, makerTorque: most }).caution).toBeNull();
    expect(torque({ ...stud, makerTorque: most * 1.000001 }).caution).toBe(
      "By the strength and thread condition of the record the stud takes at most 2.75 N·m: check both, and ask the maker before this torque is used.",
    );
  });
});

describe("a thread that slips", () => {
  // Conditions by their names: oil, phosphate and oil, anti-seize, PTFE and wax are lubricants; plating and zinc-flake are not.
  const lubricated = [
    "machine-oiled steel",
    "phosphated and oiled",
    "stainless with anti-seize",
    "black oxide and oil",
    "PTFE or wax coated",
  ];
  const dry = ["dry steel", "cadmium-plated", "zinc-plated", "dry stainless on stainless", "zinc-flake"];
  it("asks for the strength where a table's torque is taken, under each name of a lubricant and no other", () => {
    const asks = (condition: string) =>
      torque({ thread: "M8", condition }).caution?.includes("write down the strength") ?? false;
    expect(lubricated.map(asks)).toEqual([true, true, true, true, true]);
    expect(dry.map(asks)).toEqual([false, false, false, false, false]);
  });
  it("has no torque from a maximum for dry threads, where the strength is not known", () => {
    // ASTM F593 gives F593D from 3/4 in on: of 1/4 in the strength is not known.
    const known = (condition: string) =>
      torque({ thread: "1/4-20", strength: { standard: "ASTM F593", grade: "F593D" }, condition }).value;
    expect(lubricated.map(known)).toEqual([null, null, null, null, null]);
    for (const condition of dry) expect(inLbfIn(known(condition))).toBeCloseTo(75, 9);
  });
});
