/**
 * Records without a tolerance where no diagnosis weighs the readings: what is far off is named, what is near is not cleared. Values by Ohm's
 * law, written out; that making, heat and meters explain 15 % and no more is common practice, no published source.
 */
import { assessModule, type BenchRecord, type ModuleAssessment } from "electroheat/bench";
import { describe, expect, it } from "vitest";

/** 480²/30000 = 7.68 Ω hot, 7.68/1.04 = 7.385 Ω cold. */
const COLD = 480 ** 2 / 30e3 / 1.04;
const LEADS = 0.2;
const LINES = ["L1", "L2", "L3"] as const;

const ohms = (parts: readonly (number | "OL")[], target = COLD) =>
  LINES.map((from, i) => {
    const part = parts[i] as number | "OL";
    return { from, to: "S", reads: part === "OL" ? "OL" : `${(target * part + LEADS).toFixed(2)} Ω` };
  });
const amps = (values: readonly number[]) =>
  LINES.map((at, i) => ({ at, reads: `${values[i]?.toFixed(1)} A` }));

const star = (more: Partial<BenchRecord>): BenchRecord => ({
  title: "invented paint dryer",
  nameplate: { power: "30 kW", voltage: "480 V" },
  temperatureFactor: 1.04,
  wiring: { banks: [{ id: "A", connection: "star" }] },
  instruments: {
    ohmmeter: { ofReading: 0.005, digits: 2, leads: { shorted: `${LEADS.toFixed(2)} Ω` } },
    clamp: { ofReading: 0.02, digits: 5 },
  },
  ...more,
});

const found = { ohms: ohms([1, "OL", 1]) };
const asLeft = (left: NonNullable<BenchRecord["asLeft"]>): ModuleAssessment =>
  assessModule(star({ asFound: found, asLeft: left }));
const CLEARED = "Nothing read here speaks against running it; what is not tested has not passed.";
const branchStep = ({ checklist }: ModuleAssessment) =>
  checklist.find(({ text }) => text.startsWith("Read every branch as left"));

describe("branches as left without a tolerance", () => {
  it("names a coil a third too high, and one of half the ohms", () => {
    const high = asLeft({ ohms: ohms([1, 4 / 3, 1]) });
    expect(high.answer[0]).toContain("As left: A-L2 far from its target (+33.4 %).");
    expect(high.answer[2]).toContain("Not before the joints of A-L2 are cleared");
    expect(high.nextSteps[0]?.reason).toBe(
      "A-L2 is +33.4 % from target, farther than making, heat and the meter explain; the record gives no tolerance.",
    );
    const low = asLeft({ ohms: ohms([1, 0.5, 1]) });
    expect(low.answer[0]).toContain("As left: A-L2 far from its target (−50.0 %).");
    expect(low.answer[2]).toContain("Not before A-L2 is explained");
    expect(branchStep(low)?.state).toBe("not passed");
  });

  it("clears nothing that is near: it stays unjudged", () => {
    const near = asLeft({ ohms: ohms([1, 1.08, 0.95]) });
    expect(near.asLeft?.resistances.branches.map(({ finding }) => finding)).toEqual(
      LINES.map(() => "unjudged"),
    );
    expect(near.answer[2]).toBe(CLEARED);
    expect(branchStep(near)?.state).toBe("to do");
  });

  it("flips where the whole interval has passed 15 %", () => {
    // ±(0.5 % + 2 digits of 0.01 Ω) on 8.6 Ω and the leads make some 0.1 Ω, 1.4 % of 7.385 Ω.
    const finding = (part: number) =>
      asLeft({ ohms: ohms([1, part, 1]) }).asLeft?.resistances.branches[1]?.finding;
    expect([1.14, 1.155, 1.18].map(finding)).toEqual(["unjudged", "unjudged", "outside"]);
    expect([0.86, 0.845, 0.82].map(finding)).toEqual(["unjudged", "unjudged", "outside"]);
  });

  it("leaves a tolerance that is given to judge alone", () => {
    const wide = assessModule(
      star({ tolerance: { low: -0.3, high: 0.4 }, asFound: found, asLeft: { ohms: ohms([1, 4 / 3, 1]) } }),
    );
    expect(wide.asLeft?.resistances.branches[1]?.finding).toBe("sound");
  });
});

describe("amps as left without a tolerance", () => {
  // 30000/(√3·480) = 36.1 A.
  const withAmps = (values: readonly number[]): ModuleAssessment =>
    asLeft({ ohms: ohms([1, 1, 1]), currents: amps(values) });

  it("a dead line is no clean bill", () => {
    const dead = withAmps([31.2, 0, 31.2]);
    expect(dead.answer[0]).toContain(
      "Amps outside those of a sound module, and nothing says why: line current L2 0.0 A.",
    );
    expect(dead.answer[2]).toBe("Not known before the amps are explained.");
  });

  it("three times the amps, a star linked as a delta, forbid voltage", () => {
    const delta = withAmps([108.3, 108.3, 108.3]);
    expect(delta.answer[2]).toMatch(/^Do not energise it: far more amps than a sound module takes/);
  });

  it("a clamp that nobody named is not off by all of a line", () => {
    const { instruments: named, ...bare } = star({ tolerance: { low: -0.05, high: 0.1 }, asFound: found });
    const record = (values: readonly number[]): ModuleAssessment =>
      assessModule({
        ...bare,
        instruments: { ohmmeter: named?.ohmmeter as NonNullable<typeof named>["ohmmeter"] & object },
        asLeft: { ohms: ohms([1, 1, 1]), currents: amps(values) },
      });
    expect(record([31.2, 0, 31.2]).answer[0]).toContain("line current L2 0.0 A");
    // 36.1/1.1 − 0.15·36.1 = 27.4 A: 30 A may be a poor clamp's 33 A.
    expect(record([30, 30, 30]).answer[2]).toBe(CLEARED);
  });

  it("amps near a sound module's say nothing against it", () => {
    expect(withAmps([35.5, 35.9, 36.4]).answer[2]).toBe(CLEARED);
  });
});

describe("as found where nothing is diagnosed", () => {
  // Twenty-one elements of 200 Ω in parallel, 9.524 Ω a branch and 24.192 kW at 480 V: 63 elements are more than are weighed.
  const many = (more: Partial<BenchRecord>): BenchRecord => ({
    ...star({ nameplate: { power: "24.192 kW", voltage: "480 V" }, ...more }),
    temperatureFactor: 1,
    wiring: { banks: [{ id: "A", connection: "star", elementsInParallel: 21 }] },
  });
  const TARGET = 200 / 21;

  it("names a branch with four of its twenty-one elements open", () => {
    // 21/17 = 1.235.
    const { answer, diagnosis } = assessModule(many({ asFound: { ohms: ohms([1, 21 / 17, 1], TARGET) } }));
    expect(diagnosis).toBeNull();
    expect(answer[0]).toBe("A-L2 far from its target (+23.5 %).");
  });

  it("names a dead line by its amps", () => {
    // One line dead of a star: 29.1 A·√3/2 = 25.2 A in the two others.
    const { answer } = assessModule(many({ asFound: { currents: amps([25.2, 0, 25.2]) } }));
    expect(answer[0]).toBe(
      "Amps outside those of a sound module, and nothing says why: line current L2 0.0 A.",
    );
  });

  it("holds branches and lines against their like without a nameplate", () => {
    const { nameplate: _, ...bare } = star({ asFound: { ohms: ohms([1, 4 / 3, 1]) } });
    // The median of what was read: 9.85/7.38.
    expect(assessModule(bare).answer[0]).toBe("A-L2 far from its target (+33.5 %).");
    const dead = assessModule({ ...bare, asFound: { currents: amps([31.2, 0, 31.2]) } });
    expect(dead.answer[0]).toContain("line current L2 0.0 A");
    const alike = assessModule({ ...bare, asFound: { currents: amps([36.1, 35.2, 36.9]) } });
    expect(alike.answer[2]).toBe(CLEARED);
  });
});

describe("how many parallel elements are open", () => {
  it("takes the nearest count of those that the tolerance lets fit", () => {
    // Twenty of 200 Ω, three open: 20/17 = +17.6 %; two open, +11.1 %, would fit with 5 % on top as well.
    const record: BenchRecord = {
      ...star({ nameplate: { power: "23.04 kW", voltage: "480 V" }, tolerance: { low: -0.05, high: 0.05 } }),
      temperatureFactor: 1,
      wiring: { banks: [{ id: "A", connection: "star", elementsInParallel: 20 }] },
      asFound: { ohms: ohms([1, 20 / 17, 1], 10) },
    };
    expect(assessModule(record).asFound?.resistances.branches[1]?.openElements).toBe(3);
  });
});
