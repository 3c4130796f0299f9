/** Paint for the colours that people name: bands of a resistor by its standard's ten digits, wires by common names. */
import type { BandColour } from '../circuit';

/** Screen colours of the bands; the standard names colours, the shades are our own. */
export const BAND_PAINT: Readonly<Record<BandColour, string>> = {
  black: '#1a1a1a',
  brown: '#7a4a21',
  red: '#d22f27',
  orange: '#f0801a',
  yellow: '#f4cf1f',
  green: '#2f8f3e',
  blue: '#2464c4',
  violet: '#7d3fa8',
  grey: '#8c8f94',
  white: '#ffffff',
  gold: '#c9a227',
  silver: '#b9bdc2',
  pink: '#f2a0b5',
};

const OTHERS: Readonly<Record<string, string>> = {
  gray: BAND_PAINT.grey,
  purple: BAND_PAINT.violet,
  turquoise: '#25b0a8',
  cyan: '#25b0a8',
  'light blue': '#7db4ea',
  'dark blue': '#173f80',
  'light green': '#84c96f',
  'dark green': '#1c5a27',
  beige: '#e2d3b0',
  clear: '#f4f4f0',
  transparent: '#f4f4f0',
};

/** Paints of a wire's colour, two where it is striped ("green/yellow"); none where the name is not known. */
export function wirePaints(colour: string): readonly string[] {
  const names = colour.toLowerCase().split(/\s*[/-]\s*|\s+(?:and|with)\s+/);
  const paints = names.map((name) => paintOf(name.trim()));
  return paints.every((paint) => paint !== undefined) ? paints.slice(0, 2) : [];
}

function paintOf(name: string): string | undefined {
  if (Object.hasOwn(BAND_PAINT, name)) return BAND_PAINT[name as BandColour];
  return Object.hasOwn(OTHERS, name) ? OTHERS[name] : undefined;
}
