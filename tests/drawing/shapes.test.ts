/**
 * Shapes and places: symbols are the same on both sides of their middle and stay in their place, what is at fault shows it in red besides;
 * charts put every point, band, level and tick where their own axes say, by straight interpolation between two ticks of the picture.
 */
import { curveChart } from "electroheat/drawing";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { marker, seriesLook } from "../../src/drawing/curveLook.ts";
import { drawMark, drawSymbol } from "../../src/drawing/diagramSymbols.ts";
import type { DiagramState, DiagramSymbol } from "../../src/drawing/diagramTypes.ts";
import { textWidth } from "../../src/drawing/text.ts";
import { paletteOf } from "../../src/drawing/theme.ts";
import { type Element, everything, parsed } from "./parsed.ts";

type Spot = readonly [number, number];
const palette = paletteOf("light");

/** Corners of everything drawn: of paths their numbers in pairs, of circles and rectangles their four sides. */
function spots(markup: string): Spot[] {
  return everything(parsed(`<g>${markup}</g>`)).flatMap(({ name, attributes: a }): Spot[] => {
    const of = (key: string) => Number(a[key]);
    if (name === "circle") {
      const [x, y, r] = [of("cx"), of("cy"), of("r")];
      return [
        [x - r, y],
        [x + r, y],
        [x, y - r],
        [x, y + r],
      ];
    }
    if (name === "rect") {
      const [x, y, width, height] = [of("x"), of("y"), of("width"), of("height")];
      return [
        [x, y],
        [x + width, y],
        [x, y + height],
        [x + width, y + height],
      ];
    }
    const numbers = [...(a["d"] ?? "").matchAll(/-?[\d.]+/g)].map(([one]) => Number(one));
    return numbers.flatMap((x, i): Spot[] => (i % 2 === 0 ? [[x, numbers[i + 1] as number]] : []));
  });
}

const key = ([x, y]: Spot) => `${Math.round(100 * x) + 0} ${Math.round(100 * y) + 0}`;
const all = (list: readonly Spot[]) => [...new Set(list.map(key))].sort();
const mirrored = (list: readonly Spot[], x: number) => all(list.map(([a, b]): Spot => [2 * x - a, b]));
const upsideDown = (list: readonly Spot[], y: number) => all(list.map(([a, b]): Spot => [a, 2 * y - b]));

const KINDS = ["element", "joint", "jumper bar", "conductor", "line break"] as const;
const STATES = [null, "within", "outside", "undecided", "open", "shorted", "hot joint", "lost"] as const;
const symbol = (kind: DiagramSymbol["kind"], state: DiagramState | null, half: Spot): DiagramSymbol => {
  const [x, y] = [100, 60];
  return {
    ...{ kind, state, x, y, about: "A" },
    box: { x: x - half[0], y: y - half[1], width: 2 * half[0], height: 2 * half[1] },
    pins: [-1, 1].map((side) => ({ net: `${side}`, x: x + side * half[0], y })),
  } as DiagramSymbol;
};

describe("symbols in a line", () => {
  it.each(KINDS.flatMap((kind) => STATES.map((state) => [kind, state] as const)))("%s, %s", (kind, state) => {
    const half: Spot =
      kind === "element" ? [23, 7.5] : kind === "joint" ? [7, 7] : kind === "line break" ? [10, 7] : [20, 6];
    const markup = drawSymbol(symbol(kind, state, half), palette);
    const drawn = spots(markup);
    expect(mirrored(drawn, 100)).toEqual(all(drawn));
    const bar = kind === "jumper bar" || kind === "conductor";
    // The short across a bar is drawn above it.
    if (!(bar && state === "shorted")) expect(upsideDown(drawn, 60)).toEqual(all(drawn));
    else for (const [, y] of drawn) expect(y).toBeLessThanOrEqual(66);
    // From end to end, and no farther than a cross over it.
    const xs = drawn.map(([x]) => x);
    const reach = Math.max(
      half[0],
      state === "shorted" || (state === "open" && kind === "joint") ? 9 : state === "open" ? 8 : 0,
    );
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([100 - reach, 100 + reach]);
    for (const [, y] of drawn) expect(Math.abs(y - 60)).toBeLessThanOrEqual(8);
    // Red is what is broken, and nothing else.
    const hot = state === "hot joint" && kind !== "element";
    const red = state === "open" || state === "shorted" || hot;
    if (kind !== "line break") expect(markup.includes(palette.bad)).toBe(red);
    else expect(markup).toContain(palette.bad);
  });

  it("open has nothing on the axis in the middle but its cross, and ends that reach in alike", () => {
    for (const kind of KINDS) {
      const markup = drawSymbol(symbol(kind, "open", [23, 7.5]), palette);
      const [crossed, ...more] = everything(parsed(`<g>${markup}</g>`)).filter(
        ({ attributes }) => attributes["stroke"] === palette.bad,
      );
      expect(more).toEqual([]);
      expect(crossed?.attributes["stroke-width"]).toBe("2.6");
      expect(all(spots(`<path d="${crossed?.attributes["d"]}"/>`))).toEqual(
        all([
          [92, 52],
          [108, 68],
          [92, 68],
          [108, 52],
        ]),
      );
    }
  });
});

describe("other symbols", () => {
  it("are the same on both sides, each with its point where it belongs", () => {
    const drawn = (kind: DiagramSymbol["kind"]) => spots(drawSymbol(symbol(kind, null, [11, 11]), palette));
    for (const kind of ["terminal", "protective earth", "star", "delta"] as const)
      expect(mirrored(drawn(kind), 100), kind).toEqual(all(drawn(kind)));
    expect(upsideDown(drawn("terminal"), 60)).toEqual(all(drawn("terminal")));
    // A star has one arm down and two up, a delta its tip above its base; earth has bars that shorten downwards.
    const arms = drawn("star").filter(([x, y]) => x !== 100 || y !== 60);
    expect(arms.map(([, y]) => Math.sign(y - 60)).sort()).toEqual([-1, -1, 1]);
    const lengths = arms.map(([x, y]) => Math.hypot(x - 100, y - 60));
    expect(Math.max(...lengths) / Math.min(...lengths)).toBeLessThan(1.25);
    const [tip, ...base] = [...drawn("delta")].sort((a, b) => a[1] - b[1]);
    expect([tip?.[0], new Set(base.map(([, y]) => y)).size]).toEqual([100, 1]);
    expect(tip?.[1]).toBeLessThan(60);
    expect(base[0]?.[1]).toBeGreaterThan(60);
    const earth = everything(
      parsed(`<g>${drawSymbol(symbol("protective earth", null, [11, 11]), palette)}</g>`),
    );
    const path = earth.find(({ name }) => name === "path")?.attributes["d"] ?? "";
    const [stem, ...bars] = path
      .split("M")
      .slice(1)
      .map((one) => spots(`<path d="${one}"/>`));
    expect(bars).toHaveLength(3);
    const widths = bars.map((one) => Math.abs((one[0]?.[0] as number) - (one[1]?.[0] as number)));
    const heights = bars.map((one) => one[0]?.[1] as number);
    expect([...widths].sort((a, b) => b - a)).toEqual(widths);
    expect([...heights].sort((a, b) => a - b)).toEqual(heights);
    expect(new Set(widths).size + new Set(heights).size).toBe(6);
    // The stem hangs from the ring down to the first bar.
    expect(stem).toEqual([
      [100, 49],
      [100, heights[0]],
    ]);
    for (const [x, y] of bars.flat()) expect(Math.hypot(x - 100, y - 60)).toBeLessThan(11);
  });

  it("marks of states stay in their place and have their colour", () => {
    const colours = { within: "good", undecided: "doubt" } as Partial<Record<DiagramState, "good" | "doubt">>;
    for (const state of STATES.filter((one) => one !== null)) {
      const markup = drawMark(
        { x: 100, y: 60, state, box: { x: 95, y: 55, width: 10, height: 10 } } as never,
        palette,
      );
      const drawn = spots(markup);
      for (const [x, y] of drawn) {
        expect(Math.abs(x - 100), state).toBeLessThanOrEqual(5);
        expect(Math.abs(y - 60), state).toBeLessThanOrEqual(5);
      }
      expect(markup).toContain(palette[colours[state] ?? "bad"]);
      // All but the tick are as wide to the left as to the right.
      const xs = drawn.map(([x]) => x - 100);
      if (state !== "within") expect(Math.min(...xs)).toBeCloseTo(-Math.max(...xs), 9);
      if (["open", "lost", "shorted", "hot joint"].includes(state))
        expect([mirrored(drawn, 100), upsideDown(drawn, 60)]).toEqual([all(drawn), all(drawn)]);
      if (state === "outside") expect(mirrored(drawn, 100)).toEqual(all(drawn));
    }
  });

  it("markers of curves are the same on both sides, and six different ones", () => {
    const looks = Array.from({ length: 12 }, (_, i) => seriesLook(i, palette));
    const drawn = looks.slice(0, 6).map(({ shape, colour }) => {
      const markup = marker(shape, 100, 60, colour, palette);
      const list = spots(markup);
      expect(mirrored(list, 100), shape).toEqual(all(list));
      if (shape !== "triangle") expect(upsideDown(list, 60), shape).toEqual(all(list));
      else expect(list.filter(([, y]) => y < 60)).toHaveLength(1);
      for (const [x, y] of list) expect(Math.hypot(x - 100, y - 60)).toBeLessThan(5);
      expect(markup).toContain(`stroke="${colour}"`);
      expect(markup).toContain(
        shape === "cross" || shape === "plus" ? 'fill="none"' : `fill="${palette.background}"`,
      );
      return list.map(key).join();
    });
    expect(new Set(drawn).size).toBe(6);
    // Of twelve no two have the same colour and dash.
    expect(new Set(looks.map(({ colour, dash }) => `${colour} ${dash}`)).size).toBe(12);
    expect(new Set(looks.slice(6).map(({ dash }) => dash)).size).toBe(6);
  });
});

/** A chart read back: its ticks as numbers with their places, and what else is drawn. */
function chartOf(svg: string) {
  const root = parsed(svg);
  const elements = everything(root);
  const texts = elements.filter(({ name }) => name === "text");
  const withWidth = (width: string) =>
    elements.filter(({ attributes }) => attributes["stroke-width"] === width);
  const lines = (one: Element | undefined) =>
    (one?.attributes["d"] ?? "")
      .split("M")
      .slice(1)
      .map((piece) => spots(`<path d="${piece}"/>`));
  const grid = lines(withWidth("1").find(({ attributes }) => attributes["stroke"] === palette.grid));
  const at = ({ attributes }: Element, name: string) => Number(attributes[name]);
  const number = ({ text }: Element) =>
    /^−?[\d.]+(?:e.*)?$/.test(text) ? Number(text.replaceAll("−", "-")) : Number.NaN;
  const upright = grid.filter(([a, b]) => a?.[0] === b?.[0]).map(([a]) => a?.[0] as number);
  const level = grid.filter(([a, b]) => a?.[1] === b?.[1]).map(([a]) => a?.[1] as number);
  const soft = texts.filter(
    ({ attributes }) => attributes["fill"] === palette.soft && attributes["font-size"] === "12",
  );
  const ticks = (anchor: string, place: "x" | "y") =>
    soft
      .filter((one) => one.attributes["text-anchor"] === anchor && !Number.isNaN(number(one)))
      .map((one) => ({ value: number(one), at: at(one, place), node: one }));
  const [xTicks, yTicks] = [ticks("middle", "x"), ticks("end", "y")];
  /** Straight interpolation between the outermost two ticks that are written. */
  const along = (list: readonly { value: number; at: number }[], log: boolean) => (value: number) => {
    const [a, b] = [list[0], list.at(-1)] as [{ value: number; at: number }, { value: number; at: number }];
    const f = (one: number) => (log ? Math.log(one) : one);
    return a.at + ((b.at - a.at) * (f(value) - f(a.value))) / (f(b.value) - f(a.value));
  };
  return { root, elements, texts, withWidth, lines, upright, level, xTicks, yTicks, along };
}

describe("a chart", () => {
  const points = [
    { x: 0, y: 20 },
    { x: 13, y: 140 },
    { x: 60, y: 77.7 },
  ];
  const band = [
    { x: 5, low: 30, high: 90 },
    { x: 50, low: 50, high: 180 },
  ];
  const draw = (more: object = {}) =>
    curveChart({
      title: "T",
      x: { label: "Time", unit: "min" },
      y: { label: "Air", unit: "°C" },
      series: [
        { label: "line", points, marked: true },
        { label: "band", band },
      ],
      levels: [{ label: "limit", y: 100 }],
      note: "A note.",
      ...more,
    });

  it.each([
    [720, false],
    [720, true],
    [400, false],
    [1600, true],
  ])("%d wide, logarithmic: %s", (width, log) => {
    const from = log ? { from: 10, scale: "log" as const } : {};
    const svg = draw({ width, y: { label: "Air", unit: "°C", ...from } });
    const { xTicks, yTicks, along, upright, level, withWidth, lines, elements, texts, root } = chartOf(svg);
    expect(xTicks.length).toBeGreaterThan(1);
    expect(yTicks.length).toBeGreaterThan(1);
    // Numbers stand at their lines: those of x below them, those of y 4 below their height.
    for (const { at } of xTicks) expect(upright).toContain(at);
    for (const { at } of yTicks) expect(level.some((y) => Math.abs(y - (at - 4)) < 0.011)).toBe(true);
    expect(level).toHaveLength(yTicks.length);
    const x = along(xTicks, false);
    const up = along(yTicks, log);
    const y = (value: number) => up(value) - 4;
    const near = (got: readonly Spot[] | undefined, wanted: readonly Spot[]) => {
      expect(got).toHaveLength(wanted.length);
      got?.forEach(([a, b], i) => {
        expect(Math.abs(a - (wanted[i]?.[0] as number))).toBeLessThan(0.03);
        expect(Math.abs(b - (wanted[i]?.[1] as number))).toBeLessThan(0.03);
      });
    };
    const placed = points.map((one): Spot => [x(one.x), y(one.y)]);
    const looks = [0, 1].map((i) => seriesLook(i, palette));
    const curve = withWidth("2.2").find(({ attributes }) => attributes["stroke-linejoin"] === "round");
    near(lines(curve)[0], placed);
    expect(curve?.attributes["stroke"]).toBe(looks[0]?.colour);
    // A marker at each point, and one in the key.
    const marks = elements.filter(({ name }) => name === "circle");
    near(
      marks.slice(0, 3).map(({ attributes }): Spot => [Number(attributes["cx"]), Number(attributes["cy"])]),
      placed,
    );
    expect(marks).toHaveLength(4);
    const high = band.map((one): Spot => [x(one.x), y(one.high)]);
    const low = band.map((one): Spot => [x(one.x), y(one.low)]);
    const area = elements.find(
      ({ name, attributes }) => name === "path" && attributes["fill-opacity"] === "0.13",
    );
    near(lines(area)[0], [...high, ...[...low].reverse()]);
    expect([area?.attributes["fill"], area?.attributes["d"]?.endsWith("Z")]).toEqual([
      looks[1]?.colour,
      true,
    ]);
    const edges = withWidth("1.2").filter(({ attributes }) => attributes["stroke"] === looks[1]?.colour);
    near(lines(edges[0])[0], high);
    near(lines(edges[1])[0], low);
    for (const { attributes } of edges) expect(attributes["stroke-dasharray"]).toBe(looks[1]?.dash);
    // The level from edge to edge of the plot.
    const [left, right] = [Math.min(...upright), Math.max(...upright)];
    const dotted = withWidth("1.2").find(({ attributes }) => attributes["stroke"] === palette.ink);
    near(lines(dotted)[0], [
      [left, y(100)],
      [right, y(100)],
    ]);
    expect(dotted?.attributes["stroke-dasharray"]).toBe("1 3");
    // Frame: down the left edge and along the bottom.
    const [top, bottom] = [Math.min(...level), Math.max(...level)];
    near(lines(withWidth("1.5").find(({ name }) => name === "path"))[0], [
      [left, top],
      [left, bottom],
      [right, bottom],
    ]);
    // The picture ends below everything with a margin of 16, the key's words stand 8 behind their samples, 4 below their middle.
    const lowest = Math.max(...texts.map(({ attributes }) => Number(attributes["y"])));
    expect(Number(root.attributes["height"]) - lowest).toBeGreaterThan(10);
    expect(Number(root.attributes["height"]) - lowest).toBeLessThan(30);
    for (const label of ["line", "band", "limit"]) {
      const word = texts.find(({ text }) => text === label)?.attributes;
      const [tx, ty] = [Number(word?.["x"]), Number(word?.["y"])];
      const middle = elements.some(({ name, attributes }) => {
        if (name !== "path") return false;
        const [from, to] = spots(`<path d="${attributes["d"]}"/>`);
        const off = [...(from ?? []), ...(to ?? [])].map((one, k) =>
          Math.abs(one - ([tx - 38, ty - 4, tx - 8, ty - 4][k] as number)),
        );
        return off.length === 4 && Math.max(...off) < 0.02;
      });
      if (label !== "band") expect(middle, label).toBe(true);
    }
    const title = texts.find(({ text }) => text === "T")?.attributes;
    expect([title?.["x"], title?.["y"], title?.["font-size"]]).toEqual(["16", "33", "17"]);
  });

  it("keeps the key beside the curves from 560 up, at their ends where there is room, in rows below it", () => {
    const words = (width: number) => {
      const { texts, upright, level } = chartOf(draw({ width }));
      return ["line", "band", "limit"].map((label) => {
        const { attributes } = texts.find(({ text }) => text === label) as Element;
        return {
          beside: Number(attributes["x"]) > Math.max(...upright),
          below: Number(attributes["y"]) > Math.max(...level),
          y: Number(attributes["y"]),
        };
      });
    };
    expect(words(560).map(({ beside, below }) => [beside, below])).toEqual([
      [true, false],
      [true, false],
      [true, false],
    ]);
    const rows = words(559);
    expect(rows.map(({ beside, below }) => [beside, below])).toEqual([
      [false, true],
      [false, true],
      [false, true],
    ]);
    // Rows one pitch of 20 apart.
    const heights = rows.map(({ y }) => y);
    for (const i of [1, 2]) expect((heights[i] as number) - (heights[i - 1] as number)).toBeCloseTo(20, 9);
  });

  it("entries beside the curves keep the order of the ends, a pitch apart, within the plot", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 1, maxLength: 12 }), (ends) => {
        const series = ends.map((y, i) => ({
          label: `c${i}`,
          points: [
            { x: 0, y: 0 },
            { x: 1, y },
          ],
        }));
        const { texts, level } = chartOf(
          curveChart({ title: "T", x: { label: "x" }, y: { label: "y", from: 0, to: 100 }, series }),
        );
        const places = ends.map((y, i) => ({
          y,
          at: Number(texts.find(({ text }) => text === `c${i}`)?.attributes["y"]) - 4,
        }));
        const sorted = [...places].sort((a, b) => a.at - b.at);
        sorted.slice(1).forEach((one, i) => {
          expect(one.at - (sorted[i]?.at as number)).toBeGreaterThan(19.98);
          expect(one.y).toBeLessThanOrEqual(sorted[i]?.y as number);
        });
        expect(sorted[0]?.at).toBeGreaterThanOrEqual(Math.min(...level) + 9.98);
        expect(sorted.at(-1)?.at).toBeLessThanOrEqual(Math.max(...level) - 9.98);
        // Alone it stands at the end of its curve, as far as the plot lets it.
        if (ends.length === 1 && (ends[0] as number) > 10 && (ends[0] as number) < 90) {
          const [low, high] = [Math.max(...level), Math.min(...level)];
          expect(sorted[0]?.at).toBeCloseTo(low + ((high - low) * (ends[0] as number)) / 100, 1);
        }
      }),
      { numRuns: 60 },
    );
  });

  it("says in words what it shows: captions, reaches, levels and the note", () => {
    const desc = (more: object = {}) => parsed(draw(more)).children[1]?.text;
    expect(desc()).toBe(
      "Air, °C against Time, min. line: 20 to 140 over 0 to 60. band: 30 to 180 over 5 to 50. limit: 100. A note.",
    );
    expect(desc({ note: undefined, levels: [] })).toBe(
      "Air, °C against Time, min. line: 20 to 140 over 0 to 60. band: 30 to 180 over 5 to 50.",
    );
    expect(desc({ description: "Own words" })).toBe("Own words");
    const shown = chartOf(draw()).texts.map(({ text }) => text);
    for (const caption of ["Air, °C", "Time, min", "A note."]) expect(shown).toContain(caption);
    expect(chartOf(draw({ x: { label: "Time" } })).texts.map(({ text }) => text)).toContain("Time");
  });

  it("a single point is a marker without a line; unmarked curves have none", () => {
    const circles = (series: object[]) =>
      chartOf(draw({ series, levels: [] })).elements.filter(({ name }) => name === "circle").length;
    expect(circles([{ label: "a", points: points.slice(0, 1) }])).toBe(1);
    expect(circles([{ label: "a", points }])).toBe(0);
    expect(circles([{ label: "a", points, marked: true }])).toBe(4);
  });

  it("numbers of the right axis keep a gap of 6 between them", () => {
    const { xTicks } = chartOf(draw({ width: 280 }));
    xTicks.slice(1).forEach(({ at, node }, i) => {
      const before = xTicks[i] as (typeof xTicks)[number];
      const gap = at - textWidth(node.text, 12) / 2 - (before.at + textWidth(before.node.text, 12) / 2);
      expect(gap).toBeGreaterThanOrEqual(5.97);
    });
  });
});
