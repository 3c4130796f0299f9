#include "hal.h"
#include "gate.h"

static Gate gates[GATE_COUNT] = {Gate(GATE_PINS[0]), Gate(GATE_PINS[1])};
static hal::Led ok{hal::LED_OK}, busy{hal::LED_BUSY};

static void report(unsigned long period) {
  busy.set(true);
  Serial.println(period);
  busy.set(false);
}

void setup() {
  hal::init();
  for (auto &gate : gates) gate.begin();
}

void loop() {
  static unsigned long last;
  for (auto &gate : gates) {
    if (!gate.passed()) continue;
    const unsigned long now = micros();
    report(now - last);
    last = now;
    hal::click();
  }
  ok.set(millis() % 1000 < 500);
}
