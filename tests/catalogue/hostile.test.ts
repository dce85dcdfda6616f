/**
 * Values of any make thrown at every entry: an answer or a typed error, never an exception, never NaN, and no change to anything
 * that was passed or to any global.
 */
import { catalogueEntries, evaluate, sheetFunctions, sheetStatus, sheetValue } from "electroheat/catalogue";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { goodInputs } from "./examples.ts";

const entries = catalogueEntries();
const sheets = new Map(sheetFunctions().map((one) => [one.id, one]));

class Custom {
  readonly power = 5;
}

const cyclic: Record<string, unknown> = { power: 1 };
cyclic["self"] = cyclic;
cyclic["branches"] = [cyclic];
const deep = (): unknown => {
  let at: unknown = 1;
  for (let i = 0; i < 10_000; i += 1) at = i % 2 === 0 ? [at] : { branches: at };
  return at;
};
const throwing = (): object =>
  new Proxy(
    {},
    {
      get: () => {
        throw new Error("trap");
      },
      ownKeys: () => {
        throw new Error("trap");
      },
      getPrototypeOf: () => {
        throw new Error("trap");
      },
    },
  );
const revoked = (): object => {
  const { proxy, revoke } = Proxy.revocable([], {});
  revoke();
  return proxy;
};
const getter = (): object =>
  Object.defineProperty({}, "power", {
    enumerable: true,
    get: () => {
      throw new Error("a getter ran");
    },
  });

/** Values that no JSON holds, and those that JSON holds to do harm. */
const NASTY: readonly (() => unknown)[] = [
  () => undefined,
  () => null,
  () => Number.NaN,
  () => Number.POSITIVE_INFINITY,
  () => -0,
  () => 5n,
  () => Symbol("power"),
  () => new Date(0),
  () => new Custom(),
  () => new Map([["power", 1]]),
  () => new Float64Array([1, 2]),
  () => Object.create({ power: 36_000, lineVoltage: 480 }),
  () => Object(5),
  () => Object("5 W"),
  () => /x/,
  () => () => 5,
  () => cyclic,
  deep,
  throwing,
  revoked,
  getter,
  () => JSON.parse('{"__proto__": {"polluted": 1}, "constructor": {"prototype": {"polluted": 1}}}'),
  () => ({ toString: () => "5", valueOf: () => 5 }),
  () => ({ [Symbol.toPrimitive]: () => 5 }),
  () => "x".repeat(1_000_000),
  () => " ".repeat(1_000_000),
  () => "\u{D800}",
  () => "1e999 W",
  () => "5 W\u0000",
  () => "NaN",
  () => '{"a":'.repeat(50_000),
  () => "[".repeat(100_000),
  () => new Array(1_000_000),
  () => Object.assign([], { length: 4_000_000_000 }),
  () => [undefined, null],
  () => Object.assign(new Array(3), { 1: 5 }),
  () => true,
  () => ({}),
  () => [],
  () => [[]],
];

type Make = () => unknown;

/** Makers of values: the values themselves would not survive the generator's own look at them. */
const nasty: fc.Arbitrary<Make> = fc.oneof(
  fc.constantFrom(...NASTY),
  fc
    .anything({
      withBigInt: true,
      withDate: true,
      withMap: true,
      withNullPrototype: true,
      withTypedArray: true,
      maxDepth: 3,
    })
    .map(
      (value): Make =>
        () =>
          value,
    ),
  fc.double().map(
    (value): Make =>
      () =>
        value,
  ),
  fc.string().map(
    (value): Make =>
      () =>
        value,
  ),
);

function numbersIn(value: unknown, seen = new Set<unknown>()): number[] {
  if (typeof value === "number") return [value];
  if (typeof value !== "object" || value === null || seen.has(value)) return [];
  seen.add(value);
  return Object.values(value).flatMap((one) => numbersIn(one, seen));
}

/** What an evaluation must be whatever came in. */
function expectTyped(id: string, inputs: unknown): void {
  const answer = evaluate(id, inputs);
  if (answer.ok) {
    for (const number of numbersIn(answer.value)) expect(number - number, id).toBe(0);
    return;
  }
  const { code, argument, message, expected, received } = answer.error;
  expect(code, `${id}: ${message}`).not.toBe("unexpected");
  for (const text of [code, argument, message, expected, received]) expect(typeof text).toBe("string");
  expect(message.length).toBeLessThan(3000);
}

const globals = (): string =>
  JSON.stringify([
    Reflect.ownKeys(globalThis).map(String).sort(),
    Reflect.ownKeys(Object.prototype).map(String),
    Reflect.ownKeys(Array.prototype).map(String),
    Reflect.ownKeys(Function.prototype).map(String),
  ]);

/** Runs of each of four properties: 200 random values an entry, beside the fixed ones. */
const RUNS = 50;

describe("good inputs", () => {
  it("are known for every entry, and answered", () => {
    const without = entries.filter(({ id }) => goodInputs(id) === undefined);
    expect(without.map(({ id }) => id)).toEqual([]);
    const refused = entries.flatMap(({ id }) => {
      const answer = evaluate(id, goodInputs(id));
      return answer.ok ? [] : [`${id}: ${answer.error.message}`];
    });
    expect(refused).toEqual([]);
  });
});

describe.each(entries.map(({ id }) => id))("%s", (id) => {
  const good = goodInputs(id) ?? {};
  const names = Object.keys(good);

  it("answers anything in place of its inputs with a value or a typed error", () => {
    for (const make of NASTY) expectTyped(id, make());
    fc.assert(
      fc.property(nasty, (make) => expectTyped(id, make())),
      { numRuns: RUNS },
    );
  });

  it("answers anything in place of one input, or inside one", () => {
    // A function without inputs has none to replace: unknown ones are tried above.
    if (names.length === 0) return;
    for (const name of names) {
      for (const make of NASTY) expectTyped(id, { ...good, [name]: make() });
    }
    fc.assert(
      fc.property(fc.constantFrom(...names), nasty, (name, make) =>
        expectTyped(id, { ...good, [name]: make() }),
      ),
      { numRuns: RUNS },
    );
    const inside = names.filter((name) => typeof good[name] === "object");
    if (inside.length === 0) return;
    fc.assert(
      fc.property(fc.constantFrom(...inside), fc.nat(), nasty, (name, at, make) => {
        expectTyped(id, { ...good, [name]: replaced(good[name], at, make()) });
      }),
      { numRuns: RUNS },
    );
  });

  it("answers any cells with a value and a status", () => {
    const sheet = sheets.get(id);
    const check = (cells: readonly unknown[]): void => {
      const answer = sheet?.answer(...cells);
      expect(answer?.code).not.toBe("unexpected");
      for (const number of numbersIn(answer?.value)) expect(number - number).toBe(0);
      expect(["string", "object"]).toContain(typeof answer?.status);
    };
    for (const make of NASTY) check(sheet?.parameters.map(() => make()) ?? []);
    fc.assert(
      fc.property(fc.array(nasty, { maxLength: 8 }), (makes) => check(makes.map((make) => make()))),
      { numRuns: RUNS },
    );
  });

  it("changes neither its inputs nor a global", () => {
    const before = globals();
    const frozen = deepFrozen(structuredClone(good));
    const answer = evaluate(id, frozen);
    expect(answer.ok).toBe(true);
    expect(frozen).toEqual(good);
    for (const make of NASTY) evaluate(id, { ...good, [names[0] ?? "x"]: make() });
    expect(globals()).toBe(before);
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  });
});

describe("ids and names of any make", () => {
  it("are unknown names", () => {
    for (const make of NASTY) {
      const answer = evaluate(make() as string, {});
      expect(answer.ok).toBe(false);
      expect(!answer.ok && answer.error.code).toBe("unknown-name");
      expect(sheetValue(make(), 1)).toBe("name: no such function");
      expect(sheetStatus(make(), 1)).toBe("name: no such function");
    }
    for (const id of ["__proto__", "constructor", "circuit.constructor", "circuit.__proto__", "circuit"]) {
      expect(evaluate(id, {}).ok).toBe(false);
    }
  });
});

function deepFrozen<T>(value: T): T {
  if (typeof value === "object" && value !== null) {
    for (const one of Object.values(value)) deepFrozen(one);
    Object.freeze(value);
  }
  return value;
}

/** The same structure with one of its leaves or branches replaced. */
function replaced(value: unknown, at: number, by: unknown): unknown {
  if (typeof value !== "object" || value === null) return by;
  const keys = Object.keys(value);
  if (keys.length === 0) return by;
  const key = keys[at % keys.length] as string;
  const rest = Math.floor(at / keys.length);
  const inner = (value as Record<string, unknown>)[key];
  const next = rest % 3 === 0 ? by : replaced(inner, rest, by);
  return Array.isArray(value)
    ? value.map((one, i) => (String(i) === key ? next : one))
    : { ...value, [key]: next };
}

describe("extremes that a search once found to give Infinity", () => {
  it.each([
    ["material.awgNumber", "diameter", 5e-324],
    ["material.awgFromDiameter", "diameter", 5e-324],
    ["bench.correctedReading", "resolution", Number.MAX_VALUE],
    ["process.actualAirFlow", "temperature", Number.MAX_VALUE],
    ["process.ductHeaterCheck", "pressure", 5e-324],
  ])("%s refuses %s of %d", (id, name, value) => {
    const good = goodInputs(id) ?? {};
    const inputs = name in good ? { ...good, [name]: value } : value;
    const answer = evaluate(id, inputs);
    expect(answer.ok ? answer.value : answer.error.code).toBe("out-of-range");
  });
});
