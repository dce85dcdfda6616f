/** A feed just at what a rule asks, or without the plate that says what it must carry. Tables and clauses beside each check. */
import type { Figure, RecordFeed } from "electroheat/bench";
import { describe, expect, it } from "vitest";
import { assessFeed } from "../../../src/bench/site/feed.ts";
import { read, the } from "./made.ts";

const figures = (feed: RecordFeed, amps: number | null): readonly Figure[] => {
  const found = assessFeed(read({ feed, ambient: "30 °C" }), amps as never);
  if (found === null) throw new Error("no feed");
  return found.figures;
};

describe("a small conductor whose ampacity is just what the load asks", () => {
  const feed = (conductor: string): RecordFeed => ({
    edition: "NEC 2023",
    installation: "raceway",
    insulation: "75 °C",
    terminals: "75 °C",
    conductor,
  });
  // Table 310.16, copper, 75 °C: 14 AWG 20 A, 12 AWG 25 A, 10 AWG 35 A, 8 AWG 50 A. 240.4(D) protects them by 15 A, 20 A and 30 A at
  // most, which is less than the 125 % of a continuous load (425.4) that they would just carry. From memory; second copy: tests/wiring/printed.ts.
  it.each([
    ["14 AWG", 16, 20, "12 AWG", 25],
    ["12 AWG", 20, 25, "10 AWG", 35],
    ["10 AWG", 28, 35, "8 AWG", 50],
  ] as const)("is too small for want of a device: %s at %d A", (conductor, amps, carries, serves, least) => {
    const found = figures(feed(conductor), amps);
    const installed = the(found, "conductor as installed, ampacity");
    expect([installed.value, installed.limit, installed.verdict]).toEqual([
      carries,
      { low: least, high: null },
      "outside",
    ]);
    expect(the(found, "conductor, smallest that serves").name).toBe(serves);
  });

  it("serves where it may be protected for that: 8 AWG at 40 A", () => {
    // 125 % of 40 A: 50 A, which is what Table 310.16 has for 8 AWG at 75 °C; 240.4(D) ends at 10 AWG.
    const installed = the(figures(feed("8 AWG"), 40), "conductor as installed, ampacity");
    expect([installed.value, installed.limit, installed.verdict]).toEqual([
      50,
      { low: 50, high: null },
      "within",
    ]);
  });
});

describe("a cable and its device without a plate", () => {
  const feed = (device: string): RecordFeed => ({
    edition: "IEC 60364-5-52:2009",
    installation: "B2",
    insulation: "PVC",
    conductor: "16 mm²",
    device,
  });
  it("are judged by each other alone", () => {
    // Table B.52.4, B2, PVC, three loaded: 16 mm² 62 A. IEC 60364-4-43: 1.6·In ≤ 1.45·Iz for gG, so at most 56.2 A: 50 A of IEC 60269-1.
    const of = (device: string) => {
      const found = figures(feed(device), null);
      expect(found.some(({ label }) => label.endsWith("for the load"))).toBe(false);
      const one = the(found, "overcurrent device as installed, for the conductor");
      return [one.limit?.high, one.verdict];
    };
    expect([of("50 A"), of("63 A")]).toEqual([
      [50, "within"],
      [50, "outside"],
    ]);
  });
});
