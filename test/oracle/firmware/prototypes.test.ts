/** Joining a sketch's tabs: prototypes where a build needs them, and nowhere else. */
import { expect, test } from 'vitest';
import { joinSketch } from './prototypes';

test('prototypes stand before the first function; lines keep their numbers', () => {
  const a = `#include <Servo.h>
// void comment() {
struct Lamp { int pin; void on() { digitalWrite(pin, HIGH); } };
const char text[] = "void string() {";
Lamp lamp = {7};
#define F(x) \\
  void macro() { x; }
static unsigned long  *find(const Lamp &which,
    int times) { if (times) { return 0; } return 0; }
void setup() { later(lamp); }
`;
  const b = 'void later(Lamp which) { which.on(); }\nvoid defaulted(int a = 1) {}\nvoid loop() {\n}\n';
  const joined = joinSketch([
    { name: 'a.ino', text: a },
    { name: 'b.ino', text: b },
  ]);
  const start = a.indexOf('static unsigned');
  expect(joined).toBe(`#include <Arduino.h>
#line 1 "a.ino"
${a.slice(0, start)}
static unsigned long * find(const Lamp &which, int times);
void setup();
void later(Lamp which);
void loop();
#line 8 "a.ino"
${a.slice(start)}
#line 1 "b.ino"
${b}
`);
});

test('a sketch without functions is only joined', () => {
  expect(joinSketch([{ name: 'a.ino', text: 'int a = 1;' }])).toBe(
    '#include <Arduino.h>\n#line 1 "a.ino"\nint a = 1;\n',
  );
});
