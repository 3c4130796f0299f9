#define PANEL 2
#ifdef PANEL
  #if PANEL == 1
    #define A_LAMP 2
  #else
    #ifdef __AVR_ATmega32U4__
      #define A_LAMP 8
      #if defined A0 && !defined(NO_POT)
        #define POT A0
      #endif
    #else
      #define A_LAMP 4
    #endif
  #endif
#else
  #define A_LAMP 5
#endif
#if 0
this is not code at all { ( [
#endif
void setup() {
  pinMode(A_LAMP, OUTPUT);
}
void loop() {
#ifdef POT
  int v = analogRead(POT);
#else
  int v = 0;
#endif
  digitalWrite(A_LAMP, v > 200);
  delay(8);
}
