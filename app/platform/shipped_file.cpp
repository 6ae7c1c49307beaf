#include "platform/folders.hpp"

namespace pourbook::platform {

std::string shipped_file(const std::string& name) {
    std::error_code error;
    const std::filesystem::path folder = program_folder();
    for (const auto& place : {folder / name, folder.parent_path() / "share/pourbook" / name})
        if (std::filesystem::exists(place, error)) return place.string();
    return {};
}

} // namespace pourbook::platform
