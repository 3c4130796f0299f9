int  horn  = 5 ;
int  lamp  = 6 ;
int  fog   = A1 ;
long quiet = 150 ;
long loud  = 40 ;

void setup ( ) {
  pinMode ( horn , OUTPUT ) ;
  pinMode ( lamp , OUTPUT ) ;
  pinMode ( fog , INPUT ) ;
}

void loop ( ) {
  if ( analogRead ( fog ) > 300 ) {
    digitalWrite ( horn , HIGH ) ;
    digitalWrite ( lamp , HIGH ) ;
    delay ( loud ) ;
    digitalWrite ( horn , LOW ) ;
    digitalWrite ( lamp , LOW ) ;
  }
  delay ( quiet ) ;
}
