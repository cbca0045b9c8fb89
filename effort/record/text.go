package record

import (
	"bytes"
	"fmt"
	"io"
	"unicode/utf8"

	"isoeffort.example/internal/csvtext"
)

// maxSize in bytes is far above any study and far below what would exhaust a machine.
const maxSize = 64 << 20

// readText returns the whole of a file without its byte order mark, and the line of the
// first thing that is not text.
func readText(r io.Reader) (text []byte, line int, err error) {
	text, err = io.ReadAll(io.LimitReader(r, maxSize+1))
	if err != nil {
		return nil, 0, err
	}
	if len(text) > maxSize {
		return nil, 0, ErrTooLarge
	}
	if bytes.HasPrefix(text, []byte("\xff\xfe")) || bytes.HasPrefix(text, []byte("\xfe\xff")) {
		return nil, 1, fmt.Errorf("%w: it is UTF-16; save it as CSV in UTF-8", ErrText)
	}
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	if at := notText(text); at < len(text) {
		line = 1 + bytes.Count(text[:at], []byte{'\n'})
		return nil, line, fmt.Errorf("%w: byte 0x%02x; save it as CSV in UTF-8", ErrText, text[at])
	}
	return text, 0, nil
}

// notText returns the index of the first NUL or byte that is not UTF-8, or len(text).
func notText(text []byte) int {
	end := len(text)
	if nul := bytes.IndexByte(text, 0); nul >= 0 {
		end = nul
	}
	if utf8.Valid(text[:end]) {
		return end
	}
	for i := 0; i < end; {
		r, size := utf8.DecodeRune(text[i:end])
		if r == utf8.RuneError && size == 1 {
			return i
		}
		i += size
	}
	return end
}

// quote puts a field in a message.
func quote(s string) string { return csvtext.Quote(s) }
