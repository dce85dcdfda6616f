/** The assessment as plain text, for a terminal or a job sheet: first the answer, then the evidence. */
import { formatQuantity, type Watts } from "../../quantity/index.ts";
import { diagnosisVerdict } from "../advice/diagnosisVerdict.ts";
import type { ModuleAssessment, ReadingsAssessment } from "../assessmentTypes.ts";
import type { Draw, DrawAssessment, WhatIfRow } from "../assessTypes.ts";
import { figureLines } from "./figures.ts";
import { bullet, heading, table, WIDTH, wrap } from "./layout.ts";
import { jointLines, ohms, percent, readingLines, resistanceLines } from "./readings.ts";
import { siteSections } from "./site.ts";

/** Names of elements that do the same, in the first column. */
const NAMES_WIDTH = 26;

const kilowatts = (power: Watts): string =>
  formatQuantity(power, { unit: "W", as: "kW", significantDigits: 4 });
const amps = (lines: Draw["lines"]): string =>
  lines.map(({ node, current }) => `${node} ${current.toFixed(1)} A`).join("   ");

/** What the plate promises: whole module first, then each kind of bank. */
function targetLines({ targets }: ModuleAssessment): string[] {
  const total = targets.reduce((sum, { targets: t }) => sum + t.lineCurrent, 0);
  const cold = targets.reduce((sum, { targets: t }) => sum + (t.coldLineCurrent ?? 0), 0);
  const start = cold > 0 ? `, ${cold.toFixed(1)} A in the first second from cold` : "";
  const kinds = new Map<string, string[]>();
  for (const { bank, targets: t } of targets) {
    const coldOhms = t.elementResistanceCold === null ? "" : `, ${ohms(t.elementResistanceCold)} cold`;
    const kind = `${t.bankLineCurrent.toFixed(1)} A a line; one element ${ohms(t.elementResistanceHot)} hot${coldOhms}, ${t.branchVoltage.toFixed(0)} V across its branch`;
    kinds.set(kind, [...(kinds.get(kind) ?? []), bank]);
  }
  return [
    `  Whole module: ${total.toFixed(1)} A a line at plate voltage${start}.`,
    ...[...kinds].map(([kind, banks]) =>
      wrap(`${banks.length > 1 ? "Banks" : "Bank"} ${banks.join(", ")}: ${kind}.`, "  "),
    ),
  ];
}

/** What the module is taken for where it is taken as repaired. */
function repairedWords({ confirmed, atTarget }: DrawAssessment): {
  readonly short: string;
  readonly long: string;
} {
  if (!confirmed) return { short: "Known branches kept", long: "branches as far as known, others at target" };
  return atTarget.length === 0
    ? { short: "Sound, as it stands", long: "all branches sound, as they stand" }
    : { short: "Faulty ones renewed", long: "faulty branches renewed" };
}

function drawLines(draw: DrawAssessment): string[] {
  const { asFound, repaired, repairedAtPlateVoltage: plate, deviationFromPlate, basis } = draw;
  const power = ({ power, standardUncertainty: u }: Draw): string =>
    u === null ? kilowatts(power) : `${(power / 1000).toFixed(2)} ± ${((2 * u) / 1000).toFixed(2)} kW`;
  const rows = [
    ...(asFound === null ? [] : [`  As found            ${power(asFound)}   ${amps(asFound.lines)}`]),
    `  ${repairedWords(draw).short.padEnd(19)} ${power(repaired)}   ${amps(repaired.lines)}`,
    ...(plate === null || deviationFromPlate === null
      ? []
      : [
          `  At plate voltage    ${power(plate)}   ${amps(plate.lines)}   ${percent(deviationFromPlate).trim()} from plate`,
        ]),
  ];
  const from =
    asFound !== null && basis === "nameplate" ? "measured resistances (as found) and nameplate" : basis;
  return [...rows, `  From ${from}; ± is two standard uncertainties.`];
}

/** Elements whose loss does the same to three digits, written once. */
function whatIfLines(rows: readonly WhatIfRow[]): string[] {
  const grouped = new Map<string, { elements: string[]; cells: string[] }>();
  for (const row of rows) {
    const cells = [
      kilowatts(row.power),
      percentOf(row.powerRatio),
      ...row.lines.map(({ current }) => current.toFixed(1)),
      row.worst === null ? "none left" : `${row.worst.id} ${row.worst.powerRatio.toFixed(2)}×`,
      row.gapVoltage === null ? "unknown, live" : `${row.gapVoltage.toFixed(0)} V`,
    ];
    // The survivor's name differs within a group of like elements; its stress does not.
    const key = [...cells.slice(0, -2), row.worst?.powerRatio.toFixed(2), cells.at(-1)].join("|");
    const group = grouped.get(key);
    if (group === undefined) grouped.set(key, { elements: [row.element], cells });
    else group.elements.push(row.element);
  }
  const nodes = (rows[0]?.lines ?? []).map(({ node }) => `${node} A`);
  const header = ["opens", "power", "of full", ...nodes, "hardest survivor", "across break"];
  return table([
    header,
    ...[...grouped.values()].flatMap(({ elements, cells }) => {
      const [first = "", ...more] = wrap(elements.join(", "), "", NAMES_WIDTH).split("\n");
      return [[first, ...cells], ...more.map((names) => [names, ...cells.map(() => "")])];
    }),
  ]);
}

const percentOf = (ratio: number): string => `${(ratio * 100).toFixed(1)} %`;

/** One day: branches, readings where they do not speak for themselves, amps, insulation, joints. */
function dayLines(day: ReadingsAssessment, when: string): string[] {
  const { resistances, currents, unbalance, insulation, joints } = day;
  const { outcome, consistency } = resistances;
  const plain = outcome === "no readings" || (outcome === "solved" && consistency !== "inconsistent");
  return [
    heading(`Branch resistances ${when} (cold, leads taken off)`),
    ...resistanceLines(resistances),
    ...(plain ? [] : [heading("Readings against a sound module (cold)"), ...readingLines(resistances)]),
    ...(currents.length === 0 ? [] : [heading(`Amps ${when}`), ...figureLines(currents)]),
    ...(unbalance.length === 0 ? [] : [heading(`Unbalance ${when}`), ...figureLines(unbalance)]),
    ...(insulation.length === 0 ? [] : [heading(`Insulation ${when}`), ...figureLines(insulation)]),
    ...(joints.length === 0 ? [] : [heading(`Joints ${when}, worst first`), ...jointLines(joints)]),
  ];
}

function whatIfSections({ whatIf, draw }: ModuleAssessment): string[] {
  return whatIf.flatMap(({ connection, needs, rows }) => [
    connection === "as drawn"
      ? heading(`If one element opens (${draw === null ? "branches at target" : repairedWords(draw).long})`)
      : heading(`If all banks were in ${connection}, and one element opens`),
    ...needs.map(bullet),
    ...whatIfLines(rows),
    "  × is the survivor's power, and surface load, over its own healthy value.",
  ]);
}

/**
 * An assessment as plain text: the answer and the next steps first, then readings, draw, what-if, site, assumptions and cautions.
 * @param assessment - from {@link assessModule}
 * @returns text of at most about 100 columns, lines ending in `\n`; the same assessment always gives the same text
 * @source layout of our own
 * @example
 * ```ts
 * const record: BenchRecord = {
 *   title: "invented kiln",
 *   nameplate: { power: "30 kW", voltage: "480 V" },
 *   wiring: { banks: [{ id: "A", connection: "delta" }] },
 * };
 * assessmentText(assessModule(record)).split("\n")[0] // => "invented kiln"
 * ```
 * @since 0.1.0
 */
export function assessmentText(assessment: ModuleAssessment): string {
  const { title, answer, nextSteps, asFound, asLeft, diagnosis, draw, targets } = assessment;
  const steps = nextSteps.flatMap(({ action, reason }, i) => [
    `  ${i + 1}. ${wrap(action, "     ").trimStart()}`,
    wrap(`Why: ${reason}`, "     "),
  ]);
  const sections = [
    title,
    "=".repeat(Math.min(WIDTH, [...title].length)),
    heading("Answer"),
    ...answer.map(bullet),
    heading("What to do next"),
    ...steps,
    ...(asFound === null ? [] : dayLines(asFound, "as found")),
    ...(asLeft === null ? [] : dayLines(asLeft, "as left")),
    ...(diagnosis === null
      ? []
      : [
          heading("What explains the readings as found"),
          bullet(`${diagnosisVerdict(diagnosis).words}.`),
          ...diagnosis.notDetermined.map(bullet),
        ]),
    ...(targets.length === 0 ? [] : [heading("What the plate promises"), ...targetLines(assessment)]),
    ...(draw === null ? [] : [heading("What it draws at full conduction"), ...drawLines(draw)]),
    ...whatIfSections(assessment),
    ...siteSections(assessment),
    ...(assessment.warnings.length === 0
      ? []
      : [heading("Looks odd"), ...assessment.warnings.map(({ message }) => bullet(message))]),
    heading("Taken for granted"),
    ...assessment.assumptions.map(bullet),
    ...(assessment.notTested.length === 0
      ? []
      : [heading("Not tested"), ...assessment.notTested.map(bullet)]),
    heading("Cautions"),
    ...assessment.cautions.map(bullet),
  ];
  return `${sections.join("\n")}\n`;
}
