// One list, many uses: name, pin.
#define LAMPS(DO) \
  DO(bow, 4)      \
  DO(stern, 5)    \
  DO(port, 7)     \
  DO(starboard, 8)

#define DECLARE(name, pin) const byte name = pin;
LAMPS(DECLARE)
#undef DECLARE

#define COUNT(name, pin) +1
const byte total = 0 LAMPS(COUNT);

void setup() {
#define INIT(name, pin) pinMode(name, OUTPUT);
  LAMPS(INIT)
#undef INIT
  pinMode(2, INPUT_PULLUP);
}

void loop() {
  byte level = digitalRead(2);
#define WRITE(name, pin) digitalWrite(pin, level);
  LAMPS(WRITE)
#undef WRITE
  delay(20 * total);
}
