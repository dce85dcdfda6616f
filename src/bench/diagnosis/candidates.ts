/** Readings that someone standing at the module could take next. */
import { findBranch, type HeatingModule } from "../../circuit/index.ts";
import type { DiagnosedFault } from "./question/diagnosedFault.ts";
import type { FieldMeasurement } from "./question/fieldReading.ts";
import { isLine, LINES } from "./question/lines.ts";
import type { DiagnosisInput, Instruments } from "./question/types.ts";

/** Instruments of the common kind, for proposals with one that was not named. Our judgement of what is in the bag. */
const COMMON_INSTRUMENTS: Required<Instruments> = {
  ohmmeter: { ofReading: 0.005, digits: 3, resolution: 0.01, leads: "unknown" as const },
  clamp: { ofReading: 0.02, digits: 5, resolution: 0.1 },
  voltmeter: { ofReading: 0.01, digits: 3, resolution: 0.1 },
  millivoltmeter: { ofReading: 0.005, digits: 3, resolution: 1e-4 },
  insulationTester: { ofReading: 0.05, digits: 5, resolution: 1e3 },
};

const pairs = (only?: string): FieldMeasurement[] =>
  LINES.map((from, i) => ({
    kind: "resistance",
    from,
    to: LINES[(i + 1) % 3] as string,
    ...(only === undefined ? {} : { only: [only] }),
  }));

/** Ends of an element in the network as drawn. */
function endsOf({ network }: HeatingModule, element: string): readonly [string, string] {
  const { from, to } = findBranch({ network, id: element });
  return [from, to];
}

/** Elements that belong with a fault: itself, and the others of its branch. */
function suspects(module: HeatingModule, faults: readonly DiagnosedFault[]): readonly string[] {
  const named = new Set(faults.flatMap((fault) => ("element" in fault ? [fault.element] : [])));
  return module.elements.filter(({ id }) => named.has(id)).map(({ id }) => id);
}

function banksIn(module: HeatingModule, faults: readonly DiagnosedFault[]): readonly string[] {
  const elements = new Set(suspects(module, faults));
  const named = new Set(module.elements.filter(({ id }) => elements.has(id)).map(({ bank }) => bank));
  for (const fault of faults) {
    if (fault.kind === "mis-linked" && fault.bank !== null) named.add(fault.bank);
    if (fault.kind === "unfed bank") named.add(fault.bank);
    if (fault.kind !== "joint" && fault.kind !== "open joint") continue;
    for (const { bank } of module.elements) {
      if (fault.place.endsWith(`>${bank}`) || fault.place.includes(`<${bank}-`)) named.add(bank);
    }
  }
  return [...named];
}

/** At most so many elements are proposed one by one. */
const MOST_ELEMENTS = 24;

/**
 * Candidates: all line pairs, each bank alone, lines to star points, each suspected element alone; under voltage the lines,
 * the banks' wires, volts at lines, star points and suspected elements, drops across drawn joints; insulation.
 */
export function defaultCandidates(
  input: DiagnosisInput,
  module: HeatingModule,
  faults: readonly DiagnosedFault[],
): readonly FieldMeasurement[] {
  const { plan, starPoints } = module;
  const banks = plan.banks.length === 1 ? [] : banksIn(module, faults);
  const elements = suspects(module, faults).slice(0, MOST_ELEMENTS);
  const stars = [...new Set(Object.values(starPoints))];
  const found: FieldMeasurement[] = [...pairs(), ...banks.flatMap((bank) => pairs(bank))];
  for (const star of stars)
    for (const line of LINES) found.push({ kind: "resistance", from: line, to: star });
  for (const element of elements) {
    const [from, to] = endsOf(module, element);
    found.push({ kind: "resistance", from, to, only: [element] });
  }
  found.push({ kind: "insulation", from: "L1" });
  for (const bank of banks) found.push({ kind: "insulation", from: "L1", only: [bank] });
  for (const element of elements) {
    if (faults.some((one) => one.kind === "earth fault" && one.element === element)) {
      found.push({ kind: "insulation", from: endsOf(module, element)[0], only: [element] });
    }
  }
  if (input.supply === undefined) return found;
  for (const at of LINES) {
    found.push({ kind: "current", at });
    for (const into of banks) found.push({ kind: "current", at, into });
  }
  LINES.forEach((from, i) => {
    found.push({ kind: "voltage", from, to: LINES[(i + 1) % 3] as string });
  });
  const seen = new Set<string>();
  for (const element of elements) {
    const [from, to] = endsOf(module, element);
    const key = `${from},${to}`;
    if (seen.has(key) || isLine(to)) continue;
    seen.add(key);
    found.push({ kind: "voltage", from, to });
  }
  for (const { id } of plan.joints ?? []) found.push({ kind: "drop", across: id });
  return found;
}

/** The instruments given, and common ones for what they do not cover. */
export function withCommonInstruments(instruments: Instruments): Instruments {
  return { ...COMMON_INSTRUMENTS, ...instruments };
}
