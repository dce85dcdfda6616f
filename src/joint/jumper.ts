/** A short jumper with a joint in it, lumped ends and its own heat: the whole temperature profile, exact. */
import {
  type Amperes,
  type Celsius,
  checkBetween,
  checkMeasurable,
  checkMeasurableOrZero,
  checkMeasurableSigned,
  checkWhole,
  fail,
  given,
  givenList,
  type Meters,
  type OhmMeters,
  type PerKelvin,
  type Warning,
  type Watts,
  type WattsPerKelvin,
} from "../quantity/index.ts";
import { hotWarnings, JOINT_DEFERRAL } from "./basis.ts";
import { checkFin, type FinBar } from "./fin.ts";

/**
 * What a jumper ends on: an element stud, a cable lug.
 * @since 0.1.0
 */
export interface JumperEnd {
  /** Conductance into it (W/K), 0 or more; 0 is an end that takes nothing. */
  readonly conductance: WattsPerKelvin;
  /** Temperature at its far side (°C): the element side of a stud may be far hotter than the bar. */
  readonly temperature: Celsius;
}

/**
 * One point of a temperature profile.
 * @since 0.1.0
 */
export interface ProfilePoint {
  /** Distance from the joint (m), negative to the left. */
  readonly position: Meters;
  /** Temperature of the bar there (°C). */
  readonly temperature: Celsius;
}

/**
 * Temperatures and heat of a jumper.
 * @since 0.1.0
 */
export interface JumperProfile {
  /** Temperature at the joint (°C). */
  readonly joint: Celsius;
  /** Temperature of the bar at its left end (°C). */
  readonly leftEnd: Celsius;
  /** At its right end (°C). */
  readonly rightEnd: Celsius;
  /** Heat made in the bar itself (W). */
  readonly barPower: Watts;
  /** Heat from its surface to the air (W). */
  readonly surfaceLoss: Watts;
  /** Heat into the left end (W); negative when the stud heats the bar. */
  readonly leftLoss: Watts;
  /** Heat into the right end (W). */
  readonly rightLoss: Watts;
  /** Profile from left to right. */
  readonly profile: readonly ProfilePoint[];
  /** To whom a forecast of temperature defers. */
  readonly deferral: string;
  /** What the reader must know. */
  readonly warnings: readonly Warning[];
}

/** Air and what a jumper ends on: beyond these a reading is a slip. An element's own end may glow. */
const COLDEST = -50;
const HOTTEST_AIR = 500;
const HOTTEST_END = 1500;
/** A forecast profile may run hot without bound, no body below absolute zero. */
const ABSOLUTE_ZERO = -273.15;
const HOTTEST_SEEN = 1e30;

/** sinh(part)/sinh(whole) for 0 ≤ part ≤ whole, without overflow on long bars. */
function sinhRatio(part: number, whole: number): number {
  return (Math.exp(part - whole) * Math.expm1(-2 * part)) / Math.expm1(-2 * whole);
}

/**
 * Temperature profile of a jumper bar with a joint between two arms, ends that lead heat to studs or cables, and the
 * bar's own heat.
 *
 * k·A·T″ = h·P·(T − air) − current²·ρ(T)/A in each arm, ρ = resistivity20·[1 + coefficient20·(T − 20)]; the joint
 * gives `jointPower`; each end takes conductance·(T − its temperature). Exact solution. The film coefficient is one
 * number for the whole bar: a band of ±30 % is the caller's to run. Valid below the current at which the bar itself
 * has no steady state (`barCriticalCurrent`).
 * @param input.bar - section, perimeter, conductivity, film coefficient
 * @param input.air - air temperature (°C), −50 to 500
 * @param input.leftArm - length of bar left of the joint (m), more than 0
 * @param input.rightArm - length right of it (m), more than 0
 * @param input.jointPower - heat made in the joint (W), 0 or more; from `jointPower`
 * @param input.left - what the left end leads into: conductance (W/K), temperature (°C) from −50 to 1500
 * @param input.right - what the right end leads into
 * @param input.current - r.m.s. current in the bar (A), 0 or more; 0 (heat of the bar neglected) if left out
 * @param input.resistivity20 - resistivity of the bar at 20 °C (Ω·m), more than 0; needed with `current`
 * @param input.coefficient20 - its temperature coefficient (1/K), 0 or more; 0 if left out
 * @param input.points - points of the profile, whole, 3 to 2001; 41 if left out
 * @returns temperatures, heat balance, profile, deferral, warnings above 105 and 150 °C
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`, the last also at or above the bar's critical
 *   current
 * @source one-dimensional fin with uniform source and Robin ends, derived; Incropera and DeWitt, section 3.6
 * @example
 * ```ts
 * const bar = {
 *   section: squareMillimeters(75), perimeter: millimeters(56),
 *   conductivity: wattsPerMeterKelvin(390), filmCoefficient: wattsPerSquareMeterKelvin(10),
 * };
 * const end = { conductance: wattsPerKelvin(0), temperature: celsius(25) };
 * const { joint, leftEnd } = jumperProfile({
 *   bar, air: celsius(25), leftArm: millimeters(60), rightArm: millimeters(60), jointPower: watts(5), left: end, right: end,
 * });
 * [joint, leftEnd] // => [101.106, 98.557]
 * ```
 * @since 0.1.0
 */
export function jumperProfile(input: {
  readonly bar: FinBar;
  readonly air: Celsius;
  readonly leftArm: Meters;
  readonly rightArm: Meters;
  readonly jointPower: Watts;
  readonly left: JumperEnd;
  readonly right: JumperEnd;
  readonly current?: Amperes;
  readonly resistivity20?: OhmMeters;
  readonly coefficient20?: PerKelvin;
  readonly points?: number;
}): JumperProfile {
  given(input);
  const { bar, air, leftArm, rightArm, jointPower, current = 0, coefficient20 = 0, points = 41 } = input;
  checkFin(bar, "bar.");
  checkBetween("air", air, COLDEST, HOTTEST_AIR, "°C");
  checkMeasurable("leftArm", leftArm, "m");
  checkMeasurable("rightArm", rightArm, "m");
  checkMeasurableOrZero("jointPower", jointPower, "W");
  checkMeasurableOrZero("current", current, "A");
  checkMeasurableOrZero("coefficient20", coefficient20, "1/K");
  checkWhole("points", points, 3, 2001);
  if (current > 0 || input.resistivity20 !== undefined) {
    checkMeasurable("resistivity20", input.resistivity20 as OhmMeters, "Ω·m");
  }
  for (const side of ["left", "right"] as const) {
    given(input[side], side);
    checkMeasurableOrZero(`${side}.conductance`, input[side].conductance, "W/K");
    checkBetween(`${side}.temperature`, input[side].temperature, COLDEST, HOTTEST_END, "°C");
  }
  const source = current > 0 ? (current * current * (input.resistivity20 as number)) / bar.section : 0;
  const loss = bar.filmCoefficient * bar.perimeter;
  const net = loss - source * coefficient20;
  if (!(net > 0)) {
    fail({
      code: "out-of-range",
      path: "current",
      expected: "less than the current at which the bar itself has no steady state",
      received: current,
      unit: "A",
    });
  }
  const conduction = bar.conductivity * bar.section;
  const m = Math.sqrt(net / conduction);
  // Far from joint and ends the bar would stand at this temperature.
  const lift = (source * (1 + coefficient20 * (air - 20))) / net;
  const far = air + lift;
  const admittance = conduction * m;
  const arm = (length: number, { conductance, temperature }: JumperEnd) => {
    const tanh = Math.tanh(m * length);
    const share = admittance + conductance * tanh;
    const pull = conductance * (far - temperature);
    const fall = 1 / Math.cosh(m * length);
    return {
      uptake: (admittance * tanh + conductance) / share,
      offset: (pull * fall) / share,
      end: (joint: number): number => (joint * admittance * fall - tanh * pull) / share,
    };
  };
  const [left, right] = [arm(leftArm, input.left), arm(rightArm, input.right)];
  const joint = (jointPower / admittance - left.offset - right.offset) / (left.uptake + right.uptake);
  const [leftEnd, rightEnd] = [left.end(joint), right.end(joint)];
  // ∫ of the excess over an arm whose ends are a and b: (a + b)·tanh(m·L/2)/m.
  const integral =
    ((joint + leftEnd) * Math.tanh((m * leftArm) / 2) + (joint + rightEnd) * Math.tanh((m * rightArm) / 2)) /
    m;
  const length = leftArm + rightArm;
  // ∫ of the temperature over the air: kept apart from the air, so that a bar without heat balances to nothing.
  const overAir = integral + lift * length;
  const profile = Array.from({ length: points }, (_, i): ProfilePoint => {
    const position = -leftArm + (length * i) / (points - 1);
    const [span, end] = position < 0 ? [leftArm, leftEnd] : [rightArm, rightEnd];
    const s = Math.min(Math.abs(position), span);
    const excess = joint * sinhRatio(m * (span - s), m * span) + end * sinhRatio(m * s, m * span);
    return { position: position as Meters, temperature: (far + excess) as Celsius };
  });
  return {
    joint: (far + joint) as Celsius,
    leftEnd: (far + leftEnd) as Celsius,
    rightEnd: (far + rightEnd) as Celsius,
    barPower: (source * (length * (1 + coefficient20 * (air - 20)) + coefficient20 * overAir)) as Watts,
    surfaceLoss: (loss * overAir) as Watts,
    // + 0: an end that takes nothing must not read −0, which JSON cannot say.
    leftLoss: (input.left.conductance * (far + leftEnd - input.left.temperature) + 0) as Watts,
    rightLoss: (input.right.conductance * (far + rightEnd - input.right.temperature) + 0) as Watts,
    profile,
    deferral: JOINT_DEFERRAL,
    warnings: hotWarnings("profile", Math.max(far + joint, ...profile.map(({ temperature }) => temperature))),
  };
}

/**
 * What the spot of a thermal camera averages over a jumper: each point is the mean of the profile under the spot.
 *
 * A short jumper shows as a warm bar, not as a hot point: compare bar with bar. Points whose spot would reach beyond
 * the bar are left out. These are true temperatures, as a surface of matt tape shows them; what an instrument reads on
 * another surface is a matter of emissivity and of what the surface mirrors: on bright copper it sees the room.
 * @param input.profile - profile from {@link jumperProfile}, evenly spaced from left to right, at least 3 points
 * @param input.spot - diameter of the camera's measuring spot on the bar (m), 0 or more, less than the bar is long
 * @returns temperatures from left to right
 * @throws ElectroheatError `missing`, `not-a-number`, `out-of-range`; `inconsistent` when positions do not ascend
 * @source mean over the spot of {@link jumperProfile}
 * @example
 * ```ts
 * const points = [60, 70, 80, 70, 60].map((t, i) => ({ position: millimeters(20 * (i - 2)), temperature: celsius(t) }));
 * profileAsSeen({ profile: points, spot: millimeters(40) }).map(({ temperature }) => temperature)
 * // => [70, 73.3333, 70]
 * ```
 * @since 0.1.0
 */
export function profileAsSeen(input: {
  readonly profile: readonly ProfilePoint[];
  readonly spot: Meters;
}): readonly ProfilePoint[] {
  given(input);
  const { profile, spot } = input;
  givenList(profile, "profile", 3);
  profile.forEach((point, i) => {
    given(point, `profile.${i}`);
    checkMeasurableSigned(`profile.${i}.position`, point.position, "m");
    checkBetween(`profile.${i}.temperature`, point.temperature, ABSOLUTE_ZERO, HOTTEST_SEEN, "°C");
    const before = profile[i - 1]?.position;
    if (before !== undefined && !(point.position > before)) {
      fail({
        code: "inconsistent",
        path: `profile.${i}.position`,
        expected: `right of the point before it, at ${before}`,
        received: point.position,
        unit: "m",
      });
    }
  });
  const [first, last] = [profile[0], profile.at(-1)] as [ProfilePoint, ProfilePoint];
  checkBetween("spot", spot, 0, last.position - first.position, "m");
  // A point on the edge of the spot counts, whatever the last bit of its position.
  const reach = spot / 2 + 1e-12;
  const inside = (position: number): boolean =>
    position - reach >= first.position - 2e-12 && position + reach <= last.position + 2e-12;
  return profile
    .filter(({ position }) => inside(position))
    .map(({ position }): ProfilePoint => {
      const under = profile.filter((one) => Math.abs(one.position - position) <= reach);
      const mean = under.reduce((sum, one) => sum + one.temperature, 0) / under.length;
      return { position, temperature: mean as Celsius };
    });
}
