// widegate_schema FOLDER [--check]: writes the JSON Schemas, or compares them with what is there.
#include <cstdio>
#include <fstream>
#include <iterator>
#include <string>

#include "tools/schema/schema.h"

namespace {

std::string read(const std::string& file) {
  std::ifstream stream(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

}  // namespace

int main(int count, char** arguments) {
  if (count < 2) {
    std::fputs("usage: widegate_schema FOLDER [--check]\n", stderr);
    return 2;
  }
  const bool check = count > 2 && std::string(arguments[2]) == "--check";
  const std::pair<const char*, widegate::Json> schemas[] = {
      {"plan.schema.json", widegate::schema::plan_schema()},
      {"catalogue.schema.json", widegate::schema::catalogue_schema()},
      {"show.schema.json", widegate::schema::show_schema()},
      {"report.schema.json", widegate::schema::report_schema()},
      {"lesson.schema.json", widegate::schema::lesson_schema()},
  };
  int outdated = 0;
  for (const auto& [name, schema] : schemas) {
    const std::string file = std::string(arguments[1]) + "/" + name;
    const std::string text = widegate::print_json(schema) + "\n";
    if (!check) {
      std::ofstream(file, std::ios::binary) << text;
    } else if (read(file) != text) {
      std::fprintf(stderr, "%s is not current: run widegate_schema docs/schema\n", file.c_str());
      ++outdated;
    }
  }
  return outdated == 0 ? 0 : 1;
}
