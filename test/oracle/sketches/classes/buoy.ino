class Buoy {
  public:
    Buoy(byte lampPin, byte bellPin, unsigned long period)
      : lamp(lampPin), bell(bellPin), period(period) {}

    void begin() {
      pinMode(lamp, OUTPUT);
      pinMode(bell, OUTPUT);
    }

    void update(unsigned long now) {
      if (now - last < period) return;
      last = now;
      lit = !lit;
      digitalWrite(lamp, lit);
      if (lit) tone(bell, 660, 30);
    }

  private:
    byte lamp, bell;
    unsigned long period;
    unsigned long last = 0;
    bool lit = false;
};

Buoy north(7, 8, 90);
Buoy south(12, A2, 130);

void setup() {
  north.begin();
  south.begin();
}

void loop() {
  unsigned long now = millis();
  north.update(now);
  south.update(now);
}
