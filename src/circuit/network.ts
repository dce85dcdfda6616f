/** A module as a network: resistive branches between named nodes, as plain data. */
import { checkOhmsOrOpen, checkOneOf, fail, given, type Ohms, type Open } from "../quantity/index.ts";
import { checkName, ROLES } from "./branchFields.ts";

/**
 * What a branch is, which decides where it appears in results: stress is reported for elements, losses for the rest.
 * @since 0.1.0
 */
export type BranchRole = "element" | "joint" | "jumper bar" | "conductor";

/**
 * One resistive branch between two named nodes.
 * @since 0.1.0
 */
export interface Branch {
  /** Name, unique in the network. */
  readonly id: string;
  /** Node at the end where current is counted as entering. */
  readonly from: string;
  /** Node at the other end. */
  readonly to: string;
  /** Resistance in ohms, 0 or more; `"open"` for a broken path. 0 is an ideal link or a bolted short. */
  readonly resistance: Ohms | Open;
  /** What the branch is; an element if left out. */
  readonly role?: BranchRole;
}

/**
 * Branches between named nodes. Nodes exist by being named.
 * @since 0.1.0
 */
export interface Network {
  /** The branches, in the order results keep. */
  readonly branches: readonly Branch[];
}

/**
 * Checks a network: unique names, two different ends, legal resistances.
 * @param network - the network
 * @throws ElectroheatError `missing`, `duplicate`, `inconsistent`, `not-a-number`, `out-of-range`, `unknown-name`
 * @example
 * ```ts
 * checkNetwork({ branches: [{ id: "R1", from: "L1", to: "L1", resistance: ohms(5) }] }) // throws ElectroheatError
 * ```
 * @since 0.1.0
 */
export function checkNetwork(network: Network): void {
  if (!Array.isArray(network?.branches)) {
    fail({
      code: "missing",
      path: "network.branches",
      expected: "a list of branches",
      received: network?.branches,
    });
  }
  const seen = new Set<string>();
  for (let i = 0; i < network.branches.length; i += 1) checkBranch(network.branches[i] as Branch, i, seen);
}

function checkBranch(branch: Branch, position: number, seen: Set<string>): void {
  if (typeof branch !== "object" || branch === null) {
    fail({
      code: "wrong-type",
      path: `network.branches.${position}`,
      expected: "a branch",
      received: branch,
    });
  }
  const { id, from, to, resistance, role } = branch;
  // The path is text built only on failure: this runs once for every branch of every solve.
  const path = (field: string): string => `network.branches.${position}.${field}`;
  if (typeof id !== "string" || id === "") checkName(path("id"), id);
  if (typeof from !== "string" || from === "") checkName(path("from"), from);
  if (typeof to !== "string" || to === "") checkName(path("to"), to);
  seen.add(id);
  if (seen.size === position)
    fail({ code: "duplicate", path: path("id"), expected: "a name used once", received: id });
  if (from === to) {
    fail({
      code: "inconsistent",
      path: path("to"),
      expected: "two different nodes",
      received: `${from} to ${to}`,
    });
  }
  if (resistance !== "open" && !(typeof resistance === "number" && resistance >= 1e-9 && resistance <= 1e9)) {
    checkOhmsOrOpen(path("resistance"), resistance);
  }
  if (role !== undefined && role !== "element" && !ROLES.includes(role))
    checkOneOf(path("role"), role, ROLES);
}

/**
 * Finds a branch by name, listing the names there are when it is not one of them.
 * @param input.network - the network
 * @param input.id - the branch's name
 * @returns the branch
 * @throws ElectroheatError `unknown-name`
 * @example
 * ```ts
 * findBranch({ network: { branches: [] }, id: "A-L1" }) // throws ElectroheatError
 * ```
 * @since 0.1.0
 */
export function findBranch(input: { readonly network: Network; readonly id: string }): Branch {
  const { network, id } = given(input);
  const branches = given(network, "network").branches;
  const found = branches.find((branch) => branch.id === id);
  if (found !== undefined) return found;
  const known = branches.map((branch) => branch.id);
  const shown = known.length > 40 ? `${known.slice(0, 40).join(", ")}, …` : known.join(", ");
  return fail({
    code: "unknown-name",
    path: "id",
    expected: `a branch: one of ${shown}`,
    received: id,
  });
}

/**
 * The same network with one branch's resistance replaced: an element opened, bolted, aged or renewed.
 * @param input.network - the network
 * @param input.id - the branch
 * @param input.resistance - its new resistance in ohms, 0 or more, or `"open"`
 * @returns a new network; the given one is untouched
 * @throws ElectroheatError `unknown-name`, `not-a-number`, `out-of-range`
 * @example
 * ```ts
 * const network: Network = { branches: [{ id: "R1", from: "L1", to: "L2", resistance: ohms(5) }] };
 * withResistance({ network, id: "R1", resistance: "open" }).branches[0]?.resistance // => "open"
 * ```
 * @since 0.1.0
 */
export function withResistance(input: {
  readonly network: Network;
  readonly id: string;
  readonly resistance: Ohms | Open;
}): Network {
  const { network, id, resistance } = given(input);
  findBranch({ network, id });
  checkOhmsOrOpen("resistance", resistance);
  return {
    branches: network.branches.map((branch) => (branch.id === id ? { ...branch, resistance } : branch)),
  };
}
