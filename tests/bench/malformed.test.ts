/**
 * Records that cannot be assessed: one typed error that names every offending path at once, nothing half-done, nothing thrown that
 * is not ours. Which path is wrong is known here because the slip was put there by the test.
 */
import { assessModule, type BenchRecord } from "electroheat/bench";
import { type ElectroheatError, type ErrorCode, isElectroheatError } from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const RUNS = { numRuns: 1000 };

/** A full record: every field there is. */
const full = (): BenchRecord => ({
  title: "invented module",
  nameplate: { power: "60 kW", voltage: "480 V" },
  wiring: {
    banks: [
      { id: "A", connection: "star", elementsInParallel: 1, elementsInSeries: 1 },
      { id: "B", connection: "star" },
    ],
    starPoints: "separate",
    neutral: "floating",
  },
  supply: { v12: "478 V", v23: "481 V", v31: "479 V" },
  temperatureFactor: 1.04,
  tolerance: { low: -0.05, high: 0.1 },
  meter: { ofReading: 0.005, digits: 2, resolution: "0.01 Ω", leads: { shorted: "0.20 Ω" } },
  readings: [
    { from: "L1", to: "S-A", reads: "7.62 Ω", alone: "A" },
    { from: "L2", to: "S-A", reads: 7.66, alone: "A-L2" },
    { from: "L3", to: "S-B", reads: "OL", alone: "B" },
  ],
  joints: [
    { id: "J1", drop: "3.9 mV", current: "64.2 A" },
    { id: "J2", drop: 0.0184, current: 64.2 },
  ],
});

function errorOf(record: unknown): ElectroheatError {
  try {
    assessModule(record as BenchRecord);
  } catch (error) {
    if (isElectroheatError(error)) return error;
    throw error;
  }
  throw new Error("no error");
}
const pathsOf = (record: unknown): string[] => errorOf(record).issues.map(({ path }) => path);

type Loose = Record<string, unknown>;
function parentOf(record: unknown, path: string): { readonly holder: Loose; readonly key: string } {
  const parts = path.split(".");
  const key = parts.pop() as string;
  return { holder: parts.reduce((at, part) => (at as Loose)[part], record) as Loose, key };
}
function put(record: unknown, path: string, value: unknown): void {
  const { holder, key } = parentOf(record, path);
  Object.defineProperty(holder, key, { value, enumerable: true, configurable: true, writable: true });
}
function remove(record: unknown, path: string): void {
  const { holder, key } = parentOf(record, path);
  delete holder[key];
}

const QUANTITIES = [
  "nameplate.power",
  "nameplate.voltage",
  "supply.v12",
  "supply.v23",
  "supply.v31",
  "meter.resolution",
  "meter.leads.shorted",
  "readings.0.reads",
  "readings.1.reads",
  "joints.0.drop",
  "joints.1.current",
];
const NUMBERS = [
  "temperatureFactor",
  "tolerance.low",
  "tolerance.high",
  "meter.ofReading",
  "meter.digits",
  "wiring.banks.0.elementsInParallel",
  "wiring.banks.0.elementsInSeries",
];
const TEXTS = [
  "title",
  "wiring.banks.0.id",
  "readings.0.from",
  "readings.2.to",
  "readings.1.alone",
  "joints.1.id",
];
const NAMES = ["wiring.banks.1.connection", "wiring.starPoints", "wiring.neutral"];
const REQUIRED = [
  "title",
  "nameplate",
  "nameplate.power",
  "nameplate.voltage",
  "wiring",
  "wiring.banks",
  "wiring.banks.1.id",
  "wiring.banks.1.connection",
  "supply.v23",
  "tolerance.low",
  "tolerance.high",
  "meter.ofReading",
  "meter.digits",
  "meter.leads",
  "meter.leads.shorted",
  "readings.0.from",
  "readings.0.to",
  "readings.2.reads",
  "joints.0.id",
  "joints.0.drop",
  "joints.1.current",
];
const RECORDS = [
  "nameplate",
  "wiring",
  "wiring.banks.1",
  "supply",
  "tolerance",
  "meter",
  "readings.2",
  "joints.0",
];
const LISTS = ["wiring.banks", "readings", "joints"];

const HUGE = "7".repeat(100_000);
const anything = fc.constantFrom<unknown>(true, {}, [], () => 1, Symbol("s"), 10n, new Date(0), /x/);

/** A slip: what is done to the record, and where it must be reported. */
interface Slip {
  readonly path: string;
  readonly apply: (record: unknown) => void;
  readonly what: string;
}
const slip = (path: string, value: unknown, what: string = typeof value): Slip => ({
  path,
  what: `${path}: ${what}`,
  apply: (record) => put(record, path, value),
});
const anySlip: fc.Arbitrary<Slip> = fc.oneof(
  fc
    .tuple(
      fc.constantFrom(...QUANTITIES),
      fc.oneof(
        anything,
        fc.constantFrom<unknown>(
          Number.NaN,
          Number.POSITIVE_INFINITY,
          Number.NEGATIVE_INFINITY,
          -7.68,
          1e300,
          1e-300,
          "",
          "   ",
          null,
          "-7.9 Ω",
          "7,9 Ω",
          "seven ohms",
          "7.9 kg",
          "1e400 Ω",
          "NaN Ω",
          "7.9",
          HUGE,
        ),
      ),
    )
    .map(([path, value]) => slip(path, value, String(value).slice(0, 20))),
  fc
    .tuple(
      fc.constantFrom(...NUMBERS),
      fc.oneof(
        anything,
        fc.constantFrom<unknown>(Number.NaN, Number.POSITIVE_INFINITY, -7.68, 1e9, "1", "", null),
      ),
    )
    .map(([path, value]) => slip(path, value)),
  fc
    .tuple(fc.constantFrom(...TEXTS), fc.oneof(anything, fc.constantFrom<unknown>(5, "", "  \t", null, HUGE)))
    .map(([path, value]) => slip(path, value)),
  fc
    .tuple(
      fc.constantFrom(...NAMES),
      fc.oneof(anything, fc.constantFrom<unknown>(5, "", "zigzag", null, HUGE)),
    )
    .map(([path, value]) => slip(path, value)),
  fc.constantFrom(...REQUIRED).map((path) => ({
    path,
    what: `${path}: left out`,
    apply: (record: unknown) => remove(record, path),
  })),
  fc
    .tuple(fc.constantFrom(...RECORDS), fc.constantFrom<unknown>(5, "x", true, [], null))
    .map(([path, value]) => slip(path, value)),
  fc
    .tuple(fc.constantFrom(...LISTS), fc.constantFrom<unknown>(5, "x", true, {}, null))
    .map(([path, value]) => slip(path, value)),
  fc
    .tuple(
      fc.constantFrom("", ...RECORDS, "meter.leads"),
      fc.constantFrom("colour", "Power", "__proto__", "constructor", "toString", "hasOwnProperty", ""),
    )
    .map(([holder, key]) => {
      const before = holder === "" ? "" : `${holder}.`;
      const { apply } = slip(`${before}${key}`, "x");
      // A field without a name is shown as "".
      return { path: `${before}${key || '""'}`, what: `${before}${key}: unknown field`, apply };
    }),
);

/** Slips that do not lie inside one another. */
const someSlips = fc
  .array(anySlip, { minLength: 1, maxLength: 5 })
  .filter((slips) =>
    slips.every((one, i) =>
      slips.every(
        (other, j) => i === j || (one.path !== other.path && !one.path.startsWith(`${other.path}.`)),
      ),
    ),
  );

describe("a record with slips", () => {
  it("is whole to begin with", () => {
    expect(assessModule(full()).title).toBe("invented module");
  });

  it("is refused with every slip named, and nothing else", () => {
    fc.assert(
      fc.property(someSlips, (slips) => {
        const record = full();
        for (const { apply } of slips) apply(record);
        const error = errorOf(record);
        const paths = error.issues.map(({ path }) => path);
        for (const { path, what } of slips) expect(paths, what).toContain(path);
        const known = new Set(slips.map(({ path }) => path));
        for (const path of paths) expect(known, `also reported: ${path}`).toContain(path);
        // The sentences fit on a page whatever was typed in.
        for (const { message, received } of error.issues) {
          expect(message.length).toBeLessThan(400);
          expect(received.length).toBeLessThan(120);
        }
        expect(error.code).toBe(error.issues[0]?.code);
        expect(Object.prototype).not.toHaveProperty("colour");
      }),
      RUNS,
    );
  });

  it("that is no record at all is refused as such", () => {
    fc.assert(
      fc.property(fc.anything(), (value) => {
        expect(errorOf(value).issues.length).toBeGreaterThan(0);
      }),
      RUNS,
    );
  });

  it("with anything at all in one place is either assessed or refused by us", () => {
    const places = [...QUANTITIES, ...NUMBERS, ...TEXTS, ...NAMES, ...RECORDS, ...LISTS];
    fc.assert(
      fc.property(fc.constantFrom(...places), fc.anything(), (path, value) => {
        const record = full();
        put(record, path, value);
        try {
          const assessment = assessModule(record);
          expect(JSON.parse(JSON.stringify(assessment))).toStrictEqual(assessment);
        } catch (error) {
          if (!isElectroheatError(error)) throw error;
        }
      }),
      RUNS,
    );
  });

  it("with any legal number in one place gives numbers, never NaN", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...QUANTITIES.filter((path) => path !== "meter.resolution")),
        fc.double({ min: -9, max: 12, noNaN: true }),
        (path, power) => {
          const record = full();
          put(record, path, 10 ** power);
          try {
            const assessment = assessModule(record);
            expect(JSON.parse(JSON.stringify(assessment))).toStrictEqual(assessment);
          } catch (error) {
            // A supply whose three voltages make no triangle is the one thing left to refuse.
            if (!isElectroheatError(error)) throw error;
            expect(path).toMatch(/^supply/);
          }
        },
      ),
      RUNS,
    );
  });
});

describe("what was seen and what is taken", () => {
  const codeAt = (path: string, value: unknown): readonly [ErrorCode, string] => {
    const record = full();
    if (value === undefined) remove(record, path);
    else put(record, path, value);
    const [first] = errorOf(record).issues;
    return [first?.code as ErrorCode, first?.message ?? ""];
  };

  it.each([
    ["nameplate.power", "", "missing"],
    ["nameplate.power", undefined, "missing"],
    ["nameplate.power", -60_000, "out-of-range"],
    ["nameplate.power", Number.NaN, "not-a-number"],
    ["nameplate.power", "60 kg", "wrong-type"],
    ["readings.0.reads", "7,9 Ω", "ambiguous"],
    ["readings.0.reads", Number.POSITIVE_INFINITY, "not-a-number"],
    ["meter.leads.shorted", "OL", "out-of-range"],
    ["wiring.banks.0.connection", "zigzag", "unknown-name"],
    ["wiring.banks.0.elementsInParallel", 1.5, "out-of-range"],
    ["meter.ofReading", 0.9, "out-of-range"],
    ["colour", "red", "unknown-field"],
    ["title", "   ", "missing"],
  ] as const)("%s = %s is %s", (path, value, code) => {
    const [seen, message] = codeAt(path, value);
    expect(seen).toBe(code);
    expect(message.startsWith(`${path}: `)).toBe(true);
  });

  it("tells how to write an open reading", () => {
    expect(codeAt("readings.0.reads", Number.POSITIVE_INFINITY)[1]).toContain('"OL"');
  });

  it("lists the names there are", () => {
    expect(codeAt("wiring.banks.0.connection", "zigzag")[1]).toContain("star, delta, wye");
    expect(codeAt("wiring.banks.0.elementsInParallel", 1.5)[1]).toContain("a whole number");
    expect(codeAt("readings.0.to", "S-C")[1]).toContain("S-A");
    expect(codeAt("readings.0.alone", "C")[1]).toContain("A, A-L1");
  });
});

describe("a record whose fields are right but do not fit together", () => {
  it("names every wrong node, branch and repeated joint at once, and the missing meter with them", () => {
    const record = full() as unknown as Loose;
    delete record["meter"];
    put(record, "readings.0.from", "L4");
    put(record, "readings.1.alone", "Z");
    put(record, "readings.2.to", "L3");
    put(
      record,
      "joints",
      ["J1", "J1", "J1"].map((id) => ({ id, drop: "1 mV", current: "10 A" })),
    );
    expect(pathsOf(record).sort()).toEqual(
      ["joints.1.id", "joints.2.id", "meter", "readings.0.from", "readings.1.alone", "readings.2.to"].sort(),
    );
  });

  it("wants the meter's last digit once, not for every plain number", () => {
    const record = full();
    remove(record, "meter.resolution");
    put(record, "readings.0.reads", 7.62);
    expect(pathsOf(record)).toEqual(["meter.resolution"]);
  });

  it("never assumes tied or separate star points", () => {
    const record = full();
    remove(record, "wiring.starPoints");
    expect(pathsOf(record)).toEqual(["wiring.starPoints"]);
  });

  it("refuses three voltages that make no triangle", () => {
    const record = full();
    put(record, "supply.v12", "1000 V");
    const [first] = errorOf(record).issues;
    expect(first?.path.startsWith("supply")).toBe(true);
  });
});

describe("what looks odd but is legal", () => {
  const warnings = (change: (record: BenchRecord) => void): readonly string[] => {
    const record = full();
    change(record);
    return assessModule(record).warnings.map(({ path, code }) => `${code} ${path}`);
  };

  it("is silent about a sound record", () => {
    expect(warnings(() => undefined)).toEqual([]);
  });

  it("36 W for a three-phase module: kilowatts typed where watts are taken", () => {
    expect(warnings((record) => put(record, "nameplate.power", 36))).toContain("suspicious nameplate.power");
  });

  it("277 V line to line where the plate says 480 V: a voltage to neutral", () => {
    const record = full();
    for (const name of ["v12", "v23", "v31"]) put(record, `supply.${name}`, "277 V");
    const { warnings: found } = assessModule(record);
    expect(found.map(({ path }) => path)).toEqual(["supply.v12", "supply.v23", "supply.v31"]);
    expect(found[0]?.message).toContain("to neutral");
  });

  it("leads that the readings ask to be below zero", () => {
    const record: BenchRecord = {
      ...full(),
      meter: { ofReading: 0.005, digits: 2, leads: "unknown" },
      wiring: { banks: [{ id: "A", connection: "star" }] },
      readings: [
        ["L1", "S", "7.50 Ω"],
        ["L2", "S", "7.50 Ω"],
        ["L3", "S", "7.50 Ω"],
        ["L1", "L2", "15.50 Ω"],
        ["L2", "L3", "15.50 Ω"],
        ["L3", "L1", "15.50 Ω"],
      ].map(([from, to, reads]) => ({ from: from!, to: to!, reads: reads! })),
    };
    const { warnings: found } = assessModule(record);
    expect(found.map(({ path }) => path)).toEqual(["meter.leads"]);
    expect(found[0]?.message).toContain("cannot be");
  });
});
