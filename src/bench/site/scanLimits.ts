/** Rises of a thermal scan to act on, as they show at the load of the day. */
import neta from "../../../shared/tables/joint-thermal-severity-neta.json" with { type: "json" };
import practitioner from "../../../shared/tables/joint-thermal-severity-practitioner.json" with {
  type: "json",
};
import { riseAtFullLoad, type SeverityScale } from "../../joint/index.ts";
import type { Kelvins } from "../../quantity/index.ts";
import type { Figure } from "../assessmentTypes.ts";
import { figure } from "./figure.ts";

type Comparison = "similar" | "ambient";

/** A row of a scale: the rise above which it holds, at full load. */
interface Step {
  readonly level: number;
  readonly above: number;
  readonly action: string;
}

type Cell = string | number | null | undefined;

/** Rows of a scale by what they follow: each begins where the nearest row before it that has an edge ends. */
function stepsOf(
  table: {
    readonly columns: readonly { readonly name: string }[];
    readonly rows: readonly (readonly Cell[])[];
  },
  columns: { readonly from: string | null; readonly to: string },
): readonly Step[] {
  const at = (name: string): number => table.columns.findIndex((column) => column.name === name);
  const to = at(columns.to);
  return table.rows.flatMap((row, i): Step[] => {
    // A blank edge closes the scale on its last row and skips a row elsewhere.
    if (row[to] === null && i < table.rows.length - 1) return [];
    const edges = table.rows.slice(0, i).flatMap((one) => (typeof one[to] === "number" ? [one[to]] : []));
    const above = edges.at(-1) ?? (columns.from === null ? null : row[at(columns.from)]);
    if (typeof above !== "number") return [];
    return [{ level: Number(row[at("level")]), above, action: String(row[at("action")]) }];
  });
}

/**
 * Loads at which a scan is worth a limit. A published scan needs 40 % of full load at the least (NFPA 70B-2023, 7.4.5); below half a rise
 * would be carried further than the exponents are good for. At and above full load the figures of the scale stand as printed: no scale
 * forgives a joint for being overloaded. Common practice.
 */
const LOWEST = 0.5;
const FULL = 1;
/** A load that reads as full load to three digits is full load; the figures of a scale are no closer. */
const AS_GOOD_AS_FULL = 0.9995;

const WORDS: Readonly<Record<Comparison, string>> = {
  similar: "over a like joint under like load",
  ambient: "over the air",
};

/**
 * Rises above which each row of a scale holds, seen at `loadFraction` of full load, as bands of the exponent.
 * @param scale - named scale
 * @param loadFraction - current of the day over full-load current
 */
export function scanLimits(scale: SeverityScale, loadFraction: number): readonly Figure[] {
  const [table, edge] =
    scale === "neta-100.18" ? ([neta, "To"] as const) : ([practitioner, "Below"] as const);
  const outside = loadFraction < LOWEST;
  const load = loadFraction >= AS_GOOD_AS_FULL ? FULL : loadFraction;
  return (["ambient", "similar"] as const).flatMap((comparison) =>
    stepsOf(table, {
      from: scale === "neta-100.18" ? `${comparison}From` : null,
      to: `${comparison}${edge}`,
    }).map(({ level, above, action }): Figure => {
      const label = `rise ${WORDS[comparison]} from which level ${level} holds`;
      const source = `${table.edition} (${table.source}), level ${level}: above ${above} K at full load`;
      const basis =
        load === FULL ? source : `${source}; at ${percent(load)} of full load by the exponents 1.6 to 2`;
      if (outside) {
        const caution = `Scan at ${percent(LOWEST)} of full load or more: the draw expected is ${percent(loadFraction)}.`;
        return figure({ label, value: null, unit: "K", name: action, basis: source, caution });
      }
      const { low, high } = riseAtFullLoad({ rise: above as Kelvins, loadFraction: FULL / load });
      return figure({
        label,
        value: (low + high) / 2,
        unit: "K",
        name: action,
        halfWidth: (high - low) / 2,
        basis,
        caution:
          "Only of a surface that a camera can read: bare bright metal shows the room. Act from the lower end of the band.",
      });
    }),
  );
}

const percent = (ratio: number): string => `${Number((ratio * 100).toPrecision(4))} %`;
