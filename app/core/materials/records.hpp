// The records of a metal, shared by every copy of it until one is changed: a hundred thousand metals of the user's own
// that are like copper hold copper's figures once.
#pragma once

#include "core/materials/record.hpp"

#include <initializer_list>
#include <memory>
#include <utility>
#include <vector>

namespace pourbook {

/// A vector with the usual names. What may change it parts it from the other copies first.
class Records {
public:
    using value_type = Record;
    using iterator = std::vector<Record>::iterator;
    using const_iterator = std::vector<Record>::const_iterator;

    Records() = default;
    Records(std::initializer_list<Record> records) : list_(std::make_shared<std::vector<Record>>(records)) {}

    std::size_t size() const { return list().size(); }
    bool empty() const { return list().empty(); }
    const_iterator begin() const { return list().begin(); }
    const_iterator end() const { return list().end(); }
    const Record& operator[](std::size_t i) const { return list()[i]; }
    const Record& front() const { return list().front(); }
    const Record& back() const { return list().back(); }

    iterator begin() { return own().begin(); }
    iterator end() { return own().end(); }
    Record& operator[](std::size_t i) { return own()[i]; }
    Record& front() { return own().front(); }
    Record& back() { return own().back(); }
    void push_back(Record record) { own().push_back(std::move(record)); }
    void insert(const_iterator before, Record record) {
        const auto place = before - std::as_const(*this).begin();
        own().insert(begin() + place, std::move(record));
    }
    void erase(const_iterator at) {
        const auto place = at - std::as_const(*this).begin();
        own().erase(begin() + place);
    }
    template <class Condition> void erase_if(Condition condition) { std::erase_if(own(), condition); }

private:
    const std::vector<Record>& list() const {
        static const std::vector<Record> none;
        return list_ ? *list_ : none;
    }
    std::vector<Record>& own() {
        if (!list_)
            list_ = std::make_shared<std::vector<Record>>();
        else if (list_.use_count() > 1)
            list_ = std::make_shared<std::vector<Record>>(*list_);
        return *list_;
    }

    std::shared_ptr<std::vector<Record>> list_;
};

} // namespace pourbook
