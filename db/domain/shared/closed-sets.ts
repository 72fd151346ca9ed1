/** What may stand in a field of the book that takes one of a few values: once for the file, the contract and the screens. */

/** What a seed's lot is for. */
export const LOT_ROLES = ['working', 'reserve', 'reference', 'duplicate-elsewhere'] as const
export type LotRole = (typeof LOT_ROLES)[number]

/** Which number of a lot is the known one; the other is derived through the hundred-seed weight. */
export const LOT_BASES = ['weighed', 'counted'] as const
export type LotBasis = (typeof LOT_BASES)[number]

/** How a lot came of another. */
export const LOT_RELATIONS = ['grown', 'split', 'merged'] as const
export type LotRelation = (typeof LOT_RELATIONS)[number]

/** What kind of thing happened to a lot's seed. The ledger is append-only: a mistake gets a 'reversal'. */
export const MOVEMENT_KINDS = [
  'intake',
  'return',
  'withdrawal',
  'test',
  'discard',
  'stocktake',
  'split',
  'merge',
  'recount',
  'reversal',
] as const
export type MovementKind = (typeof MOVEMENT_KINDS)[number]

/** Which of the two numbers of an amount was observed. */
export const MEASURED = ['mass', 'count', 'estimate'] as const
export type Measured = (typeof MEASURED)[number]

/** How the numbers of a movement were come by: observed, or carried over from those of a lot. */
export const MEASURED_OR_CARRIED = [...MEASURED, 'carried'] as const
export type MeasuredOrCarried = (typeof MEASURED_OR_CARRIED)[number]

/** What seed is taken out for. */
export const WITHDRAWAL_PURPOSES = ['to-grow', 'to-return', 'grow-out', 'safety-duplicate', 'other'] as const
export type WithdrawalPurpose = (typeof WITHDRAWAL_PURPOSES)[number]

/** What a giver or the keeper has to be careful about with a gift. */
export const CAUTION_KINDS = [
  'treated',
  'pests-seen',
  'regulated',
  'toxic',
  'protected-variety',
  'possible-cross',
] as const
export type CautionKind = (typeof CAUTION_KINDS)[number]

/** What a gift may have to wait for before it is taken in. */
export const WAITING_STEPS = ['identity', 'drying', 'freezing', 'test', 'legal', 'other'] as const
export type WaitingStep = (typeof WAITING_STEPS)[number]

/** What somebody is to the library. */
export const PERSON_ROLES = ['donor', 'member', 'grower'] as const
export type PersonRole = (typeof PERSON_ROLES)[number]

/** Kinds of storage place, from the room down to the jar. */
export const PLACE_KINDS = ['room', 'cupboard', 'fridge', 'freezer', 'shelf', 'box', 'jar'] as const
export type PlaceKind = (typeof PLACE_KINDS)[number]

/** What seed lies in. */
export const CONTAINER_KINDS = ['envelope', 'bag', 'jar', 'can', 'other'] as const
export type ContainerKind = (typeof CONTAINER_KINDS)[number]

/** How the moisture of seed was found. */
export const MOISTURE_METHODS = ['sealed-jar', 'break-check', 'oven', 'meter'] as const
export type MoistureMethod = (typeof MOISTURE_METHODS)[number]

/** What an inspection of a round comes to. */
export const INSPECTION_OUTCOMES = ['fine', 'found'] as const

/** What waits in the print tray. */
export const PRINT_KINDS = ['label', 'letter', 'slip'] as const
export type PrintKind = (typeof PRINT_KINDS)[number]

/** What a viability threshold is a part of. */
export const THRESHOLDS_OF = ['all-seeds', 'the-start'] as const

/** What masses are written in. */
export const MASS_UNITS = ['metric', 'ounces'] as const

export const PAPER_SIZES = ['a4', 'letter'] as const
export const APPEARANCES = ['system', 'light', 'dark'] as const
export const COLLECTION_KINDS = ['demo', 'own'] as const

/** Who may have seed of a gift, by its terms. */
export const SHARED_WITH = ['anyone', 'community', 'ask-first', 'nobody'] as const
export type SharedWith = (typeof SHARED_WITH)[number]

/** How a variety was bred, as far as growing it on depends on it. */
export const BREEDING_STATUSES = [
  'unknown',
  'open-pollinated',
  'landrace',
  'breeders-population',
  'first-generation-hybrid',
] as const
export type BreedingStatus = (typeof BREEDING_STATUSES)[number]

/** Whether the library keeps an accession. */
export const ACCESSION_POLICIES = ['keep', 'pass-on', 'closed'] as const
export type AccessionPolicy = (typeof ACCESSION_POLICIES)[number]

/** What of its kind flowered near seed that was saved. */
export const FLOWERED_NEAR = ['nothing', 'kept-apart', 'others', 'not-known'] as const
export type FloweredNear = (typeof FLOWERED_NEAR)[number]

/** An answer of a check that may not have been made. */
export const YES_NO_NOT_KNOWN = ['yes', 'no', 'not-known'] as const
export type YesNoNotKnown = (typeof YES_NO_NOT_KNOWN)[number]

/** What a return was held against when it was checked. */
export const COMPARED_WITH = ['nothing', 'reference-sample', 'description', 'grown-beside'] as const
export type ComparedWith = (typeof COMPARED_WITH)[number]

/** What is done with a return that was checked. */
export const CHECK_OUTCOMES = ['keep', 'pass-on', 'wait'] as const
export type CheckOutcome = (typeof CHECK_OUTCOMES)[number]

/** Which returns wait to be checked before they are handed out. */
export const CHECK_RETURNS = ['by-risk', 'always'] as const
export type CheckReturns = (typeof CHECK_RETURNS)[number]

/** How a recalled lot is affected: it is the one, it is the same seed, or it was grown from it. */
export const AFFECTED = ['source', 'same-seed', 'perhaps'] as const
export type Affected = (typeof AFFECTED)[number]

/** What came of a recall for a lot or for a person. */
export const RECALL_OUTCOMES = [
  'told',
  'sent-back',
  'destroyed',
  'sown-already',
  'none-left',
  'checked-fine',
  'checked-affected',
] as const
export type RecallOutcome = (typeof RECALL_OUTCOMES)[number]
