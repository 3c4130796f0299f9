void raw(uint8_t pin, uint8_t level) { digitalWrite(pin, level); }
void relay(uint8_t pin, bool on) { raw(pin, on ? LOW : HIGH); }
void pump(bool on) { relay(7, on); relay(8, !on); }
void lights(bool on) { relay(A0, on); relay(A1, on); }
void everything(bool on) { pump(on); lights(on); }

void prepare(uint8_t pin) { raw(pin, HIGH); pinMode(pin, OUTPUT); }

void setup() {
  prepare(7); prepare(8); prepare(A0); prepare(A1);
  pinMode(2, INPUT_PULLUP);
}

void loop() {
  everything(digitalRead(2) == LOW);
  delay(10);
  lights(false);
  delay(10);
}
