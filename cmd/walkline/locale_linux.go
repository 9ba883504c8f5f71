package main

/*
#include <string.h>

// The toolkit takes the C of C.UTF-8 for the name of a language while its packages start, which is before anything of this program, and
// complains. So the locale of messages is taken out before the Go runtime reads the environment, and that of characters is kept. The
// GNU C library hands its constructors the environment itself; another one may not, and is left alone.
#ifdef __GLIBC__
__attribute__((constructor)) static void unnameC(int argc, char **argv, char **envp) {
	static char kept[3][64];
	static const char *names[] = {"LC_ALL=", "LC_MESSAGES=", "LANG="};
	static const char *instead[] = {"LC_CTYPE=", "LC_MESSAGES=", "LC_CTYPE="};
	for (; envp && *envp; envp++)
		for (int i = 0; i < 3; i++) {
			const char *value = *envp + strlen(names[i]);
			if (strncmp(*envp, names[i], strlen(names[i])) || strncmp(value, "C.", 2) || strlen(value) > 40)
				continue;
			strcat(strcpy(kept[i], instead[i]), i == 1 ? "C" : value);
			*envp = kept[i];
			break;
		}
}
#endif
*/
import "C"
