package chart

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"isoeffort.example/plan"
)

// Sizes of paper that figures fit, in mm: A5 lying, the default.
const (
	DefaultWidth  = 210
	DefaultHeight = 148
)

// Limits of a figure's size, mm. Below, labels of 7 pt leave no room for the drawing.
const (
	MinWidth, MaxWidth   = 148, 1200
	MinHeight, MaxHeight = 105, 1200
)

// Options of a figure. The zero value is ready: A5 lying, metres and kilometres, English.
type Options struct {
	// Width and Height are the size in mm, MinWidth to MaxWidth and MinHeight to
	// MaxHeight. 0 means DefaultWidth and DefaultHeight. The profile of a flat course is less
	// high than that.
	Width, Height float64

	// Imperial draws miles and feet.
	Imperial bool

	Words Words
}

// checked returns the options with their defaults, or why they cannot be.
func (o Options) checked() (Options, error) {
	if o.Width == 0 {
		o.Width = DefaultWidth
	}
	if o.Height == 0 {
		o.Height = DefaultHeight
	}
	if !(o.Width >= MinWidth && o.Width <= MaxWidth) {
		return o, fmt.Errorf("chart: width of %g mm, not %d to %d: %w", o.Width, MinWidth, MaxWidth, ErrOption)
	}
	if !(o.Height >= MinHeight && o.Height <= MaxHeight) {
		return o, fmt.Errorf("chart: height of %g mm, not %d to %d: %w", o.Height, MinHeight, MaxHeight, ErrOption)
	}
	o.Words = o.Words.filled()
	return o, nil
}

// units are those of the texts: metres in each, and names.
type units struct {
	distance, height float64
	long, short      string
	decimal          string
}

func (o Options) units() units {
	if o.Imperial {
		return units{float64(plan.EveryMile), 0.3048, o.Words.Mile, o.Words.Foot, o.Words.Decimal}
	}
	return units{1000, 1, o.Words.Km, o.Words.Metre, o.Words.Decimal}
}

// number writes a number with so many decimals.
func (u units) number(x float64, decimals int) string {
	s := strconv.FormatFloat(x, 'f', decimals, 64)
	if strings.Trim(s, "-0.") == "" { // no −0
		s = strings.TrimPrefix(s, "-")
	}
	return strings.Replace(s, ".", u.decimal, 1)
}

func (u units) along(metres float64) string  { return u.number(metres/u.distance, 1) }
func (u units) places(metres float64) string { return u.along(metres) + " " + u.long }
func (u units) tall(metres float64) string   { return u.number(metres/u.height, 0) + " " + u.short }

// hms writes a duration of the race to the second.
func hms(d time.Duration) string {
	s := int64(math.Round(d.Seconds()))
	sign := ""
	if s < 0 {
		sign, s = "−", -s
	}
	return fmt.Sprintf("%s%d:%02d:%02d", sign, s/3600, s/60%60, s%60)
}

// ms writes a short duration, as in 8:05, or 1:08:05 from an hour on.
func ms(d time.Duration) string {
	s := int64(math.Round(d.Seconds()))
	if s >= 3600 {
		return hms(d)
	}
	return fmt.Sprintf("%d:%02d", s/60, s%60)
}

// signed writes a difference from the plan, positive for late.
func (w Words) signed(d time.Duration) string {
	d = d.Round(time.Second)
	switch {
	case d == 0:
		return w.OnPlan
	case d < 0:
		return "−" + ms(-d)
	}
	return "+" + ms(d)
}
