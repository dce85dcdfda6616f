/** Pictures and pages at the edges of their room: what just fits, what just does not, and what a refusal says of a chart. */
import type { ModulePlan } from "electroheat/circuit";
import { benchReport, connectionDiagram, curveChart, diagramLayout } from "electroheat/drawing";
import { ohms } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { shortened, textWidth } from "../../src/drawing/text.ts";
import { caught } from "../support/caught.ts";
import { everything, parsed, shownTexts } from "./parsed.ts";
import { FULL } from "./report/assessments.ts";

describe("a bank's heading", () => {
  const star = (id: string) => ({ id, connection: "star", elementResistance: ohms(8) }) as const;
  const headings = (module: ModulePlan): string[] =>
    shownTexts(connectionDiagram({ module })).filter((text) => /^(?:star|delta)/.test(text));
  it.each([
    ["a star alone", { banks: [star("A")] }, ["star, floating"]],
    ["a star on the neutral", { banks: [star("A")], neutral: "connected" }, ["star, neutral"]],
    ["two tied", { banks: [star("A"), star("B")], starPoints: "tied" }, ["star, tied", "star, tied"]],
    [
      "two apart",
      { banks: [star("A"), star("B")], starPoints: "separate" },
      ["star, separate", "star, separate"],
    ],
    [
      "a star and a delta",
      { banks: [star("A"), { ...star("B"), connection: "delta" }] },
      ["star, floating", "delta"],
    ],
  ] as readonly [string, ModulePlan, string[]][])("of %s", (_, module, wanted) => {
    expect(headings(module)).toEqual(wanted);
  });

  it("stands behind its sign, at the sign's height", () => {
    for (const connection of ["star", "delta"] as const) {
      const { symbols, texts } = diagramLayout({ module: { banks: [{ ...star("A"), connection }] } });
      const sign = symbols.find(({ kind }) => kind === connection);
      const name = texts.find(({ text }) => text === "Bank A");
      expect(sign?.about).toBe("A");
      // A capital of bold 13 to 14 is some 10 high: its baseline lies half of that below the middle.
      expect((name?.y as number) - (sign?.y as number)).toBeGreaterThan(2);
      expect((name?.y as number) - (sign?.y as number)).toBeLessThan(8);
      expect(name?.x).toBeGreaterThan(sign?.x as number);
    }
  });
});

describe("a text cut to its room", () => {
  it("takes all of the room there is", () => {
    for (const size of [11, 12, 17]) {
      const room = textWidth("Upper re…", size);
      expect(shortened("Upper rear bank", room, size)).toBe("Upper re…");
      expect(shortened("Upper rear bank", room - 0.001, size)).toBe("Upper r…");
      expect(shortened("Upper re…", room, size)).toBe("Upper re…");
    }
  });
});

describe("the key of a chart", () => {
  const points = [
    { x: 0, y: 0 },
    { x: 1, y: 1 },
  ];
  it.each([320, 559, 560, 720, 1600])("stays in the picture with the longest label, %i wide", (width) => {
    const label = `long ${"label ".repeat(60)}`.trim();
    const svg = curveChart({
      title: "T",
      x: { label: "x" },
      y: { label: "y" },
      series: [{ label, points, marked: true }],
      levels: [{ label, y: 0.5 }],
      width,
    });
    const cut = everything(parsed(svg)).filter(({ name, text }) => name === "text" && text.endsWith("…"));
    expect(cut).toHaveLength(2);
    for (const { text, attributes } of cut) {
      const right = Number(attributes["x"]) + textWidth(text, Number(attributes["font-size"]));
      expect(right).toBeLessThanOrEqual(width - 16 + 0.02);
      // No more is cut off than two letters would need.
      expect(right).toBeGreaterThan(width - 16 - 40);
    }
  });
});

describe("a chart that cannot be drawn", () => {
  const axes = { title: "T", x: { label: "x" }, y: { label: "y" } };
  const point = { x: 1, y: 1 };
  const edge = { x: 1, low: 1, high: 2 };
  it.each([
    [{ series: [{ label: "s", points: [point, { x: "1", y: 1 }] }] }, /^series\.0\.points\.1\.x: "1" is not/],
    [{ series: [{ label: "s", points: [point, point, { x: 1 }] }] }, /^series\.0\.points\.2\.y: missing/],
    [{ series: [{ label: "s", points: [point, null] }] }, /^series\.0\.points\.1: missing/],
    [
      { series: [{ label: "s", band: [edge, { ...edge, x: Number.NaN }] }] },
      /^series\.0\.band\.1\.x: NaN is not/,
    ],
    [
      {
        series: [
          { label: "s", points: [point] },
          { label: "t", band: [{ x: 1, high: 2 }] },
        ],
      },
      /^series\.1\.band\.0\.low: missing/,
    ],
    [{ series: [{ label: "s", band: [{ x: 1, low: 2 }] }] }, /^series\.0\.band\.0\.high: missing/],
    [
      { series: [{ label: "s", band: [{ x: 1, low: 2, high: 1.5 }] }] },
      /^series\.0\.band\.0\.high: 1\.5 is not allowed; expected low, 2, or more$/,
    ],
    [{ series: [{ label: "", points: [point] }] }, /^series\.0\.label: missing; expected text that shows$/],
    [{ series: [{ label: "s" }] }, /^series\.0\.points: missing; expected points or a band$/],
    [{ series: [] }, /^series: missing; expected at least one curve$/],
    [
      { series: [{ label: "s", points: [point] }], levels: [{ label: "l", y: Number.NaN }] },
      /^levels\.0\.y: NaN is not allowed/,
    ],
    [
      { series: [{ label: "s", points: [point] }], levels: [{ label: " ", y: 1 }] },
      /^levels\.0\.label: missing; expected text that shows$/,
    ],
    [{ series: [{ label: "s", points: [point] }], note: 5 }, /^note: 5 is not allowed; expected text$/],
    [
      { series: [{ label: "s", points: [point] }], y: { label: "y", unit: 5 } },
      /^y\.unit: 5 is not allowed; expected text$/,
    ],
  ] as readonly [object, RegExp][])("%j", (more, message) => {
    expect(caught(() => curveChart({ ...axes, ...more } as never)).message).toMatch(message);
  });

  it("holds what an axis is asked to hold, at either end", () => {
    const numbers = (y: object): readonly string[] =>
      shownTexts(
        curveChart({
          ...axes,
          y: { label: "y", ...y },
          series: [{ label: "s", points: [point, { x: 2, y: 3 }] }],
        }),
      );
    expect(numbers({})).not.toContain("20");
    expect(numbers({ to: 20 })).toContain("20");
    expect(numbers({ from: -20 })).toContain("−20");
    expect(numbers({ from: 0 })).toContain("0");
  });
});

describe("a page", () => {
  const tables = (count: number, label: string): readonly string[] => {
    const found = FULL.asFound as NonNullable<typeof FULL.asFound>;
    const figure = found.insulation[0] as NonNullable<(typeof found.insulation)[number]>;
    const insulation = Array.from({ length: count }, () => ({ ...figure, label }));
    const html = benchReport({ assessment: { ...FULL, asFound: { ...found, insulation } }, format: "html" });
    return [...html.matchAll(/<table([^>]*)><caption>Insulation to the frame, as found</g)].map(
      ([, look]) => look as string,
    );
  };
  it("keeps a table of twelve rows in one piece, and gives long names room", () => {
    expect(tables(12, "L1")).toEqual([' class="short"']);
    expect(tables(13, "L1")).toEqual([""]);
    expect(tables(12, "L1 to frame.")).toEqual([' class="short"']);
    expect(tables(13, "L1 to frames.")).toEqual([' class="wordy"']);
    expect(tables(1, "L1 to frames.")).toEqual([' class="short wordy"']);
  });

  it("says no rule of joints that have none", () => {
    const found = FULL.asFound as NonNullable<typeof FULL.asFound>;
    const text = (rule: string): string =>
      benchReport({
        assessment: {
          ...FULL,
          asFound: { ...found, joints: found.joints.map((one) => ({ ...one, rule, rise: null })) },
        },
        format: "markdown",
      });
    expect(text("")).not.toContain("Rule:");
    expect(text("twice the best").split("Rule: twice the best")).toHaveLength(2);
  });

  it("has phasors of the nominal supply where none was measured", () => {
    const branches = (FULL.asLeft as NonNullable<typeof FULL.asLeft>).resistances.branches.map((one, i) =>
      i === 0 ? { ...one, finding: "open" as const, resistance: "open" as const } : one,
    );
    const left = FULL.asFound as NonNullable<typeof FULL.asFound>;
    const shown = (supply: unknown, lineVoltage: number | null): string =>
      benchReport({
        assessment: {
          ...FULL,
          module: { ...FULL.module, supply: supply as never, lineVoltage: lineVoltage as never },
          asFound: { ...left, resistances: { ...left.resistances, branches } },
        },
        format: "markdown",
      }).replaceAll("\u00a0", " ");
    expect(shown(null, 400)).toContain("L1 to L2 400.0 V at 30.0°");
    expect(shown(null, null)).not.toContain("Phasors, as found");
    expect(shown({ v12: 478, v23: 481, v31: 479 }, 400)).toContain("L1 to L2 478.0 V");
  });
});
