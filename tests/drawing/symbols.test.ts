/** Symbols, names and words of a connection diagram in their rarer forms: what is drawn is what the module and the caller say. */
import type { ModulePlan } from "electroheat/circuit";
import { buildModule } from "electroheat/circuit";
import { connectionDiagram, type DiagramState, diagramLayout } from "electroheat/drawing";
import { type Ohms, ohms } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";
import { collisions, netProblems } from "./diagram.ts";
import { everything, parsed, pictureProblems, shownTexts } from "./parsed.ts";

const star = (id: string, elementsInParallel = 1) =>
  ({ id, connection: "star", elementResistance: ohms(7.68), elementsInParallel }) as const;
const ROLES = ["joint", "jumper bar", "conductor"] as const;
const jointed = (resistance: Ohms | "open"): ModulePlan => ({
  banks: [star("A")],
  joints: ROLES.map((role, i) => ({ id: `J${i + 1}`, at: `L${i + 1}` as "L1", role, resistance })),
});

/** What is drawn that is no text: names, paths and places, without colours. */
function shapes(svg: string): string[] {
  return everything(parsed(svg))
    .filter(({ name }) => !["svg", "text", "title", "desc"].includes(name))
    .map(({ name, attributes }) => {
      const { fill: _fill, stroke: _stroke, ...shape } = attributes;
      return `${name} ${JSON.stringify(shape)}`;
    });
}

describe("a joint, a jumper bar and a conductor", () => {
  const states: readonly (DiagramState | null)[] = ["open", "shorted", "hot joint", "outside", null];

  it.each(ROLES.map((role, i) => [role, `J${i + 1}`] as const))(
    "%s: each fault has a shape of its own, told without colour",
    (_role, id) => {
      const drawn = states.map((state) => {
        const svg = connectionDiagram({
          module: jointed(ohms(0.001)),
          ...(state === null ? {} : { states: { [id]: state } }),
        });
        expect(pictureProblems(svg)).toEqual([]);
        if (state !== null) expect(shownTexts(svg)).toContain(state);
        return shapes(svg).join("|");
      });
      expect(new Set(drawn).size).toBe(states.length);
    },
  );

  it("open: the way through the symbol is broken in its middle", () => {
    // Source: what an open circuit is. No drawn piece passes the middle of the symbol along its axis.
    const module = jointed("open");
    const symbols = diagramLayout({ module }).symbols.filter(({ about }) => about.startsWith("J"));
    expect(symbols.map(({ state }) => state)).toEqual(["open", "open", "open"]);
    const svg = connectionDiagram({ module });
    const across = (x: number, y: number) =>
      everything(parsed(svg)).filter(({ attributes: { d = "" } }) =>
        [...d.matchAll(/M ?([\d.]+) ([\d.]+) ?L ?([\d.]+) ([\d.]+)/g)].some(([, x1, y1, x2, y2]) => {
          const level = Number(y1) === Number(y2) && Math.abs(Number(y1) - y) < 0.01;
          return level && Number(x1) < x - 1 && Number(x2) > x + 1;
        }),
      );
    for (const { x, y } of symbols) expect(across(x, y)).toEqual([]);
    // The same look finds the unbroken bar.
    const sound = diagramLayout({ module: jointed(ohms(0)) }).symbols.find(({ about }) => about === "J2");
    const whole = everything(parsed(connectionDiagram({ module: jointed(ohms(0)) }))).filter(
      ({ attributes: { d = "" } }) => d.includes(` ${sound?.y} L `),
    );
    expect(whole.length).toBeGreaterThan(0);
  });

  it("the key under a narrow picture goes on in a second row, clear of the first", () => {
    const rows = (roles: readonly (typeof ROLES)[number][]) => {
      const { joints = [], ...plan } = jointed(ohms(0.001));
      const some = joints.filter(({ role }) => roles.includes(role as "joint"));
      const layout = diagramLayout({ module: { ...plan, joints: some }, width: 280 });
      expect(collisions(layout)).toEqual([]);
      const keys = layout.texts.filter(({ role }) => role === "key");
      expect(keys.map(({ text }) => text).sort()).toEqual([...roles].sort());
      return new Set(keys.map(({ y }) => y)).size;
    };
    expect([rows(ROLES), rows(["joint"])]).toEqual([2, 1]);
  });
});

describe("joints that lie behind several rows", () => {
  // Source: the module as planned; what the wires join is compared to the network, node by node.
  it.each<readonly [string, ModulePlan]>([
    [
      "on the neutral, the row of another branch between",
      {
        banks: [star("A", 2)],
        neutral: "connected",
        joints: [{ id: "J", at: "N", behind: ["A-L1", "A-L3"], resistance: ohms(0.002) }],
      },
    ],
    [
      "on the way back of a delta's branch",
      {
        banks: [{ ...star("A", 2), connection: "delta" }],
        joints: [{ id: "J", at: "L1", behind: ["A-L3L1"], resistance: ohms(0.002) }],
      },
    ],
  ])("%s: nothing on anything else, and wired as planned", (_what, plan) => {
    for (const width of [320, 960]) {
      const layout = diagramLayout({ module: plan, width, states: { J: "hot joint" } });
      expect(collisions(layout)).toEqual([]);
      expect(netProblems(layout, buildModule(plan))).toEqual([]);
    }
  });
});

describe("names", () => {
  it("of stars that are shortened stand in the heading of their bank, not a second time under the picture", () => {
    const ids = ["Upper rear bank behind the fan housing", "Lower rear bank behind the fan housing"];
    const plan: ModulePlan = { banks: ids.map((id) => star(id)), starPoints: "separate" };
    const texts = shownTexts(connectionDiagram({ module: plan, width: 350 })).join(" ");
    for (const id of ids) {
      expect(texts).toContain(id);
      expect(texts).not.toContain(`is S-${id}`);
    }
  });

  it("that are shortened are told up to sixteen; the rest are counted and keep their titles", () => {
    const plan: ModulePlan = {
      banks: ["A", "B", "C", "D", "E", "F"].map((id) => star(id)),
      starPoints: "tied",
    };
    const ids = plan.banks.flatMap(({ id }) => ["L1", "L2", "L3"].map((line) => `${id}-${line}`));
    const long = (id: string) => `Coil ${id} nearest to the door, renewed in the spring of last year`;
    const labels = Object.fromEntries(ids.map((id) => [id, long(id)]));
    const svg = connectionDiagram({ module: plan, labels, width: 390 });
    // 18 names, 15 of them told: 3 are left.
    expect(shownTexts(svg).join(" ")).toContain("and 3 more");
    const titles = everything(parsed(svg))
      .filter(({ name }) => name === "title")
      .map(({ text }) => text);
    for (const id of ids) expect(titles).toContain(long(id));
  });

  it("of a large module are left out of its description, but for those with a state", () => {
    const plan = (elements: ModulePlan["elements"]): ModulePlan => ({
      banks: [star("A", 10), star("B", 11)],
      starPoints: "tied",
      ...(elements === undefined ? {} : { elements }),
    });
    const said = (module: ModulePlan) => diagramLayout({ module }).description;
    expect(said(plan({}))).toBe(
      "Bank A: star, 10 in parallel, 30 elements. Bank B: star, 11 in parallel, 33 elements. Star points tied.",
    );
    expect(said(plan({ "A-L1-4": "open" }))).toContain("Star points tied. A-L1-4 open. A break");
  });
});

it.each<readonly [string, string, string, () => unknown]>([
  [
    "inconsistent",
    "states.J1",
    "hot joint",
    () => connectionDiagram({ module: jointed(ohms(0.001)), states: { J1: "lost" } }),
  ],
  [
    "missing",
    "module.network.branches",
    "a list",
    () => diagramLayout({ module: { ...buildModule(jointed(ohms(0))), network: {} as never } }),
  ],
])("refuses %s at %s and says what is allowed", (code, path, allowed, run) => {
  const error = caught(run);
  expect([error.code, error.argument]).toEqual([code, path]);
  expect(error.message).toContain(allowed);
});
