/** What the report says: everything of the assessment, in the order that matters, in units that were asked for. */
import type { ModuleAssessment } from "electroheat/bench";
import { benchReport } from "electroheat/drawing";
import { describe, expect, it } from "vitest";
import {
  deviationText,
  figureText,
  halfWidthText,
  intervalText,
  limitText,
  quantityText,
  rangeText,
  timeText,
} from "../../../src/drawing/report/shown.ts";
import { caught } from "../../support/caught.ts";
import { FULL, figure, SPARSE } from "./assessments.ts";

const markdown = (assessment: ModuleAssessment = FULL, units?: "SI" | "US"): string =>
  benchReport({ assessment, format: "markdown", ...(units === undefined ? {} : { units }) });
/** The page with its apostrophes as they were written. */
const html = (assessment: ModuleAssessment = FULL): string =>
  benchReport({ assessment, format: "html" }).replaceAll("&#39;", "'");
const headings = (text: string): string[] =>
  [...text.matchAll(/^#{1,3} (.*)$/gm)].map(([, one]) => one as string);
/** A section of the Markdown, from its heading to the next. */
const section = (text: string, heading: string): string =>
  text.split(/^#{1,3} /m).find((one) => one.startsWith(`${heading}\n`)) ?? "";

describe("order", () => {
  it("gives the answer first, then the cautions, then evidence and working", () => {
    expect(headings(markdown())).toEqual([
      FULL.title,
      "The answer",
      "Cautions",
      "Evidence",
      "What to do next",
      "Diagnosis of the readings as found",
      "Branch resistances",
      "Joints",
      "Currents and unbalance",
      "Insulation",
      "Connections with verdicts",
      "Power and line currents",
      "If an element opens",
      "Running on until parts come",
      "Hardware and torque",
      "Feed and protection",
      "First heat",
      "Parts and bars",
      "Checklist for return to service",
      "Working",
      "Targets from the nameplate",
      "Taken for granted",
      "Readings against the fit",
      "Basis of each figure",
      "What was not tested",
      "Looks odd",
    ]);
  });

  it.each(["markdown", "html"] as const)(
    "shows every caution before anything that guides work (%s)",
    (format) => {
      const text = format === "html" ? html() : markdown();
      const first = text.indexOf("What to do next</h3>") + text.indexOf("### What to do next");
      for (const one of FULL.cautions) {
        expect(text.indexOf(one)).toBeGreaterThan(0);
        expect(text.indexOf(one)).toBeLessThan(first);
      }
    },
  );

  it("puts what a section defers to before its figures", () => {
    const defers = (heading: string, deferral: string, caption: string) => {
      const text = section(markdown(), heading);
      expect(text).toContain(deferral);
      expect(text.indexOf(deferral)).toBeLessThan(text.indexOf(caption));
    };
    defers("Hardware and torque", "The equipment maker's torque governs.", "line studs");
    defers("Feed and protection", "edition NEC 2023, Table 310.16.", "Checked by");
    defers("First heat", "First heat is live work", "Amps and power");
    defers("Running on until parts come", "a licensed electrician govern", "Ways of running");
  });

  it("defers at its end too, in either format and however little is known", () => {
    for (const text of [markdown(), html(), markdown(SPARSE), html(SPARSE)]) {
      expect(text.slice(-400)).toContain("a licensed electrician govern");
    }
  });
});

describe("completeness", () => {
  it("names what it leaves out under what was not tested", () => {
    expect(headings(markdown(SPARSE)).slice(3)).toEqual([
      "Evidence",
      "Working",
      "Taken for granted",
      "What was not tested",
    ]);
    const told = section(markdown(SPARSE), "What was not tested");
    for (const what of [
      "diagnosis",
      "ohm readings",
      "joint",
      "current",
      "insulation",
      "torque",
      "feed",
      "first heat",
      "nameplate",
    ]) {
      expect(told.toLowerCase(), what).toContain(what);
    }
    expect(section(markdown(), "What was not tested")).not.toContain("Left out");
  });

  it("repeats every sentence of the assessment, whichever format", () => {
    const sentences = [
      ...FULL.answer,
      ...FULL.assumptions,
      ...FULL.notTested,
      ...FULL.nextSteps.map(({ reason }) => reason),
      ...FULL.parts.map(({ reason }) => reason),
      ...FULL.checklist.map(({ text }) => text),
      ...FULL.whatIf.flatMap(({ needs }) => needs),
      ...(FULL.feed?.figures ?? []).map(({ basis }) => basis),
      ...(FULL.degraded?.cautions ?? []).map(({ message }) => message),
      ...(FULL.diagnosis?.notDetermined ?? []),
    ];
    for (const one of sentences) {
      expect(markdown().replaceAll("\\", "")).toContain(one);
      expect(html()).toContain(one);
    }
  });

  it("does not repeat the cautions of the whole in the diagnosis", () => {
    const own = FULL.diagnosis?.cautions ?? [];
    const count = (text: string, one: string) => text.split(one).length - 1;
    const text = markdown({ ...FULL, cautions: own });
    for (const one of own.slice(0, 4)) expect(count(text, one)).toBe(1);
  });

  it("says each finding of a branch in a word", () => {
    const table = section(markdown(), "Branch resistances");
    for (const row of [
      "| A-L1 | open | **open** |",
      "| A-L2 | 11.10(2)\u00a0Ω | within | +0.2\u00a0% | 11.08\u00a0Ω | ± 0.070\u00a0Ω |",
      "| A-L3 | 12.15(2)\u00a0Ω | undecided | +9.7\u00a0% |",
      "| B-L2 | 13.40(2)\u00a0Ω | **outside** | +21.0\u00a0% |",
      "| B-L3 | at least 40\u00a0Ω | **high or open** |",
    ]) {
      expect(table).toContain(row);
    }
  });

  it("writes explanations that readings cannot tell apart with one probability for all", () => {
    const text = section(markdown(), "Diagnosis of the readings as found");
    expect(text).toMatch(
      /\| 1a \| element A-L1 open \| 39 % \| Together 99\.8 %: these readings cannot tell them apart\. \|/,
    );
    expect(text).toMatch(/\| 1b \| element B-L1 open \|/);
  });

  it("puts elements whose loss does the same into one row", () => {
    expect(section(markdown(), "If an element opens")).toContain(
      "| A-L1, A-L2 | 32.00\u00a0kW | 80.0\u00a0% |",
    );
  });
});

describe("units", () => {
  it("are SI, or those of the trade in the US; sizes stay as they are named", () => {
    const [si, us] = [markdown(), markdown(FULL, "US")];
    for (const one of ["8.5\u00a0N·m", "75\u00a0°C", "228.6\u00a0mm", "71\u00a0K", "1.2\u00a0A/mm²"])
      expect(si).toContain(one);
    // 8.5 N·m ÷ 0.112 984 829 = 75.23 lbf·in; 228.6 mm ÷ 25.4 = 9 in; 75 °C is 167 °F; 71 K · 9/5 = 127.8 °F of difference (NIST SP
    // 811, B.8, exact factors).
    for (const one of ["75.23\u00a0lbf·in", "167\u00a0°F", "9\u00a0in", "127.8\u00a0Δ°F"])
      expect(us).toContain(one);
    for (const text of [si, us]) {
      expect(text).toContain("4 AWG");
      expect(text).toContain("1/4-20");
      expect(text).toContain("39.60\u00a0kW");
    }
    // What the record says in words keeps its units.
    expect(us.replace("6 N·m on the line studs", "")).not.toMatch(/N·m|\u00a0mm/);
  });
});

describe("numbers", () => {
  it.each([
    ["four digits, no idle zeros", quantityText(24.05626, "A", "SI"), "24.06\u00a0A"],
    ["a prefix that fits", quantityText(0.00318, "Ω", "SI"), "3.18\u00a0mΩ"],
    ["a true minus", quantityText(-5, "°C", "SI"), "\u22125\u00a0°C"],
    ["the interval's second digit decides", intervalText(24.1, 0.982, "A", "SI"), "24.10 ± 0.98\u00a0A"],
    ["of one unit, that of the value", intervalText(6700, 2000, "N", "SI"), "6.7 ± 2.0\u00a0kN"],
    // 100 °C is 212 °F, and a half-width of 5 K is 9 °F: an interval has no zero point.
    ["a temperature's half-width is a difference", intervalText(100, 5, "°C", "US"), "212.0 ± 9.0\u00a0°F"],
    ["a half-width alone", halfWidthText(31_200, 180, "W", "SI"), "± 0.18\u00a0kW"],
    ["a deviation with its sign", deviationText(-0.0312), "\u22123.1\u00a0%"],
    ["nothing is not −0", deviationText(-0.0001), "0.0\u00a0%"],
    ["both ends alike", rangeText(43.53, 50.4, "A", "SI"), "43.53 to 50.40\u00a0A"],
    ["both ends in one unit", rangeText(0.8, 1500, "W", "SI"), "0.0008 to 1.5000\u00a0kW"],
    ["minutes", timeText(2388), "39.8\u00a0min"],
    ["hours", timeText(7.34 * 3600), "7.34\u00a0h"],
    ["no time", timeText(0), "none"],
  ])("%s", (_what, shown, expected) => {
    expect(shown).toBe(expected);
  });

  it.each([
    [
      figure({ label: "f", value: 0.0132, unit: "1", limit: { low: null, high: 0.02 } }),
      "1.32\u00a0%",
      "at most 2\u00a0%",
    ],
    [figure({ label: "f", value: 0.62, unit: "1", halfWidth: 0.153 }), "62 ± 15\u00a0%", ""],
    [figure({ label: "f", value: 2, unit: "1" }), "2", ""],
    [figure({ label: "f", value: 0, unit: "1" }), "0\u00a0%", ""],
    [
      figure({ label: "f", value: "open", unit: "Ω", limit: { low: 1e6, high: null } }),
      "open",
      "at least 1\u00a0MΩ",
    ],
    [figure({ label: "f", value: null, unit: "", name: "4 AWG" }), "4 AWG", ""],
    [figure({ label: "f", value: 21.15e-6, unit: "m²", name: "4 AWG" }), "21.15\u00a0mm² (4 AWG)", ""],
    [figure({ label: "f", value: null, unit: "A" }), "not known", ""],
    [
      figure({ label: "f", value: 60, unit: "A", limit: { low: 55, high: 65 } }),
      "60\u00a0A",
      "55 to 65\u00a0A",
    ],
  ])("a figure %# reads as it should", (one, value, limit) => {
    expect([figureText(one, "SI"), limitText(one, "SI")]).toEqual([value, limit]);
  });

  it("never print NaN, undefined, null or Infinity", () => {
    for (const text of [markdown(), markdown(SPARSE), html(), html(SPARSE)]) {
      expect(text).not.toMatch(/NaN|undefined|\bnull\b|Infinity|\[object/);
    }
  });
});

it.each<readonly [string, string, object]>([
  ["missing", "assessment", { assessment: undefined }],
  ["unknown-name", "format", { format: "pdf" }],
  ["unknown-name", "units", { units: "imperial" }],
  ["unknown-name", "theme", { theme: "blue" }],
])("refuses %s at %s", (code, path, slip) => {
  const error = caught(() => benchReport({ assessment: FULL, format: "html", ...slip } as never));
  expect([error.code, error.argument]).toEqual([code, path]);
});
