const AT_ONCE = 0x8000

/** A file as base64, turned in pieces that fit one call. */
export async function inBase64(file: File): Promise<string> {
  const bytes = new Uint8Array(await file.arrayBuffer())
  let text = ''
  for (let at = 0; at < bytes.length; at += AT_ONCE)
    text += String.fromCharCode(...bytes.subarray(at, at + AT_ONCE))
  return btoa(text)
}

/** The bytes of a file that came as base64. */
export function bytesOf(content: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(atob(content), (sign) => sign.charCodeAt(0))
}
