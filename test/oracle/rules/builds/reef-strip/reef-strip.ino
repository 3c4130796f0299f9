// The reef behind glass: a strip that breathes, brighter with the knob.
#include <Quayside_NeoPixel.h>

#define STRIP_PIN 6
#define PIXELS 12
#define KNOB A1

Quayside_NeoPixel reef(PIXELS, STRIP_PIN, NEO_GRB + NEO_KHZ800);

void setup() {
  reef.begin();
  reef.show();
}

void loop() {
  uint8_t level = analogRead(KNOB) / 8;
  for (int i = 0; i < PIXELS; i++) {
    reef.setPixelColor(i, reef.Color(0, level, level / 2));
  }
  reef.show();
  delay(20);
}
