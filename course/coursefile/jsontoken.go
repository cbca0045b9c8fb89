package coursefile

import (
	"bufio"
	"errors"
	"io"
)

// A jsonToken is a bracket, a name or a value of JSON.
type jsonToken struct {
	// kind is the bracket, '"' for a text, '0' for a number, and 't', 'f' and 'n' for
	// true, false and null.
	kind byte

	// text is that of a number and, without quotation marks and escapes, of a text. It
	// holds until the next token is read.
	text []byte
}

func (t jsonToken) String() string {
	switch t.kind {
	case '"', '0':
		return string(t.text)
	case 't':
		return "true"
	case 'f':
		return "false"
	case 'n':
		return "null"
	}
	return string(t.kind)
}

// A jsonReader reads JSON token by token and knows the line of each. Package
// encoding/json does that too, but takes a microsecond for each number and knows no
// lines. What it accepts is what that package does; FuzzJSON compares them.
type jsonReader struct {
	in      *bufio.Reader
	from    *source
	options Options

	line   int  // where the last token ends
	broken bool // the last byte read was a line break
	depth  int  // of values inside each other
	tokens int  // read so far

	open   []byte // the brackets that are open
	place  jsonPlace
	buffer []byte // of the last text or number
}

// A jsonPlace is what may come next.
type jsonPlace int

const (
	aValue       jsonPlace = iota
	firstElement           // a value or the end of the array
	firstName              // a name or the end of the object
	aName
	aColon
	behindValue // a comma, or the end of what is open
)

func newJSONReader(from *source, o Options) *jsonReader {
	return &jsonReader{in: from.text, from: from, options: o, line: 1}
}

// token returns the next token or a located error, at the end of the file too.
func (j *jsonReader) token() (jsonToken, error) {
	if j.tokens++; j.tokens > MaxTokens {
		return jsonToken{}, j.errorf(ErrTooLarge, "more than %d values and brackets", MaxTokens)
	}
	c, err := j.begin()
	if err != nil {
		return jsonToken{}, err
	}
	if c == '}' || c == ']' {
		return j.closed(c)
	}
	switch j.place {
	case aName, firstName:
		if c == '"' {
			j.place = aColon
			return j.quotation()
		}
		return jsonToken{}, j.invalid(c, "looking for beginning of object key string")
	case aColon:
		return jsonToken{}, j.invalid(c, "after object key")
	case behindValue:
		return jsonToken{}, j.invalid(c, j.behind())
	}
	return j.value(c)
}

// begin returns the character that the next token begins with, behind the comma or colon
// that may stand before it.
func (j *jsonReader) begin() (byte, error) {
	c, err := j.next()
	switch {
	case err != nil:
		return 0, err
	case j.place == behindValue && c == ',' && j.inObject():
		j.place = aName
	case j.place == behindValue && c == ',' && j.depth > 0, j.place == aColon && c == ':':
		j.place = aValue
	default:
		return c, nil
	}
	return j.next()
}

func (j *jsonReader) inObject() bool { return j.depth > 0 && j.open[j.depth-1] == '{' }

// closed reads a closing bracket.
func (j *jsonReader) closed(c byte) (jsonToken, error) {
	switch {
	case j.place == aValue:
		return jsonToken{}, j.invalid(c, "looking for beginning of value")
	case j.place == aName:
		return jsonToken{}, j.invalid(c, "looking for beginning of object key string")
	case j.place == aColon:
		return jsonToken{}, j.invalid(c, "after object key")
	case j.depth == 0 || j.inObject() != (c == '}'):
		return jsonToken{}, j.invalid(c, j.behind())
	}
	j.depth--
	j.open = j.open[:j.depth]
	j.place = behindValue
	return jsonToken{kind: c}, nil
}

func (j *jsonReader) behind() string {
	switch {
	case j.depth == 0:
		return "after top-level value"
	case j.inObject():
		return "after object key:value pair"
	}
	return "after array element"
}

// value reads a value that begins with a character.
func (j *jsonReader) value(c byte) (jsonToken, error) {
	j.place = behindValue
	switch {
	case c == '{' || c == '[':
		if j.depth++; j.depth > maxDepth {
			return jsonToken{}, j.errorf(ErrSyntax, "values nested more than %d deep", maxDepth)
		}
		j.open = append(j.open, c)
		j.place = firstElement
		if c == '{' {
			j.place = firstName
		}
		return jsonToken{kind: c}, nil
	case c == '"':
		return j.quotation()
	case c == '-' || c >= '0' && c <= '9':
		return j.numeral(c)
	case c == 't':
		return j.literal("true")
	case c == 'f':
		return j.literal("false")
	case c == 'n':
		return j.literal("null")
	}
	return jsonToken{}, j.invalid(c, "looking for beginning of value")
}

func (j *jsonReader) literal(word string) (jsonToken, error) {
	for i := 1; i < len(word); i++ {
		c, err := j.readByte()
		if err != nil {
			return jsonToken{}, err
		}
		if c != word[i] {
			return jsonToken{}, j.invalid(c, "in literal "+word)
		}
	}
	return jsonToken{kind: word[0]}, nil
}

// next returns the next character that is no white space.
func (j *jsonReader) next() (byte, error) {
	for {
		c, err := j.readByte()
		if err != nil || c != ' ' && c != '\n' && c != '\t' && c != '\r' {
			return c, err
		}
	}
}

func (j *jsonReader) readByte() (byte, error) {
	c, err := j.in.ReadByte()
	if err != nil {
		return 0, j.refuse(err)
	}
	if j.broken {
		j.line++
	}
	j.broken = c == '\n'
	return c, nil
}

// end makes sure that nothing follows.
func (j *jsonReader) end() error {
	c, err := j.next()
	switch {
	case errors.As(err, &unexpectedEnd{}):
		return nil
	case err != nil:
		return err
	}
	return j.errorf(ErrSyntax, "after the end of the document: %s", quoted(string(j.whole(c))))
}

// whole returns the character that a byte begins.
func (j *jsonReader) whole(c byte) rune {
	_ = j.in.UnreadByte() // c was read last
	r, _, _ := j.in.ReadRune()
	return r
}

// invalid refuses the character that a byte begins.
func (j *jsonReader) invalid(c byte, where string) error {
	return j.errorf(ErrSyntax, "invalid character %q %s", j.whole(c), where)
}

func (j *jsonReader) errorf(cause error, format string, args ...any) error {
	return j.options.errorAt(j.line, because(cause, format, args...))
}

// refuse gives what ended the reading its place. The end of the file is an unexpectedEnd.
func (j *jsonReader) refuse(err error) error {
	if j.from.err() != nil {
		return j.options.reading(j.line, j.from.err())
	}
	if !errors.Is(err, io.EOF) {
		return j.options.errorAt(j.line, because(ErrSyntax, "%v", err))
	}
	return j.options.errorAt(j.line, unexpectedEnd{})
}

// unexpectedEnd is the end of a file where something is missing.
type unexpectedEnd struct{}

func (unexpectedEnd) Error() string { return ErrSyntax.Error() + ": unexpected end" }

func (unexpectedEnd) Unwrap() error { return ErrSyntax }
