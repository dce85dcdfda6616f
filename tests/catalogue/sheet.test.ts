/** Cells in, cells out: what a sheet's author must be able to rely on. Figures from shared/vectors and by hand. */
import { evaluate, sheetFunctions, sheetStatus, sheetValue } from "electroheat/catalogue";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const close = (value: number): unknown => expect.closeTo(value, 4);
const STAR = [
  ["id", "from", "to", "resistance"],
  ["A", "L1", "S", 7.68],
  ["B", "L2", "S", 7.68],
  ["C", "L3", "S", 7.68],
];

describe("one value wanted", () => {
  it("takes a number, or text with its unit", () => {
    // 36 kW at 480 V: technician-questions, line-current-from-nameplate.
    expect(sheetValue("lineCurrent", 36_000, 480)).toEqual(close(43.3013));
    expect(sheetValue("LINECURRENT", "36 kW", "480 V")).toEqual(close(43.3013));
    expect(sheetValue("circuit.lineCurrent", " 36 kW ", 480)).toEqual(close(43.3013));
    expect(sheetStatus("lineCurrent", 36_000, 480)).toBe("ok");
  });

  it("calls a blank missing, never 0", () => {
    for (const blank of ["", "  ", null, undefined]) {
      expect(sheetValue("lineCurrent", blank, 480)).toBe("power: missing; expected more than 0 W");
      expect(sheetStatus("lineCurrent", blank, 480)).toBe("power: missing; expected more than 0 W");
    }
    expect(sheetValue("lineCurrent", 0, 480)).toBe("power: 0 W is not allowed; expected more than 0 W");
  });

  it("refuses true and false, dates, numbers in text without a unit, errors of the sheet", () => {
    for (const cell of [true, false, new Date(0), "36000", "#DIV/0!", Number.NaN]) {
      const [found] = sheetFunctions().filter(({ name }) => name === "lineCurrent");
      const { value, status, code } = found?.answer(cell, 480) ?? {};
      expect(value).toBeNull();
      expect(status).toMatch(/^power: /);
      expect(["not-a-number", "ambiguous", "unknown-name", "malformed-text"]).toContain(code);
    }
  });

  it("goes through a range cell by cell, stretching single rows and columns", () => {
    expect(sheetValue("lineCurrent", [[36_000], [54_000]], [[480, 400]])).toEqual([
      [close(43.3013), close(51.9615)],
      [close(64.9519), close(77.9423)],
    ]);
    expect(sheetValue("lineCurrent", [36_000, 54_000], 480)).toEqual([[close(43.3013), close(64.9519)]]);
    expect(sheetValue("lineCurrent", [[36_000], [""], ["x"]], 480)).toEqual([
      [close(43.3013)],
      ["power: missing; expected more than 0 W"],
      [expect.stringMatching(/^power: /)],
    ]);
    expect(sheetStatus("lineCurrent", [[36_000], [""]], 480)).toEqual([
      ["ok"],
      ["power: missing; expected more than 0 W"],
    ]);
    expect(sheetValue("lineCurrent", [[1], [2], [3]], [[1], [2]])).toMatch(/^lineVoltage: .*2 by 1/);
  });

  it("takes one of several names, and says which there are", () => {
    expect(sheetValue("branchVoltage", "star", 480)).toEqual(close(277.1281));
    expect(sheetValue("branchVoltage", "zigzag", 480)).toBe(
      'connection: "zigzag" is not allowed; expected one of delta, star',
    );
  });

  it("rounds nothing", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        fc.double({ min: 1, max: 1e5, noNaN: true }),
        (power, lineVoltage) => {
          const direct = evaluate("circuit.lineCurrent", { power, lineVoltage });
          expect(sheetValue("lineCurrent", power, lineVoltage)).toBe(direct.ok && direct.value);
        },
      ),
    );
  });

  it("leaves out what is blank at the end and may be left out", () => {
    expect(sheetStatus("judge", 2.9, 0.1, "own rule", "", 3.2)).toBe("ok");
    expect(sheetValue("judge", 2.9, 0.1, "own rule", "", 3.2, "verdict")).toBe("within");
    expect(sheetStatus("lineCurrent", 36_000, 480, "", null)).toBe("ok");
    expect(sheetStatus("lineCurrent", 36_000, 480, 7)).toMatch(
      /^arguments: 7 is not allowed; expected at most 2/,
    );
  });
});

describe("tables, lists, records", () => {
  it("read a network with and without a row of names, in any order of columns, blank rows after it", () => {
    const bare = STAR.slice(1);
    const shuffled = STAR.map(([id, from, to, resistance]) => [resistance, to, from, id]);
    for (const network of [STAR, bare, shuffled, [...STAR, ["", null, undefined, ""]]]) {
      // Two branches of 7.68 Ω in series.
      expect(sheetValue("terminalResistance", network, "L1", "L2")).toEqual(close(15.36));
    }
  });

  it("read open and texts with units inside a table", () => {
    const cells = STAR.map((row) => [...row]);
    (cells[2] as unknown[])[3] = "OL";
    (cells[3] as unknown[])[3] = "7680 mΩ";
    expect(sheetValue("terminalResistance", cells, "L1", "L2")).toBe("open");
    expect(sheetValue("terminalResistance", cells, "L1", "L3")).toEqual(close(15.36));
  });

  it("say where in a table something is wrong", () => {
    const cells = STAR.map((row) => [...row]);
    (cells[2] as unknown[])[3] = "";
    expect(sheetStatus("terminalResistance", cells, "L1", "L2")).toBe(
      'network.branches.1.resistance: missing; expected 0 or more Ω, or "open"',
    );
    expect(sheetStatus("terminalResistance", [["A", "L1", "S", 5, "element", 9]], "L1", "S")).toMatch(
      /6 columns/,
    );
    expect(
      sheetStatus(
        "terminalResistance",
        [
          ["id", "form", "to", "resistance"],
          ["A", "L1", "S", 5],
        ],
        "L1",
        "S",
      ),
    ).not.toBe("ok");
    expect(sheetStatus("terminalResistance", "", "L1", "L2")).toMatch(/^network: missing/);
  });

  it("pass a structure on as text: the supply of one cell is read by another", () => {
    const supply = sheetValue("balancedSupply", 480, "", "", "json");
    expect(typeof supply).toBe("string");
    // Balanced star of 7.68 Ω at 480 V: 480²/7.68 = 30 kW.
    expect(sheetValue("energise", STAR, supply, "totalPower")).toEqual(close(30_000));
    expect(sheetValue("energise", STAR, supply, "branches[id=B].power")).toEqual(close(10_000));
    expect(sheetStatus("energise", STAR, '{"lines": [', "totalPower")).toMatch(/^supply: /);
  });

  it("read a supply from a table with dotted columns", () => {
    const lines = [
      ["node", "voltage.re", "voltage.im"],
      ["L1", 480 / Math.sqrt(3), 0],
      ["L2", -240 / Math.sqrt(3), -240],
      ["L3", -240 / Math.sqrt(3), 240],
    ];
    expect(sheetValue("energise", STAR, lines, "totalPower")).toEqual(close(30_000));
  });

  it("read a record as names and values, or as its values in order", () => {
    for (const a of [
      [
        ["re", 1],
        ["im", 2],
      ],
      [[1, 2]],
      [[1], [2]],
      [
        ["re", "im"],
        [1, 2],
      ],
      '{"re": 1, "im": 2}',
    ]) {
      expect(sheetValue("complexSum", a, [[3, -1]])).toEqual([
        ["re", 4],
        ["im", 1],
      ]);
    }
  });

  it("read lists and matrices", () => {
    const fit = ["leastSquares", [[1], [1], [1]], [[7.9], [7.9], [7.8]], [0.1, 0.1, 0.1]] as const;
    expect(sheetValue(...fit, "estimates")).toEqual([[close(7.8667)]]);
    expect(sheetValue(...fit, "estimates.0")).toEqual(close(7.8667));
    expect(sheetStatus("leastSquares", [[1], [1]], [[7.9], [""]], [[0.1], [0.1]])).toMatch(
      /^design: |^observed/,
    );
    expect(sheetStatus("leastSquares", [[1], [1], [1]], [[7.9], [""], [7.8]], [[0.1], [0.1], [0.1]])).toMatch(
      /^observed\.1: missing/,
    );
  });

  it("read a list of names where records may stand too, in a column or a row, and records in a table", () => {
    const reading = ["insulationVerdicts", 1.3e6, 480, 500, 12] as const;
    const names = ["1 MΩ per kV", "maker assembly"];
    for (const criteria of [names.map((name) => [name]), [names], [...names.map((name) => [name]), [""]]]) {
      // By 1 MΩ (480 V is below 1 kV) the reading of 1.3 MΩ passes; the maker's figure for assemblies is 5 MΩ.
      expect(sheetValue(...reading, criteria, "", "", "0.value")).toBe("within");
      expect(sheetValue(...reading, criteria, "", "", "1.value")).toBe("outside");
    }
    const own = { name: "own", minimum: 1e6, of: "assembly", source: "works sheet" };
    const rows = [Object.keys(own), Object.values(own)];
    const mixed = [["maker assembly"], [JSON.stringify(own)]];
    expect(sheetValue(...reading, mixed, "", "", "1.value")).toBe("within");
    expect(sheetValue(...reading, rows, "", "", "0.value")).toBe("within");
    expect(sheetStatus(...reading, [["no such limit"]], "", "", "0.value")).toMatch(/^criteria\.0: "no such/);
  });

  it("read one of several records by the field that tells them apart, and no bare number for it", () => {
    // 1 m³/s of normal air: 101325/(287.055 × 273.15) = 1.29226 kg/s.
    const normal = [["standard", 1, "0 °C"]];
    const named = [
      ["basis", "standard"],
      ["volumeFlow", "1 m³/s"],
      ["standard", "0 °C"],
    ] as const;
    expect(sheetValue("airMassFlow", named)).toEqual(close(1.2923));
    expect(sheetValue("airMassFlow", normal)).toEqual(close(1.2923));
    const wrong = named.map(([name, value]) => [name, value === "0 °C" ? "ISO" : value]);
    expect(sheetStatus("airMassFlow", wrong)).toBe(
      'flow.standard: "ISO" is not allowed; expected one of 0 °C, 0.075 lb/ft3, 20 °C',
    );
    expect(sheetStatus("airMassFlow", [["basis", "volume"]])).toMatch(
      /^flow\.basis: "volume" is not allowed; expected one of actual, mass, standard/,
    );
    expect(sheetStatus("airMassFlow", [["volumeFlow", 1]])).toMatch(/^flow\.basis: missing/);
    expect(sheetStatus("airMassFlow", 2000)).toMatch(/^flow: 2000 is not allowed; expected a record/);
    expect(
      sheetStatus("airMassFlow", [
        ["basis", "mass"],
        ["massFlow", 0],
      ]),
    ).toBe("flow.massFlow: 0 kg/s is not allowed; expected more than 0 kg/s");
    expect(sheetValue("safetyVentilation", 1e-6, "10000 ft3 per gallon", "airPerSolvent")).toEqual(
      close(74805.1948),
    );
  });

  it("read a name where a record may stand, but not both", () => {
    const plate = ["30 kW", "480 V"];
    const wiring = [
      ["id", "connection"],
      ["A", "star"],
    ];
    const readings = [
      ["from", "to", "reads"],
      ["L1", "S", "7.90 Ω"],
    ];
    const meter = (...lines: unknown[][]): unknown[][] => [
      ["ohmmeter.ofReading", 0.005],
      ["ohmmeter.digits", 2],
      ...lines,
    ];
    const lead = (lines: unknown[][]): unknown =>
      sheetValue(
        "assessModule",
        "kiln",
        wiring,
        [plate],
        lines,
        readings,
        ...Array.from({ length: 10 }, () => ""),
        "asFound.resistances.leads",
      );
    expect(lead(meter(["ohmmeter.leads", "taken off"]))).toBe(0);
    expect(lead(meter(["ohmmeter.leads.shorted", "0.20 Ω"]))).toEqual(close(0.2));
    expect(lead(meter(["ohmmeter.leads", "unknown"], ["ohmmeter.leads.shorted", "0.20 Ω"]))).toMatch(
      /^instruments\.ohmmeter\.leads\.shorted: /,
    );
  });

  it("read a map of names and values", () => {
    const banks = [
      ["id", "connection", "elementResistance"],
      ["A", "star", 7.68],
    ];
    const module = sheetValue(
      "buildModule",
      banks,
      "",
      "",
      [["A-L2", "open"]],
      "",
      "network.branches[id=A-L2].resistance",
    );
    expect(module).toBe("open");
  });

  it("spill a record as names and values, a list of records as a table", () => {
    expect(sheetValue("starWithOpenElements", 2, 1)).toEqual([
      ["survivorVoltage", close(1.2)],
      ["survivorPower", close(1.44)],
      ["otherVoltage", close(0.916515)],
      ["otherPower", close(0.84)],
      ["totalPower", close(0.8)],
      ["faultedLine", close(0.6)],
      ["otherLine", close(0.916515)],
    ]);
    const supply = sheetValue("balancedSupply", 480, "", "", "json");
    const table = sheetValue("energise", STAR, supply, "lines") as unknown[][];
    expect(table[0]).toEqual(["node", "current", "currentPhasor.re", "currentPhasor.im", "power", "lost"]);
    expect(table).toHaveLength(5);
  });

  it("name the fields there are when a wrong one is asked for", () => {
    expect(sheetStatus("starWithOpenElements", 2, 1, "power")).toBe(
      'field: "power" is not allowed; expected one of survivorVoltage, survivorPower, otherVoltage, otherPower, totalPower, faultedLine, otherLine',
    );
    expect(sheetValue("starWithOpenElements", 2, 1, "__proto__")).toMatch(/^field: /);
    expect(sheetValue("starWithOpenElements", 2, 1, "constructor")).toMatch(/^field: /);
  });

  it("want one field when a record is asked for cell by cell", () => {
    expect(sheetValue("starWithOpenElements", [[2], [3]], 1, "totalPower")).toEqual([
      [close(0.8)],
      [close(0.875)],
    ]);
    expect(sheetStatus("starWithOpenElements", [[2], [3]], 1)).toEqual([
      [expect.stringMatching(/^field: missing/)],
      [expect.stringMatching(/^field: missing/)],
    ]);
    // All of them open: no survivor, a blank and no error.
    expect(sheetValue("starWithOpenElements", [[2], [1]], 1, "survivorPower")).toEqual([
      [close(1.44)],
      [null],
    ]);
  });

  it("tell a warning in the status and the value all the same", () => {
    expect(sheetStatus("burstReadings", 65, 0.6, "averageClamp")).toMatch(/^warning: /);
    expect(sheetValue("burstReadings", 65, 0.6, "averageClamp")).toEqual(close(39));
  });
});

describe("what an add-in registers", () => {
  const functions = sheetFunctions();

  it("says of every argument what it takes", () => {
    const [energise] = functions.filter(({ name }) => name === "energise");
    expect(energise?.fields).toBe(true);
    expect(
      energise?.parameters.map(({ name, takes, columns }) => [name, takes, columns.slice(0, 3)]),
    ).toEqual([
      ["network", "table", ["id", "from", "to"]],
      ["supply", "table", ["node", "voltage.re", "voltage.im"]],
    ]);
    const [current] = functions.filter(({ name }) => name === "lineCurrent");
    expect(current?.parameters[0]).toEqual({
      name: "power",
      takes: "cell",
      expected: "more than 0",
      unit: "W",
      optional: false,
      columns: [],
    });
  });

  it("puts what may be left out behind what may not, so that a formula can end early", () => {
    const early = functions.filter(({ parameters }) => {
      const first = parameters.findIndex(({ optional }) => optional);
      return first >= 0 && parameters.slice(first).some(({ optional }) => !optional);
    });
    expect(early.map(({ id }) => id)).toEqual([]);
  });
});
