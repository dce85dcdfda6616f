/** Wires as thick as bars: a diameter in millimeters taken for meters. BS 3737:1964 ends at 7/0 SWG, 0.5 in. */
import { coilGeometry, coilGuidance, wireForSurfaceLoad } from "electroheat/element";
import {
  type Meters,
  meters,
  microohmMeters,
  millimeters,
  volts,
  watts,
  wattsPerSquareCentimeter,
} from "electroheat/quantity";
import { describe, expect, it } from "vitest";

const chosen = (...stockDiameters: readonly Meters[]) =>
  wireForSurfaceLoad({
    power: watts(5000),
    voltage: volts(277.128) as never,
    resistivity: microohmMeters(1.09),
    temperatureFactor: 1.04,
    maximumSurfaceLoad: wattsPerSquareCentimeter(6),
    stockDiameters,
  });

describe("a wire thicker than any gauge", () => {
  it("is chosen with a warning that says how thick it is", () => {
    const { length, warnings } = chosen(meters(1.5), meters(1.6));
    // L = R20·π·d²/(4·ρ) by hand: (277.128²/5000/1.04)·π·1.5²/(4·1.09e-6) is 24 million meters.
    expect(length).toBeGreaterThan(2e7);
    expect(warnings.map(({ code, path, limit }) => [code, path, limit])).toEqual([
      ["suspicious", "stockDiameters.0", 0.0127],
    ]);
    expect(warnings[0]?.message).toContain("1.5 m is thicker");
    expect(chosen(meters(2), millimeters(1.5)).warnings).toEqual([]);
  });
  it("is warned of in a coil too, and one of half an inch is not", () => {
    expect(coilGuidance(meters(2)).warnings.map(({ path }) => path)).toEqual(["wireDiameter"]);
    expect(coilGuidance(millimeters(12.7)).warnings).toEqual([]);
    const coil = (wire: Meters) =>
      coilGeometry({
        wireLength: (5e4 * wire) as Meters,
        wireDiameter: wire,
        meanDiameter: (8 * wire) as never,
        coilLength: (6000 * wire) as Meters,
      }).warnings.filter(({ path }) => path === "wireDiameter").length;
    expect([coil(meters(1)), coil(millimeters(1))]).toEqual([1, 0]);
  });
});
