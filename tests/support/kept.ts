/** Texts that people have read or looked at, in files beside the tests: held byte for byte, and written anew where that is asked for. */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect } from "vitest";

/**
 * A folder of such texts.
 * @param folder - with a slash at its end
 * @param variable - of the environment; `write` in it writes the texts before they are held
 */
export function keptIn(
  folder: URL,
  variable: string,
): { readonly hold: (name: string, text: string) => void; readonly names: () => readonly string[] } {
  const place = fileURLToPath(folder);
  return {
    hold: (name, text) => {
      if (process.env[variable] === "write") {
        mkdirSync(place, { recursive: true });
        writeFileSync(`${place}${name}`, text);
      }
      expect(text).toBe(readFileSync(`${place}${name}`, "utf8"));
    },
    names: () => readdirSync(place).sort(),
  };
}
