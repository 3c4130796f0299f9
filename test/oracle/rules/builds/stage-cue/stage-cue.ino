// Stage cue: the desk's cue line comes in through an optocoupler, the ready lamp goes out to the desk.
const uint8_t CUE_IN = 2;
const uint8_t READY_OUT = 7;
const uint8_t CURTAIN = 4;

enum State { WAITING, RUNNING } state = WAITING;
unsigned long startedAt;

void setup() {
  pinMode(CUE_IN, INPUT_PULLUP);
  pinMode(READY_OUT, OUTPUT);
  pinMode(CURTAIN, OUTPUT);
}

void loop() {
  switch (state) {
    case WAITING:
      digitalWrite(READY_OUT, HIGH);
      digitalWrite(CURTAIN, LOW);
      if (digitalRead(CUE_IN) == LOW) {
        state = RUNNING;
        startedAt = millis();
      }
      break;
    case RUNNING:
      digitalWrite(READY_OUT, LOW);
      digitalWrite(CURTAIN, HIGH);
      if (millis() - startedAt > 8000UL) state = WAITING;
      break;
  }
}
