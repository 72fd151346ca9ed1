import bwipjs from 'bwip-js'

/** A black rectangle of a QR code, in modules from its top left corner. */
export interface Square {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

export interface QrCode {
  /** Modules along each side, without the quiet zone. */
  readonly modules: number
  readonly squares: readonly Square[]
}

/** White modules that a QR code needs on every side (ISO/IEC 18004). */
export const QUIET_MODULES = 4

/**
 * The QR code of a scan code, at error level M (about 15 % may be spoiled).
 *
 * Throws RangeError for anything but capitals and digits: a scanner set to another keyboard garbles the rest.
 */
export function qrCode(code: string): QrCode {
  if (!/^[0-9A-Z]+$/.test(code))
    throw new RangeError(`A scan code holds capitals and digits only: '${code}'.`)
  const [symbol] = bwipjs.raw('qrcode', code, 'eclevel=M')
  if (!symbol || !('pixs' in symbol)) throw new RangeError(`No QR code can be drawn for '${code}'.`)
  return { modules: symbol.pixx, squares: mergeModules(symbol.pixs, symbol.pixx) }
}

/** Merges black modules into rectangles: runs along a row, then equal runs of rows that follow each other. */
function mergeModules(pixels: ArrayLike<number>, side: number): Square[] {
  const done: Square[] = []
  let open: Square[] = []
  for (let y = 0; y < side; y++) {
    const grown = rowRuns(pixels, side, y).map((run) => {
      const above = open.find((square) => square.x === run.x && square.width === run.width)
      return above ? { ...above, height: above.height + 1 } : run
    })
    done.push(...open.filter((square) => !grown.some((next) => next.x === square.x && next.y === square.y)))
    open = grown
  }
  return [...done, ...open]
}

function rowRuns(pixels: ArrayLike<number>, side: number, y: number): Square[] {
  const runs: Square[] = []
  let start = -1
  for (let x = 0; x <= side; x++) {
    const black = x < side && pixels[y * side + x] === 1
    if (black && start < 0) start = x
    if (!black && start >= 0) {
      runs.push({ x: start, y, width: x - start, height: 1 })
      start = -1
    }
  }
  return runs
}
