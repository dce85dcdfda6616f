/**
 * What a field of the sheet is.
 *
 * @typedef {"text" | "quantity" | "number" | "percent" | "choice" | "names" | "mark"} Kind
 *
 * @typedef {object} Field
 * @property {string} name - field of the record below its group or row; dotted into records of its own
 * @property {string} label - what the person reads
 * @property {Kind} kind - how text becomes the value
 * @property {string} [canonical] - unit of a plain number in a record
 * @property {string} [si] - unit that a number alone is taken in
 * @property {string} [us] - the same where US units are chosen; `si` if left out
 * @property {boolean} [wide] - as wide as the form
 * @property {boolean} [needed] - a row is unfinished without it
 * @property {string} [hint] - what to write, in few words
 * @property {readonly (readonly [string, string])[]} [choices] - value and words; the first, blank, leaves the field out
 * @property {string} [record] - the choice that is a record of its own, whose fields follow
 * @property {readonly [string, string]} [when] - name and value of the choice it belongs to
 * @property {string} [list] - suggestions: a key of `SUGGESTIONS`, or `nodes` or `parts` of the wiring
 *
 * @typedef {object} Group
 * @property {"group"} form
 * @property {string} path - where in the record; empty at its top
 * @property {string} legend
 * @property {boolean} [quiet] - the legend is not shown: the section's title says it
 * @property {string} [note]
 * @property {readonly Field[]} fields
 *
 * @typedef {object} Table
 * @property {"lines" | "cards"} form - rows of a few short fields, or rows with many
 * @property {string} path
 * @property {string} legend
 * @property {string} [note]
 * @property {string} one - what a row is, in the singular
 * @property {boolean} [always] - the list is in the record even when it is empty
 * @property {readonly Field[]} fields
 *
 * @typedef {object} Section
 * @property {string} title
 * @property {boolean} open - whether it is unfolded at first
 * @property {string} [note]
 * @property {readonly (Group | Table)[]} parts
 */

/** @typedef {Partial<Field>} More what a field has besides name, label and kind */

/** @param {string} name @param {string} label @param {More} [more] @returns {Field} */
export const text = (name, label, more) => ({ name, label, kind: "text", ...more });

/** @param {string} name @param {string} label @param {More} [more] @returns {Field} */
export const number = (name, label, more) => ({ name, label, kind: "number", ...more });

/** @param {string} name @param {string} label @param {More} [more] @returns {Field} */
export const percent = (name, label, more) => ({ name, label, kind: "percent", ...more });

/** @param {string} name @param {string} label @param {readonly (readonly [string, string])[]} choices @param {More} [more] @returns {Field} */
export const choice = (name, label, choices, more) => ({ name, label, kind: "choice", choices, ...more });

/**
 * A quantity, by the units that a number alone is taken in.
 * @param {string} canonical @param {string} si @param {string} [us]
 */
export const quantity =
  (canonical, si = canonical, us = si) =>
  /** @param {string} name @param {string} label @param {More} [more] @returns {Field} */
  (name, label, more) => ({ name, label, kind: "quantity", canonical, si, us, ...more });

export const volts = quantity("V");
export const amps = quantity("A");
export const ohms = quantity("Ω");
export const megohms = quantity("Ω", "MΩ");
export const millivolts = quantity("V", "mV");
export const kilowatts = quantity("W", "kW");
export const temperature = quantity("°C", "°C", "°F");
export const rise = quantity("K", "K", "Δ°F");
export const torque = quantity("N·m", "N·m", "lbf·in");
export const length = quantity("m", "mm", "in");
