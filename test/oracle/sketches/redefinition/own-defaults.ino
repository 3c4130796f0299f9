#ifndef HORN_PIN
#define HORN_PIN 8
#endif
#ifndef LED_BUILTIN
#define LED_BUILTIN 5
#endif
#ifdef DEBUG
#define DEBUG_PIN 2
#endif
#undef SENSOR
#define SENSOR A4
#ifdef SENSOR
#undef SENSOR
#define SENSOR A2
#endif

void setup() {
  pinMode(HORN_PIN, OUTPUT);
  pinMode(LED_BUILTIN, OUTPUT);
#ifdef DEBUG_PIN
  pinMode(DEBUG_PIN, OUTPUT);
#endif
}

void loop() {
  int v = analogRead(SENSOR);
  digitalWrite(LED_BUILTIN, v > 512);
  if (v > 900) tone(HORN_PIN, v, 5);
  delay(10);
}
