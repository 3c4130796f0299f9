#include "hal.h"

namespace hal {

const uint8_t CLICKER = 9;

namespace {
constexpr unsigned kClickHertz = 3000;
void silent() { noTone(CLICKER); }
}  // namespace

void init() {
  Serial.begin(9600);
  for (uint8_t pin = LED_OK; pin <= LED_BUSY; ++pin) pinMode(pin, OUTPUT);
  pinMode(CLICKER, OUTPUT);
  silent();
}

void click() { tone(CLICKER, kClickHertz, 2); }

}  // namespace hal
