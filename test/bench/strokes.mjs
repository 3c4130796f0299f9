// The person at the keyboard: types a statement, letter by letter, and takes it back the same way.

/** What is typed: half of the time the sketch is broken, as it is under anybody's fingers. */
const TYPED = '\n  if (level > 10) { digitalWrite(allLamps[0], HIGH); } // warn';

/**
 * `count` strokes at `offset` of `text`, each with the text after it and the change that leads there.
 * The change's offsets are those of the text before the stroke.
 */
export function* strokes(text, offset, count) {
  let now = text;
  for (let index = 0; index < count; index += 1) {
    const at = index % (2 * TYPED.length);
    const isTyping = at < TYPED.length;
    const length = isTyping ? at : 2 * TYPED.length - at;
    const change = isTyping
      ? { start: offset + length, end: offset + length, text: TYPED[at] }
      : { start: offset + length - 1, end: offset + length, text: '' };
    now = now.slice(0, change.start) + change.text + now.slice(change.end);
    yield { text: now, change };
  }
}
