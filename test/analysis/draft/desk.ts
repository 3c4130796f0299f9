/** A parser, a library and an analyser for tests of drafts and of an editor's questions. */
import { join } from 'node:path';
import {
  type Analyser,
  createAnalyser,
  type Draft,
  draftManifest,
  type OpenLibrary,
  openLibrary,
  type Snapshot,
} from '../../../server/src/analysis';
import { loadLibrary } from '../../../server/src/files';
import { createSketchParser } from '../../../server/src/sketch';
import { root } from '../../fixture/bench';

export interface Desk {
  readonly library: OpenLibrary;
  readonly analyser: Analyser;
  draft(sketch: string, options?: { readonly text?: string; readonly board?: string }): Draft;
  look(sketch: string, manifest: string): Snapshot;
}

export async function openDesk(): Promise<Desk> {
  const parser = await createSketchParser();
  const texts = loadLibrary(join(root, 'hardware-schemas'));
  const library = openLibrary(texts, () => undefined);
  const analyser = createAnalyser(texts, () => undefined);
  const parse = (text: string) => {
    const parsed = parser.parse('sketch.ino', text);
    parsed.dispose();
    return parsed;
  };
  return {
    library,
    analyser,
    draft: (sketch, options = {}) =>
      draftManifest(library, { file: 'hardware.jsonc', sources: [parse(sketch)], ...options }),
    look: (sketch, text) =>
      analyser.analyse({ manifest: { file: 'hardware.jsonc', text }, sources: [parse(sketch)] }),
  };
}
