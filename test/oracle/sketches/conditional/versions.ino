#define VERSION 3
#define HAS_BELL 1
#define HAS_SMOKE 0

#if VERSION >= 3
const int lamp = 6;
#else
const int lamp = 13;
#endif

#if VERSION == 1 || (VERSION == 2 && !HAS_BELL)
const int key = 7;
#elif VERSION > 2 && HAS_BELL
const int key = 8;
#endif

#if HAS_SMOKE
const int smoke = 9;
#endif

void setup() {
  pinMode(lamp, OUTPUT);
  pinMode(key, INPUT_PULLUP);
#if HAS_BELL
  pinMode(3, OUTPUT);
#endif
#if HAS_SMOKE
  pinMode(smoke, OUTPUT);
#endif
}

void loop() {
  digitalWrite(lamp, digitalRead(key));
#if HAS_BELL && VERSION != 2
  if (digitalRead(key) == LOW) {
    digitalWrite(3, HIGH);
    delay(2);
    digitalWrite(3, LOW);
  }
#endif
#if HAS_SMOKE
  digitalWrite(smoke, HIGH);
#endif
  delay(10);
}
