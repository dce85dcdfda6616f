// A unit constructor and a reader against a general-purpose unit library (mathjs) doing the same conversion.
//   node benchmarks/rows/units.mjs     (after npm run build)
import {
  fahrenheit,
  inches,
  poundForceInches,
  toCelsius,
  toMillimeters,
  toPoundForceFeet,
} from "electroheat/quantity";
import { unit } from "mathjs";
import { faster, paired, tell } from "../measure.mjs";

const CALLS = 1_000;
const values = Float64Array.from({ length: CALLS }, (_, i) => 0.25 + i / CALLS);
let kept = 0;
/** @param {(x: number) => number} convert */
const all = (convert) => () => {
  for (let i = 0; i < CALLS; i += 1) kept += convert(values[i]);
};
const pairs = /** @type {const} */ ([
  ["inches to millimetres", (x) => toMillimeters(inches(x)), (x) => unit(x, "inch").toNumber("mm")],
  ["°F to °C", (x) => toCelsius(fahrenheit(x)), (x) => unit(x, "degF").toNumber("degC")],
  [
    "lbf·in to lbf·ft",
    (x) => toPoundForceFeet(poundForceInches(x)),
    (x) => unit(x, "lbf in").toNumber("lbf ft"),
  ],
]);
tell(
  pairs.map(([what, ours, theirs]) => {
    const [a, b] = [ours(3.7), theirs(3.7)];
    if (!(Math.abs(a - b) < 1e-12 * Math.abs(b))) throw new Error(`${what}: ${a} against ${b}`);
    return faster(what, "mathjs unit(…).toNumber(…)", paired(all(ours), all(theirs), { rounds: 15 }), 50);
  }),
);
if (!(kept > 0)) throw new Error("nothing was converted");
