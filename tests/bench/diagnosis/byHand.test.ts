/**
 * The diagnosis where it is small enough to be worked by hand: one star, a reading or three, one kind of fault at a time. Each figure
 * follows from the model of the docstrings (Gaussian readings, log-uniform faults) by sums written out here, or by a fine grid.
 */
import { type Diagnosis, diagnose, type Explanation, nextMeasurements } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { amps, asked, bank, CLAMP, OHMMETER, pairs, reading, VOLTMETER, volts3 } from "./sheets.ts";

const STAR = { banks: [bank("A", "star", 12)] };
const SURE = { ohmmeter: { ...OHMMETER, leads: "taken off" } };
/** The middle of −5 to +10 %. */
const R = 12 * 1.025;
const MAKE = 0.15 / Math.sqrt(12) / 1.025;
const EACH = 0.02;

const KINDS = [
  ...[
    "elementOpen",
    "shortedTurns",
    "offValue",
    "joint",
    "openJoint",
    "misLinked",
    "lostLine",
    "unfedBankLine",
  ],
  ...["earthFault", "earthedTerminal", "otherRating", "feedConnected", "supplyUnbalance"],
];
/** Priors of none but these kinds. */
const only = (given: Readonly<Record<string, number>> = {}): object => ({
  ...Object.fromEntries(KINDS.map((name) => [name, 0])),
  ...given,
});
const all = ({ groups }: Diagnosis): readonly Explanation[] =>
  groups.flatMap(({ explanations }) => explanations);
const theOne = (found: Diagnosis, kind: string | undefined): Explanation => {
  const [one, ...others] = all(found).filter(({ faults }) => faults[0]?.kind === kind);
  expect([one === undefined, others]).toEqual([false, []]);
  return one as Explanation;
};

/** Half the percentage and the digits as one rectangular error, the rounding as another; the other half of the percentage is common. */
const own = ({ ofReading, digits, resolution }: typeof OHMMETER | typeof CLAMP, reads: number): number =>
  ((ofReading / 2) * reads + digits * resolution) ** 2 / 3 + resolution ** 2 / 12;
const gain = ({ ofReading }: { readonly ofReading: number }): number => ofReading / 2 / Math.sqrt(3);
/** ln of a mean of exponentials. */
function logMean(logs: readonly number[]): number {
  const most = logs.reduce((a, b) => Math.max(a, b));
  return most + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - most), 0) / logs.length);
}
const normal = (y: number, mean: number, variance: number): number =>
  -0.5 * ((y - mean) ** 2 / variance + Math.log(2 * Math.PI * variance));
/** ln N(y; mean, a·1 + b·J) for three readings: determinant a²·(a + 3b). */
function normal3(y: readonly number[], mean: readonly number[], a: number, b: number): number {
  const d = y.map((one, i) => one - (mean[i] as number));
  const sum = d.reduce((p, q) => p + q);
  const square = d.reduce((p, q) => p + q * q, 0);
  return (
    -0.5 *
    ((square - (b * sum * sum) / (a + 3 * b)) / a + Math.log(a * a * (a + 3 * b)) + 3 * Math.log(2 * Math.PI))
  );
}

describe("one reading of a sound star", () => {
  const f = 2 * R;
  const variance = (y: number): number =>
    own(OHMMETER, y) + f * f * (gain(OHMMETER) ** 2 + MAKE ** 2) + 2 * (EACH * R) ** 2;
  const sound = (y: number): Explanation =>
    theOne(diagnose(asked(STAR, pairs([y]), { instruments: SURE, priors: only() })), undefined);

  it.each([24.6, 22, 27.5])("of %d Ω: its evidence, its deviation and their χ²", (y) => {
    const one = sound(y);
    const z = (y - f) / Math.sqrt(variance(y));
    expect(one.logLikelihood).toBeCloseTo(normal(y, f, variance(y)), 9);
    expect(one.predicted).toEqual([
      { reads: y, predicted: expect.closeTo(f, 9), deviation: expect.closeTo(z, 9) },
    ]);
    expect(one.chiSquare).toBeCloseTo(z * z, 9);
    expect(one.degreesOfFreedom).toBe(1);
    expect([one.probability, one.prior]).toEqual([expect.closeTo(1, 12), expect.closeTo(1, 12)]);
  });

  it("is refuted one time in twenty beyond 1.96 deviations", () => {
    // Quantile of the normal distribution for 0.975: 1.959964 (standard tables).
    let y = f;
    for (let k = 0; k < 20; k += 1) y = f + 1.959964 * Math.sqrt(variance(y));
    expect(sound(y).pValue).toBeCloseTo(0.05, 6);
  });

  // |I1| of a floating star: ∂ln I/∂ln R = −2/3, −1/6, −1/6. |E1|² = (2·V12² + 2·V31² − V23²)/9: ∂ln E/∂ln V = 2/3, −1/3, 2/3.
  const relative =
    gain(CLAMP) ** 2 +
    MAKE ** 2 +
    EACH ** 2 * (4 / 9 + 2 / 36) +
    (0.02 / 1.04) ** 2 +
    0.03 ** 2 +
    0.005 ** 2 * (4 / 9 + 1 / 9 + 4 / 9);

  it("of amps, its line's terminal earthed: the scatter of the coil's current goes with what flows", () => {
    const coil = 480 / Math.sqrt(3) / (R * 1.04);
    const y = 31;
    const readings = [21.7, y, 21.7].map((reads, i) =>
      reading({ kind: "current", at: ["L2", "L1", "L3"][i], reads }),
    );
    const found = diagnose(asked(STAR, readings, { priors: only({ earthedTerminal: 0.002 }) }));
    const one = all(found).find(({ faults }) => JSON.stringify(faults).includes('"L1"')) as Explanation;
    const [before, leaking, behind] = one.predicted;
    expect(leaking?.predicted).toBeGreaterThan(coil + 5);
    for (const each of [before, behind]) expect(each?.predicted).toBeCloseTo(coil, 6);
    for (const { reads, predicted, deviation } of one.predicted) {
      const off = (reads as number) - (predicted as number);
      const whole = own(CLAMP, reads as number) + (predicted as number) ** 2 * relative;
      expect(off / (deviation as number)).toBeCloseTo(Math.sqrt(whole), 4);
    }
  });

  it("of amps: two thirds by its own branch, a sixth by each other", () => {
    const current = 480 / Math.sqrt(3) / (R * 1.04);
    const y = 20;
    const one = theOne(diagnose(asked(STAR, amps([y]), { priors: only() })), undefined);
    const [{ predicted, deviation } = {}] = one.predicted;
    expect(predicted).toBeCloseTo(current, 6);
    const whole = own(CLAMP, y) + current * current * relative;
    expect((y - current) / (deviation as number)).toBeCloseTo(Math.sqrt(whole), 4);
    expect(one.logLikelihood).toBeCloseTo(normal(y, current, whole), 4);
  });
});

describe("ohms to the frame of a module that is not earthed", () => {
  const evidence = (reads: number | "open"): Explanation =>
    theOne(
      diagnose(asked(STAR, [reading({ kind: "insulation", from: "L1", reads })], { priors: only() })),
      undefined,
    );
  it.each([
    // Sound, 1 MΩ to 10 GΩ, as likely in each decade; one in a hundred damp, down to 10 kΩ; a hundredth of those below.
    [5e8, -Math.log(5e8 * Math.log(1e4))],
    [1e6, -Math.log(1e6 * Math.log(1e4))],
    [999_000, Math.log(0.01) - Math.log(999_000 * Math.log(100))],
    [1e4, Math.log(0.01) - Math.log(1e4 * Math.log(100))],
    // Less than a digit of the tester is a digit: its resolution here is 10 kΩ.
    [20, Math.log(0.01) - Math.log(1e4 * Math.log(100))],
    ["open", Math.log(0.25)],
  ] as const)("%s", (reads, log) => {
    expect(evidence(reads).logLikelihood).toBeCloseTo(log, 9);
  });

  it("contradict it below what damp makes, and leave nothing to test with above", () => {
    const at = (reads: number): Explanation => evidence(reads);
    const fine = (reads: number): number | null =>
      theOne(
        diagnose(
          asked(STAR, [reading({ kind: "insulation", from: "L1", reads })], {
            priors: only(),
            instruments: { insulationTester: { ofReading: 0.05, digits: 2, resolution: 1 } },
          }),
        ),
        undefined,
      ).pValue;
    expect([fine(0), fine(9999), fine(1e4)]).toEqual([0, 0, null]);
    // 0.00 MΩ is anything up to 10 kΩ, its last digit.
    expect([at(0).pValue, at(9999).pValue]).toEqual([null, null]);
    expect(at(1e4).pValue).toBeNull();
    expect(at(1e4).degreesOfFreedom).toBe(0);
    expect(at(1e4).predicted[0]).toEqual({ reads: 1e4, predicted: null, deviation: null });
  });
});

describe("an earthed coil, from ohms to the frame", () => {
  const tester = { ofReading: 0.05, digits: 2, resolution: 0.1 };
  const earthed = (readings: Parameters<typeof asked>[1], kind: string, priors: object): Explanation => {
    const found = diagnose(asked(STAR, readings, { instruments: { insulationTester: tester }, priors }));
    return all(found).find(({ faults }) => {
      const [fault] = faults;
      return (
        fault?.kind === kind &&
        ("element" in fault ? fault.element === "A-L1" : "terminal" in fault && fault.terminal === "L1")
      );
    }) as Explanation;
  };
  /** Fault of 10 mΩ to 100 kΩ, each decade alike, unsteady by 3 %; leads of 0.3 Ω; the coil between with its tolerances. */
  const density = (y: number, coil: number, ohms: number): number =>
    normal(
      y,
      ohms + coil,
      own(tester as never, y) + (MAKE ** 2 + EACH ** 2) * coil * coil + 0.3 ** 2 + (0.03 * ohms) ** 2,
    );
  const decades = (count: number): readonly number[] =>
    Array.from({ length: count }, (_, k) => 10 ** (-2 + (7 * (k + 0.5)) / count));

  it.each([3, 40, 900])("%d Ω at L1 mixes every place of the coil on L1 with every fault", (y) => {
    const readings = [reading({ kind: "insulation", from: "L1", reads: y })];
    const one = earthed(readings, "earth fault", only({ earthFault: 0.003 }));
    const places = Array.from({ length: 40 }, (_, k) => (k + 0.5) / 40);
    const wanted = logMean(places.map((x) => logMean(decades(1200).map((ohms) => density(y, x * R, ohms)))));
    expect(Math.abs(one.logLikelihood - wanted)).toBeLessThan(0.05);
  });

  it.each([25, 40])("%d Ω at L2 has a whole coil in the way before it reaches the star point", (y) => {
    const readings = [reading({ kind: "insulation", from: "L2", reads: y })];
    const one = earthed(readings, "earth fault", only({ earthFault: 0.003 }));
    const places = Array.from({ length: 40 }, (_, k) => (k + 0.5) / 40);
    const wanted = logMean(
      places.map((x) => logMean(decades(1200).map((ohms) => density(y, R + (1 - x) * R, ohms)))),
    );
    expect(Math.abs(one.logLikelihood - wanted)).toBeLessThan(0.05);
  });

  it("a terminal has no coil before it at itself, and two at another line", () => {
    const priors = only({ earthedTerminal: 0.002 });
    for (const [from, coil] of [
      ["L1", 0],
      ["S", R],
      ["L2", 2 * R],
    ] as const) {
      const one = earthed([reading({ kind: "insulation", from, reads: 30 })], "earthed terminal", priors);
      const wanted = logMean(decades(8000).map((ohms) => density(30, coil, ohms)));
      expect(Math.abs(one.logLikelihood - wanted), from).toBeLessThan(0.03);
    }
  });

  it.each([0.1, 0.3, 0.62, 0.95])("is told where, at %d of the coil from L1, from both its ends", (x) => {
    // 1 Ω of fault; to L1 the part before it, to the other lines the part behind it and a coil more.
    const readings = ["L1", "L2", "L3"].map((from, i) =>
      reading({ kind: "insulation", from, reads: 1 + (i === 0 ? x * R : (1 - x) * R + R) }),
    );
    const one = earthed(readings, "earth fault", only({ earthFault: 0.003 }));
    const [position, ohms] = one.estimates;
    expect([position?.of, ohms?.of]).toEqual(["position", "fault resistance"]);
    // The piece before it and the fault share what L1 shows; leads of 0.3 Ω and the tolerances of the coil leave a tenth of it.
    for (const [estimate, truth, reach] of [
      [position, x, 0.12],
      [ohms, 1, 1.2],
    ] as const) {
      expect(Math.abs((estimate?.value as number) - truth)).toBeLessThan(reach);
      expect(estimate?.low).toBeLessThan(truth);
      expect((estimate?.high as number) - (estimate?.low as number)).toBeLessThan(3 * reach);
    }
  });

  it("counts as a reading, with what lies between as it is at the best place", () => {
    const readings = [reading({ kind: "insulation", from: "L1", reads: 40 })];
    const one = earthed(readings, "earthed terminal", only({ earthedTerminal: 0.002 }));
    const [{ predicted, deviation } = {}] = one.predicted;
    expect(Math.abs((predicted as number) - 40)).toBeLessThan(1);
    const spread = Math.sqrt(own(tester as never, 40) + 0.3 ** 2 + (0.03 * (predicted as number)) ** 2);
    expect(deviation).toBeCloseTo((40 - (predicted as number)) / spread, 6);
    expect(one.chiSquare).toBeCloseTo((deviation as number) ** 2, 9);
    // One reading, one fault resistance: none is left over.
    expect([one.degreesOfFreedom, one.pValue]).toEqual([0, null]);
  });
});

describe("a joint", () => {
  const decades = (low: number, high: number, count = 6000): readonly number[] =>
    Array.from({ length: count }, (_, k) => low * (high / low) ** ((k + 0.5) / count));

  it.each([0.008, 0.03, 0.4])(
    "of %d V across it: from twice its sound value up, as likely in each decade",
    (y) => {
      const meter = { ofReading: 0.005, digits: 3, resolution: 1e-5 };
      const found = diagnose(
        asked(
          { ...STAR, joints: [{ id: "J", at: "L1", resistance: 1e-4 }] },
          [reading({ kind: "drop", across: "J", reads: y })],
          { instruments: { millivoltmeter: meter }, priors: only({ joint: 0.01 }) },
        ),
      );
      const one = all(found).find(({ faults: [fault] }) => fault?.kind === "joint" && fault.place === "J");
      // One line into two branches side by side: 1.5 times the branch voltage over its own ohms and half of another's.
      const hot = R * 1.04;
      const drop = (ohms: number): number => ((1.5 * 480) / Math.sqrt(3) / (1.5 * hot + ohms)) * ohms;
      const others =
        gain(meter) ** 2 + MAKE ** 2 + EACH ** 2 / 2 + (0.02 / 1.04) ** 2 + 0.03 ** 2 + 0.005 ** 2;
      const wanted = logMean(
        decades(2e-4, 30).map((ohms) =>
          normal(y, drop(ohms), own(meter as never, y) + others * drop(ohms) ** 2),
        ),
      );
      expect(Math.abs((one?.logLikelihood as number) - wanted)).toBeLessThan(0.03);
      const [{ of, unit, value, low, high } = {} as Explanation["estimates"][number]] = one?.estimates ?? [];
      const shown = (y * hot * Math.sqrt(3)) / 480;
      expect([of, unit]).toEqual(["joint resistance", "Ω"]);
      expect(value / shown).toBeGreaterThan(0.97);
      expect(value / shown).toBeLessThan(1.03);
      // 1.96 deviations of 5.7 % either way.
      expect(high / low).toBeGreaterThan(1.2);
      expect(high / low).toBeLessThan(1.3);
    },
  );

  it.each([
    [30, 1, 0],
    [34, 1, 0],
    [36, 0.9, 0.1],
    [200, 0.9, 0.1],
    [30_000, 0.9, 0.1],
  ])(
    "in a path of %d Ω: up to 30 Ω, and a tenth of them burnt further where 10 Ω are too many",
    (y, usual, charred) => {
      const found = diagnose(asked(STAR, pairs([y]), { instruments: SURE, priors: only({ joint: 0.01 }) }));
      const one = all(found).find(({ faults: [fault] }) => fault?.kind === "joint" && fault.place === "L1");
      const at = (ohms: number): number => {
        const f = 2 * R + ohms;
        return normal(
          y,
          f,
          own(OHMMETER, y) + (f * gain(OHMMETER)) ** 2 + (2 * R * MAKE) ** 2 + 2 * (EACH * R) ** 2,
        );
      };
      const part = (share: number, low: number, high: number): number =>
        Math.log(share) + logMean(decades(low, high).map(at));
      const parts = [part(usual, 1e-3, 30), ...(charred > 0 ? [part(charred, 30, 1e5)] : [])];
      const wanted = logMean(parts) + Math.log(parts.length);
      expect(Math.abs((one?.logLikelihood as number) - wanted)).toBeLessThan(0.03);
    },
  );
});

describe("an unbalanced supply, from three line voltages", () => {
  const found = (y: readonly number[]): Explanation =>
    theOne(diagnose(asked(STAR, volts3(y), { priors: only({ supplyUnbalance: 0.01 }) })), "supply unbalance");
  /** A spread of 2 to 6 % in any direction, on a supply whose lines scatter by half a percent each and 3 % together. */
  function evidence(y: readonly number[]): { readonly log: number; readonly mean: number } {
    const a = (own(VOLTMETER as never, 480) + (0.005 * 480) ** 2) as number;
    const b = 480 * 480 * (gain(VOLTMETER) ** 2 + 0.03 ** 2);
    const logs: number[] = [];
    const sizes: number[] = [];
    for (let s = 0; s < 40; s += 1) {
      const size = 0.02 + (0.04 * (s + 0.5)) / 40;
      for (let k = 0; k < 90; k += 1) {
        const raw = [0, 1, 2].map((l) => Math.cos((2 * Math.PI * (k + 0.5)) / 90 + (2 * Math.PI * l) / 3));
        const range = Math.max(...raw) - Math.min(...raw);
        logs.push(
          normal3(
            y,
            raw.map((one) => 480 * (1 + (one * size) / range)),
            a,
            b,
          ),
        );
        sizes.push(size);
      }
    }
    const log = logMean(logs);
    const mean = sizes.reduce((sum, size, i) => sum + size * Math.exp((logs[i] as number) - log), 0);
    return { log, mean: mean / logs.length };
  }
  it.each([[[480, 480, 480]], [[489, 480, 471]], [[470, 492, 477]], [[495, 478, 476]]] as const)(
    "%j V: its evidence, and the spread that it tells",
    (y) => {
      const one = found(y);
      const { log, mean } = evidence(y);
      // The meter's own share is taken at each reading there, at 480 V here.
      expect(Math.abs(one.logLikelihood - log)).toBeLessThan(0.1);
      const [{ of, value, low, high, unit } = {} as Explanation["estimates"][number]] = one.estimates;
      expect([of, unit]).toEqual(["unbalance", "1"]);
      expect(Math.abs(value - mean)).toBeLessThan(0.002);
      expect(low).toBeGreaterThanOrEqual(0.02);
      expect(high).toBeLessThanOrEqual(0.06);
      expect(low < value && value < high).toBe(true);
    },
  );
});

describe("an unbalanced supply beside an element off its value", () => {
  // Ohms of the dead module say nothing of the supply, volts nothing of the elements: what each says is said as if it were alone.
  it.each([
    [[489, 480, 471], 1.6],
    [[470, 492, 477], 0.7],
    [[495, 478, 476], 1.2],
  ] as const)("%j V and %d times the value: each is told as if it were alone", (y, factor) => {
    const off = R * factor;
    const ohms = pairs([off + R, 2 * R, off + R].map((one) => Math.round(one * 100) / 100));
    const instruments = { ...SURE, voltmeter: VOLTMETER };
    const ask = (readings: Parameters<typeof asked>[1], priors: object, more: object = {}) =>
      all(diagnose(asked(STAR, readings, { instruments, priors: only(priors as never), ...more })));
    const both = ask(
      [...ohms, ...volts3(y)],
      { offValue: 0.01, supplyUnbalance: 0.01 },
      { depth: "pairs" },
    ).find(
      ({ faults }) => faults.length === 2 && faults.some((one) => "element" in one && one.element === "A-L1"),
    );
    const ratio = ask(ohms, { offValue: 0.01 }).find(
      ({ faults: [one] }) => one !== undefined && "element" in one && one.element === "A-L1",
    );
    const unbalance = ask(volts3(y), { supplyUnbalance: 0.01 }).find(({ faults }) => faults.length === 1);
    const alone = { "resistance ratio": ratio?.estimates[0], unbalance: unbalance?.estimates[0] };
    expect(both?.estimates.map(({ of }) => of).sort()).toEqual(["resistance ratio", "unbalance"]);
    for (const { of, fault, value, low, high, unit } of both?.estimates ?? []) {
      expect(both?.faults[fault]?.kind).toBe(of === "unbalance" ? "supply unbalance" : "element off value");
      const wanted = alone[of as keyof typeof alone];
      const [to, reach] = of === "unbalance" ? [0.001, 0.04] : [0.005 * factor, factor];
      expect(unit).toBe("1");
      for (const [one, other] of [
        [value, wanted?.value],
        [low, wanted?.low],
        [high, wanted?.high],
      ])
        expect(Math.abs((one as number) - (other as number))).toBeLessThan(to as number);
      expect(high - low).toBeLessThan(reach as number);
    }
  });
});

describe("all elements of another value, from three readings", () => {
  it.each([
    [12.3, 12.4, 12.2],
    [60.1, 60.2, 59.8],
  ])("%d, %d and %d Ω: 0.2 to 0.85 and 1.2 to 5 times, half of it each", (...y) => {
    const found = diagnose(
      asked(STAR, pairs(y), { instruments: SURE, priors: only({ otherRating: 0.005 }) }),
    );
    const one = theOne(found, "other rating");
    const at = (factor: number): number => {
      const f = 2 * R * factor;
      const s = (EACH * R * factor) ** 2;
      const a = own(OHMMETER, y[0] as number) + s;
      return normal3(y, [f, f, f], a, f * f * (gain(OHMMETER) ** 2 + MAKE ** 2) + s);
    };
    const stretch = (low: number, high: number): number =>
      logMean(Array.from({ length: 4000 }, (_, k) => at(low * (high / low) ** ((k + 0.5) / 4000))));
    const wanted = logMean([stretch(0.2, 0.85), stretch(1.2, 5)]);
    expect(Math.abs(one.logLikelihood - wanted)).toBeLessThan(0.03);
  });
});

describe("what one more reading is expected to settle", () => {
  const priors = only({ elementOpen: 0.02 });
  const p = 0.02 / 0.98;
  const entropy = (q: number): number => -q * Math.log2(q) - (1 - q) * Math.log2(1 - q);
  const ask = (candidates: readonly object[], readings: Parameters<typeof asked>[1] = []) =>
    nextMeasurements({ ...asked(STAR, readings, { instruments: SURE, priors }), candidates } as never);

  it("with open elements alone: whether the path is open, which has the entropy of that", () => {
    // Sound 1, each element p, two of them p² and too rare to be weighed; a pair crosses two elements, a line to the star point one.
    const [pair, one] = ask([
      { kind: "resistance", from: "L1", to: "L2" },
      { kind: "resistance", from: "L1", to: "S", only: ["A-L1"] },
    ]);
    expect(pair?.expectedInformation).toBeCloseTo(entropy((2 * p) / (1 + 3 * p)), 6);
    expect(one?.expectedInformation).toBeCloseTo(entropy(p / (1 + 3 * p)), 6);
    const names = (list: readonly (readonly string[])[] | undefined): readonly string[] =>
      (list ?? []).map((two) => [...two].sort().join(" | ")).sort();
    expect(names(pair?.separates)).toEqual(
      names([
        ["sound", "element A-L1 open"],
        ["sound", "element A-L2 open"],
        ["element A-L1 open", "element A-L3 open"],
        ["element A-L2 open", "element A-L3 open"],
      ]),
    );
  });

  it("predicts it from the model alone, two deviations either way", () => {
    const [proposal] = ask([{ kind: "resistance", from: "L1", to: "L2" }]);
    const f = 2 * R;
    const deviation = Math.sqrt(
      own(OHMMETER, f) + f * f * (gain(OHMMETER) ** 2 + MAKE ** 2) + 2 * (EACH * R) ** 2,
    );
    const of = (name: string) => proposal?.predictions.find(({ explanation }) => explanation === name);
    expect(of("sound")?.low).toBeCloseTo(f - 2 * deviation, 6);
    expect(of("sound")?.high).toBeCloseTo(f + 2 * deviation, 6);
    // Nothing here tells the first two elements apart.
    expect(of("element A-L1 open (or one of 1 like it)")).toMatchObject({ low: "open", high: "open" });
    expect(of("element A-L3 open")?.low).toBeCloseTo(f - 2 * deviation, 6);
  });

  it("predicts it from the readings there are", () => {
    // Two pairs share a branch, the make and the meter's gain: cov = f²·(gain² + make²) + (0.02·R)².
    const f = 2 * R;
    const shared = f * f * (gain(OHMMETER) ** 2 + MAKE ** 2) + (EACH * R) ** 2;
    const whole = (y: number): number => own(OHMMETER, y) + shared + (EACH * R) ** 2;
    const y = 25.6;
    const [proposal] = ask([{ kind: "resistance", from: "L2", to: "L3" }], pairs([y]));
    const mean = f + (shared / whole(y)) * (y - f);
    const deviation = Math.sqrt(whole(f) - (shared * shared) / whole(y));
    const sound = proposal?.predictions.find(({ explanation }) => explanation === "sound");
    expect(sound?.low).toBeCloseTo(mean - 2 * deviation, 6);
    expect(sound?.high).toBeCloseTo(mean + 2 * deviation, 6);
  });

  it("promises nothing where every explanation leads to expect the same", () => {
    const open = pairs(["open", 24.6, "open"]);
    expect(ask([{ kind: "resistance", from: "L2", to: "L3" }], open)).toEqual([]);
    expect(ask([], open)).toEqual([]);
  });
});
