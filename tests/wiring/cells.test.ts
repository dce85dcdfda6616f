/**
 * Every printed cell, once in the file and once through the function a user calls. Expected figures: the second copy
 * in printed.ts, which says for each table what was read in print and what is from memory.
 */
import {
  amperes,
  celsius,
  inches,
  megaohms,
  millimeters,
  toMegaohms,
  toOhmsPerThousandFeet,
  toPoundForceInches,
  volts,
} from "electroheat/quantity";
import {
  ambientFactor,
  cableAmbientFactor,
  cableCapacity,
  conductorCountFactor,
  conductorResistancePerLength,
  groupingFactor,
  insulationAt20,
  insulationVerdicts,
  largestDevice,
  type NamedWireTable,
  namedWireAmpacity,
  standardDevice,
  type TerminalDrive,
  tableAmpacity,
  terminalTorque,
} from "electroheat/wiring";
import { describe, expect, it } from "vitest";
import { type PrintedCell, printedCells, tableNamed } from "./tables.ts";

const american = (row: string): string =>
  row.includes("/") || Number(row) <= 40 ? `${row} AWG` : `${row} kcmil`;

/** Cell of a file by row and column; rows of several keys are told apart by what the column says. */
function inFile({ table, column, row }: PrintedCell): unknown {
  const { columns, rows } = tableNamed(table);
  const at = (name: string): number => columns.findIndex((one) => one.name === name);
  if (table === "nec-chapter-9-table-8") {
    const [stranding, ...metal] = column.split(" ");
    const found = rows.find((one) => one[0] === row && (one[2] === 1) === (stranding === "solid"));
    return found?.[at(metal.join(" "))];
  }
  if (table === "nec-small-conductors")
    return rows.find((one) => one[0] === row && one[1] === column)?.[at("limit")];
  const key = table.startsWith("nec-ambient") ? at("to") : 0;
  return rows.find((one) => String(one[key]) === row)?.[at(column)];
}

type Lookup = (cell: PrintedCell) => number;

const ampacity =
  (edition: "NEC 2008" | "NEC 2023", installation: string): Lookup =>
  ({ column, row }) => {
    const [, material = "", temperature = ""] = /^(.*) (\d+)$/.exec(column) ?? [];
    const insulationTemperature = celsius(Number(temperature));
    return tableAmpacity({ edition, installation, size: american(row), material, insulationTemperature })
      .value;
  };
const ambient =
  (base: number): Lookup =>
  ({ column, row }) =>
    ambientFactor({
      edition: "NEC 2023",
      baseAmbient: celsius(base),
      insulationTemperature: celsius(Number(column)),
      ambient: celsius(Number(row)),
    }).value;
const capacity =
  (
    edition: "IEC 60364-5-52:2009" | "IEC 60364-5-52:2001" | "BS 7671:2008" | "IEC 60204-1:2005",
    insulation: string,
    base: number,
  ): Lookup =>
  ({ column, row }) =>
    cableCapacity({
      edition,
      insulation,
      material: "copper",
      method: column.slice(0, -2),
      loadedConductors: Number(column.slice(-1)),
      size: `${row} mm²`,
      ambient: celsius(base),
      circuits: 1,
    }).value;
const cableAmbient =
  (edition: "IEC 60364-5-52:2009" | "BS 7671:2008" | "IEC 60204-1:2005", base: number): Lookup =>
  ({ column, row }) =>
    cableAmbientFactor({
      edition,
      insulation: column,
      ambient: celsius(Number(row)),
      baseAmbient: celsius(base),
    }).value;
const grouping =
  (name: string): Lookup =>
  ({ column, row }) =>
    groupingFactor({
      edition: "IEC 60364-5-52:2009",
      arrangement: column,
      circuits: Number(row),
      grouping: name,
    }).value;
const wire =
  (table: NamedWireTable, base: number, unit: string): Lookup =>
  ({ column, row }) =>
    namedWireAmpacity({ table, column, size: `${row} ${unit}`, ambient: celsius(base) }).value;
/** A factor of a named wire: its current at that ambient over its current at the base. */
const wireFactor =
  (table: NamedWireTable, base: number, size: string, columnOf: (factor: string) => string): Lookup =>
  ({ column, row }) => {
    const at = (temperature: number): number =>
      namedWireAmpacity({
        table,
        column: columnOf(column),
        size,
        ambient: celsius(temperature),
        insulation: column,
      }).value;
    return at(Number(row)) / at(base);
  };

const slot = (screw: "No. 10 and larger" | "smaller than No. 10", width: number, length: number) =>
  ({
    kind: "slotted",
    screw,
    slotWidth: millimeters(width),
    slotLength: millimeters(length),
  }) satisfies TerminalDrive;
const torque = (drive: TerminalDrive, size: string): number =>
  toPoundForceInches(terminalTorque({ drive, size }).value);

/** Cells of the IEC tables and of the insulation factors say themselves whether they were read. */
function ownProvenance({ table, column, row }: PrintedCell): string | undefined {
  if (table.startsWith("iec-b52") && column !== "PVC" && column !== "XLPE" && !table.includes("grouping")) {
    const [method, loadedConductors] = [column.slice(0, -2), Number(column.slice(-1))];
    const insulation = ["iec-b52-2", "iec-b52-4", "iec-b52-10"].includes(table) ? "PVC" : "XLPE";
    const given = { method, loadedConductors, insulation, material: "copper", circuits: 1 };
    return cableCapacity({
      ...given,
      edition: "IEC 60364-5-52:2009",
      ambient: celsius(30),
      size: `${row} mm²`,
    }).cells[0]?.provenance;
  }
  if (table === "iec-b52-14-ambient") {
    return cableAmbientFactor({
      edition: "IEC 60364-5-52:2009",
      insulation: column,
      ambient: celsius(Number(row)),
      baseAmbient: celsius(30),
    }).cells[0]?.provenance;
  }
  if (table !== "neta-100-14") return undefined;
  const resistance = megaohms(1);
  return insulationAt20({ resistance, temperature: celsius(Number(row)), insulation: column as "oil" })
    .provenance;
}

const through: Readonly<Record<string, Lookup>> = {
  "nec-310-16": ampacity("NEC 2023", "raceway"),
  "nec-310-16-2008": ampacity("NEC 2008", "raceway"),
  "nec-310-17-copper": ampacity("NEC 2023", "free air"),
  "nec-310-18": ampacity("NEC 2023", "high-temperature raceway"),
  "nec-ambient-30": ambient(30),
  "nec-ambient-40": ambient(40),
  "nec-conductor-count": ({ row }) =>
    100 * conductorCountFactor({ edition: "NEC 2023", currentCarryingConductors: Number(row) }).value,
  "nec-small-conductors": ({ column: material, row }) =>
    largestDevice({ edition: "NEC 2020", size: american(row), material, ampacity: amperes(500) }).value,
  "nec-standard-ratings": ({ value }) =>
    standardDevice({ edition: "NEC 2023", current: amperes(value), direction: "up" }).value,
  "nec-chapter-9-table-8": ({ column, row }) => {
    const [stranding = "", ...metal] = column.split(" ");
    return toOhmsPerThousandFeet(
      conductorResistancePerLength({
        edition: "NEC 2023",
        size: american(row),
        build: stranding as "solid",
        metal: metal.join(" ") as "aluminum",
        temperature: celsius(75),
      }).value,
    );
  },
  "iec-b52-2": capacity("IEC 60364-5-52:2009", "PVC", 30),
  "iec-b52-3": capacity("IEC 60364-5-52:2009", "XLPE", 30),
  "iec-b52-4": capacity("IEC 60364-5-52:2009", "PVC", 30),
  "iec-b52-5": capacity("IEC 60364-5-52:2009", "XLPE", 30),
  "iec-b52-10": capacity("IEC 60364-5-52:2009", "PVC", 30),
  "iec-b52-12": capacity("IEC 60364-5-52:2009", "XLPE", 30),
  "iec-method-d-2001-pvc": capacity("IEC 60364-5-52:2001", "PVC", 20),
  "iec-method-d-2001-xlpe": capacity("IEC 60364-5-52:2001", "XLPE", 20),
  "bs-7671-4e1a-conduit": capacity("BS 7671:2008", "XLPE", 30),
  "bs-7671-4e1a-free-air": capacity("BS 7671:2008", "XLPE", 30),
  "iec-60204-1-capacity": capacity("IEC 60204-1:2005", "PVC", 40),
  "iec-b52-14-ambient": cableAmbient("IEC 60364-5-52:2009", 30),
  "bs-7671-4b1-ambient": cableAmbient("BS 7671:2008", 30),
  "iec-60204-1-ambient": cableAmbient("IEC 60204-1:2005", 40),
  "iec-b52-17-grouping": grouping("standard"),
  "iec-grouping-simplified": grouping("simplified guide"),
  "bs-7671-4f2a": wire("BS 7671 4F2A", 30, "mm²"),
  "bs-7671-4f2a-ambient": wireFactor("BS 7671 4F2A", 30, "16 mm²", () => "two-core"),
  "bs-7671-4f3a": wire("BS 7671 4F3A", 30, "mm²"),
  "bs-7671-4f3a-ambient": wireFactor("BS 7671 4F3A", 30, "1.5 mm²", () => "three-phase"),
  "wire-maker-40": wire("wire maker, 40 °C", 40, "AWG"),
  "wire-maker-30": wire("wire maker, 30 °C", 30, "AWG"),
  "wire-maker-30-ambient": wireFactor("wire maker, 30 °C", 30, "14 AWG", (factor) => factor),
  "terminal-torque-screws": ({ column, row }) => {
    const [kind, width] = column.startsWith("slotted")
      ? (["slotted", column.slice(8)] as const)
      : [column, ""];
    const drive =
      kind === "slotted"
        ? slot("No. 10 and larger", width === "narrow" ? 1.1 : 1.3, 6)
        : ({ kind } as TerminalDrive);
    return torque(drive, american(row));
  },
  "terminal-torque-small-slots": ({ column, row }) => {
    const length = row === "<4" ? 3.8 : row === ">7.1" ? 7.3 : Number(row);
    return torque(slot("smaller than No. 10", column === "narrow" ? 1 : 1.3, length), "10 AWG");
  },
  "terminal-torque-sockets": ({ row }) => {
    const [over = 0, under = 1] = row.split("/").map(Number);
    return torque({ kind: "recessed socket", acrossFlats: inches(over / under) }, "1/0 AWG");
  },
  "neta-100-1": ({ row }) => {
    const nominalVoltage = volts(Number(row));
    const [found] = insulationVerdicts({
      resistance: megaohms(1),
      nominalVoltage,
      testVoltage: volts(1000),
      temperature: celsius(20),
      criteria: ["NETA 100.1"],
    });
    return toMegaohms(found?.minimum ?? megaohms(0));
  },
  "neta-100-14": ({ column, row }) =>
    insulationAt20({
      resistance: megaohms(1),
      temperature: celsius(Number(row)),
      insulation: column as "oil",
    }).value / 1e6,
};

/** Cells a user reaches through another function or not at all: counted, and held to the file only. */
const fileOnly = (cell: PrintedCell): boolean =>
  through[cell.table] === undefined ||
  /(strands|area)$/.test(cell.column) ||
  cell.column === "test voltage" ||
  cell.column === "across flats" ||
  cell.column === "torque metric" ||
  // Refused on purpose: the column repeats a table of another base.
  (cell.table.startsWith("wire-maker-30") && cell.column === "250 nickel-plated copper");

const tables = [...new Set(printedCells.map(({ table }) => table))];

describe.each(tables)("%s", (table) => {
  const cells = printedCells.filter((cell) => cell.table === table);

  it("holds the printed figures", () => {
    const wrong = cells.filter((cell) => inFile(cell) !== cell.value);
    expect(wrong).toEqual([]);
  });

  it("gives them through the function a user calls", () => {
    const wrong = cells.flatMap((cell) => {
      if (fileOnly(cell)) return [];
      const found = through[table]?.(cell) as number;
      return Math.abs(found / cell.value - 1) < 1e-12 ? [] : [{ ...cell, found }];
    });
    expect(wrong).toEqual([]);
  });

  it("says of each figure whether it was read in print", () => {
    const read = new Map<string, boolean>();
    for (const cell of cells) {
      const key = `${cell.column}:${cell.row}`;
      read.set(key, cell.seen || read.get(key) === true);
    }
    const wrong = cells.filter((cell) => {
      const found = ownProvenance(cell);
      return found !== undefined && found !== (read.get(`${cell.column}:${cell.row}`) ? "seen" : "memory");
    });
    expect(wrong).toEqual([]);
    expect(["seen", "memory"]).toContain(tableNamed(table).provenance);
  });

  it("has no figure that the second copy lacks", () => {
    const { rows, columns } = tableNamed(table);
    const keys = ["size", "from", "to", "ambient", "circuits", "temperature", "area", "strands", "rating"];
    const held = rows.flatMap((row) =>
      row.filter((cell, at) => typeof cell === "number" && !keys.includes(columns[at]?.name ?? "")),
    ).length;
    const unique = new Set(
      cells
        .filter(({ column }) => !/(strands|area|rating)$/.test(column))
        .map(({ column, row }) => `${column}:${row}`),
    ).size;
    // Bases of 1 that need no copy: the machine factors at 40 °C, the first rows of the flexible-cable factors.
    const bases: Readonly<Record<string, number>> = {
      "iec-60204-1-ambient": 1,
      "bs-7671-4f2a-ambient": 11,
      "bs-7671-4f3a-ambient": 6,
    };
    expect(held - unique).toBe(bases[table] ?? 0);
  });
});

describe("the count", () => {
  const count = (cells: readonly PrintedCell[]): number =>
    new Set(cells.map(({ table, column, row }) => `${table} ${column} ${row}`)).size;

  it("is what the closing note says", () => {
    const seen = printedCells.filter((cell) => cell.seen);
    const remembered = printedCells.filter((cell) => !cell.seen);
    expect({ seen: count(seen), memory: count(remembered) }).toEqual({ seen: 1691, memory: 364 });
    expect(count(printedCells.filter((cell) => !fileOnly(cell)))).toBeGreaterThan(1800);
  });
});
