-- What the app knew of each crop in its code, as columns that a crop of the keeper's own has too, and as cells of the shipped
-- table with their sources, as db/reference/crops.json has them.
ALTER TABLE crop ADD COLUMN pollination TEXT;
--> statement-breakpoint
ALTER TABLE crop ADD COLUMN life_cycle TEXT;
--> statement-breakpoint
ALTER TABLE crop ADD COLUMN isolation_home_m REAL CHECK (isolation_home_m >= 0);
--> statement-breakpoint
ALTER TABLE crop ADD COLUMN isolation_strict_m REAL CHECK (isolation_strict_m >= 0);
--> statement-breakpoint
ALTER TABLE crop ADD COLUMN bed_area REAL CHECK (bed_area > 0);
--> statement-breakpoint
ALTER TABLE crop ADD COLUMN days_to_seed INTEGER CHECK (days_to_seed BETWEEN 20 AND 366);
--> statement-breakpoint
ALTER TABLE crop ADD COLUMN later_sowing_days INTEGER CHECK (later_sowing_days > 0);
--> statement-breakpoint
ALTER TABLE crop ADD COLUMN counted_unit TEXT NOT NULL DEFAULT 'seed' CHECK (counted_unit IN ('seed', 'cluster', 'fruit'));
--> statement-breakpoint
ALTER TABLE crop ADD COLUMN seed_extraction TEXT
  CHECK (seed_extraction IN ('dried-on-plant', 'washed', 'fermented', 'after-ripened', 'rubbed-out'));
--> statement-breakpoint
ALTER TABLE crop ADD COLUMN viability_constants TEXT CHECK (json_valid(viability_constants));
--> statement-breakpoint
UPDATE crop SET
  pollination = json_extract(reference, '$.pollination'),
  life_cycle = json_extract(reference, '$.life_cycle'),
  isolation_home_m = json_extract(reference, '$.isolation_home_m'),
  isolation_strict_m = json_extract(reference, '$.isolation_strict_m')
WHERE added_entry_id IS NULL;
--> statement-breakpoint
WITH known (id, bed, days, later, unit, extraction, constants, constants_source, constants_study) AS (
  VALUES
    ('bean', 0.06, 100, NULL, 'seed', 'dried-on-plant', '{"name":"common bean (field bean)","ke":9.08,"cw":5.2,"ch":0.0057,"cq":0.00079,"fittedCelsius":{"from":20,"to":60},"fittedPercent":{"from":12,"to":24},"lowestPercent":null,"note":"fitted on moist, warm seed only: 12 to 24 % and 20 to 60 °C"}', '{"source":"WMS","confidence":"seen"}', '{"source":"Wilson, McDonald & St. Martin 1989, Crop Sci. 29(2) (abstract)","confidence":"seen"}'),
    ('runner-bean', 0.1, 120, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('lima-bean', 0.08, 120, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('fava-bean', 0.1, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('pea', 0.03, NULL, NULL, 'seed', 'dried-on-plant', '{"name":"pea","ke":9.858,"cw":5.39,"ch":0.0329,"cq":0.000478,"fittedCelsius":{"from":-13,"to":90},"fittedPercent":null,"lowestPercent":6.2,"note":"temperature constants of the eight-species study"}', '{"source":"EHR89","confidence":"memory"}', '{"source":"Ellis, Hong & Roberts 1989, Ann. Bot. 63:601-611","confidence":"from memory"}'),
    ('cowpea', 0.08, 110, NULL, 'seed', 'dried-on-plant', '{"name":"cowpea","ke":8.69,"cw":4.715,"ch":0.026,"cq":0.000498,"fittedCelsius":null,"fittedPercent":null,"lowestPercent":null,"note":""}', '{"source":"EOR","confidence":"memory"}', '{"source":"Ellis, Osei-Bonsu & Roberts 1982, Ann. Bot. 50:69-82","confidence":"from memory"}'),
    ('soybean', 0.05, 120, NULL, 'seed', 'dried-on-plant', '{"name":"soybean","ke":7.748,"cw":3.979,"ch":0.053,"cq":0.000228,"fittedCelsius":null,"fittedPercent":null,"lowestPercent":null,"note":""}', '{"source":"EOR","confidence":"memory"}', '{"source":"Ellis, Osei-Bonsu & Roberts 1982, Ann. Bot. 50:69-82","confidence":"from memory"}'),
    ('chickpea', 0.05, NULL, NULL, 'seed', 'dried-on-plant', '{"name":"chickpea","ke":9.07,"cw":4.82,"ch":0.045,"cq":0.000324,"fittedCelsius":null,"fittedPercent":null,"lowestPercent":null,"note":"the moisture constant agrees with published figures that were seen"}', '{"source":"EOR","confidence":"memory"}', '{"source":"Ellis, Osei-Bonsu & Roberts 1982, Ann. Bot. 50:69-82","confidence":"from memory"}'),
    ('lentil', 0.02, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('peanut', 0.08, 140, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('sweet-corn', 0.16, 110, 28, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('maize', 0.16, 120, 28, 'seed', 'dried-on-plant', '{"name":"maize","ke":9.993,"cw":5.993,"ch":0.0322,"cq":0.000454,"fittedCelsius":{"from":0,"to":50},"fittedPercent":{"from":2,"to":25},"lowestPercent":null,"note":""}', '{"source":"EH07","confidence":"seen"}', '{"source":"Ellis & Hong 2007, Seed Sci. Technol. 35:432-444 (abstract)","confidence":"seen"}'),
    ('wheat', 0.01, NULL, NULL, 'seed', 'dried-on-plant', '{"name":"wheat","ke":8.498,"cw":4.836,"ch":0.0322,"cq":0.000454,"fittedCelsius":{"from":0,"to":50},"fittedPercent":{"from":2,"to":25},"lowestPercent":null,"note":""}', '{"source":"EH07","confidence":"seen"}', '{"source":"Ellis & Hong 2007, Seed Sci. Technol. 35:432-444 (abstract)","confidence":"seen"}'),
    ('barley', 0.01, NULL, NULL, 'seed', 'dried-on-plant', '{"name":"barley","ke":9.983,"cw":5.896,"ch":0.04,"cq":0.000428,"fittedCelsius":{"from":3,"to":90},"fittedPercent":{"from":5.5,"to":24.6},"lowestPercent":null,"note":""}', '{"source":"ER80","confidence":"memory"}', '{"source":"Ellis & Roberts 1980, Ann. Bot. 45:31-37","confidence":"from memory"}'),
    ('oat', 0.01, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('rye', 0.01, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('rice', 0.02, 140, NULL, 'seed', 'dried-on-plant', '{"name":"rice","ke":8.096,"cw":4.246,"ch":0.0322,"cq":0.000454,"fittedCelsius":{"from":0,"to":50},"fittedPercent":{"from":2,"to":25},"lowestPercent":null,"note":""}', '{"source":"EH07","confidence":"seen"}', '{"source":"Ellis & Hong 2007, Seed Sci. Technol. 35:432-444 (abstract)","confidence":"seen"}'),
    ('sorghum', 0.1, 120, NULL, 'seed', 'dried-on-plant', '{"name":"sorghum","ke":9.381,"cw":5.379,"ch":0.0322,"cq":0.000454,"fittedCelsius":{"from":0,"to":50},"fittedPercent":{"from":2,"to":25},"lowestPercent":null,"note":""}', '{"source":"EH07","confidence":"seen"}', '{"source":"Ellis & Hong 2007, Seed Sci. Technol. 35:432-444 (abstract)","confidence":"seen"}'),
    ('amaranth', 0.1, 120, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('quinoa', 0.1, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('sunflower', 0.2, 110, 28, 'seed', 'dried-on-plant', '{"name":"sunflower","ke":6.74,"cw":4.16,"ch":0.0329,"cq":0.000478,"fittedCelsius":{"from":-13,"to":90},"fittedPercent":null,"lowestPercent":null,"note":"temperature constants of the eight-species study"}', '{"source":"EHR88","confidence":"memory"}', '{"source":"Ellis, Hong & Roberts 1988","confidence":"from memory"}'),
    ('tomato', 0.35, 90, NULL, 'seed', 'fermented', NULL, NULL, NULL),
    ('pepper', 0.2, 110, NULL, 'seed', 'rubbed-out', '{"name":"pepper","ke":7.767,"cw":4.67,"ch":0.0329,"cq":0.000478,"fittedCelsius":{"from":-13,"to":90},"fittedPercent":{"from":7,"to":12.1},"lowestPercent":null,"note":""}', '{"source":"DEMIR","confidence":"seen"}', '{"source":"Demir et al. 2009, HortScience 44:1679-1682 (abstract)","confidence":"seen"}'),
    ('eggplant', 0.3, 110, NULL, 'seed', 'washed', NULL, NULL, NULL),
    ('tomatillo', 0.6, 100, NULL, 'seed', 'washed', NULL, NULL, NULL),
    ('potato-tps', 0.25, NULL, NULL, 'seed', 'washed', '{"name":"potato (true seed)","ke":8.037,"cw":5.152,"ch":0.0322,"cq":0.000454,"fittedCelsius":{"from":0,"to":50},"fittedPercent":{"from":2,"to":25},"lowestPercent":null,"note":""}', '{"source":"EH07","confidence":"seen"}', '{"source":"Ellis & Hong 2007, Seed Sci. Technol. 35:432-444 (abstract)","confidence":"seen"}'),
    ('squash-pepo', 1.2, 115, NULL, 'seed', 'after-ripened', NULL, NULL, NULL),
    ('squash-maxima', 2, 120, NULL, 'seed', 'after-ripened', NULL, NULL, NULL),
    ('squash-moschata', 2, 135, NULL, 'seed', 'after-ripened', NULL, NULL, NULL),
    ('cucumber', 0.4, 100, NULL, 'seed', 'fermented', NULL, NULL, NULL),
    ('melon', 0.8, 100, NULL, 'seed', 'washed', NULL, NULL, NULL),
    ('watermelon', 1.5, 110, NULL, 'seed', 'washed', NULL, NULL, NULL),
    ('bottle-gourd', 2, 140, NULL, 'seed', 'washed', NULL, NULL, NULL),
    ('okra', 0.2, 110, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('lettuce', 0.09, NULL, NULL, 'seed', 'dried-on-plant', '{"name":"lettuce","ke":8.218,"cw":4.797,"ch":0.0489,"cq":0.000365,"fittedCelsius":null,"fittedPercent":{"from":5,"to":15},"lowestPercent":null,"note":""}', '{"source":"KV","confidence":"memory"}', '{"source":"Kraak & Vos 1987, Ann. Bot. 59:343-349","confidence":"from memory"}'),
    ('spinach', 0.04, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('beet', 0.12, NULL, NULL, 'cluster', 'dried-on-plant', '{"name":"beet (sugar beet)","ke":8.988,"cw":4.969,"ch":0.0322,"cq":0.000454,"fittedCelsius":{"from":0,"to":50},"fittedPercent":{"from":2,"to":25},"lowestPercent":null,"note":""}', '{"source":"EH07","confidence":"seen"}', '{"source":"Ellis & Hong 2007, Seed Sci. Technol. 35:432-444 (abstract)","confidence":"seen"}'),
    ('chard', 0.16, NULL, NULL, 'cluster', 'dried-on-plant', '{"name":"beet (sugar beet)","ke":8.988,"cw":4.969,"ch":0.0322,"cq":0.000454,"fittedCelsius":{"from":0,"to":50},"fittedPercent":{"from":2,"to":25},"lowestPercent":null,"note":""}', '{"source":"EH07","confidence":"seen"}', '{"source":"Ellis & Hong 2007, Seed Sci. Technol. 35:432-444 (abstract)","confidence":"seen"}'),
    ('carrot', 0.05, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('parsnip', 0.09, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('parsley', 0.06, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('dill', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('coriander', NULL, NULL, NULL, 'fruit', 'dried-on-plant', NULL, NULL, NULL),
    ('celery', 0.1, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('onion', 0.05, NULL, NULL, 'seed', 'dried-on-plant', '{"name":"onion","ke":6.975,"cw":3.47,"ch":0.04,"cq":0.000428,"fittedCelsius":null,"fittedPercent":null,"lowestPercent":null,"note":""}', '{"source":"ER81","confidence":"memory"}', '{"source":"Ellis & Roberts 1981, Seed Sci. Technol. 9:373-409","confidence":"from memory"}'),
    ('leek', 0.06, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('chive', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('cabbage', 0.3, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('broccoli', 0.25, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('kale', 0.25, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('turnip', 0.06, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('napa', 0.12, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('mustard', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('radish', 0.06, NULL, NULL, 'seed', 'dried-on-plant', '{"name":"radish","ke":6.54,"cw":3.22,"ch":0.0329,"cq":0.000478,"fittedCelsius":{"from":-13,"to":90},"fittedPercent":{"from":6,"to":13},"lowestPercent":null,"note":"temperature constants assumed universal"}', '{"source":"CORO","confidence":"seen"}', '{"source":"Coronado et al. 2023, Seed Sci. Technol. 51:319-327 (abstract)","confidence":"seen"}'),
    ('basil', NULL, 120, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('calendula', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('marigold', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('sage', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('summer-savory', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('fennel', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('thyme', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('oregano', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('lemon-balm', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('borage', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('garden-cress', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('corn-salad', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('endive', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('chicory', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('kohlrabi', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('sorrel', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('flax', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('field-poppy', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('bread-seed-poppy', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('california-poppy', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('zinnia', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('nasturtium', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('cosmos', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('cornflower', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('love-in-a-mist', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('snapdragon', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('hollyhock', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('sweet-pea', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('phacelia', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('swede', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('rocket', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('garlic', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL),
    ('brussels-sprouts', NULL, NULL, NULL, 'seed', 'dried-on-plant', NULL, NULL, NULL)
)
UPDATE crop SET
  bed_area = bed, days_to_seed = days, later_sowing_days = later, counted_unit = unit, seed_extraction = extraction,
  viability_constants = json_patch(constants, constants_study),
  reference = json_set(reference,
    '$.bed_area', bed, '$.days_to_seed', days, '$.later_sowing_days', later, '$.counted_unit', unit,
    '$.seed_extraction', extraction, '$.viability_constants', json(constants),
    '$.sources.bed_area', iif(bed IS NULL, NULL, json('{"source":"PRACTICE","confidence":"memory"}')),
    '$.sources.days_to_seed', iif(days IS NULL, NULL, json('{"source":"M","confidence":"memory"}')),
    '$.sources.later_sowing_days', iif(later IS NULL, NULL, json('{"source":"M, twice the 14 days between the silking of maize hybrids that extension leaflets want","confidence":"memory"}')),
    '$.sources.counted_unit', iif(unit = 'seed', json('{"source":"PRACTICE","confidence":"memory"}'),
      json('{"source":"PRACTICE+CFR56","confidence":"memory"}')),
    '$.sources.seed_extraction', json('{"source":"PRACTICE","confidence":"memory"}'),
    '$.sources.viability_constants', json(constants_source))
FROM known WHERE crop.id = known.id AND crop.added_entry_id IS NULL;
--> statement-breakpoint
CREATE TRIGGER forecast_goes_stale_by_viability_constants AFTER UPDATE OF viability_constants ON crop BEGIN
  UPDATE lot_forecast SET stale_since = (SELECT max(id) FROM entry)
  WHERE lot_id IN (
    SELECT lot.id FROM lot JOIN accession ON accession.id = accession_id JOIN variety ON variety.id = variety_id
    WHERE crop_id = NEW.id);
END;
