/** Plans and networks that say too little or too much: refused by name, with what would have been right. Kirchhoff's laws otherwise. */
import { type Branch, buildModule, energise, findBranch, stageBanks } from "electroheat/circuit";
import { ohms, watts } from "electroheat/quantity";
import { describe, expect, it } from "vitest";
import { caught } from "../support/caught.ts";
import { expectRefusal } from "../support/spoil.ts";

describe("stages", () => {
  const stage = (id: string, power = 9000) => ({ id, power: watts(power) });

  it("are at least one, each with a name of its own, the trimmed one too", () => {
    const call = (stages: unknown, trimmed?: object) => () =>
      stageBanks({ stages, demand: watts(1000), ...(trimmed === undefined ? {} : { trimmed }) } as never);
    expectRefusal(call([]), "missing", "stages", "none");
    expectRefusal(call(null), "missing", "stages", "null");
    expectRefusal(call("S1, S2"), "wrong-type", "stages", "a text");
    expectRefusal(call([stage("a"), stage("a")]), "duplicate", "stages.1.id", "twice");
    expectRefusal(call([stage("b"), stage("a")], stage("a")), "duplicate", "stages.1.id", "trimmed twice");
    expectRefusal(call([stage("b")], stage("a", -1)), "out-of-range", "trimmed.power", "negative");
    expect(stageBanks({ stages: [], demand: watts(1000), trimmed: stage("a") })).toEqual({
      on: [],
      trimDuty: 1000 / 9000,
      delivered: 1000,
      shortfall: 0,
      excess: 0,
    });
  });
});

describe("a module", () => {
  it("has a neutral connected only where there is a star", () => {
    const plan = (connection: "star" | "delta") => () =>
      buildModule({
        banks: [{ id: "B1", connection, elementResistance: ohms(10) }],
        neutral: "connected",
      } as unknown as Parameters<typeof buildModule>[0]);
    expect(plan("star")).not.toThrow();
    expectRefusal(plan("delta"), "inconsistent", "neutral", "delta");
  });
});

describe("a network of many branches", () => {
  /** A chain from L1 on, one branch to each next node. */
  const chain = (length: number, loose: number): Branch[] => [
    ...Array.from({ length }, (_, i) => ({
      id: `E${i}`,
      from: i === 0 ? "L1" : `n${i}`,
      to: i === length - 1 ? "L2" : `n${i + 1}`,
      resistance: ohms(1),
    })),
    ...Array.from({ length: loose }, (_, i) => ({
      id: `X${i}`,
      from: `x${2 * i}`,
      to: `x${2 * i + 1}`,
      resistance: ohms(1),
    })),
  ];

  it("names the first of its branches where one is not found, all of them where they are few", () => {
    const missing = (length: number) =>
      caught(() => findBranch({ network: { branches: chain(length, 0) }, id: "E99" })).message;
    expect(missing(3)).toMatch(/E0, E1, E2(?!,)/);
    expect(missing(40)).toMatch(/E39(?!,)/);
    expect(missing(41)).toMatch(/E39, …/);
    expect(findBranch({ network: { branches: chain(41, 0) }, id: "E40" }).to).toBe("L2");
  });

  it("names what no line feeds", () => {
    const supply = {
      lines: [
        { node: "L1", voltage: { re: 230, im: 0 } },
        { node: "L2", voltage: { re: 0, im: 0 } },
      ],
    };
    const fed = (loose: number) => () =>
      energise({ network: { branches: chain(2, loose) }, supply } as unknown as Parameters<
        typeof energise
      >[0]);
    // 230 V over two ohms.
    expect(fed(0)().branches[0]?.power).toBeCloseTo(115 ** 2, 6);
    expect(caught(fed(1)).code).toBe("floating");
    expect(caught(fed(1)).message).toMatch(/x0, x1(?!,)/);
    expect(caught(fed(7)).message).toMatch(/x11, …/);
  });

  it("is of branches with two named ends", () => {
    const [one] = chain(1, 0);
    const call = (change: object) => () =>
      findBranch({ network: { branches: [{ ...one, ...change } as Branch] }, id: "E0" });
    expect(call({})().id).toBe("E0");
    const energised = (change: object) => () =>
      energise({
        network: { branches: [{ ...one, ...change }] },
        supply: { lines: [{ node: "L1", voltage: { re: 1, im: 0 } }] },
      } as unknown as Parameters<typeof energise>[0]);
    for (const end of ["id", "from", "to"]) {
      expectRefusal(energised({ [end]: "" }), "missing", `network.branches.0.${end}`, `${end} blank`);
      expectRefusal(energised({ [end]: 7 }), "wrong-type", `network.branches.0.${end}`, `${end} 7`);
    }
    expectRefusal(
      energised({ to: "L1" }),
      "inconsistent",
      "network.branches.0.to",
      "back to where it came from",
    );
  });
});
