/**
 * Feeds on the other side of the water and of other metal: what a record must say before a line of the checklist is ticked.
 * Figures: IEC 60364-5-52:2009, Table B.52.4 (method B2, three loaded conductors, copper, PVC, 16 mm²: 62 A) and Table B.52.14 (PVC at
 * 40 °C: 0.87), so 62 · 0.87 = 53.94 A by hand; a gG fuse trips at 1.6 In (IEC 60269-1), cables stand 1.45 Iz, so Iz ≥ 1.1 In = 55 A for
 * 50 A, a circuit-breaker trips at 1.45 In (IEC 60898-1), so Iz ≥ In. NEC 2023 Table 310.16, aluminum, 75 °C, 4 AWG: 65 A.
 */
import { assessModule, type BenchRecord, type RecordFeed } from "electroheat/bench";
import { conductorAmpacity, conductorForLoad } from "electroheat/wiring";
import { describe, expect, it } from "vitest";
import { amperes, celsius } from "../../../src/quantity/index.ts";

const star: BenchRecord["wiring"] = { banks: [{ id: "A", connection: "star" }] };
const CHECK = "Conductors, terminals and overcurrent protection fit the load.";
const fits = (record: BenchRecord) => {
  const { feed, checklist, answer } = assessModule(record);
  return { feed, answer, item: checklist.find(({ text }) => text === CHECK) };
};

describe("a feed by IEC", () => {
  const iec = (more: Partial<RecordFeed>) =>
    fits({
      title: "pottery kiln on 400 V (invented)",
      nameplate: { power: "30 kW", voltage: "400 V" },
      wiring: star,
      ambient: "40 °C",
      feed: {
        edition: "IEC 60364-5-52:2009",
        installation: "B2",
        insulation: "PVC",
        conductor: "16 mm²",
        device: "50 A",
        ...more,
      },
    });
  it("passes 16 mm² behind a circuit-breaker of 50 A: 43.3 ≤ 50 ≤ 53.94 A", () => {
    const { item, answer, feed } = iec({ deviceKind: "circuit-breaker" });
    expect(item?.state).toBe("done");
    expect(answer.join(" ")).not.toContain("feed:");
    expect(feed?.figures.flatMap(({ caution }) => caution ?? []).join(" ")).not.toContain(
      "Kind of the device",
    );
  });
  it("fails it behind a gG fuse of 50 A: 55 A are asked, 53.94 A are there", () => {
    for (const kind of [{ deviceKind: "gG fuse" } as const, {}]) {
      const { item, answer } = iec(kind);
      expect(item?.state).toBe("not passed");
      expect(answer[0]).toContain("ampacity 53.9 A, where 55 A at least is asked");
    }
    expect(() => iec({ deviceKind: "breaker" as never })).toThrow(
      'feed.deviceKind: "breaker" is not allowed; expected one of circuit-breaker, gG fuse',
    );
  });
});

describe("a feed of which half is in the record", () => {
  const nec = (more: Partial<RecordFeed>) =>
    fits({
      title: "duct heater (invented)",
      nameplate: { power: "30 kW", voltage: "480 V" },
      wiring: star,
      feed: {
        edition: "NEC 2023",
        installation: "raceway",
        insulation: "90 °C",
        terminals: "75 °C",
        ...more,
      },
    });
  it("is not ticked for a conductor without its device, nor for a device without its conductor", () => {
    const conductor = nec({ conductor: "6 AWG" }).item;
    expect(conductor).toMatchObject({
      state: "to do",
      evidence: "Within: conductor as installed, ampacity. Not in the record: overcurrent device.",
    });
    const device = nec({ device: "50 A" }).item;
    expect(device?.state).toBe("to do");
    expect(device?.evidence).toMatch(/Not in the record: conductor\.$/);
    expect(nec({ conductor: "6 AWG", device: "50 A" }).item?.state).toBe("done");
  });
  it("fails as a whole where the half that is there fails", () => {
    // NEC 2023 Table 310.16: 12 AWG copper 25 A at 75 °C, of 45.1 A asked.
    expect(nec({ conductor: "12 AWG" }).item?.state).toBe("not passed");
  });
});

describe("aluminum wire", () => {
  const run = {
    edition: "NEC 2023",
    installation: "raceway",
    insulationTemperature: celsius(75),
    terminalTemperature: celsius(75),
    ambient: celsius(30),
    currentCarryingConductors: 3,
  } as const;
  it("comes with the caution of its terminals, copper without it (NEC 110.14, from memory)", () => {
    const aluminum = conductorAmpacity({ ...run, size: "4 AWG", material: "aluminum" });
    expect(aluminum.value).toBe(65);
    expect(aluminum.cautions.join(" ")).toContain("Aluminum wire only on terminals marked for it");
    expect(conductorAmpacity({ ...run, size: "6 AWG", material: "copper" }).cautions.join(" ")).not.toContain(
      "Aluminum",
    );
    const choice = conductorForLoad({
      ...run,
      material: "aluminum",
      equipment: "process heating",
      heaterCurrent: amperes(36),
    });
    expect(choice.cautions.join(" ")).toContain("Aluminum wire only on terminals marked for it");
  });
  it("carries that caution into the assessment", () => {
    const { feed } = assessModule({
      title: "unit heater (invented)",
      nameplate: { power: "30 kW", voltage: "480 V" },
      wiring: star,
      feed: {
        edition: "NEC 2023",
        installation: "raceway",
        insulation: "75 °C",
        conductor: "4 AWG",
        material: "aluminum",
      },
    });
    expect(feed?.cautions.join(" ")).toContain("never under a nut or screw meant for copper");
  });
});

describe("a conductor in air that is too hot for it", () => {
  // Wire of 90 °C in air of 90 °C and more cannot lose any heat of its own: no ampacity is left (heat flow from hot to cold).
  const hot = (ambient: string, feed: Partial<RecordFeed> = {}) =>
    assessModule({
      title: "spray booth oven (invented)",
      nameplate: { power: "30 kW", voltage: "480 V" },
      wiring: star,
      ambient,
      feed: {
        edition: "NEC 2023",
        installation: "raceway",
        insulation: "90 °C",
        terminals: "75 °C",
        conductor: "6 AWG",
        device: "50 A",
        ...feed,
      },
    });
  const ticked = ({ checklist }: ReturnType<typeof hot>) => checklist.find(({ text }) => text === CHECK);
  it.each([
    ["90 °C", {}],
    ["104 °C", {}],
    ["220 °F", {}],
    ["80 °C", { edition: "IEC 60364-5-52:2009", installation: "B2", insulation: "PVC", conductor: "16 mm²" }],
  ] as const)("of %s is outside, and said first", (ambient, feed) => {
    const found = hot(ambient, feed);
    expect(found.answer[0]).toContain("feed: conductor as installed, ampacity 0 A, where");
    expect(found.answer[2]).toMatch(/^Not before the electrician has settled the feed/);
    expect(ticked(found)?.state).toBe("not passed");
  });
  it.each([
    ["86 °C", {}],
    ["65 °C", { edition: "IEC 60364-5-52:2009", installation: "B2", insulation: "PVC", conductor: "16 mm²" }],
  ] as const)(
    "of %s, beyond the factors and below the rating, is not answered and not ticked",
    (ambient, feed) => {
      const found = hot(ambient, feed);
      expect(ticked(found)).toMatchObject({
        state: "to do",
        evidence: "Not answered: conductor as installed, ampacity.",
      });
      expect(found.notTested).toContain("conductors, terminals and protection of the feed");
    },
  );
  it("of 40 °C is answered", () => {
    // NEC 2023 Table 310.16: 6 AWG copper 75 A at 90 °C, times 0.91 is 68.3 A; the terminals' 75 °C column allows 65 A of the 45.1 asked.
    const found = hot("40 °C");
    expect(ticked(found)?.state).toBe("done");
    expect(found.notTested).not.toContain("conductors, terminals and protection of the feed");
  });
});
