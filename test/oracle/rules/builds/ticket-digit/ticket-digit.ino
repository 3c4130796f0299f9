// Ticket counter: one digit, counted up by the clerk.
#include "digit.h"

const byte clerkKey = 12;
byte number = 0;

void setup() {
  beginDigit();
  pinMode(clerkKey, INPUT_PULLUP);
  showDigit(number);
}

void loop() {
  if (digitalRead(clerkKey) == HIGH) return;
  number = (number + 1) % 10;
  showDigit(number);
  delay(250);
}
