// Writes the template of a rule: `npm run new-rule idle-wire`.
import { access, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = resolve(fileURLToPath(import.meta.url), '../../..');
const id = process.argv[2] ?? '';
if (!/^[a-z]+(-[a-z]+)*$/.test(id)) {
  console.error(
    'usage: npm run new-rule SOME-WRONG-STATE   (lower case words with dashes, naming what is wrong)',
  );
  process.exit(2);
}
const file = join(root, 'server/src/rules', `${id}.ts`);
if (
  await access(file).then(
    () => true,
    () => false,
  )
) {
  console.error(`${file} is there already`);
  process.exit(2);
}
await writeFile(
  file,
  `/** Say in a sentence what goes wrong on the bench. */
import { relatedOf } from './support/views';
import { defineRule } from './rule';

interface Detail {
  readonly pin: string;
}

export default defineRule<Detail>({
  id: '${id}',
  title: 'One sentence that says what is wrong.',
  why: 'What it costs on the bench.',
  source: 'document and clause, or "common practice"',
  severity: 'hint',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    for (const view of subject.pins) {
      const use = view.uses[0];
      if (!use) continue;
      yield { identity: view.pin.id, span: use.span, related: relatedOf(view, use), detail: { pin: view.pin.id } };
    }
  },
  message: ({ pin }) => \`\${pin} …\`,
  examples: [],
});
`,
);
console.log(
  `wrote ${file}; give it examples where it speaks and where it is silent, then: npm run generate && npm test`,
);
