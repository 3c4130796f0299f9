/** Which nodes belong together: a disjoint-set forest over names, used for groups, pieces and loops alike. */

export interface Union {
  /** The name that stands for the group of `name`; a new name starts a group of its own. */
  find(name: string): string;
  join(a: string, b: string): void;
  /** All groups, each in the order of first mention. */
  groups(): readonly (readonly string[])[];
}

export function makeUnion(): Union {
  const parents = new Map<string, string>();
  const find = (name: string): string => {
    let root = name;
    for (let up = parents.get(root); up !== undefined && up !== root; up = parents.get(root)) {
      root = up;
    }
    // Everything on the way points at the root from now on, which keeps long chains cheap.
    let at = name;
    while (at !== root) {
      const up = parents.get(at) ?? root;
      parents.set(at, root);
      at = up;
    }
    parents.set(root, root);
    return root;
  };
  return {
    find,
    join(a, b) {
      // `a` is mentioned first, also where it is new.
      const first = find(a);
      parents.set(find(b), first);
    },
    groups() {
      const byRoot = new Map<string, string[]>();
      for (const name of [...parents.keys()]) {
        const root = find(name);
        const group = byRoot.get(root) ?? [];
        byRoot.set(root, group);
        group.push(name);
      }
      return [...byRoot.values()];
    },
  };
}
