/**
 * What is said of the sheet itself: what looks odd, what nobody tested, what is taken for granted, what another connection would need, and
 * how figures are written. Figures by hand from Ohm's law and the definitions of star and delta beside each check; limits at which something
 * looks odd are common practice without a published source.
 */
import {
  assessModule,
  assessmentText,
  type BenchRecord,
  type Figure,
  type ModuleAssessment,
} from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { assessedModule, identityOf } from "../../src/bench/assessedModule.ts";
import { assumptionsOf } from "../../src/bench/assumptions.ts";
import { notTested } from "../../src/bench/notTested.ts";
import { recordWarnings } from "../../src/bench/recordWarnings.ts";
import { figureLines } from "../../src/bench/text/figures.ts";
import { bullet, table, wrap } from "../../src/bench/text/layout.ts";
import { jointLines, percent, readingLines, resistanceLines } from "../../src/bench/text/readings.ts";
import { ratioText } from "../../src/bench/text/shown.ts";
import { atStar, star } from "./pool.ts";
import { branch, day, joint, judged, read, rise } from "./site/made.ts";

const LINES = ["L1", "L2", "L3"] as const;
const volts = (v12: number, v23 = v12, v31 = v12) => ({ v12: `${v12} V`, v23: `${v23} V`, v31: `${v31} V` });
const PLATE = { nameplate: { power: "30 kW", voltage: "480 V" } } as const;
const TRADE = { code: "suspicious", source: "common practice" } as const;

describe("what looks odd", () => {
  const warnings = (record: Partial<BenchRecord>, ...days: readonly object[]) =>
    recordWarnings(
      read({ ...PLATE, ...record }),
      days.map((more) => ({ ...day([]).resistances, ...more })),
    );
  it("is nothing in a usual record", () => {
    expect(warnings({ supply: volts(480), tolerance: { low: -0.05, high: 0.1 } }, {}, {})).toEqual([]);
    expect(
      warnings({ nameplate: undefined as never, supply: volts(48), tolerance: { low: -0.5, high: 0.5 } }),
    ).toEqual([]);
  });
  it("is a power that no module has, told once for the plate", () => {
    const banks = ["A", "B"].map((id) => ({ id, connection: "delta" as const }));
    const found = warnings({ nameplate: { power: 36, voltage: "480 V" }, wiring: { banks } });
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ ...TRADE, path: "nameplate.power", unit: "W" });
    expect(found[0]?.message).toMatch(
      /^36 W is an unusual power .*were kilowatts typed where watts are taken\?$/,
    );
  });
  it("is an equal share that makes unlike elements", () => {
    const bank = (id: string, more: object) => ({ id, connection: "star" as const, ...more });
    const of = (...banks: readonly ReturnType<typeof bank>[]) =>
      warnings({ wiring: { banks, ...(banks.length > 1 ? { starPoints: "separate" as const } : {}) } });
    // 10 kW a bank: 3333 W an element, 556 W for one of six.
    expect(
      of(bank("A", {}), bank("B", { elementsInParallel: 2, elementsInSeries: 3 }), bank("C", {})),
    ).toEqual([
      {
        code: "assumed",
        source: "common practice",
        path: "wiring.banks",
        message:
          "plate power shared equally among the banks makes unlike elements, 3330 W in bank A, 556 W in bank B, 3330 W in bank C: state the power of each bank if that is not so, or sound elements are called bad",
      },
    ]);
    expect(of(bank("A", { elementsInParallel: 2 }), bank("B", { elementsInSeries: 2 }))).toEqual([]);
    expect(of(bank("A", { power: "20 kW" }), bank("B", { elementsInParallel: 2 }))).toEqual([]);
    // Twenty-one against twenty elements differ by five per cent, which is not more than that.
    expect(of(bank("A", { elementsInParallel: 21 }), bank("B", { elementsInParallel: 20 }))).toEqual([]);
    const many = of(...["A", "B", "C", "D", "E"].map((id, i) => bank(id, { elementsInParallel: i + 1 })));
    expect(many[0]?.message).toMatch(/in bank D: state/);
  });
  it("is a voltage far from the plate's, at the site or on a day", () => {
    // A fifth of 480 V to either side: 384 V and 576 V. 480 V over √3 is 277 V.
    const found = warnings({ supply: volts(384, 383, 576), asFound: { supply: volts(577, 480, 277) } });
    expect(found).toEqual([
      {
        ...TRADE,
        path: "supply.v23",
        message: "383 V between lines where the plate says 480 V",
        limit: 384,
        unit: "V",
      },
      {
        ...TRADE,
        path: "asFound.supply.v12",
        message: "577 V between lines where the plate says 480 V",
        limit: 576,
        unit: "V",
      },
      {
        ...TRADE,
        path: "asFound.supply.v31",
        message: "277 V between lines where the plate says 480 V; it looks like a voltage to neutral",
        limit: 384,
        unit: "V",
      },
    ]);
    expect(warnings({ asLeft: { supply: volts(277) } }).map(({ path }) => path)).toEqual([
      "asLeft.supply.v12",
      "asLeft.supply.v23",
      "asLeft.supply.v31",
    ]);
  });
  it("is a tolerance that judges nothing, or passes an element that is open", () => {
    expect(warnings({ tolerance: { low: -0.6, high: 0.75 } })).toEqual([
      {
        ...TRADE,
        path: "tolerance.low",
        limit: -0.5,
        message:
          "a tolerance is a ratio, 0.1 for 10 %: -0.6 lets a branch be off by -60 %, and no verdict is worth anything by it",
      },
      {
        ...TRADE,
        path: "tolerance.high",
        limit: 0.5,
        message:
          "a tolerance is a ratio, 0.1 for 10 %: 0.75 lets a branch be off by 75 %, and no verdict is worth anything by it",
      },
    ]);
    const parallel = (elementsInParallel: number, high: number) =>
      warnings({
        wiring: { banks: [{ id: "A", connection: "star", elementsInParallel }] },
        tolerance: { low: -0.05, high },
      });
    // One of eleven open reads 11/10 of the target.
    expect(parallel(11, 0.1)).toEqual([
      {
        ...TRADE,
        path: "tolerance.high",
        limit: 11 / 10 - 1,
        message:
          "bank A: with 11 elements in parallel this tolerance would pass a branch with one of them open; read them one by one",
      },
    ]);
    expect(parallel(10, 0.1)).toEqual([]);
    expect(parallel(1, 0.5)).toEqual([]);
    expect(parallel(3, 0.5).map(({ limit }) => limit)).toEqual([0.5]);
    expect(parallel(3, 0.6).map(({ message }) => message.slice(0, 11))).toEqual(["a tolerance"]);
  });
  it("is a reading off by about a thousand, and none that is open or has nothing beside it", () => {
    const reading = (reads: number | "open") => ({
      from: "L1",
      to: "S",
      reads,
      predicted: null,
      residual: null,
    });
    const of = (sound: number | "open" | null, ...reads: readonly (number | "open")[]) =>
      warnings(
        {},
        { readings: [], expectedReadings: [] },
        { readings: reads.map(reading), expectedReadings: reads.map(() => sound) },
      );
    expect(of(8, 8000, 8, 0.008)).toEqual([
      {
        ...TRADE,
        path: "asLeft.ohms.0.reads",
        message:
          "L1 to S reads about a thousand times what a sound module shows: was the unit mistaken (Ω, kΩ, mΩ)?",
        limit: 4000,
        unit: "Ω",
      },
      {
        ...TRADE,
        path: "asLeft.ohms.2.reads",
        message:
          "L1 to S reads about a thousandth of what a sound module shows: was the unit mistaken (Ω, kΩ, mΩ)?",
        limit: 8 / 500,
        unit: "Ω",
      },
    ]);
    // 500 to 2000 times either way.
    expect(of(8, 3999, 16_001, 8 / 499, 8 / 2001, 0, "open")).toEqual([]);
    expect(of(8, 4000, 16_000, 8 / 500, 8 / 2000)).toHaveLength(4);
    for (const sound of [null, "open", 0] as const) expect(of(sound, 8000)).toEqual([]);
  });
  it("is leads that cannot be, or are much", () => {
    const of = (leads: number | null, leadsUncertainty: number | null) =>
      warnings({}, { leads, leadsUncertainty });
    const base = { ...TRADE, path: "instruments.ohmmeter.leads", unit: "Ω" };
    expect(of(-0.31, 0.1)).toEqual([
      {
        ...base,
        limit: 0,
        message:
          "the readings ask for leads of -0.31 Ω, which cannot be: were they taken off some readings already, or is a star point reached through a joint?",
      },
    ]);
    expect(of(1.31, 0.1)).toEqual([
      {
        ...base,
        limit: 1,
        message:
          "leads and probe contact of 1.31 Ω are much: look for a bad lead, dirty studs, or a joint that every reading passes through",
      },
    ]);
    for (const [leads, u] of [
      [-0.2, 0.1],
      [1.2, 0.1],
      [0.3, 0.1],
      [null, 0.1],
      [5, null],
    ] as const)
      expect(of(leads, u)).toEqual([]);
  });
});

describe("what nobody tested", () => {
  it("is everything of a bare record, and nothing of a full one", () => {
    const bare = notTested(read({}), null);
    expect(bare.map((one) => one.split(/[:, ]/)[0])).toEqual([
      "resistance",
      "verdicts",
      "what",
      "joints",
      "supply",
      "insulation",
      "line",
      "thermal",
      "torque",
      "conductors",
      "resistance",
      "line",
    ]);
    const readings = {
      ohms: atStar("7.68 Ω", "7.68 Ω", "7.68 Ω"),
      currents: [{ at: "L1", reads: "36 A" }],
      insulation: [{ from: "L1", reads: "OL" }],
      joints: [{ id: "a", drop: "4 mV", current: "36 A", rise: "2 K" }],
    };
    const whole: Partial<BenchRecord> = {
      ...PLATE,
      tolerance: { low: -0.05, high: 0.1 },
      supply: volts(480),
      asFound: readings,
      asLeft: readings,
      hardware: [{ id: "studs", thread: "M6", applied: "6 N·m" }],
      feed: { edition: "NEC 2023", installation: "raceway", insulation: "75 °C" },
    };
    expect(notTested(read(whole), null)).toEqual([]);
    // Each part that is left out is one thing not tested.
    const without = (record: Partial<BenchRecord>) => notTested(read({ ...whole, ...record } as never), null);
    const drop = (name: keyof BenchRecord) => without({ [name]: undefined });
    expect(
      ["tolerance", "nameplate", "hardware", "feed"].map((name) => drop(name as keyof BenchRecord).length),
    ).toEqual([1, 1, 1, 1]);
    expect(drop("supply")).toEqual(["supply voltages at the module"]);
    expect(without({ supply: undefined as never, asFound: { ...readings, supply: volts(480) } })).toEqual([]);
    expect(without({ hardware: [{ id: "studs", thread: "M6" }] })).toEqual([
      "torque of the terminal hardware",
    ]);
    const left = { ...readings, joints: [{ id: "a", drop: "4 mV", current: "36 A" }] };
    expect(without({ asLeft: left })).toEqual(["thermal scan as left"]);
    expect(without({ asLeft: { ...readings, ohms: [] } })).toEqual(["resistance of the branches as left"]);
    expect(without({ asLeft: { ...readings, currents: [] } })).toEqual(["line currents as left"]);
    // Read on one of the days is read.
    expect(without({ asFound: {} })).toEqual([]);
    const cold = [{ id: "a", drop: "4 mV", current: "36 A" }];
    expect(
      without({ asFound: { ...readings, joints: cold }, asLeft: { ...readings, joints: cold } }),
    ).toEqual(["thermal scan of the terminals with current flowing"]);
  });
});

describe("what is taken for granted", () => {
  const bank = (id: string, connection: "star" | "delta", more: object = {}) => ({ id, connection, ...more });
  const of = (
    record: Partial<BenchRecord>,
    atTarget: readonly string[] = [],
    lost: string | null = null,
    diagnosed = false,
  ) => assumptionsOf(read(record), atTarget, lost, diagnosed);
  it("is the wiring as drawn, in words", () => {
    const wired = (wiring: BenchRecord["wiring"]) => of({ wiring })[0];
    expect(wired({ banks: [bank("A", "star")] })).toBe(
      "Wired as drawn: bank A in star, star point floating.",
    );
    expect(wired({ banks: [bank("A", "delta"), bank("B", "delta")] })).toBe(
      "Wired as drawn: banks A, B in delta.",
    );
    expect(
      wired({ banks: [bank("A", "star"), bank("B", "delta"), bank("C", "star")], starPoints: "tied" }),
    ).toBe("Wired as drawn: banks A, C in star and bank B in delta, star points tied and floating.");
    expect(wired({ banks: [bank("A", "star")], neutral: "connected" })).toBe(
      "Wired as drawn: bank A in star, star points on the neutral.",
    );
  });
  it("is what readings between lines cannot tell", () => {
    const blind = (ohms: readonly { from: string; to: string; alone?: string }[]) =>
      of({ asFound: { ohms: ohms.map((one) => ({ ...one, reads: "7 Ω" })) } }).some((one) =>
        one.includes("cannot tell star from delta"),
      );
    const lines = { from: "L1", to: "L2" };
    expect(blind([lines, { from: "L2", to: "L3" }])).toBe(true);
    expect(blind([lines, { from: "L1", to: "S" }])).toBe(false);
    expect(blind([lines, { from: "S", to: "L1" }])).toBe(false);
    expect(blind([{ ...lines, alone: "A" }])).toBe(false);
    expect(blind([])).toBe(false);
  });
  it("is where voltages and powers come from", () => {
    const said = (...asked: Parameters<typeof of>) => of(...asked).join("\n");
    expect(said({})).toContain("No voltage known: neither draw nor what-if can be worked out.");
    expect(said(PLATE)).toContain("No supply voltages given: the plate's voltage, balanced.");
    expect(said({ supply: volts(480) })).toContain(
      "Supply as measured line to line; its neutral is taken at the centre.",
    );
    expect(said({ ...PLATE, supply: volts(480) }, [], "L2")).toContain(
      "L2 lost; everything after the repair at the plate's voltage, balanced.",
    );
    expect(said({ supply: volts(480) }, [], "L2")).toContain(
      "L2 lost; everything after the repair at the voltage left between the other two lines, balanced.",
    );
    const shared = "Plate power is shared equally among the banks.";
    const stated = "Banks have the power that the record states";
    const two = (power?: string) => ({
      ...PLATE,
      wiring: { banks: [bank("A", "delta", power === undefined ? {} : { power }), bank("B", "delta")] },
    });
    expect(said(two())).toContain(shared);
    expect(said(two("10 kW"))).toContain(stated);
    expect(said(PLATE)).not.toMatch(/shared equally|No nameplate/);
    expect(said({})).toContain("No nameplate: a branch is held against the median");
    expect(said({ temperatureFactor: 1.0432 })).toContain("Hot resistance is 1.0432 times cold, as given.");
    expect(said({})).toContain("No temperature factor given");
  });
  it("is how amps and joints were taken, what was renewed, and the odds of a diagnosis", () => {
    const about = (record: Partial<BenchRecord>, ...more: readonly unknown[]) =>
      (of as never as typeof of)(record, ...(more as [])).map((one) => one.split(" ")[0]);
    expect(about({ asLeft: { currents: [{ at: "L1", reads: "36 A" }] } })).toContain("Amps");
    expect(about({ asFound: { joints: [{ id: "a", rise: "2 K" }] } })).toContain("Joints");
    expect(about({ asFound: {} })).not.toContain("Amps");
    expect(about({ asFound: {} })).not.toContain("Joints");
    expect(about({ asFound: { joints: [] } })).not.toContain("Joints");
    // The odds are told where there is a diagnosis, and nowhere else.
    const odds = (record: Partial<BenchRecord>) =>
      assessModule(star(record)).assumptions.some((one) => one.startsWith("The diagnosis weighs"));
    expect(odds({ asFound: { ohms: atStar("7.68 Ω", "7.68 Ω", "7.68 Ω") } })).toBe(true);
    expect(odds({})).toBe(false);
    expect(
      assessModule(star({ identity: { equipment: undefined as never, location: "hall" } })).identity,
    ).toEqual({
      location: "hall",
    });
    expect(about({}, [], null, true)).toContain("The");
    expect(about({}, [], null, false)).not.toContain("The");
    expect(of({}, ["A-L1", "A-L2"]).at(-1)).toBe(
      "Taken at target in the repaired module, because faulty or not known: A-L1, A-L2.",
    );
    expect(about({})).not.toContain("Taken");
  });
});

describe("the module as it is told again", () => {
  it("has every bank and joint, and nothing that the record does not say", () => {
    const joints = [
      { id: "J1", at: "L1", behind: ["A"] },
      { id: "J2", at: "L2" },
    ];
    const banks = [
      { id: "A", connection: "star" as const, elementsInParallel: 2, elementsInSeries: 3 },
      { id: "B", connection: "star" as const },
    ];
    expect(
      assessedModule(
        read({ ...PLATE, wiring: { banks, starPoints: "tied", joints }, supply: volts(478, 481, 479) }),
      ),
    ).toEqual({
      banks: [banks[0], { id: "B", connection: "star", elementsInParallel: 1, elementsInSeries: 1 }],
      starPoints: "tied",
      neutral: "floating",
      joints,
      power: 30_000,
      lineVoltage: 480,
      supply: { v12: 478, v23: 481, v31: 479 },
    });
    expect(
      assessedModule(read({ wiring: { banks: [{ id: "A", connection: "star" }], neutral: "connected" } })),
    ).toEqual({
      banks: [{ id: "A", connection: "star", elementsInParallel: 1, elementsInSeries: 1 }],
      ...{ starPoints: null, neutral: "connected", joints: [], power: null, lineVoltage: null, supply: null },
    });
    expect(identityOf(read({}))).toBeNull();
    expect(identityOf(read({ identity: {} }))).toBeNull();
    expect(identityOf(read({ identity: { date: "a day" } }))).toEqual({ date: "a day" });
  });
});

describe("what another connection needs", () => {
  it("is another voltage, other links and the maker's word", () => {
    // 30 kW on 480 V in star; in delta at 277.1 V the same, at 480 V three times as much.
    const [drawn, delta] = assessModule(star({})).whatIf;
    expect([drawn?.connection, drawn?.needs, delta?.connection]).toEqual(["as drawn", [], "delta"]);
    expect(delta?.needs.slice(0, 3)).toEqual([
      "277.1 V between lines (480.0 V over √3) for the same 30.00 kW; the rows below are for that.",
      "On the 480.0 V of the site every element would get √3 times its voltage and three times its power: 90.00 kW, and three times the current in every line, joint and jumper bar. Never without the maker's word that the elements stand it.",
      "Links: star bars out, and the end of each branch to the next line (L1 to L2, L2 to L3, L3 to L1), in every bank.",
    ]);
    const banks = ["A", "B"].map((id) => ({ id, connection: "delta" as const }));
    const [, asStar] = assessModule(star({ wiring: { banks }, supply: volts(470, 480, 490) })).whatIf;
    // 480·√3 V; on 480 V in the mean a third of 30 kW, a little more for the unequal volts.
    expect(asStar?.needs[0]).toBe(
      "831.4 V between lines (480.0 V times √3) for the same 30.00 kW; the rows below are for that.",
    );
    expect(asStar?.needs[1]).toMatch(
      /^On the 480\.0 V of the site every element gets 1\/√3 of its voltage and a third of its power: 10\.0\d kW\.$/,
    );
    expect(asStar?.needs[2]).toBe(
      "Links: the end of each branch off the next line, and the three ends of each bank on a star bar of its own (the rows below take them as separate).",
    );
    const one = assessModule(star({ wiring: { banks: banks.slice(1) } })).whatIf[1];
    expect(one?.needs[2]).toMatch(/and the three ends of the bank on one star bar\.$/);
    // A star with a branch open keeps half; of two separate ones three quarters.
    expect(one?.rows.map(({ powerRatio }) => powerRatio)).toEqual(
      [0, 1, 2].map(() => expect.closeTo(0.5, 9)),
    );
    for (const { powerRatio } of asStar?.rows ?? []) expect(powerRatio).toBeCloseTo(0.75, 9);
    const mixed = [
      { id: "A", connection: "star" as const },
      { id: "B", connection: "delta" as const },
    ];
    expect(assessModule(star({ wiring: { banks: mixed } })).whatIf).toHaveLength(1);
  });
});

describe("figures as text", () => {
  const figure = (value: Figure["value"], unit: string, more: Partial<Figure> = {}): Figure => ({
    ...judged("x", null, unit),
    value,
    ...more,
  });
  const shown = (...asked: Parameters<typeof figure>) =>
    (figureLines([figure(...asked)])[1] ?? "")
      .trim()
      .split(/\s{2,}/)
      .slice(1);
  it.each([
    [36.084, "A", "36.08 A"],
    [0.0361, "A", "36.10 mA"],
    [9999.9, "W", "10000 W"],
    [30_000, "W", "30.00 kW"],
    [10_000, "W", "10.00 kW"],
    [0.1, "V", "0.1000 V"],
    [24_000, "N", "24.00 kN"],
    [-0.05, "1", "−0.05000"],
    [34.5e-6, "m²", "34.50 mm²"],
    [2e6, "A/m²", "2.000 A/mm²"],
    [0.114, "m", "114.0 mm"],
    [0.000345, "Ω", "345.0 µΩ"],
    [0, "Ω", "0.000 Ω"],
    [0.05, "N·m", "0.05000 N·m"],
    ["open", "Ω", "OL"],
    [null, "Ω", "not known"],
  ] as const)("%s %s is %s", (value, unit, text) => {
    expect(shown(value, unit)[0]?.replace(/ /g, " ")).toBe(text);
  });
  it("have half-width, name, limits and verdict beside them", () => {
    expect(
      shown(36, "A", { halfWidth: 1.23, name: "3 AWG", limit: { low: 30, high: 40 }, verdict: "within" }),
    ).toEqual(["3 AWG (36.00 A ± 1.2 A)", "30.00 A to 40.00 A", "WITHIN"]);
    expect(shown(36, "A", { halfWidth: 0, limit: { low: 30, high: null }, verdict: "undecided" })).toEqual([
      "36.00 A",
      "at least 30.00 A",
      "UNDECIDED",
    ]);
    expect(shown(null, "A", { name: "none", limit: { low: null, high: 40 } })).toEqual([
      "none",
      "at most 40.00 A",
    ]);
    const mind = figureLines([
      figure(1, "A", { caution: "b" }),
      figure(2, "A", { caution: "a" }),
      figure(3, "A", { caution: "b" }),
    ]);
    expect(mind.slice(-2)).toEqual(["  Mind: b", "  Mind: a"]);
    expect(mind).toHaveLength(6);
    const wide = figureLines([
      { ...figure(1, "A", { limit: { low: 0, high: 2 }, verdict: "within" }), label: "y".repeat(80) },
    ]);
    expect(wide.join(" ").replace(/\s+/g, " ")).toBe(
      `- ${"y".repeat(80)}: 1.000 A; 0.000 A to 2.000 A; WITHIN`.replace(/^/, " "),
    );
  });
  it("stand in columns, and sentences in lines of a width", () => {
    expect(
      table([
        ["a", "bb"],
        ["ccc", "d"],
        ["", ""],
      ]),
    ).toEqual(["  a    bb", "  ccc   d", ""]);
    expect(wrap("aa bb cc", " ", 6)).toBe(" aa bb\n cc");
    expect(wrap("aaaaaaaa b", "", 4)).toBe("aaaaaaaa\nb");
    expect(wrap("aa bb", "", 5)).toBe("aa bb");
    expect([percent(0.123), percent(-0.05), percent(0.0001), percent(0)]).toEqual([
      "+12.3 %",
      "−5.0 %",
      " 0.0 %",
      " 0.0 %",
    ]);
    expect([ratioText(1.2345), ratioText(99.94), ratioText(100), ratioText(1234)]).toEqual([
      "1.23",
      "99.9",
      "100",
      "1234",
    ]);
    const words = "word ".repeat(30).trim();
    expect(bullet(words).split("\n")).toEqual([
      `  - ${"word ".repeat(18).trim()}`,
      `    ${"word ".repeat(12).trim()}`,
    ]);
  });
  it("of branches say value, target, deviation and verdict, and what agrees", () => {
    const one = (id: string, finding: Parameters<typeof branch>[1], more: object = {}) => ({
      ...branch(id, finding),
      ...more,
    });
    const rows = [
      one("a", "sound", { resistance: 7.7, standardUncertainty: 0.03, target: 7.68, deviation: 0.0026 }),
      one("b", "outside", { resistance: 9.9, target: 7.68, deviation: 0.289 }),
      one("c", "open", { resistance: "open", target: 7.68 }),
      one("d", "shorted", { resistance: 0, target: 7.68, deviation: -1 }),
      one("e", "high", { atLeast: 96.4, target: 7.68 }),
      one("f", "not known", {}),
      one("g", "undecided", { resistance: 8.44, target: 7.68, deviation: 0.099 }),
      one("h", "unjudged", { resistance: 8 }),
    ] as never as ReturnType<typeof branch>[];
    const lines = resistanceLines({
      ...day(rows).resistances,
      leads: 0.2 as never,
      leadsUncertainty: 0.01 as never,
    });
    expect(lines.slice(0, 9).map((line) => line.trim().split(/\s{2,}/))).toEqual([
      ["branch", "measured", "target", "deviation", "verdict"],
      ["a", "7.70(3) Ω", "7.68 Ω", "+0.3 %", "WITHIN"],
      ["b", "9.90 Ω", "7.68 Ω", "+28.9 %", "OUTSIDE"],
      ["c", "open", "7.68 Ω", "OPEN"],
      ["d", "0.00 Ω", "7.68 Ω", "−100.0 %", "SHORTED"],
      ["e", "at least 96 Ω", "7.68 Ω", "HIGH or open"],
      ["f", "not known", "-", "-"],
      ["g", "8.44 Ω", "7.68 Ω", "+9.9 %", "UNDECIDED"],
      ["h", "8.00 Ω", "-", "-"],
    ]);
    expect(lines[9]).toBe("  Leads and probe contact: 0.20(1) Ω, taken off.");
    expect(lines[10]?.replace(/\s+/g, " ")).toBe(
      " The readings leave none to spare for a cross-check. In brackets: standard uncertainty in the last digit.",
    );
    const tail = (more: object) =>
      resistanceLines({ ...day(rows).resistances, ...more })
        .slice(9)
        .join(" ")
        .replace(/\s+/g, " ");
    expect(tail({ leads: null })).toContain("Leads: not determined by these readings.");
    expect(tail({ leads: 0, leadsUncertainty: 0 })).toContain("Leads: taken off before recording.");
    expect(
      tail({ consistency: "consistent", pValue: 0.4321, chiSquare: 3.21, degreesOfFreedom: 3 }),
    ).toContain(
      "The readings agree with each other (χ² 3.2 with 3 to spare, p 0.432). In brackets: standard uncertainty in the last digit.",
    );
    expect(
      tail({ consistency: "inconsistent", pValue: 0.0009, chiSquare: 33.3, degreesOfFreedom: 3 }),
    ).toContain(
      "The readings CONTRADICT EACH OTHER (χ² 33.3 with 3 to spare, p below 0.001). In brackets: standard uncertainty in the last digit, enlarged to cover the contradiction.",
    );
    expect(resistanceLines({ ...day([]).resistances, outcome: "no readings" })).toEqual([
      "  No ohm readings in the record.",
    ]);
    const rule = { ...rows[0], judgement: { rule: "target −5 % to +10 %" } } as never;
    expect(resistanceLines({ ...day([rule]).resistances }).join("\n")).toContain(
      "  Verdicts against target −5 % to +10 %, at two standard uncertainties.",
    );
  });
  it("of readings stand beside those of a sound module", () => {
    const reads = (to: string, value: number | "open") => ({
      from: "L1",
      to,
      reads: value as never,
      predicted: null,
      residual: null,
    });
    const rows = (leads: number | null) =>
      readingLines({
        ...day([]).resistances,
        readings: [reads("L2", 17.56), reads("L3", "open"), reads("S", 7.9)],
        expectedReadings: [15.36, 15.36, "open"] as never,
        leads: leads as never,
      }).map((line) => line.trim().split(/\s{2,}/));
    expect(rows(0.2)).toEqual([
      ["probes", "read", "less leads", "sound module", "deviation"],
      ["L1 to L2", "17.56 Ω", "17.36 Ω", "15.36 Ω", "+13.0 %"],
      ["L1 to L3", "OL", "15.36 Ω"],
      ["L1 to S", "7.90 Ω", "7.70 Ω", "OL"],
    ]);
    expect(rows(null)[1]).toEqual(["L1 to L2", "17.56 Ω", "15.36 Ω"]);
  });
  it("of joints say drop, heat, ratio and rise, and each rule once", () => {
    const seen = (measured: number, high: number) =>
      ({
        ...(rise(2, 2) as object),
        measured,
        fullLoadLow: 10.4,
        fullLoadHigh: high,
        action: "repair",
        rule: "a scale",
      }) as never;
    const lines = jointLines([
      joint("a", {
        resistance: 3.45e-4 as never,
        power: 0.4567 as never,
        ratioToBest: 3.214,
        comparison: "investigate",
        rise: seen(12.6, 20.6),
      }),
      joint("b", { comparison: "undecided", rise: seen(8, 0) }),
      joint("c", {}),
    ]);
    expect(lines.map((line) => line.trim().split(/\s{2,}/))).toEqual([
      ["joint", "resistance", "heat", "to best", "over air", "by drop"],
      ["a", "345 µΩ", "0.457 W", "3.21×", "13 K", "INVESTIGATE"],
      ["b", "-", "-", "-", "8 K", "undecided"],
      ["c", "-", "-", "-", "-", "nothing to compare with"],
      ["a: 10 to 21 K at full load, repair"],
      ["b: the coolest of its kind, which the others are graded over"],
      ["invented"],
      ["a scale"],
    ]);
    expect(jointLines([joint("c", {})])).toHaveLength(2);
  });
});

describe("what it draws", () => {
  it("is known as well as the resistances are: dP/dR = −I² a branch, and the meter's gain in all alike", () => {
    // Three branches read alone: u of each is (0.5 % of 5.12 Ω and 2 digits)/√3, hot 1.5 times that; I = 277.1 V/7.68 Ω.
    const ohms = LINES.map((line) => ({ from: line, to: "S", reads: "5.12 Ω", alone: `A-${line}` }));
    const { draw } = assessModule(star({ temperatureFactor: 1.5, supply: volts(480), asFound: { ohms } }));
    const u = (0.005 * 5.12 + 0.02) / Math.sqrt(3);
    const current = 480 / Math.sqrt(3) / 7.68;
    const power = 480 ** 2 / 7.68;
    const expected = Math.hypot(Math.sqrt(3) * current ** 2 * 1.5 * u, (power * 0.005) / Math.sqrt(3));
    for (const one of [draw?.asFound, draw?.repaired, draw?.repairedAtPlateVoltage]) {
      expect(one?.power).toBeCloseTo(power, 6);
      expect((one?.standardUncertainty as number) / expected).toBeCloseTo(1, 9);
      expect(one?.lines.map(({ node, current: amps }) => [node, amps])).toEqual(
        LINES.map((node) => [node, expect.closeTo(current, 9)]),
      );
    }
    expect(draw).toMatchObject({ basis: "measured resistances", atTarget: [] });
    expect(assessModule(star({})).draw).toMatchObject({
      basis: "nameplate",
      confirmed: false,
      asFound: null,
    });
  });
  it("of each finding is settled or not", () => {
    const confirmed = (...reads: readonly string[]) =>
      assessModule(star({ asFound: { ohms: atStar(...reads) } })).draw?.confirmed;
    // Sound, open, bolted and far off are settled; at the edge of the tolerance (8.448 Ω) a branch is not.
    expect([
      confirmed("7.68 Ω", "7.68 Ω", "7.68 Ω"),
      confirmed("7.68 Ω", "OL", "7.68 Ω"),
      confirmed("7.68 Ω", "0.01 Ω", "7.68 Ω"),
      confirmed("7.68 Ω", "9.90 Ω", "7.68 Ω"),
      confirmed("7.68 Ω", "8.44 Ω", "7.68 Ω"),
      confirmed("7.68 Ω", "7.68 Ω"),
    ]).toEqual([true, true, true, true, false, false]);
  });
});

describe("a day's own voltages", () => {
  it("are those that its amps are weighed by", () => {
    // 36.08 A on 480 V is 31.2 A on 415 V: no fault, whatever the site has otherwise.
    const currents = LINES.map((at) => ({ at, reads: "31.2 A" }));
    const { diagnosis } = assessModule(
      star({ supply: volts(480), asFound: { supply: volts(415), currents } }),
    );
    expect(diagnosis?.groups[0]?.explanations[0]?.faults).toEqual([]);
  });
});

describe("a joint that the diagnosis weighed", () => {
  it("is not called unjudged; one that it did not weigh is", () => {
    const joints = [{ id: "J1", drop: "3.9 mV", current: "36.1 A" }];
    const wired = (drawn: object) =>
      assessModule(
        star({
          wiring: { banks: [{ id: "A", connection: "star" }], ...drawn },
          asFound: { joints, currents: LINES.map((at) => ({ at, reads: "36.1 A" })) },
        }),
      );
    expect(wired({ joints: [{ id: "J1", at: "L1" }] }).answer[0]).toBe("No fault shows in the readings.");
    expect(wired({}).answer[0]).toMatch(/^No fault shows, but joint J1 could not be judged/);
  });
});

describe("readings on own studs", () => {
  it("say what the others should have read, leads and all", () => {
    // Two branches of 7.68 Ω and leads of 0.2 Ω.
    const ohmmeter = {
      ofReading: 0.005,
      digits: 2,
      resolution: "0.01 Ω",
      leads: { shorted: "0.20 Ω" },
    } as const;
    const own = LINES.map((line) => ({
      from: line,
      to: "S",
      reads: "7.88 Ω",
      alone: `A-${line}`,
      ownStuds: true,
    }));
    const ohms = [
      ...own,
      { from: "L1", to: "L2", reads: "17.90 Ω" },
      { from: "L2", to: "L3", reads: "15.56 Ω" },
    ];
    const { asFound } = assessModule(star({ instruments: { ohmmeter }, asFound: { ohms } }));
    expect(asFound?.resistances.beyondElements).toEqual([
      { from: "L1", to: "L2", reads: 17.9, predicted: expect.closeTo(15.56, 6) },
    ]);
    expect(asFound?.resistances.readings[3]).toMatchObject({ reads: 17.9, residual: null });
  });
});

describe("the sheet as text", () => {
  it("has a section only where there is something to say", () => {
    const headings = (more: Partial<BenchRecord>) =>
      text(assessModule(star(more)))
        .split("\n")
        .filter((line) => /^[A-Z][A-Z ,()0-9Ω:]+$/.test(line));
    const bare = headings({ asFound: { ohms: atStar("7.68 Ω", "7.68 Ω", "7.68 Ω") } });
    expect(
      bare.filter((one) =>
        /^(?:AMPS|UNBALANCE|INSULATION|JOINTS|TORQUE|FEED|BARS|WAYS|PARTS|LOOKS)/.test(one),
      ),
    ).toEqual([]);
    expect(bare).toContain("BRANCH RESISTANCES AS FOUND (COLD, LEADS TAKEN OFF)");
    const bars = [
      { id: "b", studs: 2, pitch: "60 mm", overhang: "15 mm", width: "20 mm", thickness: "3 mm" },
    ];
    const all = text(
      assessModule(
        star({
          bars,
          asFound: {
            currents: LINES.map((at) => ({ at, reads: "36.1 A" })),
            insulation: [{ from: "L1", reads: "OL" }],
            joints: [{ id: "a", rise: "4 K" }],
          },
        }),
      ),
    );
    for (const one of [
      "AMPS AS FOUND",
      "UNBALANCE AS FOUND",
      "INSULATION AS FOUND",
      "JOINTS AS FOUND, WORST FIRST",
      "PARTS TO BRING",
    ])
      expect(all).toContain(`\n${one}\n`);
    // 60 mm and 15 mm to either side; 3 mm for the cut; 0.09 m of 60 mm² at 8.89 g/cm³.
    expect(all).toMatch(
      /BARS TO CUT\n {2}bar +pieces +length +stock +mass\n {2}b +1 +90\.00 mm +0\.09300 m +0\.0480 kg\n/,
    );
  });
  it("is title and headings, and under them nothing but indented lines; each phase of the job once", () => {
    const records: Partial<BenchRecord>[] = [
      {},
      { asFound: { ohms: atStar("7.38 Ω", "7.38 Ω", "OL") } },
      // OL on the way of a reading through the same branch: they exclude each other.
      {
        asFound: { ohms: [...atStar("7.38 Ω", "7.38 Ω", "OL"), { from: "L2", to: "L3", reads: "14.80 Ω" }] },
      },
      { nameplate: undefined as never, asFound: { ohms: atStar("7.38 Ω", "7.38 Ω", "7.38 Ω") } },
    ];
    for (const record of records) {
      const [title, rule, ...lines] = text(assessModule(star(record))).split("\n");
      expect([title, rule]).toEqual(["one invented module", "=".repeat("one invented module".length)]);
      for (const line of lines) expect(line).toMatch(/^(?:| {2,}\S.*|[A-Z][A-Z ,()0-9Ω:/]+)$/);
      const list = lines.slice(lines.indexOf("CHECKLIST") + 1);
      const phases = list.slice(0, list.indexOf("")).filter((line) => /^ {2}[^ [\]]/.test(line));
      expect(phases.length).toBeGreaterThan(1);
      expect(new Set(phases).size).toBe(phases.length);
      // What does not fit beside its box goes on under the words.
      const [first, next] = list.slice(list.findIndex((_, i) => /^ {6}\S/.test(list[i + 1] ?? "")));
      expect(first).toMatch(/^ {2}\[[x! ]\] \S/);
      expect(next).toMatch(/^ {6}\S/);
    }
  });
  const text = (found: ModuleAssessment) => assessmentText(found);
  it("says draw and plate in lines of their own", () => {
    const of = (record: Partial<BenchRecord>) =>
      text(assessModule(star({ temperatureFactor: 1.04, ...record })));
    const bare = of({});
    // 30 kW on 480 V: 36.1 A; 7.68 Ω hot, 7.38 Ω cold; 277 V a branch; cold 1.04 times the current.
    expect(bare).toContain(
      "  Whole module: 36.1 A a line at plate voltage, 37.5 A in the first second from cold.",
    );
    expect(bare).toContain(
      "  Bank A: 36.1 A a line; one element 7.68 Ω hot, 7.38 Ω cold, 277 V across its branch.",
    );
    expect(bare).toMatch(
      / {2}At plate voltage {4}30\.00 kW {3}L1 36\.1 A {3}L2 36\.1 A {3}L3 36\.1 A {3}0\.0 % from plate\n/,
    );
    expect(bare).toContain("  From nameplate; ± is two standard uncertainties.");
    expect(of({ temperatureFactor: undefined as never })).toContain(
      "  Whole module: 36.1 A a line at plate voltage.\n  Bank A: 36.1 A a line; one element 7.68 Ω hot, 277 V across its branch.\n",
    );
    const open = of({ asFound: { ohms: atStar("7.38 Ω", "7.38 Ω", "OL") } });
    expect(open).toMatch(/ {2}As found {12}15\.0\d ± 0\.\d\d kW/);
    expect(open).toMatch(/ {2}Faulty ones renewed 30\.0\d ± 0\.\d\d kW/);
    expect(open).toContain("  From measured resistances; ± is two standard uncertainties.");
    expect(of({ asFound: { ohms: atStar("7.38 Ω", "7.38 Ω", "7.38 Ω") } })).toContain(
      "  Sound, as it stands ",
    );
    expect(bare).toContain("  Known branches kept ");
    const two = of({ wiring: { banks: ["A", "B"].map((id) => ({ id, connection: "delta" as const })) } });
    expect(two).toContain(
      "  Banks A, B: 18.0 A a line; one element 46.08 Ω hot, 44.31 Ω cold, 480 V across its branch.",
    );
    expect(bare.split("\n")[1]).toBe("=".repeat("one invented module".length));
    for (const line of LINES) expect(open).toContain(line);
  });
});
