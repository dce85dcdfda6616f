/** The connection diagram as geometry: nothing lies on anything else, and the wires say what the network says. */
import { buildModule, type HeatingModule, type ModulePlan } from "electroheat/circuit";
import { type DiagramLayout, diagramLayout } from "electroheat/drawing";
import { isElectroheatError, ohms } from "electroheat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { collisions, type Drawn, drawnModule, netProblems } from "./diagram.ts";

/** The module, or null where the drawn joints contradict each other, which is the builder's to say. */
function built(plan: ModulePlan): HeatingModule | null {
  try {
    return buildModule(plan);
  } catch (error) {
    if (isElectroheatError(error)) return null;
    throw error;
  }
}

const draw = ({ plan, ...shown }: Drawn): DiagramLayout => diagramLayout({ module: plan, ...shown });

describe("modules of one to six banks", () => {
  // In ten parts, each with modules of its own: a part is cheap enough to be run again and again (docs/mutation.md).
  const seed = fc.readConfigureGlobal()?.seed ?? 0;
  it.each(Array.from({ length: 10 }, (_, part) => part))(
    "draw without anything on anything else, and as they are connected, part %i",
    (part) => {
      fc.assert(
        fc.property(drawnModule, (one) => {
          const module = built(one.plan);
          if (module === null) return;
          const layout = draw(one);
          expect(collisions(layout)).toEqual([]);
          expect(netProblems(layout, module)).toEqual([]);
          // A wire goes somewhere with each of its points.
          for (const { points } of layout.wires) {
            expect(points.length).toBeGreaterThan(1);
            points.slice(1).forEach(({ x, y }, i) => {
              expect([x, y]).not.toEqual([points[i]?.x, points[i]?.y]);
            });
          }
        }),
        { numRuns: 10, seed: seed + part },
      );
    },
  );

  it("come through often enough, though joints drawn at random often contradict each other", () => {
    const plans = fc.sample(drawnModule, 100).map(({ plan }) => built(plan));
    expect(plans.filter((one) => one !== null).length).toBeGreaterThan(50);
  });

  it("would notice a picture that is not clean", () => {
    const plan: ModulePlan = { banks: [{ id: "A", connection: "star", elementResistance: ohms(7.68) }] };
    const layout = diagramLayout({ module: plan });
    const [first] = layout.texts;
    expect(collisions(layout)).toEqual([]);
    const doubled = { ...layout, texts: [...layout.texts, first as NonNullable<typeof first>] };
    expect(collisions(doubled)).toHaveLength(1);
    const element = layout.symbols.find(({ kind }) => kind === "element");
    const stray = {
      net: "X",
      points: [
        { x: 0, y: element?.y ?? 0 },
        { x: 900, y: element?.y ?? 0 },
      ],
    };
    const crossed = { ...layout, wires: [...layout.wires, stray] };
    expect(collisions(crossed).length).toBeGreaterThan(1);
    expect(netProblems(crossed, buildModule(plan)).length).toBeGreaterThan(0);
    expect(
      netProblems({ ...layout, wires: layout.wires.slice(1) }, buildModule(plan)).length,
    ).toBeGreaterThan(0);
  });
});
