/**
 * What the assessment says of faults that are rare, by its public door: the words must be what is physically so. Expected values by Ohm and by
 * nodal analysis by hand; which steps come first is common practice without a published source.
 */
import { assessModule, type BenchRecord } from "electroheat/bench";
import { describe, expect, it } from "vitest";

// 480²/30000 = 7.68 Ω, and three times that in delta: 23.04 Ω.
const R = 7.68;
const assess = (more: Partial<BenchRecord>) =>
  assessModule({
    title: "invented conveyor dryer",
    nameplate: { power: "30 kW", voltage: "480 V" },
    wiring: { banks: [{ id: "A", connection: "star" }] },
    instruments: {
      ohmmeter: { ofReading: 0.005, digits: 3, leads: "taken off" },
      clamp: { ofReading: 0.02, digits: 5 },
      voltmeter: { ofReading: 0.005, digits: 2 },
    },
    tolerance: { low: -0.05, high: 0.1 },
    ...more,
  });
const LINES = ["L1", "L2", "L3"] as const;
const pairs = (reads: readonly (number | string)[]) =>
  reads.map((one, i) => ({
    from: LINES[i] as string,
    to: LINES[(i + 1) % 3] as string,
    reads: typeof one === "string" ? one : `${one.toFixed(2)} Ω`,
  }));
const currents = (reads: readonly number[]) =>
  reads.map((one, i) => ({ at: LINES[i] as string, reads: `${one.toFixed(1)} A` }));
const SUPPLY = { v12: "480.0 V", v23: "480.0 V", v31: "480.0 V" };

describe("amps alike and half of the plate's 36.1 A", () => {
  const { answer, nextSteps, parts } = assess({
    supply: SUPPLY,
    asFound: { currents: currents([18, 18, 18]) },
  });

  it("condemn no element: controller, clamp and the line's amps come first", () => {
    expect(answer[0]).toMatch(
      /^All elements alike of another value than drawn .* or amps that are not a whole line's/,
    );
    expect(nextSteps[0]?.action).toMatch(
      /^Before any element is judged .* at full conduction: the controller, every stage called for, the clamp/,
    );
    expect(nextSteps[0]?.action).toContain("isolate and read ohms between the lines");
    expect(parts).toEqual([]);
  });

  it("forbid nothing and allow nothing", () => {
    expect(answer[2]).toBe("Not known before the amps are explained.");
  });
});

it("amps alike and twice the plate's are kept off the supply, whatever makes them", () => {
  const { answer } = assess({ supply: SUPPLY, asFound: { currents: currents([72, 72, 72]) } });
  expect(answer[2]).toBe("Do not energise it: its amps are far beyond the plate's.");
});

it("ohms alike and half of the plate's are elements of another value", () => {
  const { answer, nextSteps } = assess({ asFound: { ohms: pairs([R, R, R]) } });
  expect(answer[2]).toBe("Do not energise it: all elements are of another value than the plate asks for.");
  expect(nextSteps[0]?.action).toMatch(/^Isolate, then hold the plate/);
});

describe("a branch on the wrong line", () => {
  // Two side by side on L1, in series with the third: it has two thirds of 480 V, 320 V for 277 V.
  it("of a floating star loads the others beyond their voltage", () => {
    const { answer, nextSteps } = assess({
      asFound: {
        ohms: [
          ...pairs([1.5 * R, "OL", "OL"]),
          { from: "L1", to: "S", reads: `${(R / 2).toFixed(2)} Ω` },
          { from: "L2", to: "S", reads: `${R.toFixed(2)} Ω` },
        ],
      },
    });
    expect(answer[2]).toBe(
      "Do not energise it: branch A-L3 is on L1 instead of L3, which loads others beyond their voltage.",
    );
    expect(nextSteps[0]?.action).toContain("look at and read the other branches and their joints before use");
  });

  // Every side has 480 V as before. Of 20.8 A a side, L1 carries two in phase, 41.7 A, and L3 √7 of one, 55.1 A, where 36.1 A are drawn.
  it("of a delta loads lines, and no element beyond its voltage", () => {
    const { answer } = assess({
      wiring: { banks: [{ id: "A", connection: "delta" }] },
      asFound: { ohms: pairs([4.5 * R, 3 * R, 1.5 * R]) },
    });
    expect(answer[2]).toBe(
      "Do not energise it: branch A-L1L2 is on L3 instead of L2, which loads two lines beyond their amps.",
    );
  });
});

describe("a break that leaks 2.000 MΩ, read to a kilohm", () => {
  const found = (between: number) => assess({ asFound: { ohms: pairs(["2.000 MΩ", between, "2.000 MΩ"]) } });

  it("does not hide that the others read twice what they should", () => {
    expect(found(2 * R).diagnosis?.outcome).toBe("explained");
    expect(found(4 * R).diagnosis?.outcome).toBe("nothing fits");
    expect(found(4 * R).diagnosis?.outcome).toBe(
      assess({ asFound: { ohms: pairs(["OL", 4 * R, "OL"]) } }).diagnosis?.outcome,
    );
  });

  it("asks for the others alone, and not for a finer meter that parts them no better", () => {
    const { nextSteps } = found(4 * R);
    expect(nextSteps.map(({ action }) => action).join()).not.toContain("finer resolution");
    const alone = nextSteps.find(({ action }) => action.startsWith("Lift the links and read each of these"));
    expect(alone?.about).toEqual(["A-L2", "A-L3"]);
    expect(alone?.reason).toContain("Against a sound module: L2 to L3 +100 %.");
    expect(nextSteps[0]?.reason).toBe("A-L1 reads 2.00 MΩ where 7.68 Ω belong.");
  });
});

it("480, 480 and 400 V with the amps that go with them are the supply's fault, and said once", () => {
  // Corners of that triangle lie 247, 291 and 247 V from its centroid: 32.2, 37.9 and 32.2 A over 7.68 Ω.
  const { answer, nextSteps } = assess({
    supply: { ...SUPPLY, v31: "400.0 V" },
    asFound: { currents: currents([32.2, 37.9, 32.2]) },
  });
  // The rest are joints too small for a clamp beside it.
  expect(answer[0]).toMatch(/^The supply.s line voltages differ \(9\d %\)\./);
  expect(nextSteps.filter(({ action }) => action.includes("why the line voltages differ")).length).toBe(1);
});

it("half of one line's amps are first asked after at the clamp, not at the elements", () => {
  const { answer, nextSteps, parts } = assess({
    supply: SUPPLY,
    asFound: { currents: currents([18, 36, 36]) },
  });
  expect(nextSteps[0]?.action).toContain("was the clamp around every wire of L1");
  expect(answer[2]).toMatch(/^Not before the joint/);
  expect(parts).toEqual([]);
});

it("a bank linked as delta with one element open condemns no sound branch that only the drawing makes a bolted one", () => {
  // Two sides of 15.36 Ω in a row and each by itself: 30.72, 15.36 and 15.36 Ω, by which a star would have 0 Ω on L3.
  const { answer, nextSteps, parts } = assess({
    wiring: {
      banks: [
        { id: "A", connection: "star" },
        { id: "B", connection: "star" },
      ],
      starPoints: "separate",
    },
    asFound: {
      ohms: [
        ...pairs([4 * R, 2 * R, 2 * R]).map((one) => ({ ...one, alone: "A" })),
        ...pairs([4 * R, 4 * R, 4 * R]).map((one) => ({ ...one, alone: "B" })),
      ],
    },
  });
  expect(answer[0]).toMatch(/^Bank A linked as delta, against the drawing and element A-L1 open/);
  expect([...answer, ...nextSteps.map(({ action }) => action)].join()).not.toContain("A-L3");
  expect(nextSteps[0]?.action).not.toContain("no parts by these readings");
  expect(parts).toEqual([]);
});

it("a bolted path that was read is told whatever the links", () => {
  // A delta that was drawn a star, one element bridged: 0 Ω between its lines, and two sides side by side elsewhere.
  const { answer } = assess({
    asFound: { ohms: pairs([0.02, R / 2, R / 2]) },
  });
  expect(answer[2]).toMatch(/^Do not energise it/);
});

describe("readings a thousand times too large", () => {
  const said = "typed as ohms, or ohms as kiloohms?";

  it("are asked after once, by the plan where there are no others", () => {
    const { nextSteps, parts } = assess({ asFound: { ohms: pairs([2000 * R, 2000 * R, 2000 * R]) } });
    const odd = nextSteps.filter(({ action }) => action.includes(said));
    expect(odd.length).toBe(1);
    expect(odd[0]?.action).toContain("that the plan leads to expect");
    expect(parts).toEqual([]);
  });

  it("are asked after where one of them looks like a joint burnt to kilohms too", () => {
    const ohms = [R, R, 1000 * R].map((one, i) => ({
      from: LINES[i] as string,
      to: "S",
      reads: `${one.toFixed(2)} Ω`,
    }));
    const { nextSteps, parts, answer } = assess({ asFound: { ohms } });
    expect(nextSteps[0]?.action).toContain(said);
    expect(answer[2]).toMatch(/^Not before the joint/);
    expect(parts).toEqual([]);
  });
});

it("a feed still connected with its neutral earthed comes before any coil on the frame, and condemns no element", () => {
  const found = assess({
    instruments: {
      ohmmeter: { ofReading: 0.005, digits: 3, leads: "taken off" },
      insulationTester: { ofReading: 0.05, digits: 2 },
    },
    asFound: {
      ohms: pairs([0.3, 0.3, 0.3]),
      insulation: LINES.map((from) => ({ from, reads: "0.00 MΩ" })),
    },
  });
  expect(found.nextSteps[0]?.action).toMatch(/^Lock out the feed, .* those to the frame too/);
  expect(found.answer[2]).toMatch(/^Do not energise it/);
  expect(found.parts).toEqual([]);
});
