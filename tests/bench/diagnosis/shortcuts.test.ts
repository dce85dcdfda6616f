/**
 * What makes the diagnosis quick changes nothing of what it finds: changed states against networks solved afresh, likenesses
 * against each pair on its own, planes against a grid of full evaluations, screens against the peaks they may not hide.
 */
import type { DiagnosisInput, FieldReading } from "electroheat/bench";
import type { HeatingModule } from "electroheat/circuit";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Atom, parameterAt } from "../../../src/bench/diagnosis/faults/atom.ts";
import { earthFinding } from "../../../src/bench/diagnosis/hypotheses/earth.ts";
import { alikePlaces, earthPlaces } from "../../../src/bench/diagnosis/hypotheses/earthPlaces.ts";
import {
  drawnWiring,
  logLikelihood,
  type Model,
  modelOf,
  onSupply,
  questionOf,
} from "../../../src/bench/diagnosis/likelihood/model.ts";
import { logOfMeans, meansInto, meansOf } from "../../../src/bench/diagnosis/likelihood/quick.ts";
import { mostOnPath, NO_MORE } from "../../../src/bench/diagnosis/likelihood/screen.ts";
import { narrowed, shownBy } from "../../../src/bench/diagnosis/likelihood/supplyShown.ts";
import { rescaled } from "../../../src/bench/diagnosis/network/edges.ts";
import { scaled } from "../../../src/bench/diagnosis/network/scaled.ts";
import { frameOf, type State } from "../../../src/bench/diagnosis/network/state.ts";
import { floats } from "../../../src/bench/diagnosis/numbers/room.ts";
import { alikeAtoms, alikePairs } from "../../../src/bench/diagnosis/weighing/alike.ts";
import { type Ground, groundOf, responseOn } from "../../../src/bench/diagnosis/weighing/findings.ts";
import { NO_FAULT, namesBeside } from "../../../src/bench/diagnosis/weighing/names.ts";
import { planeFinding, planeVisit } from "../../../src/bench/diagnosis/weighing/plane.ts";
import { amps, asked, bank, pairs, volts3 } from "./sheets.ts";

const TWO_DELTAS = { banks: ["A", "B"].map((id) => bank(id, "delta", 12, { elementsInParallel: 2 })) };
const SHEET = [...amps([283, 271, 260]), ...volts3([480, 481, 479]), ...pairs([2.4, 2.5, 2.6])];

/** Volts across an element and ohms at a star point: the first stay when all elements are others. */
const AT_STAR = [
  { kind: "voltage", from: "L1", to: "S", reads: 277 },
  { kind: "resistance", from: "L1", to: "S", reads: 9 },
] as unknown as readonly FieldReading[];

function set(input: DiagnosisInput): { readonly model: Model; readonly sound: Ground } {
  const question = questionOf(input);
  const wiring = drawnWiring(question, question.modules[0] as HeatingModule);
  const model = modelOf(question, wiring, wiring);
  return { model, sound: groundOf(model, model.sound, NO_FAULT) };
}

const atomOf = ({ atoms }: Model, kind: Atom["kind"], element: string): Atom =>
  atoms().find(
    (atom) => atom.kind === kind && atom.members.some(({ fault }) => JSON.stringify(fault).includes(element)),
  ) as Atom;

describe("a network changed in two places", () => {
  it("predicts what the changed plan predicts, solved afresh", () => {
    const { model, sound } = set(asked(TWO_DELTAS, SHEET));
    const turns = atomOf(model, "shorted turns", '"A-L1L2-1"');
    const value = atomOf(model, "element off value", '"B-L2L3-1"');
    const visit = planeVisit(model, sound, turns, value);
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 0.9, noNaN: true }),
        fc.double({ min: 0.6, max: 2, noNaN: true }),
        (x, y) => {
          visit([x, y]);
          const elements = { "A-L1L2-1": 12 * (1 - x), "B-L2L3-1": 12 * y };
          const afresh = set(asked({ ...TWO_DELTAS, elements }, SHEET)).model;
          logLikelihood(afresh, afresh.sound);
          model.prediction.mean.forEach((mean, r) => {
            expect(Math.abs(mean / (afresh.prediction.mean[r] as number) - 1)).toBeLessThan(1e-9);
          });
        },
      ),
      { numRuns: 30, seed: 1 },
    );
  });
});

describe("pairs taken for alike", () => {
  it("have one and the same likelihood, each on its own", () => {
    const { model, sound } = set(asked(TWO_DELTAS, SHEET));
    const free = model.atoms().filter(({ of }) => of !== null);
    const all = free.flatMap((a, i) => free.slice(i + 1).map((b): [Atom, Atom] => [a, b]));
    const found = alikePairs(model, sound, alikeAtoms(model, sound, model.atoms()), all);
    const middle = ({ stretches }: Atom): number => parameterAt(stretches[0] as never, 0.5);
    const at = ([a, b]: readonly [Atom, Atom]): number =>
      planeVisit(model, sound, a, b)([middle(a), middle(b)]);
    let compared = 0;
    for (const { pair, others } of found) {
      const log = at(pair);
      for (const other of others) {
        compared += 1;
        expect(Math.abs(at(other) - log)).toBeLessThan(1e-6 * Math.max(1, Math.abs(log)));
      }
    }
    expect(found.reduce((sum, { others }) => sum + 1 + others.length, 0)).toBe(all.length);
    // Two like banks: hardly a pair stands alone.
    expect(compared).toBeGreaterThan(all.length / 3);
  });
});

describe("a plane of two parameters", () => {
  it.each([
    ["A-L1L2-1", "A-L2L3-1"],
    ["A-L1L2-1", "B-L1L2-1"],
  ])("is integrated as a grid of full evaluations does, turns of %s and %s", (one, other) => {
    const { model, sound } = set(asked(TWO_DELTAS, SHEET));
    const faults = [
      atomOf(model, "shorted turns", `"${one}"`),
      atomOf(model, "shorted turns", `"${other}"`),
    ] as const;
    const names = namesBeside(namesBeside(NO_FAULT, faults[0].members), faults[1].members);
    const floor = -1000;
    const found = planeFinding({ model, sound, faults, names, near: [0.3, 0.3], floor });
    const visit = planeVisit(model, sound, ...faults);
    const n = 90;
    const logs = Array.from({ length: n * n }, (_, k) =>
      visit([0.05 + (0.85 * (Math.floor(k / n) + 0.5)) / n, 0.05 + (0.85 * ((k % n) + 0.5)) / n]),
    );
    const most = logs.reduce((a, b) => Math.max(a, b));
    const grid = most + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - most), 0) / (n * n));
    expect(Math.abs(found.log - grid)).toBeLessThan(0.1);
  });
});

describe("a supply of less scatter", () => {
  it("is weighed from one of more as if the readings were evaluated afresh", () => {
    const { model } = set(asked(TWO_DELTAS, SHEET));
    const own = model.question.by.unbalance;
    for (const scatter of [1.2 * own, 0.02, 0.2]) {
      const wide = onSupply(model, { unbalance: scatter });
      const before = logLikelihood(wide, wide.sound);
      const { shown, gain } = narrowed(shownBy(wide), scatter ** 2 - own ** 2);
      const afresh = logLikelihood(model, model.sound);
      const { score, information } = shownBy(model);
      expect(Math.abs(gain - (afresh - before))).toBeLessThan(1e-8);
      const largest = Math.max(...information);
      score.forEach((one, k) => {
        expect(Math.abs((shown.score[k] as number) - one)).toBeLessThan(1e-8 * Math.max(1, Math.abs(one)));
      });
      information.forEach((one, k) => {
        expect(Math.abs((shown.information[k] as number) - one)).toBeLessThan(1e-8 * largest);
      });
    }
  });
});

describe("a module of another rating", () => {
  it("predicts what the network solved afresh with all elements so many times as large predicts", () => {
    const open = { elements: { "A-L1L2-1": "open", "A-L1L2-2": "open" } };
    const star = { banks: [bank("A", "star", 12), bank("B", "delta", 30)] };
    fc.assert(
      fc.property(
        fc.constantFrom(TWO_DELTAS, { ...TWO_DELTAS, ...open }, star),
        fc.double({ min: 0.2, max: 5, noNaN: true }),
        (plan, factor) => {
          const { model } = set(asked(plan, [...SHEET, ...(plan === star ? AT_STAR : [])]));
          const { frame, sound, settings, question } = model;
          expect(frame.rows.every((row) => row !== null)).toBe(true);
          const rows = { rows: frame.rows, settings };
          const ratio = question.spread.temperatureFactor.value;
          const afresh = frameOf(rescaled(model.wiring, factor), rows, ratio, true).state;
          const quick = scaled(frame, sound, factor);
          const numbers = ({ dead, live, resistance, variance }: State): readonly number[] => [
            ...dead.flatMap((one) => [...one.admittance, ...one.share, ...one.resistance]),
            ...Object.values(live as object).flatMap((values: Float64Array) => [...values]),
            ...resistance,
            ...variance,
          ];
          const [a, b] = [numbers(quick), numbers(afresh)];
          expect(a.length).toBe(b.length);
          expect(a.length).toBeGreaterThan(200);
          a.forEach((one, i) => {
            expect(Math.abs(one - (b[i] as number))).toBeLessThan(1e-9 * Math.max(1, Math.abs(one)));
          });
        },
      ),
      { numRuns: 30, seed: 9 },
    );
  });
});

describe("a screen", () => {
  it("never lies below the highest point of a family, whatever is read", () => {
    const reads = fc.double({ min: 0.5, max: 2, noNaN: true });
    fc.assert(
      fc.property(fc.array(reads, { minLength: 9, maxLength: 9 }), (by) => {
        const spoilt = SHEET.map((one, i) => ({ ...one, reads: (one.reads as number) * (by[i] as number) }));
        const { model, sound } = set(asked(TWO_DELTAS, spoilt as never));
        const base = sound.base();
        const [means, residual, before] = [floats(base.count), floats(base.count), floats(base.count)];
        for (const atom of model
          .atoms()
          .filter(({ of }) => of !== null)
          .slice(0, 12)) {
          const into = meansOf(model, sound.state, base, responseOn(model, sound, atom), atom.edge);
          const f = (value: number): number => {
            meansInto(into, atom.insertion(value), means);
            return logOfMeans(base, means, residual);
          };
          for (const stretch of atom.stretches) {
            const bound = mostOnPath({ f, residual, before, more: NO_MORE }, stretch, []);
            for (let k = 0; k <= 200; k += 1)
              expect(f(parameterAt(stretch, k / 200))).toBeLessThan(bound + 5);
          }
        }
      }),
      { numRuns: 20, seed: 2 },
    );
  });
});

describe("an earth fault beside insulation readings", () => {
  it("is told by a screen only where it is hopeless", () => {
    const insulation = (from: string, reads: number): FieldReading =>
      ({ kind: "insulation", from, reads }) as unknown as FieldReading;
    const decades = fc.double({ min: 0, max: 9, noNaN: true });
    let places = 0;
    fc.assert(
      fc.property(decades, decades, fc.double({ min: 0.7, max: 1.4, noNaN: true }), (one, other, by) => {
        const { model, sound } = set(
          asked(TWO_DELTAS, [
            ...amps([271 * by, 271, 271]),
            ...volts3([480, 481, 479]),
            insulation("L1", 10 ** one),
            insulation("L2", 10 ** other),
          ]),
        );
        for (const place of alikePlaces(earthPlaces(model))) {
          const at = (floor: number): number => earthFinding({ model, ground: sound, place, floor }).log;
          const whole = at(Number.NEGATIVE_INFINITY);
          // What is hopeless stays hopeless, and what is not is weighed as without a floor.
          expect(at(whole + 30)).toBeLessThan(whole + 30);
          expect(Math.abs(at(whole - 30) - whole)).toBeLessThan(0.1);
          places += 1;
        }
      }),
      { numRuns: 25, seed: 4 },
    );
    expect(places).toBeGreaterThan(100);
  });
});

describe("room for numbers", () => {
  it("is handed out once only, and empty", () => {
    const views = Array.from({ length: 400 }, (_, i) => floats(i));
    views.forEach((view, i) => {
      expect(view.every((value) => value === 0)).toBe(true);
      view.fill(i);
    });
    views.forEach((view, i) => {
      expect(view.length === i && view.every((value) => value === i)).toBe(true);
    });
  });
});
