#define STR(x) #x
#define PIN_OF(name) name##_PIN
#define LAMP_PIN 5
#define HORN_PIN 6
#define DOOR_PIN 7
#define SETUP_OUT(name) pinMode(PIN_OF(name), OUTPUT); digitalWrite(PIN_OF(name), LOW)
#define TOGGLE(name) digitalWrite(PIN_OF(name), !digitalRead(PIN_OF(name)))
#define WITH(name, ms, body) do { digitalWrite(PIN_OF(name), HIGH); body; delay(ms); digitalWrite(PIN_OF(name), LOW); } while (0)
#define MAX2(a, b) ((a) > (b) ? (a) : (b))
#define COUNT_OF(a) (sizeof(a) / sizeof((a)[0]))
static const byte extra[] = { MAX2(8, 4), LAMP_PIN + 4, 10 };
void setup() {
  SETUP_OUT(LAMP);
  SETUP_OUT(HORN);
  SETUP_OUT(DOOR);
  for (size_t i = 0; i < COUNT_OF(extra); i++) pinMode(extra[i], OUTPUT);
}
void loop() {
  TOGGLE(LAMP);
  WITH(HORN, 10, TOGGLE(DOOR));
  for (size_t i = COUNT_OF(extra); i > 0; i--) digitalWrite(extra[i - 1], i & 1);
}
