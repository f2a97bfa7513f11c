#pragma once

#include <span>
#include <string_view>

#include "catalogue/taxon.hpp"

namespace bulbwright {

/// The words of an enumeration as the catalogue writes them, in the order of the enumerators.
/// For Eaten the last, "unknown", is what an absent row means and is not written.
template <class Enum>
std::span<const std::string_view> words_of();

template <>
std::span<const std::string_view> words_of<Origin>();
template <>
std::span<const std::string_view> words_of<ColdForm>();
template <>
std::span<const std::string_view> words_of<RootingStart>();
template <>
std::span<const std::string_view> words_of<Eaten>();
template <>
std::span<const std::string_view> words_of<Toxicity>();
template <>
std::span<const std::string_view> words_of<Light>();
template <>
std::span<const std::string_view> words_of<Moisture>();
template <>
std::span<const std::string_view> words_of<FoliageDensity>();
template <>
std::span<const std::string_view> words_of<AfterFlowering>();
template <>
std::span<const std::string_view> words_of<PlantBy>();

}  // namespace bulbwright
