package coursefile

// numeral reads a number that begins with a character, by the grammar of RFC 8259, 6.
func (j *jsonReader) numeral(c byte) (jsonToken, error) {
	n := numeral{}
	j.buffer = j.buffer[:0]
	for n.take(c) {
		j.buffer = append(j.buffer, c)
		var err error
		if c, err = j.in.ReadByte(); err != nil {
			if j.from.err() != nil || !n.complete() {
				return jsonToken{}, j.refuse(err)
			}
			return jsonToken{'0', j.buffer}, nil
		}
	}
	if !n.complete() {
		return jsonToken{}, j.invalid(c, n.missing())
	}
	_ = j.in.UnreadByte()
	return jsonToken{'0', j.buffer}, nil
}

// A numeral is how far a number has been read.
type numeral struct{ part numeralPart }

type numeralPart int

const (
	beforeAll numeralPart = iota
	sign
	zero
	digits
	point
	decimals
	exponent
	exponentSign
	exponentDigits
)

// take goes on by a character, or reports that it does not belong to the number.
func (n *numeral) take(c byte) bool {
	next := n.after(c)
	if next == beforeAll {
		return false
	}
	n.part = next
	return true
}

// after returns the part that a character leads to, beforeAll for none.
func (n *numeral) after(c byte) numeralPart {
	digit := c >= '0' && c <= '9'
	starts := n.part == beforeAll || n.part == sign
	whole := n.part == zero || n.part == digits
	scaled := n.part == exponent || n.part == exponentSign || n.part == exponentDigits
	switch {
	case c == '-' && n.part == beforeAll:
		return sign
	case c == '0' && starts:
		return zero
	case digit && (starts || n.part == digits):
		return digits
	case c == '.' && whole:
		return point
	case digit && (n.part == point || n.part == decimals):
		return decimals
	case (c == 'e' || c == 'E') && (whole || n.part == decimals):
		return exponent
	case (c == '+' || c == '-') && n.part == exponent:
		return exponentSign
	case digit && scaled:
		return exponentDigits
	}
	return beforeAll
}

func (n *numeral) complete() bool {
	return n.part == zero || n.part == digits || n.part == decimals || n.part == exponentDigits
}

func (n *numeral) missing() string {
	switch n.part {
	case sign:
		return "in numeric literal"
	case point:
		return "after decimal point in numeric literal"
	}
	return "in exponent of numeric literal"
}
