/**
 * Fits and ways of running on, down to the last field and refusal. Figures by hand: least squares of a mean, Kirchhoff's laws, sensitivities by
 * difference quotients of the closed form; who is told what is common practice without a published source.
 */
import {
  correctedReading,
  type DeltaSide,
  degradedHeatUp,
  degradedOptions,
  deltaFromLineReadings,
  fitTerminalReadings,
  readingWorth,
  type TerminalOhms,
} from "electroheat/bench";
import {
  balancedSupply,
  buildModule,
  type Fault,
  type ModulePlan,
  supplyFromNeutralVoltages,
} from "electroheat/circuit";
import { celsius, hours, joulesPerKelvin, ohms, volts, wattsPerKelvin } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import {
  DEGRADED_DEFERRAL,
  ISOLATED,
  ISOLATED_TIED,
  loadedNeutral,
  RUNNING_ON,
  SHORTED,
  SURVIVORS,
  UNTIED,
} from "../../src/bench/degraded/cautions.ts";
import { caught } from "../support/caught.ts";

const told = (run: () => unknown): readonly string[] =>
  caught(run).issues.map(({ code, message }) => `${code}: ${message}`);

describe("a closed delta from its line readings", () => {
  const of = (y12: number | "open", y23: number | "open", y31: number | "open", u = 0) =>
    deltaFromLineReadings({
      y12: y12 as never,
      y23: y23 as never,
      y31: y31 as never,
      standardUncertainty: u as never,
    });
  /** Kennelly's formulas once more. */
  const closed = (y12: number, y23: number, y31: number): readonly [number, number, number] => {
    const [a, b, c] = [(y12 + y31 - y23) / 2, (y12 + y23 - y31) / 2, (y23 + y31 - y12) / 2];
    const sum = a * b + b * c + c * a;
    return [sum / c, sum / a, sum / b];
  };
  const OPEN: DeltaSide = { state: "open", resistance: "open", standardUncertainty: null, atLeast: null };
  const UNKNOWN = { state: "not identifiable", resistance: null, standardUncertainty: null, atLeast: 0 };

  it.each([
    [8.7645, 8.7645, 9.4581],
    [5, 6, 8],
    [3, 4.5, 2],
  ])("of %d, %d and %d Ω has sides and uncertainties by the closed form and its slopes", (y12, y23, y31) => {
    const u = 0.001;
    const found = of(y12, y23, y31, u);
    expect(found.outcome).toBe("solved");
    const sides = closed(y12, y23, y31);
    const step = 1e-6;
    const slopes = [0, 1, 2].map((k) => {
      const at = (sign: number) =>
        closed(
          ...([y12, y23, y31].map((y, i) => y + (i === k ? sign * step : 0)) as [number, number, number]),
        );
      const [up, down] = [at(1), at(-1)];
      return up.map((one, i) => (one - (down[i] as number)) / (2 * step));
    });
    [found.r12, found.r23, found.r31].forEach((side, i) => {
      expect(side.state).toBe("known");
      expect(side.atLeast).toBeNull();
      expect((side.resistance as number) / (sides[i] as number)).toBeCloseTo(1, 12);
      const expected = u * Math.hypot(...slopes.map((row) => row[i] as number));
      expect((side.standardUncertainty as number) / expected).toBeCloseTo(1, 6);
    });
  });

  it("with OL between some lines has what is left, or is no delta", () => {
    expect(of("open", "open", "open")).toEqual({ outcome: "solved", r12: OPEN, r23: OPEN, r31: OPEN });
    const known = (resistance: number) => ({
      state: "known",
      resistance,
      standardUncertainty: 0.01,
      atLeast: null,
    });
    expect(of("open", 7, "open", 0.01)).toEqual({ outcome: "solved", r12: OPEN, r23: known(7), r31: OPEN });
    expect(of(7, "open", "open", 0.01)).toEqual({ outcome: "solved", r12: known(7), r23: OPEN, r31: OPEN });
    expect(of("open", "open", 7, 0.01)).toEqual({ outcome: "solved", r12: OPEN, r23: OPEN, r31: known(7) });
    for (const one of [of("open", 7, 7), of(7, "open", 7), of(7, 7, "open")])
      expect(one).toEqual({ outcome: "contradictory", r12: UNKNOWN, r23: UNKNOWN, r31: UNKNOWN });
  });

  it("whose readings break the triangle is none; whose arm is 0 has an open side, or a bound", () => {
    expect(of(20, 5, 5)).toEqual({ outcome: "contradictory", r12: UNKNOWN, r23: UNKNOWN, r31: UNKNOWN });
    // 12 = 7 + 5: side L1 to L2 has no path of its own.
    expect(of(12, 7, 5)).toMatchObject({
      outcome: "solved",
      r12: OPEN,
      r23: { resistance: 7 },
      r31: { resistance: 5 },
    });
    expect(of(7, 12, 5)).toMatchObject({ r23: OPEN });
    expect(of(5, 7, 12)).toMatchObject({ r31: OPEN });
    const u = 0.01;
    const blur = 2 * (Math.sqrt(3) / 2) * u;
    const bounded = of(12, 7, 5, u);
    // Arms 5 and 7 less the blur each, over an arm of at most the blur.
    const [low, high] = [5 - blur, 7 - blur];
    expect(bounded.outcome).toBe("partly");
    expect(bounded.r12).toEqual({ ...UNKNOWN, atLeast: expect.closeTo(low + high + (low * high) / blur, 6) });
    expect([bounded.r23.state, bounded.r31.state]).toEqual(["known", "known"]);
  });

  it("with a bolted side hides how the others share what is left", () => {
    const found = of(0, 4, 4);
    expect(found.r12).toMatchObject({ state: "known", resistance: 0 });
    expect([found.r23.state, found.r31.state, found.outcome]).toEqual([
      "not identifiable",
      "not identifiable",
      "partly",
    ]);
    expect(of(0, 0, 0)).toMatchObject({ outcome: "partly", r12: { atLeast: 0 } });
  });

  it("is refused by the reading that cannot be", () => {
    for (const [i, path] of ["y12", "y23", "y31"].entries()) {
      const y = [7, 7, 7];
      y[i] = -1;
      expect(told(() => of(...(y as [number, number, number])))).toEqual([
        expect.stringMatching(new RegExp(`^out-of-range: ${path}: -1 Ω? ?is not allowed`)),
      ]);
    }
    expect(told(() => of(7, 7, 7, -0.1))[0]).toMatch(
      /^out-of-range: standardUncertainty: -0\.1 Ω is not allowed/,
    );
  });
});

describe("what a meter's reading is worth", () => {
  const accuracy = { ofReading: 0.005, digits: 2 };
  it("is its statement, and half a digit at the least", () => {
    const worth = (reading: number, resolution: number, more = {}) =>
      readingWorth({ reading, resolution, accuracy: { ...accuracy, ...more } });
    expect(worth(24, 0.01).limit).toBeCloseTo(0.14, 12);
    expect(worth(-24, 0.01).limit).toBeCloseTo(0.14, 12);
    expect(worth(24, 0.01, { ofReading: 0, digits: 0 })).toEqual({
      limit: 0.005,
      standardUncertainty: 0.005 / Math.sqrt(3),
    });
    expect(worth(24, 0.01, { ofReading: 0.5 }).limit).toBeCloseTo(12.02, 12);
  });
  it("is refused by the field that is wrong", () => {
    const refusal = (more: object) =>
      told(() => readingWorth({ reading: 1, resolution: 0.01, accuracy, ...more } as never))[0];
    expect(refusal({ accuracy: { ofReading: 0.51, digits: 2 } })).toBe(
      "out-of-range: accuracy.ofReading: 0.51 is not allowed; expected a ratio from 0 to 0.5 (0.005 for ±0.5 %)",
    );
    expect(refusal({ accuracy: { ofReading: -1, digits: 2 } })).toMatch(
      /^out-of-range: accuracy\.ofReading: -1 /,
    );
    expect(refusal({ accuracy: { ofReading: 0, digits: -1 } })).toMatch(
      /^out-of-range: accuracy\.digits: -1 /,
    );
    expect(refusal({ resolution: 0 })).toMatch(/^out-of-range: resolution: 0 /);
    expect(refusal({ reading: Number.NaN })).toMatch(/^not-a-number: reading: NaN /);
    expect(refusal({ reading: Number.POSITIVE_INFINITY })).toMatch(/^not-a-number: reading: /);
  });
  it("less its leads has the limits of both", () => {
    const of = (reading: number, leads: number) =>
      correctedReading({
        reading: reading as never,
        leads: leads as never,
        resolution: 0.01 as never,
        accuracy,
      });
    const { resistance, limit, standardUncertainty } = of(8, 0.2);
    // 0.5 % and 2 digits: 0.06 Ω and 0.021 Ω.
    expect([resistance, limit]).toEqual([expect.closeTo(7.8, 12), expect.closeTo(0.081, 12)]);
    expect(standardUncertainty).toBeCloseTo(Math.hypot(0.06, 0.021) / Math.sqrt(3), 12);
    // 0.16 Ω against leads of 0.20 Ω: 0.04 Ω below, where the meter leaves 0.0418 Ω open.
    expect(of(0.16, 0.2).resistance).toBeCloseTo(-0.04, 12);
    expect(told(() => of(0.15, 0.2))).toEqual([
      "inconsistent: leads: 0.2 Ω is not allowed; expected at most the reading (0.15 Ω)",
    ]);
    expect(told(() => of(-1, 0.2))[0]).toMatch(/^out-of-range: reading: -1 Ω /);
    expect(told(() => of(1, -0.2))[0]).toMatch(/^out-of-range: leads: -0\.2 Ω /);
  });
});

describe("a fit", () => {
  const { network } = buildModule({
    banks: [{ id: "A", connection: "star", elementResistance: ohms(7.68) }],
  });
  const reads = (from: string, to: string, value: number | "open", more: object = {}): TerminalOhms =>
    ({ from, to, reads: value, standardUncertainty: 0.06, ...more }) as never;
  const solve = (readings: readonly TerminalOhms[], more: object = {}) =>
    fitTerminalReadings({ network, readings, leads: "taken off", ...more } as never);

  it("of one branch read twice is its mean, with every field that goes with it", () => {
    const found = solve([reads("L1", "S", 7.6), reads("L1", "S", 7.9, { standardUncertainty: 0.12 })], {
      unknown: ["A-L1"],
    });
    // Weights 4 : 1; u² = 1/(1/0.06² + 1/0.12²).
    const mean = (4 * 7.6 + 7.9) / 5;
    const u = 1 / Math.sqrt(1 / 0.06 ** 2 + 1 / 0.12 ** 2);
    const [r1, r2] = [(7.6 - mean) / 0.06, (7.9 - mean) / 0.12];
    const chiSquare = r1 ** 2 + r2 ** 2;
    expect(found).toMatchObject({
      outcome: "solved",
      branches: [
        {
          id: "A-L1",
          resistance: expect.closeTo(mean, 9),
          standardUncertainty: expect.closeTo(u, 9),
          atLeast: null,
        },
      ],
      leads: { id: "leads", resistance: 0, standardUncertainty: 0, atLeast: null },
      covariance: [[expect.closeTo(u ** 2, 12)]],
      fitted: ["A-L1"],
      readings: [
        {
          from: "L1",
          to: "S",
          reads: 7.6,
          predicted: expect.closeTo(mean, 9),
          residual: expect.closeTo(r1, 7),
        },
        {
          from: "L1",
          to: "S",
          reads: 7.9,
          predicted: expect.closeTo(mean, 9),
          residual: expect.closeTo(r2, 7),
        },
      ],
      chiSquare: expect.closeTo(chiSquare, 7),
      degreesOfFreedom: 1,
      consistency: "consistent",
      notIdentifiable: [],
      openChoices: [],
    });
    // A χ² of 4.9 with one to spare has p 0.025: below 0.05, above 0.01.
    const strict = solve([reads("L1", "S", 7.6), reads("L1", "S", 7.9, { standardUncertainty: 0.12 })], {
      unknown: ["A-L1"],
      significance: 0.05,
    });
    expect(strict.consistency).toBe(chiSquare > 3.841 ? "inconsistent" : "consistent");
  });

  it("with leads of its own has them among the fitted, read shorted or not", () => {
    const shorted = { shorted: ohms(0.2), standardUncertainty: ohms(0.03) };
    const found = solve([reads("L1", "S", 7.9)], { unknown: ["A-L1"], leads: shorted });
    expect(found.fitted).toEqual(["A-L1", "leads"]);
    expect(found.branches[0]?.resistance).toBeCloseTo(7.7, 9);
    expect(found.branches[0]?.standardUncertainty).toBeCloseTo(Math.hypot(0.06, 0.03), 9);
    expect(found.leads).toMatchObject({
      resistance: expect.closeTo(0.2, 9),
      standardUncertainty: expect.closeTo(0.03, 9),
    });
    expect(found.covariance[0]?.[1]).toBeCloseTo(-(0.03 ** 2), 9);
    expect([found.degreesOfFreedom, found.pValue, found.consistency]).toEqual([0, null, "untestable"]);
    const unknown = solve([reads("L1", "S", 7.9)], { unknown: ["A-L1"], leads: "unknown" });
    expect(unknown.outcome).toBe("partly");
    expect(unknown.notIdentifiable).toEqual(["A-L1", "leads"]);
    expect(unknown.branches[0]).toEqual({
      id: "A-L1",
      resistance: null,
      standardUncertainty: null,
      atLeast: null,
    });
    expect(unknown.fitted).toEqual([]);
    expect(unknown.covariance).toEqual([]);
  });

  it("of OL where there is a path is contradictory, and holds nothing", () => {
    const readings = [reads("L1", "S", "open"), reads("L1", "S", 7.7)];
    expect(solve(readings)).toEqual({
      outcome: "contradictory",
      branches: ["A-L1", "A-L2", "A-L3"].map((id) => ({
        id,
        resistance: null,
        standardUncertainty: null,
        atLeast: null,
      })),
      leads: { id: "leads", resistance: null, standardUncertainty: null, atLeast: null },
      covariance: [],
      fitted: [],
      readings: readings.map(({ from, to, reads: value }) => ({
        from,
        to,
        reads: value,
        predicted: null,
        residual: null,
      })),
      chiSquare: 0,
      degreesOfFreedom: 0,
      pValue: null,
      consistency: "untestable",
      notIdentifiable: ["A-L1", "A-L2", "A-L3"],
      openChoices: [],
    });
    // OL between two lines: either branch may be open.
    const choice = solve([reads("L1", "L2", "open")]);
    expect([choice.outcome, choice.openChoices]).toEqual(["partly", [["A-L1"], ["A-L2"]]]);
  });

  describe("of fourteen banks", () => {
    const banks = Array.from({ length: 14 }, (_, i) => ({
      id: `B${i}`,
      connection: "star" as const,
      elementResistance: ohms(12),
    }));
    const many = buildModule({ banks, starPoints: "separate" }).network;

    it("takes what follows with certainty first: branches open by readings of their own are no search", () => {
      const found = fitTerminalReadings({
        network: many,
        unknown: many.branches.map(({ id }) => id),
        leads: "taken off",
        readings: banks.flatMap(({ id }) =>
          ["L1", "L2", "L3"].map((line) => ({
            ...reads(line, `S-${id}`, line === "L2" ? "open" : 12.1),
            only: [`${id}-${line}`],
          })),
        ),
      });
      expect(found.outcome).toBe("solved");
      expect(found.branches.filter(({ resistance }) => resistance === "open").map(({ id }) => id)).toEqual(
        banks.map(({ id }) => `${id}-L2`),
      );
    });

    it("gives up where it is past trying: which of two is open, on fourteen paths that nothing else speaks of", () => {
      const vague = fitTerminalReadings({
        network: many,
        unknown: many.branches.map(({ id }) => id),
        leads: "taken off",
        readings: banks.map(({ id }) => ({
          ...reads("L1", "L2", "open"),
          only: [`${id}-L1`, `${id}-L2`],
        })),
      });
      expect([vague.outcome, vague.openChoices, vague.branches[0]?.resistance]).toEqual(["partly", [], null]);
    });
  });

  it("of a high branch that the readings hardly see is bounded by two of its uncertainties", () => {
    // Conductance of the branch ± 2u of it: 1/(1/R + 2u/R²).
    const found = solve([reads("L1", "S", 100, { standardUncertainty: 60 })], { unknown: ["A-L1"] });
    expect(found.branches[0]).toEqual({
      id: "A-L1",
      resistance: null,
      standardUncertainty: null,
      atLeast: expect.closeTo(1 / (1 / 100 + 120 / 100 ** 2), 6),
    });
    expect([found.outcome, found.notIdentifiable]).toEqual(["partly", ["A-L1"]]);
    // As vague beside its nominal value is known: a short.
    expect(
      solve([reads("L1", "S", 3, { standardUncertainty: 3.8 })], { unknown: ["A-L1"] }).branches[0]
        ?.resistance,
    ).toBeCloseTo(3, 6);
  });

  it("is refused by the field that is wrong", () => {
    const good = reads("L1", "S", 7.7);
    const refusal = (readings: readonly unknown[], more: object = {}) =>
      told(() => solve(readings as never, more))[0];
    expect(refusal([])).toBe("missing: readings: missing; expected at least one reading");
    expect(refusal([good, { ...good, reads: -1 }])).toMatch(/^out-of-range: readings\.1\.reads: -1 /);
    expect(refusal([good, { ...good, standardUncertainty: 0 }])).toMatch(
      /^out-of-range: readings\.1\.standardUncertainty: 0 Ω /,
    );
    expect(refusal([{ ...good, standardUncertainty: undefined }])).toMatch(
      /^missing: readings\.0\.standardUncertainty: /,
    );
    expect(refusal([good], { leads: { shorted: -1, standardUncertainty: 1 } })).toMatch(
      /^out-of-range: leads\.shorted: -1 Ω /,
    );
    expect(refusal([good], { leads: { shorted: 1, standardUncertainty: 0 } })).toMatch(
      /^out-of-range: leads\.standardUncertainty: 0 Ω /,
    );
    expect(refusal([good], { leads: "off" })).toBe(
      'unknown-name: leads: "off" is not allowed; expected one of unknown, taken off',
    );
    expect(refusal([good], { leads: null })).toMatch(
      /^missing: leads: missing; expected one of unknown, taken off/,
    );
    expect(refusal([good], { significance: 1.1 })).toMatch(/^out-of-range: significance: 1\.1 /);
    expect(refusal([good], { significance: -0.1 })).toMatch(/^out-of-range: significance: -0\.1 /);
    expect(refusal([good], { unknown: ["B"] })).toMatch(/^unknown-name: /);
  });
});

describe("ways of running on", () => {
  const star = (id: string) => ({ id, connection: "star" as const, elementResistance: ohms(11.52) });
  const delta = (id: string) => ({ id, connection: "delta" as const, elementResistance: ohms(34.56) });
  const supply = balancedSupply({ lineVoltage: volts(480) });
  const oven = {
    ambient: celsius(20),
    lossConductance: wattsPerKelvin(40),
    structure: joulesPerKelvin(200_000),
  };
  const heat = { supply, oven, target: celsius(200) };
  const open = (...ids: readonly string[]): Fault[] => ids.map((id) => ({ kind: "open", id }));
  const ask = (module: ModulePlan, faults: readonly Fault[], more: object = {}) =>
    degradedOptions({ ...heat, module, faults, shift: hours(8), ...more });
  const rows = (...asked: Parameters<typeof ask>) =>
    ask(...asked).options.map(({ name, action, bank, outcome, cautions }) => [
      name,
      action,
      bank,
      outcome,
      cautions,
    ]);
  const two = (starPoints: "tied" | "separate"): ModulePlan => ({
    banks: [star("A"), star("B")],
    starPoints,
  });
  const stressed = (id: string, ratio: string) =>
    expect.objectContaining({
      ...{ code: "caution", path: "worst.powerRatio", limit: 1, unit: "", source: "common practice" },
      message: `${id} carries ${ratio} times its healthy power: it is the next to go, and the protection of the lines does not see it.`,
    });

  it("name the first of survivors that are stressed alike", () => {
    // A floating star with one branch open: the two left share the line voltage, 3/4 of their power each.
    const [, left] = ask({ banks: [star("A")] }, open("A-L1")).options;
    expect(left?.worst).toMatchObject({ id: "A-L2", powerRatio: expect.closeTo(0.75, 9) });
    const [, last] = ask({ banks: [star("A")] }, open("A-L3")).options;
    expect(last?.worst?.id).toBe("A-L1");
  });

  it("have each their action, bank and cautions", () => {
    expect(rows(two("tied"), open("A-L1"))).toEqual([
      ["healthy", "healthy", null, "runs", []],
      ["leave as is", "leave as is", null, "runs", [stressed("B-L1", "1.44")]],
      ["untie star points", "untie star points", null, "runs", [UNTIED]],
      ["isolate bank A", "isolate bank", "A", "runs", [ISOLATED, ISOLATED_TIED]],
    ]);
    expect(rows(two("separate"), open("B-L2")).slice(2)).toEqual([
      ["isolate bank B", "isolate bank", "B", "runs", [ISOLATED]],
    ]);
    const mixed: ModulePlan = { banks: [star("A"), star("B"), delta("C")], starPoints: "tied" };
    expect(rows(mixed, open("C-L1L2")).slice(2)).toEqual([
      ["isolate bank C", "isolate bank", "C", "runs", [ISOLATED]],
    ]);
    const { cautions, deferral } = ask(two("tied"), open("A-L1"));
    expect([cautions, deferral]).toEqual([RUNNING_ON, DEGRADED_DEFERRAL]);
  });

  it("that bolt lines together or leave nothing say so", () => {
    const short: Fault[] = [{ kind: "short", id: "A-L1L2" }];
    const one: ModulePlan = { banks: [delta("A")] };
    const [, left] = ask(one, short).options;
    expect(left).toMatchObject({
      outcome: "supply shorted",
      power: 0,
      worst: null,
      unbalance: null,
      lines: [],
      openEnds: [],
    });
    expect(left?.cautions).toEqual([SHORTED]);
    const [, dead] = ask(one, open("A-L1L2", "A-L2L3", "A-L3L1")).options;
    expect(dead).toMatchObject({
      outcome: "dead",
      worst: null,
      unbalance: null,
      timeAtTarget: 0,
      energyPerShift: 0,
    });
    expect(dead?.openEnds.map(({ id, voltage }) => [id, voltage])).toEqual(
      ["A-L1L2", "A-L2L3", "A-L3L1"].map((id) => [id, expect.closeTo(480, 9)]),
    );
    // A lost line is no damaged bank.
    expect(rows(two("tied"), [{ kind: "lost line", line: "L2" }]).map(([name]) => name)).toEqual([
      "healthy",
      "leave as is",
    ]);
  });

  it("load the neutral by the missing branch, and say so from a tenth of a line on", () => {
    const third = volts(480 / Math.sqrt(3));
    const onNeutral = supplyFromNeutralVoltages({ voltages: [third, third, third] });
    const neutral = (parallel: number) =>
      ask(
        { banks: [{ ...star("A"), elementsInParallel: parallel }], neutral: "connected" },
        open(parallel > 1 ? "A-L1-1" : "A-L1"),
        { supply: onNeutral },
      ).options[1]?.cautions.filter(({ path }) => path === "lines");
    // One of n strings of a line open: N carries 1/n of a line current.
    const amps = (480 / Math.sqrt(3) / 11.52).toFixed(1);
    expect(neutral(1)?.[0]?.message).toMatch(new RegExp(`^N carries ${amps.replace(".", "\\.")} A: `));
    expect(neutral(9)).toHaveLength(1);
    expect(neutral(11)).toHaveLength(0);
    // What a sound module leaves on the neutral is no load of the fault's.
    const lines = (current: number) => [
      { node: "L1", current: 100 },
      { node: "N", current },
    ];
    expect(loadedNeutral(lines(12), lines(8))).toBeNull();
    expect(loadedNeutral(lines(19), lines(8))).toBe(19);
  });

  it("cost what energy costs, for every shift", () => {
    const tariffed = ask(two("tied"), open("A-L1"), { tariff: 0.25, shifts: 3 }).options;
    for (const { cost, energyPerShift } of tariffed)
      expect(cost).toBeCloseTo((3 * 0.25 * energyPerShift) / 3.6e6, 9);
    expect(ask(two("tied"), open("A-L1"), { tariff: 0.25 }).options[0]?.cost).toBeCloseTo(
      (0.25 * (tariffed[0]?.energyPerShift ?? 0)) / 3.6e6,
      9,
    );
    expect(ask(two("tied"), open("A-L1"), { tariff: 0, shifts: 0 }).options[0]?.cost).toBe(0);
  });

  it("begin where the oven begins", () => {
    const time = (more: object) => ask(two("tied"), open("A-L1"), more).options[1]?.heatUp.time as number;
    // From 110 °C: τ·ln((ΔT∞ − 90)/(ΔT∞ − 180)) with ΔT∞ = 32 kW/(40 W/K) = 800 K, τ = 5000 s.
    expect(time({ start: celsius(110) })).toBeCloseTo(5000 * Math.log((800 - 90) / (800 - 180)), 2);
    expect(time({})).toBeCloseTo(5000 * Math.log(800 / 620), 2);
    const alone = degradedHeatUp({ ...heat, module: two("tied"), faults: open("A-L1"), start: celsius(110) });
    expect(alone.degraded?.time).toBeCloseTo(time({ start: celsius(110) }), 6);
    expect(alone.healthy.time).toBeCloseTo(5000 * Math.log((1000 - 90) / (1000 - 180)), 2);
    expect([alone.healthy.name, alone.degraded?.name, alone.outcome]).toEqual([
      "healthy",
      "degraded",
      "runs",
    ]);
    expect(alone.cautions).toEqual([SURVIVORS, ...RUNNING_ON]);
    expect(alone.deferral).toBe(DEGRADED_DEFERRAL);
    const bolted = degradedHeatUp({
      ...heat,
      module: { banks: [delta("A")] },
      faults: [{ kind: "short", id: "A-L1L2" }],
    });
    expect([bolted.outcome, bolted.degraded, bolted.cautions]).toEqual([
      "supply shorted",
      null,
      [SHORTED, ...RUNNING_ON],
    ]);
  });

  it("are refused by the field that is wrong", () => {
    const refusal = (more: object, faults: readonly Fault[] = open("A-L1")) =>
      told(() => ask(two("tied"), faults, more))[0];
    expect(refusal({ shift: 0 })).toMatch(/^out-of-range: shift: 0 s /);
    expect(refusal({ shifts: -1 })).toMatch(/^out-of-range: shifts: -1 /);
    expect(refusal({ tariff: -1 })).toMatch(/^out-of-range: tariff: -1 /);
    expect(refusal({}, [...open("A-L1"), { kind: "open", id: "C-L1" }])).toMatch(
      /^unknown-name: faults\.1\.id: "C-L1" /,
    );
    const joints = [{ id: "J", at: "L1", resistance: ohms(0.001) }];
    expect(told(() => ask({ ...two("tied"), joints }, open("J")))[0]).toBe(
      'unknown-name: faults.0.id: "J" is not allowed; expected one of A-L1, A-L2, A-L3, B-L1, B-L2, B-L3',
    );
  });
});
