/** Random bench records by seed, with the truth they were made from. Readings by the forward models of the tests. */
import type { BenchRecord, RecordOhms } from "electroheat/bench";
import { Chance } from "../support/networks.ts";
import { deltaReadings, LINES, PAIRS, starReadings, type Three } from "./forward.ts";

export interface MadeRecord {
  readonly record: BenchRecord;
  /** Branch name to true cold resistance; Infinity for an open one. */
  readonly truth: ReadonlyMap<string, number>;
  /** The open branch, if there is one. */
  readonly open: string | null;
}

/** One to three banks, each read with its links lifted; readings to 0.01 Ω inside ±(0.5 % + 2 digits). */
export function madeRecord(seed: number, options: { readonly open: boolean }): MadeRecord {
  const chance = new Chance(seed);
  const count = chance.whole(1, 3);
  const nominalPower = 1000 * chance.whole(5, 60) * count;
  const voltage = chance.pick([208, 240, 400, 480]);
  const factor = chance.happens(0.5) ? 1 + chance.between(0.01, 0.09) : undefined;
  const banks = Array.from({ length: count }, (_, i) => ({
    id: "ABC".charAt(i),
    connection: chance.pick(["star", "delta"] as const),
    ...(chance.happens(0.3) ? { elementsInParallel: chance.whole(1, 3) } : {}),
  }));
  const stars = banks.filter(({ connection }) => connection === "star").length;
  const starPoints = chance.pick(["tied", "separate"] as const);
  const leads = chance.between(0.05, 0.4);
  const openBank = options.open ? chance.whole(0, count - 1) : -1;
  const openPlace = chance.whole(0, 2);
  const truth = new Map<string, number>();
  let open: string | null = null;
  const read = (value: number): string => {
    if (value === Number.POSITIVE_INFINITY) return "OL";
    const bare = value + leads;
    return `${(bare * (1 + chance.between(-0.005, 0.005)) + chance.between(-0.015, 0.015)).toFixed(2)} Ω`;
  };
  const ohms = banks.flatMap(({ id, connection }, b): RecordOhms[] => {
    const target = ((connection === "star" ? 1 : 3) * voltage ** 2) / (nominalPower / count) / (factor ?? 1);
    const values = [0, 1, 2].map((i) =>
      b === openBank && i === openPlace ? Number.POSITIVE_INFINITY : target * chance.between(0.97, 1.03),
    ) as unknown as Three;
    const names =
      connection === "star" ? LINES.map((line) => `${id}-${line}`) : PAIRS.map(([p, q]) => `${id}-${p}${q}`);
    names.forEach((name, i) => {
      truth.set(name, values[i] as number);
    });
    if (b === openBank) open = names[openPlace] as string;
    if (connection === "delta") {
      const seen = deltaReadings(values);
      return PAIRS.map(([from, to], i) => ({ from, to, reads: read(seen[i] as number), alone: id }));
    }
    const point = stars === 1 || starPoints === "tied" ? "S" : `S-${id}`;
    return starReadings(values).map(({ from, to, value }) => ({
      from,
      to: to === "S" ? point : to,
      reads: read(value),
      alone: id,
    }));
  });
  const volt = (): string => `${(voltage * chance.between(0.98, 1.02)).toFixed(1)} V`;
  const record: BenchRecord = {
    title: `invented module ${seed}`,
    nameplate: { power: nominalPower, voltage: `${voltage} V` },
    wiring: { banks, ...(stars > 1 ? { starPoints } : {}) },
    ...(chance.happens(0.7) ? { supply: { v12: volt(), v23: volt(), v31: volt() } } : {}),
    ...(factor === undefined ? {} : { temperatureFactor: factor }),
    tolerance: { low: -0.1, high: 0.1 },
    instruments: { ohmmeter: { ofReading: 0.005, digits: 2, leads: { shorted: `${leads.toFixed(2)} Ω` } } },
    asFound: {
      ohms,
      ...(chance.happens(0.5)
        ? {
            joints: ["J1", "J2", "J3"].map((id) => ({
              id,
              drop: `${chance.between(1, 20).toFixed(1)} mV`,
              current: `${chance.between(10, 90).toFixed(1)} A`,
            })),
          }
        : {}),
    },
  };
  return { record, truth, open };
}

/** Frozen to the last field: whoever writes into it throws. */
export function frozen<T>(value: T): T {
  if (value !== null && typeof value === "object") {
    for (const inner of Object.values(value)) frozen(inner);
    Object.freeze(value);
  }
  return value;
}
