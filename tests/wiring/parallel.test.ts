/**
 * Conductors in parallel. Sources: NFPA 70, 310.10(H)(1) as quoted (1/0 AWG and larger; 310.10(G)(1) from 2020, 310.4 before 2011, from
 * memory), 310.15 (each conductor of a set counts), 240.4(B), (C); IEC 60364-5-52, 523.7, and IEC 60364-4-43, 433.4, from memory. Cells are
 * copied from Table 310.16 and Table B.52.4 and multiplied by hand beside each check; worked cases in print are vectors.
 */
import { type Amperes, amperes, celsius, meters, type OhmsPerMeter, volts } from "electroheat/quantity";
import {
  ambientForCable,
  ambientForConductor,
  cableCapacity,
  cableForLoad,
  conductorAmpacity,
  conductorForLoad,
  loadForCable,
  loadForConductor,
  type NorthAmericanEdition,
  voltageDrop,
} from "electroheat/wiring";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectRefusal } from "../support/spoil.ts";

const run = {
  edition: "NEC 2023",
  installation: "raceway",
  material: "copper",
  insulationTemperature: celsius(90),
  ambient: celsius(30),
  currentCarryingConductors: 6,
  terminalTemperature: celsius(75),
} as const;
const cable = {
  edition: "IEC 60364-5-52:2009",
  method: "C",
  loadedConductors: 3,
  insulation: "PVC",
  material: "copper",
  ambient: celsius(30),
  circuits: 2,
  arrangement: "bunched",
} as const;
const equipment = "process heating";

describe("North America", () => {
  const two = { ...run, conductorsPerLine: 2 };

  it("adds up what the conductors of a line may carry, and shows the steps of one", () => {
    // 250 kcmil: 290 A in the 90 °C column · 0.8 for six conductors is 232 A, below the 255 A of the 75 °C terminal; two are 464 A.
    const found = conductorAmpacity({ ...two, size: "250 kcmil" });
    expect(found).toMatchObject({
      value: 464,
      tableAmpacity: 290,
      correctedAmpacity: 232,
      terminationAmpacity: 255,
      conductorsPerLine: 2,
      governing: "conductor count",
    });
    // In raceways of their own the terminal decides: 2 · 255 A.
    const apart = conductorAmpacity({ ...two, currentCarryingConductors: 3, size: "250 kcmil" });
    expect([apart.value, apart.governing]).toEqual([510, "termination"]);
  });

  it.each([
    ["NEC 2008", "310.4"],
    ["NEC 2011", "310.10(H)(1)"],
    ["NEC 2017", "310.10(H)(1)"],
    ["NEC 2020", "310.10(G)(1)"],
    ["NEC 2023", "310.10(G)(1)"],
  ] as const)("%s names the rule as %s, and only where there are several", (edition, clause) => {
    const size = "4/0 AWG";
    const cells = conductorAmpacity({ ...two, edition, size }).cells.filter(({ table }) => table === clause);
    expect(cells).toMatchObject([{ value: "1/0", unit: "AWG", row: "in parallel, each line" }]);
    const alone = conductorAmpacity({ ...run, edition, size, conductorsPerLine: 1 });
    expect(alone).toEqual(conductorAmpacity({ ...run, edition, size }));
    expect(alone.cells.some(({ table }) => table === clause)).toBe(false);
    expect(alone.cautions.join()).not.toContain("in parallel");
  });

  it("1/0 AWG may be in parallel, 1 AWG may not, whatever is asked", () => {
    const load = { equipment, heaterCurrent: amperes(100) };
    for (const ask of [
      (size: string) => conductorAmpacity({ ...two, size }),
      (size: string) => loadForConductor({ ...two, size, equipment }),
      (size: string) => ambientForConductor({ ...two, ...load, size }),
    ]) {
      for (const size of ["1/0 AWG", "0000 AWG", "250 kcmil"])
        expect(ask(size).value, size).toBeGreaterThan(0);
      for (const size of ["1 AWG", "14 AWG"]) expectRefusal(() => ask(size), "inconsistent", "size", size);
    }
    // One alone may be of any size.
    expect(conductorAmpacity({ ...run, size: "14 AWG", conductorsPerLine: 1 }).value).toBe(20);
  });

  it("chooses 1/0 AWG where smaller ones would carry the load, and says why", () => {
    const found = conductorForLoad({ ...two, equipment, heaterCurrent: amperes(40) });
    expect([found.value, found.governing, found.ampacity.value]).toEqual([
      "1/0 AWG",
      "smallest in parallel",
      // 170 A · 0.8 is 136 A, below the 150 A of the terminal.
      272,
    ]);
    expect(found.constraints.at(-1)).toEqual({ constraint: "smallest in parallel", size: "1/0 AWG" });
    const single = conductorForLoad({ ...run, equipment, heaterCurrent: amperes(40) });
    expect(single.constraints.map(({ constraint }) => constraint)).not.toContain("smallest in parallel");
  });

  it("above 800 A the conductors together carry the whole device", () => {
    // Three sets in raceways of their own, 75 °C: 600 kcmil 420 A, together 1260 A; the standard ratings next to it are 1200 and 1600 A.
    const three = {
      ...run,
      insulationTemperature: celsius(75),
      conductorsPerLine: 3,
      currentCarryingConductors: 3,
    };
    const feeder = { equipment: "feeder", listedForFullLoad: true } as const;
    const found = loadForConductor({ ...three, ...feeder, size: "600 kcmil" });
    expect([found.value, found.device, found.ampacity.value, found.governing]).toEqual([
      1200,
      1200,
      1260,
      "conductor's device limit",
    ]);
    // 500 kcmil: 3 · 380 A is 1140 A and would be enough for 1100 A, but not for the device of 1200 A.
    const choice = conductorForLoad({ ...three, ...feeder, heaterCurrent: amperes(1100) });
    expect([choice.value, choice.device, choice.governing]).toEqual(["600 kcmil", 1200, "device step"]);
  });

  it("carries a load that no single size does", () => {
    const load = { ...run, currentCarryingConductors: 3, equipment, heaterCurrent: amperes(600) };
    // 1.25 · 600 A is 750 A; the largest size has 665 A in the terminal's column.
    expectRefusal(() => conductorForLoad(load), "outside-table", "heaterCurrent", "one");
    // Six conductors: 600 kcmil 2 · 475 A · 0.8 is 760 A, 2 · 420 A at the terminal 840 A; 500 kcmil 2 · 430 A · 0.8 is 688 A, next size up 700 A,
    // too small for the 800 A device.
    const found = conductorForLoad({ ...load, conductorsPerLine: 2, currentCarryingConductors: 6 });
    expect([found.value, found.device, found.ampacity.value]).toEqual(["600 kcmil", 800, 760]);
  });

  it("is told where fewer conductors are counted than all sets have, and what must be alike", () => {
    const at = (currentCarryingConductors: number) =>
      conductorAmpacity({ ...two, size: "4/0 AWG", currentCarryingConductors });
    for (const counted of [1, 2, 3])
      expect(at(counted).warnings).toMatchObject([{ code: "assumed", path: "currentCarryingConductors" }]);
    expect(at(3).warnings[0]?.message).toMatch(/^3 conductors are fewer than 2 sets have/);
    for (const counted of [4, 6, 9]) expect(at(counted).warnings).toEqual([]);
    expect(at(6).cautions.join()).toMatch(/length, metal, size, insulation, terminations/);
  });

  it("holds for an edition of one's own, which has no clause to name", () => {
    const columns = [
      { name: "size", unit: "AWG/kcmil", meaning: "size" },
      { name: "copper 75", unit: "A", meaning: "copper" },
    ];
    const table = {
      id: "works",
      title: "works table",
      source: "works manual",
      edition: "1",
      kind: "user table",
      provenance: "seen",
      columns,
      rows: [
        ["2", 115],
        ["1/0", 150],
        ["4/0", 230],
      ],
    };
    const count = {
      ...table,
      id: "count",
      columns: [
        { name: "from", unit: "", meaning: "from" },
        { name: "to", unit: "", meaning: "to" },
        { name: "percent", unit: "%", meaning: "percent" },
      ],
      rows: [
        [1, 3, 100],
        [4, 6, 80],
      ],
    };
    const edition: NorthAmericanEdition = {
      system: "North America",
      name: "works",
      ampacity: [
        {
          label: "W1",
          table,
          installation: "raceway",
          baseAmbient: celsius(30),
          baseConditions: ["as laid"],
        },
      ],
      conductorCount: { label: "W2", table: count },
    };
    const own = { ...two, edition, insulationTemperature: celsius(75) };
    // 230 A · 0.8 · 2.
    const found = conductorAmpacity({ ...own, size: "4/0 AWG" });
    expect([found.value, found.kind]).toEqual([368, "user table"]);
    expect(found.cells.every((cell) => cell.edition === "works")).toBe(true);
    expectRefusal(() => conductorAmpacity({ ...own, size: "2 AWG" }), "inconsistent", "size", "2 AWG");
  });

  it("the share of each is that of one alone, and load and ambient find back to it (property)", () => {
    const sizes = ["1/0 AWG", "2/0 AWG", "4/0 AWG", "350 kcmil", "750 kcmil"];
    fc.assert(
      fc.property(
        fc.constantFrom(...sizes),
        fc.integer({ min: 1, max: 6 }),
        fc.integer({ min: 1, max: 45 }),
        fc.double({ min: -5, max: 55, noNaN: true }),
        fc.constantFrom(60, 75, 90),
        (size, conductorsPerLine, currentCarryingConductors, ambient, terminal) => {
          const one = {
            ...run,
            size,
            currentCarryingConductors,
            ambient: celsius(ambient),
            terminalTemperature: celsius(terminal),
          };
          const alone = conductorAmpacity(one);
          const all = conductorAmpacity({ ...one, conductorsPerLine });
          expect(all.value).toBeCloseTo(conductorsPerLine * alone.value, 9);
          expect([all.correctedAmpacity, all.terminationAmpacity, all.governing]).toEqual([
            alone.correctedAmpacity,
            alone.terminationAmpacity,
            alone.governing,
          ]);
          const { value: load } = loadForConductor({ ...one, conductorsPerLine, equipment });
          if (load > 4000) return;
          const least = conductorForLoad({ ...one, conductorsPerLine, equipment, heaterCurrent: load });
          // It serves its own load, so that the choice is no larger.
          expect(least.ampacity.tableAmpacity).toBeLessThanOrEqual(all.tableAmpacity);
          const hottest = ambientForConductor({ ...one, conductorsPerLine, equipment, heaterCurrent: load });
          expect(hottest.value).toBeGreaterThanOrEqual(Math.floor(ambient));
          expect(hottest.ampacity.conductorsPerLine).toBe(conductorsPerLine);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe("IEC", () => {
  const two = { ...cable, conductorsPerLine: 2 };

  it("adds up the cables of a line, each set a circuit of the group", () => {
    // 50 mm², method C, PVC: 144 A; two circuits bunched 0.80; 2 · 144 · 0.8.
    const found = cableCapacity({ ...two, size: "50 mm²" });
    expect(found.value).toBeCloseTo(230.4, 9);
    expect(found).toMatchObject({
      tableCapacity: 144,
      groupingFactor: 0.8,
      conductorsPerLine: 2,
      warnings: [],
    });
    // gG fuses ask for 1.1 times their rating: 200 A is 220 A.
    const load = loadForCable({ ...two, size: "50 mm²", deviceKind: "gG fuse" });
    expect([load.value, load.device]).toEqual([200, 200]);
    const hottest = ambientForCable({
      ...two,
      size: "50 mm²",
      designCurrent: amperes(180),
      deviceKind: "gG fuse",
    });
    // 35 °C: factor 0.94, 216.6 A, too little.
    expect([hottest.value, hottest.capacity.value]).toEqual([30, found.value]);
  });

  it("small ones too: the standard names no smallest size", () => {
    expect(cableCapacity({ ...two, size: "1.5 mm²" }).value).toBeCloseTo(2 * 17.5 * 0.8, 9);
  });

  it("is told where the sets are taken to lie apart, and what must be alike", () => {
    const at = (circuits: number, conductorsPerLine: number) =>
      cableCapacity({ ...cable, circuits, conductorsPerLine, size: "50 mm²" });
    expect(at(1, 2).warnings).toMatchObject([{ code: "assumed", path: "circuits" }]);
    expect(at(2, 3).warnings).toMatchObject([{ code: "assumed", path: "circuits" }]);
    for (const [circuits, count] of [
      [1, 1],
      [2, 2],
      [3, 2],
    ] as const)
      expect(at(circuits, count).warnings).toEqual([]);
    expect(at(2, 2).cautions.join()).toMatch(/alike: metal, section, about the same length, no branch/);
    expect(at(2, 1).cautions.join()).not.toMatch(/parallel/);
  });

  it("the choice is the smallest whose sum carries k3 times the device (property)", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 900, noNaN: true }),
        fc.integer({ min: 1, max: 5 }),
        fc.integer({ min: 1, max: 9 }),
        (designCurrent, conductorsPerLine, circuits) => {
          const asked = { ...cable, circuits, conductorsPerLine };
          let found: ReturnType<typeof cableForLoad>;
          try {
            found = cableForLoad({
              ...asked,
              designCurrent: designCurrent as Amperes,
              deviceKind: "gG fuse",
            });
          } catch (error) {
            expect(error).toMatchObject({ code: "outside-table" });
            return;
          }
          const { tableCapacity, groupingFactor } = found.capacity;
          expect(found.conductorsPerLine * tableCapacity * groupingFactor).toBeGreaterThanOrEqual(
            found.requiredCapacity * (1 - 1e-12),
          );
          expect(tableCapacity).toBeGreaterThanOrEqual(found.requiredTableCapacity * (1 - 1e-12));
          expect(found.requiredTableCapacity * conductorsPerLine * groupingFactor).toBeCloseTo(
            found.requiredCapacity,
            8,
          );
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe("voltage drop", () => {
  const feed = (conductorsPerLine: number | undefined, reactance: number) =>
    voltageDrop({
      circuit: "three-phase",
      current: amperes(360),
      length: meters(50),
      resistancePerLength: 2e-4 as OhmsPerMeter,
      reactancePerLength: reactance as OhmsPerMeter,
      powerFactor: 0.8,
      supplyVoltage: volts(480),
      ...(conductorsPerLine === undefined ? {} : { conductorsPerLine }),
    }).drop;

  it("each conductor carries its share", () => {
    // √3 · 120 A · 50 m · (0.2 · 0.8 + 0.15 · 0.6) mΩ/m is 2.598 V.
    expect(feed(3, 1.5e-4)).toBeCloseTo(Math.sqrt(3) * 1.5, 9);
    expect(feed(undefined, 1.5e-4)).toBe(feed(1, 1.5e-4));
  });

  it.each([0, 1.5, -1, 101, Number.NaN])("refuses %d of them", (count) => {
    expectRefusal(
      () => feed(count, 0),
      Number.isNaN(count) ? "not-a-number" : "out-of-range",
      "conductorsPerLine",
      String(count),
    );
  });
});
