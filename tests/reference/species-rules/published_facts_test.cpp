#include "species-rules/catalogue.hpp"
#include "species-rules/development.hpp"
#include "species-rules/rule_fields.hpp"
#include "species-rules/seed_parameters.hpp"
#include "species-rules/viability.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <iostream>
#include <iterator>
#include <set>
#include <string>
#include <string_view>

// What publications say that the entry does not rest on, against what the catalogue says. A row
// that disagrees stays in, with why: the share that agrees is printed, and must not fall.
namespace nightsow::species_rules {
namespace {

/// At least this share of the rows agrees; what is left are the rows that say why they do not.
constexpr double share_demanded = 0.8;
constexpr std::size_t rows_demanded = 80;

/// What a fact is about.
enum class About { temperature, days, longevity, light, size, share, treatment, season, caution };

/// At least so many rows of a kind rest on publications about the kind of plant itself that no
/// entry of the catalogue rests on.
struct Demand {
  About about;
  std::string_view name;
  int independent;
};

constexpr Demand demands[] = {{About::temperature, "temperature", 18},
                              {About::days, "days", 12},
                              {About::longevity, "longevity", 6},
                              {About::light, "light", 8},
                              {About::size, "size", 8},
                              {About::share, "share", 3},
                              {About::treatment, "treatment", 6},
                              {About::season, "season", 5},
                              {About::caution, "caution", 8}};

struct Fact {
  std::string_view taxon;
  About about;
  std::string_view claim; ///< what is asserted of the rule
  bool (*agrees)(const Rule&);
  std::string_view source;
  std::string_view locator;
  std::string_view listed_as = {}; ///< its id, where other entries of the catalogue rest on it
  std::string_view differs = {};   ///< why the rule says otherwise; empty: it should agree
};

double rate(const Rule& rule, double seed_c) {
  const CardinalTemperatures cardinal = seed_parameters(rule).cardinal;
  return thermal_rate(seed_c, cardinal) / thermal_rate(cardinal.optimum_c, cardinal);
}

/// The fastest temperatures of the rule and of the publication have some in common.
bool best_within(const Rule& rule, double from_c, double to_c) {
  const Estimate& optimum = *rule.development.optimum_c;
  return optimum.low <= to_c && from_c <= optimum.high;
}

/// Published share of seed that came up where all was right.
bool share_possible(const Rule& rule, double share) {
  const Estimate& expected = *rule.seed.germination_share;
  return expected.low <= share && share <= expected.high;
}

/// The longest life that the rule thinks possible leaves at least so many alive.
bool may_live(const Rule& rule, double years, double share) {
  return share_alive(rule.seed.half_life_years->high, years) >= share;
}

bool overlap(double from, double to, double low, double high) {
  return low <= to && from <= high;
}

bool first_up_within(const Rule& rule, double from_day, double to_day) {
  const Estimate& look = *rule.seedling.first_look_days;
  return overlap(from_day, to_day, look.low, look.high);
}

bool most_up_within(const Rule& rule, double from_day, double to_day) {
  const Estimate& look = *rule.seedling.main_look_days;
  return overlap(from_day, to_day, look.low, look.high);
}

/// Half of the seed, at a steady temperature.
bool half_up_within(const Rule& rule, double seed_c, double from_day, double to_day) {
  const double a_day = thermal_rate(seed_c, seed_parameters(rule).cardinal);
  const Estimate& sum = *rule.development.thermal_time_c_d;
  return a_day > 0.0 && overlap(from_day, to_day, sum.low / a_day, sum.high / a_day);
}

bool half_life_overlaps(const Rule& rule, double from_years, double to_years) {
  const Estimate& half_life = *rule.seed.half_life_years;
  return overlap(from_years, to_years, half_life.low, half_life.high);
}

/// Aged fast: half of it dead, by the viability equation.
bool half_dead_within_days(
    const Rule& rule, double store_c, double humidity, double from_day, double to_day) {
  const double as_fast = ageing_factor(store_c, humidity) / 365.25;
  return half_life_overlaps(rule, from_day * as_fast, to_day * as_fast);
}

// The classes of size by the longest side, mm, as the catalogue's README has them.
bool is_of_mm(const Rule& rule, double from_mm, double to_mm) {
  switch (rule.seed.size->value) {
  case SeedSize::dust:
    return overlap(from_mm, to_mm, 0.0, 0.7);
  case SeedSize::fine:
    return overlap(from_mm, to_mm, 0.5, 1.5);
  case SeedSize::small:
    return overlap(from_mm, to_mm, 1.0, 3.0);
  case SeedSize::medium:
    return overlap(from_mm, to_mm, 2.0, 6.0);
  case SeedSize::large:
  case SeedSize::fleshy:
    return to_mm >= 4.0;
  }
  return false;
}

bool warns_of(const Rule& rule, std::string_view code) {
  return std::ranges::any_of(rule.cautions,
                             [code](const Remark& caution) { return caution.value == code; });
}

bool is_poisonous(const Rule& rule) {
  return warns_of(rule, "toxic_all_parts") || warns_of(rule, "bulb_toxic");
}

bool wants_light(const Rule& rule) {
  return rule.sowing.light->value <= Light::helpful;
}

bool does_without_light(const Rule& rule) {
  return rule.sowing.light->value >= Light::indifferent;
}

bool is_nicked(const Rule& rule) {
  return rule.sowing.scarify->value <= Treatment::helpful;
}

bool answers_smoke(const Rule& rule) {
  return rule.sowing.smoke->value <= Treatment::helpful;
}

bool starts(const Rule& rule, Start start) {
  return rule.gate.start->value == start;
}

bool grows(const Rule& rule, Growth growth) {
  return rule.gate.growth->value == growth;
}

constexpr std::string_view makena = "Makena, Matsiliza-Mlathi & Kleynhans, Seed propagation and "
                                    "seed anatomy of three Eucomis species, 2018";
constexpr std::string_view high_altitude =
    "Kulkarni, Sparg & van Staden, Seed germination of valuable high-altitude medicinal plants of "
    "southern Africa, 2005";
constexpr std::string_view rhythm = "Gutterman & Gendler, Annual rhythm of germination of seeds of "
                                    "Mesembryanthemum nodiflorum 32 years after collection, 2005";
constexpr std::string_view position =
    "Gutterman, Long-term seed position influences on seed germinability of Mesembryanthemum "
    "nodiflorum, 1994";
constexpr std::string_view syndromes = "Newton, Mackenzie, Lamont and others, Fire-mediated "
                                       "germination syndromes in Leucadendron, 2021";
constexpr std::string_view aloes = "Abihudi and others, Species-specific responses of Aloe seed "
                                   "germination to environmental conditions in Tanzania, 2020";
constexpr std::string_view velutina =
    "Silva and others, Storage and methods for overcoming dormancy of the coral tree seeds";
constexpr std::string_view anemone =
    "Horovitz and others 1975, as cited by a study of grazing and Anemone coronaria, 2014";
constexpr std::string_view daisies =
    "Oliver, Jimoh & Laubscher, Germination ecology of three Asteraceae annuals in the "
    "winter-rainfall region of South Africa: a review, 2022";
constexpr std::string_view ursinia =
    "Steyn and others, Factors influencing the phenology of Ursinia cakilefolia, 1996";
constexpr std::string_view thianschanica =
    "Practical methods for breaking seed dormancy in a wild ornamental tulip species Tulipa "
    "thianschanica, Agronomy 10:1765, 2020";
constexpr std::string_view tulips =
    "Dormancy of seeds as compared with dormancy of bulbs in tulips, Acta Horticulturae 47, 1975";
constexpr std::string_view negev =
    "The effect of temperature on seed germination in three common bulbous plants of the central "
    "Negev, 1990";
constexpr std::string_view peru =
    "Effect of light on the germination of seeds of Peruvian cacti, Acta Botanica Mexicana";
constexpr std::string_view shaded =
    "Cornea-Cipcigan and others, Gibberellic acid can improve seed germination and ornamental "
    "quality of selected Cyclamen species, 2020";
constexpr std::string_view homeria = "Federal noxious weed disseminules: Moraea section Homeria";
constexpr std::string_view landcare =
    "Keith Turnbull Research Institute, Wild watsonia (Landcare Note LC0251), 2000";
constexpr std::string_view karoo = "Germination patterns in the Succulent Karoo Biome, 2004";
constexpr std::string_view six_species =
    "McKenzie, Franke & Dunster, The toxicity to cattle and bufadienolide content of six "
    "Bryophyllum species, 1987";
constexpr std::string_view union_nine =
    "Steyn, Recent investigations into the toxicity of known and unknown poisonous plants in the "
    "Union of South Africa IX, about 1938";
constexpr std::string_view union_twelve =
    "Steyn, Recent investigations into the toxicity of known and unknown poisonous plants in the "
    "Union of South Africa XII, about 1939";
constexpr std::string_view cucurbits = "Wehner, Naegele, Myers and others, Cucurbits, 2020";
constexpr std::string_view desert_rose =
    "McLaughlin & Garofalo, The desert rose, Adenium obesum: nursery production (extension sheet)";
constexpr std::string_view oil_seed =
    "Fotouo and others, phenols, malondialdehyde and viability of stored Moringa oleifera seed";

constexpr std::string_view watsonias =
    "Certain aspects of the biology of Watsonia, master thesis, University of Cape Town, 1974";
constexpr std::string_view boab =
    "Turner & Dixon, Seed dormancy and germination in the Australian baobab, Adansonia gregorii F. "
    "Muell., 2009";
constexpr std::string_view boab_sheet =
    "Boab, Adansonia gregorii: plant notes (sheet for gardeners "
    "in the south-west of Western Australia)";
constexpr std::string_view sidoides =
    "Grierson and others on seed germination of Pelargonium sidoides (title not seen)";
constexpr std::string_view kurrajong = "FloraBank, Brachychiton populneus (species sheet)";
constexpr std::string_view wurmbea_sheet =
    "Wurmbea dioica (sheet of a grassy woodlands network, Australia)";
constexpr std::string_view understorey =
    "Understorey Network, Tasmania, Carpobrotus rossii (plant database)";
constexpr std::string_view ista =
    "International Seed Testing Association, International rules for seed testing, table 5A";
constexpr std::string_view fast_aged = "A rapid and sensitive method to assess seed longevity "
                                       "through accelerated aging in an invasive plant species, "
                                       "Plant Methods 2020";
constexpr std::string_view lachenalia_weed =
    "Florabase, Western Australian Herbarium, Lachenalia bulbifera: management notes";
constexpr std::string_view kalanchoe =
    "Eldabh, Fredericq, Maton & de Greef, Photophysiology of Kalanchoë seed germination, 1974";
constexpr std::string_view argyroderma = "Argyroderma (encyclopaedia article, after Hartmann)";
constexpr std::string_view victoria =
    "Walsh, Aizoaceae, in Flora of Victoria, vol. 3, 1996 (VicFlora)";
constexpr std::string_view south_australia =
    "South Australian Seed Conservation Centre, Plants of South Australia";
constexpr std::string_view grape_weeds =
    "Identification key to weed seeds among table grapes, fact sheet of Portulaca oleracea";
constexpr std::string_view baobab = "Wickens, The baobab: Africa's upside-down tree, 1982";
constexpr std::string_view cancer_bush =
    "Mkhwanazi and others on dormancy of cancer bush seed (title not seen), Scientific Papers "
    "Series B, Horticulture 67";
constexpr std::string_view gloriosa =
    "Shinde and others on seed coat and imbibition of Gloriosa superba (title not seen)";
constexpr std::string_view from_memory = "from memory, not looked up";

// Each row: what the abstract or page says, read as such; the locator says where it was read.
constexpr Fact facts[] = {
    {"Eucomis comosa",
     About::share,
     "87 % came up",
     [](const Rule& r) { return share_possible(r, 0.87); },
     makena,
     "abstract"},
    {"Eucomis autumnalis",
     About::share,
     "80 % emerged",
     [](const Rule& r) { return share_possible(r, 0.8); },
     makena,
     "abstract"},
    {"Eucomis",
     About::temperature,
     "held back at 10 °C",
     [](const Rule& r) { return r.development.base_c->high >= 10.0; },
     makena,
     "abstract"},
    {"Eucomis",
     About::temperature,
     "does well at 20 °C",
     [](const Rule& r) { return rate(r, 20) >= 0.5; },
     makena,
     "abstract"},
    {"Eucomis",
     About::temperature,
     "worse at 30 than at 20 °C",
     [](const Rule& r) { return rate(r, 30) < rate(r, 20); },
     makena,
     "abstract"},
    {"Drimia capitata",
     About::temperature,
     "17 to 23 °C is among the fastest",
     [](const Rule& r) { return best_within(r, 17, 23); },
     high_altitude,
     "abstract"},
    {"Drimia capitata",
     About::light,
     "light promotes",
     wants_light,
     high_altitude,
     "abstract",
     {},
     "the family is indifferent; one grassland species is not enough to move the genus"},
    {"Mesembryanthemum nodiflorum",
     About::longevity,
     "one in ten may live 31 years in a room",
     [](const Rule& r) { return may_live(r, 31, 0.1); },
     rhythm,
     "abstract"},
    {"Mesembryanthemum nodiflorum",
     About::season,
     "germinates in the cool season",
     [](const Rule& r) { return starts(r, Start::cool); },
     rhythm,
     "abstract"},
    {"Mesembryanthemum nodiflorum",
     About::temperature,
     "germinates at 15 °C",
     [](const Rule& r) { return rate(r, 15) > 0.3; },
     rhythm,
     "abstract"},
    {"Mesembryanthemum nodiflorum",
     About::temperature,
     "some come at 25 °C",
     [](const Rule& r) { return rate(r, 25) > 0; },
     rhythm,
     "abstract"},
    {"Mesembryanthemum nodiflorum",
     About::longevity,
     "a fifth may live 22 years",
     [](const Rule& r) { return may_live(r, 22, 0.2); },
     position,
     "abstract"},
    {"Mesembryanthemum nodiflorum",
     About::light,
     "more in the dark than in light",
     does_without_light,
     position,
     "abstract",
     {},
     "mesembs are called light-loving as a family; the entry does not except it"},
    {"Mesembryanthemum nodiflorum",
     About::temperature,
     "germinates at 10 °C",
     [](const Rule& r) { return rate(r, 10) > 0.2; },
     position,
     "abstract"},
    {"Leucadendron",
     About::treatment,
     "smoke promotes the soil-stored kinds",
     answers_smoke,
     syndromes,
     "abstract"},
    {"Aloe",
     About::temperature,
     "25 °C is well within",
     [](const Rule& r) { return rate(r, 25) > 0.6; },
     aloes,
     "abstract"},
    {"Aloe",
     About::temperature,
     "25 to 30 °C is among the best",
     [](const Rule& r) { return best_within(r, 25, 30); },
     aloes,
     "abstract"},
    {"Aloe", About::light, "does without light", does_without_light, aloes, "abstract"},
    {"Erythrina",
     About::treatment,
     "rubbing or nicking overcomes the coat",
     is_nicked,
     velutina,
     "abstract"},
    {"Erythrina",
     About::longevity,
     "half may live 25 months",
     [](const Rule& r) { return may_live(r, 2.1, 0.5); },
     velutina,
     "abstract"},
    {"Anemone coronaria",
     About::temperature,
     "10 to 15 °C is among the fastest",
     [](const Rule& r) { return best_within(r, 10, 15); },
     anemone,
     "discussion"},
    {"Anemone coronaria",
     About::light,
     "needs no light",
     does_without_light,
     anemone,
     "discussion"},
    {"Arctotis",
     About::season,
     "fresh seed is not ripe",
     [](const Rule& r) { return r.seed.after_ripening_c_d->high >= 300; },
     daisies,
     "abstract"},
    {"Ursinia cakilefolia",
     About::season,
     "wants the cool from sowing on",
     [](const Rule& r) { return starts(r, Start::cool); },
     ursinia,
     "abstract"},
    {"Ursinia cakilefolia",
     About::season,
     "grows in the winter",
     [](const Rule& r) { return grows(r, Growth::winter); },
     ursinia,
     "abstract"},
    {"Tulipa",
     About::temperature,
     "germinates at 4 °C",
     [](const Rule& r) { return rate(r, 4) > 0.3; },
     thianschanica,
     "abstract"},
    {"Tulipa",
     About::temperature,
     "hardly any at 20 °C",
     [](const Rule& r) { return rate(r, 20) < 0.1; },
     thianschanica,
     "abstract"},
    {"Tulipa",
     About::share,
     "80.7 % came up",
     [](const Rule& r) { return share_possible(r, 0.807); },
     thianschanica,
     "abstract"},
    {"Tulipa",
     About::season,
     "under 15 °C its rest is broken",
     [](const Rule& r) { return r.gate.night_limit_c && r.gate.night_limit_c->value <= 15; },
     tulips,
     "abstract"},
    {"Tulipa",
     About::temperature,
     "5 °C breaks it best",
     [](const Rule& r) { return best_within(r, 5, 5); },
     tulips,
     "abstract"},
    {"Tulipa",
     About::temperature,
     "poor at 20 to 25 °C",
     [](const Rule& r) { return rate(r, 22) < 0.1; },
     negev,
     "abstract"},
    {"Opuntia", About::light, "light promotes", wants_light, peru, "abstract, Opuntia macbridei"},
    {"Cyclamen persicum",
     About::light,
     "short light is no loss",
     does_without_light,
     shaded,
     "abstract"},
    {"Moraea flaccida",
     About::size,
     "seed of 1 to 2 mm",
     [](const Rule& r) {
       return r.seed.size->value == SeedSize::fine || r.seed.size->value == SeedSize::small;
     },
     homeria,
     "fact sheet, description"},
    {"Moraea flaccida",
     About::caution,
     "poisonous to stock",
     is_poisonous,
     homeria,
     "fact sheet, general"},
    {"Moraea miniata",
     About::caution,
     "a weed in places",
     [](const Rule& r) { return warns_of(r, "weed_in_some_regions"); },
     homeria,
     "fact sheet, general"},
    {"Watsonia meriana",
     About::season,
     "leaves in winter, rests in summer",
     [](const Rule& r) { return grows(r, Growth::winter); },
     landcare,
     "life cycle"},
    {"Watsonia meriana",
     About::caution,
     "a weed in places",
     [](const Rule& r) { return warns_of(r, "weed_in_some_regions"); },
     landcare,
     "status"},
    {"Tylecodon",
     About::temperature,
     "15 to 20 °C is among the fastest",
     [](const Rule& r) { return best_within(r, 15, 20); },
     karoo,
     "abstract, the biome as a whole",
     "succulent-karoo-germination-2004"},
    {"Crassula columnaris",
     About::temperature,
     "15 to 20 °C is among the fastest",
     [](const Rule& r) { return best_within(r, 15, 20); },
     karoo,
     "abstract, the biome as a whole",
     "succulent-karoo-germination-2004"},
    {"Othonna",
     About::temperature,
     "15 to 20 °C is among the fastest",
     [](const Rule& r) { return best_within(r, 15, 20); },
     karoo,
     "abstract, the biome as a whole",
     "succulent-karoo-germination-2004"},
    {"Bulbine",
     About::temperature,
     "15 to 20 °C is among the fastest",
     [](const Rule& r) { return best_within(r, 15, 20); },
     karoo,
     "abstract, the biome as a whole",
     "succulent-karoo-germination-2004"},
    {"Monsonia",
     About::temperature,
     "15 to 20 °C is among the fastest",
     [](const Rule& r) { return best_within(r, 15, 20); },
     karoo,
     "abstract, the biome as a whole",
     "succulent-karoo-germination-2004"},
    {"Bryophyllum pinnatum",
     About::caution,
     "poisonous to stock",
     is_poisonous,
     six_species,
     "abstract"},
    {"Kalanchoe daigremontiana",
     About::caution,
     "poisonous to stock",
     is_poisonous,
     six_species,
     "abstract"},
    {"Kalanchoe rotundifolia", About::caution, "poisonous", is_poisonous, union_twelve, "abstract"},
    {"Ornithogalum thyrsoides",
     About::caution,
     "poisonous",
     is_poisonous,
     union_twelve,
     "abstract"},
    {"Cotyledon wallichii", About::caution, "poisonous", is_poisonous, union_nine, "abstract"},
    {"Drosanthemum",
     About::caution,
     "poisonous",
     is_poisonous,
     union_nine,
     "abstract, probably D. hispidum",
     {},
     "one lot of doubtful name; growers do not treat the genus as such"},
    {"Kedrostis",
     About::temperature,
     "poor under 15 °C",
     [](const Rule& r) { return rate(r, 14) < 0.35; },
     cucurbits,
     "seed germination, the family"},
    {"Kedrostis",
     About::temperature,
     "25 to 30 °C is among the best",
     [](const Rule& r) { return best_within(r, 25, 30); },
     cucurbits,
     "seed germination, the family"},
    {"Momordica",
     About::days,
     "first seedlings within two weeks",
     [](const Rule& r) { return r.seedling.first_look_days->value <= 14; },
     cucurbits,
     "seed germination, the family"},
    {"Momordica",
     About::light,
     "light does not help",
     does_without_light,
     cucurbits,
     "seed germination, the family"},
    {"Adenium obesum", About::caution, "poisonous", is_poisonous, desert_rose, "classification"},
    {"Moringa oleifera",
     About::longevity,
     "half may live a year in a room",
     [](const Rule& r) { return may_live(r, 1, 0.5); },
     oil_seed,
     "highlights"},
    // Temperature.
    {"Tulbaghia",
     About::temperature,
     "17 to 23 °C is among the fastest",
     [](const Rule& r) { return best_within(r, 17, 23); },
     high_altitude,
     "abstract, T. alliacea"},
    {"Watsonia",
     About::temperature,
     "15 to 18 °C is among the fastest",
     [](const Rule& r) { return best_within(r, 15, 18); },
     watsonias,
     "abstract, W. humilis and W. tabularis"},
    {"Adansonia gregorii",
     About::temperature,
     "30 to 35 °C is among the fastest",
     [](const Rule& r) { return best_within(r, 30, 35); },
     boab,
     "abstract"},
    {"Adansonia gregorii",
     About::temperature,
     "slower at 20 than at 30 °C",
     [](const Rule& r) { return rate(r, 20) < rate(r, 30); },
     boab,
     "abstract"},
    {"Pelargonium sidoides",
     About::temperature,
     "worse at 30 than at 25 °C",
     [](const Rule& r) { return rate(r, 30) < rate(r, 25); },
     sidoides,
     "abstract"},
    // Days.
    {"Adansonia gregorii",
     About::days,
     "most are out by day 8 at 30 °C",
     [](const Rule& r) { return half_up_within(r, 30, 1, 8); },
     boab,
     "abstract",
     {},
     "theirs is the root out of nicked seed in a dish, the rule's the seedling out of the mix"},
    {"Adansonia gregorii",
     About::days,
     "seedlings in 3 to 4 weeks",
     [](const Rule& r) { return most_up_within(r, 21, 28); },
     boab_sheet,
     "sowing"},
    {"Brachychiton populneus",
     About::days,
     "the first after some 6 days at 25 °C",
     [](const Rule& r) { return first_up_within(r, 6, 6); },
     kurrajong,
     "flowering and seeds",
     {},
     "the same: there the root is out"},
    {"Wurmbea",
     About::days,
     "seedlings in 3 to 5 weeks",
     [](const Rule& r) { return most_up_within(r, 21, 35); },
     wurmbea_sheet,
     "cultivation, W. dioica"},
    {"Carpobrotus",
     About::days,
     "some take 3 months",
     [](const Rule& r) { return r.seedling.last_look_days->high >= 90; },
     understorey,
     "germination time, C. rossii"},
    {"Cyclamen persicum",
     About::days,
     "most are up between day 21 and 35",
     [](const Rule& r) { return most_up_within(r, 21, 35); },
     ista,
     from_memory},
    {"Freesia",
     About::days,
     "most are up between day 7 and 35",
     [](const Rule& r) { return most_up_within(r, 7, 35); },
     ista,
     from_memory},
    {"Kalanchoe",
     About::days,
     "most are up between day 10 and 21",
     [](const Rule& r) { return most_up_within(r, 10, 21); },
     ista,
     from_memory},
    {"Portulaca grandiflora",
     About::days,
     "most are up between day 4 and 14",
     [](const Rule& r) { return most_up_within(r, 4, 14); },
     ista,
     from_memory},
    {"Pelargonium zonale",
     About::days,
     "most are up between day 7 and 28",
     [](const Rule& r) { return most_up_within(r, 7, 28); },
     ista,
     from_memory},
    {"Nemesia strumosa",
     About::days,
     "most are up between day 5 and 21",
     [](const Rule& r) { return most_up_within(r, 5, 21); },
     ista,
     from_memory},
    {"Anemone coronaria",
     About::days,
     "most are up between day 7 and 28",
     [](const Rule& r) { return most_up_within(r, 7, 28); },
     ista,
     from_memory},
    {"Ranunculus asiaticus",
     About::days,
     "most are up between day 7 and 28",
     [](const Rule& r) { return most_up_within(r, 7, 28); },
     ista,
     from_memory},
    // Longevity.
    {"Carpobrotus",
     About::longevity,
     "dies between 1 and 3 days of 55 °C and 87 % humidity",
     [](const Rule& r) { return half_dead_within_days(r, 55, 0.87, 1, 3); },
     fast_aged,
     "abstract, C. edulis"},
    {"Lachenalia bulbifera",
     About::longevity,
     "lasts 1 to 5 years",
     [](const Rule& r) { return half_life_overlaps(r, 1, 5); },
     lachenalia_weed,
     "seedbank persistence, in soil"},
    // Light.
    {"Kalanchoe",
     About::light,
     "needs light",
     [](const Rule& r) { return r.sowing.light->value == Light::needed; },
     kalanchoe,
     "abstract, K. blossfeldiana"},
    {"Tulbaghia",
     About::light,
     "light and dark are alike",
     [](const Rule& r) { return r.sowing.light->value == Light::indifferent; },
     high_altitude,
     "abstract, T. alliacea"},
    {"Pelargonium sidoides",
     About::light,
     "as many without light",
     does_without_light,
     sidoides,
     "abstract"},
    // Size, by the longest side.
    {"Argyroderma",
     About::size,
     "seed of 0.5 to 0.85 mm",
     [](const Rule& r) { return is_of_mm(r, 0.5, 0.85); },
     argyroderma,
     "description"},
    {"Mesembryanthemum crystallinum",
     About::size,
     "seed of 0.8 mm",
     [](const Rule& r) { return is_of_mm(r, 0.8, 0.8); },
     victoria,
     "description"},
    {"Carpobrotus",
     About::size,
     "seed of up to 1.5 mm",
     [](const Rule& r) { return is_of_mm(r, 1.2, 1.5); },
     south_australia,
     "plant description, C. rossii"},
    {"Crassula",
     About::size,
     "seed of up to 0.6 mm",
     [](const Rule& r) { return is_of_mm(r, 0.3, 0.6); },
     south_australia,
     "plant description, C. closiana"},
    {"Wurmbea",
     About::size,
     "seed of up to 1.5 mm",
     [](const Rule& r) { return is_of_mm(r, 1.2, 1.5); },
     south_australia,
     "seed type, W. decumbens"},
    {"Portulaca oleracea",
     About::size,
     "seed of 0.5 to 1.1 mm",
     [](const Rule& r) { return is_of_mm(r, 0.5, 1.1); },
     grape_weeds,
     "description"},
    {"Brachychiton populneus",
     About::size,
     "some four seeds weigh a gram, so some 6 to 8 mm",
     [](const Rule& r) { return is_of_mm(r, 6, 8); },
     kurrajong,
     "flowering and seeds"},
    {"Adansonia digitata",
     About::size,
     "seed of 10 to 13 mm",
     [](const Rule& r) { return is_of_mm(r, 10, 13); },
     baobab,
     from_memory},
    // Treatments, cover, season.
    {"Adansonia gregorii",
     About::treatment,
     "a hard coat keeps it back",
     is_nicked,
     boab,
     "abstract"},
    {"Adansonia gregorii",
     About::treatment,
     "covered by its own thickness",
     [](const Rule& r) { return r.sowing.cover->value == Cover::own_thickness; },
     boab_sheet,
     "sowing"},
    {"Brachychiton populneus",
     About::treatment,
     "boiling water opens the coat",
     is_nicked,
     kurrajong,
     "flowering and seeds"},
    {"Lessertia frutescens",
     About::treatment,
     "nicking overcomes the coat",
     is_nicked,
     cancer_bush,
     "abstract"},
    {"Gloriosa superba",
     About::treatment,
     "nicking and a day's soak bring 85 % and more",
     is_nicked,
     gloriosa,
     "abstract"},
    {"Lachenalia bulbifera",
     About::season,
     "leaves in winter, rests in summer",
     [](const Rule& r) { return grows(r, Growth::winter); },
     lachenalia_weed,
     "management calendar"},
};

Rule rule_of(std::string_view taxon) {
  static const Catalogue catalogue = Catalogue::embedded();
  const auto found = catalogue.rule_for(taxon).found;
  EXPECT_TRUE(found) << taxon;
  return found ? found->rule : Rule{};
}

std::set<std::string> sources_of(const Rule& rule) {
  std::set<std::string> sources;
  for_each_field(rule, [&sources](const Field&, const auto& member) {
    if constexpr (requires { member->ground; }) {
      if (member) {
        sources.insert(member->ground.source);
      }
    } else {
      for (const Remark& remark : member) {
        sources.insert(remark.ground.source);
      }
    }
  });
  return sources;
}

std::string in_lower_case(std::string_view text) {
  std::string lower{text};
  std::ranges::transform(
      lower, lower.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return lower;
}

/// No entry of the catalogue rests on its source, and it is not of a whole family or biome.
bool is_independent(const Fact& fact) {
  return fact.listed_as.empty() && fact.locator.find("the family") == std::string_view::npos;
}

TEST(PublishedFacts, NoEntryRestsOnWhatItIsCheckedAgainst) {
  for (const Fact& fact : facts) {
    if (!fact.listed_as.empty()) {
      EXPECT_FALSE(sources_of(rule_of(fact.taxon)).contains(std::string(fact.listed_as)))
          << fact.taxon << ": " << fact.listed_as;
    }
  }
}

// What a row does not name as a source of the catalogue is none, by its title.
TEST(PublishedFacts, TheCatalogueListsNoSourceThatARowCallsItsOwn) {
  const Catalogue catalogue = Catalogue::embedded();
  for (const Fact& fact : facts) {
    const std::string cited = in_lower_case(fact.source);
    for (const auto& [id, source] : catalogue.sources()) {
      EXPECT_TRUE(id == fact.listed_as ||
                  cited.find(in_lower_case(source.title)) == std::string::npos)
          << fact.taxon << ": " << fact.source << " is " << id;
    }
  }
}

TEST(PublishedFacts, ARowSaysWhyWhereTheRuleDiffersAndOnlyThere) {
  for (const Fact& fact : facts) {
    EXPECT_EQ(fact.agrees(rule_of(fact.taxon)), fact.differs.empty())
        << fact.taxon << ": " << fact.claim << "; " << fact.source;
  }
}

TEST(PublishedFacts, EachKindOfFactIsCheckedAgainstOthersPublications) {
  for (const Demand& demand : demands) {
    const auto counted = std::ranges::count_if(facts, [&](const Fact& fact) {
      return fact.about == demand.about && is_independent(fact);
    });
    const auto agreed = std::ranges::count_if(facts, [&](const Fact& fact) {
      return fact.about == demand.about && is_independent(fact) && fact.agrees(rule_of(fact.taxon));
    });
    std::cout << demand.name << ": " << agreed << " of " << counted << " independent facts agree\n";
    EXPECT_GE(counted, demand.independent) << demand.name;
  }
}

TEST(PublishedFacts, MostAgree) {
  std::size_t agreed = 0;
  std::size_t independent = 0;
  for (const Fact& fact : facts) {
    const bool agrees = fact.agrees(rule_of(fact.taxon));
    agreed += agrees ? 1U : 0U;
    independent += is_independent(fact) ? 1U : 0U;
    std::cout << (agrees ? "agrees   " : "differs  ") << fact.taxon << ": " << fact.claim << " ["
              << fact.source << ", " << fact.locator << "; "
              << (fact.listed_as.empty() ? "the catalogue does not use it"
                                         : "other entries of the catalogue use it")
              << "]\n";
  }
  const std::size_t checked = std::size(facts);
  std::cout << agreed << " of " << checked << " published facts agree; " << independent
            << " rest on publications that the catalogue does not use\n";
  EXPECT_GE(independent, rows_demanded);
  EXPECT_GE(static_cast<double>(agreed), share_demanded * static_cast<double>(checked));
}

// A claim that holds for every rule there is asks for nothing.
TEST(PublishedFacts, EachClaimCouldFail) {
  static const Catalogue catalogue = Catalogue::embedded();
  for (const Fact& fact : facts) {
    bool could_fail = false;
    for (const std::string& name : catalogue.rule_names()) {
      could_fail = could_fail || !fact.agrees(rule_of(name));
    }
    EXPECT_TRUE(could_fail) << fact.taxon << ": " << fact.claim << " holds for every rule";
  }
}

} // namespace
} // namespace nightsow::species_rules
