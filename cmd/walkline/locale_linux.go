package main

/*
#include <stdlib.h>
#include <string.h>

// The toolkit reads the locale while its packages start, which is before anything of this program, and complains of one that it does not
// know, such as C.UTF-8. So the variables are put aside under other names before the Go runtime reads the environment. The GNU C library
// hands its constructors the environment itself; another one may not, and is left alone.
#ifdef __GLIBC__
__attribute__((constructor)) static void putLocaleAside(int argc, char **argv, char **envp) {
	static const char *names[] = {"LC_ALL=", "LC_MESSAGES=", "LANG=", "LANGUAGE="};
	for (; envp && *envp; envp++)
		for (int i = 0; i < 4; i++) {
			char *aside;
			if (strncmp(*envp, names[i], strlen(names[i])) || !(aside = malloc(strlen(*envp) + sizeof "WALKLINE_")))
				continue;
			*envp = strcat(strcpy(aside, "WALKLINE_"), *envp);
			break;
		}
}
#endif
*/
import "C"

import (
	"os"
	"slices"
	"strings"

	"golang.org/x/text/language"
)

func init() { takeLocaleBack() }

// takeLocaleBack gives the variables of the locale their names back, but for what the toolkit would complain of each time that it reads
// them. Of a locale that names no language the one of characters is kept: the keyboard goes by it.
func takeLocaleBack() {
	for _, name := range []string{"LC_ALL", "LC_MESSAGES", "LANG", "LANGUAGE"} {
		aside := "WALKLINE_" + name
		value, there := os.LookupEnv(aside)
		if !there {
			if value, there = os.LookupEnv(name); !there {
				continue
			}
		}
		os.Unsetenv(aside)
		all := strings.Split(value, ":")
		spoken := slices.DeleteFunc(slices.Clone(all), func(one string) bool { return one != "" && !speakable(one) })
		for i, one := range spoken {
			spoken[i], _, _ = strings.Cut(one, "@") // a modifier: the toolkit takes it for a part of the language
		}
		switch {
		case len(spoken) > 0:
			os.Setenv(name, strings.Join(spoken, ":"))
		case name == "LC_ALL", name == "LANG" && os.Getenv("LC_CTYPE") == "":
			os.Setenv("LC_CTYPE", value)
			fallthrough
		default:
			os.Unsetenv(name)
		}
	}
}

// speakable reports whether a locale such as de_DE.UTF-8@euro names a language, or none by the names that stand for none.
func speakable(locale string) bool {
	locale, _, _ = strings.Cut(locale, "@")
	if locale == "C" || locale == "POSIX" {
		return true
	}
	plain, _, _ := strings.Cut(locale, ".")
	_, err := language.Parse(strings.ReplaceAll(plain, "_", "-"))
	return err == nil
}
