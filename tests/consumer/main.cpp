#include <cstdio>
#include <fstream>
#include <sstream>

#include <bulbwright/bad_input.hpp>
#include <bulbwright/catalogue.hpp>
#include <bulbwright/packing.hpp>
#include <bulbwright/planner.hpp>
#include <bulbwright/version.hpp>

namespace library = bulbwright::library;

/// Prints the plan of the pot file named, then the version, how many kinds there are and how many
/// bulbs of 40 mm stand in a round pot of 380 mm, 25 mm apart and 10 mm from the wall.
int main(int count, char** arguments) {
  if (count != 2) return 2;
  std::ifstream file{arguments[1]};
  std::ostringstream text;
  text << file.rdbuf();
  try {
    library::Planner planner;
    std::fputs(planner.plan(text.str(), arguments[1]).json.c_str(), stdout);
    library::Outline outline;
    outline.length_mm = 380.0;
    std::fprintf(stderr, "%s %zu %zu\n", library::version, library::kinds().size(),
                 library::pack(outline, 40.0, 25.0, 10.0).points.size());
  } catch (const library::BadInput& bad) {
    std::fputs(bad.what(), stderr);
    return 2;
  }
  return 0;
}
