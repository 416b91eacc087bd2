# Writes the JSON files of a folder into a C++ source as raw string literals, indentation taken out. Run as:
#   cmake -DOUT=file.cpp -DFOLDER=core/catalogue -DHEADER=core/catalogue/built_in_data.h -DTEXTS=catalogue_texts
#         [-DIDS=function] -P embed_texts.cmake
# TEXTS is the function that gives the texts in the order of the file names; IDS one that gives the names themselves,
# without a number in front ("02-squeeze.lesson.json" is "squeeze").
file(GLOB files ${FOLDER}/*.json)
list(SORT files)
get_filename_component(folder_name ${FOLDER} NAME)
set(source "// Generated from the JSON files of ${folder_name}; edit those.\n#include \"${HEADER}\"\n\n")
string(APPEND source "namespace widegate {\nnamespace {\n\nconstexpr std::string_view kTexts[] = {\n")
set(ids "")
foreach(file IN LISTS files)
  file(READ "${file}" text)
  string(REGEX REPLACE "\n *" "" text "${text}")
  string(APPEND source "R\"json(${text})json\",\n")
  get_filename_component(name ${file} NAME)
  string(REGEX REPLACE "^[0-9]*-?([a-z0-9-]*)\\..*$" "\\1" id ${name})
  string(APPEND ids "\"${id}\",\n")
endforeach()
string(APPEND source "};\n")
if(IDS)
  string(APPEND source "constexpr std::string_view kIds[] = {\n${ids}};\n")
endif()
string(APPEND source "\n}  // namespace\n\nstd::span<const std::string_view> ${TEXTS}() { return kTexts; }\n")
if(IDS)
  string(APPEND source "std::span<const std::string_view> ${IDS}() { return kIds; }\n")
endif()
string(APPEND source "\n}  // namespace widegate\n")
file(WRITE "${OUT}" "${source}")
