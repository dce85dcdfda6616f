/** The catalogue in a real spreadsheet engine: scalars, ranges, tables, blanks, errors, recalculation. */
import { catalogueEntries } from "electroheat/catalogue";
import { describe, expect, it } from "vitest";
import { registered, sheetOf } from "../../examples/spreadsheet/engine.mjs";

const at = (row: number, col: number): { sheet: number; row: number; col: number } => ({
  sheet: 0,
  row,
  col,
});

describe("a spreadsheet engine", () => {
  it("knows every calculation", () => {
    expect(registered).toHaveLength(catalogueEntries().length + 2);
  });

  it("calculates, and recalculates when a cell changes", () => {
    const sheet = sheetOf([
      [36_000, 480, "=EH.LINECURRENT(A1, B1)"],
      ["36 kW", 480, "=EH.LINECURRENT(A2, B2) * 2"],
      ["=A1 * 2", 480, "=EH.LINECURRENT(A3, B3)"],
    ]);
    expect(sheet.getCellValue(at(0, 2))).toBeCloseTo(43.3013, 4);
    expect(sheet.getCellValue(at(1, 2))).toBeCloseTo(86.6025, 4);
    sheet.setCellContents(at(0, 0), 18_000);
    expect(sheet.getCellValue(at(0, 2))).toBeCloseTo(21.6506, 4);
    expect(sheet.getCellValue(at(2, 2))).toBeCloseTo(43.3013, 4);
  });

  it("keeps all digits", () => {
    const sheet = sheetOf([["=EH.LINECURRENT(1, 480) - 1 / (SQRT(3) * 480)"]]);
    expect(sheet.getCellValue(at(0, 0))).toBe(0);
  });

  it("shows what is wrong as an error of the sheet, and goes on with an error that was there", () => {
    const sheet = sheetOf([
      [null, 480, "=EH.LINECURRENT(A1, B1)", '=EH.STATUS("lineCurrent", A1, B1)'],
      [true, 480, "=EH.LINECURRENT(A2, B2)", "=IFERROR(EH.LINECURRENT(A2, B2), -1)"],
      ["=1/0", 480, "=EH.LINECURRENT(A3, B3)", null],
      [-5, 480, "=EH.LINECURRENT(A4, B4) + 1", '=EH.STATUS("lineCurrent", A4, B4)'],
      [5, 480, "=EH.LINECURRENT(A5, B5, 1)", '=EH.STATUS("lineCurrent", A5, B5)'],
    ]);
    expect(sheet.getCellValue(at(0, 2))).toMatchObject({
      type: "VALUE",
      message: "power: missing; expected more than 0 W",
    });
    expect(sheet.getCellValue(at(0, 3))).toBe("power: missing; expected more than 0 W");
    expect(sheet.getCellValue(at(1, 2))).toMatchObject({ type: "VALUE" });
    expect(sheet.getCellValue(at(1, 3))).toBe(-1);
    expect(sheet.getCellValue(at(2, 2))).toMatchObject({ type: "DIV_BY_ZERO" });
    expect(sheet.getCellValue(at(3, 2))).toMatchObject({ type: "VALUE" });
    expect(sheet.getCellValue(at(3, 3))).toMatch(/^power: -5 W is not allowed/);
    expect(sheet.getCellValue(at(4, 2))).toMatchObject({ type: "NA" });
    expect(sheet.getCellValue(at(4, 3))).toBe("ok");
  });

  it("reads a module from a range, passes a supply on, and follows an element that opens", () => {
    const sheet = sheetOf([
      ["id", "from", "to", "resistance", null, '=EH.BALANCEDSUPPLY(480, , , "json")'],
      ["A", "L1", "S", 7.68, null, '=EH.ENERGISE(A1:D4, F1, "totalPower")'],
      ["B", "L2", "S", 7.68, null, '=EH.TERMINALRESISTANCE(A1:D6, "L1", "L2")'],
      ["C", "L3", "S", 7.68, null, '=EH.ENERGISE(A1:D4, F1, "branches[id=B].current")'],
    ]);
    // 480²/7.68 = 30 kW; with one branch open two are left in series on 480 V: 480²/15.36 = 15 kW.
    expect(sheet.getCellValue(at(1, 5))).toBeCloseTo(30_000, 6);
    expect(sheet.getCellValue(at(2, 5))).toBeCloseTo(15.36, 6);
    sheet.setCellContents(at(1, 3), "OL");
    expect(sheet.getCellValue(at(1, 5))).toBeCloseTo(15_000, 6);
    expect(sheet.getCellValue(at(2, 5))).toBe("open");
    expect(sheet.getCellValue(at(3, 5))).toBeCloseTo(31.25, 6);
    sheet.setCellContents(at(1, 3), null);
    expect(sheet.getCellValue(at(1, 5))).toMatchObject({
      type: "VALUE",
      message: expect.stringMatching(/^network\.branches\.0\.resistance: missing/),
    });
  });

  it("spills a record and a broadcast range", () => {
    const sheet = sheetOf([
      [
        '=EH.SPILL(7, 2, "starWithOpenElements", 2, 1)',
        null,
        null,
        36_000,
        '=EH.SPILL(3, 1, "lineCurrent", D1:D3, 480)',
      ],
      [null, null, null, null, null],
      [null, null, null, 54_000, null],
    ]);
    expect(sheet.getCellValue(at(0, 0))).toBe("survivorVoltage");
    expect(sheet.getCellValue(at(1, 1))).toBeCloseTo(1.44, 9);
    expect(sheet.getCellValue(at(0, 4))).toBeCloseTo(43.3013, 4);
    expect(sheet.getCellValue(at(1, 4))).toBe("power: missing; expected more than 0 W");
    expect(sheet.getCellValue(at(2, 4))).toBeCloseTo(64.9519, 4);
  });
});
