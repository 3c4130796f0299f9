/**
 * The sketches on disk: `sketches/<feature>/<name>.ino`, or a folder of tabs in place of the file. The chip stands in
 * the name where it is not the ATmega328P: `<name>.mega.ino`, `<name>.leonardo.ino`.
 */
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import { loadProject } from '../../../server/src/files';
import type { SketchFile } from '../firmware/compile-firmware';
import type { ChipName } from './chips';

export interface CorpusSketch {
  readonly feature: string;
  readonly name: string;
  readonly chip: ChipName;
  /** In the order the sketch layer reads them. */
  readonly files: readonly SketchFile[];
}

/** Feature whose pins are chosen at run time: nobody can know them, and the layer has to say so. */
export const RUN_TIME_PINS = 'run-time-pins';

/** All sketches of a folder, sorted by feature and name. */
export function readCorpus(folder: string): readonly CorpusSketch[] {
  const found: CorpusSketch[] = [];
  for (const feature of foldersIn(folder)) {
    for (const entry of readdirSync(join(folder, feature)).sort()) {
      const path = join(folder, feature, entry);
      const files = statSync(path).isDirectory()
        ? filesOf(path)
        : [{ name: entry, text: readFileSync(path, 'utf8') }];
      found.push({ feature, name: entry.replace(/\.ino$/, ''), chip: chipOf(entry), files });
    }
  }
  return found;
}

function filesOf(folder: string): readonly SketchFile[] {
  const { sources, folder: whole } = loadProject(folder);
  return sources.map(({ file, text }) => ({ name: file.slice(whole.length + 1), text }));
}

function chipOf(name: string): ChipName {
  const [, chip] = /\.(mega|leonardo)(\.ino)?$/.exec(name) ?? [];
  return chip === 'mega' || chip === 'leonardo' ? chip : 'uno';
}

const EXAMPLES = '/usr/share/arduino/hardware/arduino/avr/libraries';

/** The example sketches that come with the core's package; empty where it is not installed. */
export function readCoreExamples(): readonly CorpusSketch[] {
  const libraries = existsSync(EXAMPLES) ? foldersIn(EXAMPLES) : [];
  return libraries.flatMap((library) => {
    const folder = join(EXAMPLES, library, 'examples');
    const examples = existsSync(folder) ? foldersIn(folder) : [];
    return examples.map(
      (example): CorpusSketch => ({
        feature: 'core-examples',
        name: `${library}-${example}`,
        chip: 'uno',
        files: filesOf(join(folder, example)).map(({ name, text }) => ({ name: basename(name), text })),
      }),
    );
  });
}

function foldersIn(folder: string): readonly string[] {
  const entries = readdirSync(folder, { withFileTypes: true });
  return entries
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name)
    .sort();
}
