/**
 * Records that cannot be assessed: one typed error that names every offending path at once, nothing half-done, nothing thrown that
 * is not ours. Which path is wrong is known here because the slip was put there by the test.
 */
import { assessModule } from "electroheat/bench";
import { isElectroheatError } from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { errorOf, full, put, remove } from "./slips.ts";

const RUNS = { numRuns: 1000 };
/** Where most runs assess a whole module. */
const FEWER = { numRuns: 100 };

/** Read under voltage or on the dead module: any size of them is legal. */
const READ = [
  "nameplate.power",
  "nameplate.voltage",
  "supply.v12",
  "supply.v23",
  "supply.v31",
  "asFound.supply.v23",
  "instruments.ohmmeter.leads.shorted",
  "asFound.ohms.0.reads",
  "asFound.ohms.1.reads",
  "asFound.currents.0.reads",
  "asFound.insulation.0.reads",
  "asFound.insulation.0.testVoltage",
  "asFound.joints.0.drop",
  "asFound.joints.0.rise",
  "asFound.joints.1.current",
  "asLeft.ohms.0.reads",
];
const QUANTITIES = [
  ...READ,
  "instruments.ohmmeter.resolution",
  "instruments.clamp.resolution",
  "hardware.0.makerTorque",
  "hardware.0.applied",
  "bars.0.pitch",
  "bars.0.kerf",
  "feed.device",
  "process.lossConductance",
  "process.shift",
];
const NUMBERS = [
  "temperatureFactor",
  "tolerance.low",
  "tolerance.high",
  "instruments.ohmmeter.ofReading",
  "instruments.clamp.digits",
  "asFound.joints.0.loadRatio",
  "wiring.banks.0.elementsInParallel",
  "wiring.banks.0.elementsInSeries",
  "hardware.0.count",
  "bars.0.studs",
  "process.shifts",
];
const TEXTS = [
  "title",
  "identity.technician",
  "wiring.banks.0.id",
  "wiring.joints.0.at",
  "asFound.ohms.0.from",
  "asFound.ohms.2.to",
  "asFound.ohms.1.alone",
  "asFound.currents.1.into",
  "asFound.insulation.0.from",
  "asFound.joints.1.id",
  "hardware.0.thread",
  "hardware.0.strength.grade",
  "bars.0.id",
  "feed.edition",
  "feed.installation",
];
const NAMES = ["wiring.banks.1.connection", "wiring.starPoints", "wiring.neutral"];
const REQUIRED = [
  "title",
  "nameplate.power",
  "nameplate.voltage",
  "wiring",
  "wiring.banks",
  "wiring.banks.1.id",
  "wiring.banks.1.connection",
  "supply.v23",
  "tolerance.low",
  "tolerance.high",
  "instruments.ohmmeter.ofReading",
  "instruments.ohmmeter.digits",
  "instruments.ohmmeter.leads",
  "instruments.ohmmeter.leads.shorted",
  "asFound.ohms.0.from",
  "asFound.ohms.0.to",
  "asFound.ohms.2.reads",
  "asFound.currents.0.at",
  "asFound.insulation.0.reads",
  "asFound.joints.0.id",
  "hardware.0.thread",
  "bars.0.width",
  "feed.edition",
  "process.target",
];
const RECORDS = [
  "nameplate",
  "identity",
  "wiring",
  "wiring.banks.1",
  "wiring.joints.0",
  "supply",
  "tolerance",
  "instruments",
  "instruments.ohmmeter",
  "asFound",
  "asFound.ohms.2",
  "asFound.joints.0",
  "asLeft",
  "hardware.0",
  "bars.0",
  "feed",
  "process",
];
const LISTS = [
  "wiring.banks",
  "wiring.joints",
  "asFound.ohms",
  "asFound.currents",
  "asFound.insulation",
  "asFound.joints",
  "hardware",
  "bars",
];

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
      fc.constantFrom("", ...RECORDS, "instruments.ohmmeter.leads"),
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
      FEWER,
    );
  });

  it("with any legal number in one place gives numbers, never NaN", () => {
    fc.assert(
      fc.property(fc.constantFrom(...READ), fc.double({ min: -9, max: 12, noNaN: true }), (path, power) => {
        const record = full();
        const voltage = /voltage|supply/.test(path);
        put(record, path, 10 ** (voltage ? Math.min(6, Math.max(-1, power)) : power));
        try {
          const assessment = assessModule(record);
          expect(JSON.parse(JSON.stringify(assessment))).toStrictEqual(assessment);
        } catch (error) {
          // Left to refuse: three voltages that make no triangle, and a reading below what the leads read shorted.
          if (!isElectroheatError(error)) throw error;
          expect(error.code).toBe("inconsistent");
          expect(path).toMatch(/supply|ohms|leads/);
        }
      }),
      FEWER,
    );
  });
});
