package coursefile

import (
	"bufio"
	"bytes"
	"compress/gzip"
	"errors"
	"io"
	"strings"

	"golang.org/x/net/html/charset"
	"golang.org/x/text/encoding/unicode"
	"golang.org/x/text/transform"
)

// A source is the text of a file, unpacked if it is packed, as UTF-8 if it begins like
// UTF-16, and with line breaks in the place of lone carriage returns. It remembers the
// error that ended it, since the parsers above it put their own in its place.
type source struct {
	text           *bufio.Reader
	file, unpacked *limited
}

// newSource looks at the first bytes to see what it has before it.
func newSource(r io.Reader, limit int64) *source {
	s := &source{file: &limited{r: r, limit: limit}}
	raw := bufio.NewReaderSize(s.file, 1<<16)
	if magic, _ := raw.Peek(2); bytes.Equal(magic, []byte("\x1f\x8b")) {
		s.unpacked = unpack(raw, limit)
		raw = bufio.NewReaderSize(s.unpacked, 1<<16)
	}
	if start, _ := raw.Peek(3); bytes.HasPrefix(start, []byte("\xef\xbb\xbf")) {
		_, _ = raw.Discard(3)
	} else if endianness, ok := utf16Of(start); ok {
		utf16 := unicode.UTF16(endianness, unicode.UseBOM)
		raw = bufio.NewReaderSize(transform.NewReader(raw, utf16.NewDecoder()), 1<<16)
	}
	s.text = bufio.NewReaderSize(lineEnds{raw}, 1<<16)
	return s
}

// utf16Of tells UTF-16 by its byte order mark or by the zero beside the character that a
// document begins with (XML 1.0, appendix F; RFC 4627, section 3).
func utf16Of(start []byte) (order unicode.Endianness, ok bool) {
	for _, first := range "<{[" {
		switch {
		case bytes.HasPrefix(start, []byte{byte(first), 0}):
			return unicode.LittleEndian, true
		case bytes.HasPrefix(start, []byte{0, byte(first)}):
			return unicode.BigEndian, true
		}
	}
	marked := bytes.HasPrefix(start, []byte("\xff\xfe")) || bytes.HasPrefix(start, []byte("\xfe\xff"))
	return unicode.LittleEndian, marked
}

// lineEnds replaces every carriage return that no line break follows by a line break: so
// ended lines before there were others. The parsers count and part lines by those alone.
type lineEnds struct{ in *bufio.Reader }

func (l lineEnds) Read(p []byte) (int, error) {
	n, err := l.in.Read(p)
	for i := 0; ; i++ {
		k := bytes.IndexByte(p[i:n], '\r')
		if k < 0 {
			return n, err
		}
		i += k
		next := byte(0)
		if i+1 < n {
			next = p[i+1]
		} else if after, _ := l.in.Peek(1); len(after) > 0 {
			next = after[0]
		}
		if next != '\n' {
			p[i] = '\n'
		}
	}
}

// err returns what ended the reading, nil at the proper end.
func (s *source) err() error {
	switch {
	case s.file.err != nil:
		return s.file.err
	case s.unpacked != nil && s.unpacked.err != nil:
		return s.unpacked.err
	}
	return nil
}

// empty reports whether nothing was there.
func (s *source) empty() bool {
	if s.unpacked != nil {
		return s.unpacked.read == 0
	}
	return s.file.read == 0
}

// beginsLikeJSON reports whether the first character that is no white space opens an
// object or an array.
func (s *source) beginsLikeJSON() bool {
	start, _ := s.text.Peek(1 << 10)
	start = bytes.TrimLeft(start, " \t\r\n")
	return len(start) > 0 && (start[0] == '{' || start[0] == '[')
}

// limited reads up to a limit of bytes.
type limited struct {
	r     io.Reader
	limit int64
	read  int64
	names int   // name space declarations in it, which the XML decoder takes long over
	err   error // the first, but for io.EOF
}

func (l *limited) Read(p []byte) (int, error) {
	if l.err != nil {
		return 0, l.err
	}
	n, err := l.r.Read(p)
	l.read += int64(n)
	l.names += bytes.Count(p[:n], []byte("xmlns"))
	switch {
	case l.names > MaxNameSpaces:
		l.err = because(ErrTooLarge, "more than %d name space declarations", MaxNameSpaces)
		return 0, l.err
	case l.read > l.limit:
		l.err = because(ErrTooLarge, "more than %d bytes", l.limit)
		return n - int(l.read-l.limit), l.err // what is within it, so that its lines count
	case err != nil && !errors.Is(err, io.EOF):
		l.err = err
	}
	return n, err
}

// unpack reads what gzip has packed; the limit holds for it too.
func unpack(r io.Reader, limit int64) *limited {
	l := &limited{limit: limit}
	packed, err := gzip.NewReader(r)
	if err != nil {
		l.err = gzipError(err)
		return l
	}
	l.r = gzipReader{packed}
	return l
}

type gzipReader struct{ packed *gzip.Reader }

func (g gzipReader) Read(p []byte) (int, error) {
	n, err := g.packed.Read(p)
	if err != nil && err != io.EOF { // an io.ErrUnexpectedEOF is none
		err = gzipError(err)
	}
	return n, err
}

func gzipError(err error) error {
	return because(ErrSyntax, "gzip: %s", strings.TrimPrefix(err.Error(), "gzip: "))
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
