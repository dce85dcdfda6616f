/**
 * Records that cannot be assessed: one typed error that names every offending path at once, nothing half-done, nothing thrown that
 * is not ours. Which path is wrong is known here because the slip was put there by the test.
 */
import { assessModule } from "electroheat/bench";
import { buildModule } from "electroheat/circuit";
import { isElectroheatError } from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";
import { errorOf, full, put, remove } from "./slips.ts";

const RUNS = { numRuns: 1000 };

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

  it("without a bank is missing one, as everywhere", () => {
    const record = full();
    put(record, "wiring.banks", []);
    expect(errorOf(record).issues.map(({ code, path }) => [code, path])).toEqual([
      ["missing", "wiring.banks"],
    ]);
    expect(caught(() => buildModule({ banks: [] })).code).toBe("missing");
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
            // Left to refuse: three voltages that make no triangle, and a reading below what the leads read shorted.
            if (!isElectroheatError(error)) throw error;
            expect(error.code).toBe("inconsistent");
            expect(path).toMatch(/^supply|^readings|^meter\.leads/);
          }
        },
      ),
      RUNS,
    );
  });
});
