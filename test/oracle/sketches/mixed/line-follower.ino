// Two-wheel line follower, written in a hurry at the fair
int ENA=5,IN1=7,IN2=8,ENB=6,IN3=9,IN4=11;
int sensL=A0, sensM=A1, sensR=A2; int l,m,r; int spd=150;
void fwd(){digitalWrite(IN1,HIGH);digitalWrite(IN2,LOW);digitalWrite(IN3,HIGH);digitalWrite(IN4,LOW);analogWrite(ENA,spd);analogWrite(ENB,spd);}
void lft(){digitalWrite(IN1,LOW);digitalWrite(IN2,HIGH);digitalWrite(IN3,HIGH);digitalWrite(IN4,LOW);analogWrite(ENA,spd/2);analogWrite(ENB,spd);}
void rgt(){digitalWrite(IN1,HIGH);digitalWrite(IN2,LOW);digitalWrite(IN3,LOW);digitalWrite(IN4,HIGH);analogWrite(ENA,spd);analogWrite(ENB,spd/2);}
void stp(){analogWrite(ENA,0);analogWrite(ENB,0);}
void setup(){
 pinMode(ENA,OUTPUT);pinMode(ENB,OUTPUT);
 pinMode(IN1,OUTPUT);pinMode(IN2,OUTPUT);pinMode(IN3,OUTPUT);pinMode(IN4,OUTPUT);
 pinMode(sensL,INPUT);pinMode(sensM,INPUT);pinMode(sensR,INPUT);
}
void loop(){
 l=digitalRead(sensL); m=digitalRead(sensM); r=digitalRead(sensR);
 if(m==1&&l==0&&r==0)fwd();
 else if(l==1)lft();
 else if(r==1)rgt();
 else stp();
 delay(5);
}
