/** Draws a heating module as drawn, and lists its places where a fault can be. */
import type { BankPlan, JointPlan, ModulePlan } from "electroheat/circuit";
import type { Ohms } from "electroheat/quantity";
import type { Chance } from "./chance.ts";

export const LINES = ["L1", "L2", "L3"] as const;
const VOLTAGES = [208, 230, 240, 380, 400, 415, 480, 600] as const;

export interface ElementSeat {
  readonly id: string;
  readonly bank: string;
  /** `"A-L1"`, `"A-L1L2"`. */
  readonly branch: string;
  /** Which of the bank's three branches, 0 to 2. */
  readonly side: number;
  /** Its string among those in parallel and its seat in it, from 0. */
  readonly string: number;
  readonly seat: number;
  readonly nominal: number;
}

export interface JointSeat {
  /** Name of the drawn joint, or of the place. */
  readonly name: string;
  /** Where it is: `"L1"`, `"L1>A"` or `"*<A-L1"`. */
  readonly position: string;
  readonly sound: number;
}

export interface Drawn {
  readonly plan: ModulePlan;
  readonly lineVoltage: number;
  readonly elements: readonly ElementSeat[];
  readonly joints: readonly JointSeat[];
}

const stars = (plan: ModulePlan): readonly BankPlan[] =>
  plan.banks.filter(({ connection }) => connection === "star");

/** The star point that the drawing gives a bank. */
export function drawnStarPoint(plan: ModulePlan, bank: string): string {
  if (plan.neutral === "connected") return "N";
  return stars(plan).length === 1 || plan.starPoints === "tied" ? "S" : `S-${bank}`;
}

export function branchName(bank: BankPlan, side: number): string {
  const line = LINES[side] as string;
  return `${bank.id}-${bank.connection === "star" ? line : `${line}${LINES[(side + 1) % 3]}`}`;
}

function seatsOf(plan: ModulePlan): ElementSeat[] {
  const seats: ElementSeat[] = [];
  for (const bank of plan.banks) {
    const { elementsInParallel: parallel = 1, elementsInSeries: series = 1 } = bank;
    for (let side = 0; side < 3; side += 1) {
      const branch = branchName(bank, side);
      for (let string = 0; string < parallel; string += 1) {
        for (let seat = 0; seat < series; seat += 1) {
          const id = `${branch}${parallel > 1 ? `-${string + 1}` : ""}${series > 1 ? `.${seat + 1}` : ""}`;
          const nominal = (plan.elements?.[id] as number | undefined) ?? bank.elementResistance;
          seats.push({ id, bank: bank.id, branch, side, string, seat, nominal });
        }
      }
    }
  }
  return seats;
}

/** Every bolted place: each line, each bank's end on each line, each star branch's end on its star point. */
function jointSeats(plan: ModulePlan): JointSeat[] {
  const positions: { position: string; place: string; at: string; behind: string | undefined }[] = [];
  for (const line of LINES) positions.push({ position: line, place: line, at: line, behind: undefined });
  for (const bank of plan.banks) {
    for (const line of LINES) {
      const place = `${line}>${bank.id}`;
      positions.push({ position: place, place, at: line, behind: bank.id });
    }
    if (bank.connection !== "star") continue;
    const at = drawnStarPoint(plan, bank.id);
    for (let side = 0; side < 3; side += 1) {
      const behind = branchName(bank, side);
      positions.push({ position: `*<${behind}`, place: `${at}<${behind}`, at, behind });
    }
  }
  return positions.map(({ position, place, at, behind }) => {
    const drawn = plan.joints?.find((joint) => joint.at === at && joint.behind?.[0] === behind);
    return { name: drawn?.id ?? place, position, sound: (drawn?.resistance as number | undefined) ?? 0 };
  });
}

/** Drawn joints, from the elements outwards as the plan wants them. */
function drawJoints(chance: Chance, plan: ModulePlan): JointPlan[] {
  const sound = (): Ohms => chance.logBetween(0.1e-3, 1e-3) as Ohms;
  const joints: JointPlan[] = [];
  if (chance.happens(0.1)) {
    for (const bank of stars(plan)) {
      const at = drawnStarPoint(plan, bank.id);
      for (let side = 0; side < 3; side += 1) {
        const branch = branchName(bank, side);
        joints.push({ id: `J-${at}-${branch}`, at, behind: [branch], resistance: sound() });
      }
    }
  }
  if (chance.happens(0.2)) {
    for (const bank of plan.banks)
      for (const at of LINES) {
        const id = `J-${at}-${bank.id}`;
        joints.push({ id, at, behind: [bank.id], resistance: sound(), role: "jumper bar" });
      }
  }
  if (chance.happens(0.2)) {
    for (const at of LINES) joints.push({ id: `J-${at}`, at, resistance: sound() });
  }
  return joints;
}

/** A module as drawn: 1 to 6 banks, 1 to 4 strings of 1 or 2 elements, 208 to 600 V. */
export function drawModule(chance: Chance, limits: { readonly mostElements?: number } = {}): Drawn {
  const { mostElements = Number.POSITIVE_INFINITY } = limits;
  const lineVoltage = chance.pick(VOLTAGES);
  const count = chance.weighted([1, 2, 3, 4, 5, 6].map((n, i) => [n, [30, 24, 16, 12, 9, 9][i] as number]));
  const kind = chance.weighted([
    ["star", 0.5],
    ["delta", 0.28],
    ["mixed", 0.22],
  ]);
  const alike = chance.happens(0.7);
  const bankOf = (id: string): BankPlan => {
    const connection =
      kind === "mixed" ? chance.pick(["star", "delta"] as const) : (kind as "star" | "delta");
    const parallel = chance.whole(1, 4);
    const series = chance.happens(0.25) ? 2 : 1;
    const volts = (connection === "star" ? lineVoltage / Math.sqrt(3) : lineVoltage) / series;
    const watts = chance.logBetween(400, 6000);
    // Three significant digits, as on a drawing.
    const elementResistance = Number((volts ** 2 / watts).toPrecision(3)) as Ohms;
    return { id, connection, elementResistance, elementsInParallel: parallel, elementsInSeries: series };
  };
  let first = bankOf("A");
  let banks = Array.from({ length: count }, (_, i): BankPlan => {
    const id = "ABCDEF".charAt(i);
    if (i === 0) return first;
    return alike && kind !== "mixed" ? { ...first, id } : bankOf(id);
  });
  const size = ({ elementsInParallel = 1, elementsInSeries = 1 }: BankPlan): number =>
    3 * elementsInParallel * elementsInSeries;
  while (banks.length > 1 && banks.reduce((sum, bank) => sum + size(bank), 0) > mostElements)
    banks = banks.slice(0, -1);
  if (size(banks[0] as BankPlan) > mostElements) {
    first = { ...first, elementsInParallel: 1 };
    banks = [first];
  }
  const starBanks = banks.filter(({ connection }) => connection === "star").length;
  let plan: ModulePlan = { banks };
  if (starBanks > 0 && chance.happens(0.15)) plan = { ...plan, neutral: "connected" };
  else if (starBanks > 1) plan = { ...plan, starPoints: chance.pick(["tied", "separate"] as const) };
  plan = { ...plan, joints: drawJoints(chance, plan) };
  if (chance.happens(0.05)) {
    // One element renewed earlier with a measured value.
    const seat = chance.pick(seatsOf(plan));
    plan = {
      ...plan,
      elements: { [seat.id]: Number((seat.nominal * chance.between(0.93, 1.08)).toPrecision(3)) as Ohms },
    };
  }
  return drawnFrom(plan, lineVoltage);
}

/** A plan with its places. */
export function drawnFrom(plan: ModulePlan, lineVoltage: number): Drawn {
  return { plan, lineVoltage, elements: seatsOf(plan), joints: jointSeats(plan) };
}
