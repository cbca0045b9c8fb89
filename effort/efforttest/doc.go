// Package efforttest checks the laws that package effort asks of a cost curve. Whoever
// brings a curve of their own calls Check in a test of it:
//
//	func TestLaws(t *testing.T) {
//		efforttest.Check(t, mine{}, efforttest.Domain{
//			Gradient: [2]float64{-0.3, 0.3}, Speed: [2]float64{0.5, 5},
//		})
//	}
//
// Programs that take a curve from elsewhere call Violations, which needs no test.
//
// The laws are looked at on a grid of 65 speeds and 65 gradients over the domain, the
// level beside them. A curve that breaks a law only between two neighbours of the grid
// passes. That a curve passes says that a plan can be made by it, and nothing of whether
// it is true.
package efforttest
