enum Side { LEFT = 4, RIGHT = 6 };
const float third = 3.7;
void setup() {
  pinMode((int)third, OUTPUT);                     // 3
  pinMode(int(third * 3), OUTPUT);                 // 11
  pinMode(static_cast<uint8_t>(RIGHT), OUTPUT);
  pinMode((byte)LEFT, OUTPUT);
  pinMode(uint8_t{8}, OUTPUT);
  pinMode((uint8_t)'\x0a', OUTPUT);                // 10
}
void loop() {
  digitalWrite((int)third, HIGH);
  digitalWrite(static_cast<uint8_t>(RIGHT), (bool)3);
  delay(5);
  digitalWrite((int)third, LOW);
  digitalWrite(static_cast<uint8_t>(RIGHT), (bool)0);
  delay(5);
}
