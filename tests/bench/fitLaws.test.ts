/** Laws of the fit: no expected value of ours, only relations, and truths the readings were made from. */
import { fitTerminalReadings, type ResistanceFit, type TerminalOhms } from "electroheat/bench";
import { buildModule } from "electroheat/circuit";
import { type Ohms, ohms } from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anySeed, Chance } from "../support/networks.ts";
import { deltaReadings, PAIRS, starReadings, type Three } from "./forward.ts";

const RUNS = { numRuns: 1000 };

/** Readings of a random star or delta without noise, with leads; weights differ. */
function clean(seed: number) {
  const chance = new Chance(seed);
  const connection = chance.pick(["star", "delta"] as const);
  const nominal = chance.spread(1, 100);
  const value = (): number => nominal * chance.between(0.7, 1.4);
  const truth: Three = [value(), value(), value()];
  const leads = chance.between(0.05, 0.5);
  const sides = deltaReadings(truth);
  const seen =
    connection === "star"
      ? starReadings(truth)
      : PAIRS.map(([from, to], i) => ({ from, to, value: sides[i] as number }));
  const readings = seen.map(
    ({ from, to, value: bare }): TerminalOhms => ({
      from,
      to,
      reads: ohms(bare + leads),
      standardUncertainty: ohms(0.002 * bare + chance.between(0.002, 0.05)),
    }),
  );
  const { network } = buildModule({ banks: [{ id: "A", connection, elementResistance: ohms(nominal) }] });
  const known = { shorted: ohms(leads), standardUncertainty: ohms(0.01) };
  return { chance, network, readings, leads: known, truth, leadsTruth: leads };
}
const values = (fit: ResistanceFit): number[] => fit.branches.map(({ resistance }) => resistance as number);
const spreads = (fit: ResistanceFit): number[] =>
  fit.branches.map(({ standardUncertainty }) => standardUncertainty as number);
const far = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((most, one, i) => Math.max(most, Math.abs(one / (b[i] as number) - 1)), 0);

describe("the fit", () => {
  it("gives back the branches that the readings were made from", () => {
    fc.assert(
      fc.property(anySeed(), (seed) => {
        const { network, readings, leads, truth, leadsTruth } = clean(seed);
        const fit = fitTerminalReadings({ network, readings, leads });
        expect(far(values(fit), truth)).toBeLessThan(1e-9);
        expect(Math.abs((fit.leads.resistance as number) - leadsTruth)).toBeLessThan(1e-9);
        expect(fit.chiSquare).toBeLessThan(1e-12);
      }),
      RUNS,
    );
  });

  it("does not care in which order the readings were taken", () => {
    fc.assert(
      fc.property(anySeed(), (seed) => {
        const { chance, network, readings, leads } = clean(seed);
        const noisy = readings.map((one) => ({
          ...one,
          reads: ohms((one.reads as number) + (one.standardUncertainty as number) * chance.between(-1, 1)),
        }));
        const shuffled = [...noisy].sort(() => chance.between(-1, 1));
        const turned = shuffled.map((one) =>
          chance.happens(0.5) ? { ...one, from: one.to, to: one.from } : one,
        );
        const [a, b] = [noisy, turned].map((some) => fitTerminalReadings({ network, readings: some, leads }));
        expect(far(values(a!), values(b!))).toBeLessThan(1e-9);
        expect(far(spreads(a!), spreads(b!))).toBeLessThan(1e-9);
        expect(Math.abs(a!.chiSquare - b!.chiSquare)).toBeLessThan(1e-7);
      }),
      RUNS,
    );
  });

  it("scales with the unit: everything times k gives everything times k, χ² as before", () => {
    fc.assert(
      fc.property(anySeed(), fc.double({ min: -6, max: 6, noNaN: true }), (seed, power) => {
        const { chance, network, readings, leads } = clean(seed);
        const k = 10 ** power;
        const times = (value: number): Ohms => ohms(value * k);
        const noisy = readings.map((one) => ({
          ...one,
          reads: ohms((one.reads as number) + (one.standardUncertainty as number) * chance.between(-1, 1)),
        }));
        const scaled = {
          network: {
            branches: network.branches.map((one) => ({
              ...one,
              resistance: times(one.resistance as number),
            })),
          },
          readings: noisy.map((one) => ({
            ...one,
            reads: times(one.reads as number),
            standardUncertainty: times(one.standardUncertainty as number),
          })),
          leads: { shorted: times(leads.shorted), standardUncertainty: times(leads.standardUncertainty) },
        };
        const [a, b] = [
          fitTerminalReadings({ network, readings: noisy, leads }),
          fitTerminalReadings(scaled),
        ];
        expect(far(values(a).map(times), values(b))).toBeLessThan(1e-9);
        expect(far(spreads(a).map(times), spreads(b))).toBeLessThan(1e-9);
        expect(Math.abs(a.chiSquare - b.chiSquare)).toBeLessThan(1e-7 * (1 + a.chiSquare));
      }),
      RUNS,
    );
  });

  it("never knows less after one reading more", () => {
    fc.assert(
      fc.property(anySeed(), (seed) => {
        const { chance, network, readings, leads } = clean(seed);
        const again = chance.pick(readings);
        const u = ohms((again.standardUncertainty as number) * chance.spread(0.1, 10));
        const more = [...readings, { ...again, standardUncertainty: u }];
        const before = spreads(fitTerminalReadings({ network, readings, leads }));
        const after = spreads(fitTerminalReadings({ network, readings: more, leads }));
        after.forEach((value, i) => {
          expect(value).toBeLessThanOrEqual((before[i] as number) * (1 + 1e-9));
        });
        // Halving every uncertainty halves what comes out.
        const half = readings.map((one) => ({
          ...one,
          standardUncertainty: ohms((one.standardUncertainty as number) / 2),
        }));
        const halved = fitTerminalReadings({
          network,
          readings: half,
          leads: { ...leads, standardUncertainty: ohms(leads.standardUncertainty / 2) },
        });
        expect(
          far(
            spreads(halved).map((one) => 2 * one),
            before,
          ),
        ).toBeLessThan(1e-9);
      }),
      RUNS,
    );
  });

  it("reads a bolted branch as 0 Ω, and one read below its leads as a contradiction", () => {
    fc.assert(
      fc.property(anySeed(), (seed) => {
        const chance = new Chance(seed);
        const nominal = chance.spread(1, 100);
        const truth: Three = [0, nominal, nominal];
        const leads = { shorted: ohms(0.2), standardUncertainty: ohms(0.01) };
        const { network } = buildModule({
          banks: [{ id: "A", connection: "star", elementResistance: ohms(nominal) }],
        });
        const readings = (below: number): TerminalOhms[] =>
          starReadings(truth).map(({ from, to, value }) => ({
            from,
            to,
            reads: ohms(value + 0.2 - (value === 0 ? below : 0)),
            standardUncertainty: ohms(0.01),
          }));
        const short = fitTerminalReadings({ network, readings: readings(0), leads });
        expect(Math.abs(short.branches[0]?.resistance as number)).toBeLessThan(1e-9);
        expect(short.branches[0]?.standardUncertainty).toBeGreaterThan(0);
        expect(short.branches[1]?.resistance).toBeCloseTo(nominal, 6);
        const impossible = fitTerminalReadings({ network, readings: readings(0.15), leads });
        expect(impossible.branches[0]?.resistance).toBe(0);
        expect(impossible.consistency).toBe("inconsistent");
      }),
      { numRuns: 200 },
    );
  });
});
