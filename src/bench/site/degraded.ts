/** From the branches that are open as found, and the process, to ways of running on until parts come. */
import { buildModule, type Supply } from "../../circuit/index.ts";
import { heatUpOptions, type OvenPlan } from "../../process/index.ts";
import { type Celsius, failAll, type Issue, type Watts } from "../../quantity/index.ts";
import type { ResistanceAssessment } from "../assessTypes.ts";
import { branchFaults } from "../day/branchFaults.ts";
import { elementPlan } from "../day/branchModule.ts";
import type { HotBranches } from "../day/hotBranches.ts";
import { degradedOptions } from "../degraded/options.ts";
import type { DegradedOptions } from "../degraded/types.ts";
import type { ParsedRecord } from "../record/parsed.ts";
import { type FieldNames, insist } from "./asking.ts";

/** Room air where the record names none. */
const ROOM = 20 as Celsius;

/** What a record within its own limits can still get wrong: a set point that is no heat, a shift whose energy nobody could pay. */
const NAMES: FieldNames = { target: "process.target", energy: "process.shift" };

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
  failAll(issues);
  if (asFound === null || supply === null) return null;
  if (asFound.branches.some(({ id }) => !hot.repaired.has(id))) return null;
  const module = elementPlan(record, hot.repaired);
  const faults = branchFaults(record, asFound.branches, buildModule(module).elements);
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
  failAll(issues);
  if (options === null || record.ambient !== undefined) return options;
  const message = `No ambient in the record: a room of ${ROOM} °C is taken.`;
  return { ...options, cautions: [...options.cautions, { code: "assumed", path: "ambient", message }] };
}
