/*
 * Aquarium in the foyer
 *   day light   pin 9  (PWM through a transistor)
 *   moon light  pin 10 (PWM)
 *   pump relay  pin 7  (low = on)
 *   heater      pin 8  (low = on)
 *   level       pin 4  (float, to ground)
 *   temperature A0
 */
const uint8_t PIN_DAY = 9, PIN_MOON = 10;
const uint8_t PIN_PUMP = 7, PIN_HEATER = 8;
const uint8_t PIN_LEVEL = 4;
#define PIN_TEMP A0

const unsigned long MINUTE = 2;      // for the demo, real: 60000
const int DAY_START = 8 * 60, DAY_END = 20 * 60, RAMP = 30;

class Relay {
public:
  explicit Relay(uint8_t pin) : pin(pin) {}
  void begin() { digitalWrite(pin, HIGH); pinMode(pin, OUTPUT); }
  void set(bool on) { digitalWrite(pin, on ? LOW : HIGH); }
private:
  uint8_t pin;
};

Relay pump(PIN_PUMP), heater(PIN_HEATER);

int minuteOfDay() { return (millis() / MINUTE) % (24 * 60); }

uint8_t dayLight(int minute)
{
  if (minute < DAY_START || minute >= DAY_END) return 0;
  if (minute < DAY_START + RAMP) return map(minute, DAY_START, DAY_START + RAMP, 0, 255);
  if (minute >= DAY_END - RAMP) return map(minute, DAY_END - RAMP, DAY_END, 255, 0);
  return 255;
}

float celsius() { return analogRead(PIN_TEMP) * 5.0 / 1024.0 * 100.0 - 50.0; }

void setup()
{
  pinMode(PIN_DAY, OUTPUT);
  pinMode(PIN_MOON, OUTPUT);
  pinMode(PIN_LEVEL, INPUT_PULLUP);
  pump.begin();
  heater.begin();
}

void loop()
{
  int now = minuteOfDay();
  uint8_t day = dayLight(now);
  analogWrite(PIN_DAY, day);
  analogWrite(PIN_MOON, day == 0 ? 12 : 0);
  bool full = digitalRead(PIN_LEVEL) == HIGH;
  pump.set(full);
  heater.set(full && celsius() < 24.5);
  delay(20);
}
