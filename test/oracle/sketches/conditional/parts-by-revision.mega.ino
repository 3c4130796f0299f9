#define USE_BUZZER
//#define USE_SIREN
#define REV 3
#if REV >= 3 && defined(USE_BUZZER) && !defined(USE_SIREN)
#define SOUND_PIN 6
#elif defined(USE_SIREN)
#define SOUND_PIN 7
#else
#define SOUND_PIN 8
#endif
#if defined(__AVR_ATmega2560__) || defined(__AVR_ATmega1280__)
#  define FIRST 22
#else
#  define FIRST 2
#endif
const byte grid[3][4] = { {FIRST, FIRST + 1, FIRST + 2, FIRST + 3}, {26, 27, 28, 29}, {30, 31, 32, 33} };
void show(const byte cells[][4], byte rows, bool level) {
  for (byte r = 0; r < rows; r++) for (byte c = 0; c < 4; c++) digitalWrite(cells[r][c], level);
}
struct Config { byte pin = 40; byte mode = OUTPUT; };
Config configs[] = { {}, {}, {} };
void setup() {
  configs[1].pin = 41;
  configs[2].pin = 42; configs[2].mode = INPUT_PULLUP;
  for (const Config &c : configs) pinMode(c.pin, c.mode);
  const byte (*row)[4] = grid;
  for (byte r = 0; r < 3; r++, row++) for (byte c = 0; c < 4; c++) pinMode((*row)[c], OUTPUT);
  pinMode(SOUND_PIN, OUTPUT);
}
void loop() {
  show(grid, 3, HIGH);
  delay(10);
  show(grid + 1, 2, LOW);
  digitalWrite(configs[digitalRead(configs[2].pin)].pin, HIGH);
  tone(SOUND_PIN, 500, 5);
}
