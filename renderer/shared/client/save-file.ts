/** Gives the keeper a file to save, as a link with its name would. */
export function saveFile(fileName: string, type: string, contents: string | Uint8Array<ArrayBuffer>): void {
  const address = URL.createObjectURL(new Blob([contents], { type }))
  const link = document.createElement('a')
  link.href = address
  link.download = fileName
  link.click()
  URL.revokeObjectURL(address)
}
