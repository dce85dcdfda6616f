/** Which faults explain the readings as found, and what follows from that. */
import type { HeatingModule } from "../circuit/index.ts";
import { diagnosisQuestion } from "./askDiagnosis.ts";
import { supplyOf } from "./assessDay.ts";
import type { NextStep } from "./assessTypes.ts";
import { diagnose } from "./diagnosis/diagnose.ts";
import { nextMeasurements } from "./diagnosis/nextMeasurements.ts";
import type { Diagnosis, DiagnosisInput } from "./diagnosis/types.ts";
import { diagnosisSteps } from "./diagnosisSteps.ts";
import { type DiagnosisVerdict, diagnosisVerdict } from "./diagnosisVerdict.ts";
import type { ParsedRecord } from "./recordParsed.ts";
import type { BankTargets } from "./recordTargets.ts";

/** The diagnosis and its consequences. */
export interface AssessedFaults {
  readonly diagnosis: Diagnosis | null;
  readonly verdict: DiagnosisVerdict | null;
  readonly steps: readonly NextStep[];
  /** Faults that forbid voltage, in words. */
  readonly forbidding: readonly string[];
  /** Whether the diagnosis holds something to be wrong that nobody has put right since. */
  readonly suspected: boolean;
  /** What was left out, and why. */
  readonly leftOut: readonly string[];
}

/** Elements up to which the next measurement is looked for: beyond, it takes longer than anyone waits for a sheet. */
const FEW = 24;

function proposalsFor(asked: DiagnosisInput, verdict: DiagnosisVerdict, module: HeatingModule) {
  const open = verdict.kind === "not told apart" || verdict.kind === "not settled";
  return open && module.elements.length <= FEW ? nextMeasurements(asked) : [];
}

/**
 * Diagnoses the readings as found.
 * @param bad - branches and joints found bad by their own readings, and a line found lost
 */
export function assessFaults(input: {
  readonly record: ParsedRecord;
  readonly targets: readonly BankTargets[];
  readonly module: HeatingModule;
  readonly bad: ReadonlySet<string>;
}): AssessedFaults {
  const { record, targets, module, bad } = input;
  const { asFound, asLeft } = record;
  const none = { diagnosis: null, verdict: null, steps: [], forbidding: [], suspected: false } as const;
  if (asFound === undefined) return { ...none, leftOut: [] };
  const supply = supplyOf(record, "asFound");
  const { asked, leftOut } = diagnosisQuestion({ record, readings: asFound, supply, targets });
  if (asked === null) return { ...none, leftOut };
  const diagnosis = diagnose(asked);
  const verdict = diagnosisVerdict(diagnosis);
  // What was read as left speaks for itself: the fault as found is history then.
  const read = (asLeft?.ohms ?? []).length + (asLeft?.currents ?? []).length > 0;
  if (read) return { ...none, diagnosis, verdict, leftOut };
  const first = verdict.explanations[0]?.faults ?? [];
  return {
    diagnosis,
    verdict,
    leftOut,
    steps: diagnosisSteps({ verdict, module, covered: bad, proposals: proposalsFor(asked, verdict, module) }),
    forbidding:
      verdict.kind === "settled"
        ? first.flatMap((fault) =>
            fault.kind === "earth fault" ? [`element ${fault.element} is earthed`] : [],
          )
        : [],
    suspected: verdict.kind !== "sound" && verdict.kind !== "no answer",
  };
}
