#define FLOORS 4
const uint8_t call[FLOORS]   = {22, 24, 26, 28};
const uint8_t lamp[FLOORS]   = {23, 25, 27, 29};
const uint8_t sensor[FLOORS] = {A8, A9, A10, A11};
const uint8_t up = 4, down = 5;
bool wanted[FLOORS];
int8_t at = 0, moving = 0;

void setup() {
  for (uint8_t f = 0; f < FLOORS; f++) {
    pinMode(call[f], INPUT_PULLUP);
    pinMode(sensor[f], INPUT_PULLUP);
    pinMode(lamp[f], OUTPUT);
  }
  pinMode(up, OUTPUT);
  pinMode(down, OUTPUT);
}
void loop() {
  for (uint8_t f = 0; f < FLOORS; f++) {
    if (!digitalRead(call[f])) wanted[f] = true;
    digitalWrite(lamp[f], wanted[f]);
    if (!digitalRead(sensor[f])) at = f;
  }
  if (wanted[at]) { wanted[at] = false; moving = 0; }
  if (!moving)
    for (int8_t f = 0; f < FLOORS; f++)
      if (wanted[f]) { moving = f > at ? 1 : -1; break; }
  digitalWrite(up, moving > 0);
  digitalWrite(down, moving < 0);
}
