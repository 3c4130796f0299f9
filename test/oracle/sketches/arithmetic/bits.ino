const byte code = 0b01101001;
void setup() {
  pinMode(code & 0x0F, OUTPUT);          // 9
  pinMode(code >> 4, OUTPUT);            // 6
  pinMode((code ^ 0x62), OUTPUT);        // 11
  pinMode(1 << 3, OUTPUT);               // 8
  pinMode(~0xF8 & 0xFF, OUTPUT);         // 7
  pinMode(17 % 6 + 7 / 2 * 0, OUTPUT);   // 5
  pinMode(-(-4), OUTPUT);                // 4
  pinMode((3 > 2) + 2, OUTPUT);          // 3
  pinMode(!0 * 10, OUTPUT);              // 10
}
void loop() {
  digitalWrite(code & 0x0F, HIGH);
  digitalWrite(code >> 4, code & 1);
  digitalWrite(code ^ 0x62, (code >> 1) & 1);
  digitalWrite(1 << 3, 5 == 5);
  delay(6);
  digitalWrite(code & 0x0F, LOW);
  digitalWrite(code >> 4, !(code & 1));
  digitalWrite(1 << 3, 5 != 5);
  delay(6);
}
