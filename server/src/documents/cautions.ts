/**
 * What can hurt somebody or burn. General ones by what is in the build, each part's own, and what the checks found
 * wrong: a guide that tells how to solder a fault would be worse than none.
 */
import type { Finding } from '../base/finding';
import type { Block, PaperInput } from './paper';

/** The parts' own caution texts end with their source in brackets; it is kept, as everywhere. */
export function cautionBlocks(input: PaperInput): readonly Block[] {
  const { parts } = input.build;
  const general = [
    'The iron is above 300 degC and its tip looks cold: stand it in its holder, solder in moving air, wear glasses when cutting legs, and wash hands afterwards (common practice).',
    ...(hasSource(input)
      ? [
          'Take batteries out and pull every plug before soldering or changing a wire. A battery gives its short-circuit current at once, and no switch of the board is in its way (common practice).',
        ]
      : ['Pull the USB plug and every supply before soldering or changing a wire (common practice).']),
    ...(hasMoving(input)
      ? [
          'Something moves as soon as it has power: keep fingers, hair and cables away, and make the first run without its load (common practice).',
        ]
      : []),
    'This guide covers extra-low voltage only. Mains stays out of it: what touches mains is built by somebody licensed for it, by the local code; take a closed, approved supply.',
  ];
  const own = parts.flatMap(({ id, title, caution }) => (caution ? [`${id} (${title}): ${caution}`] : []));
  return [...general, ...own].map((text): Block => ({ kind: 'caution', text }));
}

/** Findings that must be cleared before anybody builds. */
export function graveFindings(findings: readonly Finding[]): readonly Finding[] {
  return findings.filter(({ severity }) => severity === 'error' || severity === 'warning');
}

export function findingBlocks({ findings }: PaperInput): readonly Block[] {
  const grave = graveFindings(findings);
  if (grave.length === 0) return [];
  return [
    { kind: 'text', text: 'The checks found these. Clear them before building, or know why they may stay.' },
    ...grave.map(
      ({ message, rule }): Block => ({ kind: 'caution', text: [message, ' (', { code: rule }, ')'] }),
    ),
  ];
}

export function hasSource({ build }: PaperInput): boolean {
  return build.parts.some(({ inside }) => inside.some(({ type }) => type === 'source'));
}

const moving = /servo|motor|solenoid|stepper|pump|\bfan\b/i;

export function hasMoving({ build }: PaperInput): boolean {
  return build.parts.some(({ kind, title }) => moving.test(kind) || moving.test(title));
}
