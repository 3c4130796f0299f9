//#define DEBUG
#ifdef DEBUG
  #define LOG(x) Serial.println(x)
  #define LOG_BEGIN() Serial.begin(115200)
#else
  #define LOG(x)
  #define LOG_BEGIN()
#endif

const byte valve = 7, level = A1;
#ifndef DEBUG
const byte watchdogLamp = 12;
#endif

void setup() {
  LOG_BEGIN();
  pinMode(valve, OUTPUT);
#ifndef DEBUG
  pinMode(watchdogLamp, OUTPUT);
#endif
}

void loop() {
  int now = analogRead(level);
  LOG(now);
  digitalWrite(valve, now < 400);
#ifndef DEBUG
  digitalWrite(watchdogLamp, HIGH);
  delay(1);
  digitalWrite(watchdogLamp, LOW);
#endif
  delay(20);
}
