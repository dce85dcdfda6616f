/** Names that the wiring entered so far gives to nodes, banks and branches: suggestions, as the library names them. */

const LINES = ["L1", "L2", "L3"];
const PAIRS = ["L1L2", "L2L3", "L3L1"];

/** @param {Record<string, unknown>} record @returns {[nodes: string[], parts: string[]]} */
export function namesOf(record) {
  const wiring =
    /** @type {{ banks?: { id?: unknown, connection?: unknown }[], starPoints?: unknown, neutral?: unknown }} */ (
      record["wiring"] ?? {}
    );
  const banks = (wiring.banks ?? []).flatMap(({ id, connection }) =>
    typeof id === "string" ? [{ id, star: connection !== "delta" }] : [],
  );
  const stars = banks.filter(({ star }) => star);
  const separate = stars.length > 1 && wiring.starPoints !== "tied";
  const points = separate ? stars.map(({ id }) => `S-${id}`) : stars.length > 0 ? ["S"] : [];
  const common = wiring.neutral === "connected" ? ["N"] : points;
  const branches = banks.flatMap(({ id, star }) => (star ? LINES : PAIRS).map((branch) => `${id}-${branch}`));
  return [
    [...LINES, ...common],
    [...banks.map(({ id }) => id), ...branches],
  ];
}
