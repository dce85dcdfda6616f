/** What is different in an assessment from the one before, in words for those who hear the page. */

/** @import { ModuleAssessment, ReadingsAssessment } from "electroheat/bench" */

const MOST = 3;

/** @param {string} day @param {ReadingsAssessment | null} before @param {ReadingsAssessment | null} after @returns {readonly string[]} */
function dayChanges(day, before, after) {
  const old = new Map((before?.resistances.branches ?? []).map(({ id, finding }) => [id, finding]));
  const branches = (after?.resistances.branches ?? []).flatMap(({ id, finding }) => {
    const was = old.get(id);
    if (was === finding || (was === undefined && before !== null)) return [];
    return [was === undefined ? `${id} ${finding}` : `${id} ${finding}, was ${was}`];
  });
  const known = new Map((before?.joints ?? []).map(({ id, comparison }) => [id, comparison]));
  const joints = (after?.joints ?? []).flatMap(({ id, comparison }) =>
    known.has(id) && known.get(id) !== comparison ? [`joint ${id}: ${comparison}`] : [],
  );
  return [...branches, ...joints].map((change) => `${day}, ${change}`);
}

/**
 * @param {ModuleAssessment | null} before `null` for the first
 * @param {ModuleAssessment} after
 * @returns {string} one sentence or two
 */
export function whatChanged(before, after) {
  if (before === null) return `Worked out for ${after.title}.`;
  const changes = [
    ...dayChanges("as found", before.asFound, after.asFound),
    ...dayChanges("as left", before.asLeft, after.asLeft),
  ];
  const [first, ...rest] = after.answer.filter((line) => !before.answer.includes(line));
  if (changes.length > 0) {
    const more = changes.length > MOST ? `, and ${changes.length - MOST} more` : "";
    return `Changed: ${changes.slice(0, MOST).join("; ")}${more}.${first === undefined ? "" : ` ${first}`}`;
  }
  if (first !== undefined) return `The answer changed: ${[first, ...rest].slice(0, 2).join(" ")}`;
  return "Worked out again; findings and answer are as before.";
}
