/** Texts, ranges and URIs: pure parts of the server, against replayed edits and written-out pairs. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DeathCount } from '../../client/src/death-count';
import { plainText } from '../../server/src/lsp/markup';
import { OpenFile } from '../../server/src/lsp/open-file';
import { linesOf, offsetsOf, rangeOf } from '../../server/src/lsp/places';
import { folderOf, nameOf, pathOfUri, uriOfPath } from '../../server/src/lsp/uris';

describe('URIs', () => {
  test.each([
    ['file:///home/a/b.ino', '/home/a/b.ino'],
    ['file:///home/a%20b/%C3%A4.ino', '/home/a b/ä.ino'],
    ['file:///home/a b/ä.ino', '/home/a b/ä.ino'],
    ['file://localhost/home/x', '/home/x'],
    ['file:/home/x', '/home/x'],
    ['FILE:///home/x', '/home/x'],
    ['file:///c%3A/odd', '/c:/odd'],
    ['file:///a#b', '/a'],
    ['file:///a%23b%3Fc', '/a#b?c'],
    ['untitled:Untitled-1', undefined],
    ['https://example.org/a', undefined],
    ['file:///a%ZZ', undefined],
    ['', undefined],
  ])('%s is %s', (uri, path) => {
    expect(pathOfUri(uri, false)).toBe(path);
  });

  test.each([
    ['file:///c%3A/Users/a%20b/x.ino', 'c:/Users/a b/x.ino'],
    ['file:///C:/Users/x.ino', 'c:/Users/x.ino'],
    ['file://server/share/x.ino', '//server/share/x.ino'],
  ])('with drive letters, %s is %s', (uri, path) => {
    expect(pathOfUri(uri, true)).toBe(path);
  });

  test.each([
    ['/home/a b/ä#?%.ino', false, 'file:///home/a%20b/%C3%A4%23%3F%25.ino'],
    ["/a(b)'c*!", false, 'file:///a%28b%29%27c%2A%21'],
    ['C:\\Users\\x.ino', true, 'file:///c%3A/Users/x.ino'],
    ['//server/share/x.ino', true, 'file://server/share/x.ino'],
    ['/half \ud800 pair', false, 'file:///half%20%EF%BF%BD%20pair'],
  ])('%s becomes a URI', (path, windows, uri) => {
    expect(uriOfPath(path, windows)).toBe(uri);
  });

  test('every path comes back from its URI', () => {
    const segment = fc.string({ unit: 'grapheme', minLength: 1 }).filter((name) => !/[/\0]/.test(name));
    fc.assert(
      fc.property(fc.array(segment, { minLength: 1, maxLength: 4 }), (segments) => {
        const path = `/${segments.join('/')}`;
        expect(pathOfUri(uriOfPath(path, false), false)).toBe(path);
      }),
    );
  });

  test('folders and names', () => {
    expect([folderOf('/a/b.ino'), folderOf('/b.ino'), folderOf('c:/b.ino')]).toEqual(['/a', '/', 'c:']);
    expect(nameOf('/a/b.ino')).toBe('b.ino');
  });
});

describe('lines', () => {
  test('LF, CRLF and a lone CR end a line; columns are UTF-16 units', () => {
    const lines = linesOf('a\rb\r\nc\n🙂d');
    expect(rangeOf(lines, { start: 2, end: 3 })).toEqual({
      start: { line: 1, character: 0 },
      end: { line: 1, character: 1 },
    });
    expect(rangeOf(lines, { start: 9, end: 10 })).toEqual({
      start: { line: 3, character: 2 },
      end: { line: 3, character: 3 },
    });
  });

  test('a span or range that leaves the text is brought to its edge, a backward one is turned', () => {
    const lines = linesOf('ab\ncd');
    expect(rangeOf(lines, { start: 4, end: 99 }).end).toEqual({ line: 1, character: 2 });
    expect(rangeOf(lines, { start: 3, end: 1 })).toEqual({
      start: { line: 1, character: 0 },
      end: { line: 1, character: 0 },
    });
    expect(offsetsOf(lines, { start: { line: 7, character: 0 }, end: { line: 0, character: 9 } })).toEqual({
      start: 2,
      end: 5,
    });
  });
});

test('an open document holds the text its client holds, and its journal leads there', () => {
  const piece = fc.string({ unit: fc.constantFrom('a', ' ', '\n', '\r', '\r\n', '🙂', 'ä'), maxLength: 12 });
  const edit = fc.record({ start: fc.nat(40), length: fc.nat(8), text: piece });
  fc.assert(
    fc.property(
      piece,
      fc.array(fc.array(edit, { minLength: 1, maxLength: 3 }), { maxLength: 5 }),
      (text, steps) => {
        let expected = text;
        let file = OpenFile.open('file:///a.ino', 'cpp', 1, text);
        expect(file.journal.take()).toBeUndefined();
        const before = file;
        let version = 1;
        for (const edits of steps) {
          const changes = edits.map(({ start, length, text }) => {
            // A client names places by line and column, so no edit begins or ends inside a CRLF.
            const range = rangeOf(linesOf(expected), { start, end: start + length });
            const place = offsetsOf(linesOf(expected), range);
            expected = expected.slice(0, place.start) + text + expected.slice(place.end);
            return { range, text };
          });
          version += 1;
          file = OpenFile.update(file, changes, version);
          expect(file.text).toBe(expected);
        }
        const replayed = (file.journal.take() ?? []).reduce(
          (sum, change) => sum.slice(0, change.start) + change.text + sum.slice(change.end),
          text,
        );
        expect(replayed).toBe(expected);
        expect(before.text).toBe(text);
        expect(file.journal.take()).toEqual([]);
      },
    ),
    { numRuns: 500 },
  );
});

test('a replaced text makes the journal unknown until the next parse', () => {
  const file = OpenFile.open('file:///a.ino', 'cpp', 1, 'old');
  file.journal.take();
  const next = OpenFile.update(file, [{ text: 'new' }], 2);
  const place = { line: 0, character: 0 };
  OpenFile.update(next, [{ range: { start: place, end: place }, text: 'x' }], 3);
  expect(next.journal.take()).toBeUndefined();
  expect(next.journal.take()).toEqual([]);
});

test('markdown without its marks keeps the words', () => {
  const markdown = [
    '### D7 is `beacon`',
    '**Lamp**, *green*, snake_case_name and 2 * 3 * 4; [the rule](https://example.org)',
    '',
    '| pin | place |',
    '| --- | :---: |',
    '| D7 | left \\| 10th |',
    '```cpp',
    'int a_b;',
    '```',
  ].join('\n');
  expect(plainText(markdown)).toBe(
    [
      'D7 is beacon',
      'Lamp, green, snake_case_name and 2 * 3 * 4; the rule',
      '',
      'pin  place',
      'D7  left | 10th',
      'int a_b;',
    ].join('\n'),
  );
});

test('a server that keeps falling is told from one that fell', () => {
  const deaths = new DeathCount();
  expect([0, 1, 2, 3, 4].map((second) => deaths.add(second * 1000))).toEqual([true, true, true, true, false]);
  expect(deaths.add(10 * 60 * 1000)).toBe(true);
  const again = new DeathCount();
  for (let index = 0; index < 5; index += 1) {
    again.add(0);
  }
  again.forget();
  expect(again.add(0)).toBe(true);
});
