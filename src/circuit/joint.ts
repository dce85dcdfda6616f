/** Joints, jumper bars and conductors put in series with branches of a network. */
import { checkOhmsOrOpen, checkOneOf, fail, given, type Ohms, type Open } from "../quantity/index.ts";
import { checkName, ROLES } from "./branchFields.ts";
import { type BranchRole, checkNetwork, type Network } from "./network.ts";

/** The nodes that every supply builder of this room feeds. */
const FED = ["L1", "L2", "L3", "N"] as const;

/**
 * The same network with a joint (or jumper bar, or conductor) put in series: the named branch ends that land on
 * `at` are landed on a new node instead, and the joint ties that node to `at`.
 *
 * A joint needs something on both sides. At a line the supply is the other side, so everything on the line may lie behind
 * it. At a floating star point nothing else is there: moving every branch end would leave the joint as a dead stub that
 * carries no current, so `behind` must then name the branches on one side of it. A network does not know its supply:
 * `fed` says which nodes it feeds. A node with a single branch end is taken as fed, since nothing but a supply or a
 * meter probe can be on its other side.
 * @param input.network - the network
 * @param input.at - node where the joint is, such as a line or a star point
 * @param input.behind - branches whose current passes through the joint; each must end at `at`. Left out: all that do
 * @param input.fed - nodes fed from outside; L1, L2, L3 and N if left out, as in every supply built here
 * @param input.id - name of the joint; its inner node is called `at|id`
 * @param input.resistance - joint resistance in ohms, 0 or more, or `"open"` for a broken one
 * @param input.role - what it is; a joint if left out
 * @returns a new network with the joint as its last branch
 * @throws ElectroheatError `missing`, `unknown-name`, `inconsistent`, `duplicate`, `not-a-number`, `out-of-range`;
 *   `inconsistent` when nothing would be left on the other side of the joint
 * @example
 * ```ts
 * const network: Network = { branches: [{ id: "R1", from: "L1", to: "L2", resistance: ohms(6.4) }] };
 * const jointed = withJoint({ network, at: "L1", id: "J1", resistance: ohms(0.05) });
 * terminalResistance({ network: jointed, from: "L1", to: "L2" }) // => 6.45
 * ```
 * @since 0.1.0
 */
export function withJoint(input: {
  readonly network: Network;
  readonly at: string;
  readonly behind?: readonly string[];
  readonly fed?: readonly string[];
  readonly id: string;
  readonly resistance: Ohms | Open;
  readonly role?: BranchRole;
}): Network {
  const { network, at, id, resistance, role = "joint", fed = FED } = given(input);
  checkNetwork(network);
  checkName("id", id);
  if (network.branches.some((branch) => branch.id === id))
    fail({ code: "duplicate", path: "id", expected: "a name used once", received: id });
  checkOhmsOrOpen("resistance", resistance);
  checkOneOf("role", role, ROLES);
  const ending = endingAt(network, at);
  const behind = new Set(input.behind ?? ending);
  if (behind.size === 0) {
    fail({ code: "unknown-name", path: "at", expected: "a node with branches on it", received: at });
  }
  for (const name of behind) {
    if (!ending.includes(name)) {
      fail({ code: "inconsistent", path: "behind", expected: `branches that end at ${at}`, received: name });
    }
  }
  refuseStub({ at, ending, behind, fed, path: "behind" });
  const inner = `${at}|${id}`;
  const moved = network.branches.map((branch) =>
    behind.has(branch.id)
      ? {
          ...branch,
          from: branch.from === at ? inner : branch.from,
          to: branch.to === at ? inner : branch.to,
        }
      : branch,
  );
  return { branches: [...moved, { id, from: at, to: inner, resistance, role }] };
}

/** Names of the branches that end on a node. */
export function endingAt(network: Network, at: string): readonly string[] {
  return network.branches.filter((branch) => branch.from === at || branch.to === at).map(({ id }) => id);
}

/** Refuses a joint that would leave nothing but itself on its node: opening it would change nothing. */
export function refuseStub(input: {
  readonly at: string;
  readonly ending: readonly string[];
  readonly behind: ReadonlySet<string>;
  readonly fed: readonly string[];
  readonly path: string;
}): void {
  const { at, ending, behind, fed, path } = input;
  if (ending.length < 2 || behind.size < ending.length || fed.includes(at)) return;
  const shown = `${ending.slice(0, 40).join(", ")}${ending.length > 40 ? ", …" : ""}`;
  fail({
    code: "inconsistent",
    path,
    expected: `the branches on one side of the joint: some, not all, of ${shown} (no line feeds ${at}, so nothing else is on its other side)`,
    received: `all ${ending.length}`,
  });
}
