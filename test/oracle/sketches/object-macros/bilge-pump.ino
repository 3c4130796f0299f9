// bilge pump of the tug, float switch to ground
#define FLOAT_LOW   (4)
#define FLOAT_HIGH  (FLOAT_LOW + 1)
#define PUMP        (2 * FLOAT_LOW)
#define ALARM       PUMP+1
#define LAST        ALARM

bool pumping;

void setup(){
  pinMode(FLOAT_LOW, INPUT_PULLUP);
  pinMode(FLOAT_HIGH, INPUT_PULLUP);
  pinMode(PUMP, OUTPUT);
  pinMode(LAST, OUTPUT);
}

void loop(){
  if(digitalRead(FLOAT_HIGH)==LOW) pumping=true;
  if(digitalRead(FLOAT_LOW)==HIGH) pumping=false;
  digitalWrite(PUMP, pumping ? HIGH : LOW);
  if(pumping && digitalRead(FLOAT_HIGH)==LOW) tone(ALARM, 880, 100); else noTone(ALARM);
  delay(20);
}
