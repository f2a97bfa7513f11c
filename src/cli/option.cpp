#include "cli/option.hpp"

#include "base/text.hpp"

namespace bulbwright::cli {

std::vector<std::string_view> each_of(const std::vector<std::string>& written) {
  std::vector<std::string_view> values;
  for (const std::string& text : written) {
    const std::vector<std::string_view> parts = split(text, ',');
    values.insert(values.end(), parts.begin(), parts.end());
  }
  return values;
}

void OptionGroup::add(const char* spelling, Option::Value value, std::string form, std::string help,
                      std::vector<std::string> words) {
  options_.push_back(
      {spelling, std::move(form), std::move(help), heading_, std::move(words), value});
}

void OptionGroup::text(const char* spelling, std::string& value, const char* form,
                       const char* help) {
  add(spelling, &value, form, help);
}

void OptionGroup::text(const char* spelling, std::optional<std::string>& value, const char* form,
                       const char* help) {
  add(spelling, &value, form, help);
}

void OptionGroup::choice(const char* spelling, std::string& value, std::vector<std::string> words,
                         const std::string& help) {
  std::string form;
  for (const std::string& word : words) form += (form.empty() ? "" : "|") + word;
  add(spelling, &value, std::move(form), help, std::move(words));
}

void OptionGroup::repeated(const char* spelling, std::vector<std::string>& value, const char* form,
                           const char* help) {
  add(spelling, &value, form, help);
}

void OptionGroup::flag(const char* spelling, bool& value, const char* help) {
  add(spelling, &value, "", help);
}

}  // namespace bulbwright::cli
