/**
 * What entries say to people: every number has a symbol that is TeX, no two of one calculation the same, and a formula speaks of them. TeX is
 * read by a general-purpose typesetter. Which calculations guide work, and on what, is common practice, no published source.
 */
import { type CatalogueEntry, catalogueEntries } from "electroheat/catalogue";
import katex from "katex";
import { describe, expect, it } from "vitest";
import { resolved } from "../../src/catalogue/facts.ts";
import type { Shape } from "../../src/catalogue/shape.ts";

const entries = catalogueEntries();
const typesets = (tex: string): void => {
  katex.renderToString(tex, { throwOnError: true, strict: false, output: "mathml" });
};

function isNumber(shape: Shape): boolean {
  const at = resolved(shape);
  return typeof at === "object" && ("number" in at || ("either" in at && at.either.some(isNumber)));
}

/** Unit of the number in a shape, also beside a name; empty for a number without one, undefined where there is no number. */
function unitIn(shape: Shape): string | undefined {
  const at = resolved(shape);
  if (typeof at !== "object") return undefined;
  if ("number" in at) return at.number;
  return "either" in at ? at.either.map(unitIn).find((one) => one !== undefined) : undefined;
}

/** Names of the numbers of a record, of several records those of all. */
function numbersOf(shape: Shape): string[] | null {
  const at = resolved(shape);
  if (typeof at !== "object") return null;
  if ("record" in at) {
    const own = Object.entries(at.record).filter(([, field]) => {
      const one = resolved(field);
      if (typeof one !== "object") return false;
      return (
        "number" in one ||
        ("either" in one && one.either.some((kind) => typeof kind === "object" && "number" in kind))
      );
    });
    return own.map(([name]) => name.replace("?", ""));
  }
  if (!("either" in at)) return null;
  const parts = at.either.map(numbersOf).filter((one) => one !== null);
  return parts.length === 0 ? null : [...new Set(parts.flat())];
}

describe("units and names", () => {
  it("of inputs and results are those of their types", () => {
    const odd = entries.flatMap(({ id, inputs, output, declared }) => [
      ...inputs
        .filter(({ shape, unit, text }) => {
          const own = unitIn(shape);
          return (
            text !== (own !== undefined && own !== "") || (own !== undefined && own !== "" && unit !== own)
          );
        })
        .map(({ name }) => `${id} ${name}`),
      ...((unitIn(output.shape) || output.unit) === output.unit ? [] : [id]),
      ...([...declared].sort().join() ===
      inputs
        .map(({ name }) => name)
        .sort()
        .join()
        ? []
        : [`${id} declared`]),
      ...(JSON.stringify(output.fields && Object.keys(output.fields)) ===
      JSON.stringify(numbersOf(output.shape))
        ? []
        : [`${id} fields`]),
    ]);
    expect(odd).toEqual([]);
    // There are such of every kind.
    expect(entries.filter(({ output }) => output.fields === null).length).toBeGreaterThan(10);
    expect(entries.filter(({ output }) => unitIn(output.shape)).length).toBeGreaterThan(10);
  });
});

/** Results whose records are told by their own type, without symbols of their own. */
const TOLD_BY_TYPE = [
  "numeric.leastSquares",
  "circuit.faultEffect",
  "circuit.singlePhasing",
  "circuit.switchFault",
  "circuit.threePhaseAngleFiring",
];

describe("symbols", () => {
  it("stand for every number that goes in or comes out, and are TeX", () => {
    const numbers = entries.flatMap(({ id, inputs, output }) => [
      ...inputs.filter(({ shape }) => isNumber(shape)).map(({ name, symbol }) => [`${id} ${name}`, symbol]),
      ...(isNumber(output.shape) ? [[`${id} result`, output.symbol]] : []),
      ...(TOLD_BY_TYPE.includes(id)
        ? []
        : Object.entries(output.fields ?? {}).map(([name, { symbol }]) => [`${id} ${name}`, symbol])),
    ]);
    expect(numbers.length).toBeGreaterThan(3 * entries.length);
    expect(numbers.filter(([, symbol]) => !symbol)).toEqual([]);
    for (const symbol of new Set(numbers.map(([, one]) => one as string))) typesets(symbol);
  });

  it("are not shared by two inputs", () => {
    const twice = (symbols: readonly (string | undefined)[]) =>
      symbols.filter((one, i) => one !== undefined && symbols.indexOf(one) !== i);
    const shared = entries.flatMap(({ id, inputs }) =>
      twice(inputs.map(({ symbol }) => symbol)).map((one) => `${id} ${one}`),
    );
    expect(shared).toEqual([]);
  });

  /** The letter of a symbol, without what tells it from others of the same letter. */
  const letterOf = (symbol: string): string =>
    symbol.replace(/[_^'].*$/, "").replace(/^\\[a-z]+ (?=[A-Z])/, "");
  /** Inputs that the formula leaves to its table or its words. */
  const LEFT_OUT = new Set([
    "numeric.studentQuantile degreesOfFreedom",
    "circuit.balancedSupply sourceResistance",
    "circuit.phaseAngleFiring resistance",
    "circuit.oneSidedFiring resistance",
    "circuit.threePhaseAngleFiring lineVoltage",
    "circuit.threePhaseAngleFiring branchResistance",
    "joint.dropTrend halfWidth",
    "wiring.insulationVerdicts nominalVoltage",
    "wiring.insulationVerdicts testVoltage",
    "wiring.insulationVerdicts temperature",
    "wiring.insulationVerdicts halfWidth",
    "process.ductHeaterCheck inlet",
    "process.ductHeaterCheck pressure",
    "bench.fitTerminalReadings significance",
  ]);
  const absent = ({ inputs, tex = "" }: CatalogueEntry) =>
    inputs.filter(({ symbol }) => {
      if (symbol === undefined) return false;
      const letter = letterOf(symbol);
      // °C in the symbol, kelvins in the law.
      return !tex.includes(letter) && !(letter === "\\vartheta" && /T/.test(tex));
    });

  it("are spoken of by the formula", () => {
    const missing = entries
      .filter(({ tex, kind }) => tex !== undefined && kind !== "lookup")
      .flatMap((entry) => absent(entry).map(({ name }) => `${entry.id} ${name}`));
    expect(missing.filter((one) => !LEFT_OUT.has(one))).toEqual([]);
    expect([...LEFT_OUT].filter((one) => !missing.includes(one))).toEqual([]);
  });

  it("of a single result are on a side of the formula", () => {
    const missing = entries.filter(({ output: { symbol }, tex, kind }) => {
      // A quotient is spelled another way in the formula.
      if (symbol === undefined || symbol.includes("/") || tex === undefined || kind === "lookup")
        return false;
      const letter = letterOf(symbol);
      return !tex.includes(letter) && !(letter === "\\vartheta" && /T/.test(tex));
    });
    expect(missing.map(({ id }) => id)).toEqual([]);
  });
});

describe("formulas", () => {
  const KINDS = ["physics", "lookup", "judgement", "transform"];
  it.each(entries.map((entry) => [entry.id, entry] as const))("%s", (id, entry) => {
    const { kind, tex, method, text, cautions, room, name, inputs } = entry;
    expect(KINDS).toContain(kind);
    expect(id).toBe(`${room}.${name}`);
    if (tex !== undefined) {
      expect(tex).not.toBe("");
      typesets(tex);
    }
    if (kind === "physics") expect(`${tex ?? ""}${method ?? ""}`).not.toBe("");
    for (const words of [text, method, ...cautions]) if (words !== undefined) expect(words).toMatch(/\S.*\S/);
    for (const caution of cautions) expect(caution).toMatch(/^[A-Z].*\.$/);
    for (const { is, unit } of inputs) if (is === "degrees") expect(unit).toBe("°");
  });
});

describe("cautions", () => {
  const LIVE = [
    ...["energise", "faultEffect", "faultScan", "burstReadings", "singlePhasing", "switchFault"],
    ...["resistanceFromRise", "profileAsSeen", "measuredJoint", "riseAtCurrent", "riseAtFullLoad"],
    ...["branchesFromLineCurrents", "neutralCurrentFired", "operatingPoint", "powerFromVoltageAndCurrent"],
    ...["resistanceFromVoltageAndCurrent", "coldInrushCurrent", "elementOnVoltage"],
    ...["diagnose", "nextMeasurements", "diagnosisText"],
  ];
  const DEAD = [
    ...["terminalReading", "terminalResistance", "coldResistance", "coldTarget", "shortedTurns"],
    ...["ageingFromDiameter", "ageingFromResistance", "resistanceAtTemperature"],
    ...["temperatureFromResistance", "temperaturesFromFactor", "temperatureFromFactor", "correctedReading"],
    ...["deltaFromLineReadings", "fitTerminalReadings", "diagnose", "nextMeasurements", "diagnosisText"],
  ];
  const HOT = [
    ...["radiantTemperature", "radiantTemperatureAtVoltage", "heatBalance", "surfaceTemperature"],
    ...["surfaceTemperatureWhatIfs", "elementOnVoltage", "wireCoreTemperature", "sheathedWireTemperatures"],
  ];
  it.each<readonly [string, readonly string[], RegExp]>([
    ["live parts", LIVE, /may be live.*qualified/],
    ["an ohmmeter", DEAD, /dead, isolated and locked-out/],
    ["hot equipment", HOT, /measuring it.*licensed electrician/],
    ["an insulation tester", ["insulationInParallel", "insulationOfGroup"], /insulation tester.*dead/],
    ["a joint", ["torqueFromPreload"], /locked out and cold.*maker's torque/],
    ["a bar", ["barCriticalCurrent"], /not an ampacity.*licensed electrician/],
  ])("stand with what guides work on %s", (_what, names, words) => {
    const silent = names.filter((name) => {
      const entry = entries.find((one) => one.name === name);
      return !entry?.cautions.some((caution) => words.test(caution));
    });
    expect(silent).toEqual([]);
  });
});
