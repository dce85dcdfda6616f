/** What every picture keeps: well-formed, described, contrasted, escaped, the same bytes for the same input. */
import { balancedSupply, buildModule, type ModulePlan, withResistance } from "electroheat/circuit";
import { connectionDiagram, curveChart, diagramLayout, phasorDiagram } from "electroheat/drawing";
import { amperes, ohms, volts } from "electroheat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { paletteOf } from "../../src/drawing/theme.ts";
import { contrast } from "./contrast.ts";
import { anyText, hidden, nasty } from "./nasty.ts";
import { everything, parsed, pictureProblems, shownTexts } from "./parsed.ts";
import { scenes } from "./scenes.ts";

const named = Object.entries(scenes);

describe.each(named)("%s", (_name, draw) => {
  it.each([320, 760, 1280])("is a sound picture at %i", (width) => {
    for (const theme of ["light", "dark"] as const)
      expect(pictureProblems(draw({ width, theme }))).toEqual([]);
  });

  it("gives the same bytes for the same input, and ids of its own or by the caller", () => {
    expect(draw({})).toBe(draw({}));
    const ids = everything(parsed(draw({ id: "fig-3" }))).flatMap(({ attributes }) => attributes["id"] ?? []);
    expect(ids).toEqual(["fig-3-title", "fig-3-desc"]);
    const own = parsed(draw({})).attributes["aria-labelledby"];
    expect(own).not.toBe(parsed(draw({ theme: "dark" })).attributes["aria-labelledby"]);
  });
});

it("pictures of different content have different ids", () => {
  const ids = named.map(([, draw]) => parsed(draw({})).attributes["aria-labelledby"]);
  expect(new Set(ids).size).toBe(named.length);
});

describe("the parser used here", () => {
  it.each([
    "<svg><g></svg>",
    "<svg>\u0001</svg>",
    "<svg a='1' a='2'/>",
    "<svg>&nbsp;</svg>",
    "<svg><text x=1/></svg>",
  ])("refuses %j", (text) => {
    expect(() => parsed(text)).toThrow();
  });
});

describe("colours", () => {
  it("the ratio here is that of the standard: 21 for black on white, 4.54 for #767676 (WCAG's own examples)", () => {
    expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 10);
    expect(contrast("#767676", "#ffffff")).toBeCloseTo(4.54, 2);
  });

  it.each(["light", "dark"] as const)("%s: text and lines reach AA on background and panel", (theme) => {
    const { background, panel, ink, soft, good, bad, doubt, series } = paletteOf(theme);
    for (const paper of [background, panel]) {
      for (const text of [ink, soft, good, bad, doubt])
        expect(contrast(text, paper)).toBeGreaterThanOrEqual(4.5);
      for (const line of series) expect(contrast(line, paper)).toBeGreaterThanOrEqual(4.5);
    }
  });

  it("no picture uses a colour outside the palette of its theme", () => {
    for (const theme of ["light", "dark"] as const) {
      const known = new Set([...Object.values(paletteOf(theme)).flat(), "none"]);
      for (const [, draw] of named) {
        for (const { attributes } of everything(parsed(draw({ theme })))) {
          for (const key of ["fill", "stroke"]) {
            if (attributes[key] !== undefined) expect(known).toContain(attributes[key]);
          }
        }
      }
    }
  });
});

describe("text from a user", () => {
  it.each(nasty)("%j stays text wherever it is given", (text) => {
    const plan: ModulePlan = {
      banks: [{ id: text, connection: "star", elementResistance: ohms(7.68) }],
      joints: [{ id: `j ${text}`, at: "L1", resistance: ohms(0.001) }],
    };
    const element = `${text}-L1`;
    const svgs = [
      connectionDiagram({
        module: plan,
        title: text,
        values: { [element]: text },
        labels: { L1: text, S: text },
      }),
      phasorDiagram({ module: plan, supply: balancedSupply({ lineVoltage: volts(480) }), title: text }),
      curveChart({
        title: text,
        x: { label: text, unit: text },
        y: { label: text },
        series: [
          {
            label: text,
            points: [
              { x: 0, y: 0 },
              { x: 1, y: 1 },
            ],
          },
        ],
        levels: [{ label: text, y: 0.5 }],
        note: text,
        description: text === "" ? "x" : text,
      }),
    ];
    for (const svg of svgs) {
      expect(pictureProblems(svg)).toEqual([]);
      // Nothing that turns the reading direction, no control character, no half of a pair.
      expect([...svg].filter(hidden)).toEqual([]);
      expect(() => encodeURIComponent(svg)).not.toThrow();
    }
  });

  it("any text at all gives a sound picture without anything new in it", () => {
    const plan: ModulePlan = { banks: [{ id: "A", connection: "star", elementResistance: ohms(7.68) }] };
    const count = (svg: string) => everything(parsed(svg)).filter(({ name }) => name !== "title").length;
    fc.assert(
      fc.property(anyText, (text) => {
        const svg = connectionDiagram({ module: plan, labels: { "A-L1": `x${text}` }, title: "T" });
        expect(pictureProblems(svg)).toEqual([]);
        expect(count(svg)).toBe(count(connectionDiagram({ module: plan, title: "T" })));
      }),
      { numRuns: 200 },
    );
  });

  it("is shortened to its room with the whole as a title; the place in the bank survives", () => {
    const id = "Upper rear bank behind the fan housing";
    const plan: ModulePlan = { banks: [{ id, connection: "star", elementResistance: ohms(7.68) }] };
    const svg = connectionDiagram({ module: plan, width: 390 });
    const short = everything(parsed(svg)).filter(
      ({ name, text }) => name === "text" && text.endsWith("…-L2"),
    );
    expect(short).toHaveLength(1);
    expect(short[0]?.children[0]?.text).toBe(`${id}-L2`);
  });

  it.each([350, 390, 700])(
    "stands in full somewhere in the picture at %i: a bank's in its heading, others under it",
    (width) => {
      const id = "Upper rear bank behind the fan housing";
      const joint = "jumper between terminal block 3 and stud L2";
      const plan: ModulePlan = {
        banks: [{ id, connection: "star", elementResistance: ohms(7.68) }],
        joints: [{ id: joint, at: "L2", resistance: ohms(0.003) }],
      };
      const line = "Line one from the panel beside the door";
      const texts = shownTexts(connectionDiagram({ module: plan, width, labels: { L1: line } }));
      const all = texts.join(" ");
      for (const whole of [`Bank ${id}`, joint, line])
        expect(all.replaceAll(" star, floating", "")).toContain(whole);
    },
  );
});

describe("a connection diagram", () => {
  const states = { J1: "hot joint", "B-L1": "within", "B-L3": "undecided", "B-L2": "outside" } as const;
  const scene = () => scenes["diagram"]?.({}) ?? "";

  it("shows every element and joint once, by its label", () => {
    const texts = shownTexts(scene());
    for (const id of ["A-L1", "A-L2", "A-L3", "B-L1", "B-L2", "B-L3", "J1", "JB", "L1", "L2", "L3", "PE"]) {
      expect(
        texts.filter((text) => text === id),
        id,
      ).toHaveLength(1);
    }
  });

  it("says each state in a word and draws it in a shape", () => {
    const texts = shownTexts(scene());
    for (const word of ["open", "lost", ...Object.values(states)]) {
      expect(
        texts.filter((text) => text === word),
        word,
      ).toHaveLength(1);
    }
    const plan: ModulePlan = { banks: [{ id: "A", connection: "star", elementResistance: ohms(7.68) }] };
    const paths = (state: "open" | "shorted" | "within" | undefined) => {
      const some = connectionDiagram({
        module: plan,
        values: {},
        states: state === undefined ? {} : { "A-L1": state },
      });
      return everything(parsed(some)).filter(({ name }) => name !== "text" && name !== "title");
    };
    // Shapes alone, without colour: the drawings of the states differ.
    const shape = (state: Parameters<typeof paths>[0]) =>
      paths(state)
        .map(
          ({ name, attributes }) =>
            `${name} ${attributes["d"] ?? ""} ${attributes["stroke-dasharray"] ?? ""}`,
        )
        .join("|");
    const all = [shape("open"), shape("shorted"), shape("within"), shape(undefined)];
    expect(new Set(all).size).toBe(4);
    // Open: the body is in two pieces and there is no whole rectangle left of it.
    const bodies = (state: Parameters<typeof paths>[0]) =>
      paths(state).filter(({ name, attributes }) => name === "rect" && attributes["height"] === "15").length;
    expect([bodies("open"), bodies("shorted"), bodies(undefined)]).toEqual([2, 3, 3]);
  });

  it("takes states and values from the module where none are given: 0 Ω is shorted, a joint of 0 Ω is sound", () => {
    const plan: ModulePlan = {
      banks: [{ id: "A", connection: "star", elementResistance: ohms(7.68) }],
      elements: { "A-L2": ohms(0) },
      joints: [{ id: "J", at: "L3", resistance: ohms(0) }],
    };
    const texts = shownTexts(connectionDiagram({ module: plan }));
    expect(texts.filter((text) => text === "shorted")).toHaveLength(1);
    expect(texts.filter((text) => text === "7.68\u00a0Ω")).toHaveLength(2);
    const built = buildModule(plan);
    const later = {
      ...built,
      network: withResistance({ network: built.network, id: "A-L3", resistance: "open" }),
    };
    expect(shownTexts(connectionDiagram({ module: later }))).toContain("open");
  });

  it("prints values with their unit, in the digits asked for", () => {
    const plan: ModulePlan = { banks: [{ id: "A", connection: "star", elementResistance: ohms(7.68) }] };
    const values = {
      "A-L1": { value: amperes(36.0844), unit: "A", significantDigits: 3 },
      "A-L2": { value: 12_345, unit: "W" },
      "A-L3": "7.65(4) Ω",
    } as const;
    const texts = shownTexts(connectionDiagram({ module: plan, values }));
    for (const value of ["36.1\u00a0A", "12.35\u00a0kW", "7.65(4) Ω"]) expect(texts).toContain(value);
  });

  it("tells the whole of it in its description", () => {
    const [, desc] = parsed(scene()).children;
    for (const part of [
      "Bank A: star, 3 elements.",
      "Star points tied.",
      "Line L3 lost.",
      "A-L1 open",
      "J1 4.7\u00a0mΩ hot joint",
    ]) {
      expect(desc?.text).toContain(part);
    }
    expect(desc?.text).toMatch(/prove dead.*local code and a licensed electrician decide/);
  });

  it("keeps to the width asked for where the module allows it", () => {
    const bank = (id: string) => ({ id, connection: "star", elementResistance: ohms(46.08) }) as const;
    const plan: ModulePlan = { banks: ["A", "B", "C", "D", "E", "F"].map(bank), starPoints: "tied" };
    for (const width of [390, 700, 960, 1280]) {
      expect(diagramLayout({ module: plan, width }).width).toBeLessThanOrEqual(width);
    }
    const columns = (width: number) =>
      new Set(diagramLayout({ module: plan, width }).panels.map(({ box }) => box.x)).size;
    expect(columns(390)).toBe(1);
    expect(columns(1280)).toBeGreaterThan(2);
  });
});
