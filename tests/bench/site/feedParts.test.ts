/**
 * A feed's figures and the lookups that they rest on: value, place in print, cautions and doubts are handed on whole. What is expected is
 * asked of `wiring` here once more; what the tables print is held elsewhere (`feed.test.ts`, `tests/wiring`).
 */
import type { Figure, RecordFeed } from "electroheat/bench";
import {
  type CodeResult,
  cableCapacity,
  cableForLoad,
  conductorAmpacity,
  conductorForLoad,
  type DeviceKind,
  designCurrent,
  largestDevice,
  loadForCable,
  loadForConductor,
  standardDevice,
  subdivision,
  terminalTorque,
  terminationTemperature,
} from "electroheat/wiring";
import { describe, expect, it } from "vitest";
import { assessFeed } from "../../../src/bench/site/feed.ts";
import { figure, read } from "./made.ts";

type Part = CodeResult<unknown>;
const figuresOf = (feed: RecordFeed, current: number | null, ambient = "40 °C") => {
  const found = assessFeed(read({ feed, ambient }), current as never);
  if (found === null) throw new Error("no feed");
  return found;
};
const printed = ({ edition, table, row, column }: Part): string =>
  `${edition}, ${table}, row ${row}, column ${column}`;
const doubts = (...parts: readonly Part[]): string | null => {
  const said = [...new Set(parts.flatMap(({ warnings }) => warnings.map(({ message }) => message)))];
  return said.length === 0 ? null : said.join(" ");
};
const cautions = (...parts: readonly Part[]): readonly string[] => [
  ...new Set(parts.flatMap((one) => one.cautions)),
];
const verdict = (good: boolean): Figure["verdict"] => (good ? "within" : "outside");
const HEATERS = "Heaters alone are counted: motors and other loads on the same feed come on top.";
const NO_LOAD = "no nameplate: no line current";

describe("a North American feed", () => {
  const edition = "NEC 2023";
  const run = {
    edition,
    installation: "raceway",
    material: "copper",
    insulationTemperature: 75 as never,
    ambient: 40 as never,
    currentCarryingConductors: 3,
  } as const;
  const feed: RecordFeed = { edition, installation: "raceway", insulation: "75 °C" };
  const torqueOf = (size: string) => {
    const found = terminalTorque({ drive: { kind: "external hexagon" }, size });
    return {
      found,
      figure: figure(
        "torque of wire terminals with an external hexagon",
        found.value,
        "N·m",
        printed(found),
        {
          name: size,
          caution: ["Slotted screws and recessed sockets have other values.", doubts(found)]
            .filter(Boolean)
            .join(" "),
        },
      ),
    };
  };

  it.each([
    ["process heating", 36, "6 AWG", 50, 75],
    ["process heating", 43, "8 AWG", 60, 75],
    ["process heating", 40, "1 AWG", 100, 60],
    ["continuous load", 40, "3 AWG", 100, 75],
    ["space heating", 20, "10 AWG", 30, 60],
  ] as const)(
    "of %s, %d A, on %s and %d A, terminals of %d °C, is told as its parts are",
    (equipment, amps, size, device, terminals) => {
      const terminalTemperature = terminals as never;
      const [heaterCurrent, at] = [amps as never, { ...run, terminalTemperature }];
      const design = designCurrent({ edition, equipment, heaterCurrent });
      const choice = conductorForLoad({ ...at, equipment, heaterCurrent });
      const installed = conductorAmpacity({ ...at, size });
      const standard = standardDevice({ edition, current: design.value, direction: "up" });
      const largest = largestDevice({ edition, size, material: "copper", ampacity: installed.value });
      const split = subdivision({ edition, equipment, current: heaterCurrent });
      const permitted = loadForConductor({ ...at, size, equipment, subdivided: !split.required });
      const torque = torqueOf(size);
      const {
        figures,
        cautions: told,
        edition: by,
      } = figuresOf(
        { ...feed, equipment, conductor: size, device: `${device} A`, terminals: `${terminals} °C` },
        amps,
      );
      const label = "overcurrent device as installed";
      const byClass =
        permitted.device < largest.value
          ? permitted.cells.find(({ column }) => column === "subdivided device")
          : undefined;
      const unsplit = split.largestLoad;
      expect(figures).toEqual([
        figure(
          "design current",
          design.value,
          "A",
          `${printed(design)}: ${design.factor} times the line current at plate voltage`,
          {
            caution: doubts(design),
          },
        ),
        figure(
          "conductor as installed, ampacity",
          installed.value,
          "A",
          `${printed(installed)} (${installed.governing} governs); held against ${choice.value}, the smallest that serves`,
          {
            name: size,
            limit: {
              low: expect.closeTo(Math.min(design.value, choice.ampacity.value), 9) as never,
              high: null,
            },
            verdict: verdict(installed.value >= design.value),
            caution: doubts(installed),
          },
        ),
        figure(
          "conductor, smallest that serves",
          choice.ampacity.value,
          "A",
          `${printed(choice)} (${choice.governing} governs), device ${choice.device} A`,
          { name: choice.value, caution: doubts(choice) },
        ),
        figure(`${label}, for the load`, device, "A", printed(design), {
          limit: { low: design.value, high: null },
          verdict: verdict(device >= design.value),
        }),
        figure(
          `${label}, for the conductor`,
          device,
          "A",
          byClass === undefined ? `${printed(largest)} (${largest.governing})` : printed(byClass as never),
          { limit: { low: null, high: permitted.device }, verdict: verdict(device <= permitted.device) },
        ),
        figure(
          "temperature of the terminals",
          terminals,
          "°C",
          "mark of the terminals, as given in the record",
        ),
        ...(unsplit === null
          ? []
          : [
              figure("load of one protected circuit, if not split", amps, "A", printed(split), {
                limit: { low: null, high: unsplit },
                verdict: verdict(amps <= unsplit),
              }),
            ]),
        torque.figure,
      ]);
      expect(told).toEqual([
        ...new Set([
          HEATERS,
          ...cautions(design, choice, installed, standard, largest, permitted, split, torque.found),
        ]),
      ]);
      expect(by).toBe(edition);
    },
  );

  it("to be looked up shows what it takes, circuit by circuit", () => {
    // 90.2 A is more than one circuit of 48 A may carry (425.22(B)): two of 45.1 A.
    const [amps, equipment] = [90.2, "process heating"] as const;
    const heaterCurrent = amps as never;
    const design = designCurrent({ edition, equipment, heaterCurrent });
    const standard = standardDevice({ edition, current: design.value, direction: "up" });
    const terminal = terminationTemperature({ edition, circuitRating: standard.value });
    const at = { ...run, terminalTemperature: terminal.value };
    const choice = conductorForLoad({ ...run, terminalTemperature: "unmarked", equipment, heaterCurrent });
    const least = conductorAmpacity({ ...at, size: choice.value });
    const largest = largestDevice({ edition, size: choice.value, material: "copper", ampacity: least.value });
    const split = subdivision({ edition, equipment, current: heaterCurrent });
    const permitted = loadForConductor({ ...at, size: choice.value, equipment, subdivided: false });
    const torque = torqueOf(choice.value);
    const { figures, cautions: told } = figuresOf(feed, amps);
    expect(figures.slice(1)).toEqual([
      figure(
        "conductor, smallest that serves",
        choice.ampacity.value,
        "A",
        `${printed(choice)} (${choice.governing} governs), device ${choice.device} A`,
        { name: choice.value, caution: doubts(choice) },
      ),
      figure(
        "overcurrent device, smallest standard",
        standard.value,
        "A",
        `${printed(design)}; ${printed(standard)}`,
        {
          limit: { low: design.value, high: null },
        },
      ),
      figure(
        "largest device for the conductor",
        permitted.device,
        "A",
        `${printed(largest)} (${largest.governing})`,
      ),
      figure(
        "temperature of the terminals",
        terminal.value,
        "°C",
        `${printed(terminal)}: terminals without a mark`,
        {
          caution: cautions(terminal).join(" ") || null,
        },
      ),
      figure("load of one protected circuit, if not split", amps, "A", printed(split), {
        limit: { low: null, high: 48 },
        verdict: "outside",
        caution: "Split the elements into 2 protected circuits or more.",
      }),
      figure("protected circuits, at least", 2, "1", printed(split)),
      figure("load of each, equal circuits", 45.1, "A", printed(split)),
      figure("overcurrent device of each", split.device, "A", printed(split)),
      torque.figure,
    ]);
    expect(told).toEqual([
      ...new Set([HEATERS, ...cautions(design, choice, standard, largest, permitted, split, torque.found)]),
    ]);
  });

  it("without a plate says of each figure why it has none", () => {
    const none = (label: string, unit: string, caution: string | null) =>
      figure(label, null, unit, "not answered", { caution });
    expect(figuresOf(feed, null).figures).toEqual([
      none("design current", "A", NO_LOAD),
      none("conductor, smallest that serves", "A", NO_LOAD),
      none("overcurrent device, smallest standard", "A", NO_LOAD),
      none("temperature of the terminals", "°C", null),
      none("torque of wire terminals with an external hexagon", "N·m", null),
    ]);
    expect(figuresOf(feed, null).cautions).toEqual([HEATERS]);
    const unmarked = figuresOf({ ...feed, conductor: "3 AWG" }, null).figures;
    expect(unmarked[1]).toEqual(
      none(
        "conductor as installed, ampacity",
        "A",
        "unmarked terminals go by the rating of the circuit, which is not known",
      ),
    );
    const device = figuresOf({ ...feed, device: "100 A" }, null).figures;
    expect(device[2]).toEqual(
      figure(
        "overcurrent device as installed",
        100,
        "A",
        "as given in the record; nothing to hold it against",
      ),
    );
  });

  it("takes what the record leaves out: process heating, copper, three conductors, air of 30 °C", () => {
    const whole = { ...feed, terminals: "75 °C", conductor: "6 AWG", device: "50 A" };
    const named = { ...whole, equipment: "process heating", material: "copper", grouped: 3 };
    expect(figuresOf(whole, 36)).toEqual(figuresOf(named, 36));
    const bare = assessFeed(read({ feed: whole }), 36 as never);
    expect(bare?.figures).toEqual(figuresOf(whole, 36, "30 °C").figures);
    expect(bare?.cautions).toEqual([
      "No ambient in the record: air of 30 °C is taken; near the module it is hotter and the conductor carries less.",
      ...figuresOf(whole, 36, "30 °C").cautions,
    ]);
  });

  it("says why where the largest size does not serve, and holds what is installed against the load", () => {
    const { figures } = figuresOf({ ...feed, terminals: "75 °C", conductor: "500 kcmil" }, 3000, "30 °C");
    const [, installed, smallest] = figures;
    expect(installed).toMatchObject({
      limit: { low: 3750, high: null },
      verdict: "outside",
      name: "500 kcmil",
    });
    expect(installed?.caution).toContain(smallest?.caution);
    expect(installed?.basis).not.toContain("smallest that serves");
    expect(smallest).toMatchObject({ value: null, unit: "A", basis: "not answered" });
  });
});

describe("a feed of the IEC family", () => {
  const edition = "IEC 60364-5-52:2009";
  const base = {
    edition,
    method: "B2",
    loadedConductors: 3,
    insulation: "PVC",
    material: "copper",
    ambient: 40 as never,
  } as const;
  const feed: RecordFeed = { edition, installation: "B2", insulation: "PVC" };
  const BUNCHED =
    "How the group of circuits lies is not in the record: bunched is taken, the least favourable.";
  const FUSE =
    "Kind of the device not in the record: taken as a gG fuse, which asks for at least as much cable as a circuit-breaker.";
  const TORQUE = figure(
    "torque of wire terminals",
    null,
    "N·m",
    "the maker of the terminal; no table of the IEC family is held here",
  );
  const SMALLEST = "conductor, smallest that serves";

  it.each([
    [43.3, "16 mm²", 50, 1, "gG fuse"],
    [43.3, "10 mm²", 63, 1, "gG fuse"],
    [10, "4 mm²", 13, 1, "circuit-breaker"],
    [30, "25 mm²", 40, 2, "gG fuse"],
  ] as const)(
    "of %d A on %s and %d A, %d circuits, is told as its parts are",
    (amps, size, device, circuits, kind) => {
      const deviceKind: DeviceKind = kind;
      const run = { ...base, circuits, ...(circuits > 1 ? { arrangement: "bunched" } : {}) };
      const design = designCurrent({ edition, heaterCurrent: amps as never });
      const choice = cableForLoad({
        ...run,
        designCurrent: design.value,
        deviceKind,
        device: device as never,
      });
      const installed = cableCapacity({ ...run, size });
      const largest = loadForCable({ ...run, size, deviceKind });
      const { figures, cautions: told } = figuresOf(
        { ...feed, conductor: size, device: `${device} A`, grouped: circuits },
        amps,
      );
      const label = "overcurrent device as installed";
      expect(figures).toEqual([
        figure("design current", amps, "A", `${printed(design)}: 1 times the line current at plate voltage`, {
          caution: doubts(design),
        }),
        figure(
          "conductor as installed, ampacity",
          installed.value,
          "A",
          `${printed(installed)} (${installed.governing} governs); held against what a device of ${device} A asks for, smallest that serves ${choice.value}`,
          {
            name: size,
            limit: { low: choice.requiredCapacity, high: null },
            verdict: verdict(installed.value >= choice.requiredCapacity),
            caution: doubts(installed),
          },
        ),
        figure(
          SMALLEST,
          choice.capacity.value,
          "A",
          `${printed(choice)} (${choice.governing} governs), device ${device} A`,
          {
            name: choice.value,
            caution: doubts(choice),
          },
        ),
        figure(`${label}, for the load`, device, "A", `IB ≤ In by ${printed(design)}`, {
          limit: { low: amps, high: null },
          verdict: verdict(device >= amps),
        }),
        figure(`${label}, for the conductor`, device, "A", `In for this cable by ${printed(largest)}`, {
          limit: { low: null, high: largest.device },
          verdict: verdict(device <= largest.device),
          caution:
            kind === "gG fuse"
              ? FUSE
              : "Taken as a circuit-breaker: its rating is none of the preferred ones of gG fuses.",
        }),
        TORQUE,
      ]);
      expect(told).toEqual([
        ...new Set([
          HEATERS,
          ...(circuits > 1 ? [BUNCHED] : []),
          ...cautions(design, choice, installed, largest),
        ]),
      ]);
    },
  );

  it("to be looked up shows cable and device for the load", () => {
    const design = designCurrent({ edition, heaterCurrent: 30 as never });
    const choice = cableForLoad({ ...base, circuits: 1, designCurrent: design.value, deviceKind: "gG fuse" });
    const largest = loadForCable({ ...base, circuits: 1, size: choice.value, deviceKind: "gG fuse" });
    expect(figuresOf(feed, 30).figures.slice(1)).toEqual([
      figure(
        SMALLEST,
        choice.capacity.value,
        "A",
        `${printed(choice)} (${choice.governing} governs), device ${choice.device} A`,
        { name: choice.value, caution: doubts(choice) },
      ),
      figure("overcurrent device, smallest preferred", choice.device, "A", `IB ≤ In by ${printed(design)}`, {
        limit: { low: 30, high: null },
      }),
      figure(
        "largest device for the conductor",
        largest.device,
        "A",
        `In for this cable by ${printed(largest)}`,
        {
          caution: FUSE,
        },
      ),
      TORQUE,
    ]);
  });

  it("without a plate, or beyond the largest cable, says why", () => {
    const none = (label: string, caution: string) => figure(label, null, "A", "not answered", { caution });
    expect(figuresOf(feed, null).figures).toEqual([
      none("design current", NO_LOAD),
      none(SMALLEST, NO_LOAD),
      none("overcurrent device, smallest preferred", NO_LOAD),
      TORQUE,
    ]);
    const far = figuresOf({ ...feed, conductor: "25 mm²" }, 2000).figures;
    const why = far[2]?.caution as string;
    expect(why.length).toBeGreaterThan(20);
    expect(far[2]).toEqual(none(SMALLEST, why));
    expect(far[1]).toMatchObject({ limit: { low: 2000, high: null }, verdict: "outside" });
    expect(far[1]?.caution).toContain(why);
    expect(far[3]).toEqual(none("overcurrent device, smallest preferred", why));
  });

  it("in the ground is taken at its base, 20 °C, whatever the air, and by the edition that has such cables", () => {
    // IEC 60364-5-52:2001 has method D at 20 °C: copper, PVC, three loaded, 16 mm² 67 A (Table 52-C3, from memory).
    const ground: RecordFeed = {
      ...feed,
      edition: "IEC 60364-5-52:2001",
      installation: "D",
      conductor: "16 mm²",
    };
    const found = figuresOf(ground, 36, "55 °C");
    expect(found.figures[1]).toMatchObject({
      label: "conductor as installed, ampacity",
      value: 67,
      name: "16 mm²",
    });
    expect(found.cautions[0]).toBe("The ground is taken at 20 °C.");
  });
});
