/**
 * Words and figures of seldom states: several open strings, links against the drawing, sheets with empty sections.
 *
 * Sources: Kirchhoff's laws for values, worked out beside each check; for words, what the record itself says.
 */
import { assessModule, assessmentText, type BenchRecord, degradedOptions } from "electroheat/bench";
import { balancedSupply } from "electroheat/circuit";
import { celsius, hours, joulesPerKelvin, ohms as ohm, volts, wattsPerKelvin } from "electroheat/quantity";
import { describe, expect, it } from "vitest";

const ohmmeter = { ofReading: 0.005, digits: 2, resolution: "0.01 Ω", leads: "taken off" } as const;
const atStar = (...reads: readonly string[]) =>
  reads.map((one, i) => ({ from: `L${i + 1}`, to: "S", reads: one }));

/** 30 kW on 480 V in star: 7.68 Ω a branch. */
const module = (more: Partial<BenchRecord>): BenchRecord => ({
  title: "one invented module",
  nameplate: { power: "30 kW", voltage: "480 V" },
  wiring: { banks: [{ id: "A", connection: "star" }] },
  instruments: { ohmmeter },
  tolerance: { low: -0.05, high: 0.1 },
  asFound: { ohms: atStar("7.68 Ω", "7.68 Ω", "7.68 Ω") },
  ...more,
});
const flat = (text: string): string => text.replace(/\s+/g, " ");
const running = (record: BenchRecord): string => flat(assessModule(record).answer.join(" "));

describe("open strings of branches", () => {
  /** Tied stars of two strings a branch, 30 kW each; those named have one string open in the branches named. */
  const stars = (count: number, broken: readonly string[], more: Partial<BenchRecord> = {}): BenchRecord => {
    const ids = Array.from({ length: count }, (_, i) => "ABCD".charAt(i));
    return module({
      nameplate: { power: `${30 * count} kW`, voltage: "480 V" },
      wiring: {
        banks: ids.map((id) => ({ id, connection: "star" as const, elementsInParallel: 2 })),
        ...(count > 1 ? { starPoints: "tied" as const } : {}),
      },
      asFound: {
        ohms: ids.flatMap((id) =>
          ["L1", "L2", "L3"].map((from) => ({
            from,
            to: "S",
            reads: broken.includes(`${id}-${from}`) ? "15.36 Ω" : "7.68 Ω",
            alone: `${id}-${from}`,
          })),
        ),
      },
      ...more,
    });
  };
  it("that leave the lines equal are not said to make them unequal: half the power, no survivor carries more", () => {
    const said = running(stars(1, ["A-L1", "A-L2", "A-L3"]));
    expect(said).toContain("run until parts come at 50 % of its power, if protection");
    expect(said).toContain("no survivor carries more than when sound");
  });
  it("of one in four tied banks shorten the life of what is left by carrying 1.09 times", () => {
    // Star point at (3.5 − 4)/11.5 of L1's voltage: the survivors on L1 stand at 1 + 0.5/11.5, squared 1.0888.
    const said = running(stars(4, ["A-L1"]));
    expect(said).toMatch(
      /what is left of A-L1 then carries 1\.09 times its sound power, which shortens its life/,
    );
    expect(said).toContain("with unequal lines");
  });
  it("of one in two tied banks are for the maker, for untying them makes it worse", () => {
    // Tied: 1 + 0.5/5.5, squared 1.190; untied: 1 + 0.5/2.5, squared 1.44.
    expect(running(stars(2, ["A-L1"]))).toContain(
      "would carry 1.19 times its sound power, which only its maker can allow",
    );
  });
  it("are counted among the parts", () => {
    const { parts } = assessModule(stars(1, ["A-L1"]));
    expect(parts[0]).toMatchObject({ part: "element for A-L1", quantity: 1 });
  });
});

describe("links against the drawing", () => {
  it("of star points that are tied are put as drawn", () => {
    // All links in, 15.36 Ω a branch. Separate: L1 to S-A is R beside 2·R, 10.24 Ω; tied: R beside R, 7.68 Ω.
    const record = module({
      wiring: {
        banks: ["A", "B"].map((id) => ({ id, connection: "star" as const })),
        starPoints: "separate",
      },
      asFound: {
        ohms: [
          ...["S-A", "S-B"].flatMap((to) =>
            ["L1", "L2", "L3"].map((from) => ({ from, to, reads: "7.68 Ω" })),
          ),
        ],
      },
    });
    const { nextSteps, answer } = assessModule(record);
    expect(flat(answer[0] as string)).toMatch(/^Star points tied, against the drawing/);
    expect(nextSteps.map(({ action }) => action)).toContain(
      "Isolate, then put the links of the star points as drawn: they are tied.",
    );
  });
  it("of a delta linked as a star may run with a third of its heat", () => {
    // 15 kW each in delta: 46.08 Ω a side, 30.72 Ω between lines; the same elements as a star read 92.16 Ω.
    const lines = ["L1", "L2", "L3"];
    const record = module({
      wiring: { banks: ["A", "B"].map((id) => ({ id, connection: "delta" as const })) },
      asFound: {
        ohms: ["A", "B"].flatMap((alone) =>
          lines.map((from, i) => ({
            from,
            to: lines[(i + 1) % 3] as string,
            reads: alone === "A" ? "30.72 Ω" : "92.16 Ω",
            alone,
          })),
        ),
      },
    });
    const said = running(record);
    expect(said).toMatch(/^Bank B linked as star, against the drawing/);
    expect(said).toContain("the elements of bank B carry a third of their power");
  });
});

describe("a neutral", () => {
  const wiring = { banks: [{ id: "A", connection: "star" }], neutral: "connected" } as const;
  const supply = { v12: "480 V", v23: "480 V", v31: "480 V" } as const;
  const currents = ["L1", "L2", "L3"].map((at) => ({ at, reads: "36.1 A" }));
  const ohms = ["L1", "L2", "L3"].map((from) => ({ from, to: "N", reads: "7.68 Ω" }));
  const instruments = { ohmmeter, clamp: { ofReading: 0.02, digits: 5 } } as const;
  const found = () => assessModule(module({ wiring, supply, instruments, asFound: { ohms, currents } }));
  it("is named among what is taken for granted, and comes off before a delta", () => {
    expect(found().assumptions.join(" ")).toContain("star points on the neutral");
    expect(found().whatIf[1]!.needs.join(" ")).toContain("star points off the neutral");
  });
  it("leaves line currents without a closed sum: no mean, no power from them", () => {
    const labels = found().asFound!.currents.map(({ label }) => label);
    expect(labels).toContain("line current L1");
    expect(labels).not.toContain("power from line currents");
    expect(found().asFound!.unbalance.every(({ label }) => !label.startsWith("line currents"))).toBe(true);
  });
});

describe("a sheet as text", () => {
  const found = () => assessModule(module({}));
  const figure = {
    label: "made up",
    value: 1,
    unit: "A",
    name: null,
    halfWidth: null,
    limit: null,
    verdict: null,
    basis: "invented",
    caution: null,
  } as const;
  const hardware = (figures: readonly object[]) =>
    assessmentText({
      ...found(),
      hardware: [
        { id: "studs", thread: "M8", count: 1, figures, notes: [], deferral: "The maker decides." },
      ] as never,
    });
  it("shows a value that is only a name, a limit without ends, and nothing for no figures", () => {
    const text = hardware([
      { ...figure, value: null, name: "as marked" },
      { ...figure, label: "free", limit: { low: null, high: null } },
    ]);
    expect(text).toMatch(/made up +as marked\n/);
    expect(text).toMatch(/free +1\.000 A\n/);
    expect(hardware([])).toContain("TORQUE: STUDS (1 × M8)\n  The maker decides.\n");
  });
  it("shows what nothing determines as unknown, and an empty table by its heads", () => {
    const [drawn] = found().whatIf;
    const row = { ...drawn!.rows[0]!, worst: null, gapVoltage: null };
    const text = assessmentText({
      ...found(),
      draw: null,
      notTested: [],
      whatIf: [{ ...drawn!, rows: [row] }],
    });
    expect(text).toMatch(/A-L1 .*none left +unknown, live\n/);
    expect(text).toContain("(BRANCHES AT TARGET)");
    expect(text).not.toContain("NOT TESTED");
    expect(assessmentText({ ...found(), whatIf: [{ ...drawn!, rows: [] }] })).toContain(
      "  opens  power  of full  hardest survivor  across break\n  ×",
    );
  });
  it("says that a dead module never comes to temperature, and that nothing is left to judge", () => {
    // All three branches of the only star open: Kirchhoff leaves no current anywhere.
    const degraded = degradedOptions({
      module: { banks: [{ id: "A", connection: "star", elementResistance: ohm(7.68) }] },
      supply: balancedSupply({ lineVoltage: volts(480) }),
      faults: ["L1", "L2", "L3"].map((line) => ({ kind: "open" as const, id: `A-${line}` })),
      oven: { ambient: celsius(20), lossConductance: wattsPerKelvin(100), structure: joulesPerKelvin(2e5) },
      target: celsius(200),
      shift: hours(8),
    });
    expect(degraded.options[1]).toMatchObject({ outcome: "dead", power: 0, worst: null, unbalance: null });
    expect(assessmentText({ ...found(), degraded })).toMatch(/leave as is +0 % +none left +never +-\n/);
  });
  it("names both sources where every branch is renewed", () => {
    const text = assessmentText(
      assessModule(module({ asFound: { ohms: atStar("10.00 Ω", "10.00 Ω", "10.00 Ω") } })),
    );
    expect(text).toContain("From measured resistances (as found) and nameplate");
  });
  it("shows branches without uncertainty and readings that a sound module has open", () => {
    const day = assessModule(
      module({
        asFound: { ohms: [...atStar("OL", "7.68 Ω", "7.68 Ω"), { from: "L1", to: "L2", reads: "15.36 Ω" }] },
      }),
    ).asFound!;
    const resistances = {
      ...day.resistances,
      branches: day.resistances.branches.map((one) => ({ ...one, resistance: ohm(7.5) as never })),
      expectedReadings: day.resistances.expectedReadings.map(() => "open" as const),
    };
    const text = assessmentText({ ...found(), asFound: { ...day, resistances } });
    expect(text).toMatch(/A-L1 +7\.50 Ω/);
    expect(text).toMatch(/L1 to L2 +15\.36 Ω .*OL/);
  });
});

describe("joints", () => {
  const joints = (...list: readonly object[]) =>
    assessModule(module({ asFound: { ohms: atStar("7.68 Ω", "7.68 Ω", "7.68 Ω"), joints: list as never } }));
  it("a hundred times the best are told in whole numbers, and their heat with them", () => {
    // 0.3 mV at 30 A is 10 µΩ; 60 mV is 2 mΩ and 1.8 W.
    const found = joints(
      { id: "a", drop: "0.30 mV", current: "30.0 A" },
      { id: "b", drop: "60.00 mV", current: "30.0 A" },
    );
    expect(flat(found.answer[0] as string)).toContain(
      "Joint b at 200 times the best like joint, 1.80 W in one contact",
    );
  });
  it("written as plain numbers without an instrument stand for themselves", () => {
    const [a] = joints({ id: "a", drop: 0.005, current: 30 }).asFound!.joints;
    expect([a!.halfWidth, a!.resistance]).toEqual([0, 0.005 / 30]);
  });
  it("seen only by their rise have no rule of drops beside them; a plain number has no last digit", () => {
    const found = joints({ id: "a", rise: 20, loadRatio: 1 }, { id: "b", rise: "3 K", loadRatio: 1 });
    expect(found.asFound!.joints.map(({ id, resistance }) => [id, resistance])).toEqual([
      ["a", null],
      ["b", null],
    ]);
    expect(found.asFound!.joints[0]!.rise!.measured).toBe(20);
    expect(assessmentText(found)).not.toContain("above the lowest like joint");
  });
  it("of which the best reads nothing to speak of are as bad as their lower end says", () => {
    // 0.1 mV ± 0.1 mV at 30 A has no least value above 0: no highest ratio either.
    const found = joints(
      { id: "a", drop: "0.1 mV", current: "30.0 A" },
      { id: "b", drop: "5.1 mV", current: "30.0 A" },
      { id: "c", drop: "0.2 mV", current: "30.0 A" },
    );
    const said = Object.fromEntries(found.asFound!.joints.map(({ id, comparison }) => [id, comparison]));
    expect(said).toEqual({ a: "like the best", b: "investigate", c: "undecided" });
  });
  it("that read nothing at all compare nothing", () => {
    const found = joints(
      { id: "b", drop: "0.0 mV", current: "30.0 A" },
      { id: "a", drop: "0.0 mV", current: "30.0 A" },
    );
    expect(found.asFound!.joints.map(({ id, ratioToBest }) => [id, ratioToBest])).toEqual([
      ["a", null],
      ["b", null],
    ]);
  });
  it.each([
    [{ id: "a", current: "30 A" }, "asFound.joints.0.drop"],
    [{ id: "a", drop: "5 mV" }, "asFound.joints.0.current"],
  ])("of half a reading are refused: %o", (one, path) => {
    expect(() => joints(one)).toThrow(path);
  });
});
