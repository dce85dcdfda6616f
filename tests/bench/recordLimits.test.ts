/**
 * Every field of a record at its limits: what is taken exactly there, what is refused beside them, and in which words. Limits, units and what
 * may be left out are those that the record's own docstrings and JSON form name, written down here once more by hand.
 */
import { describe, expect, it } from "vitest";
import { parseRecord } from "../../src/bench/record/schema.ts";
import { caught } from "../support/caught.ts";
import { full, put, remove } from "./slips.ts";

const holding = (path: string, value: unknown): unknown => {
  const record = full();
  put(record, path, value);
  return record;
};
const without = (path: string): unknown => {
  const record = full();
  remove(record, path);
  return record;
};
const at = (record: unknown, path: string): unknown =>
  path.split(".").reduce<unknown>((one, key) => (one as Record<string, unknown>)[key], record);
const taken = (path: string, value: unknown): unknown => at(parseRecord(holding(path, value)), path);
const told = (record: unknown): string => {
  const { issues } = caught(() => parseRecord(record));
  return issues.map(({ code, message }) => `${code}: ${message}`).join("\n");
};
const said = (path: string, value: unknown): string => told(holding(path, value));
/** Fields of the full record at a path. */
const fieldsAt = (path: string): string[] => Object.keys(at(full(), path) as object);

/** Limits of a quantity that has none of its own. */
const COMMON = [1e-9, 1e12] as const;

/** Unit, whether 0 and an open circuit are taken, whether the field may be left out, and limits other than the common ones. */
const QUANTITIES: readonly (readonly [
  path: string,
  unit: string,
  kinds: string,
  limits?: readonly [number, number],
])[] = [
  ["nameplate.power", "W", ""],
  ["nameplate.voltage", "V", "", [0.1, 1e6]],
  ...["v12", "v23", "v31"].flatMap((name) =>
    ["supply", "asFound.supply"].map((where) => [`${where}.${name}`, "V", "zero", [0.1, 1e6]] as const),
  ),
  ["instruments.ohmmeter.resolution", "Ω", "optional"],
  ["instruments.ohmmeter.leads.shorted", "Ω", "zero"],
  ["instruments.clamp.resolution", "A", "optional"],
  ["instruments.voltmeter.resolution", "V", "optional"],
  ["instruments.millivoltmeter.resolution", "V", "optional"],
  ["instruments.insulationTester.resolution", "Ω", "optional"],
  ["asFound.ohms.0.reads", "Ω", "zero open"],
  ["asFound.currents.0.reads", "A", "zero"],
  ["asFound.insulation.0.reads", "Ω", "zero open"],
  ["asFound.insulation.0.testVoltage", "V", "optional"],
  ["asFound.joints.0.drop", "V", "zero optional"],
  ["asFound.joints.0.current", "A", "optional"],
  ["asFound.joints.0.rise", "K", "zero optional"],
  ["hardware.0.makerTorque", "N·m", "optional"],
  ["hardware.0.applied", "N·m", "optional"],
  ...["pitch", "overhang", "width", "thickness"].map((name) => [`bars.0.${name}`, "m", ""] as const),
  ["bars.0.hole", "m", "optional"],
  ["bars.0.kerf", "m", "zero optional"],
  ["feed.terminals", "°C", "optional"],
  ["feed.device", "A", "optional"],
  ["ambient", "°C", "optional"],
  ["process.target", "°C", ""],
  ["process.lossConductance", "W/K", ""],
  ["process.heatCapacity", "J/K", ""],
  ["process.shift", "s", ""],
];

describe("quantities", () => {
  it.each(QUANTITIES.map(([path, unit, kinds, limits = COMMON]) => [path, unit, kinds, limits] as const))(
    "%s in %s, %s",
    (path, unit, kinds, limits) => {
      const [zero, open, optional] = ["zero", "open", "optional"].map((one) => kinds.includes(one));
      const warm = unit === "°C";
      const [low, high] = warm ? ([-273.15, 3000] as const) : limits;
      const how = `as a number in ${unit} or text with its unit`;
      const words = warm
        ? `-273.15 to 3000 °C, ${how}`
        : `${zero ? "0 or more (0, or " : "more than 0 ("}${low} to ${high}), ${how}`;
      const number = (value: number) => ({ value, resolution: null });
      for (const value of [low, high, ...(zero || warm ? [0] : [])])
        expect(taken(path, value)).toEqual(number(value));
      // −0 is 0.
      if (zero) expect(Object.is((taken(path, -0) as { value: number }).value, 0)).toBe(true);
      const outside = [low - Math.abs(low) / 1000, high * 1.001, ...(zero || warm ? [] : [0, -5])];
      for (const value of outside)
        expect(said(path, value)).toBe(`out-of-range: ${path}: ${value} is not allowed; expected ${words}`);
      for (const value of [null, ""])
        expect(said(path, value)).toBe(`missing: ${path}: missing; expected ${words}`);
      const unlike = open ? `${words}; write "OL" for open` : words;
      expect(said(path, Number.NaN)).toBe(`not-a-number: ${path}: NaN is not allowed; expected ${unlike}`);
      expect(said(path, true)).toBe(`wrong-type: ${path}: true is not allowed; expected ${words}`);
      // Text has its unit and keeps the last digit that was shown.
      expect(taken(path, `12.5 ${unit}`)).toEqual({ value: 12.5, resolution: expect.closeTo(0.1, 12) });
      const text = `${(2 * high).toFixed(0)} ${unit}`;
      expect(said(path, text)).toBe(`out-of-range: ${path}: "${text}" is not allowed; expected ${words}`);
      expect(said(path, "12.5 lx")).toContain(`: ${path}: `);
      if (open) expect(taken(path, "OL")).toEqual({ value: "open", resolution: null });
      else if (unit === "Ω") expect(said(path, "OL")).toContain(`out-of-range: ${path}: "OL"`);
      if (optional) expect(() => parseRecord(without(path))).not.toThrow();
      else expect(told(without(path))).toBe(`missing: ${path}: missing; expected ${words}`);
    },
  );
});

const NUMBERS: readonly (readonly [
  path: string,
  low: number,
  high: number,
  whole: boolean,
  optional: boolean,
])[] = [
  ["temperatureFactor", 0.5, 10, false, true],
  ["tolerance.low", -1, 0, false, false],
  ["tolerance.high", 0, 1, false, false],
  ...["ohmmeter", "clamp", "voltmeter", "millivoltmeter", "insulationTester"].flatMap((meter) => [
    [`instruments.${meter}.ofReading`, 0, 0.5, false, false] as const,
    [`instruments.${meter}.digits`, 0, 1000, false, false] as const,
  ]),
  ["wiring.banks.0.elementsInParallel", 1, 10_000, true, true],
  ["wiring.banks.0.elementsInSeries", 1, 10_000, true, true],
  ["hardware.0.count", 1, 10_000, true, true],
  ["bars.0.count", 1, 10_000, true, true],
  ["bars.0.studs", 2, 10_000, true, false],
  ["feed.conductorsPerLine", 1, 100, true, true],
  ["feed.grouped", 1, 10_000, true, true],
  ["process.shifts", 1, 10_000, true, true],
  ["process.tariff", 0, 1e12, false, true],
];

describe("plain numbers", () => {
  it.each(NUMBERS)("%s from %d to %d", (path, low, high, whole, optional) => {
    for (const value of [low, high]) expect(taken(path, value)).toBe(value);
    const step = whole ? 1 : 1e-6;
    expect(said(path, low - step)).toBe(
      `out-of-range: ${path}: ${low - step} is not allowed; expected at least ${low}`,
    );
    const above = whole ? high + 1 : high * (1 + 1e-6) + (high === 0 ? 1e-6 : 0);
    expect(said(path, above)).toBe(
      `out-of-range: ${path}: ${above} is not allowed; expected at most ${high}`,
    );
    if (whole)
      expect(said(path, low + 0.5)).toBe(
        `out-of-range: ${path}: ${low + 0.5} is not allowed; expected a whole number`,
      );
    expect(said(path, "5")).toBe(`wrong-type: ${path}: "5" is not allowed; expected a number`);
    expect(said(path, Number.NaN)).toBe(`not-a-number: ${path}: NaN is not allowed; expected a number`);
    if (optional) expect(() => parseRecord(without(path))).not.toThrow();
    else expect(told(without(path))).toBe(`missing: ${path}: missing; expected a number`);
  });

  it("a part of the full load is above 0 and at most 1.5", () => {
    const path = "asFound.joints.0.loadRatio";
    for (const value of [1e-9, 1.5]) expect(taken(path, value)).toBe(value);
    expect(said(path, 0)).toContain(`out-of-range: ${path}: 0 is not allowed`);
    expect(said(path, 1.51)).toBe(`out-of-range: ${path}: 1.51 is not allowed; expected at most 1.5`);
  });
});

const NEEDED = [
  "title",
  "wiring.banks.0.id",
  "wiring.joints.0.id",
  "wiring.joints.0.at",
  "wiring.joints.0.behind.0",
  "asFound.ohms.0.from",
  "asFound.ohms.0.to",
  "asFound.currents.0.at",
  "asFound.insulation.0.from",
  "asFound.joints.0.id",
  "hardware.0.id",
  "hardware.0.thread",
  "hardware.0.strength.standard",
  "hardware.0.strength.grade",
  "bars.0.id",
  "feed.edition",
  "feed.installation",
  "feed.insulation",
];
const SPARED = [
  ...["equipment", "serialNumber", "location", "workOrder", "technician", "date"].map(
    (one) => `identity.${one}`,
  ),
  "asFound.ohms.0.alone",
  "asFound.currents.1.into",
  "hardware.0.condition",
  ...["equipment", "conductor", "material"].map((one) => `feed.${one}`),
];

describe("texts", () => {
  it.each([...NEEDED, ...SPARED])("%s shows something, in two hundred characters", (path) => {
    const long = "x".repeat(200);
    expect(taken(path, long)).toBe(long);
    expect(said(path, `${long}x`)).toContain(`out-of-range: ${path}: "xxx`);
    expect(said(path, `${long}x`)).toContain("expected at most 200 characters");
    expect(said(path, "")).toBe(`missing: ${path}: missing; expected at least 1 characters`);
    expect(said(path, "  ")).toBe(`missing: ${path}: missing; expected text`);
    expect(said(path, 5)).toContain(`: ${path}: 5 is not allowed; expected text`);
    if (SPARED.includes(path)) expect(() => parseRecord(without(path))).not.toThrow();
    else if (!path.endsWith("behind.0"))
      expect(told(without(path))).toBe(`missing: ${path}: missing; expected text`);
  });
});

describe("records, lists and names", () => {
  it.each([
    "identity",
    "nameplate",
    "supply",
    "tolerance",
    "instruments",
    ...["ohmmeter", "clamp", "voltmeter", "millivoltmeter", "insulationTester"].map(
      (one) => `instruments.${one}`,
    ),
    "asFound",
    "asLeft",
    "asFound.supply",
    "hardware.0.strength",
    "feed",
    "process",
  ])("%s may be left out, is a record, and has no field that it does not know", (path) => {
    expect(() => parseRecord(without(path))).not.toThrow();
    expect(said(path, [])).toBe(
      `wrong-type: ${path}: an array is not allowed; expected a record with fields`,
    );
    expect(said(path, "x")).toBe(`wrong-type: ${path}: "x" is not allowed; expected a record with fields`);
    const refused = said(`${path}.extra`, 5);
    expect(refused).toMatch(/^unknown-field: \S+\.extra: "extra" is not allowed; expected one of /);
    expect(refused).toContain(`: ${path}.extra: `);
    // The fields that a full record has are among those that are named.
    expect(refused.split("one of ")[1]?.split(", ")).toEqual(expect.arrayContaining(fieldsAt(path)));
  });

  it.each([
    "wiring",
    "wiring.banks.0",
    "wiring.joints.0",
    "asFound.ohms.0",
    "asFound.currents.0",
    "asFound.insulation.0",
    "asFound.joints.0",
    "hardware.0",
    "bars.0",
  ])("%s has no field that it does not know", (path) => {
    const refused = said(`${path}.extra`, 5);
    expect(refused).toMatch(/^unknown-field: \S+\.extra: "extra" is not allowed; expected one of /);
    expect(refused).toContain(`: ${path}.extra: `);
    // The fields that a full record has are among those that are named.
    expect(refused.split("one of ")[1]?.split(", ")).toEqual(expect.arrayContaining(fieldsAt(path)));
    expect(said(path, 5)).toContain(`: ${path}: 5 is not allowed; expected a record with fields`);
  });

  it.each([
    ["hardware", 1000],
    ["bars", 1000],
    ["wiring.joints", 1000],
    ["asFound.ohms", 10_000],
    ["asFound.currents", 10_000],
    ["asFound.insulation", 10_000],
    ["asFound.joints", 10_000],
  ] as const)("%s has at most %d entries, or none", (path, most) => {
    const [one] = at(full(), path) as [unknown];
    expect(taken(path, new Array(most).fill(one))).toHaveLength(most);
    expect(said(path, new Array(most + 1).fill(one))).toBe(
      `out-of-range: ${path}: an array is not allowed; expected at most ${most} entries`,
    );
    expect(taken(path, [])).toEqual([]);
    expect(() => parseRecord(without(path))).not.toThrow();
    expect(said(path, "x")).toBe(`wrong-type: ${path}: "x" is not allowed; expected a list`);
  });

  it("banks and what a joint lies behind are at least one, at most a thousand", () => {
    for (const path of ["wiring.banks", "wiring.joints.0.behind"]) {
      const [one] = at(full(), path) as [unknown];
      expect(taken(path, new Array(1000).fill(one))).toHaveLength(1000);
      expect(said(path, new Array(1001).fill(one))).toContain("expected at most 1000 entries");
      expect(said(path, [])).toBe(`missing: ${path}: missing; expected at least 1 entries`);
    }
    expect(() => parseRecord(without("wiring.joints.0.behind"))).not.toThrow();
    expect(told(without("wiring.banks"))).toBe("missing: wiring.banks: missing; expected a list");
    expect(told(without("wiring"))).toBe("missing: wiring: missing; expected a record with fields");
  });

  it.each([
    ["wiring.banks.0.connection", ["star", "delta"], "star, delta, wye", false],
    ["wiring.starPoints", ["tied", "separate"], "tied, separate", true],
    ["wiring.neutral", ["connected", "floating"], "connected, floating", true],
  ] as const)("%s is one of its names", (path, names, listed, optional) => {
    for (const name of names) expect(taken(path, name)).toBe(name);
    expect(said(path, "zigzag")).toBe(
      `unknown-name: ${path}: "zigzag" is not allowed; expected one of ${listed}`,
    );
    if (optional) expect(() => parseRecord(without(path))).not.toThrow();
    else expect(told(without(path))).toBe(`missing: ${path}: missing; expected one of ${listed}`);
  });

  it("wye is another word for star", () => {
    expect(taken("wiring.banks.0.connection", "wye")).toBe("star");
    // As drawings and sheets have them; common practice, no published source.
    for (const written of ["Wye", "WYE", "Y", "y", "Star ", "STAR"])
      expect(taken("wiring.banks.0.connection", written)).toBe("star");
    for (const written of ["Delta", "DELTA", "Δ", " delta"])
      expect(taken("wiring.banks.0.connection", written)).toBe("delta");
  });

  it("leads are a name or a reading, and said to be so", () => {
    const path = "instruments.ohmmeter.leads";
    for (const leads of ["unknown", "taken off"]) expect(taken(path, leads)).toBe(leads);
    const words = '"unknown", "taken off" or a record { shorted: … }';
    expect(said(path, 5)).toBe(`wrong-type: ${path}: 5 is not allowed; expected ${words}`);
    expect(told(without(path))).toBe(`missing: ${path}: missing; expected ${words}`);
    expect(said(path, { shorted: -1 })).toContain(`out-of-range: ${path}.shorted: -1 is not allowed`);
    expect(said(path, { shorted: 0, extra: 1 })).toContain(`unknown-field: ${path}.extra: `);
  });

  it("renew is true or false", () => {
    for (const renew of [true, false]) expect(taken("hardware.0.renew", renew)).toBe(renew);
    expect(said("hardware.0.renew", "yes")).toBe(
      'wrong-type: hardware.0.renew: "yes" is not allowed; expected true or false',
    );
  });

  it("ten fields that it does not know are named and the others counted", () => {
    const extra = (many: number) =>
      told({ ...full(), ...Object.fromEntries(Array.from({ length: many }, (_, i) => [`x${i}`, 1])) }).split(
        "\n",
      );
    expect(extra(10)).toEqual(
      Array.from({ length: 10 }, (_, i) =>
        expect.stringMatching(`^unknown-field: x${i}: "x${i}" is not allowed; expected one of title, `),
      ),
    );
    expect(extra(13)).toHaveLength(11);
    expect(extra(13).at(-1)).toMatch(
      /^unknown-field: record: "and 3 more" is not allowed; expected one of title, /,
    );
    expect(told({ ...full(), "": 1 })).toContain('unknown-field: "": ');
  });

  it("a record is one", () => {
    for (const record of [undefined, null, 5, [], "x"])
      expect(told(record)).toMatch(/^\S+: record: .*expected a record with fields$/);
  });
});
