# Writes the catalogue into a C++ source, so that one binary carries it wherever it runs.
#
#   cmake -DFILES="a.json;b.json" -DOUTPUT=embedded_catalogue.cpp -P embed_catalogue.cmake
#
# Each line of a file becomes one string literal. The compiler joins neighbouring literals, so no single
# literal is long, whatever the size of the file, and UTF-8 is never cut in the middle of a character.

if(NOT FILES)
  message(FATAL_ERROR "embed_catalogue.cmake: no catalogue files given; set FILES")
endif()

set(entries "")
set(count 0)
foreach(file IN LISTS FILES)
  file(READ "${file}" text)
  # The backslash first, or the backslashes added below would be doubled.
  string(REPLACE "\\" "\\\\" text "${text}")
  string(REPLACE "\"" "\\\"" text "${text}")
  string(REPLACE "?" "\\?" text "${text}") # no trigraphs
  string(REPLACE "\n" "\\n\"\n    \"" text "${text}")

  get_filename_component(name "${file}" NAME)
  string(APPEND entries "  EmbeddedFile{\"${name}\"sv,\n    \"${text}\"sv},\n")
  math(EXPR count "${count} + 1")
endforeach()

file(WRITE "${OUTPUT}" "// Made by species-rules/embed_catalogue.cmake; edit the catalogue instead.
#include \"species-rules/embedded_catalogue.hpp\"

#include <array>

namespace nightsow::species_rules {
namespace {

using namespace std::string_view_literals;

constexpr std::array<EmbeddedFile, ${count}> files{
${entries}};

}  // namespace

std::span<const EmbeddedFile> embedded_catalogue() { return files; }

}  // namespace nightsow::species_rules
")
