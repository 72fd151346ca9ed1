/**
 * Bed that one plant takes when grown for seed, square metres. Common practice, no source: usual garden spacings, wider
 * for plants that bolt. The keeper's own garden decides.
 */
const SQUARE_METRES: Readonly<Record<string, number>> = {
  bean: 0.06,
  'runner-bean': 0.1,
  'lima-bean': 0.08,
  'fava-bean': 0.1,
  pea: 0.03,
  cowpea: 0.08,
  soybean: 0.05,
  chickpea: 0.05,
  lentil: 0.02,
  peanut: 0.08,
  'sweet-corn': 0.16,
  maize: 0.16,
  wheat: 0.01,
  barley: 0.01,
  oat: 0.01,
  rye: 0.01,
  rice: 0.02,
  sorghum: 0.1,
  amaranth: 0.1,
  quinoa: 0.1,
  sunflower: 0.2,
  tomato: 0.35,
  pepper: 0.2,
  eggplant: 0.3,
  tomatillo: 0.6,
  'potato-tps': 0.25,
  'squash-pepo': 1.2,
  'squash-maxima': 2,
  'squash-moschata': 2,
  cucumber: 0.4,
  melon: 0.8,
  watermelon: 1.5,
  'bottle-gourd': 2,
  okra: 0.2,
  lettuce: 0.09,
  spinach: 0.04,
  beet: 0.12,
  chard: 0.16,
  carrot: 0.05,
  parsnip: 0.09,
  parsley: 0.06,
  celery: 0.1,
  onion: 0.05,
  leek: 0.06,
  cabbage: 0.3,
  broccoli: 0.25,
  kale: 0.25,
  turnip: 0.06,
  napa: 0.12,
  radish: 0.06,
}

/** For herbs, flowers and whatever else has no figure. Common practice, no source. */
const WITHOUT_FIGURES = 0.09

/** Bed for so many plants of a crop, square metres. */
export function bedFor(cropId: string, plants: number): number {
  return plants * (SQUARE_METRES[cropId] ?? WITHOUT_FIGURES)
}
