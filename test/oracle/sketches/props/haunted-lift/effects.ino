void Effect::run(bool active) {
  if (!active) {
    digitalWrite(m_pin, LOW);
    return;
  }
  if (m_kind == KIND_STEADY) digitalWrite(m_pin, HIGH);
  else digitalWrite(m_pin, random(2));
  DEBUG_PRINT(m_pin);
}

void ride() {
  for (int f = FLOORS - 1; f >= 0; --f) {
    digitalWrite(FLOOR_LAMPS[f], HIGH);
    delay(15);
    digitalWrite(FLOOR_LAMPS[f], LOW);
  }
}
