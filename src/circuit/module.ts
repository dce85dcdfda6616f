/** Builders: from how a heating module is described (banks, elements, star points, joints) to its network. */
import {
  checkMeasurable,
  checkOhmsOrOpen,
  checkOneOf,
  checkWhole,
  fail,
  given,
  inField,
  type Ohms,
  type Open,
  oneOf,
  onlyFields,
} from "../quantity/index.ts";
import { type Connection, checkConnection } from "./connection.ts";
import { endingAt, refuseStub, withJoint } from "./joint.ts";
import { type Branch, type BranchRole, checkNetwork, type Network } from "./network.ts";

/**
 * One bank: elements connected as one star or one delta and fed by the three lines.
 * @since 0.1.0
 */
export interface BankPlan {
  /** Name of the bank, such as `"A"`. */
  readonly id: string;
  /** Star or delta. */
  readonly connection: Connection;
  /** Resistance of one element, Ω, more than 0. */
  readonly elementResistance: Ohms;
  /** Elements (or strings of elements) side by side in each branch; 1 if left out. */
  readonly elementsInParallel?: number;
  /** Elements one after the other in each string; 1 if left out. */
  readonly elementsInSeries?: number;
}

/**
 * A joint, jumper bar or conductor with a resistance of its own, in series with branches.
 * @since 0.1.0
 */
export interface JointPlan {
  /** Name of the joint. */
  readonly id: string;
  /** Node it sits on: a line (`"L1"`) or a star point. */
  readonly at: string;
  /**
   * What its current feeds: names of banks, branches (`"A-L1"`) or elements. Left out: everything on that node, which only
   * a line or a star point on the neutral allows; at a floating star point, name what lies on one side of the joint.
   */
  readonly behind?: readonly string[];
  /** Its resistance, Ω, 0 or more, or `"open"`. */
  readonly resistance: Ohms | Open;
  /** What it is; a joint if left out. */
  readonly role?: BranchRole;
}

/**
 * A heating module as drawn.
 * @since 0.1.0
 */
export interface ModulePlan {
  /** The banks, at least one. */
  readonly banks: readonly BankPlan[];
  /** Whether the star points of the star banks are tied together. Needed as soon as there are two star banks. */
  readonly starPoints?: "tied" | "separate";
  /** Whether the star points are on the supply neutral; floating if left out. */
  readonly neutral?: "connected" | "floating";
  /** Elements that differ from their bank's resistance, by element name: measured, aged, open. */
  readonly elements?: Readonly<Record<string, Ohms | Open>>;
  /** Joints and jumper bars with a resistance of their own, from the elements outwards: a later one lies nearer the supply. */
  readonly joints?: readonly JointPlan[];
}

/**
 * Where an element sits.
 * @since 0.1.0
 */
export interface ElementPlace {
  /** Name: bank-branch, then `-n` where several are in parallel, then `.n` where several are in series. */
  readonly id: string;
  /** Bank it belongs to. */
  readonly bank: string;
  /** Branch: a line in a star (`"L1"`), a pair of lines in a delta (`"L1L2"`). */
  readonly branch: string;
}

/**
 * A module as a network, and the names in it.
 * @since 0.1.0
 */
export interface HeatingModule {
  /** The plan it was built from. */
  readonly plan: ModulePlan;
  /** Its network. */
  readonly network: Network;
  /** Its elements, in the network's order. */
  readonly elements: readonly ElementPlace[];
  /** Star point of each star bank: bank name to node name. */
  readonly starPoints: Readonly<Record<string, string>>;
}

const LINES = ["L1", "L2", "L3"] as const;

/** Branch name, and its two nodes; a star branch ends on the bank's star point. */
function branchEnds(
  connection: Connection,
  starPoint: string,
): readonly (readonly [string, string, string])[] {
  return LINES.map((line, i) => {
    const next = LINES[(i + 1) % 3] as string;
    return connection === "star" ? [line, line, starPoint] : [`${line}${next}`, line, next];
  });
}

const PLAN = ["banks", "starPoints", "neutral", "elements", "joints"];
const BANK = ["id", "connection", "elementResistance", "elementsInParallel", "elementsInSeries"];
const JOINT = ["id", "at", "behind", "resistance", "role"];

function checkPlan(plan: ModulePlan): void {
  if (!Array.isArray(given(plan, "plan").banks) || plan.banks.length === 0) {
    fail({ code: "missing", path: "banks", expected: "at least one bank", received: plan.banks });
  }
  onlyFields(plan, PLAN);
  const ids = new Set<string>();
  plan.banks.forEach((bank, i) => {
    const path = `banks.${i}`;
    onlyFields(given(bank, path), BANK, path);
    if (typeof bank.id !== "string" || bank.id === "")
      fail({ code: "missing", path: `${path}.id`, expected: "a name", received: bank.id });
    if (ids.has(bank.id))
      fail({ code: "duplicate", path: `${path}.id`, expected: "a name used once", received: bank.id });
    ids.add(bank.id);
    checkConnection(bank.connection, `${path}.connection`);
    checkMeasurable(`${path}.elementResistance`, bank.elementResistance, "Ω");
    checkWhole(`${path}.elementsInParallel`, bank.elementsInParallel ?? 1, 1, 10_000);
    checkWhole(`${path}.elementsInSeries`, bank.elementsInSeries ?? 1, 1, 10_000);
  });
  const stars = plan.banks.filter((bank) => bank.connection === "star").length;
  if (plan.neutral !== undefined) checkOneOf("neutral", plan.neutral, ["connected", "floating"]);
  if (plan.starPoints !== undefined) checkOneOf("starPoints", plan.starPoints, ["tied", "separate"]);
  // Tied or separate decides which elements are over-stressed after an open: never assumed.
  if (stars > 1 && plan.starPoints === undefined && plan.neutral !== "connected") {
    fail({
      code: "missing",
      path: "starPoints",
      expected: `"tied" or "separate" (there are ${stars} star banks)`,
      received: undefined,
    });
  }
  if (plan.neutral === "connected" && stars === 0) {
    fail({
      code: "inconsistent",
      path: "neutral",
      expected: "a star bank to connect",
      received: plan.neutral,
    });
  }
}

function starPointOf(plan: ModulePlan, bank: BankPlan): string {
  if (plan.neutral === "connected") return "N";
  const stars = plan.banks.filter((one) => one.connection === "star").length;
  return stars === 1 || plan.starPoints === "tied" ? "S" : `S-${bank.id}`;
}

/** Adds the branches of a bank to those of a module, and the place of each. */
function addBank(plan: ModulePlan, bank: BankPlan, branches: Branch[], places: ElementPlace[]): void {
  const { elementsInParallel: parallel = 1, elementsInSeries: series = 1 } = bank;
  for (const [name, from, to] of branchEnds(bank.connection, starPointOf(plan, bank))) {
    const branch = `${bank.id}-${name}`;
    for (let p = 1; p <= parallel; p += 1) {
      const string = parallel === 1 ? branch : `${branch}-${p}`;
      for (let s = 1; s <= series; s += 1) {
        const id = series === 1 ? string : `${string}.${s}`;
        branches.push({
          id,
          from: s === 1 ? from : `${string}|${s - 1}`,
          to: s === series ? to : `${string}|${s}`,
          resistance: plan.elements?.[id] ?? bank.elementResistance,
          role: "element",
        });
        places.push({ id, bank: bank.id, branch: name });
      }
    }
  }
}

/** Branches that a joint's `behind` names and that end on its node; all of them if it is left out. */
function branchesBehind(
  module: HeatingModule,
  joint: JointPlan,
  path: string,
): { readonly behind: readonly string[]; readonly fed: readonly string[] } {
  const ending = endingAt(module.network, joint.at);
  if (ending.length === 0) {
    const expected = `a line or star point: ${oneOf([...LINES, ...new Set(Object.values(module.starPoints))])}`;
    fail({ code: "unknown-name", path: `${path}.at`, expected, received: joint.at });
  }
  const place = new Map(module.elements.map((element) => [element.id, element]));
  const behind = joint.behind?.flatMap((name, i) => {
    const found = ending.filter((id) => {
      const element = place.get(id);
      return (
        id === name || (element && (element.bank === name || `${element.bank}-${element.branch}` === name))
      );
    });
    if (found.length === 0) {
      const expected = `a bank, branch or element that ends on ${joint.at} (there: ${ending.slice(0, 40).join(", ")})`;
      fail({ code: "unknown-name", path: `${path}.behind.${i}`, expected, received: name });
    }
    return found;
  });
  // The builder knows what a bare network does not: which star points float.
  const fed = module.plan.neutral === "connected" ? [...LINES, "N"] : LINES;
  refuseStub({ at: joint.at, ending, behind: new Set(behind ?? ending), fed, path: `${path}.behind` });
  return { behind: behind ?? ending, fed };
}

/**
 * Builds the network of a heating module from its description.
 *
 * Lines are L1, L2, L3; a common star point is S (N when on the neutral), separate ones are S-bank. Elements are named
 * bank-branch: `A-L1` in a star, `A-L1L2` in a delta; `A-L1-2` for the second in parallel, `A-L1.2` for the second in series.
 * @param plan - banks, star points, neutral, elements that differ, joints
 * @returns the network with the places of its elements and the names of its star points
 * @throws ElectroheatError `missing`, `duplicate`, `unknown-name`, `inconsistent`, `not-a-number`, `out-of-range`; `missing`
 *   for two star banks of which it is not said whether their star points are tied; `inconsistent` for a joint with
 *   nothing on its other side
 * @source IEC 60445 (line marks); definitions of star and delta connection, IEC 60050-141
 * @example
 * ```ts
 * const heater = buildModule({
 *   banks: [{ id: "A", connection: "star", elementResistance: ohms(15.36), elementsInParallel: 2 }],
 * });
 * heater.elements.map((element) => element.id)
 * // => ["A-L1-1", "A-L1-2", "A-L2-1", "A-L2-2", "A-L3-1", "A-L3-2"]
 * ```
 * @since 0.1.0
 */
export function buildModule(plan: ModulePlan): HeatingModule {
  checkPlan(plan);
  const branches: Branch[] = [];
  const elements: ElementPlace[] = [];
  for (const bank of plan.banks) addBank(plan, bank, branches, elements);
  const names = new Set(plan.elements ? elements.map((element) => element.id) : []);
  for (const [id, resistance] of Object.entries(plan.elements ?? {})) {
    if (!names.has(id)) {
      const expected = `an element: ${oneOf([...names].slice(0, 40))}`;
      fail({ code: "unknown-name", path: `elements.${id}`, expected, received: id });
    }
    checkOhmsOrOpen(`elements.${id}`, resistance);
  }
  const stars = plan.banks.filter((bank) => bank.connection === "star");
  let module: HeatingModule = {
    plan,
    network: { branches },
    elements,
    starPoints: Object.fromEntries(stars.map((bank) => [bank.id, starPointOf(plan, bank)])),
  };
  checkNetwork(module.network);
  (plan.joints ?? []).forEach((joint, i) => {
    const { id, at, resistance, role = "joint" } = given(joint, `joints.${i}`);
    onlyFields(joint, JOINT, `joints.${i}`);
    const sides = branchesBehind(module, joint, `joints.${i}`);
    const put = { network: module.network, at, id, resistance, role, ...sides };
    const network = inField(`joints.${i}`, () => withJoint(put));
    module = { ...module, network };
  });
  return module;
}

/**
 * The same plan with one bank, or all, reconnected from star to delta or back, on the same elements.
 * @param input.plan - the plan
 * @param input.connection - the new connection
 * @param input.bank - which bank; all if left out
 * @returns a new plan. Star to delta puts √3 times the voltage on every element: three times the power, if they stand it
 * @throws ElectroheatError `unknown-name`
 * @source definitions of star and delta connection
 * @example
 * ```ts
 * const plan: ModulePlan = { banks: [{ id: "A", connection: "star", elementResistance: ohms(7.68) }] };
 * reconnected({ plan, connection: "delta" }).banks[0]?.connection // => "delta"
 * ```
 * @since 0.1.0
 */
export function reconnected(input: {
  readonly plan: ModulePlan;
  readonly connection: Connection;
  readonly bank?: string;
}): ModulePlan {
  const { plan, connection, bank } = given(input);
  checkConnection(connection);
  const names = plan.banks.map(({ id }) => id);
  if (bank !== undefined) checkOneOf("bank", bank, names);
  return {
    ...plan,
    banks: plan.banks.map((one) => (bank === undefined || one.id === bank ? { ...one, connection } : one)),
  };
}
