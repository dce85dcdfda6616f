/** Dotted paths into records, own fields only. */

/** @param {unknown} value @returns {value is Record<string, unknown>} */
const isRecord = (value) => typeof value === "object" && value !== null && !Array.isArray(value);

/** @param {string} path @param {string | number} name */
export const joined = (path, name) => (path === "" ? String(name) : `${path}.${name}`);

/** @param {unknown} record @param {string} path @returns {unknown} */
export function valueAt(record, path) {
  let value = record;
  for (const name of path.split(".")) {
    if (!isRecord(value) || !Object.hasOwn(value, name)) return undefined;
    value = value[name];
  }
  return value;
}

/** Sets a value, with records on the way as needed. @param {Record<string, unknown>} record @param {string} path @param {unknown} value */
export function setAt(record, path, value) {
  const names = path.split(".");
  const last = /** @type {string} */ (names.pop());
  let at = record;
  for (const name of names) {
    const inner = at[name];
    const next = isRecord(inner) ? inner : {};
    at[name] = next;
    at = next;
  }
  at[last] = value;
}

/**
 * Paths of a loaded record that did not come into the sheet.
 * @param {unknown} loaded @param {unknown} kept @param {string} [path] @returns {readonly string[]}
 */
export function leftOut(loaded, kept, path = "") {
  if (isRecord(loaded)) {
    const other = isRecord(kept) ? kept : {};
    return Object.keys(loaded).flatMap((name) => {
      const inner = Object.hasOwn(other, name) ? other[name] : undefined;
      return leftOut(loaded[name], inner, joined(path, name));
    });
  }
  if (Array.isArray(loaded)) {
    const other = Array.isArray(kept) ? kept : [];
    return loaded.flatMap((one, i) => leftOut(one, other[i], joined(path, i)));
  }
  return Object.is(loaded, kept) ? [] : [path === "" ? "the whole" : path];
}
