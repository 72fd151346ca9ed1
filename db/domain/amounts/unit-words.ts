import type { MassUnit } from './mass.ts'

/** The words that name a unit of mass. 'gr' is read as gram, as kitchen scales print it (common practice, no source). */
export const MASS_WORDS: ReadonlyMap<string, MassUnit> = new Map([
  ...named('mg', 'mg', 'milligram', 'milligrams', 'miligramo', 'miligramos'),
  ...named('g', 'g', 'gr', 'gm', 'gram', 'grams', 'gramme', 'grammes', 'gramo', 'gramos'),
  ...named('kg', 'kg', 'kilo', 'kilos', 'kilogram', 'kilograms', 'kilogramo', 'kilogramos'),
  ...named('oz', 'oz', 'ounce', 'ounces', 'onza', 'onzas'),
  ...named('lb', 'lb', 'lbs', 'pound', 'pounds', 'libra', 'libras'),
])

/** The words that say that seeds, or the counted unit of a crop, were counted. */
export const COUNT_WORDS: ReadonlySet<string> = new Set([
  ...['seed', 'seeds', 'bean', 'beans', 'kernel', 'kernels', 'grain', 'grains'],
  ...['cluster', 'clusters', 'fruit', 'fruits', 'pc', 'pcs'],
  ...['clove', 'cloves', 'bulb', 'bulbs', 'tuber', 'tubers', 'piece', 'pieces'],
  ...['diente', 'dientes', 'bulbo', 'bulbos', 'tuberculo', 'tuberculos', 'pieza', 'piezas'],
  ...['semilla', 'semillas', 'grano', 'granos', 'fruto', 'frutos', 'glomerulo', 'glomerulos'],
  ...['judia', 'judias', 'alubia', 'alubias', 'frijol', 'frijoles', 'haba', 'habas', 'garbanzo', 'garbanzos'],
  ...['pepita', 'pepitas', 'unidad', 'unidades', 'ud', 'uds'],
])

/** Words for parts of plants that have to grow at once: no seed, clove, bulb or tuber. */
export const CUTTING_WORDS: ReadonlySet<string> = new Set([
  ...['cutting', 'cuttings', 'graft', 'grafts', 'scion', 'scions', 'slip', 'slips'],
  ...['esqueje', 'esquejes', 'injerto', 'injertos', 'pua', 'puas'],
])

/** The same, and words for whole plants. */
export const PLANT_WORDS: ReadonlySet<string> = new Set([
  ...CUTTING_WORDS,
  ...['plant', 'plants', 'planta', 'plantas', 'planton', 'plantones'],
])

export const PACKET_WORDS: ReadonlySet<string> = new Set([
  ...['packet', 'packets', 'pack', 'packs', 'pkt', 'pkts', 'envelope', 'envelopes'],
  ...['sobre', 'sobres', 'sobrecito', 'sobrecitos', 'bolsita', 'bolsitas', 'paquete', 'paquetes'],
])

function named(unit: MassUnit, ...words: readonly string[]): readonly (readonly [string, MassUnit])[] {
  return words.map((word) => [word, unit])
}
