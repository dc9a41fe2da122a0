#pragma once
#include "engine/codec/plan_codec.hpp"
#include "engine/plan/catalogue.hpp"

namespace guywright {

inline constexpr std::string_view k_catalogue_format = "guywright-catalogue";
inline constexpr int k_catalogue_version = 1;

struct CatalogueRead {
    InputFaults faults;  ///< all of them, the first 100 listed; usable only when this is empty
    Catalogue catalogue;
    [[nodiscard]] bool ok() const { return faults.empty(); }
};

/// Reads a catalogue file of any bytes. Every fault names its path, what was found and what is allowed.
[[nodiscard]] inline CatalogueRead read_catalogue(std::string_view utf8) {
    CatalogueRead read;
    read.faults = detail::read_document(utf8, {k_catalogue_format, k_catalogue_version, "catalogue"}, read.catalogue).listed;
    return read;
}

[[nodiscard]] inline std::string write_catalogue(const Catalogue& catalogue) {
    return json_text(detail::document_json(k_catalogue_format, k_catalogue_version, catalogue), 2) + "\n";
}

}  // namespace guywright
