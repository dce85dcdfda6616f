/** Reading plans: what a technician measures, decided from the drawing and never from what is really wrong. */
import type { BankPlan } from "electroheat/circuit";
import type { Amperes, Ohms, Volts } from "electroheat/quantity";
import type { Chance } from "./chance.ts";
import type { FieldMeasurement, FieldReading } from "./contract.ts";
import {
  energised,
  type Live,
  size,
  trueCurrent,
  trueDrop,
  trueInsulation,
  trueResistance,
  trueVoltage,
} from "./inside.ts";
import type { Kit } from "./meters.ts";
import { branchName, type Drawn, drawnStarPoint, LINES } from "./plan.ts";
import type { World } from "./world.ts";

const PAIRS = [
  ["L1", "L2"],
  ["L2", "L3"],
  ["L3", "L1"],
] as const;

const betweenLines = (only?: readonly string[]): FieldMeasurement[] =>
  PAIRS.map(([from, to]) => ({ kind: "resistance", from, to, ...(only ? { only } : {}) }));

const starBanks = ({ plan }: Drawn): readonly BankPlan[] =>
  plan.banks.filter(({ connection }) => connection === "star");

/** Lines to star points. Where several banks share one, each bank alone: "S" is one stud only if they are really tied. */
function toStarPoints(drawn: Drawn): FieldMeasurement[] {
  const { plan } = drawn;
  const shared = plan.starPoints === "tied" && plan.neutral !== "connected" && starBanks(drawn).length > 1;
  if (plan.neutral === "connected" && starBanks(drawn).length > 0)
    return LINES.map((from) => ({ kind: "resistance", from, to: "N" }));
  return starBanks(drawn).flatMap(({ id }) =>
    LINES.map((from): FieldMeasurement => {
      const to = drawnStarPoint(plan, id);
      return { kind: "resistance", from, to, ...(shared ? { only: [id] } : {}) };
    }),
  );
}

const eachBank = ({ plan }: Drawn): FieldMeasurement[] => plan.banks.flatMap(({ id }) => betweenLines([id]));

function eachBranch({ plan }: Drawn): FieldMeasurement[] {
  return plan.banks.flatMap((bank) =>
    LINES.map((from, side): FieldMeasurement => {
      const to =
        bank.connection === "star" ? drawnStarPoint(plan, bank.id) : (LINES[(side + 1) % 3] as string);
      return { kind: "resistance", from, to, only: [branchName(bank, side)] };
    }),
  );
}

const lineCurrents = (): FieldMeasurement[] => LINES.map((at) => ({ kind: "current", at }));
const bankCurrents = ({ plan }: Drawn): FieldMeasurement[] =>
  plan.banks.flatMap(({ id }) => LINES.map((at): FieldMeasurement => ({ kind: "current", at, into: id })));
const branchCurrents = ({ plan }: Drawn): FieldMeasurement[] =>
  plan.banks.flatMap((bank) =>
    LINES.map((at, side): FieldMeasurement => ({ kind: "current", at, into: branchName(bank, side) })),
  );
const lineVolts = (): FieldMeasurement[] => PAIRS.map(([from, to]) => ({ kind: "voltage", from, to }));
function starVolts(drawn: Drawn): FieldMeasurement[] {
  const { plan } = drawn;
  // Under voltage nothing is lifted, so a shared star point is probed only where one bank makes it.
  if (plan.neutral === "connected") return LINES.map((from) => ({ kind: "voltage", from, to: "N" }));
  if (plan.starPoints === "tied" && starBanks(drawn).length > 1) return [];
  return starBanks(drawn).flatMap(({ id }) =>
    LINES.map((from): FieldMeasurement => ({ kind: "voltage", from, to: drawnStarPoint(plan, id) })),
  );
}
const drops = ({ plan }: Drawn): FieldMeasurement[] =>
  (plan.joints ?? []).map(({ id }) => ({ kind: "drop", across: id }));
const insulations = ({ plan }: Drawn): FieldMeasurement[] =>
  plan.banks.length === 1
    ? [{ kind: "insulation", from: "L1" }]
    : plan.banks.map(({ id }) => ({ kind: "insulation", from: "L1", only: [id] }));

const PLANS: Readonly<Record<string, (drawn: Drawn, chance: Chance) => FieldMeasurement[]>> = {
  "between lines": () => betweenLines(),
  "to star points": (drawn) => [...betweenLines(), ...toStarPoints(drawn)],
  "each bank lifted": (drawn) => eachBank(drawn),
  "each branch lifted": (drawn) => eachBranch(drawn),
  "branches and lines": (drawn) => [...eachBranch(drawn), ...betweenLines()],
  "line currents": () => lineCurrents(),
  "bank currents": (drawn) => [...lineVolts(), ...bankCurrents(drawn)],
  "branch currents": (drawn) => [...lineVolts(), ...branchCurrents(drawn)],
  "volts and currents": (drawn) => [...lineVolts(), ...lineCurrents(), ...starVolts(drawn)],
  "ohms and currents": (_drawn) => [...betweenLines(), ...lineCurrents()],
  "joint drops": (drawn) => [...lineVolts(), ...lineCurrents(), ...drops(drawn)],
  "insulation too": (drawn) => [...betweenLines(), ...insulations(drawn)],
  everything: (drawn) => [
    ...eachBranch(drawn),
    ...betweenLines(),
    ...lineVolts(),
    ...bankCurrents(drawn),
    ...drops(drawn),
    ...insulations(drawn),
  ],
  "a few at random": (drawn, chance) => {
    const all = [
      ...betweenLines(),
      ...toStarPoints(drawn),
      ...eachBranch(drawn),
      ...lineCurrents(),
      ...lineVolts(),
      ...starVolts(drawn),
    ];
    const few = chance.whole(1, 6);
    return Array.from(
      { length: few },
      () => all.splice(chance.whole(0, all.length - 1), 1)[0] as FieldMeasurement,
    );
  },
};

export const PLAN_NAMES: readonly string[] = Object.keys(PLANS);

export function askedBy(name: string, drawn: Drawn, chance: Chance): FieldMeasurement[] {
  return (PLANS[name] as (drawn: Drawn, chance: Chance) => FieldMeasurement[])(drawn, chance);
}

/** Carries out a plan in a world with a kit of instruments. */
export function readingsOf(
  world: World,
  asked: readonly FieldMeasurement[],
  kit: Kit,
  chance: Chance,
): FieldReading[] {
  let live: Live | undefined;
  const now = (): Live => {
    live ??= energised(world);
    return live;
  };
  return asked.map((one): FieldReading => {
    switch (one.kind) {
      case "resistance":
        return {
          ...one,
          reads: kit.ohms(trueResistance(world, one.from, one.to, one.only)) as Ohms | "open",
        };
      case "insulation": {
        const healthy = chance.logBetween(1e6, 10e9);
        const value = trueInsulation(world, one.from, healthy, one.only);
        return { ...one, reads: kit.insulation(value) as Ohms | "open" };
      }
      case "current":
        return {
          ...one,
          reads: kit.shows("clamp", size(trueCurrent(world, now(), one.at, one.into))) as Amperes,
        };
      case "voltage":
        return {
          ...one,
          reads: kit.shows("voltmeter", trueVoltage(world, now(), one.from, one.to)) as Volts,
        };
      default:
        return { ...one, reads: kit.shows("millivoltmeter", trueDrop(now(), one.across)) as Volts };
    }
  });
}
