/* Tide column: five lamps of a bar show the level that the float sets. */
#define COUNT 5
const byte floatPin = A3;
const byte column[COUNT] = { 3, 4, 5, 6, 7 };

void setup() {
  for (byte i = 0; i < COUNT; i++) pinMode(column[i], OUTPUT);
}

void loop() {
  int level = map(analogRead(floatPin), 0, 1023, 0, COUNT);
  for (byte i = 0; i < COUNT; i++) {
    digitalWrite(column[i], i < level ? HIGH : LOW);
  }
  delay(40);
}
