/** Elements made from plain data: text goes in as text, never as markup. */

let made = 0;

/** An id that no other element of the page has. */
export const freshId = () => {
  made += 1;
  return `sheet-${made}`;
};

/**
 * @template {keyof HTMLElementTagNameMap} K
 * @param {K} tag
 * @param {Readonly<Record<string, string | boolean | undefined>>} [attributes] `true` sets a bare attribute, `false` and `undefined` none
 * @param {...(Node | string)} children
 * @returns {HTMLElementTagNameMap[K]}
 */
export function element(tag, attributes = {}, ...children) {
  const node = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value !== undefined && value !== false) node.setAttribute(name, value === true ? "" : value);
  }
  node.append(...children);
  return node;
}

/**
 * An element of the page that must be there.
 * @template {HTMLElement} T
 * @param {string} id @param {new () => T} kind @returns {T}
 */
export function byId(id, kind) {
  const found = document.getElementById(id);
  if (!(found instanceof kind)) throw new Error(`the page has no ${id}`);
  return found;
}
