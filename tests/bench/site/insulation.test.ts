/** Insulation readings by every limit, against the printed figures of each. */
import type { RecordInsulation } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { assessInsulation } from "../../../src/bench/site/insulation.ts";
import { read } from "./made.ts";

const assess = (
  reading: Omit<RecordInsulation, "from">,
  more: Parameters<typeof assessInsulation>[2] = {},
  volts = 480,
) =>
  assessInsulation(
    read({ asFound: { insulation: [{ from: "L1", ...reading }] } }).asFound?.insulation,
    volts as never,
    more,
  );
const verdicts = (...asked: Parameters<typeof assess>) =>
  Object.fromEntries(
    assess(...asked).map(({ label, verdict }) => [label.replace("insulation at L1, ", ""), verdict]),
  );

describe("insulation", () => {
  it("is held against every limit that can apply, each with its own answer", () => {
    // 1 MΩ: IEC 60364-6, Table 6.1, up to 500 V; IEC 60204-1, 18.3 (1 MΩ from memory, second leg IEC 60364-6); rule of thumb 1 MΩ per kV and
    // at least 1 MΩ. 100 MΩ: ANSI/NETA MTS-2019, Table 100.1, up to 600 V. 5, 20, 500 and 1 MΩ: heater makers.
    expect(verdicts({ reads: "1.3 MΩ", testVoltage: "500 V" })).toEqual({
      "1 MΩ per kV": "within",
      "IEC 60364-6": "within",
      "IEC 60204-1": "within",
      "NETA 100.1": "outside",
      "maker assembly": "outside",
      "maker element": "outside",
      "maker production": "outside",
      "maker storage": "within",
    });
    expect(Object.values(verdicts({ reads: "600 MΩ", testVoltage: "1000 V" }))).toEqual(
      Array(8).fill("within"),
    );
  });

  it("does not pass a limit by a lower test voltage than it is for", () => {
    // ANSI/NETA MTS-2019, Table 100.1: 1000 V for ratings up to 600 V. IEC 60364-6 and IEC 60204-1: 500 V.
    const at = (testVoltage: string) => verdicts({ reads: "600 MΩ", testVoltage });
    expect([at("500 V")["NETA 100.1"], at("500 V")["IEC 60364-6"]]).toEqual(["undecided", "within"]);
    expect([at("250 V")["IEC 60364-6"], at("250 V")["IEC 60204-1"]]).toEqual(["undecided", "undecided"]);
  });

  it("leaves out limits that end below the voltage", () => {
    // NETA 100.1 is held up to 1000 V; extra-low voltage ends at 120 V.
    expect(Object.keys(verdicts({ reads: "5 MΩ" }, {}, 1200))).not.toContain("NETA 100.1");
    expect(Object.keys(verdicts({ reads: "5 MΩ" }, {}, 48))).toContain("IEC 60364-6 SELV or PELV");
  });

  it("divides a limit of one element by those measured together", () => {
    // 20 MΩ each over 8: 2.5 MΩ.
    const of = (reads: string) => verdicts({ reads, testVoltage: "500 V" }, { elements: 8 })["maker element"];
    expect([of("2.6 MΩ"), of("2.4 MΩ")]).toEqual(["within", "outside"]);
    // On the limit itself, half a digit either way.
    expect(of("2.5 MΩ")).toBe("undecided");
  });

  it("counts the accuracy of the tester", () => {
    const tester = { ofReading: 0.05, digits: 3 };
    // 1.04 MΩ ± (0.052 + 0.03) MΩ straddles 1 MΩ; 1.10 MΩ ± 0.085 MΩ does not.
    const of = (reads: string) => verdicts({ reads, testVoltage: "500 V" }, { tester })["IEC 60364-6"];
    expect([of("1.04 MΩ"), of("1.10 MΩ"), of("0.85 MΩ")]).toEqual(["undecided", "within", "outside"]);
  });

  it("cannot say how far above its range a tester reads", () => {
    const found = assess({ reads: "OL" });
    expect(found.length).toBe(8);
    for (const { value, verdict, caution, limit } of found) {
      expect([value, verdict]).toEqual(["open", "undecided"]);
      expect(caution).toContain("note the range");
      expect(limit?.low).toBeGreaterThan(0);
    }
  });

  it("finds a dead short outside every limit", () => {
    expect(Object.values(verdicts({ reads: "0.00 MΩ" }))).toEqual(Array(8).fill("outside"));
  });

  it("says what it was not told", () => {
    const [untold] = assess({ reads: "1.3 MΩ" });
    expect(untold?.caution).toContain("test voltage is not in the record");
    const low = assess({ reads: "1.3 MΩ", testVoltage: "250 V" }).find(({ label }) =>
      label.endsWith("IEC 60364-6"),
    );
    expect(low?.caution).toContain("500 V");
    const [floor, unrated] = assessInsulation(
      [{ from: "L1", reads: { value: 1e6 as never, resolution: null } }],
      null,
    );
    expect([unrated?.value, unrated?.verdict]).toEqual([1e6, null]);
    // The floor of IEC 60204-1, 18.3, asks 1 MΩ at every voltage.
    expect([floor?.limit?.low, floor?.verdict]).toEqual([1e6, "within"]);
    expect(assessInsulation(undefined, 480 as never)).toEqual([]);
  });
});
