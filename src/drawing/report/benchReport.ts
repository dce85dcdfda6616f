/** The assessment of a bench record as a report: Markdown, or one page of HTML. */
import type { ModuleAssessment } from "../../bench/index.ts";
import { checkOneOf, given } from "../../quantity/index.ts";
import type { Theme } from "../theme.ts";
import { htmlOf } from "./html.ts";
import { markdownOf } from "./markdown.ts";
import { reportDocument } from "./reportDocument.ts";

/**
 * Writes an assessment as a report: first the answer in at most five lines, then the cautions, then the evidence, then the working.
 *
 * The page is self-contained: no script, nothing is loaded, pictures are part of it. It prints to A4 and Letter, and its wide tables
 * scroll in themselves on a phone. In Markdown a picture is told in words. Sections without anything to say are left out and named
 * under "What was not tested". Text from the record is shown as it is, never as markup.
 * @param input.assessment - from `assessModule` of `bench`
 * @param input.format - `"markdown"` (CommonMark with tables) or `"html"` (well-formed as XML too)
 * @param input.units - `"US"` for lbf·in, in, °F, lb in the figures; `"SI"` if left out. Sizes such as AWG stay as they are named
 * @param input.theme - light or dark page; by the reader's own setting if left out. Paper is always light; Markdown has none
 * @returns the report; the same input gives the same bytes
 * @throws ElectroheatError `missing`, `wrong-type`, `unknown-name`
 * @source layout of our own; Markdown: CommonMark 0.31.2; contrast of 4.5:1: WCAG 2.2, 1.4.3
 * @example
 * ```ts
 * const assessment = assessModule({
 *   title: "invented dryer, zone *2*",
 *   nameplate: { power: "30 kW", voltage: "480 V" },
 *   wiring: { banks: [{ id: "A", connection: "star" }] },
 * });
 * benchReport({ assessment, format: "markdown" }).split("\n")[0] // => "# invented dryer, zone \\*2\\*"
 * ```
 * @since 0.1.0
 */
export function benchReport(input: {
  readonly assessment: ModuleAssessment;
  readonly format: "markdown" | "html";
  readonly units?: "SI" | "US";
  readonly theme?: Theme;
}): string {
  const { format, units = "SI", theme } = given(input);
  const assessment = given(input.assessment, "assessment");
  checkOneOf("format", format, ["markdown", "html"]);
  checkOneOf("units", units, ["SI", "US"]);
  if (theme !== undefined) checkOneOf("theme", theme, ["light", "dark"]);
  const report = reportDocument(assessment, units);
  return format === "html" ? htmlOf(report, theme) : markdownOf(report);
}
