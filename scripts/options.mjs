/** The words behind a command, for scripts that hand the rest on to another program. */
export const words = process.argv.slice(2);

/**
 * Takes an option out of the words with the value behind it.
 * @param {string} name such as `--seed`
 * @returns {string | undefined} its value; undefined where it was not given
 */
export function option(name) {
  const at = words.indexOf(name);
  return at < 0 ? undefined : words.splice(at, 2)[1];
}
