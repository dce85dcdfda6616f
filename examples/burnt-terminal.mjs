// A burnt terminal, from readings to what to renew: six joints of an invented module.
//   node examples/burnt-terminal.mjs                 text, the picture at its end
//   node examples/burnt-terminal.mjs rise.svg        text, the picture into a file
import { writeFileSync } from "node:fs";
import {
  barAmpacity,
  barResistance,
  bearingPressure,
  boltStiffness,
  compareStock,
  contactVoltageScreen,
  cutList,
  equivalentBarLength,
  fastenerStrength,
  hardwareNotes,
  JOINT_DEFERRAL,
  jointBalance,
  jointPower,
  judgeJoint,
  jumperProfile,
  measuredJoint,
  memberStiffness,
  metricThread,
  netSection,
  nutFactorRange,
  preloadChange,
  retighteningNote,
  riseAtFullLoad,
  scanSeverity,
  tightening,
  tighteningTorque,
} from "electroheat/joint";
import {
  amperes,
  celsius,
  gigapascals,
  gramsPerCubicCentimeter,
  inches,
  isElectroheatError,
  kelvins,
  kelvinsPerWatt,
  megapascals,
  microohms,
  millimeters,
  millionthsPerKelvin,
  millivolts,
  newtonMeters,
  newtons,
  ohmMeters,
  perKelvin,
  toMegapascals,
  toMicroohms,
  toMillimeters,
  wattsPerKelvin,
  wattsPerMeterKelvin,
  wattsPerSquareMeterKelvin,
} from "electroheat/quantity";

const out = console.log;
/** @param {number} x @param {number} [places] */
const fixed = (x, places = 1) => x.toFixed(places);
/** @param {string} text */
const title = (text) => out(`\n${text}\n${"-".repeat(text.length)}`);

// ── The record: invented. Star, 48 kW at 480 V, two elements per branch, one copper jumper bar per line. ──────────────
const fullLoad = amperes(48000 / (Math.sqrt(3) * 480));
const current = amperes(53);
const loadFraction = current / fullLoad;
const air = celsius(38);
// Copper, 100 % IACS: IEC 60028.
const copper = { resistivity20: ohmMeters(1.7241e-8), coefficient20: perKelvin(0.00393) };
const oldBar = { width: inches(0.75), thickness: inches(0.125) };
/** Drop between probe marks 30 mm apart; rise over the air on matt tape, except where the note says otherwise. */
const joints = [
  { id: "J1", bar: "L1", end: "line", drop: 3.9, rise: 11, emissivity: 0.95 },
  { id: "J2", bar: "L1", end: "element", drop: 4.4, rise: 14, emissivity: 0.95 },
  { id: "J3", bar: "L2", end: "line", drop: 148.2, rise: 71, emissivity: 0.95 },
  { id: "J4", bar: "L2", end: "element", drop: 6.1, rise: 44, emissivity: 0.95 },
  { id: "J5", bar: "L3", end: "line", drop: 4.1, rise: 3, emissivity: 0.04 },
  { id: "J6", bar: "L3", end: "element", drop: 18.4, rise: 27, emissivity: 0.95 },
];

out("Burnt terminal: as found, what to renew, as left (invented module: star, 48 kW, 480 V, 57.7 A)");
out(
  `Readings at ${fixed(current)} A, ${fixed(100 * loadFraction, 0)} % of full load, air ${fixed(air, 0)} °C`,
);

// ── 1. Millivolts ─────────────────────────────────────────────────────────────────────────────────────────────────────
const barBetweenProbes = barResistance({
  ...copper,
  ...oldBar,
  temperature: celsius(60),
  length: millimeters(30),
});
const measured = joints.map((joint) => ({
  ...joint,
  ...measuredJoint({
    drop: millivolts(joint.drop),
    current,
    barResistance: barBetweenProbes,
    dropHalfWidth: millivolts(0.005 * joint.drop + 0.1),
    currentHalfWidth: amperes(0.02 * current),
  }),
}));
const judged = measured
  .map((joint) => {
    const others = measured.filter((other) => other.id !== joint.id);
    const lowest = others.reduce((a, b) => (a.resistance < b.resistance ? a : b));
    const verdict = judgeJoint({
      resistance: joint.resistance,
      halfWidth: joint.halfWidth,
      similar: others.map(({ resistance }) => resistance),
      similarHalfWidth: lowest.halfWidth,
      rule: "50-percent-above-lowest",
    });
    return { ...joint, verdict };
  })
  .sort((a, b) => b.resistance - a.resistance);
const resistivity60 = ohmMeters(1.7241e-8 * (1 + 0.00393 * 40));
title("1. Millivolts, bar between the probes subtracted, worst first");
out("joint  bar end      µΩ      ±      W  × lowest  as bar, mm  verdict");
for (const { id, bar, end, resistance, halfWidth, power, verdict } of judged) {
  const length = equivalentBarLength({ resistance, resistivity: resistivity60, section: netSection(oldBar) });
  out(
    `${id.padEnd(6)} ${bar}  ${end.padEnd(7)} ${fixed(toMicroohms(resistance), 0).padStart(5)} ${fixed(toMicroohms(halfWidth), 0).padStart(6)} ${fixed(power, 2).padStart(6)} ${fixed(verdict.ratio).padStart(9)} ${fixed(toMillimeters(length), 0).padStart(11)}  ${verdict.judgement.verdict}: ${verdict.action}`,
  );
}
const [worst] = judged;
if (worst === undefined) throw new Error("no joints");
out(
  `Rule: ${worst.verdict.judgement.rule} (${worst.verdict.basis.source}, ${worst.verdict.basis.edition}; ${worst.verdict.basis.kind}).`,
);
const branch = 480 ** 2 / 48000;
out(
  `Balanced amps do not clear the terminals: the worst joint is ${fixed((100 * worst.resistance) / branch, 2)} % of its ${fixed(branch)} Ω branch.`,
);

// ── 2. Thermal scan ───────────────────────────────────────────────────────────────────────────────────────────────────
title("2. Thermal scan, referred to full load, by two published scales (they disagree)");
for (const { id, rise, emissivity } of joints) {
  try {
    /** @param {"neta-100.18" | "practitioner-limits"} scale */
    const grade = (scale) =>
      scanSeverity({
        rise: kelvins(rise),
        riseHalfWidth: kelvins(2),
        comparison: "ambient",
        loadFraction,
        load: "full load",
        scale,
        emissivity,
      });
    const [first, second] = [grade("neta-100.18"), grade("practitioner-limits")];
    out(
      `${id}: ${rise} K seen, ${fixed(first.low.rise, 0)} to ${fixed(first.high.rise, 0)} K at full load. ${first.basis.edition}: ${first.action}. Practitioner: ${second.action}.`,
    );
  } catch (error) {
    if (!isElectroheatError(error)) throw error;
    out(`${id}: not graded. ${error.message}`);
  }
}

// ── 3. Will it burn again ─────────────────────────────────────────────────────────────────────────────────────────────
const finBar = {
  section: netSection(oldBar),
  perimeter: millimeters(2 * (19.05 + 3.175)),
  conductivity: wattsPerMeterKelvin(390),
  filmCoefficient: wattsPerSquareMeterKelvin(12),
};
const lead = { conductance: wattsPerKelvin(0.05), temperature: air };
/** The jumper with its joint on the line end and a stud at a temperature; the lead is at air. @param {number} r @param {number} h @param {number} stud */
const jumperBeside = (r, h, stud) =>
  jumperProfile({
    bar: { ...finBar, filmCoefficient: wattsPerSquareMeterKelvin(h) },
    air,
    leftArm: millimeters(12),
    rightArm: millimeters(102),
    jointPower: jointPower({ current: fullLoad, resistance: microohms(r) }),
    left: lead,
    right: { conductance: wattsPerKelvin(0.03), temperature: celsius(stud) },
    current: fullLoad,
    ...copper,
  });
// Nobody measured the element stud: it gets the temperature at which the model repeats the rise of the best twin.
const twin = judged.at(-1) ?? worst;
const twinSeen = riseAtFullLoad({ rise: kelvins(twin.rise), loadFraction });
const twinRise = (twinSeen.low + twinSeen.high) / 2;
/** @param {number} stud */
const twinBeside = (stud) => jumperBeside(toMicroohms(twin.resistance), 12, stud).joint - air;
const perKelvinOfStud = twinBeside(air + 1) - twinBeside(air);
const studTemperature = air + (twinRise - twinBeside(air)) / perKelvinOfStud;
/** @param {number} r @param {number} [h] */
const jumper = (r, h = 12) => jumperBeside(r, h, studTemperature);
const healthy = jumper(0).joint;
const perWatt = kelvinsPerWatt((jumper(1000).joint - healthy) / (fullLoad * fullLoad * 1e-3));
const again = jointBalance({
  current: fullLoad,
  // Measured hot: taken back to the temperature of its bar, which the rise of the balance starts from.
  resistance: microohms(toMicroohms(worst.resistance) / (1 + copper.coefficient20 * worst.rise)),
  coefficient: copper.coefficient20,
  thermalResistance: perWatt,
});
// The drop at full load, bar subtracted, beside a bar as hot as the rise seen makes it there at the most.
const hotBar = riseAtFullLoad({ rise: kelvins(worst.rise), loadFraction });
const fullDrop = millivolts(1000 * fullLoad * worst.resistance);
const screen = contactVoltageScreen({
  voltage: fullDrop,
  reading: "rms",
  bulk: celsius(air + hotBar.high),
  metal: "tin",
});
title("3. Will it burn again, if only re-tightened?");
out(`Thermal resistance of the short jumper ${fixed(perWatt)} K/W (±30 %): a warm bar, not a hot point.`);
out(
  `${worst.id} at full load: ${again.rise === null ? "no steady state" : `${fixed(again.rise, 0)} K above its bar (${again.riseLow === null ? "none" : fixed(again.riseLow, 0)} to ${again.riseHigh === null ? "no steady state" : `${fixed(again.riseHigh, 0)} K`})`}, loop gain ${fixed(again.loopGain, 2)}, runaway at ${fixed(again.runawayCurrent ?? Number.NaN, 0)} A.`,
);
for (const { code, message } of again.warnings) out(`${code}: ${message}`);
out(
  `Contact voltage at full load ${fixed(1000 * fullDrop, 0)} mV r.m.s. on a tinned face, bar at ${fixed(air + hotBar.high, 0)} °C: spots up to ${fixed(screen.spot, 0)} °C; softening ${screen.softening.verdict}, melting ${screen.melting.verdict} (${screen.basis.source}, ${screen.basis.edition}; ${screen.basis.kind}).`,
);
for (const { code, message } of screen.warnings) out(`${code}: ${message}`);
out(
  "A burnt joint's resistance is measured, never predicted from torque; film and lost force do not come back.",
);

// ── 4. Bars to renew ──────────────────────────────────────────────────────────────────────────────────────────────────
const renew = [
  ...new Set(judged.filter(({ verdict }) => verdict.judgement.verdict === "outside").map(({ bar }) => bar)),
];
const stock = { width: millimeters(20), thickness: millimeters(3) };
const holeDiameter = millimeters(6.6);
const change = compareStock({ old: oldBar, stock, holeDiameter });
const pitted = netSection({ ...oldBar, holeDiameter, pitDepth: millimeters(0.9) });
const cut = cutList({
  studs: 3,
  pitch: millimeters(45),
  overhang: millimeters(12),
  bars: renew.length,
  kerf: millimeters(2),
  ...stock,
  density: gramsPerCubicCentimeter(8.89),
});
const rating = barAmpacity({
  bar: { ...copper, ...stock, emissivity: 0.4, air: celsius(60) },
  temperature: celsius(90),
});
title("4. Bars to renew");
out(
  `Renew the bars of ${renew.join(" and ")}, by the resistance rule. What the scan grades beside them is measured again after the repair, before it is opened or left.`,
);
out(
  `20 × 3 mm for 3/4 × 1/8 in: section × ${fixed(change.ratio, 3)}, net of the hole × ${fixed(change.netRatio, 3)}. Old bar under the pits (0.9 mm): ${fixed(pitted * 1e6, 1)} mm² of ${fixed(change.oldNet * 1e6, 1)}.`,
);
out(
  `Cut ${renew.length} × ${fixed(toMillimeters(cut.length), 0)} mm, ${fixed(toMillimeters(cut.stock), 0)} mm of stock, ${fixed(cut.mass * 1000, 0)} g. Check stud pitch, edge distance and clearances.`,
);
out(
  `Ampacity by heat balance, 90 °C bar in 60 °C air beside the oven, emissivity 0.4: ${fixed(rating.current, 0)} A against ${fixed(fullLoad, 1)} A.`,
);

// ── 5. Hardware ───────────────────────────────────────────────────────────────────────────────────────────────────────
const m6 = metricThread("M6");
const guide = tighteningTorque({ table: "switchgear-metric", size: "M6", column: "mainCircuit" });
const table = tighteningTorque({ table: "nonferrous-maximum", size: "1/4", column: "brass" });
const members = memberStiffness({ diameter: m6.diameter, grip: millimeters(10), modulus: gigapascals(117) });
/** @type {ReadonlyArray<{ name: string, standard: import("electroheat/joint").StrengthStandard, grade: string, condition: import("electroheat/joint").NutFactorCondition, torque: number, expansion: number, modulus: number }>} */
const choices = [
  {
    name: "8.8 zinc-plated",
    standard: "ISO 898-1",
    grade: "8.8",
    condition: "zinc-plated",
    torque: 6.5,
    expansion: 11.7,
    modulus: 205,
  },
  {
    name: "A2-70, anti-seize",
    standard: "ISO 3506-1",
    grade: "A2-70",
    condition: "stainless with anti-seize",
    torque: 4.0,
    expansion: 17.2,
    modulus: 193,
  },
  {
    name: "A2-70, dry",
    standard: "ISO 3506-1",
    grade: "A2-70",
    condition: "dry stainless on stainless",
    torque: 6.5,
    expansion: 17.2,
    modulus: 193,
  },
];
title("5. Hardware on M6: torque, preload band, share of strength, pressure, hot change");
for (const { name, standard, grade, condition, torque, expansion, modulus } of choices) {
  const strength = fastenerStrength({ standard, grade, diameter: m6.diameter });
  const nut = nutFactorRange(condition);
  const found = tightening({
    torque: newtonMeters(torque),
    diameter: m6.diameter,
    stressArea: m6.stressArea,
    nutFactorLow: nut.low,
    nutFactorHigh: nut.high,
    strength: strength.limit,
    face: { outerDiameter: millimeters(12.5), holeDiameter, barThickness: stock.thickness },
  });
  const bolt = boltStiffness({
    stressArea: m6.stressArea,
    threadLength: millimeters(10),
    modulus: gigapascals(modulus),
  });
  const length = millimeters(10);
  const hot = preloadChange({
    stud: { length, expansion: millionthsPerKelvin(expansion), rise: kelvins(60) },
    parts: [{ length, expansion: millionthsPerKelvin(17), rise: kelvins(60) }],
    studStiffness: bolt,
    partsStiffness: members,
  });
  out(
    `${name.padEnd(18)} ${fixed(torque)} N·m: ${fixed(found.preload.low / 1000)} to ${fixed(found.preload.high / 1000)} kN, ${fixed(100 * found.proofShare.low, 0)} to ${fixed(100 * found.proofShare.high, 0)} % of strength (${found.proof.verdict} by ${found.proofBasis.source}; yielding ${found.yielding.verdict} by ${found.yieldingBasis.kind}), interface ${fixed(toMegapascals(found.pressureLow?.interfacePressure ?? megapascals(0)), 0)} to ${fixed(toMegapascals(found.pressureHigh?.interfacePressure ?? megapascals(0)), 0)} MPa, +60 K: ${fixed(hot / 1000, 2)} kN. [${strength.basis.source}, ${strength.kind}; K: ${nut.basis.source}, ${nut.basis.kind}; torque: ${torque === guide.torque ? `${guide.basis.source}, ${guide.kind}` : "supposed for comparison, no source"}]`,
  );
  for (const { code, message } of [...nut.warnings, ...strength.warnings]) out(`  ${code}: ${message}`);
}
const brass = fastenerStrength({ standard: "brass C36000", grade: "H04 rod 1/4 in", diameter: m6.diameter });
try {
  nutFactorRange(/** @type {any} */ ("brass on brass"));
} catch (error) {
  if (!isElectroheatError(error)) throw error;
  out(
    `brass stud, ${fixed(toMegapascals(brass.limit), 0)} MPa (${brass.kind}, ${brass.basis.source}): no preload given. ${error.message}`,
  );
}
out(
  `Table value for 1/4 in brass: ${table.kind} ${fixed(table.torque, 1)} N·m (${table.basis.source}). The maker's torque comes before all of these.`,
);
// Faces by caliper: flat washer 12.5 mm, flange of a serrated nut 14.2 mm.
for (const [name, outer] of /** @type {const} */ ([
  ["star washer on a flat washer", 12.5],
  ["serrated flange nut", 14.2],
])) {
  const { facePressure, interfacePressure } = bearingPressure({
    force: newtons(4000),
    outerDiameter: millimeters(outer),
    holeDiameter,
    barThickness: stock.thickness,
  });
  out(
    `${name}, face ${outer} mm: 4 kN presses the bar with ${fixed(toMegapascals(facePressure), 0)} MPa, the interface with ${fixed(toMegapascals(interfacePressure), 0)} MPa (geometry; the teeth not counted).`,
  );
}
for (const { statement, kind } of [
  ...hardwareNotes("conical washer"),
  ...hardwareNotes("star washer"),
  ...hardwareNotes("serrated flange nut"),
]) {
  out(`- ${statement} [${kind}]`);
}

// ── 6. As left ────────────────────────────────────────────────────────────────────────────────────────────────────────
const sound = twin.resistance;
const asLeft = (/** @type {number} */ h) => jumper(toMicroohms(sound), h).joint - air;
const asFound = (/** @type {number} */ h) => jumper(toMicroohms(worst.resistance), h).joint - air;
title("6. Predicted at full load, film coefficient 12 W/(m²·K) ± 30 %");
out(
  `${worst.id} as found (${fixed(toMicroohms(worst.resistance), 0)} µΩ): ${fixed(asFound(15.6), 0)} to ${fixed(asFound(8.4), 0)} K over the air. As left (${fixed(toMicroohms(sound), 0)} µΩ, as its best twin) by the model: ${fixed(asLeft(15.6), 0)} to ${fixed(asLeft(8.4), 0)} K.`,
);
out(
  `${twin.id} was seen ${twin.rise} K over the air at ${fixed(current)} A, which is ${fixed(twinSeen.low)} to ${fixed(twinSeen.high)} K at full load; the model repeats it with the element stud at ${fixed(studTemperature, 0)} °C. ${worst.id}, not used for that, was seen ${fixed(hotBar.low, 0)} to ${fixed(hotBar.high, 0)} K at full load.`,
);
out("After the first heat check the millivolts again, cold and at load.");
const later = retighteningNote("measure-and-remake");
out(`${later.statement} [${later.kind}]`);

title("Caution");
out(JOINT_DEFERRAL);

// ── The picture: rise against joint resistance, band of ±30 % in the film coefficient ────────────────────────────────
const [left, right, top, bottom] = [60, 620, 30, 320];
/** @param {number} r */
const across = (r) => left + ((Math.log10(r) - 1) / 3) * (right - left);
const highest = 40 * Math.ceil(asFound(8.4) / 36);
/** @param {number} k */
const up = (k) => bottom - (k / highest) * (bottom - top);
const grid = Array.from({ length: 61 }, (_, i) => 10 ** (1 + i / 20));
/** @param {number} h */
const curve = (h) => grid.map((r) => [across(r), up(Math.min(jumper(r, h).joint - air, highest))]);
/** @param {number[][]} points */
const path = (points) => points.map(([x, y]) => `${fixed(x ?? 0)},${fixed(y ?? 0)}`).join(" ");
const ticks = [10, 100, 1000, 10000].map(
  (r) =>
    `<path d="M${across(r)} ${top}V${bottom}" stroke="#bbb"/><text x="${across(r)}" y="${bottom + 16}" text-anchor="middle">${r}</text>`,
);
const levels = Array.from({ length: 5 }, (_, i) => (highest * i) / 4).map(
  (k) =>
    `<path d="M${left} ${fixed(up(k))}H${right}" stroke="#bbb"/><text x="${left - 6}" y="${fixed(up(k) + 4)}" text-anchor="end">${fixed(k, 0)}</text>`,
);
// Twins stand close together: their labels take turns in height.
const marks = judged.map(({ id, resistance }, i) => {
  const [x, y] = [across(toMicroohms(resistance)), up(jumper(toMicroohms(resistance)).joint - air)];
  return `<circle cx="${fixed(x)}" cy="${fixed(y)}" r="3.5"/><text x="${fixed(x)}" y="${fixed(y - 8 - 14 * (i % 3))}" text-anchor="middle">${id}</text>`;
});
const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 640 370" font-family="sans-serif" font-size="12" role="img" aria-label="Rise of a joint over the air at full load against its resistance, with a band for plus and minus 30 percent of the film coefficient; the six joints marked">
<rect width="640" height="370" fill="#fff"/>${ticks.join("")}${levels.join("")}
<polygon points="${path([...curve(8.4), ...curve(15.6).reverse()])}" fill="#ddd"/>
<polyline points="${path(curve(12))}" fill="none" stroke="#000" stroke-width="1.5"/>
${marks.join("")}
<text x="${(left + right) / 2}" y="358" text-anchor="middle">joint resistance, µΩ</text><text x="${left}" y="18">rise over the air at ${fixed(fullLoad)} A, K (band: film coefficient ±30 %)</text>
</svg>`;
const file = process.argv[2];
if (file === undefined) out(`\n${svg}`);
else {
  writeFileSync(file, `${svg}\n`);
  out(`\nPicture: ${file}`);
}
