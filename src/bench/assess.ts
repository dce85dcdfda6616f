/** One bench record in, one assessment out. */
import { adviseOn } from "./advice/advice.ts";
import { assessDraw } from "./assessDraw.ts";
import { assessedModule, identityOf } from "./assessedModule.ts";
import type { ModuleAssessment } from "./assessmentTypes.ts";
import { assessWhatIf } from "./assessWhatIf.ts";
import { assumptionsOf } from "./assumptions.ts";
import { CAUTIONS } from "./cautions.ts";
import { siteSupply } from "./day/assessDay.ts";
import { bothDays } from "./day/days.ts";
import { hotBranches, presentResistances, readAsLeft } from "./day/hotBranches.ts";
import { assessResistances } from "./day/resistance.ts";
import { supplyState } from "./day/supplyState.ts";
import { isWeighed } from "./day/wideLimits.ts";
import { notTested } from "./notTested.ts";
import { readSheet } from "./readSheet.ts";
import type { BenchRecord } from "./record/record.ts";
import { recordWarnings } from "./recordWarnings.ts";
import { checklist } from "./site/checklist.ts";
import { assessCommissioning } from "./site/commissioning.ts";
import { assessDegraded } from "./site/degraded.ts";
import { partsList } from "./site/parts.ts";

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
  const sheet = readSheet(record);
  const { record: parsed, targets, drawn, states, ohms } = sheet;
  const { hardware, feed, cuts } = sheet.site;
  const temperatureFactor = parsed.temperatureFactor ?? 1;
  const found = assessResistances(parsed, ohms.asFound, drawn, isWeighed(parsed, "asFound", "ohmmeter"));
  const left = assessResistances(parsed, ohms.asLeft, drawn, false, found.fit?.branches ?? []);
  const present = presentResistances(found.assessment, left.assessment);
  const hot = hotBranches(found.assessment, present, temperatureFactor);
  const days = bothDays({ sheet, found: found.assessment, left: left.assessment, present });
  const { asFound, asLeft } = days;
  const site = supplyState(siteSupply(parsed), parsed.nameplate?.voltage.value ?? null);
  const again = readAsLeft(left.assessment);
  const before = new Set(drawn.module.elements.map(({ id }) => id).filter((id) => !again.has(id)));
  const draw =
    site === null
      ? null
      : assessDraw({
          record: parsed,
          drawn,
          hot,
          foundFit: found.fit,
          presentFits: [
            ...(found.fit === null ? [] : [{ fit: found.fit, ids: before }]),
            ...(left.fit === null ? [] : [{ fit: left.fit, ids: again }]),
          ],
          temperatureFactor,
          found: states.asFound ?? site,
          site,
          present,
        });
  const untested = notTested(parsed, feed);
  const advice = adviseOn({ sheet, days, draw, hot, supply: site?.whole ?? null, untested });
  const { diagnosis, leftOut, lostLine } = advice;
  const commissioning = assessCommissioning({ record: parsed, draw, atTarget: hot.atTarget });
  return {
    title: parsed.title,
    identity: identityOf(parsed),
    module: assessedModule(parsed),
    answer: advice.answer,
    assumptions: [...assumptionsOf(parsed, hot.atTarget, lostLine, diagnosis !== null), ...leftOut],
    targets,
    asFound,
    asLeft,
    diagnosis,
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
    nextSteps: advice.steps,
    checklist: checklist({ asFound, asLeft, hardware, feed, commissioning }),
    parts: partsList({
      record: parsed,
      asFound,
      asLeft,
      cuts,
      joints: advice.joints,
      misread: advice.misread,
      readAgain: advice.odd.length > 0,
    }),
    cuts,
    notTested: untested,
    warnings: recordWarnings(parsed, [found.assessment, left.assessment]),
    cautions: CAUTIONS,
  };
}
