// Outside opinions on plans: the problem as text for MiniZinc and for z3, one run of the program each, its answer.
#pragma once
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>

#include "plan/problem.hpp"

namespace qtn::tests {

inline bool program_there(const std::string& name) { return std::system(("command -v " + name + " >/dev/null 2>&1").c_str()) == 0; }

// What a program prints about a text; its errors are left out, as MiniZinc has warnings about its own library there.
inline std::string answer_of(const std::string& command, const std::string& text, const std::string& ending) {
  namespace fs = std::filesystem;
  const fs::path file = fs::temp_directory_path() / ("quartern_plan_" + std::to_string(::getpid()) + ending);
  std::ofstream(file) << text;
  std::string out;
  if (FILE* pipe = ::popen((command + " " + file.string() + " 2>/dev/null").c_str(), "r")) {
    char part[4096];
    for (std::size_t got; (got = std::fread(part, 1, sizeof part, pipe)) > 0;) out.append(part, got);
    ::pclose(pipe);
  }
  fs::remove(file);
  return out;
}

inline bool clash_free_run(const plan::Problem& problem, plan::Number a, plan::Number b) {
  return problem.jobs[a].run != plan::kNothing && problem.jobs[a].run == problem.jobs[b].run;
}

// Pairs of bakes that may never share an oven, with the change time either way.
struct Unlike {
  plan::Number a, b;
  plan::Ticks to_b, to_a;
};

// Bakes of one oven, each with the one before it in the list.
inline std::vector<std::pair<plan::Number, plan::Number>> oven_mates(const plan::Problem& problem) {
  std::vector<std::pair<plan::Number, plan::Number>> out;
  for (plan::Number a = 0; a < problem.jobs.size(); ++a)
    for (plan::Number b = a + 1; b < problem.jobs.size(); ++b)
      if (problem.jobs[a].one_oven != plan::kNothing && problem.jobs[a].one_oven == problem.jobs[b].one_oven) {
        out.push_back({a, b});
        break;
      }
  return out;
}

inline std::vector<Unlike> unlike_bakes(const plan::Problem& problem) {
  std::vector<Unlike> out;
  for (plan::Number a = 0; a < problem.jobs.size(); ++a)
    for (plan::Number b = a + 1; b < problem.jobs.size(); ++b) {
      const plan::Job &one = problem.jobs[a], &two = problem.jobs[b];
      if (!one.oven || !two.oven || clash_free_run(problem, a, b)) continue;
      const int apart = one.heat > two.heat ? one.heat - two.heat : two.heat - one.heat;
      if (apart <= problem.ovens.tolerance) continue;
      out.push_back({a, b, two.heats ? 0 : problem.ovens.change, one.heats ? 0 : problem.ovens.change});
    }
  return out;
}

// A bake of the heat that a heating makes, with no heating of its own: in the same oven it begins no later than the heating
// does, or once it is over.
struct Warm {
  plan::Number heating, bake;
};

inline std::vector<Warm> warm_bakes(const plan::Problem& problem) {
  std::vector<Warm> out;
  for (plan::Number a = 0; a < problem.jobs.size(); ++a)
    for (plan::Number b = 0; b < problem.jobs.size(); ++b) {
      const plan::Job &heating = problem.jobs[a], &bake = problem.jobs[b];
      if (!heating.oven || !heating.heats || !bake.oven || bake.heats || clash_free_run(problem, a, b)) continue;
      if (bake.goes_on != plan::kNothing && problem.jobs[bake.goes_on].heats) continue;
      if (heating.heat - bake.heat <= problem.ovens.tolerance && bake.heat - heating.heat <= problem.ovens.tolerance) out.push_back({a, b});
    }
  return out;
}

// MiniZinc: all moments in [from, to]; maximises the first objective and then the second, as one sum whose weights keep
// them apart (of three, Gecode's whole numbers are too short). Jobs are taken to last at least one tick, and jobs of a run
// not to overlap.
std::string minizinc_model(const plan::Problem& problem, plan::Ticks from, plan::Ticks to);
// z3: the rules alone, as assertions; then `objective` asks whether one can reach a value.
std::string smt_rules(const plan::Problem& problem);
std::string smt_reaches(const plan::Problem& problem, std::size_t objective, plan::Ticks value);

}  // namespace qtn::tests
