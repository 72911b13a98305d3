// Package project works out all that follows from what a weaver has decided, beyond the passes themselves. [New]
// makes a [Project] of a spec: from the cloth to the ends and the length, the room on the mill, the yarn, and where
// every end comes to lie in the raddle and the reed. [Choices] ranks the groups in which the ends can be wound.
package project
