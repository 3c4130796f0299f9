/** Which target of the open AVR core each board of the library has to agree with. */
import { readTarget, type Target } from './avr-core';

export interface AvrBoard {
  readonly id: string;
  /** Reads boards.txt of the core: call it only where the core is. */
  readonly target: () => Target;
}

export const AVR_BOARDS: readonly AvrBoard[] = [
  { id: 'uno-r3', target: () => readTarget('uno') },
  { id: 'nano-v3', target: () => readTarget('nano', 'atmega328') },
  // The core knows this chip at 16 MHz only; the bare chip at 3.3 V runs at 8 MHz and is otherwise the same target.
  { id: 'bare-32u4-3v3', target: () => ({ ...readTarget('leonardo'), fCpu: '8000000L' }) },
  { id: 'leonardo', target: () => readTarget('leonardo') },
  { id: 'micro', target: () => readTarget('micro') },
  { id: 'mega-2560', target: () => readTarget('mega', 'atmega2560') },
  { id: 'pro-mini-5v', target: () => readTarget('pro', '16MHzatmega328') },
  { id: 'pro-mini-3v3', target: () => readTarget('pro', '8MHzatmega328') },
];
