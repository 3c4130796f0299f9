// Log book: every ten seconds the sensor of the hold is written to a card.
#include <SPI.h>
#include <SD.h>

const int cardSelect = 10;
const int holdSensor = A2;
const int okLamp = 8;
const unsigned long every = 10000;
unsigned long last = 0;
bool ready = false;

void setup() {
  pinMode(okLamp, OUTPUT);
  pinMode(cardSelect, OUTPUT);
  ready = SD.begin(cardSelect);
  digitalWrite(okLamp, ready ? HIGH : LOW);
}

void loop() {
  if (!ready || millis() - last < every) return;
  last = millis();
  File page = SD.open("hold.txt", FILE_WRITE);
  if (page) {
    page.println(analogRead(holdSensor));
    page.close();
  }
}
