/**
 * Every largest set of nodes of which each two are joined, by Bron and Kerbosch with a pivot (Communications of the ACM
 * 16:575-577, 1973, from memory; checked against all subsets in the tests).
 */
export function maximalCliques(
  nodes: number,
  joined: (a: number, b: number) => boolean,
): readonly number[][] {
  const all = Array.from({ length: nodes }, (_, node) => node)
  const near = all.map((a) => new Set(all.filter((b) => a !== b && joined(a, b))))
  const isNear = (a: number, b: number) => near[a]?.has(b) === true
  const found: number[][] = []
  const grow = (clique: readonly number[], open: readonly number[], done: readonly number[]) => {
    if (open.length === 0 && done.length === 0) {
      found.push(clique.toSorted((a, b) => a - b))
      return
    }
    const shared = (node: number) => open.filter((other) => isNear(node, other)).length
    const pivot = [...open, ...done].toSorted((a, b) => shared(b) - shared(a))[0] ?? 0
    const left = new Set(open)
    const over = [...done]
    for (const node of open.filter((other) => !isNear(pivot, other))) {
      grow(
        [...clique, node],
        [...left].filter((other) => isNear(node, other)),
        over.filter((other) => isNear(node, other)),
      )
      left.delete(node)
      over.push(node)
    }
  }
  if (nodes > 0) grow([], all, [])
  return found
}
