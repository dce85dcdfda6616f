/** Questions put to an open page, as text: the tests are compiled without the types of a browser. */

/** Elements and attributes that user text must never make. */
export const intruders = `[
  ...document.querySelectorAll("img, iframe, object, embed"),
  ...[...document.scripts].slice(1),
  ...[...document.querySelectorAll("*")].filter((one) => [...one.attributes].some(({ name }) => name.startsWith("on"))),
].map((one) => one.outerHTML.slice(0, 100))`;

/** Controls that show no ring of at least 2 px when they have the focus from the keyboard. */
export const focusRing = `[...document.querySelectorAll("button, input, select, summary, a")]
  .filter((one) => one.checkVisibility() && !one.disabled)
  .filter((one) => {
    one.focus({ focusVisible: true });
    const { outlineStyle, outlineWidth } = getComputedStyle(one);
    return document.activeElement !== one || outlineStyle === "none" || parseFloat(outlineWidth) < 2;
  })
  .map((one) => one.outerHTML.slice(0, 100))`;

/** What a report's own page would put on paper: the same text, laid out under the same rules. */
export const reportText = (html: string): string => `(() => {
  const page = new DOMParser().parseFromString(${JSON.stringify(html)}.replace(/<style>[^<]*<.style>/, ""), "text/html");
  const report = document.getElementById("report");
  const kept = [...report.childNodes];
  report.replaceChildren(...[...page.body.children].flatMap((one) => one.localName === "main" ? [...one.children] : [one]));
  const text = report.innerText;
  report.replaceChildren(...kept);
  return text;
})()`;

/**
 * Every visible piece of text with less contrast than 4.5:1 against what lies behind it (relative luminance by WCAG 2.2).
 * Texts in pictures have their own test; they lie on their picture's background.
 */
export const contrasts = `(() => {
  const parts = (colour) => (colour.match(/[\\d.]+/g) ?? []).map(Number);
  const luminance = ([r, g, b]) => {
    const [x, y, z] = [r, g, b].map((c) => c / 255).map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
    return 0.2126 * x + 0.7152 * y + 0.0722 * z;
  };
  const behind = (one) => {
    for (let at = one; at !== null; at = at.parentElement) {
      const colour = parts(getComputedStyle(at).backgroundColor);
      if (colour.length === 3 || colour[3] === 1) return colour;
    }
    return [255, 255, 255];
  };
  const shown = [...document.querySelectorAll("body *")].filter((one) =>
    one.closest("svg") === null && one.checkVisibility() &&
    (one.matches("input, select") || [...one.childNodes].some((node) => node.nodeType === 3 && node.data.trim() !== "")));
  const poor = shown.flatMap((one) => {
    const [a, b] = [luminance(parts(getComputedStyle(one).color)), luminance(behind(one))];
    const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    return ratio < 4.5 && !one.disabled ? [one.outerHTML.slice(0, 80) + " " + ratio.toFixed(2)] : [];
  });
  return { checked: shown.length, poor };
})()`;
