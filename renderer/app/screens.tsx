import { Suspense, useEffect } from 'react'
import { Redirect, Route, Switch, useLocation } from 'wouter'
import { lettersOf, lotsOf } from '../shared/addresses.ts'
import { Arrived } from './arrived.tsx'
import { fetchAhead, fetchedAhead } from './fetched-ahead.tsx'
import { screenOf } from './rail-words.ts'

const TakeInScreen = fetchedAhead(
  async () => (await import('../screens/take-in/take-in-screen.tsx')).TakeInScreen,
)
const GiftsWaitingScreen = fetchedAhead(
  async () => (await import('../screens/gifts-waiting/gifts-waiting-screen.tsx')).GiftsWaitingScreen,
)
const SpreadsheetImportScreen = fetchedAhead(
  async () =>
    (await import('../screens/spreadsheet-import/spreadsheet-import-screen.tsx')).SpreadsheetImportScreen,
)
const PaperSheetScreen = fetchedAhead(
  async () => (await import('../screens/paper-sheet/paper-sheet-screen.tsx')).PaperSheetScreen,
)
const StocktakeScreen = fetchedAhead(
  async () => (await import('../screens/stocktake/stocktake-screen.tsx')).StocktakeScreen,
)
const HandOutScreen = fetchedAhead(
  async () => (await import('../screens/hand-out/hand-out-screen.tsx')).HandOutScreen,
)
const ReturnsScreen = fetchedAhead(
  async () => (await import('../screens/returns/returns-screen.tsx')).ReturnsScreen,
)
const PeopleScreen = fetchedAhead(
  async () => (await import('../screens/people/people-screen.tsx')).PeopleScreen,
)
const ShelfScreen = fetchedAhead(async () => (await import('../screens/shelf/shelf-screen.tsx')).ShelfScreen)
const GerminationScreen = fetchedAhead(
  async () => (await import('../screens/germination/germination-screen.tsx')).GerminationScreen,
)
const StorageScreen = fetchedAhead(
  async () => (await import('../screens/storage/storage-screen.tsx')).StorageScreen,
)
const PrintScreen = fetchedAhead(async () => (await import('../screens/print/print-screen.tsx')).PrintScreen)
const RegrowScreen = fetchedAhead(
  async () => (await import('../screens/regrow/regrow-screen.tsx')).RegrowScreen,
)
const SeasonListsScreen = fetchedAhead(
  async () => (await import('../screens/regrow/season-lists-screen.tsx')).SeasonListsScreen,
)
const EntryLogScreen = fetchedAhead(
  async () => (await import('../screens/entry-log/entry-log-screen.tsx')).EntryLogScreen,
)
const SeasonPlanScreen = fetchedAhead(
  async () => (await import('../screens/season-plan/season-plan-screen.tsx')).SeasonPlanScreen,
)
const SeasonNotesScreen = fetchedAhead(
  async () => (await import('../screens/season-plan/season-notes-screen.tsx')).SeasonNotesScreen,
)
const ImportExportScreen = fetchedAhead(
  async () => (await import('../screens/import-export/import-export-screen.tsx')).ImportExportScreen,
)
const SettingsScreen = fetchedAhead(
  async () => (await import('../screens/settings/settings-screen.tsx')).SettingsScreen,
)

/** After so long the first screen stands, and the code of the others may be fetched, milliseconds. */
const FETCH_AFTER_MS = 500

/** The screen that the address names. Its code is fetched when it is first opened, or soon after the start. */
export function Screens() {
  const [location] = useLocation()
  useEffect(() => {
    const soon = setTimeout(() => void fetchAhead(), FETCH_AFTER_MS)
    return () => clearTimeout(soon)
  }, [])
  const screen = screenOf(location)
  return (
    <Suspense key={screen.path} fallback={<p className="soft waiting">Opening…</p>}>
      <Switch>
        <Route path="/take-in" component={TakeInScreen} />
        <Route path="/take-in/waiting/:giftId?">
          {({ giftId }) => (
            <GiftsWaitingScreen {...(giftId === undefined ? {} : { giftId: Number(giftId) })} />
          )}
        </Route>
        <Route path="/take-in/list" component={SpreadsheetImportScreen} />
        <Route path="/hand-out/paper" component={PaperSheetScreen} />
        <Route path="/stocktake/lots/:lotIds">
          {({ lotIds }) => <StocktakeScreen lotIds={lotsOf(lotIds)} />}
        </Route>
        <Route path="/stocktake/:placeId?">
          {({ placeId }) => (
            <StocktakeScreen {...(placeId === undefined ? {} : { placeId: Number(placeId) })} />
          )}
        </Route>
        <Route path="/hand-out" component={HandOutScreen} />
        <Route path="/take-back" component={ReturnsScreen} />
        <Route path="/regrow/lists/:listId?">
          {({ listId }) => (
            <SeasonListsScreen {...(listId === undefined ? {} : { listId: Number(listId) })} />
          )}
        </Route>
        <Route path="/regrow/season/:growOutId?">
          {({ growOutId }) => (
            <SeasonNotesScreen {...(growOutId === undefined ? {} : { growOutId: Number(growOutId) })} />
          )}
        </Route>
        <Route path="/regrow/plan" component={SeasonPlanScreen} />
        <Route path="/regrow/need/:accessionId">
          {({ accessionId }) => <RegrowScreen accessionId={Number(accessionId)} />}
        </Route>
        <Route path="/regrow">
          <RegrowScreen />
        </Route>
        <Route path="/germination/:part?/:id?">
          {({ part = '', id }) => <GerminationScreen part={part} id={Number(id ?? 0)} />}
        </Route>
        <Route path="/storage/:part?/:id?">
          {({ part = '', id }) => <StorageScreen part={part} id={Number(id ?? 0)} />}
        </Route>
        <Route path="/print" component={PrintScreen} />
        <Route path="/people/:personId">
          {({ personId }) => <PeopleScreen personId={Number(personId)} />}
        </Route>
        <Route path="/people">
          <PeopleScreen />
        </Route>
        <Route path="/in-and-out" component={ImportExportScreen} />
        <Route path="/settings" component={SettingsScreen} />
        <Route path="/written" component={EntryLogScreen} />
        <Route path="/shelf/lot/:lotId">{({ lotId }) => <ShelfScreen lotId={Number(lotId)} />}</Route>
        <Route path="/shelf/find/:text">{({ text }) => <ShelfScreen find={lettersOf(text)} />}</Route>
        <Route path="/shelf">
          <ShelfScreen />
        </Route>
        <Route>
          <Redirect to="/shelf" replace />
        </Route>
      </Switch>
      <Arrived title={screen.word} />
    </Suspense>
  )
}
