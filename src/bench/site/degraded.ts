/** From the branches that are open as found, and the process, to ways of running on until parts come. */
import { buildModule, type Fault, type Supply } from "../../circuit/index.ts";
import { heatUpOptions, type OvenPlan } from "../../process/index.ts";
import type { Celsius, Issue, Watts } from "../../quantity/index.ts";
import type { BranchAssessment, ResistanceAssessment } from "../assessTypes.ts";
import { elementPlan } from "../branchModule.ts";
import { degradedOptions } from "../degradedOptions.ts";
import type { DegradedOptions } from "../degradedTypes.ts";
import type { HotBranches } from "../hotBranches.ts";
import { throwAll } from "../issues.ts";
import type { ParsedRecord } from "../recordParsed.ts";
import { type FieldNames, insist } from "./asking.ts";

/** Room air where the record names none. */
const ROOM = 20 as Celsius;

const NAMES: FieldNames = {
  target: "process.target",
  start: "ambient",
  ambient: "ambient",
  "oven.ambient": "ambient",
  lossConductance: "process.lossConductance",
  "oven.lossConductance": "process.lossConductance",
  structure: "process.heatCapacity",
  "oven.structure": "process.heatCapacity",
  shift: "process.shift",
  shifts: "process.shifts",
  tariff: "process.tariff",
};

/** How many of the parallel strings of a branch are open: all, as many as its reading says, or none. */
function openStrings({ finding, openElements }: BranchAssessment, parallel: number): number {
  return finding === "open" ? parallel : finding === "outside" ? (openElements ?? 0) : 0;
}

/**
 * Faults as the readings show them. One broken element opens its string; a branch is shorted only if all of its elements in series
 * are. Which string it is makes no difference: they are alike.
 */
function faultsOf(
  record: ParsedRecord,
  branches: readonly BranchAssessment[],
  elements: ReturnType<typeof buildModule>["elements"],
): readonly Fault[] {
  const bankOf = new Map(record.wiring.banks.map((bank) => [bank.id, bank]));
  return branches.flatMap((branch): readonly Fault[] => {
    const own = elements.filter((element) => `${element.bank}-${element.branch}` === branch.id);
    const bank = bankOf.get(own[0]?.bank ?? "");
    const { elementsInParallel: parallel = 1, elementsInSeries: series = 1 } = bank ?? {};
    const strings = Array.from({ length: parallel }, (_, n) => own.slice(n * series, (n + 1) * series));
    const broken = strings.slice(0, openStrings(branch, parallel));
    const bridged = branch.finding === "shorted" ? strings.slice(0, 1).flat() : [];
    return [
      ...broken.flatMap(([first]): Fault[] => (first === undefined ? [] : [{ kind: "open", id: first.id }])),
      ...bridged.map(({ id }): Fault => ({ kind: "short", id })),
    ];
  });
}

/**
 * Ways to run on with the branches that are open as found; `null` where nothing is open, or process, supply or a branch's healthy value
 * is not known.
 * @param input.record - the record
 * @param input.asFound - what the readings as found say of the branches
 * @param input.hot - branches at working temperature, sound
 * @param input.supply - the supply, whole
 * @throws ElectroheatError listing what the process cannot be, by path
 */
export function assessDegraded(input: {
  readonly record: ParsedRecord;
  readonly asFound: ResistanceAssessment | null;
  readonly hot: Pick<HotBranches, "repaired">;
  readonly supply: Supply | null;
}): DegradedOptions | null {
  const { record, asFound, hot, supply } = input;
  const plan = record.process;
  if (plan === undefined) return null;
  const issues: Issue[] = [];
  const oven: OvenPlan = {
    ambient: record.ambient?.value ?? ROOM,
    lossConductance: plan.lossConductance.value,
    structure: plan.heatCapacity.value,
  };
  const target = plan.target.value;
  // Refused whatever the readings say: a record is right or wrong by itself.
  const powers = [{ name: "any", power: record.nameplate?.power.value ?? (1 as Watts) }];
  insist(issues, NAMES, () => heatUpOptions({ oven, powers, target }));
  throwAll(issues);
  if (asFound === null || supply === null) return null;
  if (asFound.branches.some(({ id }) => !hot.repaired.has(id))) return null;
  const module = elementPlan(record, hot.repaired);
  const faults = faultsOf(record, asFound.branches, buildModule(module).elements);
  if (!faults.some(({ kind }) => kind === "open")) return null;
  const options = insist(issues, NAMES, () =>
    degradedOptions({
      module,
      supply,
      faults,
      oven,
      target,
      shift: plan.shift.value,
      ...(plan.shifts === undefined ? {} : { shifts: plan.shifts }),
      ...(plan.tariff === undefined ? {} : { tariff: plan.tariff }),
    }),
  );
  throwAll(issues);
  if (options === null || record.ambient !== undefined) return options;
  const message = `No ambient in the record: a room of ${ROOM} °C is taken.`;
  return { ...options, cautions: [...options.cautions, { code: "assumed", path: "ambient", message }] };
}
