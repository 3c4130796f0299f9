// Drawbridge: motor, two end stops, warning lamp and bell.
const uint8_t kMotorUp      = 5;
const uint8_t kMotorDown    = 6;
const uint8_t kStopTop      = 2;
const uint8_t kStopBottom   = 3;
const uint8_t kWarnLamp     = 12;
const uint8_t kBell         = 9;
const uint8_t kRequest      = 4;
const uint16_t kBellHz      = 1200;
const unsigned long kWarnMs = 60;

enum State { Closed, Opening, Open, Closing };
State state = Closed;
unsigned long since;

void enter(State next) {
  state = next;
  since = millis();
}

void stopMotor() {
  digitalWrite(kMotorUp, LOW);
  digitalWrite(kMotorDown, LOW);
}

void setup() {
  pinMode(kMotorUp, OUTPUT);
  pinMode(kMotorDown, OUTPUT);
  pinMode(kStopTop, INPUT_PULLUP);
  pinMode(kStopBottom, INPUT_PULLUP);
  pinMode(kWarnLamp, OUTPUT);
  pinMode(kBell, OUTPUT);
  pinMode(kRequest, INPUT_PULLUP);
  enter(Closed);
}

void loop() {
  bool warn = state == Opening || state == Closing;
  digitalWrite(kWarnLamp, warn && (millis() / kWarnMs) % 2);
  switch (state) {
    case Closed:
      if (digitalRead(kRequest) == LOW) {
        tone(kBell, kBellHz, 50);
        enter(Opening);
      }
      break;
    case Opening:
      digitalWrite(kMotorUp, HIGH);
      if (digitalRead(kStopTop) == LOW || millis() - since > 400) {
        stopMotor();
        enter(Open);
      }
      break;
    case Open:
      if (digitalRead(kRequest) == HIGH) {
        tone(kBell, kBellHz / 2, 50);
        enter(Closing);
      }
      break;
    case Closing:
      digitalWrite(kMotorDown, HIGH);
      if (digitalRead(kStopBottom) == LOW || millis() - since > 400) {
        stopMotor();
        enter(Closed);
      }
      break;
  }
}
