/**
 * The small parts of pictures, each by its definition: ticks of 1, 2 and 5 times a power of ten, numbers of two decimals, markup, the hash
 * FNV-1a (its published values for "", "a" and "foobar": 811c9dc5, e40c292c, bf9cf968; from memory), text cut to a width.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { around, overlap, textBox } from "../../src/drawing/geometry.ts";
import { LabelPlacer } from "../../src/drawing/labelPlace.ts";
import { checkPictureId, fixed, picture, tag, textTag } from "../../src/drawing/svg.ts";
import { cleanText, escapeText, isMeasured, shortened, textWidth, wrapped } from "../../src/drawing/text.ts";
import { paletteOf } from "../../src/drawing/theme.ts";
import { linearScale, logScale, tickText } from "../../src/drawing/ticks.ts";
import { caught } from "../support/caught.ts";
import { parsed } from "./parsed.ts";

const texts = ({ ticks }: { ticks: readonly { text: string }[] }) => ticks.map(({ text }) => text).join(" ");

describe("ticks", () => {
  it.each([
    // The least of 1, 2, 5 and 10 times a power of ten that is no less than the span over the number asked for.
    [0, 10, 10, "0 1 2 3 4 5 6 7 8 9 10"],
    [0, 10.1, 10, "0 2 4 6 8 10 12"],
    [0, 20, 10, "0 2 4 6 8 10 12 14 16 18 20"],
    [0, 20.1, 10, "0 5 10 15 20 25"],
    [0, 50, 10, "0 5 10 15 20 25 30 35 40 45 50"],
    [0, 50.1, 10, "0 10 20 30 40 50 60"],
    [0, 1, 0, "0 1"],
    [0, 1, 1, "0 1"],
    [0.3, 0.9, 3, "0.2 0.4 0.6 0.8 1"],
    [-1.5, -0.5, 2, "−1.5 −1 −0.5"],
    [1e6, 3e6, 2, "1000000 2000000 3000000"],
    // One value: a tenth of it on either side; zero: one.
    [5, 5, 5, "4.4 4.6 4.8 5 5.2 5.4 5.6"],
    [0, 0, 2, "−1 0 1"],
    [-5, -5, 1, "−6 −5 −4"],
  ])("from %d to %d, about %d", (low, high, most, wanted) => {
    const scale = linearScale(low, high, most);
    expect(texts(scale)).toBe(wanted);
    expect(scale.share(scale.ticks[0]?.value as number)).toBeCloseTo(0, 12);
    expect(scale.share(scale.ticks.at(-1)?.value as number)).toBeCloseTo(1, 12);
    expect(scale.ticks.map(({ value }) => tickText(value)).join(" ")).toBe(wanted);
  });

  it.each([
    [1, 1000, 6, "1 10 100 1000"],
    [1, 1000, 9, "1 2 5 10 20 50 100 200 500 1000"],
    [1, 1000, 8, "1 10 100 1000"],
    [2, 8, 3, "2 5 10"],
    [2.5, 8, 3, "2 5 10"],
    [3, 3, 6, "2 5"],
    [1, 1, 6, "1 2"],
    [1e-6, 1e6, 6, "0.000001 0.0001 0.01 1 100 10000 1000000"],
    [0.08, 900, 6, "0.01 0.1 1 10 100 1000"],
    [4, 40, 1, "1 100"],
  ])("logarithmic from %d to %d, about %d", (low, high, most, wanted) => {
    const { share, ticks } = logScale(low, high, most);
    expect(texts({ ticks })).toBe(wanted);
    // The ends of the axis are the outermost of ticks and data.
    const ends = [Math.min(low, ticks[0]?.value as number), Math.max(high, ticks.at(-1)?.value as number)];
    expect(ends.map(share)).toEqual([expect.closeTo(0, 12), expect.closeTo(1, 12)]);
  });

  it("have a true minus, no −0 and no binary tail", () => {
    expect([-0, 0.1 + 0.2, -1.5e-7, 1e21].map(tickText)).toEqual(["0", "0.3", "−1.5e−7", "1e+21"]);
  });
});

describe("markup", () => {
  it("writes numbers with two decimals at most, without idle zeros", () => {
    expect([10, 100, 0.1, 12.344, 12.346, -1.5, 1e3, 0.001].map(fixed)).toEqual([
      "10",
      "100",
      "0.1",
      "12.34",
      "12.35",
      "-1.5",
      "1000",
      "0",
    ]);
  });

  it("is one element with its attributes, escaped, and what stands inside", () => {
    expect(tag("g", {})).toBe("<g/>");
    expect(tag("g", { a: 1.234, b: undefined, c: `<&>"'` }, "x", "y")).toBe(
      '<g a="1.23" c="&lt;&amp;&gt;&quot;&#39;">xy</g>',
    );
    expect(escapeText("a & b")).toBe("a &amp; b");
  });

  it("of a text says its place, and only what differs from the usual", () => {
    const at = { x: 5, y: 6, size: 12 } as const;
    expect(textTag({ text: "A", anchor: "start", ...at }, "#000")).toBe(
      '<text x="5" y="6" font-size="12" fill="#000">A</text>',
    );
    expect(textTag({ text: "A…", full: "A & B", anchor: "end", bold: true, ...at }, "#000")).toBe(
      '<text x="5" y="6" text-anchor="end" font-size="12" font-weight="bold" fill="#000"><title>A &amp; B</title>A…</text>',
    );
    expect(textTag({ text: "A", full: "A", anchor: "middle", ...at }, "#000")).not.toContain("title");
    // A character that no table knows is given the width that was reckoned with: 1.2 of its size.
    expect(textTag({ text: "電", anchor: "start", ...at }, "#000")).toContain(
      'textLength="14.4" lengthAdjust="spacingAndGlyphs"',
    );
  });

  it("of a picture has its own background, names and a prefix hashed from what it shows", () => {
    const fnv = (text: string): string => {
      let state = 0x811c9dc5n;
      for (const char of text) state = ((state ^ BigInt(char.charCodeAt(0))) * 0x01000193n) & 0xffffffffn;
      return state.toString(16).padStart(8, "0");
    };
    expect(["", "a", "foobar"].map(fnv)).toEqual(["811c9dc5", "e40c292c", "bf9cf968"]);
    const palette = paletteOf("dark");
    const input = {
      title: "T & U",
      description: "D",
      width: 300.5,
      height: 200,
      palette,
      body: ["<g/>", "<path/>"],
    };
    const prefix = `picture-${fnv("T & U\nD\n<g/>\n<path/>")}`;
    const svg = parsed(picture({ ...input, id: undefined }));
    expect(svg.attributes).toMatchObject({
      width: "300.5",
      height: "200",
      viewBox: "0 0 300.5 200",
      role: "img",
      "aria-labelledby": `${prefix}-title ${prefix}-desc`,
      "font-family": "system-ui, sans-serif",
    });
    const [title, desc, rect] = svg.children;
    expect([title?.text, title?.attributes["id"]]).toEqual(["T & U", `${prefix}-title`]);
    expect([desc?.text, desc?.attributes["id"]]).toEqual(["D", `${prefix}-desc`]);
    expect(rect?.attributes).toEqual({
      ...{ x: "0", y: "0", width: "300.5", height: "200", rx: "8", fill: palette.background },
    });
    expect(svg.children.slice(3).map(({ name }) => name)).toEqual(["g", "path"]);
  });

  it("has an id of a letter and up to 63 more characters, or none", () => {
    for (const id of [undefined, "a", "Z9_-", `a${"b".repeat(63)}`])
      expect(() => checkPictureId(id)).not.toThrow();
    const said = (id: unknown) => {
      const { code, message } = caught(() => checkPictureId(id as string));
      return [code, message];
    };
    for (const id of ["", "9a", "a b", "-a", `a${"b".repeat(64)}`, "a\n"])
      expect(said(id)).toEqual([
        "malformed-text",
        `id: ${JSON.stringify(id)} is not allowed; expected a letter, then up to 63 letters, digits, - or _`,
      ]);
    expect(said(5)).toEqual([
      "wrong-type",
      "id: 5 is not allowed; expected a letter, then up to 63 letters, digits, - or _",
    ]);
  });

  it("is light unless it is asked for dark", () => {
    expect(paletteOf(undefined)).toBe(paletteOf("light"));
    expect(caught(() => paletteOf("blue" as never)).message).toBe(
      'theme: "blue" is not allowed; expected one of light, dark',
    );
  });
});

describe("text", () => {
  it("is one line that XML can hold", () => {
    const hidden = ["\u0000", "\u001f", "\u007f", "\u009f", "\ud800", "\udfff", "\u202a", "\u202e", "\u2066"];
    const more = ["\u2069", "\ufdd0", "\ufdef", "\ufffe", "\uffff", "\u{1fffe}"];
    for (const char of [...hidden, ...more]) expect(cleanText("t", `a${char}b`)).toBe("a\ufffdb");
    for (const char of ["\t", "\n", "\r", "\u000b", "\u0085", "\u2028", "\u2029"])
      expect(cleanText("t", ` a${char} b `)).toBe("a b");
    for (const char of [
      " ",
      "~",
      "\u00a0",
      "\ud7ff",
      "\ue000",
      "\u2029".slice(1) || "é",
      "\u2065",
      "\u206a",
      "\ufdcf",
      "\ufdf0",
      "\ufffd",
      "😀",
    ])
      expect(cleanText("t", `a${char}b`)).toBe(`a${char}b`);
    expect(caught(() => cleanText("t", undefined)).message).toBe("t: missing; expected text");
    expect(caught(() => cleanText("t", 5)).message).toBe("t: 5 is not allowed; expected text");
  });

  it("has the width of its characters, bold wider, in proportion to its size", () => {
    // Widths of the face measured: a space 0.32 (rounded up from 0.318), M 0.87, W 0.99, i 0.28 (DejaVu Sans, from its own metrics, from memory).
    expect(textWidth(" ", 100)).toBe(32);
    expect(textWidth("M", 100)).toBe(87);
    expect(textWidth("W", 100)).toBe(99);
    expect(textWidth("i", 100)).toBe(28);
    const text = fc.string({ unit: fc.constantFrom(..."aZ09 ~%Ωµ°éЖ電") });
    fc.assert(
      fc.property(text, text, (a, b) => {
        expect(textWidth(a + b, 12)).toBeCloseTo(textWidth(a, 12) + textWidth(b, 12), 9);
        expect(textWidth(a, 24)).toBeCloseTo(2 * textWidth(a, 12), 9);
        expect(textWidth(a, 100, true) - textWidth(a, 100)).toBeCloseTo(14 * [...a].length, 9);
        expect(isMeasured(a)).toBe(!a.includes("電"));
      }),
    );
  });

  it("that is too wide ends in an ellipsis and is as long as fits", () => {
    const words = fc.string({ unit: fc.constantFrom(..."abc i M"), minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(words, fc.integer({ min: 30, max: 200 }), fc.boolean(), (text, room, bold) => {
        const got = shortened(text, room, 12, bold);
        if (textWidth(text, 12, bold) <= room) {
          expect(got).toBe(text);
          return;
        }
        expect(got.endsWith("…")).toBe(true);
        const kept = got.slice(0, -1);
        expect(text.startsWith(kept)).toBe(true);
        expect(kept).toBe(kept.trimEnd());
        if ([...kept].length > 1) expect(textWidth(got, 12, bold)).toBeLessThanOrEqual(room);
        // One character more would not have fitted.
        const next = text.slice(0, kept.length + 1);
        if (next.trim() === next && kept !== "" && !text.slice(kept.length).startsWith(" "))
          expect(textWidth(`${next}…`, 12, bold)).toBeGreaterThan(room);
      }),
    );
    // Exactly as wide as the room is not too wide.
    expect(shortened("MM", textWidth("MM", 12), 12)).toBe("MM");
    // The end that tells it from others is kept where it fits.
    expect(shortened("Upper rear bank-L1", 80, 12, false, "-L1")).toMatch(/^Upper.*…-L1$/);
    expect(shortened("Upper rear bank-L1", 25, 12, false, "-L1")).toMatch(/…$/);
  });

  it("is broken at spaces into lines that fit, all of it, or shortened at the last line allowed", () => {
    const words = fc.array(fc.string({ unit: fc.constantFrom(..."abM"), minLength: 1, maxLength: 6 }), {
      minLength: 1,
      maxLength: 12,
    });
    fc.assert(
      fc.property(words, fc.integer({ min: 60, max: 200 }), (list, room) => {
        const text = list.join(" ");
        const lines = wrapped(text, room, 12);
        expect(lines.join(" ")).toBe(text);
        for (const [i, line] of lines.entries()) {
          expect(textWidth(line, 12)).toBeLessThanOrEqual(room);
          const next = lines[i + 1]?.split(" ")[0];
          if (next !== undefined) expect(textWidth(`${line} ${next}`, 12)).toBeGreaterThan(room);
        }
        const two = wrapped(text, room, 12, false, 2);
        expect(two.length).toBe(Math.min(2, lines.length));
        if (lines.length <= 2) expect(two).toEqual(lines);
        else expect([two[0], two[1]?.endsWith("…")]).toEqual([lines[0], true]);
      }),
    );
    expect(wrapped("", 100, 12)).toEqual([]);
    expect(wrapped("MMMMMMMMMMMMMMMM", 60, 12)).toEqual([shortened("MMMMMMMMMMMMMMMM", 60, 12)]);
  });
});

describe("boxes", () => {
  it("share more than an edge, or do not", () => {
    const box = { x: 0, y: 0, width: 10, height: 10 };
    const at = (x: number, y: number) => overlap(box, { ...box, x, y });
    expect([at(10, 0), at(-10, 0), at(0, 10), at(0, -10)]).toEqual([false, false, false, false]);
    expect([at(9.9, 0), at(-9.9, 0), at(0, 9.9), at(0, -9.9)]).toEqual([true, true, true, true]);
    expect([at(9, 11), at(11, 9)]).toEqual([false, false]);
    expect(around(5, 7, 2, 3)).toEqual({ x: 3, y: 4, width: 4, height: 6 });
  });

  it("of a text lie by its anchor around its baseline", () => {
    const of = (anchor: "start" | "middle" | "end") =>
      textBox({ text: "MM", x: 100, y: 50, anchor, size: 10 });
    const width = textWidth("MM", 10);
    expect([of("start").x, of("middle").x, of("end").x]).toEqual([100, 100 - width / 2, 100 - width]);
    const { y, height } = of("start");
    expect([y, y + height]).toEqual([expect.closeTo(40.5, 9), expect.closeTo(52.5, 9)]);
  });

  it("of labels go where they lie on nothing: not outside, not on another, not on a line", () => {
    const bounds = { x: 0, y: 0, width: 200, height: 100 };
    const label = (x: number, y: number) => ({ text: "MM", x, y, anchor: "start", size: 10 }) as const;
    const placer = (...lines: (readonly [number, number, number, number])[]) =>
      new LabelPlacer(
        bounds,
        lines.map(([x1, y1, x2, y2]) => ({ from: { x: x1, y: y1 }, to: { x: x2, y: y2 } })),
      );
    const free = label(150, 50);
    // Outside on each of four sides.
    for (const [x, y] of [
      [-1, 50],
      [190, 50],
      [50, 5],
      [50, 99],
    ] as const)
      expect(placer().place([label(x, y), free])).toBe(free);
    const first = label(50, 50);
    expect(placer().place([first, free])).toBe(first);
    // Lines through it: level, upright, slanting; beside it none counts.
    for (const line of [
      [0, 48, 140, 48],
      [55, 0, 55, 100],
      [0, 0, 120, 100],
      [52, 47, 53, 48],
    ] as const)
      expect(placer(line).place([first, free])).toBe(free);
    for (const line of [
      [0, 60, 200, 60],
      [40, 0, 40, 100],
      [0, 48, 40, 48],
      [80, 48, 200, 48],
      [55, 0, 55, 35],
      [0, 60, 80, 100],
    ] as const)
      expect(placer(line).place([first, free])).toBe(first);
    // Its place is taken, and what is blocked is too; another label is worse than a line, outside is worst.
    const taken = placer([0, 50, 200, 50]);
    taken.block({ x: 50, y: 40, width: 10, height: 12 });
    expect(taken.place([first, label(100, 50)])).toEqual(label(100, 50));
    expect(taken.place([label(-5, 20), label(100, 50)])).toEqual(label(100, 50));
  });
});
