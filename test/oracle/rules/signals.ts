/**
 * Where the clean builds speak of their pins, so that one mutator serves them all. Written by hand: it is what the
 * analysis is checked against, so nothing of it may come from the analysis.
 */
export interface Signal {
  readonly build: string;
  /** The file these texts stand in, where it is not the build's sketch. */
  readonly file?: string;
  /** The pin's id on the board. */
  readonly pin: string;
  /** The part on it. */
  readonly part: string;
  /** The definition of its number, with `#` for the number. */
  readonly define: string;
  readonly number: string;
  /** The statement that sets its mode, where it stands alone. */
  readonly mode?: string;
  /** A piece of the line that uses it. */
  readonly use: string;
}

export const row = (
  build: string,
  pin: string,
  part: string,
  define: string,
  number: string,
  use: string,
  mode?: string,
  file?: string,
): Signal => ({
  ...{ build, pin, part, define, number, use },
  ...(mode !== undefined && { mode }),
  ...(file !== undefined && { file }),
});

/** Pins that light a lamp or sound something straight. */
export const LAMPS: readonly Signal[] = [
  row(
    'beacon-and-horn',
    'D7',
    'beacon',
    'beaconPin = #;',
    '7',
    'digitalWrite(beaconPin',
    '  pinMode(beaconPin, OUTPUT);\n',
  ),
  row(
    'turnstile',
    'D6',
    'tenth',
    'tenthLamp = #;',
    '6',
    'digitalWrite(tenthLamp',
    '  pinMode(tenthLamp, OUTPUT);\n',
  ),
  row('log-book', 'D8', 'ok', 'okLamp = #;', '8', 'digitalWrite(okLamp', '  pinMode(okLamp, OUTPUT);\n'),
  row(
    'boiler-watch',
    'D4',
    'alarm',
    'ALARM_LAMP #\n',
    '4',
    'digitalWrite(ALARM_LAMP',
    '  pinMode(ALARM_LAMP, OUTPUT);\n',
  ),
  row(
    'light-tower',
    'IO23',
    'lantern',
    'LANTERN #\n',
    '23',
    'digitalWrite(lantern',
    '  pinMode(LANTERN, OUTPUT);\n',
  ),
  row('mooring-post', 'IO6', 'lamp', 'LAMP #\n', '6', 'digitalWrite(LAMP', '  pinMode(LAMP, OUTPUT);\n'),
  row(
    'dock-bell',
    'D6',
    'lamp',
    'bellLamp = #;',
    'D6',
    'digitalWrite(bellLamp',
    '  pinMode(bellLamp, OUTPUT);\n',
  ),
  row(
    'guest-counter',
    'D8',
    'even',
    'evenLamp = #;',
    '8',
    'digitalWrite(evenLamp',
    '  pinMode(evenLamp, OUTPUT);\n',
  ),
  row(
    'engine-room',
    'D7',
    'restart',
    'runLamp = #;',
    '7',
    'digitalWrite(runLamp',
    '  pinMode(runLamp, OUTPUT);\n',
  ),
  row(
    'depth-sounder',
    'IO21',
    'shallow',
    'shallowLamp = #;',
    '21',
    'digitalWrite(shallowLamp',
    '  pinMode(shallowLamp, OUTPUT);\n',
  ),
  row(
    'greenhouse',
    'GP10',
    'dry',
    'dryLamp = #;',
    '10',
    'digitalWrite(dryLamp',
    '  pinMode(dryLamp, OUTPUT);\n',
  ),
  row(
    'stage-cue',
    'D7',
    'ready',
    'READY_OUT = #;',
    '7',
    'digitalWrite(READY_OUT',
    '  pinMode(READY_OUT, OUTPUT);\n',
  ),
  row(
    'stage-cue',
    'D4',
    'curtain',
    'CURTAIN = #;',
    '4',
    'digitalWrite(CURTAIN',
    '  pinMode(CURTAIN, OUTPUT);\n',
  ),
  row(
    'test-bench',
    'D5',
    'pass',
    'PASS_LAMP #\n',
    'D5',
    'digitalWrite(PASS_LAMP',
    '  pinMode(PASS_LAMP, OUTPUT);\n',
  ),
  row(
    'signal-box',
    'GP2',
    'danger',
    'DANGER = #,',
    '2',
    'digitalWrite(DANGER',
    '  pinMode(DANGER, OUTPUT);\n',
  ),
];

/** Pins that drive something else than a lamp. */
export const DRIVES: readonly Signal[] = [
  row(
    'bell-buoy',
    'D12',
    'Q1',
    'relay = #;',
    '12',
    'digitalWrite(buoy::relay',
    '  pinMode(buoy::relay, OUTPUT);\n',
  ),
  row('map-drawer', 'D5', 'Q1', 'LIGHT = #;', '5', 'digitalWrite(LIGHT', '  pinMode(LIGHT, OUTPUT);\n'),
  row('strongbox', 'D40', 'Q1', 'bolt = #;', '40', 'digitalWrite(bolt', '  pinMode(bolt, OUTPUT);\n'),
  row(
    'harbour-radio',
    'IO25',
    'Q1',
    'masthead = #;',
    '25',
    'digitalWrite(masthead',
    '  pinMode(masthead, OUTPUT);\n',
  ),
  row('safe-tilt', 'D8', 'siren', 'SIREN #\n', '8', 'digitalWrite(SIREN', '  pinMode(SIREN, OUTPUT);\n'),
  row(
    'pump-house',
    'D8',
    'module',
    'PUMP_RELAY = #;',
    '8',
    'digitalWrite(PUMP_RELAY',
    '  pinMode(PUMP_RELAY, OUTPUT);\n',
  ),
];
