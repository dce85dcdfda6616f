/**
 * Terminals hotter than any column of the code, circuits of a split heater, and figures that carry float noise. Expected values are worked
 * by hand from the figures named beside them.
 */
import { amperes, celsius, megaohms, meters, ohmsPerMeter, volts } from "electroheat/quantity";
import {
  cableForLoad,
  conductorAmpacity,
  conductorForLoad,
  DEFERRAL,
  groupingFactor,
  insulationAt20,
  loadForCable,
  loadForConductor,
  namedWireAmpacity,
  standardDevice,
  tableAmpacity,
  voltageDrop,
} from "electroheat/wiring";
import { describe, expect, it } from "vitest";

const hot = {
  edition: "NEC 2023",
  equipment: "process heating",
  installation: "high-temperature raceway",
  material: "copper",
  insulationTemperature: celsius(200),
  ambient: celsius(40),
  currentCarryingConductors: 3,
  terminalTemperature: celsius(150),
} as const;

describe("terminals above 90 °C", () => {
  // 72 A · 1.25 = 90 A; Table 310.18, 200 °C: 8 AWG 83 A, 6 AWG 110 A. NFPA 70, 210.19(A): before factors.
  it("hold the table value before factors to the design current: 6 AWG for 72 A", () => {
    const found = conductorForLoad({ ...hot, heaterCurrent: amperes(72) });
    expect([found.value, found.designCurrent, found.governing]).toEqual(["6 AWG", 90, "table ampacity"]);
    expect([found.column, found.cells[0]?.value]).toEqual(["copper 200", 110]);
    expect(found.constraints.map(({ constraint }) => constraint)).not.toContain("termination");
    expect(found.constraints).toContainEqual({ constraint: "table ampacity", size: "6 AWG" });
  });

  it("turn at 83/1.25 = 66.4 A in both directions", () => {
    expect(conductorForLoad({ ...hot, heaterCurrent: amperes(66.4) }).value).toBe("8 AWG");
    expect(conductorForLoad({ ...hot, heaterCurrent: amperes(66.41) }).value).toBe("6 AWG");
    const load = loadForConductor({ ...hot, size: "8 AWG" });
    expect(load.value).toBeCloseTo(66.4, 9);
    expect(load.governing).toBe("table ampacity");
  });

  it("an assembly listed for 100 % takes 83 A", () => {
    expect(loadForConductor({ ...hot, size: "8 AWG", listedForFullLoad: true }).value).toBe(83);
  });
});

describe("a circuit of a split heater: 48 A on 60 A (NFPA 70, 424.22(B), 425.22(B))", () => {
  const part = {
    ...hot,
    installation: "raceway",
    insulationTemperature: celsius(75),
    ambient: celsius(30),
    terminalTemperature: celsius(75),
    size: "4 AWG",
    subdivided: true,
  } as const;

  it.each([
    ["space heating", "424.22(B)"],
    ["process heating", "425.22(B)"],
  ])("%s names %s and stops at 60 A", (equipment, clause) => {
    const found = loadForConductor({ ...part, equipment });
    expect([found.value, found.device, found.governing, found.table]).toEqual([
      48,
      60,
      "subdivided load",
      clause,
    ]);
    expect(found.constraints).toContainEqual({ constraint: "subdivided device", load: 48 });
    expect(() => loadForConductor({ ...part, equipment, device: amperes(70) })).toThrow(
      `at most 60 A, the largest device of a subdivided load (${clause})`,
    );
    expect(loadForConductor({ ...part, equipment, device: amperes(60) }).device).toBe(60);
  });

  it("a smaller conductor keeps its own device; a circuit that is not split keeps 90 A", () => {
    const small = loadForConductor({ ...part, size: "10 AWG" });
    expect([small.device, small.value, small.governing]).toEqual([30, 24, "conductor's device limit"]);
    expect(loadForConductor({ ...part, subdivided: false }).device).toBe(90);
  });
});

const cable = {
  edition: "IEC 60364-5-52:2009",
  method: "B2",
  loadedConductors: 3,
  insulation: "PVC",
  material: "copper",
  ambient: celsius(30),
  circuits: 1,
} as const;

describe("gG fuses of 4 A and less (k2 = 2.1 by IEC 60269-1, from memory: k3 = 1.45, not 1.31)", () => {
  it("are left out of the answer and refused by name", () => {
    const fuse = { ...cable, designCurrent: amperes(1.5), deviceKind: "gG fuse" } as const;
    expect(cableForLoad(fuse).device).toBe(6);
    expect(() => cableForLoad({ ...fuse, device: amperes(4) })).toThrow(/one of 6, 8/);
    expect(() => loadForCable({ ...fuse, size: "1.5 mm²", device: amperes(2) })).toThrow(/one of 6, 8/);
  });
});

describe("the simplified guide", () => {
  const four = { arrangement: "bunched", circuits: 4, grouping: "simplified guide" } as const;

  it("is an installation guide's, and no part of BS 7671", () => {
    expect(groupingFactor({ ...four, edition: "IEC 60364-5-52:2009" }).edition).toBe("installation guide");
    expect(() => groupingFactor({ ...four, edition: "BS 7671:2008" })).toThrow(/standard/);
  });
});

describe("float noise in the last digit refuses nothing", () => {
  const noisy = (value: number): number => value * (1 + 2 ** -52);

  it("device, temperature and ambient are taken on 12 digits", () => {
    const load = { ...cable, designCurrent: amperes(20), deviceKind: "circuit-breaker" } as const;
    expect(cableForLoad({ ...load, device: amperes(noisy(32)) }).device).toBe(32);
    // NETA Table 100.14.1, oil: 2.8 at 35 °C.
    const read = { resistance: megaohms(1200), insulation: "oil" } as const;
    expect(insulationAt20({ ...read, temperature: celsius(noisy(35)) }).value).toBeCloseTo(3.36e9, 0);
    expect(
      conductorAmpacity({ ...hot, size: "8 AWG", edition: "NEC 2008", ambient: celsius(noisy(40)) }).value,
    ).toBe(83);
    expect(
      namedWireAmpacity({
        table: "wire maker, 40 °C",
        column: "250 nickel-plated copper",
        size: "14 AWG",
        ambient: celsius(noisy(40)),
      }).value,
    ).toBe(39);
  });
});

describe("what stands behind an answer", () => {
  it("a label from memory makes the answer one, whatever its figures", () => {
    const wire = { edition: "NEC 2023", size: "6 AWG", material: "copper" } as const;
    const of = (installation: string, temperature: number): readonly [string, boolean] => {
      const found = tableAmpacity({ ...wire, installation, insulationTemperature: celsius(temperature) });
      return [found.provenance, found.cautions.some((text) => text.includes("not read in print"))];
    };
    // Figures of 310.18 were read in one reprint; its number in 2023 was not, that of 310.16 was.
    expect(of("high-temperature raceway", 150)).toEqual(["memory", true]);
    expect(of("raceway", 75)).toEqual(["seen", false]);
    expect(
      standardDevice({ edition: "NEC 2023", current: amperes(20), direction: "up" }).cells[0],
    ).toMatchObject({ provenance: "seen", labelProvenance: "memory" });
  });

  it("a voltage drop defers and cautions, also within the advice", () => {
    const found = voltageDrop({
      circuit: "two-wire",
      current: amperes(1),
      length: meters(1),
      resistancePerLength: ohmsPerMeter(0.01),
      supplyVoltage: volts(240),
    });
    expect([found.deferral, found.warnings]).toEqual([DEFERRAL, []]);
    expect(found.cautions[0]).toContain("ampacity");
  });
});
