package energy

// JoulesPerKilocalorie is the thermochemical kilocalorie, exact by definition (ISO
// 80000-5).
const JoulesPerKilocalorie = 4184

// Kilocalories returns an energy in J as kcal, J/kg as kcal/kg, W as kcal/s.
func Kilocalories(joules float64) float64 { return joules / JoulesPerKilocalorie }

// Joules returns an energy in kcal as J: the inverse of Kilocalories.
func Joules(kilocalories float64) float64 { return kilocalories * JoulesPerKilocalorie }
