/**
 * Makes what follows from the rules: a page a rule, the index, the table in README.md and the list of ids that
 * completes the manifest's `severity`. Pure: returns texts by path.
 */

import { openTestBench, type TestBench } from '../../test/fixture/bench';
import { drawFindings } from '../../test/fixture/draw-findings';
import { readFixture } from '../../test/fixture/read-fixture';
import { rules } from '../src/rules/generated/registry';
import type { Example, Rule } from '../src/rules/rule';

const needsWords = {
  reading: 'the files as they are read',
  sketch: 'the sketch and the board',
  hardware: 'the sketch and the wiring',
  circuit: 'the sketch, the wiring and the sums',
} as const;

/** Pages and index by path relative to the repository. */
export async function makePages(): Promise<Map<string, string>> {
  const bench = await openTestBench();
  const pages = new Map<string, string>();
  for (const rule of rules) pages.set(`server/docs/rules/${rule.id}.md`, page(rule, bench));
  pages.set('server/docs/rules/README.md', index());
  pages.set('hardware-schemas/rule-ids.schema.json', ruleIdsSchema());
  return pages;
}

function page(rule: Rule, bench: TestBench): string {
  const lines = [
    `<!-- Made from server/src/rules/${rule.id}.ts by \`npm run generate\`. -->`,
    `# ${rule.id}`,
    '',
    rule.title,
    '',
    `**Why it matters.** ${rule.why}`,
    '',
    `**Source.** ${rule.source}`,
    '',
    `**Severity.** ${rule.severity}; it reads ${needsWords[rule.needs]}.`,
    `Another severity for one project: \`"severity": { "${rule.id}": "hint" }\` in its \`hardware.jsonc\`, or \`"off"\`.`,
  ];
  for (const example of rule.examples) lines.push('', ...exampleLines(rule, example, bench));
  return `${lines.join('\n')}\n`;
}

function exampleLines(rule: Rule, example: Example, bench: TestBench): string[] {
  const fixture = readFixture(example.build);
  const snapshot = bench.analyse(fixture.files);
  const faulty = snapshot.findings.some((finding) => finding.rule === rule.id);
  const lines = [`## ${faulty ? 'Found' : 'Silent'}: ${example.about}`];
  for (const [file, text] of Object.entries(fixture.files)) {
    const language = file.endsWith('.jsonc') ? 'jsonc' : 'cpp';
    lines.push(
      '',
      `\`${file}\``,
      '',
      `\`\`\`${language}`,
      drawFindings(file, text, snapshot.findings).trimEnd(),
      '```',
    );
  }
  const titles = snapshot.findings
    .filter((finding) => finding.rule === rule.id)
    .flatMap((finding) => finding.fixes)
    .map(
      (fix) =>
        `- ${fix.title} (${fix.trust === 'safe' ? 'safe' : 'asks first: it changes what is soldered or run'})`,
    );
  if (titles.length > 0) lines.push('', 'Quick-fixes:', '', ...new Set(titles));
  return lines;
}

function index(): string {
  return `<!-- Made from server/src/rules by \`npm run generate\`. -->\n# Rules\n\n${ruleTable('')}\n`;
}

/** The table of rules, with links below `prefix`. */
export function ruleTable(prefix: string): string {
  const rows = rules.map(
    (rule) => `| [${rule.id}](${prefix}${rule.id}.md) | ${rule.severity} | ${rule.title} |`,
  );
  return ['| rule | severity | what it finds |', '| --- | --- | --- |', ...rows].join('\n');
}

const marks = ['<!-- rules -->', '<!-- /rules -->'] as const;

/** README.md with its table of rules renewed between the marks. @throws Error where a mark is missing. */
export function renewReadme(text: string): string {
  const start = text.indexOf(marks[0]);
  const end = text.indexOf(marks[1]);
  if (start < 0 || end < start) throw new Error(`README.md lacks ${marks[0]} and ${marks[1]}`);
  return `${text.slice(0, start + marks[0].length)}\n${ruleTable('server/docs/rules/')}\n${text.slice(end)}`;
}

function ruleIdsSchema(): string {
  const schema = {
    $schema: 'http://json-schema.org/draft-07/schema#',
    $id: 'wiretrue:///hardware-schemas/rule-ids.schema.json',
    title: 'Rule ids',
    description: 'The ids of all rules, as keys of `severity` in a manifest.',
    oneOf: rules.map((rule) => ({ const: rule.id, description: rule.title })),
  };
  return `${JSON.stringify(schema, null, 2)}\n`;
}
