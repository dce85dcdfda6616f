/** The rarer sentences of the report: assessments written by hand in which something is missing, doubtful or more than one. */
import type {
  BranchAssessment,
  Diagnosis,
  ExplanationGroup,
  Figure,
  ModuleAssessment,
} from "electroheat/bench";
import { benchReport } from "electroheat/drawing";
import { kilowatts } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import {
  chiSquareText,
  figureText,
  intervalText,
  limitText,
  quantityText,
  rangeText,
  timeText,
} from "../../../src/drawing/report/shown.ts";
import { branch, FULL, figure } from "./assessments.ts";

const markdown = (some: Partial<ModuleAssessment>): string =>
  benchReport({ assessment: { ...FULL, ...some }, format: "markdown" }).replaceAll("\\", "");
const section = (text: string, heading: string): string =>
  text.split(/^#{1,3} /m).find((one) => one.startsWith(`${heading}\n`)) ?? "";
const found = FULL.asFound as NonNullable<ModuleAssessment["asFound"]>;
const resistances = (some: Partial<typeof found.resistances>): Partial<ModuleAssessment> => ({
  asFound: { ...found, resistances: { ...found.resistances, ...some } },
});

describe("the diagnosis", () => {
  const diagnosis = FULL.diagnosis as Diagnosis;
  const [group] = diagnosis.groups as readonly [ExplanationGroup];
  const [first] = group.explanations as readonly [ExplanationGroup["explanations"][number]];
  const told = (some: Partial<Diagnosis>) => {
    const text = markdown({ diagnosis: { ...diagnosis, ...some } });
    return { section: section(text, "Diagnosis of the readings as found"), text };
  };

  it("tells eight explanations of a group and counts the rest; its sentence at the diagram names none of ten", () => {
    const open = (i: number) => [{ kind: "element open" as const, element: `${"ABCDEFGHIJ"[i]}-L1` }];
    const ten = {
      ...group,
      explanations: Array.from({ length: 10 }, (_, i) => ({ ...first, faults: open(i) })),
    };
    const { section: own, text } = told({ outcome: "explained", groups: [ten] });
    expect(own).toContain("| 1… | and 2 more like these |");
    expect(own.match(/^\| 1[a-h] \|/gm)).toHaveLength(8);
    expect(text).not.toContain("By the diagnosis:");
  });

  it("tells what no reading can show after what one can, and says that it may come besides", () => {
    const hidden = { ...first, unseen: first.faults };
    const { section: own, text } = told({
      outcome: "explained",
      groups: [{ ...group, explanations: [first, hidden] }],
    });
    expect(own).toMatch(/\| 1b \| .*, alone or besides \|/);
    expect(text).toMatch(/By the diagnosis: element A-L1 open, or /);
  });

  it.each<readonly [string, Partial<Diagnosis>, string | RegExp]>([
    [
      "no reading to spare",
      { groups: [{ ...group, explanations: [{ ...first, pValue: null, degreesOfFreedom: 0 }] }] },
      "No reading is to spare for a test of the best explanation.",
    ],
    [
      "what looks odd",
      { warnings: [{ code: "suspicious", path: "readings.1", message: "Two readings are the same." }] },
      /Looks odd:\s+- Two readings are the same\./,
    ],
  ])("says so: %s", (_what, some, sentence) => {
    expect(told(some).section).toMatch(sentence);
  });

  it("has no test without explanations, and nothing left undetermined where nothing is", () => {
    const { section: own } = told({ groups: [], notDetermined: [] });
    expect(own).not.toContain("Best explanation");
    expect(own).not.toContain("What these readings do not show");
    expect(told({}).section).toContain("What these readings do not show");
  });
});

describe("power, what-if and running on", () => {
  const draw = FULL.draw as NonNullable<ModuleAssessment["draw"]>;
  const [table] = FULL.whatIf as readonly [ModuleAssessment["whatIf"][number]];
  const [row] = table.rows as readonly [(typeof table.rows)[number]];
  const degraded = FULL.degraded as NonNullable<ModuleAssessment["degraded"]>;
  const [healthy, way] = degraded.options as readonly [
    (typeof degraded.options)[number],
    (typeof degraded.options)[number],
  ];

  it("leaves out the plate where there is none, and says what was worked out from what", () => {
    const own = section(
      markdown({
        draw: { ...draw, basis: "nameplate", repairedAtPlateVoltage: null, deviationFromPlate: null },
      }),
      "Power and line currents",
    );
    expect(own).not.toContain("plate voltage");
    expect(own).toContain("From measured resistances (as found) and the nameplate.");
  });

  it("leaves the cell of a neutral empty in a state that has none", () => {
    const lines = [...draw.repaired.lines, { node: "N", current: 3.2 as never }];
    const own = section(
      markdown({ draw: { ...draw, asFound: draw.asFound && { ...draw.asFound, lines } } }),
      "Power and line currents",
    );
    expect(own).toMatch(/\| as found \|.*3\.2\u00a0A \|$/m);
    expect(own).toMatch(/\| faulty branches renewed \|.*\| {2}\|$/m);
  });

  it("a loss that leaves no survivor says so", () => {
    const rows = [{ ...row, element: "A-L3", power: kilowatts(0), powerRatio: 0, worst: null }];
    expect(section(markdown({ whatIf: [{ ...table, rows }] }), "If an element opens")).toMatch(
      /^\| A-L3 \|.*\| none left \|/m,
    );
  });

  it("a way that does not run, one without limit, one without tariff, and breaks whose voltage nothing determines", () => {
    const options = [
      { ...healthy, cost: null, heatUp: { ...healthy.heatUp, ultimate: "unlimited" as const } },
      {
        ...way,
        outcome: "dead" as const,
        worst: null,
        openEnds: [{ id: "A-L1", voltage: null }],
      },
      { ...healthy, openEnds: [{ id: "A-L2", voltage: 277.1 as never }] },
    ];
    const own = section(markdown({ degraded: { ...degraded, options } }), "Running on until parts come");
    expect(own).toMatch(/\| \*\*dead\*\* \|/);
    expect(own).toMatch(/\| unlimited \|/);
    expect(own).toContain(`${way.name}: the break in A-L1 stands live, at a voltage nothing determines.`);
    expect(own).toContain("- the break in A-L2 stands live, 277\u00a0V across it.");
  });
});

describe("branches, joints and pictures", () => {
  it.each<readonly [string, Parameters<typeof resistances>[0], string | RegExp]>([
    [
      "a branch without target",
      { branches: [branch("A-L1", { target: null }), branch("A-L2")] },
      /^\| A-L1 \|.*\| none \|/m,
    ],
    [
      "a resistance without uncertainty",
      { branches: [branch("A-L1", { standardUncertainty: null })] },
      /^\| A-L1 \| 11\.1\u00a0Ω \|/m,
    ],
    [
      "several open elements",
      { branches: [branch("A-L1", { finding: "outside", openElements: 2 })] },
      "A-L1: 2 open elements in parallel would explain the reading.",
    ],
    [
      "leads not known",
      { leads: null, leadsUncertainty: null },
      "The leads are not determined by these readings.",
    ],
    [
      "several choices of open branches",
      { openChoices: [["A-L1"], ["B-L1", "B-L2"]] },
      "The open readings fit several choices of open branches: A-L1; B-L1 and B-L2.",
    ],
  ])("says so: %s", (_what, some, sentence) => {
    expect(section(markdown(resistances(some)), "Branch resistances")).toMatch(sentence);
  });

  it("a joint without a drop has no resistance, heat or ratio; one without half-width has no interval", () => {
    const [joint] = found.joints as readonly [(typeof found.joints)[number]];
    const joints = [
      { ...joint, resistance: null, power: null, ratioToBest: null, halfWidth: null },
      { ...joint, id: "J5", halfWidth: null },
    ];
    const text = markdown({ asFound: { ...found, joints } });
    const own = section(text, "Joints");
    expect(own).toMatch(/^\| J4 \| {2}\| \*\*investigate\*\* \| {2}\| {2}\| 71\u00a0K \|/m);
    expect(own).toMatch(/^\| J5 \| 3\.18\u00a0mΩ \|/m);
    // J4 is a joint of the module: drawn hot for its rise, without a value.
    expect(text).toContain("J4 hot joint");
  });

  it("a branch with many elements is labelled with how many it stands for", () => {
    const [a, b] = FULL.module.banks as readonly [
      ModuleAssessment["module"]["banks"][number],
      ModuleAssessment["module"]["banks"][number],
    ];
    const banks = [
      { ...a, elementsInParallel: 2, elementsInSeries: 3 },
      { ...b, elementsInSeries: 2 },
    ];
    const text = markdown({ module: { ...FULL.module, banks } });
    expect(text).toContain("Bank A, 2 in parallel of 3 in series: star");
    expect(text).toContain("Bank B, 2 in series: star");
    expect(text).toContain("One resistor stands for a whole branch with all its elements.");
  });

  it("a module that nothing was read on, or that cannot be drawn, has a sentence instead of the picture", () => {
    expect(markdown({ ...resistances({ branches: [] }), asLeft: null })).toContain(
      "No connection diagram: there is nothing to write on it.",
    );
    const joints = [{ id: "J9", at: "L9", behind: ["B"] }] as never;
    expect(markdown({ module: { ...FULL.module, joints } })).toMatch(
      /Connections, as found: cannot be drawn\. .*L9/,
    );
  });

  it("draws without any target, and no phasors of voltages that close no triangle", () => {
    // Source: the triangle inequality; 100 + 200 < 480.
    const untargeted = found.resistances.branches.map((one): BranchAssessment => ({ ...one, target: null }));
    expect(markdown(resistances({ branches: untargeted }))).toContain("Connections, as found, in words");
    const phasors = (v12: number) => {
      const supply = { v12: v12 as never, v23: 200 as never, v31: 480 as never };
      const branches = ["A-L1", "A-L2", "A-L3", "B-L1", "B-L2", "B-L3"].map((id) => branch(id));
      return markdown({ ...resistances({ branches }), module: { ...FULL.module, supply } }).includes(
        "Phasors, as found",
      );
    };
    expect([phasors(100), phasors(380)]).toEqual([false, true]);
  });

  it("a record that gives everything has nothing left untested", () => {
    expect(section(markdown({ notTested: [] }), "What was not tested")).toContain(
      "Every part of the record was given.",
    );
  });

  it("an odd thing without a source stands without brackets", () => {
    const warnings = [{ code: "suspicious" as const, path: "nameplate.power", message: "36 W is little." }];
    expect(section(markdown({ warnings }), "Looks odd")).toMatch(/- 36 W is little\.$/m);
  });
});

describe("numbers", () => {
  it.each([
    ["both ends below 0, by the larger", rangeText(-1500, 0.8, "W", "SI"), "\u22121.5000 to 0.0008\u00a0kW"],
    ["a temperature in SI", intervalText(100, 5, "°C", "SI"), "100.0 ± 5.0\u00a0°C"],
    ["seconds", timeText(30), "30\u00a0s"],
    ["no ratio is a bare number", quantityText(3, "", "SI"), "3"],
    ["a very small probability", chiSquareText(40, 2, 2e-9), "χ² 40.0 with 2 to spare, p below 0.001"],
    ["a very large one", chiSquareText(0.001, 2, 0.9995), "χ² 0.0 with 2 to spare, p above 0.999"],
  ])("%s", (_what, shown, expected) => {
    expect(shown).toBe(expected);
  });

  it.each<readonly [Figure, string, string]>([
    [figure({ label: "f", value: 3, unit: "1", limit: { low: 2, high: 4 } }), "3", "2 to 4"],
    [figure({ label: "f", value: 10, unit: "1", halfWidth: 2 }), "10.0 ± 2.0", ""],
    [
      figure({ label: "f", value: 0.15, unit: "1", limit: { low: 0.1, high: 0.2 } }),
      "15\u00a0%",
      "10 to 20\u00a0%",
    ],
    [
      figure({ label: "f", value: "open", unit: "1", limit: { low: 0.5, high: null } }),
      "open",
      "at least 50\u00a0%",
    ],
    [figure({ label: "f", value: 5, unit: "A", limit: { low: null, high: null } }), "5\u00a0A", ""],
  ])("a figure %# reads as it should", (one, value, limit) => {
    expect([figureText(one, "SI"), limitText(one, "SI")]).toEqual([value, limit]);
  });
});
