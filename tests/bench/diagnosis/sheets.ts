/** Field sheets for the tests of the diagnosis: short ways to write readings, instruments and modules. */
import type { DiagnosedFault, Diagnosis, DiagnosisInput, Explanation, FieldReading } from "electroheat/bench";

export const OHMMETER = { ofReading: 0.005, digits: 3, resolution: 0.01 } as const;
export const CLAMP = { ofReading: 0.02, digits: 5, resolution: 0.1 } as const;
export const VOLTMETER = { ofReading: 0.005, digits: 2, resolution: 0.1 } as const;
export const MILLIVOLTMETER = { ofReading: 0.005, digits: 3, resolution: 1e-4 } as const;
export const INSULATION = { ofReading: 0.05, digits: 2, resolution: 1e4 } as const;

export const ALL_INSTRUMENTS = {
  ohmmeter: { ...OHMMETER, leads: "unknown" },
  clamp: CLAMP,
  voltmeter: VOLTMETER,
  millivoltmeter: MILLIVOLTMETER,
  insulationTester: INSULATION,
} as const;

const LINES = ["L1", "L2", "L3"] as const;
const next = (i: number): string => LINES[(i + 1) % 3] as string;

/** Line currents. */
export const amps = (reads: readonly number[]): FieldReading[] =>
  reads.map((one, i) => ({ kind: "current", at: LINES[i], reads: one }) as FieldReading);

/** Ohms L1-L2, L2-L3, L3-L1. */
export const pairs = (reads: readonly (number | "open")[]): FieldReading[] =>
  reads.map((one, i) => ({ kind: "resistance", from: LINES[i], to: next(i), reads: one }) as FieldReading);

/** Volts L1-L2, L2-L3, L3-L1. */
export const volts3 = (reads: readonly number[]): FieldReading[] =>
  reads.map((one, i) => ({ kind: "voltage", from: LINES[i], to: next(i), reads: one }) as FieldReading);

/** One reading, loosely typed. */
export const reading = (one: object): FieldReading => one as FieldReading;

/** A question with all instruments and 480 V unless said otherwise. */
export function asked(module: object, readings: readonly FieldReading[], more: object = {}): DiagnosisInput {
  return {
    module,
    readings,
    instruments: ALL_INSTRUMENTS,
    supply: { lineVoltage: 480 },
    ...more,
  } as unknown as DiagnosisInput;
}

export const bank = (id: string, connection: "star" | "delta", r: number, more: object = {}): object => ({
  id,
  connection,
  elementResistance: r,
  ...more,
});

/** Explanations of the first group. */
export const topOf = (found: Diagnosis): readonly Explanation[] => found.groups[0]?.explanations ?? [];

/** Faults of the most probable explanation. */
export const firstFaults = (found: Diagnosis): readonly DiagnosedFault[] => topOf(found)[0]?.faults ?? [];

/** Probability of a set of faults, given as JSON of its list. */
export function probabilityOf(found: Diagnosis, faults: readonly object[]): number {
  const key = JSON.stringify(faults);
  return found.groups
    .flatMap(({ explanations }) => explanations)
    .filter((one) => JSON.stringify(one.faults) === key)
    .reduce((sum, one) => sum + one.probability, 0);
}
