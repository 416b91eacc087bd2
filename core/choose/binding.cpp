#include "core/choose/binding.h"

#include <algorithm>

namespace widegate {
namespace {

std::size_t missed_of_size(const Findings& findings) {
  std::size_t missed = 0;
  for (std::size_t i = 0; i < kRequirementCount; ++i) {
    const auto requirement = static_cast<Requirement>(i);
    missed += is_of_size(requirement) && findings.missed(requirement) ? 1 : 0;
  }
  return missed;
}

void count(std::vector<Binding>& alone, Binding& group, const Findings& findings) {
  const std::size_t missed = findings.count(Met::missed);
  if (missed == 0) return;
  for (std::size_t i = 0; i < kRequirementCount; ++i) {
    if (!findings.missed(static_cast<Requirement>(i))) continue;
    ++alone[i].missed_by;
    alone[i].would_pass += missed == 1 ? 1 : 0;
  }
  const std::size_t of_size = missed_of_size(findings);
  group.missed_by += of_size > 0 ? 1 : 0;
  group.would_pass += of_size == missed ? 1 : 0;
}

}  // namespace

std::string_view Binding::key() const {
  return requirement ? requirement_info(*requirement).key : "size";
}

std::string_view Binding::label() const {
  return requirement ? requirement_info(*requirement).label : "Size: photosites, raster, upscaling";
}

std::vector<Binding> what_binds(std::span<const RankedFormat> formats) {
  std::vector<Binding> bindings(kRequirementCount);
  Binding group;
  for (std::size_t i = 0; i < kRequirementCount; ++i) {
    bindings[i].requirement = static_cast<Requirement>(i);
  }
  for (const RankedFormat& format : formats) count(bindings, group, format.figures.findings);
  const bool more_together =
      std::none_of(bindings.begin(), bindings.end(), [&](const Binding& binding) {
        return is_of_size(*binding.requirement) && binding.would_pass >= group.would_pass;
      });
  if (more_together) bindings.push_back(group);
  std::erase_if(bindings, [](const Binding& binding) { return binding.missed_by == 0; });
  std::stable_sort(bindings.begin(), bindings.end(), [](const Binding& a, const Binding& b) {
    if (a.would_pass != b.would_pass) return a.would_pass > b.would_pass;
    return a.missed_by > b.missed_by;
  });
  return bindings;
}

}  // namespace widegate
