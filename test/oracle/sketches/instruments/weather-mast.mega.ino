/*
 * Weather mast logger: wind, rain, temperature by a thermistor, SD by software flag
 */
#include <SPI.h>
#include <Wire.h>

#define NUM_OF(x) (sizeof(x) / sizeof(*(x)))

const int PIN_WIND = 18, PIN_RAIN = 19, PIN_CS = 53;
const int THERMISTORS[] = {A0, A1, A2};
const int HEATER[] = {5, 6, 7};
const int STATUS = LED_BUILTIN;

volatile unsigned long windCount = 0, rainCount = 0;

float readings[NUM_OF(THERMISTORS)];

void onWind() { windCount++; }
void onRain() {
  static unsigned long last;
  if (millis() - last > 10) rainCount++;
  last = millis();
}

void logLine() {
  digitalWrite(PIN_CS, LOW);
  SPI.beginTransaction(SPISettings(4000000, MSBFIRST, SPI_MODE0));
  SPI.transfer(windCount & 0xFF);
  SPI.endTransaction();
  digitalWrite(PIN_CS, HIGH);
}

void setup() {
  Serial.begin(57600);
  SPI.begin();
  pinMode(PIN_CS, OUTPUT);
  digitalWrite(PIN_CS, HIGH);
  pinMode(STATUS, OUTPUT);
  for (unsigned int i = 0; i < NUM_OF(HEATER); i++) {
    pinMode(HEATER[i], OUTPUT);
    analogWrite(HEATER[i], 0);
  }
  pinMode(PIN_WIND, INPUT_PULLUP);
  pinMode(PIN_RAIN, INPUT_PULLUP);
  attachInterrupt(digitalPinToInterrupt(PIN_WIND), onWind, FALLING);
  attachInterrupt(digitalPinToInterrupt(PIN_RAIN), onRain, FALLING);
}

void loop() {
  for (unsigned int i = 0; i < NUM_OF(THERMISTORS); i++) {
    int raw = analogRead(THERMISTORS[i]);
    readings[i] = raw * 0.0049;
    if (readings[i] < 1.0) analogWrite(HEATER[i], 128);
    else if (readings[i] > 2.0) analogWrite(HEATER[i], 0);
  }
  digitalWrite(STATUS, HIGH);
  logLine();
  digitalWrite(STATUS, LOW);
  delay(1000);
}
