// Any bytes: either every fault is named, or the catalogue is sound and comes back from its own text as it was.
#include "engine/codec/catalogue_codec.hpp"

#include <cstddef>
#include <cstdint>
#include <cstdlib>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace guywright;
    const CatalogueRead read = read_catalogue({reinterpret_cast<const char*>(data), size});
    if (!read.ok()) {
        if (!(read.catalogue == Catalogue{})) std::abort();
        return 0;
    }
    if (!find_faults(read.catalogue).empty()) std::abort();
    const CatalogueRead again = read_catalogue(write_catalogue(read.catalogue));
    if (!again.ok() || !(again.catalogue == read.catalogue)) std::abort();
    return 0;
}
