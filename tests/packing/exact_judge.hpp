#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "packing/packing.hpp"

/// A judge of layouts that shares no code with the packer: whole hundredths of a millimetre (where
/// a layout needs them millionths, and two of them allowed) for pairs, straight and round walls,
/// and for ellipses the nearest of all boundary points, found along the curve in extended
/// precision. Sizes asked about are whole tenths of a millimetre.
namespace judge {

/// What is wrong with a layout; empty where nothing is.
std::string fault_of(const bulbwright::Section& section,
                     const std::vector<bulbwright::PackKind>& kinds,
                     const bulbwright::Packing& packing, bulbwright::Millimetres gap,
                     bulbwright::Millimetres wall);

/// The k-th of endless random questions, asked and judged: most bulbs of one kind or of several,
/// own counts, rings or rows. What is wrong, with the question; empty where nothing is.
std::string fault_of_case(std::size_t k);

}  // namespace judge
