package sheet

// fold draws together steps that repeat one after the other: each block is gone through so many times,
// and the blocks in their order give the steps again.
func fold(steps []Step) []Block {
	var blocks []Block
	at := 0
	foldAlike(steps, Step.alike, func(times int, part []Step) {
		block := Block{Times: times, Steps: append([]Step(nil), part...)}
		for round := 1; round < times; round++ {
			for k := range block.Steps {
				block.Steps[k].Passes = append(block.Steps[k].Passes, steps[at+round*len(part)+k].Passes...)
			}
		}
		at += times * len(part)
		blocks = append(blocks, block)
	})
	return blocks
}

// foldAlike cuts a list into parts, each of which is gone through so many times, and gives them in their order;
// what doesn't repeat stands in one part.
func foldAlike[T any](list []T, alike func(a, b T) bool, give func(times int, part []T)) {
	single := 0 // where the part that doesn't repeat begins
	for i := 0; i < len(list); {
		size, times := bestRepeat(list[i:], alike)
		if times == 1 {
			i++
			continue
		}
		if single < i {
			give(1, list[single:i])
		}
		give(times, list[i:i+size])
		i += size * times
		single = i
	}
	if single < len(list) {
		give(1, list[single:])
	}
}

// maxRepeat bounds how long a part may be: more is not kept in mind.
const maxRepeat = 24

// bestRepeat finds the part at the beginning of a list whose repetition spares most lines; the shorter
// one of two that spare as many. times is 1 where nothing repeats.
func bestRepeat[T any](list []T, alike func(a, b T) bool) (size, times int) {
	size, times = 1, 1
	for n := 1; n <= min(maxRepeat, len(list)/2); n++ {
		k := 1
		for (k+1)*n <= len(list) && allAlike(list[:n], list[k*n:(k+1)*n], alike) {
			k++
		}
		if k > 1 && n*(k-1) > size*(times-1) {
			size, times = n, k
		}
	}
	return size, times
}

func allAlike[T any](a, b []T, alike func(a, b T) bool) bool {
	for i := range a {
		if !alike(a[i], b[i]) {
			return false
		}
	}
	return true
}

// alike says whether two steps are the same to the hands: the same work, the same positions, as many
// passes, the first of which goes the same way.
func (s Step) alike(o Step) bool {
	return s.Work == o.Work && s.Positions == o.Positions && s.Letters == o.Letters && s.Ends == o.Ends &&
		len(s.Passes[0]) == len(o.Passes[0]) && s.Passes[0][0]%2 == o.Passes[0][0]%2
}
