const int A_LAMP = 3;
const byte B_LAMP = 4;
const uint8_t C_LAMP{5};
constexpr int D_LAMP = 6;
static const int E_LAMP = 7;
static constexpr uint8_t F_LAMP = 8;
int const G_LAMP = 9;
const unsigned char H_LAMP(10);
constexpr auto I_LAMP = 11;
const int J_LAMP = I_LAMP + 1, K_LAMP = J_LAMP + 1;
static uint8_t L_LAMP = A0;
volatile const byte unusedOne = 2;
const char M_LAMP = A1;

void setup() {
  pinMode(A_LAMP, OUTPUT);
  pinMode(B_LAMP, OUTPUT);
  pinMode(C_LAMP, OUTPUT);
  pinMode(D_LAMP, OUTPUT);
  pinMode(E_LAMP, OUTPUT);
  pinMode(F_LAMP, OUTPUT);
  pinMode(G_LAMP, OUTPUT);
  pinMode(H_LAMP, OUTPUT);
  pinMode(I_LAMP, OUTPUT);
  pinMode(J_LAMP, OUTPUT);
  pinMode(K_LAMP, OUTPUT);
  pinMode(L_LAMP, OUTPUT);
  pinMode(M_LAMP, OUTPUT);
}

void loop() {
  digitalWrite(A_LAMP, HIGH); digitalWrite(B_LAMP, HIGH); digitalWrite(C_LAMP, HIGH);
  digitalWrite(D_LAMP, HIGH); digitalWrite(E_LAMP, HIGH); digitalWrite(F_LAMP, HIGH);
  digitalWrite(G_LAMP, HIGH); digitalWrite(H_LAMP, HIGH); digitalWrite(I_LAMP, HIGH);
  digitalWrite(J_LAMP, HIGH); digitalWrite(K_LAMP, HIGH); digitalWrite(L_LAMP, HIGH);
  digitalWrite(M_LAMP, HIGH);
  delay(30);
  digitalWrite(A_LAMP, LOW); digitalWrite(B_LAMP, LOW); digitalWrite(C_LAMP, LOW);
  digitalWrite(D_LAMP, LOW); digitalWrite(E_LAMP, LOW); digitalWrite(F_LAMP, LOW);
  digitalWrite(G_LAMP, LOW); digitalWrite(H_LAMP, LOW); digitalWrite(I_LAMP, LOW);
  digitalWrite(J_LAMP, LOW); digitalWrite(K_LAMP, LOW); digitalWrite(L_LAMP, LOW);
  digitalWrite(M_LAMP, LOW);
  delay(30);
}
