/** All seeds, made from the clean builds. */
import type { CleanBuild } from '../builds';
import type { Seed } from '../seed';
import { ANALOG_SEEDS } from './analog';
import { BLOCKED_SEEDS } from './blocked';
import { openBook } from './book';
import { BUDGET_SEEDS } from './budgets';
import { BUS_LINE_SEEDS } from './bus-lines';
import { BUS_SEEDS } from './buses';
import { CHIP_SEEDS } from './chips';
import { FEED_SEEDS } from './feeds';
import { GATE_SEEDS } from './gates';
import { HABIT_SEEDS } from './habits';
import { HANDLER_SEEDS } from './handlers';
import { INTERRUPT_SEEDS } from './interrupts';
import { LAMP_SEEDS } from './lamps';
import { LEG_SEEDS } from './legs';
import { LEVEL_SEEDS } from './levels';
import { LIST_SEEDS } from './lists';
import { LOAD_SEEDS } from './loads';
import { ORDER_SEEDS } from './orders';
import { PAPER_SEEDS } from './papers';
import { PIN_SEEDS } from './pins';
import { PULL_SEEDS } from './pulls';
import { REMARK_SEEDS } from './remarks';
import { RESET_SEEDS } from './reset';
import { SERIAL_SEEDS } from './serial';
import { START_SEEDS } from './starts';
import { STORE_SEEDS } from './stores';
import { SUM_SEEDS } from './sums';
import { SUPPLY_SEEDS } from './supplies';
import { TIMER_SEEDS } from './timers';
import { TWO_WIRE_SEEDS } from './two-wire';
import { WINDING_SEEDS } from './windings';

const MAKERS = [
  ...[
    ...PIN_SEEDS,
    ...LAMP_SEEDS,
    ...RESET_SEEDS,
    ...PAPER_SEEDS,
    ...REMARK_SEEDS,
    ...INTERRUPT_SEEDS,
    ...TIMER_SEEDS,
    ...CHIP_SEEDS,
  ],
  ...[
    ...BUS_SEEDS,
    ...BUS_LINE_SEEDS,
    ...SERIAL_SEEDS,
    ...PULL_SEEDS,
    ...SUPPLY_SEEDS,
    ...FEED_SEEDS,
    ...BLOCKED_SEEDS,
    ...BUDGET_SEEDS,
    ...LOAD_SEEDS,
  ],
  ...[
    ...WINDING_SEEDS,
    ...LEVEL_SEEDS,
    ...SUM_SEEDS,
    ...ORDER_SEEDS,
    ...HANDLER_SEEDS,
    ...HABIT_SEEDS,
    ...TWO_WIRE_SEEDS,
    ...ANALOG_SEEDS,
    ...GATE_SEEDS,
  ],
  ...[...LEG_SEEDS, ...LIST_SEEDS, ...START_SEEDS, ...STORE_SEEDS],
];

export function makeSeeds(builds: readonly CleanBuild[]): readonly Seed[] {
  const book = openBook(builds);
  return MAKERS.flatMap((make) => make(book));
}

/** Rules that are still being written, with their seeds ready. An id leaves this list when its rule is there. */
export const WAITING: readonly string[] = [];
