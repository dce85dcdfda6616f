/**
 * Figures of hardware, bars and insulation and the lookups that they rest on: values, bands, sources, doubts and who decides are handed on
 * whole. What is expected is asked of `joint` and `wiring` here once more, or worked out by hand beside it; what the tables print is held
 * elsewhere (`hardware.test.ts`, `tests/joint`, `tests/wiring`).
 */
import type { Figure, RecordBars, RecordFastening } from "electroheat/bench";
import {
  barResistance,
  barTemperature,
  cutList,
  fastenerStrength,
  hardwareNotes,
  JOINT_DEFERRAL,
  metricThread,
  nutFactorRange,
  preloadBand,
  retighteningNote,
  tightening,
  tighteningTorque,
} from "electroheat/joint";
import { COPPER_IACS } from "electroheat/material";
import { insulationVerdicts } from "electroheat/wiring";
import { describe, expect, it } from "vitest";
import { assessBars } from "../../../src/bench/site/bars.ts";
import { assessHardware } from "../../../src/bench/site/hardware.ts";
import { assessInsulation } from "../../../src/bench/site/insulation.ts";
import { threadOf } from "../../../src/bench/site/threads.ts";
import { figure, read, refused, the } from "./made.ts";

const close = (value: number): never => expect.closeTo(value, 9) as never;
const source = ({
  source: id,
  edition,
  table,
  kind,
}: {
  source: string;
  edition: string;
  table: string;
  kind: string;
}) => `${table} (${id}, ${edition}; ${kind})`;
const said = (warnings: readonly { readonly message: string }[]): string | null =>
  warnings.length === 0 ? null : warnings.map(({ message }) => message).join(" ");
const TOOL = "±10 % for tool and reading (common practice, no published source)";

describe("hardware", () => {
  const assess = (one: Omit<RecordFastening, "id">) => {
    const [only] = assessHardware(read({ hardware: [{ id: "studs", ...one }] }));
    if (only === undefined) throw new Error("nothing assessed");
    return only;
  };
  const steel = { standard: "ISO 898-1", grade: "8.8" } as const;
  const strength = fastenerStrength({ ...steel, diameter: 0.006 as never });
  const thread = metricThread("M6");
  const nut = nutFactorRange("dry steel");

  /** Preload, share of proof and twist of M6 in 8.8. */
  const atTorque = (torque: number, words: string, condition: string | null): readonly Figure[] => {
    const { low, high, basis, warnings } =
      condition === null ? nut : nutFactorRange(condition as "dry steel");
    const factors = { nutFactorLow: low, nutFactorHigh: high };
    const { diameter, stressArea } = thread;
    const band = preloadBand({ torque: torque as never, diameter, ...factors });
    const done = tightening({
      torque: torque as never,
      diameter,
      stressArea,
      ...factors,
      strength: strength.limit,
    });
    const assumed = condition === null ? ["Condition of the thread not in the record: dry steel taken."] : [];
    const judged = ({ value, halfWidth, low: from, high: to, verdict }: typeof done.proof) => ({
      value,
      more: { halfWidth, limit: { low: from, high: to }, verdict },
    });
    const [proof, twist] = [judged(done.proof), judged(done.yielding)];
    return [
      figure(
        `preload ${words}`,
        (band.low + band.high) / 2,
        "N",
        `F = torque/(K·d), K ${low} to ${high} for ${condition ?? "dry steel"}: ${source(basis)}; worst case`,
        {
          halfWidth: (band.high - band.low) / 2,
          caution: [...assumed, ...warnings.map(({ message }) => message)].join(" ") || null,
        },
      ),
      figure(
        `share of proof load ${words}`,
        proof.value,
        "1",
        `${source(done.proofBasis)}; strength ${source(strength.basis)}; ${source(thread.basis)}`,
        { ...proof.more, caution: said(strength.warnings) },
      ),
      figure(`tension and twist over strength, ${words}`, twist.value, "1", source(done.yieldingBasis), {
        ...twist.more,
        caution: said(done.warnings),
      }),
    ];
  };

  it("at a torque of the maker that was not applied is told whole, at both torques", () => {
    const found = assess({
      thread: "M6",
      count: 6,
      strength: steel,
      makerTorque: "6.0 N·m",
      applied: "5.0 N·m",
    });
    const basis = `torque of the maker, as given in the record; ${TOOL}`;
    expect([found.id, found.thread, found.count, found.deferral]).toEqual(["studs", "M6", 6, JOINT_DEFERRAL]);
    expect(found.figures).toEqual([
      figure("torque to use", 6, "N·m", basis, {
        name: "maker",
        limit: { low: close(5.4), high: close(6.6) },
      }),
      ...atTorque(6, "at the torque to use", null),
      figure("torque applied", 5, "N·m", basis, {
        halfWidth: close(0.05),
        limit: { low: close(5.4), high: close(6.6) },
        verdict: "outside",
      }),
      ...atTorque(5, "at the torque applied", null),
    ]);
  });

  it("as the table has it and as it was applied is told once", () => {
    const printed = tighteningTorque({ table: "switchgear-metric", size: "M6", column: "mainCircuit" });
    const found = assess({ thread: "M6", strength: steel, condition: "zinc-flake", applied: 6.5 });
    expect(found.count).toBe(1);
    const [toUse, ...rest] = found.figures;
    expect(toUse).toMatchObject({
      value: printed.torque,
      name: printed.kind,
      caution: said(printed.warnings),
    });
    expect(toUse?.basis.startsWith(`${source(printed.basis)}; ${TOOL}`)).toBe(true);
    expect(rest).toEqual([
      ...atTorque(printed.torque, "at the torque to use", "zinc-flake"),
      figure("torque applied", 6.5, "N·m", toUse?.basis ?? "", {
        halfWidth: 0,
        limit: toUse?.limit ?? null,
        verdict: "within",
      }),
    ]);
  });

  it("of unknown strength has a preload, and says why no share of proof", () => {
    const { figures } = assess({ thread: "M6" });
    const [preload] = atTorque(6.5, "at the torque to use", null);
    expect(figures.slice(1)).toEqual([
      preload,
      figure("share of proof load at the torque to use", null, "1", "not judged", {
        caution: "no strength standard and class in the record",
      }),
    ]);
    const grade = { standard: "SAE J429", grade: "5" };
    const small = assess({ thread: "10-32", strength: grade, makerTorque: "2.0 N·m" });
    const share = the(small.figures, "share of proof load at the torque to use");
    expect(share).toEqual(figure(share.label, null, "1", "not judged", { caution: share.caution }));
    expect(share.caution).toContain("a size the standard gives 5 for");
  });

  it("without any torque to use says so, with what was applied beside it", () => {
    const { figures } = assess({ thread: "M39x3", applied: "12 N·m" });
    const nothing =
      "no torque of the maker, no table that holds for this thread and its condition, no strength to work it out from";
    expect(figures.slice(0, 2)).toEqual([
      figure("torque to use", null, "N·m", nothing),
      figure("torque applied", 12, "N·m", "as given in the record; nothing to hold it against", {
        halfWidth: 0.5,
      }),
    ]);
    expect(figures.slice(2).map(({ label }) => label)).toEqual([
      "preload at the torque applied",
      "share of proof load at the torque applied",
    ]);
  });

  it("of brass goes by the one table that covers it, whatever is printed for other metals", () => {
    // 1/4-20: the telecom manuals' minimum for nuts, 65 lbf·in; bus bolts of bronze or stainless have more.
    const minimum = tighteningTorque({ table: "telecom-minimum", size: "1/4-20", column: "nut" });
    const brass = { standard: "brass C36000", grade: "H04 rod 1/4 in" };
    const toUse = the(
      assess({ thread: "1/4-20", strength: brass, condition: "dry stainless on stainless" }).figures,
      "torque to use",
    );
    expect([toUse.value, toUse.name]).toEqual([close(minimum.torque), "minimum"]);
    expect(toUse.basis.startsWith(source(minimum.basis))).toBe(true);
  });

  it("of a thread between the sizes has its area from diameter and pitch", () => {
    // ISO 898-1: π/4·(d − 0.9382·P)², d 12.75 mm, P 1 mm.
    const { diameter, stressArea, name } = threadOf("M12.75x1");
    expect([name, diameter]).toEqual(["M12.75x1", close(0.01275)]);
    expect(stressArea / ((Math.PI / 4) * (12.75e-3 - 0.938194e-3) ** 2)).toBeCloseTo(1, 5);
  });

  it("has every note of washers and retightening, with what it rests on", () => {
    const notes = [
      ...hardwareNotes("flat washer").slice(0, 1),
      ...hardwareNotes("conical washer").slice(0, 2),
      ...hardwareNotes("star washer").slice(0, 1),
      ...(["never-as-routine", "periodic-busway", "measure-and-remake"] as const).map(retighteningNote),
    ];
    const restsOn = ({ kind, source: id }: (typeof notes)[number]): string =>
      id.startsWith(kind) ? id : `${kind}: ${id}`;
    expect(assess({ thread: "M6" }).notes).toEqual(
      notes.map((note) => `${note.statement} (${restsOn(note)})`),
    );
  });

  it.each([
    [{ thread: "M6", condition: "wet" }, "hardware.0.condition"],
    [{ thread: "M6", strength: { standard: "our own", grade: "8.8" } }, "hardware.0.strength.standard"],
    [{ thread: "M6", strength: { standard: "ISO 898-1", grade: "9.9" } }, "hardware.0.strength.grade"],
  ] as const)("is refused in the record's names: %o", (one, path) => {
    const issues = refused(() => assess(one));
    expect(issues).toHaveLength(1);
    expect(issues[0]).toMatchObject({ path, code: "unknown-name" });
    expect(issues[0]?.message.startsWith(`${path}: "`)).toBe(true);
  });

  it("of a thread that cannot be read says which are", () => {
    const [only] = refused(() => assess({ thread: "bolt" }));
    expect(only?.message).toBe(
      'hardware.0.thread: "bolt" is not allowed; expected a metric thread ("M6", "M8x1") or a unified one ("1/4-20", "#10-32")',
    );
  });
});

describe("bars", () => {
  const bar = {
    ...{ id: "line bar", count: 3, studs: 3, pitch: "45 mm", overhang: "12 mm" },
    ...{ width: "20 mm", thickness: "3 mm", hole: "8.5 mm", kerf: "2 mm" },
  } as const;
  const assess = (more: Partial<RecordBars>, current: number | null, ambient?: string) => {
    const found = assessBars(
      read({ bars: [{ ...bar, ...more }], ...(ambient ? { ambient } : {}) }),
      current as never,
    );
    return found[0] as (typeof found)[number];
  };
  const law = COPPER_IACS.resistivity as never as {
    readonly resistivity: number;
    readonly coefficient: number;
  };
  const section = { width: 0.02 as never, thickness: 0.003 as never };
  const physics = { resistivity20: law.resistivity as never, coefficient20: law.coefficient as never };
  const RISE = "rise of the bar by its own heat, plate current";
  const BALANCE =
    "heat balance of a bare bar on edge in still air; at most the rise that DIN 43671 sizes bars by";
  const ALONE =
    "As if one bar carried all of the line current, without the heat of its joints, the elements or the box: those come on top.";

  it.each([
    ["40 °C", 40],
    [undefined, 20],
  ] as const)("in air of %s are told whole", (ambient, air) => {
    const { id, count, length, stock, mass, figures } = assess({}, 72.17, ambient);
    const cut = cutList({
      ...{ studs: 3, pitch: 0.045 as never, overhang: 0.012 as never, bars: 3, kerf: 0.002 as never },
      ...section,
      density: COPPER_IACS.density?.value as never,
    });
    expect({ length, stock, mass }).toEqual({
      length: close(cut.length),
      stock: close(cut.stock),
      mass: close(cut.mass),
    });
    expect([id, count]).toEqual(["line bar", 3]);
    const { temperature } = barTemperature({
      bar: { ...section, emissivity: 0.4, air: air as never, ...physics },
      current: 72.17 as never,
    });
    const resistance = barResistance({
      ...section,
      ...physics,
      temperature: 20 as never,
      length: 0.09 as never,
    });
    // (20 − 8.5) × 3 mm².
    expect(figures).toEqual([
      figure("section net of the hole", close(34.5e-6), "m²", "(width − hole)·thickness"),
      figure(
        "current density at plate current",
        expect.closeTo(72.17 / 34.5e-6, 3) as never,
        "A/m²",
        "line current at plate voltage over net section, as if one bar carried all of it",
      ),
      figure(RISE, expect.closeTo(temperature - air, 6) as never, "K", BALANCE, {
        limit: { low: null, high: 30 },
        verdict: "within",
        caution: ALONE,
      }),
      figure(
        "resistance of a bar, first stud to last, 20 °C",
        expect.closeTo(resistance, 12) as never,
        "Ω",
        "R = ρ·length/(width·thickness), copper of 100 % IACS (IEC 60028); joints not in it",
      ),
    ]);
  });

  it("without plate, hole, count or kerf say so, and take one bar and 3 mm a cut", () => {
    const { hole: _, kerf: __, count: ___, ...bare } = bar;
    const [found] = assessBars(read({ bars: [bare] }), null);
    expect(found?.count).toBe(1);
    // 2·45 + 2·12 mm, and one cut.
    expect(found?.stock).toBeCloseTo(0.117, 12);
    expect(found?.figures.slice(0, 2)).toEqual([
      figure("section net of the hole", close(60e-6), "m²", "no hole in the record: full section"),
      figure(
        "current density at plate current",
        null,
        "A/m²",
        "no plate current: no nameplate in the record",
      ),
    ]);
    expect(found?.figures).toHaveLength(3);
  });

  it("that would melt are outside, without a figure", () => {
    const caution = `It balances at no temperature up to 1000 °C: the bar is far too small. ${ALONE}`;
    expect(the(assess({ thickness: "0.05 mm" }, 350).figures, RISE)).toEqual(
      figure(RISE, null, "K", BALANCE, { limit: { low: null, high: 30 }, verdict: "outside", caution }),
    );
    // Air beyond what the balance is good for is no verdict on the bar.
    const hot = the(assess({}, 72.17, "1100 °C").figures, RISE);
    expect(hot).toMatchObject({ value: null, limit: null, verdict: null });
    expect(hot.caution?.endsWith(`. ${ALONE}`)).toBe(true);
  });

  it.each([
    [
      { overhang: "4 mm" },
      "overhang",
      0.004,
      "more than half the hole, 0.00425: else the hole runs out of the bar's end",
    ],
    [{ pitch: "8 mm" }, "pitch", 0.008, "more than the hole, 0.0085: else one hole runs into the next"],
    [{ pitch: "8.5 mm" }, "pitch", 0.0085, "more than the hole, 0.0085: else one hole runs into the next"],
  ] as const)("whose hole has no metal round it are refused: %o", (more, field, shown, expected) => {
    const [only] = refused(() => assess(more, null));
    expect(only).toMatchObject({ code: "inconsistent", path: `bars.0.${field}`, unit: "m" });
    expect(only?.message).toContain(`bars.0.${field}: ${shown} m is not allowed; expected ${expected}`);
  });

  it("are all told of in one refusal, under their places", () => {
    const bars = [
      bar,
      { ...bar, hole: "20 mm" },
      { ...bar, studs: 2, count: 9000, kerf: "900 m" },
      { ...bar, pitch: "8 mm" },
    ];
    const paths = refused(() => assessBars(read({ bars }), null)).map(({ path }) => path);
    expect(paths[0]).toBe("bars.1.hole");
    expect(paths.at(-1)).toBe("bars.3.pitch");
  });
});

describe("insulation", () => {
  const CRITERIA = [
    ...["1 MΩ per kV", "IEC 60364-6", "IEC 60364-6 SELV or PELV", "IEC 60204-1", "NETA 100.1"],
    ...["maker assembly", "maker element", "maker production", "maker storage"],
  ] as const;
  const reading = (reads: string, testVoltage: string | undefined) =>
    read({ asFound: { insulation: [{ from: "L2", reads, ...(testVoltage ? { testVoltage } : {}) }] } })
      .asFound?.insulation;

  it.each([
    ["1.3 MΩ", "500 V", 480, 1],
    ["250 MΩ", "250 V", 480, 6],
    ["30 MΩ", undefined, 400, 3],
    ["0.4 MΩ", "250 V", 48, 1],
  ] as const)(
    "of %s at %s, %d V, %d elements, is told as each limit is",
    (reads, testVoltage, volts, elements) => {
      const found = assessInsulation(reading(reads, testVoltage), volts as never, { elements });
      const value = Number.parseFloat(reads) * 1e6;
      const halfWidth = reads.includes(".") ? 0.05e6 : 0.5e6;
      const test = testVoltage === undefined ? undefined : Number.parseFloat(testVoltage);
      const expected = CRITERIA.flatMap((criterion): Figure[] => {
        let one: ReturnType<typeof insulationVerdicts>[number] | undefined;
        try {
          [one] = insulationVerdicts({
            ...{ resistance: value as never, halfWidth: halfWidth as never, nominalVoltage: volts as never },
            ...{
              testVoltage: (test ?? volts) as never,
              temperature: 20 as never,
              elementsInParallel: elements,
            },
            criteria: [criterion as never],
          });
        } catch {
          return [];
        }
        if (one === undefined) return [];
        const about = one.warnings.filter(({ path }) => path !== "testVoltage" || test !== undefined);
        const short = about.some(({ path, limit = 0 }) => path === "testVoltage" && (test ?? 0) < limit);
        const within = value - halfWidth >= one.minimum;
        const outside = value + halfWidth < one.minimum;
        return [
          figure(
            `insulation at L2, ${criterion}`,
            value,
            "Ω",
            `${one.edition}, ${one.table}, row ${one.row}, column ${one.column}; ${one.kind}`,
            {
              halfWidth: close(halfWidth),
              limit: { low: one.minimum, high: null },
              verdict: within ? (short ? "undecided" : "within") : outside ? "outside" : "undecided",
              caution: [
                ...new Set([
                  ...about.map(({ message }) => message),
                  ...(test === undefined ? ["The test voltage is not in the record."] : []),
                  "Not corrected for temperature.",
                ]),
              ].join(" "),
            },
          ),
        ];
      });
      expect(expected.length).toBeGreaterThan(6);
      expect(found).toEqual(expected);
    },
  );

  it("of a module without a voltage is held against the floor alone, and shown", () => {
    const found = assessInsulation(reading("3.0 MΩ", "500 V"), null);
    const [floor] = assessInsulation(reading("3.0 MΩ", "500 V"), 230 as never).filter(({ label }) =>
      label.endsWith("IEC 60204-1"),
    );
    const unknown = "The voltage is not known: only the limit that does not depend on it is judged.";
    expect(found).toEqual([
      { ...floor, caution: `${unknown} ${floor?.caution}` },
      figure("insulation at L2", 3e6, "Ω", "not judged by the other limits: the voltage is not known"),
    ]);
  });

  it("above the range of the tester is open to every limit", () => {
    const open = assessInsulation(reading("OL", "1000 V"), 480 as never);
    const high = assessInsulation(reading("900 MΩ", "1000 V"), 480 as never);
    expect(open.map(({ label, limit, basis }) => ({ label, limit, basis }))).toEqual(
      high.map(({ label, limit, basis }) => ({ label, limit, basis })),
    );
    for (const [i, { value, verdict, halfWidth, caution }] of open.entries()) {
      expect([value, verdict, halfWidth]).toEqual(["open", "undecided", null]);
      expect(caution).toBe(
        `The reading lies above the range of the tester, which is not in the record: note the range, as in ">550 MΩ". ${high[i]?.caution}`,
      );
    }
  });
});
