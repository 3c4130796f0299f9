/* pinMode(40, OUTPUT); */
// digitalWrite(41, HIGH);
const char help[] = "digitalWrite(42, HIGH);";
#if 0
void broken() { digitalWrite(43, }
#endif
void setup() {
  // pinMode(44, OUTPUT);
  pinMode(45, OUTPUT); /* was 46 */ Serial.begin(9600);
  Serial.println(help);
}
void loop() {
  digitalWrite(45 /* not 47 */, HIGH); // off is below
  delay(5);
  digitalWrite(45, LOW);
  delay(5);
}
