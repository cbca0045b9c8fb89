package chart

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"image"
	"image/png"
	"io"
	"math"
)

// DefaultDPI is what a dpi of 0 stands for: a print at A5 shows no steps.
const DefaultDPI = 200

// Limits of a PNG.
const (
	MinDPI, MaxDPI = 72, 1200
	MaxPixels      = 100_000_000
)

// PNG writes the figure as a grey PNG of so many dots per inch, MinDPI to MaxDPI, which it
// states, so that it prints at its size. 0 means DefaultDPI. Signs that Liberation Sans
// lacks are drawn as boxes, and Hebrew and Arabic are not set from right to left. The error
// wraps ErrOption, for more than MaxPixels too, or is the writer's.
func (f *Figure) PNG(w io.Writer, dpi float64) error {
	if dpi == 0 {
		dpi = DefaultDPI
	}
	if !(dpi >= MinDPI && dpi <= MaxDPI) {
		return fmt.Errorf("chart: %g dots per inch, not %d to %d: %w", dpi, MinDPI, MaxDPI, ErrOption)
	}
	scale := dpi / 72
	wide, high := math.Round(f.width*scale), math.Round(f.height*scale)
	if wide*high > MaxPixels {
		return fmt.Errorf("chart: %.0f by %.0f dots, more than %d: %w", wide, high, MaxPixels, ErrOption)
	}
	paper := newSheet(int(wide), int(high), scale)
	for i := range f.marks {
		paper.draw(&f.marks[i])
	}
	var b bytes.Buffer
	if err := png.Encode(&b, paper.image); err != nil {
		return err
	}
	_, err := w.Write(withDensity(b.Bytes(), dpi))
	return err
}

// withDensity adds the chunk pHYs, pixels per metre, behind the header of a PNG: 8 bytes of
// signature and 25 of IHDR. (PNG, third edition, W3C 2025, 11.3.4.3; from memory.)
func withDensity(file []byte, dpi float64) []byte {
	const header = 8 + 25
	dots := uint32(math.Round(dpi / 0.0254))
	chunk := binary.BigEndian.AppendUint32(nil, 9)
	chunk = append(chunk, "pHYs"...)
	chunk = binary.BigEndian.AppendUint32(chunk, dots)
	chunk = binary.BigEndian.AppendUint32(chunk, dots)
	chunk = append(chunk, 1)
	chunk = binary.BigEndian.AppendUint32(chunk, crc32.ChecksumIEEE(chunk[4:]))
	return append(append(append([]byte(nil), file[:header]...), chunk...), file[header:]...)
}

// whitePaper returns an image that is all white.
func whitePaper(wide, high int) *image.Gray {
	paper := image.NewGray(image.Rect(0, 0, wide, high))
	for i := range paper.Pix {
		paper.Pix[i] = 255
	}
	return paper
}
