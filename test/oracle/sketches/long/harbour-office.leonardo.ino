// Office of the harbour master: everything visitors can press is here.
// Written over three winters by several hands, which shows.

// ---------------------------------------------------------------------------
// Front lamp: a slow lamp that swells and fades, with a short flash at the top
// ---------------------------------------------------------------------------
#define FRONT_LAMP_LAMP 5
#define FRONT_LAMP_FLASH 4
#define FRONT_LAMP_STEP 9

int frontLampLevel = 0;
int frontLampChange = FRONT_LAMP_STEP;
unsigned long frontLampAt = 0;

void frontLampSetup()
{
  pinMode(FRONT_LAMP_LAMP, OUTPUT);
  pinMode(FRONT_LAMP_FLASH, OUTPUT);
}

void frontLampLoop(unsigned long now)
{
  if (now - frontLampAt < 4)
  {
    return;
  }
  frontLampAt = now;
  frontLampLevel += frontLampChange;
  if (frontLampLevel > 255)
  {
    frontLampLevel = 255;
    frontLampChange = -FRONT_LAMP_STEP;
    digitalWrite(FRONT_LAMP_FLASH, HIGH);
  }
  if (frontLampLevel < 0)
  {
    frontLampLevel = 0;
    frontLampChange = FRONT_LAMP_STEP;
    digitalWrite(FRONT_LAMP_FLASH, LOW);
  }
  analogWrite(FRONT_LAMP_LAMP, frontLampLevel);
}

// Counter. Who was first? Two players, two lamps, one key for the teacher.
enum CounterQuiz { COUNTER_NOBODY, COUNTER_LEFT, COUNTER_RIGHT };
CounterQuiz counterWinner = COUNTER_NOBODY;
const byte counterKeys[2] = {2, 3};
const byte counterLamps[2] = {7, 8};

void counterSetup() {
  for (auto key : counterKeys) pinMode(key, INPUT_PULLUP);
  for (auto lamp : counterLamps) pinMode(lamp, OUTPUT);
}

void counterLoop(unsigned long now) {
  static unsigned long wonAt = 0;
  if (counterWinner == COUNTER_NOBODY) {
    for (byte player = 0; player < 2; player++) {
      if (digitalRead(counterKeys[player]) == LOW) {
        counterWinner = player == 0 ? COUNTER_LEFT : COUNTER_RIGHT;
        wonAt = now;
        digitalWrite(counterLamps[player], HIGH);
        break;
      }
    }
  } else if (now - wonAt > 50) {
    digitalWrite(counterLamps[counterWinner - 1], LOW);
    counterWinner = COUNTER_NOBODY;
  }
}

// ===== Wind gauge =====
// pointer instrument on a PWM pin, knob on an analog one, smoothing over eight readings
#define WIND_GAUGE_KNOB   A0
#define WIND_GAUGE_NEEDLE 9
#define WIND_GAUGE_OVER   12
#define WIND_GAUGE_N      8
int windGauge_values[WIND_GAUGE_N];
byte windGauge_next = 0;
long windGauge_sum = 0;
void windGaugeSetup() {
  pinMode(WIND_GAUGE_NEEDLE, OUTPUT);
  pinMode(WIND_GAUGE_OVER, OUTPUT);
  for (byte i = 0; i < WIND_GAUGE_N; i++) windGauge_values[i] = 0;
}
int windGauge_smooth(int fresh) {
  windGauge_sum -= windGauge_values[windGauge_next];
  windGauge_values[windGauge_next] = fresh;
  windGauge_sum += fresh;
  windGauge_next = (windGauge_next + 1) % WIND_GAUGE_N;
  return windGauge_sum / WIND_GAUGE_N;
}
void windGaugeLoop(unsigned long now) {
  int value = windGauge_smooth(analogRead(WIND_GAUGE_KNOB));
  int needle = map(value, 0, 1023, 0, 255);
  needle = constrain(needle, 0, 250);
  analogWrite(WIND_GAUGE_NEEDLE, needle);
  if (value > 900 && (now / 8) % 2) digitalWrite(WIND_GAUGE_OVER, HIGH);
  else digitalWrite(WIND_GAUGE_OVER, LOW);
}

/// Cooler
/// speeds: off, low, middle, high, by one key that steps on
uint8_t cooler_fan = 10;
uint8_t cooler_key = A1;
uint8_t cooler_speeds[4] = {0, 90, 160, 255};
uint8_t cooler_speed;
uint8_t cooler_seen;

void coolerSetup()
{
	pinMode(cooler_fan, OUTPUT);
	pinMode(cooler_key, INPUT_PULLUP);
}

void coolerLoop(unsigned long now)
{
	(void)now;
	uint8_t key = digitalRead(cooler_key);
	if (cooler_seen && !key)
		cooler_speed = (cooler_speed + 1) & 3;
	cooler_seen = key;
	analogWrite(cooler_fan, cooler_speeds[cooler_speed]);
}

// Lottery, an electric die with three pairs of lamps and one in the middle
struct LotteryDie
{
    byte middle, pairA, pairB, key;
    byte value;
};
LotteryDie lotteryDie = { A2, A3, A4, A5, 1 };

void lotteryShow()
{
    const byte value = lotteryDie.value;
    digitalWrite(lotteryDie.middle, value % 2 == 1 ? HIGH : LOW);
    digitalWrite(lotteryDie.pairA,  value > 1      ? HIGH : LOW);
    digitalWrite(lotteryDie.pairB,  value > 3      ? HIGH : LOW);
}

void lotterySetup()
{
    pinMode(lotteryDie.middle, OUTPUT);
    pinMode(lotteryDie.pairA,  OUTPUT);
    pinMode(lotteryDie.pairB,  OUTPUT);
    pinMode(lotteryDie.key,    INPUT_PULLUP);
    lotteryShow();
}

void lotteryLoop(unsigned long)
{
    if (digitalRead(lotteryDie.key) == LOW)
    {
        lotteryDie.value++;
        if (lotteryDie.value > 6) lotteryDie.value = 1;
        lotteryShow();
    }
}

// Bell: the keeper's horn, three patterns one after the other
const int bellPin = 11;
const int bellKey = 14;
const unsigned int bellLong[] = { 30, 10, 30, 10, 0 };
const unsigned int bellShort[] = { 8, 5, 8, 5, 8, 20, 0 };
const unsigned int bellMixed[] = { 8, 5, 30, 5, 8, 15, 0 };
const unsigned int *const bellPatterns[] = { bellLong, bellShort, bellMixed };
int bellPattern = 0;
int bellStep = 0;
unsigned long bellStart = 0;
bool bellBefore = HIGH;

void bellSound(bool on, int hertz = 330) {
  if (on) tone(bellPin, hertz);
  else noTone(bellPin);
}

void bellSetup() {
  pinMode(bellPin, OUTPUT);
  pinMode(bellKey, INPUT_PULLUP);
}

void bellLoop(unsigned long now) {
  bool key = digitalRead(bellKey);
  if (key == LOW && bellBefore == HIGH) {
    bellPattern = (bellPattern + 1) % 3;
    bellStep = 0;
  }
  bellBefore = key;
  unsigned int ms = bellPatterns[bellPattern][bellStep];
  if (ms == 0) {
    bellStep = 0;
    return;
  }
  if (now - bellStart >= ms) {
    bellStart = now;
    bellStep++;
    bellSound(bellStep % 2 == 0);
  }
}

// ---------------------------------------------------------------------------
// Sign: a slow lamp that swells and fades, with a short flash at the top
// ---------------------------------------------------------------------------
#define SIGN_LAMP 6
#define SIGN_FLASH 13
#define SIGN_STEP 9

int signLevel = 0;
int signChange = SIGN_STEP;
unsigned long signAt = 0;

void signSetup()
{
  pinMode(SIGN_LAMP, OUTPUT);
  pinMode(SIGN_FLASH, OUTPUT);
}

void signLoop(unsigned long now)
{
  if (now - signAt < 4)
  {
    return;
  }
  signAt = now;
  signLevel += signChange;
  if (signLevel > 255)
  {
    signLevel = 255;
    signChange = -SIGN_STEP;
    digitalWrite(SIGN_FLASH, HIGH);
  }
  if (signLevel < 0)
  {
    signLevel = 0;
    signChange = SIGN_STEP;
    digitalWrite(SIGN_FLASH, LOW);
  }
  analogWrite(SIGN_LAMP, signLevel);
}

// ---------------------------------------------------------------------------
// everything together
// ---------------------------------------------------------------------------
void setup() {
  frontLampSetup();
  counterSetup();
  windGaugeSetup();
  coolerSetup();
  lotterySetup();
  bellSetup();
  signSetup();
}

void loop() {
  unsigned long now = millis();
  frontLampLoop(now);
  counterLoop(now);
  windGaugeLoop(now);
  coolerLoop(now);
  lotteryLoop(now);
  bellLoop(now);
  signLoop(now);
}
