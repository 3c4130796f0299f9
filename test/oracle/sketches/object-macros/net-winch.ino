/***************************************************
 *  Net winch, workshop demo
 *  motor driver: IN1 -> 4, IN2 -> 5, enable -> 6
 ***************************************************/
#define MOTOR_IN1 4
#define MOTOR_IN2 5
#define MOTOR_EN  6
#define SW_UP     A0
#define SW_DOWN   A1
#define SPEED     180
#define STOP()    motor(LOW,LOW,0)

static void motor(uint8_t a, uint8_t b, uint8_t v) {
	digitalWrite(MOTOR_IN1, a);
	digitalWrite(MOTOR_IN2, b);
	analogWrite(MOTOR_EN, v);
}

void setup() {
	pinMode(MOTOR_IN1, OUTPUT);
	pinMode(MOTOR_IN2, OUTPUT);
	pinMode(MOTOR_EN, OUTPUT);
	pinMode(SW_UP, INPUT_PULLUP);
	pinMode(SW_DOWN, INPUT_PULLUP);
	STOP();
}

void loop() {
	bool up = !digitalRead(SW_UP), down = !digitalRead(SW_DOWN);
	if (up && !down)
		motor(HIGH, LOW, SPEED);
	else if (down && !up)
		motor(LOW, HIGH, SPEED);
	else
		STOP();
	delay(10);
}
