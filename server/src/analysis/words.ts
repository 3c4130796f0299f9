/**
 * Words for hovers: parts, runs and currents in Markdown. Every word that comes from the user's files is escaped, so
 * that a name can be neither a link nor a command.
 */
import type { Build, End, Part } from '../base/build';
import { formatQuantity, formatRange } from '../base/quantity';
import type { Range } from '../base/range';
import { bandsFor } from '../circuit';
import type { Run } from './runs';

/** Text that Markdown shows as it is: no markup, no links, not even those that a bare address would make. */
export function plain(text: string): string {
  return text
    .replace(/[<>&]/g, (sign) => entities[sign] ?? '')
    .replace(/[\\`*_{}[\]#|~$]/g, (sign) => `\\${sign}`)
    .replace(/:(?=\/\/)|(?<=\bwww)\.|@/gi, (sign) => `\\${sign}`);
}

const entities: Readonly<Record<string, string>> = { '<': '&lt;', '>': '&gt;', '&': '&amp;' };

/** "resistor, 470 ohm (yellow, violet, brown, gold)", "LED, green". */
export function partWords(part: Part, tolerance: number): string {
  const inside = part.inside[0];
  if (part.inside.length === 1 && inside?.type === 'resistor') {
    const own = inside.ohms.typ === 0 ? tolerance : (inside.ohms.max - inside.ohms.typ) / inside.ohms.typ;
    const bands = bandsFor(inside.ohms.typ, Math.round(own * 1e4) / 1e4);
    const shown = bands.ok ? ` (${bands.bands.join(', ')})` : '';
    return `${plain(part.title)}, ${plain(formatQuantity(inside.ohms.typ, 'ohm'))}${shown}`;
  }
  const told = Object.keys(part.valueSpans)
    .filter((key) => !['kind', 'purpose', 'note'].includes(key))
    .flatMap((key) => part.parameters[key] ?? []);
  return [part.title, ...told].map(plain).join(', ');
}

/** "left header, 14th from the USB end": the position without the pin's name in front. */
function positionWords({ pin, position }: Extract<End, { kind: 'pin' }>): string {
  if (!position) return 'no header position is left';
  const { words } = position;
  return plain(words.startsWith(`${pin}, `) ? words.slice(pin.length + 2) : words);
}

function endWords(end: End): string {
  return end.kind === 'pin' ? plain(end.pin) : plain(`${end.part}.${end.terminal}`);
}

/** A run as one line: "D7 —red→ R1 (resistor, 470 ohm …) —red→ beacon (LED, green; in at anode) —black→ GND". */
export function runWords(build: Build, pin: string, run: Run): string {
  const pieces = [`**${plain(pin)}**`];
  for (const { wire, to, part, leave } of run.hops) {
    pieces.push(wire.colour ? `—${plain(wire.colour)}→` : '→');
    if (to.kind === 'pin') {
      pieces.push(`**${plain(to.pin)}** (${positionWords(to)})`);
    } else if (!part || leave === to.terminal) {
      // Only soldered together there: the run does not pass the part.
      pieces.push(endWords(to));
    } else {
      const way = part.terminals.some((terminal) => terminal.polarity) ? `; in at ${plain(to.terminal)}` : '';
      const through = leave !== undefined && way ? `, out at ${plain(leave)}` : '';
      pieces.push(`**${plain(part.id)}** (${partWords(part, build.stock.tolerance)}${way}${through})`);
    }
  }
  if (!run.reachesRail) pieces.push('— and no further');
  return pieces.join(' ');
}

/** "4.9 / 5.9 / 7.1 mA (min / typ / max)". */
export function ampsWords(amps: Range): string {
  const sign = amps.typ < 0 ? -1 : 1;
  const turned = sign < 0 ? { min: -amps.max, typ: -amps.typ, max: -amps.min } : amps;
  return `${formatRange(turned, 'A')} (min / typ / max)`;
}
