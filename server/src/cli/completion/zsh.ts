/** Completion for zsh with its completion system loaded. */
import type { OptionSpec } from '../spec';
import { type Known, type Offer, offerOf, optionsOf, quoted } from './known';

/** The script: a file of `fpath` by the name `_wiretrue`, or to be sourced. */
export function zshCompletion(known: Known): string {
  const { commands } = known;
  return [
    '#compdef wiretrue',
    '# Completion of wiretrue for zsh. Written by: wiretrue completion zsh',
    '_wiretrue() {',
    '  local -a commands',
    '  commands=(',
    ...commands.map(({ name, summary }) => `    ${quoted(`${name}:${summary.replaceAll(':', '\\:')}`)}`),
    '  )',
    '  if (( CURRENT == 2 )); then',
    "    _describe -t commands 'command' commands",
    `    _arguments ${known.common.flatMap((option) => argumentsOf(option, known)).join(' ')}`,
    '    return',
    '  fi',
    '  shift words',
    '  (( CURRENT-- ))',
    '  case $words[1] in',
    "    help) _describe -t commands 'command' commands ;;",
    ...commands.flatMap((command) => {
      const { places } = command;
      const offer = offerOf(places, known);
      const place =
        places.most === 0
          ? []
          : [quoted(`${places.most === 1 ? '1' : '*'}:${escaped(places.words)}:${actionOf(offer)}`)];
      const all = [...optionsOf(command, known).flatMap((option) => argumentsOf(option, known)), ...place];
      return [
        `    ${command.name})`,
        '      _arguments \\',
        ...all.map((each, at) => `        ${each}${at === all.length - 1 ? ' ;;' : ' \\'}`),
      ];
    }),
    '  esac',
    '}',
    'if [[ $funcstack[1] == _wiretrue ]]; then _wiretrue "$@"; else compdef _wiretrue wiretrue; fi',
    '',
  ].join('\n');
}

function argumentsOf(option: OptionSpec, known: Known): readonly string[] {
  const { name, short, value, about } = option;
  const taken = value === undefined ? '' : `:${escaped(value.words)}:${actionOf(offerOf(value, known))}`;
  const told = `[${escaped(about)}]${taken}`;
  const sign = value === undefined ? '' : '=';
  if (short === undefined) {
    return [quoted(`--${name}${sign}${told}`)];
  }
  const not = `(-${short} --${name})`;
  return [quoted(`${not}-${short}${told}`), quoted(`${not}--${name}${sign}${told}`)];
}

function actionOf(offer: Offer): string {
  switch (offer.kind) {
    case 'words':
      return `(${offer.words.join(' ')})`;
    case 'files':
      return '_files';
    case 'free':
      return ' ';
  }
}

function escaped(text: string): string {
  return text.replace(/[[\]:\\]/g, (sign) => `\\${sign}`);
}
