// The whole way beside cmark, in one run: text to checked HTML card, and cmark rendering the Markdown of the same
// recipes. One thread. Run it alone: build/tests/bench --benchmark_repetitions=9 --benchmark_enable_random_interleaving=true
#include <benchmark/benchmark.h>
#include <cmark.h>

#include <chrono>
#include <memory>

#include "app/pipeline.hpp"
#include "recipe/phases.hpp"
#include "suite/book.hpp"

using namespace qtn;

namespace {

// The example recipes that use no other file, each as text, as a source and as our own Markdown of it.
struct Page {
  std::unique_ptr<Source> source;
  std::string markdown;
};

const std::vector<Page>& pages() {
  static const std::vector<Page> all = [] {
    std::vector<Page> out;
    for (const std::string& path : tests::example_files()) {
      const std::string text = tests::slurp(tests::root() / "examples" / path);
      if (text.find("\nuse:") != std::string::npos || text.rfind("menu:", 0) == 0) continue;
      Page page{std::make_unique<Source>(path, text), {}};
      Workbench bench;
      Report report;
      const Recipe recipe = compile(*page.source, {}, bench, report);
      Order order;
      print_card(recipe, order, page.markdown, report);
      out.push_back(std::move(page));
    }
    return out;
  }();
  return all;
}

std::int64_t bytes() {
  std::int64_t sum = 0;
  for (const Page& page : pages()) sum += static_cast<std::int64_t>(page.source->text().size());
  return sum;
}

void recipes(benchmark::State& state) {
  state.counters["recipes"] = benchmark::Counter(static_cast<double>(pages().size()) * static_cast<double>(state.iterations()), benchmark::Counter::kIsRate);
}

void parse_only(benchmark::State& state) {
  Tree tree;
  for (auto _ : state)
    for (const Page& page : pages()) {
      parse(page.source->text(), tree);
      benchmark::DoNotOptimize(tree.nodes.data());
    }
  state.SetBytesProcessed(state.iterations() * bytes());
  recipes(state);
}

void parse_and_check(benchmark::State& state) {
  Workbench bench;
  for (auto _ : state)
    for (const Page& page : pages()) {
      Report report;
      Recipe recipe = compile(*page.source, {}, bench, report);
      benchmark::DoNotOptimize(recipe.lines.data());
      bench.spare = std::move(recipe);
    }
  recipes(state);
}

void whole_card(benchmark::State& state, const Order& order) {
  Workbench bench;
  std::string out;
  for (auto _ : state)
    for (const Page& page : pages()) {
      Report report;
      Recipe recipe = compile(*page.source, {}, bench, report);
      out.clear();
      print_card(recipe, order, out, report);
      benchmark::DoNotOptimize(out.data());
      bench.spare = std::move(recipe);
    }
  recipes(state);
}

void card_as_written(benchmark::State& state) {
  Order order;
  order.format = Format::html;
  whole_card(state, order);
}

void card_scaled_two_columns(benchmark::State& state) {
  Order order;
  order.format = Format::html;
  order.request.times = Fraction(3);
  order.request.beside = System::imperial;
  whole_card(state, order);
}

void cmark_of_the_markdown(benchmark::State& state) {
  for (auto _ : state)
    for (const Page& page : pages()) {
      char* const html = cmark_markdown_to_html(page.markdown.data(), page.markdown.size(), CMARK_OPT_DEFAULT);
      benchmark::DoNotOptimize(html);
      std::free(html);
    }
  recipes(state);
}

// A thousand doughs, each with a ferment, two flours and eight shares; no two alike, so that none is remembered.
const std::vector<std::unique_ptr<Source>>& doughs() {
  static const std::vector<std::unique_ptr<Source>> all = [] {
    std::vector<std::unique_ptr<Source>> out;
    for (int i = 0; i < 1000; ++i) {
      const std::string n = std::to_string(i % 9 + 1), odd = std::to_string(300 + i);
      out.push_back(std::make_unique<Source>(
          "dough.qtn",
          "recipe: Dough " + odd + "\nmakes: " + std::to_string(i % 40 + 2) + " loaves of " + odd +
              " g\nmeasures: British\nserves: 8\nkeeps: 3 days room\n\npart: Ferment\ntake: % of strong white flour\n"
              "  100 %  strong white flour\n  6" + n + " %  water\n  0.5 %  fresh yeast\nmethod:\n"
              "  Mix [the flour], [the water] and [the yeast] and [prove overnight in the fridge at 4 °C].\n\n"
              "part: Dough\ntake: % of [strong white flour + wholemeal flour]\n  3" + n + " %  [Ferment]\n"
              "  8" + n + " %  strong white flour\n  1" + std::to_string(9 - i % 9) + " %  wholemeal flour\n"
              "  5" + n + " %  water, at 20 °C\n  " + n + " %  butter\n  2.1 %  fine salt\n"
              "  18 g per kg of [strong white flour + wholemeal flour]  malt extract\n  1." + n + " %  fresh yeast\n"
              "method:\n  Break [the Ferment] into [the water]. Add [the strong white flour], [the wholemeal flour],\n"
              "  [the malt extract], [the yeast] and [the salt] and [knead 8 to 10 min]; work in [the butter].\n\n"
              "  [prove 1 h to 1 h 30 min at room temperature] and [fold 2 times, every 30 min].\n\n"
              "  Shape, [prove 45 min at room temperature] and [bake 35 to 40 min at 210 °C fan].\n"));
    }
    return out;
  }();
  return all;
}

// A thousand recipes of the example book, round and round; those that lean on the kitchen's own measures left out.
std::vector<const Source*> thousand_of_the_book() {
  std::vector<const Source*> sound, out;
  Workbench bench;
  for (const Page& page : pages()) {
    Report report;
    compile(*page.source, {}, bench, report);
    if (!report.has_errors()) sound.push_back(page.source.get());
  }
  for (std::size_t i = 0; i < 1000 && !sound.empty(); ++i) out.push_back(sound[i % sound.size()]);
  return out;
}
std::vector<const Source*> thousand_doughs() {
  std::vector<const Source*> out;
  for (const auto& source : doughs()) out.push_back(source.get());
  return out;
}

// Ratios solved and amounts rounded and written, a thousand recipes at twice their size; the counter tells how much that
// is of the whole way from their texts to cards in HTML.
void ratios_and_rounding(benchmark::State& state, const std::vector<const Source*>& sources) {
  using Clock = std::chrono::steady_clock;
  Workbench bench;
  Report report;
  Order order;
  order.format = Format::html;
  order.request.times = Fraction(2);
  std::vector<Recipe> written, scaled;
  for (const Source* source : sources) {
    written.push_back(compile(*source, {}, bench, report));
    scaled.push_back(scale(written.back(), *order.request.times));
  }
  if (report.has_errors()) return state.SkipWithError("a recipe has errors");
  std::chrono::duration<double> ratios{}, cards{};
  std::string out;
  for (auto _ : state) {
    const auto begin = Clock::now();
    for (std::size_t i = 0; i < written.size(); ++i) {
      solve_ratios(written[i], report);
      const Adapted adapted = show(scaled[i], order.request);
      benchmark::DoNotOptimize(adapted.lines.data());
    }
    const auto middle = Clock::now();
    for (const Source* source : sources) {
      Report mine;
      const Recipe recipe = compile(*source, {}, bench, mine);
      out.clear();
      print_card(recipe, order, out, mine);
      benchmark::DoNotOptimize(out.data());
    }
    ratios += middle - begin, cards += Clock::now() - middle;
    state.SetIterationTime(std::chrono::duration<double>(middle - begin).count());
  }
  state.counters["of_a_card"] = ratios / cards;
}

void ratios_of_the_book(benchmark::State& state) { ratios_and_rounding(state, thousand_of_the_book()); }
void ratios_of_doughs(benchmark::State& state) { ratios_and_rounding(state, thousand_doughs()); }

}  // namespace

BENCHMARK(parse_only);
BENCHMARK(parse_and_check);
BENCHMARK(card_as_written);
BENCHMARK(card_scaled_two_columns);
BENCHMARK(cmark_of_the_markdown);
BENCHMARK(ratios_of_the_book)->UseManualTime();
BENCHMARK(ratios_of_doughs)->UseManualTime();
BENCHMARK_MAIN();
