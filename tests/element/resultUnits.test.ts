/**
 * A result beyond float64 is refused in the unit of what was asked for. The units come from the types of the results (written by
 * `npm run facts`), the inputs from the worked examples with one or two figures driven to the ends of float64.
 */
import * as element from "electroheat/element";
import { isElectroheatError } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { factsOf, resolved } from "../../src/catalogue/facts.ts";
import type { Shape } from "../../src/catalogue/shape.ts";
import { numbersIn } from "../support/close.ts";
import { vectorFiles } from "../support/shared.ts";
import { spoiled } from "../support/spoil.ts";

const room = element as unknown as Record<string, (...args: unknown[]) => unknown>;
/** Units of a step on the way that is refused by itself: V²/P, the section of the wire, the air's viscosity and diffusivity. */
const ON_THE_WAY: { readonly [name: string]: string } = {
  radiantWire: "Ω",
  wireForSurfaceLoad: "m²",
  heatBalance: "m²/s",
  surfaceTemperature: "m²/s",
  elementOnVoltage: "m²/s",
};
/** Functions that read the air take long: one figure at a time. */
const SLOW = ["heatBalance", "surfaceTemperature", "elementOnVoltage"];
const ENDS = [Number.MAX_VALUE, 1.7e308, 1e200, 1e-200, 1e-308];

/** Units of all numbers of a shape; a ratio has the unit 1. */
function unitsIn(shape: Shape): string[] {
  const known = resolved(shape);
  if (typeof known !== "object") return [];
  if ("number" in known) return [known.number || "1"];
  if ("either" in known) return known.either.flatMap(unitsIn);
  if ("list" in known) return unitsIn(known.list);
  return "record" in known ? Object.values(known.record).flatMap(unitsIn) : [];
}

/** Every way to drive one of the figures, or two, to an end of float64. */
function* driven(input: unknown, two: boolean): Generator<unknown> {
  // Of a list of like things the first stands for all.
  const paths = numbersIn(input).flatMap(({ path }) => (/\w\.[1-9]\d*$/.test(path) ? [] : [path.slice(1)]));
  for (const [i, path] of paths.entries())
    for (const end of ENDS) {
      const one = spoiled(input, path, end);
      yield one;
      if (two)
        for (const other of paths.slice(i + 1)) for (const second of ENDS) yield spoiled(one, other, second);
    }
}

const examples = vectorFiles()
  .flatMap(({ vectors }) => vectors)
  .filter(({ call, expected }) => call.startsWith("element.") && expected !== undefined);
/** Of each function the example with the most figures: not the one whose element is open. */
const calls = new Map<string, unknown[]>();
for (const { call, input, inputs = [input] } of examples) {
  const name = call.slice("element.".length);
  if (numbersIn(inputs).length > numbersIn(calls.get(name)).length) calls.set(name, inputs);
}
/** Of each function the units that it refused a result in. */
const refusedIn = new Map<string, Set<string | undefined>>();

describe("a result beyond float64", () => {
  it.each([...calls])("of %s is refused in a unit of its type", (name, inputs) => {
    const units = new Set<string | undefined>(unitsIn(factsOf("element").functions[name]?.output as Shape));
    if (name in ON_THE_WAY) units.add(ON_THE_WAY[name]);
    const seen = new Set<string | undefined>();
    refusedIn.set(name, seen);
    for (const input of driven(inputs, !SLOW.includes(name))) {
      try {
        room[name]?.(...(input as unknown[]));
      } catch (error) {
        if (!isElectroheatError(error)) throw error;
        if (error.argument === "result") seen.add(error.issues[0]?.unit);
      }
    }
    expect([...seen].filter((unit) => !units.has(unit))).toEqual([]);
  });

  it("is met for most functions", () => {
    const met = [...refusedIn].filter(([, seen]) => seen.size > 0).map(([name]) => name);
    expect(met.length).toBeGreaterThan(50);
  });
});
