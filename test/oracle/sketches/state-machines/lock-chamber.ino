/* Ship lock with two gates, two valves and lights, a whole round by itself. */
enum Phase : byte { LOWER_OPEN, FILLING, UPPER_OPEN, EMPTYING, PHASES };
struct Step { byte outputs; unsigned int ms; Phase next; };
const byte outs[] = {4, 5, 6, 7, 8, 9};   // gate low, gate up, valve in, valve out, green, red
const Step steps[PHASES] = {
  {B010001, 60, FILLING},
  {B100100, 50, UPPER_OPEN},
  {B010010, 60, EMPTYING},
  {B101000, 50, LOWER_OPEN},
};
Phase phase = LOWER_OPEN;
unsigned long entered;

void apply(byte bits) {
  for (byte i = 0; i < sizeof outs; i++) digitalWrite(outs[i], bits >> i & 1);
}
void setup() {
  for (byte i = 0; i < sizeof outs; i++) pinMode(outs[i], OUTPUT);
  apply(steps[phase].outputs);
}
void loop() {
  if (millis() - entered > steps[phase].ms) {
    phase = steps[phase].next;
    entered = millis();
    apply(steps[phase].outputs);
  }
}
