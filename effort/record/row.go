package record

import (
	"fmt"
	"strings"

	"isoeffort.example/internal/csvtext"
)

// result makes a result of the current row, or says why there is none.
func (t *table) result() (Result, *Error) {
	if err := t.rowFault(); err != nil {
		return Result{}, err
	}
	r := Result{
		Runner: t.text(colRunner),
		Race:   t.text(colRace),
		Course: t.text(colCourse),
		GPX:    t.text(colGPX),
		Note:   t.text(colNote),
		Line:   t.line,
	}
	err := t.measure(&r)
	if err == nil {
		err = t.climbing(&r)
	}
	if err == nil {
		err = t.timing(&r)
	}
	if err == nil {
		err = r.fault()
	}
	if err != nil {
		return Result{}, t.fault(err)
	}
	return r, nil
}

// rowFault says what is wrong with the current row as such.
func (t *table) rowFault() *Error {
	if t.err != nil {
		return t.fault(t.err)
	}
	if len(t.row) != t.layout.width {
		return t.fault(fmt.Errorf("%w: the header has %d fields, this row %d", ErrSyntax, t.layout.width, len(t.row)))
	}
	return nil
}

// text returns a field of text.
func (t *table) text(c column) string { return onlyLF(t.layout.cell(t.row, c)) }

var lineEnds = strings.NewReplacer("\r\n", "\n", "\r", "\n")

// onlyLF takes CR out of a text, read or written: encoding/csv drops one before LF and
// keeps others, so that a text with several would change each time it is copied.
func onlyLF(s string) string {
	if strings.IndexByte(s, '\r') < 0 {
		return s
	}
	return lineEnds.Replace(s)
}

// decimalComma reports whether numbers may have one: where commas separate no fields.
func (t *table) decimalComma() bool { return t.csv.Comma != ',' }

// measure reads the distance. The field may be empty where gpx is not; a 0 that is
// written there is refused all the same.
func (t *table) measure(r *Result) (err error) {
	field := t.layout.cell(t.row, colDistance)
	switch {
	case field == "" && r.GPX != "":
		return nil
	case field == "":
		return fmt.Errorf("%w: it is empty, and no gpx is given", ErrDistance)
	}
	if r.Distance, err = csvtext.Number(field, t.decimalComma()); err != nil {
		return fmt.Errorf("%w: %w", ErrDistance, err)
	}
	if r.Distance == 0 {
		return fmt.Errorf("%w: 0 m is not positive", ErrDistance)
	}
	return nil
}

// climbing reads the ascent and the descent.
func (t *table) climbing(r *Result) (err error) {
	if field := t.layout.cell(t.row, colAscent); field != "" {
		if r.Ascent, err = csvtext.Number(field, t.decimalComma()); err != nil {
			return fmt.Errorf("%w: %w", ErrAscent, err)
		}
	}
	r.Descent = r.Ascent
	if field := t.layout.cell(t.row, colDescent); field != "" {
		if r.Descent, err = csvtext.Number(field, t.decimalComma()); err != nil {
			return fmt.Errorf("%w: %w", ErrAscent, err)
		}
	}
	return nil
}

// timing reads the time, the date and the role.
func (t *table) timing(r *Result) (err error) {
	if r.Time, err = parseTime(t.layout.cell(t.row, colTime), t.decimalComma()); err != nil {
		return err
	}
	if r.Date, err = parseDate(t.layout.cell(t.row, colDate)); err != nil {
		return err
	}
	if r.DNF, err = parseDNF(t.layout.cell(t.row, colDNF)); err != nil {
		return err
	}
	r.Role, err = parseRole(t.layout.cell(t.row, colRole))
	return err
}
