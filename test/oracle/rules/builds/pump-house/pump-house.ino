// Pump house: a reed switch at the float starts the pump through a relay module that a LOW pulls in.
enum class Pump : uint8_t { Off = HIGH, On = LOW };

static const uint8_t PUMP_RELAY = 8;
static const uint8_t FLOAT_REED = 3;

static void setPump(Pump state) { digitalWrite(PUMP_RELAY, static_cast<uint8_t>(state)); }

void setup() {
  setPump(Pump::Off);          // first the level, then the mode: the pump stays off
  pinMode(PUMP_RELAY, OUTPUT);
  pinMode(FLOAT_REED, INPUT_PULLUP);
}

void loop() {
  setPump(digitalRead(FLOAT_REED) == LOW ? Pump::On : Pump::Off);
  delay(500);
}
