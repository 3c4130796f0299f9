#include <SoftwareSerial.h>
#define RX_FROM_BUOY 11
#define TX_TO_BUOY 12
SoftwareSerial buoy(RX_FROM_BUOY, TX_TO_BUOY);
const int busy = 4;
void setup() {
  Serial.begin(9600);
  buoy.begin(4800);
  pinMode(busy, OUTPUT);
}
void loop() {
  if (Serial.available()) {
    digitalWrite(busy, HIGH);
    buoy.write(Serial.read());
    digitalWrite(busy, LOW);
  }
}
