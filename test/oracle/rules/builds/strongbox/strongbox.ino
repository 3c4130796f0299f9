// The captain's strongbox: the right digits draw the bolt.
#include <Keypad.h>
#include "digits.h"

const byte ROWS = 4, COLS = 3;
char keys[ROWS][COLS] = {
  {'1', '2', '3'},
  {'4', '5', '6'},
  {'7', '8', '9'},
  {'*', '0', '#'}
};
byte rowPins[ROWS] = {30, 32, 34, 36};
byte colPins[COLS] = {31, 33, 35};
Keypad pad = Keypad(makeKeymap(keys), rowPins, colPins, ROWS, COLS);

const uint8_t bolt = 40;
const uint8_t beeper = 8;

void setup() {
  pinMode(bolt, OUTPUT);
}

void loop() {
  char key = pad.getKey();
  if (key == NO_KEY) return;
  tone(beeper, 1000, 40);
  if (isRight(key)) openBolt();
}
