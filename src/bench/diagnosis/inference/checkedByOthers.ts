/** Readings that the others determine, whatever each branch and each line voltage may be: only these can be said not to belong to them. */
import type { Weighed } from "./infer.ts";

/** What of a reading's effects counts as its own beside those of the other readings. */
const OWN = 1e-3;

type Vector = readonly number[];

const size = (vector: Vector): number => Math.hypot(...vector);

/** What is left of a vector across a basis of unit vectors at right angles. */
function across(basis: readonly Vector[], vector: Vector): Vector {
  return basis.reduce((rest, unit) => {
    const along = rest.reduce((sum, x, i) => sum + x * (unit[i] as number), 0);
    return rest.map((x, i) => x - along * (unit[i] as number));
  }, vector);
}

/** A basis of what vectors span: Gram and Schmidt. */
function basisOf(vectors: readonly Vector[]): readonly Vector[] {
  const basis: Vector[] = [];
  for (const vector of vectors) {
    const rest = across(basis, vector);
    const length = size(rest);
    if (length > OWN * size(vector)) basis.push(rest.map((x) => x / length));
  }
  return basis;
}

/**
 * For each reading, whether the others determine it: its effects of branches and line voltages on the sound module lie in the span of theirs.
 * @param sound - the module as drawn and sound
 */
export function checkedByOthers({ finding }: Weighed): readonly boolean[] {
  finding.visit(finding.best);
  const { prediction, question, frame } = finding.model;
  const { rows, columns, voltageColumn } = prediction;
  const unknowns = [...Array(frame.edges).keys(), ...[0, 1, 2].map((k) => voltageColumn + k)];
  const effects = question.input.readings.map((_, r): Vector | null =>
    Number.isNaN(question.seen.reads[r]) || prediction.adrift[r] !== 0
      ? null
      : unknowns.map((c) => columns[c * rows + r] as number),
  );
  return effects.map((own, r) => {
    if (own === null) return false;
    const others = effects.flatMap((one, k) => (k === r || one === null ? [] : [one]));
    return size(across(basisOf(others), own)) <= OWN * size(own);
  });
}
