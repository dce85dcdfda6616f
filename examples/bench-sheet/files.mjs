/** Records from and into files of the person's own; nothing leaves the machine. */
import { element } from "./dom.mjs";

/** No record by hand is as long; a longer file is something else. */
const LONGEST = 5_000_000;

/**
 * @param {File} file
 * @returns {Promise<{ readonly record: unknown } | { readonly problem: string }>}
 */
export async function readRecord(file) {
  if (file.size > LONGEST) return { problem: `${file.name} is longer than any record (5 MB at most).` };
  const text = await file.text();
  try {
    return { record: JSON.parse(text) };
  } catch (error) {
    return { problem: `${file.name} is no JSON: ${error instanceof Error ? error.message : String(error)}` };
  }
}

/** @param {string} title @returns {string} a name that every file system takes */
const fileName = (title) => {
  const words =
    title
      .normalize("NFKD")
      .toLowerCase()
      .match(/[a-z0-9]+/g) ?? [];
  return `${words.join("-").slice(0, 60) || "bench-record"}.json`;
};

/** @param {Record<string, unknown>} record @returns {string} the file's name */
export function saveRecord(record) {
  const title = record["title"];
  const name = fileName(typeof title === "string" ? title : "");
  const blob = new Blob([`${JSON.stringify(record, null, 2)}\n`], { type: "application/json" });
  const href = URL.createObjectURL(blob);
  const link = element("a", { href, download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(href), 60_000);
  return name;
}
