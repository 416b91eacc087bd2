// How much a finding matters.
#pragma once

namespace widegate {

/// Worse ones compare as greater.
enum class Severity { ok, caution, fail };

}  // namespace widegate
