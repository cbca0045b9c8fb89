package coursefile

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"
)

// maxDepth is how deep elements may be nested; GPX needs five levels and its
// extensions a few more.
const maxDepth = 256

// A gate is the xml.TokenReader that gpxgo reads through. It hands on only the elements
// of gpxRoot, each text as one piece and trimmed, each point with nothing but a checked
// place. It keeps what gpxgo does not: the lines, the fractional seconds and the first
// error.
//
// It reads the inner decoder's Token, which matches tags and resolves name spaces,
// where RawToken would leave both to the gate.
type gate struct {
	in      *xml.Decoder
	from    *source
	options Options

	space   string // the name space of the root
	version string
	open    []*element // those of gpxRoot that are open
	skipped int        // others open inside the last of them
	ended   bool       // the root has been closed
	line    int        // where the token in hand starts

	text  []byte // of the leaf that is open
	queue []xml.Token
	next  int
	err   error // the first; sticks

	tracks, routes, waypoints []mark // of the points in file order
	current                   *mark  // of the point that is open or was last
}

// newGate reads up to the root element.
func newGate(r io.Reader, o Options) (*gate, error) {
	from := &source{r: r, limit: o.MaxBytes}
	g := &gate{in: xml.NewDecoder(from.text()), from: from, options: o}
	g.in.CharsetReader = recode
	for len(g.open) == 0 && g.err == nil {
		g.err = g.advance()
	}
	return g, g.err
}

// Token implements xml.TokenReader.
func (g *gate) Token() (xml.Token, error) {
	for g.next == len(g.queue) {
		if g.err != nil {
			return nil, g.err
		}
		g.queue, g.next = g.queue[:0], 0
		g.err = g.advance()
	}
	g.next++
	return g.queue[g.next-1], nil
}

// drain reads what gpxgo has left: what follows the root.
func (g *gate) drain() error {
	for {
		if _, err := g.Token(); err != nil {
			break
		}
	}
	if errors.Is(g.err, io.EOF) {
		return nil
	}
	return g.err
}

// advance reads one token and queues what it gives rise to. At the proper end of the
// file it returns io.EOF, and else a located error.
func (g *gate) advance() error {
	g.line, _ = g.in.InputPos()
	token, err := g.in.Token()
	if err != nil {
		return g.refuse(err)
	}
	switch t := token.(type) {
	case xml.StartElement:
		return g.startElement(t)
	case xml.EndElement:
		g.endElement()
	case xml.CharData:
		return g.chars(t)
	}
	return nil
}

func (g *gate) startElement(t xml.StartElement) error {
	switch {
	case g.ended:
		return g.errorf(ErrSyntax, "element <%s> after the end of the document", oneLine(t.Name.Local, 40))
	case len(g.open) == 0:
		return g.root(t)
	case len(g.open)+g.skipped >= maxDepth:
		return g.errorf(ErrSyntax, "elements nested more than %d deep", maxDepth)
	}
	e := g.open[len(g.open)-1].child(t.Name.Local)
	if e == nil || g.skipped > 0 || t.Name.Space != g.space {
		g.skipped++
		return nil
	}
	g.open = append(g.open, e)
	switch e.role {
	case group:
		g.queue = append(g.queue, e.start)
	case trackPoint, routePoint, waypoint:
		return g.startPoint(e, t.Attr)
	default:
		g.text = g.text[:0]
	}
	return nil
}

func (g *gate) root(t xml.StartElement) error {
	if t.Name.Local != gpxRoot.name {
		return g.errorf(ErrNotGPX, "the root element is <%s>", oneLine(t.Name.Local, 40))
	}
	g.space = t.Name.Space
	for _, a := range t.Attr {
		if a.Name.Space == "" && a.Name.Local == "version" {
			g.version = a.Value
		}
	}
	g.open = append(g.open, gpxRoot)
	g.queue = append(g.queue, gpxRoot.start)
	return nil
}

func (g *gate) endElement() {
	if g.skipped > 0 {
		g.skipped--
		return
	}
	e := g.open[len(g.open)-1]
	g.open = g.open[:len(g.open)-1]
	g.ended = len(g.open) == 0
	if e.isLeaf() {
		g.endLeaf(e)
		return
	}
	g.queue = append(g.queue, e.end)
}

func (g *gate) chars(t xml.CharData) error {
	switch {
	case len(g.open) == 0:
		text := bytes.TrimLeft(t, " \t\r\n")
		if len(text) == 0 {
			return nil
		}
		g.line += bytes.Count(t[:len(t)-len(text)], []byte("\n"))
		if g.ended {
			return g.errorf(ErrSyntax, "text after the end of the document: %s", quoted(string(t)))
		}
		return g.errorf(ErrNotXML, "the file begins with %s", quoted(string(t)))
	case g.skipped == 0 && g.open[len(g.open)-1].isLeaf():
		g.text = append(g.text, t...)
	}
	return nil
}

func (g *gate) errorf(cause error, format string, args ...any) error {
	return g.options.errorAt(g.line, because(cause, format, args...))
}

// refuse turns an error of the inner decoder into a located one, or passes io.EOF.
func (g *gate) refuse(err error) error {
	line, _ := g.in.InputPos()
	cause := ErrSyntax
	if len(g.open) == 0 && !g.ended {
		cause = ErrNotXML
	}
	var syntax *xml.SyntaxError
	switch {
	case g.from.err != nil:
		return g.options.errorAt(0, g.from.err)
	case g.from.read == 0:
		return g.options.errorAt(0, ErrEmpty)
	case errors.Is(err, io.EOF) && g.ended:
		return io.EOF
	case errors.Is(err, io.EOF):
		return g.options.errorAt(0, because(cause, "no element in it"))
	case errors.Is(err, ErrEncoding):
		return g.options.errorAt(line, errors.Unwrap(err))
	case errors.As(err, &syntax):
		return g.options.errorAt(syntax.Line, because(cause, "%s", oneLine(syntax.Msg, 200)))
	}
	return g.options.errorAt(line, because(cause, "%s", strings.TrimPrefix(err.Error(), "xml: ")))
}
