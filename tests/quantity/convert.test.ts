/** One function for all units; its printed factors are in shared/vectors/quantity. */
import { type CanonicalUnit, convertUnits, parseQuantity, unitSymbols } from "electroheat/quantity";
import fc from "fast-check";
import { all, create } from "mathjs";
import { describe, expect, it } from "vitest";
import { thrown } from "./support.ts";
import { CANONICAL } from "./unitDatabase.ts";

const math = create(all ?? {}, {});
const units = Object.keys(CANONICAL) as CanonicalUnit[];
const withTemperature: readonly CanonicalUnit[] = [...units, "°C"];
const refused = (input: object): { code: string; argument: string; message: string } =>
  thrown(() => convertUnits(input as never));

describe("convertUnits", () => {
  it.each(withTemperature)("leads from every unit of %s to every other and back (definition)", (unit) => {
    const symbols = unitSymbols(unit);
    for (const from of symbols) {
      for (const to of symbols) {
        const there = convertUnits({ value: 7.9, from, to });
        const back = convertUnits({ value: there, from: to, to: from });
        expect(Math.abs(back - 7.9), `${from} to ${to}`).toBeLessThan(1e-13);
        // To itself it is the number, to its last bit.
        if (from === to) expect(there).toBe(7.9);
      }
    }
  });

  it("agrees with what text with a unit is read as", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...withTemperature),
        fc.nat(),
        fc.integer({ min: 1, max: 9999 }),
        (unit, at, n) => {
          const symbols = unitSymbols(unit);
          const from = symbols[at % symbols.length] as string;
          const read = parseQuantity(`${n} ${from}`, { unit }).value as number;
          const to = symbols[0] as string;
          expect(convertUnits({ value: n, from, to })).toBe(read);
        },
      ),
    );
  });

  // Source: mathjs 15, unit definitions of its own.
  it.each([
    ["mm", "in", "mm", "in"],
    ["W/cm²", "W/in²", "W/cm^2", "W/in^2"],
    ["L/min", "ft³/min", "L/minute", "ft^3/minute"],
    ["kWh", "MJ", "kWh", "MJ"],
    ["lbf·in", "N·cm", "lbf in", "N cm"],
    ["lb/h", "kg/s", "lbm/hour", "kg/s"],
    ["Ω/1000 ft", "Ω/km", "ohm / (1000 ft)", "ohm/km"],
    ["ft/min", "m/s", "ft/minute", "m/s"],
  ])("%s to %s as a unit database has it", (from, to, theirs, wanted) => {
    const value = math.evaluate(`1 ${theirs}`);
    const expected = value.toNumber(wanted) as number;
    expect(Math.abs(convertUnits({ value: 1, from, to }) / expected - 1)).toBeLessThan(1e-14);
  });

  it.each(withTemperature)("refuses to lead from %s to another dimension, and lists its own", (one) => {
    for (const other of withTemperature) {
      // Among temperatures "F" is a degree Fahrenheit, not a farad.
      if (one === other || [one, other].sort().join() === "F,°C") continue;
      const { code, argument, message } = refused({ value: 1, from: one, to: other });
      expect([code, argument], `${one} to ${other}`).toEqual(["wrong-type", "to"]);
      if (![one, other].some((unit) => unit === "K" || unit === "°C"))
        expect(message).toContain(`a unit of ${one}: ${unitSymbols(one).join(", ")}`);
    }
  });

  it("says that a temperature is no difference", () => {
    expect(refused({ value: 300, from: "K", to: "°C" }).message).toMatch(
      /a difference \(K, Δ°F\) to a difference/,
    );
  });

  it("tells the farad from the degree Fahrenheit by the other unit", () => {
    expect(convertUnits({ value: 1, from: "F", to: "µF" })).toBe(1e6);
    expect(convertUnits({ value: 212, from: "F", to: "C" })).toBe(100);
  });

  it("refuses what is no number, no text, no unit, beyond a double or below absolute zero", () => {
    const good = { value: 1, from: "mm", to: "in" };
    expect(refused({ ...good, value: undefined })).toMatchObject({ code: "missing", argument: "value" });
    expect(refused({ ...good, value: "1" })).toMatchObject({ code: "not-a-number", argument: "value" });
    expect(refused({ ...good, value: Number.NaN })).toMatchObject({
      code: "not-a-number",
      argument: "value",
    });
    expect(refused({ ...good, from: " " })).toMatchObject({ code: "missing", argument: "from" });
    expect(refused({ ...good, to: null })).toMatchObject({ code: "missing", argument: "to" });
    expect(refused({ ...good, to: 5 })).toMatchObject({ code: "wrong-type", argument: "to" });
    expect(refused({ ...good, from: "furlong" })).toMatchObject({ code: "unknown-name", argument: "from" });
    expect(refused({ ...good, to: "ell" })).toMatchObject({ code: "unknown-name", argument: "to" });
    expect(refused({ value: 1e308, from: "m", to: "mm" })).toMatchObject({
      code: "out-of-range",
      argument: "value",
    });
    expect(refused({ value: -274, from: "°C", to: "°C" })).toMatchObject({
      code: "out-of-range",
      argument: "value",
    });
    expect(refused(null as never).code).toBe("missing");
  });

  it("gives no negative nothing", () => {
    expect(Object.is(convertUnits({ value: -0, from: "mm", to: "mm" }), 0)).toBe(true);
    expect(Object.is(convertUnits({ value: -0, from: "mm", to: "m" }), 0)).toBe(true);
  });
});
