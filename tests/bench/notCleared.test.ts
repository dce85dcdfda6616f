/**
 * What must not stand behind a clean bill: drops that the meter leaves open, a line that floats, amps far beyond a sound module's. Limits of
 * joints by the comparison rule (50 % above the lowest like joint); figures by Ohm's law, worked out beside each check; what comes before
 * voltage is common practice, no published source.
 */
import { assessModule, type BenchRecord } from "electroheat/bench";
import { describe, expect, it } from "vitest";

/** A star of 60 kW at 480 V: 480/√3/72.17 A = 3.84 Ω hot, 3.69 Ω cold at 1.04. */
const star = (more: Partial<BenchRecord>): BenchRecord => ({
  title: "invented star",
  nameplate: { power: "60 kW", voltage: "480 V" },
  wiring: { banks: [{ id: "A", connection: "star" }] },
  temperatureFactor: 1.04,
  tolerance: { low: -0.05, high: 0.1 },
  instruments: {
    ohmmeter: { ofReading: 0.005, digits: 2, leads: "taken off" },
    clamp: { ofReading: 0.02, digits: 5 },
    voltmeter: { ofReading: 0.005, digits: 2 },
    millivoltmeter: { ofReading: 0.005, digits: 3 },
  },
  ...more,
});
const ohms = ["L1", "L2", "L3"].map((from) => ({ from, to: "S", reads: "3.69 Ω" }));
const drops = (...reads: readonly string[]) =>
  reads.map((drop, i) => ({ id: `stud L${i + 1}`, drop, current: "72.2 A" }));
const volts = (v12: string, v23: string, v31: string) => ({ v12, v23, v31 });

describe("a drop above half more than the best that the meter cannot settle", () => {
  // Three digits of 1 mV: 4 to 14 mV against 1 to 7 mV, so 2.5 times, and by the worst of both anything from 1 to 13 times.
  const coarse = star({ asFound: { ohms, joints: drops("4 mV", "10 mV", "4 mV") } });
  const found = assessModule(coarse);
  it("is told, asked for again and not run at full load", () => {
    expect(found.asFound?.joints.find(({ id }) => id === "stud L2")?.comparison).toBe("undecided");
    expect(found.answer[0]).toBe(
      "Joint stud L2 reads 2.50 times the best like joint, which this meter cannot tell from a good one: not cleared.",
    );
    expect(found.nextSteps[0]?.action).toContain(
      "Read joint stud L2 and its like again with a finer millivoltmeter",
    );
    expect(found.answer[2]).toContain("Not at full load before joint stud L2 is read with a finer meter");
  });
  it("is settled by a meter that can: 4.00 beside 10.00 mV is bad, 4.00 beside 5.00 mV is not", () => {
    const fine = (second: string) =>
      assessModule(star({ asFound: { ohms, joints: drops("4.00 mV", second, "4.00 mV") } })).answer;
    expect(fine("10.00 mV")[2]).toContain("Not on joint stud L2");
    expect(fine("5.00 mV")[0]).toBe("No fault shows in the readings.");
  });
});

describe("a line that floats", () => {
  it("is lost, whatever a meter shows from it to the live ones", () => {
    for (const stray of ["0 V", "0.5 V", "30.0 V", "180.0 V"]) {
      const { answer, warnings } = assessModule(
        star({ supply: volts("480.0 V", stray, stray), asFound: { ohms } }),
      );
      expect(answer[0], stray).toBe("No supply on L3.");
      expect(answer[2], stray).toBe("Not before L3 is back and the module has been read on all three lines.");
      expect(warnings.length, stray).toBeGreaterThan(0);
    }
  });
  it("is no guess where nothing says what the live ones should read, or all are dead", () => {
    const { nameplate: _plate, ...bare } = star({
      supply: volts("480 V", "30 V", "30 V"),
      asFound: { ohms },
    });
    expect(() => assessModule(bare)).toThrow(/close a triangle/);
    expect(() => assessModule(star({ supply: volts("0 V", "0 V", "0 V"), asFound: { ohms } }))).toThrow(
      /supply\.v12/,
    );
  });
});

describe("amps as left", () => {
  const left = (reads: string) =>
    assessModule(
      star({
        supply: volts("480.0 V", "480.0 V", "480.0 V"),
        asFound: { ohms },
        asLeft: { currents: ["L1", "L2", "L3"].map((at) => ({ at, reads })) },
      }),
    );
  it("of three times a star's are a delta's, and nobody runs on to find out", () => {
    // The same coils between lines: √3 times the volts, √3 times the amps in each, √3 times that in a line: 216.5 A.
    const { answer, nextSteps } = left("216.5 A");
    expect(answer[2]).toBe(
      "Do not energise it: far more amps than a sound module takes: line current L1 216.5 A, line current L2 216.5 A and line current L3 216.5 A.",
    );
    expect(nextSteps[0]?.action).toContain("a star linked as a delta takes three times its amps");
  });
  it("a little above or below are explained first, as before", () => {
    // Limits: 72.2/0.95 = 76 A at most; half as much again is 114 A.
    expect(left("90.0 A").answer[2]).toBe("Not known before the amps are explained.");
    expect(left("50.0 A").answer[2]).toBe("Not known before the amps are explained.");
    expect(left("72.0 A").answer[2]).toBe(
      "Nothing read here speaks against running it; what is not tested has not passed.",
    );
  });
});
