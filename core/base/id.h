// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <compare>
#include <cstdint>

namespace skeinproof {

// A name that never changes for a part of the document, whatever its label, place or neighbours.
// 0 names nothing. Ids of different parts do not mix.
template <class Part>
struct Id {
  std::uint32_t value = 0;
  explicit operator bool() const { return value != 0; }
  auto operator<=>(const Id&) const = default;
};

using SizeId = Id<struct SizePart>;
using MeasurementId = Id<struct MeasurementPart>;
using YarnId = Id<struct YarnPart>;
using FabricId = Id<struct FabricPart>;
using RoleId = Id<struct RolePart>;
using ChartId = Id<struct ChartPart>;
using PieceId = Id<struct PiecePart>;
using SectionId = Id<struct SectionPart>;
using EdgeId = Id<struct EdgePart>;
using WeighingId = Id<struct WeighingPart>;
using DraftId = Id<struct DraftPart>;
using QueryId = Id<struct QueryPart>;
using ChangeId = Id<struct ChangePart>;
using ReadingId = Id<struct ReadingPart>;
using CandidateId = Id<struct CandidatePart>;
using OnHandId = Id<struct OnHandPart>;

}  // namespace skeinproof
