#include "station_names.hpp"

#include <catch2/catch.hpp>

using namespace bulbwright::data;

namespace {

std::string mended(const char* raw, const char* country) {
  const StationName name = mended_name(raw, country, "123450-99999");
  return name.region.empty() ? name.name : name.name + " | " + name.region;
}

}  // namespace

TEST_CASE("a state or province is taken off a station's name", "[station_names]") {
  CHECK(mended("Searcy Municipal Airport, AR", "US") == "Searcy Municipal Airport | AR");
  CHECK(mended("Dunkirk Ny", "US") == "Dunkirk | NY");
  CHECK(mended("Sanderson Tx.", "US") == "Sanderson | TX");
  CHECK(mended("Haina Hawaii Hawaii", "US") == "Haina | HI");
  CHECK(mended("Old Man, AK (1)", "US") == "Old Man | AK");
  CHECK(mended("Watrous East Sask", "CA") == "Watrous East | SK");
  CHECK(mended("Cheticamp Cs, NS", "CA") == "Cheticamp | NS");
  CHECK(mended("Clanton 2 Ne, AL", "US") == "Clanton 2 miles NE | AL");
  CHECK(mended("Neligh Ne., NE", "US") == "Neligh | NE");
  CHECK(mended("Man", "CI") == "Man");
}

TEST_CASE("tags of the service go and brackets that name something stay", "[station_names]") {
  CHECK(mended("Muehlacker (Aut)", "DE") == "Muehlacker");
  CHECK(mended("Klagenfurt(Civ/Mil)", "AT") == "Klagenfurt");
  CHECK(mended("Casino Airport Aws", "AU") == "Casino Airport");
  CHECK(mended("Armidale (Tree Group Nursery)", "AU") == "Armidale (Tree Group Nursery)");
  CHECK(mended("Kahler Asten(Mount)", "DE") == "Kahler Asten (Mount)");
  CHECK(mended("Emley Moor No 2", "GB") == "Emley Moor");
  CHECK(mended("Miramichi A", "CA") == "Miramichi");
  CHECK(mended("Foxtrot (Dix), NE", "US") == "Dix | NE");
  CHECK(mended("Rosario De La Fro &", "AR") == "Rosario de la Fro");
}

TEST_CASE("short forms are written out", "[station_names]") {
  CHECK(mended("Clarinda Apt, IA", "US") == "Clarinda Airport | IA");
  CHECK(mended("Rocky Mtn House (Aut) Alta", "CA") == "Rocky Mountain House | AB");
  CHECK(mended("Aberdeen 35 Wnw, SD", "US") == "Aberdeen 35 miles WNW | SD");
  CHECK(mended("Kingston 1 W, RI", "US") == "Kingston 1 mile W | RI");
  CHECK(mended("Mt Horeb", "US") == "Mount Horeb");
  CHECK(mended("Linton On Ouse", "GB") == "Linton on Ouse");
}

TEST_CASE("a name that names nothing gives way to the number", "[station_names]") {
  CHECK(mended("Approximate Locale (3)", "CN") == "Station 123450");
  CHECK(mended("Became Stn 031491", "GB") == "Station 123450");
  CHECK(mended("?", "CN") == "Station 123450");
}
