#include "cli/context.hpp"

#include "answers/metals/data_package.hpp"
#include "platform/files.hpp"

#include <filesystem>

namespace pourbook {
namespace {

namespace fs = std::filesystem;

/// Makes a folder of its own and gives it the name last, so that a failure leaves nothing half-written.
std::optional<Problem> write_folder(const std::vector<PackageFile>& files, const fs::path& folder) {
    const auto failed = [&](const std::error_code& why) {
        return Problem{Problem::Kind::file, "can't write '" + folder.string() + "': " + why.message(), 0};
    };
    std::error_code why;
    if (fs::exists(folder, why))
        return Problem{Problem::Kind::file, "'" + folder.string() + "' is there already: name a new folder", 0};
    const fs::path half = folder.string() + ".part";
    fs::remove_all(half, why);
    if (!fs::create_directories(half, why)) return failed(why);
    for (const PackageFile& file : files)
        if (auto problem = platform::write_file((half / file.name).string(), file.bytes)) {
            fs::remove_all(half, why);
            return problem;
        }
    fs::rename(half, folder, why);
    return why ? std::optional(failed(why)) : std::nullopt;
}

} // namespace

void declare_export(Context& context) {
    auto folder = std::make_shared<std::string>();
    CLI::App* c = context.command("export", "the whole reference as a data package of CSV tables");
    c->add_option("--to", *folder, "a new folder")->required();
    c->callback([&context, folder] {
        context.answer = [&context, folder](const Catalogue& catalogue) {
            const auto files = data_package(catalogue);
            if (const auto problem = write_folder(files, *folder)) return context.failed(*problem);
            return context.printed("Wrote " + std::to_string(files.size()) + " files of data version " +
                                   catalogue.data_version + " to " + *folder + "\n");
        };
    });
}

} // namespace pourbook
