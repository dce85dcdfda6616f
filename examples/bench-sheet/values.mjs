/** Text of a field to its value in the record, and back. Nothing is refused here: what cannot be read goes to the library as it is. */

/** @import { Field } from "./fieldTypes.mjs" */
/** @typedef {"SI" | "US"} Units */

/** A number alone, or a fraction as rulers have it. */
const BARE = /^[+-]?(?:\d+(?:\.\d+)?|\d+\/\d+|\d+ \d+\/\d+)$/;
const DECIMAL = /^[+-]?\d+(?:\.\d+)?$/;

/** @param {string} text what keyboards and other programs write for minus, as a hyphen */
const plain = (text) => text.trim().replace(/^[\u2212\u2013]/, "-");

/** Moves the decimal point without a multiplication, which would leave digits nobody wrote. @param {string} text @param {number} places */
const shifted = (text, places) => Number(`${text}e${places}`);

/** @param {Field} field @param {Units} units unit that a number alone is taken in */
export const unitOf = (field, units) => (units === "US" ? field.us : field.si) ?? "";

/**
 * A number alone with its unit behind; other text as it is.
 * @param {Field} field @param {string} text @param {Units} units
 */
export function withUnit(field, text, units) {
  const written = text.trim();
  if (field.kind !== "quantity" || !BARE.test(plain(written))) return written;
  return `${written} ${unitOf(field, units)}`;
}

/**
 * Value for the record; `undefined` for a blank field.
 * @param {Field} field @param {string} text @param {Units} units @returns {unknown}
 */
export function fieldValue(field, text, units) {
  const written = plain(text);
  if (written === "") return undefined;
  switch (field.kind) {
    case "quantity":
      return withUnit(field, text, units);
    case "number":
      return DECIMAL.test(written) ? Number(written) : text;
    case "percent": {
      const digits = written.replace(/^±\s*/, "").replace(/\s*%$/, "");
      return DECIMAL.test(digits) ? shifted(digits, -2) : text;
    }
    case "names":
      return text
        .split(",")
        .map((name) => name.trim())
        .filter((name) => name !== "");
    default:
      return text;
  }
}

/**
 * Text that shows a value of a loaded record, of whatever kind it turns out to be.
 * @param {Field} field @param {unknown} value @returns {string}
 */
export function textOf(field, value) {
  if (value === undefined) return "";
  if (typeof value === "string") return value;
  if (typeof value === "number") {
    if (field.kind === "quantity") return `${value} ${field.canonical}`;
    if (field.kind === "percent" && DECIMAL.test(String(value))) return String(shifted(String(value), 2));
    return String(value);
  }
  if (field.kind === "names" && Array.isArray(value)) return value.map(String).join(", ");
  return JSON.stringify(value).slice(0, 200);
}
