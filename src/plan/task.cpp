#include "plan/task.hpp"

namespace bulbwright {

const char* to_string(Task task) {
  switch (task) {
    case Task::order_by:
      return "order";
    case Task::bulbs_arrive:
      return "bulbs-arrive";
    case Task::storage_start:
      return "storage-start";
    case Task::storage_check:
      return "storage-check";
    case Task::pot_and_chill:
      return "pot-and-chill";
    case Task::soak:
      return "soak";
    case Task::plant:
      return "plant";
    case Task::water_in:
      return "water-in";
    case Task::top_up:
      return "top-up";
    case Task::keep_moist:
      return "keep-moist";
    case Task::shelter:
      return "shelter";
    case Task::uncover:
      return "uncover";
    case Task::shoots:
      return "shoots";
    case Task::flower:
      return "flower";
    case Task::bring_in:
      return "bring-in";
    case Task::after_flowering:
      return "after-flowering";
  }
  return "";
}

}  // namespace bulbwright
