#include "report/suggest_report.hpp"

#include <nlohmann/json.hpp>

#include "input/pot_file_writer.hpp"
#include "report/common_json.hpp"
#include "report/notice_json.hpp"
#include "report/notice_text.hpp"
#include "report/section_json.hpp"

namespace bulbwright::report {
namespace {

Json layer_json(const Suggestion& suggestion, std::size_t i) {
  const PlannedWave& wave = suggestion.waves[i];
  return Json{{"level", wave.layer},
              {"taxon", wave.taxon},
              {"name", wave.name},
              {"count", suggestion.bulbs[i]},
              {"first", to_iso(wave.first)},
              {"peak", to_iso(wave.peak)},
              {"last", to_iso(wave.last)},
              {"storage_weeks", rounded(suggestion.cold[i].storage_weeks, 0.1)}};
}

Json suggestion_json(const Suggestion& suggestion) {
  Json layers = Json::array();
  for (std::size_t i = 0; i < suggestion.waves.size(); ++i)
    layers.push_back(layer_json(suggestion, i));
  Json reasons = Json::array();
  for (const Remark& reason : suggestion.reasons) reasons.push_back(plain_text(reason));
  for (const Notice& notice : suggestion.mind) reasons.push_back("mind: " + plain_text(notice));
  return Json{{"layers", std::move(layers)},
              {"days_in_flower", suggestion.days_in_flower},
              {"gap_days", suggestion.gap_days},
              {"storage_weeks", rounded(suggestion.storage_weeks, 0.1)},
              {"reasons", std::move(reasons)},
              {"pot", input::pot_file_object(suggestion.request)},
              {"plant", to_iso(suggestion.plant)},
              {"planting", days_json(suggestion.planting)},
              {"longest_run", days_json(suggestion.stretch)},
              {"chance_least_met", rounded(suggestion.chance, 0.001)}};
}

template <class Word>
Json words_json(const std::vector<Word>& words) {
  Json list = Json::array();
  for (const Word word : words) list.push_back(word_of(word));
  return list;
}

/// The flags that say which stacks are wanted.
Json wish_json(const SuggestionWish& wish) {
  return Json{{"window", days_json(wish.window)},
              {"layers", wish.most_layers},
              {"no_storage", wish.no_storage},
              {"safe_for", words_json(wish.safe_for)},
              {"not_eaten_by", words_json(wish.not_eaten_by)},
              {"with", wish.with},
              {"without", wish.without},
              {"best", wish.count}};
}

}  // namespace

std::string suggest_json(const Suggestions& suggestions) {
  Json json = document("bulbwright.suggest/1");
  json["request"] = input::pot_file_object(suggestions.request);
  json["wish"] = wish_json(suggestions.wish);
  json["searched"] = suggestions.stacks;
  json["suggestions"] = Json::array();
  for (const Suggestion& found : suggestions.found)
    json["suggestions"].push_back(suggestion_json(found));
  json["fitting"] = suggestions.fitting;
  json["kinds"] = suggestions.kinds;
  json["place"] = suggestions.place;
  json["window"] = days_json(suggestions.window);
  json["left_out"] = Json::array();
  for (const LeftOut& out : suggestions.left_out)
    json["left_out"].push_back({{"taxon", out.taxon}, {"reason", plain_text(out.reason)}});
  json["notices"] = Json::array();
  for (const Notice& notice : suggestions.notices) json["notices"].push_back(notice_json(notice));
  return document_text(json);
}

}  // namespace bulbwright::report
