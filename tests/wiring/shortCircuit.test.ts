/**
 * Short-circuit sections against the heating itself, step by step: volume heat and resistivity of IEC 60949 (copper 3.45e-3 J/(K·mm³) and
 * 17.241e-6 Ω·mm, aluminum 2.5e-3 and 28.264e-6; from memory, the resistivities those of IEC 60028 and 61 % IACS). The factors k are
 * vectors, from memory.
 */
import { amperes, celsius, seconds, toSquareMillimeters } from "electroheat/quantity";
import { shortCircuitSection } from "electroheat/wiring";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const METALS = {
  copper: { heat: 3.45e-3, resistivity: 17.241e-6, zero: 234.5 },
  aluminum: { heat: 2.5e-3, resistivity: 28.264e-6, zero: 228 },
} as const;
type Metal = keyof typeof METALS;

/** Temperature after the fault, by the midpoint rule in 4000 steps. */
function heated(metal: Metal, start: number, density: number, time: number): number {
  const { heat, resistivity, zero } = METALS[metal];
  const rate = (at: number): number => (resistivity * ((zero + at) / (zero + 20)) * density ** 2) / heat;
  const step = time / 4000;
  let now = start;
  for (let i = 0; i < 4000; i++) now += step * rate(now + (step / 2) * rate(now));
  return now;
}

const section = (metal: Metal, current: number, time: number, from: number, to: number) =>
  shortCircuitSection({
    current: amperes(current),
    time: seconds(time),
    material: metal,
    initialTemperature: celsius(from),
    finalTemperature: celsius(to),
  });

describe("the section for a short circuit", () => {
  it.each([
    ["copper", 6000, 0.1, 70, 160],
    ["copper", 2500, 5, 90, 250],
    ["copper", 900, 0.4, 30, 160],
    ["aluminum", 12_000, 1, 90, 250],
    ["aluminum", 3000, 0.2, 70, 160],
  ] as const)("%s, %d A for %d s, is heated from %d to %d °C", (metal, current, time, from, to) => {
    const area = toSquareMillimeters(section(metal, current, time, from, to).section);
    const rise = heated(metal, from, current / area, time) - from;
    // K is printed in whole numbers, 0.15 % off: 0.3 % of the heat.
    expect(Math.abs(rise / (to - from) - 1)).toBeLessThan(0.006);
  });

  it("goes with the current, with the root of the time, and down with the heat that is allowed (property)", () => {
    const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom<Metal>("copper", "aluminum"),
        real(10, 1e5),
        real(0.01, 10),
        real(-40, 200),
        real(1, 200),
        (metal, current, time, from, rise) => {
          const one = section(metal, current, time, from, from + rise);
          const twice = section(metal, 2 * current, time, from, from + rise).section;
          const fourfold = section(metal, current, 4 * time, from, from + rise).section;
          expect(twice / one.section).toBeCloseTo(2, 9);
          expect(fourfold / one.section).toBeCloseTo(2, 9);
          expect((one.factor * toSquareMillimeters(one.section)) ** 2 / (current ** 2 * time)).toBeCloseTo(
            1,
            9,
          );
          expect(section(metal, current, time, from, from + 1.5 * rise).section).toBeLessThan(one.section);
          expect(section(metal, current, time, from + rise / 2, from + rise).section).toBeGreaterThan(
            one.section,
          );
        },
      ),
      { numRuns: 500 },
    );
  });

  it("says where the method ends, and what it leaves to be tested", () => {
    const at = (time: number) => section("copper", 6000, time, 70, 160);
    for (const time of [0.1, 1, 5, 0.1 * (1 - 1e-15)]) expect(at(time).warnings).toEqual([]);
    expect(at(0.099).warnings).toMatchObject([{ path: "time", limit: 0.1, code: "outside-validity" }]);
    expect(at(0.099).warnings[0]?.message).toMatch(/I²t/);
    expect(at(5.1).warnings).toMatchObject([{ path: "time", limit: 5, code: "outside-validity" }]);
    const { cautions, deferral } = at(1);
    expect(cautions.join(" ")).toMatch(/device breaks the largest fault current, and clears the smallest/);
    expect(deferral).toMatch(/licensed electrician/);
  });
});
