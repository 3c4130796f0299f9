/**
 * Reads a board file, with all that it extends, into the board the other layers know. What a board needs for the
 * checks is asked for here, after merging: a file that extends another need not repeat it.
 */
import type {
  Board,
  BoardLimits,
  BoardPin,
  BoardReset,
  Header,
  OnBoardPart,
  Sourced,
} from '../../base/build';
import type { Unit } from '../../base/quantity';
import type { Problem, Read } from '../../base/read';
import type { Span } from '../../base/span';
import { literalRange } from '../figures';
import type { RangeFigure } from '../generated/part';
import { childOf, contentSpan, integerOf, type JsonNode, plainValue, textOf, textsOf } from '../json/node';
import { listNames, quoteName, unknownName } from '../names';
import { resolvePrimitive, touchedNames } from '../primitives';
import { isPrimitive } from '../shape';
import { type BoardSource, extendBoard, type FindBoard } from './extend';
import { readPlatform } from './platform';

const pinTypes = ['io', 'analog-input', 'supply', 'ground', 'reset', 'reference', 'not-connected'] as const;

/**
 * @param find Finds the board that a board extends.
 * @returns The board, undefined where something is missing that every board needs. Never throws.
 */
export function readBoard(source: BoardSource, find: FindBoard): Read<Board | undefined> {
  const extended = extendBoard(source, find);
  const problems = [...extended.problems];
  if (extended.root === undefined) return { value: undefined, problems };
  const value = new BoardReader(extended.root, extended.sources, problems).read();
  return { value, problems };
}

class BoardReader {
  readonly #pinIds: string[];
  readonly #missing: string[] = [];

  constructor(
    readonly root: JsonNode,
    readonly sources: ReadonlyMap<string, JsonNode>,
    readonly problems: Problem[],
  ) {
    this.#pinIds = [...(childOf(root, 'pins')?.entries.keys() ?? [])];
  }

  read(): Board | undefined {
    const { root } = this;
    const pins = this.#readPins();
    const logicRail = this.#pinId(childOf(root, 'logicRail'));
    const headers = this.#readHeaders();
    const onBoard = this.#readOnBoard();
    const limits = this.#readLimits();
    const reset = this.#readReset();
    const platformNode = childOf(root, 'platform');
    const platform = readPlatform(platformNode, pins);
    for (const key of ['id', 'title', 'chip', 'logicRail'])
      if (!textOf(childOf(root, key))) this.#missing.push(key);
    if (pins.length === 0) this.#missing.push('pins');
    if (integerOf(childOf(platformNode, 'intBits')) === undefined) this.#missing.push('platform.intBits');
    if (this.#missing.length > 0) {
      const message = `This board lacks ${listNames(this.#missing)}.`;
      const hint = 'Write it, or extend a board that has it.';
      this.#add('incomplete-board', message, this.#headSpan(), hint);
    }
    if (limits === undefined || logicRail === undefined || this.#missing.length > 0) return undefined;
    return {
      id: textOf(childOf(root, 'id')) ?? '',
      title: textOf(childOf(root, 'title')) ?? '',
      chip: textOf(childOf(root, 'chip')) ?? '',
      logicRail,
      pins,
      headers,
      onBoard,
      limits,
      ...(reset === undefined ? {} : { reset }),
      platform,
    };
  }

  #readPins(): BoardPin[] {
    const pins: BoardPin[] = [];
    const taken = new Map<string, string>();
    for (const [id, { value: node, keySpan }] of childOf(this.root, 'pins')?.entries ?? []) {
      if (node.kind !== 'object') continue;
      const type = pinTypes.find((one) => one === textOf(childOf(node, 'type')));
      if (type === undefined) {
        this.#add('missing-key', `The pin ${quoteName(id)} lacks the key "type".`, keySpan);
        continue;
      }
      const number = integerOf(childOf(node, 'number'));
      const names = textsOf(childOf(node, 'names')).filter((name) => name !== id);
      for (const name of new Set([id, ...names, ...(number === undefined ? [] : [String(number)])])) {
        const other = taken.get(name);
        if (other !== undefined) {
          this.#add('double-name', `${quoteName(name)} names the pin ${quoteName(other)} as well.`, keySpan);
        }
        taken.set(name, other ?? id);
      }
      const volts = this.#figure(childOf(node, 'volts'), 'V');
      const maxAmps = this.#figure(childOf(node, 'maxAmps'), 'A');
      pins.push({
        id,
        ...(number === undefined ? {} : { number }),
        names,
        type,
        ...optional('port', textOf(childOf(node, 'port'))),
        ...optional('pwm', textOf(childOf(node, 'pwm'))),
        ...optional('adc', integerOf(childOf(node, 'adc'))),
        ...optional('interrupt', integerOf(childOf(node, 'interrupt'))),
        roles: textsOf(childOf(node, 'roles')),
        ...(volts === undefined ? {} : { volts: { min: volts.min, typ: volts.typ, max: volts.max } }),
        ...optional('maxAmps', maxAmps),
      });
    }
    return pins;
  }

  #readHeaders(): Header[] {
    return [...(childOf(this.root, 'headers')?.entries ?? [])].flatMap(([id, { value: node }]) => {
      const places = childOf(node, 'positions')?.items ?? [];
      // A wrong name keeps its place, or all that follow would be miscounted.
      const positions = places.map((place) => this.#pinId(place) ?? textOf(place) ?? '');
      const title = textOf(childOf(node, 'title'));
      const landmark = textOf(childOf(node, 'landmark'));
      return title === undefined || landmark === undefined ? [] : [{ id, title, landmark, positions }];
    });
  }

  #readOnBoard(): OnBoardPart[] {
    const parts: OnBoardPart[] = [];
    for (const [id, { value: node }] of childOf(this.root, 'onBoard')?.entries ?? []) {
      const inside = (childOf(node, 'inside')?.items ?? []).flatMap((item) => {
        const written = plainValue(item);
        // One that does not follow the schema was told with the shape of its file.
        if (!isPrimitive(written)) return [];
        const unknown = touchedNames(written).find(
          (name) => !name.startsWith('~') && !this.#pinIds.includes(name),
        );
        if (unknown !== undefined) {
          const message = `This board has no pin ${quoteName(unknown)}.`;
          this.problems.push(unknownName('unknown-pin', message, contentSpan(item), unknown, []));
          return [];
        }
        const result = resolvePrimitive(written, new Map());
        if (!result.ok)
          this.#add('wrong-figure', `This piece cannot be used: ${result.why}.`, contentSpan(item));
        return result.ok && result.value !== undefined ? [result.value] : [];
      });
      parts.push({ id, title: textOf(childOf(node, 'title')) ?? id, inside, source: this.#sourceOf(node) });
    }
    return parts;
  }

  #readLimits(): BoardLimits | undefined {
    const limits = childOf(this.root, 'limits');
    const needed = <K extends string>(key: K, unit: Unit): Sourced | undefined => {
      const figure = this.#figure(childOf(limits, key), unit);
      if (figure === undefined) this.#missing.push(`limits.${key}`);
      return figure;
    };
    const pinRecommended = needed('pinRecommended', 'A');
    const pinAbsolute = needed('pinAbsolute', 'A');
    const outputHighOhms = needed('outputHighOhms', 'ohm');
    const outputLowOhms = needed('outputLowOhms', 'ohm');
    const inputLowVolts = needed('inputLowVolts', 'V');
    const inputHighVolts = needed('inputHighVolts', 'V');
    const pullUpOhms = needed('pullUpOhms', 'ohm');
    if (!pinRecommended || !pinAbsolute || !outputHighOhms || !outputLowOhms) return undefined;
    if (!inputLowVolts || !inputHighVolts || !pullUpOhms) return undefined;
    return {
      pinRecommended,
      pinAbsolute,
      groups: this.#readGroups(childOf(limits, 'groups')),
      ...optional('total', this.#figure(childOf(limits, 'total'), 'A')),
      outputHighOhms,
      outputLowOhms,
      inputLowVolts,
      inputHighVolts,
      pullUpOhms,
      ...optional('pullDownOhms', this.#figure(childOf(limits, 'pullDownOhms'), 'ohm')),
      ...optional('pinMaxVolts', this.#figure(childOf(limits, 'pinMaxVolts'), 'V')),
    };
  }

  #readGroups(groups: JsonNode | undefined): BoardLimits['groups'] {
    return [...(groups?.entries ?? [])].flatMap(([id, { value: node }]) => {
      const amps = this.#figure(childOf(node, 'amps'), 'A');
      const direction = (['source', 'sink', 'both'] as const).find(
        (one) => one === textOf(childOf(node, 'direction')),
      );
      const pins = (childOf(node, 'pins')?.items ?? []).flatMap((item) => this.#pinId(item) ?? []);
      if (amps === undefined || direction === undefined) return [];
      return [{ title: textOf(childOf(node, 'title')) ?? id, pins, direction, amps }];
    });
  }

  #readReset(): BoardReset | undefined {
    const node = childOf(this.root, 'reset');
    if (node === undefined) return undefined;
    const pin = this.#pinId(childOf(node, 'pin'));
    const pullUpOhms = this.#figure(childOf(node, 'pullUpOhms'), 'ohm');
    const assertVolts = this.#figure(childOf(node, 'assertVolts'), 'V');
    if (pin !== undefined && pullUpOhms !== undefined && assertVolts !== undefined) {
      return { pin, pullUpOhms, assertVolts };
    }
    this.#add(
      'incomplete-reset',
      'The reset line needs "pin", "pullUpOhms" and "assertVolts".',
      contentSpan(node),
    );
    return undefined;
  }

  /** A pin id as written; a wrong one is a problem. */
  #pinId(node: JsonNode | undefined): string | undefined {
    const id = textOf(node);
    if (node === undefined || id === undefined || this.#pinIds.includes(id)) return id;
    const message = `This board has no pin ${quoteName(id)}.`;
    this.problems.push(unknownName('unknown-pin', message, contentSpan(node), id, this.#pinIds));
    return undefined;
  }

  #figure(node: JsonNode | undefined, unit: Unit): Sourced | undefined {
    if (node?.kind !== 'object') return undefined;
    const read = literalRange(plainValue(node) as RangeFigure, unit);
    if (!read.ok) {
      this.#add('wrong-figure', `This figure cannot be used: ${read.why}.`, contentSpan(node));
      return undefined;
    }
    return { ...read.value, source: this.#sourceOf(node) };
  }

  /** Document, publisher, revision, place and condition in one phrase. */
  #sourceOf(node: JsonNode): string {
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

  #headSpan(): Span {
    const id = childOf(this.root, 'id');
    const { file, start } = this.root.span;
    return id === undefined ? { file, start, end: start + 1 } : contentSpan(id);
  }

  #add(code: string, message: string, span: Span, hint?: string) {
    this.problems.push({ code, message, span, ...(hint === undefined ? {} : { hint }) });
  }
}

function optional<K extends string, V>(key: K, value: V | undefined): { readonly [P in K]?: V } {
  return (value === undefined ? {} : { [key]: value }) as { readonly [P in K]?: V };
}
