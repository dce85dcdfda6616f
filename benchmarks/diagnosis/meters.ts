/** Instruments: three classes, a gain for the session, an error per reading, rounding, and the ohmmeter's leads. */
import type { Ohms } from "electroheat/quantity";
import type { Chance } from "./chance.ts";
import type { Instrument, Instruments } from "./contract.ts";

/** Above it the ohmmeter shows OL. */
const OHMMETER_RANGE = 40e6;
const TESTER_RANGE = 20e9;

interface MeterClass {
  readonly ohmmeter: Instrument;
  readonly clamp: Instrument;
  readonly voltmeter: Instrument;
  readonly millivoltmeter: Instrument;
  readonly insulationTester: Instrument;
}

const accuracy = (percent: number, digits: number, resolution: number): Instrument => ({
  ofReading: percent / 100,
  digits,
  resolution,
});

/** Invented, in the range of what makers state: a bench meter, an everyday one, a coarse one. */
export const METER_CLASSES: readonly MeterClass[] = [
  {
    ohmmeter: accuracy(0.25, 2, 0.001),
    clamp: accuracy(1.5, 3, 0.01),
    voltmeter: accuracy(0.3, 2, 0.1),
    millivoltmeter: accuracy(0.25, 2, 0.01e-3),
    insulationTester: accuracy(3, 2, 100),
  },
  {
    ohmmeter: accuracy(0.5, 2, 0.01),
    clamp: accuracy(2, 3, 0.1),
    voltmeter: accuracy(0.7, 2, 0.1),
    millivoltmeter: accuracy(0.5, 2, 0.1e-3),
    insulationTester: accuracy(3, 3, 1000),
  },
  {
    ohmmeter: accuracy(1, 3, 0.1),
    clamp: accuracy(3, 5, 0.1),
    voltmeter: accuracy(1, 3, 1),
    millivoltmeter: accuracy(1, 3, 0.1e-3),
    insulationTester: accuracy(5, 3, 10_000),
  },
];

/** Far coarser than any real meter: readings that many drawn worlds could have given. */
export const COARSE: MeterClass = {
  ohmmeter: accuracy(4, 2, 0.1),
  clamp: accuracy(6, 3, 0.1),
  voltmeter: accuracy(3, 3, 1),
  millivoltmeter: accuracy(4, 3, 0.1e-3),
  insulationTester: accuracy(5, 3, 10_000),
};

/** One instrument for a session: half of its percentage is a gain that stays, the rest is new with each reading. */
class Meter {
  readonly instrument: Instrument;
  private readonly chance: Chance;
  private readonly gain: number;

  constructor(chance: Chance, instrument: Instrument) {
    this.chance = chance;
    this.instrument = instrument;
    const half = instrument.ofReading / 2;
    this.gain = chance.between(-half, half);
  }

  shows(value: number): number {
    const { ofReading, digits, resolution } = this.instrument;
    const limit = (ofReading / 2) * value + digits * resolution;
    const raw = value * (1 + this.gain) + this.chance.between(-limit, limit);
    // A multiple of the resolution, without the noise of binary fractions.
    return Number((Math.max(0, Math.round(raw / resolution)) * resolution).toPrecision(12));
  }
}

/** The instruments of one session and what the ohmmeter's leads add. */
export class Kit {
  readonly instruments: Instruments;
  private readonly meters: Readonly<Record<keyof MeterClass, Meter>>;
  private readonly leads: number;

  constructor(chance: Chance, types: MeterClass = chance.pick(METER_CLASSES)) {
    const meter = (key: keyof MeterClass): Meter => new Meter(chance, types[key]);
    this.meters = {
      ohmmeter: meter("ohmmeter"),
      clamp: meter("clamp"),
      voltmeter: meter("voltmeter"),
      millivoltmeter: meter("millivoltmeter"),
      insulationTester: meter("insulationTester"),
    };
    const handling = chance.pick(["unknown", "taken off", "shorted"] as const);
    this.leads = handling === "taken off" ? 0 : chance.between(0, 0.5);
    const leads =
      handling === "shorted" ? { shorted: this.meters.ohmmeter.shows(this.leads) as Ohms } : handling;
    this.instruments = { ...types, ohmmeter: { ...types.ohmmeter, leads } };
  }

  ohms(network: number | "open"): number | "open" {
    if (network === "open" || network > OHMMETER_RANGE) return "open";
    return this.meters.ohmmeter.shows(network + this.leads);
  }

  insulation(value: number): number | "open" {
    return value > TESTER_RANGE ? "open" : this.meters.insulationTester.shows(value);
  }

  shows(key: "clamp" | "voltmeter" | "millivoltmeter", value: number): number {
    return this.meters[key].shows(value);
  }
}
