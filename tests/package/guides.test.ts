/**
 * The guides, followed word for word against the installed package: the ts blocks of a guide are one program, type-checked
 * and run, and what a block prints is what the text block after it shows.
 */
import { execFileSync } from "node:child_process";
import { readdirSync } from "node:fs";
import { dirname, join } from "node:path";
import { transformSync } from "esbuild";
import { describe, expect, it } from "vitest";
import { readText, root } from "../support/house.ts";
import { resolutions, runConsumer, typeErrors, writeConsumer } from "./consume.ts";

/** Beginning of each command that docs/following.md gives, and the program it stands for here. */
const PROGRAMS: Readonly<Record<string, readonly string[]>> = {
  "npx tsc": [join(root, "node_modules/.bin/tsc")],
  node: [process.execPath],
};

interface Step {
  readonly code: string;
  /** What the guide says it prints; null where no text block follows. */
  readonly prints: string | null;
}

/** The ts blocks of a page with the text block that follows each before the next ts block. */
function steps(page: string): readonly Step[] {
  const blocks = [...page.matchAll(/^```(\w*)[^\n]*\n([\s\S]*?)^```[ \t]*$/gm)].map((hit) => ({
    language: hit[1] as string,
    text: hit[2] as string,
  }));
  return blocks.flatMap(({ language, text }, i) => {
    if (language !== "ts") return [];
    const next = blocks[i + 1];
    return [{ code: text, prints: next?.language === "text" ? next.text.trimEnd() : null }];
  });
}

const MARK = "\u0001 end of block";
const names = readdirSync(join(root, "docs/guides"))
  .filter((name) => name.endsWith(".md"))
  .sort();

describe.each(names)("%s", (name) => {
  const page = readText(`docs/guides/${name}`);
  const all = steps(page);
  const stem = `guide-${name.replace(/\.md$/, "")}`;

  it("holds code, and shows what every printing block prints", () => {
    expect(all.length).toBeGreaterThan(0);
    for (const { code, prints } of all)
      expect([code, prints !== null]).toEqual([code, code.includes("console.log(")]);
  });

  it("takes less than ten minutes: at most 2,000 words of prose and 150 lines of code", () => {
    const prose = page.replace(/^```[\s\S]*?^```[ \t]*$/gm, "");
    expect(prose.split(/\s+/).length).toBeLessThanOrEqual(2000);
    expect(all.reduce((sum, { code }) => sum + code.trimEnd().split("\n").length, 0)).toBeLessThanOrEqual(
      150,
    );
  });

  it("prints what it shows", () => {
    const program = all.map(({ code }) => `${code}\nconsole.log(${JSON.stringify(MARK)});\n`).join("");
    const script = transformSync(program, { loader: "ts", format: "esm", target: "es2022" }).code;
    const printed = runConsumer(`${stem}.mjs`, script)
      .split(MARK)
      .slice(0, -1)
      .map((part) => part.replace(/^\n/, "").trimEnd());
    expect(printed).toEqual(all.map(({ prints }) => prints ?? ""));
  });

  it("type-checks as one program", () => {
    writeConsumer(`${stem}.mts`, all.map(({ code }) => code).join("\n"));
    expect(typeErrors([`${stem}.mts`], resolutions["nodenext"] ?? {})).toEqual([]);
  });
});

describe("docs/following.md", () => {
  it("is where every guide sends those who want to follow it", () => {
    for (const name of names) expect(readText(`docs/guides/${name}`), name).toContain("(../following.md)");
  });

  it("gives two commands that check and run a pasted guide, and print what its page shows", () => {
    const [, block = ""] =
      /## For each guide[\s\S]*?```sh\n([\s\S]*?)```/.exec(readText("docs/following.md")) ?? [];
    const all = steps(readText("docs/guides/burnt-module.md"));
    const pasted = writeConsumer("following/guide.mts", all.map(({ code }) => code).join("\n"));
    const said = block
      .trim()
      .split("\n")
      .map((line) => {
        const [start, program = []] = Object.entries(PROGRAMS).find(([name]) =>
          line.startsWith(`${name} `),
        ) ?? [""];
        const command = [...program, ...line.slice(start.length + 1).split(" ")];
        return execFileSync(command[0] as string, command.slice(1), {
          cwd: dirname(pasted),
          encoding: "utf8",
        });
      });
    expect(said).toEqual(["", `${all.map(({ prints }) => prints).join("\n")}\n`]);
  });
});
