/** The assessment beside the form: the report of the library, put into the page, with its last diagram on top. */

/** Attributes that name an id of the same picture. */
const NAMING = ["id", "aria-labelledby", "aria-describedby"];

/**
 * A copy of a figure whose ids are its own.
 * @param {Element} figure @returns {Element}
 */
function copyOf(figure) {
  const copy = /** @type {Element} */ (figure.cloneNode(true));
  for (const node of [copy, ...copy.querySelectorAll("*")]) {
    for (const name of NAMING) {
      const ids = node.getAttribute(name);
      if (ids !== null) node.setAttribute(name, ids.replace(/[^\s]+/g, "top-$&"));
    }
  }
  return copy;
}

/**
 * The report's own page is parsed as a document of its own, where nothing runs, and its parts are taken over.
 * @param {{ readonly report: HTMLElement, readonly picture: HTMLElement }} hosts
 * @param {string} html
 * @param {Element | null} planned the module as drawn, where the report has no diagram
 */
export function showReport(hosts, html, planned) {
  // Its style sheet is in the page already, and the policy of the page would refuse a second one.
  const bare = html.replace(/<style>[^<]*<\/style>/, "");
  const page = new DOMParser().parseFromString(bare, "text/html");
  const parts = [...page.body.children].flatMap((part) =>
    part.localName === "main" ? [...part.children] : [part],
  );
  const diagram = [...page.querySelectorAll("#connections figure")].at(-1);
  const top = diagram === undefined ? planned : document.adoptNode(copyOf(diagram));
  hosts.picture.replaceChildren(...(top === null ? [] : [top]));
  hosts.report.replaceChildren(...parts.map((part) => document.adoptNode(part)));
}
