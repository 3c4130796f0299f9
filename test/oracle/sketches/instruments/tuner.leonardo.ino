#include <stdlib.h>
// Needle of lamps; the strings as a table of structs with nested struct
struct Pitch { float hertz; const char *name; };
struct StringOf { Pitch pitch; struct { byte lamp; byte button; } at; };

StringOf guitar[6] = {
  {{82.4, "E"}, {2, A0}}, {{110.0, "A"}, {3, A1}}, {{146.8, "D"}, {5, A2}},
  {{196.0, "G"}, {6, A3}}, {{246.9, "B"}, {7, A4}}, {{329.6, "e"}, {8, A5}},
};
StringOf *chosen = guitar;
const byte FLAT = 9, TUNE = 10, SHARP = 11;

void select(StringOf *s) {
  digitalWrite(chosen->at.lamp, LOW);
  chosen = s;
  digitalWrite(chosen->at.lamp, HIGH);
}

void needle(float cents) {
  digitalWrite(FLAT, cents < -5 ? HIGH : LOW);
  digitalWrite(SHARP, cents > 5 ? HIGH : LOW);
  digitalWrite(TUNE, abs(cents) <= 5 ? HIGH : LOW);
}

void setup() {
  for (StringOf *s = guitar; s < guitar + 6; s++) {
    pinMode(s->at.lamp, OUTPUT);
    pinMode(s->at.button, INPUT_PULLUP);
  }
  pinMode(FLAT, OUTPUT), pinMode(TUNE, OUTPUT), pinMode(SHARP, OUTPUT);
  select(&guitar[0]);
}

void loop() {
  for (StringOf *s = guitar; s != &guitar[6]; ++s)
    if (digitalRead(s->at.button) == LOW) select(s);
  float measured = 60.0 + random(300);
  needle((measured - chosen->pitch.hertz) * 4);
  delay(100);
}
