#include "tools/cli/command.h"

#include <CLI/CLI.hpp>
#include <utility>

#include "tools/cli/verb.h"

namespace widegate::cli {

Option& Option::type_name(const std::string& name) {
  option_->type_name(name);
  return *this;
}

Option& Option::required() {
  option_->required();
  return *this;
}

Option& Option::one_value_each() {
  option_->allow_extra_args(false);
  return *this;
}

Option& Option::excludes(const Option& other) {
  option_->excludes(other.option_);
  return *this;
}

Option Command::add_option(const std::string& name, std::string& value, const std::string& help) {
  return Option(app_.add_option(name, value, help));
}

Option Command::add_option(const std::string& name, std::vector<std::string>& values,
                           const std::string& help) {
  return Option(app_.add_option(name, values, help));
}

Option Command::add_flag(const std::string& name, bool& value, const std::string& help) {
  return Option(app_.add_flag(name, value, help));
}

Option Command::add_count(const std::string& name, std::optional<std::int64_t>& value,
                          std::int64_t most, const std::string& help) {
  CLI::Option* option = app_.add_option(name, value, help);
  return Option(option->type_name("COUNT")->check(CLI::Range(std::int64_t{0}, most)));
}

Option Command::add_words(const std::string& name, std::function<void(int)> set,
                          const std::map<std::string, int>& numbers, const std::string& help) {
  CLI::Option* option = app_.add_option_function<int>(name, std::move(set), help);
  return Option(option->type_name("WORD")->transform(CLI::CheckedTransformer(numbers)));
}

void Command::add_version(const std::string& words, const std::string& help) {
  app_.set_version_flag("--version", words, help);
}

void Command::require_subcommand() { app_.require_subcommand(1); }

Command Command::add_subcommand(const std::string& name, const std::string& summary) {
  return Command(*app_.add_subcommand(name, summary));
}

void Command::when_read(std::function<void()> chosen) { app_.callback(std::move(chosen)); }

std::optional<int> read_command_line(int argc, char** argv, const char* summary,
                                     const std::function<void(Command&)>& set_up) {
  CLI::App app(summary, "widegate");
  Command whole(app);
  whole.require_subcommand();
  set_up(whole);
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    const bool asked_for = app.exit(error) == static_cast<int>(CLI::ExitCodes::Success);
    return static_cast<int>(asked_for ? ExitCode::fine : ExitCode::bad_input);
  }
  return std::nullopt;
}

}  // namespace widegate::cli
