/**
 * Entry of the whole simulated bench, bundled and started by `run.mjs`: shares the modules among worker threads and
 * prints the tables.
 */
import { writeFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { isMainThread, parentPort, Worker, workerData } from "node:worker_threads";
import { diagnose } from "electroheat/bench";
import { benchStretch, type Refereed, refereed, type Stretch } from "./bench.ts";
import type { Mark } from "./score.ts";
import type { Population } from "./simulate.ts";
import { tables } from "./tables.ts";

const DEFAULTS = {
  seed: 20_260,
  modules: 11_200,
  blunder: 600,
  invisible: 400,
  referee: 24,
  workers: availableParallelism(),
};

/** `--seed 7 --modules 2000 --workers 1 --marks marks.json`. */
function settings(args: readonly string[]): typeof DEFAULTS & { readonly marks?: string } {
  const found: Record<string, string | number> = { ...DEFAULTS };
  for (let i = 0; i < args.length; i += 2) {
    const key = (args[i] as string).replace(/^--/, "");
    const value = args[i + 1];
    if (value === undefined || !(key in DEFAULTS || key === "marks"))
      throw new Error(`unknown option --${key}`);
    found[key] = key === "marks" ? value : Number(value);
  }
  return found as unknown as typeof DEFAULTS & { readonly marks?: string };
}

/** Worlds drawn per set of faults by the referee. */
const WORLDS = 3000;

async function shared<Found extends { readonly index: number }>(
  population: Population,
  seed: number,
  count: number,
  workers: number,
): Promise<Found[]> {
  const stretches = Array.from(
    { length: workers },
    (_, from): Stretch => ({ seed, population, from, to: count, step: workers }),
  );
  const parts = await Promise.all(
    stretches.map(
      (stretch) =>
        new Promise<Found[]>((resolve, reject) => {
          const worker = new Worker(new URL(import.meta.url), { workerData: stretch });
          worker.once("message", resolve);
          worker.once("error", reject);
        }),
    ),
  );
  return parts.flat().sort((a, b) => a.index - b.index);
}

if (isMainThread) {
  const { seed, modules, blunder, invisible, referee, workers, marks } = settings(process.argv.slice(2));
  const start = performance.now();
  const results = {
    main: await shared<Mark>("main", seed, modules, workers),
    blunder: await shared<Mark>("blunder", seed, blunder, workers),
    invisible: await shared<Mark>("invisible", seed, invisible, workers),
    referee: await shared<Refereed>("referee", seed, referee, workers),
  };
  const minutes = (performance.now() - start) / 60_000;
  console.log(
    `Simulated bench: ${modules} modules, seed ${seed}, ${minutes.toFixed(1)} min on ${workers} threads`,
  );
  console.log(tables(results));
  if (marks !== undefined) writeFileSync(marks, JSON.stringify(results));
} else {
  const stretch = workerData as Stretch;
  parentPort?.postMessage(
    stretch.population === "referee"
      ? refereed(stretch, WORLDS, diagnose)
      : benchStretch(stretch, diagnose, () => performance.now()),
  );
}
