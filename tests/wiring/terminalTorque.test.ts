/**
 * Terminal torques against what the cells in lbf·in do not know: the newton meters printed beside them in two reprints of the annex
 * (UL 486A-B, Tables I.1 to I.3), the second, lower set of values one reprint carries, and the order of the sizes. Boundaries of the slots
 * as the heads of the tables word them; rules of the room where no source is named.
 */
import {
  inches,
  type Meters,
  millimeters,
  newtonMeters,
  poundForceInches,
  toPoundForceInches,
} from "electroheat/quantity";
import { DEFERRAL, type TerminalDrive, terminalTorque } from "electroheat/wiring";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectFinite } from "../support/close.ts";
import { expectRefusal } from "../support/spoil.ts";
import { tableNamed } from "./tables.ts";

type Screw = Extract<TerminalDrive, { kind: "slotted" }>["screw"];
const slot = (screw: Screw, slotWidth: Meters, slotLength: Meters): TerminalDrive => ({
  kind: "slotted",
  screw,
  slotWidth,
  slotLength,
});
const LARGE = "No. 10 and larger";
const SMALL = "smaller than No. 10";
const pounds = (drive: TerminalDrive, size: string): number =>
  toPoundForceInches(terminalTorque({ drive, size }).value);

/** Sizes, smallest first; one of each row at least. */
const SIZES =
  "30 AWG,18 AWG,14 AWG,10 AWG,8 AWG,6 AWG,5 AWG,4 AWG,3 AWG,2 AWG,1 AWG,1/0 AWG,2/0 AWG,3/0 AWG,4/0 AWG,250 kcmil,300 kcmil,350 kcmil,400 kcmil,500 kcmil,600 kcmil,700 kcmil,750 kcmil,800 kcmil,900 kcmil,1000 kcmil,1250 kcmil,1500 kcmil,1750 kcmil,2000 kcmil".split(
    ",",
  );
const ROWS = [
  "10 AWG",
  "8 AWG",
  "4 AWG",
  "3 AWG",
  "2 AWG",
  "1 AWG",
  "2/0 AWG",
  "4/0 AWG",
  "350 kcmil",
  "400 kcmil",
  "500 kcmil",
  "750 kcmil",
  "1000 kcmil",
  "2000 kcmil",
];

describe("the newton meters printed beside the pounds", () => {
  const narrow = slot(LARGE, millimeters(1), millimeters(5));
  const wide = slot(LARGE, millimeters(2), millimeters(9));
  const cases: readonly (readonly [string, TerminalDrive, readonly number[]])[] = [
    ["slotted narrow", narrow, [2.3, 2.8, 4, 4, 4.5]],
    ["slotted wide", wide, [4, 4.5, 5.1, 5.6, 5.6, 5.6, 5.6, 5.6, 5.6, 5.6, 5.6, 5.6, 5.6]],
    [
      "split bolt",
      { kind: "split bolt" },
      [9, 9, 18.6, 31.1, 31.1, 31.1, 43.5, 56.5, 73.4, 93.2, 93.2, 113, 124.3, 124.3],
    ],
    // To 400 kcmil: the larger ones were read in pounds only.
    [
      "external hexagon",
      { kind: "external hexagon" },
      [8.5, 8.5, 12.4, 16.9, 16.9, 16.9, 20.3, 28.2, 36.7, 36.7],
    ],
  ];
  it.each(cases)("%s", (_, drive, printed) => {
    for (const [i, expected] of printed.entries()) {
      const { value } = terminalTorque({ drive, size: ROWS[i] as string });
      expect(Math.abs(value - expected), ROWS[i]).toBeLessThan(0.06);
    }
  });

  it("small slots: 7, 9 and 12 lbf·in are 0.79, 1.0 and 1.4 N·m", () => {
    const at = (width: number, length: number): number =>
      terminalTorque({ drive: slot(SMALL, millimeters(width), millimeters(length)), size: "8 AWG" }).value;
    expect(Math.abs(at(1, 4) - 0.79)).toBeLessThan(0.006);
    expect(Math.abs(at(1, 6.4) - 1)).toBeLessThan(0.06);
    expect(Math.abs(at(1.2, 4) - 1.4)).toBeLessThan(0.06);
  });

  it("sockets: the maker's metric column is the conversion, two cells off by up to 0.25", () => {
    const off = tableNamed("terminal-torque-sockets").rows.filter(
      ([, , torque, metric]) => Math.abs(poundForceInches(torque as number) - (metric as number)) > 0.06,
    );
    expect(off.map(([inch]) => inch)).toEqual(["5/32", "3/16"]);
    for (const [, , torque, metric] of off) {
      expect(Math.abs(poundForceInches(torque as number) - (metric as number))).toBeLessThan(0.25);
    }
    for (const [inch, flats] of tableNamed("terminal-torque-sockets").rows) {
      const [over = 0, under = 1] = String(inch).split("/").map(Number);
      expect(Math.abs((25.4 * over) / under - (flats as number)), String(inch)).toBeLessThan(0.0501);
    }
  });
});

it("every cell is 1.1 to 1.45 times the lower value of the same connector (column A of a reprint)", () => {
  const lower: Readonly<Record<string, readonly number[]>> = {
    "slotted wide": [25, 30, 35, 40, 40, 40, 40, 40, 40, 40, 40, 40, 40],
    "split bolt": [65, 65, 135, 225, 225, 225, 315, 400, 550, 675, 675, 800, 900, 900],
    // In N·m there: 6.8 to 56.5.
    "external hexagon": [60, 60, 90, 125, 125, 125, 150, 200, 250, 250, 300, 300, 400, 500],
  };
  const { columns, rows } = tableNamed("terminal-torque-screws");
  for (const [name, values] of Object.entries(lower)) {
    const at = columns.findIndex((one) => one.name === name);
    for (const [i, value] of values.entries()) {
      const ratio = (rows[i]?.[at] as number) / value;
      expect(ratio, `${name} ${ROWS[i]}`).toBeGreaterThan(1.1);
      expect(ratio, `${name} ${ROWS[i]}`).toBeLessThan(1.45);
    }
  }
});

describe("which cell", () => {
  it("a range of sizes is one row, both ends in it, and a size between two rows is none", () => {
    const rows = SIZES.map((size) => terminalTorque({ drive: { kind: "split bolt" }, size }).row);
    expect(new Set(rows).size).toBe(14);
    expect(rows.slice(0, 7)).toEqual([...Array(4).fill("30 to 10 AWG"), "8 AWG", "6 to 4 AWG", "6 to 4 AWG"]);
    expect(rows.at(-1)).toBe("1250 to 2000 kcmil");
    for (const size of ["7 AWG", "9 AWG", "32 AWG", "450 kcmil", "1100 kcmil", "2500 kcmil", "16 mm²"]) {
      const call = () => terminalTorque({ drive: { kind: "external hexagon" }, size });
      expectRefusal(call, "unknown-name", "size", size);
    }
  });

  it("a gauge that does not exist is refused under the name of the caller's argument", () => {
    for (const size of ["45 AWG", "99 AWG", "00 kcmil"]) {
      const call = () => terminalTorque({ drive: { kind: "external hexagon" }, size });
      expectRefusal(call, "out-of-range", "size", size);
    }
  });

  it("1.2 mm is narrow in Table I.1 and wide in Table I.2, and one excess makes a slot wide", () => {
    const at = (screw: Screw, width: number, length: number): string =>
      terminalTorque({ drive: slot(screw, millimeters(width), millimeters(length)), size: "10 AWG" }).column;
    expect([at(LARGE, 1.2, 6.4), at(LARGE, 1.3, 6.4), at(LARGE, 1.2, 6.5), at(LARGE, 1.3, 6.5)]).toEqual([
      "slotted narrow",
      "slotted wide",
      "slotted wide",
      "slotted wide",
    ]);
    expect([at(SMALL, 1.1, 5), at(SMALL, 1.2, 5)]).toEqual(["narrow", "wide"]);
  });

  it("an inch mark is in the row printed beside it, float noise or not", () => {
    const rows = [5 / 32, 3 / 16, 7 / 32, 1 / 4, 9 / 32].map(
      (mark) => terminalTorque({ drive: slot(SMALL, inches(0.047), inches(mark)), size: "12 AWG" }).row,
    );
    expect(rows).toEqual(["4 mm", "4.8 mm", "5.5 mm", "6.4 mm", "7.1 mm"]);
    for (const noise of [1 - 4e-16, 1, 1 + 4e-16]) {
      const drive = slot(LARGE, (0.0012 * noise) as Meters, (inches(1 / 4) * noise) as Meters);
      expect(pounds(drive, "8 AWG")).toBeCloseTo(25, 9);
      const recess: TerminalDrive = {
        kind: "recessed socket",
        acrossFlats: (inches(1 / 4) * noise) as Meters,
      };
      expect(toPoundForceInches(terminalTorque({ drive: recess }).value)).toBeCloseTo(200, 9);
    }
  });

  it("between two lengths the next shorter one counts", () => {
    const at = (length: number): number =>
      pounds(slot(SMALL, millimeters(1.3), millimeters(length)), "14 AWG");
    expect([3.9, 4, 7, 7.1, 7.14, 7.2].map((length) => Math.round(at(length)))).toEqual([
      9, 12, 12, 15, 15, 20,
    ]);
  });

  it("blank cells are refused, and so are sockets and conductors off the tables", () => {
    const hexKey: TerminalDrive = { kind: "recessed socket", acrossFlats: millimeters(5) };
    expectRefusal(() => terminalTorque({ drive: hexKey }), "outside-table", "drive.acrossFlats", "5 mm");
    const blank: readonly (readonly [TerminalDrive, string, string])[] = [
      [slot(LARGE, millimeters(1), millimeters(5)), "1 AWG", "drive"],
      [slot(LARGE, millimeters(2), millimeters(5)), "1250 kcmil", "drive"],
      [slot(SMALL, millimeters(1), millimeters(7.1)), "8 AWG", "drive"],
      [slot(SMALL, millimeters(1), millimeters(5)), "6 AWG", "size"],
    ];
    for (const [drive, size, path] of blank) {
      expectRefusal(() => terminalTorque({ drive, size }), "outside-table", path, size);
    }
  });
});

describe("what goes with it", () => {
  it("the maker's value first, whatever else is given", () => {
    const maker = { torque: newtonMeters(3.2), source: "label on the block" };
    const answer = terminalTorque({ maker, drive: { kind: "split bolt" }, size: "8 AWG" });
    expect(answer).toMatchObject({
      value: 3.2,
      system: "maker data",
      kind: "user table",
      deferral: DEFERRAL,
    });
    expect(answer.cells[0]?.source).toBe("label on the block");
    expect(answer.warnings).toEqual([]);
    expect(answer.cautions.join(" ")).toMatch(/no reliable test.*lock out/);
  });

  it("a table value says that the maker's governs and that a later check proves little", () => {
    const answer = terminalTorque({ drive: { kind: "split bolt" }, size: "#8" });
    expect(answer.warnings).toMatchObject([{ code: "assumed", path: "maker" }]);
    expect(answer.cautions.join(" ")).toMatch(/maker governs.*no reliable test.*lock out.*edition/);
    expect(answer).toMatchObject({ provenance: "seen", kind: "published", unit: "N·m" });
    expect(answer.cells[0]).toMatchObject({ value: 80, unit: "lbf·in", source: "ul-486a-b" });
  });
});

it("a larger conductor never takes less, a wider or longer slot never less, a larger socket more", () => {
  const drives = fc.oneof(
    fc.constant<TerminalDrive>({ kind: "split bolt" }),
    fc.constant<TerminalDrive>({ kind: "external hexagon" }),
    fc
      .tuple(
        fc.constantFrom<Screw>(LARGE, SMALL),
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        fc.double({ min: 1, max: 50, noNaN: true }),
      )
      .map(([screw, width, length]) => slot(screw, millimeters(width), millimeters(length))),
  );
  /** Torque, or null where the table is blank. */
  const torque = (drive: TerminalDrive, size: string): number | null => {
    try {
      const answer = terminalTorque({ drive, size });
      expectFinite(answer, size);
      return answer.value;
    } catch (error) {
      expect((error as { code: string }).code).toBe("outside-table");
      return null;
    }
  };
  const more = fc.double({ min: 1, max: 3, noNaN: true });
  fc.assert(
    fc.property(
      drives,
      fc.nat(SIZES.length - 1),
      fc.nat(SIZES.length - 1),
      more,
      more,
      (drive, i, j, w, l) => {
        const [small, large] = [SIZES[Math.min(i, j)] as string, SIZES[Math.max(i, j)] as string];
        const [a, b] = [torque(drive, small), torque(drive, large)];
        if (a !== null && b !== null) expect(b).toBeGreaterThanOrEqual(a);
        if (drive.kind !== "slotted") return;
        const wider = slot(
          drive.screw,
          Math.min(drive.slotWidth * w, 0.01) as Meters,
          Math.min(drive.slotLength * l, 0.05) as Meters,
        );
        const c = torque(wider, small);
        if (a !== null && c !== null) expect(c).toBeGreaterThanOrEqual(a);
      },
    ),
    { numRuns: 1000 },
  );
  const flats = [1 / 8, 5 / 32, 3 / 16, 7 / 32, 1 / 4, 5 / 16, 3 / 8, 1 / 2, 9 / 16].map(
    (inch) => terminalTorque({ drive: { kind: "recessed socket", acrossFlats: inches(inch) } }).value,
  );
  expect(flats).toEqual([...flats].sort((a, b) => a - b));
  expect(new Set(flats).size).toBe(9);
});
