/**
 * What the words of an identifier say about the part behind it: our own table, from the names that people give (common
 * practice). English first, then a few of other languages. A word speaks for one or several kinds, the likelier first;
 * what the sketch does with the pin decides which of them can be meant.
 */

/** How a pin is used: driven, read as a level, measured, sounded. */
export type Way = 'out' | 'in' | 'analog' | 'tone';

/** Kinds of the library (with a parameter behind a colon where one is meant) that can hang on a pin used that way. */
export const usualKinds: Readonly<Record<Way, readonly string[]>> = {
  out: [
    'led',
    'relay-module',
    'buzzer:active',
    'n-mosfet:dc-motor',
    'n-mosfet:solenoid',
    'n-mosfet:led-strip',
  ],
  in: [
    'push-button',
    'toggle-switch',
    'digital-sensor',
    'open-collector-sensor',
    'reed-switch',
    'pir-sensor',
  ],
  analog: ['potentiometer', 'analog-sensor', 'photoresistor', 'thermistor'],
  tone: ['buzzer:passive', 'speaker'],
};

const table: Readonly<Record<string, string>> = {
  // lamps
  led: 'led',
  'lamp light lamps lights leds beacon indicator glow flash flasher blink blinker star stars candle window windows':
    'led',
  'lantern signal status heartbeat alive ok error fault warning red green blue yellow amber white orange':
    'led',
  'eye eyes spot dimmer dim backlight headlight torch lampe licht lampada luz lumiere voyant bulb pilot':
    'led',
  'pixel pixels strip neopixel neopixels': 'addressable-strip n-mosfet:led-strip',
  ir: 'infrared-receiver led',
  infrared: 'infrared-receiver led',
  laser: 'led',
  // sound
  'buzzer buzz beeper beep piezo horn siren hooter alarm sounder summer tonegeber zumbador':
    'buzzer:passive buzzer:active',
  'speaker loudspeaker lautsprecher melody bell chime tune voice audio sound song': 'speaker buzzer:passive',
  // contacts
  'button btn push press key start stop reset restart pause select up down next back enter doorbell call':
    'push-button',
  'taster knopf taste bouton boton pulsador pedal trigger plunger coin arm bumper': 'push-button',
  'switch toggle selector mode enable armed override keyswitch schalter interruptor':
    'toggle-switch push-button',
  'limit endstop end home homing stopper travel closed opened': 'limit-switch',
  'reed door lid hatch gate drawer magnet tuer puerta porte': 'reed-switch',
  'tilt tip shake vibration': 'tilt-switch',
  'float water leak level': 'digital-sensor analog-sensor',
  // sensors
  'pir motion presence occupancy movement': 'pir-sensor',
  'hall tacho rpm wheel speed flow anemometer wind rain pulse pulses vane tachometer':
    'open-collector-sensor',
  'beam barrier break gap photogate slot fork': 'digital-sensor open-collector-sensor',
  'sensor detect detector probe obstacle line follower proximity tracker': 'digital-sensor analog-sensor',
  'pot poti potentiometer knob dial slider fader volume trim wiper throttle regler joystick adjust set setpoint':
    'potentiometer',
  'ldr photo photocell photoresistor lux dark darkness daylight dusk dawn brightness ambient twilight':
    'photoresistor',
  'ntc thermistor therm': 'thermistor',
  'temp temperature thermo temperatur lm35 tmp36': 'analog-sensor thermistor one-wire-sensor',
  'gas smoke moisture soil humidity pressure force flex mic microphone loudness battery voltage tide depth':
    'analog-sensor',
  'receiver remote irrecv': 'infrared-receiver',
  'dht dht11 dht22': 'temperature-humidity-sensor',
  'ds18b20 onewire dallas': 'one-wire-sensor',
  // things that take power
  'relay relays heater mains lock pump kettle compressor fridge boiler relais rele': 'relay-module',
  'motor fan winch wheelmotor blower propeller conveyor engine ventilator luefter drive spindle shaker':
    'n-mosfet:dc-motor',
  'valve solenoid latchcoil coil strike latch striker electromagnet magnetcoil clapper hammer':
    'n-mosfet:solenoid',
  'knock current piezo': 'analog-sensor',
  'foot hook': 'push-button',
  'sens sense': 'digital-sensor analog-sensor',
  'bolt magnet': 'n-mosfet:solenoid',
  vibe: 'n-mosfet:dc-motor',
  eye: 'photoresistor',
  servo: 'servo',
  'servos rudder gripper claw barrier boom arm flap wiper': 'servo',
};

const kindsByWord: ReadonlyMap<string, readonly string[]> = (() => {
  const map = new Map<string, string[]>();
  for (const [words, kinds] of Object.entries(table)) {
    for (const word of words.split(' ')) map.set(word, [...(map.get(word) ?? []), ...kinds.split(' ')]);
  }
  return map;
})();

/** Kinds that a word speaks for, the likelier first; its plural counts as the word. */
export function kindsOfWord(word: string): readonly string[] {
  return kindsByWord.get(word) ?? (word.endsWith('s') ? (kindsByWord.get(word.slice(0, -1)) ?? []) : []);
}

/** The words of an identifier or remark in small letters: `restartButton`, `LED_PIN_2`, `pump relay` in pieces. */
export function wordsOf(text: string): readonly string[] {
  return text
    .replace(/([a-z\d])([A-Z])/g, '$1 $2')
    .replace(/([A-Z])([A-Z][a-z])/g, '$1 $2')
    .toLowerCase()
    .split(/[^a-z\d]+/)
    .flatMap((word) => (kindsByWord.has(word) ? word : word.replace(/\d+$/, '')))
    .filter((word) => word !== '' && !noise.has(word));
}

const noise: ReadonlySet<string> = new Set([
  'pin',
  'pins',
  'p',
  'k',
  'the',
  'a',
  'of',
  'to',
  'is',
  'in',
  'io',
  'gpio',
  'd',
]);

/** Roles of the pins of a part that several pins serve: the terminal a word means. */
export interface PartRoles {
  readonly kind: string;
  /** Terminals without which the words mean something else. */
  readonly needs: readonly string[];
  readonly terminals: Readonly<Record<string, readonly string[]>>;
}

/** Parts that the sketch serves by hand, over several pins with names of their own. */
export const rolesByHand: readonly PartRoles[] = [
  {
    kind: 'ultrasonic-ranger',
    needs: ['trigger', 'echo'],
    terminals: { trigger: ['trig', 'trigger', 'ping'], echo: ['echo'] },
  },
  {
    kind: 'stepper-driver',
    needs: ['step', 'direction'],
    terminals: {
      step: ['step', 'stp', 'pul', 'pulse'],
      direction: ['dir', 'direction'],
      enable: ['enable', 'en', 'ena'],
    },
  },
  {
    kind: 'rgb-led',
    needs: ['red', 'green', 'blue'],
    terminals: { red: ['red', 'r'], green: ['green', 'g'], blue: ['blue', 'b'] },
  },
  {
    kind: 'shift-register',
    needs: ['data', 'shift-clock', 'latch'],
    terminals: {
      data: ['data', 'ds', 'ser', 'dat'],
      'shift-clock': ['clock', 'clk', 'shcp', 'srclk'],
      latch: ['latch', 'stcp', 'rclk', 'st'],
    },
  },
  {
    kind: 'rotary-encoder',
    needs: ['a', 'b'],
    terminals: { a: ['a', 'clk'], b: ['b', 'dt'] },
  },
  {
    kind: 'joystick',
    needs: ['x', 'y'],
    terminals: { x: ['x', 'vrx', 'horizontal'], y: ['y', 'vry', 'vertical'], switch: ['sw'] },
  },
  {
    kind: 'h-bridge',
    needs: ['in-1', 'in-2'],
    terminals: {
      'in-1': ['in1', 'ain1', 'in', 'forward', 'fwd'],
      'in-2': ['in2', 'ain2', 'reverse', 'backward', 'rev'],
      'in-3': ['in3', 'bin1'],
      'in-4': ['in4', 'bin2'],
      'enable-a': ['ena', 'pwma', 'enable'],
      'enable-b': ['enb', 'pwmb'],
    },
  },
];
