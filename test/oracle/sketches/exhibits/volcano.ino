// volcano model: 5 leds glow, a button starts the eruption
int button = 2;
int glow1 = 3;
int glow2 = 5;
int glow3 = 6;
int smoke = 7;
int horn = 8;

int state = 0;
int level = 0;
unsigned long started;

void setup() {
  pinMode(button, INPUT_PULLUP);
  pinMode(glow1, OUTPUT);
  pinMode(glow2, OUTPUT);
  pinMode(glow3, OUTPUT);
  pinMode(smoke, OUTPUT);
  pinMode(horn, OUTPUT);
  digitalWrite(smoke, LOW);
}

void calm() {
  analogWrite(glow1, 20);
  analogWrite(glow2, 0);
  analogWrite(glow3, 0);
  digitalWrite(smoke, LOW);
  noTone(horn);
}

void erupt() {
  digitalWrite(smoke, HIGH);
  for (level = 0; level < 255; level = level + 15) {
    analogWrite(glow1, level);
    analogWrite(glow2, level);
    analogWrite(glow3, 255 - level);
    tone(horn, 100 + level);
    delay(5);
  }
}

void loop() {
  if (digitalRead(button) == LOW && state == 0) {
    state = 1;
    started = millis();
  }
  if (state == 0) calm();
  if (state == 1) {
    erupt();
    if (millis() - started > 3000) state = 0;
  }
}
