; The installer for Windows, for one user and without administrator rights. Defined outside: VERSION, FROM (folder of files), OUT.
Unicode true
Name "Walkline"
OutFile "${OUT}"
InstallDir "$LOCALAPPDATA\Programs\Walkline"
RequestExecutionLevel user
SetCompressor /SOLID lzma
Icon "${FROM}\walkline.ico"
!define UNINSTALL "Software\Microsoft\Windows\CurrentVersion\Uninstall\Walkline"
Page directory
Page instfiles
UninstPage uninstConfirm
UninstPage instfiles

Section
  SetOutPath "$INSTDIR"
  File "${FROM}\walkline.exe"
  File "${FROM}\walk.exe"
  File "${FROM}\LICENSE.txt"
  File "${FROM}\THIRD_PARTY_NOTICES.md"
  File "${FROM}\CHANGELOG.md"
  CreateShortcut "$SMPROGRAMS\Walkline.lnk" "$INSTDIR\walkline.exe"
  WriteUninstaller "$INSTDIR\uninstall.exe"
  WriteRegStr HKCU "${UNINSTALL}" "DisplayName" "Walkline"
  WriteRegStr HKCU "${UNINSTALL}" "DisplayVersion" "${VERSION}"
  WriteRegStr HKCU "${UNINSTALL}" "DisplayIcon" "$INSTDIR\walkline.exe"
  WriteRegStr HKCU "${UNINSTALL}" "UninstallString" '"$INSTDIR\uninstall.exe"'
SectionEnd

; The lots stay: they lie in the user's application data, not here.
Section "Uninstall"
  Delete "$SMPROGRAMS\Walkline.lnk"
  Delete "$INSTDIR\walkline.exe"
  Delete "$INSTDIR\walk.exe"
  Delete "$INSTDIR\LICENSE.txt"
  Delete "$INSTDIR\THIRD_PARTY_NOTICES.md"
  Delete "$INSTDIR\CHANGELOG.md"
  Delete "$INSTDIR\uninstall.exe"
  RMDir "$INSTDIR"
  DeleteRegKey HKCU "${UNINSTALL}"
SectionEnd
