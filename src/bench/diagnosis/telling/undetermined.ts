/** What a set of readings can never show, said before anyone concludes it from them. */

import { showsEarth } from "../hypotheses/unseen.ts";
import type { Model } from "../likelihood/model.ts";
import { baselineOf, meansInto, meansOf } from "../likelihood/quick.ts";
import { cutResponse } from "../network/change.ts";
import { forwardInPlace, squared } from "../numbers/linear.ts";
import { floats } from "../numbers/room.ts";
import { isLine } from "../question/lines.ts";
import type { Explanation, ExplanationGroup } from "../question/types.ts";
import { explanationWords, listed, unseenWords } from "./words.ts";

/** Two standard deviations: a joint that shifts the readings by less stays unseen. */
const SEEN_AT = 2;

/** What is put into a joint to see how much the readings make of it, Ω. */
const PROBE = 1e-3;

/** Smallest resistances that these readings would show in the joint seen best, and in that seen worst, Ω; Infinity where none does. */
function jointLimits(model: Model): { readonly least: number; readonly most: number } | null {
  const { frame, sound, wiring } = model;
  const joints = model.atoms().filter(({ kind }) => kind === "joint");
  if (joints.length === 0) return null;
  const base = baselineOf(model, sound);
  const { count, factor, mean } = base;
  const change = floats(count);
  let [lowest, highest] = [Number.POSITIVE_INFINITY, 0];
  for (const { cut, edge } of joints) {
    const means = meansOf(model, sound, base, cutResponse(frame, sound, cut), edge);
    const resistance = (wiring.edges[edge]?.resistance ?? 0) + PROBE;
    meansInto(means, { cold: PROBE, hot: PROBE, resistance, variance: 0 }, change);
    for (let i = 0; i < count; i += 1) change[i] = (change[i] as number) - (mean[i] as number);
    forwardInPlace(factor, count, change);
    const shown = squared(change, count);
    lowest = Math.min(lowest, shown);
    highest = Math.max(highest, shown);
  }
  const limit = (shown: number): number => (SEEN_AT * PROBE) / Math.sqrt(shown);
  return { least: limit(highest), most: limit(lowest) };
}

function ohmsWords(ohms: number): string {
  if (ohms >= 1) return `${Number(ohms.toPrecision(2))} Ω`;
  return ohms >= 1e-3
    ? `${Number((ohms * 1e3).toPrecision(2))} mΩ`
    : `${Number((ohms * 1e6).toPrecision(2))} µΩ`;
}

function jointWords(model: Model): string[] {
  const limits = jointLimits(model);
  if (limits === null) return [];
  const { least, most } = limits;
  if (!Number.isFinite(least)) return ["No joint resistance at all shows in these readings."];
  const range = most > 1.3 * least ? `; at the best-seen place ${ohmsWords(least)}` : "";
  return [
    Number.isFinite(most)
      ? `Joint resistance below about ${ohmsWords(most)} does not show in these readings${range}: normal readings do not clear the terminals.`
      : `Some joints do not show in these readings at any resistance${range}: normal readings do not clear the terminals.`,
  ];
}

/** Pairs of faults that were not weighed though pairs were asked for: what they would explain is missing from the list. */
function leftOutWords({ question }: Model): string[] {
  const { input, priors } = question;
  if (input.depth !== "pairs") return [];
  const left: string[] = [];
  if (priors.earthFault > 0 && showsEarth(question)) {
    const beside = [
      ...(priors.shortedTurns > 0 ? ["shorted turns"] : []),
      ...(priors.offValue > 0 ? ["an element off its value"] : []),
      ...(priors.joint > 0 ? ["resistance in a joint"] : []),
      ...(priors.elementOpen > 0 ? ["an open element of the same branch"] : []),
      "a second earth fault",
    ];
    left.push(`an earth fault beside ${listed(beside, "or")}`);
  }
  if (priors.misLinked > 0) left.push("two slips in the links");
  if (priors.joint + priors.openJoint > 0) left.push("two bad joints on one wire");
  return [`Not weighed: ${listed([...left, "three faults at once"], "or")}.`];
}

/** Everything worth saying, most pressing first. */
export function notDetermined(model: Model, groups: readonly ExplanationGroup[]): string[] {
  const { readings, alternatives } = model.question.input;
  const kinds = new Set(readings.map(({ kind }) => kind));
  const said: string[] = [];
  const top = (groups[0] as ExplanationGroup).explanations;
  const weighty = top.filter(
    ({ probability, unseen }) =>
      unseen.length === 0 && probability > 0.01 * (top[0] as Explanation).probability,
  );
  const unseen = unseenWords(top);
  if (weighty.length > 1 || unseen !== "") {
    const names = weighty.slice(0, 6).map(({ faults, wiring }) => explanationWords(faults, wiring));
    const more = weighty.length > 6 ? `, and ${weighty.length - 6} more` : "";
    if (unseen !== "") names.push(unseen);
    said.push(`These readings cannot tell apart: ${listed(names, "or")}${more}.`);
  }
  const between = readings.every(
    (reading) =>
      reading.kind === "insulation" ||
      (reading.kind === "current" && reading.into === undefined) ||
      ((reading.kind === "resistance" || reading.kind === "voltage") &&
        isLine(reading.from) &&
        isLine(reading.to) &&
        !("only" in reading && reading.only !== undefined)),
  );
  if (between && alternatives === undefined) {
    said.push(
      "Readings at the lines alone do not tell a star from a delta of three times the resistance: the wiring is taken as drawn, but for single slips.",
    );
  }
  if (!model.question.live) {
    said.push("Nothing about the supply: lost lines and unbalance show only under voltage.");
  } else if (!kinds.has("voltage")) {
    said.push(
      "The line voltage was not measured: amperes alone do not tell a low supply from high resistance in all elements.",
    );
  }
  const rated = top[0]?.faults.some(({ kind }) => kind === "other rating") === true;
  if (rated && !kinds.has("resistance")) {
    said.push(
      "Amperes alone do not tell elements of another value from a controller that fires part of the time, a clamp around one of several wires, or amperes of one element.",
    );
  }
  if (!kinds.has("insulation")) {
    said.push(
      model.question.live
        ? "Insulation was not measured: an earth fault of high resistance, or on a supply without earthed neutral, does not show."
        : "Insulation was not measured: an earth fault does not show in ohms between terminals.",
    );
  }
  return [...said, ...leftOutWords(model), ...jointWords(model)];
}
