/**
 * Marginal likelihoods against brute force. The reference is written out here for one star of single elements read in pairs:
 * y = R_a + R_b + ρ, its covariance from the world model of the docstrings, its determinant by cofactors, and the fault's
 * parameter on a grid of 4 000 points. It shares nothing with the library but the documented model.
 */
import { diagnose, type Explanation } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { amps, asked, bank, firstFaults, OHMMETER, pairs, reading, topOf, volts3 } from "./sheets.ts";

type Triple = readonly [number, number, number];

/** Which branches each pair reads: L1-L2, L2-L3, L3-L1. */
const READS: readonly Triple[] = [
  [1, 1, 0],
  [0, 1, 1],
  [1, 0, 1],
];

const R = 12;
const MIDDLE = 1.025;
const COMMON = 0.15 / Math.sqrt(12) / MIDDLE;
const INDIVIDUAL = 0.02;

/** ln N(y; f, S) with S = D + gain·f·fᵀ + leads + common + individual, by cofactors. */
function logDensity(
  y: Triple,
  branches: Triple,
  joint: Triple,
  leads: { mean: number; deviation: number },
): number {
  const f = READS.map(
    (row) =>
      row.reduce((sum, one, k) => sum + one * ((branches[k] as number) + (joint[k] as number)), 0) +
      leads.mean,
  );
  const common = READS.map((row) => row.reduce((sum, one, k) => sum + one * (branches[k] as number), 0));
  const gain = OHMMETER.ofReading / 2 / Math.sqrt(3);
  const S = READS.map((row, i) =>
    READS.map((other, j) => {
      let s = gain * gain * (f[i] as number) * (f[j] as number) + leads.deviation ** 2;
      s += COMMON * COMMON * (common[i] as number) * (common[j] as number);
      for (let k = 0; k < 3; k += 1) {
        s += (row[k] as number) * (other[k] as number) * (INDIVIDUAL * (branches[k] as number)) ** 2;
      }
      if (i === j) {
        const limit = (OHMMETER.ofReading / 2) * (y[i] as number) + OHMMETER.digits * OHMMETER.resolution;
        s += limit ** 2 / 3 + OHMMETER.resolution ** 2 / 12;
      }
      return s;
    }),
  );
  const at = (i: number, j: number): number => S[i % 3]?.[j % 3] as number;
  const cofactor = (i: number, j: number): number =>
    at(i + 1, j + 1) * at(i + 2, j + 2) - at(i + 1, j + 2) * at(i + 2, j + 1);
  const determinant = [0, 1, 2].reduce((sum, j) => sum + at(0, j) * cofactor(0, j), 0);
  let square = 0;
  for (let i = 0; i < 3; i += 1) {
    for (let j = 0; j < 3; j += 1) {
      square +=
        (((y[i] as number) - (f[i] as number)) * cofactor(i, j) * ((y[j] as number) - (f[j] as number))) /
        determinant;
    }
  }
  return -0.5 * (square + Math.log(determinant) + 3 * Math.log(2 * Math.PI));
}

function marginal(f: (t: number) => number): number {
  const count = 4_000;
  const values = Array.from({ length: count }, (_, i) => f((i + 0.5) / count));
  const most = values.reduce((a, b) => Math.max(a, b));
  return most + Math.log(values.reduce((sum, value) => sum + Math.exp(value - most), 0) / count);
}

const geometric = (low: number, high: number, t: number): number => low * (high / low) ** t;

/** Reference evidence of a fault on one branch. */
function reference(
  y: Triple,
  kind: string,
  branch: number,
  leads: { mean: number; deviation: number },
): number {
  const base: Triple = [R * MIDDLE, R * MIDDLE, R * MIDDLE];
  const factor = (value: number): Triple =>
    base.map((r, k) => (k === branch ? r * value : r)) as unknown as Triple;
  const none: Triple = [0, 0, 0];
  switch (kind) {
    case "sound":
      return logDensity(y, base, none, leads);
    case "shorted turns":
      return marginal((t) => logDensity(y, factor(1 - (0.05 + 0.85 * t)), none, leads));
    case "element off value": {
      const [a, b] = [Math.log(0.9 / 0.6), Math.log(2 / 1.15)];
      return marginal((t) => {
        const below = t < a / (a + b);
        const u = below ? (t * (a + b)) / a : (t * (a + b) - a) / b;
        return logDensity(y, factor(below ? geometric(0.6, 0.9, u) : geometric(1.15, 2, u)), none, leads);
      });
    }
    default:
      return marginal((t) =>
        logDensity(
          y,
          base,
          none.map((_, k) => (k === branch ? geometric(1e-3, 30, t) : 0)) as unknown as Triple,
          leads,
        ),
      );
  }
}

const LEADS = {
  unknown: { mean: 0.25, deviation: 0.5 / Math.sqrt(12) },
  "taken off": { mean: 0, deviation: 0 },
} as const;

describe("evidence against brute force", () => {
  const sheets: readonly Triple[] = [
    [24.9, 24.8, 24.9],
    [29.4, 24.7, 29.5],
    [20.1, 24.8, 20.2],
    [25.9, 24.9, 25.8],
    [26.6, 26.5, 26.6],
  ];
  it.each(["unknown", "taken off"] as const)("agrees for every single fault of a star, leads %s", (leads) => {
    for (const y of sheets) {
      const question = asked({ banks: [bank("A", "star", R)] }, pairs(y), {
        instruments: { ohmmeter: { ...OHMMETER, leads } },
        priors: { misLinked: 0 },
      });
      const found = diagnose(question);
      let compared = 0;
      let odds = Number.NEGATIVE_INFINITY;
      for (const one of found.groups.flatMap(({ explanations }) => explanations)) {
        if (one.faults.length > 1 || one.probability < 1e-4) continue;
        const [fault] = one.faults;
        const name =
          fault === undefined ? "" : "element" in fault ? fault.element : "place" in fault ? fault.place : "";
        const branch = Number(/L([123])/.exec(name)?.[1] ?? 1) - 1;
        // A fault that ohms between terminals cannot show predicts what the sound module does.
        const kind = one.unseen.length > 0 ? "sound" : (fault?.kind ?? "sound");
        const expected = reference(y, kind, branch, LEADS[leads]);
        expect(Math.abs(one.logLikelihood - expected), `${y} ${fault?.kind} ${name}`).toBeLessThan(
          // Explanations that come to something are evaluated in full, the others with the sound module's covariance.
          one.probability > 2e-3 ? 0.06 : 1,
        );
        odds = Math.max(odds, expected);
        compared += 1;
      }
      expect(compared).toBeGreaterThan(0);
      expect(Number.isFinite(odds)).toBe(true);
    }
  });
});

const kinds = (one: Explanation | undefined): string =>
  (one?.faults ?? [])
    .map(
      (fault) => `${fault.kind} ${"element" in fault ? fault.element : "place" in fault ? fault.place : ""}`,
    )
    .sort()
    .join(" + ");

describe("pairs of faults", () => {
  const module = { banks: [bank("A", "delta", 15.4, { elementsInParallel: 2 })] };
  // Readings worked by hand: a delta of sides a, b, c reads a·(b + c)/(a + b + c) across a. Leads taken off.
  const delta = (a: number, b: number, c: number): readonly number[] =>
    [
      [a, b, c],
      [b, c, a],
      [c, a, b],
    ].map(([x, y, z]) => {
      const [p, q, r] = [x as number, y as number, z as number];
      return Math.round(((p * (q + r)) / (p + q + r)) * 100) / 100;
    });
  const instruments = { ohmmeter: { ...OHMMETER, ofReading: 0.002, digits: 1, leads: "taken off" } };

  it("finds an open element and shorted turns on another side, which no single fault explains", () => {
    const sides = [15.4, 1 / (1 / 15.4 + 1 / (15.4 * 0.4)), 7.7].map((r) => r * 1.025) as [
      number,
      number,
      number,
    ];
    const readings = pairs(delta(...sides));
    const single = diagnose(asked(module, readings, { instruments }));
    expect(single.outcome).toBe("nothing fits");
    const found = diagnose(asked(module, readings, { instruments, depth: "pairs" }));
    expect(found.outcome).not.toBe("nothing fits");
    const named = topOf(found).map(kinds);
    expect(named).toContain("element open A-L1L2-1 + shorted turns A-L2L3-1");
    const one = topOf(found).find((each) =>
      kinds(each).startsWith("element open A-L1L2-1 + shorted turns A-L2L3"),
    );
    const turns = one?.estimates.find(({ of }) => of === "turns shorted");
    expect(Math.abs((turns?.value as number) - 0.6)).toBeLessThan(0.05);
    expect(one?.faults[turns?.fault as number]?.kind).toBe("shorted turns");
  });

  it("finds a bank left in star beside a lost line", () => {
    // Two deltas of 12 Ω hot sides at 480 V, bank B in star, L1 dead: A draws V·(1/12 + 1/24) in L2 and L3, B a sixth of its sides' sum.
    const current = 480 * (1 / 12 + 1 / 24 + 1 / 24);
    const question = asked(
      { banks: ["A", "B"].map((id) => bank(id, "delta", 12 / 1.04 / 1.025)) },
      [
        ...volts3([240, 480, 240]),
        ...amps([0, current, current].map((one) => Math.round(one * 10) / 10)),
        reading({ kind: "current", at: "L2", into: "B", reads: 20 }),
      ],
      { depth: "pairs" },
    );
    const found = diagnose(question);
    expect(found.outcome).toBe("explained");
    // No single fault does this; a slip in the links beside one is then weighed at any depth, two other faults only if asked for.
    const single = diagnose({ ...question, depth: "single" });
    expect(single.outcome).toBe("explained");
    expect(topOf(single).map(({ faults }) => faults)).toEqual([
      [
        { kind: "mis-linked", bank: "B", as: "star" },
        { kind: "lost line", line: "L1" },
      ],
    ]);
    // With L1 dead, bank B with its side L2-L3 open is the same string of two elements: one group, and the open the likelier.
    expect(topOf(found).map(({ faults }) => faults)).toEqual(
      expect.arrayContaining([
        [
          { kind: "mis-linked", bank: "B", as: "star" },
          { kind: "lost line", line: "L1" },
        ],
        [
          { kind: "element open", element: "B-L2L3" },
          { kind: "lost line", line: "L1" },
        ],
      ]),
    );
    expect(found.groups[0]?.probability).toBeGreaterThan(0.95);
  });

  it("keeps a sound module sound: pairs take no more than their priors", () => {
    const question = asked(module, pairs([5.3, 5.29, 5.31]), { instruments });
    const single = diagnose(question);
    const all = diagnose({ ...question, depth: "pairs" });
    expect(firstFaults(single)).toEqual([]);
    expect(firstFaults(all)).toEqual([]);
    const sound = (of: typeof all): number =>
      topOf(of).find(({ faults }) => faults.length === 0)?.probability as number;
    expect(sound(all)).toBeGreaterThan(0.85 * sound(single));
    expect(sound(all)).toBeLessThanOrEqual(sound(single) + 1e-9);
  });
});
