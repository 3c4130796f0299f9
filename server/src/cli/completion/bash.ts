/** Completion for bash 4 and newer. */
import { type Known, type Offer, offerOf, optionsOf, quoted, spellingsOf } from './known';

/** The script. */
export function bashCompletion(known: Known): string {
  const { commands } = known;
  const first = [...commands.map(({ name }) => name), 'help', ...known.common.flatMap(spellingsOf)];
  return [
    '# Completion of wiretrue for bash. Written by: wiretrue completion bash',
    '_wiretrue() {',
    `  local cur=\${COMP_WORDS[COMP_CWORD]} prev=\${COMP_WORDS[COMP_CWORD-1]} command= word`,
    '  COMPREPLY=()',
    '  # bash takes --option=value apart at the sign.',
    `  if [[ $cur == = ]]; then cur=; elif [[ $prev == = ]]; then prev=\${COMP_WORDS[COMP_CWORD-2]}; fi`,
    `  for word in "\${COMP_WORDS[@]:1:COMP_CWORD-1}"; do`,
    '    if [[ $word != -* ]]; then command=$word; break; fi',
    '  done',
    '  case $command in',
    `    '') _wiretrue_words ${quoted(first.join(' '))} ;;`,
    `    help) _wiretrue_words ${quoted(commands.map(({ name }) => name).join(' '))} ;;`,
    ...commands.flatMap((command) => {
      const options = optionsOf(command, known);
      const values = options.flatMap((option) =>
        option.value === undefined
          ? []
          : [
              `        ${spellingsOf(option).join('|')}) ${actionOf(offerOf(option.value, known))}; return ;;`,
            ],
      );
      return [
        `    ${command.name})`,
        ...(values.length === 0 ? [] : ['      case $prev in', ...values, '      esac']),
        `      if [[ $cur == -* ]]; then _wiretrue_words ${quoted(options.flatMap(spellingsOf).join(' '))}`,
        `      else ${actionOf(command.places.most === 0 ? { kind: 'free' } : offerOf(command.places, known))}; fi ;;`,
      ];
    }),
    '  esac',
    '}',
    '# Reads cur of its caller; what is left empty, bash completes to files.',
    '_wiretrue_words() {',
    '  local words',
    '  words=$(compgen -W "$1" -- "$cur")',
    '  if [[ -n $words ]]; then mapfile -t COMPREPLY <<<"$words"; elif [[ -z $2 ]]; then _wiretrue_nothing; fi',
    '}',
    '_wiretrue_nothing() { compopt +o default +o bashdefault 2>/dev/null; }',
    'complete -o bashdefault -o default -F _wiretrue wiretrue',
    '',
  ].join('\n');
}

function actionOf(offer: Offer): string {
  switch (offer.kind) {
    case 'words':
      return `_wiretrue_words ${quoted(offer.words.join(' '))}${offer.files ? ' files' : ''}`;
    case 'files':
      return ':';
    case 'free':
      return '_wiretrue_nothing';
  }
}
