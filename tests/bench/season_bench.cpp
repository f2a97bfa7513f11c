// The figures of docs/season.md: processor time (all cores together), wall time and peak memory of
// `season` against the number of pots,
// a process each. Usage: season_bench [SVG file for the plot]
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include <fmt/format.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

namespace {

namespace fs = std::filesystem;

/// A pot of its own: `n` decides all its sizes and kinds.
std::string pot_text(int n) {
  const std::vector<const char*> low{"tulip-triumph", "tulip-single-late", "narcissus-large-cupped",
                                     "tulip-darwin-hybrid"};
  const std::vector<const char*> high{"crocus-large", "muscari", "iris-reticulata",
                                      "narcissus-miniature"};
  const int wide = 280 + n * 37 % 211;
  std::string shape = "round", top = fmt::format("{}.{} mm", wide, n % 10);
  if (n % 10 == 7) {
    shape = "rectangle";
    top = fmt::format("{} mm x {} mm", wide + 200, 200 + n * 13 % 71);
  } else if (n % 10 == 8) {
    shape = "oval";
    top = fmt::format("{} mm x {} mm", wide + 100, 240 + n * 13 % 71);
  } else if (n % 10 == 9) {
    shape = "half-round";
    top = fmt::format("{} mm x {} mm", wide + 100, 220 + n * 13 % 71);
  }
  return fmt::format(
      R"({{"pot":{{"name":"pot {}","group":"group {}","shape":"{}","top":"{}","height":"{} mm"}},)"
      R"("place":{{"zone":"{}"}},"season":2026,"layers":[{{"taxon":"{}"}},{{"taxon":"{}"}}{}]}})",
      n, n % 7, shape, top, 330 + n * 7 % 90, n % 3 == 0 ? "8b" : "9b",
      low[static_cast<std::size_t>(n / 3) % low.size()],
      high[static_cast<std::size_t>(n / 5) % high.size()],
      n % 4 == 0 ? R"(,{"taxon":"galanthus"})" : "");
}

struct Cost {
  double seconds = 0.0, wall = 0.0, megabytes = 0.0;
};

Cost cost_of(const std::string& folder, const char* format) {
  const auto start = std::chrono::steady_clock::now();
  std::fflush(stdout);
  const pid_t child = fork();
  if (child == 0) {
    if (std::freopen("/dev/null", "w", stdout) == nullptr) _exit(9);
    execl(BULBWRIGHT_BINARY, "bulbwright", "season", folder.c_str(), "--drawer", "200 l",
          "--format", format, "--quiet", static_cast<char*>(nullptr));
    _exit(9);
  }
  int status = 0;
  rusage used{};
  if (child < 0 || wait4(child, &status, 0, &used) != child || !WIFEXITED(status) ||
      WEXITSTATUS(status) > 1)
    std::printf("failed: %s\n", folder.c_str());
  const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - start;
  const auto seconds = [](const timeval& time) {
    return static_cast<double>(time.tv_sec) + 1e-6 * static_cast<double>(time.tv_usec);
  };
  return {seconds(used.ru_utime) + seconds(used.ru_stime), taken.count(),
          static_cast<double>(used.ru_maxrss) / 1024.0};
}

void write_pots(const fs::path& folder, int pots, int different) {
  fs::create_directories(folder);
  for (int n = 0; n < pots; ++n)
    std::ofstream{folder / fmt::format("pot-{:04}.json", n)} << pot_text(n % different);
}

struct Row {
  int pots = 0;
  Cost text, json;
};

void plot(const char* file, const std::vector<Row>& rows) {
  constexpr double width = 520, height = 260, left = 60, bottom = 40;
  double seconds = 0.0, megabytes = 0.0;
  for (const Row& row : rows) {
    seconds = std::max(seconds, row.text.seconds);
    megabytes = std::max(megabytes, row.json.megabytes);
  }
  std::string svg = fmt::format(
      R"(<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {} {}" font-family="sans-serif" font-size="11">)"
      "\n<title>time and peak memory of season against pots, no two alike</title>\n"
      R"(<rect width="100%" height="100%" fill="white"/>)"
      "\n",
      width + 2 * left, height + 2 * bottom);
  const auto x = [&](int pots) { return left + width * pots / rows.back().pots; };
  const auto y = [&](double share) { return bottom + height * (1.0 - share); };
  svg += fmt::format(R"(<path d="M{0} {1}V{2}H{3}" fill="none" stroke="black"/>)"
                     "\n",
                     left, bottom, bottom + height, left + width);
  std::string time = "M", memory = "M";
  for (const Row& row : rows) {
    const double t = y(row.text.seconds / seconds), m = y(row.json.megabytes / megabytes);
    time += fmt::format("{:.1f} {:.1f} ", x(row.pots), t);
    memory += fmt::format("{:.1f} {:.1f} ", x(row.pots), m);
    svg += fmt::format(R"(<circle cx="{0:.1f}" cy="{1:.1f}" r="3" fill="#1b6e3a"/>)"
                       R"(<circle cx="{0:.1f}" cy="{2:.1f}" r="3" fill="#8a4a9c"/>)"
                       R"(<text x="{0:.1f}" y="{3:.1f}" text-anchor="middle">{4}</text>)"
                       "\n",
                       x(row.pots), t, m, bottom + height + 16, row.pots);
  }
  svg += fmt::format(R"(<path d="{}" fill="none" stroke="#1b6e3a"/>)"
                     "\n"
                     R"(<path d="{}" fill="none" stroke="#8a4a9c" stroke-dasharray="4 3"/>)"
                     "\n",
                     time, memory);
  svg += fmt::format(
      R"(<text x="{0}" y="{1}" fill="#1b6e3a">text: up to {2:.1f} s of processor time</text>)"
      "\n"
      R"(<text x="{0}" y="{3}" fill="#8a4a9c">JSON: peak memory up to {4:.0f} MB</text>)"
      "\n</svg>\n",
      left + 10, bottom + 12, seconds, bottom + 28, megabytes);
  std::ofstream{file} << svg;
}

void print(const std::string& what, const Cost& text, const Cost& json) {
  std::printf("%-20s %11.2f %7.2f %5.0f %13.2f %7.2f %5.0f\n", what.c_str(), text.seconds,
              text.wall, text.megabytes, json.seconds, json.wall, json.megabytes);
}

}  // namespace

int main(int argc, char** argv) {
  const fs::path work = fs::temp_directory_path() / fmt::format("season-bench-{}", getpid());
  std::printf("                     text: CPU s  wall s    MB   JSON: CPU s  wall s    MB\n");
  std::vector<Row> rows;
  for (const int pots : {100, 200, 500, 1000}) {
    const fs::path folder = work / std::to_string(pots);
    write_pots(folder, pots, pots);
    rows.push_back({pots, cost_of(folder.string(), "text"), cost_of(folder.string(), "json")});
    const Row& row = rows.back();
    print(std::to_string(pots) + ", no two alike", row.text, row.json);
  }
  const fs::path alike = work / "alike";
  write_pots(alike, 1000, 20);
  const Cost text = cost_of(alike.string(), "text"), json = cost_of(alike.string(), "json");
  print("1000, of 20 sorts", text, json);
  if (argc > 1) plot(argv[1], rows);
  fs::remove_all(work);
  return 0;
}
