import { cpSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { describe, expect, it } from "vitest";
import { compile, inFolder, layOut, markedLines, NOT_ASSIGNABLE, root } from "./compile.ts";

type Room = typeof import("electroheat/quantity");

const copies = ["copy-one", "copy-two"] as const;

function layOutCopies(folder: string): void {
  for (const copy of copies) {
    cpSync(join(root, "src", "quantity"), join(folder, copy, "quantity"), { recursive: true });
  }
}

describe("two copies of the library side by side", () => {
  it("take each other's quantities, and still tell units and kinds apart", () =>
    inFolder((folder) => {
      layOutCopies(folder);
      const paths = Object.fromEntries(
        copies.map((copy) => [`${copy}/*`, [join(folder, copy, "*", "index.ts")]]),
      );
      const marked = markedLines("interop.ts");
      const found = compile(layOut("interop.ts", folder), paths);
      expect(marked).toHaveLength(3);
      expect(found.map(({ line }) => line)).toEqual(marked.map(({ line }) => line));
      for (const { code } of found) expect(NOT_ASSIGNABLE).toContain(code);
    }));

  it("recognise each other's errors, which are of two classes", () =>
    inFolder(async (folder) => {
      layOutCopies(folder);
      const load = (copy: string): Promise<Room> =>
        import(/* @vite-ignore */ pathToFileURL(join(folder, copy, "quantity", "index.ts")).href);
      const one = await load("copy-one");
      const two = await load("copy-two");
      expect(one.ElectroheatError).not.toBe(two.ElectroheatError);
      let caught: unknown;
      try {
        one.ohms(Number.NaN);
      } catch (error) {
        caught = error;
      }
      expect(caught instanceof two.ElectroheatError).toBe(false);
      expect(two.isElectroheatError(caught)).toBe(true);
      expect(two.formatQuantity(one.milliohms(4.7), { unit: "Ω", as: "mΩ" })).toBe("4.7 mΩ");
    }));
});
