// Mooring post with a small chip: a reed tells the boat, a lamp tells the guest.
#define BOAT 3
#define LAMP 6

void setup() {
  pinMode(BOAT, INPUT_PULLUP);
  pinMode(LAMP, OUTPUT);
}

void loop() {
  digitalWrite(LAMP, !digitalRead(BOAT));
  delay(50);
}
