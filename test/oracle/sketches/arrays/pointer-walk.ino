const byte lamps[] = {5, 6, 9, 10, 0};   // 0 ends the list

void setup() {
  for (const byte *p = lamps; *p; p++) pinMode(*p, OUTPUT);
}

void loop() {
  const byte *p = lamps;
  while (*p != 0) {
    analogWrite(*p, 40);
    delay(10);
    analogWrite(*p, 0);
    p++;
  }
}
