// nested conditionals, early returns, goto-free error codes, pin tables in functions
enum Error { OK_ = 0, E_DOOR, E_HEAT, E_FAN };
static int lampFor(Error e) {
  switch (e) { case OK_: return 4; case E_DOOR: return 5; case E_HEAT: return 6; default: return 7; }
}
static Error check() {
  if (!digitalRead(2)) return E_DOOR;
  if (analogRead(A1) > 800) return E_HEAT;
  if (analogRead(A2) < 100) return E_FAN;
  return OK_;
}
void setup() {
  pinMode(2, INPUT_PULLUP);
  for (int e = OK_; e <= E_FAN; ++e) pinMode(lampFor((Error)e), OUTPUT);
  pinMode(8, OUTPUT);
}
void loop() {
  static Error before = OK_;
  Error now = check();
  if (now != before) {
    digitalWrite(lampFor(before), LOW);
    digitalWrite(lampFor(now), HIGH);
    before = now;
  }
  digitalWrite(8, now == OK_ ? HIGH : LOW);
  delay(5);
}
