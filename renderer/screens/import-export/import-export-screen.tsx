import { Link } from 'wouter'
import { ComingIn } from './coming-in.tsx'
import { GoingOut } from './going-out.tsx'

/** What goes out and comes in as a whole, as files. */
export function ImportExportScreen() {
  return (
    <div className="page stack-5">
      <div className="head-row">
        <h1>In and out</h1>
        <Link href="/settings">Back to Settings</Link>
      </div>
      <GoingOut />
      <ComingIn />
    </div>
  )
}
