/** Every input of every function spoiled once: a finite result or a typed error, nothing else. */
import * as joint from "electroheat/joint";
import { isElectroheatError } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { numbersIn } from "../support/close.ts";
import { vectorFiles } from "../support/shared.ts";

const spoilers: readonly unknown[] = [
  0,
  -1,
  1,
  1e-9,
  1e9,
  1e-29,
  1e29,
  1e-30,
  1e30,
  1e-31,
  1e31,
  5e-324,
  1e308,
  -1e308,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  Number.NEGATIVE_INFINITY,
  "",
  "5",
  "open",
  null,
  undefined,
  true,
  {},
  [],
  10n,
  () => 1,
];

type Path = readonly (string | number)[];

/** Places of every leaf, and of every record and list inside an argument. */
function places(value: unknown, path: Path = []): Path[] {
  if (value === null || typeof value !== "object") return [path];
  return [path, ...Object.entries(value).flatMap(([key, inner]) => places(inner, [...path, key]))];
}

function withAt(value: unknown, path: Path, put: unknown): unknown {
  const [first, ...rest] = path;
  if (first === undefined) return put;
  const copy = (Array.isArray(value) ? [...value] : { ...(value as object) }) as Record<string, unknown>;
  copy[first] = withAt(copy[first], rest, put);
  return copy;
}

const functions = Object.entries(joint).filter(([, one]) => typeof one === "function") as [
  string,
  (input: unknown) => unknown,
][];
const vectors = vectorFiles()
  .flatMap(({ vectors }) => vectors)
  .filter(({ expected, call }) => expected !== undefined && call.startsWith("joint."));
/** Arguments of functions that no worked example calls. */
const more: Readonly<Record<string, unknown>> = {
  tightening: {
    torque: 6.5,
    diameter: 0.006,
    stressArea: 20.1e-6,
    nutFactorLow: 0.18,
    nutFactorHigh: 0.27,
    strength: 580e6,
    allowedShare: 0.75,
    face: { outerDiameter: 0.0125, holeDiameter: 0.0066, barThickness: 0.003 },
  },
  impliedBoltStress: { torque: 6.5, diameter: 0.006, stressArea: 20.1e-6, nutFactor: 0.2 },
  annulusPressure: { force: 5000, outerDiameter: 0.0125, holeDiameter: 0.0066 },
  equivalentBarLength: { resistance: 286e-6, resistivity: 1.7241e-8, section: 60e-6 },
  plateFilmCoefficient: { height: 0.03, surface: 65, air: 35 },
  profileAsSeen: {
    profile: [-0.05, -0.02, 0, 0.02, 0.05].map((position) => ({ position, temperature: 80 })),
    spot: 0.01,
  },
  hardwareNotes: "star washer",
  retighteningNote: "measure-and-remake",
};
const fullest = (name: string): unknown =>
  vectors
    .filter(({ call }) => call === `joint.${name}`)
    .map(({ input, inputs }) => input ?? inputs?.[0])
    .sort((a, b) => places(b).length - places(a).length)[0] ?? more[name];

describe.each(functions)("%s", (name, call) => {
  it("gives finite numbers or a typed error, whatever one input is", () => {
    const base = fullest(name);
    expect(base, "a worked example or an argument of its own").toBeDefined();
    expect(() => call(base)).not.toThrow();
    const faults: string[] = [];
    for (const path of places(base).filter((one) => one.length > 0 || typeof base !== "object")) {
      for (const spoiler of spoilers) {
        const shown = `${path.join(".")} = ${typeof spoiler === "bigint" ? "10n" : (JSON.stringify(spoiler) ?? String(spoiler))}`;
        try {
          const result = call(withAt(base, path, spoiler));
          const bad = numbersIn({ result }).filter(
            ({ value }) => !Number.isFinite(value) || Object.is(value, -0),
          );
          if (bad.length > 0) faults.push(`${shown}: ${bad[0]?.path} ${bad[0]?.value}`);
        } catch (error) {
          if (!isElectroheatError(error)) faults.push(`${shown}: ${String(error)}`);
        }
      }
    }
    expect(faults).toEqual([]);
  });
});
