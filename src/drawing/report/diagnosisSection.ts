/** Which faults explain the readings, how probable each is, and what these readings cannot show. */
import { type Diagnosis, type ExplanationGroup, explanationGroupWords } from "../../bench/index.ts";
import { type Block, caution, type Draft, list, paragraph, table } from "./document.ts";
import { chiSquareText } from "./shown.ts";

/** Groups shown; a group after the first must be this probable to be worth a line. */
const GROUPS = 5;
const WORTH = 1e-3;
/** Members of one group shown. */
const MEMBERS = 8;

const OUTCOMES: Readonly<Record<Diagnosis["outcome"], string>> = {
  explained: "The readings are explained; what follows is ranked by probability.",
  "nothing fits":
    "Nothing on the list fits: even the best explanation is refuted by the readings, or they contradict each other. Take the readings again; the ranking is not to be acted on.",
  "too few readings":
    "Too few readings to test any explanation: the ranking is little more than what was assumed beforehand.",
};

/** Rows of one group: explanations that stand together share its probability. */
function groupRows(group: ExplanationGroup, index: number): readonly (readonly string[])[] {
  const { probability, explanations, unseen, estimates } = explanationGroupWords(group);
  const all = [...explanations, ...(unseen === null ? [] : [unseen])];
  const told = all.slice(0, MEMBERS);
  const alike = all.length > 1 ? `Together ${probability}: these readings cannot tell them apart.` : "";
  const rows = told.map((one, i) => [
    `${index + 1}${all.length > 1 ? String.fromCharCode(97 + i) : ""}`,
    one === unseen ? `${one.text}, alone or besides` : one.text,
    one.probability,
    i === 0 ? [alike, ...estimates.map((text) => `${text}.`)].filter((text) => text !== "").join(" ") : "",
  ]);
  const more = all.length - told.length;
  return more === 0 ? rows : [...rows, [`${index + 1}…`, `and ${more} more like these`, "", ""]];
}

function testOf({ groups }: Diagnosis): readonly Block[] {
  const best = groups[0]?.explanations[0];
  if (best === undefined) return [];
  const { chiSquare, degreesOfFreedom, pValue } = best;
  return [
    paragraph(
      pValue === null
        ? "No reading is to spare for a test of the best explanation."
        : `Best explanation against the readings: ${chiSquareText(chiSquare, degreesOfFreedom, pValue)}.`,
    ),
  ];
}

/** The diagnosis, as found; of its cautions those that the report has not given yet. */
export function diagnosisSection(diagnosis: Diagnosis | null, given: readonly string[]): Draft {
  const section = { id: "diagnosis", title: "Diagnosis of the readings as found" };
  if (diagnosis === null) {
    const missing = "No diagnosis: it needs a nameplate, and readings as found that it can weigh.";
    return { ...section, blocks: [], missing };
  }
  const { outcome, groups, notDetermined, warnings, cautions } = diagnosis;
  const rows = groups
    .slice(0, GROUPS)
    .filter(({ probability }, i) => i === 0 || probability > WORTH)
    .flatMap(groupRows);
  return {
    ...section,
    missing: null,
    blocks: [
      ...caution(cautions.filter((one) => !given.includes(one))),
      paragraph(OUTCOMES[outcome]),
      ...table("Explanations, most probable first", ["no.", "explanation", "#probability", "remarks"], rows),
      ...testOf(diagnosis),
      ...(notDetermined.length === 0 ? [] : [paragraph("What these readings do not show:")]),
      ...list(notDetermined),
      ...(warnings.length === 0 ? [] : [paragraph("Looks odd:")]),
      ...list(warnings.map(({ message }) => message)),
    ],
  };
}

/** What the diagnosis holds, in a sentence for other sections; empty where it holds nothing. */
export function diagnosisSentence(diagnosis: Diagnosis | null): string {
  const group = diagnosis?.groups[0];
  if (diagnosis?.outcome !== "explained" || group === undefined) return "";
  const { probability, explanations, unseen } = explanationGroupWords(group);
  const named = [...explanations, ...(unseen === null ? [] : [unseen])].map(({ text }) => text);
  return named.length > MEMBERS ? "" : `By the diagnosis: ${named.join(", or ")} (${probability}).`;
}
