/** Timers that the sketch's calls take for themselves, by the data of the core and of the libraries. */
import type { PinUse } from '../../base/pin-use';
import type { LibraryFacts } from '../../base/platform';
import type { Subject } from '../subject';
import { forChip } from './chip-data';

type Timers = Readonly<Record<string, string>>;

/** A timer in the hands of a call. */
export interface TimerTaken {
  readonly timer: string;
  /** The first use that takes it. */
  readonly use: PinUse;
  /** Id of the library whose call it is; `core` for the core's own. */
  readonly library: string;
}

interface Entry {
  readonly library: string;
  readonly timers: Timers;
}

const tables = new WeakMap<readonly LibraryFacts[], ReadonlyMap<string, Entry>>();

/** By the call as a use names it: `tone`, `Servo.attach`. */
function tableOf(libraries: readonly LibraryFacts[]): ReadonlyMap<string, Entry> {
  const kept = tables.get(libraries);
  if (kept) return kept;
  const table = new Map<string, Entry>();
  for (const { id: library, functions, classes } of libraries) {
    for (const { name, timers } of functions) if (timers) table.set(name, { library, timers });
    for (const { name, objects = [], methods, timers: whole } of classes) {
      for (const { name: method, action, timers = whole } of methods) {
        if (!timers || action === 'release') continue;
        for (const owner of [name, ...objects]) table.set(`${owner}.${method}`, { library, timers });
      }
    }
  }
  tables.set(libraries, table);
  return table;
}

/** One entry for each timer and library that takes it. */
export function takenTimers(subject: Subject): readonly TimerTaken[] {
  const table = tableOf(subject.libraries);
  const taken: TimerTaken[] = [];
  for (const use of subject.facts.uses) {
    const entry = table.get(use.call);
    const timer = entry && forChip(subject.build.board, entry.timers);
    if (!entry || timer === undefined) continue;
    if (taken.some((one) => one.timer === timer && one.library === entry.library)) continue;
    taken.push({ timer, use, library: entry.library });
  }
  return taken;
}
