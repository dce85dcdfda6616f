/** The wirings of a question, each set up once: as drawn, and with a slip in the links; and the same under other readings in the same places. */
import type { HeatingModule } from "../../../circuit/index.ts";
import { type EarthPlace, earthPlaces } from "../hypotheses/earthPlaces.ts";
import { showsEarth } from "../hypotheses/unseen.ts";
import { drawnWiring, type Model, modelOf, type Question, under } from "../likelihood/model.ts";
import { type Wiring, wiringOf } from "../network/edges.ts";
import type { Landing } from "../network/landings.ts";
import type { Slip } from "../network/variants.ts";
import { type Alike, alikeAtoms } from "../weighing/alike.ts";
import { type Ground, groundOf, regrounded } from "../weighing/findings.ts";
import { NO_FAULT } from "../weighing/names.ts";

/** One wiring with its sound module as a ground, and its series faults in classes of those that no reading tells apart on it. */
export interface Prepared {
  readonly model: Model;
  readonly sound: Ground;
  readonly alike: () => readonly Alike[];
  /** Where it can be earthed, if any reading shows that. */
  readonly places: () => readonly EarthPlace[];
}

/** Gives each wiring of a question by the number of its plan and its slip. */
export interface Wirings {
  readonly asDrawn: readonly Wiring[];
  readonly at: (plan: number, slip?: Slip | Landing) => Prepared;
}

function prepared(model: Model, sound: Ground): Prepared {
  let alike: readonly Alike[] | null = null;
  let places: readonly EarthPlace[] | null = null;
  return {
    model,
    sound,
    alike: () => {
      alike ??= alikeAtoms(model, sound, model.atoms());
      return alike;
    },
    places: () => {
      places ??= showsEarth(model.question) ? earthPlaces(model) : [];
      return places;
    },
  };
}

/** Keeps what has been set up; a branch on another line is asked for once and let go. */
function kept(setUp: (plan: number, slip?: Slip | Landing) => Prepared): Wirings["at"] {
  const known = new Map<string, Prepared>();
  return (plan, slip) => {
    if (slip?.kind === "mis-landed") return setUp(plan, slip);
    const key = slip === undefined ? `${plan}` : `${plan} ${slip.bank} ${slip.as}`;
    let one = known.get(key);
    if (one === undefined) {
      one = setUp(plan, slip);
      known.set(key, one);
    }
    return one;
  };
}

/** The wirings of a question, set up when first asked for. */
export function wiringsOf(question: Question): Wirings {
  const { modules } = question;
  const asDrawn = modules.map((module) => drawnWiring(question, module));
  const drawnFor = asDrawn.map((wiring, k) =>
    k === 0 ? wiring : wiringOf(modules[0] as HeatingModule, new Set(), 1),
  );
  const at = kept((plan, slip) => {
    const model = modelOf(question, asDrawn[plan] as Wiring, drawnFor[plan] as Wiring, slip);
    return prepared(model, groundOf(model, model.sound, NO_FAULT));
  });
  return { asDrawn, at };
}

/** The same wirings under other readings in the same places. */
export function wiringsUnder({ asDrawn, at }: Wirings, question: Question): Wirings {
  return {
    asDrawn,
    at: kept((plan, slip) => {
      const before = at(plan, slip);
      const model = under(before.model, question);
      const sound = regrounded(model, before.sound);
      // What is alike hangs on the network and on which faults are looked for, not on what was read.
      return model.atoms() === before.model.atoms()
        ? { model, sound, alike: before.alike, places: before.places }
        : prepared(model, sound);
    }),
  };
}
