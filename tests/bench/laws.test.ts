/** Laws that hold for any record: no expected value of ours, only relations, and truths the readings were made from. */
import { assessModule, assessmentText } from "electroheat/bench";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anySeed } from "../support/networks.ts";
import { deltaReadings, PAIRS, starReadings, type Three } from "./forward.ts";
import { frozen, madeRecord } from "./records.ts";

/** Each run fits, diagnoses and scans a whole module. */
const RUNS = { numRuns: 100 };

describe("one open element", () => {
  it("is found, it alone, and comes first in what to do next", () => {
    fc.assert(
      fc.property(anySeed(), (seed) => {
        const { record, open } = madeRecord(seed, { open: true });
        const assessment = assessModule(record);
        for (const { id, resistance, atLeast, target } of assessment.asFound!.resistances.branches) {
          const least = atLeast ?? (typeof resistance === "number" ? resistance : 0);
          const found = resistance === "open" || least > 5 * (target as number);
          expect(found, `${id}, open is ${open}`).toBe(id === open);
        }
        expect(assessment.nextSteps[0]?.about).toEqual([open]);
        expect(assessmentText(assessment)).toMatch(/OPEN/);
      }),
      RUNS,
    );
  });

  it("is not found where there is none", () => {
    fc.assert(
      fc.property(anySeed(), (seed) => {
        const { record, truth } = madeRecord(seed, { open: false });
        const { resistances } = assessModule(record).asFound!;
        expect(resistances.outcome).toBe("solved");
        for (const { id, resistance, expandedUncertainty } of resistances.branches) {
          // Worst case of every reading at its limit is about twice the expanded uncertainty.
          const error = Math.abs((resistance as number) - (truth.get(id) as number));
          expect(error).toBeLessThan(2.5 * (expandedUncertainty as number));
        }
      }),
      RUNS,
    );
  });

  it("of several in parallel shows as so many open, not as a wrong element", () => {
    for (const connection of ["star", "delta"] as const) {
      for (const [n, k] of [
        [2, 1],
        [3, 1],
        [3, 2],
        [4, 3],
      ] as const) {
        const target = ((connection === "star" ? 1 : 3) * 480 ** 2) / 30_000;
        const truth: Three = [(target * n) / (n - k), target, target];
        const seen =
          connection === "star"
            ? starReadings(truth).slice(0, 3)
            : PAIRS.map(([from, to], i) => ({ from, to, value: deltaReadings(truth)[i] as number }));
        const { asFound, nextSteps, draw } = assessModule({
          title: "t",
          nameplate: { power: "30 kW", voltage: "480 V" },
          wiring: { banks: [{ id: "A", connection, elementsInParallel: n }] },
          tolerance: { low: -0.05, high: 0.1 },
          instruments: { ohmmeter: { ofReading: 0.002, digits: 1, leads: "taken off" } },
          asFound: {
            ohms: seen.map(({ from, to, value }) => ({ from, to, reads: `${value.toFixed(3)} Ω` })),
          },
        });
        expect(asFound!.resistances.branches.map(({ openElements }) => openElements)).toEqual([
          k,
          null,
          null,
        ]);
        expect(nextSteps[0]?.reason).toContain(`${k} of its parallel elements open`);
        expect(Math.abs(draw!.deviationFromPlate!)).toBeLessThan(0.001);
      }
    }
  });

  it("and every further one is found however many there are: alone, each reading speaks for itself", () => {
    const banks = ["A", "B"].map((id) => ({ id, connection: "star" as const }));
    const open = ["A-L1", "A-L2", "A-L3", "B-L2", "B-L3"];
    const { resistances } = assessModule({
      title: "t",
      nameplate: { power: "60 kW", voltage: "480 V" },
      wiring: { banks, starPoints: "separate" },
      instruments: { ohmmeter: { ofReading: 0.005, digits: 2, leads: "taken off" } },
      asFound: {
        ohms: banks.flatMap(({ id }) =>
          ["L1", "L2", "L3"].map((line) => ({
            from: line,
            to: `S-${id}`,
            reads: open.includes(`${id}-${line}`) ? "OL" : "7.68 Ω",
            alone: `${id}-${line}`,
          })),
        ),
      },
    }).asFound!;
    expect(resistances.outcome).toBe("solved");
    expect(
      resistances.branches.filter(({ resistance }) => resistance === "open").map(({ id }) => id),
    ).toEqual(open);
  });
});

describe("an assessment", () => {
  it("is plain data: no NaN, no Infinity, nothing undefined, nothing lost in JSON", () => {
    fc.assert(
      fc.property(anySeed(), fc.boolean(), (seed, open) => {
        const assessment = assessModule(madeRecord(seed, { open }).record);
        expect(JSON.parse(JSON.stringify(assessment))).toStrictEqual(assessment);
      }),
      RUNS,
    );
  });

  it("is the same bytes for the same record, which it leaves as it was", () => {
    fc.assert(
      fc.property(anySeed(), fc.boolean(), (seed, open) => {
        const { record } = madeRecord(seed, { open });
        const before = JSON.stringify(record);
        const first = assessModule(frozen(record));
        const second = assessModule(JSON.parse(before));
        expect(JSON.stringify(second)).toBe(JSON.stringify(first));
        expect(assessmentText(frozen(second))).toBe(assessmentText(first));
        expect(JSON.stringify(record)).toBe(before);
      }),
      RUNS,
    );
  });

  it("reads as text with every caution, and with nothing a person could not read", () => {
    fc.assert(
      fc.property(anySeed(), fc.boolean(), (seed, open) => {
        const assessment = assessModule(madeRecord(seed, { open }).record);
        const text = assessmentText(assessment);
        expect(text).not.toMatch(/NaN|Infinity|undefined|null|\[object|\de[+-]\d/);
        const flowing = text.replace(/\s+/g, " ");
        expect(assessment.cautions.length).toBeGreaterThanOrEqual(5);
        for (const caution of assessment.cautions) expect(flowing).toContain(caution);
        for (const { action, reason } of assessment.nextSteps) {
          expect(flowing).toContain(action);
          expect(flowing).toContain(reason);
        }
        for (const line of text.split("\n")) expect([...line].length).toBeLessThanOrEqual(110);
      }),
      RUNS,
    );
  });

  it("takes the plate voltage for a supply that is not given, and says so", () => {
    const bare = { nameplate: { power: "30 kW", voltage: "480 V" }, title: "t" } as const;
    const wiring = { banks: [{ id: "A", connection: "wye" as const }] };
    const assessment = assessModule({ ...bare, wiring });
    expect(assessment.assumptions.join()).toContain("No supply voltages given");
    expect(assessment.assumptions.join()).toContain("No temperature factor given");
    expect(assessment.notTested).toContain("supply voltages at the module");
    expect(assessment.draw!.basis).toBe("nameplate");
    expect(assessment.draw!.asFound).toBeNull();
  });
});
