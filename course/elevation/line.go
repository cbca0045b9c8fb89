package elevation

// A line is a least-squares line through points.
type line struct {
	place, mean float64 // mean distance and height of the points
	slope       float64 // 0 if they are all at one place
}

func (l line) at(x float64) float64 { return l.mean + l.slope*(x-l.place) }

// sums are those that a line is made of, of places and heights about an origin near
// them.
type sums struct{ n, x, z, xx, xz float64 }

func (s *sums) add(x, z float64) {
	s.n, s.x, s.z, s.xx, s.xz = s.n+1, s.x+x, s.z+z, s.xx+x*x, s.xz+x*z
}

// moved returns the sums with places that are larger by dx and heights by dz.
func (s sums) moved(dx, dz float64) sums {
	return sums{
		n: s.n, x: s.x + s.n*dx, z: s.z + s.n*dz,
		xx: s.xx + dx*(2*s.x+s.n*dx),
		xz: s.xz + dz*s.x + dx*(s.z+s.n*dz),
	}
}

func (s sums) plus(o sums) sums {
	return sums{s.n + o.n, s.x + o.x, s.z + o.z, s.xx + o.xx, s.xz + o.xz}
}

func (s sums) slope() float64 {
	spread := s.xx - s.x*s.x/s.n
	if !(spread > 1e-9*s.xx) {
		return 0
	}
	return (s.xz - s.x*s.z/s.n) / spread
}

// line fits one to some points of the recording.
func (r *recording) line(at []int) line {
	var s sums
	x0, z0 := r.distance[at[0]], r.elevation[at[0]]
	for _, i := range at {
		s.add(r.distance[i]-x0, r.elevation[i]-z0)
	}
	return line{x0 + s.x/s.n, z0 + s.z/s.n, s.slope()}
}
