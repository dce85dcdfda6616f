/** From open branches and a process to ways of running on, against figures worked out elsewhere. */
import type { BenchRecord, BranchAssessment } from "electroheat/bench";
import { balancedSupply } from "electroheat/circuit";
import { volts } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { assessDegraded } from "../../../src/bench/site/degraded.ts";
import { branch, day, read, refused } from "./made.ts";

const supply = balancedSupply({ lineVoltage: volts(480) });
const process = { target: "200 °C", lossConductance: "115 W/K", heatCapacity: "316 kJ/K", shift: "8 h" };
const twoStars: BenchRecord["wiring"] = {
  banks: [
    { id: "A", connection: "star" },
    { id: "B", connection: "star" },
  ],
  starPoints: "tied",
};
const NAMES = ["A-L1", "A-L2", "A-L3", "B-L1", "B-L2", "B-L3"];

const assess = (
  faulty: readonly BranchAssessment[],
  record: Partial<BenchRecord> = {},
  ohms = 11.52,
  names: readonly string[] = NAMES,
) =>
  assessDegraded({
    record: read({ wiring: twoStars, process, ambient: "20 °C", ...record }),
    asFound: day(names.map((id) => faulty.find((one) => one.id === id) ?? branch(id, "sound"))).resistances,
    hot: { repaired: new Map(names.map((id) => [id, ohms as never])) },
    supply,
  });
const powers = (...asked: Parameters<typeof assess>) =>
  (assess(...asked)?.options ?? []).map(({ name, power }) => [name, Math.round(power)]);

describe("running on with what is open as found", () => {
  it("compares the ways the wiring allows", () => {
    // 20 kW a bank at 480 V. Tied: the open branch leaves 4/5 of 40 kW, by the closed form of two tied stars; untied bank A runs on two
    // branches in series, 10 kW beside 20 kW (Kirchhoff's laws; networks memo).
    expect(powers([branch("A-L1", "open")])).toEqual([
      ["healthy", 40_000],
      ["leave as is", 32_000],
      ["untie star points", 30_000],
      ["isolate bank A", 20_000],
    ]);
  });

  it("opens as many parallel elements as the reading says", () => {
    const wiring: BenchRecord["wiring"] = {
      banks: [{ id: "A", connection: "delta", elementsInParallel: 2, elementsInSeries: 2 }],
    };
    const delta = ["A-L1L2", "A-L2L3", "A-L3L1"];
    // A delta of 23.04 Ω branches takes 10 kW in each at 480 V: one of two strings open leaves 25 kW, both 20 kW.
    const of = (one: BranchAssessment) => powers([one], { wiring }, 23.04, delta)[1];
    expect(of(branch("A-L1L2", "outside", 1))).toEqual(["leave as is", 25_000]);
    expect(of(branch("A-L1L2", "open"))).toEqual(["leave as is", 20_000]);
  });

  it("does not hide a short beside an open branch", () => {
    const found = assess([branch("A-L1", "open"), branch("B-L2", "shorted")]);
    // One branch of a star bridged with tied star points: B-L2 ties the common point to L2, the rest stands on line voltage: 2·(480²/11.52)
    // in L3's branches, one more in L1's: 60 kW.
    expect(Math.round(found?.options[1]?.power ?? 0)).toBe(60_000);
  });

  it("carries cautions and who decides, and says what room it took", () => {
    const found = assess([branch("A-L1", "open")]);
    expect(found?.deferral).toContain("licensed electrician");
    const unknown = assess([branch("A-L1", "open")], { ambient: undefined as never });
    expect(unknown?.options.map(({ power }) => power)).toEqual(found?.options.map(({ power }) => power));
    expect(unknown?.cautions.at(-1)).toMatchObject({ code: "assumed", path: "ambient" });
  });
});

describe("the neutral of a star that lacks a branch", () => {
  it("carries the current of the missing branch, and whoever runs on is told; a floating star has none", () => {
    // Two branch currents of (480 V/√3)/7.68 Ω at 120° add up to one of them, which returns through N (Kirchhoff).
    const star = ["A-L1", "A-L2", "A-L3"];
    const banks = [{ id: "A", connection: "star" as const }];
    const way = (neutral: "connected" | "floating") =>
      assess([branch("A-L1", "open")], { wiring: { banks, neutral } }, 7.68, star)?.options ?? [];
    const [healthy, left] = way("connected");
    const amps = 480 / Math.sqrt(3) / 7.68;
    expect(left?.lines.find(({ node }) => node === "N")?.current).toBeCloseTo(amps, 9);
    const said = left?.cautions.map(({ message }) => message).join() ?? "";
    expect(said).toContain(`N carries ${amps.toFixed(1)} A`);
    expect(said).toContain("reduced neutral");
    expect(healthy?.cautions).toEqual([]);
    for (const { cautions } of way("floating")) expect(JSON.stringify(cautions)).not.toContain("N carries");
  });
});

describe("nothing to compare", () => {
  it("where nothing is open, or process, readings, supply or a value is missing", () => {
    expect(assess([])).toBeNull();
    expect(assess([branch("A-L1", "shorted")])).toBeNull();
    expect(assess([branch("A-L1", "outside")])).toBeNull();
    expect(assess([branch("A-L1", "open")], { process: undefined as never })).toBeNull();
    const record = read({ wiring: twoStars, process });
    const open = day([branch("A-L1", "open")]).resistances;
    const repaired = new Map([["A-L1", 11.52 as never]]);
    expect(assessDegraded({ record, asFound: null, hot: { repaired }, supply })).toBeNull();
    expect(assessDegraded({ record, asFound: open, hot: { repaired }, supply: null })).toBeNull();
    expect(assessDegraded({ record, asFound: open, hot: { repaired: new Map() }, supply })).toBeNull();
  });

  it("refuses a process that cannot be, by path", () => {
    const run = () => assess([branch("A-L1", "open")], { process: { ...process, target: "10 °C" } });
    expect(refused(run).map(({ path }) => path)).toEqual(["process.target"]);
    // Also where nothing is open.
    expect(refused(() => assess([], { process: { ...process, target: "10 °C" } }))).toHaveLength(1);
  });
});
