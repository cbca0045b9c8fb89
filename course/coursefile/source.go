package coursefile

import (
	"bufio"
	"bytes"
	"errors"
	"io"
	"strings"

	"golang.org/x/net/html/charset"
	"golang.org/x/text/encoding/unicode"
	"golang.org/x/text/transform"
)

// source reads a file up to a limit. It remembers the error that ended it, since the
// parsers above it put their own in its place.
type source struct {
	r     io.Reader
	limit int64 // bytes
	read  int64
	err   error
}

func (s *source) Read(p []byte) (int, error) {
	if s.err != nil {
		return 0, s.err
	}
	n, err := s.r.Read(p)
	s.read += int64(n)
	switch {
	case s.read > s.limit:
		s.err = because(ErrTooLarge, "more than %d bytes", s.limit)
		return 0, s.err
	case err != nil && !errors.Is(err, io.EOF):
		s.err = err
	}
	return n, err
}

// text returns the source as UTF-8 without a byte order mark, if it begins with one of
// UTF-8 or UTF-16, and else as it is.
func (s *source) text() io.Reader {
	r := bufio.NewReaderSize(s, 1<<16)
	start, _ := r.Peek(3)
	switch {
	case bytes.HasPrefix(start, []byte("\xef\xbb\xbf")):
		_, _ = r.Discard(3)
	case bytes.HasPrefix(start, []byte("\xff\xfe")), bytes.HasPrefix(start, []byte("\xfe\xff")):
		utf16 := unicode.UTF16(unicode.LittleEndian, unicode.ExpectBOM)
		return transform.NewReader(r, utf16.NewDecoder())
	}
	return r
}

// recode reads the encoding that an XML declaration names. UTF-16 is read as it is:
// had the file been in it still, the declaration could not have been read.
func recode(label string, r io.Reader) (io.Reader, error) {
	name := strings.ToLower(label)
	if strings.HasPrefix(name, "utf-16") || strings.HasPrefix(name, "ucs-2") {
		return r, nil
	}
	recoded, err := charset.NewReaderLabel(label, r)
	if err != nil {
		return nil, because(ErrEncoding, "%s", quoted(label))
	}
	return recoded, nil
}
