/** Registers of the chip: which pins a write reaches, with which level, and which pins a read reads. */
import { describe, expect, it } from 'vitest';
import { read } from './reading';
import { check, inSetup } from './rows';

const one = (about: string, body: string, uses: readonly string[], globals = '') => ({
  about,
  text: inSetup(globals, body),
  uses: uses.map((use) => `setup ${use}`),
});

describe('directions', () => {
  check([
    one('one bit', 'DDRB |= (1 << 5); DDRD |= _BV(3); DDRD &= ~bit(3);', [
      'DDRB 13 output',
      'DDRD 3 output',
      'DDRD 3 input',
    ]),
    one('a whole port is two uses', 'DDRC = 0b000011;', ['DDRC 14,15 output', 'DDRC 16,17,18,19 input']),
    one('an input with its level high is pulled up', 'DDRD &= ~4; PORTD |= 4;', [
      'DDRD 2 input',
      'PORTD 2 input-pullup',
    ]),
    one('bits by the names of the header', 'DDRB |= _BV(DDB1) | (1 << PB2);', ['DDRB 9,10 output']),
  ]);
});

describe('levels', () => {
  check([
    one('bits set and cleared', 'PORTB |= 32; PORTB &= ~32;', ['PORTB 13 = 1', 'PORTB 13 = 0']),
    one(
      'masks of macros',
      'PORTD |= MASK; PORTD &= ~MASK;',
      ['PORTD 3,4 = 1', 'PORTD 3,4 = 0'],
      '#define MASK ((1<<3)|(1<<4))',
    ),
    one('turned over: the level is what it was not', 'PORTB |= 1; PORTB ^= 3; PINB = 4;', [
      'PORTB 8 = 1',
      'PORTB 8,9 = 0,1',
      'PINB 10 = 0,1',
    ]),
    one('a whole port is two uses', 'PORTC = B000101;', ['PORTC 14,16 = 1', 'PORTC 15,17,18,19 = 0']),
    one('some bits kept, the others unknown', 'PORTD = (PORTD & 0x0F) | (analogRead(0) << 4);', [
      'analogRead 14',
      'PORTD 4,5,6,7 = 0,1',
    ]),
    one('the written-out form of an operator', 'PORTD = PORTD | 4; PORTD = PORTD & ~4;', [
      'PORTD 2 = 1',
      'PORTD 2 = 0',
    ]),
    one('an unknown mask is an unknown pin', 'PORTD |= analogRead(0);', [
      'analogRead 14',
      'PORTD ? it is read from an analog input = 0,1',
    ]),
    one('one of several bits is not certain', 'PORTD |= 1 << (2 + digitalRead(9));', [
      'digitalRead 9',
      'PORTD 2,3 = 1 perhaps',
    ]),
    one(
      'calls for one bit',
      'bitSet(PORTB, 1); bitClear(PORTB, 1); bitWrite(PORTB, 2, 1); sbi(PORTB, 3); cbi(PORTB, 3);',
      ['PORTB 9 = 1', 'PORTB 9 = 0', 'PORTB 10 = 1', 'PORTB 11 = 1', 'PORTB 11 = 0'],
    ),
    one('a bit that follows an input', 'bitWrite(PORTB, 2, digitalRead(4));', [
      'digitalRead 4',
      'PORTB 10 = 0,1',
    ]),
    one(
      'the sketch’s own macros',
      'on(PORTB, 1); PORTB_BIT ? on(PORTB, 2) : on(PORTB, 3);',
      ['PORTB 9 = 1', 'PORTB 11 = 1'],
      '#define PORTB_BIT 0\n#define on(port, at) ((port) |= (1 << (at)))',
    ),
    one(
      'through pointers, references and the core’s tables',
      'volatile uint8_t *out = &PORTB; *out |= 1; volatile uint8_t &port = PORTD; port |= 2; lift(&PORTC, 4); volatile uint8_t *mine = portOutputRegister(digitalPinToPort(7)); *mine |= digitalPinToBitMask(7);',
      ['PORTB 8 = 1', 'PORTD 1 = 1', 'lift PORTC 16 = 1', 'PORTD 7 = 1'],
      'void lift(volatile uint8_t *port, uint8_t mask) { *port |= mask; }',
    ),
    one(
      'a name of the sketch hides the register',
      'PORTB |= 1; pinMode(PORTB, OUTPUT);',
      ['pinMode 5 = 1 output'],
      'int PORTB = 4;',
    ),
    one(
      'a plain variable',
      'bitSet(mask, 3); bitClear(mask, 0); pinMode(mask, OUTPUT);',
      ['pinMode 8 = 1 output'],
      'byte mask = 1;',
    ),
  ]);
});

describe('reads', () => {
  check([
    one(
      'one bit',
      'if (PIND & (1 << 2)) {}\nif (bitRead(PIND, 3)) {}\nif (bit_is_clear(PINB, 0)) {}\nif ((PIND >> 4) & 1) {}',
      ['PIND 2', 'PIND 3', 'PINB 8', 'PIND 4'],
    ),
    one('a whole port', 'byte all = PINC;', ['PINC 14,15,16,17,18,19']),
    one('what was written is known', 'PORTB = 4; pinMode(PORTB, OUTPUT);', [
      'PORTB 8,9,11,12,13 = 0',
      'PORTB 10 = 1',
      'pinMode 4 = 1 output',
    ]),
  ]);
});

describe('access by macros', () => {
  check([
    one(
      'a register as the place that a macro names',
      'sbi(DDRB, 1); sbi(PORTB, 1); cbi(PORTB, PB1);',
      ['DDRB 9 output', 'PORTB 9 = 1', 'PORTB 9 = 0'],
      '#ifndef sbi\n#define sbi(sfr, bit) (_SFR_BYTE(sfr) |= _BV(bit))\n#endif\n#define cbi(sfr, bit) (_SFR_BYTE(sfr) &= ~_BV(bit))',
    ),
  ]);
});

describe('outputs of timers', () => {
  const level = (register: string) => `? a timer drives it by \`${register}\``;
  check([
    one('take their pins', 'TCCR1A = _BV(COM1A1) | _BV(WGM11); TCCR2A |= 0x30;', [
      `TCCR1A 9 = ${level('TCCR1A')}`,
      `TCCR2A 3 = ${level('TCCR2A')}`,
    ]),
    one(
      'leave them where no output is connected',
      'TCCR1A = 0; TCCR1A = _BV(WGM10); TCCR1A &= ~_BV(COM1B1);',
      [],
    ),
    one('may take them', 'TCCR1A = analogRead(0);', [
      'analogRead 14',
      `TCCR1A 9,10 = ${level('TCCR1A')} perhaps`,
    ]),
  ]);

  it('make the level of their pin unknown from there on', async () => {
    const { moments } = await read(
      inSetup('', 'TCCR1A = _BV(COM1A0); pinMode(9, OUTPUT); digitalWrite(9, LOW);'),
    );
    expect(moments?.at(-1)?.pins[9]).toEqual(['high', 'low']);
  });
});
