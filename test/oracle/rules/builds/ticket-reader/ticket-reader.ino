// Ticket reader: on this board the pins 0 and 1 are Serial1, Serial is the USB socket.
static const uint32_t kBaud = 9600;
static const uint8_t kGateLamp = 8;

void setup() {
  Serial.begin(9600);
  Serial1.begin(kBaud);
  pinMode(kGateLamp, OUTPUT);
}

void loop() {
  if (Serial1.available()) {
    uint8_t ticket = Serial1.read();
    digitalWrite(kGateLamp, ticket > 100);
    Serial.println(ticket);
  }
}
