import type { PrintedDocument } from '../../paper/drawing/paper-document.ts'

/** A finished document as the contract carries it. */
export function made({ bytes, pages, warnings }: PrintedDocument, fileName: string) {
  return { pdf: Buffer.from(bytes).toString('base64'), fileName, pages, warnings: [...warnings] }
}
