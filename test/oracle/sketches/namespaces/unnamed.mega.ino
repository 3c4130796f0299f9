namespace {
const int firstRelay = 30;
const int relays = 6;
int next = 0;

void advance() {
  digitalWrite(firstRelay + next, LOW);
  next = (next + 1) % relays;
  digitalWrite(firstRelay + next, HIGH);
}
}  // namespace

void setup() {
  for (int i = 0; i < relays; ++i) pinMode(firstRelay + i, OUTPUT);
}
void loop() {
  advance();
  delay(20);
}
