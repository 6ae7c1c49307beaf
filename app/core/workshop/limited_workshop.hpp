// A workshop file that is damaged, newer or out of reach: what can still be read is read, nothing is written, and every
// refusal says why.
#pragma once

#include "core/workshop/workshop.hpp"

namespace pourbook {

class LimitedWorkshop final : public Workshop {
public:
    /// `inner` null: nothing can be read either.
    LimitedWorkshop(std::string path, Problem why, std::unique_ptr<Workshop> inner = nullptr)
        : path_(std::move(path)), why_(std::move(why)), inner_(std::move(inner)) {}

    std::string path() const override { return path_; }
    bool exists() const override { return true; }
    Result<std::vector<Entry>> entries(const Kind& kind) override {
        return inner_ ? inner_->entries(kind) : Result<std::vector<Entry>>(why_);
    }
    Result<std::vector<Entry>> newest_prices() override {
        return inner_ ? inner_->newest_prices() : Result<std::vector<Entry>>(why_);
    }
    Result<Entry> entry(const Kind& kind, const std::string& name) override {
        return inner_ ? inner_->entry(kind, name) : Result<Entry>(why_);
    }
    Result<Entry> numbered(const Kind& kind, std::int64_t id) override {
        return inner_ ? inner_->numbered(kind, id) : Result<Entry>(why_);
    }
    Result<std::vector<Change>> changes() override {
        return inner_ ? inner_->changes() : Result<std::vector<Change>>(why_);
    }
    Result<std::unique_ptr<Batch>> begin(const std::string&) override { return why_; }
    Result<Change> undo() override { return why_; }
    Result<Change> redo() override { return why_; }
    Result<bool> back_up(const std::string&) override { return why_; }
    Result<std::int64_t> serial() override { return inner_ ? inner_->serial() : Result<std::int64_t>(why_); }
    std::string stamp() const override { return inner_ ? inner_->stamp() : ""; }

private:
    std::string path_;
    Problem why_;
    std::unique_ptr<Workshop> inner_;
};

} // namespace pourbook
