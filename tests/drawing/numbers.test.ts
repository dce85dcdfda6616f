/** What the charts and the phasor diagram say, against values from elsewhere. */
import { balancedSupply, type ModulePlan, withoutLines } from "electroheat/circuit";
import { curveChart, phasorDiagram } from "electroheat/drawing";
import { ohms, volts } from "electroheat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { linearScale, logScale } from "../../src/drawing/ticks.ts";
import { everything, parsed, pictureProblems, shownTexts } from "./parsed.ts";
import { scenes } from "./scenes.ts";

const supply = balancedSupply({ lineVoltage: volts(480) });
const star: ModulePlan = { banks: [{ id: "A", connection: "star", elementResistance: ohms(7.68) }] };
const plain = (svg: string): string[] => shownTexts(svg).map((text) => text.replace("\u00a0", " "));

describe("phasor diagram", () => {
  // Source: a star without neutral and one branch open. The star point lies midway between the two lines that are left, V/√12 from
  // the neutral; the survivors are in series across the line voltage, V/2 each; the gap has √3/2·V. Elementary geometry.
  it("one branch of a star open: displacement V/√12, survivors V/2, gap √3/2·V", () => {
    const texts = plain(phasorDiagram({ module: { ...star, elements: { "A-L1": "open" } }, supply }));
    expect(texts).toContain("138.6 V");
    expect(texts.filter((text) => text === "240.0 V")).toHaveLength(2);
    expect(texts).toContain("415.7 V");
    expect(texts).toContain("A-L1, open");
  });

  it("sound star: V/√3 on every branch, no displacement and no angle for it", () => {
    const texts = plain(phasorDiagram({ module: star, supply }));
    expect(texts.filter((text) => text === "277.1 V")).toHaveLength(3);
    expect(texts).toContain("0.0 V");
    expect(texts).toContain("N = S");
  });

  it("lost line: its module side hangs on the star point, and the picture says which line is lost", () => {
    const texts = plain(phasorDiagram({ module: star, supply: withoutLines({ supply, lines: ["L3"] }) }));
    expect(texts).toContain("L3 lost");
    expect(texts).toContain("S = L3");
    expect(texts.filter((text) => text === "240.0 V").length).toBe(4);
  });

  it("a line side that nothing ties down is said to float", () => {
    const plan: ModulePlan = { ...star, elements: { "A-L3": "open" } };
    const svg = phasorDiagram({ module: plan, supply: withoutLines({ supply, lines: ["L3"] }) });
    expect(shownTexts(svg)).toContain("floats");
    expect(pictureProblems(svg)).toEqual([]);
  });

  it("labels of the plot lie inside the picture and not on each other", () => {
    for (const name of ["phasors", "lost line", "unbalanced"]) {
      for (const width of [320, 760]) expect(textClashes(scenes[name]?.({ width }) ?? "")).toEqual([]);
    }
  });
});

/** Texts that overlap, by 0.57 em a character for labels and 0.48 for prose, as measured in a wide face. */
function textClashes(svg: string): string[] {
  const root = parsed(svg);
  const boxes = everything(root)
    .filter(({ name }) => name === "text")
    .map(({ text, attributes }) => {
      const [x, y, size] = ["x", "y", "font-size"].map((key) => Number(attributes[key])) as [
        number,
        number,
        number,
      ];
      const wide = (text.length > 24 ? 0.48 : 0.57) * size * text.length;
      const anchor = attributes["text-anchor"];
      const left = anchor === "middle" ? x - wide / 2 : anchor === "end" ? x - wide : x;
      return { text, left, right: left + wide, top: y - 0.75 * size, bottom: y + 0.2 * size };
    });
  const width = Number(root.attributes["width"]);
  const found = boxes
    .filter(({ left, right }) => left < 0 || right > width)
    .map(({ text }) => `${text} leaves the picture`);
  boxes.forEach((a, i) => {
    for (const b of boxes.slice(i + 1)) {
      if (a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
        found.push(`${a.text} on ${b.text}`);
    }
  });
  return found;
}

describe("axes", () => {
  const finite = fc.double({ min: -1e12, max: 1e12, noNaN: true, noDefaultInfinity: true });

  it("linear: ends at ticks, holds both values, ticks are evenly spaced by 1, 2 or 5 times a power of ten", () => {
    fc.assert(
      fc.property(finite, finite, fc.integer({ min: 2, max: 20 }), (a, b, most) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        fc.pre(high - low > 1e-6 * Math.max(Math.abs(low), Math.abs(high)) || high === low);
        const { ticks, share } = linearScale(low, high, most);
        expect(share(low)).toBeGreaterThanOrEqual(-1e-6);
        expect(share(high)).toBeLessThanOrEqual(1 + 1e-6);
        expect(ticks.length).toBeGreaterThanOrEqual(2);
        expect(ticks.length).toBeLessThanOrEqual(most + 3);
        const step =
          (ticks.at(-1)?.value ?? 0) / (ticks.length - 1) - (ticks[0]?.value ?? 0) / (ticks.length - 1);
        const lead = Number(
          step.toPrecision(6).replace(/e.*/, "").replace(".", "").replace(/^0+/, "").replace(/0+$/, ""),
        );
        expect([1, 2, 5]).toContain(lead);
      }),
    );
  });

  it("logarithmic: equal ratios take equal lengths, and both values are held", () => {
    const positive = fc.double({ min: 1e-9, max: 1e9, noNaN: true });
    fc.assert(
      fc.property(positive, positive, (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const { ticks, share } = logScale(low, high, 6);
        expect(share(low)).toBeGreaterThanOrEqual(-1e-9);
        expect(share(high)).toBeLessThanOrEqual(1 + 1e-9);
        expect(ticks.length).toBeGreaterThanOrEqual(1);
        const middle = share(Math.sqrt(low * high));
        expect(middle).toBeCloseTo((share(low) + share(high)) / 2, 6);
      }),
    );
  });

  it("numbers are short: no 0.30000000000000004", () => {
    expect(linearScale(0, 0.7, 7).ticks.map(({ text }) => text)).toEqual([
      "0",
      "0.1",
      "0.2",
      "0.3",
      "0.4",
      "0.5",
      "0.6",
      "0.7",
    ]);
    expect(linearScale(-3, 3, 3).ticks.map(({ text }) => text)).toEqual(["−4", "−2", "0", "2", "4"]);
    expect(logScale(0.08, 900, 6).ticks.map(({ text }) => text)).toEqual([
      "0.01",
      "0.1",
      "1",
      "10",
      "100",
      "1000",
    ]);
  });
});

describe("curves", () => {
  it("labels lie inside the picture and not on each other, at any width and number of curves", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 280, max: 1600 }),
        fc.boolean(),
        (count, width, log) => {
          const series = Array.from({ length: count }, (_, i) => ({
            label: `curve ${i}`,
            points: [1, 2, 3].map((x) => ({ x, y: 1 + i * 0.01 * x })),
          }));
          const y = { label: "Value", ...(log ? { scale: "log" as const } : {}) };
          const svg = curveChart({ title: "Many", x: { label: "x" }, y, series, width });
          expect(textClashes(svg)).toEqual([]);
          expect(pictureProblems(svg)).toEqual([]);
        },
      ),
      { numRuns: 60 },
    );
    for (const width of [320, 760]) {
      for (const name of ["temperature factor", "heat-up", "joint rise", "preload", "logarithmic"]) {
        expect(textClashes(scenes[name]?.({ width }) ?? ""), name).toEqual([]);
      }
    }
  });

  it("would notice labels on each other", () => {
    expect(
      textClashes(
        `<svg width="100"><text x="5" y="20" font-size="12">one</text><text x="9" y="22" font-size="12">two</text></svg>`,
      ),
    ).toHaveLength(1);
  });

  it("points come to lie where the axes say: 45 degrees for y = x on equal axes", () => {
    const points = [
      { x: 0, y: 0 },
      { x: 5, y: 5 },
      { x: 10, y: 10 },
    ];
    const svg = curveChart({
      title: "T",
      x: { label: "x" },
      y: { label: "y" },
      series: [{ label: "s", points }],
    });
    const line = everything(parsed(svg)).find(({ attributes }) => attributes["stroke-width"] === "2.2");
    const [a, b, c] = (line?.attributes["d"] ?? "")
      .split(/[ML]/)
      .filter((p) => p !== "")
      .map((p) => p.split(" ").map(Number));
    const grid =
      everything(parsed(svg)).find(({ attributes }) => attributes["stroke-width"] === "1.5")?.attributes[
        "d"
      ] ?? "";
    const [, left, top, , bottom, right] =
      /M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)L([\d.]+)/.exec(grid)?.map(Number) ?? [];
    expect(a).toEqual([left, bottom]);
    expect(c).toEqual([right, top]);
    expect(b?.[0]).toBeCloseTo(((left ?? 0) + (right ?? 0)) / 2, 1);
    expect(b?.[1]).toBeCloseTo(((top ?? 0) + (bottom ?? 0)) / 2, 1);
  });

  it("no two of six curves share a dash or a marker", () => {
    const series = Array.from({ length: 6 }, (_, i) => ({
      label: `s${i}`,
      marked: true,
      points: [
        { x: 0, y: i },
        { x: 1, y: i },
      ],
    }));
    const svg = curveChart({ title: "T", x: { label: "x" }, y: { label: "y" }, series });
    const lines = everything(parsed(svg)).filter(
      ({ name, attributes }) => name === "path" && attributes["stroke-width"] === "2.2",
    );
    expect(new Set(lines.map(({ attributes }) => attributes["stroke-dasharray"] ?? "none")).size).toBe(6);
  });

  it("heat-up says when each power arrives and that one never does", () => {
    // 200 kJ/K, 40 W/K, 12 kW from 20 to 200 °C: τ·ln(1/(1 − 7.2/12)) = 5000 s·0.9163 = 4581 s = 76 min. First-order closed form.
    const texts = shownTexts(scenes["heat-up"]?.({}) ?? "");
    expect(texts).toContain("healthy: 1.3 h");
    expect(texts).toContain("one element open: never");
    expect(texts).toContain("set point 200 °C");
  });
});
