void (*put)(uint8_t, uint8_t) = digitalWrite;
int (*get)(uint8_t) = digitalRead;
void setup() {
  void (*mode)(uint8_t, uint8_t) = pinMode;
  mode(6, OUTPUT);
  mode(7, INPUT_PULLUP);
}
void loop() {
  put(6, get(7));
  delay(4);
}
