// Light tower: turns its lamp on by a dusk sensor, a key tests it.
#define LANTERN 23
#define TEST_KEY 4
#define DUSK 34

struct Tower {
  int lantern;
  int dusk;
  bool dark() const { return analogRead(dusk) < 900; }
  void light(bool on) const { digitalWrite(lantern, on ? HIGH : LOW); }
};

const Tower tower = { LANTERN, DUSK };

void setup() {
  pinMode(LANTERN, OUTPUT);
  pinMode(TEST_KEY, INPUT_PULLUP);
}

void loop() {
  tower.light(tower.dark() || digitalRead(TEST_KEY) == LOW);
  delay(25);
}
