// The workshop's own file as the window holds it: lists read once and kept until something changes, so that a frame
// reads no file.
#pragma once

#include "core/workshop/data.hpp"
#include "core/workshop/workshop.hpp"
#include "questions/workshop/with_workshop.hpp"

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace pourbook {

class WorkshopDesk {
public:
    /// Null: the window has no file; every list is empty and nothing can be kept.
    explicit WorkshopDesk(Workshop* file);

    bool available() const { return file_ != nullptr; }
    std::string path() const { return file_ ? file_->path() : ""; }
    const WorkshopData& data() const { return *data_; }
    /// The same for work off the frame thread: what is read later is another object.
    std::shared_ptr<const WorkshopData> shared_data() const { return data_; }
    /// Of a list that can't be read: the reason, once.
    const std::string& fault() const { return fault_; }
    const std::vector<Entry>& entries(const Kind& kind) { return *shared_entries(kind); }
    std::shared_ptr<const std::vector<Entry>> shared_entries(const Kind& kind);
    std::string last_change();

    /// Rises with each change made here or seen by look().
    std::size_t serial() const { return serial_; }
    /// Takes in what another program has changed meanwhile, a restored backup too. Cheap where nothing has.
    void look();

    /// Checks and keeps. The catalogue holds the workshop's own. Errors: as questions/workshop/keep.hpp; refused where
    /// it would overwrite what is not the entry as it was opened.
    Result<Entry> keep(const Catalogue& catalogue, const Kind& kind, const Entry& entry, const Entry& as_opened);
    std::optional<Problem> remove(const Kind& kind, const Entry& as_opened);
    /// Several new ones as one change: all of them or none. Returns how many. Errors: of the first that can't be kept.
    Result<std::size_t> keep_all(const Catalogue& catalogue, const Kind& kind, const std::vector<Entry>& entries);
    std::optional<Problem> undo();
    std::optional<Problem> redo();

private:
    void read();
    /// Why this entry may not be written over what the file holds now; nothing where it may.
    std::optional<Problem> clash(const Kind& kind, const Entry& entry, const Entry& as_opened);
    /// After a change: reads afresh, or says why there was none.
    std::optional<Problem> read_after(const std::optional<Problem>& problem);

    Workshop* file_;
    std::shared_ptr<const WorkshopData> data_ = std::make_shared<WorkshopData>();
    std::map<std::string, std::shared_ptr<const std::vector<Entry>>> lists_; // by kind
    std::optional<std::string> last_change_;
    std::string fault_;
    std::size_t serial_ = 0;
    std::int64_t seen_ = -1; // the file's own number of changes
    std::string stamp_;
};

} // namespace pourbook
