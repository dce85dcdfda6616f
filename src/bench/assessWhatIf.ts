/** What happens if any one element opens: as drawn, and with all banks connected in the other way. */
import {
  balancedSupply,
  buildModule,
  energise,
  faultScan,
  type ModulePlan,
  reconnected,
  type Supply,
} from "../circuit/index.ts";
import { formatQuantity, type LineVolts, type Ohms, type Open, type Watts } from "../quantity/index.ts";
import type { WhatIfTable } from "./assessmentTypes.ts";
import type { WhatIfRow } from "./assessTypes.ts";
import { elementPlan } from "./day/branchModule.ts";
import type { HotBranches } from "./day/hotBranches.ts";
import type { ParsedRecord } from "./record/parsed.ts";

/** Every single element open, on a supply. */
function rowsOf(plan: ModulePlan, supply: Supply): readonly WhatIfRow[] {
  const module = buildModule(plan);
  const onNeutral = Object.values(module.starPoints).includes("N");
  return faultScan({ network: module.network, supply }).map((scanned) => {
    // One open element: it shorts no supply, and it leaves one gap.
    const effect = scanned as Exclude<typeof scanned, { readonly outcome: "supply shorted" }>;
    const [gap] = effect.gaps as [(typeof effect.gaps)[number]];
    const { worst } = effect;
    return {
      element: gap.id,
      power: effect.totalPower,
      powerRatio: effect.powerRatio,
      lines: effect.lines
        .filter(({ node }) => node !== "N" || onNeutral)
        .map(({ node, current, currentRatio }) => ({ node, current, ratio: currentRatio })),
      worst:
        worst === null
          ? null
          : {
              id: worst.id,
              voltageRatio: worst.voltageRatio as number,
              powerRatio: worst.powerRatio as number,
            },
      gapVoltage: gap.voltage,
    };
  });
}

const volts = (value: number): string =>
  formatQuantity(value as LineVolts, { unit: "V", significantDigits: 4 });
const kilowatts = (value: number): string =>
  formatQuantity(value as Watts, { unit: "W", as: "kW", significantDigits: 4 });

type Other = "star" | "delta";

/** The same elements in the other connection, under the names that they have there: they are listed in the same order. */
function otherPlan(plan: ModulePlan, other: Other): ModulePlan {
  const { banks, elements = {} } = plan;
  const links = other === "star" && banks.length > 1 ? { starPoints: "separate" as const } : {};
  const next = { ...reconnected({ plan: { banks }, connection: other }), ...links };
  const before = buildModule(plan).elements;
  const named = buildModule(next).elements.map(
    ({ id }, i) => [id, elements[before[i]?.id as string] as Ohms | Open] as const,
  );
  return { ...next, elements: Object.fromEntries(named) };
}

/** What the other connection asks for before anyone links it so. */
function needsOf(input: {
  readonly other: Other;
  /** Voltage between lines that the elements have in the present connection, V: the plate's, or as measured. */
  readonly from: number;
  /** Voltage between lines that gives them the same in the other one, V. */
  readonly to: number;
  /** Voltage on site, V, and what the other connection draws from it, W. */
  readonly site: number;
  readonly onSite: Watts;
  readonly power: Watts;
  readonly banks: number;
  readonly onNeutral: boolean;
}): readonly string[] {
  const { other, from, to, site, onSite, power, banks, onNeutral } = input;
  const toDelta = other === "delta";
  return [
    `${volts(to)} between lines (${volts(from)} ${toDelta ? "over" : "times"} √3) for the same ${kilowatts(power)}; the rows below are for that.`,
    toDelta
      ? `On the ${volts(site)} of the site every element would get √3 times its voltage and three times its power: ${kilowatts(onSite)}, and three times the current in every line, joint and jumper bar. Never without the maker's word that the elements stand it.`
      : `On the ${volts(site)} of the site every element gets 1/√3 of its voltage and a third of its power: ${kilowatts(onSite)}.`,
    toDelta
      ? `Links: star bars out${onNeutral ? ", star points off the neutral" : ""}, and the end of each branch to the next line (L1 to L2, L2 to L3, L3 to L1), in every bank.`
      : `Links: the end of each branch off the next line, and the three ends of ${banks > 1 ? "each bank on a star bar of its own (the rows below take them as separate)" : "the bank on one star bar"}.`,
    "Elements, insulators and clearances rated for the new voltages; conductors, joints and protection sized anew for the current; drawing and plate marked. The maker, the local code and a licensed electrician decide.",
  ];
}

/** Mean of the voltages between lines, V. */
function meanVoltage({ lines }: Supply): number {
  const at = ["L1", "L2", "L3"].map(
    (node) => (lines.find((line) => line.node === node) as Supply["lines"][number]).voltage,
  );
  const between = at.map(({ re, im }, i) => {
    const next = at[(i + 1) % 3] as (typeof at)[number];
    return Math.hypot(re - next.re, im - next.im);
  });
  return between.reduce((sum, one) => sum + one, 0) / 3;
}

/**
 * The tables: as drawn first, on the site's supply; then the other connection, where all banks share one.
 * @param site - the supply of the site
 */
export function assessWhatIf(record: ParsedRecord, hot: HotBranches, site: Supply): readonly WhatIfTable[] {
  const plan = elementPlan(record, hot.repaired);
  const asDrawn: WhatIfTable = { connection: "as drawn", needs: [], rows: rowsOf(plan, site) };
  const [first] = record.wiring.banks;
  const same = record.wiring.banks.every(({ connection }) => connection === first?.connection);
  if (first === undefined || !same) return [asDrawn];
  const other: Other = first.connection === "star" ? "delta" : "star";
  const next = otherPlan(plan, other);
  const from = record.nameplate?.voltage.value ?? meanVoltage(site);
  const to = from * (other === "delta" ? 1 / Math.sqrt(3) : Math.sqrt(3));
  const supply = balancedSupply({ lineVoltage: to as LineVolts });
  const { network } = buildModule(next);
  const needs = needsOf({
    other,
    from,
    to,
    site: meanVoltage(site),
    onSite: energise({ network, supply: site }).totalPower,
    power: energise({ network, supply }).totalPower,
    banks: plan.banks.length,
    onNeutral: record.wiring.neutral === "connected",
  });
  return [asDrawn, { connection: other, needs, rows: rowsOf(next, supply) }];
}
