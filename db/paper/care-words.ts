/**
 * How to keep seed until it is sown: dry, cool, dark, and never moist into a freezer. Common practice, no source; the
 * caution on drying gel because gel with cobalt indicator is harmful (usual caution, from memory).
 */
export const CARE =
  'Until you sow: keep the packet closed, dry, dark and cool, away from children and animals. Dry seed keeps; moist ' +
  'seed spoils. Never freeze seed that is not thoroughly dry. If you add drying gel, take one free of cobalt and keep it ' +
  'out of the packet itself.'

/** What every sheet says that goes home with seed; usual caution, deferring to local rules. */
export const FOR_SOWING =
  'For sowing only; check your local seed law before you pass seed on or sell it. Not for eating.'
