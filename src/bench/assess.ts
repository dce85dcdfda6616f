/** One bench record in, one assessment out. */
import { buildModule, type HeatingModule } from "../circuit/index.ts";
import type { Amperes, ColdOhms, Issue, Ohms } from "../quantity/index.ts";
import { answerLines } from "./answer.ts";
import { assessDay, checkDay, dayState, siteSupply } from "./assessDay.ts";
import { assessDraw } from "./assessDraw.ts";
import { assessedModule, identityOf } from "./assessedModule.ts";
import { assessFaults } from "./assessFaults.ts";
import { isBadJoint } from "./assessJoints.ts";
import type { ModuleAssessment } from "./assessmentTypes.ts";
import { assessResistances } from "./assessResistance.ts";
import { assessWhatIf } from "./assessWhatIf.ts";
import { assumptionsOf } from "./assumptions.ts";
import { type BranchModule, branchModule, drawnJoints, elementPlan } from "./branchModule.ts";
import { CAUTIONS } from "./cautions.ts";
import { hotBranches, presentJoints, presentResistances, readAsLeft } from "./hotBranches.ts";
import { checkInstruments } from "./instrumentLimits.ts";
import { collect, throwAll } from "./issues.ts";
import { nextSteps } from "./nextSteps.ts";
import { notTested } from "./notTested.ts";
import { checkOhmmeter, DAYS, measuredReadings } from "./readings.ts";
import type { BenchRecord } from "./record.ts";
import type { ParsedRecord } from "./recordParsed.ts";
import { parseRecord } from "./recordSchema.ts";
import { bankTargets, coldTargets } from "./recordTargets.ts";
import { recordWarnings } from "./recordWarnings.ts";
import { runningWords } from "./runningOn.ts";
import { assessBars } from "./site/bars.ts";
import { checklist } from "./site/checklist.ts";
import { assessCommissioning } from "./site/commissioning.ts";
import { assessDegraded } from "./site/degraded.ts";
import { assessFeed } from "./site/feed.ts";
import { assessHardware } from "./site/hardware.ts";
import { partsList } from "./site/parts.ts";
import { supplyState } from "./supplyState.ts";

/** Where a fit starts without a nameplate: the mean of what was read, Ω. */
function startOf(record: ParsedRecord): ColdOhms {
  const values = DAYS.flatMap((day) => record[day]?.ohms ?? []).flatMap(({ reads }) =>
    typeof reads.value === "number" && reads.value > 0 ? [reads.value as number] : [],
  );
  const sum = values.reduce((total, one) => total + one, 0);
  return (sum > 0 ? sum / values.length : 1) as ColdOhms;
}

/** The module element by element with its joints: the names that readings may use. */
function wholeModule(record: ParsedRecord, { module }: BranchModule): HeatingModule {
  const ones = new Map(module.elements.map(({ id }) => [id, 1]));
  return buildModule({ ...elementPlan(record, ones), joints: drawnJoints(record, 0 as Ohms) });
}

/** The record read and checked as a whole: everything wrong with it is told at once. */
function readSheet(input: BenchRecord) {
  const record = parseRecord(input);
  const targets = bankTargets(record);
  const found: Issue[] = [];
  const drawn = collect(found, "wiring.", () => branchModule(record, coldTargets(targets), startOf(record)));
  const states = DAYS.map((day) => dayState(found, record, day));
  collect(found, "", () => checkOhmmeter(record));
  collect(found, "", () => checkInstruments(record));
  const ohms = DAYS.map((day) =>
    drawn === undefined ? undefined : collect(found, "", () => measuredReadings(record, day, drawn)),
  );
  const whole = drawn === undefined ? undefined : wholeModule(record, drawn);
  if (whole !== undefined) for (const day of DAYS) collect(found, "", () => checkDay(record, day, whole));
  const plateCurrent =
    targets.length === 0
      ? null
      : (targets.reduce((sum, { targets: t }) => sum + t.lineCurrent, 0) as Amperes);
  const hardware = collect(found, "", () => assessHardware(record));
  const feed = collect(found, "", () => assessFeed(record, plateCurrent));
  const cuts = collect(found, "", () => assessBars(record, plateCurrent));
  // Both days may stand on the site's voltages: what is wrong with them is told once.
  throwAll(found.filter((one, i) => found.findIndex(({ message }) => message === one.message) === i));
  // Nothing was thrown, so nothing is missing.
  return {
    record,
    targets,
    plateCurrent,
    site: { hardware: hardware ?? [], feed: feed ?? null, cuts: cuts ?? [] },
    drawn: drawn as NonNullable<typeof drawn>,
    whole: whole as NonNullable<typeof whole>,
    states: { asFound: states[0] ?? null, asLeft: states[1] ?? null },
    ohms: { asFound: ohms[0] ?? [], asLeft: ohms[1] ?? [] },
  };
}

/**
 * Assesses a heating module from its bench record, as found and as left: branch resistances with the leads taken off and their
 * uncertainty, amps beside a sound module's, joints, which faults explain it all, what it draws, what happens if any one element
 * opens, torque, feed, first heat, checklist and parts, what to do next, what nobody tested, and the cautions.
 * @param record - the record, of any origin: it is checked here
 * @returns the assessment; the same record always gives the same bytes
 * @throws ElectroheatError listing every offending path of the record at once
 * @source composition of fitTerminalReadings, nameplateTargets, energise, faultScan, diagnose and the lookups of joint and wiring; see there
 * @example
 * ```ts
 * const record: BenchRecord = {
 *   title: "invented conveyor dryer",
 *   nameplate: { power: "30 kW", voltage: "480 V" },
 *   wiring: { banks: [{ id: "A", connection: "star" }] },
 *   instruments: { ohmmeter: { ofReading: 0.005, digits: 2, leads: { shorted: "0.20 Ω" } } },
 *   tolerance: { low: -0.05, high: 0.1 },
 *   asFound: {
 *     ohms: [
 *       { from: "L1", to: "S", reads: "7.90 Ω" },
 *       { from: "L2", to: "S", reads: "7.88 Ω" },
 *       { from: "L3", to: "S", reads: "OL" },
 *     ],
 *   },
 * };
 * assessModule(record).nextSteps[0]?.reason // => "A-L3 reads open."
 * ```
 * @since 0.1.0
 */
export function assessModule(record: BenchRecord): ModuleAssessment {
  const {
    record: parsed,
    targets,
    plateCurrent,
    site: parts,
    drawn,
    whole,
    states,
    ohms,
  } = readSheet(record);
  const temperatureFactor = parsed.temperatureFactor ?? 1;
  const found = assessResistances(parsed, ohms.asFound, drawn);
  const left = assessResistances(parsed, ohms.asLeft, drawn, found.fit?.branches ?? []);
  const present = presentResistances(found.assessment, left.assessment);
  const hot = hotBranches(found.assessment, present, temperatureFactor);
  const day = { record: parsed, targets: present.branches, temperatureFactor };
  const asFound = assessDay({ ...day, day: "asFound", resistances: found.assessment, state: states.asFound });
  const asLeft = assessDay({ ...day, day: "asLeft", resistances: left.assessment, state: states.asLeft });
  const plate = parsed.nameplate?.voltage.value ?? null;
  const site = supplyState(siteSupply(parsed), plate);
  const ids = new Set(drawn.module.elements.map(({ id }) => id));
  const again = readAsLeft(left.assessment);
  const draw =
    site === null
      ? null
      : assessDraw({
          record: parsed,
          drawn,
          hot,
          foundFit: found.fit,
          presentFits: [
            ...(found.fit === null
              ? []
              : [{ fit: found.fit, ids: new Set([...ids].filter((id) => !again.has(id))) }]),
            ...(left.fit === null ? [] : [{ fit: left.fit, ids: again }]),
          ],
          temperatureFactor,
          found: states.asFound ?? site,
          site,
          present,
        });
  const joints = presentJoints(asFound?.joints ?? [], asLeft?.joints ?? []);
  const lostLine = {
    asFound: states.asFound?.lostLine ?? null,
    asLeft: parsed.asLeft?.supply === undefined ? null : (states.asLeft?.lostLine ?? null),
  };
  const lostNow = parsed.asLeft?.supply === undefined ? lostLine.asFound : lostLine.asLeft;
  const faults = assessFaults({
    record: parsed,
    targets,
    module: whole,
    bad: new Set([
      ...present.branches.flatMap(({ id, finding }) =>
        finding === "open" || finding === "outside" || finding === "shorted" || finding === "high"
          ? [id]
          : [],
      ),
      ...joints.filter(isBadJoint).map(({ id }) => id),
      ...(lostNow === null ? [] : [lostNow]),
    ]),
  });
  const steps = nextSteps({
    resistances: present,
    joints,
    diagnosed: faults.steps,
    draw,
    lostLine: lostNow,
    plateCurrent,
    readAgain: asLeft !== null && asLeft.resistances.outcome !== "no readings" && asLeft.currents.length > 0,
  });
  const untested = notTested(parsed);
  const anythingRead = [asFound, asLeft].some(
    (one) =>
      one !== null &&
      (one.resistances.outcome !== "no readings" || one.currents.length + one.joints.length > 0),
  );
  const running = runningWords({
    resistances: present,
    joints,
    lostLine: lostNow,
    forbidding: faults.forbidding,
    diagnosed: faults.running,
    anythingRead,
    module: drawn.module,
    repaired: draw === null ? null : hot.repaired,
    supply: site?.whole ?? null,
  });
  const { hardware, feed, cuts } = parts;
  const commissioning = assessCommissioning({ record: parsed, draw, atTarget: hot.atTarget });
  return {
    title: parsed.title,
    identity: identityOf(parsed),
    module: assessedModule(parsed),
    answer: answerLines({
      asFound,
      // What was not read again stands as found.
      asLeft: asLeft === null ? null : { ...asLeft, resistances: present, joints },
      verdict: faults.verdict,
      lostLine,
      module: whole,
      draw,
      plate: plate !== null,
      steps,
      running,
      notTested: untested,
    }),
    assumptions: [
      ...assumptionsOf(parsed, hot.atTarget, lostNow, faults.diagnosis !== null),
      ...faults.leftOut,
    ],
    targets,
    asFound,
    asLeft,
    diagnosis: faults.diagnosis,
    draw,
    whatIf: draw === null || site === null ? [] : assessWhatIf(parsed, hot, site.whole),
    degraded: assessDegraded({
      record: parsed,
      asFound: asFound?.resistances ?? null,
      hot,
      supply: site?.whole ?? null,
    }),
    hardware,
    feed,
    commissioning,
    nextSteps: steps,
    checklist: checklist({ asFound, asLeft, hardware, feed, commissioning }),
    parts: partsList({ record: parsed, asFound, cuts }),
    cuts,
    notTested: untested,
    warnings: recordWarnings(parsed, [found.assessment, left.assessment]),
    cautions: CAUTIONS,
  };
}
