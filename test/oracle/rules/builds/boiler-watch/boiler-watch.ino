// Boiler watch: two sensors on one wire, an alarm lamp and a sounder.
#include <OneWire.h>
#include <DallasTemperature.h>

#define BUS 10
#define ALARM_LAMP 4
#define SOUNDER 7
static const float LIMIT = 85.0f;

OneWire wire(BUS);
DallasTemperature boiler(&wire);

void setup() {
  pinMode(ALARM_LAMP, OUTPUT);
  pinMode(SOUNDER, OUTPUT);
  boiler.begin();
}

void loop() {
  boiler.requestTemperatures();
  const bool hot = boiler.getTempCByIndex(0) > LIMIT;
  digitalWrite(ALARM_LAMP, hot);
  digitalWrite(SOUNDER, hot);
}
