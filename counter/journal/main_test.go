package journal

import (
	"bufio"
	"fmt"
	"millside/counter"
	"os"
	"testing"
)

// TestMain lets a test start this same binary again as another process that winds: $COUNTER_CHILD says
// what it does and $COUNTER_PATH to which record.
func TestMain(m *testing.M) {
	switch os.Getenv("COUNTER_CHILD") {
	case "":
		os.Exit(m.Run())
	case "hold":
		holdRecord(os.Getenv("COUNTER_PATH"))
	case "wind":
		windRecord(os.Getenv("COUNTER_PATH"))
	}
}

// holdRecord opens a record, says how that went, and keeps it open until its input ends.
func holdRecord(path string) {
	_, err := Open(OS(), path)
	fmt.Println("opened:", err)
	_, _ = bufio.NewReader(os.Stdin).ReadByte()
}

// windRecord lays and takes back passes for as long as it lives. It says "+" before each event and "="
// once it counts, each with one write, so that what it said is known when it is killed.
func windRecord(path string) {
	r, err := Open(OS(), path)
	if err != nil {
		fmt.Println("error:", err)
		os.Exit(1)
	}
	for {
		e := laid(1, r.State().Laid()+1)
		if _, ok := r.State().NextPass(); !ok {
			e = counter.Event{Kind: counter.Recounted, Chain: 1, Pass: 0, Text: "from the start"}
		}
		fmt.Print("+")
		if _, err := r.Append(e); err != nil {
			fmt.Println("error:", err)
			os.Exit(1)
		}
		fmt.Print("=")
	}
}
