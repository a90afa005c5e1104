import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { BenchId } from '../bench/contract.ts'
import { Link } from './router.tsx'
import type { Route } from './routes.ts'
import { useKeepsBooks } from './sign-in/use-who.ts'
import { applyTheme, shownTheme, storedTheme } from './theme.ts'

/** The pages that lead to all others. Shelf and books are those of the bench one is on. */
export const Head = ({ route }: { readonly route: Route }) => {
  const bench: BenchId = 'bench' in route ? route.bench : 'own'
  const keepsBooks = useKeepsBooks()
  const at = (kind: Route['kind']): boolean => route.kind === kind
  return (
    <header className="head">
      <span className="head-name" aria-hidden="true">
        Thrum
      </span>
      <nav aria-label="Pages">
        <Link to={{ kind: 'bench', bench: 'own' }} current={at('bench') && bench === 'own'}>
          Bench
        </Link>
        <Link to={{ kind: 'buy' }} current={at('buy')}>
          Buy
        </Link>
        <Link to={{ kind: 'shelf', bench }} current={at('shelf')}>
          Shelf
        </Link>
        {keepsBooks ? (
          <Link to={{ kind: 'books', bench }} current={at('books')}>
            Books
          </Link>
        ) : null}
        <Link to={{ kind: 'blueprints' }} current={at('blueprints')}>
          Blueprints
        </Link>
        <Link to={{ kind: 'practice' }} current={at('practice')}>
          Practise
        </Link>
        <Link to={{ kind: 'bench', bench: 'demo' }} current={at('bench') && bench === 'demo'}>
          Demo
        </Link>
      </nav>
      <Link to={{ kind: 'settings' }} className="head-settings" current={at('settings')}>
        Settings
      </Link>
      <ThemeSwitch />
    </header>
  )
}

const ThemeSwitch = () => {
  const [theme, setTheme] = useState(storedTheme)
  const other = shownTheme(theme) === 'daylight' ? 'shed' : 'daylight'
  const change = (): void => {
    applyTheme(other)
    setTheme(other)
  }
  return (
    <Button className="plain theme" onPress={change} aria-label={other === 'shed' ? 'Dark shed' : 'Daylight'}>
      <svg viewBox="0 0 24 24" width="22" height="22" aria-hidden="true">
        <circle cx="12" cy="12" r="8" fill="none" stroke="currentColor" strokeWidth="1.5" />
        <path d="M12 4a8 8 0 0 1 0 16z" fill="currentColor" />
      </svg>
    </Button>
  )
}
