/**
 * Runs the tests of one room in this very process, for the mutation tester: loaded once, run for each of thousands of changes. The tester
 * brings all changes in one copy of the code, each behind a switch; a change is tried by its switch.
 *
 * A change in what runs while a file is being loaded (a table's constant, a case worked out before the first test) shows only in a process
 * that is loaded with the switch set. So whatever no test notices here and was passed while loading is tried again in a fresh process
 * (`fresh.mjs`), with the same tests. So is, with the cheapest of all tests, what is worked out once and kept (an index made when first
 * asked for): its code has run by the time the switch is set, and does not run again in this process.
 */
import { spawnSync } from "node:child_process";
import { appendFileSync, existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { PluginKind } from "@stryker-mutator/api/plugin";
import { bundleTests } from "./load.mjs";
import { firstFailure, runOne, switches } from "./switches.mjs";

const room = process.env["ELECTROHEAT_ROOM"] ?? "";
/** What the unchanged run found, for the processes that did not do it. */
const notes = process.env["ELECTROHEAT_MUTATION_NOTES"] ?? "";
/** Where what became of each change is written down as soon as it is known. */
const log = process.env["ELECTROHEAT_MUTATION_LOG"];
const fresh = fileURLToPath(new URL("./fresh.mjs", import.meta.url));
/** Processor time of a test above which it is left out (ms): a change that only such a test notices counts as not noticed. */
const DEAR_MS = 250;
/** Processor time of the tests that are tried together on what is worked out once (ms), the cheapest of all: the score can but be lower. */
const TOGETHER_MS = 2000;
/** Of the time the mutation tester allows: it must not end this process while that one runs on. */
const FRESH_SHARE = 0.8;

/** @typedef {{ cost: Record<string, number>, covers: Record<string, string[]>, loaded: string[], leftOut: string[],
 *   dear: string[], sound: string[] }} Notes */

/**
 * The first of the tests, as many as the time allows.
 * @param {readonly import("./testApi.mjs").Noted[]} tests @param {Readonly<Record<string, number>>} cost
 */
function affordable(tests, cost) {
  let spent = 0;
  return tests.filter(({ id }) => {
    spent += cost[id] ?? 0;
    return spent <= TOGETHER_MS;
  });
}

class RoomRunner {
  /** @type {import("./testApi.mjs").Noted[]} */
  tests = [];
  /** @type {Set<() => unknown>} */
  done = new Set();
  bundle = "";
  /** @type {Notes | undefined} */
  notes = undefined;

  capabilities() {
    return { reloadEnvironment: true };
  }

  async init() {
    this.bundle = await bundleTests(room, `mutation-${process.pid}.mjs`);
    switches.activeMutant = undefined;
    const bundle = await import(pathToFileURL(this.bundle).href);
    switches.currentTestId = "code";
    await bundle.loadCode();
    await bundle.noteTests((/** @type {string} */ file) => {
      switches.currentTestId = file;
    });
    switches.currentTestId = undefined;
    this.tests = bundle.noted;
  }

  async dryRun() {
    /** @type {Notes} */
    const found = { cost: {}, covers: {}, loaded: [], leftOut: [], dear: [], sound: [] };
    const results = [];
    for (const test of this.tests) {
      const { id, name, file } = test;
      switches.currentTestId = id;
      const [start, used] = [performance.now(), process.cpuUsage()];
      let failure;
      try {
        await runOne(test, this.done);
      } catch (error) {
        failure = String(/** @type {any} */ (error)?.message ?? error);
      }
      switches.currentTestId = undefined;
      const timeSpentMs = performance.now() - start;
      const { user, system } = process.cpuUsage(used);
      found.cost[id] = (user + system) / 1000;
      const result = { id, name, timeSpentMs, fileName: file };
      results.push({ ...result, status: failure === undefined ? 0 : 2 });
      if (failure !== undefined) found.leftOut.push(id);
      else if ((found.cost[id] ?? 0) > DEAR_MS) found.dear.push(id);
    }
    // Most of these count how often a property met a case, which a tenth of the runs does not reach.
    if (found.leftOut.length > 0)
      console.log(`Left out, failing on the unchanged code with few runs:\n${found.leftOut.join("\n")}`);
    const hits = switches.mutantCoverage?.perTest ?? {};
    if (found.dear.length > 0) console.log(`Left out, taking long:\n${found.dear.join("\n")}`);
    const sound = this.tests.filter(({ id }) => !found.leftOut.includes(id) && !found.dear.includes(id));
    for (const { id } of sound)
      for (const change of Object.keys(hits[id] ?? {})) {
        found.covers[change] ??= [];
        found.covers[change].push(id);
      }
    /** @type {Record<string, Record<string, number>>} */
    const perTest = {};
    const loaded = new Set();
    for (const { id, file } of sound) {
      const whileLoading = { ...hits["code"], ...hits[file] };
      for (const change of Object.keys(whileLoading)) loaded.add(change);
      perTest[id] = { ...whileLoading, ...hits[id] };
    }
    found.loaded = [...loaded];
    found.sound = sound.map(({ id }) => id);
    // What only a test that is left out has run may be something worked out once, which the others then found ready.
    const first = found.sound[0];
    const left = Object.assign({}, ...[...found.leftOut, ...found.dear].map((id) => hits[id]));
    if (first !== undefined)
      for (const change of Object.keys(left))
        if (!(change in found.covers || loaded.has(change)))
          perTest[first] = { ...perTest[first], [change]: 1 };
    writeFileSync(notes, JSON.stringify(found));
    return { status: "complete", tests: results, mutantCoverage: { static: {}, perTest } };
  }

  /**
   * Notes what became of a change beside trying it: a run that is stopped has then been worth what it had done.
   * @param {import("@stryker-mutator/api/test-runner").MutantRunOptions} options
   */
  async mutantRun(options) {
    const start = performance.now();
    const result = await this.tried(options);
    const { fileName, location, mutatorName, replacement } = options.activeMutant;
    const [, file] = fileName.split(/(?=src[\\/])/);
    const note = {
      file,
      location,
      mutatorName,
      replacement,
      ...result,
      ms: Math.round(performance.now() - start),
    };
    if (log !== undefined) appendFileSync(log, `${JSON.stringify(note)}\n`);
    return result;
  }

  /** @param {import("@stryker-mutator/api/test-runner").MutantRunOptions} options */
  async tried({ activeMutant: { id }, testFilter, hitLimit, timeout }) {
    this.notes ??= /** @type {Notes} */ (JSON.parse(readFileSync(notes, "utf8")));
    const { cost, covers, loaded, sound } = this.notes;
    const cheapest = (/** @type {Iterable<string>} */ ids) => {
      const wanted = new Set(ids);
      return this.tests
        .filter((test) => wanted.has(test.id))
        .sort((a, b) => (cost[a.id] ?? 0) - (cost[b.id] ?? 0));
    };
    const now = cheapest(covers[id] ?? []);
    Object.assign(switches, { activeMutant: id, hitCount: 0, hitLimit });
    const failed = await firstFailure(now, this.done);
    const met = (switches.hitCount ?? 0) > 0;
    const endless = hitLimit !== undefined && (switches.hitCount ?? 0) > hitLimit;
    Object.assign(switches, { activeMutant: undefined, hitCount: undefined });
    if (endless) return { status: "timeout", reason: "a loop that does not end" };
    if (failed)
      return {
        status: "killed",
        killedBy: [failed.id],
        failureMessage: failed.message,
        nrOfTests: now.length,
      };
    const isLoaded = loaded.includes(id);
    const again = isLoaded ? cheapest(testFilter ?? sound) : met ? [] : affordable(cheapest(sound), cost);
    const nrOfTests = now.length + again.length;
    if (again.length === 0) return { status: "survived", nrOfTests };
    const list = join(process.cwd(), `mutation-${process.pid}.json`);
    writeFileSync(list, JSON.stringify(again.map((test) => test.id)));
    const limit = Math.ceil(FRESH_SHARE * timeout);
    const run = spawnSync(process.execPath, [fresh, this.bundle, list, id], {
      encoding: "utf8",
      timeout: limit,
    });
    if (run.status === 0 || (run.status !== 1 && !isLoaded)) return { status: "survived", nrOfTests };
    if (run.status !== 1) return { status: "timeout", reason: run.stderr || "no answer in time" };
    const [killer = "", message = ""] = run.stdout.split("\n");
    return { status: "killed", killedBy: [killer], failureMessage: message, nrOfTests };
  }

  dispose() {
    for (const end of ["mjs", "json"]) {
      const path = join(process.cwd(), `mutation-${process.pid}.${end}`);
      if (existsSync(path)) rmSync(path);
    }
  }
}

export const strykerPlugins = [
  { kind: PluginKind.TestRunner, name: "room", factory: () => new RoomRunner() },
];
