/** Reports of whole records, through the assessment: what reaches the page is what the assessment says. */
import { assessModule, type BenchRecord, type ModuleAssessment } from "electroheat/bench";
import { benchReport } from "electroheat/drawing";
import { describe, expect, it } from "vitest";
import { dryer, heater, oven } from "../../bench/caseRecords.ts";
import { everything, parsed, pictureProblems } from "../parsed.ts";
import { BARE, DELTA, OVEN } from "./records.ts";

const records = { OVEN, DELTA, BARE, dryer: dryer(), oven: oven(), heater: heater() };

const KNOWN = new Map<BenchRecord, ModuleAssessment>();
/** Each record is assessed once, when the first test asks: the assessment is not what is tested here. */
function assessed(record: BenchRecord): ModuleAssessment {
  const known = KNOWN.get(record) ?? assessModule(record);
  KNOWN.set(record, known);
  return known;
}

describe.each(Object.entries(records))("the report of the record %s", (_name, record) => {
  const page = () => benchReport({ assessment: assessed(record), format: "html" });
  const text = () => benchReport({ assessment: assessed(record), format: "markdown", units: "US" });

  it("is a well-formed page with sound pictures, and no value that is none", () => {
    const [html, markdown] = [page(), text()];
    const root = parsed(html);
    expect(everything(root).filter(({ name }) => name === "h1")).toHaveLength(1);
    for (const svg of html.match(/<svg [\s\S]*?<\/svg>/g) ?? []) expect(pictureProblems(svg)).toEqual([]);
    for (const one of [html, markdown]) expect(one).not.toMatch(/NaN|undefined|\bnull\b|Infinity|\[object/);
    expect(html).not.toContain("cannot be drawn");
  });

  it("has at most five lines of answer, each as the assessment gives it", () => {
    const markdown = text();
    const answer = markdown.slice(markdown.indexOf("## The answer"), markdown.indexOf("## Cautions"));
    const lines = answer.split("\n").filter((line) => /^\d\. /.test(line));
    expect(lines.length).toBeLessThanOrEqual(5);
    expect(lines.map((line) => line.slice(3).replaceAll("\\", ""))).toEqual(assessed(record).answer);
  });

  it("gives the same bytes after the assessment went through JSON", () => {
    const again = JSON.parse(JSON.stringify(assessed(record)));
    expect(benchReport({ assessment: again, format: "html" })).toBe(page());
  });

  it("tells every figure with its basis, every step, part and item", () => {
    const assessment = assessed(record);
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
    const shown = everything(parsed(page()))
      .map((one) => one.text)
      .join("\n");
    for (const { label, basis, caution } of figures) {
      for (const one of [label, basis, ...(caution === null ? [] : [caution])]) expect(shown).toContain(one);
    }
    for (const { action, reason } of assessment.nextSteps) expect(shown).toContain(`${action} ${reason}`);
    for (const item of assessment.checklist) expect(shown).toContain(item.text);
    for (const { part } of assessment.parts) expect(shown).toContain(part);
    for (const one of [...assessment.notTested, ...assessment.cautions]) expect(shown).toContain(one);
  });
});

it("draws the connections and the phasors of the oven, and no phasors of a module without a value", () => {
  const page = (record: typeof OVEN): string => benchReport({ assessment: assessed(record), format: "html" });
  const titles = (html: string): string[] =>
    everything(parsed(html)).flatMap(({ name, attributes, text }) =>
      name === "title" && attributes["id"]?.endsWith("wide-title") ? [text] : [],
    );
  expect(titles(page(OVEN))).toEqual(["Connections, as found", "Connections, as left", "Phasors, as found"]);
  expect(titles(page(DELTA))).toEqual(["Connections, as found"]);
  expect(titles(page(BARE))).toEqual([]);
});

it("marks the joint that is to be remade in the diagram, and the open element", () => {
  const markdown = benchReport({ assessment: assessed(OVEN), format: "markdown" });
  expect(markdown).toMatch(/Connections, as found, in words:.*A-L1 open;.*J-L2 2\.013 ± 0\.082.mΩ hot joint/);
});

it("says beside the diagram what the diagnosis holds of the wiring that is drawn", () => {
  const markdown = benchReport({ assessment: assessed(records.heater), format: "markdown" });
  expect(markdown).toContain("By the diagnosis: bank A3 linked as star, against the drawing (over 99.9 %).");
});
