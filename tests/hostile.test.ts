/**
 * What comes from outside and means harm: it is answered with an answer or a typed error, in bounded time and memory, and nothing
 * outside is changed. The bounds are wide: they catch work that grows with the square of the input, not a slow machine, and are
 * counted in processor time.
 */
import { assessModule } from "electroheat/bench";
import { evaluate, sheetFunctions, sheetValue } from "electroheat/catalogue";
import { energise, type Network } from "electroheat/circuit";
import { isElectroheatError, parseQuantity } from "electroheat/quantity";
import { describe, expect, it } from "vitest";

/** Seconds of processor time, and what came of it: "answers", or the code of an error of ours. */
function metered(run: () => unknown): {
  readonly seconds: number;
  readonly outcome: string;
  readonly text: string;
} {
  const before = process.cpuUsage();
  let [outcome, text] = ["answers", ""];
  try {
    text = JSON.stringify(run()) ?? "";
  } catch (error) {
    if (!isElectroheatError(error)) throw error;
    outcome = error.code;
    text = error.message;
  }
  const { user, system } = process.cpuUsage(before);
  return { seconds: (user + system) / 1e6, outcome, text };
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
const ODD = ["\ud800", "\udfff480 V", "480\u202eV", "480\u0000V", "４８０ V", "𝟒𝟖𝟎 V"] as const;

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

  it("as the name of a field are refused; the answer repeats the name as its path and in its sentence, and no more", () => {
    const { seconds, text } = metered(() =>
      evaluate("circuit.lineCurrent", { [LONG.letters]: 1, power: 1, lineVoltage: 480 }),
    );
    expect(text.length).toBeLessThan(2.1 * MEGABYTES);
    expect(seconds).toBeLessThan(10);
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
      const { seconds } = metered(run);
      expect(seconds).toBeLessThan(20);
      expect(process.memoryUsage().heapUsed - before).toBeLessThan(1e9);
    }
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
