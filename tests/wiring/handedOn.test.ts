/**
 * An answer that is put together from others hands on all that they say: every cell, every condition, every caution, every doubt, and
 * adds none that no part has. The parts are asked for again through their own public functions, over the worked examples and over the
 * same with one thing changed; what an answer adds of its own is named here.
 */
import type { Amperes, Warning } from "electroheat/quantity";
import {
  ambientFactor,
  ambientForCable,
  ambientForConductor,
  type CodeResult,
  cableAmbientFactor,
  cableCapacity,
  cableForLoad,
  conductorAmpacity,
  conductorCountFactor,
  conductorForLoad,
  designCurrent,
  groupingFactor,
  insulationVerdicts,
  largestApplianceDevice,
  largestDevice,
  loadForCable,
  loadForConductor,
  standardDevice,
  subdivision,
  type TableCell,
  tableAmpacity,
  terminationTemperature,
} from "electroheat/wiring";
import { describe, expect, it } from "vitest";
import { CHANGES } from "../support/examples.ts";
import { answers } from "./answers.ts";

/** What goes with the provenance of cells, not with a part: worked out again from the cells of the whole. */
const ABOUT_CELLS = /^Rests on a |^The number of a table or clause was not read/;

const key = (one: unknown): string => JSON.stringify(one);
/** Without what stands there twice, in one order. */
const set = (list: readonly unknown[]): string[] => [...new Set(list.map(key))].sort();
const own = (cautions: readonly string[]): string[] => cautions.filter((one) => !ABOUT_CELLS.test(one));

interface Parts {
  readonly cells: readonly TableCell[];
  readonly baseConditions: readonly string[];
  readonly cautions: readonly string[];
  readonly warnings: readonly Warning[];
}

/** Parts and what the whole adds of its own, as one. */
function together(parts: readonly Partial<Parts>[]): Parts {
  return {
    cells: parts.flatMap(({ cells = [] }) => cells),
    baseConditions: parts.flatMap(({ baseConditions = [] }) => baseConditions),
    cautions: parts.flatMap(({ cautions = [] }) => cautions),
    warnings: parts.flatMap(({ warnings = [] }) => warnings),
  };
}

/** An answer holds its parts, neither more nor less, and no cell twice. */
function expectParts(answer: CodeResult<unknown>, parts: readonly Partial<Parts>[], what: string): void {
  const wanted = together(parts);
  expect(set(answer.cells), what).toEqual(set(wanted.cells));
  expect(answer.cells.length, `${what}: a cell twice`).toBe(set(answer.cells).length);
  expect(answer.baseConditions, what).toEqual(wanted.baseConditions);
  expect(set(own(answer.cautions)), what).toEqual(set(own(wanted.cautions)));
  expect(answer.cautions.length, `${what}: a caution twice`).toBe(set(answer.cautions).length);
  expect(answer.warnings, what).toEqual(wanted.warnings);
}

/** The warning of a class that wants its load split, by the function for splitting. */
function split(edition: never, equipment: string, load: Amperes): readonly Warning[] {
  let found: ReturnType<typeof subdivision>;
  try {
    found = subdivision({ edition, equipment, current: load });
  } catch {
    return [];
  }
  if (!found.required) return [];
  const limit = found.largestLoad as Amperes;
  const message = `${equipment} above ${limit} A is split into protected circuits of at most ${limit} A each (${found.table}); this is the feed before the split.`;
  return [{ code: "caution", path: "heaterCurrent", message, limit, unit: "A" }];
}

/** Cell and cautions of the limit of a small conductor, where it has one. */
function smallConductor(edition: never, size: string, material: string, ampacity: Amperes): Partial<Parts> {
  const found = largestDevice({ edition, size, material, ampacity });
  const cells = found.cells.filter(({ column }) => column === "limit");
  return { cells, cautions: own(found.cautions).slice(1) };
}

const HOT_AIR = (what: string) =>
  `The air where the ${what} is hottest, over the whole shift: near elements that is the oven wall, not the room.`;

/** What several conductors per line add: the rule's cell, what must be alike, and that they are taken to lie apart. */
function inParallel(count: number, counted: number, cells: readonly TableCell[]): Partial<Parts>[] {
  if (count === 1) return [];
  const rule = cells.filter(({ column }) => column === "smallest");
  expect(rule).toMatchObject([{ value: "1/0", unit: "AWG", source: "nfpa-70" }]);
  const message = `${counted} conductors are fewer than ${count} sets have: each set is taken to have a raceway of its own. In one raceway those of all sets are counted.`;
  const alike =
    "Conductors in parallel share the current only where they are alike: length, metal, size, insulation, terminations. Sets in raceways of their own need raceways alike, each with a conductor of every line and its own equipment grounding conductor.";
  const apart: Warning = { code: "assumed", path: "currentCarryingConductors", message };
  return [{ cells: rule, cautions: [alike], warnings: counted < 2 * count ? [apart] : [] }];
}

describe("North America", () => {
  it.each(CHANGES)(
    "the conductor for a load: load, device, ampacity, limit of a small conductor, and the split of the class (%s)",
    (change) => {
      for (const [input, found] of answers(conductorForLoad, change)) {
        const edition = input.edition as never;
        const design = designCurrent(input);
        const device = standardDevice({ edition, current: design.value, direction: "up" });
        const circuitRating = device.value;
        const ampacity = conductorAmpacity({ ...input, size: found.value, circuitRating });
        const small = smallConductor(edition, found.value, input.material, ampacity.value);
        const warnings = split(edition, input.equipment, design.load);
        expectParts(
          found,
          [
            { ...design, baseConditions: [], warnings: [] },
            { ...ampacity, warnings: [] },
            { cells: device.cells },
            small,
            { baseConditions: design.baseConditions },
            { warnings: [...design.warnings, ...ampacity.warnings, ...warnings] },
          ],
          key(input),
        );
        expect([found.load, found.designCurrent, found.device, found.ampacity]).toEqual([
          design.load,
          design.value,
          device.value,
          ampacity,
        ]);
      }
    },
  );

  it.each(CHANGES)(
    "the load of a conductor: ampacity, device, factor, and the class where the load is split (%s)",
    (change) => {
      for (const [input, found] of answers(loadForConductor, change)) {
        const edition = input.edition as never;
        const circuitRating = input.device as Amperes;
        const ampacity = conductorAmpacity({ ...input, circuitRating });
        const { equipment } = input;
        const rule = designCurrent({ edition, equipment, heaterCurrent: 1 as Amperes });
        const permitted = largestDevice({ ...input, ampacity: ampacity.value });
        const { device } = found;
        const cells = [...ampacity.cells, ...rule.cells];
        const left = found.cells.filter((cell) => !set(cells).includes(key(cell)));
        const listed = standardDevice({ edition, current: device, direction: "up" }).cells;
        const devices = found.constraints.at(-1)?.constraint;
        if (devices === "device") cells.push(...listed);
        if (devices === "conductor's device limit") cells.push(permitted.cells[0] as TableCell);
        // Of the class: its largest load, and its largest device where that is what limits.
        const columns = [
          ...(input.subdivided === true && found.constraints.length > 3 ? ["subdivided load"] : []),
          ...(devices === "subdivided device" ? ["subdivided device"] : []),
        ];
        const ofClass = left.filter(({ column }) => columns.includes(column));
        expect(ofClass.map(({ column }) => column).sort(), key(input)).toEqual([...columns].sort());
        const baseConditions = [...ampacity.baseConditions, "continuous load: three hours or more"];
        expectParts(found, [{ ...ampacity, cells: [...cells, ...ofClass], baseConditions }], key(input));
        expect(found.ampacity).toEqual(ampacity);
      }
    },
  );

  it.each(CHANGES)("the hottest ambient of a conductor: load, device and ampacity there (%s)", (change) => {
    for (const [input, found] of answers(ambientForConductor, change)) {
      const edition = input.edition as never;
      const design = designCurrent(input);
      const device =
        input.device === undefined
          ? standardDevice({ edition, current: design.value, direction: "up" })
          : { value: input.device, cells: [] };
      const ampacity = conductorAmpacity({ ...input, ambient: found.value, circuitRating: device.value });
      expectParts(
        found,
        [
          { ...ampacity, warnings: [] },
          { cautions: [HOT_AIR("conductor")], cells: device.cells },
          { ...design, warnings: [...design.warnings, ...ampacity.warnings] },
        ],
        key(input),
      );
      expect([found.load, found.designCurrent, found.device, found.ampacity]).toEqual([
        design.load,
        design.value,
        device.value,
        ampacity,
      ]);
    }
  });

  it.each(CHANGES)("the ampacity of a conductor: table, factors, terminals (%s)", (change) => {
    for (const [input, found] of answers(conductorAmpacity, change)) {
      const { ambient, insulationTemperature, currentCarryingConductors } = input;
      const edition = input.edition as never;
      const table = tableAmpacity(input);
      // "ambient 26 to 30 °C", "ambient 36 to 40 °C": the base is the hot end.
      const baseAmbient = Number(/(\d+) °C$/.exec(table.baseConditions[0] as string)?.[1]) as never;
      const by = input.ambientBy ?? "table";
      const hot =
        ambient === baseAmbient
          ? { cells: [], warnings: [], value: 1 }
          : ambientFactor({ edition, baseAmbient, insulationTemperature, ambient, by });
      const count = conductorCountFactor({ edition, currentCarryingConductors });
      const landing = found.cells.filter((cell) => /^(?:copper|aluminum) /.test(cell.column)).slice(0, 2);
      // Warnings of the terminals: what the code has no column for.
      const terminals = found.warnings.filter(({ path }) =>
        ["terminalTemperature", "material"].includes(path),
      );
      expectParts(
        found,
        [
          { cells: [...table.cells, ...hot.cells, ...count.cells, ...landing] },
          { baseConditions: table.baseConditions, cautions: own(table.cautions).slice(1) },
          {
            cautions:
              insulationTemperature > 90
                ? [
                    "Wire above 90 °C: the terminal, splice or block it lands on limits it, and the ambient is that of the oven wall.",
                  ]
                : [],
          },
          { warnings: hot.warnings.map((one) => ({ ...one, path: "ambientBy" })) },
          ...inParallel(input.conductorsPerLine ?? 1, currentCarryingConductors, found.cells),
          { warnings: terminals },
        ],
        key(input),
      );
      expect([found.tableAmpacity, found.ambientFactor, found.countFactor]).toEqual([
        table.value,
        hot.value,
        count.value,
      ]);
      // The lowest of the two is the answer, and where both are one the conductor's own.
      const limit = found.terminationAmpacity ?? Number.POSITIVE_INFINITY;
      const [first] = found.cells as readonly [TableCell];
      expect(first.value, key(input)).toBe(found.governing === "termination" ? limit : table.value);
    }
  });

  it.each(CHANGES)("the device of an appliance: its factor and the rating it leads to (%s)", (change) => {
    for (const [input, found] of answers(largestApplianceDevice, change)) {
      const { edition } = input;
      const device = standardDevice({ edition, current: (1.5 * input.current) as Amperes, direction: "up" });
      expect(found.value).toBe(device.value);
      expect(found.cells.slice(1)).toEqual(device.cells);
      expect(found.cells[0]).toMatchObject({ column: "factor", value: 1.5, unit: "1", edition });
    }
  });

  it.each(CHANGES)("circuits of a split heater: their load, design current and device (%s)", (change) => {
    for (const [input, found] of answers(subdivision, change)) {
      const edition = input.edition as never;
      const { equipment } = input;
      const each = designCurrent({ edition, equipment, heaterCurrent: found.circuitCurrent });
      const device = standardDevice({ edition, current: each.value, direction: "up" });
      expect([found.circuitDesignCurrent, found.device]).toEqual([each.value, device.value]);
      expect(found.cells.slice(1)).toEqual(device.cells);
      const whole = designCurrent({ edition, equipment, heaterCurrent: input.current });
      expect(found.warnings).toEqual(whole.warnings.map((one) => ({ ...one, path: "current" })));
    }
  });

  it("terminals without a mark go by the rule for them", () => {
    const run = {
      edition: "NEC 2023",
      installation: "raceway",
      material: "copper",
      insulationTemperature: 90 as never,
      ambient: 30 as never,
      currentCarryingConductors: 3,
      size: "4 AWG",
    } as const;
    for (const rating of [20, 100, 101, 400]) {
      const circuitRating = rating as Amperes;
      const { value } = terminationTemperature({ edition: "NEC 2023", circuitRating });
      const unmarked = conductorAmpacity({ ...run, terminalTemperature: "unmarked", circuitRating });
      expect(unmarked).toEqual(conductorAmpacity({ ...run, terminalTemperature: value }));
    }
  });
});

describe("IEC", () => {
  const ALIKE =
    "Conductors in parallel share the current only where they are alike: metal, section, about the same length, no branch on the way. Single-core cables neither twisted nor small want an order of the lines that shares equally; from four on, consider bus bars.";
  const sets = (circuits: number, count: number): Warning => ({
    code: "assumed",
    path: "circuits",
    message: `Fewer circuits than sets (${circuits} and ${count}): the sets are taken to lie apart. Side by side each counts as a circuit.`,
  });

  it.each(CHANGES)("the capacity of a cable: table and factors (%s)", (change) => {
    for (const [input, found] of answers(cableCapacity, change)) {
      const { edition, insulation, ambient, circuits } = input;
      const { conductorsPerLine: count = 1, ...single } = input;
      const alone = cableCapacity({ ...single, circuits: 1, ambient: baseOf(input) });
      const by = input.ambientBy ?? "table";
      const baseAmbient = baseOf(input);
      const hot =
        ambient === baseAmbient
          ? { value: 1, cells: [], warnings: [] }
          : cableAmbientFactor({ edition, insulation, ambient, baseAmbient, by });
      const named = input.grouping === undefined ? {} : { grouping: input.grouping };
      const arrangement = input.arrangement as string;
      const group =
        circuits === 1
          ? { value: 1, cells: [] }
          : groupingFactor({ edition, arrangement, circuits, ...named });
      expectParts(
        found,
        [
          { ...alone, cells: [...alone.cells, ...hot.cells, ...group.cells] },
          { warnings: hot.warnings.map((one) => ({ ...one, path: "ambientBy" })) },
          ...(count === 1 ? [] : [{ cautions: [ALIKE] }]),
          ...(count <= circuits ? [] : [{ warnings: [sets(circuits, count)] }]),
        ],
        key(input),
      );
      expect(found.value, key(input)).toBe(count * (alone.value * hot.value * group.value));
      expect([found.tableCapacity, found.ambientFactor, found.groupingFactor]).toEqual([
        alone.value,
        hot.value,
        group.value,
      ]);
      expect(found.cells[0]).toEqual(alone.cells[0]);
      const lowered = [...(hot.value < 1 ? ["ambient"] : []), ...(group.value < 1 ? ["grouping"] : [])];
      expect(found.governing).toBe(lowered.join(" and ") || "table value");
      expect(own(found.cautions).length).toBe((insulation === "XLPE" ? 1 : 0) + (count > 1 ? 1 : 0));
    }
  });

  /** What a cable's device and capacity hand on; the factor of the device. */
  function expectCable(
    input: { readonly deviceKind: string },
    found: CodeResult<unknown> & { readonly device: Amperes; readonly capacity: CodeResult<number> },
    capacity: CodeResult<number>,
    cautions: readonly string[],
  ): number {
    expect(found.capacity).toEqual(capacity);
    const devices = found.cells.filter((cell) => !set(capacity.cells).includes(key(cell)));
    // A rating, and how much cable it asks for.
    expect(devices.map(({ column }) => column)).toEqual(["rating", "k3"]);
    const [rating, k3] = devices as [TableCell, TableCell];
    expect([rating.value, rating.row, k3.row]).toEqual([found.device, `${found.device} A`, input.deviceKind]);
    expectParts(found, [{ ...capacity, cells: [...capacity.cells, ...devices] }, { cautions }], key(input));
    return Number(k3.value);
  }
  const rule = (k3: number) => (k3 > 1 ? "In ≤ Iz/k3" : "In ≤ Iz");

  it.each(CHANGES)("the cable for a load: capacity and device (%s)", (change) => {
    for (const [input, found] of answers(cableForLoad, change)) {
      const k3 = expectCable(input, found, cableCapacity({ ...input, size: found.value }), []);
      expect(found.governing).toBe(rule(k3));
      expect(found.requiredCapacity).toBeCloseTo(k3 * found.device, 9);
      expect(found.cells[0]).toEqual(found.capacity.cells[0]);
    }
  });

  it.each(CHANGES)("the load of a cable: capacity and device (%s)", (change) => {
    for (const [input, found] of answers(loadForCable, change)) {
      const k3 = expectCable(input, found, cableCapacity(input), []);
      expect(found.governing).toBe(rule(k3));
      expect(found.cells[0]?.column).toBe("rating");
    }
  });

  it.each(CHANGES)("the hottest ambient of a cable: capacity there and device (%s)", (change) => {
    for (const [input, found] of answers(ambientForCable, change)) {
      const k3 = expectCable(input, found, cableCapacity({ ...input, ambient: found.value }), [
        HOT_AIR("cable"),
      ]);
      if (found.governing !== "end of the factors") expect(found.governing).toBe(rule(k3));
    }
  });
});

/** Base of the capacity table a cable is in: the ambient at which its factor is none. */
function baseOf(input: Parameters<typeof cableCapacity>[0]): never {
  const bases = [20, 30, 40].filter((ambient) => {
    try {
      return cableCapacity({ ...input, circuits: 1, ambient: ambient as never }).cells.length === 1;
    } catch {
      return false;
    }
  });
  expect(bases.length).toBe(1);
  return bases[0] as never;
}

describe("insulation", () => {
  it.each(CHANGES)("a limit says by which test, for what and as what it was read (%s)", (change) => {
    for (const [input, verdicts] of answers(insulationVerdicts, change)) {
      const count = input.elementsInParallel ?? 1;
      const read = `read at ${input.testVoltage} V, ${input.temperature} °C, ${count} measured together, not corrected for temperature`;
      for (const found of verdicts) {
        expect(found.baseConditions[1]).toBe(read);
        expect(found.baseConditions.length).toBe(2);
        const { warnings } = found;
        for (const warning of warnings.filter(({ path }) => path === "testVoltage"))
          expect(warning).toEqual({
            code: "outside-validity",
            path: "testVoltage",
            message: `The limit is for a test at ${warning.limit} V.${
              (input.testVoltage as number) < (warning.limit as number)
                ? " Read at less than that: a weak place may hold a lower voltage, so it is not passed by this."
                : ""
            }`,
            limit: warning.limit,
            unit: "V",
            source: found.cells[0]?.source,
          });
        const hidden = warnings.filter(({ path }) => path === "elementsInParallel");
        for (const warning of hidden)
          expect(warning.message).toBe(
            `Limit of one element over ${count}, as if they were equal: one poor element may hide in the group.`,
          );
      }
    }
  });
});
