/**
 * The DC operating point of a network: what flows where, at the least, usually and at the most. This is the figure
 * behind every finding about currents and levels.
 */
import type { Element, Network, OperatingPoint } from '../base/circuit';
import { exactly, type Range } from '../base/range';
import { checkNetwork, endsOf, type Piece } from './check-network';
import { exploreCorners } from './corners';
import { compilePiece } from './linear-part';

/** Unknowns of one piece above which no sum is tried: it would hold up whoever waits for it. */
const MOST_UNKNOWNS = 150;
/** Volts that no build has; a figure beyond it comes from a current that the model lets nowhere go. */
const MOST_VOLTS = 1e6;

/**
 * Solves a network at the corners of its tolerances. Volts against `network.ground`, amperes with the signs that
 * OperatingPoint documents. Never throws and never gives NaN: what has no answer comes back with `converged` false,
 * all figures 0, and the reason in the notes.
 */
export function solveNetwork(network: Network): OperatingPoint {
  const checked = checkNetwork(network);
  const notes = [...checked.faults, ...checked.notes];
  const nodes = new Map<string, Range>([[network.ground, exactly(0)]]);
  const amps = new Map<string, Range>(checked.idle.map((id) => [id, exactly(0)]));
  let converged = checked.faults.length === 0;
  for (const piece of checked.pieces) {
    converged = solvePiece(piece, network.ground, nodes, amps, notes) && converged;
  }
  if (!converged) {
    return withoutFigures(network, notes);
  }
  return { nodes: Object.fromEntries(nodes), amps: Object.fromEntries(amps), converged, notes };
}

function solvePiece(
  piece: Piece,
  ground: string,
  nodes: Map<string, Range>,
  amps: Map<string, Range>,
  notes: string[],
): boolean {
  const part = compilePiece(piece);
  const about = piece.elements[0]?.id ?? ground;
  if (part.size > MOST_UNKNOWNS) {
    notes.push(
      `The network around ${about} has ${part.size} unknowns; more than ${MOST_UNKNOWNS} are not solved.`,
    );
    return false;
  }
  const spread = exploreCorners(part);
  if (spread === undefined || !spread.converged) {
    notes.push(
      `The sum for the network around ${about} has no solution${spread ? ' at some tolerances' : ''}.`,
    );
    return false;
  }
  if (!spread.complete) {
    notes.push(
      `The network around ${about} is large: not every combination of its tolerances was looked at.`,
    );
  }
  const rangeAt = (index: number): Range => ({
    min: spread.low[index] ?? 0,
    typ: spread.nominal[index] ?? 0,
    max: spread.high[index] ?? 0,
  });
  let held = true;
  part.nodes.forEach((node, index) => {
    const range = rangeAt(index);
    nodes.set(node, range);
    held &&= Math.max(-range.min, range.max) <= MOST_VOLTS;
  });
  piece.elements.forEach((element, index) => {
    amps.set(element.id, rangeAt(part.nodes.length + index));
  });
  if (!held) {
    notes.push(`A current around ${about} has no way back to ${ground}.`);
    return false;
  }
  return true;
}

function withoutFigures(network: Network, notes: readonly string[]): OperatingPoint {
  const zero = exactly(0);
  const names = new Set([network.ground, ...network.elements.flatMap((element: Element) => endsOf(element))]);
  return {
    nodes: Object.fromEntries([...names].map((name) => [name, zero])),
    amps: Object.fromEntries(network.elements.map((element) => [element.id, zero])),
    converged: false,
    notes,
  };
}
