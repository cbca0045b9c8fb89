package energy_test

import (
	"fmt"
	"time"

	"isoeffort.example/effort"
	"isoeffort.example/effort/energy"
)

// A textbook's resting adult, computed by hand from Weir 1949: 0.25 l of oxygen and 0.20 l
// of carbon dioxide a minute are 0.985 + 0.221 kcal.
func ExampleWeir() {
	fmt.Printf("%.3f kcal/min\n", energy.Weir(0.25, 0.20))
	// Output: 1.206 kcal/min
}

// Lusk 1924, from memory: the energy of oxygen in kcal/l; after it Weir's. They differ by
// 0.7 % in fat and meet in carbohydrate.
func ExampleOxygenEnergyAt() {
	lusk := map[float64]float64{0.71: 4.690, 0.80: 4.801, 0.90: 4.924, 1.00: 5.047}
	for _, rer := range []float64{0.71, 0.80, 0.90, 1.00} {
		fmt.Printf("%.2f %.3f %.3f\n", rer, lusk[rer], energy.OxygenEnergyAt(rer)*1000/energy.JoulesPerKilocalorie)
	}
	// Output:
	// 0.71 4.690 4.726
	// 0.80 4.801 4.826
	// 0.90 4.924 4.936
	// 1.00 5.047 5.047
}

// The running equation of the American College of Sports Medicine, from memory, on the
// level: 0.2 ml/(kg m) and 3.5 at rest, at 180 m/min 39.5 ml/(kg min). Its net cost, in
// J/(kg m), is 16 % more than that of the elite runners behind effort.RunningCost.
func ExamplePower() {
	gross := 0.2*180 + energy.RestingOxygen
	fmt.Printf("%.1f ml/(kg min), %.1f W/kg gross\n", gross, energy.Power(gross, 0.96))
	fmt.Printf("%.2f J/(kg m), there %.2f\n", 0.2*energy.OxygenEnergy, effort.RunningCost(0))
	// Output:
	// 39.5 ml/(kg min), 13.8 W/kg gross
	// 4.18 J/(kg m), there 3.60
}

// Running costs about a kilocalorie per kilogram and kilometre (Margaria et al. 1963, J
// Appl Physiol 18:367, from memory): with effort.RunningCost it is 0.86 net, and 0.98 with
// standing at 3 m/s.
func ExampleKilocalories() {
	net := 1000 * effort.RunningCost(0)
	standing := 1000. / 3 * effort.StandingPower
	fmt.Printf("%.2f %.2f\n", energy.Kilocalories(net), energy.Kilocalories(net+standing))
	// Output: 0.86 0.98
}

// Lusk 1924, from memory: percent of energy from carbohydrate; after it that of Péronnet &
// Massicotte's equations (1991, from memory), about 1 point more.
func ExampleCarbohydrateShare() {
	lusk := map[float64]float64{0.75: 15.6, 0.80: 33.4, 0.85: 50.7, 0.90: 67.5, 0.95: 84.0}
	for _, rer := range []float64{0.75, 0.80, 0.85, 0.90, 0.95} {
		fmt.Printf("%.2f %.1f %.1f\n", rer, lusk[rer], 100*energy.CarbohydrateShare(rer))
	}
	// Output:
	// 0.75 15.6 16.7
	// 0.80 33.4 34.3
	// 0.85 50.7 51.6
	// 0.90 67.5 68.4
	// 0.95 84.0 84.9
}

// The usual runner of 14.5 W/kg hour power at three quarters of it, on the level.
func ExampleCrossover() {
	var c energy.Crossover
	const power, hour = 0.75 * 14.5, 14.5
	x := c.Uptake(power, hour)
	r := c.Range(x)
	fmt.Printf("%.2f of maximal uptake: %.2f carbohydrate, 90 %% of people %.2f to %.2f\n", x, c.Share(x), r.Low, r.High)
	s := c.Substrates(power, hour)
	fmt.Printf("%.1f g/(kg h) carbohydrate, %.2f g/(kg h) fat\n", s.Carbohydrate, s.Fat)
	// Output:
	// 0.66 of maximal uptake: 0.60 carbohydrate, 90 % of people 0.38 to 0.78
	// 1.7 g/(kg h) carbohydrate, 0.45 g/(kg h) fat
}

// How long glycogen lasts that runner, of 70 kg, without food and on 60 g/h.
func ExampleStore_Lasts() {
	var c energy.Crossover
	use := c.Carbohydrate(0.75*14.5, 14.5)
	for _, intake := range []float64{0, 60} {
		h := energy.UsualStore().Lasts(use, intake, 70)
		fmt.Printf("%2.0f g/h: %.1f to %.1f h\n", intake, h.Low, h.High)
	}
	fmt.Println(energy.Caution)
	// Output:
	//  0 g/h: 1.6 to 6.0 h
	// 60 g/h: 2.0 to 21.2 h
	// Energy, carbohydrate and glycogen figures are estimates with a wide spread between people. Eat and drink in the race what you have rehearsed in training. If you have diabetes or another medical condition, are pregnant or take medicines, follow your doctor or dietitian instead. If you feel faint, confused or unwell, stop and ask for help.
}

// Jeukendrup 2014, from memory: to 60 g/h for two to three hours, to 90 g/h beyond.
func ExampleIntakeRange() {
	fmt.Println(energy.IntakeRange(150*time.Minute, true))
	fmt.Println(energy.IntakeRange(9*time.Hour, true))
	fmt.Println(energy.IntakeRange(9*time.Hour, false))
	// Output:
	// {30 60}
	// {60 90}
	// {30 60}
}
