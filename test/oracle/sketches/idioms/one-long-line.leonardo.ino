int a=4,b=5,c=6;void setup(){pinMode(a,1);pinMode(b,1);pinMode(c,2);}void loop(){if(digitalRead(c)){digitalWrite(a,1);digitalWrite(b,0);}else{digitalWrite(a,0);digitalWrite(b,1);}delay(3);}
