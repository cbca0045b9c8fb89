package record

import (
	"errors"
	"strings"

	"isoeffort.example/internal/locate"
)

// Error says why a result or a file was refused, and where. Its text is one line,
// "FILE:LINE: cause", without what is not known; it wraps one of the sentinels below
// or, where reading itself failed, the reader's error.
type Error = locate.Error

// The causes for which results are refused.
var (
	ErrTime      = errors.New("bad time")
	ErrDistance  = errors.New("bad distance")
	ErrAscent    = errors.New("bad ascent or descent")
	ErrDate      = errors.New("bad date")
	ErrRole      = errors.New("bad role")
	ErrTooFast   = errors.New("faster than any human")
	ErrSplit     = errors.New("bad split")
	ErrHeader    = errors.New("bad header")
	ErrSyntax    = errors.New("bad CSV")
	ErrText      = errors.New("not UTF-8 text")
	ErrNoResults = errors.New("no results")
	ErrTooLarge  = errors.New("file larger than 64 MiB")
)

// Errors is every refusal of one file, in the order of its lines: what Read returns
// under Options.Every. errors.Is and errors.As look into each.
type Errors []*Error

// Error returns one line for each refusal.
func (e Errors) Error() string {
	lines := make([]string, len(e))
	for i, err := range e {
		lines[i] = err.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap returns the refusals.
func (e Errors) Unwrap() []error {
	errs := make([]error, len(e))
	for i, err := range e {
		errs[i] = err
	}
	return errs
}
