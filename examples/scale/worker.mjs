// One thread of the pool: fills its part of a column that all threads share.
import { parentPort } from "node:worker_threads";
import { plainLoop } from "./records.mjs";

parentPort?.on("message", ({ columns, out, from, to }) => {
  plainLoop(columns, out, from, to);
  parentPort?.postMessage(from);
});
