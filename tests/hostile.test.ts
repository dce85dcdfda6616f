/**
 * What comes from outside and means harm: it is answered with an answer or a typed error, in bounded time and memory, and nothing
 * outside is changed. The bounds are wide: they catch work that grows with the square of the input, not a slow machine, and are
 * counted in processor time.
 */
import { assessModule, diagnose } from "electroheat/bench";
import { evaluate, sheetFunctions, sheetValue } from "electroheat/catalogue";
import { energise, type Network } from "electroheat/circuit";
import { type ElectroheatError, isElectroheatError, parseQuantity } from "electroheat/quantity";
import { conductorAmpacity } from "electroheat/wiring";
import { describe, expect, it } from "vitest";

/** Seconds of processor time, and what came of it: "answers", or the code of an error of ours. */
function metered(run: () => unknown): {
  readonly seconds: number;
  readonly outcome: string;
  readonly text: string;
  /** What an error lists as data, as JSON. */
  readonly issues: string;
} {
  const before = process.cpuUsage();
  let [outcome, text, issues] = ["answers", "", ""];
  try {
    text = JSON.stringify(run()) ?? "";
  } catch (error) {
    if (!isElectroheatError(error)) throw error;
    outcome = error.code;
    text = error.message;
    issues = JSON.stringify((error as ElectroheatError).issues);
  }
  const { user, system } = process.cpuUsage(before);
  return { seconds: (user + system) / 1e6, outcome, text, issues };
}

const MEGABYTES = 10_000_000;
const LONG = {
  digits: "9".repeat(MEGABYTES),
  spaces: `1${" ".repeat(MEGABYTES)}V`,
  points: "1.".repeat(MEGABYTES / 2),
  letters: "V".repeat(MEGABYTES),
  powers: "1e".repeat(MEGABYTES / 2),
} as const;

/** Text that is no text: halves of characters, direction marks, a NUL. */
const ODD = ["\ud800", "\udfff480 V", "480\u202eV", "480\u0000V", "𝟒𝟖𝟎 V"] as const;

/** A record as JSON with a field put in as text, so that `__proto__` is a field and not a setter. */
const withField = (name: string, value: string): unknown =>
  JSON.parse(`{"title":"x","${name}":${value},"nameplate":{"power":36000,"voltage":480}}`);

const nested = (depth: number): unknown => JSON.parse(`${"[".repeat(depth)}${"]".repeat(depth)}`);

describe("ten megabytes of text", () => {
  it.each(Object.keys(LONG) as (keyof typeof LONG)[])(
    "%s as a quantity are refused at once, in a short message",
    (kind) => {
      const { seconds, outcome, text } = metered(() => parseQuantity(LONG[kind], { unit: "V" }));
      expect(outcome).not.toBe("answers");
      expect(text.length).toBeLessThan(1000);
      expect(seconds).toBeLessThan(5);
    },
  );

  it.each(Object.keys(LONG) as (keyof typeof LONG)[])("%s in a cell are an answer to the cell", (kind) => {
    const { seconds, text } = metered(() => sheetValue("LINECURRENT", LONG[kind], 480));
    expect(text.length).toBeLessThan(1000);
    expect(seconds).toBeLessThan(5);
  });

  it("as the name of a field are refused at every boundary; the answer repeats the head of the name and its length", () => {
    const module = { banks: [{ id: "A", connection: "star", elementResistance: 10 }] };
    for (const run of [
      () => evaluate("circuit.lineCurrent", { [LONG.letters]: 1, power: 1, lineVoltage: 480 }),
      () => assessModule({ title: "x", [LONG.letters]: 1 } as never),
      () => assessModule({ title: "x", nameplate: { [LONG.letters]: 1 } } as never),
      () => diagnose({ module, readings: [], [LONG.letters]: 1 } as never),
      () => diagnose({ module, readings: [], instruments: {}, spread: { [LONG.letters]: 1 } } as never),
      () => conductorAmpacity({ edition: { name: "x", system: "IEC", [LONG.letters]: 1 } } as never),
    ]) {
      const { seconds, text, issues } = metered(run);
      expect(text + issues).toContain("unknown-field");
      expect(text).toContain("VVV … (10000");
      expect(text.length).toBeLessThan(2000);
      expect(issues.length).toBeLessThan(2000);
      expect(seconds).toBeLessThan(5);
    }
  });

  it("as the name of a branch or a node come back by their head when something is wrong with it", () => {
    const branch = { id: LONG.letters, from: "L1", to: LONG.letters, resistance: -1 };
    const { text, issues } = metered(() =>
      energise({ network: { branches: [branch] }, supply: {} } as never),
    );
    expect(text.length).toBeLessThan(10_000);
    expect(issues.length).toBeLessThan(20_000);
  });

  it("as the name of a calculation or of a sheet function are refused in a short message", () => {
    for (const run of [() => evaluate(LONG.letters, {}), () => sheetValue(LONG.letters, 1)]) {
      const { seconds, text } = metered(run);
      expect(text.length).toBeLessThan(2000);
      expect(seconds).toBeLessThan(5);
    }
  });
});

describe("text that is no text", () => {
  it.each(ODD)("%j is no quantity", (text) => {
    expect(metered(() => parseQuantity(text, { unit: "V" })).outcome).not.toBe("answers");
    const found = evaluate("circuit.lineCurrent", { power: 36_000, lineVoltage: text });
    expect(found.ok).toBe(false);
  });
});

describe("deep and wide JSON", () => {
  it.each([1000, 100_000])(
    "%i brackets deep are refused by every boundary, without a stack overflow",
    (depth) => {
      const bomb = nested(depth);
      for (const run of [
        () => assessModule(bomb as never),
        () => assessModule({ title: "x", nameplate: bomb, readings: [bomb] } as never),
        () => evaluate("circuit.lineCurrent", { power: bomb, lineVoltage: 480 }),
        () => evaluate("circuit.energise", { network: { branches: bomb }, supply: bomb }),
        () => sheetValue("LINECURRENT", bomb as never, 480),
        () => energise({ network: bomb as Network, supply: bomb as never }),
      ]) {
        const { seconds, text } = metered(run);
        expect(text.length).toBeLessThan(20_000);
        expect(seconds).toBeLessThan(5);
      }
    },
  );

  it("a hundred thousand unknown fields, or readings that are none, are refused within bounds", () => {
    const wide = Object.fromEntries(Array.from({ length: 100_000 }, (_, i) => [`field${i}`, i]));
    const list = Array.from({ length: 100_000 }, () => ({ kind: "guess" }));
    for (const run of [
      () => evaluate("circuit.lineCurrent", { ...wide, power: 1, lineVoltage: 480 }),
      () => assessModule({ title: "x", ...wide } as never),
      () => assessModule({ title: "x", readings: list } as never),
    ]) {
      const before = process.memoryUsage().heapUsed;
      const { seconds, text } = metered(run);
      expect(seconds).toBeLessThan(20);
      expect(text.length).toBeLessThan(5000);
      expect(process.memoryUsage().heapUsed - before).toBeLessThan(1e9);
    }
  });

  it("of many unknown fields the first ten are named and the rest counted, in the message and in the data", () => {
    const wide = Object.fromEntries(Array.from({ length: 100_000 }, (_, i) => [`field${i}`, i]));
    const { text, issues } = metered(() => assessModule({ title: "x", ...wide } as never));
    expect(text).toContain("field9");
    expect(text).not.toContain("field10");
    expect(text).toMatch(/and 99990 more/);
    expect(issues.length).toBeLessThan(5000);
  });

  it("of many readings that are none the message tells the first twenty, the data all", () => {
    const list = Array.from({ length: 500 }, () => ({ from: "L1", to: "S", reads: "much" }));
    const record = { title: "x", nameplate: { power: 36_000, voltage: 480 }, asFound: { ohms: list } };
    const { text, issues } = metered(() => assessModule(record as never));
    expect(text.split("\n")).toHaveLength(21);
    expect(text).toMatch(/and \d+ more$/);
    expect(JSON.parse(issues).length).toBeGreaterThanOrEqual(500);
  });
});

describe("keys of the prototype", () => {
  const names = ["__proto__", "constructor", "prototype", "toString", "hasOwnProperty", "__defineGetter__"];
  const untouched = JSON.stringify(Object.getOwnPropertyNames(Object.prototype));

  it.each(names)("%s as a field of a record is an unknown field, and changes nothing", (name) => {
    const value = '{"power":1,"polluted":true}';
    expect(metered(() => assessModule(withField(name, value) as never)).outcome).not.toBe("answers");
    const found = evaluate(
      "circuit.lineCurrent",
      JSON.parse(`{"power":36000,"lineVoltage":480,"${name}":1}`),
    );
    expect(found.ok).toBe(false);
    expect(({} as Record<string, unknown>)["polluted"]).toBe(undefined);
    expect(JSON.stringify(Object.getOwnPropertyNames(Object.prototype))).toBe(untouched);
  });

  it.each(names)("%s is no calculation, no sheet function and no unit", (name) => {
    expect(evaluate(name, {}).ok).toBe(false);
    expect(evaluate(`circuit.${name}`, {}).ok).toBe(false);
    expect(sheetFunctions().some((one) => one.id === name)).toBe(false);
    expect(metered(() => parseQuantity(`480 ${name}`, { unit: "V" })).outcome).not.toBe("answers");
  });

  it.each(names)("%s is a name like any other for a node and a branch", (name) => {
    const { branches } = energise({
      network: {
        branches: [
          { id: name, from: "L1", to: name, resistance: 10 as never },
          { id: "two", from: name, to: "L2", resistance: 10 as never },
        ],
      },
      supply: {
        lines: [
          { node: "L1", voltage: { re: 100, im: 0 } },
          { node: "L2", voltage: { re: 0, im: 0 } },
        ],
      },
    } as never);
    expect(branches.map(({ current }) => current)).toEqual([5, 5]);
  });
});
