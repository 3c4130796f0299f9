/**
 * What a paper is before it gets a form. Every paper is written once, as sections of a few kinds of blocks, and each
 * form is written once for all papers: so Markdown, HTML and lists can never tell different things.
 */

import type { Snapshot, Workings } from '../analysis';
import type { Build } from '../base/build';
import type { Finding } from '../base/finding';
import type { BandColour } from '../circuit';

export type PaperId = 'hookup' | 'parts' | 'guide' | 'tests' | 'addendum';

/** A piece of a line. Plain strings are escaped by every form, so a name can never become markup. */
export type Piece =
  | string
  | { readonly bold: string }
  | { readonly code: string }
  /** Bands of a resistor: drawn where a form can draw, named everywhere. */
  | { readonly bands: readonly BandColour[] }
  /** Colour of a wire: shown beside its name where a form can. */
  | { readonly wire: string };

export type Text = string | readonly Piece[];

export interface Column {
  readonly title: string;
  /** Figures and boxes stand at the right or in the middle. */
  readonly align?: 'right' | 'centre';
  /** Share of the table's width in percent, so that the tables of one paper stand under each other. */
  readonly width?: number;
}

export type Block =
  | { readonly kind: 'text'; readonly text: Text }
  | { readonly kind: 'caution'; readonly text: Text }
  | { readonly kind: 'heading'; readonly text: Text }
  /** Items with a box to tick. */
  | { readonly kind: 'ticks'; readonly items: readonly Text[] }
  | { readonly kind: 'list'; readonly items: readonly Text[] }
  /** `ticks`: a first column of boxes. */
  | {
      readonly kind: 'table';
      readonly columns: readonly Column[];
      readonly rows: readonly (readonly Text[])[];
      readonly ticks: boolean;
    }
  | { readonly kind: 'picture'; readonly picture: Picture; readonly alt: string }
  /** Lines of a sketch: `+` new, `-` gone, ` ` as before. */
  | { readonly kind: 'lines'; readonly lines: readonly string[] };

/** One stretch of a paper that is made anew at every run; one's own text stands between two of them. */
export interface Section {
  /** Unique in its paper and the same at every run: `ground`, `unit-beacon`. Letters, figures and hyphens. */
  readonly id: string;
  readonly title: string;
  readonly blocks: readonly Block[];
}

/** A table for programs, without markup. */
export interface List {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export interface Paper {
  readonly id: PaperId;
  /** "Hookup list". */
  readonly title: string;
  readonly build: string;
  readonly revision?: string;
  /** What stands under the title: "Board" → its name. */
  readonly facts: readonly (readonly [label: string, value: string])[];
  readonly sections: readonly Section[];
  /** Absent where the paper is no list. */
  readonly list?: List;
}

/** A drawing of the wiring: the text of an SVG and the name of the file that holds it. */
export interface Picture {
  readonly svg: string;
  readonly file: string;
}

/** A file of the sketch, under the name that is printed. */
export interface Source {
  readonly file: string;
  readonly text: string;
}

/** One build with all that its papers need. */
export interface PaperInput {
  readonly build: Build;
  readonly workings: Workings;
  readonly findings: readonly Finding[];
  /** Files of the sketch in the order in which the build joins them. Empty where there is none. */
  readonly sources: readonly Source[];
  readonly picture?: Picture;
}

/** @returns undefined where the snapshot has no build. */
export function gatherPaperInput(
  snapshot: Snapshot,
  sources: readonly Source[],
  picture?: Picture,
): PaperInput | undefined {
  const { build, findings } = snapshot;
  const workings = snapshot.workings();
  if (!build || !workings) return undefined;
  return { build, workings, findings, sources, ...(picture && { picture }) };
}

/** The line's letters alone, for lists and for looking something up in a paper. */
export function plainText(text: Text): string {
  if (typeof text === 'string') return text;
  return text
    .map((piece) => {
      if (typeof piece === 'string') return piece;
      if ('bold' in piece) return piece.bold;
      if ('code' in piece) return piece.code;
      if ('wire' in piece) return piece.wire;
      return piece.bands.join(', ');
    })
    .join('');
}

/** "Harbour model, revision A". */
export function buildName({ build, revision }: Pick<Paper, 'build' | 'revision'>): string {
  return revision === undefined ? build : `${build}, revision ${revision}`;
}

/** Forms that a paper can be written in. */
export function formsOf(paper: Paper): readonly ('markdown' | 'html' | 'csv')[] {
  return paper.list ? ['markdown', 'html', 'csv'] : ['markdown', 'html'];
}

/** A table block, left out where it would have no row. */
export function tableOf(
  columns: readonly (string | Column)[],
  rows: readonly (readonly Text[])[],
  ticks = false,
): readonly Block[] {
  if (rows.length === 0) return [];
  const made = columns.map((column) => (typeof column === 'string' ? { title: column } : column));
  return [{ kind: 'table', columns: made, rows, ticks }];
}

export function textOf(text: Text): Block {
  return { kind: 'text', text };
}
