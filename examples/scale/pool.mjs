// Columns shared between worker threads, each filling its own part of the result.
//   node examples/scale/pool.mjs [rows] [workers]
import { availableParallelism } from "node:os";
import { fileURLToPath, pathToFileURL } from "node:url";
import { Worker } from "node:worker_threads";
import { columnsOf } from "./records.mjs";

/**
 * @typedef {object} Pool
 * @property {(columns: readonly Float64Array[], out: Float64Array) => Promise<void>} fill the columns must lie in shared memory
 * @property {() => Promise<unknown>} end
 */

/** @param {number} size @returns {Pool} */
export function pool(size) {
  const workers = Array.from(
    { length: size },
    () => new Worker(fileURLToPath(new URL("./worker.mjs", import.meta.url))),
  );
  return {
    async fill(columns, out) {
      const step = Math.ceil(out.length / size);
      await Promise.all(
        workers.map(
          (worker, k) =>
            new Promise((done, failed) => {
              worker.once("message", done);
              worker.once("error", failed);
              worker.postMessage({ columns, out, from: k * step, to: Math.min(out.length, (k + 1) * step) });
            }),
        ),
      );
    },
    end: () => Promise.all(workers.map((worker) => worker.terminate())),
  };
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const rows = Number(process.argv[2] ?? 1_000_000);
  const size = Number(process.argv[3] ?? availableParallelism());
  const shared = (/** @type {number} */ bytes) => new SharedArrayBuffer(bytes);
  const columns = columnsOf(rows, shared);
  const out = new Float64Array(shared(rows * 8));
  const workers = pool(size);
  await workers.fill(columns, out);
  const start = performance.now();
  await workers.fill(columns, out);
  const seconds = (performance.now() - start) / 1000;
  await workers.end();
  const total = out.reduce((sum, heat) => (Number.isNaN(heat) ? sum : sum + heat), 0);
  console.log(`${rows} modules on ${size} threads, ${(total / 1e6).toFixed(3)} MW in all`);
  console.log(`${(rows / seconds / 1e6).toFixed(2)} million rows a second`);
}
