/** The module as drawn, for as long as there are no readings to write on it. */
import { isElectroheatError, ohms } from "electroheat";
import { buildModule } from "electroheat/circuit";
import { connectionDiagram } from "electroheat/drawing";
import { element } from "./dom.mjs";

/** @import { ModuleAssessment } from "electroheat/bench" */
/** @import { ModulePlan } from "electroheat/circuit" */

/** @param {ModuleAssessment} assessment @returns {HTMLElement | null} `null` where there are readings, or too much to draw */
export function plannedPicture({ module, targets, asFound, asLeft }) {
  if ((asFound?.resistances.branches.length ?? 0) + (asLeft?.resistances.branches.length ?? 0) > 0)
    return null;
  const known = targets.length > 0;
  const target = new Map(
    targets.map(({ bank, targets: own }) => [bank, own.elementResistanceCold ?? own.elementResistanceHot]),
  );
  /** @type {ModulePlan} */
  const plan = {
    banks: module.banks.map((bank) => ({ ...bank, elementResistance: ohms(target.get(bank.id) ?? 1) })),
    ...(module.starPoints === null ? {} : { starPoints: module.starPoints }),
    neutral: module.neutral,
    joints: module.joints.map((joint) => ({ ...joint, resistance: ohms(0) })),
  };
  try {
    const { elements } = buildModule(plan);
    // Without a nameplate nothing is known of the elements; the joints' 0 Ω is how they are drawn, not what they have.
    const blank = [...(known ? [] : elements.map(({ id }) => id)), ...module.joints.map(({ id }) => id)];
    const svg = connectionDiagram({
      module: plan,
      values: Object.fromEntries(blank.map((id) => [id, ""])),
      title: known ? "Connections as drawn, elements at their target" : "Connections as drawn",
      width: 700,
      id: "planned",
    });
    const picture = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
    return element("figure", {}, document.adoptNode(picture));
  } catch (error) {
    if (!isElectroheatError(error)) throw error;
    return null;
  }
}
