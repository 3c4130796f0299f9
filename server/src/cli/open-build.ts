/** One build for its papers: its files from disk, or as they were at a revision, analysed. */
import { basename, dirname, relative, resolve } from 'node:path';
import { createAnalyser, type LibraryTexts, type Snapshot } from '../analysis';
import { gatherPaperInput, type PaperInput } from '../documents';
import {
  createTextReader,
  type FileText,
  findProjects,
  isSource,
  loadLibrary,
  loadProject,
  MANIFEST_NAME,
  schemasFolder,
  slashed,
} from '../files';
import type { PictureModel } from '../picture';
import { createSketchParser } from '../sketch';
import { Refusal, type Surroundings } from './spec';

/** The files of one build, wherever they come from. */
export interface BuildFiles {
  /** What messages call it. */
  readonly title: string;
  /** Absolute, forward slashes. */
  readonly folder: string;
  readonly manifest: FileText;
  /** In the order in which the build joins them; empty where only a manifest was named. */
  readonly sources: readonly FileText[];
  /** What could not be read or was left out, in whole sentences. */
  readonly notes: readonly string[];
  /** Board files beside the manifest. */
  readText(path: string): string | undefined;
}

/**
 * Reads the one build that a path leads to: a folder, a source file or a manifest. A manifest of another name than
 * `hardware.jsonc` stands alone, without a sketch.
 * @throws Refusal in words where there is none, or more than one.
 */
export function readBuildFiles(path: string, here: Surroundings): BuildFiles {
  const reader = createTextReader();
  const readText = (file: string) => {
    const read = reader.read(file);
    return read.ok ? read.text : undefined;
  };
  const full = slashed(resolve(here.base, path));
  const name = basename(full);
  if (/\.jsonc?$/.test(name) && name !== MANIFEST_NAME && !isSource(full)) {
    const read = reader.read(full);
    if (!read.ok) {
      throw new Refusal(`${path}: ${read.why}`);
    }
    const manifest = { file: full, text: read.text };
    return { title: path, folder: slashed(dirname(full)), manifest, sources: [], notes: [], readText };
  }
  const { folders, problems } = findProjects([path], here.base);
  const [folder, second] = folders;
  if (folder === undefined) {
    throw new Refusal(problems.map((each) => `${each.path}: ${each.why}`).join('; ') || `${path}: no build`);
  }
  if (second !== undefined) {
    throw new Refusal(`${path} holds ${folders.length} builds; name one of them`);
  }
  const { manifest, sources, problems: unread, notes } = loadProject(folder, reader);
  if (manifest === undefined) {
    throw new Refusal(unread.map((each) => `${each.path}: ${each.why}`).join('; ') || `${path}: no manifest`);
  }
  const said = unread.map((each) => `${slashed(relative(here.base, each.path))}: ${each.why}`);
  return { title: path, folder, manifest, sources, notes: [...notes, ...said], readText };
}

/** Gives the files of a build the places of another one, so that two revisions of it can be compared. */
export function moveBuild(files: BuildFiles, folder: string, manifestName: string): BuildFiles {
  const to = (file: string) => slashed(resolve(folder, relative(files.folder, file)));
  return {
    ...files,
    folder,
    manifest: { file: slashed(resolve(folder, manifestName)), text: files.manifest.text },
    sources: files.sources.map(({ file, text }) => ({ file: to(file), text })),
    readText: (path) => files.readText(slashed(resolve(files.folder, relative(folder, path)))),
  };
}

/**
 * Analyses a build for its papers.
 * @param picture The wiring as SVG, for the papers that show it.
 * @throws Refusal in words where its manifest gives none.
 */
export function gatherPapers(
  files: BuildFiles,
  library: LibraryTexts,
  picture?: string,
): Promise<PaperInput> {
  const drawing = picture === undefined ? undefined : { svg: picture, file: 'wiring.svg' };
  return analysed(files, library, (snapshot) => gatherPaperInput(snapshot, files.sources, drawing));
}

/** The wiring of a build as an SVG file. The picture is a bundle of its own, loaded here. */
export async function drawBuild(files: BuildFiles, library: LibraryTexts): Promise<string> {
  const { drawPicture, pictureOf } = await import('../picture');
  return drawPicture(await gatherPicture(files, library, pictureOf));
}

/** What a build's picture shows. @throws Refusal in words where its manifest gives none. */
function gatherPicture(
  files: BuildFiles,
  library: LibraryTexts,
  pictureOf: (snapshot: Snapshot) => PictureModel | undefined,
): Promise<PictureModel> {
  return analysed(files, library, (snapshot) => {
    const model = pictureOf(snapshot);
    return model && withoutFolder(model, files.folder);
  });
}

/** The same with places in files told from the build's own folder: a file that is published says nothing of the machine. */
function withoutFolder(model: PictureModel, folder: string): PictureModel {
  const prefix = JSON.stringify(`${folder}/`).slice(1, -1);
  return JSON.parse(JSON.stringify(model).replaceAll(`"${prefix}`, '"')) as PictureModel;
}

async function analysed<T>(
  files: BuildFiles,
  library: LibraryTexts,
  take: (snapshot: Snapshot) => T | undefined,
): Promise<T> {
  const parser = await createSketchParser({ log: () => {} });
  const analyser = createAnalyser(library, files.readText);
  const sources = files.sources.map(({ file, text }) => parser.parse(file, text));
  try {
    const taken = take(analyser.analyse({ manifest: files.manifest, sources }));
    if (taken === undefined) {
      throw new Refusal(`${files.title}: its manifest gives no build; wiretrue check says why`);
    }
    return taken;
  } finally {
    for (const source of sources) {
      source.dispose();
    }
  }
}

/** The library that comes with the program. */
export function openTexts(here: Surroundings): LibraryTexts {
  return loadLibrary(schemasFolder(here.home));
}
