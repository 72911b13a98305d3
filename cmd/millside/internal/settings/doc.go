// Package settings finds and reads the weaver's own files: the settings of the screen, and what is at hand.
package settings
