// Package energy turns metabolic power in W/kg and work in J/kg into oxygen,
// kilocalories, carbohydrate and fat, and estimates how long a store of glycogen lasts.
//
// Powers are metabolic: braking is effort of the legs that uses no oxygen, so effort
// power is the wrong figure to give. Each function says whether it takes net power,
// above standing, or gross power, with standing in it. Substrates are burnt out of
// gross power.
//
// # Conventions
//
// Volumes of gas are at standard temperature and pressure, dry. Carbohydrate is counted
// as glucose, 15.56 kJ/g: the same carbohydrate weighs a tenth less as glycogen or
// starch, which is well inside the spread of everything here. Protein, a few per cent of
// the energy and more when glycogen is low, is left out.
//
// A negative or infinite number where only a positive one can be meant gives NaN, and so
// does NaN; nothing panics and nothing allocates. Differences of energy may have either
// sign. A quantity that differs between people comes as Bounds.
//
// # How far to trust it
//
// The step from power to oxygen is good to 1 %, the cost of running itself differs
// between people by 20 %, and the share of carbohydrate at a given intensity is hardly
// known for one person without a laboratory: see Crossover. Glycogen is estimated from
// body mass alone. Print Caution beside any of it.
//
// # What it is not for
//
// Weight control, children, pregnancy, diabetes or any other condition in which what
// somebody eats is a medical matter.
package energy

// Caution is to be shown wherever figures of this package are printed.
const Caution = "Energy, carbohydrate and glycogen figures are estimates with a wide spread between people. " +
	"Eat and drink in the race what you have rehearsed in training. " +
	"If you have diabetes or another medical condition, are pregnant or take medicines, follow your doctor or dietitian instead. " +
	"If you feel faint, confused or unwell, stop and ask for help."
