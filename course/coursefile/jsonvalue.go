package coursefile

import (
	"strconv"
	"unicode/utf16"
	"unicode/utf8"
)

// quotation reads a text whose first quotation mark has been read.
func (j *jsonReader) quotation() (jsonToken, error) {
	j.buffer = j.buffer[:0]
	for {
		c, err := j.in.ReadByte()
		switch {
		case err != nil:
			return jsonToken{}, j.refuse(err)
		case c == '"':
			return jsonToken{'"', j.buffer}, nil
		case c < ' ':
			return jsonToken{}, j.invalid(c, "in string literal")
		case c != '\\':
			j.buffer = append(j.buffer, c)
			continue
		}
		if err := j.escape(); err != nil {
			return jsonToken{}, err
		}
	}
}

// escape reads what follows a backslash.
func (j *jsonReader) escape() error {
	c, err := j.in.ReadByte()
	if err != nil {
		return j.refuse(err)
	}
	switch c {
	case '"', '\\', '/':
	case 'b':
		c = '\b'
	case 'f':
		c = '\f'
	case 'n':
		c = '\n'
	case 'r':
		c = '\r'
	case 't':
		c = '\t'
	case 'u':
		return j.unicode()
	default:
		return j.invalid(c, "in string escape code")
	}
	j.buffer = append(j.buffer, c)
	return nil
}

// unicode reads the digits of an escaped character, of which two may make one.
func (j *jsonReader) unicode() error {
	r, err := j.hexadecimal()
	if err != nil {
		return err
	}
	for utf16.IsSurrogate(r) {
		if next, _ := j.in.Peek(2); string(next) != `\u` {
			break
		}
		_, _ = j.in.Discard(2) // what was peeked at
		low, err := j.hexadecimal()
		if err != nil {
			return err
		}
		if pair := utf16.DecodeRune(r, low); pair != utf8.RuneError {
			r = pair
			break
		}
		j.buffer = utf8.AppendRune(j.buffer, utf8.RuneError)
		r = low
	}
	j.buffer = utf8.AppendRune(j.buffer, r) // a lone half becomes U+FFFD
	return nil
}

func (j *jsonReader) hexadecimal() (rune, error) {
	var hex [4]byte
	for i := range hex {
		c, err := j.in.ReadByte()
		if err != nil {
			return 0, j.refuse(err)
		}
		if !(c >= '0' && c <= '9' || c >= 'a' && c <= 'f' || c >= 'A' && c <= 'F') {
			return 0, j.invalid(c, `in \u hexadecimal character escape`)
		}
		hex[i] = c
	}
	v, err := strconv.ParseUint(string(hex[:]), 16, 16)
	return rune(v), err
}

// skip passes over the next value, whatever it is.
func (j *jsonReader) skip() error {
	t, err := j.token()
	if err != nil {
		return err
	}
	return j.skipFrom(t)
}

// skipFrom passes over the rest of a value whose first token has been read.
func (j *jsonReader) skipFrom(t jsonToken) error {
	if t.kind != '{' && t.kind != '[' {
		return nil
	}
	for outside := j.depth - 1; j.depth > outside; {
		if _, err := j.token(); err != nil {
			return err
		}
	}
	return nil
}

// members calls take for each name of an object that has been opened; take reads the
// value.
func (j *jsonReader) members(take func(name string) error) error {
	for {
		t, err := j.token()
		if err != nil || t.kind == '}' {
			return err
		}
		if err := take(string(t.text)); err != nil {
			return err
		}
	}
}

// elements calls take for the first token of each element of an array that has been
// opened; take reads the rest of it.
func (j *jsonReader) elements(take func(t jsonToken) error) error {
	for {
		t, err := j.token()
		if err != nil || t.kind == ']' {
			return err
		}
		if err := take(t); err != nil {
			return err
		}
	}
}

// text reads the next value and returns it if it is a string.
func (j *jsonReader) text() (string, error) {
	t, err := j.token()
	if err != nil {
		return "", err
	}
	if t.kind == '"' {
		return string(t.text), nil
	}
	return "", j.skipFrom(t)
}
