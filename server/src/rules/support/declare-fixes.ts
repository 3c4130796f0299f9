/** Ways to declare what hangs on a pin that the sketch uses: the likeliest part first, then bare wires. */
import type { Fix } from '../../base/finding';
import { insertWire } from '../../hardware';
import type { Subject } from '../subject';
import { draftManifest, type Step } from './draft';
import { gatherEvidence } from './guess/evidence';
import { partName, plainName } from './guess/names';
import { rankKinds } from './guess/rank';
import { makeRecipe } from './guess/recipes';

/** What the sketch says of the pin. */
export interface Undeclared {
  readonly pin: string;
  readonly actions: readonly string[];
  /** The pin as the sketch writes it: a constant's name or a number. */
  readonly name: string;
}

/** So many kinds are offered: a longer list is not read. */
const mostKinds = 4;

/** Alternatives, the likeliest first. */
export function declarePart(subject: Subject, detail: Undeclared): readonly Fix[] {
  return [...guessedParts(subject, detail), ...bareWires(subject, detail)];
}

function guessedParts(subject: Subject, detail: Undeclared): readonly Fix[] {
  const pieces = gatherEvidence(subject, (view) => view.wires.length === 0 && view.onBoard.length === 0);
  const evidence = pieces.find((piece) => piece.pins.some(({ pin }) => pin === detail.pin));
  if (evidence === undefined) return [];
  const kinds = { get: (kind: string) => subject.partKind?.(kind) };
  return rankKinds(evidence)
    .slice(0, mostKinds)
    .flatMap((candidate): Fix[] => {
      const name = partName(subject, evidence, candidate);
      const recipe = makeRecipe(subject, evidence, candidate, { name, kinds });
      if (recipe === undefined) return [];
      const edits = draftManifest(subject, recipe.steps);
      return [{ title: `Declare ${recipe.title}`, trust: 'ask', edits }];
    });
}

/** A wire to a declared part's open terminal: parts named like the pin first, three at the most. */
function bareWires(subject: Subject, detail: Undeclared): readonly Fix[] {
  const wired = new Set<string>();
  for (const wire of subject.build.wires) {
    for (const end of wire.ends) if (end.kind === 'terminal') wired.add(`${end.part}.${end.terminal}`);
  }
  const wish = plainName(detail.name).toLowerCase();
  const open = subject.build.parts.flatMap((part) =>
    part.terminals
      .filter((terminal) => !wired.has(`${part.id}.${terminal.id}`))
      .slice(0, 1)
      .map((terminal) => ({ part: part.id, terminal: terminal.id })),
  );
  const likely = (part: string) => (wish !== '' && part.toLowerCase() === wish ? 0 : 1);
  return open
    .sort((a, b) => likely(a.part) - likely(b.part))
    .slice(0, 3)
    .map(({ part, terminal }) => ({
      title: `Declare a wire from ${detail.pin} to ${part}.${terminal}`,
      trust: 'ask' as const,
      edits: draftManifest(subject, [addWire({ from: detail.pin, to: `${part}.${terminal}` })]),
    }));
}

function addWire(entry: Parameters<typeof insertWire>[1]): Step {
  return (text, file) => insertWire(text, entry, file);
}
