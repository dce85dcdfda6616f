/**
 * A feed whose conductors lie in parallel. Sources: cells of Table 310.16 and Table 310.15(C)(1), of Table B.52.4 (method C, three loaded
 * conductors) and B.52.17 (bunched), multiplied by hand beside each check; rules as in tests/wiring/parallel.test.ts.
 */
import type { Figure, RecordFeed } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { assessFeed } from "../../../src/bench/site/feed.ts";
import { read, the } from "./made.ts";

const SMALLEST = "conductor, smallest that serves";
const INSTALLED = "conductor as installed, ampacity";
const FOR_CONDUCTOR = "overcurrent device as installed, for the conductor";
const TOGETHER =
  "How the sets of conductors in parallel lie is not in the record: all side by side in one raceway or group are taken, the least favourable.";

const assess = (feed: RecordFeed, current: number) => {
  const found = assessFeed(read({ feed, ambient: "30 °C" }), current as never);
  if (found === null) throw new Error("no feed");
  return found;
};
const shown = ({ name, value, verdict }: Figure) => [name, value, verdict];
const rootThree = Math.sqrt(3);

describe("North American feed", () => {
  const feed: RecordFeed = {
    edition: "NEC 2023",
    installation: "raceway",
    insulation: "90 °C",
    terminals: "75 °C",
  };

  it("judges two sets as installed, all in one raceway where nobody says", () => {
    // 300 kW on 480 V: 360.84 A, 451.05 A by design. 250 kcmil: 290 A · 0.8 (six conductors) · 2 is 464 A; 4/0 AWG: 260 A · 0.8 · 2 is 416 A.
    const load = 300_000 / (480 * rootThree);
    const as = (conductor: string, grouped?: number) =>
      assess(
        { ...feed, conductor, conductorsPerLine: 2, device: "500 A", ...(grouped && { grouped }) },
        load,
      );
    const good = as("250 kcmil");
    expect(shown(the(good.figures, INSTALLED))).toEqual(["2 × 250 kcmil per line", 464, "within"]);
    expect(the(good.figures, INSTALLED).limit?.low).toBeCloseTo(451.0549, 3);
    expect(shown(the(good.figures, SMALLEST))).toEqual(["2 × 250 kcmil per line", 464, null]);
    // The next rating up from 464 A is 500 A, from 416 A it is 450 A.
    expect(the(good.figures, FOR_CONDUCTOR)).toMatchObject({ verdict: "within", limit: { high: 500 } });
    expect(good.cautions).toContain(TOGETHER);
    expect(good.cautions.join()).toMatch(/share the current only where they are alike/);

    const small = as("4/0 AWG");
    expect(shown(the(small.figures, INSTALLED))).toEqual(["2 × 4/0 AWG per line", 416, "outside"]);
    expect(the(small.figures, INSTALLED).basis).toContain(
      "held against 2 × 250 kcmil per line, the smallest that serves",
    );
    expect(the(small.figures, FOR_CONDUCTOR)).toMatchObject({ verdict: "outside", limit: { high: 450 } });

    // In raceways of their own the same conductors carry 2 · 230 A, and the figure says what was taken.
    const apart = as("4/0 AWG", 3);
    expect(shown(the(apart.figures, INSTALLED))).toEqual(["2 × 4/0 AWG per line", 460, "within"]);
    expect(the(apart.figures, INSTALLED).caution).toMatch(/each set is taken to have a raceway of its own/);
    expect(apart.cautions).not.toContain(TOGETHER);
  });

  it("does not answer for conductors too small to be in parallel", () => {
    const found = assess({ ...feed, conductor: "1 AWG", conductorsPerLine: 2 }, 150);
    const installed = the(found.figures, INSTALLED);
    expect(shown(installed)).toEqual([null, null, null]);
    expect(installed.caution).toMatch(/1\/0 AWG or larger/);
    expect(the(found.figures, SMALLEST).name).toBe("2 × 1/0 AWG per line");
  });

  it("looks for as few sets as serve where no single size does", () => {
    // 500 kW on 480 V: 601.41 A, 751.76 A by design, device 800 A; the largest size has 665 A at the terminal.
    // Two: 600 kcmil 475 A · 0.8 · 2 is 760 A; 500 kcmil 430 A · 0.8 · 2 is 688 A, next size up 700 A.
    const found = assess(feed, 500_000 / (480 * rootThree));
    expect(shown(the(found.figures, SMALLEST))).toEqual(["2 × 600 kcmil per line", 760, null]);
    expect(the(found.figures, SMALLEST).basis).toContain("device 800 A");
    expect(the(found.figures, "largest device for the conductor").value).toBe(800);
    expect(found.cautions).toContain(TOGETHER);
    // 1200 A: 1500 A by design, device 1600 A, above 800 A not rounded up. Three sets: 0.70 for nine conductors;
    // 1500 kcmil 705 A · 0.7 · 3 is 1480.5 A, 1750 kcmil 735 A · 0.7 · 3 is 1543.5 A, 2000 kcmil 750 A · 0.7 · 3 is 1575 A: none carries it.
    const none = assess(feed, 1200);
    expect(the(none.figures, SMALLEST).value).toBe(null);
    expect(the(none.figures, SMALLEST).caution).toMatch(/a size of Table 310.16 carries/);
    expect(none.cautions).not.toContain(TOGETHER);
    // 950 A: 1187.5 A, device 1200 A. Two sets: 2000 kcmil 750 A · 0.8 · 2 is 1200 A. It is the last.
    expect(shown(the(assess(feed, 950).figures, SMALLEST))).toEqual(["2 × 2000 kcmil per line", 1200, null]);
  });

  it("three sets where two do not serve, beside what shares the raceway", () => {
    // Six conductors of others: with two sets twelve share the raceway, with three fifteen, 0.50 both.
    const found = assess({ ...feed, equipment: "feeder", grouped: 9 }, 640);
    // 640 A · 1.25 is 800 A, device 800 A: two sets of 1500 kcmil 705 A · 0.5 · 2 is 705 A, next size up 800 A; of
    // 1250 kcmil 665 A, next size up 700 A.
    expect(shown(the(found.figures, SMALLEST))).toEqual(["2 × 1500 kcmil per line", 705, null]);
    // 700 A: 875 A, device 1000 A, not rounded up above 800 A. Three: 1250 kcmil 665 A · 0.5 · 3 is 997.5 A, 1500 kcmil 705 A · 0.5 · 3 is 1057.5 A.
    const more = assess({ ...feed, equipment: "feeder", grouped: 9 }, 700);
    expect(shown(the(more.figures, SMALLEST))).toEqual(["3 × 1500 kcmil per line", 1057.5, null]);
    expect(more.cautions).not.toContain(TOGETHER);
  });

  it("one alone stays one, where it serves and where it is installed", () => {
    const found = assess({ ...feed, conductor: "500 kcmil" }, 500_000 / (480 * rootThree));
    // 380 A at the terminal against 751.76 A; what would serve is two sets.
    expect(shown(the(found.figures, INSTALLED))).toEqual(["500 kcmil", 380, "outside"]);
    expect(the(found.figures, SMALLEST).name).toBe("2 × 600 kcmil per line");
    expect(the(assess(feed, 300).figures, SMALLEST).name).toBe("500 kcmil");
    // Told to be one: nothing else is looked for.
    const one = assess({ ...feed, conductorsPerLine: 1 }, 500_000 / (480 * rootThree));
    expect(the(one.figures, SMALLEST).value).toBe(null);
  });
});

describe("IEC feed", () => {
  const feed: RecordFeed = { edition: "IEC 60364-5-52:2009", installation: "C", insulation: "PVC" };

  it("looks for as few sets as serve where no single cable does, and judges two as installed", () => {
    // 300 kW on 400 V: 433.01 A, fuse 500 A, which asks for 550 A. One: 300 mm² has 464 A. Two bunched, 0.80: 240 mm² 403 A · 0.8 · 2 is 644.8 A,
    // 185 mm² 341 A · 0.8 · 2 is 545.6 A.
    const load = 300_000 / (400 * rootThree);
    const found = assess(feed, load);
    const least = the(found.figures, SMALLEST);
    expect(least.name).toBe("2 × 240 mm² per line");
    expect(least.value).toBeCloseTo(644.8, 9);
    expect(found.cautions).toContain(TOGETHER);
    expect(found.cautions.join()).toContain("bunched is taken");
    const as = (conductor: string, grouped?: number) =>
      the(
        assess(
          { ...feed, conductor, conductorsPerLine: 2, device: "500 A", ...(grouped && { grouped }) },
          load,
        ).figures,
        INSTALLED,
      );
    expect(as("185 mm²")).toMatchObject({ name: "2 × 185 mm² per line", verdict: "outside" });
    expect(as("185 mm²").value).toBeCloseTo(545.6, 9);
    expect(as("240 mm²").verdict).toBe("within");
    // Apart, where the record says that they do not share a group: 341 A · 2 is 682 A.
    expect(as("185 mm²", 1)).toMatchObject({ value: 682, verdict: "within" });
    expect(as("185 mm²", 1).caution).toMatch(/the sets are taken to lie apart/);
  });

  it("counts the sets beside the other circuits of the group", () => {
    // Another circuit: three, 0.70. 240 mm² 403 A · 0.7 · 2 is 564.2 A, above 550 A.
    const found = assess({ ...feed, grouped: 2 }, 300_000 / (400 * rootThree));
    const least = the(found.figures, SMALLEST);
    expect(least.name).toBe("2 × 240 mm² per line");
    expect(least.value).toBeCloseTo(564.2, 9);
    expect(found.cautions).not.toContain(TOGETHER);
  });
});
