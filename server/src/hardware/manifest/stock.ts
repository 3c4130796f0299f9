/** What the user can buy or has in the drawer, and how much a pin may carry: the manifest's `stock` and `policy`. */
import type { Board, Build, Stock } from '../../base/build';
import { preferredSeries, preferredValues } from '../../base/preferred-series';
import { formatQuantity, formatTolerance, parseQuantity, parseTolerance } from '../../base/quantity';
import type { Problem } from '../../base/read';
import { childOf, contentSpan, type JsonNode, quantityOf, textOf } from '../json/node';
import { nearestName, quoteName, unknownName } from '../names';

/** Taken where the manifest says nothing: what is sold by the assorted box (common practice). */
const defaults = { resistors: 'E12', tolerance: 0.05, watts: 0.25 } as const;

/** Series are spelled out over these powers of ten of ohms; smaller and larger resistors are no shop's stock. */
const lowestPower = 0;
const highestPower = 7;

export function readStock(node: JsonNode | undefined, problems: Problem[]): Stock {
  const resistors = childOf(node, 'resistors');
  const toleranceNode = childOf(node, 'tolerance');
  const powerNode = childOf(node, 'power');
  const tolerance = readFigure(toleranceNode, parseTolerance, problems) ?? defaults.tolerance;
  const watts = readFigure(powerNode, (text) => parseQuantity(text, 'W'), problems) ?? defaults.watts;
  const listed = resistors?.kind === 'array' ? readList(resistors, problems) : [];
  if (listed.length > 0) {
    const text = listed.map(([written]) => written).join(', ');
    const values = [...new Set(listed.map(([, ohms]) => ohms))].sort((a, b) => a - b);
    return { resistors: values, text, tolerance, watts };
  }
  const name = preferredSeries.find((one) => one === textOf(resistors)) ?? defaults.resistors;
  return { resistors: preferredValues(name, lowestPower, highestPower), text: name, tolerance, watts };
}

function readList(list: JsonNode, problems: Problem[]): [written: string, ohms: number][] {
  return list.items.flatMap((item) => {
    const ohms = readFigure(item, (text) => parseQuantity(text, 'ohm'), problems);
    return ohms === undefined ? [] : [[String(quantityOf(item)), ohms]];
  });
}

/** The value of a figure of the manifest; a wrong one is a problem. */
export function readFigure(
  node: JsonNode | undefined,
  parse: (text: string | number) => ReturnType<typeof parseQuantity>,
  problems: Problem[],
): number | undefined {
  const text = quantityOf(node);
  if (node === undefined || text === undefined) return undefined;
  const read = parse(text);
  if (read.ok) return read.value;
  const message = `This figure cannot be used: ${read.why}.`;
  problems.push({ code: 'wrong-figure', message, span: contentSpan(node) });
  return undefined;
}

/** Stock figures as texts, for parts that say nothing of their own. */
export interface StockTexts {
  readonly tolerance: string;
  readonly power: string;
}

/** As typed where they were typed right, so that people meet their own words again. */
export function stockTexts(node: JsonNode | undefined, stock: Stock): StockTexts {
  const tolerance = quantityOf(childOf(node, 'tolerance'));
  const power = quantityOf(childOf(node, 'power'));
  return {
    tolerance:
      tolerance !== undefined && parseTolerance(tolerance).ok
        ? String(tolerance)
        : formatTolerance(stock.tolerance),
    power:
      power !== undefined && parseQuantity(power, 'W').ok ? String(power) : formatQuantity(stock.watts, 'W'),
  };
}

const policyWords = ['recommended', 'absolute'] as const;

export function readPolicy(node: JsonNode | undefined, board: Board, problems: Problem[]): Build['policy'] {
  const runNode = childOf(node, 'runTime');
  const runSeconds = readFigure(runNode, (text) => parseQuantity(text, 's'), problems);
  return {
    ...readPinCurrent(node, board, problems),
    ...(runNode !== undefined && runSeconds !== undefined && { runSeconds, runSpan: contentSpan(runNode) }),
  };
}

function readPinCurrent(node: JsonNode | undefined, board: Board, problems: Problem[]): Build['policy'] {
  const policyNode = childOf(node, 'pinCurrent');
  const text = quantityOf(policyNode);
  const { pinRecommended, pinAbsolute } = board.limits;
  if (policyNode !== undefined && text !== undefined && text !== 'recommended') {
    if (text === 'absolute') {
      const words = `${formatQuantity(pinAbsolute.max, 'A')}, the board's limit`;
      return { pinAmps: pinAbsolute.max, text: words, kind: 'absolute' };
    }
    const read = parseQuantity(text, 'A');
    if (read.ok && read.value > 0) {
      const words = `${formatQuantity(read.value, 'A')}, by the manifest's policy`;
      return { pinAmps: read.value, text: words, kind: 'figure' };
    }
    const near =
      typeof text === 'string' && /^[a-z]/i.test(text) ? nearestName(text, policyWords) : undefined;
    const span = contentSpan(policyNode);
    const why = read.ok ? 'it must be above zero' : read.why;
    problems.push(
      near === undefined
        ? { code: 'wrong-figure', message: `This figure cannot be used: ${why}.`, span }
        : unknownName(
            'unknown-word',
            `There is no policy ${quoteName(String(text))}.`,
            span,
            near,
            policyWords,
          ),
    );
  }
  return {
    pinAmps: pinRecommended.max,
    text: `${formatQuantity(pinRecommended.max, 'A')}, the board's working figure`,
    kind: 'recommended',
  };
}
