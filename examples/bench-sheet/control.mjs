/** One field of the sheet: label, input, hint, and the place where its message stands. */
import { element, freshId } from "./dom.mjs";
import { fieldValue, textOf, withUnit } from "./values.mjs";

/** @import { Field } from "./fieldTypes.mjs" */
/** @import { Units } from "./values.mjs" */

/**
 * @typedef {object} Control
 * @property {Field} field
 * @property {HTMLInputElement | HTMLSelectElement} input
 * @property {HTMLElement} whole - what is put into the form
 * @property {HTMLElement} message - empty and hidden while there is nothing wrong
 * @property {{ readonly shown: string, readonly value: unknown } | null} given - value as loaded, kept until the text is touched
 */

/** @param {Field} field @param {string} id @param {string} described */
function inputFor(field, id, described) {
  const shared = { id, "aria-describedby": described };
  if (field.kind === "choice") {
    const options = (field.choices ?? []).map(([value, words]) => element("option", { value }, words));
    return element("select", shared, ...options);
  }
  if (field.kind === "mark") return element("input", { ...shared, type: "checkbox" });
  return element("input", {
    ...shared,
    type: "text",
    autocomplete: "off",
    autocapitalize: "off",
    spellcheck: "false",
    ...(field.list === undefined ? {} : { list: `list-${field.list}` }),
  });
}

/** The words of a label, with the unit that a number alone is taken in. @param {Field} field @returns {(Node | string)[]} */
export function labelOf({ label, si, us }) {
  if (si === undefined) return [label];
  const unit = (/** @type {string} */ symbol, /** @type {string} */ look) =>
    element("span", { class: look }, ` (${symbol})`);
  return us === si || us === undefined
    ? [label, unit(si, "unit")]
    : [label, unit(si, "unit si"), unit(us, "unit us")];
}

/** @param {Field} field @returns {Control} */
export function makeControl(field) {
  const id = freshId();
  const messageId = `${id}-message`;
  const hint = field.hint === undefined ? null : element("small", { id: `${id}-hint` }, field.hint);
  const input = inputFor(field, id, hint === null ? messageId : `${id}-hint ${messageId}`);
  const label = element("label", { for: id }, ...labelOf(field));
  const message = element("p", { id: messageId, class: "message", hidden: true });
  const whole = element(
    "div",
    { class: `field kind-${field.kind}${field.wide === true ? " wide" : ""}` },
    label,
    input,
    ...(hint === null ? [] : [hint]),
  );
  /** @type {Control} */
  const control = { field, input, whole, message, given: null };
  input.addEventListener("input", () => {
    control.given = null;
  });
  return control;
}

/** @param {Control} control @returns {boolean} */
export const isBlank = ({ field, input }) =>
  field.kind === "mark" ? !(/** @type {HTMLInputElement} */ (input).checked) : input.value.trim() === "";

/** @param {Control} control @param {Units} units @returns {unknown} */
export function readControl({ field, input, given }, units) {
  if (input.disabled) return undefined;
  if (given !== null && given.shown === input.value) return given.value;
  if (field.kind === "mark") return /** @type {HTMLInputElement} */ (input).checked ? true : undefined;
  return fieldValue(field, input.value, units);
}

/** @param {Control} control @param {unknown} value */
export function fillControl(control, value) {
  const { field, input } = control;
  if (input instanceof HTMLInputElement && field.kind === "mark") {
    input.checked = value === true;
    control.given = value === undefined ? null : { shown: input.value, value };
    return;
  }
  const isRecord = typeof value === "object" && value !== null && !Array.isArray(value);
  if (field.record !== undefined && isRecord) {
    input.value = field.record;
    control.given = null;
    return;
  }
  const shown = textOf(field, value);
  if (input instanceof HTMLSelectElement && ![...input.options].some((option) => option.value === shown)) {
    input.append(element("option", { value: shown }, shown));
  }
  input.value = shown;
  control.given = value === undefined ? null : { shown: input.value, value };
}

/** Writes the unit behind a number alone, so that a later choice of units changes nothing that stands. @param {Control} control @param {Units} units */
export function completeUnit(control, units) {
  if (control.field.kind !== "quantity" || control.given !== null) return;
  control.input.value = withUnit(control.field, control.input.value, units);
}

/** @param {Control} control @param {string} text message beside the field; blank takes it away */
export function showMessage({ input, message }, text) {
  message.textContent = text;
  message.hidden = text === "";
  if (text === "") input.removeAttribute("aria-invalid");
  else input.setAttribute("aria-invalid", "true");
}
