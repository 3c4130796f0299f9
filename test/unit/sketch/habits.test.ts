/** What the form of a sketch tells beside pin uses, one line of words for each habit. */
import { describe, expect, it } from 'vitest';
import type { Habit } from '../../../server/src/base/habit';
import { read } from './reading';

function words(habit: Habit, text: string): string {
  const at = ({ start, end }: { readonly start: number; readonly end: number }) => text.slice(start, end);
  switch (habit.kind) {
    case 'handler': {
      const counts = habit.counts.map(({ name }) => ` counts ${name}`).join('');
      const twice = habit.looksTwice ? ' looks twice' : '';
      return `handler ${habit.name} x${habit.attached.length}${habit.inMemory ? ' in memory' : ''}${counts}${twice}`;
    }
    case 'shared-variable': {
      const open = habit.reads.filter(({ guarded }) => !guarded).length;
      const waited = habit.waitedFor === undefined ? '' : ` waited for in ${at(habit.waitedFor)}`;
      const place =
        habit.volatileAt === undefined ? '' : ` before ${text.slice(habit.volatileAt).split(' ')[0]}`;
      return `shared ${habit.isVolatile ? 'volatile ' : ''}${habit.name} ${habit.bits} ${open} open of ${habit.reads.length}${waited}${place}`;
    }
    case 'wait-loop':
      return `waits for ${habit.name ?? habit.waitsFor}`;
    case 'jump':
      return `jump by ${habit.how} ${at(habit.span)}`;
    case 'time-narrow':
      return `narrow ${habit.type} ${at(habit.span)} ${habit.bits} ${habit.clock} in ${at(habit.used)}`;
    case 'time-compared':
      return `compared ${habit.name} in ${at(habit.span)}`;
    case 'register':
      return `register ${habit.name}${habit.change === undefined ? '' : ` keep ${habit.change.keep} set ${habit.change.set}`}`;
    case 'counts-edges':
      return `edges ${habit.name} by ${at(habit.read)}`;
    default:
      return `${habit.name} ${habit.bytes} bytes`;
  }
}

async function habits(text: string): Promise<string[]> {
  return ((await read(text)).habits ?? []).map((habit) => words(habit, text));
}

describe('handlers', () => {
  it('names the bodies an interrupt runs, by either way', async () => {
    expect(
      await habits(`
volatile int turns;
void count() { turns++; }
void quiet() { if (millis() > 5) turns += 1; }
ISR(TIMER1_COMPA_vect) { turns = 0; }
void setup() { attachInterrupt(0, count, FALLING); attachInterrupt(digitalPinToInterrupt(3), quiet, RISING); }
void loop() {}`),
    ).toEqual([
      'handler count x1 counts turns',
      'handler quiet x1 counts turns looks twice',
      'handler ISR(TIMER1_COMPA_vect) x0 in memory',
    ]);
  });

  it('finds the attribute before the name, before the type and behind the parameters', async () => {
    const sketch = (head: string) =>
      `${head} { }\nvoid setup() { attachInterrupt(0, tick, RISING); }\nvoid loop() {}`;
    for (const head of [
      'void IRAM_ATTR tick()',
      'ICACHE_RAM_ATTR void tick()',
      'void tick() IRAM_ATTR;\nvoid tick()',
    ])
      expect(await habits(sketch(head)), head).toEqual(['handler tick x1 in memory']);
    expect(await habits(sketch('void tick()'))).toEqual(['handler tick x1']);
  });

  it('takes a function handed to a button for what it is: no interrupt', async () => {
    expect(
      await habits('void click() {}\nvoid setup() { button.attachClick(click); }\nvoid loop() {}'),
    ).toEqual([]);
  });
});

describe('shared variables', () => {
  const sketch = (declared: string, loop: string) => `
${declared}
void count() { turns = turns + 1; }
void setup() { attachInterrupt(0, count, FALLING); }
void loop() { ${loop} }`;
  const shared = async (declared: string, loop: string) => (await habits(sketch(declared, loop)))[1];

  it('tells type, qualifier and open reads', async () => {
    expect(await shared('unsigned int turns;', 'show(turns);')).toBe(
      'shared turns 16 1 open of 1 before unsigned',
    );
    expect(await shared('volatile byte turns;', 'show(turns); show(turns);')).toBe(
      'shared volatile turns 8 2 open of 2',
    );
    expect(await shared('int turns, other;', 'show(turns);')).toBe('shared turns 16 1 open of 1');
  });

  it('sees what guards a read', async () => {
    for (const loop of [
      'noInterrupts(); int copy = turns; interrupts();',
      'int copy; do { copy = turns; } while (copy != turns);',
      'show(turns & 0xFF); if (turns < 0) show(1);',
    ])
      expect(await shared('volatile int turns;', loop), loop).toMatch(/0 open/);
    expect(
      await shared('volatile int turns;', 'ATOMIC_BLOCK(ATOMIC_RESTORESTATE) { show(turns); }'),
    ).toBeUndefined();
  });

  it('leaves alone what is never read, an array, and a name of the function itself', async () => {
    expect(await shared('int turns;', 'turns = 0;')).toBeUndefined();
    expect(await shared('int turns;', 'int turns = 3; show(turns);')).toBeUndefined();
    expect(await shared('int turns[4];', 'show(turns[0]);')).toBeUndefined();
  });

  it('finds the loop that waits for it', async () => {
    expect(await shared('bool turns;', 'while (!turns) {}')).toBe(
      'shared turns 1 1 open of 1 waited for in !turns before bool',
    );
  });
});

describe('waits and jumps', () => {
  const loop = (body: string) => habits(`void setup() { ${body} }\nvoid loop() {}`);

  it('tells the console from a pin', async () => {
    expect(await loop('while (!Serial);')).toEqual(['waits for Serial']);
    expect(await loop('while (!Serial) { delay(10); }')).toEqual(['waits for Serial']);
    expect(await loop('while (digitalRead(4) == HIGH) {}')).toEqual(['waits for pin']);
  });

  it('knows a limit of time', async () => {
    expect(await loop('while (!Serial && millis() < 3000);')).toEqual([]);
    expect(await loop('while (!Serial) { if (millis() > 3000) break; }')).toEqual([]);
  });

  it('finds jumps to the first instruction, in all their forms', async () => {
    expect(await habits('void (*restart)(void) = 0;\nvoid setup() { restart(); }\nvoid loop() {}')).toEqual([
      'jump by pointer restart()',
    ]);
    expect(await loop('asm volatile ("  jmp 0");')).toEqual(['jump by assembler asm volatile ("  jmp 0")']);
    expect(await loop('((void (*)())0)();')).toEqual(['jump by pointer ((void (*)())0)()']);
    expect(await loop('asm volatile ("nop");')).toEqual([]);
    expect(
      await habits('void (*called)(void) = 0;\nvoid setup() { called = loop; called(); }\nvoid loop() {}'),
    ).toEqual([]);
  });
});

describe('clocks', () => {
  const sketch = (declared: string, body: string) =>
    habits(`${declared}\nvoid setup() {}\nvoid loop() { ${body} }`);

  it('finds a time in few bits, set from the call or by way of a variable', async () => {
    expect(await sketch('int last;', 'if (millis() - last > 500) last = millis();')).toEqual([
      'narrow int last 15 millis in millis() - last',
    ]);
    expect(
      await sketch('word last;', 'unsigned long now = millis(); if (now - last > 500) last = now;'),
    ).toEqual(['narrow word last 16 millis in now - last']);
  });

  it('leaves alone what has the bits, or is cut on purpose', async () => {
    expect(await sketch('long last;', 'if (millis() - last > 500) last = millis();')).toEqual([]);
    expect(
      await sketch('uint16_t last;', 'uint16_t now = millis(); if (now - last > 500) last = now;'),
    ).toEqual([]);
    expect(await sketch('uint16_t last;', 'if (uint16_t(millis() - last) > 500) last = millis();')).toEqual(
      [],
    );
    expect(await sketch('byte seed;', 'seed = millis(); show(seed);')).toEqual([]);
  });

  it('finds a moment that the clock is compared with', async () => {
    expect(await sketch('unsigned long next;', 'if (millis() > next) next = millis() + 500;')).toEqual([
      'compared next in millis() > next',
    ]);
    expect(
      await sketch('unsigned long next;', 'if ((long)(millis() - next) > 0) next = millis() + 500;'),
    ).toEqual([]);
    expect(await sketch('', 'if (millis() > 5000) show(1);')).toEqual([]);
  });
});

describe('registers, edges and transmissions', () => {
  const setup = (body: string) => habits(`void setup() { ${body} }\nvoid loop() {}`);

  it('tells what a write changes', async () => {
    expect(await setup('TCCR0B = (TCCR0B & 0b11111000) | 0x01;')).toEqual(['register TCCR0B keep 248 set 1']);
    expect(await setup('TCCR0B |= _BV(CS02); TCCR0B &= ~(1 << CS00);')).toEqual([
      'register TCCR0B keep 255 set 4',
      'register TCCR0B keep 254 set 0',
    ]);
    expect(await setup('OCR1A = steps * 2; bitSet(ADMUX, 6); int TCCR2A = 3;')).toEqual([
      'register OCR1A',
      'register ADMUX',
    ]);
  });

  it('finds edges that are counted as they come', async () => {
    const counted = (test: string) =>
      habits(`int presses; bool last;
void setup() {}
void loop() { bool now = digitalRead(4); if (${test}) presses++; last = now; }`);
    expect(await counted('now != last')).toEqual(['edges presses by digitalRead(4)']);
    expect(await counted('now == LOW && last == HIGH')).toEqual(['edges presses by digitalRead(4)']);
    expect(await counted('now == LOW')).toEqual([]);
  });

  it('adds up the bytes of a transmission', async () => {
    const sent = (body: string) => setup(`Wire.beginTransmission(0x50); ${body} Wire.endTransmission();`);
    expect(await sent('Wire.write(0); for (int i = 0; i < 64; i++) Wire.write(page[i]);')).toEqual([
      'Wire 65 bytes',
    ]);
    expect(await sent('Wire.write(page, 40); if (more) Wire.write(1);')).toEqual(['Wire 40 bytes']);
    expect(await sent('for (int i = 0; i < count; i++) Wire.write(page[i]);')).toEqual([]);
  });
});
