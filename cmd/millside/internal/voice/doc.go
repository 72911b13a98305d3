// Package voice hands texts to a command of the weaver's own, such as one that speaks them. A newer text ends the
// command that still says an older one, and the command ends with the program. Nothing here keeps the winding waiting.
package voice
