// Seven segment digits multiplexed, wires to cut, buzzer
byte seg[8] = {22, 23, 24, 25, 26, 27, 28, 29};
byte dig[4] = {30, 31, 32, 33};
byte wire[5] = {40, 41, 42, 43, 44};
byte order[5] = {2, 0, 4, 1, 3};
#define BUZZ 46
#define LED_OK 47

const byte font[10] = {0x3F, 0x06, 0x5B, 0x4F, 0x66, 0x6D, 0x7D, 0x07, 0x7F, 0x6F};

int seconds_left = 300;
byte step_ = 0;
unsigned long tick;
boolean dead = false;

void setup() {
  byte i;
  for (i = 0; i < 8; i++) pinMode(seg[i], OUTPUT);
  for (i = 0; i < 4; i++) { pinMode(dig[i], OUTPUT); digitalWrite(dig[i], HIGH); }
  for (i = 0; i < 5; i++) pinMode(wire[i], INPUT_PULLUP);
  pinMode(BUZZ, OUTPUT);
  pinMode(LED_OK, OUTPUT);
  tick = millis();
}

void digit(byte where, byte what) {
  for (byte s = 0; s < 7; s++) digitalWrite(seg[s], bitRead(font[what], s));
  digitalWrite(seg[7], where == 1);
  digitalWrite(dig[where], LOW);
  delayMicroseconds(500);
  digitalWrite(dig[where], HIGH);
}

void showTime() {
  int m = seconds_left / 60;
  int s = seconds_left % 60;
  digit(0, m / 10);
  digit(1, m % 10);
  digit(2, s / 10);
  digit(3, s % 10);
}

void checkWires() {
  if (step_ >= 5) return;
  for (byte w = 0; w < 5; w++) {
    if (digitalRead(wire[w]) == HIGH) {
      if (w == wire[order[step_]] - 40) step_++;
      else dead = true;
    }
  }
}

void loop() {
  showTime();
  checkWires();
  if (millis() - tick >= 1000) {
    tick += 1000;
    seconds_left--;
    tone(BUZZ, 2000, 20);
  }
  if (step_ == 5) digitalWrite(LED_OK, HIGH);
  if (dead) {
    tone(BUZZ, 200);
    digitalWrite(LED_OK, LOW);
  }
}
