/** Which faults explain the readings as found, and what follows from that. */
import type { HeatingModule } from "../circuit/index.ts";
import { diagnosisQuestion } from "./askDiagnosis.ts";
import { supplyOf } from "./assessDay.ts";
import type { NextStep } from "./assessTypes.ts";
import { diagnose } from "./diagnosis/diagnose.ts";
import { nextMeasurements } from "./diagnosis/nextMeasurements.ts";
import type { DiagnosedFault, Diagnosis, DiagnosisInput } from "./diagnosis/types.ts";
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
  /** What the diagnosis says of running on, where it holds something to be wrong that nobody has put right since. */
  readonly running: string | null;
  /** What was left out, and why. */
  readonly leftOut: readonly string[];
}

/** Elements up to which the next measurement is looked for: beyond, it takes longer than anyone waits for a sheet. */
const FEW = 24;

function proposalsFor(asked: DiagnosisInput, verdict: DiagnosisVerdict, module: HeatingModule) {
  const open = verdict.kind === "not told apart" || verdict.kind === "not settled";
  return open && module.elements.length <= FEW ? nextMeasurements(asked) : [];
}

/** Faults under which nobody closes the supply again. */
function forbids(fault: DiagnosedFault): string[] {
  if (fault.kind === "earth fault") return [`element ${fault.element} is earthed`];
  if (fault.kind === "mis-linked" && fault.bank !== null && fault.as === "delta") {
    return [`bank ${fault.bank} linked as delta gives its elements three times their power`];
  }
  return [];
}

/** What a diagnosis says of running on. */
function runningWords({ kind, explanations }: DiagnosisVerdict): string | null {
  if (kind === "sound" || kind === "no answer") return null;
  const [fault, ...others] = explanations[0]?.faults ?? [];
  if (kind !== "settled") return "Not known before that is settled; the electrician in charge decides.";
  return fault?.kind === "mis-linked" && fault.as === "star" && others.length === 0
    ? `May run until it is linked as drawn, with less heat: the elements of bank ${fault.bank} carry a third of their power; the customer and the electrician in charge decide.`
    : "The electrician in charge and the customer decide whether it runs meanwhile.";
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
  const none = { diagnosis: null, verdict: null, steps: [], forbidding: [], running: null } as const;
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
    forbidding: verdict.kind === "settled" ? first.flatMap(forbids) : [],
    running: runningWords(verdict),
  };
}
