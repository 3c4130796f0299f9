static bool lightsOn;
void lightsBegin() {
  for (int i = 0; i < LIGHT_COUNT; i++) pinMode(LIGHT_FIRST + i, OUTPUT);
}
void lightsSet(bool on) {
  if (on == lightsOn) return;
  lightsOn = on;
  for (int i = 0; i < LIGHT_COUNT; i++) digitalWrite(LIGHT_FIRST + i, on);
}
