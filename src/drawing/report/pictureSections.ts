/** The module as drawn with what was found written on it, and its phasors where they say something. */
import type { BranchAssessment, ModuleAssessment, ReadingsAssessment } from "../../bench/index.ts";
import { balancedSupply, type ModulePlan, type Supply, supplyFromLineVoltages } from "../../circuit/index.ts";
import { isElectroheatError, type Ohms } from "../../quantity/index.ts";
import { diagramPicture } from "../connectionDiagram.ts";
import type { DiagramState } from "../diagramTypes.ts";
import { phasorPicture } from "../phasorDiagram.ts";
import type { DescribedPicture } from "../svg.ts";
import { diagnosisSentence } from "./diagnosisSection.ts";
import { type Block, type Draft, paragraph } from "./document.ts";
import { type Day, jointText, measuredText } from "./readingSections.ts";

/** Widths: of a column of text on screen and paper at full size, and of a phone. */
const WIDE = 700;
const NARROW = 350;
/** Line voltages this near each other draw a triangle that looks balanced. */
const BALANCED = 0.01;

/** Level of a severity scale from which a joint is drawn as hot: on each of those in use the first that asks for a repair or a check. */
const HOT = 2;

const STATES: Readonly<Record<BranchAssessment["finding"], DiagramState | null>> = {
  sound: "within",
  undecided: "undecided",
  unjudged: null,
  outside: "outside",
  open: "open",
  shorted: "shorted",
  high: "outside",
  "not known": null,
};

/**
 * The module with one resistor for each branch: readings say what a branch is, not which of its elements. A branch of unknown
 * resistance is drawn like any other; its value is not printed from here.
 */
function branchPlan(assessment: ModuleAssessment, readings: ReadingsAssessment): ModulePlan {
  const { banks, starPoints, neutral, joints } = assessment.module;
  const { branches } = readings.resistances;
  const target = branches.find((branch) => branch.target !== null)?.target ?? 1;
  const known = branches.filter(({ resistance, finding }) => resistance !== null && finding !== "open");
  return {
    banks: banks.map(({ id, connection }) => ({
      id,
      connection,
      elementResistance: target as number as Ohms,
    })),
    ...(starPoints === null ? {} : { starPoints }),
    neutral,
    elements: Object.fromEntries([
      ...known.map(({ id, resistance }) => [id, resistance]),
      ...branches.filter(({ finding }) => finding === "open").map(({ id }) => [id, "open" as const]),
    ]),
    joints: joints.map((joint) => ({ ...joint, resistance: 0 as Ohms })),
  };
}

/** Labels that say how many elements a symbol stands for. */
function bankLabels({ module: { banks } }: ModuleAssessment): Readonly<Record<string, string>> {
  return Object.fromEntries(
    banks.flatMap(({ id, elementsInParallel: p, elementsInSeries: s }) => {
      const parts = [...(p > 1 ? [`${p} in parallel`] : []), ...(s > 1 ? [`${s} in series`] : [])];
      return parts.length === 0 ? [] : [[id, `Bank ${id}, ${parts.join(" of ")}`]];
    }),
  );
}

/** A picture in both widths; where it cannot be drawn, why. */
function both(
  title: string,
  id: string,
  draw: (width: number, id: string) => DescribedPicture,
): readonly Block[] {
  try {
    const wide = draw(WIDE, `${id}-wide`);
    const narrow = draw(NARROW, `${id}-narrow`);
    const { description } = wide;
    return [{ kind: "picture", title, description, wide: wide.svg, narrow: narrow.svg }];
  } catch (error) {
    if (!isElectroheatError(error)) throw error;
    return [paragraph(`${title}: cannot be drawn. ${error.message}`)];
  }
}

function diagram(assessment: ModuleAssessment, { name, readings }: Day): readonly Block[] {
  const { branches } = readings.resistances;
  const { joints } = assessment.module;
  if (branches.length === 0) return [];
  const measured = readings.joints.filter(({ id }) => joints.some((joint) => joint.id === id));
  const values = {
    ...Object.fromEntries(
      branches.map((one) => [one.id, one.resistance === "open" ? "" : measuredText(one)]),
    ),
    ...Object.fromEntries(
      measured.flatMap((one) => (one.resistance === null ? [] : [[one.id, jointText(one)]])),
    ),
  };
  const states: Record<string, DiagramState> = {};
  for (const { id, finding } of branches) {
    const state = STATES[finding];
    if (state !== null) states[id] = state;
  }
  for (const { id, comparison, contact, rise } of measured) {
    if (comparison === "investigate" || contact?.verdict === "outside" || (rise?.atLeast ?? 0) >= HOT)
      states[id] = "hot joint";
  }
  const title = `Connections, ${name}`;
  return both(title, `connections-${name === "as found" ? "found" : "left"}`, (width, id) =>
    diagramPicture(
      {
        module: branchPlan(assessment, readings),
        values,
        states,
        labels: bankLabels(assessment),
        title,
        width,
        id,
      },
      "branches",
    ),
  );
}

/** The connection diagram of each day. */
export function diagramSection(assessment: ModuleAssessment, days: readonly Day[]): Draft {
  const pictures = days.flatMap((day) => diagram(assessment, day));
  const many = assessment.module.banks.some((one) => one.elementsInParallel * one.elementsInSeries > 1);
  const held = days[0]?.name === "as found" ? diagnosisSentence(assessment.diagnosis) : "";
  const notes = [
    ...(many ? [paragraph("One resistor stands for a whole branch with all its elements.")] : []),
    ...(held === ""
      ? []
      : [paragraph(`Drawn as the record has it wired, with what the readings say of each branch. ${held}`)]),
  ];
  return {
    id: "connections",
    title: "Connections with verdicts",
    blocks: pictures.length === 0 ? [] : [...pictures, ...notes],
    missing: "No connection diagram: there is nothing to write on it.",
  };
}

/** The supply that the module was found on; `null` where none is known, or where the voltages measured close no triangle. */
function supplyOf({ module: { supply, lineVoltage } }: ModuleAssessment): Supply | null {
  if (supply === null) return lineVoltage === null ? null : balancedSupply({ lineVoltage });
  const sides = [supply.v12, supply.v23, supply.v31];
  const longest = Math.max(...sides);
  const closes = longest < sides.reduce((sum, side) => sum + side, 0) - longest;
  return closes ? supplyFromLineVoltages(supply) : null;
}

/** Whether the phasors show more than three equal arrows. */
function telling({ module: { supply } }: ModuleAssessment, { resistances }: ReadingsAssessment): boolean {
  const faulty = resistances.branches.some(({ finding }) => finding === "open" || finding === "outside");
  if (faulty || supply === null) return faulty;
  const sides = [supply.v12, supply.v23, supply.v31];
  return Math.max(...sides) > (1 + BALANCED) * Math.min(...sides);
}

/** Phasors as found, where every branch is known and something is not as it should be. Voltages only: they do not ask how hot it is. */
export function phasorSection(assessment: ModuleAssessment, days: readonly Day[]): Draft {
  const section = { id: "phasors", title: "Voltages as found", missing: null };
  const found = days.find(({ name }) => name === "as found")?.readings;
  const supply = supplyOf(assessment);
  if (found === undefined || supply === null || !telling(assessment, found))
    return { ...section, blocks: [] };
  const { branches } = found.resistances;
  const known = branches.every(({ resistance, finding }) => resistance !== null && finding !== "shorted");
  if (branches.length === 0 || !known) return { ...section, blocks: [] };
  const title = "Phasors, as found";
  const module = { ...branchPlan(assessment, found), joints: [] };
  const blocks = both(title, "phasors-found", (width, id) =>
    phasorPicture({ module, supply, title, width, id }),
  );
  const note = paragraph(
    "Voltages across the branches and of the star points against the neutral, at the voltages of the supply. A break stands live at the voltage of its arrow.",
  );
  return { ...section, blocks: [...blocks, note] };
}
