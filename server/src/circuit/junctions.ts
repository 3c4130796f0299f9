/**
 * The non-linear part: the voltages of all ports at once, by Newton's method on as many unknowns as there are ports.
 * It always stops: each attempt has a bounded number of steps, and what fails is tried once more by raising the
 * sources from zero in a bounded number of stages.
 */
import { type Device, makePortState, type PortState } from './device';
import { type Answers, entryAt, type LinearPart, portInLinearPart } from './linear-part';
import { solveFull } from './solve-full';

const STEPS = 80;
const STAGES = 80;
/**
 * Stop: the last step moved no port's current by more than this share (or the least amperes), and its volts by no
 * more than the least volts. Newton's error is squared with each step, in units of the e-fold voltage, so what is
 * left after such a step is below a billionth.
 */
export const SHARE = 1e-5;
export const LEAST_AMPS = 1e-14;
export const LEAST_VOLTS = 1e-5;

/** The linear network as the ports see it: `volts = open - resistance * amps`. */
interface Ports {
  readonly open: Float64Array;
  /** Row by row. */
  readonly resistance: Float64Array;
}

/**
 * Solves for the volts across all ports.
 * @param open volts across each port with no device at all
 * @param start first guess, volts by port; the devices' own where absent
 * @returns volts, amperes and slopes by port, or undefined where the stop criterion was never met
 */
export function solveJunctions(
  part: LinearPart,
  answers: Answers,
  devices: readonly Device[],
  open: Float64Array,
  start?: Float64Array,
): PortState | undefined {
  const count = part.ports.length;
  if (count === 0) {
    return makePortState(0);
  }
  const ports = { open, resistance: portResistance(part, answers) };
  const state = makePortState(count);
  for (const device of devices) {
    device.guess(state.volts);
  }
  state.volts.set(start ?? state.volts);
  return newton(ports, devices, state) ? state : raiseSources(ports, devices);
}

/** Adds what column `column` of the answers, driven by `drive`, puts across each port. */
export function addPortVolts(
  part: LinearPart,
  answers: Answers,
  column: number,
  drive: number,
  to: Float64Array,
): void {
  part.ports.forEach(({ a, b }, at) => {
    to[at] = (to[at] ?? 0) + (entryAt(answers, a, column) - entryAt(answers, b, column)) * drive;
  });
}

function portResistance(part: LinearPart, answers: Answers): Float64Array {
  const count = part.ports.length;
  const resistance = new Float64Array(count * count);
  part.ports.forEach(({ a, b }, row) => {
    for (let column = 0; column < count; column += 1) {
      resistance[row * count + column] = entryAt(answers, b, column) - entryAt(answers, a, column);
    }
  });
  return resistance;
}

/** Works on `state` in place, from its volts; true where it came to the stop criterion. */
function newton(ports: Ports, devices: readonly Device[], state: PortState): boolean {
  for (const device of devices) {
    device.evaluate(state);
  }
  const count = state.volts.length;
  const slopes = new Float64Array(count * count);
  const move = new Float64Array(count);
  for (let step = 0; step < STEPS; step += 1) {
    if (!newtonMove(ports, devices, state, slopes, move)) {
      return false;
    }
    if (takeStep(devices, state, move)) {
      return state.volts.every(Number.isFinite);
    }
  }
  return false;
}

/** Moves the ports by as much of a step as their devices bear; true where the stop criterion is met. */
export function takeStep(devices: readonly Device[], state: PortState, move: Float64Array): boolean {
  const { volts, amps, siemens } = state;
  let settled = true;
  for (const device of devices) {
    const { port, ports } = device;
    const limited = device.limit(volts, move);
    settled &&= !limited;
    for (let at = port; at < port + ports; at += 1) {
      volts[at] = (volts[at] ?? 0) + (move[at] ?? 0);
    }
    device.evaluate(state);
    for (let at = port; at < port + ports && settled; at += 1) {
      const byOther = ports === 1 ? 0 : (siemens[2 * at + 1] ?? 0) * (move[port + 1] ?? 0);
      const change = Math.abs((siemens[2 * at] ?? 0) * (move[port] ?? 0) + byOther);
      settled =
        change <= Math.max(SHARE * Math.abs(amps[at] ?? 0), LEAST_AMPS) &&
        Math.abs(move[at] ?? 0) <= LEAST_VOLTS;
    }
  }
  return settled;
}

/**
 * How far Newton's method moves each port, volts, into `move`; false where the slopes leave it without a direction.
 * `slopes` is its working space.
 */
function newtonMove(
  { open, resistance }: Ports,
  devices: readonly Device[],
  { volts, amps, siemens }: PortState,
  slopes: Float64Array,
  move: Float64Array,
): boolean {
  const count = volts.length;
  for (let row = 0; row < count; row += 1) {
    let error = (open[row] ?? 0) - (volts[row] ?? 0);
    for (let column = 0; column < count; column += 1) {
      // The linear part counts every port as a plain conductance already; only what is beyond it is left.
      const beyond = (amps[column] ?? 0) - portInLinearPart * (volts[column] ?? 0);
      error -= (resistance[row * count + column] ?? 0) * beyond;
    }
    move[row] = error;
    for (const { port, ports } of devices) {
      const own = resistance[row * count + port] ?? 0;
      const first = (siemens[2 * port] ?? 0) - portInLinearPart;
      if (ports === 1) {
        slopes[row * count + port] = own * first;
      } else {
        const other = resistance[row * count + port + 1] ?? 0;
        const second = (siemens[2 * port + 3] ?? 0) - portInLinearPart;
        slopes[row * count + port] = own * first + other * (siemens[2 * port + 2] ?? 0);
        slopes[row * count + port + 1] = own * (siemens[2 * port + 1] ?? 0) + other * second;
      }
    }
    slopes[row * count + row] = (slopes[row * count + row] ?? 0) + 1;
  }
  return solveFull(slopes, move);
}

/** Raises the sources from nothing, where all ports stand at zero volts, in stages that adapt to what converges. */
function raiseSources(ports: Ports, devices: readonly Device[]): PortState | undefined {
  let reached = 0;
  let stride = 1 / 8;
  const kept = new Float64Array(ports.open.length);
  const state = makePortState(kept.length);
  for (let stage = 0; stage < STAGES; stage += 1) {
    const target = Math.min(1, reached + stride);
    state.volts.set(kept);
    if (newton({ ...ports, open: ports.open.map((value) => value * target) }, devices, state)) {
      kept.set(state.volts);
      reached = target;
      stride *= 2;
      if (reached === 1) {
        return state;
      }
    } else {
      stride /= 4;
    }
  }
  return undefined;
}
