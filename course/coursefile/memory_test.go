package coursefile

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"runtime"
	"runtime/debug"
	"testing"
	"time"
)

// stream is a GPX file of one track that is made as it is read, so that nothing but the
// reader's own memory is measured.
type stream struct {
	points, next int
	left         bytes.Buffer
	bytes        int64
}

func (s *stream) Read(p []byte) (int, error) {
	for s.left.Len() < len(p) && s.next <= s.points+1 {
		switch i := s.next - 1; {
		case s.next == 0:
			s.left.WriteString("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<gpx version=\"1.1\" xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><name>Ridge Round</name><trkseg>\n")
		case s.next == s.points+1:
			s.left.WriteString("</trkseg></trk></gpx>\n")
		default:
			fmt.Fprintf(&s.left, "<trkpt lat=\"%.6f\" lon=\"%.6f\"><ele>%.1f</ele><time>2020-06-01T%02d:%02d:%02dZ</time></trkpt>\n",
				50+0.02*math.Sin(float64(i)/700), -20+0.01*math.Sin(float64(i)/500), 600+300*math.Sin(float64(i)/1000), i/3600%24, i/60%60, i%60)
		}
		s.next++
	}
	n, err := s.left.Read(p)
	s.bytes += int64(n)
	if n == 0 && s.next > s.points+1 {
		return 0, io.EOF
	}
	return n, err
}

// TestPeakMemory reads 50 MB and samples what the heap holds in use. The bar is 14 times
// the size of the file; the gate gathers the points itself and stays below the 5 asserted
// here, which is the measured 2 with room for the collector's timing.
func TestPeakMemory(t *testing.T) {
	if testing.Short() {
		t.Skip("seconds")
	}
	runtime.GC()
	debug.FreeOSMemory()
	var before runtime.MemStats
	runtime.ReadMemStats(&before)
	stop, peak := make(chan bool), make(chan uint64)
	go func() {
		most := uint64(0)
		for {
			select {
			case <-stop:
				peak <- most
				return
			case <-time.After(20 * time.Millisecond):
				var m runtime.MemStats
				runtime.ReadMemStats(&m)
				most = max(most, m.HeapInuse)
			}
		}
	}()
	s := &stream{points: 540_000}
	_, err := ReadGPX(s, Options{Length: 100_000})
	close(stop)
	most := <-peak - before.HeapInuse
	if err != nil {
		t.Fatal(err)
	}
	ratio := float64(most) / float64(s.bytes)
	t.Logf("%.1f MB read, %.1f MB of heap at the peak: %.2f times", float64(s.bytes)/1e6, float64(most)/1e6, ratio)
	if s.bytes < 50e6 || ratio > 5 {
		t.Errorf("%d bytes, ratio %.2f", s.bytes, ratio)
	}
}
