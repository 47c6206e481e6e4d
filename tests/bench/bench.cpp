// The whole way beside cmark, in one run: text to checked HTML card, and cmark rendering the Markdown of the same
// recipes. One thread. Run it alone: build/tests/bench --benchmark_repetitions=9 --benchmark_enable_random_interleaving=true
#include <benchmark/benchmark.h>
#include <cmark.h>

#include <memory>

#include "app/pipeline.hpp"
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
      const Recipe recipe = compile(*page.source, {}, bench, report);
      benchmark::DoNotOptimize(recipe.lines.data());
    }
  recipes(state);
}

void whole_card(benchmark::State& state, const Order& order) {
  Workbench bench;
  std::string out;
  for (auto _ : state)
    for (const Page& page : pages()) {
      Report report;
      const Recipe recipe = compile(*page.source, {}, bench, report);
      out.clear();
      print_card(recipe, order, out, report);
      benchmark::DoNotOptimize(out.data());
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

}  // namespace

BENCHMARK(parse_only);
BENCHMARK(parse_and_check);
BENCHMARK(card_as_written);
BENCHMARK(card_scaled_two_columns);
BENCHMARK(cmark_of_the_markdown);
BENCHMARK_MAIN();
