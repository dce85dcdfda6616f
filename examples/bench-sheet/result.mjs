/** The assessment beside the form: the report of the library, put into the page, and whether it still holds. */

/**
 * The report's own page is parsed as a document of its own, where nothing runs, and its parts are taken over.
 * @param {HTMLElement} host @param {string} html
 */
export function showReport(host, html) {
  const report = new DOMParser().parseFromString(html, "text/html");
  const parts = [...report.body.children].flatMap((part) =>
    part.localName === "main" ? [...part.children] : [part],
  );
  host.replaceChildren(...parts.map((part) => document.adoptNode(part)));
}
