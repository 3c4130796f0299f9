// rain sound tube, geared motor with speed knob. all plain ints, as we learnt it
int motorPin=3;
int knobPin=0;      // A0
int lampPin=13;
int val;

void setup(){
pinMode(motorPin,OUTPUT);
pinMode(lampPin,OUTPUT);
Serial.begin(9600);
}

void loop(){
val=analogRead(knobPin);
val=val/4;
analogWrite(motorPin,val);
if(val>200){
digitalWrite(lampPin,HIGH);
}
else{
digitalWrite(lampPin,LOW);
}
Serial.println(val);
delay(50);
}
