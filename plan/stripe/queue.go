package stripe

// queue is the moves that wait for one end and direction.
type queue struct {
	moves []move
	worst cost // a move of a higher rank need not wait
}

// cut keeps the n moves of the lowest rank. It parts the list again and again, as quicksort does, but
// goes on with the part that holds the n-th only.
func (s *search) cut(q *queue, n int) {
	list := q.moves
	low, high := 0, len(list)-1
	for low < high {
		pivot, i, j := s.rank(list[(low+high)/2]), low, high
		for i <= j {
			for s.rank(list[i]) < pivot {
				i++
			}
			for s.rank(list[j]) > pivot {
				j--
			}
			if i <= j {
				list[i], list[j] = list[j], list[i]
				i++
				j--
			}
		}
		switch {
		case n <= j:
			high = j
		case n >= i:
			low = i
		default:
			low = high
		}
	}
	q.moves = list[:n]
	q.worst = s.rank(list[0])
	for _, m := range q.moves {
		q.worst = max(q.worst, s.rank(m))
	}
}
