/** The example sketches of the core's own package, each with a manifest of the hardware that its comment describes. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { TestBench } from '../../fixture/bench';
import { type CleanBuild, type Files, MANIFEST } from './builds';

export const EXAMPLES = '/usr/share/arduino/hardware/arduino/avr/libraries';

export function examplesPresent(): boolean {
  return existsSync(EXAMPLES);
}

/** @param root The folder of the project's package.json. */
export function loadExamples(root: string): readonly CleanBuild[] {
  const manifests = join(root, 'test/oracle/rules/examples');
  const sketches = readdirSync(EXAMPLES, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ino'))
    .sort();
  return sketches.map((file) => {
    const name = basename(file, '.ino');
    return {
      name,
      files: {
        [`${name}.ino`]: readFileSync(join(EXAMPLES, file), 'utf8'),
        'hardware.jsonc': readFileSync(join(manifests, `${name}.jsonc`), 'utf8'),
      },
    };
  });
}

/** The manifests are made for the first; the same wiring is then tried on the others, whose pins differ. */
export const EXAMPLE_BOARDS = ['uno-r3', 'leonardo', 'mega-2560'] as const;

/** One line a finding: sketch, board, rule, and the text it stands at. */
export function findingsOn(bench: TestBench, build: CleanBuild, board: string): readonly string[] {
  const manifest = (build.files[MANIFEST] ?? '').replace('"uno-r3"', `"${board}"`);
  const files: Files = { ...build.files, [MANIFEST]: manifest };
  return bench.analyse(files).findings.map(({ rule, span }) => {
    const text = (files[span.file] ?? '').slice(span.start, span.end).split('\n')[0] ?? '';
    return [build.name, board, rule, text.trim()].join(' | ');
  });
}
