/** The gate for whole editions: what a user brings has the same shape as ours, and is refused with every path that offends. */
import { failAll, type Issue } from "../quantity/index.ts";
import type { IecEdition, NorthAmericanEdition } from "./edition.ts";
import { checkTable, codeFor, collector, isText, type TableUse } from "./tableGate.ts";

const AMPACITY: TableUse = {
  required: ["size"],
  text: ["size"],
  others: { pattern: /^\S.* \d{2,3}$/, words: "a material and its insulation temperature, as in copper 75" },
  run: "rising",
  most: 10_000,
};
const CAPACITY: TableUse = {
  required: ["size"],
  rising: ["size"],
  others: { pattern: /^\S.* [23]$/, words: "a method and its number of loaded conductors, as in B2 3" },
  run: "rising",
  most: 10_000,
};
const BANDS: TableUse = {
  required: ["from", "to"],
  mayBeNull: ["from"],
  rising: ["from", "to"],
  others: { pattern: /^\d{2,3}$/, words: "an insulation temperature, as in 75" },
  run: "falling",
  most: 3,
};
const POINTS: TableUse = {
  required: ["ambient"],
  rising: ["ambient"],
  others: { pattern: /./, words: "an insulation" },
  run: "falling",
  most: 3,
};
const GROUPING: TableUse = {
  required: ["circuits"],
  rising: ["circuits"],
  others: { pattern: /./, words: "an arrangement" },
  run: "falling",
  most: 1,
};
const COUNT: TableUse = {
  required: ["from", "to", "percent"],
  mayBeNull: ["to"],
  rising: ["from", "to"],
  most: 100,
};
const SMALL: TableUse = {
  required: ["size", "material", "limit"],
  text: ["size", "material"],
  most: 100,
};
const TERMINATIONS: TableUse = {
  required: ["to", "temperature"],
  mayBeNull: ["to"],
  rising: ["to", "temperature"],
  most: 10_000,
};
const RATINGS: TableUse = { required: ["rating"], rising: ["rating"], most: 10_000 };
const RULES: TableUse = {
  required: ["equipment", "clause", "factor", "subdivision", "subdivided load", "subdivided device"],
  text: ["equipment", "clause", "subdivision"],
  mayBeNull: ["subdivision", "subdivided load", "subdivided device"],
  others: { pattern: /^(from|to)$/, words: "from and to, the years of the first and last edition" },
  most: 3000,
};

/** One part of an edition. */
interface Part {
  readonly use: TableUse;
  /** Whether it is a list of tables. */
  readonly many: boolean;
  /** Text fields beside each table. */
  readonly texts: readonly string[];
  /** Temperatures beside each table (°C). */
  readonly numbers: readonly string[];
}

/** Parts of an edition: the list or single table, how its tables are used, and the fields beside each table. */
export const PARTS: Readonly<Record<"North America" | "IEC", Readonly<Record<string, Part>>>> = {
  "North America": {
    ampacity: { use: AMPACITY, many: true, texts: ["label", "installation"], numbers: ["baseAmbient"] },
    ambient: { use: BANDS, many: true, texts: ["label"], numbers: ["baseAmbient"] },
    conductorCount: { use: COUNT, many: false, texts: ["label"], numbers: [] },
    smallConductors: { use: SMALL, many: false, texts: ["label"], numbers: [] },
    terminations: { use: TERMINATIONS, many: false, texts: ["label"], numbers: [] },
    standardRatings: { use: RATINGS, many: false, texts: ["label"], numbers: [] },
    heatingRules: { use: RULES, many: false, texts: ["label"], numbers: [] },
  },
  IEC: {
    capacity: {
      use: CAPACITY,
      many: true,
      texts: ["label", "insulation", "material"],
      numbers: ["conductorTemperature", "baseAmbient"],
    },
    ambient: { use: POINTS, many: true, texts: ["label"], numbers: ["baseAmbient"] },
    grouping: { use: GROUPING, many: true, texts: ["label", "name"], numbers: [] },
    deviceRatings: { use: RATINGS, many: false, texts: ["label"], numbers: [] },
  },
};

/**
 * Everything wrong with an edition brought by a user, as data: its shape, its tables' columns, cells that are not figures,
 * keys given twice, ampacities that fall with size, factors that rise with temperature. An empty list is a pass.
 *
 * The one gate: every function that takes an edition calls it, this library's own tables pass it in its tests, and
 * {@link editionJsonSchema} describes its shape for other tools. Written by hand, since a schema library would weigh more than the
 * tables. It sees shape and order, not whether a figure is right.
 * @param edition - the edition, of any shape
 * @returns one issue per slip, each with its path: `ampacity.0.table.rows.3.2`
 * @throws ElectroheatError never
 * @source definition
 * @example
 * ```ts
 * editionIssues({ name: "Works rules 7", system: "North America", standardRatings: { label: "R1" } })[0]?.path
 * // => "edition.standardRatings.table"
 * ```
 * @since 0.1.0
 */
export function editionIssues(edition: unknown): readonly Issue[] {
  const { issues, add } = collector();
  if (typeof edition !== "object" || edition === null || Array.isArray(edition)) {
    add(codeFor(edition), "edition", "the name of an edition, or an edition of your own", edition);
    return issues;
  }
  const whole = edition as Readonly<Record<string, unknown>>;
  if (!isText(whole["name"])) add(codeFor(whole["name"]), "edition.name", "text", whole["name"]);
  const system = whole["system"];
  if (system !== "North America" && system !== "IEC") {
    const code = codeFor(system) === "missing" ? "missing" : "unknown-name";
    add(code, "edition.system", "North America or IEC", system);
    return issues;
  }
  const parts = PARTS[system];
  for (const [name, value] of Object.entries(whole)) {
    if (name === "name" || name === "system" || value === undefined) continue;
    const part = parts[name];
    const path = `edition.${name}`;
    if (part === undefined) {
      add("unknown-field", path, `one of name, system, ${Object.keys(parts).join(", ")}`, value);
      continue;
    }
    if (part.many && !Array.isArray(value)) {
      add(codeFor(value), path, "a list of tables with their labels", value);
      continue;
    }
    const list: readonly unknown[] = part.many ? (value as unknown[]) : [value];
    list.forEach((one, i) => {
      const at = part.many ? `${path}.${i}` : path;
      const entry = (typeof one === "object" && one !== null ? one : {}) as Readonly<Record<string, unknown>>;
      for (const field of part.texts) {
        if (!isText(entry[field])) add(codeFor(entry[field]), `${at}.${field}`, "text", entry[field]);
      }
      for (const field of part.numbers) {
        if (typeof entry[field] !== "number" || !Number.isFinite(entry[field])) {
          add(codeFor(entry[field]), `${at}.${field}`, "a temperature in °C", entry[field]);
        }
      }
      if (part.numbers.length > 0 && name !== "ambient" && !Array.isArray(entry["baseConditions"])) {
        add(
          codeFor(entry["baseConditions"]),
          `${at}.baseConditions`,
          "a list of conditions in words",
          entry["baseConditions"],
        );
      }
      checkTable(`${at}.table`, entry["table"], part.use, add);
    });
  }
  return issues;
}

/** The edition a user brought, or an error that lists everything wrong with it. */
export function checkedEdition<E extends NorthAmericanEdition | IecEdition>(edition: E): E {
  failAll(editionIssues(edition));
  return edition;
}
