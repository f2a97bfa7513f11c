#include "cli/plan_many.hpp"

#include <algorithm>
#include <atomic>
#include <exception>
#include <map>
#include <mutex>
#include <optional>
#include <thread>

#include "input/place_resolver.hpp"
#include "input/pot_file_writer.hpp"
#include "plan/planner.hpp"
#include "season/season_pot.hpp"

namespace bulbwright::cli {
namespace {

constexpr unsigned most_threads = 8;

/// All that a plan depends on but the pot's names.
std::string plan_key(const PotFile& pot) {
  Request request = pot.asked.request;
  request.pot.name.clear();
  request.pot.group.clear();
  request.pot.note.clear();
  for (LayerRequest& layer : request.layers) layer.note.clear();
  const bool records = request.place && request.place->records_file;
  return input::write_pot_file(request) + (records ? input::records_path(pot.asked) : "");
}

/// A pot to be planned, with those that are like it.
struct Task {
  std::size_t pot = 0;
  std::shared_ptr<const Plan> plan;
  std::vector<InputFault> faults;
};

std::size_t threads_for(std::size_t tasks) {
  const unsigned cores = std::clamp(std::thread::hardware_concurrency(), 1U, most_threads);
  return std::min<std::size_t>(cores, tasks);
}

/// Calls work(i) for every i below `count`, in any order, on several threads.
/// @throws what the first of them threw.
template <class Work>
void on_threads(std::size_t count, const Work& work) {
  std::atomic<std::size_t> next = 0;
  std::mutex mutex;
  std::exception_ptr fault;
  const auto run = [&] {
    for (std::size_t i = next++; i < count; i = next++) {
      try {
        work(i);
      } catch (...) {
        const std::lock_guard lock{mutex};
        if (!fault) fault = std::current_exception();
        next = count;
      }
    }
  };
  std::vector<std::thread> threads;
  for (std::size_t i = 1; i < threads_for(count); ++i) threads.emplace_back(run);
  run();
  for (std::thread& thread : threads) thread.join();
  if (fault) std::rethrow_exception(fault);
}

}  // namespace

std::vector<std::shared_ptr<const Plan>> plan_many(std::vector<PotFile>& pots,
                                                   const input::Facts& facts, Effort effort,
                                                   PackingCache& packings, Progress& progress) {
  std::vector<Task> tasks;
  std::vector<std::optional<std::size_t>> task_of(pots.size());
  std::map<std::string, std::size_t> index;
  for (std::size_t pot = 0; pot < pots.size(); ++pot) {
    if (!pots[pot].ok()) continue;
    const auto [at, fresh] = index.try_emplace(plan_key(pots[pot]), tasks.size());
    if (fresh) tasks.push_back({pot, nullptr, {}});
    task_of[pot] = at->second;
  }
  index.clear();
  progress.begin("pot", static_cast<int>(tasks.size()));
  on_threads(tasks.size(), [&](std::size_t i) {
    const PotFile& pot = pots[tasks[i].pot];
    try {
      tasks[i].plan = std::make_shared<const Plan>(input::with_faults_located(pot.asked, [&] {
        return make_plan(pot.asked.request,
                         input::context_of(facts, *pot.place_season, effort, packings));
      }));
    } catch (const InputError& error) {
      tasks[i].faults = error.faults();
    }
    progress.next();
  });
  std::vector<std::shared_ptr<const Plan>> plans(pots.size());
  for (std::size_t pot = 0; pot < pots.size(); ++pot) {
    if (!task_of[pot]) continue;
    const Task& task = tasks[*task_of[pot]];
    if (!task.plan) {
      pots[pot].faults = task.faults;
    } else if (task.plan->request == pots[pot].asked.request) {
      plans[pot] = task.plan;
    } else {
      plans[pot] = std::make_shared<const Plan>(with_names_of(pots[pot].asked.request, *task.plan));
    }
  }
  return plans;
}

}  // namespace bulbwright::cli
