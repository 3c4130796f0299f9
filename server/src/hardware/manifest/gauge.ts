/** The hookup wire in use: its thickness, what is stripped of it, and how much more than the sum is bought. */
import type { Gauge, WireHabits } from '../../base/build';
import { parseQuantity, parseTolerance } from '../../base/quantity';
import type { Problem } from '../../base/read';
import { childOf, contentSpan, type JsonNode, textOf } from '../json/node';
import { quoteName } from '../names';
import { readFigure } from './stock';

/** Thicker and thinner wire than this is no hookup wire and most likely a slip of the keyboard. */
const thickest = { awg: -3, squareMillimetres: 110 };
const thinnest = { awg: 44, squareMillimetres: 0.002 };

/** "AWG 24", "24 AWG", "AWG 2/0", "0.25 mm2"; undefined where the text is none of these. */
export function parseGauge(text: string): Gauge | undefined {
  const gauge = /^(?:awg\s*(\d+(?:\/0)?)|(\d+(?:\/0)?)\s*awg)$/i.exec(text.trim());
  const written = gauge?.[1] ?? gauge?.[2];
  if (written !== undefined) {
    const awg = written.endsWith('/0') ? 1 - Number(written.slice(0, -2)) : Number(written);
    return awg >= thickest.awg && awg <= thinnest.awg ? { awg } : undefined;
  }
  const area = /^(\d+\.?\d*|\.\d+)\s*(?:mm2|mm\u00b2|mm\^2|sq\s*mm)$/i.exec(text.trim());
  const squareMillimetres = Number(area?.[1]);
  const fits =
    squareMillimetres >= thinnest.squareMillimetres && squareMillimetres <= thickest.squareMillimetres;
  return fits ? { squareMillimetres } : undefined;
}

/** The value of a `gauge` key; a wrong one is a problem. */
export function readGauge(node: JsonNode | undefined, problems: Problem[]): Gauge | undefined {
  const text = textOf(node);
  if (node === undefined || text === undefined) return undefined;
  const gauge = parseGauge(text);
  if (gauge) return gauge;
  const message = `${quoteName(text)} is no thickness of a wire.`;
  const hint = 'Write a gauge number as in "AWG 24", or a cross-section as in "0.25 mm2".';
  problems.push({ code: 'wrong-figure', message, span: contentSpan(node), hint });
  return undefined;
}

/** The value of a `strip` key in metres. */
export function readStrip(node: JsonNode | undefined, problems: Problem[]): number | undefined {
  return readFigure(node, (text) => parseQuantity(text, 'm'), problems);
}

/** The manifest's `wire`; undefined where it says nothing. */
export function readWireHabits(node: JsonNode | undefined, problems: Problem[]): WireHabits | undefined {
  const gauge = readGauge(childOf(node, 'gauge'), problems);
  const strip = readStrip(childOf(node, 'strip'), problems);
  const slack = readFigure(childOf(node, 'slack'), parseTolerance, problems);
  if (gauge === undefined && strip === undefined && slack === undefined) return undefined;
  return {
    ...(gauge && { gauge }),
    ...(strip !== undefined && { strip }),
    ...(slack !== undefined && { slack }),
  };
}
