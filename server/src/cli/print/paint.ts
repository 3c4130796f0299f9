/** Colours for a terminal, or none. */

/** How the terminal wants it. */
export interface TextStyle {
  readonly colours: boolean;
  /** Columns of the terminal. */
  readonly columns: number;
}

/** Select Graphic Rendition codes, ECMA-48 section 8.3.117. */
const CODES = { bold: 1, dim: 2, red: 31, green: 32, yellow: 33, blue: 34, cyan: 36 } as const;
export type Colour = keyof typeof CODES;

/** Puts a colour on a text. */
export type Paint = (colour: Colour, text: string) => string;

export function painterOf(style: TextStyle): Paint {
  return (colour, text) => (style.colours ? `\u001b[${CODES[colour]}m${text}\u001b[0m` : text);
}

/** What a file or another program gets. */
export const PLAIN: TextStyle = { colours: false, columns: 110 };
