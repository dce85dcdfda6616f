/** One number of a site section with all that is needed to read it, and how a source is named beside it. */
import { judge } from "../../decision/index.ts";
import type { Basis } from "../../material/index.ts";
import type { Warning } from "../../quantity/index.ts";
import type { TableCell } from "../../wiring/index.ts";
import type { Figure } from "../assessmentTypes.ts";

/** A figure; what is not said is `null`. Fields always stand in the same order. */
export function figure(given: Pick<Figure, "label" | "value" | "unit" | "basis"> & Partial<Figure>): Figure {
  const { label, value, unit, basis } = given;
  const { name = null, halfWidth = null, limit = null, verdict = null, caution = null } = given;
  return { label, value, unit, name, halfWidth, limit, verdict, basis, caution };
}

/** A figure held against a limit, in decimal; the whole of its interval must clear it. */
export function judgedFigure(
  given: Pick<Figure, "label" | "unit" | "basis"> &
    Partial<Pick<Figure, "name" | "halfWidth" | "caution">> & {
      readonly value: number;
      readonly low?: number | undefined;
      readonly high?: number | undefined;
    },
): Figure {
  const { value, low, high, halfWidth = null, basis } = given;
  const { verdict } = judge({
    value,
    halfWidth: halfWidth ?? 0,
    ...(low === undefined ? {} : { low }),
    ...(high === undefined ? {} : { high }),
    rule: basis,
  });
  return figure({ ...given, limit: { low: low ?? null, high: high ?? null }, verdict });
}

/** Messages as one caution; `null` if there are none. */
export function cautionOf(messages: readonly (string | null)[]): string | null {
  const said = [...new Set(messages.filter((one) => one !== null && one !== ""))];
  return said.length === 0 ? null : said.join(" ");
}

/** What warnings say. */
export const messagesOf = (warnings: readonly Warning[]): readonly string[] =>
  warnings.map(({ message }) => message);

/** The source of a table as text. */
export const basisText = ({ source, edition, table, kind }: Basis): string =>
  `${table} (${source}, ${edition}; ${kind})`;

/** Where an answer of a code stands in print. */
export const printedText = ({
  edition,
  table,
  row,
  column,
}: Pick<TableCell, "edition" | "table" | "row" | "column">): string =>
  `${edition}, ${table}, row ${row}, column ${column}`;
