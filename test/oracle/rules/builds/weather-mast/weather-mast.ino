// Weather mast in the foyer: air on a two-line display, the lamp above it at dusk.
#include <DHT.h>
#include <LiquidCrystal.h>

#define AIR_PIN 7
#define DUSK_LAMP 6
#define LIGHT A0

LiquidCrystal lcd(12, 11, 5, 4, 3, 2);
DHT air(AIR_PIN, DHT22);
unsigned long nextRead = 0;

void showAir() {
  lcd.setCursor(0, 0);
  lcd.print(air.readTemperature());
  lcd.setCursor(0, 1);
  lcd.print(air.readHumidity());
}

void setup() {
  lcd.begin(16, 2);
  air.begin();
  pinMode(DUSK_LAMP, OUTPUT);
}

void loop() {
  if (millis() - nextRead >= 2500UL) {
    nextRead = millis();
    showAir();
  }
  analogWrite(DUSK_LAMP, analogRead(LIGHT) < 300 ? 180 : 0);
}
