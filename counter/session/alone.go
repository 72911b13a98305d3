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
			"The records stand in a folder that knows no locks, as some network folders and sticks do. Two windows or " +
				"computers that wind the same warp can't be kept apart there.",
			"Make sure that no other window or computer has this warp open. If one writes to it all the same, it is seen " +
				"at the next pass, and nothing more is counted.",
		},
		Answer: "alone",
	}
}
