// beginner style: copy and paste, strange spacing, globals changed in functions, pins swapped
int ledPin ;
int pinA = 3 , pinB = 4 ;
int stato = LOW ;
void cambia ( ) { int t = pinA ; pinA = pinB ; pinB = t ; }
void setup ( )
{
  ledPin = 13 ;
  pinMode ( ledPin , OUTPUT ) ;
  pinMode ( pinA , OUTPUT ) ; pinMode ( pinB , OUTPUT ) ;
}
void loop ( )
{
  if ( stato == LOW ) { stato = HIGH ; } else { stato = LOW ; }
  digitalWrite ( ledPin , stato ) ;
  digitalWrite ( pinA , HIGH ) ;
  digitalWrite ( pinB , LOW ) ;
  cambia ( ) ;
  delay ( 100 ) ;
}
