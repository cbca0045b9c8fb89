package chart_test

import (
	"bytes"
	"encoding/binary"
	"errors"
	"image"
	"image/png"
	"io"
	"math"
	"strings"
	"testing"

	"isoeffort.example/plan/chart"
)

func TestPNG(t *testing.T) {
	t.Parallel()
	f, err := chart.Profile(planFor(t, mountain(t), runners[2]), chart.Options{})
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := f.PNG(&b, 150); err != nil {
		t.Fatal(err)
	}
	if i := bytes.Index(b.Bytes(), []byte("pHYs")); i < 0 || binary.BigEndian.Uint32(b.Bytes()[i+4:]) != 5906 { // 150/0.0254 = 5905.5
		t.Error("the PNG does not say its 150 dots per inch")
	}
	img, err := png.Decode(&b)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := img.Bounds().Size(), (image.Point{1240, 874}); got != want { // 210 and 148 mm
		t.Errorf("%v dots, want %v", got, want)
	}
	// Each text of the SVG has ink where it should stand; digits stand on their line.
	scale := 150.0 / 72
	for _, l := range checkLaws(t, f).labels {
		r := image.Rect(int(l.x0*scale), int(l.top*scale), int(math.Ceil(l.x1*scale)), int(math.Ceil(l.foot*scale)))
		if dark := darkest(img, r); dark > 60 && l.text != "–" {
			t.Errorf("%q has no ink: the darkest dot is %d", l.text, dark)
		}
	}
	for _, l := range checkLaws(t, f).labels {
		if strings.Trim(l.text, "0123456789") != "" {
			continue
		}
		below := image.Rect(int(l.x0*scale), int(math.Ceil(l.y*scale))+1, int(l.x1*scale), int(l.foot*scale))
		above := image.Rect(int(l.x0*scale), int(l.top*scale), int(math.Ceil(l.x1*scale)), int((l.y-l.size/4)*scale))
		if darkest(img, below) < 255 || darkest(img, above) > 60 {
			t.Errorf("%q does not stand on its line: %d below it, %d above", l.text, darkest(img, below), darkest(img, above))
		}
	}
	if dark := darkest(img, image.Rect(0, 0, 1240, 25)); dark < 255 {
		t.Errorf("the margin has ink: %d", dark)
	}
	for _, dpi := range []float64{-1, 10, 5000, math.NaN(), math.Inf(1)} {
		if err := f.PNG(io.Discard, dpi); !errors.Is(err, chart.ErrOption) {
			t.Errorf("%g dpi: %v", dpi, err)
		}
	}
	wide, err := chart.Profile(planFor(t, short(t), runners[0]), chart.Options{Width: 1200, Height: 1200})
	if err != nil {
		t.Fatal(err)
	}
	if err := wide.PNG(io.Discard, 1200); !errors.Is(err, chart.ErrOption) {
		t.Errorf("a PNG of 3 billion dots: %v", err)
	}
}

func darkest(img image.Image, r image.Rectangle) uint32 {
	dark := uint32(255)
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			g, _, _, _ := img.At(x, y).RGBA()
			dark = min(dark, g>>8)
		}
	}
	return dark
}

type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

func TestWriterErrors(t *testing.T) {
	t.Parallel()
	f, err := chart.Profile(planFor(t, short(t), runners[0]), chart.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if err := f.SVG(failing{}); !errors.Is(err, io.ErrShortWrite) {
		t.Error(err)
	}
	if err := f.PNG(failing{}, 72); !errors.Is(err, io.ErrShortWrite) {
		t.Error(err)
	}
}
