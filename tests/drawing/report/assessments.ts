/** Assessments written by hand, so that the report is tested for what it is given, whatever the assessment would say. Invented. */
import {
  type BranchAssessment,
  degradedOptions,
  diagnose,
  type Figure,
  type ModuleAssessment,
  nameplateTargets,
  type ReadingsAssessment,
} from "electroheat/bench";
import { balancedSupply, type ModulePlan } from "electroheat/circuit";
import {
  celsius,
  hours,
  kilojoulesPerKelvin,
  kilowatts,
  ohms,
  volts,
  wattsPerKelvin,
} from "electroheat/quantity";

/** A figure; what is left out is null. */
export function figure(some: Partial<Figure> & Pick<Figure, "label" | "value" | "unit">): Figure {
  const rest = { name: null, halfWidth: null, limit: null, verdict: null, caution: null };
  return { ...rest, basis: "invented for a test", ...some };
}

const BASE: BranchAssessment = {
  id: "",
  finding: "sound",
  resistance: ohms(11.1) as number as never,
  standardUncertainty: ohms(0.02),
  expandedUncertainty: ohms(0.07),
  atLeast: null,
  target: ohms(11.0769) as number as never,
  deviation: 0.00208,
  judgement: {
    verdict: "within",
    value: 11.1,
    halfWidth: 0.07,
    low: 10.52,
    high: 12.18,
    margin: 0.58,
    rule: "the tolerance given, −5 % to +10 %",
  },
  openElements: null,
};
const OPEN: Partial<BranchAssessment> = {
  finding: "open",
  resistance: "open",
  standardUncertainty: null,
  expandedUncertainty: null,
  deviation: null,
  judgement: null,
};
export const branch = (id: string, some: Partial<BranchAssessment> = {}): BranchAssessment => ({
  ...BASE,
  id,
  ...some,
});

const plan: ModulePlan = {
  banks: ["A", "B"].map((id) => ({ id, connection: "star", elementResistance: ohms(11.0769) })),
  starPoints: "tied",
};
const supply = balancedSupply({ lineVoltage: volts(480) });
const reading = (from: string, to: string, reads: number | "open") =>
  ({ kind: "resistance", from, to, reads: reads === "open" ? reads : ohms(reads) }) as const;

const diagnosis = diagnose({
  module: plan,
  instruments: { ohmmeter: { ofReading: 0.005, digits: 3, resolution: 0.01, leads: "taken off" } },
  readings: [reading("L1", "L2", 16.62), reading("L2", "L3", 11.08), reading("L3", "L1", 16.6)],
});

const targets = nameplateTargets({
  power: kilowatts(20),
  lineVoltage: volts(480),
  connection: "star",
  banks: 1,
  temperatureFactor: 1.04,
});

const found: ReadingsAssessment = {
  resistances: {
    outcome: "solved",
    branches: [
      branch("A-L1", OPEN),
      branch("A-L2"),
      branch("A-L3", { finding: "undecided", resistance: 12.15 as never, deviation: 0.0969 }),
      branch("B-L1"),
      branch("B-L2", { finding: "outside", resistance: 13.4 as never, deviation: 0.2097, openElements: 1 }),
      branch("B-L3", {
        finding: "high",
        resistance: null,
        atLeast: ohms(40),
        standardUncertainty: null,
        deviation: null,
      }),
    ],
    readings: [
      { from: "L1", to: "S", reads: ohms(11.32), predicted: ohms(11.31), residual: 0.4 },
      { from: "L2", to: "S", reads: "open", predicted: null, residual: null },
    ],
    beyondElements: [],
    expectedReadings: [11.0769 as never, "open"],
    chiSquare: 2.31,
    degreesOfFreedom: 2,
    pValue: 0.315,
    consistency: "consistent",
    notIdentifiable: [],
    openChoices: [],
    leads: ohms(0.21),
    leadsUncertainty: ohms(0.01),
  },
  currents: [
    figure({
      label: "line current L1",
      value: 24.1,
      unit: "A",
      halfWidth: 0.98,
      limit: { low: 47.2, high: 49.1 },
      verdict: "outside",
      basis: "clamp ±(2 % + 5 digits); band: sound module at the supply measured",
      caution: "Taken live: only by people qualified and equipped for it.",
    }),
    figure({ label: "line current L2", value: 48.0, unit: "A", halfWidth: 1.5, verdict: "within" }),
  ],
  unbalance: [
    figure({
      label: "line voltage unbalance",
      value: 0.0132,
      unit: "1",
      limit: { low: null, high: 0.02 },
      verdict: "within",
    }),
  ],
  insulation: [
    figure({
      label: "L1 to the frame at 500 V",
      value: 42e6,
      unit: "Ω",
      limit: { low: 1e6, high: null },
      verdict: "within",
      basis: "common practice, no published source",
    }),
  ],
  joints: [
    {
      id: "J4",
      resistance: ohms(0.00318),
      halfWidth: ohms(0.00007),
      power: 19.3 as never,
      ratioToBest: 45.2,
      comparison: "investigate",
      rule: "twice the best of alike joints: common practice; a licensed electrician decides",
      contact: null,
      rise: {
        measured: 71 as never,
        fullLoadLow: 71.6 as never,
        fullLoadHigh: 72.4 as never,
        level: 4,
        atLeast: 4,
        atMost: 4,
        action: "repair immediately",
        rule: "ANSI/NETA ATS-2003, Table 100.18",
      },
    },
    {
      id: "J5",
      resistance: ohms(0.00007),
      halfWidth: ohms(0.000004),
      power: 0.42 as never,
      ratioToBest: 1,
      comparison: "like the best",
      rule: "twice the best of alike joints: common practice; a licensed electrician decides",
      contact: null,
      rise: null,
    },
  ],
};

const left: ReadingsAssessment = {
  ...found,
  resistances: {
    ...found.resistances,
    branches: ["A-L1", "A-L2", "A-L3", "B-L1", "B-L2", "B-L3"].map((id) => branch(id)),
  },
  currents: [],
  unbalance: [],
  joints: [],
};

const lines = (...currents: readonly number[]) =>
  currents.map((current, i) => ({ node: `L${i + 1}`, current: current as never, ratio: current / 48.1 }));

/** Everything that an assessment can hold. */
export const FULL: ModuleAssessment = {
  title: "Curing oven, lower module (invented)",
  identity: {
    equipment: "Curing oven 3",
    serialNumber: "CO-0417",
    workOrder: "W-118",
    technician: "R. Invented",
    date: "12 March",
  },
  module: {
    banks: ["A", "B"].map((id) => ({ id, connection: "star", elementsInParallel: 1, elementsInSeries: 1 })),
    starPoints: "tied",
    neutral: "floating",
    joints: [{ id: "J4", at: "L2", behind: ["B"] }],
    power: kilowatts(40),
    lineVoltage: volts(480) as never,
    supply: { v12: 478 as never, v23: 481 as never, v31: 479 as never },
  },
  answer: [
    "Element A-L1 is open (over 99.9 %); B-L2 is 21 % above its target.",
    "Renew A-L1 and B-L2, and remake joint J4: it is at 45 times the best.",
    "Until then the module may run at about three quarters of its heat if protection and customer accept it; the break stays live.",
    "Repaired it should draw 48.1 A a line, 40 kW, at 480 V.",
    "Not yet tested: protection, enclosure, air flow.",
  ],
  assumptions: [
    "Wired as drawn: banks A, B in star, star points tied and floating.",
    "Hot resistance is 1.04 times cold, as given.",
  ],
  targets: [
    { bank: "A", targets },
    { bank: "B", targets },
  ],
  asFound: found,
  asLeft: left,
  diagnosis,
  draw: {
    basis: "measured resistances",
    confirmed: true,
    atTarget: ["A-L1"],
    asFound: { power: kilowatts(31.2), standardUncertainty: 90 as never, lines: lines(26.1, 44.3, 45) },
    repaired: { power: kilowatts(39.6), standardUncertainty: 100 as never, lines: lines(47.7, 47.6, 47.9) },
    repairedAtPlateVoltage: {
      power: kilowatts(39.8),
      standardUncertainty: null,
      lines: lines(47.9, 47.8, 48),
    },
    deviationFromPlate: -0.005,
  },
  whatIf: [
    {
      connection: "as drawn",
      needs: [],
      rows: ["A-L1", "A-L2"].map((element) => ({
        element,
        power: kilowatts(32),
        powerRatio: 0.8,
        lines: lines(24, 44.1, 44.1),
        worst: { id: element === "A-L1" ? "B-L1" : "B-L2", voltageRatio: 1.2, powerRatio: 1.44 },
        gapVoltage: 332.6 as never,
      })),
    },
    {
      connection: "delta",
      needs: [
        "Three times the power at the same voltage: 120 kW, 144 A a line.",
        "Supply of 277 V between lines to keep the plate power.",
      ],
      rows: [
        {
          element: "A-L1L2",
          power: kilowatts(100),
          powerRatio: 0.833,
          lines: lines(110, 110, 144),
          worst: { id: "B-L1L2", voltageRatio: 1, powerRatio: 1 },
          gapVoltage: null,
        },
      ],
    },
  ],
  degraded: degradedOptions({
    module: plan,
    supply,
    faults: [{ kind: "open", id: "A-L1" }],
    oven: { ambient: celsius(20), lossConductance: wattsPerKelvin(115), structure: kilojoulesPerKelvin(316) },
    target: celsius(230),
    shift: hours(8),
    tariff: 0.18,
  }),
  hardware: [
    {
      id: "line studs",
      thread: "1/4-20",
      count: 6,
      figures: [
        figure({
          label: "torque to use",
          value: 8.5,
          unit: "N·m",
          limit: { low: 7.6, high: 9.3 },
          basis: "maker",
        }),
        figure({ label: "preload", value: 6700, unit: "N", halfWidth: 2000 }),
        figure({
          label: "torque applied",
          value: 6,
          unit: "N·m",
          limit: { low: 7.6, high: 9.3 },
          verdict: "outside",
        }),
      ],
      notes: ["Spring washers under the nuts are renewed."],
      deferral: "The equipment maker's torque governs.",
    },
  ],
  feed: {
    edition: "NEC 2023",
    figures: [
      figure({
        label: "design current",
        value: 60.1,
        unit: "A",
        basis: "125 % of the heater current, NEC 2023, 425.4(B)",
      }),
      figure({
        label: "conductor",
        value: null,
        unit: "",
        name: "4 AWG",
        verdict: "within",
        basis: "NEC 2023, Table 310.16, 75 °C",
      }),
      figure({ label: "terminals", value: 75, unit: "°C" }),
    ],
    cautions: ["Opening the feed is work for a licensed electrician."],
    deferral: "The code adopted locally and its authority decide; edition NEC 2023, Table 310.16.",
  },
  commissioning: {
    lines: [figure({ label: "line current L1", value: 47.7, unit: "A", limit: { low: 45.5, high: 49.9 } })],
    scan: [
      figure({
        label: "rise over the air, act at",
        value: 40,
        unit: "K",
        basis: "ANSI/NETA ATS-2003, Table 100.18",
      }),
    ],
    deferral: "First heat is live work: only by people qualified and equipped for it.",
  },
  nextSteps: [
    { action: "Lift the link of A-L1 and read it alone.", reason: "It reads open.", about: ["A-L1"] },
    { action: "Remake joint J4 with new hardware.", reason: "It is at 45 times the best.", about: ["J4"] },
  ],
  checklist: [
    { phase: "before energising", text: "Isolated and proved dead.", state: "to do", evidence: null },
    {
      phase: "before energising",
      text: "Torque applied.",
      state: "not passed",
      evidence: "6 N·m on the line studs",
    },
    { phase: "first heat", text: "Amps by line.", state: "done", evidence: "47.7 A" },
    { phase: "after cooling down", text: "Nuts checked cold.", state: "to do", evidence: null },
  ],
  parts: [{ part: "element A-L1", quantity: 1, reason: "open" }],
  cuts: [
    {
      id: "star bar",
      count: 2,
      length: 0.2286 as never,
      stock: 0.4602 as never,
      mass: 0.247 as never,
      figures: [figure({ label: "current density", value: 1.2e6, unit: "A/m²" })],
    },
  ],
  notTested: ["Protection and enclosure.", "Air flow and overtemperature cut-out."],
  warnings: [
    { code: "suspicious", path: "asFound.ohms.1", message: "L2 to S reads open.", source: "common practice" },
  ],
  cautions: [
    "Ohm readings only on a module that is isolated, locked out and proved dead.",
    "The code adopted where the module is installed, the maker's instructions and a licensed electrician govern.",
  ],
};

/** The least that an assessment can hold. */
export const SPARSE: ModuleAssessment = {
  ...FULL,
  title: "Module without readings (invented)",
  identity: null,
  module: { ...FULL.module, joints: [], power: null, lineVoltage: null, supply: null },
  answer: ["Nothing was read: nothing can be said of the module."],
  assumptions: [],
  targets: [],
  asFound: null,
  asLeft: null,
  diagnosis: null,
  draw: null,
  whatIf: [],
  degraded: null,
  hardware: [],
  feed: null,
  commissioning: null,
  nextSteps: [],
  checklist: [],
  parts: [],
  cuts: [],
  notTested: [],
  warnings: [],
};

/** Fields that hold words of the contract; all others hold text. */
const WORDS: ReadonlySet<string> = new Set([
  ...[
    "code",
    "path",
    "unit",
    "phase",
    "state",
    "connection",
    "starPoints",
    "neutral",
    "finding",
    "verdict",
    "kind",
    "outcome",
  ],
  ...["consistency", "comparison", "action", "at", "id", "behind", "name", "bank", "format"],
]);

/** The assessment with the text in every place that a user or a record could have written to. */
export function written(text: string): ModuleAssessment {
  const deep = (value: unknown, key: string): unknown => {
    if (typeof value === "string") return WORDS.has(key) || value === "open" ? value : `${text}`;
    if (Array.isArray(value)) return value.map((one) => deep(one, key));
    if (typeof value !== "object" || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, deep(one, name)]));
  };
  const branches = FULL.asFound?.resistances.branches.map((one) => ({
    ...one,
    id: one.id.replace("A-", `${text}-`),
  }));
  const all = deep(
    { ...FULL, diagnosis: null, degraded: null, draw: null, module: null, asFound: null, asLeft: null },
    "",
  ) as ModuleAssessment;
  return {
    ...all,
    module: {
      ...FULL.module,
      banks: FULL.module.banks.map((bank) => ({ ...bank, id: bank.id === "A" ? text : bank.id })),
      joints: [{ id: `j ${text}`, at: "L2", behind: ["B"] }],
    },
    diagnosis: FULL.diagnosis,
    degraded: FULL.degraded,
    draw: FULL.draw,
    asFound: {
      ...(FULL.asFound as ReadingsAssessment),
      currents: deep(FULL.asFound?.currents, "") as readonly Figure[],
      resistances: { ...(FULL.asFound as ReadingsAssessment).resistances, branches: branches ?? [] },
      joints: (FULL.asFound?.joints ?? []).map((joint) => ({ ...joint, id: `j ${text}`, rule: text })),
    },
    asLeft: null,
    hardware: FULL.hardware.map((one) => ({ ...one, id: text, thread: text, notes: [text], deferral: text })),
    whatIf: FULL.whatIf.map((one) => ({
      ...one,
      needs: [text],
      rows: one.rows.map((row) => ({ ...row, element: text })),
    })),
    targets: [{ bank: text, targets }],
  };
}
