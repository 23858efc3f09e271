// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <vector>

#include "core/need/area.h"
#include "core/need/assessment.h"
#include "core/need/need_context.h"
#include "core/need/weighed_sample.h"

namespace skeinproof {

// What a role brings to every size: worked out once.
struct RoleBasis {
  const Role* role = nullptr;
  const Yarn* yarn = nullptr;
  std::optional<RoleCalibration> calibration;  // of itself, or of the role it goes along with
  std::vector<SampleLength> samples;           // for the roads by area and by circumference
};
RoleBasis role_basis(const NeedContext& context, const Role& role);

// Three layers of one role in one size with every evidence there is; writes the working of the figure it
// rests on into `step` where asked: Skeins > Planned > Allowance, Swatch, Knitted > parts.
SizeNeed role_need(const NeedContext& context, const RoleBasis& basis, std::size_t size_index,
                   Step* step = nullptr, const NumberStyle& style = {});

}  // namespace skeinproof
