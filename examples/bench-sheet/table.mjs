/** Rows that can be added and removed, by mouse and by keyboard alike. */
import { fillControl, isBlank, labelOf, makeControl } from "./control.mjs";
import { element, freshId } from "./dom.mjs";
import { valueAt } from "./paths.mjs";

/** @import { Control } from "./control.mjs" */
/** @import { Table } from "./fieldTypes.mjs" */

/**
 * @typedef {object} Row
 * @property {HTMLElement} whole
 * @property {readonly Control[]} controls
 *
 * @typedef {object} TablePart
 * @property {Table} spec
 * @property {string} name - what the table is called in messages
 * @property {HTMLElement} whole
 * @property {HTMLElement} message
 * @property {Row[]} rows
 * @property {() => Row} addRow
 * @property {(values: readonly unknown[]) => void} fill
 */

const capital = (/** @type {string} */ words) => words.charAt(0).toUpperCase() + words.slice(1);

/** @param {Row} row an entirely blank row does not count */
export const isBlankRow = ({ controls }) =>
  controls.every((control) => isBlank(control) && control.given === null);

/** A row that is being written: it counts once it has what it needs, or is left. @param {Row} row */
export const isUnfinished = ({ whole, controls }) =>
  whole.contains(document.activeElement) &&
  controls.some((control) => control.field.needed === true && isBlank(control));

/**
 * @param {Table} spec @param {string} name @param {() => void} edited called when rows come or go
 * @returns {TablePart}
 */
export function makeTable(spec, name, edited) {
  const message = element("p", { class: "message", id: freshId(), hidden: true });
  const body = element("div", { class: "rows" });
  const add = element(
    "button",
    { type: "button", class: "add" },
    `Add ${/^[aeio]/.test(spec.one) ? "an" : "a"} ${spec.one}`,
  );
  /** @type {Row[]} */
  const rows = [];

  function number() {
    rows.forEach(({ whole }, i) => {
      const words = `${capital(spec.one)} ${i + 1}`;
      whole.setAttribute("aria-label", words);
      whole.querySelector("button")?.setAttribute("aria-label", `Remove ${spec.one} ${i + 1}`);
    });
    head.hidden = rows.length === 0 || spec.form !== "lines";
  }

  /** @param {Row} row */
  function remove(row) {
    const at = rows.indexOf(row);
    rows.splice(at, 1);
    row.whole.remove();
    number();
    // Focus stays where it was, on what came up, or goes to the button that brings a row back.
    const next = rows[at] ?? rows[at - 1];
    (next?.controls[0]?.input ?? add).focus();
    edited();
  }

  /** @returns {Row} */
  function addRow() {
    const controls = spec.fields.map(makeControl);
    const button = element(
      "button",
      { type: "button", class: "remove" },
      spec.form === "lines" ? "✕" : "Remove",
    );
    const messages = controls.map(({ message: one }) => one);
    const cells = controls.map(({ whole }) => whole);
    const whole = element("div", { class: "row", role: "group" }, ...cells, button, ...messages);
    const row = { whole, controls };
    button.addEventListener("click", () => remove(row));
    rows.push(row);
    body.append(whole);
    number();
    return row;
  }

  // The return key goes down a column, and makes the next row at its end.
  body.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" || spec.form !== "lines" || !(event.target instanceof HTMLInputElement)) return;
    event.preventDefault();
    const target = event.target;
    const at = rows.findIndex(({ whole }) => whole.contains(target));
    const column = rows[at]?.controls.findIndex(({ input }) => input === target) ?? -1;
    if (column < 0) return;
    const last = at === rows.length - 1;
    const next = last ? addRow() : rows[at + 1];
    next?.controls[last ? 0 : column]?.input.focus();
    if (last) edited();
  });
  add.addEventListener("click", () => {
    addRow().controls[0]?.input.focus();
    edited();
  });

  const head = element(
    "div",
    { class: "head", "aria-hidden": "true", hidden: true },
    ...spec.fields.map((field) => element("span", {}, ...labelOf(field))),
  );
  const note = spec.note === undefined ? [] : [element("p", { class: "note" }, spec.note)];
  const look = spec.form === "lines" ? `lines n${spec.fields.length}` : "cards";
  const legend = element("legend", {}, spec.legend);
  const whole = element("fieldset", { class: `table ${look}` }, legend, ...note, message, head, body, add);

  return {
    spec,
    name,
    whole,
    message,
    rows,
    addRow,
    fill(values) {
      rows.length = 0;
      body.replaceChildren();
      for (const value of values) {
        const { controls } = addRow();
        for (const control of controls) fillControl(control, valueAt(value, control.field.name));
      }
      number();
    },
  };
}
