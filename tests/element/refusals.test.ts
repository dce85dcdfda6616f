/** Whatever comes in, what goes out is a finite answer or an error of this library that names the argument. */
import * as element from "electroheat/element";
import {
  type Amperes,
  amperes,
  type Celsius,
  celsius,
  isElectroheatError,
  microohmMeters,
  millimeters,
  volts,
  watts,
  wattsPerSquareCentimeter,
} from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { numbersIn } from "../support/close.ts";
import { type Vector, vectorFiles } from "../support/shared.ts";

const rooms = element as unknown as Record<string, (...args: unknown[]) => unknown>;
const functions = Object.keys(rooms).filter((name) => typeof rooms[name] === "function");
const examples = new Map<string, Vector>();
for (const { vectors } of vectorFiles()) {
  for (const vector of vectors) {
    const [room, name] = vector.call.split(".") as [string, string];
    if (room === "element" && vector.expected !== undefined && !examples.has(name))
      examples.set(name, vector);
  }
}

const odd: readonly unknown[] = [
  Number.NaN,
  Number.POSITIVE_INFINITY,
  Number.NEGATIVE_INFINITY,
  -1,
  0,
  -0,
  1e308,
  1e-308,
  5e-324,
  "",
  "10",
  "OL",
  null,
  undefined,
  true,
  {},
  [],
];

/** Every way to put one odd value somewhere into an input, with the path it went to. */
function spoiled(value: unknown, path = ""): { readonly path: string; readonly input: unknown }[] {
  if (value === null || typeof value !== "object") return odd.map((one) => ({ path, input: one }));
  return Object.entries(value).flatMap(([key, inner]) =>
    spoiled(inner, path === "" ? key : `${path}.${key}`).map(({ path: at, input }) => {
      const copy = structuredClone(value) as Record<string, unknown>;
      copy[key] = input;
      return { path: at, input: copy };
    }),
  );
}

describe("functions of the room", () => {
  it("each have an example under shared/vectors, or are listed here with a reason", () => {
    // No number goes in and only names or fixed cases come out; each has an example in its docstring.
    const withoutNumbers = ["standardWhatIfs", "surfaceLoadApplications"];
    // Built from surfaceTemperature case by case; tests/element/surface.test.ts compares the two.
    const composed = ["surfaceTemperatureWhatIfs"];
    const bare = functions.filter((name) => !examples.has(name));
    expect(bare.sort()).toEqual([...withoutNumbers, ...composed].sort());
  });

  it.each([...examples])("%s answers in finite numbers or refuses by name", (name, vector) => {
    const call = rooms[name] as (...args: unknown[]) => unknown;
    let refused = 0;
    for (const { path, input } of spoiled(vector.inputs ?? [vector.input])) {
      // How a caller names the source of its own table comes back as written; it is never reckoned with.
      if (path.includes(".basis.")) continue;
      let result: unknown;
      try {
        result = call(...(input as unknown[]));
      } catch (error) {
        const where = `${name} with ${path}: ${String(error)}`;
        expect(isElectroheatError(error), where).toBe(true);
        if (isElectroheatError(error)) expect(error.message, where).toMatch(/^[a-zA-Z]/);
        refused += 1;
        continue;
      }
      const bad = numbersIn(result).filter((one) => !Number.isFinite(one.value) || Object.is(one.value, -0));
      expect(bad, `${name} with ${path}`).toEqual([]);
      if (typeof result === "number") expect(Number.isFinite(result), `${name} with ${path}`).toBe(true);
    }
    if ((vector.inputs ?? [vector.input]).length > 0) expect(refused).toBeGreaterThan(0);
  });
});

describe("what is at fault is named", () => {
  const refusal = (call: () => unknown): string => {
    try {
      call();
    } catch (error) {
      if (isElectroheatError(error)) return `${error.code} ${error.issues[0]?.path}`;
      throw error;
    }
    return "no refusal";
  };

  it("a strip is at least as wide as it is thick", () => {
    const duty = {
      power: watts(10_000),
      voltage: volts(220),
      resistivity: microohmMeters(1.09),
      temperatureFactor: 1.021,
      surfaceLoad: wattsPerSquareCentimeter(1.05),
      faces: "two",
      edge: "sheared",
    } as const;
    expect(refusal(() => element.stripForSurfaceLoad({ ...duty, widthToThickness: 1 }))).toBe("no refusal");
    expect(refusal(() => element.stripForSurfaceLoad({ ...duty, widthToThickness: 0.999 }))).toBe(
      "out-of-range widthToThickness",
    );
  });

  it("a figure that is none comes before the count of figures", () => {
    const three = { voltage: volts(480), current: Number.NaN as Amperes, power: watts(18_000) };
    expect(refusal(() => element.operatingPoint(three))).toBe("not-a-number current");
    expect(refusal(() => element.operatingPoint({ voltage: "open" as never, power: watts(1) }))).toMatch(
      / voltage$/,
    );
    expect(refusal(() => element.operatingPoint({ ...three, current: amperes(37.5) }))).toBe(
      "inconsistent input",
    );
  });

  it("a charge below absolute zero is the charge, by the name it was given", () => {
    const surface = { emissivity: 0.9, radiatingEfficiency: 0.57, chargeTemperature: -274 as Celsius };
    const duty = { power: watts(16_000), voltage: volts(220), resistivity: microohmMeters(1.09) };
    expect(refusal(() => element.radiantWire({ ...duty, ...surface, wireTemperature: celsius(1170) }))).toBe(
      "out-of-range chargeTemperature",
    );
    const strip = { thickness: millimeters(0.25), stripTemperature: celsius(1000) };
    expect(refusal(() => element.radiantStrip({ ...duty, ...surface, ...strip }))).toBe(
      "out-of-range chargeTemperature",
    );
  });
});
