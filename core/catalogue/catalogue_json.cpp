#include "core/catalogue/catalogue_json.h"

#include "core/catalogue/built_in_data.h"
#include "core/catalogue/catalogue_check.h"
#include "core/catalogue/catalogue_object.h"
#include "core/field/field_json.h"

namespace widegate {
namespace {

constexpr std::string_view kVersionKey = "widegate_catalogue";
constexpr std::int64_t kVersion = 1;

/// Everything but what rows must be to one another.
Catalogue rows_of_document(const Json& document, Problems& problems) {
  const JsonPath root;
  const bool readable = is_object(document, root, problems) &&
                        version_readable(document, kVersionKey, kVersion, problems);
  return readable ? catalogue_from_object(document, kVersionKey, root, problems) : Catalogue{};
}

}  // namespace

Checked<Catalogue> catalogue_from_json(std::string_view text, const Catalogue& library) {
  const Checked<Json> document = parse_json(text);
  if (!document) return tl::make_unexpected(document.error());
  Problems problems;
  Catalogue catalogue = rows_of_document(*document, problems);
  if (problems.empty()) problems = check_catalogue(catalogue, library, "");
  if (!problems.empty()) return tl::make_unexpected(std::move(problems));
  return catalogue;
}

std::string catalogue_to_json(const Catalogue& catalogue) {
  Json document = Json::object();
  document[std::string(kVersionKey)] = kVersion;
  add_catalogue(document, catalogue);
  return print_json(document);
}

Checked<Catalogue> built_in_catalogue() {
  Catalogue whole;
  Problems problems;
  for (const std::string_view text : catalogue_texts()) {
    const Checked<Json> document = parse_json(text);
    if (!document) return tl::make_unexpected(document.error());
    whole = merged_catalogue(std::move(whole), rows_of_document(*document, problems));
  }
  if (problems.empty()) problems = check_catalogue(whole, {}, "");
  if (!problems.empty()) return tl::make_unexpected(std::move(problems));
  return whole;
}

}  // namespace widegate
