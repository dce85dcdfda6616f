/**
 * From ohm readings to branches: what is refused, word for word; how repeats and leads are weighed; what a branch is held against and what it
 * amounts to, at the limits. Figures by hand beside each check; the limits of findings are common practice without a published source.
 */
import { assessModule, type BenchRecord, type BranchAssessment } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { findingOf } from "../../../src/bench/day/branchFinding.ts";
import { bankTargets, branchTargets, coldTargets } from "../../../src/bench/day/targets.ts";
import { atStar, INSTRUMENTS, star } from "../pool.ts";
import { read, refused } from "../site/made.ts";

type Ohms = NonNullable<NonNullable<BenchRecord["asFound"]>["ohms"]>[number];
const told = (record: BenchRecord): readonly string[] =>
  refused(() => assessModule(record)).map(({ message }) => message);
const ohms = (...list: readonly Ohms[]) => star({ asFound: { ohms: list } });
const meter = (more: object) => ({ ohmmeter: { ...INSTRUMENTS.ohmmeter, ...more } });
const branchesOf = (record: BenchRecord) => assessModule(record).asFound?.resistances.branches ?? [];

describe("readings that are refused", () => {
  it("name the field, what stood there, and what is taken", () => {
    const good = { from: "L1", to: "S", reads: "7.68 Ω" };
    expect(
      told(
        ohms({ ...good, from: "L4" }, { ...good, to: "S-A" }, { ...good, alone: "B" }, { ...good, to: "L1" }),
      ),
    ).toEqual([
      'asFound.ohms.0.from: "L4" is not allowed; expected one of L1, S, L2, L3',
      'asFound.ohms.1.to: "S-A" is not allowed; expected one of L1, S, L2, L3',
      'asFound.ohms.2.alone: "B" is not allowed; expected one of A, A-L1, A-L2, A-L3',
      'asFound.ohms.3.to: "L1" is not allowed; expected two different nodes',
    ]);
    // Alone, a branch has its own nodes and no other.
    expect(told(ohms({ ...good, alone: "A-L2" }))).toEqual([
      'asFound.ohms.0.from: "L1" is not allowed; expected one of L2, S',
    ]);
    // Only one branch has studs of its own.
    for (const alone of ["A", undefined])
      expect(told(ohms({ ...good, ownStuds: true, ...(alone ? { alone } : {}) }))[0]).toMatch(
        /^asFound\.ohms\.0\.alone: .*expected one of A-L1, A-L2, A-L3$/,
      );
    expect(
      told(ohms({ ...good, alone: "A-L1", ownStuds: true }, { ...good, ownStuds: false, from: "x" })),
    ).toHaveLength(1);
  });

  it("below what the leads read shorted are none", () => {
    // 0.5 % and 2 digits of 0.20 Ω and of 0.15 Ω: 0.021 Ω and 0.02075 Ω; 0.15 Ω is 0.05 Ω below.
    const of = (reads: string, more: object = {}) => ({
      ...star({ instruments: meter({ leads: { shorted: "0.20 Ω" }, ...more }) }),
      asFound: { ohms: [{ from: "L1", to: "S", reads }] },
    });
    expect(told(of("0.15 Ω"))).toEqual([
      "asFound.ohms.0.reads: 0.15 Ω is not allowed; expected at least what the leads read shorted, 0.2 Ω",
    ]);
    expect(() => assessModule(of("0.16 Ω"))).not.toThrow();
    expect(() => assessModule(of("OL"))).not.toThrow();
    expect(() => assessModule(of("0.15 Ω", { leads: "taken off" }))).not.toThrow();
  });

  it("ask for the meter, and for its last digit where a plain number was written", () => {
    expect(told({ ...ohms({ from: "L1", to: "S", reads: "OL" }), instruments: {} })).toEqual([
      "instruments.ohmmeter: missing; expected the ohmmeter's accuracy and leads, with ohm readings",
    ]);
    const bare = (leads: unknown, ...reads: readonly (string | number)[]) => {
      const { resolution: _, ...plain } = INSTRUMENTS.ohmmeter;
      return {
        ...star({ instruments: { ohmmeter: { ...plain, leads: leads as never } } }),
        asLeft: { ohms: reads.map((one, i) => ({ from: `L${i + 1}`, to: "S", reads: one })) },
      };
    };
    const because = (which: string) =>
      `instruments.ohmmeter.resolution: missing; expected one unit of the meter's last digit, because ${which} is a plain number`;
    expect(told(bare("taken off", "7.68 Ω", 7.68, 7.68))).toEqual([because("asLeft.ohms.1.reads")]);
    expect(told(bare({ shorted: 0.2 }, "7.68 Ω"))).toEqual([because("instruments.ohmmeter.leads.shorted")]);
    expect(() => assessModule(bare({ shorted: "0.20 Ω" }, "7.68 Ω", "OL"))).not.toThrow();
    // Where no ohms were read no meter is asked for.
    expect(() => assessModule(bare({ shorted: 0.2 }))).not.toThrow();
    expect(() => assessModule({ ...star({ instruments: {} }), asFound: { ohms: [] } })).not.toThrow();
  });
});

describe("the same reading twice", () => {
  const u = (...list: readonly Ohms[]) => branchesOf(ohms(...list))[0]?.standardUncertainty as number;
  const alone = { from: "L1", to: "S", reads: "7.68 Ω", alone: "A-L1" };
  it("adds no certainty, whichever way the probes lay; another one does", () => {
    // (0.5 % of 7.68 Ω and 2 digits)/√3 = 33.7 mΩ.
    const one = (0.005 * 7.68 + 0.02) / Math.sqrt(3);
    expect(u(alone)).toBeCloseTo(one, 9);
    expect(u(alone, alone)).toBeCloseTo(one, 9);
    expect(u(alone, { ...alone, from: "S", to: "L1" }, alone)).toBeCloseTo(one, 9);
    // With the links of the others in it is another reading of the same branch.
    expect(u(alone, { from: "L1", to: "S", reads: "7.68 Ω" })).toBeCloseTo(one / Math.sqrt(2), 9);
  });
});

describe("what a branch is held against", () => {
  it("is its share of the plate, cold where the record says how much", () => {
    const record = (banks: readonly object[], more: object = {}) =>
      read({ nameplate: { power: "60 kW", voltage: "480 V" }, wiring: { banks: banks as never }, ...more });
    const A = { id: "A", connection: "delta" };
    const B = { id: "B", connection: "delta" };
    const cold = (...asked: Parameters<typeof record>) => [...coldTargets(bankTargets(record(...asked)))];
    // 3·480²/30 kW = 23.04 Ω; over 1.04 22.15 Ω.
    expect(cold([A, B])).toEqual([
      ["A", expect.closeTo(23.04, 9)],
      ["B", expect.closeTo(23.04, 9)],
    ]);
    expect(cold([A, B], { temperatureFactor: 1.04 })[0]?.[1]).toBeCloseTo(23.04 / 1.04, 9);
    expect(cold([{ ...A, power: "20 kW" }, B]).map(([, one]) => one)).toEqual([
      expect.closeTo(34.56, 9),
      expect.closeTo(17.28, 9),
    ]);
    expect(bankTargets(record([A], { nameplate: undefined }))).toEqual([]);
    const sum = (...powers: readonly (string | undefined)[]) =>
      refused(() =>
        bankTargets(
          record(
            powers.map((power, i) => ({ id: `${i}`, connection: "delta", ...(power ? { power } : {}) })),
          ),
        ),
      );
    expect(sum("20 kW", "30 kW")[0]).toMatchObject({ code: "inconsistent", path: "wiring.banks", unit: "W" });
    expect(sum("20 kW", "30 kW")[0]?.message).toContain(
      "50000 W is not allowed; expected powers of the banks that add up to the plate's 60000 W",
    );
    expect(sum("60 kW", undefined)[0]?.message).toContain(
      "60000 W is not allowed; expected powers of the banks that leave some of the plate's 60000 W",
    );
    // Rounded by two per cent they still add up.
    expect(
      cold([
        { ...A, power: "30 kW" },
        { ...B, power: "31.2 kW" },
      ]),
    ).toHaveLength(2);
    expect(sum("30 kW", "31.3 kW")).toHaveLength(1);
  });

  it("is without a plate the median of its kind, which judges from three values on", () => {
    const kinds = new Map(
      [..."abcd"].map((id) => [id, "star 1 1"]).concat([["x", "star 2 1"]]) as [string, string][],
    );
    const drawn = { module: {} as never, targets: new Map(), parallel: new Map(), kind: kinds };
    const fitted = (id: string, resistance: number | "open" | null, u: number | null = 0.1) =>
      ({ id, resistance, standardUncertainty: u, atLeast: null }) as never;
    const of = (list: readonly never[], before: readonly never[] = []) =>
      [...branchTargets(drawn, list, before)].map(([id, { resistance, standardUncertainty, judges }]) => [
        id,
        resistance,
        standardUncertainty,
        judges,
      ]);
    const each = (resistance: number, u: number, judges: boolean) =>
      [..."abcd"].map((id) => [id, resistance, u, judges]);
    expect(of([fitted("a", 7, 0.1), fitted("b", 9, 0.3), fitted("c", 8, 0.2)])).toEqual(each(8, 0.2, true));
    expect(of([fitted("a", 7, 0.1), fitted("b", 9, 0.3)])).toEqual(each(8, 0.3, false));
    expect(of([fitted("a", 7), fitted("b", 12), fitted("c", 8, 0.2), fitted("d", 9, 0.4)])).toEqual(
      each(8.5, 0.4, true),
    );
    expect(of([fitted("a", 7), fitted("x", 8)])).toEqual([]);
    // Neither open, short nor unknown ones count; what was read before stands where it was not read again.
    expect(of([fitted("a", 7), fitted("b", "open", null), fitted("c", 0), fitted("d", null, null)])).toEqual(
      [],
    );
    expect(of([fitted("a", 7), fitted("b", null, null)], [fitted("a", 100), fitted("b", 9)])).toEqual(
      each(8, 0.1, false),
    );
  });

  it("is told in the rule of its verdict", () => {
    const [one] = branchesOf(
      star({
        tolerance: { low: -0.05, high: 0.125 },
        asFound: { ohms: atStar("7.68 Ω", "7.68 Ω", "7.68 Ω") },
      }),
    );
    expect(one?.judgement?.rule).toBe("target −5 % to +12.5 %, as given in the record");
    const plain = {
      ...star({ asFound: { ohms: atStar("7.68 Ω", "7.70 Ω", "7.66 Ω") } }),
      nameplate: undefined as never,
    };
    expect(branchesOf(plain)[0]?.judgement?.rule).toBe(
      "median of the branches with as many elements −5 % to +10 %, as given in the record",
    );
    expect(one?.deviation).toBeCloseTo(0, 9);
    // 33.7 mΩ of the fit and 0.5 %/√3 of 7.68 Ω once more, k = 2.
    const u = (0.005 * 7.68 + 0.02) / Math.sqrt(3);
    expect(one?.expandedUncertainty).toBeCloseTo(2 * Math.hypot(u, (0.005 * 7.68) / Math.sqrt(3)), 9);
  });

  it("with some of its elements open is so much higher", () => {
    const of = (parallel: number, reads: string) => {
      const wiring = { banks: [{ id: "A", connection: "star" as const, elementsInParallel: parallel }] };
      return branchesOf(star({ wiring, asFound: { ohms: atStar(reads, "7.68 Ω", "7.68 Ω") } }))[0]
        ?.openElements;
    };
    // n/(n − k) of 7.68 Ω.
    expect([of(2, "15.36 Ω"), of(3, "11.52 Ω"), of(3, "23.04 Ω"), of(4, "30.72 Ω")]).toEqual([1, 1, 2, 3]);
    // 9 Ω is neither 3/2 nor 3 times 7.68 Ω; low ones and a branch of one element have none.
    expect([of(3, "9.00 Ω"), of(3, "6.00 Ω"), of(1, "15.36 Ω"), of(3, "7.68 Ω")]).toEqual([
      null,
      null,
      null,
      null,
    ]);
    // The ends of the tolerance: 15.36 Ω less 5 % and more 10 %, by what the meter leaves open.
    expect([of(2, "14.60 Ω"), of(2, "16.89 Ω"), of(2, "14.00 Ω"), of(2, "17.50 Ω")]).toEqual([
      1,
      1,
      null,
      null,
    ]);
  });
});

describe("what a branch amounts to", () => {
  const of = (more: object): BranchAssessment["finding"] =>
    findingOf({
      ...{ id: "a", resistance: null, standardUncertainty: null, expandedUncertainty: null, atLeast: null },
      ...{ target: 8, deviation: null, judgement: null, ...more },
    } as never);
  const judgement = (verdict: string) => ({ verdict });
  it("is open, high or not known where it is only bounded", () => {
    expect(of({ resistance: "open" })).toBe("open");
    expect([of({ atLeast: 81 }), of({ atLeast: 80 }), of({ atLeast: 8.1 }), of({ atLeast: 8 })]).toEqual([
      "open",
      "high",
      "high",
      "not known",
    ]);
    expect([of({}), of({ atLeast: 81, target: null })]).toEqual(["not known", "not known"]);
  });
  it("is open far above its target, sooner where the readings hardly see it", () => {
    const high = (resistance: number, standardUncertainty: number, target: number | null = 8) =>
      of({ resistance, standardUncertainty, expandedUncertainty: 2 * standardUncertainty, target });
    expect([high(801, 1), high(800, 1), high(81, 9), high(81, 8.1), high(80, 9)]).toEqual([
      "open",
      "unjudged",
      "open",
      "unjudged",
      "unjudged",
    ]);
    expect(high(1e6, 1e6, null)).toBe("unjudged");
  });
  it("is shorted where it is not clear of 0 Ω and well below half its target", () => {
    const low = (resistance: number, expandedUncertainty: number, target: number | null = 8) =>
      of({
        resistance,
        standardUncertainty: expandedUncertainty / 2,
        expandedUncertainty,
        target,
        judgement: judgement("outside"),
      });
    expect([low(0.1, 0.1), low(0.11, 0.1), low(0, 0), low(1.9, 2), low(2, 2), low(0.1, 0.1, null)]).toEqual([
      "shorted",
      "outside",
      "shorted",
      "shorted",
      "outside",
      "outside",
    ]);
  });
  it("is else what its verdict says", () => {
    const judged = (verdict: string | null) =>
      of({
        ...{ resistance: 8, standardUncertainty: 0.01, expandedUncertainty: 0.02 },
        judgement: verdict === null ? null : judgement(verdict),
      });
    expect([judged("within"), judged("outside"), judged("undecided"), judged(null)]).toEqual([
      "sound",
      "outside",
      "undecided",
      "unjudged",
    ]);
  });
});
