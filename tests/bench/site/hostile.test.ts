/** Whatever a record may legally hold as text and figures: an answer in finite numbers, or a refusal under the record's own paths. */
import type { BenchRecord, RecordFastening, RecordFeed } from "electroheat/bench";
import { isElectroheatError } from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assessBars } from "../../../src/bench/site/bars.ts";
import { assessFeed } from "../../../src/bench/site/feed.ts";
import { assessHardware } from "../../../src/bench/site/hardware.ts";
import { assessInsulation } from "../../../src/bench/site/insulation.ts";
import { read } from "./made.ts";

const anyText = fc.oneof(
  fc.string({ minLength: 1, maxLength: 12 }),
  fc.stringMatching(/^[M#]?[0-9/x.-]{1,8}$/),
);
const oneOf = (...names: readonly string[]) =>
  fc.oneof({ weight: 4, arbitrary: fc.constantFrom(...names) }, { weight: 1, arbitrary: anyText });
/** Figures as a schema lets them in. */
const amount = fc.oneof(
  fc.double({ min: 1e-9, max: 1e12, noNaN: true }),
  fc.double({ min: 0.1, max: 1000, noNaN: true }),
);

const fastening: fc.Arbitrary<RecordFastening> = fc.record(
  {
    id: fc.constant("studs"),
    thread: oneOf("M3", "M4", "M6", "M8x1", "M10", "M16", "10-32", "1/4-20", "5/16-18", "5/8-11", "#8-32"),
    strength: fc.record({
      standard: oneOf("ISO 898-1", "ISO 3506-1", "SAE J429", "ASTM F593", "brass C36000"),
      grade: oneOf("8.8", "4.6", "A2-70", "2", "5", "F593C"),
    }),
    condition: oneOf("dry steel", "zinc-plated", "dry stainless on stainless", "PTFE or wax coated"),
    makerTorque: amount,
    applied: amount,
  },
  { requiredKeys: ["id", "thread"] },
);
const feed: fc.Arbitrary<RecordFeed> = fc.record(
  {
    edition: oneOf(
      "NEC 2008",
      "NEC 2017",
      "NEC 2023",
      "IEC 60364-5-52:2009",
      "IEC 60364-5-52:2001",
      "BS 7671:2008",
      "IEC 60204-1:2005",
    ),
    installation: oneOf("raceway", "free air", "high-temperature raceway", "B2", "C", "E", "D", "F trefoil"),
    insulation: oneOf("60 °C", "75 °C", "90 °C", "250 °C", "PVC", "XLPE"),
    material: oneOf("copper", "aluminum", "nickel-coated copper"),
    equipment: oneOf("process heating", "space heating", "feeder"),
    conductor: oneOf("14 AWG", "6 AWG", "2/0", "500 kcmil", "2.5 mm²", "95 mm²"),
    terminals: fc.constantFrom("60 °C", "75 °C", "90 °C", "200 °C"),
    conductorsPerLine: fc.integer({ min: 1, max: 100 }),
    grouped: fc.integer({ min: 1, max: 50 }),
    device: amount,
  },
  { requiredKeys: ["edition", "installation", "insulation"] },
);

function finite(value: unknown): boolean {
  if (typeof value === "number") return Number.isFinite(value);
  if (typeof value === "object" && value !== null) return Object.values(value).every(finite);
  return value !== undefined;
}

/** Runs it on a record that the schema lets in; a refusal must name a path of the record. */
function answers(
  parts: Partial<BenchRecord>,
  root: string,
  run: (record: ReturnType<typeof read>) => unknown,
): void {
  let record: ReturnType<typeof read>;
  try {
    record = read(parts);
  } catch (error) {
    if (isElectroheatError(error)) return;
    throw error;
  }
  try {
    expect(finite(run(record))).toBe(true);
  } catch (error) {
    if (!isElectroheatError(error)) throw error;
    const known = new RegExp(`^(${root}|ambient)`);
    expect(
      error.issues.filter(({ path, message }) => !known.test(path) || !message.startsWith(path)),
    ).toEqual([]);
  }
}

const runs = { numRuns: 400 };

describe("site sections of any legal record", () => {
  it("hardware", () => {
    fc.assert(
      fc.property(fastening, (one) => answers({ hardware: [one] }, "hardware\\.0\\.", assessHardware)),
      runs,
    );
  });

  it("feed", () => {
    const ambient = fc.option(fc.integer({ min: -30, max: 120 }), { nil: undefined });
    const current = fc.option(amount, { nil: null });
    fc.assert(
      fc.property(feed, ambient, current, (one, air, amps) =>
        answers({ feed: one, ...(air === undefined ? {} : { ambient: `${air} °C` }) }, "feed\\.", (record) =>
          assessFeed(record, amps as never),
        ),
      ),
      runs,
    );
  });

  it("bars", () => {
    const bars = fc.record(
      {
        id: fc.constant("bars"),
        count: fc.integer({ min: 1, max: 10_000 }),
        studs: fc.integer({ min: 2, max: 200 }),
        pitch: amount,
        overhang: amount,
        width: amount,
        thickness: amount,
        hole: amount,
        kerf: amount,
      },
      { requiredKeys: ["id", "studs", "pitch", "overhang", "width", "thickness"] },
    );
    fc.assert(
      fc.property(bars, fc.option(amount, { nil: null }), (one, amps) =>
        answers({ bars: [one] }, "bars\\.0\\.", (record) => assessBars(record, amps as never)),
      ),
      runs,
    );
  });

  it("insulation", () => {
    const reading = fc.record(
      { from: fc.constant("L1"), reads: fc.oneof(amount, fc.constantFrom("OL", 0)), testVoltage: amount },
      { requiredKeys: ["from", "reads"] },
    );
    fc.assert(
      fc.property(reading, amount, fc.integer({ min: 1, max: 1000 }), (one, volts, elements) =>
        answers({ asFound: { insulation: [one] } }, "asFound", ({ asFound }) =>
          assessInsulation(asFound?.insulation, volts as never, { elements }),
        ),
      ),
      runs,
    );
  });
});
