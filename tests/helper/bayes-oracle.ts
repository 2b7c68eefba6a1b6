// A general-purpose exact inference library, held at arm's length: its networks are plain tables, and its
// answers are never rounded (its `inferAll` rounds, so it is not used).
import type { IInfer, INetwork, INode } from "bayesjs";
import bayes from "bayesjs";

export type Network = INetwork;
export type Evidence = Readonly<Record<string, string>>;

/** A node by its table: one row for each combination of parent states, the last parent fastest. */
export interface TableNode {
  readonly id: string;
  readonly states: readonly string[];
  readonly parents: readonly string[];
  readonly table: readonly (readonly number[])[];
}

/** The exact algorithms of the library; they share little but the tables. */
export const ALGORITHMS: Readonly<Record<"elimination" | "junction tree", IInfer>> = {
  elimination: bayes.inferences.variableElimination.infer,
  "junction tree": bayes.inferences.junctionTree.infer,
};

export function networkOf(nodes: readonly TableNode[]): Network {
  const byId = new Map(nodes.map((node) => [node.id, node]));
  return Object.fromEntries(
    nodes.map((node): [string, INode] => {
      const parents = node.parents.map((id) => byId.get(id) as TableNode);
      const rows = combinations(parents.map(({ states }) => states));
      if (rows.length !== node.table.length) throw new Error(`${node.id}: one row a combination`);
      const spread = (row: readonly number[]): Record<string, number> =>
        Object.fromEntries(node.states.map((state, i) => [state, row[i] as number]));
      const cpt = parents.length
        ? rows.map((states, i) => ({
            when: Object.fromEntries(node.parents.map((id, k) => [id, states[k] as string])),
            // biome-ignore lint/suspicious/noThenProperty: the library's own name for a row
            then: spread(node.table[i] as readonly number[]),
          }))
        : spread(node.table[0] as readonly number[]);
      return [node.id, { id: node.id, states: [...node.states], parents: [...node.parents], cpt }];
    }),
  );
}

/**
 * P(node = state | evidence). The library remembers by object identity, so it gets copies: the answer
 * then never is one to an earlier question.
 */
export function ask(infer: IInfer, network: Network, of: Evidence, given: Evidence = {}): number {
  return infer({ ...network }, { ...of }, { ...given });
}

/** Every combination of one entry from each list, the last list fastest. */
export function combinations<T>(lists: readonly (readonly T[])[]): readonly (readonly T[])[] {
  return lists.reduce<readonly (readonly T[])[]>(
    (sofar, list) => sofar.flatMap((head) => list.map((entry) => [...head, entry])),
    [[]],
  );
}
