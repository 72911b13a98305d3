// Package times says how long the hands take. [HandTimes] are the weights of each kind of work, [Pace] is how long
// a pass takes, as it was published or as the weaver's own passes show it, and [WorkSum] counts what is to be done;
// [HandTimes.Span] makes one [TimeSpan] of the three.
package times
