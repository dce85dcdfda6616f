/** The diagnosis as plain text, for a terminal or a job sheet: first the answer, then the evidence, then what to do next. */
import { fail, given, type Open } from "../../quantity/index.ts";
import { bullet, heading, table, wrap } from "../text/layout.ts";
import type { MeasurementProposal } from "./nextMeasurements.ts";
import type { Diagnosis, DiagnosisInput, Explanation, ExplanationGroup } from "./question/types.ts";
import { explanationGroupWords } from "./telling/groupWords.ts";
import { explanationWords, measurementWords } from "./telling/words.ts";

/** Groups and members shown, and proposals. */
const GROUPS = 4;
const MEMBERS = 5;
const PROPOSALS = 3;

function groupLines(group: ExplanationGroup): string[] {
  const { probability, explanations, unseen, estimates } = explanationGroupWords(group);
  const [only] = explanations;
  const lines = [
    bullet(
      explanations.length === 1 && unseen === null
        ? `${probability}: ${only?.text}`
        : `${probability} together, not told apart by these readings:`,
    ),
  ];
  if (explanations.length > 1 || unseen !== null) {
    for (const one of explanations.slice(0, MEMBERS)) {
      lines.push(wrap(`${one.probability}: ${one.text}`, "      "));
    }
    const more = explanations.length - MEMBERS;
    if (more > 0) lines.push(`      and ${more} more, each less probable or like these`);
    if (unseen !== null) {
      lines.push(wrap(`${unseen.probability}: ${unseen.text}, alone or besides`, "      "));
    }
  }
  return [...lines, ...estimates.map((one) => wrap(one, "      "))];
}

const shown = (value: number | Open | null): string =>
  value === null ? "-" : value === "open" ? "OL" : `${Number(value.toPrecision(4))}`;

function readingLines(input: DiagnosisInput, { predicted }: Explanation): string[] {
  const rows = input.readings.map((reading, r) => {
    const one = predicted[r];
    const deviation = one?.deviation ?? null;
    return [
      measurementWords(reading),
      shown(one?.reads ?? null),
      shown(one?.predicted ?? null),
      deviation === null ? "" : `${deviation < 0 ? "−" : "+"}${Math.abs(deviation).toFixed(1)}`,
    ];
  });
  return table([["reading", "read", "predicted", "in std. uncertainties"], ...rows]);
}

const ANSWERS: Readonly<Record<Diagnosis["outcome"], string>> = {
  explained: "The readings are explained.",
  "nothing fits":
    "NOTHING ON THE LIST FITS: even the best explanation is refuted by the readings, or they contradict each other. Take them again before anything else; the ranking below is not to be acted on.",
  "too few readings":
    "TOO FEW READINGS to test any explanation: the ranking is little more than what was assumed beforehand.",
};

/** The most probable explanation; every group that is told of must hold one. */
function topOf(groups: readonly ExplanationGroup[]): Explanation {
  const bare = groups.findIndex(({ explanations }) => explanations.length === 0);
  const top = groups[0]?.explanations[0];
  if (top !== undefined && bare < 0) return top;
  const path = groups.length === 0 ? "diagnosis.groups" : `diagnosis.groups.${bare}.explanations`;
  return fail({ code: "missing", path, expected: "at least one in the list", received: 0 });
}

/**
 * A diagnosis as plain text of at most 96 columns.
 * @param input.asked - what {@link diagnose} was asked
 * @param input.diagnosis - what it answered
 * @param input.next - proposals of {@link nextMeasurements}; the first three are told. Left out: none
 * @returns lines joined by newlines
 * @throws ElectroheatError `missing`, `wrong-type`
 * @example
 * ```ts
 * const asked: DiagnosisInput = {
 *   module: { banks: [{ id: "A", connection: "star", elementResistance: ohms(12) }] },
 *   instruments: { ohmmeter: { ofReading: 0.005, digits: 3, resolution: 0.01, leads: "taken off" } },
 *   readings: [{ kind: "resistance", from: "L1", to: "L2", reads: ohms(24.1) }],
 * };
 * diagnosisText({ asked, diagnosis: diagnose(asked) }).split("\n")[0] // => "DIAGNOSIS"
 * ```
 * @since 0.1.0
 */
export function diagnosisText(input: {
  readonly asked: DiagnosisInput;
  readonly diagnosis: Diagnosis;
  readonly next?: readonly MeasurementProposal[];
}): string {
  const { next = [] } = given(input);
  const asked = given(input.asked, "asked");
  const { outcome, groups, notDetermined, warnings, cautions } = given(input.diagnosis, "diagnosis");
  const top = topOf(groups);
  const p =
    top.pValue === null
      ? "no readings to spare for a test"
      : top.pValue === 0
        ? // An open path read where it has ohms, or the reverse: no square of a distance says so.
          "readings contradict it outright"
        : `χ² ${top.chiSquare.toFixed(1)} with ${top.degreesOfFreedom} to spare, p ${top.pValue < 0.001 ? "below 0.001" : top.pValue.toFixed(3)}`;
  const told = groups.filter(({ probability }, i) => i === 0 || probability > 1e-3);
  return [
    "DIAGNOSIS",
    wrap(ANSWERS[outcome], "  "),
    heading("Explanations"),
    ...told.slice(0, GROUPS).flatMap(groupLines),
    heading(`Readings against: ${explanationWords(top.faults, top.wiring)}`),
    ...readingLines(asked, top),
    wrap(`Best explanation: ${p}.`, "  "),
    ...(warnings.length === 0
      ? []
      : [heading("Warnings"), ...warnings.map(({ message }) => bullet(message))]),
    heading("What these readings do not show"),
    ...notDetermined.map(bullet),
    ...(next.length === 0
      ? []
      : [
          heading("Next measurement"),
          ...next
            .slice(0, PROPOSALS)
            .map(({ instruction, expectedInformation: bits }) =>
              bullet(`${instruction} (expected to settle ${bits.toFixed(2)} bit)`),
            ),
        ]),
    heading("Cautions"),
    ...cautions.map(bullet),
  ].join("\n");
}
