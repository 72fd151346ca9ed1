/** The address of an accession's need, or of the list. */
export function needAddress(accessionId?: number): string {
  return accessionId === undefined ? '/regrow' : `/regrow/need/${accessionId}`
}

/** The address of a saved season list, or of all of them. */
export function seasonListAddress(listId?: number): string {
  return listId === undefined ? '/regrow/lists' : `/regrow/lists/${listId}`
}
