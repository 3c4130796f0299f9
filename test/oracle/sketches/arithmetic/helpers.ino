const int base = constrain(20, 2, 9);                // 9
const int low = min(base, 7), high = max(base, 11);  // 7, 11
void setup() {
  pinMode(base, OUTPUT);
  pinMode(low, OUTPUT);
  pinMode(high, OUTPUT);
  pinMode(map(5, 0, 10, 2, 12) + 1, OUTPUT);         // 8
  pinMode(abs(-6), OUTPUT);
  pinMode(lowByte(0x0305), OUTPUT);                  // 5
  pinMode(highByte(0x0305), OUTPUT);                 // 3
  pinMode(sq(2), OUTPUT);
  pinMode(bit(1) | 8, OUTPUT);                       // 10
}
void loop() {
  digitalWrite(base, HIGH);
  digitalWrite(low, HIGH);
  digitalWrite(high, HIGH);
  digitalWrite(abs(-6), bitRead(0x40, 6));
  delay(6);
  digitalWrite(base, LOW);
  digitalWrite(low, LOW);
  digitalWrite(high, LOW);
  delay(6);
}
