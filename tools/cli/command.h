// A command of the command line and its options: CLI11 behind a small face, so that one file alone
// reads that large header.
#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace CLI {
class App;
class Option;
}  // namespace CLI

namespace widegate::cli {

/// An option that was just added, to say more about it.
class Option {
 public:
  explicit Option(CLI::Option* option) : option_(option) {}

  /// What stands for its value in the help text.
  Option& type_name(const std::string& name);
  Option& required();
  /// Every value needs the option's name before it.
  Option& one_value_each();
  /// Given together with the other one is bad input.
  Option& excludes(const Option& other);

 private:
  CLI::Option* option_;
};

/// A command whose options are being added. The values must outlive the reading of the command
/// line, which sets those that are given. A name without dashes is an argument by its place.
class Command {
 public:
  explicit Command(CLI::App& app) : app_(app) {}

  Option add_option(const std::string& name, std::string& value, const std::string& help);
  Option add_option(const std::string& name, std::vector<std::string>& values,
                    const std::string& help);
  Option add_flag(const std::string& name, bool& value, const std::string& help);
  /// A whole number from 0 to most.
  Option add_count(const std::string& name, std::optional<std::int64_t>& value, std::int64_t most,
                   const std::string& help);

  /// One of the words; anything else is bad input.
  template <class Value>
  Option add_choice(const std::string& name, Value& value,
                    const std::map<std::string, Value>& words, const std::string& help) {
    std::map<std::string, int> numbers;
    for (const auto& [word, meant] : words) numbers.emplace(word, static_cast<int>(meant));
    return add_words(
        name, [&value](int number) { value = static_cast<Value>(number); }, numbers, help);
  }

  /// --version, which prints these words and ends well.
  void add_version(const std::string& words, const std::string& help);

  /// One of its sub-commands must be given.
  void require_subcommand();
  Command add_subcommand(const std::string& name, const std::string& summary);
  /// What is done once this command has been read.
  void when_read(std::function<void()> chosen);

 private:
  Option add_words(const std::string& name, std::function<void(int)> set,
                   const std::map<std::string, int>& numbers, const std::string& help);

  CLI::App& app_;
};

/// Reads a whole command line: set_up adds the verbs, which must be there afterwards. The exit code
/// of a request for help (0) or of bad input, both of which are printed; nothing when a verb is to
/// be run.
[[nodiscard]] std::optional<int> read_command_line(int argc, char** argv, const char* summary,
                                                   const std::function<void(Command&)>& set_up);

}  // namespace widegate::cli
