volatile byte turns;
volatile bool flag = false;
const byte HALL = 3, COIL[] = {4, 5, 6, 7}, LED = 13;
const byte STEPS[] = {B0001, B0011, B0010, B0110, B0100, B1100, B1000, B1001};
int position_, target = 100;
void onHall() { turns++; flag = true; }
void coils(byte bits) { for (byte i = 0; i < 4; i++, bits >>= 1) digitalWrite(COIL[i], bits & 1); }
void step(int by) { position_ += by; coils(STEPS[position_ & 7]); }
void setup() {
  for (byte c : COIL) pinMode(c, OUTPUT);
  pinMode(LED, OUTPUT);
  attachInterrupt(digitalPinToInterrupt(HALL), onHall, FALLING);
}
void loop() {
  if (position_ < target) step(1); else if (position_ > target) step(-1); else { coils(0); target = -target; }
  if (flag) { flag = false; digitalWrite(LED, !digitalRead(LED)); }
  delay(2);
}
