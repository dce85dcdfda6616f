/**
 * What was not read again is not "as left", and the words of the answer keep to what was read.
 * Common practice, no published source, where nothing else is said.
 */
import { assessModule, type BenchRecord } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { scanLimits } from "../../src/bench/site/scanLimits.ts";

const ohmmeter = { ofReading: 0.005, digits: 3, resolution: "0.01 Ω", leads: { shorted: "0.15 Ω" } } as const;
const clamp = { ofReading: 0.02, digits: 5, resolution: "0.1 A" } as const;
const stars = ["A", "B"];
const amps = (...reads: readonly string[]) => reads.map((one, i) => ({ at: `L${i + 1}`, reads: one }));
const ohms = (open: string | null) =>
  stars.flatMap((bank) =>
    ["L1", "L2", "L3"].map((from) => ({
      from,
      to: `S-${bank}`,
      reads: `${bank}-${from}` === open ? "OL" : "12.46 Ω",
      alone: bank,
    })),
  );

/** 36 kW at 480 V draw 43.3 A a line (I = P/(√3·U)); one star of two with an open branch draws less. */
const opened: BenchRecord = {
  title: "two invented stars",
  nameplate: { power: "36 kW", voltage: "480 V" },
  wiring: {
    banks: stars.map((id) => ({ id, connection: "star" as const })),
    starPoints: "separate",
  },
  supply: { v12: "480 V", v23: "480 V", v31: "480 V" },
  temperatureFactor: 1.04,
  tolerance: { low: -0.05, high: 0.1 },
  instruments: { ohmmeter, clamp, insulationTester: { ofReading: 0.03, digits: 2, resolution: "0.01 MΩ" } },
  asFound: { ohms: ohms("B-L2") },
};

describe("as left with amps alone", () => {
  it("does not print the open branch as left, and asks for it to be read again", () => {
    const { answer, nextSteps } = assessModule({
      ...opened,
      asLeft: { currents: amps("43.3 A", "43.3 A", "43.3 A") },
    });
    expect(answer[0]).toMatch(
      /^As found: .*\. As left: No fault shows in the readings\. Not read again: B-L2 open\.$/,
    );
    expect(answer[2]).toContain("read B-L2 again");
    expect(answer[2]).not.toContain("May run");
    expect(nextSteps[0]?.action).toBe("Isolate, then read B-L2 again.");
  });

  it("keeps the open branch where the amps as left show it", () => {
    const { answer } = assessModule({
      ...opened,
      asLeft: { currents: amps("40.0 A", "21.6 A", "40.0 A") },
    });
    expect(answer[2]).not.toContain("amps as left are those of a sound module");
    expect(answer[0]).toContain("Not read again: B-L2 open");
  });

  it("keeps insulation that nobody read again, and its ban", () => {
    const { answer } = assessModule({
      ...opened,
      asFound: { insulation: [{ from: "L1", reads: "0.20 MΩ", testVoltage: "500 V" }] },
      asLeft: { currents: amps("43.3 A", "43.3 A", "43.3 A") },
    });
    expect(answer[0]).toMatch(/Not read again: insulation at L1/);
    expect(answer[2]).toMatch(/^Do not energise it/);
  });
});

describe("as left with ohms", () => {
  it("has nothing left over", () => {
    const { answer } = assessModule({ ...opened, asLeft: { ohms: ohms(null) } });
    expect(answer[0]).not.toContain("Not read again");
    expect(answer[0]).toContain("As left: No fault shows");
  });
  it("names a new open branch as left", () => {
    const { answer } = assessModule({ ...opened, asLeft: { ohms: ohms("A-L3") } });
    expect(answer[0]).toContain("As left: A-L3 open.");
  });
});

describe("words of the answer", () => {
  it("ask for a reading where there is none, and promise nothing about the plate", () => {
    const { asFound: _, ...unread } = opened;
    const { answer } = assessModule(unread);
    expect(answer[1]).toBe("Read it first.");
    expect(answer[3]).not.toContain("from plate");
  });
  it("name missing insulation first", () => {
    expect(assessModule(opened).answer[4]).toMatch(/^Still untested: insulation resistance to the frame,/);
  });
  it("speak of no work on a sound module", () => {
    const { nextSteps } = assessModule({ ...opened, asFound: { ohms: ohms(null) } });
    expect(nextSteps.at(-1)?.action).not.toContain("After the work");
    expect(nextSteps.at(-1)?.reason).not.toContain("faulty");
  });
  it("speak of the work where there is some", () => {
    expect(assessModule(opened).nextSteps.at(-1)?.action).toContain("After the work");
  });
});

describe("a scan at what is full load but for floating point", () => {
  it("has the limits as printed, without a band", () => {
    expect(scanLimits("neta-100.18", 1 - 2e-16)).toEqual(scanLimits("neta-100.18", 1));
    expect(scanLimits("neta-100.18", 0.9996)).toEqual(scanLimits("neta-100.18", 1));
    expect(scanLimits("neta-100.18", 0.9)).not.toEqual(scanLimits("neta-100.18", 1));
  });
});
