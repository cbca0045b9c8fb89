package main

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"
)

// targets are finish times, given as H:MM:SS,...
type targets []time.Duration

func (t *targets) String() string { return "" }

// Set reads the times.
func (t *targets) Set(s string) error {
	*t = nil
	for _, item := range strings.Split(s, ",") {
		total, parts := 0, strings.Split(strings.TrimSpace(item), ":")
		for i, part := range parts {
			n, err := strconv.ParseUint(part, 10, 16)
			if err != nil || len(parts) != 3 || i > 0 && (n > 59 || len(part) != 2) {
				return errors.New("not times such as 4:30:00,5:00:00")
			}
			total = total*60 + int(n)
		}
		*t = append(*t, time.Duration(total)*time.Second)
	}
	return nil
}

// clock writes a duration as H:MM:SS.
func clock(d time.Duration) string {
	sign := ""
	if d < 0 {
		sign, d = "-", -d
	}
	s := int64(d.Round(time.Second).Seconds())
	return fmt.Sprintf("%s%d:%02d:%02d", sign, s/3600, s/60%60, s%60)
}
