#pragma once

#include <string>
#include <string_view>

namespace bulbwright::data {

/// A station's name made readable.
struct StationName {
  std::string name;    ///< "Chico Municipal Airport", never empty
  std::string region;  ///< state or province without the country ("CA" of US-CA), or empty
};

/// Mends the name of a station as the network writes it, by rule:
/// - a state or province at the end goes to `region` ("Searcy Municipal Airport, AR", "Watrous East
///   Sask", "Dunkirk Ny", "Kahoolawe Hawaii Hawaii"; US and CA only);
/// - tags of the service go: what kind of instrument or whose station it is ("(Aut)", "Aws",
/// "Agdm",
///   "(Nexrad)", "No2", "(1)", "&", "*");
/// - abbreviations are written out ("Apt" Airport, "Fd" Field, "Mtn" Mountain, "Ab" Air Base);
/// - a distance is said in words ("Aberdeen 35 Wnw": Aberdeen 35 miles WNW);
/// - small words inside are not capital ("Rosario de la Frontera", "Linton on Ouse");
/// - a name that names nothing ("Approximate Locale (3)", "Became Stn 031491") gives way to the
///   station's number.
/// What the network cut off stays cut off.
StationName mended_name(std::string_view raw, std::string_view country, std::string_view station);

}  // namespace bulbwright::data
