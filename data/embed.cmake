# Writes one data file as a C++ raw string, so that the program runs from any folder.
# Use: cmake -DIN=file -DOUT=file.cpp -DSYM=symbol -P embed.cmake
# Compilers limit one literal to about 64 KiB in strict mode, hence -Wno-overlength-strings at the caller.
file(READ "${IN}" text)
file(SIZE "${IN}" size)
string(FIND "${text}" ")~data~\"" clash)
if(NOT clash EQUAL -1)
  message(FATAL_ERROR "${IN}: contains the end mark of the raw string")
endif()
file(WRITE "${OUT}" "#include <string_view>\n\nnamespace bulbwright::embedded {\nextern const std::string_view ${SYM};\nconst std::string_view ${SYM}{R\"~data~(${text})~data~\", ${size}};\n}  // namespace bulbwright::embedded\n")
