/** Draws what is really there: tolerances, supply, and the faults with their parameters, by stated probabilities. */
import type { BankPlan } from "electroheat/circuit";
import type { Chance } from "./chance.ts";
import type { DiagnosedFault, FaultEstimate, FaultPriors } from "./contract.ts";
import type { Phasor } from "./nodal.ts";
import { type Drawn, drawnStarPoint, LINES } from "./plan.ts";

/** Faults of the main mix; banks without supply have a population of their own, the others left out tests of theirs. */
export type FaultKind = Exclude<
  DiagnosedFault["kind"],
  "mis-landed" | "unfed bank" | "other rating" | "feed connected" | "misread"
>;

export interface TrueFault {
  readonly fault: DiagnosedFault;
  readonly parameters: readonly { readonly of: FaultEstimate["of"]; readonly value: number }[];
}

export interface World {
  readonly drawn: Drawn;
  readonly faults: readonly TrueFault[];
  /** Element to its true cold resistance. */
  readonly cold: ReadonlyMap<string, number | "open">;
  readonly temperatureFactor: number;
  /** Position to joint resistance, Infinity for one burnt off; absent means none. */
  readonly joints: ReadonlyMap<string, number>;
  /** Bank to how it is really linked. */
  readonly linked: ReadonlyMap<string, "star" | "delta">;
  readonly tied: boolean;
  readonly lost: ReadonlySet<string>;
  /** Lines of banks that have no supply: `"L1>A"`. */
  readonly unfed: ReadonlySet<string>;
  readonly earthed: ReadonlyMap<string, { readonly position: number; readonly ohms: number }>;
  /** Terminal to its path to the frame, Ω. */
  readonly earthedTerminals: ReadonlyMap<string, number>;
  readonly supply: ReadonlyMap<string, Phasor>;
}

/** Expected number of faults per module (as odds against sound), and how it is shared among the kinds. */
export const FAULT_ODDS = 0.8;
export const FAULT_MIX: Readonly<Record<FaultKind, number>> = {
  "element open": 0.34,
  "shorted turns": 0.14,
  "element off value": 0.12,
  joint: 0.13,
  "open joint": 0.03,
  "mis-linked": 0.08,
  "lost line": 0.06,
  "earth fault": 0.04,
  "earthed terminal": 0.02,
  "supply unbalance": 0.04,
};

const PRIOR_OF: Readonly<Record<FaultKind, keyof FaultPriors>> = {
  "element open": "elementOpen",
  "shorted turns": "shortedTurns",
  "element off value": "offValue",
  joint: "joint",
  "open joint": "openJoint",
  "mis-linked": "misLinked",
  "lost line": "lostLine",
  "earth fault": "earthFault",
  "earthed terminal": "earthedTerminal",
  "supply unbalance": "supplyUnbalance",
};

/** Every single fault that this module can have. */
export function possibleFaults(drawn: Drawn): DiagnosedFault[] {
  const { plan, elements, joints } = drawn;
  const starBanks = plan.banks.filter(({ connection }) => connection === "star").length;
  const faults: DiagnosedFault[] = [];
  for (const kind of ["element open", "shorted turns", "element off value", "earth fault"] as const)
    for (const { id } of elements) faults.push({ kind, element: id });
  for (const kind of ["joint", "open joint"] as const)
    for (const { name } of joints) faults.push({ kind, place: name });
  for (const { id, connection } of plan.banks)
    faults.push({ kind: "mis-linked", bank: id, as: connection === "star" ? "delta" : "star" });
  if (starBanks > 1 && plan.neutral !== "connected")
    faults.push({ kind: "mis-linked", bank: null, as: plan.starPoints === "tied" ? "separate" : "tied" });
  for (const line of LINES) faults.push({ kind: "lost line", line });
  const stars = plan.banks.flatMap(({ id, connection }) =>
    connection === "star" && plan.neutral !== "connected" ? [drawnStarPoint(plan, id)] : [],
  );
  for (const terminal of new Set([...LINES, ...stars])) faults.push({ kind: "earthed terminal", terminal });
  faults.push({ kind: "supply unbalance" });
  return faults;
}

/** The mix as a probability per place. */
export function priorsFor(faults: readonly DiagnosedFault[], odds: number): Required<FaultPriors> {
  const priors: Record<string, number> = {};
  for (const [kind, share] of Object.entries(FAULT_MIX)) {
    const places = faults.filter((fault) => fault.kind === kind).length;
    const each = (odds * share) / Math.max(1, places);
    priors[PRIOR_OF[kind as FaultKind]] = each / (1 + each);
  }
  return priors as unknown as Required<FaultPriors>;
}

/** What two faults cannot both change: one element's value, one joint's resistance. */
const changedBy = (fault: DiagnosedFault): string | undefined =>
  "place" in fault
    ? `joint ${fault.place}`
    : "element" in fault && fault.kind !== "earth fault"
      ? fault.element
      : undefined;

/** Whether two faults can be there at once. */
export const together = (a: DiagnosedFault, b: DiagnosedFault): boolean =>
  changedBy(a) === undefined || changedBy(a) !== changedBy(b);

/**
 * The faults of one module: weights are the products of p/(1−p). `single` knows sound, one fault, and two opens;
 * `pairs` any two faults, but never two changes of value of one element or joint.
 */
export function drawFaults(
  chance: Chance,
  faults: readonly DiagnosedFault[],
  priors: Required<FaultPriors>,
  depth: "single" | "pairs",
): readonly DiagnosedFault[] {
  const oddsOf = (fault: DiagnosedFault): number => {
    const p = priors[PRIOR_OF[fault.kind as FaultKind]];
    return p / (1 - p);
  };
  const singles = faults.map((fault) => [fault, oddsOf(fault)] as const);
  const partners = depth === "pairs" ? singles : singles.filter(([{ kind }]) => kind === "element open");
  const one = singles.reduce((sum, [, odds]) => sum + odds, 0);
  const other = partners.reduce((sum, [, odds]) => sum + odds, 0);
  // Ordered pairs count each pair twice, and include those to be refused: halved, and refused below by drawing all anew.
  for (;;) {
    const count = chance.weighted([
      [0, 1],
      [1, one],
      [2, other ** 2 / 2],
    ]);
    if (count === 0) return [];
    if (count === 1) return [chance.weighted(singles)];
    const a = chance.weighted(partners);
    const b = chance.weighted(partners);
    if (a !== b && together(a, b)) return [a, b];
  }
}

/** All sets of faults that `drawFaults` can draw, with their odds against sound. */
export function listedSets(
  drawn: Drawn,
  priors: Required<FaultPriors>,
  depth: "single" | "pairs",
): readonly { readonly faults: readonly DiagnosedFault[]; readonly odds: number }[] {
  const singles = possibleFaults(drawn).map((fault) => {
    const p = priors[PRIOR_OF[fault.kind as FaultKind]];
    return { fault, odds: p / (1 - p) };
  });
  const sets: { faults: readonly DiagnosedFault[]; odds: number }[] = [{ faults: [], odds: 1 }];
  for (const { fault, odds } of singles) sets.push({ faults: [fault], odds });
  const partners = depth === "pairs" ? singles : singles.filter(({ fault }) => fault.kind === "element open");
  partners.forEach((a, i) => {
    for (const b of partners.slice(i + 1)) {
      if (!together(a.fault, b.fault)) continue;
      sets.push({ faults: [a.fault, b.fault], odds: a.odds * b.odds });
    }
  });
  return sets;
}

/**
 * Banks without supply: one, a line of one, several or all, alone or beside one fault of the main mix. The shares are ours: no record says
 * how often each happens.
 */
export function drawUnfed(
  chance: Chance,
  drawn: Drawn,
  priors: Required<FaultPriors>,
): readonly DiagnosedFault[] {
  const banks = drawn.plan.banks.map(({ id }) => id);
  const off = (bank: string): DiagnosedFault => ({ kind: "unfed bank", bank });
  const one = (): DiagnosedFault => off(chance.pick(banks));
  const line = (): DiagnosedFault => ({
    kind: "unfed bank",
    bank: chance.pick(banks),
    line: chance.pick(LINES),
  });
  const some = (): readonly DiagnosedFault[] => {
    const running = chance.pick(banks);
    return banks.filter((bank) => bank !== running).map(off);
  };
  const usual = possibleFaults(drawn).map((fault) => {
    const p = priors[PRIOR_OF[fault.kind as FaultKind]];
    return [fault, p / (1 - p)] as const;
  });
  return chance.weighted<() => readonly DiagnosedFault[]>([
    [() => [one()], 0.25],
    [() => [line()], 0.35],
    [some, 0.1],
    [() => banks.map(off), 0.1],
    [() => [chance.happens(0.5) ? one() : line(), chance.weighted(usual)], 0.2],
  ])();
}

const OFF_LOW = Math.log(0.9 / 0.6);
const OFF_HIGH = Math.log(2 / 1.15);

/** A fault with its parameters drawn from the agreed distributions. */
export function withParameters(chance: Chance, fault: DiagnosedFault): TrueFault {
  switch (fault.kind) {
    case "shorted turns":
      return { fault, parameters: [{ of: "turns shorted", value: chance.between(0.05, 0.9) }] };
    case "element off value": {
      const low = chance.happens(OFF_LOW / (OFF_LOW + OFF_HIGH));
      const value = low ? chance.logBetween(0.6, 0.9) : chance.logBetween(1.15, 2);
      return { fault, parameters: [{ of: "resistance ratio", value }] };
    }
    case "joint":
      return { fault, parameters: [{ of: "joint resistance", value: chance.logBetween(1e-3, 30) }] };
    case "earth fault":
      return {
        fault,
        parameters: [
          { of: "position", value: chance.next() },
          { of: "fault resistance", value: chance.logBetween(1, 100e3) },
        ],
      };
    case "earthed terminal":
      return { fault, parameters: [{ of: "fault resistance", value: chance.logBetween(1, 100e3) }] };
    case "supply unbalance":
      return { fault, parameters: [{ of: "unbalance", value: chance.between(0.02, 0.06) }] };
    default:
      return { fault, parameters: [] };
  }
}

/** Phasors of the three lines from the three line voltages, neutral at the centroid of their triangle. */
export function phasorsOf(v12: number, v23: number, v31: number): Map<string, Phasor> {
  const x = (v12 ** 2 + v31 ** 2 - v23 ** 2) / (2 * v12);
  const corners = [
    { re: 0, im: 0 },
    { re: v12, im: 0 },
    { re: x, im: Math.sqrt(v31 ** 2 - x ** 2) },
  ];
  const middle = { re: (v12 + x) / 3, im: (corners[2] as Phasor).im / 3 };
  return new Map(
    corners.map(({ re, im }, i) => [LINES[i] as string, { re: re - middle.re, im: im - middle.im }]),
  );
}

/** Line voltages around their mean: ordinary ones, or a pattern whose largest difference is `unbalance` of the mean. */
function drawSupply(chance: Chance, lineVoltage: number, unbalance: number | undefined): Map<string, Phasor> {
  const mean = lineVoltage * (1 + chance.normal(0.03));
  const turn = chance.between(0, 2 * Math.PI);
  const pattern = [0, 1, 2].map((i) => Math.cos(turn + (2 * Math.PI * i) / 3));
  const range = Math.max(...pattern) - Math.min(...pattern);
  const [v12, v23, v31] = pattern.map((part) =>
    unbalance === undefined ? mean * (1 + chance.normal(0.005)) : mean * (1 + (unbalance * part) / range),
  ) as [number, number, number];
  return phasorsOf(v12, v23, v31);
}

const parameter = (faults: readonly TrueFault[], of: FaultEstimate["of"]): number | undefined =>
  faults.flatMap(({ parameters }) => parameters).find((one) => one.of === of)?.value;

/** Puts the faults into a module whose tolerances are drawn here. `spread` 0 gives the nominal module. */
export function makeWorld(
  chance: Chance,
  drawn: Drawn,
  faults: readonly TrueFault[],
  spread: 0 | 1 = 1,
): World {
  const { plan, elements, joints } = drawn;
  const common = 1 + spread * chance.between(-0.05, 0.1);
  const cold = new Map<string, number | "open">();
  for (const { id, nominal } of elements) cold.set(id, nominal * common * (1 + spread * chance.normal(0.02)));
  const temperatureFactor = spread === 0 ? 1 : 1.04 + chance.normal(0.02);
  const jointMap = new Map(
    joints.filter(({ sound }) => sound > 0).map(({ position, sound }) => [position, sound]),
  );
  const linked = new Map(
    plan.banks.map(({ id, connection }: BankPlan) => [id, connection as "star" | "delta"]),
  );
  const lost = new Set<string>();
  const unfed = new Set<string>();
  const earthed = new Map<string, { position: number; ohms: number }>();
  const earthedTerminals = new Map<string, number>();
  let tied = plan.starPoints === "tied";
  for (const one of faults) {
    const { fault } = one;
    const value = one.parameters[0]?.value as number;
    const times = (factor: number): void => {
      if (!("element" in fault)) return;
      cold.set(fault.element, (cold.get(fault.element) as number) * factor);
    };
    if (fault.kind === "element open") cold.set(fault.element, "open");
    else if (fault.kind === "shorted turns") times(1 - value);
    else if (fault.kind === "element off value") times(value);
    else if (fault.kind === "joint" || fault.kind === "open joint") {
      const ohms = fault.kind === "joint" ? value : Number.POSITIVE_INFINITY;
      jointMap.set(joints.find(({ name }) => name === fault.place)?.position as string, ohms);
    } else if (fault.kind === "lost line") lost.add(fault.line);
    else if (fault.kind === "unfed bank")
      for (const line of fault.line === undefined ? LINES : [fault.line]) unfed.add(`${line}>${fault.bank}`);
    else if (fault.kind === "earth fault")
      earthed.set(fault.element, { position: value, ohms: one.parameters[1]?.value as number });
    else if (fault.kind === "earthed terminal") earthedTerminals.set(fault.terminal, value);
    else if (fault.kind === "mis-linked") {
      if (fault.bank === null) tied = fault.as === "tied";
      else linked.set(fault.bank, fault.as as "star" | "delta");
    }
  }
  const unbalance = parameter(faults, "unbalance");
  const supply =
    spread === 0
      ? phasorsOf(drawn.lineVoltage, drawn.lineVoltage, drawn.lineVoltage)
      : drawSupply(chance, drawn.lineVoltage, unbalance);
  return {
    drawn,
    faults,
    cold,
    temperatureFactor,
    joints: jointMap,
    linked,
    tied,
    lost,
    unfed,
    earthed,
    earthedTerminals,
    supply,
  };
}
