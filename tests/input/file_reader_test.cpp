#include "input/file_reader.hpp"

#include <cstdio>
#include <filesystem>
#include <fstream>
#include <thread>

#include <catch2/catch.hpp>
#include <fmt/core.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/error.hpp"

using namespace bulbwright;

namespace {

/// A folder of its own for one test, gone at the end.
class TemporaryFolder {
 public:
  TemporaryFolder() {
    std::string pattern = (std::filesystem::temp_directory_path() / "bulbwright-XXXXXX").string();
    REQUIRE(::mkdtemp(pattern.data()) != nullptr);
    path_ = pattern;
  }
  ~TemporaryFolder() { std::filesystem::remove_all(path_); }
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;
  [[nodiscard]] std::string file(const std::string& name, const std::string& text) const {
    std::ofstream{path_ + "/" + name, std::ios::binary} << text;
    return path_ + "/" + name;
  }
  [[nodiscard]] const std::string& path() const { return path_; }

 private:
  std::string path_;
};

input::InputText read_text(const std::string& path, std::size_t limit) {
  input::InputFiles inputs;
  return input::read_text(path, limit, inputs);
}

std::string fault_of(const std::string& path, std::size_t limit = 10) {
  try {
    (void)read_text(path, limit);
    return "";
  } catch (const InputError& error) {
    return describe(error);
  }
}

std::string cannot(const std::string& path, const std::string& why) {
  return "bulbwright: error: cannot read " + bulbwright::in_quotes(path) + ": " + why + "\n";
}

}  // namespace

TEST_CASE("a file is read whole up to its limit and not beyond", "[file][input]") {
  const TemporaryFolder folder;
  CHECK(read_text(folder.file("ten", "0123456789"), 10).text == "0123456789");
  CHECK(read_text(folder.file("none", ""), 10).text.empty());
  CHECK(read_text(folder.file("nul", std::string{"a\0b", 3}), 10).text.size() == 3);
  const std::string eleven = folder.file("eleven", "01234567890");
  CHECK(fault_of(eleven) == cannot(eleven, "it has more than 10 bytes, the most that is read"));
}

TEST_CASE("what cannot be read is told with its reason", "[file][input]") {
  const TemporaryFolder folder;
  const std::string missing = folder.path() + "/missing";
  CHECK(fault_of(missing) == cannot(missing, "No such file or directory"));
  CHECK(fault_of(folder.path()) == cannot(folder.path(), "it is a directory"));
  CHECK(fault_of("/dev/zero") ==
        cannot("/dev/zero", "it is no regular file (to read from a pipe give - and pipe into it)"));
  CHECK(fault_of("") == "bulbwright: error: the name of the file is empty\n");
  const std::string through = folder.file("plain", "x") + "/y";
  CHECK(fault_of(through) == cannot(through, "Not a directory"));
  if (::geteuid() != 0) {
    const std::string closed = folder.file("closed", "x");
    REQUIRE(::chmod(closed.c_str(), 0) == 0);
    CHECK(fault_of(closed) == cannot(closed, "Permission denied"));
  }
}

TEST_CASE("a named pipe without a writer is refused instead of waited for", "[file][input]") {
  const TemporaryFolder folder;
  const std::string pipe = folder.path() + "/pipe";
  REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
  CHECK(fault_of(pipe) ==
        cannot(pipe, "it is no regular file (to read from a pipe give - and pipe into it)"));
}

TEST_CASE("a pipe that the shell opened is read, within the limit", "[file][input]") {
  const auto through_pipe = [](const std::string& text) {
    int ends[2] = {-1, -1};
    REQUIRE(::pipe(ends) == 0);
    std::thread writer{[&] {
      // A full pipe blocks; the reader takes at most limit + 1 bytes, so what is written is small.
      const ssize_t written = ::write(ends[1], text.data(), text.size());
      (void)written;
      ::close(ends[1]);
    }};
    const std::string path = fmt::format("/dev/fd/{}", ends[0]);
    std::string result;
    try {
      result = read_text(path, 10).text;
    } catch (const InputError& error) {
      result = error.what();
    }
    writer.join();
    ::close(ends[0]);
    return result;
  };
  CHECK(through_pipe("0123456789") == "0123456789");
  CHECK(through_pipe("01234567890").find("it has more than 10 bytes") != std::string::npos);
}

TEST_CASE("what was read is known by the file and not by its name", "[file][input]") {
  const TemporaryFolder folder;
  const std::string read = folder.file("read", "0123456789");
  const std::string link = folder.path() + "/link", second = folder.path() + "/second";
  REQUIRE(::symlink("read", link.c_str()) == 0);
  REQUIRE(::link(read.c_str(), second.c_str()) == 0);
  input::InputFiles inputs;
  const auto known = [&](const std::string& path) {
    struct stat facts {};
    REQUIRE(::stat(path.c_str(), &facts) == 0);
    return inputs.contains(facts.st_dev, facts.st_ino);
  };
  CHECK_FALSE(known(read));
  (void)input::read_text(link, 10, inputs);
  CHECK(known(read));
  CHECK(known(link));
  CHECK(known(second));
  const std::string other = folder.file("other", "0123456789");
  CHECK_FALSE(known(other));
  input::read_blocks(other, inputs, [](std::string_view) { return false; });
  CHECK(known(other));
  // One that is too large was not opened, so its content is no part of any result.
  const std::string large = folder.file("large", "0123456789x");
  CHECK_THROWS_AS(input::read_text(large, 10, inputs), InputError);
  CHECK_FALSE(known(large));
}
