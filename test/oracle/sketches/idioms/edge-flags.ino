const int in1 = 2, in2 = 3;
struct Edge { int pin; bool last; } edges[] = {{in1, HIGH}, {in2, HIGH}};
union Word { struct { uint8_t low, high; } part; uint16_t all; };
struct Flags { uint8_t lamp : 1; uint8_t horn : 1; uint8_t count : 6; } flags = {0, 0, 0};
bool fell(Edge &e) {
  bool now = digitalRead(e.pin), was = e.last;
  e.last = now;
  return was && !now;
}
void setup() {
  for (auto &e : edges) pinMode(e.pin, INPUT_PULLUP);
  pinMode(7, OUTPUT), pinMode(8, OUTPUT);
}
void loop() {
  if (fell(edges[0])) flags.lamp ^= 1;
  if (fell(edges[1])) flags.horn = !flags.horn, flags.count++;
  digitalWrite(7, flags.lamp);
  digitalWrite(8, flags.horn);
  delay(2);
}
