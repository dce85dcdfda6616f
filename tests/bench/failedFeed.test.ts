/** Feed and torque that fail reach the answer. Common practice, no published source. */
import { assessModule, type BenchRecord } from "electroheat/bench";
import { describe, expect, it } from "vitest";

const healthy: BenchRecord = {
  title: "an invented delta in good order",
  nameplate: { power: "27 kW", voltage: "400 V" },
  wiring: { banks: [{ id: "A", connection: "delta" }] },
  supply: { v12: "400 V", v23: "400 V", v31: "400 V" },
  tolerance: { low: -0.05, high: 0.1 },
  instruments: {
    ohmmeter: { ofReading: 0.005, digits: 3, resolution: "0.01 Ω", leads: { shorted: "0.15 Ω" } },
  },
  asFound: {
    ohms: [
      { from: "L1", to: "L2", reads: "12.00 Ω" },
      { from: "L2", to: "L3", reads: "12.00 Ω" },
      { from: "L3", to: "L1", reads: "12.00 Ω" },
    ],
  },
};

describe("a feed too small for the load", () => {
  // 10 AWG is no conductor for 39 A of continuous heating (NEC 424.4, 240.4(D): 30 A), nor is 60 A its protection.
  const fed: BenchRecord = {
    ...healthy,
    feed: {
      edition: "NEC 2023",
      conductor: "10 AWG",
      installation: "raceway",
      insulation: "75 °C",
      terminals: "75 °C",
      device: "60 A",
    },
    ambient: "40 °C",
  };
  it("is named in the first line, has a step, and comes before running", () => {
    const { answer, nextSteps, checklist } = assessModule(fed);
    expect(checklist.find(({ text }) => text.startsWith("Conductors"))?.state).toBe("not passed");
    expect(answer[0]).toContain("feed: conductor as installed, ampacity");
    expect(answer[0]).toContain("where 30 A at most is asked");
    expect(answer[2]).toMatch(/^Not before the electrician has settled the feed: /);
    expect(answer.join()).not.toContain("speaks against");
    expect(nextSteps.some(({ about }) => about.includes("feed"))).toBe(true);
  });
  it("stands beside what an open branch leaves", () => {
    const ohms = [
      { from: "L1", to: "L2", reads: "35.70 Ω" },
      { from: "L2", to: "L3", reads: "17.93 Ω" },
      { from: "L3", to: "L1", reads: "17.93 Ω" },
    ];
    expect(assessModule({ ...fed, asFound: { ohms } }).answer[2]).toMatch(
      /^Not before the electrician has settled the feed: .* Besides: /,
    );
  });
});

describe("torque outside its limits", () => {
  const studs = (applied: string): BenchRecord => ({
    ...healthy,
    hardware: [
      {
        id: "studs",
        thread: "M6",
        count: 6,
        strength: { standard: "ISO 3506-1", grade: "A2-70" },
        condition: "dry steel",
        makerTorque: "6.0 N·m",
        applied,
      },
    ],
  });
  it("too much asks for new stud, nut and washer", () => {
    const { answer, nextSteps } = assessModule(studs("15 N·m"));
    expect(answer[0]).toContain("studs: torque applied 15 N·m");
    expect(nextSteps[0]?.action).toContain("renew stud, nut and washer of studs");
    expect(answer[2]).toMatch(/^Not before/);
  });
  it("too little asks for tightening", () => {
    expect(assessModule(studs("3.0 N·m")).nextSteps[0]?.action).toContain("tighten studs to the torque");
  });
  it("too much by the maker's own figure asks the maker, and not for new hardware at the same torque", () => {
    // K 0.14 of anti-seize, A2-70, 20.1 mm²: 0.75·450·20.1·0.14·0.006 = 5.70 N·m is the most that M6 takes.
    const [one] = studs("9.0 N·m").hardware ?? [];
    const greased = { ...one, condition: "stainless with anti-seize", makerTorque: "9.0 N·m" } as typeof one;
    const { nextSteps, checklist } = assessModule({
      ...healthy,
      hardware: [greased as NonNullable<typeof one>],
    });
    expect(nextSteps[0]?.action).toContain("ask the maker which torque holds");
    expect(nextSteps.map(({ action }) => action).join()).not.toContain("renew stud");
    expect(checklist.find(({ text }) => text.startsWith("Tighten every nut"))?.state).toBe("not passed");
  });
  it("too much by the maker's own figure is said before anybody tightens to it, and keeps nothing from running", () => {
    // A2-70, 20.1 mm², dry steel K 0.18: 25 N·m gives 25/(0.18·0.006) = 23.1 kN, 2.6 times the 450·20.1 = 9.05 kN of the strength.
    const [one] = studs("6.0 N·m").hardware ?? [];
    const { applied: _, ...planned } = { ...one, makerTorque: "25 N·m" } as NonNullable<typeof one>;
    const { answer, nextSteps } = assessModule({ ...healthy, hardware: [planned] });
    expect(answer[0]).toMatch(
      /studs: share of proof load at the torque to use 2\.13, where 0\.75 at most is asked/,
    );
    expect(nextSteps[0]?.action).toMatch(
      /ask the maker which torque holds .*before new hardware is tightened/,
    );
    expect(answer[2]).not.toContain("wrong torque");
    expect(assessModule({ ...healthy, hardware: [{ ...planned, makerTorque: "6.0 N·m" }] }).answer[0]).toBe(
      "No fault shows in the readings.",
    );
  });
  it("as the maker says says nothing", () => {
    expect(assessModule(studs("6.0 N·m")).answer[0]).toBe("No fault shows in the readings.");
  });
});
