/** Reads one build from disk and gives its hookup list. */
import { createAnalyser } from '../analysis';
import { writeHookup } from '../documents';
import { createTextReader, findProjects, loadLibrary, loadProject } from '../files';

/** The list as Markdown, or a sentence that says why there is none. */
export type Hookup =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly why: string };

/**
 * @param path A folder, a source file or a manifest that leads to one build.
 * @param base The current folder.
 * @param schemas The folder of boards, parts and libraries.
 */
export function readHookup(path: string, base: string, schemas: string): Hookup {
  const { folders, problems } = findProjects([path], base);
  const [folder, second] = folders;
  if (folder === undefined) {
    return {
      ok: false,
      why: problems.map((each) => `${each.path}: ${each.why}`).join('; ') || `${path}: no build`,
    };
  }
  if (second !== undefined) {
    return { ok: false, why: `${path} holds ${folders.length} builds; name one of them` };
  }
  const reader = createTextReader();
  const { manifest } = loadProject(folder, reader);
  const analyser = createAnalyser(loadLibrary(schemas), (file) => {
    const read = reader.read(file);
    return read.ok ? read.text : undefined;
  });
  const build = manifest && analyser.analyse({ manifest, sources: [] }).build;
  return build
    ? { ok: true, text: writeHookup(build) }
    : { ok: false, why: `${path}: its manifest gives no build; wiretrue check says why` };
}
