/** Names for parts, from the names that the sketch has for their pins. */
import type { Subject } from '../../subject';
import { nextName } from '../manifest-edits';
import type { Evidence } from './evidence';
import type { Candidate } from './rank';

/** A part's name from a constant's: `ledPin` → `led`, `CALL_PIN` → `call`, a bare number → one after the kind. */
export function partName(subject: Subject, evidence: Evidence, candidate: Candidate): string {
  const wish = plainName(evidence.name) || fallbackOf(candidate);
  const taken = new Set(subject.build.parts.map((part) => part.id.toLowerCase()));
  for (const { id, names } of subject.build.board.pins) {
    for (const word of [id, ...names]) taken.add(word.toLowerCase());
  }
  return taken.has(wish.toLowerCase()) ? nextName(subject, wish) : wish;
}

const fallbacks: Readonly<Record<string, string>> = {
  led: 'lamp',
  'push-button': 'button',
  buzzer: 'sounder',
  potentiometer: 'knob',
  'dc-motor': 'motor',
};

function fallbackOf({ kind, drives }: Candidate): string {
  const thing = drives ?? kind;
  return fallbacks[thing] ?? thing;
}

/** Names that say nothing of the part. */
const empty = /^(_?pins?|p|io|gpio|in|out|[a-z])\d*$/i;

export function plainName(name: string): string {
  if (empty.test(name)) return '';
  if (!/^[A-Za-z_]\w*$/.test(name) || /^A\d+$/.test(name)) {
    return /^[a-z]+(-[a-z]+)+$/.test(name) ? camel(name.split('-')) : '';
  }
  const stem = name.replace(/_?pins?$/i, '').replace(/^pins?_?(?=[A-Z_\d]|$)/i, '') || name;
  // A macro's capitals are a habit of macros, not of parts.
  return camel(
    /[a-z]/.test(stem)
      ? [stem]
      : stem
          .toLowerCase()
          .split('_')
          .filter((word) => word !== ''),
  );
}

function camel(words: readonly string[]): string {
  return words
    .map((word, index) => (index === 0 ? word : word.charAt(0).toUpperCase() + word.slice(1)))
    .join('');
}
