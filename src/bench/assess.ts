/** One bench record in, one assessment out. */
import type { ColdOhms, Issue, Watts } from "../quantity/index.ts";
import { assessDraw, assessWhatIf, hotBranches, supplyOf } from "./assessDraw.ts";
import { assessJoints } from "./assessJoints.ts";
import { assessResistances, branchModule } from "./assessResistance.ts";
import type { ModuleAssessment } from "./assessTypes.ts";
import { CAUTIONS } from "./cautions.ts";
import { collect, throwAll } from "./issues.ts";
import { nextSteps, notTested } from "./nextSteps.ts";
import type { BenchRecord } from "./record.ts";
import { type ParsedRecord, parseRecord } from "./recordSchema.ts";
import { recordWarnings } from "./recordWarnings.ts";
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

function assumptionsOf(record: ParsedRecord, atTarget: readonly string[]): readonly string[] {
  const said: string[] = ["Resistances are constant at working temperature; the supply is sinusoidal."];
  if (record.temperatureFactor === undefined) {
    said.push(
      "No temperature factor given: hot resistance is taken equal to cold. Heating alloys rise a few per cent, so the module will draw that much less.",
    );
  } else {
    said.push(`Hot resistance is ${Number(record.temperatureFactor.toPrecision(5))} times cold, as given.`);
  }
  if (record.wiring.banks.length > 1) said.push("Plate power is shared equally among the banks.");
  said.push(
    record.supply === undefined
      ? "No supply voltages given: the plate's voltage, balanced."
      : "Supply as measured line to line; its neutral is taken at the centre.",
  );
  if (atTarget.length > 0) {
    said.push(
      `Taken at target in the repaired module, because open, outside the tolerance or not measured: ${atTarget.join(", ")}.`,
    );
  }
  return said;
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
  collect(found, "supply.", () => supplyOf(parsed));
  const joints = collect(found, "", () => assessJoints(parsed));
  const read = drawn === undefined ? undefined : collect(found, "", () => assessResistances(parsed, drawn));
  throwAll(found);
  // Nothing was thrown, so nothing is missing.
  const module = drawn as NonNullable<typeof drawn>;
  const { assessment: resistances, fit } = read as NonNullable<typeof read>;
  const temperatureFactor = parsed.temperatureFactor ?? 1;
  const hot = hotBranches(resistances, temperatureFactor);
  const draw = assessDraw({ record: parsed, drawn: module, hot, fit, temperatureFactor });
  const ranked = joints as NonNullable<typeof joints>;
  return {
    title: parsed.title,
    assumptions: assumptionsOf(parsed, hot.atTarget),
    targets,
    resistances,
    draw,
    whatIf: assessWhatIf(parsed, module, hot),
    joints: ranked,
    nextSteps: nextSteps(resistances, ranked, draw),
    notTested: notTested(parsed),
    warnings: recordWarnings(parsed, resistances),
    cautions: CAUTIONS,
  };
}
