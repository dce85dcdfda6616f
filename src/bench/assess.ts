/** One bench record in, one assessment out. */
import type { ColdOhms, Issue, Watts } from "../quantity/index.ts";
import { assessDraw, assessWhatIf, hotBranches } from "./assessDraw.ts";
import { assessJoints } from "./assessJoints.ts";
import { assessResistances } from "./assessResistance.ts";
import type { ModuleAssessment } from "./assessTypes.ts";
import { assumptionsOf } from "./assumptions.ts";
import { branchModule } from "./branchModule.ts";
import { CAUTIONS } from "./cautions.ts";
import { collect, throwAll } from "./issues.ts";
import { nextSteps, notTested } from "./nextSteps.ts";
import type { BenchRecord } from "./record.ts";
import type { ParsedRecord } from "./recordParsed.ts";
import { parseRecord } from "./recordSchema.ts";
import { recordWarnings } from "./recordWarnings.ts";
import { supplyState } from "./supplyState.ts";
import { type NameplateTargets, nameplateTargets } from "./targets.ts";

interface BankTargets {
  readonly bank: string;
  readonly targets: NameplateTargets;
}

/** Targets of each bank, plate power shared equally among the banks. */
function bankTargets(record: ParsedRecord): readonly BankTargets[] {
  const { nameplate, wiring, temperatureFactor } = record;
  const share = (nameplate.power.value / wiring.banks.length) as Watts;
  return wiring.banks.map(({ id, connection, elementsInParallel = 1, elementsInSeries = 1 }) => ({
    bank: id,
    targets: nameplateTargets({
      power: share,
      lineVoltage: nameplate.voltage.value,
      connection,
      banks: 1,
      elementsInParallel,
      elementsInSeries,
      ...(temperatureFactor === undefined ? {} : { temperatureFactor }),
    }),
  }));
}

/**
 * Assesses a heating module from its bench record: branch resistances with the leads taken off and their uncertainty, whether
 * they fit the nameplate, what the module draws, what happens if any one element opens, what to do next, and the cautions.
 * @param record - the record, of any origin: it is checked here
 * @returns the assessment; the same record always gives the same bytes
 * @throws ElectroheatError listing every offending path of the record at once
 * @source composition of fitTerminalReadings, nameplateTargets, energise and faultScan; see there
 * @example
 * ```ts
 * const record: BenchRecord = {
 *   title: "invented conveyor dryer",
 *   nameplate: { power: "30 kW", voltage: "480 V" },
 *   wiring: { banks: [{ id: "A", connection: "star" }] },
 *   meter: { ofReading: 0.005, digits: 2, leads: { shorted: "0.20 Ω" } },
 *   tolerance: { low: -0.05, high: 0.1 },
 *   readings: [
 *     { from: "L1", to: "S", reads: "7.90 Ω" },
 *     { from: "L2", to: "S", reads: "7.88 Ω" },
 *     { from: "L3", to: "S", reads: "OL" },
 *   ],
 * };
 * assessModule(record).nextSteps[0]?.reason // => "A-L3 reads open."
 * ```
 * @since 0.1.0
 */
export function assessModule(record: BenchRecord): ModuleAssessment {
  const parsed = parseRecord(record);
  const targets = bankTargets(parsed);
  const cold = new Map(
    targets.map(({ bank, targets: t }) => [
      bank,
      (t.branchResistanceCold ?? t.branchResistanceHot) as number as ColdOhms,
    ]),
  );
  const found: Issue[] = [];
  const drawn = collect(found, "wiring.", () => branchModule(parsed, cold));
  const supplied = collect(found, "supply.", () => supplyState(parsed));
  const joints = collect(found, "", () => assessJoints(parsed));
  const read = drawn === undefined ? undefined : collect(found, "", () => assessResistances(parsed, drawn));
  throwAll(found);
  // Nothing was thrown, so nothing is missing.
  const module = drawn as NonNullable<typeof drawn>;
  const { assessment: resistances, fit } = read as NonNullable<typeof read>;
  const temperatureFactor = parsed.temperatureFactor ?? 1;
  const hot = hotBranches(resistances, temperatureFactor);
  const supply = supplied as NonNullable<typeof supplied>;
  const { lostLine } = supply;
  const draw = assessDraw({
    record: parsed,
    drawn: module,
    hot,
    fit,
    temperatureFactor,
    supply,
    resistances,
  });
  const ranked = joints as NonNullable<typeof joints>;
  const plateCurrent = targets.reduce((sum, { targets: t }) => sum + t.lineCurrent, 0);
  return {
    title: parsed.title,
    assumptions: assumptionsOf(parsed, hot.atTarget, lostLine),
    targets,
    resistances,
    draw,
    whatIf: assessWhatIf(parsed, module, hot, supply.repaired),
    joints: ranked,
    nextSteps: nextSteps({ resistances, joints: ranked, draw, lostLine, plateCurrent }),
    notTested: notTested(parsed),
    warnings: recordWarnings(parsed, resistances),
    cautions: CAUTIONS,
  };
}
