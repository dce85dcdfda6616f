/** What the library refuses: each issue beside the field of its path, and all of them listed on top with links. */
import { showMessage } from "./control.mjs";
import { element } from "./dom.mjs";

/** @import { Issue } from "electroheat" */
/** @import { Place } from "./form.mjs" */

/** The place of a path, or of the nearest one above it. @param {ReadonlyMap<string, Place>} places @param {string} path */
function placeOf(places, path) {
  const names = path.split(".");
  for (let n = names.length; n > 0; n -= 1) {
    const found = places.get(names.slice(0, n).join("."));
    if (found !== undefined) return found;
  }
  return null;
}

/** The sentence without the path, which the field's place already says. @param {Issue} issue */
function sentence({ path, message }) {
  const said = message.startsWith(`${path}: `) ? message.slice(path.length + 2) : message;
  // In the sheet every quantity is text with its unit, and a number alone gets one.
  const brief = said.replace(/, as a number in \S+ or text with its unit/, "");
  return brief.charAt(0).toUpperCase() + brief.slice(1);
}

/** @param {Place} place */
function goTo({ control, whole }) {
  for (let at = whole.parentElement; at !== null; at = at.parentElement) {
    if (at instanceof HTMLDetailsElement) at.open = true;
  }
  const first = control?.input ?? whole.querySelector("input, select, button");
  if (first instanceof HTMLElement) first.focus();
  whole.scrollIntoView({ block: "nearest" });
}

/** @param {HTMLElement} summary list on top, hidden while there is nothing wrong */
export function makeProblems(summary) {
  /** @type {Set<Place>} */
  let shown = new Set();

  /** @param {Place} place @param {string} text */
  function show(place, text) {
    if (place.control !== null) return showMessage(place.control, text);
    place.message.textContent = text;
    place.message.hidden = text === "";
  }

  return {
    /**
     * @param {readonly Issue[]} issues @param {ReadonlyMap<string, Place>} places
     * @returns {string} the whole in a sentence, to be said
     */
    show(issues, places) {
      /** @type {Map<Place, string[]>} */
      const byPlace = new Map();
      const items = issues.map((issue) => {
        const place = placeOf(places, issue.path);
        const ratio = place?.control?.field.kind === "percent" ? ". Counted as a ratio: 0.05 is 5 %" : "";
        const said = `${sentence(issue)}${ratio}`;
        if (place === null) return element("li", {}, issue.message);
        byPlace.set(place, [...(byPlace.get(place) ?? []), said]);
        const link = element("a", { href: `#${place.control?.input.id ?? place.message.id}` }, place.name);
        link.addEventListener("click", (event) => {
          event.preventDefault();
          goTo(place);
        });
        return element("li", {}, link, `: ${said}.`);
      });
      for (const place of shown) if (!byPlace.has(place)) show(place, "");
      for (const [place, said] of byPlace) show(place, said.join(" "));
      shown = new Set(byPlace.keys());
      for (const folded of document.querySelectorAll("details")) {
        folded.classList.toggle("wrong", folded.querySelector(".message:not([hidden])") !== null);
      }
      const many = issues.length > 1;
      const title = many ? `${issues.length} entries cannot be taken` : "One entry cannot be taken";
      summary.hidden = items.length === 0;
      summary.replaceChildren(
        ...(items.length === 0 ? [] : [element("h2", {}, title), element("ul", {}, ...items)]),
      );
      return items.length === 0 ? "" : `${title}. ${items[0]?.textContent ?? ""}`;
    },
  };
}
