// Numbers that leave their type on the way.
byte wraps = 250;
int8_t minus = -3;
uint16_t big = 65535;
void setup() {
  wraps += 11;                       // 5
  pinMode(wraps, OUTPUT);
  pinMode((uint8_t)(300 - 38), OUTPUT);     // 6
  pinMode(minus + 10, OUTPUT);       // 7
  big += 9;                          // 8
  pinMode(big, OUTPUT);
  int i = 32767;
  pinMode((i & 0x0F) - 6, OUTPUT);   // 9
  pinMode(sizeof(int) * 5, OUTPUT);  // 10
  pinMode(sizeof(long) + sizeof(char) + 6, OUTPUT);   // 11
}
void loop() {
  digitalWrite(wraps, HIGH); digitalWrite(minus + 10, HIGH); digitalWrite(big, HIGH);
  delay(5);
  digitalWrite(wraps, LOW); digitalWrite(minus + 10, LOW); digitalWrite(big, LOW);
  delay(5);
}
