// Answers as documents that every writer takes.
#pragma once

#include "answers/parts/document.hpp"
#include "answers/parts/source_index.hpp"
#include "questions/drop/sweep.hpp"
#include "questions/metals/check.hpp"
#include "questions/metals/compare.hpp"
#include "questions/metals/sheet.hpp"
#include "questions/metals/value.hpp"
#include "questions/mix/mix.hpp"
#include "questions/rank/rank.hpp"
#include "questions/rank/tradeoff.hpp"
#include "questions/rank/versus.hpp"
#include "questions/say/shown.hpp"

#include <string>

namespace pourbook {

/// What a document needs beside the answer.
struct DocumentSetting {
    const Catalogue& catalogue;
    UnitSystem units = UnitSystem::shown;
    std::string date; // "2026-11-25"
};

Document document_of(const SheetResult& result, const DocumentSetting& setting);
Document document_of(const ValueResult& result, const DocumentSetting& setting);
Document document_of(const CompareResult& result, const DocumentSetting& setting);
Document document_of(const RankResult& result, const DocumentSetting& setting);
Document document_of(const TradeoffResult& result, const DocumentSetting& setting);
Document document_of(const VersusResult& result, const DocumentSetting& setting);
Document document_of(const SweepResult& result, const DocumentSetting& setting);
Document document_of(const MixResult& result, const DocumentSetting& setting);
Document document_of(const CheckResult& result, const DocumentSetting& setting);
Document document_of(const std::vector<const Reference*>& references, const DocumentSetting& setting);
Document taken_document(const Reference& reference, const std::vector<Taken>& taken, const DocumentSetting& setting);

} // namespace pourbook
