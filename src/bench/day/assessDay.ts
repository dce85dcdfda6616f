/** The readings of one day, judged: what as found and as left have in common. */
import type { HeatingModule } from "../../circuit/index.ts";
import { failAll, type Issue, type LineVolts } from "../../quantity/index.ts";
import type { ReadingsAssessment } from "../assessmentTypes.ts";
import type { BranchAssessment, ResistanceAssessment } from "../assessTypes.ts";
import { checkFieldReading } from "../diagnosis/check.ts";
import { collect } from "../record/issues.ts";
import type { ParsedRecord, ParsedSupply } from "../record/parsed.ts";
import { assessInsulation } from "../site/insulation.ts";
import { elementCount } from "./branchModule.ts";
import { assessCurrents, assessUnbalance } from "./currents.ts";
import { assessJoints, checkJoints } from "./joints.ts";
import type { Day } from "./readings.ts";
import { type SupplyState, supplyState } from "./supplyState.ts";
import { isWeighed } from "./wideLimits.ts";

/** The voltages measured on a day: its own, or the site's. */
export const supplyOf = (record: ParsedRecord, day: Day): ParsedSupply | undefined =>
  record[day]?.supply ?? record.supply;

/** The voltages of the site: its own, or the last that anyone measured. */
export const siteSupply = (record: ParsedRecord): ParsedSupply | undefined =>
  record.supply ?? record.asLeft?.supply ?? record.asFound?.supply;

/** Where a day's voltages are written. */
const supplyPath = (record: ParsedRecord, day: Day): string =>
  record[day]?.supply === undefined ? "supply." : `${day}.supply.`;

/** The voltage insulation is judged for: the plate's, else the highest that was measured between lines; null without either. */
function insulationVoltage(record: ParsedRecord, day: Day): LineVolts | null {
  const supply = supplyOf(record, day) ?? siteSupply(record);
  const measured = supply === undefined ? [] : [supply.v12, supply.v23, supply.v31];
  const highest = Math.max(0, ...measured.map(({ value }) => value)) as LineVolts;
  return record.nameplate?.voltage.value ?? (highest > 0 ? highest : null);
}

/** The supply of a day; null where no voltage is known. */
export function dayState(found: Issue[], record: ParsedRecord, day: Day): SupplyState | null {
  const plate = record.nameplate?.voltage.value ?? null;
  return collect(found, supplyPath(record, day), () => supplyState(supplyOf(record, day), plate)) ?? null;
}

/** Checks the names in currents, insulation and joints of a day; throws all that is wrong with them at once. */
export function checkDay(record: ParsedRecord, day: Day, module: HeatingModule): void {
  const { currents = [], insulation = [], joints = [] } = record[day] ?? {};
  const found: Issue[] = [];
  currents.forEach(({ at, into, reads }, i) => {
    collect(found, `${day}.currents.${i}.`, () =>
      checkFieldReading(
        { kind: "current", at, reads: reads.value, ...(into === undefined ? {} : { into }) },
        module,
      ),
    );
  });
  insulation.forEach(({ from, reads }, i) => {
    collect(found, `${day}.insulation.${i}.`, () =>
      checkFieldReading({ kind: "insulation", from, reads: reads.value }, module),
    );
  });
  collect(found, "", () => checkJoints(joints, `${day}.joints`));
  failAll(found);
}

/** Everything but the ohms, which two days need each other for. */
export function assessDay(input: {
  readonly record: ParsedRecord;
  readonly day: Day;
  readonly resistances: ResistanceAssessment;
  /** Branches with their targets, cold. */
  readonly targets: readonly BranchAssessment[];
  readonly temperatureFactor: number;
  readonly state: SupplyState | null;
}): ReadingsAssessment | null {
  const { record, day, resistances, targets, temperatureFactor, state } = input;
  const readings = record[day];
  if (readings === undefined) return null;
  const supply = supplyOf(record, day);
  const known = targets.flatMap(({ id, target }) =>
    target === null ? [] : [[id, target * temperatureFactor] as const],
  );
  const soundBranches = known.length === targets.length ? new Map(known) : null;
  return {
    resistances,
    currents: assessCurrents({
      record,
      readings,
      soundBranches,
      supply,
      state,
      weighed: isWeighed(record, day, "clamp"),
    }),
    unbalance: assessUnbalance(record, readings, supply),
    insulation: assessInsulation(readings.insulation, insulationVoltage(record, day), {
      elements: elementCount(record),
      tester: record.instruments?.insulationTester,
    }),
    joints: assessJoints(
      readings.joints ?? [],
      record.instruments ?? {},
      day === "asLeft" ? record.asFound?.joints : [],
    ),
  };
}
