/** What a rule looks for and why, out of the rule object itself, so that it cannot differ from what is checked. */
import { rules } from '../../rules/generated/registry';
import { deliver } from '../deliver';
import { nearest } from '../nearest';
import { type CommandSpec, OUTPUT, Refusal } from '../spec';

export const explain: CommandSpec = {
  name: 'explain',
  summary: 'Says what a rule looks for, why, and where that comes from; without a rule it lists all of them.',
  places: { words: '[rule]', least: 0, most: 1, names: 'rule' },
  options: [OUTPUT],
  about: ['A rule goes by the name that a finding has behind its severity.'],
  exits: [
    [0, 'it was explained'],
    [2, 'there is no such rule; the nearest name is said'],
  ],
  examples: [
    ['explain lamp-unlimited', 'one rule'],
    ['explain', 'all of them, one a line'],
  ],
  async run(given, here) {
    const [rule] = given.places;
    const explanation = rule === undefined ? { ok: true as const, text: listRules() } : explainRule(rule);
    if (!explanation.ok) {
      throw new Refusal(explanation.why);
    }
    deliver(explanation.text, given, here);
    return 0;
  },
};

/** The text on a rule, or a sentence that says there is none by that name. */
export type Explanation =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly why: string };

/** Lists all rules, one a line. */
export function listRules(): string {
  const widest = Math.max(0, ...rules.map((rule) => rule.id.length));
  return rules.map((rule) => `${rule.id.padEnd(widest)}  ${rule.title}\n`).join('');
}

/** Explains one rule. */
export function explainRule(id: string): Explanation {
  const rule = rules.find((known) => known.id === id);
  if (rule === undefined) {
    const ids = rules.map((known) => known.id);
    const near = nearest(id, ids);
    const way = near === undefined ? 'wiretrue explain lists all rules.' : `Did you mean ${near}?`;
    return { ok: false, why: `There is no rule "${id}". ${way}` };
  }
  const text = [
    `${rule.id} (${rule.severity}${rule.maturity === 'new' ? ', new' : ''})`,
    '',
    rule.title,
    '',
    rule.why,
    '',
    `Source: ${rule.source}`,
    '',
    'To weigh it differently, write into hardware.jsonc:',
    `  "severity": { "${rule.id}": "off" }   or "error", "warning", "information", "hint"`,
    '',
  ];
  return { ok: true, text: text.join('\n') };
}
