package weather

// What heat costs: between the first two, in °C of WBGT, results are best; above, each °C
// takes a share LossPerDegree, the middle of the 0.003 to 0.004 that the source found.
//
// They come from fast runners. Slower ones are out for longer and lose more (Ely et al.
// 2007, Med Sci Sports Exerc 39:487, for the direction). The loss is a mean over
// races that were held, far from the heat in which they are stopped: it is no measure of
// safety, see HeatCaution.
//
// Source: Mantzios et al. 2022, Med Sci Sports Exerc 54:153, 1258 races. From memory, its
// abstract gives the same loss for each °C below BestWBGTLow; whether to use it there is
// the caller's choice.
const (
	BestWBGTLow   = 7.5
	BestWBGTTop   = 15.0
	LossPerDegree = 0.0035
)

// HeatCaution is to be shown wherever a plan makes an allowance for heat.
const HeatCaution = "Heat can make you gravely ill, at any pace and however fit you are. " +
	"Start slower than planned and slow down further as it gets hotter. " +
	"If you feel dizzy, faint, sick, chilled or confused, have a bad headache or cramps, or stumble: " +
	"stop, get into the shade, cool down and ask for help. " +
	"Someone who is confused or collapses in the heat is an emergency: call for medical help and " +
	"cool them with water at once. " +
	"Drink to thirst, since too much water is dangerous too. " +
	"Do not race in heat with a fever or an illness, and ask a doctor first if you take medicine, " +
	"have a health condition or had trouble in heat before. " +
	"What the race's medical team, its organisers and local rules say goes before any plan, " +
	"and a plan's allowance for heat does not mean that it is safe to run."
