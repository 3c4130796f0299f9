/**
 * What every piece of the board reader needs: pin ids that are checked, figures with their source, problems with a
 * place. Files of this folder share one of these while a board is read.
 */
import type { Sourced } from '../../base/build';
import type { Unit } from '../../base/quantity';
import type { Problem } from '../../base/read';
import type { Span } from '../../base/span';
import { literalRange } from '../figures';
import type { RangeFigure } from '../generated/part';
import { childOf, contentSpan, type JsonNode, plainValue, textOf } from '../json/node';
import { quoteName, unknownName } from '../names';

export class BoardReading {
  readonly pinIds: readonly string[];

  constructor(
    readonly root: JsonNode,
    readonly sources: ReadonlyMap<string, JsonNode>,
    readonly problems: Problem[],
  ) {
    this.pinIds = [...(childOf(root, 'pins')?.entries.keys() ?? [])];
  }

  /** A pin id as written; a wrong one is a problem. */
  pinId(node: JsonNode | undefined): string | undefined {
    const id = textOf(node);
    if (node === undefined || id === undefined || this.pinIds.includes(id)) return id;
    const message = `This board has no pin ${quoteName(id)}.`;
    this.problems.push(unknownName('unknown-pin', message, contentSpan(node), id, this.pinIds));
    return undefined;
  }

  figure(node: JsonNode | undefined, unit: Unit): Sourced | undefined {
    if (node?.kind !== 'object') return undefined;
    const read = literalRange(plainValue(node) as RangeFigure, unit);
    if (!read.ok) {
      this.add('wrong-figure', `This figure cannot be used: ${read.why}.`, contentSpan(node));
      return undefined;
    }
    return { ...read.value, source: this.sourceOf(node) };
  }

  /** Document, publisher, revision, place and condition in one phrase. */
  sourceOf(node: JsonNode): string {
    const key = textOf(childOf(node, 'source'));
    const sources = this.sources.get(node.span.file);
    const document = key === undefined ? undefined : childOf(sources, key);
    if (key !== undefined && document === undefined) {
      const message = `"sources" of this file has no ${quoteName(key)}.`;
      const span = contentSpan(childOf(node, 'source') ?? node);
      this.problems.push(
        unknownName('unknown-source', message, span, key, [...(sources?.entries.keys() ?? [])]),
      );
    }
    const publisher = textOf(childOf(document, 'publisher'));
    const name = textOf(childOf(document, 'document')) ?? 'from memory';
    const parts = [publisher === undefined ? name : `${publisher}, ${name}`];
    for (const more of [childOf(document, 'revision'), childOf(node, 'where'), childOf(node, 'when')]) {
      const text = textOf(more);
      if (text !== undefined) parts.push(text);
    }
    return parts.join(', ');
  }

  add(code: string, message: string, span: Span, hint?: string) {
    this.problems.push({ code, message, span, ...(hint === undefined ? {} : { hint }) });
  }
}

/** An entry only where there is a value: a key that is undefined would be a key all the same. */
export function optional<K extends string, V>(key: K, value: V | undefined): { readonly [P in K]?: V } {
  return (value === undefined ? {} : { [key]: value }) as { readonly [P in K]?: V };
}

/** The word of a list that a node holds. */
export function wordOf<W extends string>(node: JsonNode | undefined, words: readonly W[]): W | undefined {
  return words.find((word) => word === textOf(node));
}

/** True or false as written; undefined where neither stands there. */
export function truthOf(node: JsonNode | undefined): boolean | undefined {
  return typeof node?.scalar === 'boolean' ? node.scalar : undefined;
}
