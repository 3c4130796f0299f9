/**
 * What was solved, for whoever prints figures. Papers need the voltages and currents of every state and the network
 * they came from, so that they can ask "and with 330 ohm?" without knowing how regions and states are made.
 */
import type { Network, OperatingPoint } from '../base/circuit';
import type { PinMode, PinUse } from '../base/pin-use';
import type { Drive, PinView, Placed, StatePoint, Subject } from '../rules/subject';
import { limitsOf } from '../rules/support/pin-limits';
import { buildNetwork } from './network';

/** One state that the pins, switches and knobs of a region can have together. */
export interface SolvedState {
  /** "D7 high, restart closed". Empty where nothing in the region can change. */
  readonly words: string;
  /** By pin id. */
  readonly drives: StatePoint['drives'];
  /** By element id of a switch. */
  readonly switches: StatePoint['switches'];
  /** By element id of a potentiometer or of an output of another circuit. */
  readonly settings: StatePoint['settings'];
  readonly network: Network;
  readonly point: OperatingPoint;
}

/** A connected piece of the build between the rails, with all its states that converged. */
export interface SolvedRegion {
  /** Net ids without the rails. */
  readonly nets: readonly string[];
  /** Ids of the board's pins in it. */
  readonly pins: readonly string[];
  readonly elements: readonly Placed[];
  /** Said where not all states could be looked at. */
  readonly limit?: string;
  readonly states: readonly SolvedState[];
}

/** A pin that is wired or used. */
export interface PinWorking {
  readonly pin: string;
  readonly net: string;
  readonly drives: readonly Drive[];
  readonly modes: readonly PinMode[];
  readonly uses: readonly PinUse[];
  /** Amperes it may carry for good, and where that figure comes from. */
  readonly limit: { readonly amps: number; readonly text: string };
}

export interface Workings {
  readonly regions: readonly SolvedRegion[];
  readonly pins: readonly PinWorking[];
  /** Every primitive of the parts and of the board on its nets. */
  readonly placed: readonly Placed[];
  /** Pin ids of rails by net id. */
  readonly rails: Readonly<Record<string, string>>;
  /** The node that every ground net is in a network. */
  readonly ground: string;
}

/** All states with their figures, as plain data. What the rules solved before is not solved again. */
export function collectWorkings(subject: Subject): Workings {
  const byId = new Map<string, PinView>(subject.pins.map((view) => [view.pin.id, view]));
  const context = {
    board: subject.build.board,
    pin: (id: string) => byId.get(id),
    rails: subject.rails,
  };
  const regions = subject.regions.map((region): SolvedRegion => {
    const { nets, pins, elements, limit } = region;
    const states = subject.points(region).map(({ words, drives, switches, settings, point }): SolvedState => {
      const network = buildNetwork(region, { words, drives, switches, settings }, context);
      return { words, drives, switches, settings, network, point };
    });
    return { nets, pins, elements, ...(limit !== undefined && { limit }), states };
  });
  const pins = subject.pins
    .filter((view) => view.wires.length > 0 || view.uses.length > 0)
    .map((view): PinWorking => {
      const { pin, net, drives, modes, uses } = view;
      return { pin: pin.id, net: net.id, drives, modes, uses, limit: limitsOf(subject.build, view).working };
    });
  return { regions, pins, placed: subject.placed, rails: subject.rails, ground: '0' };
}
