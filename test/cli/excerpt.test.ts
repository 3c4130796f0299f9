/** Lines, columns and the marker under a line: what an eye and a terminal make of it. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { drawExcerpt, harmless } from '../../server/src/cli/print/excerpt';
import { LineIndex } from '../../server/src/cli/print/lines';

/** Draws the excerpt for the text between the two marks `«` and `»`. */
function draw(marked: string, columns = 80): { source: string; marker: string } {
  const start = marked.indexOf('«');
  const end = marked.indexOf('»') - 1;
  return drawExcerpt(new LineIndex(marked.replace(/[«»]/g, '')), start, end, columns);
}

describe('lines', () => {
  test('places agree with the protocol library for every mixture of line ends', () => {
    const piece = fc.constantFrom('\n', '\r', '\r\n', 'a', '\t', '😀', '漢', '\u2028');
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 30 }), (pieces) => {
        const text = pieces.join('');
        const lines = new LineIndex(text);
        const document = TextDocument.create('file:///a.ino', 'cpp', 1, text);
        for (let offset = 0; offset <= text.length; offset += 1) {
          // That library moves an offset within CRLF to the line's end, which no span of ours begins at.
          if (!(text[offset - 1] === '\r' && text[offset] === '\n')) {
            expect(lines.placeOf(offset)).toEqual(document.positionAt(offset));
          }
        }
      }),
    );
  });

  test('an offset outside the text counts as its nearest end', () => {
    const lines = new LineIndex('ab\ncd');
    expect(lines.placeOf(-5)).toEqual({ line: 0, character: 0 });
    expect(lines.placeOf(500)).toEqual({ line: 1, character: 2 });
  });
});

describe('excerpt', () => {
  test('the marker stands under the span', () => {
    expect(draw('int a;\ndigitalWrite(«beacon», HIGH);\n')).toEqual({
      source: 'digitalWrite(beacon, HIGH);',
      marker: '             ^^^^^^',
    });
  });

  test('tabs become columns, before and in the span', () => {
    expect(draw('\tx\t«y\tz»;')).toEqual({ source: '    x   y   z;', marker: '        ^^^^^' });
  });

  test('wide characters take two columns, combining ones none', () => {
    expect(draw('"漢字" «e\u0301»x')).toEqual({ source: '"漢字" e\u0301x', marker: '       ^' });
    expect(draw('😀«😀»😀')).toEqual({ source: '😀😀😀', marker: '  ^^' });
  });

  test('a span over several lines is marked to the end of its first', () => {
    expect(draw('a «b(\r\n  c)»;')).toEqual({ source: 'a b(', marker: '  ^^' });
  });

  test('an empty span takes one column, behind the line as well, in an empty file too', () => {
    expect(draw('ab«»cd')).toEqual({ source: 'abcd', marker: '  ^' });
    expect(draw('ab«»\ncd')).toEqual({ source: 'ab', marker: '  ^' });
    expect(draw('«»')).toEqual({ source: '', marker: '^' });
  });

  test('a long line is cut to the surroundings of the marker, and the cut is shown', () => {
    const { source, marker } = draw(`${'x'.repeat(500)}«yyy»${'z'.repeat(500)}`, 30);
    expect(source).toBe(`…${'x'.repeat(10)}yyy${'z'.repeat(15)}…`);
    expect(marker).toBe(`${' '.repeat(11)}^^^`);
  });

  test('a line of five million characters is cut as well', () => {
    const { source } = draw(`${'x'.repeat(2_500_000)}«y»${'z'.repeat(2_500_000)}`, 60);
    expect(source).toMatch(/^…x+yz+…$/);
    expect(source.length).toBeLessThanOrEqual(60);
  });

  test('no line gets wider than asked, and the marker always shows', () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 300, unit: 'binary' }),
        fc.nat(300),
        fc.nat(300),
        fc.integer({ min: 24, max: 120 }),
        (text, start, length, columns) => {
          const { source, marker } = drawExcerpt(new LineIndex(text), start, start + length, columns);
          expect(marker).toMatch(/^ *\^+$/);
          expect(marker.length).toBeLessThanOrEqual(columns);
          expect(source).toBe(harmless(source));
          expect(source).not.toMatch(/[\n\r\t]/);
        },
      ),
    );
  });

  test('what a terminal would obey is not passed on', () => {
    expect(draw('a\u001b[2J«b»\u202ec')).toEqual({ source: 'a\ufffd[2Jb\ufffdc', marker: '     ^' });
    expect(harmless('\u001b]0;x\u0007 ok\n')).toBe('\ufffd]0;x\ufffd ok\ufffd');
  });
});
