/** Reports of whole records, through the assessment: what reaches the page is what the assessment says. */
import { assessModule } from "electroheat/bench";
import { benchReport } from "electroheat/drawing";
import { describe, expect, it } from "vitest";
import { dryer, heater, oven } from "../../bench/caseRecords.ts";
import { everything, parsed, pictureProblems } from "../parsed.ts";
import { BARE, DELTA, OVEN } from "./records.ts";

const records = { OVEN, DELTA, BARE, dryer: dryer(), oven: oven(), heater: heater() };

describe.each(Object.entries(records))("the report of the record %s", (_name, record) => {
  const assessment = assessModule(record);
  const html = benchReport({ assessment, format: "html" });
  const markdown = benchReport({ assessment, format: "markdown", units: "US" });

  it("is a well-formed page with sound pictures, and no value that is none", () => {
    const root = parsed(html);
    expect(everything(root).filter(({ name }) => name === "h1")).toHaveLength(1);
    for (const svg of html.match(/<svg [\s\S]*?<\/svg>/g) ?? []) expect(pictureProblems(svg)).toEqual([]);
    for (const text of [html, markdown]) expect(text).not.toMatch(/NaN|undefined|\bnull\b|Infinity|\[object/);
    expect(html).not.toContain("cannot be drawn");
  });

  it("has at most five lines of answer, each as the assessment gives it", () => {
    const answer = markdown.slice(markdown.indexOf("## The answer"), markdown.indexOf("## Cautions"));
    const lines = answer.split("\n").filter((line) => /^\d\. /.test(line));
    expect(lines.length).toBeLessThanOrEqual(5);
    expect(lines.map((line) => line.slice(3).replaceAll("\\", ""))).toEqual(assessment.answer);
  });

  it("gives the same bytes after the assessment went through JSON", () => {
    const again = JSON.parse(JSON.stringify(assessment));
    expect(benchReport({ assessment: again, format: "html" })).toBe(html);
  });

  it("tells every figure with its basis, every step, part and item", () => {
    const { hardware, feed, commissioning, cuts, asFound, asLeft } = assessment;
    const figures = [
      ...hardware.flatMap((one) => one.figures),
      ...(feed?.figures ?? []),
      ...(commissioning?.lines ?? []),
      ...(commissioning?.scan ?? []),
      ...cuts.flatMap((one) => one.figures),
      ...[asFound, asLeft].flatMap((day) => [
        ...(day?.currents ?? []),
        ...(day?.unbalance ?? []),
        ...(day?.insulation ?? []),
      ]),
    ];
    const shown = everything(parsed(html)).map(({ text }) => text);
    const page = shown.join("\n");
    for (const { label, basis, caution } of figures) {
      for (const text of [label, basis, ...(caution === null ? [] : [caution])]) expect(page).toContain(text);
    }
    for (const { action, reason } of assessment.nextSteps) expect(page).toContain(`${action} ${reason}`);
    for (const { text } of assessment.checklist) expect(page).toContain(text);
    for (const { part } of assessment.parts) expect(page).toContain(part);
    for (const text of [...assessment.notTested, ...assessment.cautions]) expect(page).toContain(text);
  });
});

it("draws the connections and the phasors of the oven, and no phasors of a module without a value", () => {
  const page = (record: typeof OVEN): string =>
    benchReport({ assessment: assessModule(record), format: "html" });
  const titles = (html: string): string[] =>
    everything(parsed(html)).flatMap(({ name, attributes, text }) =>
      name === "title" && attributes["id"]?.endsWith("wide-title") ? [text] : [],
    );
  expect(titles(page(OVEN))).toEqual(["Connections, as found", "Connections, as left", "Phasors, as found"]);
  expect(titles(page(DELTA))).toEqual(["Connections, as found"]);
  expect(titles(page(BARE))).toEqual([]);
});

it("marks the joint that is to be remade in the diagram, and the open element", () => {
  const markdown = benchReport({ assessment: assessModule(OVEN), format: "markdown" });
  expect(markdown).toMatch(/Connections, as found, in words:.*A-L1 open;.*J-L2 2\.013 ± 0\.082.mΩ hot joint/);
});

it("says beside the diagram what the diagnosis holds of the wiring that is drawn", () => {
  const markdown = benchReport({ assessment: assessModule(heater()), format: "markdown" });
  expect(markdown).toContain("By the diagnosis: bank A3 linked as star, against the drawing (over 99.9 %).");
});
