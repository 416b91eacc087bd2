# Writes the built-in catalogue's JSON files into a C++ source as raw string literals, indentation
# taken out. Run as: cmake -DOUT=file.cpp -DFOLDER=core/catalogue -P embed_texts.cmake
file(GLOB files ${FOLDER}/*.json)
list(SORT files)
set(source "// Generated from core/catalogue/*.json; edit those.\n#include \"core/catalogue/built_in_data.h\"\n\n")
string(APPEND source "namespace widegate {\nnamespace {\n\nconstexpr std::string_view kTexts[] = {\n")
foreach(file IN LISTS files)
  file(READ "${file}" text)
  string(REGEX REPLACE "\n *" "" text "${text}")
  string(APPEND source "R\"json(${text})json\",\n")
endforeach()
string(APPEND source "};\n\n}  // namespace\n\nstd::span<const std::string_view> catalogue_texts() { return kTexts; }\n\n}  // namespace widegate\n")
file(WRITE "${OUT}" "${source}")
