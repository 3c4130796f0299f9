/** A resistor's body with its coloured bands, as an inline drawing: what one looks for in the drawer. */
import type { BandColour } from '../circuit';
import { BAND_PAINT } from './colours';

/** Millimetres on paper, so that print and screen agree. */
const HEIGHT = 4.6;
const WIDTH = 23;

/**
 * The drawing as SVG text. The first bands stand close together at one end; the tolerance stands apart, which is how
 * one knows where to begin reading.
 */
export function drawBands(bands: readonly BandColour[]): string {
  const step = 10;
  const start = 21;
  const apart = bands.length > 3 ? 8 : 0;
  const places = bands.map((_, index) => start + index * step + (index >= lastDigits(bands) ? apart : 0));
  const body = bands.length === 1 ? [50] : places;
  const right = Math.max(79, (body.at(-1) ?? 0) + 11);
  const width = right + 15;
  const pieces = [
    `<path d="M0 10H${width}" stroke="#8d9096" stroke-width="2"/>`,
    `<rect x="12" y="1" width="${right - 9}" height="18" rx="7" fill="#ead9b5" stroke="#7c6c49" stroke-width=".8"/>`,
    ...bands.map(
      (band, index) =>
        `<rect x="${body[index] ?? 0}" y="1.4" width="5.5" height="17.2" fill="${BAND_PAINT[band]}"` +
        `${band === 'white' ? ' stroke="#999" stroke-width=".4"' : ''}/>`,
    ),
  ];
  const size = `width="${WIDTH}mm" height="${HEIGHT}mm" viewBox="0 0 ${width} 20"`;
  return `<svg class="bands" role="img" aria-label="${bands.join(', ')}" ${size}>${pieces.join('')}</svg>`;
}

/** How many bands stand close together: digits and multiplier. */
function lastDigits(bands: readonly BandColour[]): number {
  return bands.length >= 5 ? 4 : 3;
}
