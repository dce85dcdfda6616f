/** The switches of the mutated code, and how a change is tried. Used by the process that tries them all and by the fresh ones. */

/** @type {Record<string, any>} */
const host = globalThis;
host["__stryker__"] ??= {};

/**
 * Shared with the mutated code, which keeps the object it met first.
 * @type {{ activeMutant?: string | undefined, currentTestId?: string | undefined, hitCount?: number | undefined,
 *   hitLimit?: number | undefined,
 *   mutantCoverage?: { static: Record<string, number>, perTest: Record<string, Record<string, number>> } }}
 */
export const switches = host["__stryker__"];

/**
 * Runs a test, and what its suite wants done before it unless that was done already.
 * @param {import("./testApi.mjs").Noted} test @param {Set<() => unknown>} done
 */
export async function runOne(test, done) {
  for (const run of test.before) {
    if (done.has(run)) continue;
    done.add(run);
    await run();
  }
  await test.run();
}

/**
 * Runs tests until one fails.
 * @param {readonly import("./testApi.mjs").Noted[]} tests @param {Set<() => unknown>} done
 * @returns {Promise<{ id: string, message: string } | undefined>} the one that failed
 */
export async function firstFailure(tests, done) {
  for (const test of tests) {
    try {
      await runOne(test, done);
    } catch (error) {
      return { id: test.id, message: String(/** @type {any} */ (error)?.message ?? error) };
    }
  }
  return undefined;
}
