/** What nobody has found words for yet: told at the end of the guide, so that a gap is seen before it is published. */
import type { PaperInput } from './paper';
import { resistorOf } from './part-words';
import { endWords } from './words';

/** What has no words yet: purposes, mountings, lengths, colours, the picture. */
export function wordless({ build, picture }: PaperInput): readonly string[] {
  const { parts, wires } = build;
  const names = (list: readonly { readonly id: string }[]) => list.map(({ id }) => id).join(', ');
  const without = (title: string, list: readonly { readonly id: string }[]) =>
    list.length === 0 ? [] : [`${title}: ${names(list)}.`];
  const wireNames = (title: string, list: typeof wires) =>
    list.length === 0
      ? []
      : [`${title}: ${list.map(({ ends }) => ends.map(endWords).join(' to ')).join('; ')}.`];
  return [
    // What a resistor is for follows from its sum.
    ...without(
      'No purpose is given for',
      parts.filter((part) => part.purpose === undefined && !resistorOf(part)),
    ),
    ...without(
      'No mounting note is given for',
      parts.filter(({ mount }) => mount === undefined),
    ),
    ...wireNames(
      'No length is given for',
      wires.filter(({ length }) => length === undefined),
    ),
    ...wireNames(
      'No colour is given for',
      wires.filter(({ colour }) => colour === undefined),
    ),
    ...(picture ? [] : ['No picture is given.']),
  ];
}
