/** What nobody has found words for yet: told at the end of the guide, so that a gap is seen before it is published. */
import { listHookup } from './hookup-list';
import type { PaperInput } from './paper';
import { resistorOf } from './part-words';

/** What has no words yet: purposes, mountings, lengths, colours, the picture. */
export function wordless({ build, picture }: PaperInput): readonly string[] {
  const { parts, wires } = build;
  const names = (list: readonly { readonly id: string }[]) => list.map(({ id }) => id).join(', ');
  const without = (title: string, list: readonly { readonly id: string }[]) =>
    list.length === 0 ? [] : [`${title}: ${names(list)}.`];
  const numbers = new Map(listHookup(build).map(({ wire, number }) => [wire, number]));
  const wireNames = (title: string, list: typeof wires) => {
    const told = list.map(({ id }) => numbers.get(id) ?? 0).sort((a, b) => a - b);
    return told.length === 0 ? [] : [`${title} (numbers of the hookup list): ${told.join(', ')}.`];
  };
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
      'No length is given for wires',
      wires.filter(({ length }) => length === undefined),
    ),
    ...wireNames(
      'No colour is given for wires',
      wires.filter(({ colour }) => colour === undefined),
    ),
    ...(picture ? [] : ['No picture is given.']),
  ];
}
