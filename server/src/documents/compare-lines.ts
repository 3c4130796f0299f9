/**
 * Lines of a sketch that changed, with a little of what stands around them. The shortest edit by Myers' greedy search
 * (An O(ND) Difference Algorithm, 1986, from memory); two files that have next to nothing in common are not searched.
 */

/** Steps of the search: more differences than this are told as one block. */
const mostSteps = 1500;
const around = 2;

interface Step {
  readonly sign: ' ' | '-' | '+';
  readonly text: string;
  /** Lines counted from 1 in the old and the new text, of this line or of the next where it is in one only. */
  readonly old: number;
  readonly fresh: number;
}

/** "@@ line 12, before 11 @@" and the lines with their signs; none where the texts are the same. */
export function compareLines(before: readonly string[], after: readonly string[]): readonly string[] {
  const steps = stepsOf(before, after);
  const near = new Set<number>();
  steps.forEach(({ sign }, index) => {
    if (sign === ' ') return;
    for (let at = index - around; at <= index + around; at++) near.add(at);
  });
  const lines: string[] = [];
  steps.forEach((step, index) => {
    if (!near.has(index)) return;
    if (!near.has(index - 1)) lines.push(`@@ line ${step.fresh}, before ${step.old} @@`);
    lines.push(`${step.sign}${step.text}`);
  });
  return lines;
}

function stepsOf(before: readonly string[], after: readonly string[]): readonly Step[] {
  let start = 0;
  while (start < before.length && start < after.length && before[start] === after[start]) start++;
  let end = 0;
  const most = Math.min(before.length, after.length) - start;
  while (end < most && before[before.length - 1 - end] === after[after.length - 1 - end]) end++;
  const old = before.slice(start, before.length - end);
  const fresh = after.slice(start, after.length - end);
  const signs = [
    ...Array.from({ length: start }, () => ' ' as const),
    ...(shortestEdit(old, fresh) ?? [...old.map(() => '-' as const), ...fresh.map(() => '+' as const)]),
    ...Array.from({ length: end }, () => ' ' as const),
  ];
  let [x, y] = [0, 0];
  return signs.map((sign): Step => {
    const text = (sign === '+' ? after[y] : before[x]) ?? '';
    const step = { sign, text, old: x + 1, fresh: y + 1 };
    if (sign !== '+') x++;
    if (sign !== '-') y++;
    return step;
  });
}

/** The signs of the shortest edit; undefined where it would take too many steps. */
function shortestEdit(before: readonly string[], after: readonly string[]): (' ' | '-' | '+')[] | undefined {
  const [n, m] = [before.length, after.length];
  const reach = Math.min(n + m, mostSteps);
  const size = reach + 1;
  const furthest = new Int32Array(2 * size + 1);
  const trace: Int32Array[] = [];
  for (let steps = 0; steps <= reach; steps++) {
    trace.push(furthest.slice());
    for (let k = -steps; k <= steps; k += 2) {
      const down = k === -steps || (k !== steps && at(furthest, size + k - 1) < at(furthest, size + k + 1));
      let x = down ? at(furthest, size + k + 1) : at(furthest, size + k - 1) + 1;
      let y = x - k;
      while (x < n && y < m && before[x] === after[y]) {
        x++;
        y++;
      }
      furthest[size + k] = x;
      if (x >= n && y >= m) return walkBack(trace, steps, n, m, size);
    }
  }
  return undefined;
}

function walkBack(
  trace: readonly Int32Array[],
  steps: number,
  n: number,
  m: number,
  size: number,
): (' ' | '-' | '+')[] {
  const signs: (' ' | '-' | '+')[] = [];
  let [x, y] = [n, m];
  for (let step = steps; step >= 0; step--) {
    const furthest = trace[step] ?? new Int32Array(0);
    const k = x - y;
    const down = k === -step || (k !== step && at(furthest, size + k - 1) < at(furthest, size + k + 1));
    const from = down ? k + 1 : k - 1;
    const startX = step === 0 ? 0 : at(furthest, size + from);
    const startY = step === 0 ? 0 : startX - from;
    while (x > startX && y > startY) {
      signs.push(' ');
      x--;
      y--;
    }
    if (step > 0) {
      signs.push(down ? '+' : '-');
      x = startX;
      y = startY;
    }
  }
  return signs.reverse();
}

function at(list: Int32Array, index: number): number {
  return list[index] ?? 0;
}
