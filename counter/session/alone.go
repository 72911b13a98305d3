package session

// AloneQuestion is what a weaver is asked where the folder of the records knows no locks, so that the program can't
// keep a second window or computer from winding the same warp.
type AloneQuestion struct {
	// Title is the question in a few words, Words what hangs on it in a few sentences.
	Title string
	Words []string
	// Answer is the word that goes on without a lock; anything else doesn't.
	Answer string
}

// AskAlone is that question, the same for every skin.
func AskAlone() AloneQuestion {
	return AloneQuestion{
		Title: "Is this warp wound nowhere else?",
		Words: []string{
			"This folder knows no locks, as some network folders and sticks: two windows or computers that wind the " +
				"same " +
				"warp can't be kept apart.",
			"Make sure that no other has it open. If one writes to it all the same, the next pass sees it and " +
				"nothing " +
				"more is counted.",
		},
		Answer: "alone",
	}
}
