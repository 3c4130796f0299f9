/** Completion for fish. */
import type { OptionSpec } from '../spec';
import { type Known, type Offer, offerOf, optionsOf } from './known';

/** The script, for `~/.config/fish/completions/wiretrue.fish` or to be sourced. */
export function fishCompletion(known: Known): string {
  const lines = [
    '# Completion of wiretrue for fish. Written by: wiretrue completion fish',
    'complete -c wiretrue -e',
    'complete -c wiretrue -f',
  ];
  for (const { name, summary } of known.commands) {
    lines.push(`complete -c wiretrue -n __fish_use_subcommand -a ${name} -d ${quoted(summary)}`);
  }
  lines.push(...known.common.map((option) => optionLine('__fish_use_subcommand', option, known)));
  const names = known.commands.map(({ name }) => name).join(' ');
  lines.push(`complete -c wiretrue -n '__fish_seen_subcommand_from help' -a ${quoted(names)}`);
  for (const command of known.commands) {
    const when = `__fish_seen_subcommand_from ${command.name}`;
    lines.push(...optionsOf(command, known).map((option) => optionLine(when, option, known)));
    if (command.places.most > 0) {
      const offer = offerOf(command.places, known);
      lines.push(
        ...[placesOf(offer)].flatMap((said) =>
          said === '' ? [] : [`complete -c wiretrue -n ${quoted(when)} ${said}`],
        ),
      );
    }
  }
  return `${lines.join('\n')}\n`;
}

function optionLine(when: string, { name, short, value, about }: OptionSpec, known: Known): string {
  const spelled = `${short === undefined ? '' : `-s ${short} `}-l ${name}`;
  const offer = value === undefined ? undefined : offerOf(value, known);
  const taken =
    offer === undefined
      ? ''
      : offer.kind === 'free'
        ? ' -x'
        : offer.kind === 'files'
          ? ' -r -F'
          : ` ${offer.files ? '-r -F' : '-x'} -a ${quoted(offer.words.join(' '))}`;
  return `complete -c wiretrue -n ${quoted(when)} ${spelled}${taken} -d ${quoted(about)}`;
}

function placesOf(offer: Offer): string {
  switch (offer.kind) {
    case 'words':
      return `${offer.files ? '-F ' : ''}-a ${quoted(offer.words.join(' '))}`;
    case 'files':
      return '-F';
    case 'free':
      return '';
  }
}

/** fish knows two escapes inside single quotes. */
function quoted(text: string): string {
  return `'${text.replaceAll('\\', '\\\\').replaceAll("'", "\\'")}'`;
}
