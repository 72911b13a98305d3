package sheet

// fold draws together steps that repeat one after the other: each block is gone through so many times,
// and the blocks in their order give the steps again.
func fold(steps []Step) []Block {
	var blocks []Block
	for i := 0; i < len(steps); {
		size, times := bestRepeat(steps[i:])
		if times == 1 {
			if last := len(blocks) - 1; last >= 0 && blocks[last].Times == 1 {
				blocks[last].Steps = append(blocks[last].Steps, steps[i])
			} else {
				blocks = append(blocks, Block{Times: 1, Steps: []Step{steps[i]}})
			}
			i++
			continue
		}
		block := Block{Times: times, Steps: append([]Step(nil), steps[i:i+size]...)}
		for round := 1; round < times; round++ {
			for k := range block.Steps {
				block.Steps[k].Passes = append(block.Steps[k].Passes, steps[i+round*size+k].Passes...)
			}
		}
		blocks = append(blocks, block)
		i += size * times
	}
	return blocks
}

// maxRepeat bounds how many steps a block may have: more are not kept in mind.
const maxRepeat = 24

// bestRepeat finds the block at the beginning of the steps whose repetition spares most lines; the shorter
// one of two that spare as many. times is 1 where nothing repeats.
func bestRepeat(steps []Step) (size, times int) {
	size, times = 1, 1
	for n := 1; n <= min(maxRepeat, len(steps)/2); n++ {
		k := 1
		for (k+1)*n <= len(steps) && sameSteps(steps[:n], steps[k*n:(k+1)*n]) {
			k++
		}
		if k > 1 && n*(k-1) > size*(times-1) {
			size, times = n, k
		}
	}
	return size, times
}

func sameSteps(a, b []Step) bool {
	for i := range a {
		if !a[i].alike(b[i]) {
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
