/** Laws the joint room must keep for any input, 1,000 cases each. */
import * as joint from "electroheat/joint";
import {
  amperes,
  celsius,
  kelvins,
  kelvinsPerWatt,
  meters,
  type NewtonMeters,
  newtonMeters,
  newtons,
  newtonsPerMeter,
  ohmMeters,
  ohms,
  perKelvin,
  squareMeters,
  volts,
  watts,
  wattsPerKelvin,
  wattsPerMeterKelvin,
  wattsPerSquareMeterKelvin,
} from "electroheat/quantity";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const runs = { numRuns: 1000 };
/** Reals of a range, without the subnormal numbers no reading has. */
const real = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((x) => (Math.abs(x) < 1e-12 ? 0 : x));
const near = (a: number, b: number, part = 1e-9) =>
  expect(Math.abs(a - b)).toBeLessThanOrEqual(part * Math.max(Math.abs(a), Math.abs(b)) + 1e-300);
const copper = { resistivity20: ohmMeters(1.7241e-8), coefficient20: perKelvin(0.00393) };

describe("torque and preload", () => {
  it("preload is linear in torque, and the torque comes back", () => {
    fc.assert(
      fc.property(real(0.1, 500), real(0.003, 0.03), real(0.05, 0.6), real(0.1, 10), (t, d, nutFactor, k) => {
        const diameter = meters(d);
        const at = (torque: NewtonMeters) => joint.preloadFromTorque({ torque, diameter, nutFactor });
        near(at(newtonMeters(k * t)), k * at(newtonMeters(t)));
        const preload = at(newtonMeters(t));
        near(joint.torqueFromPreload({ preload, diameter, nutFactor }), t);
        near(joint.nutFactorFromPreload({ torque: newtonMeters(t), preload, diameter }), nutFactor);
      }),
      runs,
    );
  });

  it("the band holds the preload of every nut factor inside it", () => {
    fc.assert(
      fc.property(real(0.1, 500), real(0.05, 0.5), real(0, 0.3), real(0, 1), (t, low, span, share) => {
        const input = { torque: newtonMeters(t), diameter: meters(0.008) };
        const band = joint.preloadBand({ ...input, nutFactorLow: low, nutFactorHigh: low + span });
        const inside = joint.preloadFromTorque({ ...input, nutFactor: low + share * span });
        expect(inside).toBeGreaterThanOrEqual(band.low * (1 - 1e-12));
        expect(inside).toBeLessThanOrEqual(band.high * (1 + 1e-12));
      }),
      runs,
    );
  });

  it("the exact screw equation approaches the nut factor of friction for small lead", () => {
    fc.assert(
      fc.property(real(0.05, 0.3), real(0.05, 0.3), (threadFriction, bearingFriction) => {
        const [diameter, pitch, pitchDiameter] = [meters(0.006), meters(0.00002), meters(0.00535)];
        const bearingDiameter = meters(0.00775);
        const { raise } = joint.screwTorque({
          force: newtons(5000),
          lead: pitch,
          meanDiameter: pitchDiameter,
          threadFriction,
          halfAngle: Math.PI / 6,
          collarFriction: bearingFriction,
          collarDiameter: bearingDiameter,
        });
        const nutFactor = joint.nutFactorFromFriction({
          diameter,
          pitch,
          pitchDiameter,
          threadFriction,
          bearingFriction,
          bearingDiameter,
        });
        near(raise / (5000 * diameter), nutFactor, 1e-3);
      }),
      runs,
    );
  });
});

describe("a wrench with an adapter", () => {
  it("pulls the nut with one force on both levers, and needs no correction at a right angle", () => {
    fc.assert(
      fc.property(real(0, 200), real(0.05, 1), real(-0.9, 3), (torque, length, share) => {
        const set = joint.wrenchSetting({
          torque: newtonMeters(torque),
          wrenchLength: meters(length),
          extension: meters(share * length),
        });
        // The hand's force is the setting over its lever to the drive.
        near((set / length) * (length + share * length), torque);
        const square = { torque: newtonMeters(torque), wrenchLength: meters(length), extension: meters(0) };
        near(joint.wrenchSetting(square), torque);
      }),
      runs,
    );
  });
});

describe("joint power and resistance", () => {
  it("drop × current = current² × resistance, whatever bar lies between", () => {
    fc.assert(
      fc.property(real(1e-4, 1), real(0.1, 1000), real(0, 0.99), (u, i, share) => {
        const found = joint.measuredJoint({
          drop: volts(u),
          current: amperes(i),
          barResistance: ohms((share * u) / i),
          dropHalfWidth: volts(0),
          currentHalfWidth: amperes(0),
        });
        near(found.grossResistance * i, u);
        near(found.power, (1 - share) * u * i, 1e-7);
        near(joint.jointPower({ current: amperes(i), resistance: found.resistance }), found.power);
      }),
      runs,
    );
  });

  it("both directions of the current give back the drop and the EMF they were made of", () => {
    fc.assert(
      fc.property(real(1e-4, 1), real(-0.999, 0.999), real(0.1, 1000), (u, share, i) => {
        const found = joint.measuredJoint({
          drop: volts(u + share * u),
          reversedDrop: volts(share * u - u),
          current: amperes(i),
          dropHalfWidth: volts(0),
          currentHalfWidth: amperes(0),
        });
        near(found.resistance * i, u);
        expect(Math.abs((found.thermalEmf ?? Number.NaN) - share * u)).toBeLessThan(1e-12 * u);
      }),
      runs,
    );
    const once = {
      drop: volts(0.001),
      current: amperes(10),
      dropHalfWidth: volts(0),
      currentHalfWidth: amperes(0),
    };
    expect(joint.measuredJoint(once).thermalEmf).toBeNull();
  });

  it("a joint is judged the same when readings are permuted or all scaled", () => {
    const set = fc.array(real(1e-6, 1e-2), { minLength: 2, maxLength: 6 });
    fc.assert(
      fc.property(set, real(1e-6, 1e-1), real(0.1, 10), (similar, resistance, k) => {
        const verdict = (scale: number, list: readonly number[]) =>
          joint.judgeJoint({
            resistance: ohms(scale * resistance),
            halfWidth: ohms(0),
            similarHalfWidth: ohms(0),
            similar: list.map((one) => ohms(scale * one)),
            rule: "50-percent-above-lowest",
          });
        const first = verdict(1, similar);
        near(verdict(k, [...similar].reverse()).ratio, first.ratio);
        expect(verdict(1, [...similar].reverse()).judgement).toEqual(first.judgement);
      }),
      runs,
    );
  });

  it("the 50 % rule does not turn on float noise at its edge", () => {
    for (const lowest of [1e-5, 3e-5, 7.1e-5, 1 / 3e4]) {
      for (const noise of [1 - 2e-16, 1, 1 + 2e-16, 1 + 1e-14]) {
        const { judgement } = joint.judgeJoint({
          resistance: ohms(1.5 * lowest * noise),
          halfWidth: ohms(0),
          similarHalfWidth: ohms(0),
          similar: [ohms(lowest)],
          rule: "50-percent-above-lowest",
        });
        expect(judgement.verdict).toBe("within");
      }
      const above = joint.judgeJoint({
        resistance: ohms(1.5001 * lowest),
        halfWidth: ohms(0),
        similarHalfWidth: ohms(0),
        similar: [ohms(lowest)],
        rule: "50-percent-above-lowest",
      });
      expect(above.judgement.verdict).toBe("outside");
    }
  });
});

describe("rise against load", () => {
  it("referring there and back gives the rise again", () => {
    fc.assert(
      fc.property(real(0, 300), real(1, 500), real(1, 500), real(1, 2), (r, a, b, exponent) => {
        const [current, otherCurrent] = [amperes(a), amperes(b)];
        const there = joint.riseAtCurrent({ rise: kelvins(r), current, otherCurrent, exponent });
        const back = joint.riseAtCurrent({
          rise: there,
          current: otherCurrent,
          otherCurrent: current,
          exponent,
        });
        near(back, r, 1e-12);
      }),
      runs,
    );
  });

  it("the copper-bar value lies in the band and full load changes nothing", () => {
    fc.assert(
      fc.property(real(0, 300), real(0.01, 2), (r, loadFraction) => {
        const { low, copperBar, high, decidable } = joint.riseAtFullLoad({ rise: kelvins(r), loadFraction });
        const bar = copperBar as number;
        expect(low).toBeLessThanOrEqual(bar * (1 + 1e-12));
        expect(bar).toBeLessThanOrEqual(high * (1 + 1e-12));
        expect(decidable).toBe(loadFraction >= 0.4);
      }),
      runs,
    );
    const full = joint.riseAtFullLoad({ rise: kelvins(22), loadFraction: 1 });
    expect([full.low, full.copperBar, full.high]).toEqual([22, 22, 22]);
    // Exponents that leave the copper bar out leave its value out.
    const copperBar = (exponentLow: number, exponentHigh: number) =>
      joint.riseAtFullLoad({ rise: kelvins(22), loadFraction: 0.6, exponentLow, exponentHigh }).copperBar;
    expect([copperBar(1.9, 2), copperBar(1.6, 1.8)]).toEqual([null, null]);
    expect([copperBar(1.83, 2), copperBar(1.6, 1.83)].every((one) => one !== null)).toBe(true);
  });

  it("40 % load is decidable at and above, undecided just below", () => {
    const at = (loadFraction: number) => joint.riseAtFullLoad({ rise: kelvins(10), loadFraction }).decidable;
    expect([at(0.4), at(0.4000001), at(0.3999999)]).toEqual([true, true, false]);
  });

  it("compared joints swap with their names", () => {
    const one = fc.record({ rise: real(0, 100), current: real(1, 100) });
    fc.assert(
      fc.property(one, one, real(1, 100), real(1, 250), (a, b, reference, full) => {
        const tag = (x: { rise: number; current: number }) => ({
          rise: kelvins(x.rise),
          current: amperes(x.current),
        });
        const [first, second] = [tag(a), tag(b)];
        const currents = { referenceCurrent: amperes(reference), fullLoadCurrent: amperes(full) };
        const ab = joint.compareRises({ first, second, ...currents }).worse;
        const ba = joint.compareRises({ first: second, second: first, ...currents }).worse;
        // Nothing clears a joint that was seen below 40 % load.
        const hidden = (one: typeof a): boolean => one.current < 0.4 * full * (1 - 1e-9);
        if (ab !== "undecided") expect(hidden(ab === "first" ? b : a)).toBe(false);
        expect(ba).toBe(ab === "first" ? "second" : ab === "second" ? "first" : "undecided");
      }),
      runs,
    );
  });
});

const barCase = fc.record({
  width: real(0.008, 0.1),
  thickness: real(0.001, 0.012),
  air: real(-10, 90),
  emissivity: real(0, 1),
  rise: real(2, 100),
});

describe("ampacity", () => {
  const current = (b: { width: number; thickness: number; air: number; emissivity: number }, limit: number) =>
    joint.barAmpacity({
      bar: {
        ...copper,
        width: meters(b.width),
        thickness: meters(b.thickness),
        emissivity: b.emissivity,
        air: celsius(b.air),
      },
      temperature: celsius(limit),
    }).current;

  it("grows with section, limit and emissivity and falls with the air", () => {
    fc.assert(
      fc.property(barCase, real(1.01, 2), (b, more) => {
        const limit = b.air + b.rise;
        const base = current(b, limit);
        expect(current({ ...b, width: b.width * more }, limit)).toBeGreaterThan(base);
        expect(current({ ...b, thickness: b.thickness * more }, limit)).toBeGreaterThan(base);
        expect(current(b, limit + more)).toBeGreaterThan(base);
        expect(current({ ...b, air: b.air + b.rise * (1 - 1 / more) }, limit)).toBeLessThan(base);
        const darker = Math.min(1, b.emissivity + 0.01);
        if (darker > b.emissivity + 1e-6)
          expect(current({ ...b, emissivity: darker }, limit)).toBeGreaterThan(base);
      }),
      runs,
    );
  });

  it("the temperature of a current and the current of a temperature undo each other; heat in is heat out", () => {
    fc.assert(
      fc.property(barCase, (b) => {
        const bar = {
          ...copper,
          width: meters(b.width),
          thickness: meters(b.thickness),
          emissivity: b.emissivity,
          air: celsius(b.air),
        };
        const there = joint.barAmpacity({ bar, temperature: celsius(b.air + b.rise) });
        near(there.current ** 2 * there.resistancePerLength, there.convection + there.radiation);
        const back = joint.barTemperature({ bar, current: there.current });
        expect(Math.abs(back.temperature - there.temperature)).toBeLessThan(1e-6);
      }),
      runs,
    );
  });
});

const finCase = fc.record({
  section: real(1e-5, 5e-4),
  perimeter: real(0.02, 0.3),
  k: real(15, 400),
  h: real(2, 100),
  left: real(0.005, 0.5),
  right: real(0.005, 0.5),
  power: real(0, 200),
  leftG: real(0, 2),
  rightG: real(0, 2),
  leftT: real(0, 400),
  rightT: real(0, 400),
  air: real(-10, 80),
  share: real(0, 0.95),
});

describe("jumper as a fin", () => {
  const barOf = (c: { section: number; perimeter: number; k: number; h: number }) => ({
    section: squareMeters(c.section),
    perimeter: meters(c.perimeter),
    conductivity: wattsPerMeterKelvin(c.k),
    filmCoefficient: wattsPerSquareMeterKelvin(c.h),
  });

  it("heat in is heat out to 1e-9, with the bar's own heat and hot studs", () => {
    fc.assert(
      fc.property(finCase, (c) => {
        const bar = barOf(c);
        const critical = joint.barCriticalCurrent({ bar, ...copper });
        const p = joint.jumperProfile({
          bar,
          air: celsius(c.air),
          leftArm: meters(c.left),
          rightArm: meters(c.right),
          jointPower: watts(c.power),
          left: { conductance: wattsPerKelvin(c.leftG), temperature: celsius(c.leftT) },
          right: { conductance: wattsPerKelvin(c.rightG), temperature: celsius(c.rightT) },
          current: amperes(c.share * critical),
          ...copper,
        });
        const into = c.power + p.barPower;
        const out = p.surfaceLoss + p.leftLoss + p.rightLoss;
        const size =
          c.power +
          Math.abs(p.barPower) +
          Math.abs(p.surfaceLoss) +
          Math.abs(p.leftLoss) +
          Math.abs(p.rightLoss);
        expect(Math.abs(into - out)).toBeLessThanOrEqual(1e-9 * size);
        near(p.profile[0]?.temperature as number, p.leftEnd, 1e-9);
        near(p.profile.at(-1)?.temperature as number, p.rightEnd, 1e-9);
      }),
      runs,
    );
  });

  it("the profile obeys the fin equation: surface heat by the trapezoid of 2,001 points", () => {
    fc.assert(
      fc.property(finCase, (c) => {
        const p = joint.jumperProfile({
          bar: barOf(c),
          air: celsius(c.air),
          leftArm: meters(c.left),
          rightArm: meters(c.left),
          jointPower: watts(c.power),
          left: { conductance: wattsPerKelvin(c.leftG), temperature: celsius(c.leftT) },
          right: { conductance: wattsPerKelvin(c.rightG), temperature: celsius(c.rightT) },
          points: 2001,
        });
        const step = (2 * c.left) / 2000;
        const sum = p.profile.reduce((total, { temperature }, i) => {
          const weight = i === 0 || i === 2000 ? 0.5 : 1;
          return total + weight * (temperature - c.air);
        }, 0);
        const trapezoid = c.h * c.perimeter * sum * step;
        const peak = Math.max(...p.profile.map(({ temperature }) => Math.abs(temperature - c.air)));
        expect(Math.abs(trapezoid - p.surfaceLoss)).toBeLessThanOrEqual(
          c.h * c.perimeter * 2 * c.left * (1e-4 * peak + 1e-10),
        );
      }),
      { numRuns: 200 },
    );
  });

  it("a long jumper is the endless fin; a short one is the isothermal bar", () => {
    fc.assert(
      fc.property(finCase, (c) => {
        const bar = barOf(c);
        const endless = joint.jointThermalResistance({ bar });
        const spread = joint.finSpreadLength(bar);
        near(joint.jointThermalResistance({ bar, arm: meters(20 * spread) }), endless, 1e-9);
        const short = joint.jointThermalResistance({ bar, arm: meters(spread / 1000) });
        near(short, 1 / (c.h * c.perimeter * 2 * (spread / 1000)), 1e-6);
        const end = { conductance: wattsPerKelvin(c.leftG), temperature: celsius(c.air) };
        const p = joint.jumperProfile({
          bar,
          air: celsius(c.air),
          leftArm: meters(20 * spread),
          rightArm: meters(20 * spread),
          jointPower: watts(c.power),
          left: end,
          right: end,
        });
        expect(Math.abs(p.joint - c.air - c.power * endless)).toBeLessThan(1e-9 * (c.power * endless + 100));
      }),
      runs,
    );
  });

  it("resistance from the rise it makes is the resistance that made it", () => {
    fc.assert(
      fc.property(finCase, real(1e-6, 1e-2), real(5, 200), (c, r, i) => {
        const thermalResistance = joint.jointThermalResistance({ bar: barOf(c), arm: meters(c.left) });
        const power = joint.jointPower({ current: amperes(i), resistance: ohms(r) });
        const found = joint.resistanceFromRise({
          rise: kelvins(power * thermalResistance),
          thermalResistance,
          current: amperes(i),
        });
        near(found.resistance, r);
        // The same rise with a joint that really spreads its heat 30 % worse or better.
        for (const [share, end] of [
          [1.3, found.low],
          [0.7, found.high],
        ] as const) {
          near(end * share * thermalResistance * i * i, power * thermalResistance);
        }
      }),
      runs,
    );
  });
});

describe("runaway", () => {
  it("at its rise the joint makes the heat it gives off; at the runaway current there is none", () => {
    fc.assert(
      fc.property(real(1, 300), real(1e-6, 1e-2), real(1e-4, 1e-2), real(0.1, 50), (i, r, a, rth) => {
        const input = {
          resistance: ohms(r),
          coefficient: perKelvin(a),
          thermalResistance: kelvinsPerWatt(rth),
        };
        const found = joint.jointBalance({ ...input, current: amperes(i) });
        expect(found.rise === null).toBe(found.loopGain >= 1);
        // The ends of the band are the rises of a joint that spreads its heat so, known exactly.
        for (const [share, end] of [
          [0.7, found.riseLow],
          [1.3, found.riseHigh],
        ] as const) {
          const thermalResistance = kelvinsPerWatt(share * rth);
          const exact = joint.jointBalance({
            ...input,
            thermalResistance,
            current: amperes(i),
            uncertainty: 0,
          });
          if (Math.abs(exact.loopGain - 1) < 1e-9) continue;
          expect(end === null).toBe(exact.rise === null);
          if (end !== null) near(end, exact.rise as number, 1e-9 / (1 - exact.loopGain));
        }
        const unsettled = found.warnings.filter(({ path }) => path === "loopGain");
        expect(unsettled.length).toBe(found.riseHigh === null ? 1 : 0);
        expect(found.deferral).toMatch(/licensed electrician/);
        if (found.rise !== null && found.power !== null) {
          near(i * i * r * (1 + a * found.rise), found.power, 1e-6 / (1 - found.loopGain));
          near(found.power * rth, found.rise);
        }
        const limit = found.runawayCurrent as number;
        near(joint.jointBalance({ ...input, current: amperes(limit) }).loopGain, 1);
        expect(joint.jointBalance({ ...input, current: amperes(limit * 1.000001) }).rise).toBe(null);
        expect(joint.jointBalance({ ...input, current: amperes(limit * 0.999) }).rise).not.toBe(null);
      }),
      runs,
    );
  });
});

describe("contact", () => {
  it("voltage to spot temperature and back", () => {
    fc.assert(
      fc.property(real(0.001, 0.5), real(-20, 200), (u, b) => {
        const bulk = celsius(b);
        const spot = joint.contactSpotTemperature({ voltage: volts(u), bulk });
        near(joint.contactVoltageAt({ spot, bulk }), u, 1e-6);
      }),
      runs,
    );
  });

  it("a lap joint gets no better with film, and never below both bars in parallel", () => {
    fc.assert(
      fc.property(real(1e-12, 1e-6), real(1.01, 10), (y, more) => {
        const bars = {
          resistivity: ohmMeters(1.7241e-8),
          overlap: meters(0.05),
          width: meters(0.05),
          thickness: meters(0.006),
        };
        const at = (film: number) =>
          joint.lapJointResistance({ ...bars, specificContactResistance: film as never });
        expect(at(y * more)).toBeGreaterThan(at(y));
        expect(at(y)).toBeGreaterThan(at(0));
      }),
      runs,
    );
  });
});

describe("hot and cold", () => {
  const stack = { length: meters(0.01), expansion: perKelvin(17e-6) };
  it("one metal keeps its preload, cooling undoes heating, and lengths split freely", () => {
    fc.assert(
      fc.property(
        real(-50, 300),
        real(1e7, 1e9),
        real(1e7, 2e9),
        real(0.1, 0.9),
        real(5e-6, 30e-6),
        (t, kb, km, cut, alpha) => {
          const [studStiffness, partsStiffness] = [newtonsPerMeter(kb), newtonsPerMeter(km)];
          const change = (rise: number, expansion: number, parts: readonly joint.StackPart[]) =>
            joint.preloadChange({
              stud: { length: meters(0.01), expansion: perKelvin(expansion), rise: kelvins(rise) },
              parts,
              studStiffness,
              partsStiffness,
            });
          const whole = (rise: number) => [{ ...stack, rise: kelvins(rise) }];
          expect(change(t, 17e-6, whole(t))).toBeCloseTo(0, 9);
          near(change(t, alpha, whole(t)), -change(-t, alpha, whole(-t)));
          const split = [cut, 1 - cut].map((share) => ({
            ...stack,
            length: meters(0.01 * share),
            rise: kelvins(t),
          }));
          expect(Math.abs(change(t, alpha, split) - change(t, alpha, whole(t)))).toBeLessThan(1e-6);
          // More expansion in the parts than in the stud tightens on heating.
          if (t > 1 && alpha < 16e-6) expect(change(t, alpha, whole(t))).toBeGreaterThan(0);
        },
      ),
      runs,
    );
  });

  it("an overload never leaves more clamp force than before", () => {
    fc.assert(
      fc.property(real(0, 1e4), real(-1e4, 1e4), real(1, 2e4), (preload, change, ceiling) => {
        const found = joint.preloadAfterOverload({
          preload: newtons(Math.min(preload, ceiling)),
          change: newtons(change),
          ceiling: newtons(ceiling),
        });
        expect(found.lost).toBeGreaterThanOrEqual(-1e-9);
        expect(found.hot).toBeLessThanOrEqual(ceiling);
        expect(found.coldAfter).toBeGreaterThanOrEqual(0);
      }),
      runs,
    );
  });

  it("disc-spring stiffness is the slope of its force; stacks add up", () => {
    const spring = {
      outerDiameter: meters(0.02),
      innerDiameter: meters(0.0102),
      thickness: meters(0.0011),
      coneHeight: meters(0.00045),
    };
    fc.assert(
      fc.property(
        real(0.02, 0.98),
        fc.integer({ min: 1, max: 5 }),
        fc.integer({ min: 1, max: 5 }),
        (x, inParallel, inSeries) => {
          const one = (s: number) => joint.discSpringState({ spring, deflection: meters(s) });
          const s = x * 0.00045;
          const e = 1e-8;
          near(one(s).stiffness, (one(s + e).force - one(s - e).force) / (2 * e), 1e-5);
          const stack = joint.discSpringState({
            spring,
            deflection: meters(s * inSeries),
            inParallel,
            inSeries,
          });
          near(stack.force, inParallel * one(s).force, 1e-12);
          near(stack.stiffness, (inParallel * one(s).stiffness) / inSeries, 1e-9);
        },
      ),
      runs,
    );
  });
});
