// Answers as documents that every writer takes.
#pragma once

#include "report/tables/data_table.hpp"
#include "usecases/compare.hpp"
#include "usecases/rank.hpp"
#include "usecases/shown.hpp"
#include "usecases/sweep.hpp"
#include "usecases/tradeoff.hpp"
#include "usecases/versus.hpp"

#include <string>

namespace pourbook {

/// What a document needs beside the answer.
struct DocumentSetting {
    const Catalogue& catalogue;
    UnitSystem units = UnitSystem::shown;
    std::string date; // "2026-11-25"
};

Document document_of(const CompareResult& result, const DocumentSetting& setting);
Document document_of(const RankResult& result, const DocumentSetting& setting);
Document document_of(const TradeoffResult& result, const DocumentSetting& setting);
Document document_of(const VersusResult& result, const DocumentSetting& setting);
Document document_of(const SweepResult& result, const DocumentSetting& setting);

} // namespace pourbook
