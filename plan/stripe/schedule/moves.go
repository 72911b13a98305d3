package schedule

// change draws a change and makes it. It says whether something is different; if so, save was called.
func (a *annealer) change() bool {
	switch k := a.lots.IntN(16); {
	case k < 5:
		return a.useIdle()
	case k < 11:
		return a.retime()
	default:
		return a.anyChange()
	}
}

// retime changes what one position is threaded with while some ends are laid, or when it is threaded.
func (a *annealer) retime() bool {
	pos, i := a.lots.IntN(a.positions), a.lots.IntN(len(a.ends))
	if a.lots.IntN(2) == 0 {
		i = a.border()
	}
	from, to := a.held(pos, i)
	var c uint8
	ok := true
	switch a.lots.IntN(6) {
	case 0, 1:
		c, ok = a.beside(pos, from, to)
	case 2, 3:
		from, to, c = a.moved(pos, from, to)
		ok = from < to
	default: // another colour, for all of its time or a part
		c = a.ends[min(len(a.ends)-1, i+a.lots.IntN(2*a.positions))]
		switch a.lots.IntN(4) {
		case 0:
			from, to = i, min(to, i+1+a.lots.IntN(4*a.positions))
		case 1:
			from = i
		case 2:
			to = i + 1
		}
	}
	if !ok {
		return false
	}
	a.save(from, to)
	a.paint(pos, c)
	return string(a.thr[from*a.positions:to*a.positions]) != string(a.saved)
}

// held is from and before which end a position keeps the colour that it has at an end.
func (a *annealer) held(pos, i int) (from, to int) {
	c := a.row(i)[pos]
	for from = i; from > 0 && a.row(from - 1)[pos] == c; from-- {
	}
	for to = i + 1; to < len(a.ends) && a.row(to)[pos] == c; to++ {
	}
	return from, to
}

// beside is the colour that a position has before or after some ends, if there are ends there.
func (a *annealer) beside(pos, from, to int) (c uint8, ok bool) {
	switch {
	case from > 0 && (to >= len(a.ends) || a.lots.IntN(2) == 0):
		return a.row(from - 1)[pos], true
	case to < len(a.ends):
		return a.row(to)[pos], true
	}
	return 0, false
}

// moved draws the ends for which a position has another colour if it gets the one that it has from one end to
// another sooner or later, or loses it sooner or later; there are none where that can't be.
func (a *annealer) moved(pos, from, to int) (f, t int, c uint8) {
	n, by := len(a.ends), 1+a.lots.IntN(2*a.positions)
	way := a.lots.IntN(4)
	switch {
	case way < 2 && from == 0, way >= 2 && to >= n:
		return from, from, 0
	case way == 0: // it gets it sooner
		return max(0, from-by), from, a.row(from)[pos]
	case way == 1: // later
		return from, min(to, from+by), a.row(from - 1)[pos]
	case way == 2: // it loses it sooner
		return max(from, to-by), to, a.row(to)[pos]
	default: // later
		return to, min(n, to+by), a.row(to - 1)[pos]
	}
}

// anyChange draws one of the larger changes.
func (a *annealer) anyChange() bool {
	n := len(a.ends)
	from, to := a.span()
	if to <= from || to > n {
		return false
	}
	pos := a.lots.IntN(a.positions)
	a.save(from, to)
	switch a.lots.IntN(8) {
	case 0, 1: // another colour
		a.paint(pos, a.ends[min(n-1, from+a.lots.IntN(min(to-from, 2*a.positions)))])
	case 2: // the colour before or after, longer
		i := from - 1
		if a.lots.IntN(2) == 0 || i < 0 {
			i = to
		}
		if i >= n {
			return false
		}
		a.paint(pos, a.row(i)[pos])
	case 3: // two positions change places
		other := a.lots.IntN(a.positions)
		for i := from; i < to; i++ {
			row := a.row(i)
			row[pos], row[other] = row[other], row[pos]
		}
	case 4, 5: // one position goes, the others close up, and another is put in
		other := a.lots.IntN(a.positions)
		c := a.ends[from+a.lots.IntN(min(to-from, 2*a.positions))]
		if a.lots.IntN(2) == 0 {
			c = 0 // its own colour
		}
		for i := from; i < to; i++ {
			row := a.row(i)
			put := row[pos]
			if c != 0 {
				put = c
			}
			copy(row[pos:], row[pos+1:])
			copy(row[other+1:], row[other:])
			row[other] = put
		}
	case 6: // all as at another end
		if a.repeat.times > 0 && a.lots.IntN(2) == 0 {
			return a.repeatOne()
		}
		i := a.lots.IntN(n)
		row := append([]uint8(nil), a.row(i)...)
		for j := from; j < to; j++ {
			copy(a.row(j), row)
		}
	default: // a colour beside its like
		other := a.lots.IntN(a.positions)
		for i := from; i < to; i++ {
			row := a.row(i)
			row[pos] = row[other]
		}
	}
	now := a.thr[from*a.positions : to*a.positions]
	return string(now) != string(a.saved)
}

// paint threads a position with a colour in the span in hand.
func (a *annealer) paint(pos int, c uint8) {
	for i := a.from; i < a.to; i++ {
		a.row(i)[pos] = c
	}
}

// span draws the ends that a change is made for: a few stripes mostly, at times up to where the position
// changes anyway, or far more.
func (a *annealer) span() (from, to int) {
	n := len(a.ends)
	switch kind := a.lots.IntN(30); {
	case kind == 0:
		return 0, n
	case kind == 1:
		return 0, a.border()
	case kind == 2:
		return a.border(), n
	case kind <= 12: // from where something changes to where something changes
		from = a.nextChange(a.lots.IntN(n))
		to = a.nextChange(from + 1)
		if a.lots.IntN(3) == 0 {
			to = a.nextChange(to + 1)
		}
	default:
		from = a.lots.IntN(n)
		to = from + 1 + a.lots.IntN(4*a.positions)
		if a.lots.IntN(2) == 0 {
			from = a.border()
		}
	}
	return from, min(to, n)
}

// nextChange is the first end from i on at which a position changes, or the number of ends.
func (a *annealer) nextChange(i int) int {
	for i < len(a.ends) && a.chg[i] == 0 {
		i++
	}
	return i
}

// border draws an end at which the warp's colour changes.
func (a *annealer) border() int {
	if len(a.borders) == 0 {
		return a.lots.IntN(len(a.ends))
	}
	return a.borders[a.lots.IntN(len(a.borders))]
}

// repeatOne threads every repeat as one of them.
func (a *annealer) repeatOne() bool {
	r := a.repeat
	a.save(r.start, r.start+a.kept*r.period)
	like := r.start + a.lots.IntN(a.kept-1)*r.period + a.lots.IntN(r.period)
	one := append([]uint8(nil), a.thr[like*a.positions:(like+r.period)*a.positions]...)
	for i := a.from; i < a.to; i++ {
		k := ((i-like)%r.period + r.period) % r.period
		copy(a.row(i), one[k*a.positions:(k+1)*a.positions])
	}
	return string(a.thr[a.from*a.positions:a.to*a.positions]) != string(a.saved)
}
