import { QueryClientProvider } from '@tanstack/react-query'
import { lazy, Suspense, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { BenchPage } from './pages/bench-page.tsx'
import { MachinePage } from './pages/machine-page.tsx'
import { Live } from './parts/live.tsx'
import { makeQueryClient } from './queries.ts'
import { Link, PageTitle, useRoute } from './router.tsx'
import { pathOf, type Route } from './routes.ts'
import { applyTheme, shownTheme, storedTheme } from './theme.ts'

const AddPage = lazy(async () => ({ default: (await import('./pages/add-page.tsx')).AddPage }))
const AirPage = lazy(async () => ({ default: (await import('./pages/air-page.tsx')).AirPage }))
const ProofPage = lazy(async () => ({ default: (await import('./pages/proof-page.tsx')).ProofPage }))
const PracticePage = lazy(async () => ({ default: (await import('./pages/practice-page.tsx')).PracticePage }))
const BlueprintsPage = lazy(async () => ({ default: (await import('./pages/blueprints-page.tsx')).BlueprintsPage }))
const SettingsPage = lazy(async () => ({ default: (await import('./pages/settings-page.tsx')).SettingsPage }))
const BlueprintPage = lazy(async () => ({ default: (await import('./pages/blueprint-page.tsx')).BlueprintPage }))

const client = makeQueryClient()

export const App = () => {
  const route = useRoute()
  return (
    <QueryClientProvider client={client}>
      <a className="skip" href="#main">
        Skip to the page
      </a>
      <Head route={route} />
      <main id="main">
        <Suspense fallback={<p className="quiet">Fetching the page …</p>}>
          <Page key={pathOf(route)} route={route} />
        </Suspense>
      </main>
      <Live />
    </QueryClientProvider>
  )
}

const Page = ({ route }: { readonly route: Route }) => {
  switch (route.kind) {
    case 'bench':
      return <BenchPage bench={route.bench} />
    case 'add':
      return <AddPage />
    case 'practice':
      return <PracticePage />
    case 'settings':
      return <SettingsPage />
    case 'blueprints':
      return <BlueprintsPage />
    case 'blueprint':
      return <BlueprintPage id={route.id} />
    case 'machine':
      return <MachinePage bench={route.bench} id={route.id} />
    case 'air':
      return <AirPage bench={route.bench} id={route.id} />
    case 'proof':
      return <ProofPage bench={route.bench} id={route.id} />
    case 'lost':
      return <LostPage path={route.path} />
  }
}

const LostPage = ({ path }: { readonly path: string }) => (
  <div className="sheet">
    <PageTitle windowTitle="Not here">There is no page at {path}</PageTitle>
    <p>
      <Link to={{ kind: 'bench', bench: 'own' }}>Go to the bench</Link>
    </p>
  </div>
)

const Head = ({ route }: { readonly route: Route }) => {
  const bench = route.kind === 'bench' || route.kind === 'machine' ? route.bench : null
  return (
    <header className="head">
      <span className="head-name" aria-hidden="true">
        Thrum
      </span>
      <nav aria-label="Pages">
        <Link to={{ kind: 'bench', bench: 'own' }} current={bench === 'own' && route.kind === 'bench'}>
          Bench
        </Link>
        <Link to={{ kind: 'bench', bench: 'demo' }} current={bench === 'demo' && route.kind === 'bench'}>
          Demo
        </Link>
        <Link to={{ kind: 'practice' }} current={route.kind === 'practice'}>
          Practise
        </Link>
        <Link to={{ kind: 'blueprints' }} current={route.kind === 'blueprints'}>
          Blueprints
        </Link>
      </nav>
      <Link to={{ kind: 'settings' }} className="head-settings" current={route.kind === 'settings'}>
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
