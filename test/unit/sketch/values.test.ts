/** From text to pin uses: each row is a style in which sketches name their pins. */
import { describe, expect, it } from 'vitest';
import { table } from './reading';
import { check, inSetup } from './rows';

describe('names and numbers', () => {
  const out = (pin: string | number) => [`setup pinMode ${pin} = 1 output`];
  check([
    { about: 'a literal', text: inSetup('', 'pinMode(7, OUTPUT);'), uses: out(7) },
    { about: 'hexadecimal', text: inSetup('', 'pinMode(0x0B, OUTPUT);'), uses: out(11) },
    { about: 'binary', text: inSetup('', 'pinMode(0b101, OUTPUT);'), uses: out(5) },
    { about: 'a binary name', text: inSetup('', 'pinMode(B0101, OUTPUT);'), uses: out(5) },
    { about: 'octal', text: inSetup('', 'pinMode(012, OUTPUT);'), uses: out(10) },
    { about: 'a suffix and a separator', text: inSetup('', "pinMode(1'2UL, OUTPUT);"), uses: out(12) },
    { about: 'a character', text: inSetup('', "pinMode('\\n', OUTPUT);"), uses: out(10) },
    { about: 'a name of the board', text: inSetup('', 'pinMode(LED_BUILTIN, OUTPUT);'), uses: out(13) },
    { about: 'an analogue name', text: inSetup('', 'pinMode(A2, OUTPUT);'), uses: out(16) },
    { about: 'a macro', text: inSetup('#define LED 9', 'pinMode(LED, OUTPUT);'), uses: out(9) },
    {
      about: 'a macro in brackets',
      text: inSetup('#define LED (A0 + 1)', 'pinMode(LED, OUTPUT);'),
      uses: out(15),
    },
    {
      about: 'a macro of a macro',
      text: inSetup('#define A_ 4\n#define B_ A_', 'pinMode(B_, OUTPUT);'),
      uses: out(4),
    },
    {
      about: 'a macro that is given another meaning: each use sees the one in front of it',
      text: '#define P 3\nvoid first() { pinMode(P, OUTPUT); }\n#undef P\n#define P 4\nvoid setup() { first(); pinMode(P, OUTPUT); }',
      uses: ['setup first pinMode 3 = 1 output', 'setup pinMode 4 = 1 output'],
    },
    { about: 'const', text: inSetup('const int led = 6;', 'pinMode(led, OUTPUT);'), uses: out(6) },
    { about: 'constexpr', text: inSetup('constexpr uint8_t led{6};', 'pinMode(led, OUTPUT);'), uses: out(6) },
    {
      about: 'static const',
      text: inSetup('static const byte led = 6;', 'pinMode(led, OUTPUT);'),
      uses: out(6),
    },
    { about: 'a plain global', text: inSetup('int led = 6;', 'pinMode(led, OUTPUT);'), uses: out(6) },
    {
      about: 'a global in round brackets',
      text: inSetup('int led(6);', 'pinMode(led, OUTPUT);'),
      uses: out(6),
    },
    {
      about: 'several in one line',
      text: inSetup('int a = 2, b = a + 3;', 'pinMode(b, OUTPUT);'),
      uses: out(5),
    },
    {
      about: 'an enumeration',
      text: inSetup('enum { one = 4, two, three };', 'pinMode(three, OUTPUT);'),
      uses: out(6),
    },
    {
      about: 'a scoped enumeration',
      text: inSetup('enum class Pin : byte { a = 4, b };', 'pinMode((int)Pin::b, OUTPUT);'),
      uses: out(5),
    },
    {
      about: 'static_cast',
      text: inSetup('enum class Pin { a = 4 };', 'pinMode(static_cast<uint8_t>(Pin::a), OUTPUT);'),
      uses: out(4),
    },
    {
      about: 'a namespace',
      text: inSetup('namespace pins { const int led = 3; }', 'pinMode(pins::led, OUTPUT);'),
      uses: out(3),
    },
    { about: 'a local', text: inSetup('', 'const int led = 3; pinMode(led, OUTPUT);'), uses: out(3) },
    {
      about: 'a local hides a global',
      text: inSetup('int led = 9;', 'int led = 3; pinMode(led, OUTPUT);'),
      uses: out(3),
    },
    {
      about: 'a block ends',
      text: inSetup('int led = 9;', '{ int led = 3; } pinMode(led, OUTPUT);'),
      uses: out(9),
    },
    {
      about: 'a global that setup() changes',
      text: inSetup('int led = 9;', 'led = 3; pinMode(led, OUTPUT);'),
      uses: out(3),
    },
    {
      about: 'a struct',
      text: inSetup('struct { int lamp = 4; byte horn = 5; } pins;', 'pinMode(pins.horn, OUTPUT);'),
      uses: out(5),
    },
    {
      about: 'designated fields',
      text: inSetup(
        'struct Pins { int lamp; int horn; };\nPins pins = { .lamp = 4, .horn = 5 };',
        'pinMode(pins.horn, OUTPUT);',
      ),
      uses: out(5),
    },
    {
      about: 'a name nobody declares',
      text: inSetup('', 'pinMode(lamp, OUTPUT);'),
      uses: out('? `lamp` is not defined in the sketch'),
    },
    {
      about: 'a function-like macro',
      text: inSetup('#define ON(p) digitalWrite((p), HIGH)', 'ON(5);'),
      uses: ['setup digitalWrite 5 = 1'],
    },
    {
      about: 'a macro of several statements',
      text: inSetup(
        '#define BLINK(p) do { digitalWrite(p, HIGH); delay(9); digitalWrite(p, LOW); } while (0)',
        'BLINK(5);',
      ),
      uses: ['setup digitalWrite 5 = 1', 'setup delay  = 9', 'setup digitalWrite 5 = 0'],
    },
    {
      about: 'a macro for a call',
      text: inSetup('#define LAMP_ON digitalWrite(8, HIGH)', 'LAMP_ON;'),
      uses: ['setup digitalWrite 8 = 1'],
    },
    {
      about: 'a macro for a function',
      text: inSetup('#define put digitalWrite', 'put(8, HIGH);'),
      uses: ['setup digitalWrite 8 = 1'],
    },
  ]);
});

describe('arithmetic', () => {
  const pin = (expression: string, globals = '') => inSetup(globals, `pinMode(${expression}, OUTPUT);`);
  const rows: readonly [string, string | number][] = [
    ['2 + 3 * 2', 8],
    ['(2 + 3) * 2', 10],
    ['7 / 2', 3],
    ['-7 / 2 + 10', 7],
    ['17 % 5', 2],
    ['1 << 3', 8],
    ['0x1F & ~0x0F', 16],
    ['5 | 2', 7],
    ['5 ^ 1', 4],
    ['3 > 2 ? 4 : 5', 4],
    ['!0 + 2', 3],
    ['3 == 3 && 2 < 1', 0],
    ['(byte)257', 1],
    ['uint8_t(258)', 2],
    ['(int)3.9', 3],
    ['300 * 300', 24464],
    ['300L * 300L - 89990', 10],
    ['min(3, 9)', 3],
    ['max(3, 9)', 9],
    ['constrain(12, 2, 9)', 9],
    ['map(5, 0, 10, 2, 12)', 7],
    ['abs(-4)', 4],
    ['bit(3)', 8],
    ['_BV(2)', 4],
    ['sizeof(long)', 4],
    ['sizeof(int)', 2],
    ['1 / 0', '? it is divided by zero'],
    ['analogRead(A0) % 2', '? '],
  ];
  for (const [expression, value] of rows.slice(0, -1)) {
    it(expression, async () => {
      expect(await table(pin(expression))).toEqual([`setup pinMode ${value} = 1 output`]);
    });
  }
  it('a byte wraps', async () => {
    expect(await table(inSetup('byte b = 250;', 'b += 10; pinMode(b, OUTPUT);'))).toEqual([
      'setup pinMode 4 = 1 output',
    ]);
  });
  it('a remainder of an unknown has few values, a mask too', async () => {
    const text = inSetup('', 'pinMode(analogRead(A0) % 2 + 4, OUTPUT); pinMode(analogRead(A0) & 3, OUTPUT);');
    expect(await table(text)).toEqual([
      'setup analogRead 14',
      'setup pinMode 4,5 = 1 output perhaps',
      'setup analogRead 14',
      'setup pinMode 0,1,2,3 = 1 output perhaps',
    ]);
  });
  it('what is read from outside is said to be', async () => {
    const text = inSetup(
      '',
      'pinMode(analogRead(A0), OUTPUT); pinMode(Serial.read(), OUTPUT); pinMode(millis(), OUTPUT);',
    );
    expect(await table(text)).toEqual([
      'setup analogRead 14',
      'setup pinMode ? it is read from an analog input = 1 output',
      'setup pinMode ? it is read from the serial port = 1 output',
      'setup millis ',
      'setup pinMode ? it is the time = 1 output',
    ]);
  });
});
