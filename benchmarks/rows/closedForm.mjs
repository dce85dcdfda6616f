// A closed form in a loop of a million against the same expression written inline on plain numbers, and against the same
// expression with the same checks written inline: what is left then is the price of the call and its object.
//   node benchmarks/rows/closedForm.mjs [used]     (after npm run build; `used`: after every vector has been through the library)
import { powerFromVoltageAndCurrent, powerFromVoltageAndResistance } from "electroheat/element";
import { jointPower, preloadFromTorque } from "electroheat/joint";
import { atMost, paired, tell } from "../measure.mjs";
import { throughTheVectors } from "../used.mjs";

const ROWS = 1_000_000;
/** @param {number} low @param {number} high */
const column = (low, high) =>
  Float64Array.from({ length: ROWS }, (_, i) => low + ((high - low) * ((i * 7919) % ROWS)) / ROWS);
const a = column(200, 480);
const b = column(5, 50);
const k = column(0.1, 0.3);
const out = new Float64Array(ROWS);

const refuse = () => {
  throw new RangeError("refused");
};
/** @param {number} x */
const isSound = (x) => typeof x === "number" && x >= 0 && x <= 1e30;

/** A round goes over a tenth of the rows, so that most rounds are not interrupted. */
const PART = ROWS / 10;
let from = 0;
/** @param {(from: number, to: number) => void} loop */
const part = (loop) => () => {
  from = (from + PART) % ROWS;
  loop(from, from + PART);
};

const loops = {
  "power V·I": [
    (from, to) => {
      for (let i = from; i < to; i += 1)
        out[i] = powerFromVoltageAndCurrent({ voltage: a[i], current: b[i] });
    },
    (from, to) => {
      for (let i = from; i < to; i += 1) out[i] = a[i] * b[i];
    },
    (from, to) => {
      for (let i = from; i < to; i += 1) {
        if (!isSound(a[i]) || !isSound(b[i])) refuse();
        const result = a[i] * b[i];
        if (!Number.isFinite(result)) refuse();
        out[i] = result;
      }
    },
  ],
  "power V²/R": [
    (from, to) => {
      for (let i = from; i < to; i += 1)
        out[i] = powerFromVoltageAndResistance({ voltage: a[i], resistance: b[i] });
    },
    (from, to) => {
      for (let i = from; i < to; i += 1) out[i] = (a[i] * a[i]) / b[i];
    },
    (from, to) => {
      for (let i = from; i < to; i += 1) {
        if (!isSound(a[i]) || !isSound(b[i])) refuse();
        if (b[i] === 0 && a[i] !== 0) refuse();
        const result = (a[i] * a[i]) / b[i];
        if (!Number.isFinite(result)) refuse();
        out[i] = result;
      }
    },
  ],
  preload: [
    (from, to) => {
      for (let i = from; i < to; i += 1)
        out[i] = preloadFromTorque({ torque: b[i], diameter: a[i], nutFactor: k[i] });
    },
    (from, to) => {
      for (let i = from; i < to; i += 1) out[i] = b[i] / (k[i] * a[i]);
    },
    (from, to) => {
      for (let i = from; i < to; i += 1) {
        if (!isSound(b[i]) || !isSound(a[i]) || a[i] === 0 || !(k[i] >= 0.03 && k[i] <= 1)) refuse();
        out[i] = b[i] / (k[i] * a[i]);
      }
    },
  ],
  "joint power": [
    (from, to) => {
      for (let i = from; i < to; i += 1) out[i] = jointPower({ current: a[i], resistance: b[i] });
    },
    (from, to) => {
      for (let i = from; i < to; i += 1) out[i] = a[i] * a[i] * b[i];
    },
    (from, to) => {
      for (let i = from; i < to; i += 1) {
        if (!isSound(a[i]) || !isSound(b[i])) refuse();
        out[i] = a[i] * a[i] * b[i];
      }
    },
  ],
};

const used = process.argv.includes("used");
if (used) await throughTheVectors();
const state = used ? ", program that has used the library" : "";
tell(
  Object.entries(loops).flatMap(([name, [ours, inline, checked]]) => {
    const rows = [
      atMost(
        `${name}, 1e6 calls${state}`,
        "the expression inline",
        paired(part(ours), part(inline), { rounds: 101 }),
        1.3,
      ),
    ];
    if (!used)
      rows.push(
        atMost(
          name,
          "the expression inline with the same checks",
          paired(part(ours), part(checked), { rounds: 101 }),
          null,
        ),
      );
    return rows;
  }),
);
