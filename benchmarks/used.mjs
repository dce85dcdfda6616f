/** Sends every vector through the library, the refused ones included: what an engine has seen after a day's work. */
import { readdirSync, readFileSync } from "node:fs";

const folder = new URL("../shared/vectors/", import.meta.url);

/** @returns {{ id: string, call: string, input?: unknown, inputs?: unknown[] }[]} all vectors */
export function allVectors() {
  return readdirSync(folder, { recursive: true })
    .map(String)
    .filter((name) => name.endsWith(".json"))
    .sort()
    .flatMap((name) => JSON.parse(readFileSync(new URL(name, folder), "utf8")).vectors ?? []);
}

/** @returns {Promise<number>} calls made */
export async function throughTheVectors() {
  /** @type {Record<string, Record<string, (...given: unknown[]) => unknown>>} */
  const rooms = {};
  let calls = 0;
  for (const { call, input, inputs } of allVectors()) {
    const [room, name] = /** @type {[string, string]} */ (call.split("."));
    rooms[room] ??= await import(`electroheat/${room}`);
    for (let turn = 0; turn < 3; turn += 1) {
      try {
        rooms[room]?.[name]?.(...(inputs ?? [input]));
      } catch {
        // Refusals are part of the day's work.
      }
      calls += 1;
    }
  }
  return calls;
}
