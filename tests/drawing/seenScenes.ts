/** What is drawn for looking at: between them every part of a picture, and of the page that holds them. */
import { type ModuleAssessment, nameplateTargets } from "electroheat/bench";
import { balancedSupply, type ModulePlan, supplyFromNeutralVoltages } from "electroheat/circuit";
import {
  benchReport,
  connectionDiagram,
  curveChart,
  diagramLayout,
  phasorDiagram,
} from "electroheat/drawing";
import { kilowatts, ohms, volts } from "electroheat/quantity";
import { FULL } from "./report/assessments.ts";
import { scenes } from "./scenes.ts";

const bank = (id: string, connection: "star" | "delta", more: object = {}) => ({
  id,
  connection,
  elementResistance: ohms(23.04),
  ...more,
});
const joint = (id: string, at: string, more: object = {}) => ({ id, at, resistance: ohms(0.0002), ...more });

/** Every kind of bank, in series and side by side, a joint at every kind of place. */
const mixed: ModulePlan = {
  banks: [
    bank("A", "star", { elementsInParallel: 3 }),
    bank("B", "star", { elementsInSeries: 2 }),
    bank("C", "delta", { elementsInParallel: 2, elementsInSeries: 2 }),
  ],
  starPoints: "separate",
  neutral: "connected",
  elements: { "A-L2-2": "open", "C-L1L2-1.1": ohms(0) },
  joints: [
    joint("lug", "L1"),
    joint("bar", "L2", { behind: ["A", "B"], role: "jumper bar" }),
    joint("stud", "L3", { behind: ["C-L2L3"] }),
    joint("star", "N", { behind: ["A-L1"] }),
  ],
};
const third = volts(480 / Math.sqrt(3));
const onNeutral = supplyFromNeutralVoltages({ voltages: [third, third, volts(250)] });
const onePair: ModulePlan = { banks: [bank("A", "delta")], elements: { "A-L2L3": "open" } };

const pictures: Readonly<Record<string, () => string>> = {
  "every kind of bank": () =>
    connectionDiagram({
      module: mixed,
      title: "Invented dryer, three banks",
      states: {
        lug: "open",
        bar: "within",
        stud: "hot joint",
        star: "undecided",
        "B-L1.1": "outside",
        L2: "lost",
      },
    }),
  "every kind of bank, narrow and dark": () =>
    connectionDiagram({ module: mixed, width: 390, theme: "dark", protectiveEarth: true }),
  "neutral loaded": () =>
    phasorDiagram({
      module: { banks: [bank("A", "star")], neutral: "connected", elements: { "A-L3": "open" } },
      supply: onNeutral,
    }),
  "delta with one side open": () =>
    phasorDiagram({ module: onePair, supply: balancedSupply({ lineVoltage: volts(480) }), theme: "dark" }),
  "every mark": () =>
    curveChart({
      title: "Six joints and a bar",
      x: { label: "Day", unit: "d" },
      y: { label: "Drop", unit: "mV" },
      series: ["a", "b", "c", "d", "e", "f", "bar"].map((label, i) => ({
        label,
        points: [0, 1, 2].map((x) => ({ x, y: 2 + 3 * i + x })),
        marked: true,
      })),
    }),
  "own data": () =>
    curveChart({
      title: "Resistance of a joint that was tightened again",
      x: { label: "Turns of the nut", unit: "°", from: 0 },
      y: { label: "Resistance of the joint between bar and stud, four wires", unit: "µΩ" },
      series: ["first", "second", "third", "fourth"].map((label, i) => ({
        label,
        points: [0, 30, 60, 90].map((x) => ({ x, y: 300 / (1 + i + x / 30) })),
        marked: i % 2 === 0,
      })),
      levels: [{ label: "as new", y: 60 }],
    }),
};

/** More groups than a page has room for, figures by hand. */
const diagnosis: NonNullable<ModuleAssessment["diagnosis"]> = {
  outcome: "explained",
  groups: [0.5, 0.2, 0.1, 0.06, 0.05, 0.04, 0.03, 0.02].map((probability, i) => ({
    probability,
    // The second group has more members than are told.
    explanations: Array.from({ length: i === 1 ? 12 : 1 }, (_, k) => ({
      faults: [{ kind: "shorted turns", element: `B${k}-L${(i % 3) + 1}` } as const],
      ...{ unseen: [], wiring: 0, probability, prior: 0.01, logLikelihood: -3 },
      ...{ chiSquare: 1.2, degreesOfFreedom: 3, pValue: 0.753 },
      estimates: [{ fault: 0, of: "turns shorted", value: 0.2, low: 0.1, high: 0.3, unit: "1" } as const],
      predicted: [],
    })),
  })),
  notDetermined: [],
  warnings: [],
  cautions: [],
};
const plate = { power: kilowatts(10), lineVoltage: volts(480), banks: 1 } as const;
const targets: ModuleAssessment["targets"] = [
  { bank: "A", targets: nameplateTargets({ ...plate, connection: "star", temperatureFactor: 1.04 }) },
  { bank: "B", targets: nameplateTargets({ ...plate, connection: "delta" }) },
];

const { asFound } = FULL;
/** A page without papers, and a fit without readings to spare. */
const unlike: ModuleAssessment = {
  ...FULL,
  identity: null,
  diagnosis,
  targets,
  asFound: asFound && {
    ...asFound,
    resistances: { ...asFound.resistances, pValue: null },
    currents: asFound.currents.map((one) => ({ ...one, caution: null })),
    joints: asFound.joints.map((one) => ({
      ...one,
      halfWidth: null,
      rise: one.rise && { ...one.rise, level: "undecided" as const, atLeast: 2 },
    })),
  },
};

/** Name of the file beside the text that belongs into it. */
export const seen: Readonly<Record<string, () => string>> = Object.fromEntries([
  ...Object.entries(scenes).map(([name, draw]) => [`${name}.svg`, () => draw({ theme: "light" })]),
  ...Object.entries(pictures).map(([name, draw]) => [`${name}.svg`, draw]),
  // What a diagnosis says is held by its own tests; here it would change with every one of its figures.
  ["report.html", () => benchReport({ assessment: { ...FULL, diagnosis: null }, format: "html" })],
  [
    "every kind of bank.json",
    () => JSON.stringify(diagramLayout({ module: mixed, protectiveEarth: true }), null, 1),
  ],
  ["report of unlike banks.md", () => benchReport({ assessment: unlike, format: "markdown" })],
  [
    "report of unlike banks in US units.md",
    () => benchReport({ assessment: unlike, format: "markdown", units: "US" }),
  ],
  ["report of unlike banks.html", () => benchReport({ assessment: unlike, format: "html" })],
  ["report.md", () => benchReport({ assessment: { ...FULL, diagnosis: null }, format: "markdown" })],
]);
