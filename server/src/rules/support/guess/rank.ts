/** Kinds of parts for a piece of evidence, the likeliest first, each with the reason in words. */
import type { Evidence } from './evidence';
import { kindsOfWord, usualKinds, type Way } from './words';

export interface Candidate {
  /** Kind of the library; behind a transistor: what it switches. */
  readonly kind: string;
  readonly drives?: string;
  readonly parameters: Readonly<Record<string, string | boolean>>;
  /** Goes on "guessed: …". */
  readonly why: string;
}

/** How a kind can hang on a pin, where that is not by `usualKinds` alone. */
const otherWays: Readonly<Record<string, readonly Way[]>> = {
  servo: ['out'],
  'addressable-strip': ['out'],
  'buzzer:passive': ['tone', 'out'],
  'buzzer:active': ['out'],
  'limit-switch': ['in'],
  'tilt-switch': ['in'],
  'infrared-receiver': ['in'],
  'one-wire-sensor': ['in'],
  'temperature-humidity-sensor': ['in'],
};

function fits(kind: string, way: Way): boolean {
  return usualKinds[way].includes(kind) || otherWays[kind]?.includes(way) === true;
}

/** What one word more is worth beside the order of the usual kinds, which counts in ones. */
const byName = 8;
const byRemark = 4;

export function rankKinds(evidence: Evidence): readonly Candidate[] {
  if (evidence.fixed !== undefined) {
    const { kind, parameters, why } = evidence.fixed;
    return [{ kind, parameters: parameters ?? {}, why }];
  }
  if (evidence.unknownClass !== undefined) return [];
  const scores = new Map<string, { score: number; word?: string }>();
  usualKinds[evidence.way].forEach((kind, index) => {
    scores.set(kind, { score: 1 - index * 0.5 + ownScore(kind, evidence) });
  });
  const hear = (words: readonly string[], worth: number) => {
    words.forEach((word, place) => {
      // Of several words the last is the thing: a lamp button is a button.
      const weight = worth * (place === words.length - 1 ? 1.5 : 1);
      kindsOfWord(word).forEach((kind, index) => {
        if (!fits(kind, evidence.way)) return;
        const now = scores.get(kind) ?? { score: 0 };
        const score = now.score + weight / (index + 1);
        scores.set(kind, { score, word: now.word ?? word });
      });
    });
  };
  hear(evidence.words, byName);
  hear(evidence.remarks, byRemark);
  return [...scores]
    .sort(([, a], [, b]) => b.score - a.score)
    .map(([text, { word }]) => toCandidate(text, word, evidence));
}

function ownScore(kind: string, { pulledUp, duty }: Evidence): number {
  if (pulledUp) return kind === 'push-button' ? 2 : kind === 'digital-sensor' ? -3 : 0;
  return duty && (kind === 'relay-module' || kind === 'buzzer:active' || kind.endsWith('solenoid')) ? -3 : 0;
}

function toCandidate(text: string, word: string | undefined, evidence: Evidence): Candidate {
  const [kind = '', more] = text.split(':');
  const parameters: Record<string, string | boolean> = {};
  if (kind === 'buzzer' && more !== undefined) parameters.drive = more;
  const calls = evidence.calls.slice(0, 2).join(', ');
  const why = word === undefined ? `${calls}, no name that says more` : `the word "${word}", ${calls}`;
  return { kind, parameters, why, ...(kind === 'n-mosfet' && more !== undefined && { drives: more }) };
}
