/**
 * How much current one pin may carry: the board's figures, the pin's own where it has any, and what the strength that
 * the sketch chose by a mode of pinMode gives. Of several strengths the strongest counts, so that nothing is told of a
 * weaker one that is set at another time.
 */
import type { Board, Build, DriveStrength, Sourced } from '../../base/build';
import { formatQuantity } from '../../base/quantity';
import type { PinView } from '../subject';

export interface PinLimit {
  /** Amperes. */
  readonly amps: number;
  /** Where the figure comes from, in words that follow the figure. */
  readonly text: string;
}

export interface PinLimits {
  /** What the pin may carry for good, by the user's policy. */
  readonly working: PinLimit;
  /** What it must never carry. */
  readonly absolute: PinLimit;
}

/** The strongest drive strength that the sketch chooses for a pin; undefined where plain OUTPUT is the strongest. */
export function strengthOf(board: Board, view: PinView): DriveStrength | undefined {
  const strengths = board.limits.driveStrengths ?? [];
  if (strengths.length === 0) return undefined;
  const chosen = new Set<number>();
  let plain = false;
  for (const { action, value, modes = [] } of view.uses) {
    if (!modes.includes('output')) continue;
    const values = action === 'mode' && value?.kind === 'known' ? value.values : undefined;
    if (values === undefined) plain = true;
    for (const number of values ?? []) {
      if (strengths.some(({ mode }) => mode === number)) chosen.add(number);
      else if (board.platform.modes[number] === 'output') plain = true;
    }
  }
  const [strongest] = strengths
    .filter(({ mode }) => chosen.has(mode))
    .sort((a, b) => b.amps.max - a.amps.max);
  if (strongest === undefined) return undefined;
  return plain && strongest.amps.max < board.limits.pinRecommended.max ? undefined : strongest;
}

export function limitsOf({ board, policy }: Build, view: PinView): PinLimits {
  const { pin } = view;
  const ownAbsolute = pin.absoluteAmps;
  const absolute = limit(ownAbsolute ?? board.limits.pinAbsolute, 'absolute maximum, ');
  return { working: workingLimit(board, policy, view, absolute), absolute };
}

function workingLimit(board: Board, policy: Build['policy'], view: PinView, absolute: PinLimit): PinLimit {
  const { recommendedAmps } = view.pin;
  const own = recommendedAmps && { amps: recommendedAmps.max, text: ownWords(recommendedAmps, view) };
  switch (policy.kind) {
    case 'absolute':
      return view.pin.absoluteAmps ? absolute : { amps: policy.pinAmps, text: policy.text };
    case 'figure':
      // A policy for all pins does not make a weak one stronger.
      return own && own.amps < policy.pinAmps ? own : { amps: policy.pinAmps, text: policy.text };
    case 'recommended': {
      if (own) return own;
      const strength = strengthOf(board, view);
      if (strength === undefined) return { amps: policy.pinAmps, text: policy.text };
      const { amps, title } = strength;
      return { amps: amps.max, text: `${formatQuantity(amps.max, 'A')}, that of ${title}` };
    }
  }
}

function ownWords({ max }: Sourced, { pin }: PinView): string {
  return `${formatQuantity(max, 'A')}, that of ${pin.id} alone`;
}

function limit(figure: Sourced, before: string): PinLimit {
  return { amps: figure.typ, text: before + figure.source };
}
