package coursefile

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
)

// A jsonReader reads JSON token by token and knows the line of each.
type jsonReader struct {
	in      *json.Decoder
	lines   *lineCounter
	from    *source
	options Options
	line    int // where the last token ends
	depth   int // of values inside each other
	tokens  int // read so far
}

func newJSONReader(from *source, o Options) *jsonReader {
	lines := &lineCounter{r: from.text, line: 1}
	in := json.NewDecoder(lines)
	in.UseNumber()
	return &jsonReader{in: in, lines: lines, from: from, options: o, line: 1}
}

// token returns the next token or a located error, at the end of the file too.
func (j *jsonReader) token() (json.Token, error) {
	t, err := j.in.Token()
	j.line = j.lines.at(j.in.InputOffset())
	if err != nil {
		return nil, j.refuse(err)
	}
	if j.tokens++; j.tokens > MaxTokens {
		return nil, j.errorf(ErrTooLarge, "more than %d values and brackets", MaxTokens)
	}
	switch t {
	case json.Delim('{'), json.Delim('['):
		if j.depth++; j.depth > maxDepth {
			return nil, j.errorf(ErrSyntax, "values nested more than %d deep", maxDepth)
		}
	case json.Delim('}'), json.Delim(']'):
		j.depth--
	}
	return t, nil
}

// end makes sure that nothing follows.
func (j *jsonReader) end() error {
	t, err := j.in.Token()
	switch {
	case errors.Is(err, io.EOF) && j.from.err() == nil:
		return nil
	case err != nil:
		j.line = j.lines.at(j.in.InputOffset())
		return j.refuse(err)
	}
	j.line = j.lines.at(j.in.InputOffset())
	return j.errorf(ErrSyntax, "after the end of the document: %s", quoted(fmt.Sprint(t)))
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
func (j *jsonReader) skipFrom(t json.Token) error {
	if t != json.Delim('{') && t != json.Delim('[') {
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
		if err != nil {
			return err
		}
		name, ok := t.(string)
		if !ok {
			return nil // the closing brace; the decoder lets nothing else stand here
		}
		if err := take(name); err != nil {
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
	if s, ok := t.(string); ok {
		return s, nil
	}
	return "", j.skipFrom(t)
}

func (j *jsonReader) errorf(cause error, format string, args ...any) error {
	return j.options.errorAt(j.line, because(cause, format, args...))
}

// refuse turns an error of the decoder into a located one.
func (j *jsonReader) refuse(err error) error {
	var syntax *json.SyntaxError
	switch {
	case j.from.err() != nil:
		return j.options.reading(j.line, j.from.err())
	case errors.Is(err, io.EOF), errors.Is(err, io.ErrUnexpectedEOF):
		return j.options.errorAt(j.lines.last(), because(ErrSyntax, "unexpected end"))
	case errors.As(err, &syntax):
		return j.options.errorAt(j.lines.at(syntax.Offset), because(ErrSyntax, "%s", syntax.Error()))
	}
	return j.options.errorAt(j.line, because(ErrSyntax, "%s", strings.TrimPrefix(err.Error(), "json: ")))
}

// A lineCounter tells on which line an offset of the text that passes through it lies.
// It keeps only the line breaks that it has not been asked beyond.
type lineCounter struct {
	r      io.Reader
	offset int64
	breaks []int64 // offsets of line breaks from next on
	next   int
	line   int // at the last offset asked for
}

func (l *lineCounter) Read(p []byte) (int, error) {
	n, err := l.r.Read(p)
	if l.next > len(l.breaks)/2 {
		l.breaks, l.next = l.breaks[:copy(l.breaks, l.breaks[l.next:])], 0
	}
	for i := 0; ; {
		k := bytes.IndexByte(p[i:n], '\n')
		if k < 0 {
			break
		}
		i += k + 1
		l.breaks = append(l.breaks, l.offset+int64(i))
	}
	l.offset += int64(n)
	return n, err
}

// at returns the line of an offset, which may not be less than one asked for before.
func (l *lineCounter) at(offset int64) int {
	for l.next < len(l.breaks) && l.breaks[l.next] <= offset {
		l.next++
		l.line++
	}
	return l.line
}

// last returns the line on which the text ends.
func (l *lineCounter) last() int { return l.at(l.offset - 1) }
