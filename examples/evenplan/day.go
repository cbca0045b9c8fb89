package main

import (
	"errors"
	"flag"
	"fmt"
	"math"
	"strings"
	"time"

	"isoeffort.example/course"
	"isoeffort.example/course/coursefile"
	"isoeffort.example/effort"
	"isoeffort.example/plan"
	"isoeffort.example/plan/story"
)

// dayOptions are what the command line says of the race day, besides plan.Race: what
// needs the course to be known.
type dayOptions struct {
	landmarks string
	marks     []coursefile.Landmark // read from the file
	leaving   bool
	stops     []stopAt
	night     clockTimes
	weather   string
	told      []story.Mark
	passages  []passageAt
	recorded  string
}

// stopAt is a halt at a place that is a number of kilometres or a landmark's name.
type stopAt struct {
	place string
	plan.Stop
}

// dayFlags are those for the race day.
func (o *options) dayFlags(fs *flag.FlagSet) {
	fs.StringVar(&o.day.landmarks, "landmarks", "", "landmarks with their cutoffs: a CSV `file` with the columns name, distance_m, kind (place, station or top), cutoff (H:MM:SS since the first gun, or HH:MM o'clock) and note")
	fs.BoolVar(&o.day.leaving, "cutoffs-on-leaving", false, "runners must have left a place by its cutoff, not only reached it")
	fs.DurationVar(&o.race.Wave, "wave", 0, "how long after the race's first gun your own goes, a `duration`")
	fs.Func("crowd", "a full start: the greatest speed behind the line and where it ends to hold, as `M/S,METRES`, such as 1.8,4000", func(s string) error {
		v, err := numbers(s, 2)
		if err != nil || !(v[0] >= 0.1 && v[0] <= 10 && v[1] > 0 && v[1] <= 1e6) {
			return errors.New("not a speed of 0.1 to 10 m/s and a distance up to 1000 km, such as 1.8,4000")
		}
		o.race.Surroundings.Crowd = effort.Crowd{Speed: v[0], Over: v[1]}
		return nil
	})
	fs.Func("stop", "a halt, as `PLACE=DURATION[:NOTE]`, the place being kilometres or a landmark's name: 58.2=10m or \"Old Barn=10m:dry socks\"; may be given again", func(s string) error {
		stop, err := readStop(s)
		o.day.stops = append(o.day.stops, stop)
		return err
	})
	fs.DurationVar(&o.race.Stations.Each, "station-stop", 0, "halt at every aid station of the course, a `duration`")
	fs.DurationVar(&o.race.Stations.PerHour, "station-stop-per-hour", 0, "what such a halt takes more for each hour to the next station, a `duration`")
	fs.Func("mark", "what the profile does not show, for the briefing, as `KIND=FROM-TO[:NOTE]` in kilometres, the kind being exposed, shaded, surface or crowded: exposed=41-47; may be given again", func(s string) error {
		m, err := readMark(s)
		o.day.told = append(o.day.told, m)
		return err
	})
	o.aimFlags(fs)
	o.walkFlags(fs)
	fs.StringVar(&o.day.weather, "weather", "", "the weather of the day: a CSV `file` with the columns time (HH:MM), temperature_c, humidity_percent, and optional shade (yes or no) and wbgt_c; needs -start, and charges heat")
	fs.Var(&o.day.night, "night", "hours of dark as `HH:MM-HH:MM`, with -night-factor")
	fs.Float64Var(&o.nightFactor, "night-factor", 1, "`share` of your capability that is left in the dark, for those who know theirs")
}

// aimFlags are those for what the plan is made for besides a finish time.
func (o *options) aimFlags(fs *flag.FlagSet) {
	fs.Float64Var(&o.race.Share, "share", 0, "plan for this `share` of the effort budget instead of a time, up to 1")
	fs.Func("make-cutoffs", "plan for the least effort that is this early at every cutoff, a `duration` such as 20m", func(s string) (err error) {
		o.race.MakeCutoffs = true
		if o.race.InHand, err = time.ParseDuration(s); err != nil || o.race.InHand < 0 {
			return errors.New("not a duration such as 20m")
		}
		return nil
	})
	fs.Func("standards", "plan for the fastest of these times that the budget allows, as `NAME=H:MM:SS,...`", func(s string) error {
		for _, item := range strings.Split(s, ",") {
			name, text, ok := strings.Cut(item, "=")
			var c clock
			if !ok || c.Set(strings.TrimSpace(text)) != nil {
				return fmt.Errorf("%q is not a name with = and a time such as 9:00:00", item)
			}
			o.race.Standards = append(o.race.Standards, plan.Standard{Name: strings.TrimSpace(name), Time: time.Duration(c)})
		}
		return nil
	})
}

// walkFlags are those for planned walks.
func (o *options) walkFlags(fs *flag.FlagSet) {
	fs.DurationVar(&o.race.Walks.Every, "walk-every", 0, "no longer than this without a walk, a `duration` such as 30m; walks go where they cost least")
	fs.DurationVar(&o.race.Walks.Length, "walk-length", 0, "how long such a walk is, a `duration` of whole minutes (default 3m)")
	fs.BoolVar(&o.race.Walks.Fixed, "walk-by-watch", false, "start those walks by the watch, whatever the ground, as a group does")
	fs.Func("walk-climb", "`name` of a climb to be walked whole; may be given again", func(s string) error {
		o.race.WalkClimbs = append(o.race.WalkClimbs, s)
		return nil
	})
}

// readStop reads PLACE=DURATION[:NOTE].
func readStop(s string) (stopAt, error) {
	place, text, ok := strings.Cut(s, "=")
	text, note, _ := strings.Cut(text, ":")
	d, err := time.ParseDuration(strings.TrimSpace(text))
	if !ok || err != nil || d <= 0 || strings.TrimSpace(place) == "" {
		return stopAt{}, errors.New("not a place with = and a duration, such as 58.2=10m")
	}
	return stopAt{strings.TrimSpace(place), plan.Stop{Duration: d, Note: strings.TrimSpace(note)}}, nil
}

// readMark reads KIND=FROM-TO[:NOTE].
func readMark(s string) (story.Mark, error) {
	kind, text, _ := strings.Cut(s, "=")
	text, note, _ := strings.Cut(text, ":")
	from, to, _ := strings.Cut(text, "-")
	v, err := numbers(from+","+to, 2)
	if err == nil && v[0] < v[1] {
		for k := story.Exposed; k <= story.Crowded; k++ {
			if k.String() == strings.TrimSpace(kind) {
				return story.Mark{From: 1000 * v[0], To: 1000 * v[1], Kind: k, Note: strings.TrimSpace(note)}, nil
			}
		}
	}
	return story.Mark{}, errors.New("not exposed, shaded, surface or crowded with = and kilometres, such as exposed=41-47")
}

// numbers reads so many numbers between commas.
func numbers(s string, count int) ([]float64, error) {
	parts := strings.Split(s, ",")
	if len(parts) != count {
		return nil, errors.New("wrong count of numbers")
	}
	values := make([]float64, count)
	for i, part := range parts {
		v, err := number(strings.TrimSpace(part))
		if err != nil {
			return nil, err
		}
		values[i] = v
	}
	return values, nil
}

// readLandmarks reads the list of landmarks, before the course that they stand on.
func (o *options) readLandmarks() (err error) {
	if o.day.landmarks != "" {
		o.day.marks, err = coursefile.OpenLandmarks(o.day.landmarks, coursefile.Options{})
	}
	return err
}

// placeDay puts cutoffs and stops on the course.
func (o *options) placeDay(c *course.Course) error {
	for _, l := range o.day.marks {
		if l.Cutoff.IsZero() {
			continue
		}
		if l.Cutoff.Clock && o.race.Start.IsZero() {
			return fmt.Errorf("%s: the cutoff of %q is a time of day: give -start", o.day.landmarks, l.Name)
		}
		o.race.Cutoffs = append(o.race.Cutoffs, plan.Cutoff{
			Name: l.Name, Distance: math.Min(l.Distance, c.Length()),
			Time: l.Cutoff.After(o.race.Start.Add(-o.race.Wave)), Departure: o.day.leaving,
		})
	}
	for _, s := range o.day.stops {
		var err error
		if s.Distance, err = placeOn(c, s.place); err != nil {
			return fmt.Errorf("evenplan: -stop: %w", err)
		}
		o.race.Stops = append(o.race.Stops, s.Stop)
	}
	return nil
}
