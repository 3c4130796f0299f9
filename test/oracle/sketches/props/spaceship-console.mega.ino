// Toggle switches, guarded button, lamps through 595 by hand
#define FOREACH_SWITCH(DO) DO(0, 22) DO(1, 23) DO(2, 24) DO(3, 25)

const int latchPin = 8, clockPin = 12, dataPin = 11;
const int launch = 6, launchLamp = 7;
uint16_t lamps = 0;
bool switches[4];

void push() {
  digitalWrite(latchPin, LOW);
  shiftOut(dataPin, clockPin, MSBFIRST, highByte(lamps));
  shiftOut(dataPin, clockPin, MSBFIRST, lowByte(lamps));
  digitalWrite(latchPin, HIGH);
}

void setup() {
#define INIT(index, pin) pinMode(pin, INPUT_PULLUP);
  FOREACH_SWITCH(INIT)
#undef INIT
  pinMode(latchPin, OUTPUT);
  pinMode(clockPin, OUTPUT);
  pinMode(dataPin, OUTPUT);
  pinMode(launch, INPUT_PULLUP);
  pinMode(launchLamp, OUTPUT);
  push();
}

void loop() {
#define POLL(index, pin) switches[index] = !digitalRead(pin);
  FOREACH_SWITCH(POLL)
#undef POLL
  lamps = 0;
  bool all = true;
  for (int i = 0; i < 4; i++) {
    bitWrite(lamps, i, switches[i]);
    all = all && switches[i];
  }
  push();
  digitalWrite(launchLamp, all);
  if (all && !digitalRead(launch)) {
    for (int i = 15; i >= 0; i--) {
      lamps = 1 << i;
      push();
      delay(10);
    }
  }
}
