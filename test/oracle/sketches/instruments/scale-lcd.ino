// Load cell amplifier by two wires, text display by four data lines: both classes are in this file
class LoadCell {
  int dataPin, clockPin;
  long offset;
public:
  LoadCell(int data, int clock) : dataPin(data), clockPin(clock), offset(0) {
    pinMode(dataPin, INPUT);
    pinMode(clockPin, OUTPUT);
  }
  bool ready() { return digitalRead(dataPin) == LOW; }
  long read() {
    long value = 0;
    for (int i = 0; i < 24; i++) {
      digitalWrite(clockPin, HIGH);
      value = value << 1 | digitalRead(dataPin);
      digitalWrite(clockPin, LOW);
    }
    digitalWrite(clockPin, HIGH);
    digitalWrite(clockPin, LOW);
    return value - offset;
  }
  void tare() { offset = read(); }
};

class Display {
  uint8_t _rs, _en, _d[4];
  void nibble(uint8_t n) {
    for (int i = 0; i < 4; i++) digitalWrite(_d[i], (n >> i) & 1);
    digitalWrite(_en, HIGH);
    delayMicroseconds(1);
    digitalWrite(_en, LOW);
    delayMicroseconds(50);
  }
public:
  Display(uint8_t rs, uint8_t en, uint8_t d4, uint8_t d5, uint8_t d6, uint8_t d7)
      : _rs(rs), _en(en), _d{d4, d5, d6, d7} {}
  void begin() {
    pinMode(_rs, OUTPUT);
    pinMode(_en, OUTPUT);
    for (uint8_t p : _d) pinMode(p, OUTPUT);
    command(0x28);
    command(0x0C);
  }
  void command(uint8_t c) { digitalWrite(_rs, LOW); nibble(c >> 4); nibble(c); }
  void write(uint8_t c) { digitalWrite(_rs, HIGH); nibble(c >> 4); nibble(c); }
};

LoadCell cell(A1, A0);
Display lcd(12, 11, 5, 4, 3, 2);
const int tareButton = 7;

void setup() {
  lcd.begin();
  pinMode(tareButton, INPUT_PULLUP);
}

void loop() {
  if (!digitalRead(tareButton)) cell.tare();
  if (cell.ready()) {
    long grams = cell.read() / 420;
    lcd.command(0x80);
    lcd.write('0' + grams % 10);
  }
  delay(50);
}
