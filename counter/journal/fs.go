package journal

import "millside/counter/disk"

// FS is the file system that records are on; see package disk.
type FS = disk.FS

// OS is the real file system.
func OS() FS { return disk.OS() }
