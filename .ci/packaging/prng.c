/* What Go asks of Windows' bcryptprimitives.dll, for a wine older than 9 that lacks it. For the test under wine alone: it is never shipped. */
__declspec(dllimport) unsigned char __stdcall SystemFunction036(void *, unsigned long);
__declspec(dllexport) int __stdcall ProcessPrng(unsigned char *to, unsigned long long n) { return SystemFunction036(to, (unsigned long)n); }
int __stdcall DllMainCRTStartup(void *module, unsigned long why, void *reserved) { return 1; }
