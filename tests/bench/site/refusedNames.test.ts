/**
 * Whatever a section of the record holds within the limits of the record, what is refused is a field of the record, under its own path. The
 * limits are those of `tests/bench/recordLimits.test.ts`; which slips there are follows from what the fields mean.
 */
import { balancedSupply } from "electroheat/circuit";
import { type Issue, isElectroheatError } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { assessBars } from "../../../src/bench/site/bars.ts";
import { assessDegraded } from "../../../src/bench/site/degraded.ts";
import { assessFeed } from "../../../src/bench/site/feed.ts";
import { assessHardware } from "../../../src/bench/site/hardware.ts";
import { branch, day, read, refused } from "./made.ts";

/** Paths of what is refused; none where nothing is. */
function pathsOf(run: () => unknown): string[] {
  let issues: readonly Pick<Issue, "path" | "message">[] = [];
  try {
    run();
  } catch (error) {
    if (!isElectroheatError(error)) throw error;
    issues = error.issues;
  }
  for (const { path, message } of issues) expect(message.startsWith(`${path}: `), message).toBe(true);
  return issues.map(({ path }) => path);
}

const SIZES = [1e-9, 1e-6, 1, 1e6, 1e12];
const bar = {
  id: "b",
  studs: 3,
  count: 2,
  pitch: 0.045,
  overhang: 0.012,
  width: 0.02,
  thickness: 0.003,
  hole: 0.0085,
};
const feeds = {
  american: {
    edition: "NEC 2023",
    installation: "raceway",
    insulation: "75 °C",
    terminals: "75 °C",
    conductor: "6 AWG",
  },
  cable: { edition: "IEC 60364-5-52:2009", installation: "B2", insulation: "PVC", conductor: "16 mm²" },
} as const;
const process = {
  target: 200,
  lossConductance: 115,
  heatCapacity: 316e3,
  shift: 28_800,
  shifts: 3,
  tariff: 0.2,
};

describe("a refusal names a field of the record", () => {
  it.each([
    ["pitch", ["bars.0.pitch"]],
    ["overhang", ["bars.0.overhang"]],
    ["width", ["bars.0.hole"]],
    ["thickness", []],
    ["hole", ["bars.0.overhang"]],
    ["kerf", []],
  ] as const)("of bars with another %s", (field, expected) => {
    const paths = SIZES.flatMap((value) =>
      pathsOf(() => assessBars(read({ bars: [{ ...bar, [field]: value }] }), 72 as never)),
    );
    expect([...new Set(paths)]).toEqual(expected);
  });

  it.each(["studs", "count"])("of ten thousand %s", (field) => {
    expect(pathsOf(() => assessBars(read({ bars: [{ ...bar, [field]: 10_000 }] }), null))).toEqual([
      `bars.0.${field}`,
    ]);
  });

  it.each([
    ["target", ["process.target"]],
    ["lossConductance", []],
    ["heatCapacity", []],
    // 1e12 s of full power are more joules than anything is measured in.
    ["shift", ["process.shift"]],
    ["tariff", []],
  ] as const)("of a process with another %s", (field, expected) => {
    const asFound = day([
      branch("A-L1", "open"),
      branch("A-L2", "sound"),
      branch("A-L3", "sound"),
    ]).resistances;
    const hot = { repaired: new Map(["A-L1", "A-L2", "A-L3"].map((id) => [id, 7.68 as never])) };
    const supply = balancedSupply({ lineVoltage: 480 as never });
    const paths = (field === "target" ? [-273.15, 20, 21, 3000] : SIZES).flatMap((value) =>
      pathsOf(() =>
        assessDegraded({ record: read({ process: { ...process, [field]: value } }), asFound, hot, supply }),
      ),
    );
    expect([...new Set(paths)]).toEqual(expected);
  });

  it.each(Object.entries(feeds))("of a feed with another figure: %s", (name, feed) => {
    const of = (more: object, ambient: number) =>
      pathsOf(() => assessFeed(read({ feed: { ...feed, ...more }, ambient }), 36 as never));
    for (const device of SIZES) expect(of({ device }, 30)).toEqual([]);
    for (const grouped of [1, 9, 20, 10_000]) expect(of({ grouped }, 30)).toEqual([]);
    for (const ambient of [-273.15, 0, 75, 90, 3000]) expect(of({}, ambient)).toEqual([]);
    for (const terminals of [-273.15, 70])
      expect(of({ terminals }, 30)).toEqual(name === "american" ? ["feed.terminals"] : []);
  });

  it.each(
    Object.entries(feeds).flatMap(([name, feed]) =>
      ["edition", "installation", "insulation", "conductor", "material", "equipment"].map(
        (field) => [name, field, feed] as const,
      ),
    ),
  )("of a feed with an unknown name: %s %s", (name, field, feed) => {
    // The IEC family has no classes of equipment.
    const expected = name === "cable" && field === "equipment" ? [] : [`feed.${field}`];
    expect(
      pathsOf(() => assessFeed(read({ feed: { ...feed, [field]: "x" }, ambient: 30 }), 36 as never)),
    ).toEqual(expected);
  });

  it("of an edition that nobody holds, with the names of both families, whole", () => {
    const [only, ...rest] = refused(() =>
      assessFeed(read({ feed: { ...feeds.american, edition: "x" } }), null),
    );
    expect(rest).toEqual([]);
    expect(only).toMatchObject({ code: "unknown-name", path: "feed.edition" });
    expect(only?.message).toMatch(
      /^feed\.edition: "x" is not allowed; expected one of NEC .+ or one of IEC .+/,
    );
  });

  it.each(["1/99-99", "M6x6", "M6x7", "M7", "a1/4-20", "##10-32", "M6x", "1/4-20 UNX", "M8x1.", "xM8"])(
    "of a thread that cannot be: %s",
    (thread) => {
      expect(pathsOf(() => assessHardware(read({ hardware: [{ id: "h", thread }] })))).toEqual([
        "hardware.0.thread",
      ]);
    },
  );

  it.each(["makerTorque", "applied"])("of no %s at all: any that can be measured is judged", (field) => {
    for (const value of SIZES)
      expect(
        pathsOf(() => assessHardware(read({ hardware: [{ id: "h", thread: "M6", [field]: value }] }))),
      ).toEqual([]);
  });
});
