/** Torque, preload and share of proof of a record's hardware, against printed tables and closed forms. */
import type { RecordFastening } from "electroheat/bench";
import { toPoundForceInches, toSquareInches, toSquareMillimeters } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { assessHardware } from "../../../src/bench/site/hardware.ts";
import { threadOf } from "../../../src/bench/site/threads.ts";
import { numberOf, read, refused, the } from "./made.ts";

const assess = (...hardware: readonly RecordFastening[]) => assessHardware(read({ hardware }));
const figuresOf = (one: Omit<RecordFastening, "id">) => {
  const [only] = assess({ id: "studs", ...one });
  if (only === undefined) throw new Error("nothing assessed");
  return only.figures;
};
const steel = { standard: "ISO 898-1", grade: "8.8" };
const inLbfIn = (newtonMeters: number): number => toPoundForceInches(newtonMeters as never);

describe("threads as people write them", () => {
  it("reads published sizes under any usual spelling", () => {
    expect(threadOf("M8")).toEqual(threadOf("m 8 × 1.25"));
    expect(threadOf("#10-32")).toEqual(threadOf("10-32 UNF"));
    // Source: ISO 898-1, nominal stress area; ASME B1.1.
    expect(toSquareMillimeters(threadOf("M8x1.25").stressArea)).toBeCloseTo(36.6, 6);
    expect(toSquareInches(threadOf("1/4-20").stressArea)).toBeCloseTo(0.0318, 6);
  });

  it("works out the stress area of a size that the tables do not have", () => {
    // Source: ISO 898-1, fine threads, M8×1 39.2 mm² (from memory; second leg: π/4·(8 − 0.938194)²).
    expect(toSquareMillimeters(threadOf("M8x1").stressArea)).toBeCloseTo(39.2, 1);
    // Source: Shigley table 8-2, 5/8-11: 0.226 in² (from memory; second leg: π/4·(5/8 − 0.9743/11)²).
    expect(toSquareInches(threadOf("5/8-11").stressArea)).toBeCloseTo(0.226, 3);
  });

  it.each([
    "M",
    "bolt",
    "1/4",
    "#14-20",
    "3-48",
    "M7",
    "M8x20",
    "1/0-20",
    "0/4-20",
    "1/4-0",
    "M8x0",
    "#1/4-20 x",
  ])("refuses %s", (thread) => {
    const issues = refused(() => assess({ id: "studs", thread }));
    expect(issues.map(({ path }) => path)).toEqual(["hardware.0.thread"]);
    expect(issues[0]?.message.startsWith("hardware.0.thread: ")).toBe(true);
  });
});

describe("torque to use", () => {
  // Source: switchgear maker's installation guide, table 1, copper busbar connections; M5 is blank there and 5.0 under general connections.
  it.each([
    ["M6", 6.5],
    ["M8", 17],
    ["M5", 5],
    ["M8x1", 17],
  ])("of %s is that of the published table, %f N·m", (thread, expected) => {
    const torque = the(figuresOf({ thread }), "torque to use");
    expect(torque.value).toBeCloseTo(expected, 9);
    expect(torque.name).toBe("typical");
    expect(torque.basis).toContain("switchgear-installation-guide, table 1");
  });

  it("is the maker's before any table", () => {
    const torque = the(figuresOf({ thread: "M6", makerTorque: "5.0 N·m" }), "torque to use");
    expect([torque.value, torque.name, torque.caution]).toEqual([5, "maker", null]);
  });

  it("is held under the printed maximum of stainless, lbf·in", () => {
    // Sources: NEMA CC 1-2009 (80 for 1/4 in, 480 for 1/2 in); production torque guide, maximum of 18-8 (75 at 1/4 in).
    const of = (thread: string, standard: string, grade: string): number =>
      inLbfIn(
        numberOf(
          figuresOf({ thread, strength: { standard, grade }, condition: "dry stainless on stainless" }),
          "torque to use",
        ),
      );
    expect(of("1/4-20", "SAE J429", "5")).toBeCloseTo(80, 9);
    expect(of("1/4-20", "ASTM F593", "F593C")).toBeCloseTo(75, 9);
  });

  it("is what the stud takes where that is less than printed, in both of the ways it can give", () => {
    // F = T/(K·d) with the lowest K held at 0.75 of proof (Shigley, equation 8-31), by hand:
    // M5 of A2-70 (450 MPa, 14.2 mm², ISO 3506-1, ISO 898-1) with anti-seize (K 0.14): 0.75·450·14.2·0.14·0.005 = 3.355 N·m, 5 are printed.
    // M8 (36.6 mm²): 0.75·450·36.6·0.14·0.008 = 13.83 N·m, 17 are printed.
    // 1/4-20 of F593C (65 ksi = 448.16 MPa, 0.0318 in² = 20.516 mm²): 0.75·448.16·20.516·0.14·0.00635 = 6.130 N·m; 80 lbf·in = 9.04 are printed.
    const greased = (thread: string, standard: string, grade: string) =>
      figuresOf({ thread, strength: { standard, grade }, condition: "stainless with anti-seize" });
    for (const [thread, standard, grade, expected] of [
      ["M5", "ISO 3506-1", "A2-70", 3.355],
      ["M8", "ISO 3506-1", "A2-70", 13.83],
      ["1/4-20", "ASTM F593", "F593C", 6.13],
    ] as const) {
      const figures = greased(thread, standard, grade);
      const { value, name, limit, basis, caution } = the(figures, "torque to use");
      expect((value as number) / expected).toBeCloseTo(1, 3);
      expect([name, limit?.high]).toEqual(["from preload", value]);
      expect(basis).toContain("which is less than");
      expect(basis).not.toContain("nonferrous");
      expect(caution).toContain("The stud does not take");
    }
    // Dry threads twist instead. M5, A2-50 (210 MPa), K 0.3: with d of the stress area 4.252 mm, σ = 1/(0.3·0.005·14.2) = 46.95 MPa and
    // √3·τ = √3·8/(π·4.252³) = 57.4 MPa for each N·m, together 74.15: 210/74.15 = 2.832 N·m, where 0.75 of proof would be 3.355.
    const dry = figuresOf({
      thread: "M5",
      strength: { standard: "ISO 3506-1", grade: "A2-50" },
      condition: "dry stainless on stainless",
    });
    expect((the(dry, "torque to use").value as number) / 2.832).toBeCloseTo(1, 3);
    expect(the(dry, "torque to use").basis).toContain("tension and twist together");
  });

  it("stays within share of proof and yielding for every stud it is given for", () => {
    const conditions = [
      "dry steel",
      "machine-oiled steel",
      "dry stainless on stainless",
      "zinc-flake",
      "stainless with anti-seize",
      "PTFE or wax coated",
    ];
    const studs = [
      ...["A2-50", "A2-70", "A4-80"].map((grade) => ({ standard: "ISO 3506-1", grade })),
      ...["4.6", "8.8", "12.9"].map((grade) => ({ standard: "ISO 898-1", grade })),
      ...["F593A", "F593C"].map((grade) => ({ standard: "ASTM F593", grade })),
      ...["1", "5", "8"].map((grade) => ({ standard: "SAE J429", grade })),
      ...["H02 rod 3/4 in", "all tempers, lowest"].map((grade) => ({ standard: "brass C36000", grade })),
    ];
    const threads = ["M4", "M5", "M6", "M8x1", "M10", "1/4-20", "3/8-16", "1/2-13"];
    let judged = 0;
    for (const condition of conditions)
      for (const strength of studs)
        for (const thread of threads) {
          const figures = figuresOf({ thread, strength, condition });
          const shares = figures.filter(({ unit, verdict }) => unit === "1" && verdict !== null);
          judged += shares.length;
          expect(shares.filter(({ verdict }) => verdict !== "within")).toEqual([]);
          // Whoever applies the greatest torque that counts as within overstresses nothing either.
          const high = the(figures, "torque to use").limit?.high;
          if (typeof high !== "number" || shares.length === 0) continue;
          const applied = figuresOf({ thread, strength, condition, applied: high });
          expect(applied.filter(({ unit, verdict }) => unit === "1" && verdict !== "within")).toEqual([]);
        }
    expect(judged).toBeGreaterThan(700);
  });

  it("is not taken from a maximum for dry threads where they are lubricated", () => {
    // F593D begins at 3/4 in (ASTM F593): the strength of a stud of 1/4 in is not known, and 75 lbf·in is a maximum for dry 18-8.
    const of = (condition: string) =>
      the(
        figuresOf({ thread: "1/4-20", strength: { standard: "ASTM F593", grade: "F593D" }, condition }),
        "torque to use",
      );
    expect(inLbfIn(of("dry stainless on stainless").value as number)).toBeCloseTo(75, 9);
    const greased = of("stainless with anti-seize");
    expect(greased.value).toBeNull();
    expect(greased.basis).toContain("no table that holds for this thread and its condition");
    expect(greased.caution).toContain("F593D");
  });

  it("of a table warns where the thread slips and nobody wrote its strength down", () => {
    // 6.5 N·m at K 0.14: 7.74 kN, 0.86 of the 9.05 kN of M6 in A2-70, where 0.75 is the custom for studs that are used again.
    const caution = (more: object): string =>
      the(figuresOf({ thread: "M6", ...more }), "torque to use").caution ?? "";
    expect(caution({ condition: "stainless with anti-seize" })).toContain("write down the strength");
    expect(caution({ condition: "dry steel" })).not.toContain("write down the strength");
    const known = { standard: "ISO 3506-1", grade: "A2-70" };
    expect(caution({ condition: "stainless with anti-seize", strength: known })).not.toContain("write down");
  });

  it("of the maker stands, with a caution where the stud takes less", () => {
    // 0.75·450·14.2·0.14·0.005 = 3.355 N·m, as above.
    const stud = {
      thread: "M5",
      strength: { standard: "ISO 3506-1", grade: "A2-70" },
      condition: "stainless with anti-seize",
    };
    const tight = the(figuresOf({ ...stud, makerTorque: "5 N·m" }), "torque to use");
    expect([tight.value, tight.name]).toEqual([5, "maker"]);
    expect(tight.caution).toContain("at most 3.35 N·m");
    expect(the(figuresOf({ ...stud, makerTorque: "3 N·m" }), "torque to use").caution).toBeNull();
  });

  it("never lets the tool's tolerance reach over a printed maximum", () => {
    // Production torque guide: at most 240 lbf·in for 3/8 in of 18-8, which is what NEMA CC 1-2009 asks for too.
    const stainless = {
      thread: "3/8-16",
      strength: { standard: "ASTM F593", grade: "F593C" },
      condition: "dry stainless on stainless",
    };
    const of = (applied: string) => the(figuresOf({ ...stainless, applied }), "torque applied").verdict;
    expect(inLbfIn(the(figuresOf(stainless), "torque to use").limit?.high as number)).toBeCloseTo(240, 9);
    expect([of("230 lbf·in"), of("242 lbf·in"), of("210 lbf·in")]).toEqual(["within", "outside", "outside"]);
  });

  it("keeps the maximum where the minimum for the thread is the same", () => {
    // 65 lbf·in is the least of the telecom manuals for 1/4-20 and the most of the production torque guide for 1/4 in of brass.
    // 45 ksi and the roughest thread of the table (K 0.3 and more): the stud itself takes 65.7 lbf·in, so that the tables decide.
    const brass = {
      thread: "1/4-20",
      strength: { standard: "brass C36000", grade: "H04 rod 1/4 in" },
      condition: "dry stainless on stainless",
    };
    const of = (applied: string) => the(figuresOf({ ...brass, applied }), "torque applied").verdict;
    expect([of("62 lbf·in"), of("66 lbf·in"), of("57 lbf·in")]).toEqual(["within", "outside", "outside"]);
  });

  it("warns where the metal is not known and brass would take less", () => {
    const { value, caution } = the(figuresOf({ thread: "3/8-16" }), "torque to use");
    expect(inLbfIn(value as number)).toBeCloseTo(240, 9);
    // 204 lbf·in: production torque guide.
    expect(caution).toContain("brass takes at most 23.0 N·m");
  });

  it("comes from 0.75 of proof where no table has the thread", () => {
    // Source: ISO 898-1 prints 5100 N (three digits) for the proof load of M4 in 8.8. Shigley 8-31: 0.75 of it. K 0.18 is the lowest for dry
    // steel (fastener maker's data). T = K·F·d.
    const figures = figuresOf({ thread: "M4", strength: steel });
    const torque = the(figures, "torque to use");
    expect((torque.value as number) / (0.18 * 0.75 * 5100 * 0.004)).toBeCloseTo(1, 2);
    expect(torque.name).toBe("from preload");
    // With the highest preload just at the limit, in decimal, it is within it.
    expect(the(figures, "share of proof load at the torque to use").verdict).toBe("within");
  });

  it("is not known without maker, table and strength", () => {
    const [only, ...rest] = figuresOf({ thread: "10-32" });
    expect([only?.label, only?.value, rest]).toEqual(["torque to use", null, []]);
    // SAE J429 begins at 1/4 in: the strength is not known, and the figure says why.
    const [beyond] = figuresOf({ thread: "10-32", strength: { standard: "SAE J429", grade: "5" } });
    expect(beyond?.value).toBeNull();
    expect(beyond?.caution).toContain("a size the standard gives 5 for");
  });
});

describe("preload and share of proof", () => {
  it("are bands of the nut factor", () => {
    const figures = figuresOf({ thread: "M6", strength: steel });
    const preload = the(figures, "preload at the torque to use");
    // F = T/(K·d) by hand: K 0.18 to 0.27 for dry steel (fastener maker's data), T 6.5 N·m, d 6 mm.
    const [low, high] = [6.5 / (0.27 * 0.006), 6.5 / (0.18 * 0.006)];
    expect((preload.value as number) - (preload.halfWidth as number)).toBeCloseTo(low, 6);
    expect((preload.value as number) + (preload.halfWidth as number)).toBeCloseTo(high, 6);
    expect(preload.caution).toContain("dry steel");
    // ISO 898-1 prints 11 600 N for the proof load of M6 in 8.8, rounded to three digits.
    const share = the(figures, "share of proof load at the torque to use");
    expect(share.value).toBeCloseTo((low + high) / 2 / 11_600, 2);
    // Shigley, equation 8-31: 0.75 of proof for joints that are reused.
    expect([share.limit, share.verdict]).toEqual([{ low: null, high: 0.75 }, "within"]);
  });

  it("are judged at the torque that was applied", () => {
    const figures = figuresOf({ thread: "M6", strength: steel, applied: "15 N·m" });
    // K 0.18: 15/(0.18·0.006) = 13 889 N is more than the proof load, K 0.27: 9259 N is 0.79 of it: outside on the whole band.
    expect(the(figures, "share of proof load at the torque applied").verdict).toBe("outside");
    expect(the(figures, "torque applied").verdict).toBe("outside");
  });

  it("are not judged without strength", () => {
    const share = the(figuresOf({ thread: "M6" }), "share of proof load at the torque to use");
    expect([share.value, share.verdict, share.caution]).toEqual([
      null,
      null,
      "no strength standard and class in the record",
    ]);
  });
});

describe("torque applied", () => {
  // ±10 % of 6.5 N·m: 5.85 to 7.15; the last digit written down counts half.
  it.each([
    ["6.5 N·m", "within"],
    ["7.15 N·m", "undecided"],
    ["7.1 N·m", "within"],
    ["7.2 N·m", "undecided"],
    ["7.3 N·m", "outside"],
    ["5.7 N·m", "outside"],
    [7.15, "within"],
    [5.85, "within"],
    [5.849, "outside"],
  ])("of %s is %s", (applied, verdict) => {
    expect(the(figuresOf({ thread: "M6", applied }), "torque applied").verdict).toBe(verdict);
  });

  it("has no upper limit of its own against a minimum", () => {
    // 10-24 has a minimum only: 27 lbf·in (telecom battery-plant manuals).
    const { limit } = the(figuresOf({ thread: "10-24", applied: "40 lbf·in" }), "torque applied");
    expect(inLbfIn(limit?.low as number)).toBeCloseTo(27, 9);
    expect(limit?.high).toBeNull();
  });
});

describe("refusals", () => {
  it("are told together, each under its path", () => {
    const issues = refused(() =>
      assess(
        { id: "a", thread: "M6", condition: "wet" },
        { id: "b", thread: "M6", strength: { standard: "our own", grade: "8.8" } },
        { id: "c", thread: "M6", strength: { standard: "ISO 898-1", grade: "9.9" } },
        { id: "d", thread: "nut" },
      ),
    );
    expect(issues.map(({ path }) => path)).toEqual([
      "hardware.0.condition",
      "hardware.1.strength.standard",
      "hardware.2.strength.grade",
      "hardware.3.thread",
    ]);
  });

  it("nothing in the record, nothing assessed", () => {
    expect(assessHardware(read({}))).toEqual([]);
  });

  it("always say who decides, and what the notes rest on", () => {
    const [only] = assess({ id: "studs", thread: "M6" });
    expect(only?.deferral).toContain("licensed electrician");
    expect(only?.notes.length).toBeGreaterThan(3);
    for (const note of only?.notes ?? [])
      expect(note).toMatch(/\((published|common practice|no published source)[:,] /);
  });
});
