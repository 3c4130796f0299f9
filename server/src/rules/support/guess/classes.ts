/**
 * Which part a firmware library's object stands for, and which of its terminals the pins go to. Written by class, a
 * leading maker's name left out, as the library files write it; the order of pins is that of the constructors (the
 * library files under hardware-schemas/libraries name their sources).
 */

export interface ClassPart {
  readonly kind: string;
  /** Terminals of the part by order of the object's pins; `-` for a pin that is none of the part's. */
  readonly terminals: readonly string[];
  readonly parameters?: Readonly<Record<string, string | boolean>>;
  /** Bus whose pins belong to the part as well. */
  readonly bus?: 'i2c' | 'spi';
}

const part = (
  kind: string,
  terminals: string,
  more: Omit<ClassPart, 'kind' | 'terminals'> = {},
): ClassPart => ({
  kind,
  terminals: terminals === '' ? [] : terminals.split(' '),
  ...more,
});

const ranger = part('ultrasonic-ranger', 'trigger echo');
const lcd = part('character-lcd', '');
const display = part('i2c-display', '', { bus: 'i2c' });
const device = part('i2c-device', '', { bus: 'i2c' });
const humidity = part('temperature-humidity-sensor', 'data');
const strip = part('addressable-strip', 'data-in', { parameters: { count: '8' } });
const card = part('spi-device', 'select', { bus: 'spi' });
const radio = part('spi-device', 'select interrupt reset', { bus: 'spi' });
const button = part('push-button', '1');
const matrix = part('spi-device', 'mosi sck select');
const serial = part('serial-device', 'tx rx');
const spiDisplay = part('spi-display', 'select data-command reset', { bus: 'spi' });

const rows: readonly (readonly [pattern: RegExp, part: ClassPart])[] = [
  [/^(PWM)?Servo(Timer2)?$|^VarSpeedServo$/, part('servo', 'signal')],
  [/^NewPing$|^Ultra[sS]onic(DistanceSensor)?$|^HCSR04$/, ranger],
  [/^LiquidCrystal$|^hd44780_pinIO$/, lcd],
  [/^LiquidCrystal_(I2C|PCF8574)$|^hd44780_I2Cexp$/, display],
  [/_(HW|SW)_I2C$/, display],
  [/^SSD1306$|^SH110\w*$/, display],
  [/_4W_HW_SPI$/, part('spi-display', 'select data-command reset', { bus: 'spi' })],
  [/_4W_SW_SPI$/, part('spi-display', 'sck mosi select data-command reset')],
  [/^ST77(35|89)$|^ILI9341$/, spiDisplay],
  [/^PCD8544$/, part('spi-display', 'sck mosi data-command select reset')],
  [/^DHT(esp|_Unified)?$|^dht$|^SimpleDHT\d+$/, humidity],
  [/^OneWire$/, part('one-wire-sensor', 'data')],
  [/^Neo(Pixel|Matrix)$|^NeoPixel(Brightness)?Bus$|^CFastLED$|^FastLED$/, strip],
  [/^DotStar$/, part('addressable-strip', 'data-in clock-in', { parameters: { count: '8', lines: '4' } })],
  [/^SoftwareSerial$|^AltSoftSerial$/, serial],
  [/^Stepper$/, part('stepper-board', 'in-1 in-2 in-3 in-4')],
  [/^(Rotary)?Encoder$/, part('rotary-encoder', 'a b')],
  [/^Bounce$|^Bounce2::Button$|^OneButton$|^ezButton$|^Button$|^AceButton$/, button],
  [/^Keypad$/, part('keypad-matrix', 'row-1 row-2 row-3 row-4 column-1 column-2 column-3 column-4')],
  [/^IRrecv$/, part('infrared-receiver', 'out')],
  [/^IRsend$/, part('led', 'anode', { parameters: { colour: 'infrared' } })],
  [/^MFRC522$/, part('spi-device', 'select reset', { bus: 'spi' })],
  [/^RF24$/, part('spi-device', '- select', { bus: 'spi' })],
  [/^(SD|SdFat\w*|SdExFat|SdFs|SDClass|Ethernet(Class)?|MCP_CAN)$/, card],
  [/^RH_(RF95|RF69|RF22|NRF24)$|^LoRa(Class)?$/, radio],
  [/^LedControl$/, matrix],
  [/^MD_(MAX72XX|Parola)$/, card],
  [/^ShiftRegister74HC595$/, part('shift-register', 'data shift-clock latch')],
  [/^L298N$/, part('h-bridge', 'enable-a in-1 in-2')],
  [/^MAX6675$/, part('spi-device', 'sck select miso')],
  [
    /^RTC_\w+$|^(\w+_)?(BME280|BMP280|BMP085|ADS1[01]15|INA219|VL53L0X|TCS34725|MLX90614|SHT31|AHTX0|CCS811|MPR121)$/,
    device,
  ],
  [
    /^BH1750$|^MPU6050$|^HMC5883_Unified$|^ADXL345_Unified$|^MCP23[0X]17$|^PCF8574$|^PWMServoDriver$|^MotorShield$/,
    device,
  ],
];

/** The part of a class; undefined where the class is in no row. */
export function partOfClass(name: string, pins: number): ClassPart | undefined {
  if (/^AccelStepper$/.test(name)) {
    return pins >= 4
      ? part('stepper-board', 'in-1 in-2 in-3 in-4')
      : part('stepper-driver', 'step direction enable');
  }
  // One maker's name in front is left out: `Maker_Strip` is `Strip`.
  const bare = name.replace(/^[A-Z][a-z]+_(?=[A-Z])/, '');
  return rows.find(([pattern]) => pattern.test(name) || pattern.test(bare))?.[1];
}
