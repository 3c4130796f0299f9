#define PIN_lamp_red 5
#define PIN_lamp_green 6
#define PIN_horn 3
#define PIN(name) PIN_##name
#define ON(name) digitalWrite(PIN(name), HIGH)
#define OFF(name) digitalWrite(PIN(name), LOW)
#define OUTPUT_PIN(name) pinMode(PIN_##name, OUTPUT)
#define SAY(x) Serial.println(#x)

void setup() {
  Serial.begin(9600);
  OUTPUT_PIN(lamp_red);
  OUTPUT_PIN(lamp_green);
  OUTPUT_PIN(horn);
  SAY(harbour open);
}

void loop() {
  ON(lamp_red);
  OFF(lamp_green);
  delay(50);
  OFF(lamp_red);
  ON(lamp_green);
  delay(50);
  ON(horn);
  delay(5);
  OFF(horn);
}
