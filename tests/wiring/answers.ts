/** Answers to the worked examples and to these with one thing changed in them, for tests that read whole answers. */
import type { CodeResult } from "electroheat/wiring";
import { expect } from "vitest";
import { factsOf } from "../../src/catalogue/facts.ts";
import { type Change, examples, outcomeOf, variations } from "../support/examples.ts";
import { placesIn } from "../support/places.ts";

/** What a public function of the room answers, with its argument. */
export function* answers<I, A>(call: (input: I) => A, change: Change): Generator<readonly [I, A]> {
  const { name } = call as unknown as { readonly name: string };
  const shape = { record: factsOf("wiring").functions[name]?.inputs ?? {} };
  let asked = 0;
  for (const whole of examples("wiring", name)) {
    const places = placesIn(whole, shape, "");
    for (const one of [whole, ...variations(whole, shape, places, change)]) {
      const outcome = outcomeOf("wiring", name, { [name]: call }, one);
      if (!("answer" in outcome)) continue;
      asked++;
      yield [one as I, outcome.answer as A];
    }
  }
  expect(asked, name).toBeGreaterThan(0);
}

/** Every answer of a code within an answer: itself, one of a list, one that another rests on. */
export function codeResultsIn(answer: unknown): readonly CodeResult<unknown>[] {
  if (answer === null || typeof answer !== "object") return [];
  const own = "cells" in answer && "governing" in answer ? [answer as CodeResult<unknown>] : [];
  return [...own, ...Object.values(answer).flatMap(codeResultsIn)];
}
