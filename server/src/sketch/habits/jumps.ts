/** Restarts by a jump to address zero. */
import type { JumpHabit } from '../../base/habit';
import type { Variable } from '../form/ast';
import type { Bodies } from './bodies';

export function jumpsOf(bodies: Bodies): JumpHabit[] {
  const jumps: JumpHabit[] = [];
  let pointers: ReadonlySet<string> | undefined;
  for (const body of bodies.all) {
    const { notes, name } = body;
    for (const place of notes.nullCalls)
      jumps.push({ kind: 'jump', span: bodies.span(body, place), function: name, how: 'pointer' });
    for (const place of notes.assembler) {
      if (!/\b(?:r?jmp|r?call)\s+0(?:x0+)?\b/i.test(bodies.textOf(body.site, place))) continue;
      jumps.push({ kind: 'jump', span: bodies.span(body, place), function: name, how: 'assembler' });
    }
    pointers ??= nullPointers(bodies);
    if (pointers.size === 0) continue;
    for (const pointer of pointers) {
      const place = notes.called.get(pointer);
      if (place === undefined || body.item.locals.includes(pointer)) continue;
      jumps.push({ kind: 'jump', span: bodies.span(body, place), function: name, how: 'pointer' });
    }
  }
  return jumps;
}

/** Pointers to functions that are zero and stay so. */
function nullPointers(bodies: Bodies): ReadonlySet<string> {
  const names = new Set<string>();
  for (const start of bodies.program.starts) {
    if (start.kind !== 'variables' || start.owner !== '') continue;
    for (const variable of start.variables) {
      const { name } = variable;
      if (!isNull(bodies, variable) || (bodies.globals.get(name)?.length ?? 0) !== 1) continue;
      if (bodies.all.some(({ notes }) => notes.sets.some((set) => set.name === name))) continue;
      names.add(name);
    }
  }
  return names;
}

function isNull(bodies: Bodies, { type, value }: Variable): boolean {
  const isZero =
    (value?.kind === 'number' && value.value === 0) ||
    (value?.kind === 'name' && /^(?:NULL|nullptr)$/.test(value.name));
  if (!isZero) return false;
  const alias = bodies.program.aliases.get(type.name);
  return (type.name === 'void' && type.pointers > 0) || (alias?.type.name === 'void' && type.pointers === 0);
}
