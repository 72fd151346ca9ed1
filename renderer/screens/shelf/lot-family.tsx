import { Link } from 'wouter'
import type { LotRecord } from '../../../db/contract/shelf-operations.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { ROLE_WORDS } from '../../shared/format/words.ts'

const RELATION_WORDS: Record<LotRecord['parents'][number]['relation'], string> = {
  grown: 'grown from',
  split: 'taken out of',
  joined: 'joined with',
}

/** Where the lot came from, and the other lots of its accession. */
export function LotFamily({ lot }: { readonly lot: LotRecord }) {
  const others = lot.siblings
  const format = useFormat()
  if (others.length === 0 && lot.parents.length === 0) return null
  return (
    <section className="pane-part">
      <h3>Lots of {lot.accessionNumber}</h3>
      {lot.parents.map((parent) => (
        <p key={`${parent.relation} ${parent.lotId}`}>
          This lot was {RELATION_WORDS[parent.relation]}{' '}
          <Link href={lotAddress(parent.lotId)}>{parent.lotNumber}</Link>.
        </p>
      ))}
      {others.length > 0 && (
        <table className="plain-table" aria-label="Other lots of the accession">
          <thead>
            <tr>
              <th scope="col">Lot</th>
              <th scope="col">Role</th>
              <th scope="col">Harvest</th>
              <th scope="col">Holds</th>
              <th scope="col" className="number">
                Living
              </th>
            </tr>
          </thead>
          <tbody>
            {others.map((other) => (
              <tr key={other.lotId}>
                <td>
                  <Link href={lotAddress(other.lotId)}>{other.lotNumber}</Link>
                </td>
                <td>{ROLE_WORDS[other.role]}</td>
                <td>{other.harvest}</td>
                <td>{other.quantity.words}</td>
                <td className="number">{format.number(other.living)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  )
}
