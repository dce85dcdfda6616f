/** What the module draws, what happens if an element opens, and ways of running on. */
import type {
  DegradedOption,
  DegradedOptions,
  Draw,
  DrawAssessment,
  WhatIfRow,
  WhatIfTable,
} from "../../bench/index.ts";
import { type Block, type Cell, caution, type Draft, list, paragraph, slim, table } from "./document.ts";
import {
  deviationText,
  halfWidthText,
  powerText,
  quantityText,
  shareText,
  timeText,
  type UnitSystem,
} from "./shown.ts";

const amps = (current: number): string => `${current.toFixed(1)}\u00a0A`;

interface Lined {
  readonly lines: readonly { readonly node: string; readonly current: number }[];
}

/** Lines of all rows, and the neutral where it carries anything that is printed. */
function nodesOf(rows: readonly Lined[]): readonly string[] {
  const told = rows.flatMap(({ lines }) =>
    lines.filter(({ node, current }) => node !== "N" || amps(current) !== amps(0)),
  );
  return [...new Set(told.map(({ node }) => node))];
}

/** Currents of the named nodes, in their order. */
function currents(lines: Lined["lines"], nodes: readonly string[]): readonly string[] {
  return nodes.map((node) => {
    const line = lines.find((one) => one.node === node);
    return line === undefined ? "" : amps(line.current);
  });
}

/** What the module draws, as found and when repaired. */
export function drawSection(draw: DrawAssessment | null): Draft {
  const section = { id: "draw", title: "Power and line currents" };
  if (draw === null) {
    const missing = "No power or currents worked out: not every branch is known, or no voltage is.";
    return { ...section, blocks: [], missing };
  }
  const { asFound, repaired, repairedAtPlateVoltage: plate, deviationFromPlate, confirmed, basis } = draw;
  const sound = confirmed && draw.atTarget.length === 0;
  const renewed = sound ? "all branches sound, as they stand" : "faulty branches renewed";
  const states: readonly (readonly [string, Draw])[] = [
    ...(asFound === null ? [] : [["as found", asFound] as const]),
    [confirmed ? renewed : "known branches kept, the others at target", repaired],
    ...(plate === null ? [] : [["the same at plate voltage", plate] as const]),
  ];
  const nodes = nodesOf(states.map(([, one]) => one));
  const rows = states.map(([name, { power, standardUncertainty: u, lines }]) => [
    name,
    powerText(power),
    u === null ? "" : halfWidthText(power, 2 * u, "W", "SI"),
    ...currents(lines, nodes),
  ]);
  const headings = ["state", "#power", "#± (k = 2)", ...nodes.map((node) => `#${node}`)];
  return {
    ...section,
    missing: null,
    blocks: [
      ...slim(table("Power and line currents at full conduction", headings, rows)),
      ...list([
        `From ${asFound !== null && basis === "nameplate" ? "measured resistances (as found) and the nameplate" : basis}.`,
        ...(deviationFromPlate === null
          ? []
          : [`At plate voltage ${deviationText(deviationFromPlate)} from the plate's power.`]),
        sound
          ? "Every branch is judged sound: these amps are something to accept the module by."
          : confirmed
            ? "Every branch is judged sound or taken as renewed: the repaired amps are something to accept the repair by."
            : "Not every branch is judged: the repaired amps are not yet something to accept the repair by.",
      ]),
    ],
  };
}

/** Rows that read the same but for their names, as one. */
function grouped(
  rows: readonly WhatIfRow[],
  nodes: readonly string[],
): readonly (readonly (Cell | string)[])[] {
  const groups = new Map<
    string,
    { elements: string[]; survivors: string[]; cells: string[]; over: boolean }
  >();
  for (const { element, power, powerRatio, lines, worst, gapVoltage } of rows) {
    const stress = worst === null ? "none left" : `${worst.powerRatio.toFixed(2)}×`;
    const gap = gapVoltage === null ? "not known, live" : `${gapVoltage.toFixed(0)}\u00a0V`;
    const cells = [powerText(power), shareText(powerRatio), ...currents(lines, nodes), stress, gap];
    const key = cells.join("|");
    const group = groups.get(key);
    const survivors = worst === null ? [] : [worst.id];
    if (group === undefined) {
      groups.set(key, { elements: [element], survivors, cells, over: (worst?.powerRatio ?? 0) > 1.005 });
    } else {
      group.elements.push(element);
      group.survivors.push(...survivors);
    }
  }
  return [...groups.values()].map(({ elements, survivors, cells, over }) => {
    const stress = cells.at(-2) as string;
    const who = [...new Set(survivors)];
    const named = who.length === 1 ? `${who[0]} ${stress}` : stress;
    return [
      elements.join(", "),
      ...cells.slice(0, -2),
      over ? { text: named, tone: "doubt" } : named,
      cells.at(-1) as string,
    ];
  });
}

/** What happens if any one element opens. */
export function whatIfSection(tables: readonly WhatIfTable[]): Draft {
  const blocks = tables.flatMap(({ connection, needs, rows }): readonly Block[] => {
    const nodes = nodesOf(rows);
    const heading = connection === "as drawn" ? "as drawn and repaired" : `with all banks in ${connection}`;
    const headings = [
      "opens",
      "#power left",
      "#of full",
      ...nodes.map((node) => `#${node}`),
      "#hardest survivor",
      "#across the break",
    ];
    return [
      ...(needs.length === 0 ? [] : [paragraph(`What ${connection} would need:`)]),
      ...list(needs),
      ...table(`One element open, ${heading}`, headings, grouped(rows, nodes)),
    ];
  });
  const notes =
    blocks.length === 0
      ? []
      : [
          paragraph(
            "× is the survivor's power, and so its surface load, over its own healthy value. The voltage across the break is live.",
          ),
        ];
  return {
    id: "what-if",
    title: "If an element opens",
    blocks: [...blocks, ...notes],
    missing: "No what-if table: the power of the module is not known.",
  };
}

/** What a way of running draws and stresses. */
function electricRow(option: DegradedOption, nodes: readonly string[]): readonly (Cell | string)[] {
  const { name, outcome, power, powerRatio, worst, lines } = option;
  return [
    name,
    outcome === "runs" ? "runs" : { text: outcome, tone: "bad" },
    powerText(power),
    shareText(powerRatio),
    worst === null ? "" : `${worst.id} ${worst.powerRatio.toFixed(2)}×`,
    ...currents(lines, nodes),
  ];
}

/** What it does for the oven. */
function heatRow(
  { name, heatUp, energyPerShift, timeAtTarget, cost }: DegradedOption,
  units: UnitSystem,
): readonly (Cell | string)[] {
  const { time, ultimate } = heatUp;
  return [
    name,
    time === "never" ? { text: "never", tone: "bad" } : timeText(time),
    ultimate === "unlimited" ? ultimate : quantityText(ultimate, "°C", units),
    timeText(timeAtTarget),
    quantityText(energyPerShift, "J", "SI", "kWh"),
    cost === null ? "" : cost.toFixed(2),
  ];
}

/** Ways of running on until the parts come. */
export function degradedSection(degraded: DegradedOptions | null, units: UnitSystem): Draft {
  const section = { id: "degraded", title: "Running on until parts come" };
  if (degraded === null) {
    const missing =
      "No ways of running on compared: nothing is open, or the record says nothing of the process.";
    return { ...section, blocks: [], missing };
  }
  const { options, cautions, deferral } = degraded;
  const nodes = nodesOf(options);
  const electric = [
    "way",
    "outcome",
    "#power",
    "#of healthy",
    "#hardest element",
    ...nodes.map((node) => `#${node}`),
  ];
  const heat = [
    "way",
    "#to the set point",
    "#would level off at",
    "#at it in a shift",
    "#energy of a shift",
    "#cost of all shifts",
  ];
  const breaks = options.flatMap(({ name, action, openEnds }) =>
    openEnds.map(({ id, voltage }) => {
      const across =
        voltage === null ? "at a voltage nothing determines" : `${voltage.toFixed(0)}\u00a0V across it`;
      return `${action === "healthy" ? "" : `${name}: `}the break in ${id} stands live, ${across}.`;
    }),
  );
  const own = options.flatMap(({ name, cautions: some }) => some.map(({ message }) => `${name}: ${message}`));
  return {
    ...section,
    missing: null,
    blocks: [
      ...caution([...cautions.map(({ message }) => message), deferral]),
      ...slim(
        table(
          "Ways of running, the healthy module first",
          electric,
          options.map((one) => electricRow(one, nodes)),
        ),
      ),
      ...slim(
        table(
          "What they do for the process",
          heat,
          options.map((one) => heatRow(one, units)),
        ),
      ),
      ...list(breaks),
      ...caution(own),
    ],
  };
}
