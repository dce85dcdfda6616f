/** Faults and measurements in a technician's words. */
import type { DiagnosedFault } from "../question/diagnosedFault.ts";
import type { FieldMeasurement } from "../question/fieldReading.ts";
import { isLine } from "../question/lines.ts";
import type { Explanation } from "../question/types.ts";

/** A probability as people read it; never 0 or 100 %, which no reading gives. */
export function probabilityWords(probability: number): string {
  if (probability > 0.999) return "over 99.9 %";
  if (probability < 0.001) return "under 0.1 %";
  return `${(probability * 100).toFixed(probability < 0.1 || probability > 0.99 ? 1 : 0)} %`;
}

/** A joint's place in words. */
export function placeWords(place: string): string {
  const bank = /^(L[123])>(.+)$/.exec(place);
  if (bank !== null) return `the joint of bank ${bank[2]} on ${bank[1]}`;
  const branch = /^(.+)<(.+)$/.exec(place);
  if (branch !== null) return `the joint of branch ${branch[2]} on star point ${branch[1]}`;
  return isLine(place) ? `the joint where line ${place} enters the module` : `joint ${place}`;
}

/** A terminal that every branch on it shares. */
export function terminalWords(terminal: string): string {
  return isLine(terminal) ? `terminal ${terminal}` : `star point ${terminal}`;
}

/** One fault in words. */
function faultWords(fault: DiagnosedFault): string {
  switch (fault.kind) {
    case "element open":
      return `element ${fault.element} open`;
    case "shorted turns":
      return `turns of element ${fault.element} shorted`;
    case "element off value":
      return `element ${fault.element} off its value`;
    case "joint":
      return `resistance in ${placeWords(fault.place)}`;
    case "open joint":
      return `open circuit in ${placeWords(fault.place)}`;
    case "mis-linked":
      if (fault.as === "neutral") return "star points on the neutral or the frame, against the drawing";
      return fault.bank === null
        ? `star points ${fault.as}, against the drawing`
        : `bank ${fault.bank} linked as ${fault.as}, against the drawing`;
    case "mis-landed":
      return `branch ${fault.branch} landed on ${fault.on} instead of ${fault.drawn}`;
    case "lost line":
      return `no supply on ${fault.line}`;
    case "unfed bank":
      return `bank ${fault.bank} without supply${fault.line === undefined ? "" : ` on ${fault.line}`}`;
    case "earth fault":
      return `element ${fault.element} earthed`;
    case "earthed terminal":
      return `${terminalWords(fault.terminal)} earthed`;
    case "other rating":
      return "all elements alike of another value than drawn";
    case "feed connected":
      return "the feed, or another load, still connected while ohms were read";
    case "supply unbalance":
      return "the supply's line voltages differ";
    case "misread":
      return `${measurementWords(fault.of)} misread`;
  }
}

/** Faults in words, one after the other; what several banks or lines lack is said once. */
function eachInWords(faults: readonly DiagnosedFault[]): readonly string[] {
  const lost = faults.flatMap((one) => (one.kind === "lost line" ? [one.line] : []));
  const off = faults.flatMap((one) =>
    one.kind === "unfed bank" && one.line === undefined ? [one.bank] : [],
  );
  const words = faults.map((one) => {
    if (one.kind === "lost line" && lost.length > 1) return `no supply on ${listed(lost)}`;
    const several = one.kind === "unfed bank" && one.line === undefined && off.length > 1;
    return several ? `banks ${listed(off)} without supply` : faultWords(one);
  });
  return [...new Set(words)];
}

/** An explanation in words. */
export function explanationWords(faults: readonly DiagnosedFault[], wiring = 0): string {
  const words = faults.length === 0 ? "sound" : eachInWords(faults).join(" and ");
  return wiring === 0 ? words : `${words}, if wired as alternative ${wiring}`;
}

const UNSEEN_WORDS: Readonly<Partial<Record<DiagnosedFault["kind"], string>>> = {
  "lost line": "no supply on a line",
  "supply unbalance": "line voltages that differ",
  "earth fault": "an earthed element",
  "earthed terminal": "an earthed terminal",
};

/** Kinds of faults that no reading can show, in words; empty if there are none. */
export function unseenWords(explanations: readonly Pick<Explanation, "unseen">[]): string {
  const kinds = new Set(explanations.flatMap(({ unseen }) => unseen.map(({ kind }) => kind)));
  const words = [...kinds].flatMap((kind) => UNSEEN_WORDS[kind] ?? []);
  return words.length === 0 ? "" : `a fault these readings cannot show (${listed(words, "or")})`;
}

/** A list as people write it. */
export function listed(names: readonly string[], word: "and" | "or" = "and"): string {
  const last = names.at(-1) ?? "";
  return names.length < 2 ? last : `${names.slice(0, -1).join(", ")} ${word} ${last}`;
}

/** Where a reading is taken, short. */
export function measurementWords(measurement: FieldMeasurement): string {
  const lifted = (only: readonly string[] | undefined): string =>
    only === undefined ? "" : `, only ${listed(only)} linked`;
  switch (measurement.kind) {
    case "resistance":
      return `${measurement.from} to ${measurement.to}${lifted(measurement.only)}`;
    case "current":
      return `amps at ${measurement.at}${measurement.into === undefined ? "" : ` into ${measurement.into}`}`;
    case "voltage":
      return `volts ${measurement.from} to ${measurement.to}`;
    case "drop":
      return `drop across ${measurement.across}`;
    case "insulation":
      return `insulation from ${measurement.from}${lifted(measurement.only)}`;
  }
}
