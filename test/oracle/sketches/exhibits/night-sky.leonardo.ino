// Planetarium corner: constellations by a class for each
class Constellation {
  public:
    Constellation(const byte *stars, byte count) : _stars(stars), _count(count), _on(false) {}
    void begin() {
      for (byte i = 0; i < _count; i++) {
        pinMode(_stars[i], OUTPUT);
        digitalWrite(_stars[i], LOW);
      }
    }
    void show(bool on) {
      if (on == _on) return;
      _on = on;
      for (byte i = 0; i < _count; i++) digitalWrite(_stars[i], on ? HIGH : LOW);
    }
    bool shown() const { return _on; }

  private:
    const byte *_stars;
    byte _count;
    bool _on;
};

const byte PLOUGH[] = {2, 3, 4, 5};
const byte CROSS[] = {6, 7, 8};
const byte CROWN[] = {9, 10, 11, 12, 13};

Constellation plough(PLOUGH, sizeof(PLOUGH));
Constellation cross(CROSS, sizeof(CROSS));
Constellation crown(CROWN, sizeof(CROWN));
Constellation *all[] = {&plough, &cross, &crown};

byte current = 0;
unsigned long changed = 0;

void setup() {
  for (Constellation *one : all) one->begin();
  pinMode(A0, INPUT_PULLUP);
}

void loop() {
  if (millis() - changed >= 100) {
    changed = millis();
    all[current]->show(false);
    current = (current + 1) % 3;
    all[current]->show(true);
  }
  if (digitalRead(A0) == LOW) {
    for (byte i = 0; i < 3; i++) all[i]->show(true);
  }
}
