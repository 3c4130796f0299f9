// Rotary encoder safe with a pointer to the current step's function
#define CLK 2
#define DT 3
#define SW 4
#define BOLT 8
const int leds[3] = {5, 6, 7};

volatile int position_ = 0;
int combination[] = {12, -7, 20};

typedef void (*StateFn)();
void waitFirst();
void waitSecond();
void waitThird();
void opened();
StateFn current = waitFirst;

void turned() {
  if (digitalRead(DT) == digitalRead(CLK)) position_++;
  else position_--;
}

bool pressed() {
  static bool last = HIGH;
  bool now = digitalRead(SW);
  bool hit = last == HIGH && now == LOW;
  last = now;
  return hit;
}

void lamp(int n) {
  for (int i = 0; i < 3; ++i) digitalWrite(leds[i], i < n ? HIGH : LOW);
}

void fail() {
  lamp(0);
  current = waitFirst;
}

void waitFirst() {
  if (!pressed()) return;
  if (position_ == combination[0]) { lamp(1); current = waitSecond; } else fail();
}
void waitSecond() {
  if (!pressed()) return;
  if (position_ == combination[1]) { lamp(2); current = &waitThird; } else fail();
}
void waitThird() {
  if (!pressed()) return;
  if (position_ == combination[2]) { lamp(3); current = opened; } else fail();
}
void opened() {
  digitalWrite(BOLT, HIGH);
  delay(100);
  digitalWrite(BOLT, LOW);
  current = waitFirst;
}

void setup() {
  pinMode(CLK, INPUT_PULLUP);
  pinMode(DT, INPUT_PULLUP);
  pinMode(SW, INPUT_PULLUP);
  pinMode(BOLT, OUTPUT);
  for (int i = 0; i < 3; ++i) pinMode(leds[i], OUTPUT);
  attachInterrupt(0, turned, CHANGE);
}

void loop() { current(); }
