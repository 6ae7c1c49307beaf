// The columns of a ranking, each written once: the terminal, JSON, the files and the window make their tables of them.
#pragma once

#include "answers/writers/documents.hpp"

#include <functional>
#include <vector>

namespace pourbook {

struct RankColumn {
    DataColumn column;
    std::function<DataCell(const RankedMetal&)> cell;
    const Property* property = nullptr; // of a value that entered, which the window shows with its story
};

/// The result must outlive them.
std::vector<RankColumn> rank_columns(const RankResult& result, const DocumentSetting& setting);

} // namespace pourbook
