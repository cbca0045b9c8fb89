package fuel

import "time"

// A Table is what to eat and drink in a race, and where it comes from. Grams are of
// carbohydrate, fluid is in ml, distances are in m from the start and times
// are gun times, in JSON in nanoseconds.
type Table struct {
	Course string        `json:"course"` // its name, if it has one
	Length float64       `json:"length"` // m
	Start  time.Time     `json:"start,omitzero"`
	Finish time.Duration `json:"finish"` // gun time

	Duration time.Duration `json:"duration"` // from the start line to the finish, halts included

	// Rate is the range of carbohydrate in g/h and Suggested what is planned with, in whole
	// portions in g, one every Interval if one is due. What comes of it is Total.PerHour.
	Rate      Range         `json:"carbohydrate_per_hour"`
	Suggested float64       `json:"suggested_per_hour"`
	Interval  time.Duration `json:"interval"`
	Portion   float64       `json:"portion"`

	Sections []Section `json:"sections"`
	Intakes  []Intake  `json:"intakes"`
	Total    Total     `json:"total"`

	Energy   Energy    `json:"energy"`
	Cautions []Caution `json:"cautions"` // to be shown beside the table
	Notes    []Caution `json:"notes"`
}

// A Section is the way from the start or an aid station to the next one or the finish. The
// halt at its beginning belongs to it.
type Section struct {
	FromName string        `json:"from_name"`
	ToName   string        `json:"to_name"`
	From     float64       `json:"from"`
	To       float64       `json:"to"`
	Duration time.Duration `json:"duration"`

	// Carbohydrate is the range for the section in g: that by the hour times its duration.
	// An end is moved where the whole portions due in the section lie outside of it, as one may
	// fall a minute after a station.
	Carbohydrate Range   `json:"carbohydrate"`
	Eat          float64 `json:"eat"`   // g in whole portions, those of Intakes
	Short        float64 `json:"short"` // g left out because it cannot be carried

	WBGT  float64 `json:"wbgt"`  // °C, or what stands for it
	Fluid Range   `json:"fluid"` // ml, by thirst, whether it can be carried or not

	// FluidShort is by how much, in ml, the high end is above what can be carried: above
	// Options.MaxFluid or, where that is not set, two litres.
	FluidShort float64 `json:"fluid_short"`

	// PickUp is taken at From, g, and Carry what is carried from there: all that is
	// eaten until To, where nothing is left.
	PickUp float64 `json:"pick_up"`
	Carry  float64 `json:"carry"`
}

// An Intake is something eaten.
type Intake struct {
	Time     time.Duration `json:"time"`
	Distance float64       `json:"distance"`
	Grams    float64       `json:"grams"`
}

// A Total is the sum over all sections.
type Total struct {
	Carbohydrate Range   `json:"carbohydrate"`
	Eat          float64 `json:"eat"`
	PerHour      float64 `json:"per_hour"` // Eat over the whole duration, g/h
	Short        float64 `json:"short"`
	Fluid        Range   `json:"fluid"`
}

// Energy is what the race costs, standing included, as context: it cannot be eaten back on
// the way and need not be.
type Energy struct {
	Mass         float64 `json:"mass"` // kg that the figures are for
	Kilocalories float64 `json:"kilocalories"`
	Kilojoules   float64 `json:"kilojoules"`
	Burnt        float64 `json:"burnt"` // g of carbohydrate per hour at the usual share
}
