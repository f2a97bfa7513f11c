#include "station_names.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <utility>
#include <vector>

namespace bulbwright::data {
namespace {

using Words = std::vector<std::string>;
using Pair = std::pair<std::string_view, std::string_view>;

constexpr std::array us_states{"AK", "AL", "AR", "AZ", "CA", "CO", "CT", "DC", "DE", "FL", "GA",
                               "HI", "IA", "ID", "IL", "IN", "KS", "KY", "LA", "MA", "MD", "ME",
                               "MI", "MN", "MO", "MS", "MT", "NC", "ND", "NE", "NH", "NJ", "NM",
                               "NV", "NY", "OH", "OK", "OR", "PA", "RI", "SC", "SD", "TN", "TX",
                               "UT", "VA", "VT", "WA", "WI", "WV", "WY"};

constexpr std::array canadian_provinces{
    Pair{"Alta", "AB"}, Pair{"Ab", "AB"}, Pair{"Bc", "BC"},   Pair{"BC", "BC"}, Pair{"Man", "MB"},
    Pair{"MB", "MB"},   Pair{"Nb", "NB"}, Pair{"Nfld", "NL"}, Pair{"Nl", "NL"}, Pair{"Ns", "NS"},
    Pair{"NS", "NS"},   Pair{"Nt", "NT"}, Pair{"Nwt", "NT"},  Pair{"Nu", "NU"}, Pair{"NU", "NU"},
    Pair{"Ont", "ON"},  Pair{"ON", "ON"}, Pair{"Pei", "PE"},  Pair{"Qc", "QC"}, Pair{"Que", "QC"},
    Pair{"Sask", "SK"}, Pair{"Yt", "YT"}, Pair{"YT", "YT"}};

/// Words that tell the instrument or the service, anywhere but in front.
constexpr std::array service_words{
    "Aut",  "Auto", "Aut&", "Avt",  "Aws",  "Awos",     "Awrs", "Asos", "Amos",    "Sawrs",
    "Saws", "Agcm", "Agdm", "Agcm", "Rcs",  "Cs",       "Ua",   "Wb",   "Wso",     "Wsfo",
    "Wfo",  "Faa",  "Caa",  "Amo",  "Mo",   "Asa",      "Cda",  "Glos", "Cgs",     "Maps",
    "Mrx",  "Met",  "Rcs",  "Ca/a", "Mrsc", "No2",      "No3",  "No.2", "Climate", "Nexrad",
    "-",    "&",    "*",    "#",    "(Aut", "Composite"};

/// What stands in brackets and names no place.
constexpr std::array service_tags{
    "Aut",     "Auto",     "Auto8",   "Avt",       "Awos",        "Awrs",    "Sawrs",
    "Saws",    "Amos",     "Nexrad",  "Raf",       "Mil",         "Civ/Mil", "Private",
    "Maps",    "Mrx",      "Met",     "Ua",        "Wfo",         "Cg",      "Cgs",
    "Uscg",    "Gafb",     "Fafb",    "Tafb",      "It-Afb",      "In-Afb",  "Swe-Afb",
    "Kor-Afb", "Kor-Army", "Uk-Army", "Ger-Af",    "Ger-Afb",     "Usa-Hp",  "Usa\\af",
    "Can-Mil", "Jgsdf",    "Gnvy",    "Ahp",       "Af Met",      "Tmq-53p", "Rmy",
    "Dead",    "?",        "Lgt-H",   "Flugplatz", "Post Office", "Radar",   "Jns Fd"};

constexpr std::array written_out{Pair{"Aaf", "Army Airfield"},
                                 Pair{"Aab", "Army Airfield"},
                                 Pair{"Ab", "Air Base"},
                                 Pair{"Aero", "Aerodrome"},
                                 Pair{"Afb", "Air Force Base"},
                                 Pair{"AFB", "Air Force Base"},
                                 Pair{"Afs", "Air Force Station"},
                                 Pair{"Airpor", "Airport"},
                                 Pair{"Apt", "Airport"},
                                 Pair{"Aux", "Auxiliary Field"},
                                 Pair{"Cfb", "Canadian Forces Base"},
                                 Pair{"Crk", "Creek"},
                                 Pair{"Fd", "Field"},
                                 Pair{"Ft", "Fort"},
                                 Pair{"Ft.", "Fort"},
                                 Pair{"Il", "Island"},
                                 Pair{"Int", "International"},
                                 Pair{"Isl", "Island"},
                                 Pair{"Mcas", "Marine Corps Air Station"},
                                 Pair{"Mem", "Memorial"},
                                 Pair{"Mt", "Mount"},
                                 Pair{"Mt.", "Mount"},
                                 Pair{"Mtn", "Mountain"},
                                 Pair{"Mtns", "Mountains"},
                                 Pair{"NAS", "Naval Air Station"},
                                 Pair{"Naas", "Naval Auxiliary Air Station"},
                                 Pair{"Nat.", "National"},
                                 Pair{"Pvng", "Proving"},
                                 Pair{"Grnd", "Ground"},
                                 Pair{"Raaf", "RAAF"},
                                 Pair{"Raf", "RAF"},
                                 Pair{"Res.", "Research"},
                                 Pair{"Rgl", "Regional"},
                                 Pair{"Stn", "Station"},
                                 Pair{"Usmc", "Marine Corps"},
                                 Pair{"Minicipal", "Municipal"},
                                 Pair{"County.", "County"},
                                 Pair{"Auxlry", "Auxiliary"},
                                 Pair{"Ag", "Agricultural"},
                                 Pair{"Pt", "Point"}};

constexpr std::array small_words{"and", "at",    "au",   "aux", "bei", "bin", "da", "das", "de",
                                 "del", "der",   "des",  "di",  "do",  "dos", "du", "e",   "en",
                                 "et",  "in",    "la",   "le",  "les", "los", "of", "on",  "the",
                                 "to",  "under", "upon", "van", "von", "y"};

constexpr std::array directions{"N", "Nne", "Ne", "Ene", "E", "Ese", "Se", "Sse",
                                "S", "Ssw", "Sw", "Wsw", "W", "Wnw", "Nw", "Nnw"};

/// The US missile fields number their posts by the alphabet of radio and add the town.
constexpr std::array radio_letters{"Alpha", "Bravo", "Charlie",  "Delta",  "Echo",  "Foxtrot",
                                   "Golf",  "Hotel", "India",    "Juliet", "Julie", "Kilo",
                                   "Lima",  "Mike",  "November", "Oscar"};

template <class List>
bool is_among(const List& list, std::string_view word) {
  return std::any_of(list.begin(), list.end(), [&](std::string_view one) { return one == word; });
}

bool is_number(std::string_view word) {
  return !word.empty() && std::all_of(word.begin(), word.end(),
                                      [](unsigned char c) { return std::isdigit(c) != 0; });
}

std::string upper(std::string_view word) {
  std::string out{word};
  for (char& c : out) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  return out;
}

std::string lower(std::string_view word) {
  std::string out{word};
  for (char& c : out) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return out;
}

Words words_of(std::string_view text) {
  Words words;
  std::string word;
  for (const char c : text) {
    if (c != ' ') {
      word += c;
    } else if (!word.empty()) {
      words.push_back(std::exchange(word, {}));
    }
  }
  if (!word.empty()) words.push_back(word);
  return words;
}

std::string joined(const Words& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : " ") + word;
  return text;
}

/// Brackets whose inside names no place go; others stay, with a space before them.
std::string without_tags(std::string_view raw, bool of_missile_field) {
  std::string out;
  while (!raw.empty()) {
    const std::size_t open = raw.find('(');
    out += raw.substr(0, open);
    if (open == std::string_view::npos) break;
    const std::size_t close = std::min(raw.find(')', open), raw.size());
    const std::string inside = joined(words_of(raw.substr(open + 1, close - open - 1)));
    const bool names_nothing = inside.empty() || is_number(inside) ||
                               is_among(service_tags, inside) ||
                               lower(inside) == lower(joined(words_of(out)));
    if (of_missile_field) {
      out = inside;
    } else if (!names_nothing) {
      out += (out.ends_with(' ') ? "(" : " (") + inside + ")";
    } else {
      out += ' ';
    }
    raw.remove_prefix(std::min(close + 1, raw.size()));
  }
  return out;
}

std::string without_dot(std::string word) {
  if (word.ends_with('.')) word.pop_back();
  return word;
}

/// The state or province named by the last word, which is taken off; empty where there is none.
std::string take_region(Words& words, std::string_view country, std::string_view known = {}) {
  if (words.size() < 2) return {};
  const bool after_comma = words[words.size() - 2].ends_with(',');
  const std::string last = without_dot(words.back());
  std::string region;
  if (country == "US") {
    if (last == "Hawaii") region = "HI";
    if (last.size() == 2 && is_among(us_states, upper(last))) region = upper(last);
  } else if (country == "CA") {
    for (const auto& [word, code] : canadian_provinces) {
      if (word == last) region = code;
    }
  }
  if (region.empty() && !after_comma) return {};
  if (!known.empty() && region != known) return {};  // "Clanton 2 Ne" of Alabama, not Nebraska
  if (!region.empty()) words.pop_back();
  if (words.back().ends_with(',')) words.back().pop_back();
  return region;
}

void drop_service_words(Words& words, std::string_view country) {
  for (std::size_t i = 1; i < words.size();) {
    const bool numbered = (words[i] == "No" || words[i] == "No.") && i + 1 < words.size() &&
                          is_number(words[i + 1]) && i + 2 == words.size();
    // Canada marks an airport by a lone A.
    const bool airport_letter = country == "CA" && words[i] == "A" && i + 1 == words.size();
    const bool foreign = words[i] == "Faa" && country != "US";  // Tahiti Faa A
    const std::size_t count = foreign                                               ? 0
                              : numbered                                            ? 2
                              : airport_letter || is_among(service_words, words[i]) ? 1
                                                                                    : 0;
    if (count == 0) {
      ++i;
      continue;
    }
    words.erase(words.begin() + static_cast<std::ptrdiff_t>(i),
                words.begin() + static_cast<std::ptrdiff_t>(i + count));
  }
}

void write_out(Words& words) {
  for (std::size_t i = 0; i < words.size(); ++i) {
    std::string& word = words[i];
    if (word == "Mt" && i > 0 && i + 1 == words.size()) word = "Mountain";
    // A first word in short is part of the name ("Mt Horeb"), and only the mountains are certain.
    if (i == 0 && word != "Mt" && word != "Mt." && word != "Ft" && word != "Ft.") continue;
    for (const auto& [brief, full] : written_out) {
      if (word == brief) {
        word = full;
        break;
      }
    }
    if (i > 0 && is_among(small_words, lower(word)) && i + 1 < words.size()) word = lower(word);
  }
  for (std::size_t i = 1; i < words.size();) {
    const bool twice =
        words[i] == "Airport" &&
        (words[i - 1] == "Airport" || words[i - 1] == "Airfield" || words[i - 1] == "Base");
    if (twice) {
      words.erase(words.begin() + static_cast<std::ptrdiff_t>(i));
    } else {
      ++i;
    }
  }
}

/// "35 Wnw" at the end: the climate network's stations lie so many miles from a town.
void say_distance(Words& words, std::string_view country) {
  if (country != "US" || words.size() < 3) return;
  std::string& direction = words.back();
  if (!is_among(directions, direction) || !is_number(words[words.size() - 2])) return;
  direction = upper(direction);
  words.insert(words.end() - 1, words[words.size() - 2] == "1" ? "mile" : "miles");
}

bool names_nothing(std::string_view raw) {
  constexpr std::array starts{"Approximate Loc", "Became Stn", "Name Unknown", "Unknown ",
                              "Station No "};
  return std::any_of(starts.begin(), starts.end(),
                     [&](std::string_view start) { return raw.starts_with(start); });
}

}  // namespace

StationName mended_name(std::string_view raw, std::string_view country, std::string_view station) {
  std::string text{raw};
  std::replace(text.begin(), text.end(), '`', '\'');
  std::replace(text.begin(), text.end(), '\\', '/');
  text.erase(std::remove(text.begin(), text.end(), '?'), text.end());
  const Words first = words_of(text);
  const bool of_missile_field = country == "US" && !first.empty() && first.size() > 1 &&
                                is_among(radio_letters, first.front()) && first[1].starts_with('(');
  // The state stands behind the brackets, so it is looked for twice.
  StationName result;
  Words words = words_of(text);
  result.region = take_region(words, country);
  words = words_of(without_tags(joined(words), of_missile_field));
  std::string again = take_region(words, country, result.region);
  if (result.region.empty()) result.region = std::move(again);
  while (country == "US" && words.size() > 1 && words.back() == "Hawaii") words.pop_back();
  drop_service_words(words, country);
  write_out(words);
  say_distance(words, country);
  result.name = joined(words);
  while (!result.name.empty() &&
         std::string_view{"&*-,`'/ "}.find(result.name.back()) != std::string_view::npos) {
    result.name.pop_back();
  }
  if (result.name.empty() || names_nothing(raw)) {
    result.name = "Station " + std::string{station.substr(0, station.find('-'))};
  }
  return result;
}

}  // namespace bulbwright::data
