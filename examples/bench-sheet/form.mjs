/** The form: made from the description of the fields, filled from a record, read into one. */
import { completeUnit, fillControl, isBlank, makeControl, readControl } from "./control.mjs";
import { element, freshId } from "./dom.mjs";
import { SECTIONS, SUGGESTIONS } from "./fields.mjs";
import { joined, setAt, valueAt } from "./paths.mjs";
import { isBlankRow, isUnfinished, makeTable } from "./table.mjs";

/** @import { Control } from "./control.mjs" */
/** @import { Group, Section, Table } from "./fieldTypes.mjs" */
/** @import { TablePart } from "./table.mjs" */
/** @import { Units } from "./values.mjs" */

/**
 * @typedef {object} GroupPart
 * @property {Group} spec
 * @property {HTMLElement} whole
 * @property {HTMLElement} message
 * @property {readonly Control[]} controls
 *
 * @typedef {object} Place - where a message about a path belongs
 * @property {string} name - in words
 * @property {Control | null} control - `null` for a group or a table as a whole
 * @property {HTMLElement} message
 * @property {HTMLElement} whole
 *
 * @typedef {object} ReadForm
 * @property {Record<string, unknown>} record
 * @property {ReadonlyMap<string, Place>} places - by path in this record
 * @property {number} unfinished - rows that are being written and do not count yet
 */

/** What a part of the form is called in messages: with its day, where there are two of them. @param {Section} section @param {Group | Table} spec */
const nameOf = ({ title }, { path, legend }) => (path.startsWith("as") ? `${title}, ${legend}` : legend);

/** @param {Group} spec @returns {GroupPart} */
function makeGroup(spec) {
  const controls = spec.fields.map(makeControl);
  const message = element("p", { class: "message", id: freshId(), hidden: true });
  for (const control of controls) control.whole.append(control.message);
  for (const { field, input } of controls) {
    if (field.when === undefined) continue;
    const [name, value] = field.when;
    const other = controls.find((one) => one.field.name === name)?.input;
    const follow = () => {
      input.disabled = other?.value !== value;
    };
    other?.addEventListener("change", follow);
    follow();
  }
  const note = spec.note === undefined ? [] : [element("p", { class: "note" }, spec.note)];
  const fields = element("div", { class: "fields" }, ...controls.map(({ whole }) => whole));
  const legend = element("legend", { class: spec.quiet === true ? "unseen" : undefined }, spec.legend);
  return { spec, controls, message, whole: element("fieldset", {}, legend, ...note, message, fields) };
}

/**
 * @param {HTMLElement} host
 * @param {{ readonly edited: () => void, readonly units: () => Units }} page
 */
export function makeForm(host, { edited, units }) {
  /** @type {{ section: Section, folded: HTMLDetailsElement, groups: GroupPart[], tables: TablePart[] }[]} */
  const sections = SECTIONS.map((section) => {
    const made = section.parts.map((spec) =>
      spec.form === "group" ? makeGroup(spec) : makeTable(spec, nameOf(section, spec), edited),
    );
    const title = element("summary", {}, element("h2", {}, section.title));
    const note = section.note === undefined ? [] : [element("p", { class: "note" }, section.note)];
    const folded = element(
      "details",
      { open: section.open },
      title,
      ...note,
      ...made.map(({ whole }) => whole),
    );
    host.append(folded);
    return {
      section,
      folded,
      groups: made.flatMap((part) => ("rows" in part ? [] : [part])),
      tables: made.flatMap((part) => ("rows" in part ? [part] : [])),
    };
  });
  const lists = { ...SUGGESTIONS, nodes: [], parts: [] };
  for (const [name, words] of Object.entries(lists)) {
    const options = words.map((value) => element("option", { value }));
    host.append(element("datalist", { id: `list-${name}` }, ...options));
  }

  const controls = () =>
    sections.flatMap(({ groups, tables }) => [
      ...groups.flatMap((group) => group.controls),
      ...tables.flatMap(({ rows }) => rows.flatMap((row) => row.controls)),
    ]);

  host.addEventListener("input", edited);
  host.addEventListener("change", ({ target }) => {
    const control = controls().find(({ input }) => input === target);
    if (control !== undefined) completeUnit(control, units());
    edited();
  });
  // A row that was being written counts once it is left.
  host.addEventListener("focusout", edited);
  host.addEventListener("submit", (event) => event.preventDefault());

  return {
    /** @param {unknown} record anything; what has no place in the sheet stays out */
    fill(record) {
      for (const { section, folded, groups, tables } of sections) {
        for (const { spec, controls: own } of groups) {
          for (const control of own)
            fillControl(control, valueAt(record, joined(spec.path, control.field.name)));
          for (const { input } of own) input.dispatchEvent(new Event("change"));
        }
        for (const table of tables) {
          const rows = valueAt(record, table.spec.path);
          table.fill(Array.isArray(rows) ? rows : []);
        }
        const filled =
          groups.some((group) => group.controls.some((control) => !isBlank(control))) ||
          tables.some(({ rows }) => rows.length > 0);
        folded.open = section.open || filled;
      }
    },

    /** @returns {ReadForm} */
    read() {
      /** @type {Record<string, unknown>} */
      const record = {};
      /** @type {Map<string, Place>} */
      const places = new Map();
      let unfinished = 0;
      /** @param {Record<string, unknown>} into @param {Control} control @param {string} path @param {string} name */
      const take = (into, control, path, name) => {
        const { field, message, whole, input } = control;
        places.set(joined(path, field.name), { name: `${name}, ${field.label}`, control, message, whole });
        const value = readControl(control, units());
        const key = into === record ? joined(path, field.name) : field.name;
        if (value !== undefined) setAt(into, key, field.record === input.value ? {} : value);
      };
      for (const { section, groups, tables } of sections) {
        for (const { spec, controls: own, message, whole } of groups) {
          const name = nameOf(section, spec);
          if (spec.path !== "" && !places.has(spec.path))
            places.set(spec.path, { name, control: null, message, whole });
          for (const control of own) take(record, control, spec.path, name);
        }
        for (const { spec, name, rows, message, whole } of tables) {
          places.set(spec.path, { name, control: null, message, whole });
          /** @type {Record<string, unknown>[]} */
          const list = [];
          for (const [i, row] of rows.entries()) {
            const wait = !isBlankRow(row) && isUnfinished(row);
            if (wait) unfinished += 1;
            if (wait || isBlankRow(row)) continue;
            /** @type {Record<string, unknown>} */
            const entry = {};
            const path = joined(spec.path, list.length);
            for (const control of row.controls) take(entry, control, path, `${name}, ${spec.one} ${i + 1}`);
            list.push(entry);
          }
          if (list.length > 0 || spec.always === true) setAt(record, spec.path, list);
        }
      }
      return { record, places, unfinished };
    },

    /** Names that the wiring has, as suggestions. @param {readonly string[]} nodes @param {readonly string[]} parts */
    suggest(nodes, parts) {
      for (const [name, words] of /** @type {const} */ ([
        ["nodes", nodes],
        ["parts", parts],
      ])) {
        const options = words.map((value) => element("option", { value }));
        document.getElementById(`list-${name}`)?.replaceChildren(...options);
      }
    },
  };
}
