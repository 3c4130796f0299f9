// Showcase lights. The macros keep the loop readable.
#define PIN_OF(n)      (4 + (n))
#define LAMP_ON(n)     digitalWrite(PIN_OF(n), HIGH)
#define LAMP_OFF(n)    digitalWrite(PIN_OF(n), LOW)
#define MAKE_LAMP(n)   do { pinMode(PIN_OF(n), OUTPUT); LAMP_OFF(n); } while (0)
#define PRESSED(pin)   (digitalRead(pin) == LOW)

void setup() {
  MAKE_LAMP(0);
  MAKE_LAMP(1);
  MAKE_LAMP(2);
  pinMode(A0, INPUT_PULLUP);
  pinMode(A1, INPUT_PULLUP);
}

void loop() {
  LAMP_ON(0);
  if (PRESSED(A0)) LAMP_ON(1); else LAMP_OFF(1);
  if (PRESSED(A1)) {
    LAMP_ON(2);
  } else {
    LAMP_OFF(2);
  }
  delay(5);
  LAMP_OFF(0);
  delay(5);
}
