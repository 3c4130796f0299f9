struct String_ {
  const byte laser, sensor;
  const int note;
  bool cut = false;
  String_(byte l, byte s, int n) : laser(l), sensor(s), note(n) {}
  void begin() const {
    pinMode(laser, OUTPUT);
    digitalWrite(laser, HIGH);
  }
  int light() const { return analogRead(sensor); }
};

String_ strings[] = {
  String_(30, A0, 60), String_(31, A1, 62), String_(32, A2, 64),
  String_(33, A3, 65), String_(34, A4, 67), String_(35, A5, 69),
};

const unsigned THRESHOLD = 500;

void note(byte status, byte n, byte velocity) {
  Serial1.write(status);
  Serial1.write(n);
  Serial1.write(velocity);
}

void setup() {
  Serial1.begin(31250);
  for (const auto &s : strings) s.begin();
  pinMode(13, OUTPUT);
}

void loop() {
  bool any = false;
  for (auto &s : strings) {
    bool cut = s.light() < (int)THRESHOLD;
    if (cut != s.cut) note(cut ? 0x90 : 0x80, s.note, cut ? 100 : 0);
    s.cut = cut;
    any |= cut;
  }
  digitalWrite(13, any);
}
