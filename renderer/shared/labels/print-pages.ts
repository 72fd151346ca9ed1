/** What of a frame is asked to print it. */
export interface PrintedView {
  readonly focus: () => void
  readonly print: () => void
}

/**
 * Prints the PDF in a frame. False where it cannot: some browsers let no page ask the frame of a PDF for anything, and some
 * show no PDF at all.
 */
export function printPages(view: PrintedView | null | undefined, showsPdf: boolean): boolean {
  if (view === null || view === undefined || !showsPdf) return false
  try {
    view.focus()
    view.print()
    return true
  } catch {
    return false
  }
}
