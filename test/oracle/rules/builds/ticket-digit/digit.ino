// Segments a to g on D2 to D8.
const byte shapes[10] = {
  0b0111111, 0b0000110, 0b1011011, 0b1001111, 0b1100110,
  0b1101101, 0b1111101, 0b0000111, 0b1111111, 0b1101111
};
const byte segments[7] = { 2, 3, 4, 5, 6, 7, 8 };

void beginDigit() {
  for (byte i = 0; i < 7; i++) pinMode(segments[i], OUTPUT);
}

void showDigit(byte value) {
  for (byte i = 0; i < 7; i++) digitalWrite(segments[i], bitRead(shapes[value], i));
}
