/** A record's feed against printed tables and published worked examples. */
import type { Figure, RecordFeed } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { assessFeed } from "../../../src/bench/site/feed.ts";
import { numberOf, read, refused, the } from "./made.ts";

const american: RecordFeed = {
  edition: "NEC 2023",
  installation: "raceway",
  insulation: "75 °C",
  terminals: "75 °C",
};
const cable: RecordFeed = { edition: "IEC 60364-5-52:2009", installation: "B2", insulation: "PVC" };

const assess = (feed: RecordFeed, current: number | null, ambient?: string) => {
  const found = assessFeed(read({ feed, ...(ambient === undefined ? {} : { ambient }) }), current as never);
  if (found === null) throw new Error("no feed");
  return found;
};
const figures = (more: Partial<RecordFeed>, current: number | null, ambient = "30 °C"): readonly Figure[] =>
  assess({ ...american, ...more }, current, ambient).figures;
const iec = (more: Partial<RecordFeed>, current: number | null, ambient = "30 °C"): readonly Figure[] =>
  assess({ ...cable, ...more }, current, ambient).figures;

const SMALLEST = "conductor, smallest that serves";
const INSTALLED = "conductor as installed, ampacity";
const STANDARD = "overcurrent device, smallest standard";
const UNSPLIT = "load of one protected circuit, if not split";
const FOR_LOAD = "overcurrent device as installed, for the load";
const FOR_CONDUCTOR = "overcurrent device as installed, for the conductor";

describe("North American feed", () => {
  it("takes the metal as wires are marked, and says what stands for the letters of their insulation", () => {
    // Table 310.16, 1 AWG at 75 °C: copper 130 A, aluminum 100 A.
    for (const [material, ampacity] of [
      ["Cu", 130],
      ["Copper", 130],
      ["Al", 100],
      ["aluminium", 100],
      ["Aluminum", 100],
    ] as const)
      expect(numberOf(figures({ conductor: "1 AWG", material }, 60), INSTALLED), material).toBe(ampacity);
    // Column heads of that table, from memory: THHN and XHHW-2 at 90 °C, THW and THWN at 75 °C.
    const letters = refused(() => figures({ insulation: "THHN" }, 60));
    expect(letters[0]?.message).toContain('such as "90 °C" for THHN and XHHW-2, "75 °C" for THW and THWN');
  });

  it("sizes conductor, device and circuits of a 60 kW, 480 V process heater", () => {
    // Source: published worked example under the 2017 code: 72.17 A, two circuits of 36.08 A, 45.1 A, device 50 A.
    const found = figures({ edition: "NEC 2017" }, 60_000 / (480 * Math.sqrt(3)));
    expect(numberOf(found, "design current")).toBeCloseTo(90.211, 3);
    expect(numberOf(found, "protected circuits, at least")).toBe(2);
    expect(numberOf(found, "load of each, equal circuits")).toBeCloseTo(36.0844, 4);
    expect(numberOf(found, "overcurrent device of each")).toBe(50);
    // Table 310.15(B)(16), copper 75 °C: 4 AWG 85 A, 3 AWG 100 A; 240.6(A): 90, 100 A.
    expect([the(found, SMALLEST).name, the(found, SMALLEST).value, the(found, STANDARD).value]).toEqual([
      "3 AWG",
      100,
      100,
    ]);
    expect(the(found, UNSPLIT).verdict).toBe("outside");
  });

  it("agrees with a published example of a fixed heater with its blower", () => {
    // Source: published question on the 2017 code: 43 A, 53.75 A, 6 AWG copper (55 A at 60 °C), device 60 A.
    const found = figures(
      {
        edition: "NEC 2017",
        equipment: "space heating",
        insulation: "60 °C",
        terminals: "60 °C",
        conductor: "6 AWG",
        device: "60 A",
      },
      43,
    );
    expect(numberOf(found, "design current")).toBeCloseTo(53.75, 9);
    expect([the(found, INSTALLED).value, the(found, INSTALLED).verdict]).toEqual([55, "within"]);
    expect(the(found, SMALLEST).name).toBe("6 AWG");
    expect([the(found, FOR_LOAD).verdict, the(found, FOR_CONDUCTOR).verdict]).toEqual(["within", "within"]);
    const smaller = figures(
      { edition: "NEC 2017", insulation: "60 °C", terminals: "60 °C", conductor: "8 AWG" },
      43,
    );
    expect([the(smaller, INSTALLED).value, the(smaller, INSTALLED).verdict]).toEqual([40, "outside"]);
  });

  // 48 A × 1.25 is 60 A: 424.22(B), 425.22(B) allow 48 A and 60 A and no more. Float noise must not tip it.
  it.each([
    [48, 60, "within", "within"],
    [47.99999999999999, 60, "within", "within"],
    [48.00000000000001, 60, "within", "within"],
    [47.9, 60, "within", "within"],
    [48.01, 70, "outside", "outside"],
  ])("at %f A takes a device of %d A, and one of 60 A is %s", (current, standard, device, unsplit) => {
    expect(numberOf(figures({}, current), STANDARD)).toBe(standard);
    const installed = figures({ device: "60 A", conductor: "6 AWG" }, current);
    expect(the(installed, FOR_LOAD).verdict).toBe(device);
    expect(the(installed, UNSPLIT).verdict).toBe(unsplit);
    expect(installed.some(({ label }) => label.startsWith("protected circuits"))).toBe(unsplit === "outside");
  });

  it("holds the device of one circuit to 60 A even where the conductor takes more", () => {
    const device = the(figures({ conductor: "3 AWG", device: "100 A" }, 40), FOR_CONDUCTOR);
    expect([device.limit?.high, device.verdict]).toEqual([60, "outside"]);
    expect(device.basis).toContain("425.22(B)");
    // A class without the rule: 3 AWG at 75 °C carries 100 A.
    const other = the(
      figures({ conductor: "3 AWG", device: "100 A", equipment: "continuous load" }, 40),
      FOR_CONDUCTOR,
    );
    expect([other.limit?.high, other.verdict]).toEqual([100, "within"]);
  });

  it("asks of a conductor what the load asks, not what the next size happens to carry", () => {
    // 36 kW at 480 V: 43.3 A, continuous 54.13 A (425.4, 210.19: 125 %). Table 310.16, 75 °C: 8 AWG carries 50 A, 6 AWG 65 A.
    const load = 36_000 / (Math.sqrt(3) * 480);
    const small = the(figures({ conductor: "8 AWG" }, load), INSTALLED);
    expect([small.value, small.verdict]).toEqual([50, "outside"]);
    expect(small.limit?.low).toBeCloseTo(1.25 * load, 9);
    const right = the(figures({ conductor: "6 AWG" }, load), INSTALLED);
    expect([right.value, right.verdict]).toEqual([65, "within"]);
    expect(right.limit?.low).toBeCloseTo(1.25 * load, 9);
  });

  it("takes unmarked terminals by the rating of the circuit", () => {
    // 110.14(C)(1): 60 °C up to 100 A, 75 °C above.
    const { terminals: _, ...unmarked } = american;
    const terminal = (device: string): Figure =>
      the(assess({ ...unmarked, device }, 40, "30 °C").figures, "temperature of the terminals");
    expect([terminal("100 A").value, terminal("110 A").value]).toEqual([60, 75]);
    expect(terminal("100 A").basis).toContain("110.14(C)(1)");
    // Table 310.16: 6 AWG carries 55 A in the 60 °C column, 65 A at 75 °C.
    expect(
      numberOf(assess({ ...unmarked, conductor: "6 AWG", device: "60 A" }, 40, "30 °C").figures, INSTALLED),
    ).toBe(55);
  });

  it("takes the ambient off the conductor's own column", () => {
    // Table 310.16: 2 AWG at 90 °C 130 A; Table 310.15(B)(1)(1), 46 to 50 °C: 0.82.
    const found = figures({ conductor: "2 AWG", insulation: "90 °C" }, 80, "48 °C");
    expect(numberOf(found, INSTALLED)).toBeCloseTo(130 * 0.82, 9);
    const assumed = assess({ ...american, conductor: "2 AWG" }, 80);
    expect(assumed.cautions[0]).toContain("No ambient in the record");
  });

  it("names the terminal torque of the table for a hexagon", () => {
    // UL 486A-B, Table I.1: 6 to 4 AWG, external hexagon, 110 lbf·in.
    const torque = the(
      figures({ conductor: "4 AWG" }, 60),
      "torque of wire terminals with an external hexagon",
    );
    expect((torque.value as number) / (110 * 0.45359237 * 9.80665 * 0.0254)).toBeCloseTo(1, 12);
    expect(torque.caution).toContain("Slotted screws");
  });

  it("says so where no size of the table serves, and refuses nothing", () => {
    const found = figures({ conductor: "500 kcmil", device: "400 A" }, 3000);
    expect([the(found, SMALLEST).value, the(found, INSTALLED).verdict]).toEqual([null, "outside"]);
    expect(the(found, SMALLEST).caution).toContain("a load that a size");
    expect(the(found, FOR_LOAD).verdict).toBe("outside");
  });

  it("looks the ampacity up without a nameplate", () => {
    const found = figures({ conductor: "3 AWG", device: "100 A" }, null);
    expect([
      the(found, "design current").value,
      the(found, INSTALLED).value,
      the(found, INSTALLED).verdict,
    ]).toEqual([null, 100, null]);
    expect(found.some(({ label }) => label === UNSPLIT)).toBe(false);
    expect(the(found, FOR_CONDUCTOR).verdict).toBe("within");
    const bare = figures({ terminals: undefined as never, conductor: "3 AWG" }, null);
    expect(the(bare, INSTALLED).caution).toContain("rating of the circuit");
  });
});

describe("IEC feed", () => {
  it("carries what the table prints, less the ambient", () => {
    // Published example: method B2, PVC, three loaded, 16 mm² at 50 °C: 62 A × 0.71 = 44.02 A (Tables B.52.4, B.52.14).
    expect(numberOf(iec({ conductor: "16 mm²" }, 40, "50 °C"), INSTALLED)).toBeCloseTo(44.02, 9);
  });

  it("asks a tenth more of the cable behind a gG fuse", () => {
    // IEC 60364-4-43: I2 = 1.6·In ≤ 1.45·Iz, so Iz ≥ 1.10·In. 50 A asks for 55 A; Table B.52.4, B2: 10 mm² 46 A, 16 mm² 62 A.
    const found = iec({ conductor: "16 mm²", device: "50 A" }, 43.3013);
    expect(the(found, INSTALLED).limit?.low).toBeCloseTo(55, 9);
    expect([the(found, INSTALLED).verdict, the(found, SMALLEST).name]).toEqual(["within", "16 mm²"]);
    expect([the(found, FOR_LOAD).verdict, the(found, FOR_CONDUCTOR).limit?.high]).toEqual(["within", 50]);
    expect(the(iec({ conductor: "10 mm²", device: "50 A" }, 43.3013), INSTALLED).verdict).toBe("outside");
  });

  it("judges a device below the load and one too large for the cable", () => {
    const small = iec({ conductor: "16 mm²", device: "40 A" }, 43.3013);
    expect([the(small, FOR_LOAD).verdict, the(small, FOR_CONDUCTOR).verdict]).toEqual(["outside", "within"]);
    const large = iec({ conductor: "16 mm²", device: "63 A" }, 43.3013);
    expect([the(large, FOR_LOAD).verdict, the(large, FOR_CONDUCTOR).verdict]).toEqual(["within", "outside"]);
  });

  it("takes a rating that only circuit-breakers have as one", () => {
    // IEC 60898-1 prefers 13 A, IEC 60269-1 does not.
    const device = the(iec({ conductor: "4 mm²", device: "13 A" }, 10), FOR_CONDUCTOR);
    expect(device.verdict).toBe("within");
    expect(device.caution).toContain("circuit-breaker");
  });

  it("takes a group as bunched, and says so", () => {
    // Table B.52.17: two circuits bunched 0.80. Table B.52.4: 16 mm² 62 A.
    const found = assess({ ...cable, conductor: "16 mm²", grouped: 2 }, 30, "30 °C");
    expect(numberOf(found.figures, INSTALLED)).toBeCloseTo(62 * 0.8, 9);
    expect(found.cautions.some((one) => one.includes("bunched"))).toBe(true);
  });
});

describe("whatever the edition", () => {
  it.each([american, cable])(
    "every answered figure names edition, table, row and column, and who decides",
    (feed) => {
      const conductor = feed === american ? "3 AWG" : "25 mm²";
      const {
        figures: all,
        deferral,
        cautions,
        edition,
      } = assess({ ...feed, conductor, device: "63 A" }, 40, "30 °C");
      for (const { value, label, basis } of all) {
        if (value === null || label === "temperature of the terminals") continue;
        expect(`${label}: ${basis}`).toMatch(/, row .+, column /);
        if (!label.startsWith("torque")) expect(basis).toContain(edition);
      }
      expect(deferral).toContain("licensed electrician");
      expect(cautions.length).toBeGreaterThan(0);
    },
  );

  it.each<[string, RecordFeed, readonly string[]]>([
    ["edition", { ...american, edition: "NEC 1999" }, ["feed.edition"]],
    ["installation", { ...american, installation: "on the floor" }, ["feed.installation"]],
    ["material", { ...american, material: "silver" }, ["feed.material"]],
    ["insulation", { ...american, insulation: "rubber" }, ["feed.insulation"]],
    ["insulation column", { ...american, insulation: "82 °C" }, ["feed.insulation"]],
    ["equipment", { ...american, equipment: "toaster" }, ["feed.equipment"]],
    ["conductor", { ...american, conductor: "9 AWG" }, ["feed.conductor"]],
    ["conductor without unit", { ...american, conductor: "6" }, ["feed.conductor"]],
    ["terminals", { ...american, terminals: "70 °C" }, ["feed.terminals"]],
    ["method", { ...cable, installation: "H" }, ["feed.installation"]],
    ["IEC insulation", { ...cable, insulation: "90 °C" }, ["feed.insulation"]],
    ["IEC material", { ...cable, material: "aluminum" }, ["feed.material"]],
    ["IEC conductor", { ...cable, conductor: "17 mm²" }, ["feed.conductor"]],
  ])("refuses an unknown %s by its path", (_, feed, paths) => {
    const issues = refused(() => assess(feed, 40, "30 °C"));
    expect(issues.map(({ path }) => path)).toEqual(paths);
    expect(issues[0]?.message.startsWith(`${paths[0]}: `)).toBe(true);
  });

  it("lists the editions of both families", () => {
    const [only] = refused(() => assess({ ...american, edition: "our own rules" }, 40));
    expect(only?.message).toContain("NEC 2023");
    expect(only?.message).toContain("BS 7671:2008");
  });

  it("no feed in the record, none assessed", () => {
    expect(assessFeed(read({}), 40 as never)).toBeNull();
  });
});
