/** The harbour model's folder, read as the command line would read it. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gatherPaperInput, type PaperInput } from '../../../server/src/documents';
import { openTestBench, root, type TestBench } from '../../fixture/bench';

export const harbour = join(root, 'hardware-schemas/examples/harbour-model');
const sketchName = 'harbour-model.ino';

/** The paper input of a manifest with a sketch. */
export function inputOf(bench: TestBench, manifest: string, sketch: string, name = sketchName): PaperInput {
  const snapshot = bench.analyse({ 'hardware.jsonc': manifest, [name]: sketch });
  const input = gatherPaperInput(snapshot, [{ file: name, text: sketch }]);
  if (!input) throw new Error('the manifest gives no build');
  return input;
}

/** Both revisions that the published papers tell of. */
export async function readHarbour(): Promise<{ before: PaperInput; after: PaperInput }> {
  const bench = await openTestBench();
  const text = (path: string) => readFileSync(join(harbour, path), 'utf8');
  return {
    before: inputOf(bench, text('papers/revision-0.jsonc'), text('papers/revision-0.ino.txt')),
    after: inputOf(bench, text('hardware.jsonc'), text(sketchName)),
  };
}
