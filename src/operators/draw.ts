/** Draws from the distributions of inputs (JCGM 101, 6.4), jointly normal where they are correlated. */
import { normalQuantile } from "../numeric/index.ts";
import { fail } from "../quantity/index.ts";
import { correlatedGroups, correlationFactor } from "./correlation.ts";
import { BOUNDED_DIVISORS, type PreparedInput } from "./inputs.ts";
import type { Generator } from "./random.ts";

/** Writes one value of each input into `values`, in their order. */
export type Draw = (random: Generator, values: Float64Array) => void;

/** Deviate of Student's t by Bailey's polar method (Mathematics of Computation 62 (1994) 779). */
function studentDeviate(random: Generator, nu: number): number {
  for (;;) {
    const u = 2 * random.uniform() - 1;
    const v = 2 * random.uniform() - 1;
    const w = u * u + v * v;
    if (w > 0 && w < 1) return u * Math.sqrt((nu * Math.expm1((-2 / nu) * Math.log(w))) / w);
  }
}

/** Deviate of half-width 1 about 0. */
function boundedDeviate(random: Generator, distribution: PreparedInput["distribution"]): number {
  if (distribution === "rectangular") return 2 * random.uniform() - 1;
  if (distribution === "triangular") return random.uniform() + random.uniform() - 1;
  return Math.sin(2 * Math.PI * random.uniform());
}

function alone(input: PreparedInput, place: number): Draw {
  const { distribution, estimate, standardUncertainty: u, degreesOfFreedom } = input;
  if (distribution === "normal") {
    return (random, values) => {
      values[place] = estimate + u * normalQuantile(random.uniform());
    };
  }
  if (distribution === "t") {
    const nu = degreesOfFreedom as number;
    return (random, values) => {
      values[place] = estimate + u * studentDeviate(random, nu);
    };
  }
  const halfWidth = u * BOUNDED_DIVISORS[distribution];
  return (random, values) => {
    values[place] = estimate + halfWidth * boundedDeviate(random, distribution);
  };
}

function together(
  inputs: readonly PreparedInput[],
  members: readonly number[],
  full: readonly (readonly number[])[],
): Draw {
  const odd = members.find((i) => inputs[i]?.distribution !== "normal");
  if (odd !== undefined) {
    const { name, distribution } = inputs[odd] as PreparedInput;
    fail({
      code: "inconsistent",
      path: `inputs.${name}.distribution`,
      expected: "normal: correlated inputs are drawn from a joint normal distribution",
      received: distribution,
    });
  }
  const matrix = members.map((i) => members.map((j) => (full[i] as readonly number[])[j] as number));
  const factor = correlationFactor(matrix, members.length, "correlation.coefficients");
  const deviates = new Float64Array(members.length);
  return (random, values) => {
    for (let j = 0; j < deviates.length; j += 1) deviates[j] = normalQuantile(random.uniform());
    for (let i = 0; i < members.length; i += 1) {
      const place = members[i] as number;
      const { estimate, standardUncertainty } = inputs[place] as PreparedInput;
      const row = factor[i] as Float64Array;
      let sum = 0;
      for (let j = 0; j <= i; j += 1) sum += (row[j] as number) * (deviates[j] as number);
      values[place] = estimate + standardUncertainty * sum;
    }
  };
}

/** One draw of all inputs, in a fixed order of random numbers. */
export function drawOf(inputs: readonly PreparedInput[], full: readonly (readonly number[])[]): Draw {
  const draws = correlatedGroups(full).map((members) => {
    const [first] = members as [number];
    return members.length === 1
      ? alone(inputs[first] as PreparedInput, first)
      : together(inputs, members, full);
  });
  return (random, values) => {
    for (const draw of draws) draw(random, values);
  };
}
