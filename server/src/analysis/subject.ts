/** Makes the subject that the rules see. */
import type { Board, Build } from '../base/build';
import type { SketchFacts } from '../base/pin-use';
import type { LibraryFacts, Platform } from '../base/platform';
import type { Problem } from '../base/read';
import type { PartKind } from '../hardware';
import type { PinView, Region, StatePoint, Subject } from '../rules/subject';
import { findRails, findRegions, indexNets, placePrimitives, viewPins } from './join';
import { exceedsLimit, type Solve, solveRegion } from './points';

export interface JoinInput {
  readonly facts: SketchFacts;
  readonly build: Build;
  readonly texts: Readonly<Record<string, string>>;
  readonly problems: readonly Problem[];
  readonly doubtful?: readonly string[];
  /** Absent: none. */
  readonly libraries?: readonly LibraryFacts[];
  /** Absent: none. */
  readonly partKinds?: { get(kind: string): PartKind | undefined };
  readonly solve: Solve;
}

export function joinSubject({
  facts,
  build,
  texts,
  problems,
  doubtful = [],
  libraries = [],
  partKinds,
  solve,
}: JoinInput): Subject {
  const nets = indexNets(build);
  const pins = viewPins(facts, build, nets);
  const placed = placePrimitives(build, nets);
  const rails = findRails(pins);
  const byId = new Map<string, PinView>(pins.map((view) => [view.pin.id, view]));
  const { moments } = facts;
  const context = {
    board: build.board,
    pin: (id: string) => byId.get(id),
    rails,
    solve,
    ...(moments && { moments }),
  };
  const regions = findRegions(pins, placed, rails).map((region) =>
    exceedsLimit(region, context) ? { ...region, limit: tooManyStates } : region,
  );
  const solved = new Map<Region, readonly StatePoint[]>();
  return {
    facts,
    build,
    texts,
    problems,
    doubtful,
    libraries,
    pins,
    placed,
    rails,
    regions,
    ...(partKinds && { partKind: (kind: string) => partKinds.get(kind) }),
    unresolved: facts.uses.filter((use) => use.pins.kind === 'unknown'),
    points(region) {
      let points = solved.get(region);
      if (!points) {
        points = solveRegion(region, context);
        solved.set(region, points);
      }
      return points;
    },
  };
}

const tooManyStates =
  'It has too many states to solve them all: each pin and switch was varied alone, and the extremes.';

const nothing = { min: 0, typ: 0, max: 0, source: 'none' };

const noPlatform: Platform = {
  macros: {},
  names: {},
  modes: {},
  intBits: 16,
  analogNumbers: {},
  ports: {},
  roles: {},
  interruptPins: {},
};

/** A board without pins, for a manifest whose board could not be read: only the rules that need no build see it. */
const noBoard: Board = {
  id: '',
  title: '',
  chip: '',
  logicRail: '',
  pins: [],
  headers: [],
  onBoard: [],
  limits: {
    pinRecommended: nothing,
    pinAbsolute: nothing,
    groups: [],
    outputHighOhms: nothing,
    outputLowOhms: nothing,
    inputLowVolts: nothing,
    inputHighVolts: nothing,
    pullUpOhms: nothing,
  },
  platform: noPlatform,
};

/** A subject that holds nothing but what the readers found. */
export function readingSubject(file: string, problems: readonly Problem[]): Subject {
  const build: Build = {
    file,
    title: '',
    board: noBoard,
    parts: [],
    wires: [],
    nets: [],
    stock: { resistors: [], text: '', tolerance: 0, watts: 0 },
    policy: { pinAmps: 0, text: '', kind: 'recommended' },
    severity: {},
  };
  const facts: SketchFacts = { uses: [], pinNames: [], problems: [] };
  return joinSubject({ facts, build, texts: {}, problems, solve: () => unsolved });
}

const unsolved = { nodes: {}, amps: {}, converged: false, notes: [] };
