/** What an answer of the room says besides its figure, whole; and slips of own tables that only their order shows. */
import { amperes, celsius, megaohms, volts } from "electroheat/quantity";
import {
  ampacityEditions,
  cableCapacity,
  conductorAmpacity,
  dryOutGuidance,
  editionIssues,
  insulationLeakage,
  insulationVerdicts,
  leakageLimit,
  subdivision,
  tableAmpacity,
} from "electroheat/wiring";
import { describe, expect, it } from "vitest";
import { refusal } from "../support/told.ts";
import { ours, oursIec } from "./wholeEditions.ts";

describe("cautions", () => {
  it("of a leakage say what it is not", () => {
    const { cautions } = insulationLeakage({ resistance: megaohms(1), voltage: volts(480) });
    expect(cautions).toEqual([
      expect.stringMatching(/^Resistive leakage only: capacitive leakage/),
      expect.stringMatching(/^A current, not a verdict/),
    ]);
  });

  it("of an insulation verdict begin with the isolated supply and end with the trend", () => {
    const [first] = insulationVerdicts({
      resistance: megaohms(20),
      testVoltage: volts(500),
      nominalVoltage: volts(400),
      temperature: celsius(20),
      criteria: ["1 MΩ per kV"],
    });
    expect(first?.cautions).toEqual(
      expect.arrayContaining([
        expect.stringMatching(/^Measure with the supply isolated, locked out and proved dead/),
        expect.stringMatching(/^A figure without its temperature/),
      ]),
    );
  });

  it("of a run in aluminum keep its wire off terminals of copper, and of copper do not", () => {
    const cautions = (material: string) =>
      conductorAmpacity({
        edition: "NEC 2023",
        installation: "raceway",
        size: "4 AWG",
        material,
        insulationTemperature: celsius(75),
        terminalTemperature: celsius(75),
        ambient: celsius(30),
        currentCarryingConductors: 3,
      }).cautions.filter((one) => one.startsWith("Aluminum wire only on terminals marked for it"));
    expect([cautions("aluminum").length, cautions("copper").length]).toEqual([1, 0]);
  });

  it("of a figure that the edition of 2008 prints say that it is superseded", () => {
    const cautions = (current: number) =>
      ampacityEditions({
        installation: "raceway",
        size: "14 AWG",
        material: "copper",
        insulationTemperature: celsius(60),
        ampacity: amperes(current),
      }).cautions;
    // 20 A stands in the table of 2008, 15 A in those since (NFPA 70-2008 and 70-2011, Table 310.16).
    expect([cautions(20).length, cautions(15).length]).toEqual([2, 1]);
    expect(cautions(20)[1]).toContain("2008");
  });

  it("of drying out keep parts, people and a damaged element in mind", () => {
    expect(dryOutGuidance().cautions.map((one) => one.split(" ").slice(0, 3).join(" "))).toEqual(
      expect.arrayContaining(["Take off parts,", "A reading that", "In place only"]),
    );
  });
});

describe("own tables", () => {
  it("bring only their own base conditions", () => {
    const found = cableCapacity({
      edition: oursIec,
      method: "B1",
      loadedConductors: 3,
      insulation: "XLPE British",
      material: "copper",
      size: "16 mm²",
      ambient: celsius(30),
      circuits: 1,
    });
    expect(found.baseConditions).not.toEqual(expect.arrayContaining([expect.stringMatching(/^method /)]));
    expect(found.baseConditions).toContain("as printed");
  });

  it("must run one way: ampacities up with the size, ambient factors down with the heat", () => {
    const turned = (what: "ampacity" | "ambient") => {
      const own = structuredClone(ours);
      const [{ table }] = own[what] as unknown as readonly [
        { table: { rows: (string | number | null)[][] } },
      ];
      const [, before, after] = table.rows as [
        unknown,
        (string | number | null)[],
        (string | number | null)[],
      ];
      const column = after.findIndex(
        (cell, i) => i > 1 && typeof cell === "number" && typeof before[i] === "number",
      );
      [before[column], after[column]] = [after[column] as number, before[column] as number];
      return editionIssues(own).map(({ code, expected }) => `${code}: ${expected}`);
    };
    expect(editionIssues(ours)).toEqual([]);
    expect(editionIssues({ ...ours, oddments: 1 })).toContainEqual(
      expect.objectContaining({
        code: "unknown-field",
        path: "edition.oddments",
        expected: expect.stringMatching(/^one of name, system, .*ampacity/),
      }),
    );
    expect(turned("ampacity")).toContainEqual(expect.stringMatching(/^inconsistent: at least the/));
    expect(turned("ambient")).toContainEqual(expect.stringMatching(/^inconsistent: at most the/));
  });

  it("have a name, and are told so in words", () => {
    const { name: _, ...nameless } = ours;
    expect(editionIssues(nameless)[0]).toMatchObject({ path: "edition.name", expected: "text" });
  });
});

it("a leakage limit says which of its figures decides", () => {
  // 0.75 mA, or 0.75 mA a kilowatt, at most 5 mA (IEC 60335-1, 13.2): floor to 1 kW, ceiling from 6.67 kW.
  const governing = (kilowatts: number) =>
    leakageLimit({ appliance: "class I stationary, heating", power: (1000 * kilowatts) as never }).governing;
  expect([0.5, 1, 1.1, 6.6, 7].map(governing)).toEqual([
    ...["floor", "floor", "per kilowatt", "per kilowatt", "ceiling"],
  ]);
});

describe("refusals", () => {
  it("of too few circuits name the largest device only where the class has one", () => {
    const with48 = refusal(() =>
      subdivision({ edition: "NEC 2023", equipment: "space heating", current: amperes(200), circuits: 1 }),
    );
    expect(with48[2]).toMatch(/48|60/);
    const without = refusal(() =>
      subdivision({ edition: "NEC 2023", equipment: "machine", current: amperes(9000), circuits: 1 }),
    );
    expect(without.slice(0, 3)).toEqual([
      "outside-table",
      "circuits",
      "circuits whose device is a standard rating",
    ]);
  });

  it("of a size in ga, short or long, ask which gauge", () => {
    for (const size of ["12 ga", "12 gauge", "12GA."])
      expect(
        refusal(() =>
          tableAmpacity({
            edition: "NEC 2023",
            installation: "raceway",
            size,
            material: "copper",
            insulationTemperature: 75 as never,
          }),
        )[0],
      ).toBe("ambiguous");
  });
});
