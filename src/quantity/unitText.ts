/** From the many ways people write a unit to its entry in the table. */
import { ALIASES } from "./aliases.ts";
import { allEntries, type UnitEntry } from "./table.ts";

/** Characters that people use for "times" between unit symbols. */
const SEPARATORS = " \t\u00A0\u2009\u202F·\u22C5\u2219\u2022*.-\u2010\u2011\u2212";
const SAME: { readonly [character: string]: string } = {
  "\u2126": "Ω", // ohm sign
  "\u03BC": "µ", // Greek mu, written as the micro sign here
  "\u212A": "K", // kelvin sign
  "\u00BA": "°", // ordinal indicator
  "\u02DA": "°", // ring above
  "\u2206": "Δ", // increment
  "\u2032": "'",
  "\u2033": '"',
  "\u201D": '"',
  "\u2082": "2",
  "\u2044": "/",
};

/** One spelling for symbols that differ only in code points, separators and the writing of powers. */
function normalizeUnit(text: string): string {
  let result = "";
  let gap = false;
  for (const raw of text) {
    const character = SAME[raw] ?? raw;
    if (SEPARATORS.includes(character)) {
      gap = true;
    } else if (character !== "^") {
      const last = result.at(-1) ?? "";
      const joins = last !== "" && !"/(".includes(last) && !"/)".includes(character);
      if (gap && joins) result += "·";
      const raises = !gap && /[A-Za-zΩ)]/.test(last);
      result += raises && character === "2" ? "²" : raises && character === "3" ? "³" : character;
      gap = false;
    }
  }
  return result;
}

interface UnitIndex {
  /** Unit → text as normalized → entry. */
  readonly exact: ReadonlyMap<string, ReadonlyMap<string, UnitEntry>>;
  /** Unit → whole words in lower case → entry. */
  readonly words: ReadonlyMap<string, ReadonlyMap<string, UnitEntry>>;
}

function put(index: Map<string, Map<string, UnitEntry>>, key: string, entry: UnitEntry): void {
  const list = index.get(entry.unit) ?? new Map<string, UnitEntry>();
  list.set(key, entry);
  index.set(entry.unit, list);
}

function build(): UnitIndex {
  const exact = new Map<string, Map<string, UnitEntry>>();
  const words = new Map<string, Map<string, UnitEntry>>();
  for (const entry of allEntries()) {
    put(exact, normalizeUnit(entry.symbol), entry);
    for (const alias of ALIASES[entry.unit]?.[entry.symbol] ?? []) {
      put(exact, normalizeUnit(alias), entry);
      // A whole word cannot be mistaken for another unit by its capitals; a symbol can (mΩ, MΩ).
      if (/^[a-z]{3,}([ -][a-z]{2,})*$/.test(alias)) put(words, normalizeUnit(alias), entry);
    }
    const name = entry.name.replace(/[A-Z]/g, (letter) => `·${letter.toLowerCase()}`);
    put(words, name, entry);
    if (name.endsWith("s")) put(words, name.slice(0, -1), entry);
  }
  return { exact, words };
}

let made: UnitIndex | undefined;

/** Made when first asked for: with the table it took two fifths of importing the room. */
function index(): UnitIndex {
  made ??= build();
  return made;
}

function lookUp(unit: string, key: string): UnitEntry | undefined {
  const { exact: texts, words } = index();
  const exact = texts.get(unit);
  // Not "MOHM": in capitals it may be mega or milli.
  const spelled = key
    .replace(/^OHMS?|[Oo]hms?/, "Ω")
    .replace(/BTU|btu/, "Btu")
    .replace(/([/(])hr\b/, "$1h");
  return exact?.get(key) ?? words.get(unit)?.get(key.toLowerCase()) ?? exact?.get(spelled);
}

/** "5-W" and "5 in." are usual; "5 * W" and "5 W ..." are not a quantity. */
function hasCleanEdges(text: string): boolean {
  const [first = "", second = ""] = text;
  const last = text.at(-1) ?? "";
  if (SEPARATORS.includes(first) && (first !== "-" || SEPARATORS.includes(second))) return false;
  return !SEPARATORS.includes(last) || (last === "." && !SEPARATORS.includes(text.at(-2) ?? ""));
}

/** The entry that a unit text means when a given unit is asked for. */
export function findUnit(unit: string, text: string): UnitEntry | undefined {
  return hasCleanEdges(text) ? lookUp(unit, normalizeUnit(text)) : undefined;
}

/** The canonical units that a unit text may stand for; "F" is a farad and, among temperatures, a degree Fahrenheit. */
export function unitsOf(text: string): readonly string[] {
  return [...index().exact.keys()].filter((unit) => findUnit(unit, text) !== undefined);
}

/** The canonical units that a unit text may belong to, when none is the one asked for: `"F or °C"`. */
export function unitElsewhere(text: string): string {
  return unitsOf(text).join(" or ");
}
