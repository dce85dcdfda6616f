/**
 * What a refusal of a supply tells: the figures and names of the very case, and what would have been right; the limits met exactly. The
 * figures are those of the input, or worked beside them from Kirchhoff's laws.
 */
import {
  type Branch,
  balancedSupply,
  energise,
  type Network,
  type Supply,
  supplyFromLineVoltages,
  supplyFromNeutralVoltages,
  withoutLines,
} from "electroheat/circuit";
import type { Complex } from "electroheat/numeric";
import { ohms, volts } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { refusal } from "../support/told.ts";

const R = (id: string, from: string, to: string, resistance: number | "open" = 10): Branch => ({
  id,
  from,
  to,
  resistance: resistance === "open" ? resistance : ohms(resistance),
});
const star: Network = { branches: [R("A", "L1", "S"), R("B", "L2", "S"), R("C", "L3", "S")] };
const supply = balancedSupply({ lineVoltage: volts(480) });

describe("a supply", () => {
  const energised = (lines: unknown, lost?: unknown) => () =>
    energise({ network: star, supply: { lines, ...(lost === undefined ? {} : { lost }) } as Supply });
  const line = (node: unknown, voltage: unknown = { re: 1, im: 0 }) => ({ node, voltage });

  it("is a list of lines with names used once", () => {
    for (const lines of [undefined, null, [], "L1"])
      expect(refusal(energised(lines)).slice(0, 3)).toEqual(["missing", "supply.lines", "at least one line"]);
    for (const node of [undefined, "", 5])
      expect(refusal(energised([line("L1"), line(node)])).slice(0, 3)).toEqual([
        "missing",
        "supply.lines.1.node",
        "a node's name",
      ]);
    expect(refusal(energised([line("L1"), undefined])).slice(0, 2)).toEqual([
      "missing",
      "supply.lines.1.node",
    ]);
    expect(refusal(energised([line("L1"), line("L2"), line("L1")]))).toEqual([
      "duplicate",
      "supply.lines.2.node",
      "a node used once",
      '"L1"',
      undefined,
    ]);
    expect(refusal(energised([line("L1"), line("L2")], ["L2", "L9"]))).toEqual([
      "unknown-name",
      "supply.lost",
      "one of L1, L2",
      '"L9"',
      undefined,
    ]);
  });

  it("has phasors of two finite parts within what can be measured", () => {
    const told = (voltage: unknown) => refusal(energised([line("L1", voltage)]));
    const expected = "a finite phasor, each part at most 1e30";
    const path = "supply.lines.0.voltage";
    expect(told(null)).toEqual(["missing", path, expected, "undefined", "V"]);
    expect(told({ re: 1 })).toEqual(["missing", path, expected, "undefined", "V"]);
    expect(told({ im: 1 })).toEqual(["missing", path, expected, "undefined", "V"]);
    expect(told({ re: Number.NaN, im: 1 })).toEqual(["not-a-number", path, expected, "NaN", "V"]);
    expect(told({ re: 1, im: Number.NaN })).toEqual(["not-a-number", path, expected, "NaN", "V"]);
    expect(told({ re: 1, im: "2" })).toEqual(["not-a-number", path, expected, '"2"', "V"]);
    for (const part of ["re", "im"])
      for (const size of [1.01e30, -1.01e30]) {
        expect(told({ re: 0, im: 0, [part]: size })[1]).toBe(path);
        const most = [line("L1", { re: 0, im: 0, [part]: Math.sign(size) * 1e30 }), line("L2"), line("L3")];
        expect(energised(most)).not.toThrow();
      }
  });

  it("closes a triangle of line voltages, at the limit too", () => {
    const from = (v12: number, v23: number, v31: number) => () =>
      supplyFromLineVoltages({ v12: volts(v12), v23: volts(v23), v31: volts(v31) });
    for (const [a, b, c] of [
      [480, 240, 240],
      [240, 480, 240],
      [240, 240, 480],
    ] as const) {
      const { lines } = from(a, b, c)();
      for (const { voltage } of lines)
        for (const part of [voltage.re, voltage.im]) expect(Object.is(part, -0)).toBe(false);
      // What was read stands between the lines again; the three lie in one line, with their centroid at the neutral.
      const [l1, l2, l3] = lines.map(({ voltage }) => voltage) as [Complex, Complex, Complex];
      const between = (x: Complex, y: Complex) => Math.hypot(x.re - y.re, x.im - y.im);
      expect([between(l1, l2), between(l2, l3), between(l3, l1)]).toEqual(
        [a, b, c].map((v) => expect.closeTo(v, 9)),
      );
      expect([l1.re + l2.re + l3.re, l1.im + l2.im + l3.im]).toEqual([
        expect.closeTo(0, 9),
        expect.closeTo(0, 9),
      ]);
    }
    // L1 lost in the middle has no angle of its own: the others lie where they go to as it goes to 0.
    for (const [rotation, sign] of [
      ["L1-L2-L3", -1],
      ["L1-L3-L2", 1],
    ] as const) {
      const read = (v23: number) =>
        supplyFromLineVoltages({ v12: volts(240), v23: volts(v23), v31: volts(240), rotation }).lines[1]
          ?.voltage;
      expect(read(480)).toEqual({ re: expect.closeTo(0, 9), im: expect.closeTo(sign * 240, 9) });
      expect(Math.sign(read(479.9999)?.im ?? 0)).toBe(sign);
    }
    expect(refusal(from(481, 240, 240))).toEqual([
      "inconsistent",
      "v12",
      "three voltages that close a triangle (each at most the other two together)",
      '"481, 240, 240 V"',
      undefined,
    ]);
  });

  it("is three magnitudes at three angles, and what it lacks is named by its place", () => {
    const from = (voltages: unknown, degrees?: unknown) => () =>
      supplyFromNeutralVoltages({ voltages, ...(degrees === undefined ? {} : { degrees }) } as never);
    expect(refusal(from([1, 2])).slice(0, 2)).toEqual(["missing", "voltages.2"]);
    expect(refusal(from([1, 2, 3], [0, -120])).slice(0, 2)).toEqual(["missing", "degrees.2"]);
    expect(refusal(from([1, -2, 3])).slice(0, 2)).toEqual(["out-of-range", "voltages.1"]);
    expect(refusal(from([1, -2, 3]))[4]).toBe("V");
    expect(refusal(from([1, 2, 3], [0, Number.NaN, 120]))).toEqual([
      "not-a-number",
      "degrees.1",
      "a finite number",
      "NaN",
      "°",
    ]);
    expect(refusal(from(5)).slice(0, 2)).toEqual(["wrong-type", "voltages"]);
    expect(refusal(from([1, 2, 3], 5)).slice(0, 2)).toEqual(["wrong-type", "degrees"]);
  });

  it("loses lines by name", () => {
    expect(refusal(() => withoutLines({ supply, lines: ["L4"] }))).toEqual([
      "unknown-name",
      "lines",
      "one of L1, L2, L3, N",
      '"L4"',
      undefined,
    ]);
    expect(refusal(() => withoutLines({ supply: {} as Supply, lines: [] })).slice(0, 3)).toEqual([
      "missing",
      "supply",
      "a supply with lines",
    ]);
    expect(refusal(() => withoutLines({ supply: undefined as never, lines: [] })).slice(0, 2)).toEqual([
      "missing",
      "supply",
    ]);
    expect(refusal(() => withoutLines({ supply, lines: "L1" as never })).slice(0, 3)).toEqual([
      "missing",
      "lines",
      "a list of lines",
    ]);
  });

  it("bolted together names lines and links, whichever way their voltages differ", () => {
    const bolted = {
      branches: [...star.branches, R("K1", "L1", "X", 0), R("K2", "X", "L2", 0), R("K3", "L3", "Y", 0)],
    };
    expect(refusal(() => energise({ network: bolted, supply }))).toEqual([
      "short-circuit",
      "network",
      "some resistance between supply lines of different voltage",
      '"L1 and L2 bolted together through K1, K2"',
      undefined,
    ]);
    const two = (one: object, other: object) => () =>
      energise({
        network: bolted,
        supply: {
          lines: [
            { node: "L1", voltage: one },
            { node: "L2", voltage: other },
            { node: "L3", voltage: { re: 0, im: 0 } },
          ],
        } as Supply,
      });
    expect(two({ re: 5, im: 1 }, { re: 5, im: 1 })).not.toThrow();
    for (const other of [
      { re: 6, im: 1 },
      { re: 5, im: 2 },
    ])
      expect(refusal(two({ re: 5, im: 1 }, other))[0]).toBe("short-circuit");
  });
});
