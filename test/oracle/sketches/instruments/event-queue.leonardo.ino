// ring buffer of events, queue of pins, bitfields, unions
struct Event { uint8_t pin : 5; uint8_t level : 1; };
Event queue[8];
uint8_t head = 0, tail = 0;
const uint8_t outs[] = {4, 5, 6, 7};
void push(uint8_t pin, uint8_t level) { queue[head].pin = pin; queue[head].level = level; head = (head + 1) % 8; }
bool pop(Event &e) { if (head == tail) return false; e = queue[tail]; tail = (tail + 1) % 8; return true; }
union Word { struct { uint8_t low, high; } bytes; uint16_t value; } word_;
void setup() { for (auto o : outs) pinMode(o, OUTPUT); pinMode(8, INPUT_PULLUP); }
void loop() {
  static uint8_t i = 0;
  push(outs[i], HIGH);
  push(outs[(i + 3) % 4], LOW);
  if (++i >= 4) i = 0;
  Event e;
  while (pop(e)) digitalWrite(e.pin, e.level);
  word_.value = analogRead(A0);
  if (!digitalRead(8)) analogWrite(9, word_.bytes.low);
  delay(3);
}
