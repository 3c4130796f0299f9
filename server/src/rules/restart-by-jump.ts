/** The sketch restarts by a jump to address zero instead of a reset. */

import { defineRule } from './rule';
import { coreOf, habitsOf } from './support/habits';

interface Detail {
  readonly core: ReturnType<typeof coreOf>;
}

const ways: Readonly<Record<Detail['core'], string>> = {
  avr: 'Let the watchdog do it: wdt_enable(WDTO_15MS), then while (true) {}',
  esp8266: 'Call ESP.restart()',
  esp32: 'Call ESP.restart()',
  rp2040: 'Call rp2040.reboot()',
  teensy: 'Call NVIC_SystemReset()',
  other: 'Call NVIC_SystemReset()',
};

export default defineRule<Detail>({
  id: 'restart-by-jump',
  title: 'The sketch restarts by a jump instead of a reset.',
  why: 'Pins, timers, buses and interrupts stay as they were: an output stays on, or an interrupt comes before setup().',
  source:
    'documentation of avr-libc, questions on a software reset; start-up code of the Cortex-M and Xtensa chips',
  severity: 'warning',
  maturity: 'new',
  needs: 'sketch',
  *check(subject) {
    const core = coreOf(subject.build.board);
    const [first, ...others] = habitsOf(subject, 'jump');
    if (!first) return;
    yield {
      identity: 'jump',
      span: first.span,
      // Elsewhere there is no program at address zero.
      ...(core !== 'avr' && { severity: 'error' as const }),
      related: others.slice(0, 4).map(({ span }) => ({ message: 'and here', span })),
      detail: { core },
    };
  },
  message: ({ core }) =>
    `${
      core === 'avr'
        ? 'This jump starts the program again without a reset: pins, timers and interrupts stay as they were. '
        : 'No program begins at address zero on this chip: it crashes here. '
    }${ways[core]}.`,
  examples: [
    jump(
      'a call of a pointer that is zero',
      'uno-r3',
      'restart();',
      'void (*restart)(void) = 0;\n',
      'restart()',
    ),
    jump('the jump in assembler', 'nano-v3', 'asm volatile ("jmp 0");', '', 'asm volatile ("jmp 0")'),
    jump('a call of address zero on another chip', 'pico', '((void (*)())0)();', '', '((void (*)())0)()'),
    jump(
      'a restart by the watchdog',
      'uno-r3',
      'wdt_enable(WDTO_15MS); while (true) {}',
      '#include <avr/wdt.h>\n',
    ),
    jump('a function of the same name', 'uno-r3', 'restart();', 'void restart() { delay(1); }\n'),
  ],
});

function jump(about: string, board: string, line: string, before: string, wrong?: string) {
  const mark = wrong === undefined ? '' : `\n//     ${'^'.repeat(wrong.length)} restart-by-jump: `;
  const words = board === 'pico' ? 'it crashes here' : 'without a reset';
  return {
    about,
    build: `
//- sketch.ino board:${board}
${before}void setup() {}
void loop() {
  if (millis() > 60000UL) {
       ${line}${wrong === undefined ? '' : mark + words}
  }
}
`,
  };
}
