package folders

import "testing"

func TestFolders(t *testing.T) {
	for _, tt := range []struct {
		os, given       string
		env             map[string]string
		records, config string
	}{
		{"linux", "", map[string]string{"HOME": "/home/a"}, "/home/a/.local/share/millside",
			"/home/a/.config/millside/x"},
		{"linux", "", map[string]string{"HOME": "/home/a", "XDG_DATA_HOME": "/d", "XDG_CONFIG_HOME": "/c"},
			"/d/millside", "/c/millside/x"},
		{"linux", "", map[string]string{"HOME": "/home/a", "XDG_DATA_HOME": "d", "XDG_CONFIG_HOME": "c",
			"APPDATA": "/roaming"}, "/home/a/.local/share/millside", "/home/a/.config/millside/x"},
		{"linux", "", map[string]string{"HOME": "home"}, "", ""},
		{"linux", "f", map[string]string{"MILLSIDE_RECORDS": "r"}, "f", ""},
		{"linux", "", map[string]string{"MILLSIDE_RECORDS": "r"}, "r", ""},
		{"darwin", "", map[string]string{"HOME": "/Users/a"}, "/Users/a/.local/share/millside",
			"/Users/a/.config/millside/x"},
		{"windows", "", map[string]string{"APPDATA": `C:\Users\a\AppData\Roaming`, "USERPROFILE": `C:\Users\a`},
			`C:\Users\a\AppData\Roaming\millside`, `C:\Users\a\AppData\Roaming\millside\x`},
		{"windows", "", map[string]string{"APPDATA": `Roaming`, "USERPROFILE": `C:\Users\a`},
			`C:\Users\a\.local\share\millside`, `C:\Users\a\.config\millside\x`},
		{"windows", "", map[string]string{"XDG_DATA_HOME": `\\server\share`, "APPDATA": `C:\r`},
			`\\server\share\millside`, `C:\r\millside\x`},
		{"windows", "", nil, "", ""},
	} {
		s := System{tt.os, func(name string) string { return tt.env[name] }}
		got, err := s.Records(tt.given)
		if got != tt.records || (err == nil) != (tt.records != "") {
			t.Errorf("%s, %q, %v: records in %q (%v), not %q", tt.os, tt.given, tt.env, got, err, tt.records)
		}
		if got := s.Config("x"); got != tt.config {
			t.Errorf("%s, %v: settings in %q, not %q", tt.os, tt.env, got, tt.config)
		}
	}
}
