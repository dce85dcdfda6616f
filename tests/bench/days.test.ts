/**
 * As found and as left, with and without a nameplate: what one record says of two days. Expected outcomes follow from what the test put
 * into the readings; no figure of ours.
 */
import { assessModule, assessmentText, type BenchRecord, type RecordOhms } from "electroheat/bench";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anySeed, Chance } from "../support/networks.ts";
import { dryer } from "./caseRecords.ts";
import { madeRecord } from "./records.ts";
import { full } from "./slips.ts";

const star = (bank: string, values: readonly (number | "OL")[]): RecordOhms[] =>
  values.map((value, i) => ({
    from: `L${i + 1}`,
    to: "S",
    reads: value === "OL" ? value : `${value.toFixed(2)} Ω`,
    alone: bank,
  }));
const one = (more: Partial<BenchRecord>): BenchRecord => ({
  title: "one invented star",
  nameplate: { power: "30 kW", voltage: "480 V" },
  wiring: { banks: [{ id: "A", connection: "star" }] },
  tolerance: { low: -0.05, high: 0.1 },
  instruments: {
    ohmmeter: { ofReading: 0.005, digits: 2, leads: "taken off" },
    clamp: { ofReading: 0.02, digits: 3 },
  },
  ...more,
});
const findings = (day: ReturnType<typeof assessModule>["asLeft"]) =>
  day?.resistances.branches.map(({ finding }) => finding);

describe("a repair", () => {
  const repaired = one({
    asFound: { ohms: star("A", [7.7, "OL", 7.66]) },
    asLeft: {
      ohms: star("A", [7.7, 7.68, 7.66]),
      currents: [36.1, 36, 36.2].map((amps, i) => ({ at: `L${i + 1}`, reads: `${amps.toFixed(1)} A` })),
    },
  });
  const found = () => assessModule(repaired);

  it("keeps both days apart: open as found, sound as left, and nothing faulty to do", () => {
    expect(findings(found().asFound)).toEqual(["sound", "open", "sound"]);
    expect(findings(found().asLeft)).toEqual(["sound", "sound", "sound"]);
    expect(found().nextSteps).toHaveLength(1);
    expect(found().answer[0]).toMatch(/^As found: .*A-L2.* As left: No fault shows/);
    expect(found().answer[1]).toBe("Nothing left to renew on the readings as left.");
  });

  it("draws by what was left, with nothing at its target, and the amps read agree", () => {
    expect(found().assumptions.join()).not.toContain("Taken at target");
    expect(found().draw?.confirmed).toBe(true);
    for (const line of ["L1", "L2", "L3"]) {
      const read = found().asLeft?.currents.find(({ label }) => label === `line current ${line}`);
      expect(read?.verdict).toBe("within");
    }
    // As found two branches in series across L3-L1: 480²/15.36 Ω, Kirchhoff's laws.
    expect(Math.abs((found().draw?.asFound?.power as number) / (480 ** 2 / 15.36) - 1)).toBeLessThan(1e-6);
  });

  it("that changed nothing is still open, and comes first again", () => {
    const still = assessModule({ ...repaired, asLeft: { ohms: star("A", [7.7, "OL", 7.66]) } });
    expect(still.nextSteps[0]?.about).toEqual(["A-L2"]);
    expect(still.answer[0]).toContain("As left: A-L2 open");
    expect(still.answer[2]).not.toContain("speaks against");
  });

  it("of one branch read alone leaves the others as found", () => {
    const part = assessModule({
      ...repaired,
      asLeft: { ohms: [{ from: "L2", to: "S", reads: "7.68 Ω", alone: "A-L2" }] },
    });
    expect(findings(part.asLeft)).toEqual(["not known", "sound", "not known"]);
    expect(part.draw?.confirmed).toBe(true);
    expect(part.nextSteps).toHaveLength(1);
  });

  it("with sound readings as left never has anything faulty, whatever was found", () => {
    fc.assert(
      fc.property(anySeed(), (seed) => {
        const { record } = madeRecord(seed, { open: true });
        const sound = madeRecord(seed, { open: false }).record;
        const { joints: _joints, ...rest } = record.asFound!;
        const both = { ...record, asFound: rest, asLeft: { ohms: sound.asFound!.ohms! } };
        const { asLeft, nextSteps, draw } = assessModule(both);
        expect(findings(asLeft)?.filter((finding) => finding !== "sound" && finding !== "undecided")).toEqual(
          [],
        );
        expect(nextSteps.flatMap(({ action }) => action).join()).not.toMatch(/renew|bridges|open up/);
        expect(draw?.basis).toBe("measured resistances");
      }),
      { numRuns: 30 },
    );
  });
});

describe("without a nameplate", () => {
  const bare = ({ nameplate: _none, ...record }: BenchRecord): BenchRecord => record;

  it("branches of a kind are held against their median, and the assessment says so", () => {
    const found = assessModule(bare(one({ asFound: { ohms: star("A", [7.7, 9.9, 7.66]) } })));
    expect(found.asFound?.resistances.branches.map(({ target }) => target)).toEqual([7.7, 7.7, 7.7]);
    expect(findings(found.asFound)).toEqual(["sound", "outside", "sound"]);
    expect(found.assumptions.join()).toContain("No nameplate");
    expect(found.diagnosis).toBeNull();
    expect(found.targets).toEqual([]);
    expect(found.notTested.join()).toContain("nameplate");
  });

  it("two values judge nobody: which of them is right is not known", () => {
    const found = assessModule(bare(one({ asFound: { ohms: star("A", [7.7, 9.9, "OL"]) } })));
    expect(findings(found.asFound)).toEqual(["unjudged", "unjudged", "open"]);
  });

  it("branches of other kinds are no measure: a star's are not a delta's", () => {
    const record = bare(
      one({
        wiring: {
          banks: [
            { id: "A", connection: "star" },
            { id: "B", connection: "delta" },
          ],
        },
        asFound: {
          ohms: [
            ...star("A", [7.7, 7.68, 7.66]),
            ...[15.36, 15.36, 15.36].map((value, i) => ({
              from: `L${i + 1}`,
              to: `L${((i + 1) % 3) + 1}`,
              reads: `${value} Ω`,
              alone: "B",
            })),
          ],
        },
      }),
    );
    // 15.36 Ω between lines of a delta of equal sides r is 2r/3: 23.04 Ω.
    const targets = assessModule(record).asFound?.resistances.branches.map(({ target }) => target as number);
    for (const target of targets?.slice(0, 3) ?? []) expect(target).toBeCloseTo(7.68, 9);
    expect(targets).toHaveLength(6);
    for (const target of targets?.slice(3) ?? []) expect(target).toBeCloseTo(23.04, 6);
  });

  it("draws what the voltages say, and nothing where there are none", () => {
    const ohms = star("A", [7.68, 7.68, 7.68]);
    const supply = { v12: "460 V", v23: "460 V", v31: "460 V" };
    const { draw } = assessModule(bare(one({ supply, asFound: { ohms } })));
    expect(Math.abs((draw?.repaired.power as number) / (460 ** 2 / 7.68) - 1)).toBeLessThan(1e-9);
    expect([draw?.repairedAtPlateVoltage, draw?.deviationFromPlate]).toEqual([null, null]);
    const blind = assessModule(bare(one({ asFound: { ohms } })));
    expect([blind.draw, blind.commissioning, blind.whatIf]).toEqual([null, null, []]);
    expect(blind.answer).toHaveLength(5);
  });

  it("and without anything but the wiring there is still an assessment: targets of nothing, all untested", () => {
    const found = assessModule({ title: "t", wiring: { banks: [{ id: "A", connection: "delta" }] } });
    expect([found.asFound, found.asLeft, found.diagnosis, found.draw]).toEqual([null, null, null, null]);
    expect(found.notTested.length).toBeGreaterThan(8);
    expect(found.answer[0]).toContain("Nothing was read");
    expect(assessmentText(found)).toMatch(/licensed\s+electrician/);
  });
});

describe("instruments that are not named", () => {
  it("leave amps shown but not judged unless far off, and out of the diagnosis, with the reason", () => {
    const { clamp: _clamp, ...instruments } = dryer().instruments!;
    const found = assessModule({ ...dryer(), instruments });
    const read = found.asFound!.currents.filter(({ label }) => !label.includes("sound module"));
    // Half of a line's amps, and none where 42 A belong, no clamp makes by itself.
    const far = ["line current L3", "current L3 into A2"];
    expect(read.filter(({ verdict }) => verdict !== null).map(({ label }) => label)).toEqual(far);
    expect(read[0]?.caution).toContain("does not name the clamp");
    expect(found.assumptions.join()).toContain("Left out of the diagnosis: clamp readings");
    expect(found.answer[0]).toMatch(/^Element A2-L3 open/);
  });
});

describe("readings that speak against a module whatever its ohms say", () => {
  const ohms = star("A", [7.7, 7.68, 7.66]);
  const insulationTester = { ofReading: 0.05, digits: 2 };
  const { instruments } = one({});
  const damp = (reads: string): BenchRecord =>
    one({
      instruments: { ...instruments, insulationTester },
      asFound: { ohms, insulation: [{ from: "L1", reads, testVoltage: "500 V" }] },
    });

  it("insulation below 1 MΩ: not to be energised, and that comes first. IEC 60364-6 and IEC 60204-1 ask for 1 MΩ", () => {
    const found = assessModule(damp("0.21 MΩ"));
    expect(found.nextSteps[0]?.action).toMatch(/^Do not energise/);
    expect(found.nextSteps[0]?.about).toEqual(["L1"]);
    expect(found.answer[0]).toMatch(/^Insulation at L1 210 kΩ/);
    expect(found.answer[2]).toMatch(/^Do not energise it/);
  });

  it("insulation above it that only stricter limits miss asks for no step", () => {
    const found = assessModule(damp("42 MΩ"));
    expect(found.asFound?.insulation.some(({ verdict }) => verdict === "outside")).toBe(true);
    expect(found.nextSteps).toHaveLength(1);
    expect(found.answer[2]).toContain("Nothing read here speaks against");
  });

  it("amps that sound ohms do not explain are a question, not an acceptance", () => {
    const found = assessModule(
      one({
        asFound: { ohms: star("A", [7.7, "OL", 7.66]) },
        asLeft: {
          ohms,
          currents: [28.1, 28, 28.2].map((amps, i) => ({ at: `L${i + 1}`, reads: `${amps.toFixed(1)} A` })),
        },
      }),
    );
    expect(found.nextSteps[0]?.action).toContain("full conduction of the controller");
    expect(found.answer[0]).toContain("As left: Amps outside those of a sound module");
    expect(found.answer[2]).toContain("Not known");
  });
});

describe("the order of writing", () => {
  const sorted = <T extends { readonly id: string }>(list: readonly T[]): T[] =>
    [...list].sort((a, b) => (a.id < b.id ? -1 : 1));
  const shuffled = <T>(chance: Chance, list: readonly T[]): T[] =>
    list
      .map((item) => [chance.between(0, 1), item] as const)
      .sort((a, b) => a[0] - b[0])
      .map(([, item]) => item);

  it("of banks and readings changes no finding, no value and no power", () => {
    fc.assert(
      fc.property(anySeed(), fc.boolean(), (seed, open) => {
        const { record } = madeRecord(seed, { open });
        const chance = new Chance(seed + 1);
        const mixed: BenchRecord = {
          ...record,
          wiring: { ...record.wiring, banks: shuffled(chance, record.wiring.banks) },
          asFound: { ...record.asFound, ohms: shuffled(chance, record.asFound!.ohms!) },
        };
        const [a, b] = [assessModule(record), assessModule(mixed)];
        const [left, right] = [a, b].map(({ asFound }) => sorted(asFound!.resistances.branches));
        left!.forEach((branch, i) => {
          const other = right![i]!;
          expect([other.id, other.finding, other.openElements]).toEqual([
            branch.id,
            branch.finding,
            branch.openElements,
          ]);
          if (typeof branch.resistance === "number") {
            expect(Math.abs((other.resistance as number) / branch.resistance - 1)).toBeLessThan(1e-6);
          }
        });
        expect(Math.abs(b.draw!.repaired.power / a.draw!.repaired.power - 1)).toBeLessThan(1e-9);
        expect(b.diagnosis?.outcome).toBe(a.diagnosis?.outcome);
      }),
      { numRuns: 30 },
    );
  });
});

describe("a record with every field there is", () => {
  it("gives every section, and survives JSON", () => {
    const found = assessModule(full());
    expect(JSON.parse(JSON.stringify(found))).toStrictEqual(found);
    for (const [name, value] of Object.entries(found)) {
      if (name === "warnings") continue;
      expect(value === null || (Array.isArray(value) && value.length === 0), name).toBe(false);
    }
  });

  it("stands with any one of its optional parts left out", () => {
    for (const name of Object.keys(full())) {
      if (name === "title" || name === "wiring" || name === "instruments") continue;
      const record = { ...full() } as Record<string, unknown>;
      delete record[name];
      const found = assessModule(record as unknown as BenchRecord);
      expect(JSON.parse(JSON.stringify(found)), name).toStrictEqual(found);
      expect(assessmentText(found)).not.toMatch(/NaN|Infinity|undefined|\[object/);
    }
  });
});
