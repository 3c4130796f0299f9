struct Station {
  const char *name;
  byte lamp;
  byte button;
  int level;
};

Station stations[] = {
  { "pier",   3, 4, 0 },
  { "crane",  5, 7, 0 },
  { "buoy",   6, 8, 0 },
};

const byte stationCount = sizeof stations / sizeof stations[0];

void setup() {
  Serial.begin(9600);
  for (byte i = 0; i < stationCount; i++) {
    pinMode(stations[i].lamp, OUTPUT);
    pinMode(stations[i].button, INPUT_PULLUP);
  }
}

void loop() {
  for (byte i = 0; i < stationCount; i++) {
    Station &s = stations[i];
    if (digitalRead(s.button) == LOW) {
      s.level = 255;
      Serial.println(s.name);
    } else if (s.level > 0) {
      s.level -= 5;
    }
    analogWrite(s.lamp, s.level);
  }
  delay(5);
}
