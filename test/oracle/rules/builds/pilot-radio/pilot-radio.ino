// Pilot radio: a data radio on two plain pins, so that the console stays free.
#include <SoftwareSerial.h>

#define RADIO_RX 10
#define RADIO_TX 11
SoftwareSerial radio(RADIO_RX, RADIO_TX);
const byte callLamp = 6;

void setup() {
  radio.begin(19200);
  pinMode(callLamp, OUTPUT);
}

void loop() {
  if (radio.available()) {
    digitalWrite(callLamp, radio.read() == 'C');
    radio.println("ok");
  }
}
